"""Second opinion on a face: units to the em, capital height and the advance of every character, as JSON."""

import json
import sys

from fontTools.ttLib import TTFont

font = TTFont(sys.argv[1])
advances = {code: font["hmtx"][name][0] for code, name in font.getBestCmap().items()}
json.dump(
    {
        "em": font["head"].unitsPerEm,
        "capital": font["OS/2"].sCapHeight,
        "embedding": font["OS/2"].fsType,
        "advances": advances,
    },
    sys.stdout,
)
