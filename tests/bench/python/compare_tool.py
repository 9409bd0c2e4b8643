#!/usr/bin/env python3
"""tests/bench/python/compare_tool.py BUILD [ROUNDS [LISTINGS]]: Checker.check_lines beside the built tool, on one catalog.

Both read the same file and write into a file; each round runs both, the first of them in turn, so that a slow moment of the
machine meets both. The package is measured in a process that runs already, the tool with its start, which is timed alone too.
Printed: medians, megabytes a second of one core, and the ratio, which is what holds on another machine. Checks first that
both write the same.
"""

import os
import resource
import statistics
import subprocess
import sys
import tempfile

build = os.path.abspath(sys.argv[1])
rounds = int(sys.argv[2]) if len(sys.argv) > 2 else 7
listings = int(sys.argv[3]) if len(sys.argv) > 3 else 30000
sys.path.insert(0, os.path.join(build, "tools", "python"))
import grainside  # noqa: E402

DAY = "2026-11-26"
TOOL = os.path.join(build, "tools", "grainside")
HERE = os.path.dirname(os.path.abspath(__file__))
MAKE = os.path.join(HERE, "..", "..", "..", "tools", "python", "examples", "make_catalog.py")


def run_tool(catalog, out):
    with open(out, "wb") as file:
        command = [TOOL, "check", "--format", "jsonl", "--on", DAY, catalog]
        done = subprocess.run(command, stdout=file, stderr=subprocess.DEVNULL, check=False)
    # 1: there are findings; 2: some of the lines are broken on purpose.
    assert done.returncode in (0, 1, 2), done.returncode


def run_package(catalog, out, checker):
    with open(catalog, "rb") as file:
        checked = checker.check_lines(file.read(), name=catalog)
    with open(out, "wb") as file:
        file.write(checked.records)


def timed(what, *arguments):
    """Seconds of this process and its children on a core, which other work beside them disturbs less than the clock's."""

    def spent():
        both = [resource.getrusage(of) for of in (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN)]
        return sum(of.ru_utime + of.ru_stime for of in both)

    began = spent()
    what(*arguments)
    return spent() - began


def main():
    with tempfile.TemporaryDirectory() as folder:
        catalog, empty, out = (os.path.join(folder, name) for name in ("catalog.jsonl", "empty.jsonl", "out"))
        with open(catalog, "wb") as file:
            subprocess.run([sys.executable, MAKE, str(listings)], stdout=file, check=True)
        with open(empty, "wb"):
            pass
        megabytes = os.path.getsize(catalog) / 1e6
        checker = grainside.Checker(on=DAY)
        run_tool(catalog, out)
        with open(out, "rb") as file:
            of_tool = file.read()
        run_package(catalog, out, checker)
        with open(out, "rb") as file:
            if file.read() != of_tool or not of_tool:
                sys.exit("the package does not write what the tool writes")

        times = {"package": [], "tool": [], "start of the tool": []}
        for turn in range(rounds):
            order = [("package", run_package, (catalog, out, checker)), ("tool", run_tool, (catalog, out))]
            for name, what, arguments in order if turn % 2 else reversed(order):
                times[name].append(timed(what, *arguments))
            times["start of the tool"].append(timed(run_tool, empty, out))
        median = {name: statistics.median(of) for name, of in times.items()}
        print(f"catalog: {megabytes:.1f} MB, {listings} listings; medians of {rounds}")
        for name in ("package", "tool"):
            print(f"{name:8} {median[name]:7.3f} s  {megabytes / median[name]:6.1f} MB/s")
        print(f"start of the tool alone: {median['start of the tool'] * 1000:.0f} ms")
        ratio = median["package"] / (median["tool"] - median["start of the tool"])
        print(f"package / tool by time: {median['package'] / median['tool']:.3f}; without the tool's start: {ratio:.3f}")


main()
