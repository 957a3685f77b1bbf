"""What a formula means: its kind, what it depends on, and how to compute it in a case (a size or a person).

Kinds: ("len", n) with n = 0 for a number, ("angle",), ("offset",), ("truth",), ("point", frame), ("line", frame),
("edge", frame); None where a name's own formula has no kind, so that only using it fails. Values: floats in mm^n and
radians, pairs, (x, y, dx, dy) for a line, `curves.Edge`, bools.
"""
import math
from fractions import Fraction

from .construct import Constructions
from .curves import NoValue, gap
from .formula import FormulaError, normal
from .functions import FUNCTIONS, direction, finite, going

NUMBER, LENGTH, ANGLE, OFFSET, TRUTH = ("len", 0), ("len", 1), ("angle",), ("offset",), ("truth",)

UNIT_MM = dict(mm=Fraction(1), cm=Fraction(10), m=Fraction(1000), ft=Fraction(3048, 10), yd=Fraction(9144, 10))
UNIT_MM["in"] = Fraction(254, 10)


class Meaning:
    """A compiled formula."""

    def __init__(self, kind, run, deps):
        self.kind, self.run, self.deps = kind, run, deps


class Thing:
    """What a name stands for when it is no value: a frame, a dart, a seam, or the word in front of a name."""

    def __init__(self, what, name, laid=None, frame=None):
        self.what, self.name, self.laid, self.frame = what, name, laid, frame


def scalar(kind):
    return kind is None or kind[0] in ("len", "angle")


