#!/usr/bin/env python3
"""One page of figures by one command: how fast the program is, beside others on the same machine, how it grows, and where its time goes.

usage: tests/bench/figures.py [--only PART]... [--nests FOLDER [--long]] [--no-build]

Builds the release benches, runs the parts one after the other and writes `tests/bench/figures.md` (and the picture beside it). `--only` runs
some parts and leaves the rest of the page as it is; parts and about how long each takes on two cores: PARTS below. Needs numpy, matplotlib,
Pillow, shapely 2 and spyrrow 0.9 (Python), pdftoppm (poppler-utils), valgrind and taskset's system call (Linux). Nests need a folder with the
public instances as JSON (see examples/nest_instances.rs); without it that part is left as it is. Exits 1 if a part failed, or two that
should have done the same work did not.

Whatever is compared runs pinned to one core, by turns: ours, the other, ours, the other. "ratio" is the median of ours through that of
the other: below 1 ours is faster. Spread: the least and the middle of the runs.
"""
import argparse
import collections
import json
import os
import pathlib
import platform
import re
import statistics
import subprocess
import sys
import tempfile
import time

ROOT = pathlib.Path(__file__).resolve().parents[2]
HERE = ROOT / "tests/bench"
PAGE = HERE / "figures.md"
PICTURE = HERE / "figures-growth.svg"
AGAINST = ["--manifest-path", "tests/bench/against/Cargo.toml", "--target-dir", "target"]
CORE = max(os.sched_getaffinity(0))
# Polygons that stand for the same cut line: the area in which they differ for each mm along them, mm. Where nothing was trimmed both are
# within 0.001 mm of the true line and its chords; GEOS beforehand drops hollows of less than a hundredth of the distance.
SAME_LINE = {"smooth": 0.005, "tight": 0.05}

wrong = []


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--only", action="append", choices=[p.__name__ for p in PARTS], default=[])
    parser.add_argument("--nests", type=pathlib.Path, help="folder of public nesting instances")
    parser.add_argument("--long", action="store_true", help="nests: seven instances, three seeds, 60 s each")
    parser.add_argument("--no-build", action="store_true", help="take what was built before")
    args = parser.parse_args()
    begun = time.monotonic()
    programs = built(args.no_build)
    page = PAGE.read_text() if PAGE.exists() else ""
    chosen = [p for p in PARTS if not args.only or p.__name__ in args.only]
    page = put(page, "machine", machine())
    for part in PARTS:
        name = part.__name__
        if part in chosen:
            say(f"{name}: {part.__doc__.splitlines()[0]}")
            start, load = time.monotonic(), os.getloadavg()[0]
            try:
                text = part(programs, args)
            except Exception as e:  # the other parts are still worth having
                wrong.append(f"{name}: {type(e).__name__}: {e}")
                text = None
            took = time.monotonic() - start
            if text is not None:
                note = f"*Took {took:.0f} s; load of the machine {load:.1f} before, {os.getloadavg()[0]:.1f} after (2 cores are free at 0).*"
                page = put(page, name, text.rstrip() + "\n\n" + note.replace("2 cores are", f"{os.cpu_count()} cores are"))
            say(f"  {took:.0f} s, {time.monotonic() - begun:.0f} s since the beginning" + ("" if text is not None else ", left as it was"))
        elif f"<!-- {name} -->" not in page:
            page = put(page, name, f"## {name.capitalize()}\n\nNot run yet.")
    PAGE.write_text(page)
    say(f"{PAGE.relative_to(ROOT)} is written")
    for line in wrong:
        say(f"WRONG {line}")
    sys.exit(1 if wrong else 0)


def say(line):
    print(line, flush=True)


HEAD = "# Figures\n\nMade by `tests/bench/figures.py`, which says how; a part of it again by `--only`.\n"


def put(page, name, text):
    """The page with another text for one part; parts stand in their order."""
    order = ["machine"] + [p.__name__ for p in PARTS]
    parts = dict(re.findall(r"<!-- (\w+) -->\n(.*?)\n<!-- end -->", page, re.S))
    parts[name] = text.strip()
    return HEAD + "\n" + "\n\n".join(f"<!-- {n} -->\n{parts[n]}\n<!-- end -->" for n in order if n in parts) + "\n"


