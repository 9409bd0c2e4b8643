"""What mutate_code.py and mutate_book.py share: a change, the built programs that may notice it, counts and their limits.

A change is compiled and linked into a library of its own, in a temporary folder; the test programs of the build load it in
place of theirs. Neither sources nor build are written to, so an interruption leaves nothing behind."""

import argparse
import json
import math
import os
import random
import resource
import shlex
import shutil
import signal
import subprocess
import sys
import time
from dataclasses import asdict, dataclass
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
MOST_MEMORY = 6 << 30  # of a test program, in bytes: a changed loop may never stop asking for more

CMAKE = shutil.which("cmake") or "cmake"
# Programs below BUILD, or with their whole path; {build}, {root} and {work} (temporary) stand for folders. What holds the
# built-in book against the folder it was made from would notice every change of the book, and says nothing about whether one is
# wrong.
PROGRAMS = {
    "measure_test": ["tests/unit/measure/measure_test"],
    "measurement_test": ["tests/published/measurement/measurement_test"],
    "identify_test": ["tests/unit/identify/identify_test"],
    "evidence_test": ["tests/unit/evidence/evidence_test", "--gtest_filter=-BuiltInEvidence.Loads"],
    "claims_test": ["tests/unit/claims/claims_test"],
    "rules_test": ["tests/unit/rules/rules_test", "--gtest_filter=-BuiltInBook.IsTheYamlBook:BuiltInBook.EightThreads*"],
    "verdict_test": ["tests/unit/verdict/verdict_test", "--gtest_filter=-*Hostile*"],
    "rule_cases": ["tests/rules/rule_cases", "--all"],
    "rules_examine": ["tools/grainside", "rules", "examine"],
    "book_test": ["tests/rules/book_test"],
    "dossiers_test": ["tests/dossiers/dossiers_test"],
    "worked_examples_test": ["tests/published/worked_examples_test"],
    "metamorphic_test": ["tests/metamorphic/metamorphic_test"],
    "promises_test": ["tests/promises/promises_test"],
    "as_read": [CMAKE, "-E", "chdir", "{root}", "cmake", "-DPROGRAM={build}/tests/scoring/as_read",
                "-DFOLDER={root}/tests/scoring/as_read", "-DNOW={work}/as_read", "-P", "{root}/tests/scoring/same_as_read.cmake"],
    "short_texts": [CMAKE, "-E", "chdir", "{root}", "cmake", "-DPROGRAM={build}/tests/scoring/short_texts",
                    "-DARGUMENTS=tests/scoring/data/short_words.txt", "-DFILE={root}/tests/scoring/short_texts.txt",
                    "-DNOW={work}/short_texts.txt", "-P", "{root}/tests/support/same_output.cmake"],
    "outcomes": [CMAKE, "-DPROGRAM={build}/tests/dossiers/dossier_outcomes", "-DFILE={root}/tests/dossiers/outcomes.txt",
                 "-DNOW={work}/outcomes.txt", "-P", "{root}/tests/support/same_output.cmake"],
    "corpus": [CMAKE, "-E", "chdir", "{root}", "cmake", "-DSCORE={build}/tests/scoring/score",
               "-DFILE={root}/tests/scoring/disagreements.txt", "-DNOW={work}/disagreements.txt",
               "-P", "{root}/tests/scoring/same_scores.cmake"],
}


@dataclass(frozen=True)
class Change:
    """One small change of a text file: bytes `start` to `end` become `put`. `was` and `becomes` are the line before and after,
    `above` the line above it."""

    file: str
    line: int
    kind: str
    start: int
    end: int
    put: str
    above: str
    was: str
    becomes: str

    def apply(self, text):
        return text[: self.start] + self.put + text[self.end :]

    def name(self):
        """What it is known by wherever its line has moved to."""
        return (self.file, self.above, self.was, self.becomes)


def name_in(row):
    return (row["file"], row["above"], row["was"], row["becomes"])


def change_of(file, text, kind, start, end, put):
    """The change of text[start:end] of `file` (relative to the project) into `put`."""
    first = text.rfind("\n", 0, start) + 1
    last = text.find("\n", end)
    last = len(text) if last < 0 else last
    becomes = text[first:start] + put + text[end:last]
    above = text[:first].rstrip().rpartition("\n")[2]
    return Change(file, text.count("\n", 0, start) + 1, kind, start, end, put,
                  *(" ".join(line.split()) for line in (above, text[first:last], becomes)))


