#!/usr/bin/env python3
"""Which lines and branches of lib/ the tests and the fuzz inputs reach, folder by folder.

usage: tests/fuzz/coverage.py BUILD [--tests REGEX] [--found FOLDER] [--jobs N] [--worst N]

    tests/fuzz/coverage.py build/coverage                                        all tests, fuzz inputs among them
    tests/fuzz/coverage.py build/coverage --tests '^fuzz\\.' --found build/asan/found    the fuzz inputs alone

BUILD is made by tools/cmake/coverage.cmake where it is not there yet; with --tests only the fuzz targets are built, and
what else is there already. --found names the folder in which tests/fuzz/run.py keeps what it found: those inputs are
replayed too. Prints a table in Markdown, then the files with the most lines that nothing reached. Needs llvm-profdata-14
and llvm-cov-14 (package llvm-14).
"""
import argparse
import collections
import json
import os
import pathlib
import subprocess
import sys

ROOT = pathlib.Path(__file__).resolve().parent.parent.parent


def run(*call, **options):
    return subprocess.run([str(word) for word in call], check=True, **options)


def build(call):
    if not (call.build / "build.ninja").exists():
        run("cmake", "-C", ROOT / "tools/cmake/coverage.cmake", "-S", ROOT, "-B", call.build, "-G", "Ninja",
            stdout=subprocess.DEVNULL)
    targets = []
    if call.tests:
        targets = [f"fuzz_{file.stem.removeprefix('fuzz_')}" for file in sorted((ROOT / "tests/fuzz").glob("fuzz_*.cpp"))]
    run("ninja", "-C", call.build, f"-j{call.jobs}", *targets, stdout=subprocess.DEVNULL)


def programs_of(folder):
    """Programs and shared objects that count: those that were linked into `folder` with the library."""
    for file in sorted(folder.rglob("*")):
        if not file.is_file() or not os.access(file, os.X_OK) or "CMakeFiles" in file.parts:
            continue
        with file.open("rb") as stream:
            if stream.read(4) == b"\x7fELF" and not file.name.startswith("make_"):
                yield file


def collect(call):
    profiles = call.build / "profiles"
    profiles.mkdir(exist_ok=True)
    for old in profiles.glob("*.profraw"):
        old.unlink()
    # Processes of one program add to a few files together.
    environment = dict(os.environ, LLVM_PROFILE_FILE=str(profiles / "%2m.profraw"))
    # A test that fails has run all the same; tools/test is what says whether it may.
    subprocess.run(["ctest", "--test-dir", str(call.build), "--parallel", str(call.jobs), "--timeout", "600",
                    *(["-R", call.tests] if call.tests else [])], env=environment, stdout=subprocess.DEVNULL, check=False)
    if call.found:
        for folder in sorted(path for path in call.found.iterdir() if path.is_dir()):
            program = call.build / "tests/fuzz" / f"fuzz_{folder.name}"
            if program.exists() and any(folder.iterdir()):
                run(program, folder, env=environment, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    merged = profiles / "merged.profdata"
    run("llvm-profdata-14", "merge", "-sparse", "-o", merged, *sorted(profiles.glob("*.profraw")))
    return merged


def files_of(call, merged):
    programs = list(programs_of(call.build))
    others = [word for program in programs[1:] for word in ("-object", program)]
    done = run("llvm-cov-14", "export", "-summary-only", f"-instr-profile={merged}", programs[0], *others,
               stdout=subprocess.PIPE, stderr=subprocess.DEVNULL)
    for file in json.loads(done.stdout)["data"][0]["files"]:
        path = pathlib.Path(file["filename"])
        if path.is_relative_to(ROOT / "lib"):
            yield path.relative_to(ROOT / "lib"), file["summary"]


def share(count, covered):
    return f"{covered:,} of {count:,} | {100 * covered / count:.1f} %" if count else "none | "


def report(call, files):
    folders = collections.defaultdict(collections.Counter)
    missed = []
    for path, summary in files:
        for name in (path.parts[0], "all"):
            for kind in ("lines", "branches"):
                folders[name][kind] += summary[kind]["count"]
                folders[name][kind + " covered"] += summary[kind]["covered"]
        missed.append((summary["lines"]["count"] - summary["lines"]["covered"], str(path)))
    print("| Folder | Lines | | Branches | |\n| --- | ---: | ---: | ---: | ---: |")
    for name in sorted(folders, key=lambda folder: (folder == "all", folder)):
        counts = folders[name]
        print(f"| {name} | {share(counts['lines'], counts['lines covered'])} | "
              f"{share(counts['branches'], counts['branches covered'])} |")
    print("\nMost lines that nothing reached:")
    for lines, path in sorted(missed, reverse=True)[:call.worst]:
        print(f"{lines:5} {path}")


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("build", type=pathlib.Path)
    parser.add_argument("--tests", default="", metavar="REGEX", help="only the tests of these names")
    parser.add_argument("--found", type=pathlib.Path, help="what tests/fuzz/run.py found")
    parser.add_argument("--jobs", type=int, default=os.cpu_count() or 1)
    parser.add_argument("--worst", type=int, default=20, help="so many files with the most lines that nothing reached")
    call = parser.parse_args()
    call.build = call.build.resolve()
    build(call)
    report(call, files_of(call, collect(call)))
    return 0


if __name__ == "__main__":
    sys.exit(main())
