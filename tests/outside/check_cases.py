"""Small drafts set by hand, with numbers worked out on paper from the reference of the language.

Each: title, text of the draft, formula -> size -> value (None: cannot be computed). Millimetres and degrees.
"""
import math

R2, R5 = math.sqrt(2), math.sqrt(5)


def draft(body, girth='["S"]'):
    return f'(format: "tracewheel draft", chart: (girth: {girth}), {body})'


def language(*pairs):
    """A draft of one value after another, each with what it must be."""
    values = "".join(f"(name: \"v{i}\", is: r#\"{text}\"#)," for i, (text, _) in enumerate(pairs))
    return draft(f"values: [{values}]"), {f"v{i}": {"S": want} for i, (_, want) in enumerate(pairs)}


FORMULAS = [
    ("-2^2", -4), ("2^3^2", 512), ("2^-1", 0.5), ("1 + 2 * 3", 7), ("(1 + 2) * 3", 9), ("8 - 2 - 1", 5),
    ("8 / 4 / 2", 1),
    ("3/8 in", 9.525), ("1 1/2 in", 38.1), ("10 cm - 1/2 in", 87.3), ("1/2 cm / 2", 2.5), ("2 ft", 609.6),
    ("1 yd", 914.4),
    ("50 %", 0.5), ("50% * 3 cm", 15), ("90 deg", 90), ("1/2 °", 0.5), ("pi", math.pi), ("3 cm * 2 cm", 600),
    ("(3 cm)^2", 900),
    ("sqrt(9 cm * 4 cm)", 60), ("sqrt(2)", R2), ("6 cm / 4 cm", 1.5), ("1 / 2 mm", 0.5), ("sin(30°)", 0.5),
    ("atan(1)", 45),
    ("acos(2)", None), ("sqrt(-1)", None), ("1 / 0", None), ("3 cm + 2", None), ("30° * 2 cm", None),
    ("(1 mm)^4", None),
    ("(1 mm)^0.5", None), ("2^0.5", R2), ("(0 - 8)^(1/3)", None), ("30° / 15°", 2), ("1 cm < 2 cm", True),
    ("1 < 2 < 3", None),
    ("not 1 < 2 or yes", True), ("yes or no and no", True), ("1 cm < 1", None), ("near(1 cm, 11 mm, 1 mm)", True),
    ("if(1 < 2, 3 cm, 1 cm / 0)", 30), ("if(1 < 2, 3 cm, 4)", None), ("if(yes, 3 cm, nothing)", None),
    ("abs(-3 cm)", 30),
    ("(3 cm).abs()", 30), ("min(3, 1, 2)", 1), ("max(3 cm, 1 in)", 30), ("round(2.5)", 3), ("round(-2.5)", -3),
    ("round(27 mm, 5 mm)", 25),
    ("round(27 mm)", None), ("graded(99 cm, at: [88 cm, 110 cm], give: [2 cm, 3 cm])", 25),
    ("graded(1, at: [2, 3], give: [5, 6])", 5),
    ("graded(9, at: [2, 3], give: [5, 6])", 6), ("graded(2, at: [2, 2], give: [5, 6])", None),
    ("offset(1 cm, 2 cm) * 2", [20, 40]),
    ("offset(1 cm, 2 cm).y", 20), ("x((3 cm, 4 cm))", 30), ("gap((0 cm, 0 cm), (3 cm, 4 cm))", 50),
    ("heading((0 cm, 0 cm), (0 cm, 1 cm))", 90),
    ("heading((1 cm, 0 cm), (0 cm, 0 cm))", 180), ("heading((0 cm, 0 cm), (0 cm, 0 cm))", None),
    ("angle((1 cm, 0 cm), (0 cm, 0 cm), (0 cm, -1 cm))", 270),
    ("corner_angle((1 cm, 0 cm), (0 cm, 0 cm), (0 cm, -1 cm))", 90),
    ("polar((0 cm, 0 cm), 90°, 2 cm)", [0, 20]), ("right((1 cm, 0 cm), 1 cm)", [20, 0]),
    ("(1 cm, 0 cm).up(3 cm)", [10, -30]),
    ("on_way((0 cm, 0 cm), (4 cm, 0 cm), 1/4)", [10, 0]), ("on_way((0 cm, 0 cm), (4 cm, 0 cm), 3 cm)", [30, 0]),
    ("turned((1 cm, 0 cm), (0 cm, 0 cm), 90°)", [0, 10]),
    ("turned((1 cm, 0 cm), (0 cm, 0 cm), from: (0 cm, 1 cm), to: (-1 cm, 0 cm))", [0, 10]),
    ("mirrored((1 cm, 3 cm), plumb((0 cm, 0 cm)))", [-10, 30]), ("foot((1 cm, 3 cm), level((0 cm, 0 cm)))", [10, 0]),
    ("cross(level((0 cm, 2 cm)), line((0 cm, 0 cm), (1 cm, 1 cm)))", [20, 20]),
    ("cross(level((0 cm, 2 cm)), level((0 cm, 3 cm)))", None),
    ("foot((0 cm, 0 cm), parallel(level((0 cm, 0 cm)), 2 cm))", [0, 20]),
    ("foot((0 cm, 0 cm), parallel(plumb((0 cm, 0 cm)), 2 cm))", [-20, 0]),
    ("cross(through((3 cm, 0 cm), square_to: level((0 cm, 0 cm))), level((0 cm, 7 cm)))", [30, 70]),
    ("length(between((0 cm, 0 cm), (3 cm, 4 cm)))", 50), ("at(between((0 cm, 0 cm), (3 cm, 4 cm)), 1 cm)", [6, 8]),
    ("at(between((0 cm, 0 cm), (3 cm, 4 cm)), 6 cm)", None),
    ("off(between((0 cm, 0 cm), (3 cm, 4 cm)), 1 cm, 1 cm)", None),
    ("(1 cm, 0 cm) - (0 cm, 1 cm)", [10, -10]), ("(1 cm, 0 cm) + (0 cm, 1 cm)", None), ("3 foo", None), ("1 +", None),
    ("unknown_name", None),
    ("unknown_function(1)", None), ("x.y.z", None), ("(" * 65 + "1" + ")" * 65, None), ("(" * 64 + "1" + ")" * 64, 1),
    ("v0 * 2", -8), ("if(no, v25, 1)", None), ("if(no, v28, 1)", 1),
]