def built(as_it_is):
    """The release programs; building says how far it is on the error channel."""
    def path(command, name):
        run = subprocess.run(["cargo", *command, "--message-format=json"], cwd=ROOT, stdout=subprocess.PIPE, text=True)
        if run.returncode:
            sys.exit("it cannot be built")
        told = [json.loads(line) for line in run.stdout.splitlines()]
        return next(t["executable"] for t in told if t.get("executable") and t["target"]["name"] == name)

    known = ROOT / "target/figures-programs.json"
    if as_it_is and known.exists():
        return json.loads(known.read_text())
    say("building (release)")
    programs = dict(
        engine=path(["bench", "--locked", "--no-default-features", "--bench", "engine", "--no-run"], "engine"),
        nest=path(["build", "--locked", "--release", "--no-default-features", "--example", "nest_instances"], "nest_instances"),
        against=path(["build", "--locked", "--release", *AGAINST], "against"),
    )
    known.write_text(json.dumps(programs))
    return programs


def lines_of(command, one_core=True):
    """What a bench prints, each line an object."""
    run = subprocess.run([str(c) for c in command], cwd=ROOT, capture_output=True, text=True, preexec_fn=pinned if one_core else None)
    if run.returncode:
        raise RuntimeError(f"{pathlib.Path(command[0]).name}: {run.stderr.strip()[-400:]}")
    return [json.loads(line) for line in run.stdout.splitlines()]


def pinned():
    os.sched_setaffinity(0, {CORE})


def row(*cells):
    return "| " + " | ".join(str(c) for c in cells) + " |\n"


def table(head, rows):
    return row(*head) + row(*["---"] * len(head)) + "".join(row(*r) for r in rows)


def number(x):
    return f"{x:.3g}" if x < 100 else f"{x:.0f}"


def both(times):
    """Median and best of one column."""
    return f"{number(statistics.median(times))} (best {number(min(times))})"


def column(times, i):
    return [t[i] for t in times]


def ratio(times, i, j):
    """Medians, and the middle half of the ratios of runs side by side."""
    each = sorted(t[i] / t[j] for t in times)
    middle = statistics.median(column(times, i)) / statistics.median(column(times, j))
    return f"{middle:.2f} ({each[len(each) // 4]:.2f} to {each[(3 * len(each)) // 4]:.2f})"


def machine():
    def version(command):
        try:
            told = subprocess.run(command, capture_output=True, text=True, cwd=ROOT)
        except OSError:
            return "not there"
        return (told.stdout + told.stderr).splitlines()[0].strip()

    cpu = next((l.split(":")[1].strip() for l in open("/proc/cpuinfo") if l.startswith("model name")), platform.machine())
    lock = dict(re.findall(r'name = "([^"]+)"\nversion = "([^"]+)"', (HERE / "against/Cargo.lock").read_text()))
    crates = ", ".join(f"{n} {lock[n]}" for n in ["levenberg-marquardt", "i_overlay", "lopdf", "flate2", "ron", "serde"])
    import importlib.metadata as have

    packages = []
    for name in ["shapely", "spyrrow", "numpy"]:
        try:
            packages.append(f"{name} {have.version(name)}")
        except have.PackageNotFoundError:
            packages.append(f"{name} not there")
    try:
        import shapely

        packages[0] += f" with GEOS {shapely.geos_version_string}"
    except ImportError:
        pass
    return (
        "## The machine\n\n"
        f"{cpu}, {os.cpu_count()} cores, {platform.system()} {platform.release().split('-')[0]}. {version(['rustc', '--version'])}; release build "
        f"(thin LTO, 4 units), the others of Rust built alike. {crates}. Python {platform.python_version()}: {', '.join(packages)}. "
        f"{version(['pdftoppm', '-v'])}; {version(['valgrind', '--version'])}.\n\n"
        "Whatever is compared runs pinned to one core, by turns: ours, the other, ours … Ratio: the median of ours through that of the other, with "
        "the middle half of the ratios of runs side by side; below 1 ours is faster."
    )


