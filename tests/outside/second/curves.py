"""Segments, edges and rigid motions in numbers: lengths, places, feet. Millimetres; x right, y down."""
import math

import numpy as np
from scipy.interpolate import CubicSpline
from scipy.optimize import brentq, minimize_scalar

ON_EDGE, EQUAL, FINE = 0.01, 1e-6, 1e-10
NODES, WEIGHTS = np.polynomial.legendre.leggauss(20)


class NoValue(Exception):
    """The formula cannot be computed in this size."""


def gap(a, b):
    return math.hypot(b[0] - a[0], b[1] - a[1])


class Motion:
    """First turned over left to right (or not), then turned clockwise, then moved."""

    def __init__(self, flip, turn, move):
        self.flip, self.turn, self.move = flip, turn, move
        self.cos, self.sin = math.cos(turn), math.sin(turn)

    def vector(self, v):
        x, y = -v[0] if self.flip else v[0], v[1]
        return (x * self.cos - y * self.sin, x * self.sin + y * self.cos)

    def point(self, p):
        v = self.vector(p)
        return (v[0] + self.move[0], v[1] + self.move[1])


class Straight:
    def __init__(self, a, b):
        self.points = [a, b]
        self.breaks = [0.0, 1.0]
        self.whole = gap(a, b)

    def at(self, t):
        (ax, ay), (bx, by) = self.points
        return (ax + (bx - ax) * t, ay + (by - ay) * t)

    def rate(self, t):
        (ax, ay), (bx, by) = self.points
        return (bx - ax + 0 * t, by - ay + 0 * t)

    def arc(self, a, b):
        return self.whole * (b - a)

    def place(self, a, s):
        return a + s / self.whole if self.whole > 0 else a

    def moved(self, motion):
        return Straight(*map(motion.point, self.points))

    def heading(self, t):
        return unit(self.rate(t))


class Curved:
    """What cubics and splines share: lengths by Gauss's rule on ever finer parts, places by bracketing."""

    def arc(self, a, b):
        edges = [a] + [t for t in self.breaks if a < t < b] + [b]
        return math.fsum(self.part(p, q, self.panel(p, q), 0) for p, q in zip(edges, edges[1:]))

    def panel(self, a, b):
        half = (b - a) / 2
        dx, dy = self.rate((a + b) / 2 + half * NODES)
        return half * float(np.dot(WEIGHTS, np.hypot(dx, dy)))

    def part(self, a, b, rough, depth):
        middle = (a + b) / 2
        left, right = self.panel(a, middle), self.panel(middle, b)
        if abs(left + right - rough) < FINE or depth > 40:
            return left + right
        return self.part(a, middle, left, depth + 1) + self.part(middle, b, right, depth + 1)

    def place(self, a, s):
        """The parameter at length s behind parameter a."""
        top = self.breaks[-1]
        rest = self.arc(a, top)
        if s >= rest:
            return top
        if s <= 0:
            return a
        known, so_far = a, 0.0

        def miss(t):
            nonlocal known, so_far
            so_far += self.arc(known, t) if t >= known else -self.arc(t, known)
            known = t
            return so_far - s

        t = brentq(miss, a, top, xtol=1e-14, rtol=1e-14)
        for _ in range(3):
            speed = math.hypot(*self.rate(t))
            if speed > 0:
                t = min(max(t - (self.arc(a, t) - s) / speed, a), top)
        return t

    def heading(self, t):
        rate = self.rate(t)
        size = max(gap(self.points[0], p) for p in self.points)
        if math.hypot(*rate) > 1e-9 * size:
            return unit(rate)
        return self.limit(t)

    def limit(self, t):
        raise NoValue("no direction here")


