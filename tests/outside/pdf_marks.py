"""Second opinion on a PDF: for each page its size and its straight strokes, in mm from the top left corner, as JSON."""

import json
import sys

import pymupdf

MM = 25.4 / 72


def strokes(page):
    for drawing in page.get_drawings():
        if drawing["type"] != "s":
            continue
        for item in drawing["items"]:
            if item[0] == "l":
                (a, b) = item[1], item[2]
                yield [a.x * MM, a.y * MM, b.x * MM, b.y * MM, drawing["width"] * MM]


pages = []
for page in pymupdf.open(sys.argv[1]):
    found = {words: len(page.search_for(words)) for words in sys.argv[2:]}
    pages.append(
        {
            "width": page.rect.width * MM,
            "height": page.rect.height * MM,
            "strokes": list(strokes(page)),
            "found": found,
            "fonts": [font[3] for font in page.get_fonts()],
        }
    )
json.dump(pages, sys.stdout)