def solver(programs, args):
    """The solver beside the levenberg-marquardt crate (about 10 s)."""
    told = lines_of([programs["against"], "solver", 7])
    free = [t for t in told if "name" in t]
    rows, logs, missed = [], [], []
    for t in free:
        rows.append([t["name"], t["unknowns"], both(column(t["micros"], 0)), both(column(t["micros"], 1)), ratio(t["micros"], 0, 1),
                     "{} / {}".format(*t["evaluations"]), "{:.0e} / {:.0e}".format(*t["left"])])
        a, b = (statistics.median(column(t["micros"], i)) for i in (0, 1))
        logs.append((a, b))
        if t["true"] and t["left"][0] > 1e-6:
            wrong.append(f"solver: {t['name']} is told solved with {t['left'][0]} left")
        if t["true"] and t["left"][1] > 1e-6:
            missed.append(t["name"])
    together = sum(a for a, _ in logs) / sum(b for _, b in logs)
    mean = statistics.geometric_mean(a / b for a, b in logs)
    text = (
        "## Solver\n\nThe systems of the tests that have no limits and at least as many equations as unknowns, posed to both with the same residuals, "
        "derivatives (dual numbers), start and scale. Ours also looks for the answer nearest to the start and keeps limits; the other does neither. "
        "Checked: what is left of the equations.\n\n"
        f"**All {len(free)} together: {together:.2f} of the other's time; geometric mean of the ratios {mean:.2f}.** "
        f"Solved by ours and not by the other: {', '.join(missed) or 'none'}.\n\n"
    )
    return text + table(["system", "unknowns", "ours, µs", "levenberg-marquardt, µs", "ratio", "evaluations", "left"], rows)


def cuts(programs, args):
    """Cut lines beside shapely and i_overlay (about 20 s)."""
    import shapely

    with tempfile.TemporaryDirectory() as folder:
        times, geos, kept = collections.defaultdict(list), collections.defaultdict(list), {}
        for _ in range(3):
            for t in lines_of([programs["against"], "cuts", 5, folder]):
                times[t["name"]] += t["ms"]
                data = json.loads((pathlib.Path(folder) / f"{t['name']}.json").read_text())
                stitches = [shapely.Polygon(p) for p in data["stitch"]]
                mine = os.sched_getaffinity(0)
                pinned()
                for _ in range(5):
                    begin = time.perf_counter()
                    made = [s.buffer(data["allowance"], join_style="mitre", mitre_limit=1000.0) for s in stitches]
                    geos[t["name"]].append(1e3 * (time.perf_counter() - begin))
                os.sched_setaffinity(0, mine)
                if t["name"] not in kept:
                    others = (data["i_overlay"], [m.exterior.coords for m in made])
                    t["apart"] = [max(apart(shapely.Polygon(o), shapely.Polygon(x)) for o, x in zip(data["ours"], other)) for other in others]
                    kept[t["name"]] = t
    text = (
        "## Cut lines\n\nOutlines of curves and straight lines by seed, one allowance all round, set off to the outside; corners run on until they meet, "
        "however sharp. Ours is the whole finishing of a draft of these pieces from its computed model: lines set off as curves within 0.001 mm, joined, "
        "looked through for crossings, trimmed where there are any, with the widths and places that belong to a finished piece; the result is curves. The "
        "others get the stitch line as a polygon with chords within 0.001 mm, made beforehand and not timed, and give a polygon: `buffer` of shapely "
        "with mitred joins, called piece by piece, and `outline` of i_overlay in its 64-bit integers.\n\n"
        "Checked piece by piece: the area in which both results differ, for each mm of the line (which is how far they lie apart on average), at most "
        f"{SAME_LINE['smooth']} mm where nothing crosses and {SAME_LINE['tight']} mm where hollows are tighter than the allowance.\n\n"
    )
    rows = []
    for name, t in kept.items():
        for other, far in zip(["i_overlay", "shapely"], t["apart"]):
            if not far <= SAME_LINE[name]:
                wrong.append(f"cuts: {name}: {other} and ours lie {far:.4f} mm apart on average")
        pairs = [[o, i, s] for (o, i), s in zip(times[name], geos[name])]
        what = f"{name}: {t['outlines']} outlines, {t['allowance']:.0f} mm, {t['trimmed']} trimmed"
        rows.append([what, f"{t['elements']} / {t['points']}", both(column(pairs, 0)), both(column(pairs, 1)), both(column(pairs, 2)),
                     ratio(pairs, 0, 1), ratio(pairs, 0, 2), "{:.4f}, {:.4f}".format(*t["apart"])])
    return text + table(["outlines", "our elements / points given to the others", "ours, ms", "i_overlay, ms", "shapely, ms", "ours / i_overlay",
                         "ours / shapely", "apart at most, mm"], rows)