def spread(changes, most, seed):
    """At most `most` of them, each as far from the next as the others are; the seed moves where the first one stands."""
    if most >= len(changes):
        return list(changes)
    step = len(changes) / most
    first = random.Random(seed).random() * step
    return [changes[int(first + number * step)] for number in range(most)]


def wilson(count, of, z=1.959964):
    """Wilson's limits of a share, in percent, at 95 % of confidence (lib/measure/proportion.cpp)."""
    if of == 0:
        return 0.0, 100.0
    p, n = count / of, of
    middle, half = p + z * z / (2 * n), z * math.sqrt(p * (1 - p) / n + z * z / (4 * n * n))
    return 100 * (middle - half) / (1 + z * z / n), 100 * (middle + half) / (1 + z * z / n)


class Build:
    """A build made with tests/mutation/mutation.cmake, and a folder for libraries with one object changed."""

    def __init__(self, build, work, root=ROOT, programs=None, library="lib/libgrainside.so"):
        self.root, self.programs = root, programs or PROGRAMS
        self.build = build.resolve()
        self.work = Path(work)
        entries = json.loads((self.build / "compile_commands.json").read_text())
        self.compiles = {str(Path(entry["file"]).resolve()): entry for entry in entries}
        library = os.path.realpath(self.build / library)
        if not os.path.exists(library):
            sys.exit(f"{build}: no shared library: configure with -C tests/mutation/mutation.cmake, and build")
        asked = ["ninja", "-C", str(self.build), "-t", "commands", "-s", os.path.relpath(library, self.build)]
        line = subprocess.run(asked, check=True, capture_output=True, text=True).stdout
        self.link = [word for word in shlex.split(line[line.index("&&") + 2 : line.rindex("&&")])]
        self.library = self.work / "changed" / Path(os.path.realpath(library)).name
        self.library.parent.mkdir()
        soname = next((word[len("-Wl,-soname,"):] for word in self.link if word.startswith("-Wl,-soname,")), None)
        if soname and soname != self.library.name:
            (self.library.parent / soname).symlink_to(self.library.name)
        self.seconds = {}

    def compile(self, source, changed, include=()):
        """Links the library with `changed` compiled in place of `source`, or says False where it does not compile."""
        entry = self.compiles[str((self.root / source).resolve())]
        words = shlex.split(entry["command"])
        if os.path.basename(words[0]) == "ccache":
            words = words[1:]
        at = words.index("-o")
        of_build, ours = words[at + 1], str(self.work / "changed.o")
        words[at + 1] = ours
        words[words.index("-c") + 1] = str(changed)
        words = [word for word in words if word != "-Werror"]
        words[1:1] = [f"-I{folder}" for folder in include]  # before the build's own, where the built-in book is
        words += ["-iquote", str((self.root / source).parent), "-O0", "-w", "-D_GLIBCXX_ASSERTIONS"]  # as in tools/cmake/asan.cmake
        quick = subprocess.run(words, cwd=entry["directory"], capture_output=True, preexec_fn=bounded)
        if quick.returncode != 0:
            return False
        link = [ours if word == of_build else word for word in self.link]
        if ours not in link:
            sys.exit(f"{source}: {of_build} is not linked by itself: configure with -C tests/mutation/mutation.cmake")
        link[link.index("-o") + 1] = str(self.library)
        return subprocess.run(link, cwd=self.build, capture_output=True).returncode == 0

    def run(self, name, limit):
        """'' where the program sees nothing wrong, else how it noticed."""
        words = [str(self.build / self.programs[name][0]), *self.programs[name][1:]]
        for name_of_folder, folder in (("{build}", self.build), ("{root}", self.root), ("{work}", self.work)):
            words = [word.replace(name_of_folder, str(folder)) for word in words]
        environment = dict(os.environ, GTEST_FAIL_FAST="1", GTEST_BRIEF="1", LC_ALL="C.UTF-8")
        if self.library.exists():
            environment["LD_LIBRARY_PATH"] = str(self.library.parent)
        process = subprocess.Popen(words, cwd=self.work, env=environment, stdin=subprocess.DEVNULL,
                                   stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
                                   start_new_session=True, preexec_fn=bounded)
        try:
            status = process.wait(limit)
        except subprocess.TimeoutExpired:
            return f"{name}, which does not end"
        finally:
            if process.poll() is None:
                os.killpg(process.pid, signal.SIGKILL)
                process.wait()
        return "" if status == 0 else name if status > 0 else f"{name}, which ends by signal {-status}"

    def time(self, names):
        """How long each takes with nothing changed; what fails then cannot tell anything."""
        for name in names:
            began = time.monotonic()
            if self.run(name, 600):
                sys.exit(f"{name} fails with nothing changed")
            self.seconds[name] = time.monotonic() - began

    def noticed(self, names):
        """Which of the programs, in this order, notices first; '' where none does."""
        for name in names:
            how = self.run(name, 10 + 4 * self.seconds[name])
            if how:
                return how
        return ""


