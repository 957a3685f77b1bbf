"""The draft as a graph of named nodes, each computed once in every case (a size or a person).

Keys: ("row", n) ("value", n) ("measure", n) ("point", frame, n) ("flat", frame, edge) ("mouths", frame, edge)
("mouth", frame, list, n) ("tip", frame, dart) ("ring", frame) ("place", placement) ("seam", n, side) ("equation", i).
"""
import itertools
import math

from . import curves, formula
from .construct import set_off
from .curves import EQUAL, Arc, Cubic, Edge, Motion, NoValue, Run, Smooth, Straight, gap
from .formula import FormulaError, normal
from .found import equations_of, find_systems
from .functions import finite
from .meaning import ANGLE, LENGTH, NUMBER, Compiler

AXES = ("girth", "cup", "length")


def sewn(part, case):
    """The sewn length of a part of a side: an edge, or the length of a strip itself."""
    value = part.run(case)
    return value if part.kind == LENGTH else value.sewn()


class Node:
    def __init__(self, run, deps=()):
        self.run, self.deps = run, set(deps)


def broken(problem):
    def run(case):
        raise NoValue(problem)

    return Node(run)


class Frame:
    """The names of a piece or drawing."""

    def __init__(self, part, outline):
        self.part, self.outline = part, outline
        self.points = {normal(p["name"]): p["at"] for p in part["points"]}
        self.edges = {normal(e["name"]): e for e in outline + part["lines"]}
        self.rings = [normal(e["name"]) for e in outline]
        kinds = ("darts", "pleats", "tucks")
        self.takers = {kind: {normal(d["name"]): d for d in part.get(kind, [])} for kind in kinds}
        self.names = {}
        named = (("point", part["points"]), ("edge", outline + part["lines"]), ("dart", part.get("darts", [])))
        for word, items in named:
            for item in items:
                self.names.setdefault(normal(item["name"]), []).append(word)


class Mouth:
    """What a dart takes out: flat places of its feet and of its middle, the feet, the one that is kept."""

    def __init__(self, edge, places, intake, kept):
        self.a, self.b = places
        self.middle = (self.a + self.b) / 2
        self.first, self.second = edge.point(self.a), edge.point(self.b)
        self.intake = intake
        self.is_second_kept = kept == "to_end"
        self.bow = 0.0

    @property
    def kept(self):
        return self.second if self.is_second_kept else self.first

    def leg(self, tip):
        """Length of the kept leg, which bows away from the other foot by so much in its middle."""
        foot, other = (self.second, self.first) if self.is_second_kept else (self.first, self.second)
        if not self.bow:
            return math.dist(foot, tip)
        way = [(t - f) / math.dist(foot, tip) for f, t in zip(foot, tip)]
        aside = (-way[1], way[0])
        away = sum(a * (f - o) for a, f, o in zip(aside, foot, other))
        out = math.copysign(self.bow * 4 / 3, self.bow * away)
        handles = [tuple(f + k * (t - f) + out * a for f, t, a in zip(foot, tip, aside)) for k in (1 / 3, 2 / 3)]
        return Cubic(foot, *handles, tip).arc(0.0, 1.0)


def inside(line, at, width):
    """A dart with two ends: its feet lie square to its line, the first on the left as seen."""
    if width < 0 or not 0 < at < line.flat:
        raise NoValue("a dart with two ends that has no place on its line")
    mouth = Mouth(line, (at, at), width, "to_start")
    (x, y), (dx, dy) = line.point(at), line.heading(at)
    aside = (dy * width / 2, -dx * width / 2)
    mouth.first, mouth.second = (x + aside[0], y + aside[1]), (x - aside[0], y - aside[1])
    return mouth


