#!/usr/bin/env python3
"""mutate_book.py BUILD [--most N] [--seed S] [--group GROUP...]: would the tests notice an error in rules/?

One small change at a time, of a copy of rules/: a condition turned to its opposite or dropped, a grade to its neighbour, a
limit by its last digit, a day by one, two likelihoods of a row swapped, a term or an item of a list taken out. Wording
that people read, sources and the examples of a proof stay as they are. What loading refuses is not counted."""

import datetime
import re
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

import yaml

import trial

WORDING = ["as_read", "rule_cases", "corpus", "claims_test", "worked_examples_test", "rules_examine", "rules_test", "book_test",
           "verdict_test"]
EVIDENCE = ["outcomes", "dossiers_test", "worked_examples_test", "book_test", "evidence_test", "identify_test", "verdict_test"]
TESTS = {
    "wording": WORDING,
    "markets": WORDING,
    "vocabulary": ["as_read", "rule_cases", "corpus", "claims_test", "worked_examples_test", "outcomes", "dossiers_test",
                   "rules_test", "verdict_test"],
    "concepts": [*WORDING, "outcomes", "dossiers_test"],
    "methods": EVIDENCE,
    "limits": EVIDENCE,
    "candidates": EVIDENCE,
    "alloys": EVIDENCE,
    "judging": EVIDENCE,
}

OPPOSITE = {"says": "not_says", "called": "not_called", "part": "not_part", "category": "not_category", "marked": "unmarked",
            "above": "at_least", "below": "at_most", "bears_out": "leaves_open"}
OPPOSITE.update({other: one for one, other in OPPOSITE.items() if one != "bears_out"})
# Words in order; one becomes the next, the last the one before it.
ORDERS = {"grade": ["misleading", "unsupported", "vague"],
          "reach": ["phrase", "part-in-sentence", "sentence", "part", "elsewhere", "anywhere"],
          "harm": ["none", "mark", "cut", "destroy"], "worn": ["lowers", "spoils"], "kin": ["open", "apart"]}
CONDITIONS = {"when", "unless", "beside", "unless_beside"}
MAY_GO = {"unless", "unless_beside", "not_claims", "needs", "within", "instead_of", "in_force", "says_nothing", "worn", "kinds",
          "only_if", "usual"}
LISTS = {"claims", "not_claims", "kinds", "parts", "within_parts", "no_part_is", "categories", "bears_out", "rules_out",
         "leaves_open", "is", "words", "nouns", "labels", "before", "after", "names", "adjectives", "as_value", "before_hide",
         "before_material", "before_product", "before_hardware", "with_edge", "with_hardware", "homonyms"}
BOUNDS = {"supports", "contradicts", "implies", "only_if", "usual"}
NUMBERS = {*BOUNDS, "stated", "minutes", "cost", "reliability", "window", "density", "tolerance",
           "factor", "share", "millimetres", "of_total"}
UNTOUCHED = {"proof", "because", "title", "how", "cautions", "sources", "say_instead", "remedy", "outcomes", "name"}


