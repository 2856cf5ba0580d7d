"""Writes a cut file of ours again, as another drawing program would: unaltered in many forms, and altered in one way each.

    rewrite.py cut.dxf folder

Answers with a list of {file, wants}: the sorts of difference that each must show, none where it is unaltered.
"""

import json
import math
import sys
from pathlib import Path

import ezdxf
from ezdxf.math import Matrix44, bulge_to_arc

source, folder = sys.argv[1], Path(sys.argv[2])
written = []


def ours():
    return ezdxf.readfile(source)


def save(document, name, *wants, version=None):
    if version:
        document.dxfversion = version
    path = folder / f"{name}.dxf"
    document.saveas(path)
    written.append({"file": str(path), "wants": sorted(wants)})


def fresh(version="R2010", unit=4):
    """A new drawing in which nothing of ours but the geometry is left."""
    document = ezdxf.new(version)
    document.header["$INSUNITS"] = unit
    return document


def copied(into, factor=1.0, layer=None, target=None):
    """Every entity of ours drawn anew, polylines with their bulges."""
    space = target if target is not None else into.modelspace()
    for e in ours().modelspace():
        at = {"layer": layer or e.dxf.layer}
        kind = e.dxftype()
        if kind == "LINE":
            space.add_line(e.dxf.start * factor, e.dxf.end * factor, dxfattribs=at)
        elif kind == "CIRCLE":
            space.add_circle(e.dxf.center * factor, e.dxf.radius * factor, dxfattribs=at)
        elif kind == "ARC":
            space.add_arc(e.dxf.center * factor, e.dxf.radius * factor, e.dxf.start_angle, e.dxf.end_angle, dxfattribs=at)
        elif kind == "POINT":
            space.add_point(e.dxf.location * factor, dxfattribs=at)
        else:
            points = [(x * factor, y * factor, b) for x, y, b in corners(e)]
            space.add_lwpolyline(points, format="xyb", close=True, dxfattribs=at)
    return into


def corners(e):
    if e.dxftype() == "LWPOLYLINE":
        return [tuple(p) for p in e.get_points("xyb")]
    return [(v.dxf.location.x, v.dxf.location.y, v.dxf.bulge) for v in e.vertices]


def of(document, layer, *kinds):
    return [e for e in document.modelspace() if e.dxf.layer == layer and e.dxftype() in kinds]


def closed(document, points, layer):
    """A closed polyline of (x, y, bulge) in whichever way the document's version has them."""
    space, at = document.modelspace(), {"layer": layer}
    if document.dxfversion == "AC1009":
        space.add_polyline2d(points, format="xyb", close=True, dxfattribs=at)
    else:
        space.add_lwpolyline(points, format="xyb", close=True, dxfattribs=at)


POLY = ("LWPOLYLINE", "POLYLINE")

# Unaltered.
R12 = ours().dxfversion == "AC1009"
for version in ("R2000", "R2004", "R2007", "R2010", "R2013", "R2018"):
    save(ours(), f"again-{version}", version=version)
# Saved as R12 by a program that does not turn light polylines into heavy ones, the edge is lost without a word.
save(ours(), "again-R12", *([] if R12 else ["missing"]), version="R12")
save(copied(fresh()), "drawn-anew")
save(copied(fresh(unit=1), 1 / 25.4), "in-inches")
save(copied(fresh(unit=6), 1 / 1000), "in-metres")
save(copied(fresh(), layer="0"), "on-layer-0")

document = ours()
for e in list(document.modelspace().query("LWPOLYLINE POLYLINE")):
    e.explode()
save(document, "exploded")

document = ours()
for e in of(document, "CUT-INSIDE", "CIRCLE") + of(document, "CUT-OUTSIDE", "CIRCLE"):
    c, r = e.dxf.center, e.dxf.radius
    closed(document, [(c.x - r, c.y, 1), (c.x + r, c.y, 1)], e.dxf.layer)
    document.modelspace().delete_entity(e)
