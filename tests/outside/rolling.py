"""Seams rolled in numpy on dense polylines, against what the program says.

    python3 rolling.py PROGRAM DRAFT SEAM... [--size S]

For each seam the program prints both sides as curves, the notches of both sides with their gap, and the motion that lays the piece of
side two along side one at a distance. Here both sides are dense polylines: distances to notches are summed along them, and the
polyline of side two is rolled by hand: its point at the distance onto that of side one, tangents in line, on the other hand.

Source: the definition of rolling without slipping. Nothing of the program is used but what it prints.
"""

import argparse
import json
import re
import subprocess
import sys

import numpy as np

DENSE = 4000
WITHIN = 0.01


def polyline(path):
    tokens = re.findall(r"[MLC]|-?[\d.]+(?:[eE][-+]?\d+)?", path)
    out, i, word = [], 0, None
    while i < len(tokens):
        if tokens[i].isalpha():
            word, i = tokens[i], i + 1
        count = 6 if word == "C" else 2
        p = np.array([float(v) for v in tokens[i : i + count]]).reshape(-1, 2)
        i += count
        if word == "C":
            t = np.linspace(0, 1, DENSE + 1)[1:, None]
            c = [out[-1], *p]
            out.extend((1 - t) ** 3 * c[0] + 3 * (1 - t) ** 2 * t * c[1] + 3 * (1 - t) * t**2 * c[2] + t**3 * c[3])
        elif out:
            t = np.linspace(0, 1, DENSE + 1)[1:, None]
            out.extend(out[-1] + t * (p[0] - out[-1]))
        else:
            out.append(p[0])
    return np.array(out)


def along(line):
    return np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(line, axis=0).T))])


def at(line, distance):
    s = along(line)
    return np.array([np.interp(distance, s, line[:, k]) for k in (0, 1)])


def way(line, distance):
    a, b = at(line, max(distance - 0.05, 0)), at(line, min(distance + 0.05, along(line)[-1]))
    return (b - a) / np.hypot(*(b - a))


def place_of(lines, point):
    """How far along a run of polylines a point lies; each in its own frame, so the nearest place of all."""
    best, so_far = (np.inf, 0.0), 0.0
    for line in lines:
        d = np.hypot(*(line - point).T)
        k = int(d.argmin())
        best = min(best, (d[k], so_far + along(line)[k]))
        so_far += along(line)[-1]
    return best


def main():
    call = argparse.ArgumentParser()
    call.add_argument("program")
    call.add_argument("draft")
    call.add_argument("seams", nargs="+")
    call.add_argument("--size", default=None)
    asked = call.parse_args()
    size = ["--size", asked.size] if asked.size else []
    for seam in asked.seams:
        say = lambda *more: json.loads(
            subprocess.run([asked.program, "roll", asked.draft, seam, *size, "--json", *more], capture_output=True, text=True, check=True).stdout
        )
        told = say()
        sides = [[polyline(p) for p in side["parts"]] for side in told["sides"]]
        for lines, side in zip(sides, told["sides"]):
            total = sum(along(line)[-1] for line in lines)
            assert abs(total - side["length"]) < WITHIN, f"{seam}: a side is {side['length']} and not {total}"
        assert told["notches"], f"{seam} has no notch to compare"
        for notch in told["notches"]:
            places = []
            for lines, point in zip(sides, notch["points"]):
                away, place = place_of(lines, np.array(point))
                assert away < 0.05, f"{seam}: notch {notch['name']} lies {away} off its side"
                places.append(place)
            gap = places[0] - places[1]
            assert abs(gap - notch["gap"]) < 0.2, f"{seam}: notch {notch['name']} is {gap} apart and not {notch['gap']}"
        worst = 0.0
        shortest = min(side["length"] for side in told["sides"])
        if all(len(lines) == 1 for lines in sides):
            for share in (0.0, 0.21, 0.5, 0.83, 1.0):
                distance = share * shortest
                rolled = say("--to", str(distance))
                one, two = sides[0][0], sides[1][0]
                p, u, q, v = at(one, distance), way(one, distance), at(two, distance), way(two, distance)
                motion = np.array(next(piece["motion"] for piece in rolled["pieces"] if piece["rolled"]))
                linear, shift = motion[:4].reshape(2, 2).T, motion[4:]
                worst = max(worst, np.hypot(*(linear @ q + shift - p)))
                turn = linear @ v
                assert abs(turn[0] * u[1] - turn[1] * u[0]) < 1e-3 and turn @ u > 0, f"{seam}: the sides do not touch at {distance}"
            assert worst < WITHIN, f"{seam}: rolled {worst} mm beside it"
        print(f"{seam}: {len(told['notches'])} notches, gaps agree; rolled to five places, worst {worst:.4f} mm off")


if __name__ == "__main__":
    sys.exit(main())
