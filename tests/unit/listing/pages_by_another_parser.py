"""pages_by_another_parser.py FOLDER: whether the words that FOLDER/*.txt says are read of FOLDER/*.html stand in the page
as Python's html.parser and json read it. White space is left out of the comparison: where lines begin is our matter.
"""
import json
import re
import sys
from html.parser import HTMLParser
from pathlib import Path

NAME = re.compile(r"\[(?:additionalProperty\.)?(.*)\]$")


class Page(HTMLParser):
    def __init__(self):
        super().__init__(convert_charrefs=True)
        self.words, self.data, self.inside = [], [], ""

    def handle_starttag(self, tag, attributes):
        self.inside = tag if tag != "script" or dict(attributes).get("type") != "application/ld+json" else "data"
        if tag == "meta":
            self.words.append(dict(attributes).get("content") or "")

    def handle_endtag(self, tag):
        self.inside = ""

    def handle_data(self, text):
        if self.inside == "data":
            self.data.append(text)
        elif self.inside not in ("script", "style"):
            self.words.append(text)


def texts_of(value):
    if isinstance(value, str):
        yield value
    for item in value.values() if isinstance(value, dict) else value if isinstance(value, list) else ():
        yield from texts_of(item)


def squeezed(text):
    return re.sub(r"\s+", "", text)


faults, lines = [], 0
pages = sorted(Path(sys.argv[1]).glob("*.html"))
for path in pages:
    bytes_ = path.read_bytes()
    page = Page()
    page.feed(bytes_.decode("cp1252" if b"charset=windows-1252" in bytes_ else "utf-8"))
    page.close()
    words = page.words
    for script in page.data:
        try:
            words += texts_of(json.loads(script))
        except ValueError:
            pass  # a page of the corpus has a broken one
    there = squeezed("".join(words))
    inside = False
    for line in path.with_suffix(".txt").read_text(encoding="utf-8").splitlines():
        if line.startswith("line ") or re.match(r"\d+:\d+ (error|warning) ", line):
            inside = False
        name = NAME.match(line)
        if name:
            inside = True
            line = "" if name[1] in ("name", "description", "material", "category") else name[1]
        if not inside:
            continue
        for piece in re.sub(r"^(- |## )", "", line).split(" | "):
            lines += 1
            if squeezed(piece) not in there:
                faults.append(f"{path.name}: not in the page: {piece!r}")
print("\n".join(faults) or f"{len(pages)} pages, {lines} texts, each stands in its page")
sys.exit(1 if faults or lines < 40 else 0)