def bounded():
    resource.setrlimit(resource.RLIMIT_AS, (MOST_MEMORY, MOST_MEMORY))
    resource.setrlimit(resource.RLIMIT_CORE, (0, 0))


class Outcomes:
    """Counts by group: changes tried, refused before any test ran, without effect (the list), noticed, survived."""

    def __init__(self, list_file, survivors_file):
        rows = [json.loads(line) for line in list_file.read_text().splitlines() if line.strip()]
        self.no_effect = {name_in(row): row["why"] for row in rows}
        self.to = open(survivors_file, "w")
        self.groups = {}

    def add(self, group, change, outcome, by=""):
        counts = self.groups.setdefault(group, {"refused": 0, "no effect": 0, "noticed": 0, "survived": 0})
        if outcome == "survived" and change.name() in self.no_effect:
            outcome = "no effect"
        counts[outcome] += 1
        if outcome == "survived":
            print(json.dumps(asdict(change)), file=self.to, flush=True)
        shown = f" by {by}" if by else ""
        print(f"{outcome}{shown}: {change.file}:{change.line}: {change.kind}: {change.was}  ->  {change.becomes}", flush=True)

    def table(self):
        """Lines of Markdown; the score is noticed / (noticed + survived)."""
        total = {name: sum(counts[name] for counts in self.groups.values()) for name in
                 ("refused", "no effect", "noticed", "survived")}
        lines = ["| folder | refused | no effect | noticed | survived | score | 95 % limits |",
                 "|---|---:|---:|---:|---:|---:|---|"]
        for group, counts in [*sorted(self.groups.items()), ("all", total)]:
            of = counts["noticed"] + counts["survived"]
            low, high = wilson(counts["noticed"], of)
            score = f"{100 * counts['noticed'] / of:.0f} %" if of else "-"
            lines.append(f"| {group} | {counts['refused']} | {counts['no effect']} | {counts['noticed']} | "
                         f"{counts['survived']} | {score} | {low:.0f} to {high:.0f} % |")
        return "\n".join(lines)


def parser(text):
    """The arguments that both scripts take."""
    made = argparse.ArgumentParser(description=text, formatter_class=argparse.RawDescriptionHelpFormatter)
    made.add_argument("build", type=Path, help="a build folder, configured with -C tests/mutation/mutation.cmake and built")
    made.add_argument("--most", type=int, default=60, help="try at most so many changes, as many of each folder, evenly spread (default: 60)")
    made.add_argument("--seed", type=int, default=1, help="where the spread begins (default: 1)")
    made.add_argument("--again", type=Path, help="try the changes of this file of survivors, and no others")
    made.add_argument("--survivors", type=Path, help="write what survives here, as JSON Lines")
    made.add_argument("--list", action="store_true", help="print the changes and try none")
    return made


def chosen(changes, call, most):
    """Those that the call asks for, at most so many. Lines may have moved since a file of survivors was written; their texts count."""
    if not call.again:
        return spread(changes, most, call.seed)
    wanted = {name_in(json.loads(line)) for line in call.again.read_text().splitlines() if line.strip()}
    return [change for change in changes if change.name() in wanted]


def stop_cleanly():
    """A request to end leaves through `finally` and removes the temporary folder."""
    signal.signal(signal.SIGTERM, lambda *_: sys.exit(130))
