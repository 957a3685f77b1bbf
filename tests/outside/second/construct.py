"""Constructions: paths that meet, edges made by functions, moved things, widths, areas, rows in other sizes.

Meetings are found by sampling and bracketing, whatever the curve is made of; areas by Gauss's rule.
"""
import math

import numpy as np
from scipy.interpolate import CubicHermiteSpline
from scipy.optimize import brentq, minimize_scalar, root

from . import curves
from .curves import EQUAL, NODES, ON_EDGE, WEIGHTS, Arc, Cubic, Edge, Motion, NoValue, Run, Smooth, Straight, gap, unit
from .formula import FormulaError
from .functions import direction, foot, going, heading

SAMPLES = 240
NEAR = 1e-7  # how near a miss must come to zero for two paths that only touch, mm
SIDES = {"left": (0, 1), "right": (0, -1), "above": (1, 1), "below": (1, -1)}


def about(point, angle):
    """The motion that turns about a point."""
    c, s = math.cos(angle), math.sin(angle)
    x, y = point
    return Motion(False, angle, (x - x * c + y * s, y - x * s - y * c))


def mirror(line):
    """The motion that mirrors in a line: over left to right, then turned by twice the line's angle from plumb."""
    angle = 2 * math.atan2(line[3], line[2]) - math.pi
    turn = Motion(True, angle, (0.0, 0.0))
    at = turn.point(line[:2])
    return Motion(True, angle, (line[0] - at[0], line[1] - at[1]))


def move(thing, motion):
    if isinstance(thing, Edge):
        return thing.moved(motion)
    if len(thing) == 4:
        return (*motion.point(thing[:2]), *motion.vector(thing[2:]))
    return motion.point(thing)


# Where a run misses something by nothing.


def zeros(miss, low, high):
    """The parameters between two at which a miss (mm) is zero or touches zero."""
    ts = np.linspace(low, high, SAMPLES + 1)
    values = [miss(t) for t in ts]
    if max(map(abs, values)) < 1e-9:
        raise NoValue("they run along each other")
    found = [t for t, v in ((ts[0], values[0]), (ts[-1], values[-1])) if abs(v) < NEAR]
    for i in range(SAMPLES):
        a, b = values[i], values[i + 1]
        if a * b < 0:
            found.append(brentq(miss, ts[i], ts[i + 1], xtol=1e-15, rtol=1e-15))
        elif a == 0:
            found.append(ts[i])
    for i in range(1, SAMPLES):
        if abs(values[i]) <= min(abs(values[i - 1]), abs(values[i + 1])) and values[i - 1] * values[i + 1] > 0:
            sign = math.copysign(1, values[i])
            turn = minimize_scalar(
                lambda t: sign * miss(t), bounds=(ts[i - 1], ts[i + 1]), method="bounded", options={"xatol": 1e-13}
            )
            if turn.fun < -1e-10:
                found += [brentq(miss, ts[i - 1], turn.x, xtol=1e-15), brentq(miss, turn.x, ts[i + 1], xtol=1e-15)]
            elif turn.fun < NEAR:
                found.append(turn.x)
    return found


def met_on(edge, miss_of):
    """(flat place, point) of all places of an edge at which the miss that `miss_of(run)` gives is zero."""
    out = []
    for start, run in zip(edge.starts, edge.runs):
        miss = miss_of(run)
        for t in zeros(miss, run.low, run.high) if miss else []:
            s = run.curve.arc(run.low, t)
            out.append((start + (run.length - s if run.back else s), tuple(map(float, run.curve.at(t)))))
    return out


def line_miss(line):
    def of(run):
        def miss(t):
            x, y = run.curve.at(t)
            return float((x - line[0]) * line[3] - (y - line[1]) * line[2])

        return miss

    return of


def circle_miss(centre, radius):
    def of(run):
        def miss(t):
            x, y = run.curve.at(t)
            return math.hypot(x - centre[0], y - centre[1]) - radius

        return miss

    return of


def touch_miss(q):
    def of(run):
        if isinstance(run.curve, Straight):
            return None

        def miss(t):
            (x, y), (dx, dy) = run.curve.at(t), run.curve.heading(t)
            return float((x - q[0]) * dy - (y - q[1]) * dx)

        return miss

    return of


