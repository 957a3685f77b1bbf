"""Writes splines.json: interpolating cubic splines by scipy's CubicSpline, to judge `curves::spline`.

Centripetal parameters; each end natural, or clamped to a heading with the speed chord/step of the end span.
Run: python3 tests/outside/splines.py   (numpy, scipy; seeded, so that the same file comes out)
"""
import json, math, os, random
import numpy as np
from scipy.interpolate import CubicSpline
from scipy.integrate import quad

rng = random.Random(20)
cases = []
for n in range(2, 9):
    for ends in ("natural natural", "clamped clamped", "natural clamped", "clamped natural"):
        for _ in range(2):
            walk, heading = [(rng.uniform(-50, 50), rng.uniform(-50, 50))], rng.uniform(-math.pi, math.pi)
            while len(walk) < n:
                heading += rng.uniform(-1.2, 1.2)
                step = math.exp(rng.uniform(math.log(2), math.log(150)))
                walk.append((walk[-1][0] + step * math.cos(heading), walk[-1][1] + step * math.sin(heading)))
            points = np.array(walk)
            chord = np.hypot(*np.diff(points, axis=0).T)
            knots = np.concatenate([[0], np.cumsum(np.sqrt(chord))])
            headings, conditions = [], []
            for end, kind in zip((0, -1), ends.split()):
                if kind == "natural":
                    headings.append(None)
                    conditions.append((2, np.zeros(2)))
                else:
                    a = rng.uniform(-math.pi, math.pi)
                    headings.append(a)
                    speed = chord[end] / math.sqrt(chord[end])
                    conditions.append((1, speed * np.array([math.cos(a), math.sin(a)])))
            s = CubicSpline(knots, points, bc_type=tuple(conditions))
            first = s.derivative()
            beziers, length = [], 0.0
            for a, b in zip(knots, knots[1:]):
                third = (b - a) / 3
                beziers.append([p.tolist() for p in (s(a), s(a) + first(a) * third, s(b) - first(b) * third, s(b))])
                middle = [a + (b - a) * k / 8 for k in range(1, 8)]
                length += quad(lambda t: math.hypot(*first(t)), a, b, points=middle, epsabs=1e-11, epsrel=1e-13, limit=400)[0]
            cases.append({"points": points.tolist(), "leaving": headings[0], "arriving": headings[1],
                          "beziers": beziers, "length": length})
out = {"source": "scipy CubicSpline, lengths by scipy.integrate.quad (QUADPACK)", "cases": cases}
with open(os.path.join(os.path.dirname(__file__), "splines.json"), "w") as f:
    json.dump(out, f, indent=1)
    f.write("\n")