# Circles of 3 cm about the origin, a quarter of it, the 3-4-5 triangle, Bezier curves of degree two raised to three.
O = "(0 cm, 0 cm)"
RING_3 = f"circle({O}, 3 cm)"
QUARTER = f"arc({O}, (3 cm, 0 cm), (0 cm, 3 cm))"
CONSTRUCTIONS = [
    (f"length({RING_3})", 60 * math.pi), (f"length({QUARTER})", 15 * math.pi), (f"at({QUARTER}, 1/2)", [15 * R2, 15 * R2]),
    (f"length(arc({O}, (3 cm, 0 cm), (0 cm, 3 cm), turn: anticlockwise))", 45 * math.pi),
    (f"arc({O}, (3 cm, 0 cm), (-3 cm, 0 cm)).length", None), (f"length(arc({O}, (3 cm, 0 cm), (-3 cm, 0 cm)))", None),
    (f"length(arc({O}, (3 cm, 0 cm), (-3 cm, 0 cm), turn: clockwise))", 30 * math.pi),
    (f"length(arc({O}, (3 cm, 0 cm), (0 cm, 3.002 cm)))", None), (f"circle({O}, 0 cm).length()", None),
    (f"swing({O}, 5 cm, level((0 cm, 3 cm)), side: right)", [40, 30]), (f"swing({O}, 5 cm, level((0 cm, 3 cm)))", None),
    (f"swing({O}, 5 cm, level((0 cm, 3 cm)), nearest: (-1 cm, 0 cm))", [-40, 30]),
    (f"swing({O}, 5 cm, level((0 cm, 5 cm)))", [0, 50]), (f"swing({O}, 5 cm, level((0 cm, 5.1 cm)))", None),
    (f"swing({O}, 5 cm, level((0 cm, 3 cm)), nearest: (0 cm, 9 cm))", None),
    (f"swing((5 cm, 0 cm), 4 cm, {RING_3}, side: below)", [18, 24]),
    (f"swing({O}, 5 cm, between((3 cm, 0 cm), (3 cm, 9 cm)))", [30, 40]),
    (f"swing({O}, 5 cm, between((3 cm, 0 cm), (3 cm, 3 cm)))", None),
    (f"touch((5 cm, 0 cm), {RING_3}, side: below)", [18, 24]), (f"touch((5 cm, 0 cm), {RING_3}, side: above)", [18, -24]),
    (f"touch((5 cm, 0 cm), {RING_3})", None), (f"touch((5 cm, 0 cm), {QUARTER})", [18, 24]),
    (f"touch((1 cm, 0 cm), {RING_3}, side: below)", None), (f"touch((1 cm, 0 cm), between({O}, (3 cm, 4 cm)))", None),
    (f"touch((3 cm, 9 cm), {QUARTER}, side: right)", [30, 0]),
    (f"cross({RING_3}, level((0 cm, 0 cm)), side: left)", [-30, 0]), (f"cross({RING_3}, level((0 cm, 3 cm)))", [0, 30]),
    (f"cross({QUARTER}, line({O}, (1 cm, 1 cm)))", [15 * R2, 15 * R2]),
    (f"cross({RING_3}, plumb((1.8 cm, 0 cm)), from: (3 cm, 0 cm))", [18, 24]),
    (f"cross(plumb((1.8 cm, 0 cm)), {RING_3}, from: (1.8 cm, -9 cm))", [18, -24]),
    (f"cross({RING_3}, circle((5 cm, 0 cm), 4 cm), side: below)", [18, 24]),
    (f"cross({RING_3}, circle((5 cm, 0 cm), 2 cm))", [30, 0]), (f"cross({RING_3}, circle((9 cm, 0 cm), 2 cm))", None),
    (f"cross({RING_3}, {QUARTER})", None), (f"cross(between({O}, (4 cm, 0 cm)), between((2 cm, 0 cm), (6 cm, 0 cm)))", None),
    (f"cross(between({O}, (4 cm, 4 cm)), between((0 cm, 4 cm), (4 cm, 0 cm)))", [20, 20]),
    (f"cross(between({O}, (1 cm, 1 cm)), between((0 cm, 4 cm), (4 cm, 0 cm)))", None),
    (f"foot((9 cm, 0 cm), {RING_3})", [30, 0]), (f"foot((9 cm, 9 cm), between({O}, (3 cm, 0 cm)))", [30, 0]),
    (f"bisect((4 cm, 0 cm), {O}, (0 cm, 7 cm), 3 cm)", [15 * R2, 15 * R2]), (f"bisect((4 cm, 0 cm), {O}, (-4 cm, 0 cm), 3 cm)", None),
    (f"heading(line({O}, (1 cm, 1 cm)))", 45), (f"heading(along({QUARTER}, 1/2))", 135), (f"heading(along({RING_3}, 3/4))", 0),
    (f"heading(through({O}, heading: 200 deg))", -160), (f"heading(through({O}, parallel_to: plumb({O})))", 90),
    (f"heading(turned(level({O}), (3 cm, 0 cm), 30 deg))", 30), (f"cross(turned(level({O}), (3 cm, 0 cm), 90 deg), level({O}))", [30, 0]),
    (f"heading(mirrored(line({O}, (1 cm, 1 cm)), plumb({O})))", 135), (f"foot({O}, moved(level({O}), offset(9 cm, 2 cm)))", [0, 20]),
    (f"at(moved({QUARTER}, offset(1 cm, 0 cm)), 1/3)", [10 + 15 * math.sqrt(3), 15]),
    (f"at(turned({QUARTER}, {O}, 90 deg), 1/3)", [-15, 15 * math.sqrt(3)]),
    (f"at(turned({QUARTER}, {O}, from: (0 cm, 1 cm), to: (1 cm, 0 cm)), 1/3)", [15, -15 * math.sqrt(3)]),
    (f"at(mirrored({QUARTER}, plumb((1 cm, 0 cm))), 1/3)", [20 - 15 * math.sqrt(3), 15]),
    (f"bend({RING_3}, 1/3) * 3 cm", 1), (f"bend(reversed({QUARTER}), 1/3) * 3 cm", -1), (f"bend(between({O}, (1 cm, 0 cm)), 1/2) * 1 cm", 0),
    (f"place({QUARTER}, (0 cm, 3 cm))", 15 * math.pi), (f"place({QUARTER}, (0 cm, 3.1 cm))", None),
    (f"length(set_off({QUARTER}, 1 cm))", 10 * math.pi), (f"length(set_off({QUARTER}, -1 cm))", 20 * math.pi),
    (f"length(set_off({QUARTER}, 3 cm))", None), (f"length(set_off(reversed({QUARTER}), 1 cm))", 20 * math.pi),
    (f"at(set_off(between({O}, (3 cm, 4 cm)), 5 mm), 0)", [-4, 3]),
    (f"length(set_off(between({O}, (3 cm, 4 cm)), from: 0 mm, to: 12 mm))", math.hypot(50, 12)),
    (f"at(set_off({QUARTER}, from: 1 cm, to: 2 cm), 1)", [0, 10]),
    # A spiral whose radius falls from 2 cm by 1 cm over a quarter turn: r = 20 - a t, length of sqrt(r^2 + a^2).
    (f"length(set_off({QUARTER}, from: 1 cm, to: 2 cm))", 25.660431050564274),
    ("in_size(bust, \"S\")", None),
]

