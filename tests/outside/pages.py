#!/usr/bin/env python3
"""Judges pages for home printers from outside: pages.py PROGRAM DRAFT SIZE...

With tools that are not ours: qpdf (structure), pypdf (boxes, layers, text), poppler (pixels), scipy (distances).
- every page has the box of its paper; no pixel is dark outside the margins of 10 mm; no page is blank;
- the marks of the first page, as in print.py: 100 mm and 4 in, across and down;
- pages of one size, joined by nothing but their names (row letter, column number) and the size of a page's part, give the
  drawing back: points of every edge, as `measure` tells them, are looked for in the joined pixels; once one move per
  piece is found, the worst of them must be within 0.1 mm of ink (and half a pixel and half a line);
- with several sizes: layers switched off one by one take away only the ink that is alone with that size, and something.
Source of the papers: ISO 216 (210 x 297 mm), ANSI Y14.1 (8.5 x 11 in); the layout for both is as wide as the one and as
high as the other. At the end the joined pages are judged once more with one page moved by 0.5 mm, and once with the
drawing scaled by 0.99: both must be refused. Exits 0, or 1 with one line for everything that is wrong.
"""

import json
import re
import subprocess
import sys
import tempfile
from pathlib import Path

import numpy
import pypdf
from PIL import Image
from scipy import ndimage, signal

import print as marks

DOTS = 300
MARGIN = 10.0
PAPERS = {"a4": (210.0, 297.0), "letter": (215.9, 279.4), "both": (210.0, 279.4)}
STEPS = 24
# Pixels around a point in which ink is looked for: more than a piece may be moved, and ten times what it may be off.
AROUND = 18
LINE = 0.35
faults = []


def fault(words):
    faults.append(words)
    print(words)


def run(*call):
    done = subprocess.run([str(c) for c in call], capture_output=True, text=True)
    if done.returncode not in (0, 1):
        raise SystemExit(f"{call[0]}: {done.stderr.strip()}")
    return done.stdout


def pixels(path, dots, folder):
    """Darkness of every page, 0 to 1."""
    stem = Path(folder) / "page"
    for old in Path(folder).glob("page*"):
        old.unlink()
    run("pdftoppm", "-r", dots, "-gray", path, stem)
    return [1 - numpy.asarray(Image.open(p), dtype=numpy.float32) / 255 for p in sorted(Path(folder).glob("page*"))]


def names(path):
    """The name of each page but the first, from its text."""
    found = []
    for page in pypdf.PdfReader(path).pages[1:]:
        said = re.search(r"page ([A-Z]+)(\d+) \(\d+ of \d+\)", page.extract_text())
        if not said:
            fault("a page without a name in its text")
            return []
        row = 0
        for letter in said.group(1):
            row = 26 * row + ord(letter) - 64
        found.append((row - 1, int(said.group(2)) - 1))
    if len(set(found)) != len(found):
        fault("two pages of one name")
    return found


def edges_of(program, draft, size):
    """Points of every edge of every piece in a size, mm, as the program measures them."""
    text = Path(draft).read_text()
    pieces = {}
    block = text[text.index("pieces: [") :]
    for piece, body in re.findall(r'name: "(\w+)",\n            letter(.*?)\n        \)', block, re.S):
        edges = body[body.index("edges: [") :]
        pieces[piece] = re.findall(r'name: "(\w+)",\s*from:', edges)
    formulas = [f"{p}.{e}.at({k}/{STEPS})" for p, all_ in pieces.items() for e in all_ for k in range(1, STEPS)]
    told = json.loads(run(program, "measure", draft, *formulas, "--size", size, "--json"))
    out = {}
    for formula, values in told.items():
        # A place inside a dart's mouth has no point.
        if values[size] is not None:
            out.setdefault(formula.split(".")[0], []).append(values[size])
    return {piece: numpy.array(points) for piece, points in out.items()}


