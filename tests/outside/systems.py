"""Small systems of equations, solved by scipy: the outside judge of `src/numeric`.

Writes `systems.json` beside itself. Each system is stated here a second time, independently of the Rust test
(`tests/it/numeric_systems.rs`); curve lengths are integrated by `scipy.integrate.quad`. The settled solution is the
minimiser of sum(((x - start) / scale)^2) subject to the equations and limits: `minimize(method="SLSQP")`, polished from
its own result; `brentq` where there is one unknown and one equation; `least_squares` only where the best fit is single.

    python3 tests/outside/systems.py          (numpy and scipy; not needed to run the tests)
"""

import json
import pathlib

import numpy as np
from numpy import cos, exp, hypot, pi, sin, sqrt
from scipy.integrate import quad
from scipy.optimize import brentq, least_squares, minimize

INF = np.inf
DEGREES = pi / 36  # the scale of an angle: 5 degrees
FOUND = {}


def curve_length(p0, p1, p2, p3):
    p0, p1, p2, p3 = map(np.array, (p0, p1, p2, p3))

    def speed(t):
        u = 1 - t
        d = 3 * u * u * (p1 - p0) + 6 * u * t * (p2 - p1) + 3 * t * t * (p3 - p2)
        return hypot(d[0], d[1])

    return quad(speed, 0, 1, epsabs=1e-13, epsrel=1e-13, limit=200)[0]


def nearest(name, equations, start, scale, least=None, most=None, begin=None):
    start, scale = np.array(start, float), np.array(scale, float)
    n = len(start)
    least = np.full(n, -INF) if least is None else np.array(least, float)
    most = np.full(n, INF) if most is None else np.array(most, float)
    bounds = list(zip((least - start) / scale, (most - start) / scale))
    z = (np.array(begin if begin is not None else start, float) - start) / scale

    def residuals(z):
        return np.atleast_1d(np.array(equations(start + scale * z), float))

    def slopes(z, step=1e-3):
        # Five points: SLSQP's own two-point differences cost it four digits of the answer.
        columns = []
        for e in np.eye(n) * step:
            columns.append((8 * (residuals(z + e) - residuals(z - e)) - residuals(z + 2 * e) + residuals(z - 2 * e)) / 12)
        return np.array(columns).T / step

    for _ in range(4):
        result = minimize(
            lambda z: 0.5 * z @ z,
            z,
            jac=lambda z: z,
            bounds=bounds,
            constraints={"type": "eq", "fun": residuals, "jac": slopes},
            method="SLSQP",
            options={"ftol": 1e-16, "maxiter": 1000},
        )
        z = result.x
    worst = float(np.max(np.abs(residuals(z))))
    assert worst < 1e-6, (name, worst, result.message)
    FOUND[name] = {"how": "SLSQP", "x": list(map(float, start + scale * z)), "largest_residual": worst}


def root(name, equation, low, high):
    x = brentq(equation, low, high, xtol=1e-13, rtol=1e-14, maxiter=500)
    FOUND[name] = {"how": "brentq", "x": [float(x)], "largest_residual": float(abs(equation(x)))}


def best_fit(name, equations, start, scale, least=None, most=None):
    start, scale = np.array(start, float), np.array(scale, float)
    n = len(start)
    least = np.full(n, -INF) if least is None else np.array(least, float)
    most = np.full(n, INF) if most is None else np.array(most, float)
    eps = np.finfo(float).eps
    result = least_squares(
        lambda x: np.atleast_1d(np.array(equations(x), float)),
        np.clip(start, least + 1e-6, most - 1e-6),
        jac="3-point",
        bounds=(least, most),
        x_scale=scale,
        xtol=4 * eps,
        ftol=4 * eps,
        gtol=4 * eps,
        max_nfev=5000,
    )
    FOUND[name] = {
        "how": "least_squares",
        "x": list(map(float, result.x)),
        "largest_residual": float(np.max(np.abs(result.fun))),
    }


