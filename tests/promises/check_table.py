#!/usr/bin/env python3
"""check_table.py [BUILD]: whether every test that README.md names exists; with a build that ran its tests, also how each
promise fared, by CTest's last log. Exit status: 0 all good, 1 a test is missing, did not run or failed."""

import re
import sys
from pathlib import Path

HERE = Path(__file__).resolve().parent
TESTS = HERE.parent


def rows():
    """(promise, what is tried, tests) of each row of the table."""
    for line in (HERE / "README.md").read_text().splitlines():
        cells = [cell.strip() for cell in line.strip().strip("|").split("|")]
        if len(cells) == 3 and "`" in cells[2]:
            yield cells[0], cells[1], re.findall(r"`([^`]+)`", cells[2])


def existing():
    """Every test by the name that the table uses: Suite.Name of GoogleTest, or the name of a CTest case."""
    names = set()
    for file in TESTS.rglob("*.cpp"):
        for suite, name in re.findall(r"^\s*TEST(?:_F|_P)?\((\w+),\s*(\w+)\)", file.read_text(), re.MULTILINE):
            names.add(f"{suite}.{name}")
    for file in TESTS.rglob("CMakeLists.txt"):
        text = file.read_text()
        names.update(re.findall(r"NAME\s+([\w.]+)", text))
        names.update(f"program.{program}" for program in re.findall(r"add_executable\((\w+_test)\b", text))
    names.update(f"fuzz.{file.stem.removeprefix('fuzz_')}" for file in (TESTS / "fuzz").glob("fuzz_*.cpp"))
    return names


def outcomes(build):
    """True, or False for failed, by test."""
    log = (build / "Testing/Temporary/LastTest.log").read_text(errors="replace")
    found = {}
    for state, name in re.findall(r"^\[\s+(OK|FAILED)\s+\] ([\w./]+)", log, re.MULTILINE):
        # 'Rows/Suite.Name/row' of a table of rows: all must hold.
        parts = name.split("/")
        key = next(part for part in parts if "." in part)
        found[key] = found.get(key, True) and state == "OK"
    for name, text in re.findall(r"^\d+/\d+ Test: (\S+)\n(.*?)(?=^\d+/\d+ Test: |\Z)", log, re.MULTILINE | re.DOTALL):
        state = "Test Passed." in text or "Test Pass Reason:" in text
        found[name] = found.get(name, True) and state
    return found


def main():
    known = existing()
    bad = 0
    table = list(rows())
    if len(table) < 10:
        sys.exit("README.md has no table")
    seen = outcomes(Path(sys.argv[1])) if len(sys.argv) > 1 else None
    for promise, tried, tests in table:
        for test in tests:
            if test not in known:
                print(f"README.md: there is no test {test}")
                bad += 1
        if seen is None:
            continue
        missing = [test for test in tests if test not in seen]
        failed = [test for test in tests if seen.get(test) is False]
        bad += len(missing) + len(failed)
        state = "fails: " + ", ".join(failed) if failed else "did not run: " + ", ".join(missing) if missing else "holds"
        print(f"{promise:24} {tried[:70]:70} {state}")
    if seen is None and bad == 0:
        print(f"{len(table)} rows, all tests exist")
    sys.exit(1 if bad else 0)


if __name__ == "__main__":
    main()