class Finder:
    """Walks the YAML of one file and keeps the changes that its keys call for."""

    def __init__(self, file, text):
        self.file, self.text, self.found = file, text, []
        self.everywhere = file.endswith("judging.yaml")
        node = yaml.compose(text, Loader=yaml.SafeLoader)
        if node is not None:
            self.walk(node, ())

    def add(self, kind, start, end, put):
        self.found.append(trial.change_of(self.file, self.text, kind, start, end, put))

    def put(self, kind, node, text):
        self.add(kind, node.start_mark.index, node.end_mark.index, text)

    def take_out(self, kind, members, at):
        """Takes a member out of a list or mapping in brackets, with its comma; spans are (start, end)."""
        start = members[at - 1][1] if at else members[0][0]
        end = members[at][1] if at else members[1][0]
        self.add(kind, start, end, "\n" * self.text.count("\n", start, end))

    def walk(self, node, path):
        key = path[-1] if path else ""
        if UNTOUCHED & set(path):
            return
        if isinstance(node, yaml.MappingNode):
            self.mapping(node, path, key)
        elif isinstance(node, yaml.SequenceNode):
            conditions = CONDITIONS & set(path) and key not in CONDITIONS
            if node.flow_style and len(node.value) > 1 and (conditions or key in LISTS):
                spans = [(item.start_mark.index, item.end_mark.index) for item in node.value]
                for at in range(len(spans)):
                    self.take_out(f"an item of {key} out", spans, at)
            for item in node.value:
                self.walk(item, path)
        else:
            self.scalar(node, path, key)

    def mapping(self, node, path, key):
        names = {name.value for name, _ in node.value}
        if "likelihood" in path and all(value.value.replace(".", "").isdigit() for _, value in node.value
                                        if isinstance(value, yaml.ScalarNode)) and len(path) == path.index("likelihood") + 3:
            values = [value for _, value in node.value]
            for one, other in zip(values, values[1:]):
                if one.value != other.value:
                    between = self.text[one.end_mark.index : other.start_mark.index]
                    self.add("two likelihoods swapped", one.start_mark.index, other.end_mark.index,
                             other.value + between + one.value)
            return
        conditions = bool(CONDITIONS & set(path))
        spans = [(name.start_mark.index, value.end_mark.index) for name, value in node.value]
        for at, (name, value) in enumerate(node.value):
            other = OPPOSITE.get(name.value)
            if other and other not in names and (conditions or BOUNDS & set(path) or name.value == "bears_out"):
                self.put(f"{name.value} becomes {other}", name, other)
            if (conditions or name.value in MAY_GO) and len(spans) > 1 and (node.flow_style or name.value in MAY_GO):
                if node.flow_style:
                    self.take_out(f"{name.value} out", spans, at)
                elif at:
                    start, end = spans[at][0], len(self.text[: spans[at][1]].rstrip())
                    self.add(f"{name.value} out", start, end, "\n" * self.text.count("\n", start, end))
            self.walk(value, (*path, name.value))

    def scalar(self, node, path, key):
        value = node.value
        if key in ORDERS and value in ORDERS[key]:
            order = ORDERS[key]
            at = order.index(value)
            self.put(f"{key} to its neighbour", node, order[at + 1] if at + 1 < len(order) else order[at - 1])
        elif key in ("from", "until") and re.fullmatch(r"\d{4}-\d\d-\d\d", value):
            day = datetime.date.fromisoformat(value) + datetime.timedelta(1 if key == "from" else -1)
            self.put("a day by one", node, day.isoformat())
        elif value in ("yes", "no"):
            self.put("yes and no", node, "no" if value == "yes" else "yes")
        elif key == "prior":
            self.put("a prior twice as large", node, str(2 * float(value)).removesuffix(".0"))
        elif self.everywhere or NUMBERS & set(path):
            start = node.start_mark.index
            numbers = list(re.finditer(r"(?<![\w.])\d+(?:\.\d+)?", self.text[start : node.end_mark.index]))
            digits = max((len(at[0].partition(".")[2]) for at in numbers), default=0)  # of '0-0.05' the hundredths
            for at in numbers:
                more = f"{float(at[0]) + 10 ** -digits:.{digits}f}"
                self.add("a number by its last digit", start + at.start(), start + at.end(), more)


def group_of(file):
    parts = file.split("/")
    return parts[1] if len(parts) > 2 else parts[1].removesuffix(".yaml")


def main():
    parser = trial.parser(__doc__)
    parser.add_argument("--group", nargs="+", choices=sorted(TESTS), default=sorted(TESTS), help="folders or files of rules/")
    call = parser.parse_args()
    trial.stop_cleanly()

    texts = {path.relative_to(trial.ROOT).as_posix(): path.read_text() for path in sorted(trial.ROOT.glob("rules/**/*.yaml"))}
    changes = []
    for group in call.group:
        mine = [change for file in texts if group_of(file) == group for change in Finder(file, texts[file]).found]
        changes += trial.chosen(mine, call, call.most // len(call.group))
    if call.list:
        for change in changes:
            print(f"{change.file}:{change.line}: {change.kind}: {change.was}  ->  {change.becomes}")
        return 0

    outcomes = trial.Outcomes(Path(__file__).with_name("no_effect.jsonl"), call.survivors or call.build / "book_survivors.jsonl")
    with tempfile.TemporaryDirectory() as work:
        book = Path(work) / "rules"
        shutil.copytree(trial.ROOT / "rules", book)
        build = trial.Build(call.build, work)
        build.time({name: None for group in call.group for name in TESTS[group]})
        for change in changes:
            group = group_of(change.file)
            copy = Path(work) / change.file
            copy.write_text(change.apply(texts[change.file]))
            if loads(call.build.resolve(), book):
                compiled = Path(work) / "rules_embed.inc"
                subprocess.run([call.build.resolve() / "lib/document/grainside_compile_rules", book, compiled], check=True)
                source = "lib/rules/built_in_book.cpp"
                if not build.compile(source, trial.ROOT / source, include=[work]):
                    sys.exit("the book does not compile")
                by = build.noticed(TESTS[group])
                outcomes.add(group, change, "noticed" if by else "survived", by)
            else:
                outcomes.add(group, change, "refused")
            copy.write_text(texts[change.file])
    print(f"\n{outcomes.table()}")
    return 0


def loads(build, book):
    """Whether both halves of the book load: the evidence half is read when a sample is judged."""
    dossier = trial.ROOT / "corpus/demo/watch_strap.yaml"
    for command in (["rules", "list"], ["judge", dossier]):
        if subprocess.run([build / "tools/grainside", *command, "--rules", book], capture_output=True).returncode == 2:
            return False
    return True


if __name__ == "__main__":
    sys.exit(main())
