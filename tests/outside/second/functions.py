"""The plain functions of the language, with the letters of their kinds (see `Compiler.apply`)."""
import math

from . import curves
from .curves import NoValue, gap

def finite(value):
    if not math.isfinite(value):
        raise NoValue("no finite result")
    return value


def direction(a, b):
    if gap(a, b) < 1e-9:
        raise NoValue("two points lie on one another")
    return curves.unit((b[0] - a[0], b[1] - a[1]))


def going(p, d, s):
    return (p[0] + d[0] * s, p[1] + d[1] * s)


def heading(a, b):
    dx, dy = direction(a, b)
    angle = math.atan2(dy, dx)
    return math.pi if angle == -math.pi else angle


def foot(p, line):
    s = (p[0] - line[0]) * line[2] + (p[1] - line[1]) * line[3]
    return going(line, line[2:], s)


def around(a, corner, b):
    angle = (heading(corner, b) - heading(corner, a)) % math.tau
    return 0.0 if angle >= math.tau else angle


def corner_angle(a, corner, b):
    (ax, ay), (bx, by) = direction(corner, a), direction(corner, b)
    return math.atan2(abs(ax * by - ay * bx), ax * bx + ay * by)


def arc_function(function):
    def run(value):
        try:
            return function(value)
        except ValueError:
            raise NoValue("there is no such angle") from None

    return run


def between(a, b):
    direction(a, b)
    return curves.Edge([curves.Run(curves.Straight(a, b))])


FUNCTIONS = {
    "sin": ("a", "n", math.sin),
    "cos": ("a", "n", math.cos),
    "tan": ("a", "n", lambda a: finite(math.tan(a))),
    "asin": ("n", "a", arc_function(math.asin)),
    "acos": ("n", "a", arc_function(math.acos)),
    "atan": ("n", "a", math.atan),
    "offset": ("ll", "o", lambda x, y: (x, y)),
    "right": ("pl", "p", lambda p, s: (p[0] + s, p[1])),
    "left": ("pl", "p", lambda p, s: (p[0] - s, p[1])),
    "down": ("pl", "p", lambda p, s: (p[0], p[1] + s)),
    "up": ("pl", "p", lambda p, s: (p[0], p[1] - s)),
    "polar": ("pal", "p", lambda p, a, s: going(p, (math.cos(a), math.sin(a)), s)),
    "halfway": ("pp", "p", lambda a, b: ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)),
    "line": ("pp", "L", lambda a, b: (*a, *direction(a, b))),
    "level": ("p", "L", lambda p: (*p, 1.0, 0.0)),
    "plumb": ("p", "L", lambda p: (*p, 0.0, 1.0)),
    "parallel": ("Ll", "L", lambda l, s: (l[0] - l[3] * s, l[1] + l[2] * s, l[2], l[3])),
    "gap": ("pp", "l", gap),
    "angle": ("ppp", "a", around),
    "corner_angle": ("ppp", "a", corner_angle),
    "between": ("pp", "e", between),
    "length": ("e", "l", lambda e: e.sewn()),
    "copy": ("e", "e", lambda e: e),
    "reversed": ("e", "e", lambda e: e.reversed()),
    "part": ("epp", "e", lambda e, p, q: e.part(p, q)),
}