CHART = """(format: "tracewheel draft", chart: (girth: ["1", "2", "3", "4", "5"], length: ["a", "b"], rows: [
    (name: "r", by: [girth], cells: [("2", "20 mm"), ("4", "50 mm")]),
    (name: "f", by: [girth], is: "r * 2", cells: [("1", "7 mm")]),
    (name: "g", by: [length, girth], cells: [("a/1", "1 mm"), ("b/1", "3 mm"), ("a/2", "4 mm")]),
    (name: "odd", by: [girth], cells: [("1", "1 mm"), ("2", "1"), ("3", "z"), ("4", "1 mm"), ("4", "2 mm"),
    ("5", "5 mm")]),
    (name: "one", by: [girth], cells: [("1", "1 mm")]),
    (name: "bent", by: [girth], cells: [("1", "1 mm"), ("2", "3 mm"), ("3", "10 mm")]),
    (name: "late", by: [girth], cells: [("3", "10 mm"), ("5", "2 mm")]),
    (name: "ring_a", by: [girth], is: "ring_b + 1 mm", cells: [("1", "5 mm")]),
    (name: "ring_b", by: [girth], is: "ring_a + 1 mm", cells: [("2", "8 mm")]),
], persons: [(name: "Who", cells: [("r", "33 mm")])]), values: [(name: "v", is: "r + chart.f")])"""