def meet_runs(a, b):
    """Parameters (t, u) at which two runs meet."""
    ts, us = np.linspace(a.low, a.high, SAMPLES + 1), np.linspace(b.low, b.high, SAMPLES + 1)
    pa, pb = (np.broadcast_arrays(*c.at(w)) for c, w in ((a.curve, ts), (b.curve, us)))
    pa, pb = np.array(pa).T, np.array(pb).T
    # Bounding boxes of the chords, widened by how far a curve can stand off its chord.
    slack = 0.02 + max(a.length, b.length) / SAMPLES / 4

    def boxes(p):
        return np.minimum(p[:-1], p[1:]) - slack, np.maximum(p[:-1], p[1:]) + slack

    (la, ha), (lb, hb) = boxes(pa), boxes(pb)
    hit = np.all((la[:, None] <= hb[None]) & (lb[None] <= ha[:, None]), axis=2)
    found = []

    def miss(v):
        (x, y), (p, q) = a.curve.at(v[0]), b.curve.at(v[1])
        return [float(x - p), float(y - q)]

    def slope(v):
        (x, y), (p, q) = a.curve.rate(v[0]), b.curve.rate(v[1])
        return [[float(x), -float(p)], [float(y), -float(q)]]

    def alike(v):
        (x, y), (p, q) = a.curve.rate(v[0]), b.curve.rate(v[1])
        dx, dy = miss(v)
        return [float(x * q - y * p) / a.length / b.length, float(dx * x + dy * y) / a.length]

    for i, k in zip(*np.nonzero(hit)):
        answer = root(miss, [(ts[i] + ts[i + 1]) / 2, (us[k] + us[k + 1]) / 2], jac=slope, tol=1e-14).x
        t, u = min(max(answer[0], a.low), a.high), min(max(answer[1], b.low), b.high)
        (x, y), (p, q) = a.curve.heading(t), b.curve.heading(u)
        if abs(x * q - y * p) < 0.03:
            # They may only touch: where they run alike, square across from each other.
            answer = root(alike, [t, u], tol=1e-15).x
            if a.low <= answer[0] <= a.high and b.low <= answer[1] <= b.high and math.hypot(*miss(answer)) < NEAR:
                t, u = answer
        if math.hypot(*miss((t, u))) < NEAR:
            found.append((t, u))
    for t in (a.low, a.high):
        away, s = b.nearest(tuple(map(float, a.curve.at(t))))
        if away < NEAR:
            found.append((t, b.parameter(s)))
    for u in (b.low, b.high):
        away, s = a.nearest(tuple(map(float, b.curve.at(u))))
        if away < NEAR:
            found.append((a.parameter(s), u))
    return found


def run_along(a, b):
    """Whether two runs share a stretch: three places of one of them that lie on the other, apart from each other."""
    for one, other in ((a, b), (b, a)):
        on = [s for s in np.linspace(0, one.length, 41) if other.nearest(one.point(s))[0] < 1e-9]
        if len(on) > 2:
            return True
    return False


def line_place(line, p):
    return (p[0] - line[0]) * line[2] + (p[1] - line[1]) * line[3]


def crossings(one, other):
    """(place along the first, point) of all crossings of two paths."""
    if isinstance(one, Edge) and isinstance(other, Edge):
        out = []
        for start, a in zip(one.starts, one.runs):
            for b in other.runs:
                if run_along(a, b):
                    raise NoValue("they run along each other")
                for t, _ in meet_runs(a, b):
                    s = a.curve.arc(a.low, t)
                    out.append((start + (a.length - s if a.back else s), tuple(map(float, a.curve.at(t)))))
        return out
    if isinstance(one, Edge):
        return met_on(one, line_miss(other))
    if isinstance(other, Edge):
        return [(line_place(one, p), p) for _, p in met_on(other, line_miss(one))]
    below = one[2] * other[3] - one[3] * other[2]
    if abs(below) < 1e-9:
        return []
    s = ((other[0] - one[0]) * other[3] - (other[1] - one[1]) * other[2]) / below
    return [(s, going(one, one[2:], s))]


def swung(centre, radius, path):
    if radius <= EQUAL:
        raise NoValue("nothing to swing")
    if isinstance(path, Edge):
        return met_on(path, circle_miss(centre, radius))
    beside = foot(centre, path)
    short = radius - gap(beside, centre)
    if short < -EQUAL:
        return []
    half = math.sqrt(max(radius**2 - gap(beside, centre) ** 2, 0.0)) if short > EQUAL else 0.0
    points = [going(beside, path[2:], s) for s in ((-half, half) if half else (0.0,))]
    return [(line_place(path, p), p) for p in points]


