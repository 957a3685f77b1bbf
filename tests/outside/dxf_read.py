#!/usr/bin/env python3
"""Judges DXF files for other programs from outside: dxf_read.py PROGRAM FOLDER NAME:SIZE...

FOLDER has NAME.dxf of examples/NAME.ron in a size. Read with ezdxf (a reader that is not ours), geometry by shapely and svgelements:
- the file is ASCII, R12 (AC1009), and ezdxf's audit finds no error;
- one block for each cut piece, inserted once; every entity lies on a layer of this table, which is from memory of
  ASTM D6673 (number and meaning of the layers: 1 boundary, 2 turn points, 3 curve points, 4 notches, 6 mirror line, 7 grain line,
  8 internal lines, 11 cut-outs, 13 drill holes, 14 sew lines, 15 annotations);
- the boundary is the cut line as `finish --json` tells it in its own words: nowhere inside it, nowhere more than 0.01 mm outside; the
  sew line within 0.01 mm; notches, grain and turn points where they are told;
- every vertex of a boundary has its point on layer 2 or 3.
The same checks are asked of the file with one vertex moved by 0.05 mm, and must fail there.
Prints what was read as JSON. Exits 1 with a line on stderr for each fault.
"""

import json
import math
import subprocess
import sys
from pathlib import Path

import ezdxf
import numpy
import shapely
from shapely.geometry import LineString, Polygon
from svgelements import Path as SvgPath

LAYERS = {"1", "2", "3", "4", "6", "7", "8", "11", "13", "14", "15"}
OUTSIDE = 0.01
# Four decimals in the file.
WRITTEN = 1.5e-4


def dense(text, step=0.3):
    """Points on an SVG path, y up, about so far apart; chords between them are off by less than a thousandth of a millimetre."""
    out = []
    for segment in SvgPath(text):
        kind = type(segment).__name__
        if kind == "Move":
            continue
        if kind in ("Line", "Close"):
            corners = [segment.start, segment.end]
        elif kind == "CubicBezier":
            corners = [segment.start, segment.control1, segment.control2, segment.end]
        else:
            raise SystemExit(f"a {kind} in a line")
        p = numpy.array([[c.x, -c.y] for c in corners])
        count = max(2, math.ceil(numpy.hypot(*numpy.diff(p, axis=0).T).sum() / step))
        t = numpy.arange(count)[:, None] / count
        if len(p) == 2:
            out.append(p[0] + (p[1] - p[0]) * t)
        else:
            out.append((1 - t) ** 3 * p[0] + 3 * (1 - t) ** 2 * t * p[1] + 3 * (1 - t) * t**2 * p[2] + t**3 * p[3])
    return numpy.concatenate(out)


def closed(points):
    return LineString(numpy.concatenate([points, points[:1]]))


def away(points, line):
    """How far each point is from a line."""
    return shapely.distance(shapely.points(points), line)


def vertices(entity):
    return [(v.dxf.location.x, v.dxf.location.y) for v in entity.vertices]


def is_cut(piece):
    """Whether it is told how often it is cut: else it is a block that others are made of."""
    return piece and any(cut["count"] is not None for cut in piece["cuts"])


