#!/usr/bin/env python3
"""The tables of the examples, judged: every number that the program writes as CSV is computed anew from the draft by the second evaluator.

usage: tables.py --program PROGRAM DRAFT.ron...

Millimetres must agree to 0.001; centimetres and inches are made here from the millimetres of the second evaluator, by pint and by whole
fractions of an inch, and must be the same words. How strips come out of cloth is computed a second way: strip by strip over the cloth.
Lines that nothing here judges are counted and named; where a draft has derived pieces, which the second evaluator does not know, only what
is no geometry is judged.
"""
import argparse
import csv
import math
import subprocess
import sys
import tempfile
from fractions import Fraction
from pathlib import Path

import pint

from evaluate import outside_value
from second import ron
from second.views import model_of

UNITS = pint.UnitRegistry()
TIE = Fraction(1, 10**6)
SHORTEST = 300.0


def nearest(value, step):
    """A number rounded to a step, half away from zero; within a millionth of a mm of a tie counts as the tie."""
    value = Fraction(value)
    count, rest = divmod(abs(value), step)
    whole = count + (rest >= step / 2 - TIE)
    return -whole * step if value < 0 else whole * step


def in_cm(mm):
    return f"{float(nearest(mm, Fraction(1)) / 10):.1f}".replace("-0.0", "0.0")


def in_inches(mm):
    eighth = Fraction(UNITS.Quantity(Fraction(1, 8), UNITS.inch).to(UNITS.mm).magnitude).limit_denominator(10**6)
    eighths = nearest(mm, eighth) / eighth
    sign = "-" if eighths < 0 else ""
    whole, part = divmod(abs(eighths) / 8, 1)
    return f"{sign}{whole} {part}" if part else f"{sign}{whole}"


class ToBuy(float):
    """A length that is bought: mm of whole centimetres; `inches` are eighths, rounded up from what is needed."""

    def __new__(cls, needed):
        bought = super().__new__(cls, math.ceil(round(needed, 6) / 10) * 10.0)
        bought.inches = math.ceil(round(needed / 3.175, 6)) * 3.175
        return bought


class Draft:
    """A draft with its second model; formulas have values by size."""

    def __init__(self, path):
        self.parts = ron.read(path.read_text(encoding="utf-8"))
        self.derived = any(p.get("steps") for p in self.parts["pieces"])
        self.model = None if self.derived else model_of(self.parts)

    def value(self, size, text, view=""):
        """mm of a formula; None where it cannot be told."""
        if not text:
            return None
        return None if self.derived else outside_value(self.model.cases[f"{view}//{size}" if view else size], text)

    def named(self, kind, readable):
        return next((p for p in self.parts[kind] if p["name"].replace("_", " ") == readable), None)


def words(part):
    """The word of a choice; empty where nothing is said."""
    return getattr(part, "word", part) or ""


def strip_numbers(draft, strip, size):
    """All that is told of a strip in a size, by the name of its line; by (width, name) where it hangs on the width of the cloth."""
    of = lambda text: draft.value(size, text) if text else 0.0
    finished, ends, width = draft.value(size, f"strip.{strip['name']}"), of(strip["ends"]), of(strip["width"])
    count = max(strip["count"], 1)
    cut, wide = finished + 2 * ends, width * max(strip["layers"], 1) + 2 * of(strip["allowance"])
    out = {
        "how many": count, "finished length": finished, "added at each end": ends, "length of each as cut": cut,
        "length of all together": count * cut, "finished width": width, "width as cut": wide,
        "length to buy": ToBuy(count * cut),
    }
    material = next((m for m in draft.parts["materials"] if m["name"] == strip["material"]), None)
    for sold in material["widths"] if material else []:
        usable = of(sold) - 2 * of(material["selvedge"])
        join = draft.value(size, strip["join"])
        longest, beside, joins, lost, cloth = from_cloth(words(strip["grain"]) or "along", (count, cut, wide), usable, join)
        for name, value in (
            ("longest piece from selvedge to selvedge", longest), ("whole strips side by side", beside), ("joins in all", joins),
            ("length that joins take", lost), ("cloth for all of them", ToBuy(cloth)),
        ):
            out[sold, name] = value
    return out


def fits(wide, room):
    """How many strips of a width lie in a room, counted one by one."""
    count = 0
    while (count + 1) * wide <= room + 1e-6 * wide:
        count += 1
    return count