def touched(q, edge):
    # Where the point itself lies on the curve the miss has a double zero, found less exactly; that is no answer.
    return [m for m in met_on(edge, touch_miss(q)) if gap(m[1], q) > 0.001]


def distinct(met):
    out = []
    for place, point in sorted(met):
        if all(gap(point, other) >= EQUAL for _, other in out):
            out.append((place, point))
    return out


def chosen(met, path, which, told):
    """The answer that is meant, of (place, point)s."""
    met = distinct(met)
    if not met:
        raise NoValue("no answer")
    if which is None:
        if len(met) > 1:
            raise NoValue("several answers")
        return met[0][1]
    if which == "nearest":
        rank = [(gap(p, told), p) for _, p in met]
    elif which == "from":
        start = path.nearest(told)[1] if isinstance(path, Edge) else line_place(path, told)
        rank = [(abs(s - start), p) for s, p in met]
    else:
        i, sign = SIDES[told]
        rank = [(sign * p[i], p) for _, p in met]
    rank.sort()
    if len(rank) > 1 and rank[1][0] - rank[0][0] <= EQUAL:
        raise NoValue("a tie")
    return rank[0][1]


# Edges made by functions.


def arc(centre, a, b, turn):
    if turn is None:
        ax, ay, bx, by = *direction(centre, a), *direction(centre, b)
        sine, cosine = ax * by - ay * bx, ax * bx + ay * by
        if abs(math.atan2(sine, cosine)) < 1e-9 or math.pi - abs(math.atan2(sine, cosine)) < 1e-9:
            raise NoValue("neither way is shorter")
        turn = "clockwise" if sine > 0 else "anticlockwise"
    return Edge([Run(Arc(centre, a, b, turn == "clockwise"))])


def circle(centre, radius):
    if radius <= EQUAL:
        raise NoValue("a circle without radius")
    start = (centre[0] + radius, centre[1])
    return Edge([Run(Arc(centre, start, start, True))])


class Parallel(curves.Curved):
    """A run's curve set off to the right of the run, the distance growing evenly with the run's length. Runs as the curve does."""

    def __init__(self, run, near, far):
        self.run, self.near, self.far = run, near, far
        self.base, self.side = run.curve, -1 if run.back else 1
        self.breaks = [run.low] + [t for t in run.curve.breaks if run.low < t < run.high] + [run.high]
        ts = np.unique(np.concatenate([np.linspace(a, b, 200) for a, b in zip(self.breaks, self.breaks[1:])]))
        if near != far:
            places = np.concatenate([[0.0], np.cumsum([run.curve.arc(a, b) for a, b in zip(ts, ts[1:])])])
            self.along = CubicHermiteSpline(ts, places, np.hypot(*np.broadcast_arrays(*run.curve.rate(ts))))
        forward = 1 - self.side * bow(self.base, ts) * self.distance(ts)
        if not np.all(forward[np.isfinite(forward)] > 0):
            raise NoValue("it bends tighter than it is set off")
        self.points = [self.at(run.low), self.at(run.high)]
        self.whole = self.arc(run.low, run.high)

    def distance(self, t):
        if self.near == self.far:
            return self.near
        share = self.along(t) / self.run.length
        return self.near + (self.far - self.near) * (1 - share if self.run.back else share)

    def way(self, t):
        """The heading of the base."""
        if np.ndim(t) == 0:
            return self.base.heading(float(t))
        x, y = np.broadcast_arrays(*self.base.rate(t))
        size = np.hypot(x, y)
        if np.all(size > 1e-9):
            return x / size, y / size
        return tuple(np.array(v) for v in zip(*[self.base.heading(float(u)) for u in t]))

    def at(self, t):
        (x, y), (dx, dy), far = self.base.at(t), self.way(t), self.side * self.distance(t)
        return (x - dy * far, y + dx * far)

    def rate(self, t):
        (dx, dy), speed = self.way(t), np.hypot(*self.base.rate(t))
        with np.errstate(all="ignore"):
            forward = speed * (1 - self.side * bow(self.base, t) * self.distance(t))
        forward = np.where(speed > 0, forward, 0.0)
        aside = (self.far - self.near) / self.run.length * speed
        return (dx * forward - dy * aside, dy * forward + dx * aside)

    def limit(self, t):
        return self.base.heading(t)

    def moved(self, motion):
        sign = -1 if motion.flip else 1
        return Parallel(self.run.moved(motion), sign * self.near, sign * self.far)


