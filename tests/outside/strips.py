#!/usr/bin/env python3
"""Strips from cloth: exact geometry of the bias by shapely, and published numbers. Prints JSON (kept as strips.json).

Lengths in mm. Sources of what is published, each read on a page:
- `yard`: yards of bias tape from one yard of cloth, fiber-images.com, "How to make bias tape" (joins of 1/4 in are ours).
- `widths`: strips for tape makers, milliemoonshop.blogspot.com, "Tape maker: my favourite gadget" (6 to 50 mm); four times the finished width
  for binding that is folded twice, singerco.com.au, "Make bias binding".
"""
import json
import math

from shapely import affinity
from shapely.geometry import LineString, Polygon, box

INCH = 25.4
YARD = 36 * INCH
SHORTEST = 300.0
PUBLISHED = {
    35: {1.25: 23, 1.75: 15, 2.25: 12, 2.75: 10, 3.75: 8},
    45: {1.25: 30, 1.75: 21.5, 2.25: 16, 2.75: 14, 3.75: 10},
    54: {1.25: 37, 1.75: 26, 2.25: 20, 2.75: 16.5, 3.75: 12},
    60: {1.25: 40, 1.75: 29, 2.25: 22.5, 2.75: 19, 3.75: 14},
}


def diagonal(at, far):
    """A line at 45 degrees, so far from the corner at the origin, measured square to it."""
    foot = at / math.sqrt(2)
    return LineString([(foot - far, foot + far), (foot + far, foot - far)])


def pieces(length, width, strip):
    """The length of each strip that lies on a diagonal of the cloth: the shorter of its two sides, by cutting both with the cloth."""
    cloth = box(0, 0, width, length)
    far = 2 * (length + width)
    out, at = [], 0.0
    while at + strip <= (length + width) / math.sqrt(2) + 1e-9:
        out.append(min(diagonal(a, far).intersection(cloth).length for a in (at, at + strip)))
        at += strip
    return out


def join_loss(allowance):
    """What a join on the diagonal takes: a strip and the same one moved along until their ends overlap by both allowances, square to the join."""
    wide, long = 40.0, 500.0
    one = Polygon([(0, 0), (long, 0), (long - wide, wide), (-wide, wide)])
    moved = long - 2 * allowance * math.sqrt(2)
    overlap = one.intersection(affinity.translate(one, moved, 0))
    # A parallelogram at 45 degrees: its height square to the slanting sides is both allowances.
    slanting = wide * math.sqrt(2)
    assert abs(overlap.area / slanting - 2 * allowance) < 1e-9
    both = long + moved
    return 2 * long - both


def main():
    across = [width * unit for width, unit in ((45, INCH), (60, INCH), (115, 10), (150, 10))]
    yard = []
    for width, row in PUBLISHED.items():
        for strip, yards in row.items():
            join = INCH / 4
            kept = [p for p in pieces(YARD, width * INCH, strip * INCH) if p >= SHORTEST]
            length = sum(kept) - (len(kept) - 1) * join_loss(join) - strip * INCH
            yard.append(dict(
                yard=YARD, width=width * INCH, strip=strip * INCH, join=join, published=yards * YARD,
                area=YARD * width / strip, length=length, pieces=len(kept),
            ))
    print(json.dumps(dict(
        across=[dict(width=w, longest=diagonal(math.sqrt(2) * w / 2, 9 * w).intersection(box(0, 0, w, 9 * w)).length)
                for w in across],
        joins=[dict(allowance=a, lost=join_loss(a)) for a in (6.0, 6.35, 10.0)],
        yard=yard,
        widths=[dict(finished=t, layers=2, cut=c) for t, c in ((6, 13), (12, 25), (18, 36), (25, 48), (50, 96))]
        + [dict(finished=INCH / 4, layers=4, cut=INCH)],
    ), indent=1))


if __name__ == "__main__":
    main()