# Cubics in mm with their lengths and the point at half of it; closed forms where there are
# any, else quadrature of 14 digits.
CUBICS = [
    ((0, 0, 10, 0, 20, 0, 30, 0), 30, [15, 0]),
    ((0, 0, 1 / 3, 0, 2 / 3, 1 / 3, 1, 1), R5 / 2 + math.asinh(2) / 4, [0.6107386829580599, 0.3730017388613456]),
    ((0, 0, 0, 0, 1 / 3, 0, 1, 1), (13 * math.sqrt(13) - 8) / 27, [0.5662942656295281, 0.42615073898701517]),
    ((0, 0, 1 / 3, 0, 1, 1 / 3, 2, 5 / 3), 8 / 3, [1.1289507947102917, 0.6590459772273878]),
    ((0, 0, 18, -75, 30, -140, 105, -150), 197.8482018853556, [28.58450858280448, -94.48507671248397]),
]


def pair(x, y):
    return f"({x:.17f} mm, {y:.17f} mm)".replace("(-", "(0 mm - ").replace(", -", ", 0 mm - ")


def cubics():
    points = lines = ""
    for i, (c, _, _) in enumerate(CUBICS):
        points += f'(name: "a{i}", at: "{pair(*c[:2])}"), (name: "b{i}", at: "{pair(*c[6:])}"),'
        lines += f'(name: "c{i}", from: "a{i}", by: [curve("{pair(*c[2:4])}", "{pair(*c[4:6])}", "b{i}")]),'
    wanted = {f"length(d.c{i})": {"S": length} for i, (_, length, _) in enumerate(CUBICS)}
    wanted |= {f"at(d.c{i}, 1/2)": {"S": half} for i, (_, _, half) in enumerate(CUBICS)}
    return draft(f'drawings: [(name: "d", points: [{points}], lines: [{lines}])]'), wanted


SHAPES = """drawings: [(name: "d", points: [(name: "a", at: "(0 mm, 0 mm)"), (name: "b", at: "(100 mm, 0 mm)"),
    (name: "up", at: "(50 mm, 50 mm)"),
    (name: "low", at: "(0 mm, 100 mm)"), (name: "third", at: "a.polar(30°, 100 mm)"),
    (name: "on_hill", at: "(25 mm, 34.375 mm)"),
    (name: "near_hill", at: "(25 mm, 34.395 mm)"), (name: "on_dive", at: "(31.25 mm, 18.75 mm)"),
    (name: "near_dive", at: "(31.25 mm, 18.77 mm)"),
    (name: "on_rise", at: "(68.75 mm, 18.75 mm)"), (name: "left", at: "(25 mm, 25 mm)"),
    (name: "right", at: "(75 mm, 25 mm)")], lines: [
    (name: "quarter", from: "b", by: [arc(centre: "a", turn: clockwise, to: "low")]),
    (name: "rest", from: "b", by: [arc(centre: "a", turn: anticlockwise, to: "low")]),
    (name: "round", from: "b", by: [arc(centre: "a", turn: clockwise, to: "b")]),
    (name: "uneven", from: "b", by: [arc(centre: "(1 mm, 0 mm)", turn: clockwise, to: "low")]),
    (name: "hill", from: "a", by: [smooth(through: ["up"], to: "b")]),
    (name: "dive", from: "a", by: [smooth(through: [], leaving: "90°", to: "b")]),
    (name: "rise", from: "a", by: [smooth(through: [], arriving: "-90°", to: "b")]),
    (name: "still", from: "a", by: [smooth(through: ["a"], to: "b")]),
    (name: "two_ways", from: "a", by: [straight("up"), straight("b")]),
])], """

# From b to a and back over a corner: the inside lies on the left of the ring's sense.
LEFT = """pieces: [(name: "p", points: [(name: "a", at: "(0 mm, 0 mm)"), (name: "b", at: "(0 mm, 80 mm)"),
    (name: "c", at: "(60 mm, 0 mm)")], edges: [
    (name: "down", from: "a", by: [straight("b")]), (name: "slant", from: "b", by: [straight("c")]),
    (name: "back", from: "c", by: [straight("a")])],
    darts: [(name: "dart", on: "down", centre: "40 mm", intake: "10 mm", tip: "12 mm")]),
    (name: "open", points: [(name: "a", at: "(0 mm, 0 mm)"), (name: "b", at: "(0 mm, 80 mm)"),
    (name: "c", at: "(60 mm, 0 mm)")], edges: [
    (name: "down", from: "a", by: [straight("b")]), (name: "back", from: "c", by: [straight("a")])],
    darts: [(name: "dart", on: "down", centre: "40 mm", intake: "10 mm", tip: "12 mm")]),
], """

# Cap height from the two legs and the line between them (Heron's formula): legs 215 and 220 mm, line 340 mm.
TRIANGLE = """values: [(name: "x", start: "150 mm", least: "0 mm", most: "340 mm"),
    (name: "y", start: "100 mm", least: "1 mm", most: "300 mm")],
drawings: [(name: "d", points: [(name: "front", at: "(0 mm, 0 mm)"), (name: "back", at: "(340 mm, 0 mm)"),
    (name: "crown", at: "(x, y)")])],
conditions: [(name: "one", must: "gap(d.front, d.crown) = 215 mm"),
    (name: "two", must: "gap(d.crown, d.back) = 220 mm")]"""

