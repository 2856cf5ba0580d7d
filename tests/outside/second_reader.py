"""Third opinion on cut files, by GDAL's reader: area inside the edge, holes, least web and least metal to the edge. JSON.

GDAL turns arcs and circles into short chords, so that areas come out a little small; that is why they are compared in
thousandths of a per cent. Whether a circle is a circle and an arc an arc is told from the entities by ezdxf.
"""

import json
import os
import sys

# Chords of a quarter of a degree: a polygon in a circle is then short of its area by three millionths.
os.environ["OGR_ARC_STEPSIZE"] = "0.25"
os.environ["DXF_ENCODING"] = "ASCII"

import ezdxf
import numpy
import pyogrio
import shapely
from scipy.spatial import cKDTree


def contours(frame, layer):
    lines = [g for g, on in zip(frame["geometry"], frame["Layer"]) if on == layer]
    return [shapely.Polygon(shapely.get_coordinates(line)) for line in lines]


def measured(path):
    _, _, geometry, fields = pyogrio.raw.read(path, columns=["Layer"])
    frame = {"geometry": shapely.from_wkb(geometry), "Layer": fields[0]}
    outside, inside = contours(frame, "CUT-OUTSIDE"), contours(frame, "CUT-INSIDE")
    # Valid only where every hole lies inside the edge and none meets another.
    plate = shapely.Polygon(outside[0].exterior, [hole.exterior for hole in inside])
    circles = [
        (c.dxf.center.x, c.dxf.center.y, c.dxf.radius)
        for c in ezdxf.readfile(path).modelspace().query('CIRCLE[layer=="CUT-INSIDE"]')
    ]
    web = None
    if len(circles) > 1:
        places, radii = numpy.array([c[:2] for c in circles]), numpy.array([c[2] for c in circles])
        reach = 6 * radii.max() + 100
        pairs = cKDTree(places).query_pairs(reach, output_type="ndarray")
        if len(pairs):
            apart = numpy.linalg.norm(places[pairs[:, 0]] - places[pairs[:, 1]], axis=1)
            web = float((apart - radii[pairs[:, 0]] - radii[pairs[:, 1]]).min())
    edge = outside[0].exterior
    shapely.prepare(edge)
    return {
        "path": path,
        "outside": len(outside),
        "inside": len(inside),
        "circles": len(circles),
        "valid": all(shapely.is_valid(c) for c in outside + inside) and bool(shapely.is_valid(plate)),
        "area_outside": outside[0].area,
        "area_left": plate.area,
        "least_web": web,
        "least_edge": min((edge.distance(c) for c in inside), default=None),
    }


json.dump([measured(path) for path in sys.argv[1:]], sys.stdout)
