#!/usr/bin/env python3
"""Random formulas: the engine's numbers against the second evaluator's, and against pint and fractions where a formula holds
nothing but literals.

usage: formulas.py --program PATH [--count 10000] [--seed 1]
Exit 1 if anything differs by more than 0.001 mm, degrees or 1e-6 of a number, or has a value on one side only.
"""
import argparse
import json
import math
import multiprocessing
import os
import random
import re
import subprocess
import sys
import tempfile
from fractions import Fraction

import pint

import evaluate
from second import formula, ron

SIZES = ("S", "M")
# Two pieces with straight, curved, round and smooth edges, darts of every form on both, one laid on the other; a drawing; a material.
DRAFT = """(format: "tracewheel draft", version: 0, display: cm,
chart: (girth: ["S", "M"], rows: [(name: "bust", by: [girth], cells: [("S", "83.1 cm"), ("M", "90.7 cm")]),
    (name: "hip", by: [girth], cells: [("S", "91.3 cm"), ("M", "97.9 cm")]), (name: "share", is: "1/3")]),
materials: [(name: "main", kind: cloth, selvedge: "11 mm", stretch_across: "23 %")],
values: [(name: "ease", is: "4.3 cm"), (name: "slope", is: "21.7 deg"), (name: "half", is: "hip / 2 - ease")],
drawings: [(name: "ground", points: [(name: "o", at: "(1.3 cm, -2.1 cm)"), (name: "p", at: "o.polar(slope, 17.3 cm)"),
    (name: "q", at: "p.down(bust / 9)")], lines: [(name: "bow", from: "o", by: [curve("o.right(6.1 cm)", "p.up(8.3 cm)", "p")]),
    (name: "wave", from: "o", by: [smooth(through: ["(7.7 cm, 9.1 cm)", "(15.3 cm, 1.9 cm)"], leaving: "75 deg", to: "q")])])],
pieces: [(name: "back", points: [(name: "a", at: "(0 cm, 0 cm)"), (name: "b", at: "a.right(bust / 4)"), (name: "c", at: "b.down(41.3 cm)"),
        (name: "d", at: "a.down(39.7 cm)")], edges: [(name: "top", from: "a", by: [curve("a.right(8.1 cm).down(3 cm)", "b.up(5.2 cm).left(4 cm)", "b")]),
        (name: "side", from: "b", by: [smooth(through: ["(bust / 4 - 2.3 cm, 17.1 cm)"], to: "c")]), (name: "hem", from: "c", by: [straight("d")]),
        (name: "centre", from: "d", by: [straight("a")])], lines: [(name: "round", from: "b", by: [arc(centre: "a", turn: clockwise,
        to: "a.polar(67.3 deg, bust / 4)")])],
        darts: [(name: "dart", on: "hem", centre: "0.43", intake: "3.3 cm", tip: "9.7 cm", bow: "-2 mm")], cuts: [(material: "main", count: 1, on_fold: "centre")]),
    (name: "front", points: [(name: "a", at: "(3.1 cm, 5.7 cm)"), (name: "b", at: "a.right(bust / 4 + ease)"), (name: "c", at: "b.down(31.9 cm)"),
        (name: "d", at: "a.down(37.3 cm)"), (name: "e", at: "(14.3 cm, 12.1 cm)"), (name: "f", at: "e.down(17.9 cm).right(7 mm)")],
        lines: [(name: "axis", from: "e", by: [straight("f")])], edges: [(name: "top", from: "d", by: [straight("c")]), (name: "side", from: "c",
        by: [curve("c.up(11.1 cm).right(3.7 cm)", "b.down(7.3 cm)", "b")]), (name: "neck", from: "b", by: [straight("a")]),
        (name: "middle", from: "a", by: [straight("d")])], darts: [(name: "tuck", on: "top", foot: "7.9 cm", intake: "2.1 cm", tip: "8.3 cm", kept: to_end),
        (name: "slim", on: "axis", centre: "0.41", intake: "2.7 cm", form: two_ended, bow: "3 mm")],
        cuts: [(material: "main", count: 2)])],
placements: [(name: "laid", lay: "front", on: "back", point: "a", onto: "b", turned: "13.7 deg", mirrored: true)])"""