def from_cloth(grain, strip, usable, join):
    count, cut, wide = strip
    root = math.sqrt(2)
    if grain == "along":
        beside = fits(wide, usable)
        return None, beside, 0, 0.0, -(-count // beside) * cut
    if grain == "across":
        beside = fits(cut, usable)
        if beside:
            return usable, beside, 0, 0.0, -(-count // beside) * wide
        parts, length = 1, usable
        while length < cut - 1e-6:
            parts, length = parts + 1, length + usable - 2 * join
        return usable, 0, (parts - 1) * count, (parts - 1) * count * 2 * join, parts * count * wide
    longest, slant = usable * root, cut + wide
    if slant <= longest + 1e-6:
        high = slant / root
        # Squares of that height, each further one beside it only as far on as a strip is wide along the edge.
        row, column = fits(wide * root, usable - high) + 1 if usable >= high - 1e-9 else 0, fits(high, usable)
        plans = [(-(-count // row) * high, 0, row)] if row else []
        plans.append((high + (-(-count // max(column, 1)) - 1) * wide * root, 1, column))
        cloth, _, beside = min(plans)
        return longest, beside, 0, 0.0, cloth
    tens = math.floor(count * cut * wide / usable / 10)
    while True:
        length, corner, full = -wide, (10.0 * tens + usable) / root, min(10.0 * tens, usable) * root
        kept = []
        for i in range(fits(wide, corner)):
            sides = [min(2 * at, full, 2 * (corner - at)) for at in (i * wide, (i + 1) * wide)]
            kept += [min(sides)] if min(sides) >= SHORTEST else []
        length += sum(kept) - max(len(kept) - 1, 0) * 2 * root * join
        if kept and length >= count * cut - 1e-6:
            return longest, 0, len(kept) - 1, (len(kept) - 1) * 2 * root * join, 10.0 * tens
        tens += 1


def strip_marks(draft, strip, seam, size):
    """Distances from the cut end at which pieces meet, the seam starts and ends; None where notches are told, which is not judged here."""
    asks = {f"strip.{strip['name']}": 1, f"strip.{strip['name']} / 2": 2}
    for own, other in (("one", "two"), ("two", "one")):
        if len(seam[own]) == 1 and seam[own][0] in asks:
            break
    else:
        return None
    if seam["notches"] or seam["stretches"] or seam["closure"]:
        return None
    times = asks[seam[own][0]]
    part = draft.value(size, seam[own][0])
    lengths = [draft.value(size, f"length({text})") for text in seam[other]]
    scale = 1.0 if words(seam["fit"]) in ("", "equal") else part / sum(lengths)
    joints = [sum(lengths[: i + 1]) * scale for i in range(len(lengths) - 1)]
    turns = [(lambda at, t=t: t * part + at if t % 2 == 0 else (t + 1) * part - at) for t in range(times)]
    told = {round(turn(at), 6) for at in [0.0, part, *joints] for turn in turns}
    ends = draft.value(size, strip["ends"]) or 0.0
    return sorted(at + ends for at in told)


class Judge:
    """Goes through the tables of one draft."""

    def __init__(self, draft, view):
        self.draft, self.view = draft, view
        self.judged, self.wrong, self.left = 0, [], []

    def lines(self, path):
        """Lines with their cells by unit: (group, name) in the order of the file, several of one name kept apart."""
        with open(path, encoding="utf-8", newline="") as file:
            rows = list(csv.reader(file))
        head = rows[0]
        grouped = head[0] == "group"
        sizes = head[2 + grouped:]
        out = []
        for row in rows[1:]:
            if len(row) != len(head):
                self.wrong.append(f"{path.name}: a row of {len(row)} cells under {len(head)}")
                continue
            group, (name, unit), cells = row[0] if grouped else "", row[grouped: grouped + 2], row[grouped + 2:]
            if unit == "note":
                continue
            if unit in ("", "mm"):
                out.append((group, name, {}))
            out[-1][2][unit] = cells
        return head, sizes, out

    def number(self, where, units, i, value):
        """A cell against mm (or a plain number) computed here."""
        if value is None:
            self.left.append(where)
            return
        self.judged += 1
        if "mm" not in units or not isinstance(value, float):
            cell = units.get("", units.get("mm"))[i]
            if float(cell) != round(value, 3):
                self.wrong.append(f"{where}: {cell} is written, {value} computed")
            return
        if abs(float(units["mm"][i]) - value) > 0.0011:
            self.wrong.append(f"{where}: {units['mm'][i]} mm is written, {value} computed")
        for unit, shown in (("cm", in_cm(value)), ("in", in_inches(getattr(value, "inches", value)))):
            cell = units[unit][i]
            if cell != shown and not (unit == "in" and cell == shown.replace("-0", "0") == "0"):
                # Just beside a tie the two evaluators may round apart.
                self.wrong.append(f"{where}: {cell} {unit} is written, {shown} computed from {value} mm")

    def table(self, path):
        name = path.stem
        if self.view:
            name = name.removeprefix("".join(c if c.isalnum() else "-" for c in self.view) + "-")
        head, sizes, lines = self.lines(path)
        if name == "cutting-list":
            self.cutting(lines)
            return
        for nth, (group, line, units) in enumerate(lines):
            before = sum(1 for g, n, _ in lines[:nth] if g == group)
            for i, size in enumerate(sizes):
                where = f"{path.name} {group} / {line} / {size}"
                if name == "notions":
                    self.alike(where, line, units, i)
                elif name.startswith("strip-"):
                    self.strip(where, name, (group, line, before), units, (i, size))
                else:
                    self.number(where, units, i, self.of_size(name, group, line, size))

    def of_size(self, name, group, line, size):
        of = lambda text: self.draft.value(size, text, self.view)
        if name == "body-chart":
            row = next(r for r in self.draft.parts["chart"]["rows"] if r["name"].replace("_", " ") == line)
            return of(f"chart.{row['name']}")
        if name == "finished-measures":
            measure = self.draft.named("measures", group)
            finished = of(f"measure.{measure['name']}")
            body = of(f"chart.{measure['body']}") if measure["body"] else None
            if line == "finished":
                return finished
            if line.startswith("body ("):
                return body
            if line == "ease":
                return None if None in (finished, body) else finished - body
            if line == "stretches to":
                return finished * (1 + of(measure["stretch"]))
            key = {"least ease meant": "ease_least", "most ease meant": "ease_most"}.get(line)
            return of(measure[key]) if key else of(f"chart.{measure['passes']}")
        if name == "notions-by-size":
            notion = self.draft.named("notions", group)
            return self.notion(notion, ["how many", "size needed", "next size sold"].index(line), size)
        return None

    def notion(self, notion, column, size):
        if column == 0:
            return max(notion["count"], 1)
        needed = self.draft.value(size, notion["size"], self.view)
        if column == 1 or needed is None:
            return needed
        sold = [self.draft.value(size, s, self.view) for s in notion["sold"]]
        return min((s for s in sold if s >= needed - 1e-6), default=None)

    def alike(self, where, line, units, i):
        notion = self.draft.named("notions", line)
        cell = units.get("mm", units.get(""))[i]
        if cell == "":
            if (notion["size"], notion["sold"])[i - 1]:
                self.wrong.append(f"{where}: nothing is written")
            return
        size = None if self.draft.derived else self.draft.model.sizes[0]
        self.number(where, units, i, self.notion(notion, i, size) if i == 0 or size else None)

    def strip(self, where, name, line, units, at):
        (group, words_of_line, before), (i, size) = line, at
        strip = next(s for s in self.draft.parts["strips"] if f"strip-{s['name'].replace('_', '-')}" == name)
        if self.draft.derived:
            self.left.append(where)
        elif group.startswith("marks for the seam "):
            seam = self.draft.named("seams", group.removeprefix("marks for the seam ").removesuffix(", from the cut end"))
            marks = strip_marks(self.draft, strip, seam, size)
            self.number(where, units, i, marks[before] if marks else None)
        else:
            numbers = strip_numbers(self.draft, strip, size)
            sold = group.removeprefix(f"from {strip['material']} that is ").removesuffix(" wide")
            value = numbers[(sold, words_of_line) if group else words_of_line]
            self.number(where, units, i, value)

    def cutting(self, lines):
        """Counts by material: of every cut of the view's pieces, and of strips that are cut from it."""
        parts = self.draft.parts
        view = next((v for v in parts["views"] if v["name"] == self.view), None)
        pieces = [p for p in parts["pieces"] if not (view and view["pieces"]) or p["name"] in view["pieces"]]
        wanted = {}
        for piece in pieces:
            for cut in piece["cuts"]:
                wanted.setdefault(cut["material"], []).append((piece["name"].replace("_", " "), cut["count"]))
        for strip in parts["strips"]:
            if strip["material"]:
                wanted.setdefault(strip["material"], []).append((strip["name"].replace("_", " "), max(strip["count"], 1)))
        got = {}
        for group, line, units in lines:
            material = group.removesuffix(" (lining)").removesuffix(" (interfacing)")
            got.setdefault(material, []).append((line, int(units[""][1])))
        for material in sorted(wanted.keys() | got.keys()):
            own = wanted.get(material, [])
            own = sorted([*own, ("in all", sum(n for _, n in own))])
            self.judged += len(own)
            if own != sorted(got.get(material, [])):
                self.wrong.append(f"cutting list, {material}: {sorted(got.get(material, []))} is written, {own} counted")


def main():
    sys.setrecursionlimit(100_000)
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("drafts", nargs="+", type=Path)
    parser.add_argument("--program", required=True)
    options = parser.parse_args()
    judged, wrong = 0, 0
    for path in options.drafts:
        draft = Draft(path)
        for view in [v["name"] for v in draft.parts["views"]] or [""]:
            with tempfile.TemporaryDirectory() as folder:
                asked = ["--view", view] if view else []
                subprocess.run([options.program, "tables", path, "--csv", folder, *asked], check=True, stdout=subprocess.DEVNULL)
                judge = Judge(draft, view)
                for table in sorted(Path(folder).iterdir()):
                    judge.table(table)
            for problem in judge.wrong[:20]:
                print(f"difference: {path.name}: {problem}")
            left = f", {len(judge.left)} not judged, such as {judge.left[0]}" if judge.left else ""
            print(f"{path.name}{' ' + view if view else ''}: {judge.judged} cells judged, {len(judge.wrong)} wrong{left}")
            judged, wrong = judged + judge.judged, wrong + len(judge.wrong)
    print(f"{judged} cells of tables judged, {wrong} wrong")
    return 0 if judged > 0 and wrong == 0 else 1


if __name__ == "__main__":
    sys.exit(main())
