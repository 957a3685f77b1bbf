"""Reads the text of a draft: the notation first, then the shape that the document types prescribe."""


class ReadError(Exception):
    """The text is not a draft; says where and why."""


class Word:
    """A plain word, with what stands in brackets behind it: None, a list, or a dict of fields."""

    def __init__(self, name, content, at):
        self.name, self.content, self.at = name, content, at


class Group:
    """A bracketed group: a list of members, or a dict of fields."""

    def __init__(self, content, at):
        self.content, self.at = content, at


class Reader:
    """Reads one value of the notation."""

    def __init__(self, text):
        self.text, self.pos = text.removeprefix("\ufeff"), 0

    def fail(self, problem, at=None):
        at = self.pos if at is None else at
        line = self.text.count("\n", 0, at) + 1
        column = at - (self.text.rfind("\n", 0, at) + 1) + 1
        raise ReadError(f"line {line}, column {column}: {problem}")

    def skip(self):
        text = self.text
        while self.pos < len(text):
            if text[self.pos].isspace():
                self.pos += 1
            elif text.startswith("//", self.pos):
                end = text.find("\n", self.pos)
                self.pos = len(text) if end < 0 else end
            elif text.startswith("/*", self.pos):
                start, depth = self.pos, 1
                self.pos += 2
                while depth:
                    opens, closes = text.find("/*", self.pos), text.find("*/", self.pos)
                    if closes < 0:
                        self.fail("this comment is never closed", start)
                    if 0 <= opens < closes:
                        depth, self.pos = depth + 1, opens + 2
                    else:
                        depth, self.pos = depth - 1, closes + 2
            else:
                return

    def peek(self, sign):
        self.skip()
        return self.text.startswith(sign, self.pos)

    def take(self, sign):
        if self.peek(sign):
            self.pos += len(sign)
            return True
        return False

    def need(self, sign):
        if not self.take(sign):
            self.fail(f"{sign} is needed here")

    def whole(self):
        self.skip()
        while self.text.startswith("#!", self.pos):
            end = self.text.find("]", self.pos)
            if end < 0:
                self.fail("this is never closed")
            self.pos = end + 1
            self.skip()
        value = self.value()
        self.skip()
        if self.pos < len(self.text):
            self.fail("the draft is over, but more follows")
        return value

    def value(self):
        self.skip()
        at = self.pos
        if at >= len(self.text):
            self.fail("the text ends too early")
        sign = self.text[at]
        if sign == '"' or (sign == "r" and self.text[at + 1 : at + 2] in ('"', "#") and self.raw_follows()):
            return self.string()
        if sign == "[":
            return self.listing()
        if sign == "(":
            return Group(self.group(), at)
        if sign.isdigit() or sign in "+-":
            return self.number()
        if sign.isalpha() or sign == "_":
            name = self.name()
            if name in ("true", "false"):
                return name == "true"
            content = self.group() if self.peek("(") else None
            return Word(name, content, at)
        self.fail(f"{sign!r} cannot stand here")

    def raw_follows(self):
        rest = self.text[self.pos + 1 :]
        return rest.lstrip("#").startswith('"')

    def name(self):
        self.skip()
        start = self.pos
        while self.pos < len(self.text) and (self.text[self.pos].isalnum() or self.text[self.pos] == "_"):
            self.pos += 1
        if start == self.pos:
            self.fail("a name is needed here")
        return self.text[start : self.pos]

    def number(self):
        start = self.pos
        self.pos += 1
        while self.pos < len(self.text) and (self.text[self.pos].isalnum() or self.text[self.pos] in "._"):
            self.pos += 1
        try:
            return int(self.text[start : self.pos].replace("_", ""))
        except ValueError:
            self.fail("a draft holds whole numbers only", start)

    def listing(self):
        self.need("[")
        out = []
        while not self.take("]"):
            out.append(self.value())
            if not self.take(","):
                self.need("]")
                break
        return out

    def group(self):
        self.need("(")
        if self.take(")"):
            return []
        if self.is_field():
            out = {}
            while not self.take(")"):
                at = self.pos
                name = self.name()
                self.need(":")
                if name in out:
                    self.fail(f"the field {name} stands twice", at)
                out[name] = self.value()
                if not self.take(","):
                    self.need(")")
                    break
            return out
        out = []
        while not self.take(")"):
            out.append(self.value())
            if not self.take(","):
                self.need(")")
                break
        return out

    def is_field(self):
        self.skip()
        keep, sign = self.pos, self.text[self.pos : self.pos + 1]
        if not (sign.isalpha() or sign == "_"):
            return False
        self.name()
        found = self.peek(":")
        self.pos = keep
        return found

    def string(self):
        start = self.pos
        if self.text[self.pos] == "r":
            marks = 0
            while self.text[self.pos + 1 + marks] == "#":
                marks += 1
            open_at = self.pos + 2 + marks
            end = self.text.find('"' + "#" * marks, open_at)
            if end < 0:
                self.fail("this text is never closed", start)
            self.pos = end + 1 + marks
            return self.text[open_at:end]
        self.pos += 1
        out = []
        while True:
            if self.pos >= len(self.text):
                self.fail("this text is never closed", start)
            sign = self.text[self.pos]
            self.pos += 1
            if sign == '"':
                return "".join(out)
            out.append(self.escape() if sign == "\\" else sign)

    def escape(self):
        sign = self.text[self.pos : self.pos + 1]
        self.pos += 1
        plain = {"n": "\n", "t": "\t", "r": "\r", "0": "\0", "\\": "\\", '"': '"', "'": "'"}
        if sign in plain:
            return plain[sign]
        if sign == "x":
            code, self.pos = self.text[self.pos : self.pos + 2], self.pos + 2
        elif sign == "u" and self.text.startswith("{", self.pos):
            end = self.text.find("}", self.pos)
            code, self.pos = self.text[self.pos + 1 : end], end + 1
        else:
            self.fail(f"\\{sign} has no meaning here")
        try:
            return chr(int(code, 16))
        except (ValueError, OverflowError):
            self.fail(f"{code} is not a letter's number")