# One unknown
root("single, straight", lambda x: 3 * x - 12, -100, 100)
root("single, square", lambda x: x * x / 10 - 250, 0, 1000)
root("single, angle", lambda x: 200 * sin(x) - 77, 0, 1.5)
root("single, distance", lambda x: hypot(x, 120) - 173, 0, 1000)
root("single, steep", lambda x: exp(x / 40) - 60, 0, 1000)
root("single, root near its edge", lambda x: 10 * sqrt(x) - 20, 0, 1000)
root("single, handle of a curve", lambda h: curve_length((0, 0), (h, 0), (150, 180), (150, 240)) - 330, 1, 400)

# Chains: each equation fixes one more unknown
nearest("chain of two", lambda x: [x[0] ** 2 / 50 - 98, hypot(x[0], x[1]) - 113], [60, 70], [10, 10])
nearest(
    "chain of four",
    lambda x: [
        200 * cos(x[0]) - 150,
        200 * sin(x[0]) + x[1] - 180,
        hypot(x[1], x[2]) - 90,
        x[2] * x[3] / 10 - 25,
    ],
    [0.6, 40, 60, 2],
    [DEGREES, 10, 10, 0.2],
)

# Rings: all hang on all
nearest("ring of two", lambda x: [hypot(x[0], x[1]) - 200, hypot(x[0] - 240, x[1]) - 150], [130, 90], [10, 10])
nearest(
    "ring of three",
    lambda x: [x[0] + x[1] ** 2 / 300 - 90, x[1] + x[2] ** 2 / 300 - 70, x[2] + x[0] ** 2 / 300 - 80],
    [50, 50, 50],
    [10, 10, 10],
)
nearest(
    "ring of forty",
    lambda x: [x[i] + x[(i + 1) % 40] ** 2 / 400 - (60 + i) for i in range(40)],
    [50] * 40,
    [10] * 40,
)

# Redundant: stated once here, more often in the Rust test
nearest("redundant, twice the same", lambda x: [hypot(x[0], 60) - 100], [50], [10])
nearest("redundant, the sum", lambda x: [x[0] + x[1] - 90, x[0] * x[1] / 20 - 90], [70, 25], [10, 10])
nearest("redundant and free", lambda x: [hypot(x[0], x[1]) - 130], [100, 20], [10, 10])
nearest("redundant, three circles", lambda x: [hypot(x[0], x[1]) - 50, hypot(x[0] - 80, x[1]) - 50], [35, 20], [10, 10])

# Conflicting
best_fit("conflict of two", lambda x: [x[0] - 10, x[0] - 14], [0], [10])
best_fit("conflict of three", lambda x: [x[0] + x[1] - 10, x[0] - x[1] - 2, x[0] - 9], [0, 0], [10, 10])
best_fit(
    "conflict of five",
    lambda x: [x[0] - 10, x[1] - x[0] - 20, x[2] - x[1] - 30, x[3] - x[2] - 40, x[3] - 107],
    [0, 20, 40, 80],
    [10] * 4,
)
best_fit(
    "conflict, three circles",
    lambda x: [hypot(x[0], x[1]) - 100, hypot(x[0] - 260, x[1]) - 120, hypot(x[0] - 120, x[1] - 200) - 90],
    [110, 60],
    [10, 10],
)