class Cubic(Curved):
    def __init__(self, *points):
        self.points = list(points)
        self.breaks = [0.0, 1.0]
        p = [np.array(q) for q in points]
        self.first = [3 * (p[i + 1] - p[i]) for i in range(3)]
        self.whole = self.arc(0.0, 1.0)

    def at(self, t):
        u = 1 - t
        w = (u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t)
        return tuple(sum(k * q[i] for k, q in zip(w, self.points)) for i in (0, 1))

    def rate(self, t):
        u = 1 - t
        a, b, c = self.first
        return tuple(u * u * a[i] + 2 * u * t * b[i] + t * t * c[i] for i in (0, 1))

    def limit(self, t):
        p = self.points
        if t < 0.5:
            pairs = ((p[0], p[2]), (p[0], p[3]))
        else:
            pairs = ((p[1], p[3]), (p[0], p[3]))
        for a, b in pairs if min(t, 1 - t) < 1e-9 else ():
            if gap(a, b) > 0:
                return unit((b[0] - a[0], b[1] - a[1]))
        raise NoValue("no direction here")

    def moved(self, motion):
        return Cubic(*map(motion.point, self.points))


class Arc:
    """A circular arc; the radius is the mean of the two ends' when they differ a little."""

    def __init__(self, centre, a, b, clockwise):
        ra, rb = gap(centre, a), gap(centre, b)
        if abs(ra - rb) > ON_EDGE:
            raise NoValue("the ends of the arc are not equally far from its centre")
        self.centre, self.ends, self.clockwise, self.radius = centre, (a, b), clockwise, (ra + rb) / 2
        if self.radius < FINE:
            raise NoValue("an arc without radius")
        self.start = math.atan2(a[1] - centre[1], a[0] - centre[0])
        sweep = math.atan2(b[1] - centre[1], b[0] - centre[0]) - self.start
        sweep = sweep % math.tau if clockwise else -((-sweep) % math.tau)
        if gap(a, b) < EQUAL:
            sweep = math.tau if clockwise else -math.tau
        self.sweep = sweep
        self.breaks = [0.0, 1.0]
        self.whole = self.radius * abs(sweep)

    def at(self, t):
        angle = self.start + self.sweep * t
        return (self.centre[0] + self.radius * np.cos(angle), self.centre[1] + self.radius * np.sin(angle))

    def rate(self, t):
        angle = self.start + self.sweep * t
        k = self.radius * self.sweep
        return (-k * np.sin(angle), k * np.cos(angle))

    def arc(self, a, b):
        return self.whole * (b - a)

    def place(self, a, s):
        return a + s / self.whole

    def heading(self, t):
        return unit(self.rate(t))

    def moved(self, motion):
        a, b = map(motion.point, self.ends)
        return Arc(motion.point(self.centre), a, b, self.clockwise != motion.flip)


class Smooth(Curved):
    """The interpolating spline; `ends` are the headings (angles) at its ends, or None for no bending there."""

    def __init__(self, points, ends):
        self.points, self.ends = points, ends
        chords = [gap(a, b) for a, b in zip(points, points[1:])]
        if min(chords) < FINE:
            raise NoValue("two points of a smooth curve lie on one another")
        self.breaks = [0.0]
        for chord in chords:
            self.breaks.append(self.breaks[-1] + math.sqrt(chord))
        rules = []
        for heading, chord in zip(ends, (chords[0], chords[-1])):
            speed = math.sqrt(chord)  # the chord over the step of its parameter
            rules.append(
                (2, (0.0, 0.0)) if heading is None else (1, (speed * math.cos(heading), speed * math.sin(heading)))
            )
        self.spline = CubicSpline(self.breaks, np.array(points), bc_type=tuple(rules))
        self.slope = self.spline.derivative()
        self.whole = self.arc(self.breaks[0], self.breaks[-1])

    def at(self, t):
        value = self.spline(t)
        return (value[..., 0], value[..., 1])

    def rate(self, t):
        value = self.slope(t)
        return (value[..., 0], value[..., 1])

    def moved(self, motion):
        def turn(heading):
            if heading is None:
                return None
            x, y = motion.vector((math.cos(heading), math.sin(heading)))
            return math.atan2(y, x)

        return Smooth([motion.point(p) for p in self.points], tuple(map(turn, self.ends)))


def unit(v):
    size = math.hypot(*v)
    if size == 0:
        raise NoValue("no direction")
    return (float(v[0]) / size, float(v[1]) / size)


