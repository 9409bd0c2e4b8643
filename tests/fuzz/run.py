#!/usr/bin/env python3
"""Runs fuzz targets for minutes each, keeps what is new, and writes a table of the runs.

usage: tests/fuzz/run.py BUILD MINUTES [TARGET...] [--jobs N] [--hang SECONDS] [--keep N] [--max-bytes N]
                         [--no-corpus]

    tests/fuzz/run.py build/asan 10                  every target, one after the other
    tests/fuzz/run.py build/asan 60 book forms --jobs 2

BUILD is a build with GRAINSIDE_FUZZ (tools/cmake/asan.cmake). Each target begins from corpus/fuzz/TARGET and from what
earlier runs left in BUILD/found/TARGET, with dictionaries/TARGET.txt. A failing input ends that target's run; it stays as
BUILD/found/TARGET-crash-... and its last lines are printed. Afterwards the inputs that reach what none of the corpus
reaches are looked for: those of at most --max-bytes (600) are copied to corpus/fuzz/TARGET, the --keep (4) best of them a
run, so that the corpus stays small. What the run adds goes to the target's row in README.md: executions, processor
seconds (the fuzzer's own, by resource usage, so that a busy machine does not flatter) and failing inputs over all runs,
the days of the first and the last; features are of the last run.

Exit status: 0 nothing failed; 1 an input failed; 2 a wrong call.
"""
import argparse
import concurrent.futures
import datetime
import hashlib
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

HERE = pathlib.Path(__file__).resolve().parent
ROOT = HERE.parent.parent
README = HERE / "README.md"
TABLE_HEAD = ("| Target | First run | Last run | Executions | Processor seconds | Features | Failing inputs |\n"
              "| --- | --- | --- | ---: | ---: | ---: | ---: |\n")
LIMITS = ["-max_len=4096", "-rss_limit_mb=2048"]


class Run:
    """One target's run and what came of it."""

    def __init__(self, build, what, minutes, hang):
        self.what = what
        self.program = build / "tests/fuzz" / f"fuzz_{what}"
        self.corpus = ROOT / "corpus/fuzz" / what
        self.found = build / "found" / what
        self.minutes = minutes
        self.limits = [*LIMITS, f"-timeout={hang}", f"-report_slow_units={hang}"]
        self.executions = self.features = self.seconds = self.failures = 0
        self.last_lines = ""

    def fuzz(self):
        self.found.mkdir(parents=True, exist_ok=True)
        before = set(self.found.parent.glob(f"{self.what}-*"))
        with tempfile.TemporaryFile() as printed:
            process = subprocess.Popen(
                [self.program, f"-dict={HERE / 'dictionaries' / (self.what + '.txt')}", *self.limits,
                 f"-max_total_time={int(self.minutes * 60)}", "-print_final_stats=1",
                 f"-artifact_prefix={self.found}-", self.found, self.corpus],
                stdout=printed, stderr=subprocess.STDOUT)
            # Of this child alone, whatever runs beside it.
            _, status, usage = os.wait4(process.pid, 0)
            process.returncode = os.waitstatus_to_exitcode(status)
            printed.seek(0)
            output = printed.read().decode("utf-8", "replace")
        self.seconds = usage.ru_utime + usage.ru_stime
        pulses = re.findall(r"^#(\d+)\s.* ft: (\d+)", output, re.M)
        if pulses:
            self.executions, self.features = (int(number) for number in pulses[-1])
        stated = re.search(r"stat::number_of_executed_units: +(\d+)", output)
        if stated:
            self.executions = int(stated[1])
        self.failures = len(set(self.found.parent.glob(f"{self.what}-*")) - before)
        if process.returncode != 0:
            self.failures = max(self.failures, 1)
            self.last_lines = "\n".join(output.splitlines()[-40:])

    def features_of(self):
        """The features that each file reaches: those of the corpus all together, and what was found one by one."""
        with tempfile.TemporaryDirectory() as folder:
            merged = pathlib.Path(folder) / "corpus"
            control = pathlib.Path(folder) / "control"
            shutil.copytree(self.corpus, merged)
            # No limit of memory: the process that merges holds the features of every file, and runs no input.
            subprocess.run([self.program, *self.limits, "-rss_limit_mb=0", "-set_cover_merge=1",
                            f"-merge_control_file={control}", f"-artifact_prefix={folder}/", merged, self.found],
                           capture_output=True, check=False)
            known, found = set(), {}
            if not control.exists():
                return known, found
            # The numbers of all files and of those that were there, then the files, then "FT number feature...".
            lines = control.read_text(errors="replace").splitlines()
            count, there = int(lines[0]), int(lines[1])
            for line in lines[2 + count:]:
                words = line.split()
                if words[0] != "FT":
                    continue
                if int(words[1]) < there:
                    known.update(words[2:])
                else:
                    found[pathlib.Path(lines[2 + int(words[1])])] = set(words[2:])
            return known, found

    def keep(self, most, max_bytes):
        """Copies into the corpus, one after the other, the input that adds most to it."""
        known, found = self.features_of()
        small = {file: features for file, features in found.items() if file.stat().st_size <= max_bytes}
        kept = 0
        while small and kept < most:
            best = max(sorted(small), key=lambda file: len(small[file] - known))
            if small[best] <= known:
                break
            known |= small.pop(best)
            content = best.read_bytes()
            (self.corpus / f"found_{hashlib.sha256(content).hexdigest()[:10]}").write_bytes(content)
            kept += 1
        return kept

    def row(self, before):
        """`before`: the row of the runs before this one, None where there was none."""
        today = datetime.date.today().isoformat()
        first, executions, seconds, failures = today, 0, 0, 0
        if before:
            cells = [cell.strip().replace(",", "") for cell in before.strip().strip("|").split("|")]
            first, executions, seconds, failures = cells[1], int(cells[3]), int(cells[4]), int(cells[6])
        return (f"| {self.what} | {first} | {today} | {executions + self.executions:,} | "
                f"{seconds + round(self.seconds):,} | {self.features:,} | {failures + self.failures} |\n")