def apart(a, b):
    if not (a.is_valid and b.is_valid):
        a, b = a.buffer(0), b.buffer(0)
    return a.symmetric_difference(b).area / a.length


def pages(programs, args):
    """Writing PDF pages beside lopdf (about 20 s)."""
    import numpy
    from PIL import Image

    with tempfile.TemporaryDirectory() as folder:
        told = lines_of([programs["against"], "pages", 15, folder])
        rows = []
        for t in told:
            drawn = {}
            for kind in ["ours", "level-6", "own-level"]:
                stem = f"{folder}/{t['name']}-{kind}"
                subprocess.run(["pdftoppm", "-r", "100", "-gray", f"{stem}.pdf", stem], check=True, capture_output=True)
                files = sorted(pathlib.Path(folder).glob(f"{t['name']}-{kind}-*.pgm"))
                drawn[kind] = [numpy.array(Image.open(f)) for f in files]
            dark = sum(int((p < 128).sum()) for p in drawn["ours"])
            other = sum(int((a != b).sum()) if a.shape == b.shape else a.size for a, b in zip(drawn["ours"], drawn["level-6"]))
            other += sum(int((a != b).sum()) for a, b in zip(drawn["ours"], drawn["own-level"]))
            if other or len(drawn["ours"]) != t["pages"] or dark < 1000:
                wrong.append(f"pages: {t['name']}: {other} points differ, {dark} are dark")
            kb = [f"{b / 1e3:.0f}" for b in t["bytes"]]
            rows.append([f"{t['name']}, {t['pages']} pages", both(column(t["ms"], 0)), both(column(t["ms"], 1)), both(column(t["ms"], 2)), ratio(t["ms"], 0, 1),
                         ratio(t["ms"], 0, 2), f"{kb[0]} / {kb[1]} / {kb[2]}", f"{other} of {sum(p.size for p in drawn['ours'])}",
                         f"{both(column(t['ms'], 3))}, {kb[3]}"])
    return (
        "## PDF pages\n\nThe home print of two drafts in one size, from the same drawings: lines, dashes, fills, clips, shared things as forms, written once. Texts "
        "and layers are left out on both sides, because the other has no subset of a font to write; the last column has ours with its texts. The "
        "other (lopdf) holds a list of operations and encodes it; its own compression is the strongest there is (level 9), so it is timed with our "
        "level (6) as well. Ours also makes a digest of the content as the file's number. Checked: both files drawn by pdftoppm at 100 dots an inch, "
        "all points the same.\n\n"
        + table(["pages", "ours, ms", "lopdf, level 6, ms", "lopdf, its own, ms", "ratio at level 6", "ratio to its own", "kB: ours / 6 / own", "points that differ",
                 "ours with texts, ms, kB"], rows)
    )