class Run:
    """A segment between two of its parameters, forwards or backwards."""

    def __init__(self, curve, low=None, high=None, back=False):
        self.curve, self.back = curve, back
        self.low = curve.breaks[0] if low is None else low
        self.high = curve.breaks[-1] if high is None else high
        if low is None and high is None:
            self.length = curve.whole
        else:
            self.length = curve.arc(self.low, self.high)

    def reversed(self):
        return Run(self.curve, self.low, self.high, not self.back)

    def moved(self, motion):
        return Run(self.curve.moved(motion), self.low, self.high, self.back)

    def parameter(self, s):
        s = self.length - s if self.back else s
        return min(max(self.curve.place(self.low, s), self.low), self.high)

    def point(self, s):
        return tuple(map(float, self.curve.at(self.parameter(s))))

    def heading(self, s):
        x, y = self.curve.heading(self.parameter(s))
        return (-x, -y) if self.back else (x, y)

    def part(self, s0, s1):
        a, b = self.parameter(s0), self.parameter(s1)
        return Run(self.curve, min(a, b), max(a, b), self.back)

    def nearest(self, p):
        """Distance and length from the start of the place nearest to a point."""
        steps = 24 * max(1, len(self.curve.breaks) - 1)
        ts = np.linspace(self.low, self.high, steps + 1)
        xs, ys = self.curve.at(ts)
        away = np.hypot(xs - p[0], ys - p[1])

        def distance(t):
            x, y = self.curve.at(t)
            return math.hypot(x - p[0], y - p[1])

        best = min((float(away[0]), self.low), (float(away[-1]), self.high))
        order = [i for i in range(len(ts)) if away[i] <= away[max(i - 1, 0)] and away[i] <= away[min(i + 1, steps)]]
        for i in order:
            low, high = ts[max(i - 1, 0)], ts[min(i + 1, steps)]
            t = minimize_scalar(distance, bounds=(low, high), method="bounded", options={"xatol": 1e-9}).x
            t = self.sharpen(t, p, low, high)
            best = min(best, (distance(t), t))
        s = self.curve.arc(self.low, best[1])
        return best[0], (self.length - s if self.back else s)

    def sharpen(self, t, p, low, high):
        """Newton on the derivative of the squared distance, with a numerical second derivative."""

        def slope(t):
            (x, y), (dx, dy) = self.curve.at(t), self.curve.rate(t)
            return (x - p[0]) * dx + (y - p[1]) * dy

        step = 1e-5 * (high - low)
        for _ in range(8):
            bend = (slope(t + step) - slope(t - step)) / (2 * step)
            if not bend > 0:
                break
            t = min(max(t - slope(t) / bend, low), high)
        return t


