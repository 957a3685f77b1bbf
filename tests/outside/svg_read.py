#!/usr/bin/env python3
"""Judges SVG drawings from outside: svg_read.py PROGRAM FOLDER NAME:SIZE... [--all STEM]

FOLDER has NAME.svg (examples/NAME.ron in a size) and NAME.pdf, the same drawing without its words. Tools that are not ours: the XML
parser of Python, svgelements (lengths), cairosvg (pixels of the SVG), poppler (pixels of the PDF).
- width and height are in mm and equal to the viewBox, so one unit is one millimetre; ids are told once, references lead somewhere;
- size and piece are named groups; the cut line in them has the length and the box of the cut line that `finish --json` tells, within 0.01 mm;
- its pixels are those of the PDF: no ink farther than 0.25 mm from ink of the other (150 dots an inch, 0.17 mm a pixel), both ways. The
  same is asked with one line of the SVG moved by 1 mm, and must fail there.
`all` is a drawing with something of everything: its pixels only. Exits 1 with a line for each fault.
"""

import io
import json
import subprocess
import sys
import xml.etree.ElementTree as ET
from pathlib import Path

import cairosvg
import numpy
from PIL import Image

Image.MAX_IMAGE_PIXELS = None  # a large sheet is no attack
from scipy import ndimage
from svgelements import Path as SvgPath

DOTS = 150
NEAR = 0.25
SVG = "{http://www.w3.org/2000/svg}"
faults = []


def fault(words):
    faults.append(words)
    print(words)


def without_words(root):
    for parent in root.iter():
        for child in list(parent):
            if child.tag == f"{SVG}text":
                parent.remove(child)
    return root


def svg_ink(root):
    data = cairosvg.svg2png(ET.tostring(root), dpi=DOTS, background_color="white")
    return numpy.asarray(Image.open(io.BytesIO(data)).convert("L")) < 160


def pdf_ink(path, folder):
    stem = Path(folder) / "ink"
    subprocess.run(["pdftoppm", "-r", str(DOTS), "-gray", "-singlefile", path, stem], check=True)
    return numpy.asarray(Image.open(f"{stem}.pgm")) < 160


def apart(a, b):
    """How far ink of one is from ink of the other, mm: the worst, both ways."""
    rows, columns = min(a.shape[0], b.shape[0]), min(a.shape[1], b.shape[1])
    a, b = a[:rows, :columns], b[:rows, :columns]
    if not a.any() or not b.any():
        return float("inf")
    worst = max(ndimage.distance_transform_edt(~b)[a].max(), ndimage.distance_transform_edt(~a)[b].max())
    return worst * 25.4 / DOTS


def structure(name, root):
    width, height = root.get("width"), root.get("height")
    box = [float(v) for v in root.get("viewBox").split()]
    if not width.endswith("mm") or not height.endswith("mm") or [float(width[:-2]), float(height[:-2])] != box[2:] or box[:2] != [0, 0]:
        fault(f"{name}: {width} x {height}, viewBox {box}")
    ids = [e.get("id") for e in root.iter() if e.get("id")]
    if len(set(ids)) != len(ids):
        fault(f"{name}: an id twice")
    for e in root.iter():
        target = (e.get("href") or e.get("clip-path") or "").removeprefix("url(").removesuffix(")")
        if target and target.removeprefix("#") not in ids:
            fault(f"{name}: {target} leads nowhere")


def title(element):
    found = element.find(f"{SVG}title")
    return found.text if found is not None else None


def groups(element):
    return {title(g): g for g in element.findall(f"{SVG}g")}


def judge_pieces(name, size, root, told):
    own = groups(root).get(f"size {size}")
    if own is None:
        fault(f"{name}: no group of size {size}")
        return
    pieces = {label.split(" ", 1)[-1]: g for label, g in groups(own).items()}
    wanted = {n for n, piece in told.items() if piece and any(c["count"] is not None for c in piece["cuts"])}
    if set(pieces) != wanted:
        fault(f"{name}: groups {sorted(pieces)}, pieces {sorted(wanted)}")
    for piece in wanted & set(pieces):
        line = groups(pieces[piece]).get("cut line")
        have = SvgPath(line.find(f"{SVG}path").get("d"))
        true = SvgPath(told[piece]["cuts"][0]["outline"])
        lengths = [p.length(error=1e-2, min_depth=3) for p in (have, true)]
        sides = [(p.bbox()[2] - p.bbox()[0], p.bbox()[3] - p.bbox()[1]) for p in (have, true)]
        if abs(lengths[0] - lengths[1]) > 0.01 or max(abs(a - b) for a, b in zip(*sides)) > 0.01:
            fault(f"{name} {piece}: {lengths}, {sides}")


def main():
    program, folder, *wanted = sys.argv[1:]
    for asked in [*wanted, "all:"]:
        name, size = asked.split(":")
        root = ET.parse(Path(folder) / f"{name}.svg").getroot()
        structure(name, root)
        if size:
            done = subprocess.run([program, "finish", f"examples/{name}.ron", "--json", "--size", size], capture_output=True, text=True)
            judge_pieces(name, size, root, json.loads(done.stdout)[size])
        ink = pdf_ink(Path(folder) / f"{name}.pdf", folder)
        far = apart(svg_ink(without_words(root)), ink)
        print(f"{name}: pixels {far:.2f} mm apart at most")
        if far > NEAR:
            fault(f"{name}: the drawings differ by {far:.2f} mm")
        moved = next(e for e in root.iter(f"{SVG}path"))
        moved.set("transform", "translate(1 1)")
        if apart(svg_ink(root), ink) <= NEAR:
            fault(f"{name}: a moved line was not found")
    sys.exit(1 if faults else 0)


if __name__ == "__main__":
    main()