# The shape. A text is "S", a whole number "I", yes-or-no "B", a list [shape], a pair of texts a tuple; the name of a
# struct or a choice stands for it.
S, I, B = "S", "I", "B"

STRUCTS = {
    "Draft": dict(
        format=S, version=I, title=S, note=S, author=S, licence=S, contact=S, edition=S, date=S, display="Display",
        language="Language",
        audience="Audience", care="Care", settings="Settings", chart="Chart", values=["Value"], drawings=["Drawing"],
        pieces=["Piece"], placements=["Placement"], seams=["Seam"], joints=["Joint"], conditions=["Condition"],
        measures=["Measure"], materials=["Material"], strips=["Strip"], notions=["Notion"], views=["View"],
        booklet=["BookletStep"], sheets=["Sheet"], table=["TablePlace"],
        pictures=["Picture"], blocks=["TakenBlock"], plans=["LayPlan"], silenced=["Silence"],
        log="Log",
    ),
    "Settings": dict(
        seam_limit=S, notch_limit=S, joint_angle=S, joint_gap=S, notch_margin=S, notch_depth=S, allowance=S,
        page_margin=S, odd_angle=S, odd_length=S, grain_angle=S, unchecked=[(S, S)],
    ),
    "Silence": dict(code=S, at=S, number=S, reason=S),
    "Care": dict(worn_as="WornAs", wearers="Wearers", rule_sizes=[(S, S)], girths=["RuleGirth"]),
    "RuleGirth": dict(place="GirthPlace", **{"is": S}),
    "Chart": dict(girth=[S], cup=[S], length=[S], base=S, survey=B, sets=["SizeSet"], rows=["Row"], persons=["Person"]),
    "SizeSet": dict(name=S, girth=[S], cup=[S], length=[S], base=S, sheets=[S]),
    "Row": dict(
        name=S, kind="RowKind", what=S, level=S, how=S, source=S, note=S, **{"by": ["Axis"], "is": S}, cells=[(S, S)]
    ),
    "Person": dict(name=S, note=S, cells=[(S, S)]),
    "Value": dict(name=S, **{"is": S}, start=S, least=S, most=S, note=S),
    "Drawing": dict(name=S, note=S, points=["Point"], lines=["Edge"]),
    "Piece": dict(
        name=S, letter=S, note=S, of=S, steps=["Step"], points=["Point"], edges=["Edge"], lines=["Edge"],
        darts=["Dart"], pleats=["Tuck"], tucks=["Tuck"], folds=["Fold"], lengthen=["PinnedLine"],
        slits=["PinnedLine"], marks=["Mark"], allowances=["Allowance"], corners=["Corner"], cuts=["Cut"], stack=[S],
        label="Label",
    ),
    "Point": dict(name=S, at=S, note=S),
    "Edge": dict(name=S, **{"from": S}, by=["Segment"], smooth_at=[S], note=S),
    "Dart": dict(
        name=S, on=S, centre=S, foot=S, intake=S, tip=S, bow=S, pressed="Pressed", kept="Pressed", form="DartForm",
        allowance=S, note=S,
    ),
    "Tuck": dict(name=S, on=S, centre=S, intake=S, depth=S, pressed="Pressed", note=S),
    "Fold": dict(name=S, line=S, over=[S], onto=[S], turns=I, note=S),
    "PinnedLine": dict(name=S, line=S, note=S),
    "Mark": dict(name=S, kind="MarkKind", at=S, to=S, count=I, fixed=S, fixed_as=I, piece=S, size=S, text=S),
    "Allowance": dict(edge=S, set=S, width=S, **{"from": S}, to_width=S, turns=I, turn_in=S),
    "Corner": dict(at=S, form="CornerForm", width=S),
    "Cut": dict(material=S, count=I, on_fold=S, border=S, grain="Grain", face="Face", outline="Outline", allowances=S),
    "Grain": dict(heading=S, along=S, ways="GrainWays"),
    "Label": dict(at=S, turn=S),
    "Step": dict(name=S, person=S, does="Does", note=S),
    "EdgeShare": dict(edge=S, share=S),
    "Placement": dict(
        name=S, lay=S, on=S, point=S, onto=S, towards=S, along=S, turned=S, overlap=S, mirrored=B
    ),
    "Seam": dict(
        name=S, one=[S], two=[S], fit="Fit", stretches=["Stretch"], found_by=[S], notches=["Notch"], order=S,
        pressed="SeamPressed", allowance=S, closure=S, note=S,
    ),
    "Stretch": dict(to_one=S, to_two=S, fit="Fit", share=S),
    "Notch": dict(name=S, on="Side", at=S, other=S, strokes=I),
    "Joint": dict(name=S, corners=[S], meant=S, note=S),
    "Condition": dict(name=S, must=S, found_by=[S], note=S),
    "Measure": dict(name=S, **{"is": S}, body=S, ease_least=S, ease_most=S, drift_most=S, passes=S, stretch=S, note=S),
    "Material": dict(
        name=S, kind="MaterialKind", widths=[S], selvedge=S, nap="Nap", laid="ClothLaid", folded_part=S, gap=S,
        sold_in=S, stretch_along=S, stretch_across=S, shrinkage_along=S, shrinkage_across=S, shrinks="Shrinks", note=S,
    ),
    "Strip": dict(
        name=S, kind="StripKind", count=I, material=S, length=S, ends=S, width=S, layers=I, allowance=S,
        grain="StripGrain", join=S, place="StripPlace", free_end=S, fastened=B, in_lay="StripInLay",
        note=S,
    ),
    "Notion": dict(name=S, count=I, size=S, sold=[S], note=S),
    "View": dict(name=S, pieces=[S], values=[(S, S)], note=S),
    "BookletStep": dict(title=S, text=S, pieces=[S], pictures=["StepPicture"], views=[S]),
    "StepPicture": dict(file=S, says=S, caption=S),
    "Sheet": dict(name=S, paper=S, sizes=[S], pieces=[S]),
    "TablePlace": dict(sheet=S, piece=S, x=S, y=S, turned=S),
    "TakenBlock": dict(
        name=S, file=S, title=S, author=S, licence=S, contact=S, edition=S, date=S, pieces=[S], prefix=S,
        parts=["TakenPart"], note=S,
    ),
    "TakenPart": dict(part=S, name=S, names=[(S, S)], there=S, here=S),
    "Picture": dict(under=S, file=S, x=S, y=S, scale=S, turned=S, fade=I, hidden=B),
    "LayPlan": dict(
        name=S, view=S, material=S, width=S, laid="ClothLaid", folded_part=S, nap="Nap", sizes=["LaidSize"],
        places=["LaidPiece"], digest=S,
    ),
    "LaidSize": dict(size=S, count=I),
    "LaidPiece": dict(
        piece=S, strip=B, cut=I, size=S, stretch=I, x=S, y=S, turned=S, mirrored=B, one_layer=B, locked=B,
    ),
    "Log": dict(fittings=["FittingNote"], releases=["Release"]),
    "FittingNote": dict(date=S, size=S, cloth=S, note=S),
    "Release": dict(date=S, edition=S, digest=S),
}