def drafts(programs, args):
    """Reading and writing drafts beside serde and ron alone (about 10 s)."""
    told = lines_of([programs["against"], "drafts", 9])
    rows = []
    for t in told:
        if not (t["same_read"] and t["own_reads_theirs"]):
            wrong.append(f"drafts: {t['name']}: read alike {t['same_read']}, ours reads theirs {t['own_reads_theirs']}")
        rows.append([t["name"], f"{t['bytes'][0] / 1e3:.0f} / {t['bytes'][1] / 1e3:.0f}", both(column(t["read_ms"], 0)), both(column(t["read_ms"], 1)),
                     ratio(t["read_ms"], 0, 1), both(column(t["write_ms"], 0)), both(column(t["write_ms"], 1)), ratio(t["write_ms"], 0, 1)])
    return (
        "## Drafts as text\n\nReading and writing beside serde and the ron crate alone, the same types and the same derived code. Ours reads by that crate too, and "
        "before that walks over the whole text itself: limits, format and version, comments, errors with a place; while reading it keeps the path of "
        "what it reads, for messages. What it writes is the standard form (short groups on one line, empty fields left out); the other writes its "
        "pretty form. Checked: both read the same draft, and ours reads what the other wrote as the draft that it was.\n\n"
        + table(["draft", "kB: ours / other's", "reading, ours, ms", "ron, ms", "ratio", "writing, ours, ms", "ron, ms", "ratio"], rows)
    )


def nests(programs, args):
    """Nests beside spyrrow (three instances of 10 s and one seed: about 70 s; --long: 45 min)."""
    if args.nests is None:
        say("  NOT RUN: --nests FOLDER wants the public instances")
        return None
    how = ["--seconds", "60", "--seeds", "1,2,3"] if args.long else ["--seconds", "10", "--seeds", "1", "--instances", "swim,shirts,trousers"]
    command = [sys.executable, str(HERE / "nest.py"), str(args.nests), *how, "--program", programs["nest"]]
    run = subprocess.run(command, cwd=ROOT, capture_output=True, text=True)
    lines = [l.split() for l in run.stdout.splitlines()]
    lines = [l for l in lines if len(l) >= 5 and l[1].isdigit()]
    means = [l.split() for l in run.stdout.splitlines() if l.split()[1:2] == ["mean"]]
    if not lines or "WRONG" in run.stdout:
        raise RuntimeError((run.stdout + run.stderr).strip()[-400:])
    rows = [[m[0], m[2], m[3], m[-2] if m[0] != "all" else "", m[-1]] for m in means]
    below = f" The goal of `nest.py`, 98 % of the other's, was {'not ' if run.returncode else ''}reached."
    return (
        f"## Nests\n\nPublic instances of irregular strip packing, {how[1]} s and one thread each, seeds {how[3]}, ours and spyrrow one after the other (`tests/bench/nest.py`, "
        "which tells more); per cent of the strip that is covered; the best known are of Gardeyn et al., Table 3. A long run stands in the README. "
        f"Checked: every one of the {len(lines)} layouts of ours with shapely, all valid.{below}\n\n"
        + table(["instance", "ours", "spyrrow", "best known", "ours / spyrrow"], rows)
    )


def waits(programs, args):
    """What a person waits for, all cores (about 40 s)."""
    told = lines_of([programs["engine"], "--once", "waits"], one_core=False)
    rows = [[t["what"], number(statistics.median(t["ms"])), number(min(t["ms"])), len(t["ms"])] for t in told]
    return (
        "## What a person waits for\n\nThe engine and what follows it, on all cores; nothing beside it. `cargo bench --no-default-features --bench engine` prints more.\n\n"
        + table(["what", "median, ms", "best, ms", "runs"], rows)
    )


def slope(xs, ys):
    """The exponent with which it grows: least squares of logarithms, and the largest deviation from that as a factor."""
    import numpy

    x, y = numpy.log(xs), numpy.log(ys)
    (b, a) = numpy.polyfit(x, y, 1)
    return b, float(numpy.exp(numpy.abs(y - a - b * x).max()))


