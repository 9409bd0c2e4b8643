#!/usr/bin/env python3
"""self_test.py code|book: a change that is wrong is noticed, one without effect is not, and nothing is written to sources.

`code` builds a library of one function with a test of its own. `book` looks at the changes that are made of rules; 77 where
there is no PyYAML."""

import sys
import tempfile
from pathlib import Path

import trial

CMAKE = """cmake_minimum_required(VERSION 3.25)
project(small LANGUAGES CXX)
set(CMAKE_EXPORT_COMPILE_COMMANDS ON)
add_library(small SHARED near.cpp)
add_executable(near_test near_test.cpp)
target_link_libraries(near_test PRIVATE small)
"""
SOURCE = """// Whether a place is near: at most 3 away.
#include "near.h"
bool near(int away) {
    int most = 3;
    while (most < 3) {
        most += 1;
    }
    const char* text = "a < b";
    return away <= most && text != nullptr;
}
"""
TEST = """#include "near.h"
int main() { return near(2) && near(3) && !near(4) ? 0 : 1; }
"""

WRONG = []


def same(what, is_, wanted):
    if is_ != wanted:
        WRONG.append(what)
        print(f"{what}: {is_!r}, wanted {wanted!r}")


def figures():
    # 8 of 10: 49.0 to 94.3 %, by hand from the formula of E. B. Wilson (1927).
    same("Wilson", [round(limit, 1) for limit in trial.wilson(8, 10)], [49.0, 94.3])
    same("Wilson of nothing", trial.wilson(0, 0), (0.0, 100.0))
    same("spread", trial.spread(list(range(10)), 20, 1), list(range(10)))
    few = trial.spread(list(range(1000)), 10, 1)
    same("an even spread", {b - a for a, b in zip(few, few[1:])}, {100})
    same("the same seed, the same changes", trial.spread(list(range(1000)), 10, 1), few)


def code():
    import subprocess

    import mutate_code

    figures()
    same("by one", [mutate_code.by_one(n) for n in ("3", "1'000", "0.5", "1.99")], ["4", "1001", "0.6", "2.00"])
    with tempfile.TemporaryDirectory() as folder:
        root, work = Path(folder) / "small", Path(folder) / "work"
        root.mkdir()
        work.mkdir()
        for name, text in {"CMakeLists.txt": CMAKE, "near.cpp": SOURCE, "near.h": "bool near(int away);\n",
                           "near_test.cpp": TEST}.items():
            (root / name).write_text(text)
        for command in (["cmake", "-S", root, "-B", root / "build", "-G", "Ninja"], ["cmake", "--build", root / "build"]):
            subprocess.run(command, check=True, capture_output=True)
        build = trial.Build(root / "build", work, root, {"near_test": ["near_test"]}, "libsmall.so")
        build.time(["near_test"])

        changed = work / "changed.cpp"
        outcomes = {}
        for change in mutate_code.changes_of("near.cpp", SOURCE):
            changed.write_text(change.apply(SOURCE))
            compiles = build.compile("near.cpp", changed)
            outcomes[change.line, change.kind] = build.noticed(["near_test"]) if compiles else "refused"
        same("changes", outcomes, {
            (4, "a constant by one"): "near_test",
            (5, "a constant by one"): "near_test",
            (5, "< becomes <="): "near_test",
            (6, "+= becomes -="): "",
            (6, "a constant by one"): "",
            (6, "a statement out"): "",
            (9, "<= becomes <"): "near_test",
            (9, "&& becomes ||"): "near_test",
            (9, "!= becomes =="): "near_test",
        })
        same("the source", (root / "near.cpp").read_text(), SOURCE)

        changed.write_text(SOURCE)
        same("nothing changed compiles", build.compile("near.cpp", changed), True)
        same("nothing changed", build.noticed(["near_test"]), "")
        changed.write_text("no C++\n")
        same("what does not compile", build.compile("near.cpp", changed), False)
        changed.write_text(SOURCE.replace("most < 3", "away == 4"))
        build.seconds["near_test"] = -2.3  # leaves less than a second
        same("a loop without end", build.compile("near.cpp", changed) and build.noticed(["near_test"]),
             "near_test, which does not end")


RULE = """- rule: r
  grade: vague
  when: {says: [a, b], kind: grain}
  in_force: {from: 2026-02-28}
  proof: {flags: [{text: A}]}
"""
LIMIT = """- limit: l
  contradicts: {below: 0.50 mm}
"""
METHOD = """- method: m
  likelihood:
    sheet:
      others: {seen: 90, unseen: 10}
"""


def book():
    try:
        import mutate_book
    except ModuleNotFoundError as missing:
        print(f"no {missing.name}")
        sys.exit(77)

    def lines(file, text):
        return [f"{change.line} {change.kind}: {change.becomes}" for change in mutate_book.Finder(file, text).found]

    same("a rule", lines("rules/wording/r.yaml", RULE), [
        "2 grade to its neighbour: grade: unsupported",
        "3 says becomes not_says: when: {not_says: [a, b], kind: grain}",
        "3 says out: when: {kind: grain}",
        "3 an item of says out: when: {says: [b], kind: grain}",
        "3 an item of says out: when: {says: [a], kind: grain}",
        "3 kind out: when: {says: [a, b]}",
        "4 in_force out: ",
        "4 a day by one: in_force: {from: 2026-03-01}",
    ])
    same("a limit", lines("rules/limits/l.yaml", LIMIT), [
        "2 below becomes at_most: contradicts: {at_most: 0.50 mm}",
        "2 a number by its last digit: contradicts: {below: 0.51 mm}",
    ])
    same("a method", lines("rules/methods/m.yaml", METHOD),
         ["4 two likelihoods swapped: others: {seen: 10, unseen: 90}"])
    same("judging", lines("rules/judging.yaml", "guard: 1\n"), ["1 a number by its last digit: guard: 2"])


if __name__ == "__main__":
    {"code": code, "book": book}[sys.argv[1]]()
    sys.exit(1 if WRONG else 0)
