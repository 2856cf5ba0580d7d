"""Second opinion on ligaments: the least metal between holes, by purposes, with a k-d tree. JSON.

    ligaments.py results.json [cut file] [+ results.json [cut file] …]

From `results.json` the finished holes are taken. With a cut file its circles are taken instead, each brought back to the
finished size of the hole at the same place; a circle at no hole's place, or a hole missing, is reported.
"""

import json
import sys

import ezdxf
import numpy
from scipy.spatial import cKDTree


def answer(question):
    results = json.load(open(question[0]))
    holes = results["holes"]
    places = numpy.array([[h["x_mm"], h["y_mm"]] for h in holes])
    finish = numpy.array([h["finish_mm"] for h in holes])
    strays, cut = [], {}

    if len(question) > 1:
        circles = [
            (c.dxf.center.x, c.dxf.center.y, 2 * c.dxf.radius)
            for c in ezdxf.readfile(question[1]).modelspace().query('CIRCLE[layer=="CUT-INSIDE"]')
        ]
        tree = cKDTree(places)
        moved = places.copy()
        for x, y, diameter in circles:
            distance, index = tree.query([x, y])
            if distance > 1e-5:
                strays.append([x, y])
                continue
            moved[index] = [x, y]
            cut.setdefault(holes[index]["purpose"], []).append(holes[index]["finish_mm"] - diameter)
        places = moved

    tree = cKDTree(places)
    # Far enough to hold, for every hole, the nearest hole of every purpose that has a least ligament.
    reach = finish.max() + max((least["mm"] for least in results["ligaments"]["least"]), default=0) + 1
    least = {}
    for i, j in tree.query_pairs(reach):
        metal = float(numpy.hypot(*(places[i] - places[j])) - (finish[i] + finish[j]) / 2)
        pair = tuple(sorted([holes[i]["purpose"], holes[j]["purpose"]]))
        if metal < least.get(pair, float("inf")):
            least[pair] = metal

    return {
        "least": [{"between": list(pair), "mm": mm} for pair, mm in sorted(least.items())],
        "strays": strays,
        "under": {purpose: [min(under), max(under)] for purpose, under in cut.items()},
        "cut_count": sum(len(under) for under in cut.values()),
    }


questions = [[]]
for word in sys.argv[1:]:
    if word == "+":
        questions.append([])
    else:
        questions[-1].append(word)
json.dump([answer(question) for question in questions], sys.stdout)