FRAMES = {
    "back": (
        ("back.a", "back.b", "back.c", "back.d", "back.dart.tip", "back.dart.first_foot", "laid.b", "laid.c", "laid.tuck.tip"),
        ("back.top", "back.side", "back.hem", "back.centre", "back.round", "laid.side", "laid.top"),
    ),
    "front": (("front.a", "front.b", "front.c", "front.d", "front.tuck.tip", "front.slim.tip", "front.slim.first_foot"), ("front.top", "front.side", "front.neck", "front.middle")),
    "ground": (("ground.o", "ground.p", "ground.q"), ("ground.bow", "ground.wave")),
}
OUTLINES = ("back.top", "back.side", "back.hem", "back.centre", "front.top", "front.side", "front.neck", "front.middle", "laid.side", "laid.top")


class Maker:
    """Formulas of a wanted kind."""

    def __init__(self, seed):
        self.r = random.Random(seed)
        self.frame = self.r.choice(["back", "back", "front", "ground"])

    def pick(self, *makers):
        return self.r.choice(makers)()

    def any(self, depth):
        makers = [self.number, self.length, self.angle, self.offset, self.point, self.edge, self.truth, self.power]
        return self.r.choice(makers)(depth)

    def digits(self, low, high):
        return f"{self.r.uniform(low, high):.{self.r.randint(1, 4)}f}"

    def number(self, depth):
        leaf = lambda: self.pick(
            lambda: self.digits(0.1, 5), lambda: self.digits(0.1, 5), lambda: f"{self.digits(1, 90)} %", lambda: "pi",
            lambda: "share", lambda: "main.stretch_across",
        )
        if depth == 0:
            return leaf()
        n, l, a = (lambda: self.number(depth - 1)), (lambda: self.length(depth - 1)), (lambda: self.angle(depth - 1))
        return self.pick(
            leaf, lambda: f"({n()} {self.r.choice('+-*/')} {n()})", lambda: f"{l()} / ({l()})", lambda: f"{a()} / ({a()})",
            lambda: f"{self.r.choice(['sin', 'cos', 'tan'])}({a()})", lambda: f"sqrt({n()})", lambda: f"abs({n()})",
            lambda: f"({n()})^{self.r.choice(['2', '-1', '0.5', '(1/3)', '3'])}", lambda: f"-{n()}",
            lambda: f"{self.r.choice(['min', 'max'])}({n()}, {n()}, {n()})", lambda: f"round({n()}, {self.digits(0.1, 1)})",
            lambda: f"if({self.truth(depth - 1)}, {n()}, {n()})", lambda: f"bend({self.true_edge(depth - 1)}, {self.share()}) * {l()}",
        )

    def share(self):
        return self.digits(0.05, 0.95)

    def unit(self):
        return self.pick(
            lambda: f"{self.digits(0.5, 30)} cm", lambda: f"{self.digits(5, 300)} mm", lambda: f"{self.digits(1, 9)} in",
            lambda: f"{self.r.randint(1, 9)} {self.r.randint(1, 7)}/8 in", lambda: f"{self.r.randint(1, 15)}/16 in",
            lambda: f"{self.digits(0.1, 1)} ft", lambda: f"{self.digits(0.01, 0.3)} m", lambda: f"{self.digits(0.1, 0.3)} yd",
        )

    def length(self, depth):
        leaf = lambda: self.pick(
            self.unit, self.unit, lambda: "bust", lambda: "hip", lambda: "ease", lambda: "half", lambda: "chart.bust", lambda: "value.ease",
            lambda: "back.dart.leg", lambda: "front.slim.leg", lambda: "front.tuck.intake", lambda: "main.selvedge", lambda: "material.main.selvedge", lambda: "in_size(hip, \"M\")",
        )
        if depth == 0:
            return leaf()
        n, l = (lambda: self.number(depth - 1)), (lambda: self.length(depth - 1))
        p, e = (lambda: self.point(depth - 1)), (lambda: self.edge(depth - 1))
        return self.pick(
            leaf, lambda: f"({l()} {self.r.choice('+-')} {l()})", lambda: f"{l()} * {n()}", lambda: f"{l()} / {self.digits(1, 9)}",
            lambda: f"abs({l()})", lambda: f"{self.r.choice(['min', 'max'])}({l()}, {l()})", lambda: f"sqrt(({l()})^2 + ({l()})^2)",
            lambda: f"round({l()}, {self.digits(1, 9)} mm)", lambda: f"if({self.truth(depth - 1)}, {l()}, {l()})",
            lambda: f"graded({l()}, at: [70.3 cm, 85.1 cm, 99 cm], give: [{l()}, {l()}, {l()}])",
            lambda: f"{p()}.{self.r.choice('xy')}", lambda: f"gap({p()}, {p()})", lambda: f"gap({p()}, {p()})",
            lambda: f"length({e()})", lambda: f"flat_length({e()})", lambda: f"{e()}.length()",
            lambda: f"place({self.named_edge()}, {self.on_edge})", lambda: self.whole(depth),
        )

    def named_edge(self):
        edge = self.r.choice(FRAMES[self.frame][1])
        self.on_edge = f"at({edge}, {self.share()})"
        return edge

    def whole(self, depth):
        piece = self.r.choice(["back", "front"])
        before, self.frame = self.frame, piece
        line = self.line(depth - 1)
        self.frame = before
        return self.r.choice([f"width({piece}, {line})", f"girth({line})"])

    def power(self, depth):
        l = lambda: self.length(max(depth - 1, 0))
        return self.pick(
            lambda: f"{l()} * {l()}", lambda: f"({l()})^{self.r.choice('23')}", lambda: f"{self.number(depth)} / ({l()})", lambda: "area(back)",
            lambda: "area(front)", lambda: f"bend({self.true_edge(max(depth - 1, 0))}, {self.share()})",
        )

    def angle(self, depth):
        leaf = lambda: self.pick(lambda: f"{self.digits(1, 170)} deg", lambda: f"{self.digits(1, 80)}°", lambda: "slope")
        if depth == 0:
            return leaf()
        n, a, p = (lambda: self.number(depth - 1)), (lambda: self.angle(depth - 1)), (lambda: self.point(depth - 1))
        return self.pick(
            leaf, lambda: f"({a()} {self.r.choice('+-')} {a()})", lambda: f"{a()} * {self.share()}", lambda: f"atan({n()})",
            lambda: f"{self.r.choice(['asin', 'acos'])}({self.share()})", lambda: f"heading({p()}, {p()})", lambda: f"heading({self.line(depth - 1)})",
            lambda: f"corner_angle({p()}, {p()}, {p()})", lambda: f"angle({p()}, {p()}, {p()})",
        )

    def offset(self, depth):
        if depth == 0:
            return f"offset({self.length(0)}, {self.length(0)})"
        return self.pick(
            lambda: f"offset({self.length(depth - 1)}, {self.length(depth - 1)})", lambda: f"({self.point(depth - 1)} - {self.point(depth - 1)})",
            lambda: f"{self.offset(depth - 1)} * {self.share()}", lambda: f"({self.offset(depth - 1)} + {self.offset(depth - 1)})",
            lambda: f"-{self.offset(depth - 1)}",
        )

    def point(self, depth):
        leaf = lambda: self.r.choice(FRAMES[self.frame][0])
        if depth == 0:
            return leaf()
        p, l, e = (lambda: self.point(depth - 1)), (lambda: self.length(depth - 1)), (lambda: self.edge(depth - 1))
        path = lambda: self.pick(e, lambda: self.line(depth - 1))
        return self.pick(
            leaf, leaf, lambda: f"{p()}.{self.r.choice(['right', 'left', 'up', 'down'])}({l()})",
            lambda: f"{p()}.polar({self.angle(depth - 1)}, {l()})", lambda: f"on_way({p()}, {p()}, {self.share()})",
            lambda: f"on_way({p()}, {p()}, {l()})", lambda: f"halfway({p()}, {p()})", lambda: f"({p()} + {self.offset(depth - 1)})",
            lambda: self.moving(p, depth), lambda: f"foot({p()}, {path()})", lambda: f"bisect({p()}, {p()}, {p()}, {l()})",
            lambda: f"at({e()}, {self.share()})", lambda: f"{e()}.at({self.digits(1, 12)} cm)",
            lambda: f"off({self.outline_edge()}, {self.share()}, {self.digits(-4, 4)} cm)",
            lambda: f"cross({path()}, {path()}{self.which(p)})", lambda: f"cross({path()}, {path()}{self.which(p)})",
            lambda: f"swing({p()}, {self.digits(5, 40)} cm, {path()}{self.which(p)})", lambda: f"touch({p()}, {e()}{self.which(p)})",
        )

    def which(self, p):
        return self.pick(
            lambda: "", lambda: f", nearest: {p()}", lambda: f", from: {p()}",
            lambda: f", side: {self.r.choice(['left', 'right', 'above', 'below'])}",
        )

    def moving(self, thing, depth):
        p = lambda: self.point(depth - 1)
        return self.pick(
            lambda: f"moved({thing()}, {self.offset(depth - 1)})", lambda: f"turned({thing()}, {p()}, {self.angle(depth - 1)})",
            lambda: f"turned({thing()}, {p()}, from: {p()}, to: {p()})", lambda: f"mirrored({thing()}, {self.line(depth - 1)})",
        )

    def line(self, depth):
        p = lambda: self.point(max(depth - 1, 0))
        if depth <= 0:
            return self.pick(lambda: f"level({p()})", lambda: f"plumb({p()})")
        l = lambda: self.line(depth - 1)
        return self.pick(
            lambda: f"line({p()}, {p()})", lambda: f"level({p()})", lambda: f"plumb({p()})", lambda: f"through({p()}, square_to: {l()})",
            lambda: f"through({p()}, parallel_to: {l()})", lambda: f"through({p()}, heading: {self.angle(depth - 1)})",
            lambda: f"parallel({l()}, {self.length(depth - 1)})", lambda: f"along({self.edge(depth - 1)}, {self.share()})", lambda: self.moving(l, depth),
        )

    def outline_edge(self):
        edges = [e for e in OUTLINES if e in FRAMES[self.frame][1]]
        return self.r.choice(edges) if edges else self.edge(0)

    def edge(self, depth):
        leaf = lambda: self.r.choice(FRAMES[self.frame][1])
        if depth == 0:
            return leaf()
        p, e = (lambda: self.point(depth - 1)), (lambda: self.edge(depth - 1))

        def part():
            edge = leaf()
            return f"part({edge}, at({edge}, {self.digits(0.02, 0.45)}), at({edge}, {self.digits(0.5, 0.98)}))"

        def arc():
            pin, far, way = p(), f"{self.digits(3, 30)} cm", f"{self.digits(1, 170)} deg"
            turn = self.r.choice(["", ", turn: clockwise", ", turn: anticlockwise"])
            return f"arc({pin}, {pin}.polar({way}, {far}), {pin}.polar({way} + {self.digits(5, 170)} deg, {far}){turn})"

        return self.pick(
            leaf, leaf, lambda: f"between({p()}, {p()})", lambda: f"reversed({e()})", part, arc, lambda: f"circle({p()}, {self.digits(3, 30)} cm)",
            lambda: f"set_off({self.r.choice([leaf(), arc()])}, {self.digits(-2, 2)} cm)",
            lambda: f"set_off({leaf()}, from: {self.digits(-2, 2)} cm, to: {self.digits(-2, 2)} cm)", lambda: self.moving(e, depth),
        )

    def true_edge(self, depth):
        """None that is set off: its cubics lie within 1e-6 mm, but their bend is not that of the parallel."""
        while "set_off" in (edge := self.edge(depth)):
            pass
        return edge

    def truth(self, depth):
        depth = max(depth - 1, 0)
        n, l = (lambda: self.number(depth)), (lambda: self.length(depth))
        return self.pick(
            lambda: f"{n()} {self.r.choice(['<', '<=', '>', '>='])} {n()}", lambda: f"{l()} {self.r.choice(['<', '>'])} {l()}",
            lambda: f"near({l()}, {l()}, {l()})", lambda: f"not ({n()} < {n()})", lambda: f"({l()} < {l()}) {self.r.choice(['and', 'or'])} ({n()} < {n()})",
        )