# Free: more unknowns than equations
nearest("free, line", lambda x: [x[0] + 2 * x[1] - 170], [40, 40], [10, 10])
nearest("free, circle", lambda x: [hypot(x[0], x[1]) - 150], [60, 80], [10, 10])
nearest("free, ellipse", lambda x: [(x[0] / 3) ** 2 / 40 + x[1] ** 2 / 40 - 90], [40, 30], [10, 10])
nearest("free, length and angle", lambda x: [x[0] * sin(x[1]) - 60], [100, 0.3], [10, DEGREES])
nearest(
    "free, two of five",
    lambda x: [hypot(x[0], x[1]) + x[2] - 220, x[2] * x[3] / 50 + x[4] ** 2 / 100 - 130],
    [90, 60, 80, 50, 40],
    [10, 10, 10, 10, 10],
)
nearest(
    "free, two handles of a curve",
    lambda h: [curve_length((0, 0), (h[0], 0), (150, 240 - h[1]), (150, 240)) - 340],
    [60, 80],
    [10, 10],
)
nearest(
    "free, two curves",
    lambda h: [
        curve_length((0, 0), (h[0], 0), (150, 240 - h[1]), (150, 240))
        - curve_length((0, 0), (h[2], h[2] / 4), (110, 260 - h[3]), (110, 260))
        - 25
    ],
    [60, 80, 50, 50],
    [10, 10, 10, 10],
)

# Limited
nearest("limited, one rests", lambda x: [x[0] + 2 * x[1] - 170], [40, 40], [10, 10], most=[INF, 52])
nearest("limited, circle", lambda x: [hypot(x[0], x[1]) - 150], [60, 80], [10, 10], most=[75, INF], least=[0, 0])
nearest(
    "limited, two of five",
    lambda x: [hypot(x[0], x[1]) + x[2] - 220, x[2] * x[3] / 50 + x[4] ** 2 / 100 - 130],
    [90, 60, 80, 50, 40],
    [10, 10, 10, 10, 10],
    least=[0] * 5,
    most=[92, 300, 84, 300, 46],
)
nearest("limited, let go", lambda x: [x[0] + x[1] - 100], [20, 20], [10, 10], least=[20, 0], most=[INF, 300])
nearest("limited, start outside", lambda x: [x[0] + x[1] - 100], [10, 30], [10, 10], least=[45, 0], most=[90, 90])
nearest(
    "limited, six handles",
    lambda x: [sum(v * v for v in x) / 100 - 260],
    [50, 60, 70, 40, 55, 65],
    [10] * 6,
    least=[0] * 6,
    most=[56, 66, 72, 50, 90, 90],
)
best_fit("limit in the way, one", lambda x: [hypot(x[0], 120) - 173], [80], [10], most=[100])
best_fit(
    "limit in the way, two",
    lambda x: [hypot(x[0], x[1]) - 200, hypot(x[0] - 240, x[1]) - 150],
    [130, 90],
    [10, 10],
    most=[300, 100],
)

# The start decides
nearest("branch above", lambda x: [hypot(x[0], x[1]) - 100, x[0] - 60], [50, 10], [10, 10])
nearest("branch below", lambda x: [hypot(x[0], x[1]) - 100, x[0] - 60], [50, -10], [10, 10])
nearest("branch of a square, far", lambda x: [x[0] ** 2 / 10 - 90], [-5], [10])

# Without effect: always, and at the start only
nearest("without effect, one", lambda x: [3 * x[0] - 120], [10, 25], [10, 10])
nearest("without effect at the start", lambda x: [x[0] * x[1] / 10 - 90], [30, 0], [10, 10], begin=[30, 10])

# Badly scaled
nearest("scaled, rows", lambda x: [1e4 * (x[0] + x[1] - 50), 1e-3 * (x[0] - x[1] * x[1] / 60 + 4)], [10, 10], [10, 10])
nearest("scaled, columns", lambda x: [x[0] * 1e-4 + x[1] - 31, 300 * sin(x[1] / 100) - 0.002 * x[0] - 88], [1, 1], [10, 10])
nearest("scaled, valley", lambda x: [10 * (x[1] - x[0] ** 2), 1 - x[0]], [-1.2, 1], [1, 1])
nearest("scaled, mixed and free", lambda x: [x[0] * cos(x[1]) * x[2] - 140], [100, 0.5, 1.2], [10, DEGREES, 0.12])

path = pathlib.Path(__file__).with_name("systems.json")
path.write_text(json.dumps(FOUND, indent=1) + "\n")
