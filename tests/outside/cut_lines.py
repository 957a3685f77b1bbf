"""Cut lines of random outlines, judged by shapely.

    python3 cut_lines.py PROGRAM [--from SEED] [--count N]

Makes drafts by seed: closed outlines of five to nine straight and curved edges, each with a width of its own. The program finishes
them; what it prints is compared with the outline itself:

- each cut line is simple and encloses its stitch line;
- away from corners it lies at the edge's own width (0.01 mm), and no edge is lost;
- it turns by 360 degrees;
- for convex outlines of one width its area is that of Steiner's formula, with the corners' mitres in place of round ones.

Source: plane geometry; shapely (GEOS) for distances and validity. Nothing of the program is used but what it prints.
"""

import argparse
import json
import math
import random
import re
import subprocess
import sys
import tempfile
from pathlib import Path

import numpy as np
from shapely.geometry import LineString, Point, Polygon

WITHIN = 0.01
DENSE = 400


def bezier(c, t):
    c = np.asarray(c)
    t = np.asarray(t)[:, None]
    return (1 - t) ** 3 * c[0] + 3 * (1 - t) ** 2 * t * c[1] + 3 * (1 - t) * t**2 * c[2] + t**3 * c[3]


def points_of(path, dense):
    """The points of an SVG path of M, L, C and Z."""
    tokens = re.findall(r"[MLCZ]|-?[\d.]+(?:[eE][-+]?\d+)?", path)
    out, i, word = [], 0, None

    def take(n):
        nonlocal i
        values = [float(v) for v in tokens[i : i + n]]
        i += n
        return np.array(values).reshape(-1, 2)

    while i < len(tokens):
        if tokens[i].isalpha():
            word = tokens[i]
            i += 1
            if word == "Z":
                continue
        if word in "ML":
            out.append(take(2)[0])
        else:
            handles = take(6)
            out.extend(bezier([out[-1], *handles], np.linspace(0, 1, dense + 1)[1:]))
    return np.array(out)


def outline(rng):
    """Corners around a middle, with bulges for some edges; convex ones without hollows."""
    n = rng.randint(5, 9)
    convex = rng.random() < 0.4
    angles = sorted(2 * math.pi * (i + rng.uniform(-0.25, 0.25)) / n for i in range(n))
    radius = rng.uniform(150, 350)
    squash = rng.uniform(0.7, 1.3)
    spread = 0.0 if convex else 0.25
    corners = [
        (radius * (1 + rng.uniform(-spread, spread)) * math.cos(a), radius * squash * (1 + rng.uniform(-spread, spread)) * math.sin(a))
        for a in angles
    ]
    edges = []
    for i in range(n):
        a, b = np.array(corners[i]), np.array(corners[(i + 1) % n])
        along, out = (b - a) / 3, np.array([(b - a)[1], -(b - a)[0]])
        if rng.random() < 0.5:
            edges.append(None)
            continue
        low = 0.0 if convex else -0.12
        bulge = [out * rng.uniform(low, 0.12) for _ in range(2)]
        if convex:
            bulge[1] = bulge[0]
        edges.append((a + along + bulge[0], b - along + bulge[1]))
    one = rng.uniform(4, 16)
    widths = [one] * n if convex or rng.random() < 0.3 else [rng.choice([0, 5, 6.35, 10, 15.875, 20]) for _ in range(n)]
    return corners, edges, widths, convex


def draft(corners, edges, widths):
    n = len(corners)
    at = lambda p: f'"({p[0]:.9f} mm, {p[1]:.9f} mm)"'
    points = ", ".join(f'(name: "p{i}", at: {at(c)})' for i, c in enumerate(corners))
    lines = []
    for i, handles in enumerate(edges):
        end = f"p{(i + 1) % n}"
        by = f'straight("{end}")' if handles is None else f'curve({at(handles[0])}, {at(handles[1])}, "{end}")'
        lines.append(f'(name: "e{i}", from: "p{i}", by: [{by}])')
    allowances = ", ".join(f'(edge: "e{i}", width: "{w} mm")' for i, w in enumerate(widths))
    shape = ", ".join(f'(at: "p{i}", form: plain)' for i in range(n))
    return (
        '(format: "tracewheel draft", version: 0, chart: (girth: ["one"]), pieces: [(name: "p", '
        f'points: [{points}], edges: [{", ".join(lines)}], allowances: [{allowances}], corners: [{shape}])])'
    )


def dense_edges(corners, edges):
    n = len(corners)
    out = []
    for i, handles in enumerate(edges):
        a, b = np.array(corners[i]), np.array(corners[(i + 1) % n])
        t = np.linspace(0, 1, DENSE + 1)
        out.append(a + t[:, None] * (b - a) if handles is None else bezier([a, *handles, b], t))
    return out


def turning(points):
    legs = np.diff(np.vstack([points, points[:1]]), axis=0)
    legs = legs[np.hypot(*legs.T) > 1e-9]
    headings = np.arctan2(legs[:, 1], legs[:, 0])
    steps = np.diff(np.append(headings, headings[0]))
    return np.sum((steps + math.pi) % (2 * math.pi) - math.pi)


