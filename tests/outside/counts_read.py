"""How often each piece is cut from what, read from every file that the program writes: the same everywhere.

Read with pypdf (labels on wide sheets and on pages), the csv module (cutting list), html.parser (cutting list of the booklet) and ezdxf
(texts of the pieces). What differs is printed and ends in 1.

python counts_read.py PROGRAM DRAFT...
"""

import csv
import html.parser
import pathlib
import re
import subprocess
import sys
import tempfile

import ezdxf
import pypdf

CUT = re.compile(r"cut (\d+)\b((?:(?!cut \d)[^;·])*)")
LABEL = re.compile(r"^([A-Z]+) · ([^·]+?)( · .*)?$")


def plain(name):
    return name.replace("_", " ").strip()


def of_labels(path, names):
    """Counts on labels: {piece: sorted [(material, count)]}. A label begins with letter and name; its lines follow."""
    lines = []
    for page in pypdf.PdfReader(path).pages:
        # Labels side by side may come in one line.
        text = re.sub(r" ?(?<![A-Z])(?=[A-Z]{1,2} · \w)", "\n", page.extract_text().replace("\u00a0", " "))
        lines += [line.strip() for line in text.splitlines()]
    out = {}
    starts = []
    for i, line in enumerate(lines):
        # A long name is broken into lines.
        for more in range(3):
            found = LABEL.match(" ".join(lines[i:i + 1 + more]))
            if found and plain(found.group(2)) in names:
                starts.append((i, plain(found.group(2)), found.group(3) or ""))
                break
    for k, (i, name, rest) in enumerate(starts):
        end = starts[k + 1][0] if k + 1 < len(starts) else len(lines)
        words = " ".join([rest, *lines[i + 1:min(end, i + 16)]])
        found = sorted((material(rest), int(count)) for count, rest in CUT.findall(words))
        # A piece over several pages has its label on one of them, or on each that it begins on.
        out.setdefault(name, set()).add(tuple(found))
    return out


def material(words):
    found = re.search(r"\bfrom (\w+)", words)
    return found.group(1) if found else ""


def of_list(path):
    """Counts of the cutting list: {piece: sorted [(material, count)]}, strips left out, and the sums per material that it tells."""
    out, sums, strips = {}, {}, {}
    rows = list(csv.reader(path.read_text(encoding="utf-8").splitlines()))
    head = rows[0]
    for row in rows[1:]:
        one = dict(zip(head, row))
        if one["unit"] == "note" or not one["cut"]:
            continue
        group = re.sub(r" \((lining|interfacing)\)$", "", one.get("group", ""))
        if one["piece"] == "in all":
            sums[group] = int(one["cut"])
        elif one["how"].startswith("strip"):
            strips[group] = strips.get(group, 0) + int(one["cut"])
        else:
            out.setdefault(plain(one["piece"]), []).append((group, int(one["cut"])))
    return {name: sorted(cuts) for name, cuts in out.items()}, sums, strips


class Booklet(html.parser.HTMLParser):
    """Rows of the table under the heading of the cutting list."""

    def __init__(self):
        super().__init__()
        self.rows, self.row, self.cell, self.heading, self.inside = [], None, None, None, False

    def handle_starttag(self, tag, attrs):
        if tag in ("h2", "h3", "h4"):
            self.heading = ""
        elif tag == "tr" and self.inside:
            self.row = []
        elif tag in ("td", "th") and self.row is not None:
            self.cell = ""

    def handle_endtag(self, tag):
        if tag in ("h2", "h3", "h4"):
            self.inside = self.heading.startswith("Cutting list")
            self.heading = None
        elif tag == "tr" and self.row is not None:
            self.rows.append(self.row)
            self.row = None
        elif tag in ("td", "th") and self.cell is not None:
            self.row.append(self.cell.strip())
            self.cell = None

    def handle_data(self, data):
        if self.heading is not None:
            self.heading += data
        elif self.cell is not None:
            self.cell += data


def of_booklet(path):
    reader = Booklet()
    reader.feed(path.read_text(encoding="utf-8"))
    out, group = {}, ""
    for row in reader.rows[1:]:
        if len(row) == 1:
            group = re.sub(r" \((lining|interfacing)\)$", "", row[0])
        elif row[0] != "in all" and not row[3].startswith("strip") and row[2]:
            out.setdefault(plain(row[0]), []).append((group, int(row[2])))
    return {name: sorted(cuts) for name, cuts in out.items()}


def of_dxf(path):
    """Counts as the texts of each block tell them."""
    out = {}
    for block in ezdxf.readfile(path).blocks:
        texts = [e.dxf.text.replace("\u00a0", " ") for e in block if e.dxftype() == "TEXT"]
        named = [t.split(":", 1)[1].strip() for t in texts if t.upper().startswith("PIECE NAME")]
        if named:
            words = "; ".join(texts)
            out[plain(named[0])] = sorted((material(rest), int(count)) for count, rest in CUT.findall(words))
    return out


def judged(program, draft):
    wrong, seen = [], 0
    with tempfile.TemporaryDirectory() as folder:
        out = pathlib.Path(folder)
        call = [program, "publish", draft, "--out", folder, "--what", "all"]
        done = subprocess.run(call, capture_output=True, text=True)
        if done.returncode:
            sys.exit(f"{draft}: {done.stderr}")
        lists = sorted(out.glob("*-table-cutting-list*.csv"))
        for path in lists:
            stem = path.name.split("-toile-table-")[0]
            listed, sums, strips = of_list(path)
            for group, total in sums.items():
                have = sum(n for cuts in listed.values() for g, n in cuts if g == group) + strips.get(group, 0)
                seen += 1
                if have != total:
                    wrong.append(f"{path.name}: {group} has {have} in all, told {total}")
            booklet = of_booklet(out / f"{stem}-toile-booklet.html")
            seen += len(booklet)
            if booklet != listed:
                wrong.append(f"{stem}: the booklet has {booklet}, the cutting list {listed}")
            names = set(listed)
            others = [p for p in lists if p is not path and p.name.startswith(stem)]
            ours = lambda p: not any(p.name.startswith(o.name.split("-toile-table-")[0] + "-") for o in others)
            for sheet in filter(ours, sorted(out.glob(f"{stem}-*-toile-*.pdf"))):
                if "-tables-" in sheet.name or "-booklet-" in sheet.name:
                    continue
                for name, cuts in of_labels(sheet, names).items():
                    for one in cuts:
                        seen += 1
                        if list(one) != listed[name]:
                            wrong.append(f"{sheet.name}: the label of {name} has {list(one)}, the cutting list {listed[name]}")
                found = set(of_labels(sheet, names))
                if "projector" not in sheet.name and found != names:
                    wrong.append(f"{sheet.name}: no label of {sorted(names - found)}")
            for file in filter(ours, sorted(out.glob(f"{stem}-*-toile-*.dxf"))):
                found = of_dxf(file)
                seen += len(found)
                if found != listed:
                    wrong.append(f"{file.name}: its texts have {found}, the cutting list {listed}")
    return wrong, seen


def main():
    if len(sys.argv) < 3:
        sys.exit(__doc__)
    bad = 0
    for draft in sys.argv[2:]:
        wrong, seen = judged(sys.argv[1], draft)
        for one in wrong[:20]:
            print(f"{draft}: {one}")
        print(f"{draft}: {seen} counts read, {len(wrong)} differ")
        bad += len(wrong) + (seen == 0)
    sys.exit(1 if bad else 0)


if __name__ == "__main__":
    main()
