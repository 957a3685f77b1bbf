#!/usr/bin/env python3
"""The check block with other style values, and on ten real bodies: the same independent program, other inputs.

Bodies: ANSUR II (US Army 2012, cleared for public release), verbatim records; which record stands for which row is said in
the notes of examples/bodice-sleeve.ron. They are read from that example, where they stand as persons.

usage: styles.py > styles.json
"""
import json, os, re
import bodice_sleeve as block

HERE = os.path.dirname(os.path.abspath(__file__))
STYLES = [
    dict(bust_ease=120.0, waist_ease=80.0),
    dict(neck_ease=20.0, back_neck_rise=25.0, front_neck_drop=0.0),
    dict(shoulder_ease=0.0, side_shift=0.0),
    dict(back_dart=15.0, front_dart=20.0, back_dart_length=120.0, front_dart_length=95.5),
    dict(cap_ease_back=0.0, cap_ease_front=0.0, arm_ease=80.0),
    dict(arm_ease=260.0),
    dict(bust_ease=40.0, side_shift=-6.0, wrist_ease=100.0, cap_ease_back=25.4, cap_ease_front=19.05),
]

def persons():
    text = open(os.path.join(HERE, '..', '..', 'examples', 'bodice-sleeve.ron')).read()
    text = text[text.index('persons:'):]
    out = {}
    for name, body in re.findall(r'name: "(subject \d+)".*?cells: \[(.*?)\]', text, re.S):
        cells = re.findall(r'\("(\w+)",\s*"([\d.]+) (mm|cm)"\)', body)
        out[name] = {row: float(value) * (10 if unit == 'cm' else 1) for row, value, unit in cells}
    return out

def main():
    chart = json.load(open(os.path.join(HERE, 'chart-women.json')))
    sizes = {s: {r: v[i] for r, v in chart['rows_mm'].items()} for i, s in enumerate(chart['sizes'])}
    styles = [{'style_mm': s, 'expected_mm': {n: block.draft(m, s) for n, m in sizes.items()}} for s in STYLES]
    bodies = {n: block.draft(m, {}) for n, m in persons().items()}
    assert len(bodies) == 10, len(bodies)
    print(json.dumps({'styles': styles, 'persons': bodies}, indent=0))

if __name__ == '__main__':
    main()
