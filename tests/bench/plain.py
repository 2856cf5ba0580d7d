#!/usr/bin/env python3
"""The same setting-out, ligaments and cut file in plain Python with a public DXF library, timed against the program.

    python3 tests/bench/plain.py target/release/centrepop specs/marl-hen-smokebox.yaml

The program's time is that of the whole process with every output; the script's is without its start and its imports.
Both times are the least of a few runs.
"""

import json
import math
import subprocess
import sys
import tempfile
import time
from pathlib import Path

import ezdxf

INCH = 25.4


def nest():
    """The nest of the Marl Hen: columns 2 1/4 in apart, pitch 2 19/32, within the tangent less land and half a hole."""
    spacing, pitch, hole = 2.25 * INCH, 2.59375 * INCH, 1.84375 * INCH
    reach = 16.875 * INCH - 0.5 * INCH - hole / 2
    holes = []
    for k in range(-6, 7):
        x = k * spacing
        for j in range(-20, 21):
            y = 1.296875 * INCH + pitch * (j + (0.5 if k % 2 else 0.0))
            if math.hypot(x, y) <= reach and y <= 6.6 * INCH:
                if not (k == 0 and abs(y + 14.265625 * INCH) < hole / 2):
                    holes.append((x, y, hole))
    return holes


def others():
    holes = [(0.0, 11.25 * INCH, 5 * INCH), (0.0, -14.25 * INCH, 1.75 * INCH)]
    for x, y in ((5.75, 12.0), (10.25, 9.0)):
        for side in (-1, 1):
            holes.append((side * x * INCH, y * INCH, 1.28125 * INCH))
    return holes


def ligaments(holes):
    """Least metal between every two holes: all pairs, as a plain script does it."""
    least = math.inf
    for i, (x, y, d) in enumerate(holes):
        for u, v, e in holes[i + 1 :]:
            metal = math.hypot(x - u, y - v) - (d + e) / 2
            if metal < least:
                least = metal
    return least


def largest_circle(holes, tangent):
    """Largest circle clear of the centres: grid halving on the distance, proven to 0.001 mm."""
    centres = [(x, y) for x, y, d in holes if d < 3 * INCH]

    def room(x, y):
        return min(tangent - math.hypot(x, y), min(math.hypot(x - u, y - v) for u, v in centres))

    import heapq

    best, heap = 0.0, []
    half = tangent
    heapq.heappush(heap, (-(room(0, 0) + half * math.sqrt(2)), 0.0, 0.0, half))
    while heap and -heap[0][0] > best + 0.0005:
        _, x, y, half = heapq.heappop(heap)
        half /= 2
        for dx in (-half, half):
            for dy in (-half, half):
                here = room(x + dx, y + dy)
                best = max(best, here)
                if here + half * math.sqrt(2) > best + 0.0005:
                    heapq.heappush(heap, (-(here + half * math.sqrt(2)), x + dx, y + dy, half))
    return 2 * best


def rivets():
    return [(i + 0.5) * 360 / 56 for i in range(56)]


def cut_file(version, holes, path):
    document = ezdxf.new(version, units=4)
    for layer in ("CUT-OUTSIDE", "CUT-INSIDE", "POP", "SCRIBE", "STAMP", "REFERENCE"):
        document.layers.add(layer)
    space = document.modelspace()
    space.add_circle((0, 0), 45 * INCH / 2, dxfattribs={"layer": "CUT-OUTSIDE"})
    for x, y, d in holes:
        for dx, dy in ((3, 0), (0, 3)):
            space.add_line((x - dx, y - dy), (x + dx, y + dy), dxfattribs={"layer": "POP"})
        space.add_circle((x, y), d / 2, dxfattribs={"layer": "REFERENCE"})
    document.saveas(path)


def plain(folder):
    tubes = nest()
    holes = tubes + others()
    least = ligaments(holes)
    circle = largest_circle(holes, 16.875 * INCH)
    angles = rivets()
    for version in ("R2000", "R12"):
        cut_file(version, holes, folder / f"plain-{version}.dxf")
    return len(tubes), len(angles), least, circle


def least_of(runs, work):
    times = []
    for _ in range(runs):
        start = time.perf_counter()
        result = work()
        times.append(time.perf_counter() - start)
    return min(times), result


def main():
    program, spec = sys.argv[1:3]
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        ours, _ = least_of(
            5,
            lambda: subprocess.run(
                [program, "draw", spec, "--out", name], check=True, stdout=subprocess.DEVNULL
            ),
        )
        script, found = least_of(5, lambda: plain(folder))
        results = json.loads(next(folder.glob("*/results.json")).read_text())
    tubes, rivet_count, least, circle = found
    figures = results["figures"]
    print(f"tubes            {tubes}  program {figures['tube_count']}")
    print(f"rivets           {rivet_count}  program {figures['rivet_count']}")
    print(f"least ligament   {least:.4f}  program {min(l['mm'] for l in results['ligaments']['least']):.4f} mm")
    print(f"largest circle   {circle:.3f}  program {figures['largest_circle_mm'] or math.nan:.3f} mm")
    print(f"plain script     {script * 1000:.1f} ms, without start and imports")
    print(f"program          {ours * 1000:.1f} ms, whole process, every output")
    print(f"ratio            {script / ours:.1f}")


if __name__ == "__main__":
    main()
