#!/usr/bin/env python3
"""Judges a wide sheet from outside: print.py FILE.pdf TEXT...

With tools that are not ours: qpdf (structure), pypdf (page box, text, fonts), poppler (text once more, pixels).
The scale is measured on the rasterised page: at 300 dots an inch the marks of 100 mm must be 1181 +- 1 pixels
(100 / 25.4 * 300 = 1181.1) and those of 4 in 1200 +- 1 from the centre of one end tick to the centre of the other,
across and down. Where they are is found from the pixels of the top left corner alone. TEXT: what must be found as
text on the page, at least one (the names of the pieces).

At the end the same file, scaled by 0.99 within an unchanged page, must be refused: a check that cannot fail is none.
Exits 0, or 1 with one line for everything that is wrong.
"""

import re
import subprocess
import sys
import tempfile
from pathlib import Path

import numpy
import pypdf
from PIL import Image

DOTS = 300
CORNER_MM = 150  # the marks lie in the top left corner of this size
MARKS = [("100 mm", 1181, 1), ("4 in", 1200, 1)]
Image.MAX_IMAGE_PIXELS = None


def mm(value):
    """Pixels of a length."""
    return value / 25.4 * DOTS


def run(*call):
    done = subprocess.run(call, capture_output=True, text=True)
    return done.returncode, done.stdout, done.stderr


def structure(path):
    code, out, err = run("qpdf", "--check", str(path))
    if code != 0:
        yield f"qpdf --check: {(out + err).strip()}"


def page_and_text(path, wanted):
    reader = pypdf.PdfReader(path)
    if len(reader.pages) != 1:
        yield f"{len(reader.pages)} pages, expected 1"
    page = reader.pages[0]
    if "/UserUnit" in page:
        yield "the page has a UserUnit"
    if not (reader.metadata and reader.metadata.title):
        yield "the document has no title"
    text = page.extract_text()
    box = [float(side) / 72 * 25.4 for side in (page.mediabox.width, page.mediabox.height)]
    said = re.search(r"Page (\d+) x (\d+) mm \((\d+\.\d\d) x (\d+\.\d\d) in\)", text)
    if not said:
        yield f"no page size in the header; text begins {text[:200]!r}"
    else:
        for name, have, in_mm, in_in in zip(("wide", "high"), box, said.groups()[:2], said.groups()[2:]):
            if abs(have - float(in_mm)) > 0.001 or abs(have / 25.4 - float(in_in)) > 0.00501:
                yield f"the page is {have:.4f} mm {name}, the header says {in_mm} mm and {in_in} in"
    code, poppler, err = run("pdftotext", "-raw", str(path), "-")
    if code != 0:
        yield f"pdftotext: {err.strip()}"
    for reader_name, found in (("pypdf", text), ("poppler", poppler)):
        for word in [*wanted, "100 mm", "4 in", "100 %", "no seam allowance"]:
            # Lines of a header or a label may be broken at a space.
            if word.split() and " ".join(word.split()) not in " ".join(found.split()):
                yield f"{reader_name} finds no text {word!r}"
    fonts = page["/Resources"]["/Font"]
    if not fonts:
        yield "no fonts, so no text that can be selected"
    for name, font in fonts.items():
        descriptor = font.get_object()["/DescendantFonts"][0].get_object()["/FontDescriptor"].get_object()
        if not {"/FontFile", "/FontFile2", "/FontFile3"} & set(descriptor):
            yield f"font {name} is not embedded"
        if "/ToUnicode" not in font.get_object():
            yield f"font {name} has no way back to letters"
    code, listed, err = run("pdffonts", str(path))
    rows = [line.split() for line in listed.splitlines()[2:]]
    # The columns from the right: object number (2), unicode, subset, embedded.
    if code != 0 or not rows or any(row[-5:-2] != ["yes", "yes", "yes"] for row in rows):
        yield f"pdffonts: not embedded, subset and with unicode: {listed} {err}"


def corner(path):
    """Darkness of the top left corner, 0 to 1."""
    side = str(round(mm(CORNER_MM)))
    with tempfile.TemporaryDirectory() as folder:
        stem = f"{folder}/page"
        code, _, err = run(
            *("pdftoppm", "-r", str(DOTS), "-gray", "-singlefile"),
            *("-x", "0", "-y", "0", "-W", side, "-H", side, str(path), stem),
        )
        if code != 0:
            raise SystemExit(f"pdftoppm: {err.strip()}")
        return 1 - numpy.asarray(Image.open(f"{stem}.pgm"), dtype=float) / 255