save(document, "circles-as-two-arcs")

document = ours()
space = document.modelspace()
for e in list(space.query("LWPOLYLINE POLYLINE")):
    for part in e.virtual_entities():
        space.add_foreign_entity(part) if part.doc not in (None, document) else space.add_entity(part)
    space.delete_entity(e)
for e in of(document, "CUT-INSIDE", "CIRCLE"):
    c, r = e.dxf.center, e.dxf.radius
    for a in (10, 130, 250):
        space.add_arc(c, r, a, a + 120, dxfattribs={"layer": e.dxf.layer})
    space.delete_entity(e)
save(document, "all-loose")


def in_block(name, scale, back, turn=0.0, nested=False, at=(0, 0), base=(0, 0)):
    document = fresh()
    block = document.blocks.new("PLATE", base_point=base)
    copied(document, back, target=block)
    inner = "PLATE"
    if nested:
        document.blocks.new("OUTER").add_blockref("PLATE", (0, 0), dxfattribs={"xscale": 2, "yscale": 2, "zscale": 2})
        inner = "OUTER"
    document.modelspace().add_blockref(
        inner, at, dxfattribs={"xscale": scale[0], "yscale": scale[1], "zscale": 1, "rotation": turn, "layer": "0"}
    )
    return document


save(in_block("block", (1, 1), 1), "in-a-block")
save(in_block("block", (0.5, 0.5), 2), "in-a-block-scaled")
save(in_block("block", (0.25, 0.25), 2, nested=True), "in-a-block-in-a-block")
save(in_block("block", (1, 1), 1, at=(70, 5), base=(70, 5)), "in-a-block-with-a-base")

document = fresh()
block = document.blocks.new("MIRRORED")
copied(document, target=block)
for e in block:
    e.transform(Matrix44.scale(-1, 1, 1))
document.modelspace().add_blockref("MIRRORED", (0, 0), dxfattribs={"xscale": -1, "yscale": 1})
save(document, "mirrored-and-set-in-mirrored")

# Altered as a whole.
save(copied(fresh(), 25.4), "times-25.4", "scaled")
save(copied(fresh(unit=0), 1 / 25.4), "inches-without-a-unit", "scaled")
save(copied(fresh(), 1.002), "swollen", "scaled")
save(in_block("block", (-1, 1), 1), "mirrored-block", "mirrored")
save(in_block("block", (1, -1), 1), "mirrored-over", "mirrored")
save(in_block("block", (1, 1), 1, turn=90), "quarter-turn", "turned")
save(in_block("block", (1, 1), 1, turn=33.3, at=(1200, -340)), "turned-and-shifted", "shifted", "turned")
save(in_block("block", (1, 1), 1, at=(1200, -340)), "shifted", "shifted")
save(in_block("block", (-1, 1), 1, turn=12.5, at=(800, 300)), "mirrored-and-turned", "mirrored", "shifted", "turned")
document = ours()
for e in document.modelspace():
    e.transform(Matrix44.scale(-1, 1, 1))
save(document, "mirrored", "mirrored")