RING = """pieces: [(name: "p", points: [
    (name: "a", at: "(0 mm, 0 mm)"), (name: "b", at: "(200 mm, 0 mm)"), (name: "c", at: "(200 mm, 100 mm)"),
    (name: "d", at: "(0 mm, 100 mm)"),
    (name: "q", at: "at(top, 75 mm)"), (name: "in", at: "(1 mm, 1 mm)"),
    (name: "inward", at: "off(right_side, 1/2, 10 mm)"),
], edges: [
    (name: "top", from: "a", by: [straight("b")]), (name: "right_side", from: "b", by: [straight("c")]),
    (name: "bottom", from: "c", by: [arc(centre: "(100 mm, 100 mm)", turn: clockwise, to: "d")]),
    (name: "left_side", from: "d", by: [straight("a")]),
], lines: [(name: "wave", from: "a",
    by: [smooth(through: ["(50 mm, 0 mm)", "(100 mm, 0 mm)"], leaving: "0°", to: "b")]),
    (name: "bow", from: "a", by: [curve("a", "b", "b")]),
    (name: "copy", from: "b", by: [taken(curve: "reversed(top)", to: "a")]),
    (name: "wrong", from: "a", by: [taken(curve: "reversed(top)", to: "b")]),
], darts: [
    (name: "one", on: "top", centre: "1/4", intake: "20 mm", tip: "30 mm"),
    (name: "two", on: "top", foot: "120 mm", intake: "10 mm", tip: "(128 mm, 12 mm)", kept: to_end),
    (name: "bent", on: "bottom", centre: "1/2", intake: "100 mm", tip: "(100 mm, 100 mm)"),
    (name: "off_it", on: "left_side", centre: "5 mm", intake: "20 mm", tip: "30 mm"),
], tucks: [(name: "fold", on: "right_side", centre: "30 mm", intake: "6 mm")])], """

PLACED = """pieces: [
    (name: "back", points: [(name: "a", at: "(0 mm, 0 mm)"), (name: "b", at: "(100 mm, 0 mm)"),
    (name: "c", at: "(100 mm, 50 mm)")],
     edges: [(name: "top", from: "a", by: [straight("b")]), (name: "side", from: "b", by: [straight("c")]),
     (name: "slant", from: "c", by: [straight("a")])]),
    (name: "front", points: [(name: "s", at: "(10 mm, 10 mm)"), (name: "t", at: "(10 mm, 60 mm)"),
    (name: "bad", at: "back.a"),
     (name: "laid", at: "back_on_front.c"), (name: "far", at: "(10 mm, 20 mm).moved(back.b - back.a)")],
     lines: [(name: "edge", from: "s", by: [straight("t")])]),
], placements: [
    (name: "back_on_front", lay: "back", on: "front", point: "a", onto: "s", towards: "b", along: "t"),
    (name: "flipped", lay: "back", on: "front", point: "a", onto: "s", towards: "b", along: "t", overlap: "5 mm",
     mirrored: true),
    (name: "twisted", lay: "back", on: "front", point: "a", onto: "s", turned: "90°", overlap: "7 mm"),
], """

FOUND = """values: [(name: "x", start: "10 mm", least: "0 mm", most: "100 mm"),
    (name: "y", start: "20 mm", least: "0 mm", most: "100 mm"),
    (name: "u", start: "1", least: "-5", most: "5"), (name: "t", start: "40°"), (name: "free", start: "3 mm"),
    (name: "out", start: "9 mm", most: "5 mm"),
    (name: "p", start: "60 mm", least: "0 mm", most: "200 mm"),
    (name: "q", start: "80 mm", least: "0 mm", most: "200 mm"),
    (name: "h", start: "10 mm", least: "0 mm", most: "20 mm"), (name: "k", start: "0 mm", least: "0 mm", most: "2 mm"),
    (name: "l", start: "0 mm", least: "0 mm", most: "30 mm"), (name: "after", start: "x * 2"),
    (name: "own", start: "own_twice"),
    (name: "own_twice", is: "own * 2"), (name: "both", is: "1 mm", start: "1 mm")],
conditions: [(name: "sum", must: "x + y = 50 mm"), (name: "number", must: "u * u = 4", found_by: ["u"]),
    (name: "steep", must: "tan(t) = 1"),
    (name: "circle", must: "sqrt(p * p + q * q) = 150 mm"), (name: "never", must: "h = 30 mm"),
    (name: "limit", must: "k + l = 20 mm"),
    (name: "more", must: "after = x + 7 mm", found_by: ["after"]), (name: "bare", must: "own = 1 mm"),
    (name: "only_watched", must: "x >= 3 cm")]"""