def bow(curve, t):
    """The curvature of a curve at parameters of it."""
    if isinstance(curve, Straight):
        return 0.0 * t
    if isinstance(curve, Arc):
        return math.copysign(1 / curve.radius, curve.sweep) + 0.0 * t
    dx, dy = curve.rate(t)
    if isinstance(curve, Cubic):
        a, b, c = curve.first
        ex, ey = (2 * ((1 - t) * (b[i] - a[i]) + t * (c[i] - b[i])) for i in (0, 1))
    elif isinstance(curve, Smooth):
        second = curve.slope.derivative()(t)
        ex, ey = second[..., 0], second[..., 1]
    else:
        h = 1e-5 * (curve.breaks[-1] - curve.breaks[0])
        low, high = np.maximum(t - h, curve.breaks[0]), np.minimum(t + h, curve.breaks[-1])
        ex, ey = ((q - p) / (high - low) for p, q in zip(curve.rate(low), curve.rate(high)))
    with np.errstate(all="ignore"):
        return (dx * ey - dy * ex) / (dx * dx + dy * dy) ** 1.5


def bend(run, s):
    value = float(bow(run.curve, run.parameter(s)))
    if not math.isfinite(value):
        raise NoValue("no bend here")
    return -value if run.back else value


def set_off(edge, near, far):
    side = 1 if edge.inside is None else edge.inside()
    runs = []
    for start, run in zip(edge.starts, edge.runs):
        ends = [side * (near + (far - near) * (start + s) / edge.flat) for s in (0.0, run.length)]
        if isinstance(run.curve, Straight):
            (dx, dy), p, q = run.heading(0.0), run.point(0.0), run.point(run.length)
            new = Run(Straight((p[0] - dy * ends[0], p[1] + dx * ends[0]), (q[0] - dy * ends[1], q[1] + dx * ends[1])))
        else:
            new = Run(Parallel(run, *ends), back=run.back)
        if runs and gap(runs[-1].point(runs[-1].length), new.point(0.0)) > ON_EDGE:
            raise NoValue("a corner")
        runs.append(new)
    return Edge(runs, None, edge.inside)


# Whole pieces.


def area(edges):
    total = 0.0
    for edge in edges:
        for run in edge.runs:
            stops = sorted({run.low, run.high, *[t for t in run.curve.breaks if run.low < t < run.high]})
            part = 0.0
            for a, b in zip(stops, stops[1:]):
                for k in range(16):
                    low, high = a + (b - a) * k / 16, a + (b - a) * (k + 1) / 16
                    ts = (low + high) / 2 + (high - low) / 2 * NODES
                    (x, y), (dx, dy) = run.curve.at(ts), run.curve.rate(ts)
                    part += (high - low) / 4 * float(np.dot(WEIGHTS, x * dy - y * dx))
            total += -part if run.back else part
    return abs(total)


def inside(points, p):
    """Whether a polygon winds around a point."""
    a = np.arctan2(points[:, 1] - p[1], points[:, 0] - p[0])
    steps = np.diff(np.append(a, a[0]))
    return abs(float(np.sum((steps + math.pi) % math.tau - math.pi))) > 1.0


def width(edges, triangles, line):
    places = sorted(line_place(line, p) for e in edges for _, p in met_on(e, line_miss(line)))
    outline = []
    for edge in edges:
        for run in edge.runs:
            outline += [run.point(s) for s in np.linspace(0, run.length, 120, endpoint=False)]
    outline, total = np.array(outline), 0.0
    for a, b in zip(places, places[1:]):
        if b - a > EQUAL and inside(outline, going(line, line[2:], (a + b) / 2)):
            total += b - a
    if total <= EQUAL:
        raise NoValue("the line does not run through the piece")
    return total - sum(within(t, line) for t in triangles)


def within(triangle, line):
    cuts = []
    for p, q in zip(triangle, triangle[1:] + triangle[:1]):
        a, b = ((v[0] - line[0]) * line[3] - (v[1] - line[1]) * line[2] for v in (p, q))
        if (a > 0) != (b > 0):
            cuts.append(line_place(line, p) + (line_place(line, q) - line_place(line, p)) * a / (a - b))
    return max(cuts) - min(cuts) if cuts else 0.0


