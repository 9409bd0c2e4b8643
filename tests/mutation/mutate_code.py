#!/usr/bin/env python3
"""mutate_code.py BUILD FOLDER... [--most N] [--seed S]: would the tests notice an error in the C++ of lib/FOLDER?

One small change at a time: a comparison, && and ||, plus and minus, a constant by one, `!` dropped, true and false
returned, a statement of one line taken out. What does not compile is not counted. Comments, texts, declarations in
headers and lines of the preprocessor stay as they are."""

import re
import sys
import tempfile
from pathlib import Path

import trial

# What notices much in little time comes first.
TESTS = {
    "measure": ["measure_test", "measurement_test", "outcomes", "identify_test", "dossiers_test", "worked_examples_test",
                "evidence_test", "verdict_test"],
    "identify": ["outcomes", "identify_test", "dossiers_test", "worked_examples_test", "verdict_test", "promises_test"],
    "claims": ["as_read", "short_texts", "claims_test", "rule_cases", "corpus", "worked_examples_test", "dossiers_test", "rules_test",
               "verdict_test", "metamorphic_test", "promises_test"],
    "rules": ["as_read", "short_texts", "rules_test", "rule_cases", "corpus", "worked_examples_test", "book_test", "evidence_test",
              "verdict_test", "metamorphic_test", "promises_test"],
}

# Words between spaces: the layout of the sources tells a comparison from a template's bracket, a sum from a sign.
SWAPS = {"<": "<=", "<=": "<", ">": ">=", ">=": ">", "==": "!=", "!=": "==", "&&": "||", "||": "&&", "+": "-", "-": "+",
         "*": "/", "/": "*", "+=": "-=", "-=": "+="}
SWAP = re.compile(r"(?<= )(?:<=|>=|==|!=|&&|\|\||\+=|-=|[<>+*/-])(?=[ \n])")
NUMBER = re.compile(r"(?<![\w.'])\d[\d']*(?:\.\d+)?(?![\w.'])")
NOT = re.compile(r"(?<![\w)\]])!(?=[\w(])")
RETURN = re.compile(r"\breturn (true|false);")
STATEMENT = re.compile(r"(?m)^ +(?!return|using|case|const\b|auto\b)(?:[\w.:\[\]*>()-]+ (?:=|\+=|-=|\*=|\|=|&=) [^\n]*;"
                       r"|[\w.:\[\]*>()-]+(?:\.|->)(?:push_back|emplace_back|insert|erase|pop_back)\([^\n]*\);"
                       r"|(?:\+\+|--)[\w.]+;)$")
LEAVES = re.compile(r"(?m)^( +if \([^\n]*\) (?:return\b[^\n]*|continue|break);)$")
JUMP = re.compile(r"\b(?:continue|break);")


def without_texts(text):
    """As long as `text`, with blanks in place of comments, texts, single characters and lines of the preprocessor."""
    words = re.compile(r'//[^\n]*|/\*.*?\*/|R"(\w*)\(.*?\)\1"|"(?:\\.|[^"\\\n])*"|(?<!\w)\'(?:\\.|[^\'\\])+\'|^#[^\n]*', re.S | re.M)
    return words.sub(lambda found: re.sub(r"[^\n]", " ", found[0]), text)


def by_one(number):
    """The number with its last digit one higher."""
    plain = number.replace("'", "")
    digits = len(plain.partition(".")[2])
    return str(int(plain) + 1) if digits == 0 else f"{float(plain) + 10 ** -digits:.{digits}f}"


def changes_of(file, text):
    """Every change of one source, in the order of their places."""
    bare = without_texts(text)
    found = []

    def add(kind, start, end, put):
        found.append(trial.change_of(file, text, kind, start, end, put))

    for at in SWAP.finditer(bare):
        add(f"{at[0]} becomes {SWAPS[at[0]]}", at.start(), at.end(), SWAPS[at[0]])
    for at in NUMBER.finditer(bare):
        add("a constant by one", at.start(), at.end(), by_one(at[0]))
    for at in NOT.finditer(bare):
        add("! dropped", at.start(), at.end(), "")
    for at in RETURN.finditer(bare):
        add("the opposite returned", at.start(1), at.end(1), "false" if at[1] == "true" else "true")
    for at in STATEMENT.finditer(bare):
        add("a statement out", at.start(), at.end(), ";")
    leaves = [at.span() for at in LEAVES.finditer(bare)]
    for start, end in leaves:
        add("an early way out gone", start, end, ";")
    for at in JUMP.finditer(bare):
        if not any(start <= at.start() < end for start, end in leaves):
            add("a jump out", at.start(), at.end(), ";")
    return sorted((change for change in found if "static_assert" not in change.was), key=lambda change: change.start)


def main():
    parser = trial.parser(__doc__)
    parser.add_argument("folders", nargs="+", choices=sorted(TESTS), metavar="FOLDER", help=", ".join(sorted(TESTS)))
    call = parser.parse_args()
    trial.stop_cleanly()

    texts = {}
    changes = []
    for folder in call.folders:
        mine = []
        for path in sorted((trial.ROOT / "lib" / folder).glob("*.cpp")):
            file = path.relative_to(trial.ROOT).as_posix()
            texts[file] = path.read_text()
            mine += changes_of(file, texts[file])
        changes += trial.chosen(mine, call, call.most // len(call.folders))
    if call.list:
        for change in changes:
            print(f"{change.file}:{change.line}: {change.kind}: {change.was}  ->  {change.becomes}")
        return 0

    outcomes = trial.Outcomes(Path(__file__).with_name("no_effect.jsonl"), call.survivors or call.build / "code_survivors.jsonl")
    with tempfile.TemporaryDirectory() as work:
        build = trial.Build(call.build, work)
        build.time({name: None for folder in call.folders for name in TESTS[folder]})
        for change in changes:
            folder = change.file.split("/")[1]
            source = Path(work) / "changed.cpp"
            source.write_text(change.apply(texts[change.file]))
            if not build.compile(change.file, source):
                outcomes.add(folder, change, "refused")
                continue
            by = build.noticed(TESTS[folder])
            outcomes.add(folder, change, "noticed" if by else "survived", by)
    print(f"\n{outcomes.table()}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
