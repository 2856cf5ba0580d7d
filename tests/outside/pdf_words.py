"""Second opinion on the lettering of a PDF: what a reader of the printed page would trip on, page by page, as JSON.

A word's box is as wide as its advances and as high as a capital (1500 of 2000 units of the face), turned as the word is.
A stacked fraction is drawn as outlines over words that are narrowed to its width, and these have no height of their own: of it the
width alone is judged, at the height that the reader makes of the narrowing.
"""

import json
import math
import re
import sys

import pymupdf
from shapely.geometry import Polygon, box

MM = 25.4 / 72
CAPITAL = 1500 / 2000
LEAST, LEAST_IN_HOLE = 2.5, 2.0
# Frame of ISO 5457: the filing edge left, the margin elsewhere, mm.
LEFT, MARGIN = 20.0, 10.0
# Boxes may share what a face leaves beside each glyph, mm each way.
SHARED = 0.06


def words(page):
    """Each word with its height, whether it is seen, and its box in mm."""
    for span in page.get_texttrace():
        (cos, sin), high = span["dir"], span["size"] * CAPITAL * MM
        run = []
        for code, _, (x, y), bounds in list(span["chars"]) + [(32, 0, (0, 0), None)]:
            if code != 32:
                run.append((chr(code), x * MM, y * MM, bounds))
                continue
            if run:
                yield word(run, cos, sin, high)
            run = []


def word(run, cos, sin, high):
    text = "".join(char for char, *_ in run)
    (_, x, y, _), (_, end_x, end_y, bounds) = run[0], run[-1]
    # The bounds of a glyph are upright: along the line they reach as far as the glyph advances.
    corners = [(bounds[i] * MM, bounds[j] * MM) for i in (0, 2) for j in (1, 3)]
    long = max((cx - x) * cos + (cy - y) * sin for cx, cy in corners)
    if abs(cos) > 0.01 and abs(sin) > 0.01:
        long = math.hypot(end_x - x, end_y - y) + high * 0.8
    up = (sin * high, -cos * high)
    along = (cos * long, sin * long)
    shape = Polygon([(x, y), (x + along[0], y + along[1]), (x + along[0] + up[0], y + along[1] + up[1]), (x + up[0], y + up[1])])
    return text, high, shape.buffer(-SHARED)


def defects(page):
    wide, tall = page.rect.width * MM, page.rect.height * MM
    frame = box(LEFT, MARGIN, wide - MARGIN, tall - MARGIN)
    found = list(words(page))
    for i, (text, high, shape) in enumerate(found):
        least = LEAST_IN_HOLE if re.fullmatch(r"[A-Z]*\d+", text) else LEAST
        if high < least - 0.001 and not re.fullmatch(r"\d+/\d+", text):
            yield f"{text} is {high:.2f} mm high"
        if len(text) > 2 and not frame.contains(shape):
            yield f"{text} stands outside the frame"
        for other, _, other_shape in found[i + 1 :]:
            if shape.intersects(other_shape):
                yield f"{text} overlaps {other} at {shape.centroid.x:.1f}, {shape.centroid.y:.1f}"


def fonts_left_out(document):
    numbers = {font[0] for page in document for font in page.get_fonts(full=True)}
    return sorted(number for number in numbers if not document.extract_font(number)[3])


answers = []
for name in sys.argv[1:]:
    document = pymupdf.open(name)
    answers.append(
        {
            "pages": len(document),
            "words": [sum(1 for _ in words(page)) for page in document],
            "defects": [f"page {i + 1}: {defect}" for i, page in enumerate(document) for defect in defects(page)],
            "fonts_left_out": fonts_left_out(document),
        }
    )
json.dump(answers, sys.stdout)
