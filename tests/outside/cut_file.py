"""Second opinion on cut files: each read strictly, audited, and measured from its entities alone. JSON, one item a file.

Areas of arcs are exact (chord polygon and circular segments); shapely judges whether the contours are simple and how they
lie in one another, on arcs cut into short chords.
"""

import json
import math
import sys

import ezdxf
from ezdxf.math import bulge_to_arc
from shapely.geometry import LineString, Point, Polygon

CHORDS = 256  # to each arc, for shapely only: 0.01 mm from a 500 mm arc of half a turn


def corners(entity):
    """Corners of a polyline as (x, y, bulge)."""
    if entity.dxftype() == "LWPOLYLINE":
        return [tuple(p) for p in entity.get_points("xyb")], entity.closed
    return [(v.dxf.location.x, v.dxf.location.y, v.dxf.bulge) for v in entity.vertices], entity.is_closed


def edges(points, closed):
    count = len(points) if closed else len(points) - 1
    for i in range(count):
        (x, y, bulge), (u, v, _) = points[i], points[(i + 1) % len(points)]
        yield (x, y), (u, v), bulge


def exact_area(points):
    """Shoelace over the chords, and on each arc the segment r2 (angle - sin angle) / 2."""
    area = 0.0
    for (x, y), (u, v), bulge in edges(points, True):
        area += (x * v - u * y) / 2
        if bulge:
            chord = math.hypot(u - x, v - y)
            angle = 4 * math.atan(abs(bulge))
            radius = chord / (2 * math.sin(angle / 2))
            area += math.copysign(radius**2 * (angle - math.sin(angle)) / 2, bulge)
    return area


def exact_length(points):
    length = 0.0
    for (x, y), (u, v), bulge in edges(points, True):
        chord = math.hypot(u - x, v - y)
        angle = 4 * math.atan(abs(bulge))
        length += chord if not bulge else angle * chord / (2 * math.sin(angle / 2))
    return length


def exact_box(points):
    """Corners, and the crown of every arc that passes east, north, west or south of its centre."""
    xs, ys = [p[0] for p in points], [p[1] for p in points]
    for a, b, bulge in edges(points, True):
        if bulge:
            centre, start, end, radius = bulge_to_arc(a, b, bulge)
            for quarter in range(4):
                angle = quarter * math.pi / 2
                if (angle - start) % (2 * math.pi) <= (end - start) % (2 * math.pi):
                    xs.append(centre.x + radius * round(math.cos(angle)))
                    ys.append(centre.y + radius * round(math.sin(angle)))
    return [min(xs), min(ys), max(xs), max(ys)]


def flattened(points):
    places = []
    for (x, y), (u, v), bulge in edges(points, True):
        if not bulge:
            places.append((x, y))
            continue
        centre, start, end, radius = bulge_to_arc((x, y), (u, v), bulge)
        turn = (end - start) % (2 * math.pi)
        angles = [start + turn * i / CHORDS for i in range(CHORDS)]
        if bulge < 0:
            angles = [end - turn * i / CHORDS for i in range(CHORDS)]
        places += [(centre.x + radius * math.cos(a), centre.y + radius * math.sin(a)) for a in angles]
    return places


def contour(entity):
    if entity.dxftype() == "CIRCLE":
        (x, y, _), r = entity.dxf.center, entity.dxf.radius
        return {
            "circle": [x, y, r],
            "area": math.pi * r * r,
            "length": 2 * math.pi * r,
            "shape": Point(x, y).buffer(r, quad_segs=CHORDS),
            "box": [x - r, y - r, x + r, y + r],
        }
    points, closed = corners(entity)
    shape = Polygon(flattened(points))
    return {
        "circle": None,
        "closed": closed,
        "simple": shape.is_valid,
        "corners": len(points),
        "bulge_most": max(abs(b) for _, _, b in points),
        "area": abs(exact_area(points)),
        "length": exact_length(points),
        "shape": shape,
        "box": exact_box(points),
    }


def measured(path):
    document = ezdxf.readfile(path)
    audit = document.audit()
    space = list(document.modelspace())
    count = {}
    for entity in space:
        layer = count.setdefault(entity.dxf.layer, {})
        layer[entity.dxftype()] = layer.get(entity.dxftype(), 0) + 1
    outside = [contour(e) for e in space if e.dxf.layer == "CUT-OUTSIDE"]
    inside = [contour(e) for e in space if e.dxf.layer == "CUT-INSIDE"]
    marks = [
        LineString([e.dxf.start.vec2, e.dxf.end.vec2])
        for e in space
        if e.dxf.layer in ("POP", "SCRIBE", "STAMP") and e.dxftype() == "LINE"
    ]
    reference = [e for e in space if e.dxf.layer == "REFERENCE"]
    squares = [contour(e) for e in reference if e.dxftype() in ("LWPOLYLINE", "POLYLINE")]
    edge = outside[0]["shape"]
    header = document.header
    raw = open(path, "rb").read()
    return {
        "path": path,
        "version": document.dxfversion,
        "errors": [e.message for e in audit.errors],
        "fixes": [e.message for e in audit.fixes],
        "insunits": header.get("$INSUNITS"),
        "measurement": header.get("$MEASUREMENT"),
        "header_box": [*header["$EXTMIN"][:2], *header["$EXTMAX"][:2]],
        "limits": [*header["$LIMMIN"][:2], *header["$LIMMAX"][:2]],
        "entities": count,
        "polyline_layers": sorted(
            {v.dxf.layer for e in space if e.dxftype() == "POLYLINE" for v in [*e.vertices, e.seqend]}
            if document.dxfversion == "AC1009"
            else set()
        ),
        "defined_layers": sorted(layer.dxf.name for layer in document.layers),
        "outside": [{k: v for k, v in c.items() if k != "shape"} for c in outside],
        "inside": [{k: v for k, v in c.items() if k != "shape"} for c in inside],
        "inside_all_within": all(edge.contains(c["shape"]) for c in inside),
        "marks_all_within": all(edge.buffer(1e-6).contains(mark) for mark in marks),
        "proving_square": [c["box"] for c in squares],
        "reference_clear": not any(
            edge.intersects(LineString([e.dxf.start.vec2, e.dxf.end.vec2]))
            for e in reference
            if e.dxftype() == "LINE"
        ),
        "pure_ascii": all(byte < 128 for byte in raw),
        "bare_newlines": raw.count(b"\n") - raw.count(b"\r\n"),
    }


json.dump([measured(path) for path in sys.argv[1:]], sys.stdout)
