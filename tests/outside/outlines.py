#!/usr/bin/env python3
"""Prints outlines.json: lengths and sizes of the outlines in svg/*.svg, by svgelements, which shares nothing with the program.

Lengths in mm, width and height of the smallest upright rectangle in mm, in the order in which the outlines stand. The module
works in CSS pixels, 96 to the inch (CSS Values and Units, W3C). It reads the files and places things; the curves are then walked
here, point by point in their own coordinates and through their matrix, because its own lengths of arcs under a skew are not those of the
standard (an ellipse of radii a and b under skewX(s) is 2 sqrt(a^2 + (b tan s)^2) wide, it gives 2 a).
Run: python3 tests/outside/outlines.py   (svgelements, numpy)
"""
import glob, json, os
import numpy as np
from svgelements import SVG, Close, Move, Path, Point, Shape

CSS = 25.4 / 96
STEPS = 4000
HERE = os.path.dirname(os.path.abspath(__file__))


def walked(segment, matrix, steps):
    """Points of a segment, shown by its matrix, in mm."""
    shown = [matrix.point_in_matrix_space(Point(segment.point(i / steps))) for i in range(steps + 1)]
    return np.array([(p.x, p.y) for p in shown]) * CSS


def length(points):
    return np.hypot(*np.diff(points, axis=0).T).sum()


def outline(element):
    path = Path(element)
    total, all_points = 0.0, []
    for segment in path.segments(transformed=False):
        if isinstance(segment, Move) or segment.start is None or segment.start == segment.end and isinstance(segment, Close):
            continue
        points = walked(segment, path.transform, STEPS)
        # The polygon is too short by a share of 1/steps^2: once more with half the steps takes that out.
        total += (4 * length(points) - length(points[::2])) / 3
        all_points.append(points)
    every = np.concatenate(all_points)
    size = every.max(axis=0) - every.min(axis=0)
    return dict(length=total, width=float(size[0]), height=float(size[1]))


def main():
    found = {}
    for file in sorted(glob.glob(os.path.join(HERE, "svg", "*.svg"))):
        shapes = [e for e in SVG.parse(file, reify=False, ppi=96).elements() if isinstance(e, Shape)]
        found[os.path.basename(file)] = [{k: round(float(v), 5) for k, v in outline(e).items()} for e in shapes]
    print(json.dumps(found, indent=1))


if __name__ == "__main__":
    main()