# Altered in one figure.
def circle_of(document):
    """A hole towards the middle of the list, or the edge of a round part."""
    holes = of(document, "CUT-INSIDE", "CIRCLE") or of(document, "CUT-OUTSIDE", "CIRCLE")
    return holes[len(holes) // 2]


if of(ours(), "CUT-INSIDE", "CIRCLE") or of(ours(), "CUT-OUTSIDE", "CIRCLE"):
    document = ours()
    circle_of(document).translate(0.06, -0.08, 0)
    save(document, "moved", "moved")
    document = ours()
    circle_of(document).dxf.radius += 0.05
    save(document, "resized", "resized")
    document = ours()
    document.modelspace().delete_entity(circle_of(document))
    save(document, "missing", "missing")
    document = ours()
    hole = circle_of(document)
    document.modelspace().add_circle(hole.dxf.center, hole.dxf.radius, dxfattribs={"layer": hole.dxf.layer})
    save(document, "doubled", "doubled")
    for name, count in (("facets", 72), ("coarse-facets", 16)):
        document = ours()
        hole = circle_of(document)
        turns = [2 * math.pi * i / count for i in range(count)]
        c, r = hole.dxf.center, hole.dxf.radius
        points = [(c.x + r * math.cos(t), c.y + r * math.sin(t), 0) for t in turns]
        closed(document, points, hole.dxf.layer)
        document.modelspace().delete_entity(hole)
        save(document, name, "facetted")
    document = ours()
    hole = circle_of(document)
    document.modelspace().add_arc(hole.dxf.center, hole.dxf.radius, 20, 350, dxfattribs={"layer": hole.dxf.layer})
    document.modelspace().delete_entity(hole)
    save(document, "gaping", "open")

document = ours()
document.modelspace().add_circle((3.0, 7.0), 5.5, dxfattribs={"layer": "CUT-INSIDE"})
save(document, "extra", "extra")
document = ours()
document.modelspace().add_line((3.0, 7.0), (50.0, 9.0), dxfattribs={"layer": "CUT-INSIDE"})
save(document, "extra-line", "extra")
document = ours()
if not R12:
    document.modelspace().add_spline([(0, 0, 0), (10, 5, 0), (20, 0, 0)], dxfattribs={"layer": "CUT-INSIDE"})
    save(document, "spline", "foreign")
document = ours()
document.modelspace().add_text("CUT BY OTHERS", dxfattribs={"layer": "0"})
save(document, "text", "foreign")
document = ours()
for e in of(document, "STAMP", "LINE"):
    document.modelspace().delete_entity(e)
save(document, "no-lettering", "missing")

if of(ours(), "CUT-OUTSIDE", *POLY):
    document = ours()
    for e in list(of(document, "CUT-OUTSIDE", *POLY)):
        points = corners(e)
        x, y, b = points[2]
        points[2] = (x + 0.07, y, b)
        closed(document, points, "CUT-OUTSIDE")
        document.modelspace().delete_entity(e)
    save(document, "nudged", "outline")
    document = ours()
    for e in list(of(document, "CUT-OUTSIDE", *POLY)):
        parts = list(e.virtual_entities())
        first = next(p for p in parts if p.dxftype() == "LINE")
        start, end = first.dxf.start, first.dxf.end
        first.dxf.end = end + (start - end).normalize(0.8)
        document.modelspace().delete_entity(e)
        for part in parts:
            document.modelspace().add_entity(part)
    save(document, "edge-open", "open")
    document = ours()
    for e in list(of(document, "CUT-OUTSIDE", *POLY)):
        document.modelspace().delete_entity(e)
    save(document, "no-edge", "missing")
    if any(b for _, _, b in corners(of(ours(), "CUT-OUTSIDE", *POLY)[0])):
        document = ours()
        for e in list(of(document, "CUT-OUTSIDE", *POLY)):
            points = []
            for (x, y, b), (nx, ny, _) in zip(corners(e), corners(e)[1:] + corners(e)[:1]):
                points.append((x, y, 0))
                if b:
                    centre, start, end, radius = bulge_to_arc((x, y), (nx, ny), b)
                    facets = max(4, math.ceil(radius * (end - start) % (2 * math.pi * radius) / 4))
                    turns = [start + (end - start) % (2 * math.pi) * i / facets for i in range(1, facets)]
                    turns = turns if b > 0 else turns[::-1]
                    points += [(centre.x + radius * math.cos(t), centre.y + radius * math.sin(t), 0) for t in turns]
            closed(document, points, "CUT-OUTSIDE")
            document.modelspace().delete_entity(e)
        save(document, "edge-in-facets", "facetted", "outline")

pops = of(ours(), "POP", "LINE")
if pops:
    document = ours()
    for e in of(document, "POP", "LINE")[:2]:
        document.modelspace().delete_entity(e)
    save(document, "pop-missing", "missing")

json.dump(written, sys.stdout)