def optional(**fields):
    """Fields that may all be left out."""
    return {f"{name}?": shape for name, shape in fields.items()}


# Words to choose from: alone, with texts in brackets (a tuple), or with fields (those behind a `?` may be left out).
CHOICES = {
    "Language": dict(en=None, de=None),
    "Display": dict(cm=None, mm=None, inch_eighths=None, inch_sixteenths=None),
    "Audience": dict(unstated=None, adult=None, child={"from": S, "to": S}),
    "RowKind": dict(body=None, house=None),
    "Axis": dict(girth=None, cup=None, length=None),
    "Segment": dict(
        straight=(S,), curve=(S, S, S), arc=dict(centre=S, turn="Turn", to=S),
        smooth={"through": [S], "leaving?": S, "arriving?": S, "to": S},
        taken={"curve": S, "off?": S, "off_end?": S, "to": S},
    ),
    "Turn": dict(clockwise=None, anticlockwise=None),
    "Pressed": dict(to_start=None, to_end=None),
    "DartForm": dict(folded=None, slashed=None, cut_out=None, two_ended=None),
    "MarkKind": dict(circle=None, drill_hole=None, button=None, buttonhole=None, zip_end=None, place=None, text=None),
    "GrainWays": dict(both=None, one=None),
    "Face": dict(pairs=None, right_side_up=None, wrong_side_up=None),
    "Outline": dict(full=None, less_allowance=None, block=None),
    "MaterialKind": dict(cloth=None, lining=None, interfacing=None),
    "ClothLaid": dict(open=None, folded=None, folded_to_middle=None, folded_part=None),
    "Shrinks": dict(in_pieces=None, before_cutting=None),
    "StripInLay": dict(laid=None, counted=None),
    "Nap": {"without": None, "with": None},
    "WornAs": dict(unstated=None, outerwear=None, sleepwear=None, tight_sleepwear=None, other=None),
    "Wearers": dict(anyone=None, boys=None, girls=None),
    "GirthPlace": dict(chest=None, waist=None, seat=None, upper_arm=None, thigh=None, wrist=None, ankle=None),
    "StripKind": dict(band=None, binding=None, elastic=None, cord=None),
    "StripPlace": dict(unstated=None, neck=None, waist=None, hem=None, elsewhere=None),
    "StripGrain": dict(along=None, across=None, bias=None),
    "Side": dict(one=None, two=None),
    "SeamPressed": dict(open=None, to_one=None, to_two=None),
    "CornerForm": dict(by_sewing=None, plain=None, mitred=None, across=None),
    "Fit": dict(
        equal=None, eased=dict(longer="Side", by=S),
        gathered={"longer": "Side", "times?": S, "least?": S, "most?": S}, stretched=dict(shorter="Side", times=S),
    ),
    "Does": dict(
        move_dart=optional(close=S, share=S, on=S, at=S, stays=S, opening="Opening", makes=S),
        spread=optional(
            **{"from": S}, from_at=S, to=S, to_at=S, by=S, angle=S, count=I, from_until=S, to_until=S, parallel=B, stays=S, opening="Opening", makes=S
        ),
        cut=optional(
            **{"from": S}, from_at=S, to=S, to_at=S, along=S, keep=S, makes=S, start=S, end=S, rest=S, darts=[S]
        ),
        join=optional(edge=S, piece=S, to=S, reversed=B, prefix=S), unfold=optional(over=S, prefix=S), turn_over=None,
        add_strip=optional(edge=S, width=S, ends="StripEnds", makes=S, start=S, end=S),
        move_edge=optional(edge=S, by=S, to_by=S), share=optional(by=S, over=["EdgeShare"]),
        to_cut_line=optional(edges=[S], set=S), redraw=optional(edge=S, by=["Segment"], smooth_at=[S]),
        draw=optional(points=["Point"], lines=["Edge"], darts=["Dart"], marks=["Mark"]), leave_out=([S],),
    ),
    "Opening": dict(dart=None, straight=None, curve=None),
    "StripEnds": dict(square=None, mirrored=None),
}


