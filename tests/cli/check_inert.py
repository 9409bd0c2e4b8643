"""check_inert.py FORM FILE: whether a report holds hostile text as text only, by readers that are not ours.

FORM is html, markdown, csv or json. Every needle on standard input (a JSON list) must be there to be read. Prints what
is wrong and exits with 1; 0 where nothing is.
"""
import csv
import io
import json
import re
import subprocess
import sys
from html.parser import HTMLParser

ALLOWED = set(
    "html head meta title style body a main header footer nav section article div p span ul ol li dl dt dd table caption"
    " thead tbody tr th td mark sup q strong code time figure figcaption svg rect line circle text desc"
    " h1 h2 h3 h4 h5 h6".split())
# Of Markdown made HTML by another program: nothing that fetches, leads away or runs.
ALLOWED_IN_MARKDOWN = set("h1 h2 h3 h4 h5 h6 p ul ol li strong em blockquote table thead tbody tr th td br code".split())
OBEYED = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff]")
faults = []


class Page(HTMLParser):
    def __init__(self, allowed):
        super().__init__(convert_charrefs=True)
        self.allowed, self.words, self.in_style = allowed, [], False

    def handle_starttag(self, tag, attributes):
        self.in_style = tag == "style"
        if tag not in self.allowed:
            faults.append(f"an element <{tag}>")
        for name, value in attributes:
            if name.startswith("on") or name in ("style", "src", "srcset", "action", "formaction", "xlink:href"):
                faults.append(f"an attribute {name}={value!r}")
            if name == "href" and not value.startswith("#"):
                faults.append(f"a link to {value!r}")

    def handle_endtag(self, tag):
        self.in_style = False

    def handle_comment(self, data):
        faults.append(f"a comment {data[:40]!r}")

    def handle_decl(self, decl):
        if decl.lower() != "doctype html":
            faults.append(f"a declaration {decl!r}")

    def handle_pi(self, data):
        faults.append(f"a processing instruction {data[:40]!r}")

    def handle_data(self, data):
        if not self.in_style:
            self.words.append(data)


def words_of_page(text, allowed):
    page = Page(allowed)
    page.feed(text)
    page.close()
    return "".join(page.words)


def words_of_csv(text):
    rows = list(csv.reader(io.StringIO(text, newline=""), strict=True))
    if len({len(row) for row in rows}) != 1:
        faults.append("rows of different length")
    for row in rows:
        for cell in row:
            if re.match(r"\s*[=+\-@\uff1d\uff0b\uff0d\uff20\u2212]", cell):
                faults.append(f"a formula {cell[:40]!r}")
    return "\n".join(cell for row in rows for cell in row)


def texts_of(value):
    if isinstance(value, str):
        yield value
    for item in value.values() if isinstance(value, dict) else value if isinstance(value, list) else ():
        yield from texts_of(item)


form, file = sys.argv[1:]
needles = json.load(sys.stdin)
with open(file, encoding="utf-8", newline="") as stream:
    text = stream.read()
if OBEYED.search(text.replace("\r\n", "\n")):
    faults.append(f"a character that is obeyed: {OBEYED.search(text.replace(chr(13) + chr(10), chr(10)))[0]!r}")
if form == "html":
    words = words_of_page(text, ALLOWED)
elif form == "markdown":
    made = subprocess.run(["cmark-gfm", "--unsafe", "-e", "table", "-e", "autolink", "-e", "strikethrough"],
                          input=text, capture_output=True, text=True, check=True).stdout
    words = words_of_page(made, ALLOWED_IN_MARKDOWN)
elif form == "csv":
    words = words_of_csv(text)
else:
    words = "\n".join(texts_of(json.loads(text)))
for needle in needles:
    if needle not in words:
        faults.append(f"missing: {needle!r}")
print("\n".join(faults))
sys.exit(1 if faults else 0)