def joined(pages, places, tile):
    """The pages' parts beside each other."""
    px = DOTS / 25.4
    columns, rows = max(c for _, c in places) + 1, max(r for r, _ in places) + 1
    whole = numpy.zeros((round(rows * tile[1] * px) + 2, round(columns * tile[0] * px) + 2), dtype=numpy.float32)
    for page, (row, column) in zip(pages, places):
        top, left = round(MARGIN * px), round(MARGIN * px)
        part = page[top : top + round(tile[1] * px), left : left + round(tile[0] * px)]
        y, x = round(row * tile[1] * px), round(column * tile[0] * px)
        whole[y : y + part.shape[0], x : x + part.shape[1]] = numpy.maximum(
            whole[y : y + part.shape[0], x : x + part.shape[1]], part
        )
    return whole


def worst(whole, points):
    """How far the points of a piece lie from ink at the best move, mm: the worst of them."""
    px = DOTS / 25.4
    coarse = 8
    ink = whole > 0.55
    small = ink[: ink.shape[0] // coarse * coarse, : ink.shape[1] // coarse * coarse]
    small = small.reshape(small.shape[0] // coarse, coarse, -1, coarse).any(axis=(1, 3)).astype(numpy.float32)
    at = (points - points.min(axis=0)) * px / coarse
    stamp = numpy.zeros(numpy.ceil(at.max(axis=0)).astype(int)[::-1] + 1, dtype=numpy.float32)
    for x, y in at:
        stamp[int(round(y)), int(round(x))] = 1
    if stamp.shape[0] > small.shape[0] or stamp.shape[1] > small.shape[1]:
        return float("inf")
    fit = signal.fftconvolve(small, stamp[::-1, ::-1], mode="valid")
    y0, x0 = numpy.unravel_index(int(fit.argmax()), fit.shape)
    base = (points - points.min(axis=0)) * px + (x0 * coarse, y0 * coarse)
    near = numpy.clip(numpy.floor(base).astype(int), 0, (ink.shape[1] - 1, ink.shape[0] - 1))
    away, which = distances(ink, near), numpy.arange(len(points))
    best = None
    grid = numpy.arange(-14, 14.01, 0.5)
    for dy in grid:
        ys = numpy.round(base[:, 1] + dy).astype(int) - near[:, 1] + AROUND
        for dx in grid:
            xs = numpy.round(base[:, 0] + dx).astype(int) - near[:, 0] + AROUND
            found = away[which, ys, xs]
            score = (found.max(), found.mean())
            if best is None or score < best:
                best = score
    return best[0] / px


def distances(ink, points):
    """Of each pixel around each point how far the next ink is, in pixels; beyond AROUND pixels it is only known to be that far."""
    wide = 2 * AROUND
    padded, out = numpy.pad(ink, wide), []
    for x, y in points:
        window = padded[y : y + 2 * wide + 1, x : x + 2 * wide + 1]
        far = ndimage.distance_transform_edt(~window) if window.any() else numpy.full(window.shape, float(wide))
        out.append(far[AROUND:-AROUND, AROUND:-AROUND])
    return numpy.array(out)


def judge_joined(whole, edges):
    # Half a line is ink already; what is left is the distance beyond it, and a pixel of rounding.
    limit = 0.1 + 0.5 * 25.4 / DOTS
    return {piece: far for piece, points in edges.items() if (far := worst(whole, points)) > limit}


def outside_margins(page, size):
    px = DOTS / 25.4
    inner = page.copy()
    left, top = round(MARGIN * px), round(MARGIN * px)
    inner[top - 1 : round((size[1] - MARGIN) * px) + 1, left - 1 : round((size[0] - MARGIN) * px) + 1] = 0
    return float(inner.max())


def one_size(program, draft, size, paper, folder):
    out = Path(folder) / paper
    run(program, "publish", draft, "--out", out, "--paper", paper, "--size", size)
    path = next(out.glob("*.pdf"))
    for words in marks.structure(path):
        fault(words)
    page_size = PAPERS[paper]
    for i, page in enumerate(pypdf.PdfReader(path).pages):
        box = [float(s) / 72 * 25.4 for s in (page.mediabox.width, page.mediabox.height)]
        if max(abs(a - b) for a, b in zip(box, page_size)) > 0.001:
            fault(f"{paper}: page {i + 1} is {box} mm")
    pages = pixels(path, DOTS, folder)
    for i, page in enumerate(pages):
        if outside_margins(page, page_size) > 0.02:
            fault(f"{paper}: page {i + 1} has ink outside its margins")
        if (page > 0.5).sum() < 500:
            fault(f"{paper}: page {i + 1} is blank")
    for dark in (pages[0][: round(150 / 25.4 * DOTS), : round(150 / 25.4 * DOTS)],):
        for name, view in (("across", dark), ("down", dark.T)):
            found = list(marks.ticks_apart(view))
            for (label, wanted, near), have in zip(marks.MARKS, found):
                if isinstance(have, str) or abs(have - wanted) > near:
                    fault(f"{paper}: the mark of {label} {name}: {have}")
                else:
                    print(f"{paper}: {label} {name}: {have:.2f} pixels")
            if len(found) < 2:
                fault(f"{paper}: {len(found)} marks {name}")
    return path, pages


def layers(program, draft, sizes, folder):
    out = Path(folder) / "group"
    run(program, "publish", draft, "--out", out, "--paper", "both", *[a for s in sizes for a in ("--size", s)])
    path = next(out.glob("*.pdf"))
    reader = pypdf.PdfReader(path)
    groups = reader.trailer["/Root"]["/OCProperties"]["/OCGs"]
    labels = [g.get_object()["/Name"] for g in groups]
    if labels != [f"size {s}" for s in sizes]:
        fault(f"layers {labels}")

    def drawn(off):
        writer = pypdf.PdfWriter(clone_from=path)
        table = writer.root_object["/OCProperties"]["/D"]
        all_ = writer.root_object["/OCProperties"]["/OCGs"]
        table[pypdf.generic.NameObject("/OFF")] = pypdf.generic.ArrayObject(
            [all_[i] for i, label in enumerate(labels) if label in off]
        )
        changed = Path(folder) / "changed.pdf"
        writer.write(changed)
        return [p > 0.4 for p in pixels(changed, 100, folder)[1:]]

    everything, nothing = drawn([]), drawn(labels)
    for label in labels:
        without, alone = drawn([label]), drawn([other for other in labels if other != label])
        gone, foreign = 0, 0
        for all_, off, own, none in zip(everything, without, alone, nothing):
            taken = all_ & ~off
            near = ndimage.binary_dilation(own & ~none, iterations=2)
            gone += int(taken.sum())
            foreign += int((taken & ~near).sum())
        print(f"layer {label}: {gone} pixels go, {foreign} of them not its own")
        if gone < 200 or foreign > 0:
            fault(f"layer {label}: {gone} pixels go, {foreign} not its own")


def main(program, draft, sizes):
    with tempfile.TemporaryDirectory() as folder:
        for paper in PAPERS:
            path, pages = one_size(program, draft, sizes[0], paper, folder)
            tile = tuple(side - 2 * MARGIN for side in PAPERS[paper])
            places = names(path)
            edges = edges_of(program, draft, sizes[0])
            whole = joined(pages[1:], places, tile)
            off = judge_joined(whole, edges)
            print(f"{paper}: {len(places)} pages joined, {sum(map(len, edges.values()))} points of {len(edges)} pieces")
            for piece, far in off.items():
                fault(f"{paper}: joined pages: {piece} is off by {far:.2f} mm")
            if paper == "both":
                # Checks that cannot fail are none.
                moved = [numpy.roll(p, round(0.5 / 25.4 * DOTS), axis=1) if i == 1 else p for i, p in enumerate(pages[1:])]
                if not judge_joined(joined(moved, places, tile), edges):
                    fault("a page moved by 0.5 mm was not noticed")
                if not judge_joined(whole, {piece: points * 0.99 for piece, points in edges.items()}):
                    fault("a drawing scaled by 0.99 was not noticed")
        if len(sizes) > 1:
            layers(program, draft, sizes, folder)
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1], sys.argv[2], sys.argv[3:]))