class Choice:
    """A chosen word: `word`, and what belongs to it by position (`texts`) or by name (`fields`)."""

    def __init__(self, word, texts=(), fields=None):
        self.word, self.texts, self.fields = word, texts, fields or {}


def empty(shape):
    """What an absent field of that shape holds."""
    if isinstance(shape, list):
        return []
    if shape in (S, I, B):
        return {S: "", I: 0, B: False}[shape]
    if shape == "Does":
        return Choice("leave_out", texts=([],))
    if shape in CHOICES:
        return Choice(next(iter(CHOICES[shape])))
    return {name: empty(inner) for name, inner in STRUCTS[shape].items()}


def fit(value, shape, path):
    """The value in that shape, or an error with its path."""
    if isinstance(shape, list):
        if not isinstance(value, list):
            raise ReadError(f"{path}: a list is needed here")
        return [fit(v, shape[0], f"{path}[{i}]") for i, v in enumerate(value)]
    if isinstance(shape, tuple):
        inner = value.content if isinstance(value, Group) else None
        if not isinstance(inner, list) or len(inner) != len(shape):
            raise ReadError(f"{path}: a group of {len(shape)} texts is needed here")
        return tuple(fit(v, s, path) for v, s in zip(inner, shape))
    if shape in (S, I, B):
        kind = {S: str, I: int, B: bool}[shape]
        if type(value) is not kind or (shape == I and not 0 <= value < 2**32):
            wanted = {S: "a text", I: "a whole number", B: "true or false"}[shape]
            raise ReadError(f"{path}: {wanted} is needed here")
        return value
    if shape in CHOICES:
        return choose(value, CHOICES[shape], path)
    fields = value.content if isinstance(value, Group) else None
    if fields == []:
        fields = {}
    if not isinstance(fields, dict):
        raise ReadError(f"{path}: a group of named fields is needed here")
    return members(fields, STRUCTS[shape], path)


