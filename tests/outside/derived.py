#!/usr/bin/env python3
"""Pieces that are derived from others, by shapely and numpy: cut in two by a line, slashed and spread by an angle, a dart turned.

The pieces are quadrilaterals by seed, some with a cubic as top or side. A cubic is a dense polyline here; polygons are split and turned by
shapely, lengths along a cubic are summed by numpy. What is printed is what the program must find from the same numbers: areas, corners,
lengths of edges, in millimetres.

Source: plane geometry; shapely (GEOS) and numpy. Nothing of the program is used.

usage: derived.py > derived.json
"""
import json
import math
import random

import numpy as np
from shapely.affinity import rotate
from shapely.geometry import LineString, Point, Polygon
from shapely.ops import split

DENSE = 20000
COUNT = 30


class Side:
    """An edge: straight or cubic, as a dense polyline."""

    def __init__(self, a, b, handles=None):
        a, b = np.array(a), np.array(b)
        if handles is None:
            self.line = np.array([a, b])
        else:
            t = np.linspace(0, 1, DENSE + 1)[:, None]
            c, d = np.array(handles[0]), np.array(handles[1])
            self.line = (1 - t) ** 3 * a + 3 * (1 - t) ** 2 * t * c + 3 * (1 - t) * t**2 * d + t**3 * b
        self.along = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(self.line, axis=0).T))])

    @property
    def length(self):
        return float(self.along[-1])

    def at(self, share):
        return np.array([np.interp(share * self.length, self.along, self.line[:, k]) for k in (0, 1)])

    def until(self, share):
        keep = self.along < share * self.length
        return np.vstack([self.line[keep], self.at(share)])

    def beyond(self, share):
        keep = self.along > share * self.length
        return np.vstack([self.at(share), self.line[keep]])


def ring(*parts):
    points = np.vstack(parts)
    apart = np.hypot(*np.diff(points, axis=0).T) > 1e-9
    return Polygon(points[np.concatenate([[True], apart])])


def turned(shape, angle, about):
    return rotate(shape, angle, origin=tuple(about), use_radians=True)


def spot(p, angle, about):
    q = turned(Point(*p), angle, about)
    return [q.x, q.y]


def quad(rng):
    r = lambda low, high: round(rng.uniform(low, high), 2)
    return {
        "nw": [r(-20, 20), r(-20, 20)],
        "ne": [r(180, 260), r(-20, 20)],
        "se": [r(180, 260), r(280, 340)],
        "sw": [r(-20, 20), r(280, 340)],
    }


def sides(c, curves):
    return {
        "top": Side(c["nw"], c["ne"], curves.get("top")),
        "side": Side(c["ne"], c["se"], curves.get("side")),
        "hem": Side(c["se"], c["sw"]),
        "centre": Side(c["sw"], c["nw"]),
    }


def bowed(rng, a, b):
    """Handles of a cubic that bows a little to one side."""
    a, b = np.array(a), np.array(b)
    way, square = b - a, np.array([a[1] - b[1], b[0] - a[0]])
    return [[round(float(v), 2) for v in a + way * at + square * rng.uniform(-0.12, 0.12)] for at in (0.3, 0.7)]


def split_area(s, outline, a, b):
    """By shapely alone: the areas of the parts left and right of a line that is a little longer than from edge to edge."""
    way = (b - a) / np.hypot(*(b - a))
    parts = split(outline, LineString([a - way, b + way])).geoms
    west = [p for p in parts if p.distance(Point(*s["centre"].at(0.5))) < 1e-6]
    return sum(p.area for p in west), outline.area - sum(p.area for p in west)