class Compiler(Constructions):
    """Compiles the trees of one formula. `scope` is "chart", None (names of the draft only) or the name of a frame."""

    def __init__(self, model, scope):
        self.model, self.scope, self.deps, self.paper = model, scope, set(), False

    def whole(self, tree):
        kind, run = self.tree(tree)
        return Meaning(kind, run, self.deps)

    def tree(self, tree):
        return getattr(self, "tree_" + tree[0])(tree)

    # Literals and signs.

    def tree_num(self, tree):
        _, value, unit = tree
        if unit is None:
            kind, value = NUMBER, float(value)
        elif unit == "%":
            kind, value = NUMBER, float(value / 100)
        elif unit in ("deg", "°"):
            kind, value = ANGLE, float(value) * math.pi / 180
        else:
            kind, value = LENGTH, float(value * UNIT_MM[unit])
        return kind, lambda case: value

    def tree_yes(self, tree):
        value = tree[1]
        return TRUTH, lambda case: value

    def tree_pi(self, tree):
        return NUMBER, lambda case: math.pi

    def tree_text(self, tree):
        raise FormulaError("a text stands where a formula is needed")

    def tree_list(self, tree):
        raise FormulaError("a list stands where a formula is needed")

    def tree_pt(self, tree):
        (ka, a), (kb, b) = self.tree(tree[1]), self.tree(tree[2])
        self.want(ka, LENGTH)
        self.want(kb, LENGTH)
        return ("point", self.scope), lambda case: (a(case), b(case))

    def tree_neg(self, tree):
        kind, run = self.tree(tree[1])
        if kind == OFFSET:
            return kind, lambda case: tuple(-v for v in run(case))
        if not scalar(kind):
            raise FormulaError("this cannot be made negative")
        return kind, lambda case: -run(case)

    def tree_not(self, tree):
        kind, run = self.tree(tree[1])
        self.want(kind, TRUTH)
        return TRUTH, lambda case: not run(case)

    def tree_bin(self, tree):
        _, sign, left, right = tree
        (ka, a), (kb, b) = self.tree(left), self.tree(right)
        if sign in ("and", "or"):
            self.want(ka, TRUTH)
            self.want(kb, TRUTH)
            if sign == "and":
                return TRUTH, lambda case: bool(a(case) and b(case))
            return TRUTH, lambda case: bool(a(case) or b(case))
        if sign == "^":
            return self.power(ka, a, kb, b, right)
        if ka is None or kb is None:
            kind = TRUTH if sign in ("<", "<=", ">", ">=") else None
            return kind, lambda case: fail(a(case), b(case))
        if sign in ("<", "<=", ">", ">="):
            if ka != kb or not scalar(ka):
                raise FormulaError("these cannot be compared")
            tests = {
                "<": lambda case: a(case) < b(case),
                "<=": lambda case: a(case) <= b(case),
                ">": lambda case: a(case) > b(case),
                ">=": lambda case: a(case) >= b(case),
            }
            return TRUTH, tests[sign]
        if sign in "+-":
            return self.add(sign, ka, a, kb, b)
        return self.times(ka, a, kb, b) if sign == "*" else self.over(ka, a, kb, b)

    def add(self, sign, ka, a, kb, b):
        k = 1 if sign == "+" else -1
        if ka == kb and scalar(ka):
            return ka, lambda case: finite(a(case) + k * b(case))

        def pair(case):
            (ax, ay), (bx, by) = a(case), b(case)
            return (finite(ax + k * bx), finite(ay + k * by))

        if ka[0] in ("offset", "point") and kb == OFFSET:
            return ka, pair
        if sign == "-" and ka[0] == "point" and ka == kb:
            return OFFSET, pair
        raise FormulaError("these cannot be put together")

    def times(self, ka, a, kb, b):
        if ka[0] == "len" and kb[0] == "len":
            return self.length(ka[1] + kb[1]), lambda case: finite(a(case) * b(case))
        if kb == NUMBER:
            ka, a, kb, b = kb, b, ka, a
        if ka == NUMBER and kb == ANGLE:
            return ANGLE, lambda case: finite(a(case) * b(case))
        if ka == NUMBER and kb == OFFSET:
            return OFFSET, lambda case: tuple(finite(a(case) * v) for v in b(case))
        raise FormulaError("these cannot be multiplied")

    def over(self, ka, a, kb, b):
        def divide(case):
            below = b(case)
            if below == 0:
                raise NoValue("division by zero")
            return finite(a(case) / below)

        if ka[0] == "len" and kb[0] == "len":
            return self.length(ka[1] - kb[1]), divide
        if ka == ANGLE and kb in (NUMBER, ANGLE):
            return (ANGLE if kb == NUMBER else NUMBER), divide
        if ka == OFFSET and kb == NUMBER:

            def pair(case):
                below = b(case)
                if below == 0:
                    raise NoValue("division by zero")
                return tuple(finite(v / below) for v in a(case))

            return OFFSET, pair
        raise FormulaError("these cannot be divided")

    def power(self, ka, a, kb, b, right):
        if ka == NUMBER and (kb == NUMBER or kb is None):

            def run(case):
                base, top = a(case), b(case)
                try:
                    return finite(math.pow(base, top))
                except (ValueError, OverflowError):
                    raise NoValue("no finite power") from None

            return NUMBER, run
        if ka is None:
            return None, lambda case: fail(a(case), b(case))
        sign = 1
        while right[0] == "neg":
            sign, right = -sign, right[1]
        if ka[0] != "len" or right[0] != "num" or right[2] is not None or right[1].denominator != 1:
            raise FormulaError("this cannot be raised to that power")
        n = sign * int(right[1])

        def whole(case):
            base = a(case)
            if base == 0 and n < 0:
                raise NoValue("division by zero")
            return finite(base**n)

        return self.length(ka[1] * n), whole

    def length(self, n):
        if not -3 <= n <= 3:
            raise FormulaError("a power of length beyond 3")
        return ("len", n)

    def want(self, kind, *wanted):
        if kind is not None and kind not in wanted:
            raise FormulaError(f"{kind} where {wanted} is needed")

    # Names.

    def tree_name(self, tree):
        return self.value_of(self.resolve(tree))

    def tree_member(self, tree):
        return self.value_of(self.resolve(tree))

    def value_of(self, thing):
        if isinstance(thing, Thing):
            raise FormulaError(f"{thing.name} is no value")
        return thing

    def resolve(self, tree):
        """A `Thing`, or (kind, run)."""
        if tree[0] == "name":
            return self.bare(tree[1])
        if tree[0] != "member":
            return self.tree(tree)
        base, name = self.resolve(tree[1]), tree[2]
        if not isinstance(base, Thing):
            return self.coordinate(base, name)
        if base.what == "prefix":
            return self.prefixed(base.name, name)
        if base.what == "seam":
            return self.seam_member(base.name, name)
        if base.what == "dart":
            return self.dart_member(base, name)
        if base.what == "material":
            return self.material_member(base.name, name)
        return self.frame_member(base, name)

    def coordinate(self, base, name):
        kind, run = base
        if name not in ("x", "y") or (kind is not None and kind[0] not in ("point", "offset")):
            raise FormulaError(f"there is no {name} of this")
        i = "xy".index(name)
        return LENGTH, lambda case: run(case)[i]

    def bare(self, name):
        model = self.model
        if self.scope == "chart":
            found = [("row", name)] * model.rows.count(name)
        else:
            found = [(word, name) for word in model.globals.get(name, [])]
            if self.scope is not None:
                found += [(word, name) for word in model.frames[self.scope].names.get(name, [])]
        if not found and name in ("chart", "value", "piece", "drawing", "seam", "measure", "strip", "material"):
            return Thing("prefix", name)
        if len(found) != 1:
            raise FormulaError(f"{name} " + ("could mean several things" if found else "is not known"))
        return self.named(found[0][0], name, self.scope, None)

    def named(self, word, name, frame, laid):
        """Whatever has that name and is a `word`; `laid` is the placement through which it is seen."""
        model = self.model
        if word in ("row", "value", "measure", "strip"):
            key = (word, name)
            self.deps.add(key)
            return model.kind(key), lambda case: case.get(key)
        if word in ("piece", "drawing"):
            return Thing("frame", name, frame=name)
        if word == "placement":
            placement = model.placements[name]
            return Thing("frame", name, laid=name, frame=placement["lay"])
        if word == "dart":
            return Thing("dart", name, laid=laid, frame=frame)
        if word == "material":
            return Thing("material", name)
        if word == "point":
            return self.laid(("point", frame, name), "point", frame, laid)
        if word == "edge":
            self.deps.add(("flat", frame, name))
            if not self.paper:
                self.deps.add(("mouths", frame, name))
            self.ring = frame
            return self.laid(("flat", frame, name), "edge", frame, laid)
        raise FormulaError(f"{name} is a {word}, which is no value")

    def laid(self, key, kind, frame, laid):
        self.deps.add(key)
        if laid is None:
            return (kind, frame), lambda case: case.get(key)
        place = ("place", laid)
        self.deps.add(place)
        on = self.model.placements[laid]["on"]
        if kind == "point":
            return (kind, on), lambda case: case.get(place).point(case.get(key))
        return (kind, on), lambda case: case.get(key).moved(case.get(place))

    def prefixed(self, word, name):
        model = self.model
        if self.scope == "chart" and word != "chart":
            raise FormulaError("formulas of the chart see rows only")
        if word == "seam":
            if model.seam_names.count(name) != 1:
                raise FormulaError(f"there is no one seam {name}")
            return Thing("seam", name)
        kinds = dict(chart="row", value="value", piece="piece", drawing="drawing", measure="measure", strip="strip",
                     material="material")
        found = {"measure": model.measures, "strip": model.strips}.get(word, model.globals)
        count = found.count(name) if word in ("measure", "strip") else found.get(name, []).count(kinds[word])
        if count != 1:
            raise FormulaError(f"there is no one {word} {name}")
        return self.named(kinds[word], name, None, None)

    def seam_member(self, seam, name):
        if name not in ("one", "two", "difference"):
            raise FormulaError(f"a seam has no {name}")
        keys = [("seam", seam, side) for side in ("one", "two")]
        if name != "difference":
            key = keys[name == "two"]
            self.deps.add(key)
            return LENGTH, lambda case: case.get(key)
        self.deps.update(keys)
        return LENGTH, lambda case: case.get(keys[0]) - case.get(keys[1])

    def dart_member(self, dart, name):
        mouth, tip = ("mouth", dart.frame, "darts", dart.name), ("tip", dart.frame, dart.name)
        self.deps.add(mouth)
        if name == "intake":
            return LENGTH, lambda case: case.get(mouth).intake
        if name in ("first_foot", "second_foot"):
            run = {"first_foot": lambda case: case.get(mouth).first, "second_foot": lambda case: case.get(mouth).second}
            return self.laid_dart(dart, run[name])
        self.deps.add(tip)
        if name == "tip":
            return self.laid_dart(dart, lambda case: case.get(tip))
        if name == "leg":
            return LENGTH, lambda case: case.get(mouth).leg(case.get(tip))
        raise FormulaError(f"a dart has no {name}")

    def material_member(self, material, name):
        if name not in ("selvedge", "stretch_along", "stretch_across", "shrinkage_along", "shrinkage_across"):
            raise FormulaError(f"a material has no {name}")
        key = ("material", material, name)
        if not next(m for m in self.model.draft["materials"] if normal(m["name"]) == material)[name]:
            raise FormulaError(f"{material} says nothing about {name}")
        self.deps.add(key)
        return (LENGTH if name == "selvedge" else NUMBER), lambda case: case.get(key)

    def laid_dart(self, dart, run):
        if dart.laid is None:
            return ("point", dart.frame), run
        place = ("place", dart.laid)
        self.deps.add(place)
        on = self.model.placements[dart.laid]["on"]
        return ("point", on), lambda case: case.get(place).point(run(case))

    def frame_member(self, base, name):
        frame = self.model.frames.get(base.frame)
        found = frame.names.get(name, []) if frame else []
        if len(found) != 1:
            raise FormulaError(f"there is no one {name} in {base.name}")
        return self.named(found[0], name, base.frame, base.laid)

    # Functions.

    def tree_call(self, tree):
        _, name, arguments = tree
        plain = [a for n, a in arguments if n is None]
        named = {}
        for n, a in arguments:
            if n in named:
                raise FormulaError(f"{n} stands twice")
            if n is not None:
                named[n] = a
        special = getattr(self, "call_" + name, None)
        if special:
            return special(plain, named)
        if name not in FUNCTIONS or named:
            raise FormulaError(f"there is no function {name} like this")
        wanted, result, run = FUNCTIONS[name]
        if len(plain) != len(wanted):
            raise FormulaError(f"{name} takes {len(wanted)} things")
        return self.apply(plain, wanted, result, run)

    def apply(self, trees, wanted, result, run):
        """Wanted letters: p point, L line, e edge, P path (line or edge), T thing (point, line or edge; as a result: like the
        first), l length, n number, a angle, o offset, t truth."""
        kinds, runs = zip(*map(self.tree, trees)) if trees else ((), ())
        frame = self.together(kinds, wanted)
        if result == "T":
            return kinds[0] and (kinds[0][0], frame), lambda case: run(*[r(case) for r in runs])
        kind = {"p": ("point", frame), "L": ("line", frame), "e": ("edge", frame)}.get(result)
        kind = kind or {"l": LENGTH, "n": NUMBER, "a": ANGLE, "o": OFFSET}[result]
        return kind, lambda case: run(*[r(case) for r in runs])

    def together(self, kinds, wanted):
        frames = set()
        words = dict(p=("point",), L=("line",), e=("edge",), P=("line", "edge"), T=("point", "line", "edge"))
        plain = dict(l=LENGTH, n=NUMBER, a=ANGLE, o=OFFSET, t=TRUTH)
        for kind, letter in zip(kinds, wanted):
            if kind is None:
                continue
            if letter in words:
                if kind[0] not in words[letter]:
                    raise FormulaError(f"{kind} where one of {words[letter]} is needed")
                frames.add(kind[1])
            elif kind != plain[letter]:
                raise FormulaError(f"{kind} where {plain[letter]} is needed")
        if len(frames) > 1:
            raise FormulaError("things of different frames")
        return frames.pop() if frames else self.scope

    def same(self, kinds, any_kind=False):
        known = [k for k in kinds if k is not None]
        if any(k != known[0] for k in known) or not (any_kind or all(map(scalar, known))):
            raise FormulaError("these are of different kinds")
        return known[0] if len(known) == len(kinds) else None

    def only(self, plain, named, *counts, names=()):
        if len(plain) not in counts or set(named) != set(names):
            raise FormulaError("the function is given the wrong things")

    def call_abs(self, plain, named):
        self.only(plain, named, 1)
        kind, run = self.tree(plain[0])
        return self.same([kind]), lambda case: abs(run(case))

    def extreme(self, plain, named, pick):
        if len(plain) < 2 or named:
            raise FormulaError("two or more things are needed")
        kinds, runs = zip(*map(self.tree, plain))
        return self.same(kinds), lambda case: pick([run(case) for run in runs])

    def call_min(self, plain, named):
        return self.extreme(plain, named, min)

    def call_max(self, plain, named):
        return self.extreme(plain, named, max)

    def call_round(self, plain, named):
        self.only(plain, named, 1, 2)
        kinds, runs = zip(*map(self.tree, plain))
        kind = self.same(kinds)
        if len(plain) == 1 and kind not in (NUMBER, None):
            raise FormulaError("round needs a step here")

        def run(case):
            values = [r(case) for r in runs]
            step = values[1] if len(values) == 2 else 1.0
            if not step > 0:
                raise NoValue("a step must be above zero")
            times = finite(values[0] / step)
            low = math.floor(abs(times))
            low += abs(times) - low >= 0.5
            return math.copysign(low, times) * step

        return kind, run

    def call_sqrt(self, plain, named):
        self.only(plain, named, 1)
        kind, run = self.tree(plain[0])
        if kind is not None and (kind[0] != "len" or kind[1] % 2):
            raise FormulaError("sqrt takes a number or an even power of length")

        def root(case):
            value = run(case)
            if value < 0:
                raise NoValue("the root of something negative")
            return math.sqrt(value)

        return kind and ("len", kind[1] // 2), root

    def call_if(self, plain, named):
        self.only(plain, named, 3)
        (kt, test), (ka, a), (kb, b) = map(self.tree, plain)
        self.want(kt, TRUTH)
        self.same((ka, kb), any_kind=True)
        return ka or kb, lambda case: a(case) if test(case) else b(case)

    def call_near(self, plain, named):
        self.only(plain, named, 3)
        kinds, (a, b, t) = zip(*map(self.tree, plain))
        self.same(kinds)
        return TRUTH, lambda case: bool(abs(a(case) - b(case)) <= t(case))

    def call_graded(self, plain, named):
        self.only(plain, named, 1, names=("at", "give"))
        if named["at"][0] != "list" or named["give"][0] != "list":
            raise FormulaError("graded takes two lists")
        lists = [[self.tree(t) for t in named[n][1]] for n in ("at", "give")]
        kind, run = self.tree(plain[0])
        self.same([kind] + [k for k, _ in lists[0]])
        result = self.same([k for k, _ in lists[1]])
        if len(lists[0]) != len(lists[1]):
            raise FormulaError("as many steps as results are needed")

        def graded(case):
            q, at, give = run(case), *[[r(case) for _, r in items] for items in lists]
            if any(b <= a for a, b in zip(at, at[1:])):
                raise NoValue("the steps do not rise")
            if q <= at[0]:
                return give[0]
            for i in range(1, len(at)):
                if q <= at[i]:
                    return give[i - 1] + (give[i] - give[i - 1]) * ((q - at[i - 1]) / (at[i] - at[i - 1]))
            return give[-1]

        return result, graded

    def call_x(self, plain, named):
        self.only(plain, named, 1)
        return self.coordinate(self.tree(plain[0]), "x")

    def call_y(self, plain, named):
        self.only(plain, named, 1)
        return self.coordinate(self.tree(plain[0]), "y")

    def call_on_way(self, plain, named):
        self.only(plain, named, 3)
        kind = self.kind_of(plain[2])
        if kind == NUMBER:
            run = lambda a, b, f: (a[0] + (b[0] - a[0]) * f, a[1] + (b[1] - a[1]) * f)
        else:
            run = lambda a, b, s: going(a, direction(a, b), s)
        return self.apply(plain, "ppn" if kind == NUMBER else "ppl", "p", run)

    def kind_of(self, tree):
        return self.tree(tree)[0]

    def call_flat_length(self, plain, named):
        self.only(plain, named, 1)
        keep, self.paper = self.paper, True
        try:
            return self.apply(plain, "e", "l", lambda e: e.flat)
        finally:
            self.paper = keep

    def place(self, trees):
        """(edge, place) -> run giving the edge and the flat place."""
        (ke, edge), (kp, at) = self.tree(trees[0]), self.tree(trees[1])
        self.want(kp, NUMBER, LENGTH)
        if ke is not None and ke[0] != "edge":
            raise FormulaError("an edge is needed")

        def run(case):
            e, s = edge(case), at(case)
            return e, e.flat_of_sewn(s * e.sewn() if kp == NUMBER else s)

        return ke and ("point", ke[1]), run

    def call_at(self, plain, named):
        self.only(plain, named, 2)
        kind, run = self.place(plain)

        def point(case):
            edge, f = run(case)
            return edge.point(f)

        return kind, point

    def call_off(self, plain, named):
        self.only(plain, named, 3)
        before, self.deps = self.deps, set()
        kind, run = self.place(plain[:2])
        self.deps |= {("ring", key[1]) for key in self.deps if key[0] == "flat"} | before
        kl, distance = self.tree(plain[2])
        self.want(kl, LENGTH)

        def point(case):
            edge, f = run(case)
            return edge.off(f, distance(case))

        return kind, point


def fail(*values):
    raise NoValue("this has no kind")