def judge_block(name, block, told, faults):
    """What is read of a block, and what is wrong with it."""

    def fault(words):
        faults.append(f"{name}: {words}")

    on = lambda kind, layer: [e for e in block if e.dxftype() == kind and e.dxf.layer == layer]
    for entity in block:
        if entity.dxf.layer not in LAYERS:
            fault(f"{entity.dxftype()} on layer {entity.dxf.layer}")
    boundaries = on("POLYLINE", "1")
    if len(boundaries) != 1 or not boundaries[0].is_closed:
        fault("not one closed boundary")
        return {}
    corners = vertices(boundaries[0])
    polygon = Polygon(corners)
    if not polygon.is_valid:
        fault("the boundary crosses itself")
    outline = told["cuts"][0]["outline"] if told["cuts"] else told["stitch"]
    line = dense(outline)
    ring = polygon.exterior
    off = numpy.where(shapely.contains(polygon, shapely.points(line)), 0.0, away(line, ring))
    if off.max() > WRITTEN:
        fault(f"the boundary cuts in by {off.max():.5f} mm at {line[off.argmax()]}")
    far = max(away(corners, closed(line)).max(), away(line, ring).max())
    if far > OUTSIDE + WRITTEN + 0.001:
        fault(f"the boundary is {far:.5f} mm off the cut line")
    points = {(round(p.dxf.location.x, 4), round(p.dxf.location.y, 4)) for layer in "23" for p in on("POINT", layer)}
    if points != {(round(x, 4), round(y, 4)) for x, y in corners}:
        fault("turn and curve points are not the vertices of the boundary")
    sewn = 0.0
    sew = on("POLYLINE", "14")
    if told["cuts"]:
        if len(sew) != 1 or not sew[0].is_closed:
            fault("not one closed sew line")
        else:
            stitch = Polygon(vertices(sew[0])).exterior
            sewn = stitch.length
            true = dense(told["stitch"])
            off = max(away(true, stitch).max(), away(list(stitch.coords), closed(true)).max())
            if off > 0.01 + 0.001:
                fault(f"the sew line is {off:.5f} mm off")
    strokes = [s for n in told["notches"] for s in n["strokes"]]
    wanted = sorted((round(s[0][0], 3), round(-s[0][1], 3)) for s in strokes)
    notches = on("POINT", "4")
    have = sorted((round(n.dxf.location.x, 3), round(n.dxf.location.y, 3)) for n in notches)
    if len(wanted) != len(have) or any(math.dist(a, b) > 0.002 for a, b in zip(wanted, have)):
        fault(f"notches at {have[:3]}, told {wanted[:3]}")
    grain = 0.0
    arrows = on("LINE", "7")
    told_grain = next((c["grain"] for c in told["cuts"] if c["grain"]), None)
    if (told_grain is not None) != (len(arrows) == 1):
        fault(f"{len(arrows)} grain lines")
    elif told_grain:
        head, tail = [(x, -y) for x, y in told_grain]
        start, end = [(p.x, p.y) for p in (arrows[0].dxf.start, arrows[0].dxf.end)]
        grain = math.dist(start, end)
        if math.dist(start, tail) > WRITTEN or math.dist(end, head) > WRITTEN:
            fault("the grain line is another one")
    words = [t.dxf.text for t in block if t.dxftype() == "TEXT"]
    said = dict(w.split(": ", 1) for w in reversed(words) if ": " in w)
    if said.get("Piece Name") != name:
        fault(f"its texts say {said.get('Piece Name')}")
    return {
        "size": said.get("Size", ""),
        "quantity": said.get("Quantity", ""),
        "material": said.get("Material", ""),
        "area": round(polygon.area, 3),
        "sewn": round(sewn, 4),
        "grain": round(grain, 4),
        "notches": len(notches),
        "holes": len(on("POINT", "13")),
        "mirror": len(on("LINE", "6")),
        "inner": len(on("POLYLINE", "8")),
        "turns": len(on("POINT", "2")),
    }


def judge(path, told, faults):
    data = path.read_bytes()
    if not data.isascii():
        faults.append(f"{path.name}: not ASCII")
    drawing = ezdxf.readfile(path)
    if drawing.dxfversion != "AC1009":
        faults.append(f"{path.name}: {drawing.dxfversion}")
    audit = drawing.audit()
    faults += [f"{path.name}: {e.message}" for e in list(audit.errors) + list(audit.fixes)]
    blocks = {}
    inserted = [e.dxf.name for e in drawing.modelspace() if e.dxftype() == "INSERT"]
    own = [b for b in drawing.blocks if not b.name.startswith(("*", "$"))]
    if sorted(b.name for b in own) != sorted(inserted):
        faults.append(f"{path.name}: blocks {sorted(b.name for b in own)}, inserted {sorted(inserted)}")
    by_name = {}
    for block in own:
        name = next(t.dxf.text for t in block if t.dxftype() == "TEXT" and t.dxf.text.startswith("Piece Name: "))
        by_name[name.removeprefix("Piece Name: ")] = block
    if set(by_name) != {n for n, piece in told.items() if is_cut(piece)}:
        faults.append(f"{path.name}: pieces {sorted(by_name)}")
    for name, block in sorted(by_name.items()):
        if name in told:
            blocks[name] = judge_block(name, block, told[name], faults)
    words = [e.dxf.text for e in drawing.modelspace() if e.dxftype() == "TEXT"]
    if "Units: METRIC" not in words:
        faults.append(f"{path.name}: units are not told")
    return {"errors": len(audit.errors), "version": drawing.dxfversion, "blocks": blocks}


def spoiled(path, folder):
    """The same file, one vertex of a boundary moved by 0.05 mm."""
    lines = path.read_text().splitlines()
    at = next(i for i in range(0, len(lines), 2) if lines[i + 1] == "VERTEX")
    lines[at + 5] = f"{float(lines[at + 5]) + 0.05:.4f}"
    out = Path(folder) / "spoiled.dxf"
    out.write_text("\n".join(lines) + "\n")
    return out


def main():
    program, folder, *wanted = sys.argv[1:]
    faults, read = [], {}
    for asked in wanted:
        name, size = asked.split(":")
        done = subprocess.run([program, "finish", f"examples/{name}.ron", "--json", "--size", size], capture_output=True, text=True)
        told = json.loads(done.stdout)[size]
        path = Path(folder) / f"{name}.dxf"
        read[name] = judge(path, told, faults)
        found = []
        judge(spoiled(path, folder), told, found)
        if not found:
            faults.append(f"{name}: a moved vertex was not found")
    print(json.dumps(read, indent=1, sort_keys=True))
    for words in faults:
        print(words, file=sys.stderr)
    sys.exit(1 if faults else 0)


if __name__ == "__main__":
    main()