def cut(rng, c, curves):
    s = sides(c, curves)
    at = {"top": round(rng.uniform(0.3, 0.7), 3), "hem": round(rng.uniform(0.3, 0.7), 3)}
    a, b = s["top"].at(at["top"]), s["hem"].at(at["hem"])
    outline = ring(*(s[e].line for e in ("top", "side", "hem", "centre")))
    west, east = split_area(s, outline, a, b)
    return {
        "does": "cut",
        "at": at,
        "area": outline.area,
        "west": west,
        "east": east,
        "start": a.tolist(),
        "end": b.tolist(),
        "line": float(np.hypot(*(b - a))),
        "top": at["top"] * s["top"].length,
        "hem": at["hem"] * s["hem"].length,
        "side": s["side"].length,
    }


def spread(rng, c, curves):
    """Slashed from the hem to the top, the hinge; the side's part turns outwards."""
    s = sides(c, curves)
    at = {"top": round(rng.uniform(0.3, 0.7), 3), "hem": round(rng.uniform(0.3, 0.7), 3)}
    degrees = round(rng.uniform(3, 30), 2)
    hinge, a = s["top"].at(at["top"]), s["hem"].at(at["hem"])
    stays = ring(s["top"].until(at["top"]), s["hem"].beyond(at["hem"]), s["centre"].line[1:])
    moves = ring(s["top"].beyond(at["top"]), s["side"].line[1:], s["hem"].until(at["hem"])[1:])
    # The way round in which both parts do not overlap.
    way = min((1, -1), key=lambda w: turned(moves, w * math.radians(degrees), hinge).intersection(stays).area)
    angle = way * math.radians(degrees)
    over = turned(moves, angle, hinge)
    to = spot(a, angle, hinge)
    wedge = Polygon([hinge, a, to])
    return {
        "does": "spread",
        "at": at,
        "degrees": degrees,
        "area": stays.area + over.area + wedge.area,
        "ne": spot(c["ne"], angle, hinge),
        "se": spot(c["se"], angle, hinge),
        "sw": c["sw"],
        "hem": s["hem"].length + math.dist(a, to),
        "top": s["top"].length,
        "side": s["side"].length,
    }


def dart(rng, c, curves):
    """A dart in the straight top, with a tip square to its middle, closed and opened in the side; the centre stays."""
    curves.pop("top", None)
    s = sides(c, curves)
    middle, intake, deep = (round(v, 2) for v in (rng.uniform(70, 110), rng.uniform(8, 30), rng.uniform(90, 150)))
    at = round(rng.uniform(0.3, 0.7), 3)
    top = s["top"]
    m = top.at(middle / top.length)
    way = (top.line[1] - top.line[0]) / top.length
    first, second = m - way * intake / 2, m + way * intake / 2
    tip = m + np.array([-way[1], way[0]]) * deep
    p = s["side"].at(at)
    stays = ring([c["nw"], first, tip, p], s["side"].beyond(at)[1:], s["hem"].line[1:])
    moves = ring([second, c["ne"]], s["side"].until(at)[1:], [tip])
    a, b = second - tip, first - tip
    angle = math.atan2(a[0] * b[1] - a[1] * b[0], float(a @ b))
    over = turned(moves, angle, tip)
    to = spot(p, angle, tip)
    return {
        "does": "dart",
        "middle": middle,
        "intake": intake,
        "deep": deep,
        "at": at,
        "area": stays.area + over.area + Polygon([tip, p, to]).area,
        "ne": spot(c["ne"], angle, tip),
        "se": c["se"],
        "tip": tip.tolist(),
        "top": top.length - intake,
        "side": s["side"].length,
        "opened": math.dist(p, to),
    }


def main():
    out = []
    for seed in range(1, COUNT + 1):
        rng = random.Random(seed)
        c = quad(rng)
        curves = {}
        if seed % 2 == 0:
            curves["top"] = bowed(rng, c["nw"], c["ne"])
        if seed % 3 == 0:
            curves["side"] = bowed(rng, c["ne"], c["se"])
        for does in (cut, spread, dart):
            own = dict(curves)
            made = does(rng, c, own)
            out.append({"seed": seed, "corners": c, "curves": own, **made})
    print(json.dumps(out, indent=0))


if __name__ == "__main__":
    main()
