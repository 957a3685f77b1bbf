#!/usr/bin/env python3
"""What styled pieces must measure, by closed forms: circle and gored skirts from a straight one, a lining and an interfacing taken from a
shell, a pocket over a seam, turn of cloth, a yoke, a flat collar, a hood, a raglan sleeve, a facing over a closed dart.

The drafts are `tests/cases/*.ron`. What is printed is what the program must measure in them: for each draft and each set of values put in
it, formulas with their numbers by size, in mm, mm2 or plain, and how far they may be off.

Sources: `draft-values.json`, `circle_skirts`, for radii, hem arcs and areas of circle skirts; case C088 (1 1/4 in and 5/8 in); the rest is
plane geometry, in numpy where points are turned. Nothing of the program is used.

usage: styling.py > styling.json
"""
import json
import math
import os

import numpy as np

HERE = os.path.dirname(os.path.abspath(__file__))
UNIT = {"cm": 10.0, "in": 25.4}
CHEST = {"S": 880.0, "L": 1040.0}
EXACT = 1e-3


def circles():
    """Rows of the published table: by size, waist, fraction, length, radii and hem arc in mm."""
    with open(os.path.join(HERE, "draft-values.json")) as file:
        rows = json.load(file)["circle_skirts"]["rows"]
    out = {}
    for row in rows:
        unit = UNIT[row["unit"]]
        name = f"{row['waist']:g}{row['unit']}_{row['kind'].replace('-', '_')}"
        mm = {k: row[k] * unit for k in ("waist", "length", "waist_radius", "hem_radius", "hem_arc")}
        out[name] = {**mm, "fraction": row["fraction"], "area": row["ring_area"] * unit**2}
    return out


def by_size(rows, value):
    return {size: value(row) for size, row in rows.items()}


def circle_from_straight():
    rows = circles()
    # Eight hinged slashes: straight strips around a circle that touches each in its middle.
    turn = lambda r: math.pi / 2 * r["fraction"] / 8
    inner = lambda r: r["waist"] / 32 / (2 * math.tan(turn(r) / 2))
    whole = lambda r: math.pi / 2 * r["fraction"]
    return {
        "gap(true_circle.middle, true_circle.nw)": by_size(rows, lambda r: r["waist_radius"]),
        "gap(true_circle.middle, true_circle.se)": by_size(rows, lambda r: r["hem_radius"]),
        "4 * length(true_circle.hem)": by_size(rows, lambda r: r["hem_arc"]),
        "4 * length(true_circle.top)": by_size(rows, lambda r: r["waist"]),
        "4 * area(true_circle) / 1 mm": by_size(rows, lambda r: r["area"]),
        "gap(plain.middle, plain.ne)": by_size(rows, inner),
        "gap(plain.middle, plain.sw)": by_size(rows, lambda r: inner(r) + r["length"]),
        "length(plain.top)": by_size(rows, lambda r: whole(r) * inner(r)),
        "length(plain.hem)": by_size(rows, lambda r: whole(r) * (inner(r) + r["length"])),
    }


def gores_from_straight():
    rows = circles()
    flare = lambda r: math.pi * r["fraction"] * r["length"] / 8
    return {
        # The gores together are as wide at the hem as the arc of the circle skirt is long.
        "8 * length(gore.hem)": by_size(rows, lambda r: r["hem_arc"]),
        "8 * length(gore.top)": by_size(rows, lambda r: r["waist"]),
        "length(gore.side)": by_size(rows, lambda r: math.hypot(r["length"], flare(r))),
        "length(gore.centre) - length(gore.side)": by_size(rows, lambda r: 0.0),
        "area(gore) / 1 mm": by_size(rows, lambda r: r["length"] * (r["waist"] / 8 + flare(r))),
    }


def polygon(points):
    x, y = np.array(points).T
    return float(abs(np.dot(x, np.roll(y, -1)) - np.dot(y, np.roll(x, -1))) / 2)


def meet(a, b, c, d):
    """Where the lines a-b and c-d meet."""
    a, b, c, d = map(np.array, (a, b, c, d))
    s = np.linalg.solve(np.array([b - a, c - d]).T, c - a)
    return a + s[0] * (b - a)