class Model:
    """A draft, with the formulas of `sets` (name -> text) in the place of its own values."""

    def __init__(self, draft, sets=()):
        self.draft, self.meanings, self.nodes, self.kinds = draft, {}, {}, {}
        chart = draft["chart"]
        self.row_parts = {normal(r["name"]): r for r in chart["rows"]}
        self.rows = [normal(r["name"]) for r in chart["rows"]]
        self.values = {normal(v["name"]): dict(v) for v in draft["values"]}
        self.placements = {normal(p["name"]): p for p in draft["placements"]}
        self.seams = {normal(s["name"]): s for s in draft["seams"]}
        self.seam_names = [normal(s["name"]) for s in draft["seams"]]
        self.measures = [normal(m["name"]) for m in draft["measures"]]
        self.strips = [normal(s["name"]) for s in draft["strips"]]
        self.frames = {normal(d["name"]): Frame(d, []) for d in draft["drawings"]}
        self.frames.update({normal(p["name"]): Frame(p, p["edges"]) for p in draft["pieces"]})
        self.globals = {}
        parts = dict(
            row=chart["rows"], value=draft["values"], drawing=draft["drawings"], piece=draft["pieces"],
            placement=draft["placements"], material=draft["materials"],
        )
        for word, items in parts.items():
            for item in items:
                self.globals.setdefault(normal(item["name"]), []).append(word)
        for name, text in sets:
            name = normal(name.removeprefix("value."))
            if name not in self.values:
                raise KeyError(name)
            self.values[name].update({"is": text, "start": "", "least": "", "most": ""})
        self.found = {n for n, v in self.values.items() if v["start"]}
        self.cases = self.make_cases()
        self.row_circles = None
        self.closures = {}
        self.equations = equations_of(self)
        self.circles = self.find_circles()
        self.systems = find_systems(self)

    def make_cases(self):
        chart = self.draft["chart"]
        used = [axis for axis in AXES if chart[axis]]
        sizes = itertools.product(*[chart[axis] for axis in used]) if used else []
        cases = {}
        for labels in sizes:
            cases.setdefault("/".join(labels), Case(self, dict(zip(used, labels)), None))
        self.sizes = list(cases)
        for person in chart["persons"]:
            cases.setdefault(person["name"], Case(self, None, person))
        return cases

    # Formulas and nodes.

    def compile(self, text, scope, *kinds):
        """The meaning of a formula; an error if it is none, or of another kind than one of these."""
        key = (text, scope)
        if key not in self.meanings:
            try:
                self.meanings[key] = Compiler(self, scope).whole(formula.parse(text))
            except FormulaError as error:
                self.meanings[key] = error
        found = self.meanings[key]
        if isinstance(found, FormulaError):
            raise found
        if kinds and found.kind is not None and found.kind not in kinds:
            raise FormulaError(f"{text}: {found.kind} where one of {kinds} is needed")
        return found

    def kind(self, key):
        """The kind of a row, value or measure; None if its formula has none."""
        if key not in self.kinds:
            self.kinds[key] = None  # stays so within a circle
            for text, scope in self.texts(key):
                try:
                    self.kinds[key] = self.compile(text, scope).kind
                except FormulaError:
                    continue
                if self.kinds[key] is not None:
                    break
        return self.kinds[key]

    def texts(self, key):
        word, name = key
        if word == "value":
            value = self.values[name]
            return [(value["start"] or value["is"], None)]
        if word == "strip":
            return [(s["length"], None) for s in self.draft["strips"] if normal(s["name"]) == name][:1]
        if word == "measure":
            return [(m["is"], None) for m in self.draft["measures"] if normal(m["name"]) == name][:1]
        row = self.row_parts[name]
        persons = [t for p in self.draft["chart"]["persons"] for n, t in p["cells"] if normal(n) == name]
        return [(t, "chart") for t in [t for _, t in row["cells"]] + [row["is"]] + persons]

    def node(self, key):
        if key not in self.nodes:
            try:
                self.nodes[key] = getattr(self, "node_" + key[0])(*key[1:])
            except FormulaError as error:
                self.nodes[key] = broken(str(error))
        return self.nodes[key]

    def node_row(self, name):
        return Node(lambda case: case.row(name))

    def node_value(self, name):
        value = self.values[name]
        if value["start"] and value["is"]:
            raise FormulaError("both given and to be found")
        if value["start"]:
            return Node(lambda case: case.find(name))
        found = self.compile(value["is"], None)
        return Node(found.run, found.deps)

    def node_strip(self, name):
        (text, scope), = self.texts(("strip", name))
        node = self.compile(text, scope, LENGTH)
        return Node(node.run, node.deps)

    def node_measure(self, name):
        (text, scope), = self.texts(("measure", name))
        found = self.compile(text, scope)
        return Node(found.run, found.deps)

    def node_material(self, name, member):
        material = next(m for m in self.draft["materials"] if normal(m["name"]) == name)
        found = self.compile(material[member], None, LENGTH if member == "selvedge" else NUMBER)
        return Node(found.run, found.deps)

    def node_point(self, frame, name):
        found = self.compile(self.frames[frame].points[name], frame, ("point", frame))
        return Node(found.run, found.deps)

    def node_flat(self, frame, name):
        part = self.frames[frame]
        edge = part.edges[name]
        deps, makers = set(), []
        here = self.end(frame, edge["from"], deps)
        if not edge["by"]:
            raise FormulaError("an edge without segments")
        for segment in edge["by"]:
            there = self.end(frame, self.end_name(segment), deps)
            makers.append(self.segment(frame, segment, here, there, deps))
            here = there
        inside = name in part.rings

        def run(case):
            runs = [r for make in makers for r in make(case)]
            out = Edge(
                runs,
                lambda: case.get(("mouths", frame, name)),
                (lambda: case.get(("ring", frame))) if inside else None,
            )
            if out.flat < EQUAL:
                raise NoValue("an edge without length")
            return out

        return Node(run, deps)

    def end_name(self, segment):
        return segment.texts[-1] if segment.texts else segment.fields["to"]

    def end(self, frame, name, deps):
        name = normal(name)
        if self.frames[frame].names.get(name, []).count("point") != 1:
            raise FormulaError(f"there is no one point {name}")
        deps.add(("point", frame, name))
        return lambda case: case.get(("point", frame, name))

    def segment(self, frame, segment, here, there, deps):
        """A function from the case to the runs of a segment."""
        point = ("point", frame)

        def need(text, *kinds):
            found = self.compile(text, frame, *kinds)
            deps.update(found.deps)
            return found.run

        word, fields = segment.word, segment.fields
        if word == "straight":
            return lambda case: [Run(Straight(here(case), there(case)))]
        if word == "curve":
            a, b = (need(text, point) for text in segment.texts[:2])
            return lambda case: [Run(Cubic(here(case), a(case), b(case), there(case)))]
        if word == "arc":
            centre, clockwise = need(fields["centre"], point), fields["turn"].word == "clockwise"
            return lambda case: [Run(Arc(centre(case), here(case), there(case), clockwise))]
        if word == "smooth":
            through = [need(text, point) for text in fields["through"]]
            ends = [need(fields[n], ANGLE) if fields[n] else None for n in ("leaving", "arriving")]
            return lambda case: [
                Run(
                    Smooth(
                        [here(case)] + [p(case) for p in through] + [there(case)],
                        tuple(None if e is None else e(case) for e in ends),
                    )
                )
            ]
        curve = self.compile(fields["curve"], frame, ("edge", frame))
        deps.update(curve.deps)
        offs = [need(fields[n] or fields["off"], LENGTH) for n in ("off", "off_end")] if fields["off"] else []
        if offs:
            deps.update(("ring", k[1]) for k in curve.deps if k[0] == "flat" and k[2] in self.frames[k[1]].rings)

        def taken(case):
            edge = curve.run(case)
            if offs:
                edge = set_off(edge, *[off(case) for off in offs])
            ends = ((edge.point(0.0), here(case)), (edge.point(edge.flat), there(case)))
            if any(gap(a, b) > curves.ON_EDGE for a, b in ends):
                raise NoValue("a taken curve does not start or end at the named point")
            return edge.runs

        return taken

    def node_mouths(self, frame, name):
        part = self.frames[frame]
        keys = [
            ("mouth", frame, kind, n)
            for kind, takers in part.takers.items()
            for n, d in takers.items()
            if normal(d["on"]) == normal(name) and not (kind == "darts" and d["form"].word == "two_ended")
        ]

        def run(case):
            found = sorted((m.a, m.b) for m in map(case.get, keys))
            if any(b > c + EQUAL for (_, b), (c, _) in zip(found, found[1:])):
                raise NoValue("two mouths overlap")
            return found

        return Node(run, keys)

    def node_mouth(self, frame, kind, name):
        part = self.frames[frame]
        dart = part.takers[kind][name]
        on = normal(dart["on"])
        if part.names.get(on, []).count("edge") != 1:
            raise FormulaError(f"there is no one edge {on}")
        foot = dart.get("foot", "")
        if bool(dart["centre"]) == bool(foot):
            raise FormulaError("either the middle or the first foot of a dart")
        place = self.compile(dart["centre"] or foot, frame, LENGTH, NUMBER)
        intake = self.compile(dart["intake"], frame, LENGTH)
        flat = ("flat", frame, on)
        kept = dart["kept"].word if kind == "darts" else "to_start"
        bow = self.compile(dart["bow"], frame, LENGTH) if dart.get("bow") else None
        two_ended = kind == "darts" and dart["form"].word == "two_ended"

        def run(case):
            mouth = shape(case)
            mouth.bow = bow.run(case) if bow else 0.0
            return mouth

        def shape(case):
            edge, at = case.get(flat), place.run(case)
            at = at * edge.flat if place.kind == NUMBER else at
            width = intake.run(case)
            if two_ended:
                return inside(edge, at, width)
            places = edge.feet(None, at, width) if foot else edge.feet(at, None, width)
            return Mouth(edge, places, width, kept)

        return Node(run, place.deps | intake.deps | (bow.deps if bow else set()) | {flat})

    def node_tip(self, frame, name):
        part = self.frames[frame]
        dart = part.takers["darts"][name]
        if dart["form"].word == "two_ended":
            line = ("flat", frame, normal(dart["on"]))
            return Node(lambda case: case.get(line).point(0.0), {line})
        tip = self.compile(dart["tip"], frame, LENGTH, ("point", frame))
        if tip.kind != LENGTH:
            return Node(tip.run, tip.deps)
        on = normal(dart["on"])
        if part.names.get(on, []).count("edge") != 1:
            raise FormulaError(f"there is no one edge {on}")
        mouth, flat = ("mouth", frame, "darts", name), ("flat", frame, on)

        def run(case):
            return case.get(flat).off(case.get(mouth).middle, tip.run(case))

        return Node(run, tip.deps | {mouth, flat, ("ring", frame)})

    def node_end(self, frame, name):
        line = ("flat", frame, normal(self.frames[frame].takers["darts"][name]["on"]))
        return Node(lambda case: case.get(line).point(case.get(line).flat), {line})

    def node_ring(self, frame):
        part = self.frames[frame]
        edges = part.outline
        if not edges:
            raise FormulaError("no outline")
        for edge, after in zip(edges, edges[1:] + edges[:1]):
            if not edge["by"] or normal(self.end_name(edge["by"][-1])) != normal(after["from"]):
                raise FormulaError("the edges do not close to an outline")
        keys = [("flat", frame, normal(e["name"])) for e in edges]
        return Node(lambda case: curves.ring_side([case.get(k) for k in keys]), keys)

    def node_place(self, name):
        p = self.placements[name]
        lay, on = normal(p["lay"]), normal(p["on"])
        if lay not in self.frames or on not in self.frames:
            raise FormulaError("a placement of something unknown")
        point, onto = self.compile(p["point"], lay, ("point", lay)), self.compile(p["onto"], on, ("point", on))
        used = [point, onto]
        push = self.compile(p["overlap"], on, LENGTH) if p["overlap"] else None
        turn = towards = along = None
        if p["turned"]:
            if p["towards"] or p["along"]:
                raise FormulaError("a placement is turned either by an angle or by second points")
            turn = self.compile(p["turned"], on, ANGLE)
            used.append(turn)
        else:
            towards = self.compile(p["towards"], lay, ("point", lay))
            along = self.compile(p["along"], on, ("point", on))
            used += [towards, along]
        if push:
            used.append(push)

        def run(case):
            a, b = point.run(case), onto.run(case)
            flip = Motion(p["mirrored"], 0.0, (0.0, 0.0))
            if turn:
                angle = turn.run(case)
                way = (math.cos(angle), math.sin(angle))
            else:
                s, d = flip.point(a), flip.point(towards.run(case))
                there = along.run(case)
                if gap(s, d) == 0 or gap(b, there) == 0:
                    raise NoValue("the second point of a placement lies on the first")
                way = curves.unit((there[0] - b[0], there[1] - b[1]))
                angle = math.atan2(way[1], way[0]) - math.atan2(d[1] - s[1], d[0] - s[0])
            far = push.run(case) if push else 0.0
            laid = Motion(p["mirrored"], angle, (0.0, 0.0)).point(a)
            return Motion(
                p["mirrored"], angle, (b[0] - laid[0] + way[0] * far, b[1] - laid[1] + way[1] * far)
            )

        return Node(run, set().union(*[m.deps for m in used]))

    def node_seam(self, name, side):
        edges = self.run_of(name, side)
        return Node(
            lambda case: math.fsum(sewn(e, case) for e in edges), set().union(*[e.deps for e in edges])
        )

    def run_of(self, name, side):
        edges = [self.compile(text, None) for text in self.seams[name][side]]
        if not edges:
            raise FormulaError("a seam without a side")
        for edge in edges:
            if edge.kind is not None and edge.kind != LENGTH and edge.kind[0] != "edge":
                raise FormulaError("a seam is made of edges and lengths of strips")
        return edges

    def node_equation(self, index):
        equation = self.equations[index]
        return Node(*equation.build(self))

    # The graph.

    def all_keys(self):
        keys = [("value", n) for n in self.values] + [("measure", n) for n in self.measures]
        keys += [("strip", n) for n in self.strips]
        for name, frame in self.frames.items():
            keys += [("point", name, n) for n in frame.points] + [("ring", name)] * bool(frame.outline)
            keys += [(word, name, n) for n in frame.edges for word in ("flat", "mouths")]
            keys += [("mouth", name, kind, n) for kind, items in frame.takers.items() for n in items]
            keys += [("tip", name, n) for n in frame.takers["darts"]]
        keys += [("place", n) for n in self.placements]
        keys += [("seam", n, side) for n in self.seams for side in ("one", "two")]
        return keys + [("equation", i) for i in range(len(self.equations))]

    def find_circles(self):
        """The keys that need each other in a circle, unless a value that is found stands between them."""
        return circles(self.all_keys(), lambda key: self.node(key).deps)

    def found_in(self, key):
        """The found values that a node depends on, and all the nodes on the way."""
        if key not in self.closures:
            seen, found, todo = set(), set(), [key]
            while todo:
                k = todo.pop()
                if k in seen:
                    continue
                seen.add(k)
                if k[0] == "value" and k[1] in self.found:
                    found.add(k[1])
                else:
                    todo.extend(self.node(k).deps)
            self.closures[key] = (found, seen)
        return self.closures[key]

    def find_row_circles(self):
        """(row, address) pairs that need each other in a circle."""

        def needs(key):
            name, address = key
            source = self.cases[address].source(name)
            if isinstance(source, list):
                return [(name, other.address) for other, _ in source[1:]]
            if source is None or isinstance(source, FormulaError):
                return []
            return [(k[1], address) for k in source.deps]

        return circles([(r, a) for r in self.row_parts for a in self.cases], needs)


