#!/usr/bin/env python3
"""Compares two JSON files: the same shape and words, numbers within 1e-6 (above 1000, within 1e-9 of their size).

usage: compare.py KEPT NEW
"""
import json
import math
import sys

LIMIT = 1e-6 * 1.001  # two numbers printed to six digits may differ in the last one


def numbers(value):
    if isinstance(value, dict):
        return sum(numbers(v) for v in value.values())
    if isinstance(value, list):
        return sum(numbers(v) for v in value)
    return is_number(value)


def is_number(value):
    return isinstance(value, (int, float)) and not isinstance(value, bool)


def differences(kept, new, where=""):
    if is_number(kept) and is_number(new):
        if not abs(kept - new) <= LIMIT * max(1.0, abs(kept) / 1000) and not (math.isnan(kept) and math.isnan(new)):
            yield f"{where or 'top'}: kept {kept!r}, now {new!r}"
    elif isinstance(kept, dict) and isinstance(new, dict):
        for key in sorted(kept.keys() | new.keys()):
            if key not in new or key not in kept:
                yield f"{where}.{key}: only in what is {'kept' if key in kept else 'new'}"
            else:
                yield from differences(kept[key], new[key], f"{where}.{key}")
    elif isinstance(kept, list) and isinstance(new, list):
        if len(kept) != len(new):
            yield f"{where or 'top'}: kept {len(kept)} items, now {len(new)}"
        for i, (a, b) in enumerate(zip(kept, new)):
            yield from differences(a, b, f"{where}[{i}]")
    elif type(kept) is not type(new) or kept != new:
        yield f"{where or 'top'}: kept {kept!r}, now {new!r}"


def main():
    kept, new = (json.load(open(path, encoding="utf-8")) for path in sys.argv[1:3])
    found = list(differences(kept, new))
    count = numbers(kept)
    if found or count == 0:
        print("\n".join(found[:20]))
        sys.exit(f"{sys.argv[1]}: {len(found)} differences in {count} numbers")
    print(f"{sys.argv[1]}: {count} numbers agree")


if __name__ == "__main__":
    main()
