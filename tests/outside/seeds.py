#!/usr/bin/env python3
"""Generated drafts: the engine's numbers against the second evaluator's (evaluate.py), seed by seed.

usage: seeds.py --generator PATH --program PATH [--from 1] [--to 200] [--broken SHARE] [--views N] [--store seeds.json]
With --store the second evaluator's lengths, values and seams are written to be compared by the tests.
Exit 1 if anything differs by more than 0.001 mm, or is null on one side only.
"""
import argparse, contextlib, io, json, multiprocessing, os, subprocess, sys, tempfile
import evaluate

def one(job):
    seed, options = job
    asked = [options.generator, '--seed', str(seed), '--broken', str(options.broken), '--views', str(options.views)]
    text = subprocess.run(asked, capture_output=True, text=True, check=True).stdout
    model = evaluate.model_of(evaluate.ron.read(text))
    keys = evaluate.every_formula(model)
    sizes = list(model.cases)
    said = io.StringIO()
    with contextlib.redirect_stderr(said):
        mine = evaluate.table(model, keys, sizes)
    with tempfile.NamedTemporaryFile('w', suffix='.ron', delete=False) as file:
        file.write(text)
    try:
        call = [options.program, 'measure', file.name, '--json']
        for size in sizes:
            call += ['--size', size]
        run = subprocess.run(call + ['--'] + keys, capture_output=True, text=True)
        theirs = json.loads(run.stdout) if run.stdout else {}
    finally:
        os.unlink(file.name)
    bad, count, null = [], 0, 0
    for key in keys:
        for size in sizes:
            count += 1
            a, b = mine[key][size], theirs.get(key, {}).get(size, 'missing')
            null += a is None and b is None
            problem = evaluate.differences(a, b, 0.001)
            if problem:
                bad.append(f'seed {seed}, {key} in {size}: evaluate.py {a}, engine {b}: {problem}')
    kept = {k: {s: v if v is None else round(v, 4) for s, v in row.items()} for k, row in mine.items()
            if k.startswith(('value.f', 'length(', 'seam.')) and not k.endswith(('.one', '.two'))}
    return seed, count, null, bad, kept

def main():
    sys.setrecursionlimit(100_000)
    parser = argparse.ArgumentParser()
    parser.add_argument('--generator', required=True)
    parser.add_argument('--program', required=True)
    parser.add_argument('--from', dest='first', type=int, default=1)
    parser.add_argument('--to', dest='last', type=int, default=200)
    parser.add_argument('--broken', type=float, default=0.0)
    parser.add_argument('--views', type=int, default=0)
    parser.add_argument('--store')
    options = parser.parse_args()
    jobs = [(seed, options) for seed in range(options.first, options.last + 1)]
    count = null = 0
    wrong, stored = [], {}
    with multiprocessing.Pool() as pool:
        for seed, n, nothing, bad, kept in pool.imap(one, jobs):
            count, null = count + n, null + nothing
            wrong += bad
            stored[seed] = kept
    for line in wrong[:40]:
        print(line)
    print(f'{len(jobs)} drafts, {count} values compared ({null} null on both sides), {len(wrong)} differ')
    if options.store and not wrong:
        with open(options.store, 'w') as file:
            json.dump(stored, file, separators=(',', ':'))
            file.write('\n')
    return 1 if wrong or count == 0 else 0

if __name__ == '__main__':
    sys.exit(main())