SEAMS = """values: [(name: "w", start: "50 mm", least: "1 mm", most: "500 mm"),
    (name: "z", start: "50 mm", least: "1 mm", most: "500 mm"),
    (name: "s", start: "50 mm", least: "1 mm", most: "500 mm"),
    (name: "e", start: "1 mm", least: "1 mm", most: "500 mm")],
drawings: [(name: "d", points: [(name: "a", at: "(0 mm, 0 mm)"), (name: "b", at: "(0 mm, 90 mm)"),
    (name: "c", at: "(0 mm, 30 mm)"),
    (name: "a2", at: "(9 mm, 0 mm)"), (name: "b2", at: "(9 mm, w)"), (name: "b3", at: "(9 mm, z)"),
    (name: "b4", at: "(9 mm, s)"),
    (name: "b5", at: "a2.down(e)"), (name: "b6", at: "b5.down(40 mm)")],
    lines: [(name: "one", from: "a", by: [straight("b")]), (name: "two", from: "a2", by: [straight("b2")]),
    (name: "three", from: "a2", by: [straight("b3")]),
    (name: "four", from: "a2", by: [straight("b4")]), (name: "five", from: "a2",
    by: [straight("b5"), straight("b6")])])],
seams: [(name: "eased", one: ["d.one"], two: ["d.two"], fit: eased(longer: two, by: "10 mm"), found_by: ["w"]),
    (name: "gathered", one: ["d.three"], two: ["d.one"], fit: gathered(longer: one, times: "1.5"), found_by: ["z"]),
    (name: "stretched", one: ["d.one"], two: ["d.four"], fit: stretched(shorter: two, times: "0.9"), found_by: ["s"]),
    (name: "parts", one: ["d.one"], two: ["d.five"], stretches: [(to_one: "d.c", to_two: "d.b5",
    fit: eased(longer: one, by: "2 mm"))], found_by: ["e"]),
    (name: "watched", one: ["reversed(d.one)", "d.two"], two: ["d.three"])]"""

CIRCLES = """values: [(name: "a", is: "b + 1 mm"), (name: "b", is: "a + 1 mm"), (name: "c", is: "a * 2"),
    (name: "fine", is: "1 mm"),
    (name: "d", is: "if(yes, fine, e)"), (name: "e", is: "d"), (name: "twice", is: "1"), (name: "top", is: "2 mm")],
drawings: [(name: "twice", points: [(name: "top", at: "(1 mm, 0 mm)"), (name: "n", at: "(top, 0 mm)"),
    (name: "o", at: "(value.top, 0 mm)")])]"""

ARC = 100 * 2 * math.asin(0.5)  # the arc of radius 100 mm over a chord of 100 mm

# A house of 200 by 100 with a roof to 100 above its middle, a dart of 20 in the floor that is 50 high, cut twice; a disc on
# the fold.
WHOLE = """chart: (girth: ["S", "M"], length: ["a", "b"], rows: [
    (name: "r", by: [girth], cells: [("S", "20 mm"), ("M", "50 mm")]),
    (name: "g", by: [girth, length], is: "r * 2", cells: [("M/b", "7 mm")]), (name: "up", by: [girth], is: "in_size(r, \\"M/a\\") - r")],
    persons: [(name: "Who", cells: [("r", "33 mm")])]),
materials: [(name: "main", kind: cloth, selvedge: "r / 2", stretch_across: "20 %")],
values: [(name: "next", is: "in_size(g, \\"M/b\\") + r"), (name: "lost", is: "in_size(r, \\"Who\\")"), (name: "edge", is: "main.selvedge * 3"),
    (name: "give", is: "material.main.stretch_across"), (name: "none", is: "main.stretch_along")],
pieces: [(name: "house", points: [(name: "a", at: "(0 mm, 0 mm)"), (name: "top", at: "(100 mm, -100 mm)"), (name: "b", at: "(200 mm, 0 mm)"),
    (name: "c", at: "(200 mm, 100 mm)"), (name: "d", at: "(0 mm, 100 mm)"), (name: "e", at: "(0 mm, 110 mm)"), (name: "f", at: "(200 mm, 110 mm)"),
    (name: "h", at: "(200 mm, 130 mm)")], edges: [
    (name: "roof", from: "a", by: [straight("top"), straight("b")]), (name: "wall", from: "b", by: [straight("c")]),
    (name: "floor", from: "c", by: [straight("d")]), (name: "back", from: "d", by: [straight("a")])],
    lines: [(name: "below", from: "f", by: [taken(curve: "floor", off: "0 mm - 10 mm", to: "e")]),
        (name: "falling", from: "h", by: [taken(curve: "floor", off: "0 mm - 30 mm", off_end: "0 mm - 10 mm", to: "e")]),
        (name: "missed", from: "h", by: [taken(curve: "floor", off: "0 mm - 10 mm", to: "e")])],
    darts: [(name: "dart", on: "floor", centre: "1/2", intake: "20 mm", tip: "50 mm")], cuts: [(material: "main", count: 2)]),
  (name: "disc", points: [(name: "o", at: "(0 mm, 0 mm)"), (name: "p", at: "(30 mm, 0 mm)")],
    edges: [(name: "round", from: "p", by: [arc(centre: "o", turn: clockwise, to: "p")])],
    cuts: [(material: "main", count: 1, on_fold: "round")]),
], """