def c088(facing, long):
    past, below, hem = 31.75, 15.875, 40.0
    all_sizes = lambda value: {size: value for size in CHEST}
    out = {}
    for lining, shell in (("lining", "shell_in_lining"), ("lining_of_cut", "shell_in_cut")):
        for at in ("2/5", "3/5", "4/5"):
            point = f"{lining}.front_edge.at({at})"
            out[f"gap({point}, foot({point}, {shell}.facing_edge))"] = all_sizes(past)
        deep = below + (hem if lining == "lining_of_cut" else 0.0)
        out[f"{lining}.c.y"] = all_sizes(long + deep)
        out[f"{lining}.front_hem.y"] = all_sizes(long + deep)
    out["shell_with_hem.c.y"] = all_sizes(long + hem)
    area = {}
    for size, chest in CHEST.items():
        wide = chest / 4
        # The side's allowance runs from 1 cm at the top to 2 cm at the hem; all other corners are square.
        side = ((wide + 10, 0), (wide + 20, long))
        upper = meet(*side, (0, -15), (1, -15))
        lower = meet(*side, (0, long + hem), (1, long + hem))
        area[size] = polygon([(-15, -15), upper, lower, (-15, long + hem)])
    out["area(interfacing) / 1 mm"] = area
    return out


def pocket_over_seam():
    share = 16 / 60 + 20 / 60  # how far down the seam the pocket's lower edge lies
    over = lambda chest: chest / 8 + share * (chest / 6 - chest / 8)
    left, right = (lambda c: c / 12), (lambda c: c / 12 + c / 6)
    by = lambda value: {size: value(chest) for size, chest in CHEST.items()}
    slant = lambda c: math.hypot(600, c / 6 - c / 8)
    return {
        "length(inner.pocket)": by(lambda c: 160 + over(c) - left(c)),
        "length(outer.pocket)": by(lambda c: 160 + right(c) - over(c)),
        "place(inner.panel, inner.pocket.at(1))": by(lambda c: share * slant(c)),
        "place(reversed(outer.panel), outer.pocket.at(0))": by(lambda c: share * slant(c)),
        "area(patch) / 1 mm": by(lambda c: 160 * c / 6),
    }


def turn_of_cloth():
    by = lambda value: {size: value(chest) for size, chest in CHEST.items()}
    turn = math.pi / 3
    outer = lambda c: c / 5 + 70
    # The band between an arc and its parallel that runs from 2 mm to 0: the integral of R d + d^2 / 2.
    return {
        "length(upper.back) - length(under.back)": by(lambda c: 2.0),
        "length(upper.front) - length(under.front)": by(lambda c: 0.0),
        "length(upper.neck) - length(under.neck)": by(lambda c: 0.0),
        "(area(upper) - area(under)) / 1 mm": by(lambda c: turn * (outer(c) + 2 / 3)),
        "length(outer_stand.centre) - length(stand.centre)": by(lambda c: 2.0),
        "length(outer_stand.side) - length(stand.side)": by(lambda c: 0.0),
        "(area(outer_stand) - area(stand)) / 1 mm": by(lambda c: c / 4),
    }


def laid_pieces():
    by = lambda value: {size: value(chest) for size, chest in CHEST.items()}
    r = lambda c: c / 12
    ring = lambda turn, a, b: turn / 2 * (b * b - a * a)

    def yoke(c):
        # Half a ring less what lies behind two chords: from a third of the back neckline, two thirds of its armhole and so in front.
        at = lambda radius, degrees: (radius * math.cos(math.radians(degrees)), radius * math.sin(math.radians(degrees)))
        inner, outer = r(c), r(c) + 120
        a, b = at(inner, -60), at(outer, -60)
        fan = lambda radius: 120 / 360 * math.pi * radius * radius
        # Both chords run along the same radius, so the yoke is a ring sector of 120 degrees.
        return fan(outer) - fan(inner), math.dist(a, b)

    return {
        "length(together.neckline) + length(together.f_neckline)": by(lambda c: math.pi * r(c)),
        "area(together) / 1 mm": by(lambda c: ring(math.pi, r(c), r(c) + 120)),
        "length(collar.neckline) + length(collar.f_neckline) - length(back.neckline) - length(front.neckline)": by(lambda c: 0.0),
        "length(collar.outer)": by(lambda c: math.pi * (r(c) + 80)),
        "area(collar) / 1 mm": by(lambda c: ring(math.pi, r(c), r(c) + 80)),
        "area(yoke) / 1 mm": by(lambda c: yoke(c)[0]),
        "length(yoke.back_seam)": by(lambda c: yoke(c)[1]),
        "length(yoke.front_seam)": by(lambda c: yoke(c)[1]),
        "length(hood.neck_back) + length(hood.neck_front)": by(lambda c: math.pi * r(c)),
        # Laid at the shoulder, the front's middle is the back's, a radius below the nape.
        "hood.front_neck.y": by(lambda c: 2 * r(c)),
        "hood.front_neck.x": by(lambda c: 0.0),
    }