def members(fields, shapes, path):
    for name in fields:
        if name not in shapes:
            raise ReadError(f"{path}: there is no field {name} here")
    return {
        name: fit(fields[name], shape, f"{path}.{name}") if name in fields else empty(shape)
        for name, shape in shapes.items()
    }


def choose(value, words, path):
    if not isinstance(value, Word) or value.name not in words:
        raise ReadError(f"{path}: one of {', '.join(words)} is needed here")
    shape, content = words[value.name], value.content
    if shape is None:
        if content is not None:
            raise ReadError(f"{path}: {value.name} stands alone")
        return Choice(value.name)
    if isinstance(shape, tuple):
        if not isinstance(content, list) or len(content) != len(shape):
            raise ReadError(f"{path}: {value.name} takes {len(shape)} texts")
        return Choice(value.name, texts=tuple(fit(v, s, path) for v, s in zip(content, shape)))
    if content == []:
        content = {}
    if not isinstance(content, dict):
        raise ReadError(f"{path}: {value.name} takes named fields")
    plain = {name.rstrip("?"): inner for name, inner in shape.items()}
    for name in shape:
        if not name.endswith("?") and name not in content:
            raise ReadError(f"{path}: {value.name} needs its field {name}")
    return Choice(value.name, fields=members(content, plain, path))


def read(text):
    """The draft as nested dicts, lists, tuples, texts and Choices, with every field present."""
    reader = Reader(text)
    value = reader.whole()
    draft = fit(value, "Draft", "draft")
    if draft["format"] != "tracewheel draft":
        raise ReadError('format: "tracewheel draft" is needed at the head')
    if draft["version"] > 0:
        raise ReadError(f"version {draft['version']} is newer than 0")
    return draft