def judge(seed, program, folder):
    rng = random.Random(seed)
    while True:
        corners, edges, widths, convex = outline(rng)
        lines = dense_edges(corners, edges)
        stitch = Polygon(np.vstack([line[:-1] for line in lines]))
        if stitch.is_valid and stitch.area > 20_000:
            break
    path = folder / f"{seed}.ron"
    path.write_text(draft(corners, edges, widths))
    ran = subprocess.run([program, "finish", path, "--json"], capture_output=True, text=True)
    assert ran.returncode == 0, f"seed {seed}: {ran.stderr}"
    cut = json.loads(ran.stdout)["one"]["p"]["cuts"][0]
    points = points_of(cut["outline"], DENSE)
    ring = Polygon(points)
    assert ring.is_valid, f"seed {seed}: the cut line is not simple"
    assert ring.buffer(1e-3).contains(stitch), f"seed {seed}: the cut line does not enclose the stitch line"
    assert abs(abs(turning(points)) - 2 * math.pi) < 1e-6, f"seed {seed}: it turns by {turning(points)}"
    boundary = LineString(np.vstack([points, points[:1]]))
    sense = 1 if turning(np.vstack([line[:-1] for line in lines])) > 0 else -1
    worst, seen = 0.0, 0
    for i, (line, width) in enumerate(zip(lines, widths)):
        legs = np.diff(line, axis=0)
        length = np.hypot(*legs.T).sum()
        # Away from corners: farther than any allowance reaches along the edge there.
        clear = 3 * max(widths) + 5
        along = np.concatenate([[0], np.cumsum(np.hypot(*legs.T))])
        middle = [k for k in range(1, DENSE) if clear < along[k] < length - clear]
        for k in middle[:: max(1, len(middle) // 12)]:
            way = line[k + 1] - line[k - 1]
            out = np.array([way[1], -way[0]]) / np.hypot(*way) * sense
            foot = Point(line[k] + out * width)
            others = [o for j, o in enumerate(lines) if j != i]
            # Where another edge's allowance reaches over, that one holds.
            if any(LineString(o).distance(foot) < widths[j] - 1e-6 for j, o in enumerate(lines) if j != i):
                continue
            worst = max(worst, boundary.distance(foot))
            seen += 1
    assert worst <= WITHIN or cut["trimmed"], f"seed {seed}: the cut line is {worst:.4f} mm away from where it should be"
    if convex:
        # Steiner: A + w P + w² times half the turning of the curves and the mitres of the corners.
        width, corner_sum, turned = widths[0], 0.0, 0.0
        for i in range(len(lines)):
            before, after = lines[i - 1], lines[i]
            a = edge_way(corners, edges, i - 1, end=True)
            b = edge_way(corners, edges, i, end=False)
            turn = abs(math.atan2(a[0] * b[1] - a[1] * b[0], a @ b))
            corner_sum += math.tan(turn / 2)
            turned += turn
        area = stitch_area(corners, edges) + width * sum(edge_length(corners, edges, i) for i in range(len(lines)))
        area += width * width * (corner_sum + (2 * math.pi - turned) / 2)
        assert abs(ring.area - area) < 1e-6 * area + 0.5, f"seed {seed}: area {ring.area} for {area}"
    return worst, seen, convex, bool(cut["trimmed"])


def edge_way(corners, edges, i, end):
    n = len(corners)
    i %= n
    a, b = np.array(corners[i]), np.array(corners[(i + 1) % n])
    if edges[i] is None:
        way = b - a
    else:
        way = b - edges[i][1] if end else edges[i][0] - a
    return way / np.hypot(*way)


def edge_length(corners, edges, i):
    n = len(corners)
    a, b = np.array(corners[i]), np.array(corners[(i + 1) % n])
    if edges[i] is None:
        return float(np.hypot(*(b - a)))
    legs = np.diff(bezier([a, *edges[i], b], np.linspace(0, 1, 20_001)), axis=0)
    return float(np.hypot(*legs.T).sum())


def stitch_area(corners, edges):
    n = len(corners)
    dense = []
    for i in range(n):
        a, b = np.array(corners[i]), np.array(corners[(i + 1) % n])
        dense.append(np.array([a]) if edges[i] is None else bezier([a, *edges[i], b], np.linspace(0, 1, 4001))[:-1])
    x, y = np.vstack(dense).T
    return abs(float(np.dot(x, np.roll(y, -1)) - np.dot(y, np.roll(x, -1)))) / 2


def main():
    call = argparse.ArgumentParser()
    call.add_argument("program")
    call.add_argument("--from", dest="first", type=int, default=1)
    call.add_argument("--count", type=int, default=200)
    asked = call.parse_args()
    worst, places, convex, trimmed = 0.0, 0, 0, 0
    with tempfile.TemporaryDirectory() as folder:
        for seed in range(asked.first, asked.first + asked.count):
            w, seen, is_convex, is_trimmed = judge(seed, asked.program, Path(folder))
            worst = worst if is_trimmed else max(worst, w)
            places, convex, trimmed = places + seen, convex + is_convex, trimmed + is_trimmed
    assert places > 10 * asked.count, f"only {places} places were compared"
    print(
        f"{asked.count} outlines, {places} places compared, worst {worst:.5f} mm off its width; {convex} convex ones have Steiner's "
        f"area; {trimmed} trimmed"
    )


if __name__ == "__main__":
    sys.exit(main())