def growth(programs, args):
    """Growth with pieces, sizes, points, undo and unknowns (about 60 s)."""
    told = lines_of([programs["engine"], "--once", "growth"])
    limits = [t for t in lines_of([programs["against"], "solver", 5]) if "with_limits" in t]
    least = lambda t: min(t["ms"])
    grid = {(t["pieces"], t["sizes"]): least(t) for t in told if t["curve"] == "pieces x sizes"}
    pieces, sizes = sorted({p for p, _ in grid}), sorted({s for _, s in grid})
    points = [(t["points"], least(t)) for t in told if t["curve"] == "points"]
    undo = [t for t in told if t["curve"] == "undo"]
    unknowns = [(t["with_limits"], min(t["micros"])) for t in limits]
    curves = {
        "pieces, 20 sizes": [(p, grid[p, 20]) for p in pieces],
        "sizes, 30 pieces": [(s, grid[30, s]) for s in sizes],
        "points of 10 pieces, 10 sizes": points,
    }
    fits = []
    for name, curve in curves.items():
        b, off = slope(*zip(*curve))
        fits.append([name, f"{curve[0][0]} to {curve[-1][0]}", f"{number(curve[0][1])} to {number(curve[-1][1])} ms", f"{b:.2f}", f"{off:.2f}"])
    for name, curve in [("unknowns of one system, up to 6", [u for u in unknowns if u[0] <= 6]), ("unknowns, from 12", [u for u in unknowns if u[0] >= 12])]:
        b, off = slope(*zip(*curve))
        fits.append([name, f"{curve[0][0]} to {curve[-1][0]}", f"{number(curve[0][1])} to {number(curve[-1][1])} µs", f"{b:.2f}", f"{off:.2f}"])
    drawn(curves, unknowns, undo)
    each = (undo[-1]["memory_mb"] - undo[1]["memory_mb"]) / (undo[-1]["steps"] - undo[1]["steps"]) * 1e3
    steps = [[t["steps"], f"{t['memory_mb']:.0f}", number(statistics.median(t["edit_ms"])), number(statistics.median(t["undo_ms"]))] for t in undo]
    cells = [[p, *(number(grid[p, s]) for s in sizes)] for p in pieces]
    return (
        "## Growth\n\nThe best of several runs on one core, everything from scratch. Exponent: the slope of a straight line through the logarithms; 1 is in "
        "proportion. Off: the largest factor between a run and that line.\n\n![Growth curves](figures-growth.svg)\n\n"
        + table(["what grows", "from, to", "time", "exponent", "off"], fits)
        + "\nms from scratch, 60 points and 2 found values a piece:\n\n"
        + table(["pieces", *(f"{s} sizes" for s in sizes)], cells)
        + "\nUndo in the draft of 30 pieces x 60 points x 20 sizes, an edit of a point and its undo, each with everything computed, finished and proved again: "
        f"{each:.0f} kB a step kept; undone to the very same draft each time. The same fifteen points each time; why they take less from some 200 steps on was not found (it is not the allocator).\n\n"
        + table(["steps kept", "memory, MB", "an edit, ms", "its undo, ms"], steps)
    )


def drawn(curves, unknowns, undo):
    import matplotlib

    matplotlib.use("svg")
    matplotlib.rcParams.update({"svg.fonttype": "none", "svg.hashsalt": "figures", "font.size": 8})
    import matplotlib.pyplot as plt

    figure, (a, b, c) = plt.subplots(1, 3, figsize=(9, 3.6))
    for (name, curve), mark in zip(curves.items(), "os^"):
        a.loglog(*zip(*curve), mark + "-", label=name, linewidth=1, markersize=4)
    a.set(title="From scratch, ms", xlabel="how many")
    a.legend(frameon=False, loc="upper center", bbox_to_anchor=(0.5, -0.2))
    b.loglog(*zip(*unknowns), "o-", linewidth=1, markersize=4)
    b.set(title="One system, µs", xlabel="unknowns")
    c.plot([t["steps"] for t in undo], [t["memory_mb"] for t in undo], "o-", linewidth=1, markersize=4)
    c.set(title="Undo, MB in use", xlabel="steps kept", ylim=(0, None))
    for axes in (a, b, c):
        axes.grid(linewidth=0.3)
    figure.tight_layout()
    figure.savefig(PICTURE, metadata={"Date": None, "Creator": None})
    PICTURE.write_text("\n".join(line.rstrip() for line in PICTURE.read_text().splitlines()) + "\n")


