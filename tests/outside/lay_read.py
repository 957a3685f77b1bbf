#!/usr/bin/env python3
"""Lay plans that a draft keeps, judged by shapely: laid anew from the cut lines that the program prints.

    python lay_read.py PROGRAM DRAFT...

The plans are read from the draft by the second reader, cut lines and grain come from `finish`, counts and strips from the CSV of
the tables. Each cut piece is put here by itself: its dense line, turned so that its arrow points along the cloth, turned over where the plan says so, turned,
and moved so that its box begins where the plan says. Then

- no two pieces overlap by more than 0.01 mm, nor come nearer than the gap of the cloth;
- all lie within the width between the selvedges (of folded cloth within its layer), to 0.01 mm;
- pieces are turned by nothing or by half, by nothing only where plan, cloth or piece have one way;
- a half that is cut on the fold lies with its fold edge on the fold of the cloth;
- the counts are those of the cutting list, and of pieces that come in pairs one half is turned over; what lies on two layers gives two, unless it is a
  half on the fold or is said to be cut from one layer, and that only what lies on itself when it is turned over;
- what the table of cloth says is needed is where the last piece ends, and what is to be bought is the next step above that.

Each plan is then spoilt (a piece pushed onto its neighbour by 0.05 mm more than they are apart, one taken away, one turned by a degree, one pushed off the cloth; one said to be cut from one
layer that is not, and the other way round), which must be found out. Nothing of the program is used but what it prints. Source: plane geometry; shapely (GEOS).
"""

import copy
import csv
import json
import math
import re
import subprocess
import sys
import tempfile
from fractions import Fraction
from pathlib import Path

import numpy as np
import shapely
import shapely.ops
from shapely import affinity
from shapely.geometry import Polygon

from cut_lines import points_of
from second import ron

DENSE = 200
WITHIN = 0.01
UNITS = {"mm": 1.0, "cm": 10.0, "in": 25.4, "ft": 304.8, "yd": 914.4, "m": 1000.0}


def length(text):
    """mm of a plain length as a person types it: `45 in`, `3/8 in`, `1 1/2 in`, `112.5 cm`; nothing is 0."""
    if not text:
        return 0.0
    found = re.fullmatch(r"\s*(-?[\d.]+)?(?:\s+)?(?:(\d+)/(\d+))?\s*(mm|cm|in|ft|yd|m)\s*", text)
    if not found:
        raise ValueError(f"not a plain length: {text!r}")
    whole, over, under, unit = found.groups()
    return (float(whole or 0) + (int(over) / int(under) if over else 0.0)) * UNITS[unit]


def run(program, *words):
    done = subprocess.run([program, *map(str, words)], capture_output=True, text=True)
    if done.returncode not in (0, 1):
        sys.exit(f"{' '.join(map(str, words))}: {done.stderr}")
    return done.stdout


