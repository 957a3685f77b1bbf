"""Views of a draft: each a model of its own, of what the draft says in that view.

A view has some of the pieces and formulas of its own for some values. A seam, condition or other formula that names a piece which the view does
not have, itself or through values, is absent there; so is a found value that only absent things fix and nothing of the view needs.
"""
from .curves import NoValue
from .draft import Model
from .formula import FormulaError, normal

OF_FRAMES = ("point", "flat", "mouths", "mouth", "tip", "end", "ring")


def model_of(draft, sets=()):
    """The model of a draft, or of all its views."""
    return Views(draft, sets) if draft["views"] else Model(draft, sets)


class Views:
    """What a model shows of itself, with addresses VIEW//SIZE."""

    def __init__(self, draft, sets):
        self.draft, self.cases, self.sizes = draft, {}, []
        fixed = {normal(name.removeprefix("value.")) for name, _ in sets}
        for view in draft["views"]:
            own = [(n, t) for n, t in view["values"] if normal(n.removeprefix("value.")) not in fixed]
            one = InView(draft, view, own + list(sets))
            for address, case in one.model.cases.items():
                self.cases[f"{view['name']}//{address}"] = Case(one, case)
            self.sizes += [f"{view['name']}//{size}" for size in one.model.sizes]
        whole = one.whole
        self.rows, self.frames, self.seams = whole.rows, whole.frames, whole.seams


class Case:
    def __init__(self, view, case):
        self.view, self.case = view, case

    def evaluate(self, text):
        if self.view.lacks(text):
            raise NoValue("not in this view")
        return self.case.evaluate(text)


class InView:
    def __init__(self, draft, view, values):
        self.whole = Model(draft, values)
        names = [normal(p["name"]) for p in draft["pieces"]]
        has = {normal(n) for n in view["pieces"]} or set(names)
        self.absent = {n for n in names if n not in has}
        self.idle, self.free = set(), set()
        self.drawings(draft, names, has)
        seams = [s for s in draft["seams"] if not self.reaches(self.sides(s))]
        left = [s["name"] for s in seams]
        gone = [normal(s["name"]) for s in draft["seams"] if s["name"] not in left]
        self.idle = {("seam", name, side) for name in gone for side in ("one", "two")}
        conditions = self.conditions(draft, seams)
        self.model = Model({**draft, "seams": seams, "conditions": conditions}, values)

    def deps(self, key):
        if key[0] == "value" and key[1] in self.whole.found:
            value = self.whole.values[key[1]]
            out = set()
            for text in (value["start"], value["least"], value["most"]):
                out |= self.named(text) if text else set()
            return out
        return self.whole.node(key).deps

    def named(self, text):
        try:
            return self.whole.compile(text, None).deps
        except FormulaError:
            return set()

    def frame(self, key):
        found = key[1] if key[0] in OF_FRAMES else None
        return None if found in self.free else found

    def reaches(self, keys):
        """Whether these keys, or others of no frame that they need, are of what is absent."""
        todo, seen = list(keys), set()
        while todo:
            key = todo.pop()
            if key in seen:
                continue
            seen.add(key)
            frame = self.frame(key)
            if frame in self.absent or key in self.idle:
                return True
            if frame is None:
                todo.extend(self.deps(key))
        return False

    def closure(self, keys):
        todo, seen = list(keys), set()
        while todo:
            key = todo.pop()
            if key not in seen:
                seen.add(key)
                todo.extend(self.deps(key))
        return seen

    def keys_of(self, frames):
        return [k for k in self.whole.all_keys() if k[0] in OF_FRAMES and k[1] in frames]

    def drawings(self, draft, pieces, has):
        """Drawings on which pieces hang go with them; the others are like values."""
        own, every = self.closure(self.keys_of(has)), self.closure(self.keys_of(set(pieces)))
        for drawing in draft["drawings"]:
            name = normal(drawing["name"])
            keys = set(self.keys_of({name}))
            if not keys & every:
                self.free.add(name)
            elif not keys & own:
                self.absent.add(name)

    def sides(self, seam):
        return set().union(*[self.named(text) for text in seam["one"] + seam["two"]])

    def conditions(self, draft, seams):
        """Those that are left; found values that nothing is left to fix, and that nothing needs, become idle."""
        whole = self.whole
        titles = {f"seam {normal(s['name'])}" for s in seams}
        index = list(enumerate(whole.equations))
        frames = {n for n in whole.frames if n not in self.absent and n not in self.free}
        ours = [i for i, e in index if e.title.startswith("seam ") and e.title.split(",")[0] in titles]
        start = self.keys_of(frames) + [("seam", normal(s["name"]), side) for s in seams for side in ("one", "two")]
        needed = self.closure(start + [("equation", i) for i in ours])
        gone = {i for i, e in index if e.title.startswith("seam ") and i not in ours}
        fixing = {i: e.named if e.named is not None else whole.found_in(("equation", i))[0] for i, e in index}
        while True:
            before = (len(self.idle), len(gone))
            for name in whole.found:
                by = [i for i, _ in index if name in fixing[i]]
                if by and all(i in gone for i in by) and ("value", name) not in needed:
                    self.idle.add(("value", name))
            left = [c for c in draft["conditions"] if not self.reaches(self.of_condition(c))]
            kept = {f"condition {c['name']}" for c in left}
            gone |= {i for i, e in index if e.title.startswith("condition ") and e.title not in kept}
            if before == (len(self.idle), len(gone)):
                return left

    def of_condition(self, condition):
        name = f"condition {condition['name']}"
        found = [("equation", i) for i, e in enumerate(self.whole.equations) if e.title == name]
        if found:
            return found
        out = set()
        for sign in (">=", "<=", ">", "<", "="):
            if sign in condition["must"]:
                for text in condition["must"].split(sign, 1):
                    out |= self.named(text.strip())
                break
        return out

    def lacks(self, text):
        return self.reaches(self.named(text))