class Literals(Maker):
    """Formulas of literals and signs only, which other libraries can compute."""

    def arithmetic(self, depth, power):
        if depth == 0 or self.r.random() < 0.15:
            if power == 0:
                return self.r.choice([self.digits(0.1, 9), f"{self.digits(1, 99)} %", f"{self.r.randint(1, 9)}/{self.r.randint(2, 9)}"])
            return self.unit() if power == 1 else f"({self.unit()} * {self.unit()})"
        sub = lambda p: self.arithmetic(depth - 1, p)
        shapes = [lambda: f"({sub(power)} + {sub(power)})", lambda: f"({sub(power)} - {sub(power)})", lambda: f"({sub(power)}) * ({sub(0)})"]
        shapes.append(lambda: f"({sub(power)}) / ({sub(0)})")
        if power == 0:
            shapes.append(lambda: f"({sub(1)}) / ({sub(1)})")
        return self.pick(*shapes)


UNITS = pint.UnitRegistry()


def by_pint(tree):
    """The value of a tree of literals: a quantity of pint's."""
    if tree[0] == "num":
        _, value, unit = tree
        names = {None: "dimensionless", "%": "percent", "ft": "foot", "yd": "yard", "in": "inch"}
        return float(value) * UNITS.Unit(names.get(unit, unit))
    if tree[0] == "neg":
        return -by_pint(tree[1])
    _, sign, a, b = tree
    a, b = by_pint(a), by_pint(b)
    return {"+": lambda: a + b, "-": lambda: a - b, "*": lambda: a * b, "/": lambda: a / b}[sign]()