class Constructions:
    """The functions of these, for `Compiler`."""

    def word(self, tree, words):
        if tree[0] != "name" or tree[1] not in words:
            raise FormulaError(f"one of {words} is needed")
        return tree[1]

    def call_moved(self, plain, named):
        self.only(plain, named, 2)
        return self.apply(plain, "To", "T", lambda thing, by: move(thing, Motion(False, 0.0, by)))

    def call_turned(self, plain, named):
        if not named:
            self.only(plain, named, 3)
            return self.apply(plain, "Tpa", "T", lambda thing, pin, angle: move(thing, about(pin, angle)))
        self.only(plain, named, 2, names=("from", "to"))

        def run(thing, pin, a, b):
            return move(thing, about(pin, heading(pin, b) - heading(pin, a)))

        return self.apply(plain + [named["from"], named["to"]], "Tppp", "T", run)

    def call_mirrored(self, plain, named):
        self.only(plain, named, 2)
        return self.apply(plain, "TL", "T", lambda thing, line: move(thing, mirror(line)))

    def call_foot(self, plain, named):
        self.only(plain, named, 2)

        def run(p, path):
            if not isinstance(path, Edge):
                return foot(p, path)
            best = path.nearest(p)[0]
            return path.point(min(f for away, f in each_nearest(path, p) if away <= best + 1e-9))

        return self.apply(plain, "pP", "p", run)

    def call_bisect(self, plain, named):
        self.only(plain, named, 4)

        def run(a, corner, b, far):
            (ax, ay), (bx, by) = direction(corner, a), direction(corner, b)
            if math.hypot(ax + bx, ay + by) < 1e-9:
                raise NoValue("the legs run straight on")
            return going(corner, unit((ax + bx, ay + by)), far)

        return self.apply(plain, "pppl", "p", run)

    def call_through(self, plain, named):
        ways = {
            "square_to": ("L", lambda p, line: (*p, -line[3], line[2])),
            "parallel_to": ("L", lambda p, line: (*p, *line[2:])),
            "heading": ("a", lambda p, angle: (*p, math.cos(angle), math.sin(angle))),
        }
        if len(plain) != 1 or len(named) != 1 or next(iter(named)) not in ways:
            raise FormulaError("a line through a point takes one way")
        name, tree = next(iter(named.items()))
        return self.apply(plain + [tree], "p" + ways[name][0], "L", ways[name][1])

    def call_heading(self, plain, named):
        if len(plain) == 1:
            self.only(plain, named, 1)
            return self.apply(plain, "L", "a", lambda line: heading((0.0, 0.0), line[2:]))
        self.only(plain, named, 2)
        return self.apply(plain, "pp", "a", heading)

    def meeting(self, plain, named, wanted, find):
        if len(plain) != len(wanted) or len(named) > 1 or not set(named) <= {"nearest", "from", "side"}:
            raise FormulaError("a construction is given the wrong things")
        which = next(iter(named), None)
        trees = list(plain)
        if which in ("nearest", "from"):
            trees.append(named[which])
            wanted += "p"
        side = self.word(named["side"], SIDES) if which == "side" else None

        def run(*values):
            told = side or (values[-1] if which else None)
            path, met = find(*values[: len(plain)])
            return chosen(met, path, which, told)

        return self.apply(trees, wanted, "p", run)

    def call_cross(self, plain, named):
        return self.meeting(plain, named, "PP", lambda a, b: (a, crossings(a, b)))

    def call_swing(self, plain, named):
        return self.meeting(plain, named, "plP", lambda c, r, path: (path, swung(c, r, path)))

    def call_touch(self, plain, named):
        return self.meeting(plain, named, "pe", lambda q, edge: (edge, touched(q, edge)))

    def call_arc(self, plain, named):
        if len(plain) != 3 or not set(named) <= {"turn"}:
            raise FormulaError("arc takes a centre and two ends")
        turn = self.word(named["turn"], ("clockwise", "anticlockwise")) if named else None
        return self.apply(plain, "ppp", "e", lambda c, a, b: arc(c, a, b, turn))

    def call_circle(self, plain, named):
        self.only(plain, named, 2)
        return self.apply(plain, "pl", "e", circle)

    def with_rings(self, make):
        """What `make` compiles, which also hangs on the outlines of the edges that it names."""
        before, self.deps = self.deps, set()
        made = make()
        self.deps |= {("ring", key[1]) for key in self.deps if key[0] == "flat" and self.in_ring(key)} | before
        return made

    def in_ring(self, key):
        frame = self.model.frames.get(key[1])
        return frame is not None and key[2] in frame.rings

    def call_set_off(self, plain, named):
        if named:
            self.only(plain, named, 1, names=("from", "to"))
            trees = plain + [named["from"], named["to"]]
            return self.with_rings(lambda: self.apply(trees, "ell", "e", set_off))
        self.only(plain, named, 2)
        return self.with_rings(lambda: self.apply(plain, "el", "e", lambda e, d: set_off(e, d, d)))

    def call_place(self, plain, named):
        self.only(plain, named, 2)
        return self.apply(plain, "ep", "l", lambda e, p: e.sewn_of_flat(e.place_of(p)))

    def call_along(self, plain, named):
        self.only(plain, named, 2)
        kind, run = self.place(plain)

        def line(case):
            edge, f = run(case)
            return (*edge.point(f), *edge.heading(f))

        return kind and ("line", kind[1]), line

    def call_bend(self, plain, named):
        self.only(plain, named, 2)
        _, run = self.place(plain)

        def value(case):
            edge, f = run(case)
            return bend(*edge.run_at(f))

        return ("len", -1), value

    # Whole pieces.

    def piece(self, frame):
        """Edges and dart triangles of a piece, from the case."""
        part = self.model.frames.get(frame)
        if part is None or not part.outline:
            raise FormulaError(f"{frame} is no piece with an outline")
        flats = [("flat", frame, name) for name in part.rings]
        self.deps.update(flats)
        return lambda case: [case.get(key) for key in flats]

    def triangles(self, frame):
        part = self.model.frames[frame]
        two_ended = [n for n, d in part.takers["darts"].items() if d["form"].word == "two_ended"]
        names = two_ended + [n for n, d in part.takers["darts"].items() if d["on"] in part.rings and n not in two_ended]
        keys = [(("tip", frame, n), ("mouth", frame, "darts", n)) for n in names]
        # A dart with two ends has a second tip at the end of its line.
        keys += [(("end", frame, n), ("mouth", frame, "darts", n)) for n in two_ended]
        self.deps.update(key for pair in keys for key in pair)

        def run(case):
            return [[case.get(tip), case.get(mouth).first, case.get(mouth).second] for tip, mouth in keys]

        return run

    def named_piece(self, tree):
        thing = self.resolve(tree)
        if getattr(thing, "what", None) != "frame" or thing.laid:
            raise FormulaError("a piece is needed")
        return thing.frame

    def call_area(self, plain, named):
        self.only(plain, named, 1)
        frame = self.named_piece(plain[0])
        edges = self.piece(frame)
        self.deps.add(("ring", frame))

        def run(case):
            case.get(("ring", frame))
            return area(edges(case))

        return ("len", 2), run

    def across(self, frame, tree):
        kind, line = self.tree(tree)
        self.want(kind, ("line", frame))
        edges, triangles = self.piece(frame), self.triangles(frame)
        return lambda case: width(edges(case), triangles(case), line(case))

    def call_width(self, plain, named):
        self.only(plain, named, 2)
        return ("len", 1), self.across(self.named_piece(plain[0]), plain[1])

    def call_girth(self, plain, named):
        if not plain or named:
            raise FormulaError("girth takes lines")
        parts = []
        for tree in plain:
            kind = self.kind_of(tree)
            if kind is None or kind[0] != "line" or kind[1] not in self.model.frames:
                raise FormulaError("girth takes lines of pieces")
            cuts = self.model.frames[kind[1]].part.get("cuts", [])
            copies = max(cuts[0]["count"], 1) * (2 if cuts[0]["on_fold"] else 1) if cuts else 1
            parts.append((copies, self.across(kind[1], tree)))
        return ("len", 1), lambda case: math.fsum(copies * run(case) for copies, run in parts)

    def call_in_size(self, plain, named):
        self.only(plain, named, 2)
        if plain[1][0] != "text" or plain[0][0] not in ("name", "member"):
            raise FormulaError("in_size takes a row and the name of a size")
        if plain[0][0] == "member" and plain[0][1] != ("name", "chart"):
            raise FormulaError("in_size takes a row of the chart")
        row, size = plain[0][-1], plain[1][1]
        model = self.model
        words = ["row"] if self.scope == "chart" or plain[0][0] == "member" else model.globals.get(row, [])
        if words != ["row"] or model.rows.count(row) != 1 or size not in model.sizes:
            raise FormulaError("in_size takes a row and the name of a size")
        key = ("row", row)
        return model.kind(key), lambda case: model.cases[size].get(key)


def each_nearest(edge, p):
    """(distance, flat place) of the nearest place of every run."""
    return [(away, start + s) for start, run in zip(edge.starts, edge.runs) for away, s in [run.nearest(p)]]
