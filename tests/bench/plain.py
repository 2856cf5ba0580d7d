#!/usr/bin/env python3
"""The same setting-out, ligaments and cut file in plain Python with a public DXF library, timed against the program.

    python3 tests/bench/plain.py target/release/centrepop 120

The program's time is that of the whole process with every output; the script's is without its start and its imports.
Each is the least of a few runs, all in this one run. Both must find the same figures.
"""

import heapq
import json
import logging
import math
import subprocess
import sys
import tempfile
import time
from pathlib import Path

import ezdxf

SPACING, PITCH, HOLE, LAND = 57.0, 66.0, 46.8, 12.7

SPEC = """\
job: {{works: Bench, engine: Bench, drawing: PLAIN, revision: A, issued: "2026-01-01", units: millimetres}}
plate:
  kind: smokebox tube plate
  view_from: smokebox
  thickness: 16 mm
  material: {{grade: P265GH, metal: steel, strength: 28 tonf/in2, density: 7850 kg/m3}}
barrel: {{bore: {outside} mm, thickness: {barrel} mm}}
working_pressure: 160 psi
flange:
  pressed: {{towards: smokebox, outside_diameter: {outside} mm, heel_radius_inside: 38 mm, straight: 58 mm, trim: 13 mm}}
tubes:
  - name: tubes
    tube: 44.5 mm
    hole: 46.8 mm
    pattern:
      columns: {{through: [0 mm, 0 mm], spacing: 57 mm, pitch: 66 mm}}
    within:
      land: [{{to: tangent, at_least: 12.7 mm}}]
rivets: {{rivet: 22 mm, hole: 23.8 mm, count: {rivets}, from_edge: 36 mm, bottom_centre: between holes, how: in place}}
support: {{flange_line: tangent, stays: true, tubes: true, origin: bench}}
judged_by: [Indian Boiler Regulations 1950]
cutting: {{process: plasma, origin: bench}}
"""


def outside_of(tubes):
    """Flange's outside diameter of a plate just wide enough for so many tubes, mm."""
    tangent = math.sqrt(tubes * SPACING * PITCH / math.pi) + 40
    return 2 * math.ceil(tangent + 16 + 38)


def nest(tangent):
    """Staggered columns that fill the flat within the tangent."""
    reach = tangent - LAND - HOLE / 2
    holes = []
    columns = int(reach / SPACING) + 1
    for k in range(-columns, columns + 1):
        x = k * SPACING
        rows = int(reach / PITCH) + 2
        for j in range(-rows, rows + 1):
            y = PITCH * (j + (0.5 if k % 2 else 0.0))
            if math.hypot(x, y) <= reach + 1e-6:
                holes.append((x, y))
    return holes


def by_cell(holes):
    """Holes in cells a pitch wide, so that neighbours are looked for nearby only."""
    cells = {}
    for hole in holes:
        cells.setdefault((int(hole[0] // PITCH), int(hole[1] // PITCH)), []).append(hole)
    return cells


def around(cells, x, y, reach):
    column, row = int(x // PITCH), int(y // PITCH)
    for i in range(column - reach, column + reach + 1):
        for j in range(row - reach, row + reach + 1):
            yield from cells.get((i, j), ())


def ligaments(holes, cells):
    """Every ligament between neighbours, and the least."""
    least, pairs = math.inf, 0
    for x, y in holes:
        for u, v in around(cells, x, y, 1):
            if (u, v) > (x, y):
                metal = math.hypot(x - u, y - v) - HOLE
                if metal <= PITCH:
                    pairs += 1
                    least = min(least, metal)
    return least, pairs


def largest_circle(holes, cells, tangent):
    """Largest circle clear of the centres within the tangent: cells halved by their bound, proven to 0.001 mm."""

    def room(x, y):
        near = [math.hypot(x - u, y - v) for u, v in around(cells, x, y, 2)]
        edge = tangent - math.hypot(x, y)
        return min(edge, min(near)) if near else edge

    best, heap = 0.0, [(-math.inf, 0.0, 0.0, tangent)]
    while heap and -heap[0][0] > best + 0.0005:
        _, x, y, half = heapq.heappop(heap)
        half /= 2
        for dx in (-half, half):
            for dy in (-half, half):
                here = room(x + dx, y + dy)
                best = max(best, here)
                bound = here + half * math.sqrt(2)
                if bound > best + 0.0005:
                    heapq.heappush(heap, (-bound, x + dx, y + dy, half))
    return 2 * best


def cut_file(version, blank, holes, path):
    document = ezdxf.new(version, units=4)
    for layer in ("CUT-OUTSIDE", "CUT-INSIDE", "POP", "SCRIBE", "STAMP", "REFERENCE"):
        document.layers.add(layer)
    space = document.modelspace()
    space.add_circle((0, 0), blank / 2, dxfattribs={"layer": "CUT-OUTSIDE"})
    for x, y in holes:
        for dx, dy in ((3, 0), (0, 3)):
            space.add_line((x - dx, y - dy), (x + dx, y + dy), dxfattribs={"layer": "POP"})
    document.saveas(path)


def plain(folder, outside, rivet_count):
    tangent = outside / 2 - 16 - 38
    blank = 2 * (tangent + math.pi / 2 * 46 + 58) + 26
    holes = nest(tangent)
    cells = by_cell(holes)
    least, _ = ligaments(holes, cells)
    circle = largest_circle(holes, cells, tangent)
    rivets = [(i + 0.5) * 360 / rivet_count for i in range(rivet_count)]
    for version in ("R2000", "R12"):
        cut_file(version, blank, holes, folder / f"plain-{version}.dxf")
    return len(holes), len(rivets), least, circle


def least_of(runs, work):
    times = []
    for _ in range(runs):
        start = time.perf_counter()
        result = work()
        times.append(time.perf_counter() - start)
    return min(times), result


def main():
    program, tubes = sys.argv[1], int(sys.argv[2])
    logging.disable()
    outside = outside_of(tubes)
    rivets = round(outside * math.pi / 55)
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        spec = folder / "plain.yaml"
        spec.write_text(SPEC.format(outside=outside, barrel=math.ceil(outside / 70), rivets=rivets))

        def run(*arguments):
            subprocess.run([program, *arguments], check=False, stdout=subprocess.DEVNULL)

        check, _ = least_of(3, lambda: run("check", str(spec)))
        draw, _ = least_of(3, lambda: run("draw", str(spec), "--out", name))
        script, found = least_of(3, lambda: plain(folder, outside, rivets))
        results = json.loads(next(folder.glob("*/results.json")).read_text())
    figures = results["figures"]
    ours = (
        figures["tube_count"],
        figures["rivet_count"],
        min(pair["mm"] for pair in results["ligaments"]["least"]),
        figures["largest_circle_mm"],
    )
    print(f"script finds   {found}")
    print(f"program finds  {ours}")
    for a, b in zip(found, ours):
        assert abs(a - b) <= 0.001, (a, b)
    print(f"plain script   {script * 1000:9.1f} ms, without start and imports")
    print(f"check          {check * 1000:9.1f} ms, whole process: {script / check:.1f} times faster")
    print(f"draw           {draw * 1000:9.1f} ms, whole process, every output: {script / draw:.1f} times faster")


if __name__ == "__main__":
    main()