def by_fractions(text):
    """The same from the text, by replacing each literal by a fraction of millimetres; Python does the rest."""
    in_mm = dict(mm=Fraction(1), cm=Fraction(10), m=Fraction(1000), ft=Fraction(3048, 10), yd=Fraction(9144, 10))
    in_mm |= {"in": Fraction(254, 10), "": Fraction(1), "%": Fraction(1, 100)}

    def one(match):
        whole, over, under, plain, unit = match.groups()
        if over and not unit:  # a division, not a literal
            return f"(Fraction({over}) / Fraction({under}))"
        value = Fraction(plain) if plain else Fraction(int(whole or 0)) + Fraction(int(over), int(under))
        value *= in_mm[unit or ""]
        return f"Fraction({value.numerator}, {value.denominator})"

    number = re.compile(r"(?:(?:(\d+) )?(\d+)/(\d+)|(\d+(?:\.\d+)?))(?: (mm|cm|m|ft|yd|in|%)(?!\w))?")
    return float(eval(number.sub(one, text), {"Fraction": Fraction}))


def measure(program, formulas):
    with tempfile.NamedTemporaryFile("w", suffix=".ron", delete=False) as file:
        file.write(DRAFT)
    try:
        call = [program, "measure", file.name, "--json", "--"] + formulas
        run = subprocess.run(call, capture_output=True, text=True)
        return json.loads(run.stdout)
    finally:
        os.unlink(file.name)