def waistband():
    by = lambda value: {size: value(chest / 4) for size, chest in CHEST.items()}
    ring = lambda degrees, a, b: math.radians(degrees) / 2 * (b * b - a * a)
    return {
        "length(shaped_band.waist) + length(shaped_band.b_waist)": by(lambda r: math.pi / 2 * r),
        "length(shaped_band.lower) + length(shaped_band.b_lower)": by(lambda r: math.pi / 2 * (r + 40)),
        "area(shaped_band) / 1 mm": by(lambda r: ring(90, r, r + 40)),
        # The back's centre lies square to the front's, a quarter of the ring further on.
        "shaped_band.b_low_centre.x": by(lambda r: r + 40),
        "shaped_band.b_low_centre.y": by(lambda r: 0.0),
        "length(straight_band.lower)": by(lambda r: math.pi * r + 30),
    }


def raglan():
    def numbers(c):
        polar = lambda p, degrees, far: p + far * np.array([math.cos(math.radians(degrees)), math.sin(math.radians(degrees))])
        nape, neck = np.array([0.0, 0.0]), np.array([c / 12, -20.0])
        tip = polar(neck, 20, 120)
        at_neck, at_arm, under = (nape + neck) / 2, polar(tip, 80, 120), polar(tip, 80, 200)
        low_side = under + [0, 200]
        back = polygon([nape, neck, tip, under, low_side, (0, low_side[1])])
        crown = np.array([0.0, 0.0])
        match = polar(crown, 125, 120)
        arm = polar(match, 135, 80)
        wrist = arm + [0, 400]
        sleeve = polygon([crown, match, arm, wrist, (0, wrist[1])])
        part = polygon([at_neck, neck, tip, at_arm])
        return back, sleeve, part, math.dist(at_neck, at_arm), math.dist(at_neck, neck)

    by = lambda value: {size: value(*numbers(chest)) for size, chest in CHEST.items()}
    return {
        "area(body) / 1 mm": by(lambda back, sleeve, part, line, neck: back - part),
        "area(raglan_sleeve) / 1 mm": by(lambda back, sleeve, part, line, neck: sleeve + part),
        "length(body.raglan)": by(lambda back, sleeve, part, line, neck: line),
        "length(raglan_sleeve.b_raglan)": by(lambda back, sleeve, part, line, neck: line),
        "length(body.neckline) - length(raglan_sleeve.b_neckline)": by(lambda back, sleeve, part, line, neck: 0.0),
        "length(raglan_sleeve.b_neckline)": by(lambda back, sleeve, part, line, neck: neck),
    }


def facing_over_dart():
    def numbers(c):
        wide, tip = c / 4, np.array([100.0, 150.0])
        turn = 2 * math.atan(15 / 150)
        # The part right of the dart is turned about the tip until its leg lies on the other one.
        sin, cos = math.sin(-turn), math.cos(-turn)
        turned = lambda p: tip + np.array([[cos, -sin], [sin, cos]]) @ (np.array(p) - tip)
        ne, side = turned((wide, 0)), turned((wide, 50))
        foot, inner = np.array([85.0, 0.0]), np.array([0.0, 50.0])
        return polygon([(0, 0), foot, ne, side, inner]), math.dist(inner, side), wide - 30

    by = lambda value: {size: value(*numbers(chest)) for size, chest in CHEST.items()}
    return {
        "area(facing) / 1 mm": by(lambda area, inner, top: area),
        "length(facing.inner)": by(lambda area, inner, top: inner),
        "length(facing.top)": by(lambda area, inner, top: top),
    }


def main():
    drafts = {
        "circle-from-straight": [({}, circle_from_straight())],
        "gores-from-straight": [({}, gores_from_straight())],
        "C088": [
            ({"facing": f"{facing} cm", "long": f"{long} cm"}, c088(10 * facing, 10 * long))
            for facing, long in ((6, 60), (7.5, 60), (6, 64))
        ],
        "pocket-over-seam": [({}, pocket_over_seam())],
        "turn-of-cloth": [({}, turn_of_cloth())],
        "laid-pieces": [({}, laid_pieces())],
        "waistband": [({}, waistband())],
        "raglan": [({}, raglan())],
        "facing-over-dart": [({}, facing_over_dart())],
    }
    out = {
        draft: [
            {"with": values, "measures": [{"formula": f, "by_size": n} for f, n in measures.items()]}
            for values, measures in runs
        ]
        for draft, runs in drafts.items()
    }
    print(json.dumps(out, indent=1))


if __name__ == "__main__":
    main()