class Judge:
    def __init__(self, program, path):
        self.program, self.path = program, path
        self.draft = ron.read(Path(path).read_text(encoding="utf-8"))
        self.materials = {m["name"]: m for m in self.draft["materials"]}
        self.pieces = {p["name"]: p for p in self.draft["pieces"]}
        self.made = {}
        self.folder = tempfile.TemporaryDirectory()
        self.strips = {}
        self.lists = {}
        self.folded_stretches = 1

    def finished(self, view, size, whole):
        """Cut lines of a size, whole or with halves."""
        key = (view, size, whole)
        if key not in self.made:
            asked = f"{view}//{size}" if view else size
            told = json.loads(run(self.program, "finish", self.path, "--json", "--size", asked, *(["--whole"] if whole else [])))
            (self.made[key],) = told.values()
        return self.made[key]

    def tables(self):
        if not self.lists:
            run(self.program, "publish", self.path, "--what", "tables", "--out", self.folder.name)
            for file in sorted(Path(self.folder.name).glob("*.csv")):
                rows = list(csv.reader(file.read_text(encoding="utf-8").splitlines()))
                self.lists[file.name] = [dict(zip(rows[0], row)) for row in rows[1:]]
        return self.lists

    def cutting_list(self, view):
        """{material: {piece: [count of each of its cuts]}}, strips under their own names."""
        out = {}
        for name, rows in self.tables().items():
            if "cutting-list" not in name or view and f"-{view}-" not in name:
                continue
            for row in rows:
                if row["unit"] == "note" or row["piece"] == "in all":
                    continue
                group = re.sub(r" \((lining|interfacing)\)$", "", row.get("group") or "")
                out.setdefault(group, {}).setdefault(row["piece"], []).append((int(row["cut"]), row["how"]))
        return out

    def strip_sizes(self, view, strip, size):
        """Length and width as cut, mm."""
        plain = strip.replace("_", "-")
        for name, rows in self.tables().items():
            if f"table-strip-{plain}.csv" in name and (not view or f"-{view}-" in name):
                found = {row["size"]: row for row in rows if row["unit"] == "mm"}
                long, wide = found["length of each as cut"], found["width as cut"]
                return float(long[size]), float(wide[size])
        raise KeyError(f"no table of the strip {strip}")

    def cut_of(self, name, place):
        return self.pieces[name]["cuts"][place]

    def outline(self, plan, place, size, folded):
        """The polygon of a laid piece, thread along x, its arrow's head first; and whether it is a half on the fold."""
        view = plan["view"]
        if place["strip"]:
            long, wide = self.strip_sizes(view, place["piece"], size)
            return Polygon([(0, 0), (long, 0), (long, wide), (0, wide)]), None
        cut = self.cut_of(place["piece"], place["cut"])
        half = bool(cut["on_fold"]) and folded
        made = self.finished(view, size, whole=not half)[place["piece"]]["cuts"][place["cut"]]
        head, tail = np.array(self.finished(view, size, whole=False)[place["piece"]]["cuts"][place["cut"]]["grain"])
        way = head - tail
        angle = -math.degrees(math.atan2(way[1], way[0]))
        polygon = Polygon(points_of(made["outline"], DENSE))
        return affinity.rotate(polygon, angle, origin=(0, 0)), half

    def lay(self, plan, place, faults):
        """Where a piece lies."""
        size = place["size"] or plan["sizes"][0]["size"]
        folded = self.is_folded(plan, place)
        polygon, half = self.outline(plan, place, size, folded)
        turned = float(place["turned"].replace("deg", "").replace("°", "") or 0) if place["turned"] else 0.0
        allowed = [0.0, 180.0]
        if place["strip"]:
            grain = next(s for s in self.draft["strips"] if s["name"] == place["piece"])["grain"]
            allowed = {"along": [0.0, 180.0], "across": [90.0, 270.0], "bias": [45.0, 135.0, 225.0, 315.0]}[grain.word]
        elif self.one_way(plan, place):
            allowed = [0.0]
        if turned % 360.0 not in allowed:
            faults.append(f"{place['piece']} is turned by {turned}, which it may not be")
        if place["mirrored"]:
            polygon = affinity.scale(polygon, 1, -1, origin=(0, 0))
        polygon = affinity.rotate(polygon, turned, origin=(0, 0))
        x, y = length(place["x"]), length(place["y"])
        box = polygon.bounds
        return affinity.translate(polygon, x - box[0], y - box[1]), half

    def is_folded(self, plan, place):
        """Whether a piece lies on cloth in two layers."""
        laid = plan["laid"].word
        if laid == "open" or laid != "folded_part" and place["stretch"] >= self.folded_stretches:
            return False
        if laid == "folded_part":
            return length(place["y"]) < self.part(plan) - self.selvedge(plan) - WITHIN
        return True

    def part(self, plan):
        """How wide the folded part is: as told, else as its widest half needs, else its widest pair; whole mm."""
        if plan["folded_part"]:
            return length(plan["folded_part"])
        halves, pairs = [0.0], [0.0]
        for place in plan["places"]:
            if place["strip"]:
                continue
            cut, size = self.cut_of(place["piece"], place["cut"]), place["size"] or plan["sizes"][0]["size"]
            box = self.outline(plan, place, size, folded=True)[0].bounds
            if cut["on_fold"]:
                halves.append(box[3] - box[1])
            elif cut["count"] > 1:
                pairs.append(box[3] - box[1])
        return math.ceil((max(halves) or max(pairs)) + self.selvedge(plan) - 1e-6)

    def selvedge(self, plan):
        return length(self.materials[plan["material"]]["selvedge"])

    def wide(self, plan):
        """The width of the cloth as it is cut: less what it loses in washing, where it is washed first."""
        cloth = self.materials[plan["material"]]
        lost = 0.0
        if cloth["shrinks"].word == "before_cutting" and cloth["shrinkage_across"]:
            lost = float(cloth["shrinkage_across"].replace("%", "")) / 100.0
        return length(plan["width"]) * (1.0 - lost)

    def one_way(self, plan, place):
        cut = self.cut_of(place["piece"], place["cut"])
        cloth = self.materials[plan["material"]]
        return "with" in (plan["nap"].word, cloth["nap"].word) or cut["grain"]["ways"].word == "one"

    def lanes(self, plan, place):
        """Parts of the width in which it may lie, each with where its fold is."""
        wide, edge, laid = self.wide(plan), self.selvedge(plan), plan["laid"].word
        usable = wide - 2 * edge
        if not self.is_folded(plan, place):
            if laid == "folded_part":
                part = self.part(plan)
                return [(part, wide - part - edge, None)]
            return [(0.0, usable, None)]
        if laid == "folded":
            return [(0.0, wide / 2 - edge, 0.0)]
        if laid == "folded_to_middle":
            return [(0.0, wide / 4 - edge, 0.0), (wide / 4 + edge, wide / 2, wide / 2)]
        return [(0.0, self.part(plan) - edge, 0.0)]

    def judge(self, plan):
        """What is wrong with a plan; and the length of its stretches together, mm. A single stretch of a folded cloth is of two layers, or of one
        where nothing comes in two: which of them is told by what lies right on it."""
        one = plan["laid"].word in ("folded", "folded_to_middle") and all(p["stretch"] == 0 for p in plan["places"])
        self.folded_stretches = 1
        first = self.judge_so(plan)
        if not one or not first[0]:
            return first
        self.folded_stretches = 0
        other = self.judge_so(plan)
        return other if not other[0] else first

    def judge_so(self, plan):
        faults, laid = [], []
        for place in plan["places"]:
            polygon, half = self.lay(plan, place, faults)
            name = place["piece"]
            x0, y0, x1, y1 = polygon.bounds
            lanes = self.lanes(plan, place)
            if x0 < -WITHIN or not any(a - WITHIN <= y0 and y1 <= b + WITHIN for a, b, _ in lanes):
                faults.append(f"{name} lies off its cloth: {x0:.3f}, {y0:.3f} to {y1:.3f}")
            if place["one_layer"]:
                faults += self.one_layer(plan, place, polygon, half)
            if half and not any(f is not None and min(abs(y0 - f), abs(y1 - f)) <= WITHIN for _, _, f in lanes):
                faults.append(f"{name} is a half and does not lie on the fold")
            laid.append((place, polygon))
        faults += self.overlaps(plan, laid)
        faults += self.counts(plan)
        ends = {}
        for place, polygon in laid:
            ends[place["stretch"]] = max(ends.get(place["stretch"], 0.0), polygon.bounds[2])
        return faults, sum(ends.values())

    def one_layer(self, plan, place, polygon, half):
        """What is cut from one of two layers must be the same piece from either: it lies on itself when it is turned over about the thread, or, where it
        may be turned by half, about the line across."""
        name = place["piece"]
        if half or not self.is_folded(plan, place):
            return [f"{name} is said to be cut from one layer and does not lie on two"]
        over = [affinity.scale(polygon, 1, -1, origin=polygon.envelope.centroid)]
        if not place["strip"] and not self.one_way(plan, place):
            over.append(affinity.scale(polygon, -1, 1, origin=polygon.envelope.centroid))
        # A strip on the bias turned over has its thread the other way, which a strip may.
        if not place["strip"] and not any(polygon.hausdorff_distance(o) <= 0.6 for o in over):
            return [f"{name} is cut from one layer and is not the same turned over"]
        return []

    def overlaps(self, plan, laid):
        gap = length(self.materials[plan["material"]]["gap"])
        out = []
        for stretch in sorted({p["stretch"] for p, _ in laid}):
            own = [(p, g) for p, g in laid if p["stretch"] == stretch]
            tree = shapely.STRtree([g.buffer(gap / 2) for _, g in own])
            for i, j in tree.query([g.buffer(gap / 2) for _, g in own], predicate="intersects").T:
                if i >= j:
                    continue
                (a, one), (b, other) = own[i], own[j]
                # What they share must vanish when each loses half of what they may overlap.
                if one.buffer(-WITHIN / 2).intersects(other.buffer(-WITHIN / 2)):
                    out.append(f"{a['piece']} and {b['piece']} overlap by {one.intersection(other).area:.3f} mm²")
                elif gap and one.distance(other) < gap - 2 * WITHIN:
                    out.append(f"{a['piece']} and {b['piece']} are {one.distance(other):.3f} mm apart")
        return out

    def counts(self, plan):
        """Against the cutting list, times the garments of each size."""
        listed = self.cutting_list(plan["view"]).get(plan["material"], {})
        out = []
        for size in plan["sizes"]:
            many = size["count"] or 1
            got = {}
            for place in plan["places"]:
                if (place["size"] or plan["sizes"][0]["size"]) != size["size"]:
                    continue
                name = place["piece"].replace("_", " ")
                gives = 1
                if self.is_folded(plan, place):
                    on_fold = not place["strip"] and bool(self.cut_of(place["piece"], place["cut"])["on_fold"])
                    gives = 1 if on_fold or place["one_layer"] else 2
                plain, over = got.get(name, (0, 0))
                if gives == 2:
                    got[name] = (plain + 1, over + 1)
                else:
                    got[name] = (plain + (not place["mirrored"]), over + place["mirrored"])
            for name, cuts in listed.items():
                wanted = sum(count for count, _ in cuts) * many
                is_strip = any(how.startswith("strip") for _, how in cuts)
                if is_strip and name not in got:
                    continue  # counted, not laid
                plain, over = got.pop(name, (0, 0))
                if plain + over != wanted:
                    out.append(f"{name}: {plain + over} are laid, {wanted} are cut")
                pairs = any("mirrored" in how for _, how in cuts)
                if pairs and plain != over:
                    out.append(f"{name}: {plain} and {over} turned over are no pairs")
            for name in got:
                out.append(f"{name} is laid and not in the cutting list")
        return out

    def told(self, plan, ends):
        """What the table of cloth says of a plan of one garment against where its last pieces end."""
        if len(plan["sizes"]) != 1 or plan["sizes"][0]["count"] > 1:
            return []
        size, view = plan["sizes"][0]["size"], plan["view"]
        rows = [r for n, rows in self.tables().items() if n.endswith("-table-cloth.csv") and (not view or f"-{view}-" in n) for r in rows]
        own = {(r["size"], r["unit"]): r.get(size) for r in rows if r.get("group", "").split(",")[0] == plan["material"]
               and r.get("group", "").split(", ")[1].startswith(plan["width"])}
        if not own:
            return [f"the table of cloth has no line for {plan['width']}"]
        cloth = self.materials[plan["material"]]
        needed, buy = float(own["needed", "mm"]), float(own["to buy by the metre", "mm"])
        kept = 1.0
        if cloth["shrinks"].word == "before_cutting" and cloth["shrinkage_along"]:
            kept = 1.0 - float(cloth["shrinkage_along"].replace("%", "")) / 100.0
        # Strips that are not laid take cloth of their own, which their tables tell rounded up to centimetres.
        laid = {p["piece"].replace("_", " ") for p in plan["places"] if p["strip"]}
        strips = [n for n, cuts in self.cutting_list(view).get(plan["material"], {}).items()
                  if any(how.startswith("strip") for _, how in cuts) and n not in laid]
        most = ends + sum(self.strip_cloth(view, n, plan, size) for n in strips)
        out = []
        if not most - 10.0 * len(strips) - 0.02 <= needed * kept <= most + 0.02:
            out.append(f"{needed:.2f} mm are told to be needed, {most / kept:.2f} are")
        yard = Fraction(9144, 10)
        words = own["to buy by the yard", ""].removesuffix(" yd").split()
        yards = sum((Fraction(w) for w in words), Fraction(0)) * yard
        for what, told, step in (("metre", Fraction(buy), Fraction(100)), ("yard", yards, yard / 8)):
            step = Fraction(str(length(cloth["sold_in"]))) if cloth["sold_in"] and (what == "yard") == cloth["sold_in"].endswith(("yd", "in")) else step
            if told % step or not told - step < needed + WITHIN or told < needed - 2 * WITHIN:
                out.append(f"by the {what} {float(told):.1f} mm are told for {needed:.2f}")
        return out

    def strip_cloth(self, view, strip, plan, size):
        """Cloth for a strip alone, mm."""
        plain = strip.replace(" ", "-")
        for name, rows in self.tables().items():
            if f"table-strip-{plain}.csv" in name and (not view or f"-{view}-" in name):
                for row in rows:
                    if row["unit"] == "mm" and row["size"] == "cloth for all of them" and plan["width"] in row["group"]:
                        return float(row[size])
        return 0.0