def write_rows(runs):
    text = README.read_text()
    start = text.index(TABLE_HEAD) + len(TABLE_HEAD)
    end = start
    rows = {}
    while text.startswith("| ", end):
        line_end = text.index("\n", end) + 1
        rows[text[end:line_end].split()[1]] = text[end:line_end]
        end = line_end
    rows.update({run.what: run.row(rows.get(run.what)) for run in runs})
    README.write_text(text[:start] + "".join(rows[what] for what in sorted(rows)) + text[end:])


def parse_call():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("build", type=pathlib.Path)
    parser.add_argument("minutes", type=float)
    parser.add_argument("targets", nargs="*", metavar="TARGET")
    parser.add_argument("--jobs", type=int, default=1, help="so many targets at the same time")
    parser.add_argument("--hang", type=int, default=20, metavar="SECONDS",
                        help="an input that takes longer fails; more than 20 where other work takes the processor away")
    parser.add_argument("--keep", type=int, default=4, help="so many new inputs a target at most go into the corpus")
    parser.add_argument("--max-bytes", type=int, default=600, help="larger inputs stay out of the corpus")
    parser.add_argument("--no-corpus", action="store_true", help="leave the corpus as it is")
    call = parser.parse_args()
    there = sorted(path.name.removeprefix("fuzz_") for path in (call.build / "tests/fuzz").glob("fuzz_*")
                   if path.is_file() and path.suffix == "")
    unknown = sorted(set(call.targets) - set(there))
    if not there or unknown:
        parser.error(f"no fuzz target {', '.join(unknown) or 'at all'} in {call.build}/tests/fuzz")
    call.targets = call.targets or there
    call.build = call.build.resolve()
    return call


def main():
    call = parse_call()
    runs = [Run(call.build, what, call.minutes, call.hang) for what in call.targets]
    with concurrent.futures.ThreadPoolExecutor(max(1, call.jobs)) as pool:
        for run, _ in zip(runs, pool.map(Run.fuzz, runs)):
            kept = 0 if call.no_corpus or run.failures else run.keep(call.keep, call.max_bytes)
            print(f"{run.what}: {run.executions} executions, {run.seconds:.0f} processor seconds, {run.features} features, "
                  f"{run.failures} failing inputs, {kept} kept", flush=True)
            if run.last_lines:
                print(run.last_lines, flush=True)
    write_rows(runs)
    return 1 if any(run.failures for run in runs) else 0


if __name__ == "__main__":
    sys.exit(main())
