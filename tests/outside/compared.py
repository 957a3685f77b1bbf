#!/usr/bin/env python3
"""Two drafts compared by the program, against the second evaluator (evaluate.py) asked about each of them.

usage: compared.py --generator PATH --program PATH [--from 1] [--to 40]
       compared.py --program PATH OLD.ron NEW.ron
Generated drafts get one formula changed by seed. Every number that evaluate.py finds different must be told with that amount, in that size, within
0.001 mm, and no other number may be told. Exit 1 if not.
"""
import argparse, json, os, random, re, subprocess, sys, tempfile
import evaluate

SAME = 0.001  # the program's limit of what counts as equal, mm
NEAR = 0.0005  # around it either is right


def place(key):
    """How the program calls what a formula of evaluate.py measures: part, name, what of it; None if it lists no such number."""
    if key.startswith('chart.'):
        return 'row', key[6:], 'number'
    if key.startswith('value.'):
        return 'value', key[6:], 'value'
    if key.startswith('length('):
        return None, key[7:-1], 'length'
    if key.startswith('seam.'):
        _, name, what = key.split('.')
        return ('seam', name, 'side one less side two') if what == 'difference' else None
    if key.endswith('.leg'):
        return 'dart', key[:-4], 'leg'
    return None if key.startswith('flat_length') else ('point', key, 'place')


def both(old, new, program):
    """Numbers compared, told and wrong ones between two draft texts."""
    models = [evaluate.model_of(evaluate.ron.read(text)) for text in (old, new)]
    names = []
    try:
        for text in (old, new):
            with tempfile.NamedTemporaryFile('w', suffix='.ron', delete=False) as file:
                file.write(text)
                names.append(file.name)
        run = subprocess.run([program, 'compare', *names, '--json'], capture_output=True, text=True)
        if run.returncode not in (0, 1):
            return 0, 0, [f'exit {run.returncode}: {run.stderr}']
        said = json.loads(run.stdout)
    finally:
        for name in names:
            os.unlink(name)
    told = {}
    for d in said['differences']:
        what = 'length' if d['what'] in ('sewn length', 'length') else d['what']
        part = None if what == 'length' else d['part']
        for size, pair in d['sizes'].items():
            told[part, d['name'], what, size] = pair
    keys = [k for k in evaluate.every_formula(models[0]) if place(k)]
    keys = [k for k in keys if k in set(evaluate.every_formula(models[1]))]
    sizes = [s for s in models[0].cases if s in models[1].cases]
    a, b = (evaluate.table(model, keys, sizes) for model in models)
    count, wrong = 0, []
    for key in keys:
        what = place(key)
        for size in sizes:
            was, now, pair = a[key][size], b[key][size], told.pop((*what, size), None)
            count += 1
            if was is None or now is None:
                if was is not now and not (pair and ('old_missing' if was is None else 'new_missing') in pair):
                    wrong.append(f'{key} in {size}: {was}, {now}, but told {pair}')
                elif was is now and pair:
                    wrong.append(f'{key} in {size}: no value on either side, but told {pair}')
                continue
            lists = [v if isinstance(v, list) else [float(v)] for v in (was, now)]
            amount = [q - p for p, q in zip(*lists)]
            far = sum(v * v for v in amount) ** 0.5
            if pair is None:
                if far > SAME + NEAR:
                    wrong.append(f'{key} in {size}: differs by {amount}, which is not told')
                continue
            got = pair['start_moved'] if isinstance(was, list) else [pair.get('amount')]
            if any(g is None or abs(g - v) > SAME for g, v in zip(got, amount)):
                wrong.append(f'{key} in {size}: {amount}, but told {pair}')
    numbers = ('number', 'value', 'length', 'leg', 'side one less side two', 'place')
    known = {place(k)[1] for k in keys}
    wrong += [f'{k}: told, but asked by nobody' for k in told if k[2] in numbers and k[1] in known and k[0] in (None, 'row', 'value')]
    return count, sum(len(d['sizes']) for d in said['differences']), wrong


def changed(text, seed):
    """The text with one formula changed: a point's moved, or a row's number."""
    dice = random.Random(seed)
    points = list(re.finditer(r'name: "p\d+", at: "([^"]*)"', text))
    cells = list(re.finditer(r'\("\d+", "([^"]*)"\)', text))
    found = dice.choice(points if dice.random() < 0.7 else cells)
    formula = found.group(1)
    other = f'({formula}).right({dice.randint(2, 30)} mm)' if found in points else f'({formula}) * 1.0{dice.randint(1, 9)}'
    return text[:found.start(1)] + other + text[found.end(1):]


def main():
    sys.setrecursionlimit(100_000)
    parser = argparse.ArgumentParser()
    parser.add_argument('files', nargs='*')
    parser.add_argument('--generator')
    parser.add_argument('--program', required=True)
    parser.add_argument('--from', dest='first', type=int, default=1)
    parser.add_argument('--to', dest='last', type=int, default=40)
    options = parser.parse_args()
    count = told = 0
    wrong = []
    if options.files:
        old, new = (open(name, encoding='utf-8').read() for name in options.files)
        count, told, wrong = both(old, new, options.program)
    else:
        for seed in range(options.first, options.last + 1):
            old = subprocess.run([options.generator, '--seed', str(seed)], capture_output=True, text=True, check=True).stdout
            n, t, w = both(old, changed(old, seed), options.program)
            count, told = count + n, told + t
            wrong += [f'seed {seed}: {line}' for line in w]
    for line in wrong[:40]:
        print(line)
    print(f'{count} numbers compared, {told} differences told, {len(wrong)} wrong')
    return 0 if count and told and not wrong else 1


if __name__ == '__main__':
    sys.exit(main())
