#!/usr/bin/env python3
"""A second reader and evaluator of Tracewheel drafts. Shares no code with the program; see README.md beside it.

usage: evaluate.py DRAFT.ron [--formula F]... [--size S]... [--set NAME=FORMULA]...
       evaluate.py --compare DRAFT.ron OTHER.json [--tolerance 0.001] [--all]
                   [--formula F]... [--size S]... [--set NAME=FORMULA]...
"""
import argparse
import json
import math
import sys

import numpy as np

from second import ron
from second.curves import Edge, NoValue
from second.views import model_of

DEGREES = 180 / math.pi


def every_formula(model):
    """All that is printed when nothing is asked for, in order."""
    out = [f"chart.{r}" for r in model.rows] + [f"value.{v['name']}" for v in model.draft["values"]]
    for name, frame in model.frames.items():
        out += [f"{name}.{p}" for p in frame.points]
        out += [f"{word}({name}.{e})" for e in frame.edges for word in ("length", "flat_length")]
        out += [f"{name}.{d}.leg" for d in frame.takers["darts"]]
    return out + [f"seam.{s}.{part}" for s in model.seams for part in ("one", "two", "difference")]


def outside_value(case, text):
    """The value of a formula as it is told to others: mm, degrees, numbers, yes-or-no, pairs; None if there is none."""
    try:
        kind, value = case.evaluate(text)
        if isinstance(value, Edge):
            value = float(value.sewn())
        elif kind and kind[0] == "line":
            return None
        elif kind == ("angle",):
            value = value * DEGREES
    except (NoValue, ArithmeticError, RecursionError):
        return None
    if isinstance(value, tuple):
        value = [float(v) for v in value]
        return value if all(map(math.isfinite, value)) else None
    if isinstance(value, (bool, np.bool_)):
        return bool(value)
    return float(value) if math.isfinite(value) else None


def table(model, formulas, sizes):
    return {text: {size: outside_value(model.cases[size], text) for size in sizes} for text in formulas}


def differences(mine, other, tolerance):
    """What differs between two values, in words; None if they agree."""
    if mine is None or other is None:
        return None if mine is other else "one has a value, the other has none"
    if isinstance(mine, bool) or isinstance(other, bool):
        return None if mine is other else "yes-or-no differs"
    if isinstance(mine, list) != isinstance(other, list):
        return "a pair against a number"
    a, b = (mine, other) if isinstance(mine, list) else ([mine], [other])
    if len(a) != len(b) or not all(isinstance(v, (int, float)) for v in b):
        return "another shape"
    away = max(abs(p - q) for p, q in zip(a, b))
    return None if away <= tolerance else f"{away:.6g} off"


def compare(model, other, formulas, sizes, tolerance, every):
    """Prints the differences and a closing count; True if there are none and something was compared."""
    keys = formulas or list(other)
    if every and not formulas:
        keys += [k for k in every_formula(model) if k not in other]
    if not sizes:
        asked = {s for row in other.values() for s in row}
        sizes = model.sizes + [s for s in model.cases if s in asked and s not in model.sizes]
        for size in sorted(asked - set(model.cases)):
            print(f"difference: the draft has no size {size}")
    bad = 0 if formulas else len({s for row in other.values() for s in row} - set(model.cases))
    count = nothing = 0
    for key in keys:
        for size in sizes:
            if key not in other or size not in other[key]:
                bad += 1
                print(f"difference: {key} in {size}: missing in the other")
                continue
            mine, theirs = outside_value(model.cases[size], key), other[key][size]
            count += 1
            nothing += mine is None and theirs is None
            problem = differences(mine, theirs, tolerance)
            if problem:
                bad += 1
                print(f"difference: {key} in {size}: here {mine}, there {theirs}: {problem}")
    print(f"{count} values of {len(keys)} formulas compared ({nothing} null on both sides), {bad} differences")
    return bad == 0 and count > 0


def main():
    sys.setrecursionlimit(100_000)
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("files", nargs="+")
    parser.add_argument("--compare", action="store_true")
    parser.add_argument("--formula", action="append", default=[])
    parser.add_argument("--size", action="append", default=[])
    parser.add_argument("--set", action="append", default=[])
    parser.add_argument("--tolerance", type=float, default=0.001)
    parser.add_argument("--all", action="store_true")
    options = parser.parse_args()
    if len(options.files) != (2 if options.compare else 1):
        parser.error("one draft is needed, and with --compare one file of values")
    try:
        with open(options.files[0], encoding="utf-8") as file:
            draft = ron.read(file.read())
        if any("=" not in text for text in options.set):
            parser.error("--set takes NAME=FORMULA")
        model = model_of(draft, [tuple(text.split("=", 1)) for text in options.set])
        other = None
        if options.compare:
            with open(options.files[1], encoding="utf-8") as file:
                other = json.load(file)
    except (OSError, UnicodeDecodeError, ron.ReadError, json.JSONDecodeError) as error:
        print(f"error: {error}", file=sys.stderr)
        return 2
    except KeyError as error:
        print(f"error: there is no value {error}", file=sys.stderr)
        return 2
    unknown = [size for size in options.size if size not in model.cases]
    if unknown:
        print(f"error: there is no size {unknown[0]}", file=sys.stderr)
        return 2
    if options.compare:
        return 0 if compare(model, other, options.formula, options.size, options.tolerance, options.all) else 1
    out = table(model, options.formula or every_formula(model), options.size or model.sizes)
    print(json.dumps(out, indent=1, ensure_ascii=False))
    return 0


if __name__ == "__main__":
    sys.exit(main())
