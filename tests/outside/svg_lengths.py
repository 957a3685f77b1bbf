#!/usr/bin/env python3
"""The sewing lines in SVG files, judged: their length against the edges of the piece as the second evaluator computes them.

usage: svg_lengths.py --program PROGRAM DRAFT.ron...

Read with svgelements in millimetres; the length of each stitch line (the boundary, where a piece has no allowance) against the sum of the
flat lengths of its edges, within 0.05 mm: thousandths of coordinates in a file, on lines of up to two hundred parts. Pieces with
darts, whose mouths are drawn shaped, and drafts with derived pieces, which the second evaluator does not know, are passed over and counted.
"""
import argparse
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ET
from pathlib import Path

from svgelements import Path as SvgPath

from evaluate import outside_value
from second import ron
from second.views import model_of

NEAR = 0.05
NS = {"s": "http://www.w3.org/2000/svg"}


def title(group):
    found = group.find("s:title", NS)
    return found.text if found is not None else ""


def stitch_lines(path):
    """Length of the sewing line of each piece in a file, mm: by letter and name, and by size."""
    root = ET.parse(path).getroot()
    assert root.get("width", "").endswith("mm") and root.get("viewBox").split()[2] == root.get("width")[:-2], "not in mm"
    out = {}
    for size in root.findall("s:g", NS):
        for piece in size.findall("s:g", NS):
            kinds = {title(g): g for g in piece.findall("s:g", NS)}
            group = kinds.get("stitch line", kinds.get("cut line"))
            length = sum(SvgPath(p.get("d")).length(error=1e-4) for p in group.findall("s:path", NS))
            out[title(piece), title(size).removeprefix("size ")] = length
    return out


def judged(program, draft):
    parts = ron.read(draft.read_text(encoding="utf-8"))
    if any(p.get("steps") for p in parts["pieces"]) or parts.get("views"):
        return 0, len(parts["pieces"]), []
    model = model_of(parts)
    plain = {p["name"]: p for p in parts["pieces"] if not (p["darts"] or p["pleats"] or p["tucks"])}
    seen, passed, wrong = 0, 0, []
    with tempfile.TemporaryDirectory() as folder:
        call = [program, "publish", str(draft), "--what", "svg", "--out", folder]
        done = subprocess.run(call, capture_output=True, text=True)
        if done.returncode:
            sys.exit(f"{draft}: {done.stderr}")
        for path in sorted(Path(folder).glob("*.svg")):
            for (name, size), length in stitch_lines(path).items():
                piece = next((p for n, p in plain.items() if name.split(" ", 1)[-1] in (n, n.replace("_", " "))), None)
                if piece is None:
                    passed += 1
                    continue
                edges = [f"flat_length({piece['name']}.{e['name']})" for e in piece["edges"]]
                meant = sum(outside_value(model.cases[size], text) for text in edges)
                seen += 1
                if abs(meant - length) > NEAR:
                    wrong.append(f"{path.name}: {name} in size {size} is {length:.3f} mm around, the draft says {meant:.3f}")
    return seen, passed, wrong


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--program", required=True)
    parser.add_argument("drafts", nargs="+", type=Path)
    args = parser.parse_args()
    bad = total = 0
    for draft in args.drafts:
        seen, passed, wrong = judged(args.program, draft)
        for line in wrong[:10]:
            print(f"{draft}: {line}")
        print(f"{draft.name}: {seen} sewing lines judged, {passed} passed over, {len(wrong)} wrong")
        bad, total = bad + len(wrong), total + seen
    sys.exit(1 if bad or not total else 0)


if __name__ == "__main__":
    main()