def counted(program, name):
    """Instructions of one fixed run, by function: what runs within the function that is named to callgrind."""
    with tempfile.TemporaryDirectory() as folder:
        out = f"{folder}/out"
        command = ["valgrind", "--tool=callgrind", f"--callgrind-out-file={out}", f"--toggle-collect=*counted_{name}*", program, "--once", f"counted-{name}"]
        run = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, preexec_fn=pinned)
        if run.returncode:
            raise RuntimeError(run.stderr.strip()[-400:])
        names, own, at, skip = {}, collections.Counter(), None, False
        for line in open(out):
            if line.startswith("fn="):
                key, _, word = line[3:].strip().partition(" ")
                at = names.setdefault(key, word)
            elif line.startswith("cfn="):
                key, _, word = line[4:].strip().partition(" ")
                names.setdefault(key, word)
            elif line.startswith("calls="):
                skip = True
            elif line[:1].isdigit() or line[:1] in "+-*":
                if not skip:
                    own[at] += int(line.split()[1]) if len(line.split()) > 1 else 0
                skip = False
    return own


def short(name):
    """A function without the paths of its types' parts."""
    name = re.sub(r"(::h[0-9a-f]{16}|'\d+)+$", "", name)
    name = re.sub(r"<(\w+::)+", "<", re.sub(r"\b(core|alloc|std)::(\w+::)+", "", name))
    return name if len(name) < 90 else name[:87] + "…"


# Instructions of the same runs before what is told in MENDED, counted by this script, same machine and compiler.
BEFORE = {"publishing": 2238.5e6, "pulling": 5757.6e6, "opening": 463.7e6}
MENDED = """What was done. *Publishing*: the hottest part was the search for the places of labels (42 % of it: `reach`, `room_above`). Level lines through a
piece are crossed once for all labels of it, what lies near a level is looked up once, a place is held against the line that was too near last before
all others, and lines to one side are left by two comparisons: 940 million became 280, with the same places, so the same bytes. Streams are packed by
another library (zlib-rs for miniz_oxide; `compress_inner` was 7 %), and kept lay plans are laid out only where a table shows them (their digests were
8 %). *Pulling*: lengths of curves that nobody asks for are not integrated any more (`integral` was 23 %), and crossings are looked for once. *Opening*
gained from both."""


def profile(programs, args):
    """Instructions of publishing, a pull and opening, by function (callgrind, about 60 s)."""
    text = (
        "## Where the time goes\n\nInstructions counted by callgrind, which no load disturbs, on one core. Publishing: every kind of file of `work-smock.ron` in one size of its first view, "
        "from its computed and finished model. Pulling: twenty moves of a handle of the front of `panel-top.ron`, with its 15 derived pieces, in all "
        "sizes: computed, finished and proved after each. Opening: `work-smock.ron`, read, computed, finished and proved.\n\n"
    )
    sums, tables = [], ""
    for name in ["publishing", "pulling", "opening"]:
        own = counted(programs["engine"], name)
        whole = sum(own.values())
        merged = collections.Counter()
        for function, count in own.items():
            merged[short(function or "?")] += count
        was = BEFORE.get(name)
        sums.append([name, f"{was / 1e6:.1f}" if was else "", f"{whole / 1e6:.1f}", f"{(whole / was - 1) * 100:+.1f} %" if was else ""])
        tables += f"\n{name.capitalize()}, the fifteen functions with the largest share of their own:\n\n" + table(
            ["function", "share"], [[f"`{f}`", f"{100 * c / whole:.1f} %"] for f, c in merged.most_common(15)])
    return text + table(["run", "before, million", "now, million", ""], sums) + (f"\n{MENDED}\n" if MENDED else "") + tables


PARTS = [solver, cuts, pages, drafts, nests, waits, growth, profile]

if __name__ == "__main__":
    main()