class Edge:
    """Runs one behind the other. `mouths()` gives the flat places of what is taken out of the sewn length, `inside()` 1
    where the inside of the outline lies on the right of the edge's sense, -1 on the left (both may fail)."""

    def __init__(self, runs, mouths=None, inside=None):
        self.runs, self.mouths = runs, mouths or (lambda: [])
        self.inside = inside
        self.starts = [0.0]
        for run in runs:
            self.starts.append(self.starts[-1] + run.length)
        self.flat = self.starts[-1]
        if not math.isfinite(self.flat):
            raise NoValue("a length that is not finite")

    def sewn(self):
        return self.flat - math.fsum(b - a for a, b in self.mouths())

    def share(self, place, whole, name="the edge"):
        """The length from the start that a place (a length, or a fraction if `name` says so) means."""
        if not -EQUAL <= place <= whole + EQUAL:
            raise NoValue("a place outside its edge")
        return min(max(place, 0.0), whole)

    def flat_of_sewn(self, s):
        s = self.share(s, self.sewn())
        taken = 0.0
        for a, b in self.mouths():
            if s + taken <= a + EQUAL:
                break
            taken += b - a
        return s + taken

    def sewn_of_flat(self, f):
        taken = 0.0
        for a, b in self.mouths():
            if f <= a + EQUAL:
                break
            if f < b - EQUAL:
                raise NoValue("a place in the mouth of a dart")
            taken += b - a
        return f - taken

    def run_at(self, f):
        for i, run in enumerate(self.runs):
            if f < self.starts[i + 1] - EQUAL or i == len(self.runs) - 1:
                return run, min(max(f - self.starts[i], 0.0), run.length)

    def point(self, f):
        run, s = self.run_at(f)
        return run.point(s)

    def heading(self, f):
        run, s = self.run_at(f)
        return run.heading(s)

    def off(self, f, distance):
        """From the flat place square to the edge, to the inside."""
        if self.inside is None:
            raise NoValue("the edge belongs to no outline")
        (x, y), (dx, dy), side = self.point(f), self.heading(f), self.inside()
        return (x - dy * side * distance, y + dx * side * distance)

    def reversed(self):
        flat = self.flat
        return Edge(
            [run.reversed() for run in reversed(self.runs)],
            lambda: [(flat - b, flat - a) for a, b in reversed(self.mouths())],
            None if self.inside is None else lambda: -self.inside(),
        )

    def moved(self, motion):
        sign = -1 if motion.flip else 1
        return Edge(
            [run.moved(motion) for run in self.runs],
            self.mouths,
            None if self.inside is None else lambda: sign * self.inside(),
        )

    def nearest(self, p):
        """Distance and flat place of the point of the edge that is nearest."""
        found = [(distance, self.starts[i] + s) for i, run in enumerate(self.runs) for distance, s in [run.nearest(p)]]
        return min(found)

    def place_of(self, p):
        distance, f = self.nearest(p)
        if distance > ON_EDGE:
            raise NoValue("the point does not lie on the edge")
        return f

    def part(self, p, q):
        a, b = self.place_of(p), self.place_of(q)
        if abs(a - b) < EQUAL:
            raise NoValue("a part without length")
        if a > b:
            flat = self.flat
            return self.reversed().between(flat - a, flat - b)
        return self.between(a, b)

    def between(self, a, b):
        runs = []
        for i, run in enumerate(self.runs):
            low, high = max(a - self.starts[i], 0.0), min(b - self.starts[i], run.length)
            if high - low > EQUAL:
                runs.append(run.part(low, high))

        def mouths():
            out = []
            for p, q in self.mouths():
                if a + EQUAL < p < b - EQUAL or a + EQUAL < q < b - EQUAL:
                    if p < a - EQUAL or q > b + EQUAL:
                        raise NoValue("a part that ends in the mouth of a dart")
                    out.append((p - a, q - a))
                elif p < a - EQUAL and q > b + EQUAL:
                    raise NoValue("a part in the mouth of a dart")
            return out

        return Edge(runs, mouths, self.inside)

    def feet(self, centre, foot, intake):
        """Flat places of a dart's two feet with this straight distance, around its centre or from its first foot."""
        if intake < 0:
            raise NoValue("an intake below zero")
        if centre is not None:
            middle = self.share(centre, self.flat)
            most, ends = min(middle, self.flat - middle), lambda h: (middle - h, middle + h)
        else:
            first = self.share(foot, self.flat)
            most, ends = self.flat - first, lambda h: (first, first + h)
        if intake == 0:
            return ends(0.0)

        def miss(h):
            return gap(*map(self.point, ends(h))) - intake

        low = min(intake / 2 if centre is not None else intake, most)
        if miss(low) >= 0:
            return ends(brentq(miss, 0.0, low, xtol=1e-13, rtol=1e-14)) if miss(low) > FINE else ends(low)
        for high in np.linspace(low, most, 65)[1:]:
            if miss(high) >= 0:
                return ends(brentq(miss, low, high, xtol=1e-13, rtol=1e-14))
            low = high
        if miss(most) > -EQUAL:
            return ends(most)
        raise NoValue("the mouth of a dart does not lie on its edge")


def ring_side(edges):
    """1 where the inside lies on the right of the ring's sense (it runs clockwise as seen), -1 on the left."""
    points = []
    for edge in edges:
        for run in edge.runs:
            ts = np.linspace(run.low, run.high, 2001)[:-1]
            if run.back:
                ts = np.linspace(run.high, run.low, 2001)[:-1]
            xs, ys = run.curve.at(ts)
            points.extend(zip(np.broadcast_to(xs, ts.shape), np.broadcast_to(ys, ts.shape)))
    p = np.array(points)
    q = np.roll(p, -1, axis=0)
    area = float(np.sum(p[:, 0] * q[:, 1] - q[:, 0] * p[:, 1])) / 2
    if abs(area) < EQUAL:
        raise NoValue("an outline without area")
    return 1 if area > 0 else -1