def differ(mine, theirs, text=""):
    """Like `evaluate.differences`, by a part of large numbers; what is beyond 1e9 was divided by next to nothing and counts as none; an
    angle of nothing may come out as a whole turn."""
    mine, theirs = (None if isinstance(v, float) and abs(v) > 1e9 else v for v in (mine, theirs))
    if text.startswith("angle(") and mine is not None and theirs is not None:
        mine, theirs = mine % 359.9999999, theirs % 359.9999999
    size = max((abs(v) for v in (mine if isinstance(mine, list) else [mine]) if isinstance(v, float)), default=0.0)
    return evaluate.differences(mine, theirs, 0.001 if size < 1e4 else 1e-7 * size)


def batch(job):
    program, first, count = job
    formulas, literal = [], []
    for seed in range(first, first + count):
        if seed % 5 == 0:
            maker = Literals(seed)
            literal.append(maker.arithmetic(3, maker.r.choice([0, 1, 1, 1, 2])))
            formulas.append(literal[-1])
        else:
            maker = Maker(seed)
            formulas.append(maker.any(maker.r.choice([1, 2, 2, 3, 3])))
    model = evaluate.model_of(ron.read(DRAFT))
    asked = list(dict.fromkeys(formulas))
    theirs = measure(program, asked)
    bad, null, judged = [], 0, 0
    for text in asked:
        for size in SIZES:
            mine = evaluate.outside_value(model.cases[size], text)
            null += mine is None
            problem = differ(mine, theirs[text][size], text)
            if problem:
                bad.append(f"{text} in {size}: here {mine}, there {theirs[text][size]}: {problem}")
    for text in set(literal):
        try:
            value = by_pint(formula.parse(text))
            power = dict(value.dimensionality).get("[length]", 0)
            others = [float(value.to(UNITS.Unit("mm") ** power if power else "dimensionless").magnitude), by_fractions(text)]
        except ZeroDivisionError:
            others = [None, None]
        judged += 1
        for name, other in zip(("pint", "fractions"), others):
            problem = differ(other, theirs[text]["S"])
            if problem:
                bad.append(f"{text}: {name} {other}, there {theirs[text]['S']}: {problem}")
    return len(asked) * len(SIZES), null, judged, bad


def main():
    sys.setrecursionlimit(100_000)
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--program", required=True)
    parser.add_argument("--count", type=int, default=10_000)
    parser.add_argument("--seed", type=int, default=1)
    options = parser.parse_args()
    step = 100
    jobs = [(options.program, options.seed + i, min(step, options.count - i)) for i in range(0, options.count, step)]
    count = null = judged = 0
    wrong = []
    with multiprocessing.Pool() as pool:
        for n, nothing, literals, bad in pool.imap(batch, jobs):
            count, null, judged, wrong = count + n, null + nothing, judged + literals, wrong + bad
    for line in wrong[:40]:
        print(line)
    print(
        f"{options.count} formulas, {count} values compared ({null} null on both sides), "
        f"{judged} also by pint and fractions, {len(wrong)} differ"
    )
    return 1 if wrong or null > count / 2 or judged == 0 else 0


if __name__ == "__main__":
    sys.exit(main())