def longest_run(row):
    """Start and length of the longest stretch of dark pixels."""
    edges = numpy.flatnonzero(numpy.diff(numpy.concatenate(([0], row.astype(int), [0]))))
    starts, ends = edges[::2], edges[1::2]
    if len(starts) == 0:
        return 0, 0
    longest = int(numpy.argmax(ends - starts))
    return int(starts[longest]), int(ends[longest] - starts[longest])


def groups(numbers):
    """Runs of consecutive numbers."""
    return [g for g in numpy.split(numbers, numpy.flatnonzero(numpy.diff(numbers) > 1) + 1) if len(g)]


def ticks_apart(dark):
    """For each level bar of at least 90 mm, from the top: distance of the centres of its end ticks, or a complaint."""
    runs = [longest_run(row > 0.4) for row in dark]
    rows = numpy.array([i for i, (_, length) in enumerate(runs) if length > mm(90)], dtype=int)
    for bar in groups(rows):
        start, length = runs[int(bar[len(bar) // 2])]
        centres = []
        # Beside the bar, where only ticks are: the profile of columns, above and below it.
        near, far, reach = round(mm(0.6)), round(mm(2.4)), round(mm(2))
        if bar[0] < far or bar[-1] + far >= len(dark) or start < reach:
            yield "a bar too near to the edge of the corner"
            continue
        bands = [dark[bar[0] - far : bar[0] - near], dark[bar[-1] + near : bar[-1] + far]]
        for end in (start, start + length):
            columns = slice(end - reach, end + reach)
            profile = numpy.minimum(*(band[:, columns].mean(axis=0) for band in bands))
            if profile.max() < 0.3:
                break
            profile = numpy.where(profile > 0.1, profile, 0)
            places = numpy.arange(end - reach, end - reach + len(profile))
            centres.append(float((profile * places).sum() / profile.sum()))
        yield centres[1] - centres[0] if len(centres) == 2 else "a bar without two end ticks"


def scale(path):
    dark = corner(path)
    for way, seen in (("across", dark), ("down", dark.T)):
        found = list(ticks_apart(seen))
        if len(found) != len(MARKS):
            yield f"{len(found)} marks {way} found, expected {len(MARKS)}"
            continue
        for (name, expected, limit), apart in zip(MARKS, found):
            if isinstance(apart, str):
                yield f"{name} {way}: {apart}"
            elif abs(apart - expected) > limit:
                yield f"{name} {way}: {apart:.2f} pixels, expected {expected} +- {limit}: the page is not in true size"
            else:
                print(f"{name} {way}: {apart:.2f} pixels (expected {expected} +- {limit})")


def scaled_copy(path, target, factor):
    reader = pypdf.PdfReader(path)
    writer = pypdf.PdfWriter()
    page = writer.add_page(reader.pages[0])
    # About the top left corner, so that the marks stay in view.
    down = float(page.mediabox.height) * (1 / factor - 1)
    page.add_transformation(pypdf.Transformation().translate(0, down).scale(factor))
    writer.write(target)


def main():
    if len(sys.argv) < 3:
        raise SystemExit("call: print.py FILE.pdf TEXT...")
    path, wanted = Path(sys.argv[1]), sys.argv[2:]
    if not path.is_file():
        raise SystemExit(f"{path} is not there")
    faults = [*structure(path), *page_and_text(path, wanted), *scale(path)]
    if not faults:
        with tempfile.TemporaryDirectory() as folder:
            wrong = Path(folder) / "scaled.pdf"
            scaled_copy(path, wrong, 0.99)
            noticed = list(scale(wrong))
            if len(noticed) != 2 * len(MARKS):
                faults.append(f"this check is broken: of a page scaled by 0.99 it notices only {noticed}")
    for fault in faults:
        print(f"{path}: {fault}", file=sys.stderr)
    if faults:
        raise SystemExit(1)
    print(f"{path}: in true size, text and fonts as they should be; a page scaled by 0.99 is noticed")


if __name__ == "__main__":
    main()