def circles(keys, needs):
    """The keys that lie on a circle (Tarjan's strongly connected parts, without recursion)."""
    out = set()
    for part in parts_of(keys, needs):
        if len(part) > 1 or part[0] in needs(part[0]):
            out.update(part)
    return out


def parts_of(keys, needs):
    """The strongly connected parts, each after the parts that it needs."""
    number, low, stack, on_stack, out = {}, {}, [], set(), []
    for root in keys:
        if root in number:
            continue
        work = [(root, iter(list(needs(root))))]
        number[root] = low[root] = len(number)
        stack.append(root)
        on_stack.add(root)
        while work:
            key, rest = work[-1]
            for other in rest:
                if other not in number:
                    number[other] = low[other] = len(number)
                    stack.append(other)
                    on_stack.add(other)
                    work.append((other, iter(list(needs(other)))))
                    break
                if other in on_stack:
                    low[key] = min(low[key], number[other])
            else:
                work.pop()
                if work:
                    low[work[-1][0]] = min(low[work[-1][0]], low[key])
                if low[key] == number[key]:
                    part = []
                    while True:
                        other = stack.pop()
                        on_stack.discard(other)
                        part.append(other)
                        if other == key:
                            break
                    out.append(part)
    return out


class Case:
    """One size or person: every node computed at most once."""

    def __init__(self, model, labels, person):
        self.model, self.labels, self.person = model, labels, person
        self.address = person["name"] if person else "/".join(labels.values())
        self.memo, self.trial, self.solved = {}, {}, {}

    def get(self, key):
        found = self.memo.get(key)
        if found is None:
            if key in self.model.circles:
                raise NoValue("a circle")
            try:
                found = self.model.node(key).run(self)
            except (ArithmeticError, RecursionError) as error:
                found = NoValue(str(error))
            except NoValue as error:
                found = error
            self.memo[key] = found
        if isinstance(found, NoValue):
            raise found
        return found

    def forget(self, keys):
        for key in keys:
            self.memo.pop(key, None)

    def evaluate(self, text):
        """The value of a formula of the draft's names, and its kind."""
        try:
            found = self.model.compile(text, None)
            return found.kind, found.run(self)
        except (FormulaError, ArithmeticError) as error:
            raise NoValue(str(error)) from None

    # Rows.

    def source(self, name):
        """Where a cell's number comes from: a meaning, an error, None, or [place, (case, place), (case, place)]."""
        row = self.model.row_parts[name]
        if self.person:
            texts = [t for n, t in self.person["cells"] if normal(n) == name]
            return self.meaning(texts or [row["is"]]) if texts or row["is"] else None
        by = [axis.word for axis in row["by"] if axis.word in self.labels]
        texts = self.typed(row, by, self.labels)
        if texts or row["is"]:
            return self.meaning(texts or [row["is"]])
        if not by:
            return None
        axis = self.model.draft["chart"][by[0]]
        typed = [i for i, label in enumerate(axis) if self.typed(row, by, {**self.labels, by[0]: label})]
        here = axis.index(self.labels[by[0]])
        before, after = [i for i in typed if i < here], [i for i in typed if i > here]
        if before and after:
            pair = (before[-1], after[0])
        elif len(before) > 1:
            pair = (before[-2], before[-1])
        elif len(after) > 1:
            pair = (after[0], after[1])
        else:
            return None
        return [here] + [(self.at(by[0], axis[i]), i) for i in pair]

    def typed(self, row, by, labels):
        key = "/".join(labels[axis] for axis in by)
        return [t for k, t in row["cells"] if k == key]

    def at(self, axis, label):
        return self.model.cases["/".join({**self.labels, axis: label}.values())]

    def meaning(self, texts):
        if len(texts) > 1:
            return FormulaError("two cells for one size")
        try:
            return self.model.compile(texts[0], "chart")
        except FormulaError as error:
            return error

    def row(self, name):
        model = self.model
        if model.row_circles is None:
            model.row_circles = model.find_row_circles()
        if (name, self.address) in model.row_circles:
            raise NoValue("a circle")
        source = self.source(name)
        if source is None:
            raise NoValue("no cell and nothing to propose one from")
        if isinstance(source, FormulaError):
            raise NoValue(str(source))
        if isinstance(source, list):
            here, (one, i), (two, j) = source
            a, b = one.get(("row", name)), two.get(("row", name))
            return finite(a + (b - a) * (here - i) / (j - i))
        if source.kind != model.kind(("row", name)):
            raise NoValue("a cell of another kind than its row")
        return source.run(self)

    # Values that are found.

    def find(self, name):
        system = self.model.systems[name]
        if system in self.trial:
            return self.trial[system][name]
        if system not in self.solved:
            self.solved[system] = system.solve(self)
        answer = self.solved[system]
        if isinstance(answer, NoValue):
            raise answer
        return answer[name]
