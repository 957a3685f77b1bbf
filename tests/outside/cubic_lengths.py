"""Writes cubic_lengths.json: lengths of cubics, places on them and lengths of tapering parallels, by mpmath at 30 digits.

Usual curves, near-cusps and cusps, zero handles, turns on one line. The integrals are cut at every minimum of the speed and
close around it, so that they do not depend on the rule of the program.
Run: python3 tests/outside/cubic_lengths.py   (mpmath; seeded, so that the same file comes out)
"""
import functools, json, os, random
import mpmath as mp

mp.mp.dps = 30
rng = random.Random(7)

def legs(c):
    return [(c[k + 1][0] - c[k][0], c[k + 1][1] - c[k][1]) for k in range(3)]

def hodograph(c):
    """The velocity by powers of t, highest first, of both coordinates."""
    a, b, d = legs(c)
    return [(3 * (a[i] - 2 * b[i] + d[i]), 6 * (b[i] - a[i]), 3 * a[i]) for i in range(2)]

def speed_of(c):
    (p, q, r), (s, u, v) = hodograph(c)
    return lambda t: mp.sqrt(((p * t + q) * t + r) ** 2 + ((s * t + u) * t + v) ** 2)

@functools.cache
def slowest(c):
    """Where the speed of a curve has a minimum or a maximum."""
    a, b, d = legs(c)
    squares = [0] * 5
    for i in range(2):
        p = [a[i], 2 * (b[i] - a[i]), a[i] - 2 * b[i] + d[i]]
        for j in range(3):
            for k in range(3):
                squares[j + k] += p[j] * p[k]
    slope = [k * squares[k] for k in range(4, 0, -1)]
    while slope and slope[0] == 0:
        slope.pop(0)
    return mp.polyroots(slope, maxsteps=500, extraprec=200, error=False) if len(slope) > 1 else []

def cuts(c, end):
    """0, end and what lies around the minima of the speed."""
    places = {mp.mpf(0), end}
    for r in slowest(tuple(c)):
        if abs(mp.im(r)) < mp.mpf("1e-6"):
            for k in [None] + list(range(1, 15)):
                for sign in (-1, 1):
                    place = mp.re(r) + (0 if k is None else sign * mp.mpf(10) ** -k)
                    if 0 < place < end:
                        places.add(place)
    return sorted(places)

def length(c, end=mp.mpf(1)):
    return mp.quad(speed_of(c), cuts(c, end))

def place(c, s):
    """The point up to which the length is s."""
    low, high = mp.mpf(0), mp.mpf(1)
    t = mp.mpf(1) / 2
    known = length(c, t)
    for _ in range(90):
        over = known - s
        low, high = (low, t) if over > 0 else (t, high)
        v = speed_of(c)(t)
        new = t - over / v if v else low
        new = new if low < new < high else (low + high) / 2
        if abs(new - t) < mp.mpf(10) ** -18:
            break
        # Only what lies between is new.
        between = [p for p in cuts(c, mp.mpf(1)) if min(t, new) < p < max(t, new)]
        known += mp.quad(speed_of(c), sorted([t, *between, new], reverse=new < t))
        t = new
    w = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t ** 3]
    return [float(sum(w[k] * c[k][i] for k in range(4))) for i in range(2)]

def exact(points):
    return [tuple(mp.mpf(x) for x in p) for p in points]

named = [
    ("cusp", [[0, 0], [100, 100], [0, 100], [100, 0]]),
    ("both handles zero", [[0, 0], [0, 0], [80, 60], [80, 60]]),
    ("start handle zero", [[0, 0], [0, 0], [60, 20], [90, 110]]),
    ("end handle zero", [[5, 3], [40, -30], [90, 110], [90, 110]]),
    ("three points at the start", [[0, 0], [0, 0], [0, 0], [70, 40]]),
    ("two turns on one line", [[0, 0], [150, 150], [-50, -50], [100, 100]]),
    ("closed", [[0, 0], [120, 10], [-30, 140], [0, 0]]),
    ("all but a point", [[0, 0], [1e-7, 0], [0, 1e-7], [1e-7, 1e-7]]),
    ("two metres", [[0, 0], [600, 50], [1500, -70], [2000, 10]]),
]
for k in range(1, 10):
    e = 10.0 ** -k
    named.append((f"near-cusp 1e-{k}", [[0, 0], [100 - e, 100], [e, 100], [100, 0]]))
    named.append((f"near-zero handle 1e-{k}", [[0, 0], [0, -e], [60, 20], [90, 110]]))
for k in range(1, 7):
    e = 10.0 ** -k
    named.append((f"near-turn 1e-{k}", [[0, 0], [150, e], [-50, -e], [100, 2 * e]]))
for k in range(20):
    named.append((f"random {k}", [[round(rng.uniform(-150, 150), 3) for _ in range(2)] for _ in range(4)]))

curves = []
for name, points in named:
    c = exact(points)
    whole = length(c)
    curves.append({"name": name, "points": points, "length": float(whole), "third": place(c, whole / 3)})

# The same places are asked for at every distance.
known_length = functools.cache(length)

def tapered(c, d0, d1, whole):
    """Speed of the parallel on the right (y down), its distance even by arc length."""
    grow = (d1 - d0) / whole
    def f(t):
        v = [(p * t + q) * t + r for p, q, r in hodograph(c)]
        w = [2 * p * t + q for p, q, r in hodograph(c)]
        own = mp.hypot(*v)
        turning = (v[0] * w[1] - v[1] * w[0]) / own ** 2
        return mp.hypot(own - (d0 + grow * known_length(tuple(c), t)) * turning, grow * own)
    return float(mp.quad(f, [0, mp.mpf(1) / 4, mp.mpf(1) / 2, mp.mpf(3) / 4, 1]))

parallels = []
mp.mp.dps = 20
for points in ([[0, 0], [18, -75], [30, -140], [105, -150]], [[0, 0], [18, 70], [30, 120], [32, 205]]):
    c = exact(points)
    for d0, d1 in ((10, 10), (10, 15), (0, 15), (-6, -20), (-10, 10)):
        parallels.append({"points": points, "d0": d0, "d1": d1, "length": tapered(c, d0, d1, length(c))})

out = {"source": "mpmath, 30 digits; parallels 20 digits", "curves": curves, "parallels": parallels}
with open(os.path.join(os.path.dirname(__file__), "cubic_lengths.json"), "w") as f:
    json.dump(out, f, indent=1)
    f.write("\n")