CASES = [
    ("language", *language(*FORMULAS)),
    ("constructions", *language(*CONSTRUCTIONS)),
    ("whole", f'(format: "tracewheel draft", {WHOLE})', {
        "area(house)": {"S/a": 30000}, "area(disc)": {"S/a": 900 * math.pi}, "area(piece.disc)": {"S/a": 900 * math.pi},
        "width(house, level(house.wall.at(1/2)))": {"S/a": 200}, "width(house, level(house.top.down(50 mm)))": {"S/a": 100},
        "width(house, level(house.c.up(25 mm)))": {"S/a": 190}, "width(house, level(house.top.up(1 mm)))": {"S/a": None},
        "width(house, plumb(house.d.right(100 mm)))": {"S/a": 150}, "width(disc, level(disc.o.down(18 mm)))": {"S/a": 48},
        "width(disc, level(house.c))": {"S/a": None}, "area(house_)": {"S/a": None},
        "girth(level(house.c.up(25 mm)))": {"S/a": 380}, "girth(level(house.c.up(25 mm)), plumb(disc.o))": {"S/a": 500},
        "length(house.below)": {"S/a": 200}, "length(house.falling)": {"S/a": math.hypot(200, 20)}, "length(house.missed)": {"S/a": None},
        "off(reversed(house.floor), 1/4, 10 mm)": {"S/a": [45, 90]}, "at(set_off(house.wall, 10 mm), 1/2)": {"S/a": [190, 50]},
        "at(set_off(reversed(house.wall), 10 mm), 1/2)": {"S/a": [190, 50]}, "length(set_off(house.roof, 10 mm))": {"S/a": None},
        "off(mirrored(house.wall, plumb(house.a)), 1/2, 10 mm)": {"S/a": [-190, 50]},
        "at(set_off(mirrored(house.wall, plumb(house.a)), 10 mm), 1/2)": {"S/a": [-190, 50]},
        "next": {"S/a": 27, "M/b": 57, "Who": 40}, "lost": {"S/a": None}, "up": {"S/b": 30, "M/a": 0, "Who": 17},
        "edge": {"S/a": 30, "M/b": 75}, "give": {"S/a": 0.2}, "none": {"S/a": None},
    }),
    ("chart", CHART, {
        "r": {"1/a": 5, "2/a": 20, "3/a": 35, "4/b": 50, "5/b": 65, "Who": 33},
        "f": {"1/a": 7, "2/a": 40, "3/b": 70, "Who": 66},
        "v": {"1/a": 12, "Who": 99},
        "g": {"1/a": 1, "1/b": 3, "2/a": 4, "2/b": None, "3/a": None, "Who": None},
        "odd": {"1/a": 1, "2/a": None, "3/a": None, "4/a": None, "5/a": 5},
        "bent": {"4/a": 17, "5/b": 24},
        "late": {"1/a": 18, "2/a": 14, "4/a": 6},
        "one": {"1/a": 1, "2/a": None},
        "ring_a": {"1/a": 5, "2/a": 9, "3/a": None},
        "ring_b": {"1/a": 6, "2/a": 8, "3/a": None},
    }),
    ("ring", draft(RING), {
        "length(p.top)": {"S": 170}, "flat_length(p.top)": {"S": 200}, "p.q": {"S": [95, 0]},
        # 40 mm is where the first foot of the dart lies: the foot itself; just behind it, behind the second foot.
        "at(p.top, 40 mm)": {"S": [40, 0]}, "at(p.top, 41 mm)": {"S": [61, 0]},
        "at(reversed(p.top), 10 mm)": {"S": [190, 0]},
        "length(part(p.top, p.q, p.b))": {"S": 95}, "length(part(p.top, p.b, p.q))": {"S": 95},
        "flat_length(part(p.top, p.q, p.b))": {"S": 105},
        "part(p.top, p.in, p.b)": {"S": None}, "length(part(p.top, (0 mm, 0 mm), p.b))": {"S": None},
        "p.one.tip": {"S": [50, 30]}, "p.one.leg": {"S": math.hypot(10, 30)}, "p.one.first_foot": {"S": [40, 0]},
        "p.one.intake": {"S": 20}, "p.two.leg": {"S": math.hypot(2, 12)}, "p.two.second_foot": {"S": [130, 0]},
        "p.inward": {"S": [190, 53]}, "length(p.right_side)": {"S": 94}, "p.off_it.leg": {"S": None},
        "length(p.left_side)": {"S": None},
        "flat_length(p.left_side)": {"S": 100}, "flat_length(p.bottom)": {"S": 100 * math.pi},
        "length(p.bottom)": {"S": 100 * math.pi - ARC},
        "p.bent.leg": {"S": 100}, "length(p.bow)": {"S": 200}, "length(p.copy)": {"S": 200},
        "length(p.wrong)": {"S": None},
        "length(p.wave)": {"S": 200},
    }),
    ("cubics", *cubics()),
    ("shapes", draft(SHAPES), {
        "length(d.quarter)": {"S": 50 * math.pi}, "at(d.quarter, 1/2)": {"S": [50 * R2, 50 * R2]},
        "length(d.rest)": {"S": 150 * math.pi},
        "at(d.rest, 2/3)": {"S": [-100, 0]}, "length(d.round)": {"S": 200 * math.pi}, "length(d.uneven)": {"S": None},
        "length(part(d.quarter, d.b, d.third))": {"S": 100 * math.pi / 6},
        # Worked out by hand from the conditions of a natural spline, and of one with a heading of speed sqrt(chord).
        "at(d.hill, 1/2)": {"S": [50, 50]}, "near(length(part(d.hill, d.a, d.on_hill)), 0 mm, 1 m)": {"S": True},
        "length(part(d.hill, d.a, d.near_hill))": {"S": None},
        "near(length(part(d.dive, d.a, d.on_dive)), 0 mm, 1 m)": {"S": True},
        "near(length(part(d.rise, d.b, d.on_rise)), 0 mm, 1 m)": {"S": True},
        "length(part(d.dive, d.a, d.near_dive))": {"S": None}, "length(d.still)": {"S": None},
        "length(part(d.two_ways, d.left, d.right))": {"S": 50 * R2}, "at(d.two_ways, 3/4)": {"S": [75, 25]},
    }),
    ("left", draft(LEFT), {
        "p.dart.tip": {"S": [12, 40]}, "p.dart.leg": {"S": 13}, "off(p.slant, 1/2, 5 mm)": {"S": [26, 37]},
        "length(p.down)": {"S": 70},
        "open.dart.tip": {"S": None}, "length(open.down)": {"S": 70}, "open.dart.leg": {"S": None},
    }),
    ("triangle", draft(TRIANGLE), {"y": {"S": 135.65496455936316}, "x": {"S": 166.8014705882353}}),
    ("placed", draft(PLACED), {
        "back_on_front.b": {"S": [10, 110]}, "back_on_front.c": {"S": [-40, 110]}, "front.laid": {"S": [-40, 110]},
        "flipped.a": {"S": [10, 15]},
        "flipped.c": {"S": [60, 115]}, "twisted.a": {"S": [10, 17]}, "twisted.b": {"S": [10, 117]},
        "front.bad": {"S": None}, "front.far": {"S": [110, 20]},
        "gap(back.a, front.s)": {"S": None}, "gap(back_on_front.a, front.s)": {"S": 0},
        "length(flipped.slant)": {"S": 50 * R5},
        "off(back.top, 1/2, 5 mm)": {"S": [50, 5]}, "off(flipped.top, 1/2, 5 mm)": {"S": [15, 65]},
        "off(back_on_front.top, 1/2, 5 mm)": {"S": [5, 60]},
        "off(reversed(back.top), 10 mm, 5 mm)": {"S": [90, 5]}, "off(front.edge, 1/2, 5 mm)": {"S": None},
    }),
    ("found", draft(FOUND), {
        # x + y = 50 nearest to (10, 20): both grow by 10.
        "x": {"S": 20}, "y": {"S": 30}, "u": {"S": 2}, "t": {"S": 45}, "free": {"S": 3}, "out": {"S": 5},
        # On the circle the nearest place to (60, 80) lies on the ray through it.
        "p": {"S": 90}, "q": {"S": 120}, "h": {"S": None}, "k": {"S": 2}, "l": {"S": 18}, "after": {"S": 27},
        "own": {"S": None},
        "both": {"S": None}, "h + 1 mm": {"S": None},
    }),
    ("seams", draft(SEAMS), {
        "w": {"S": 100}, "z": {"S": 135}, "s": {"S": 81}, "e": {"S": 28}, "seam.eased.difference": {"S": -10},
        "seam.gathered.one": {"S": 135},
        "seam.watched.one": {"S": 190}, "seam.watched.difference": {"S": 55}, "seam.parts.two": {"S": 68},
        "seam.nothing.one": {"S": None},
    }),
    ("circles", draft(CIRCLES), {
        "a": {"S": None}, "c": {"S": None}, "d": {"S": None}, "e": {"S": None}, "fine": {"S": 1}, "twice": {"S": None},
        "value.twice": {"S": 1},
        "drawing.twice.top": {"S": [1, 0]}, "drawing.twice.n": {"S": None}, "drawing.twice.o": {"S": [2, 0]},
        "twice.top": {"S": None},
    }),
]

# Texts that are no draft: the reader must refuse each.
REFUSED = [
    "",
    "(",
    "()",
    '(format: "something else")',
    '(format: "tracewheel draft", version: 1)',
    '(format: "tracewheel draft", colour: "red")',
    '(format: "tracewheel draft", title: 3)',
    '(format: "tracewheel draft", title: "a", title: "b")',
    '(format: "tracewheel draft", version: 0.0)',
    '(format: "tracewheel draft", display: feet)',
    '(format: "tracewheel draft", values: [(name: "a", is: "1" note: "b")])',
    '(format: "tracewheel draft") more',
    '(format: "tracewheel draft", title: "never closed)',
    '(format: "tracewheel draft" /* never closed )',
    '(format: "tracewheel draft", seams: [(fit: eased(longer: one))])',
    '(format: "tracewheel draft", pieces: [(edges: [(by: [straight("a", "b")])])])',
]

# The same draft in plain and in unusual dress.
DRESSED = r"""// A comment.
#![enable(implicit_some)]
( /* and /* one */ inside */ format: r#"tracewheel draft"#, title: "a \\ \"b\"\n\u{e9}\x41", version: 0,
  display: inch_eighths, values: [ ( name : "a" , is : r"1 mm" , ) , ] , )"""
