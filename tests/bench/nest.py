#!/usr/bin/env python3
"""The packer against a published optimiser, on public instances: the same machine, time and number of threads, one after the other.

usage: tests/bench/nest.py FOLDER [--seconds 60] [--seeds 1,2,3] [--threads 1] [--instances swim,shirts] [--program PATH] [--ours-only]

FOLDER holds the instances as JSON (see examples/nest_instances.rs). The other is spyrrow 0.9, a package for Python that wraps the optimiser
of Gardeyn, Vanden Berghe and Wauters (arXiv:2509.13329, MIT); nothing of it is in the program. What the packer gives is checked with
shapely: every piece there, in the strip, in a turn that is allowed, no two with more in common than a hundredth of a mm (at a strip of
1500 mm) along their outline. Needs shapely and spyrrow. Exits 1 if a layout is wrong, or the mean is below 98 % of the other's.
"""
import argparse
import json
import math
import pathlib
import subprocess
import sys
import time

from shapely.affinity import affine_transform
from shapely.geometry import Polygon
from shapely.strtree import STRtree

ROOT = pathlib.Path(__file__).resolve().parents[2]
# Densities of the best layouts known to us, per cent: Gardeyn et al., Table 3 (its layouts, measured again with shapely).
BEST = dict(albano=89.82, blaz1=86.22, dagli=90.17, fu=92.39, jakobs1=89.24, jakobs2=87.72, mao=86.87, marques=92.01, shapes0=69.98,
            shapes1=76.72, shirts=90.92, swim=79.83, trousers=92.61)
ASKED = "swim,shirts,trousers,albano,dagli,marques,mao"
GOAL = 0.98
WIDE = 1500.0
DEEP = 0.01


def turns(item):
    if "allowed_orientations" in item:
        return item["allowed_orientations"]
    rotation = item.get("orientation", {}).get("rotation", {})
    return {"discrete": rotation.get("angles"), "none": [0]}.get(rotation.get("mode"))


def outline(item):
    points = [tuple(p) for p in item["shape"]["data"]]
    return points[:-1] if points[0] == points[-1] else points


def placed(item, piece):
    quarter = piece["turned"] / 90
    if quarter == int(quarter):
        cos, sin = [(1, 0), (0, 1), (-1, 0), (0, -1)][int(quarter) % 4]
    else:
        cos, sin = math.cos(math.radians(piece["turned"])), math.sin(math.radians(piece["turned"]))
    over = -1 if piece["mirrored"] else 1
    return affine_transform(Polygon(outline(item)), [cos, -sin * over, sin, cos * over, piece["x"], piece["y"]])


def faults(instance, told):
    """What is wrong with a layout that the program printed; its length is measured anew."""
    items, height = instance["items"], instance["strip_height"]
    deep = DEEP * height / WIDE
    found, pieces = [], told["pieces"]
    for i, item in enumerate(items):
        count = sum(p["item"] == i for p in pieces)
        if count != item["demand"]:
            found.append(f"item {i}: {count} of {item['demand']}")
    for piece in pieces:
        allowed = turns(items[piece["item"]])
        if allowed is not None and piece["turned"] % 360 not in [a % 360 for a in allowed]:
            found.append(f"item {piece['item']} is turned by {piece['turned']}")
    shapes = [placed(items[p["item"]], p) for p in pieces]
    x0, y0 = min(s.bounds[0] for s in shapes), min(s.bounds[1] for s in shapes)
    x1, y1 = max(s.bounds[2] for s in shapes), max(s.bounds[3] for s in shapes)
    if x0 < -deep or y0 < -deep or y1 > height + deep or abs(x1 - told["length"]) > deep:
        found.append(f"it reaches from {x0}, {y0} to {x1}, {y1}; told {told['length']} x {height}")
    tree = STRtree(shapes)
    for i, shape in enumerate(shapes):
        for j in (int(j) for j in tree.query(shape) if j > i):
            common = shape.intersection(shapes[j])
            if common.area > deep * min(shape.length, shapes[j].length) or not common.buffer(-deep).is_empty:
                found.append(f"{i} and {j} have {common.area} in common")
    return found


def ours(args, path, seed):
    command = [args.program, str(path), "--seconds", str(args.seconds), "--seed", str(seed), "--threads", str(args.threads), "--layout"]
    run = subprocess.run(command, capture_output=True, text=True)
    if run.returncode:
        sys.exit(f"{' '.join(command)}: {run.stderr}")
    return json.loads(run.stdout)


def theirs(args, instance, seed):
    import spyrrow

    items = [
        spyrrow.Item(str(i), [(float(x), float(y)) for x, y in outline(item)], demand=item["demand"],
                     allowed_orientations=None if turns(item) is None else [float(a) for a in turns(item)])
        for i, item in enumerate(instance["items"])
    ]
    config = spyrrow.StripPackingConfig(early_termination=False, total_computation_time=int(args.seconds), num_workers=args.threads, seed=seed)
    begun = time.monotonic()
    found = spyrrow.StripPackingInstance("asked", strip_height=instance["strip_height"], items=items).solve(config)
    return found.width, time.monotonic() - begun


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("folder", type=pathlib.Path)
    parser.add_argument("--seconds", type=float, default=60)
    parser.add_argument("--seeds", default="1,2,3")
    parser.add_argument("--threads", type=int, default=1)
    parser.add_argument("--instances", default=ASKED)
    parser.add_argument("--program", default=str(ROOT / "target/release/examples/nest_instances"))
    parser.add_argument("--ours-only", action="store_true")
    args = parser.parse_args()
    wrong, means = [], []
    print(f"{'instance':<10}{'seed':>5}{'ours':>8}{'theirs':>8}{'best':>8}{'ratio':>8}{'s':>7}{'s':>7}{'M tries':>9}", flush=True)
    for name in args.instances.split(","):
        path = args.folder / f"{name}.json"
        instance = json.loads(path.read_text())
        area = sum(Polygon(outline(i)).area * i["demand"] for i in instance["items"])
        rows = []
        for seed in (int(s) for s in args.seeds.split(",")):
            told = ours(args, path, seed)
            bad = faults(instance, told) + ([] if told["valid"] else ["its own check says no"])
            wrong += [f"{name}, seed {seed}: {b}" for b in bad]
            own = 100 * area / (told["length"] * instance["strip_height"])
            width, took = (math.nan, math.nan) if args.ours_only else theirs(args, instance, seed)
            other = 100 * area / (width * instance["strip_height"])
            rows.append((own, other))
            print(f"{name:<10}{seed:>5}{own:>8.2f}{other:>8.2f}{BEST.get(name, math.nan):>8.2f}{own / other:>8.4f}"
                  f"{told['seconds']:>7.1f}{took:>7.1f}{told['evaluations'] / 1e6:>9.1f}{'  WRONG' if bad else ''}", flush=True)
        own, other = (sum(r[k] for r in rows) / len(rows) for k in (0, 1))
        means.append((own, other))
        print(f"{name:<10}{'mean':>5}{own:>8.2f}{other:>8.2f}{BEST.get(name, math.nan):>8.2f}{own / other:>8.4f}", flush=True)
    own, other = (sum(m[k] for m in means) / len(means) for k in (0, 1))
    print(f"{'all':<10}{'mean':>5}{own:>8.2f}{other:>8.2f}{'':>8}{own / other:>8.4f}")
    for line in wrong:
        print(line)
    sys.exit(1 if wrong or own / other < GOAL else 0)


if __name__ == "__main__":
    main()