def spoilt(judge, plan):
    """Plans that are wrong, each with what is wrong."""
    first = plan["places"][0]

    def changed(change, what):
        other = copy.deepcopy(plan)
        change(other)
        return what, other

    def beyond(p):
        p["places"][0]["y"] = "-0.05 mm"

    def turn(p):
        p["places"][0]["turned"] = "1 deg"

    def less(p):
        del p["places"][next(i for i, one in enumerate(p["places"]) if not one["strip"])]

    out = [changed(beyond, "off the cloth"), changed(turn, "turned"), changed(less, "one too few")]
    for i, place in enumerate(plan["places"]):
        # What gives one piece, or two, is said to give the other number.
        if judge.is_folded(plan, place) and (place["strip"] or not judge.cut_of(place["piece"], place["cut"])["on_fold"]):

            def other(p, i=i):
                p["places"][i]["one_layer"] = not p["places"][i]["one_layer"]

            out.append(changed(other, f"{place['piece']} from {'two layers' if place['one_layer'] else 'one layer'}"))
    laid = [(p, judge.lay(plan, p, [])[0]) for p in plan["places"]]
    for i, (p, one) in enumerate(laid):
        for q, other in laid[i + 1:]:
            apart = one.distance(other)
            if p["stretch"] != q["stretch"] or apart > 20:
                continue
            # Towards the other, by the shortest way.
            a, b = shapely.ops.nearest_points(one, other)
            way = np.array([b.x - a.x, b.y - a.y])
            if np.hypot(*way) < 1e-9:
                continue
            way = way / np.hypot(*way) * (apart + 0.05)

            def push(p2, i=i, way=way):
                own = p2["places"][i]
                own["x"], own["y"] = f"{length(own['x']) + way[0]:.4f} mm", f"{length(own['y']) + way[1]:.4f} mm"

            out.append(changed(push, f"{p['piece']} pushed onto {q['piece']}"))
            return out
    return out


def main():
    program, paths = sys.argv[1], sys.argv[2:]
    wrong = plans = found = 0
    for path in paths:
        judge = Judge(program, path)
        for plan in judge.draft["plans"]:
            plans += 1
            faults, ends = judge.judge(plan)
            faults += judge.told(plan, ends)
            for fault in faults:
                print(f"{path}: {plan['name']}: {fault}")
            wrong += bool(faults)
            if judge.told(plan, ends) == [] and len(plan["sizes"]) == 1 and plan["sizes"][0]["count"] < 2:
                # A length that is another by more than strips are rounded by.
                if judge.told(plan, ends + 60.0):
                    found += 1
                else:
                    print(f"{path}: {plan['name']}: not found out: 60 mm longer")
                    wrong += 1
            for what, other in spoilt(judge, plan):
                if judge.judge(other)[0]:
                    found += 1
                else:
                    print(f"{path}: {plan['name']}: not found out: {what}")
                    wrong += 1
            print(f"{Path(path).name}: {plan['name']}: {len(plan['places'])} pieces, {ends:.2f} mm of cloth")
    print(f"{plans} plans judged, {wrong} wrong, {found} spoilt ones found out")
    return 1 if wrong or not plans else 0


if __name__ == "__main__":
    sys.exit(main())
