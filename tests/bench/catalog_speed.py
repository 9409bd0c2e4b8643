#!/usr/bin/env python3
"""catalog_speed.py BUILD [--megabytes 200] [--rounds 5]: the built tool on a whole catalog, beside programs that find words.

JSON Lines in, findings out, as a user runs it. Peers on the same file in the same rounds: `grep -c -i -w -F -f terms` in a
UTF-8 locale and `rg -o -i -w -F -f terms`, with four lists of terms: the words of the catalog's own gaps, 700 terms of
the rule book drawn with a fixed seed, 700 of which the catalog's own are some, and all English terms of the book, which
is what the tool looks for. A peer that takes longer than a minute on the whole file is given the first megabytes of it, and says
so. Checks first that one thread and two write the same bytes, that every listing has its closing line, and that the
peers find something. What is printed as a ratio holds on another machine; MB/s do not."""

import argparse
import itertools
import random
import re
import subprocess
import sys
import tempfile
from pathlib import Path

from measured_run import interleaved, median, run, spread

ROOT = Path(__file__).resolve().parents[2]


def book_terms(tool):
    """The English terms of the built-in book that stand for a concept, as the vocabulary files write them."""
    import yaml

    terms = set()
    for file in sorted((ROOT / "rules/vocabulary/en").glob("*.yaml")):
        for entry in yaml.safe_load(file.read_text()):
            if "says" in entry:
                for key in ("words", "as_value"):
                    terms.update(word for word in entry.get(key) or [] if isinstance(word, str))
    return sorted(terms)


def first_bytes(catalog, size, to):
    with open(catalog, "rb") as source, open(to, "wb") as target:
        text = source.read(size)
        target.write(text[: text.rfind(b"\n") + 1])
    return to


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("build", type=Path)
    parser.add_argument("--megabytes", type=int, default=200)
    parser.add_argument("--rounds", type=int, default=5)
    call = parser.parse_args()
    tool = str(call.build / "tools/grainside")
    maker = str(call.build / "tests/bench/make_catalog")

    with tempfile.TemporaryDirectory() as folder:
        work = Path(folder)
        catalog = work / "catalog.jsonl"
        with open(catalog, "wb") as to:
            run([maker, str(call.megabytes * 1_000_000)], stdout=to)
        size = catalog.stat().st_size
        listings = sum(1 for _ in open(catalog, "rb"))

        terms = book_terms(tool)
        own = subprocess.run([maker, "--terms"], capture_output=True, text=True).stdout.split("\n")[:-1]
        # A draw that the catalog holds something of, so that there is an answer to look at.
        with open(catalog, "rb") as source:
            text = source.read(1_000_000).decode(errors="replace").lower()
        seeds = itertools.count(20260927)
        drawn = next(few for few in (random.Random(seed).sample(terms, 700) for seed in seeds)
                     if any(re.search(rf"\b{re.escape(term.lower())}\b", text) for term in few))
        lists = {
            "catalog's own": own,
            "700 of the book": sorted(drawn),
            "700 with the catalog's own": sorted({*own, *drawn[: 700 - len(own)]}),
            "the book's English": terms,
        }
        check = [tool, "check", "--format", "jsonl", "--on", "2026-11-26"]

        # The answer before the time.
        outputs = {}
        for threads in (1, 2):
            outputs[threads] = work / f"out.{threads}"
            with open(outputs[threads], "wb") as to:
                run([*check, "--threads", str(threads), str(catalog)], stdout=to)
        run(["cmp", str(outputs[1]), str(outputs[2])], good=(0,))
        closing = claims = findings = 0
        with open(outputs[1], "rb") as lines:
            for line in lines:
                if b',"worst":' in line:
                    closing += 1
                    claims += int(line.split(b'"claims":')[1].split(b",")[0])
                else:
                    findings += 1
        if closing != listings or findings < listings:
            sys.exit(f"{closing} closing lines and {findings} findings for {listings} listings")
        written = outputs[1].stat().st_size
        for path in outputs.values():
            path.unlink()

        sample = first_bytes(catalog, 2_000_000, work / "sample.jsonl")
        peers = {}
        for name, words in lists.items():
            file = work / (name.replace(" ", "-").replace("'", "") + ".txt")
            file.write_text("\n".join(words) + "\n")
            options = ["-i", "-w", "-F", "-f", str(file)]
            found = subprocess.run(["rg", "-o", *options, str(sample)], capture_output=True).stdout.count(b"\n")
            if found == 0:
                sys.exit(f"rg finds nothing of {name}")
            hits = found / sum(1 for _ in open(sample, "rb"))
            for peer, command in (("grep -c", ["grep", "-c", *options]), ("rg -o", ["rg", "-o", *options])):
                # The catalog as a whole where that takes less than a minute, else as much as takes about ten seconds.
                part = size
                try:
                    trial = subprocess.run([*command, str(sample)], stdout=subprocess.PIPE, timeout=20)
                    if not trial.stdout:
                        sys.exit(f"{peer} finds nothing of {name}")
                    speed = 2e6 / max(run([*command, str(sample)], stdout=open(work / "peer", "wb")).seconds, 1e-3)
                    if size / speed > 60:
                        part = min(size, int(max(speed * 10, 2e6)))
                except subprocess.TimeoutExpired:
                    print(f"{peer}, {name} ({len(words)} terms): more than 20 s for 2 MB, left out")
                    continue
                file_of = catalog if part == size else first_bytes(catalog, part, work / f"part.{part}")
                label = f"{peer}, {name} ({len(words)} terms, {hits:.0f} hits a listing)"

                def one(command=command, file_of=file_of):
                    with open(work / "peer", "wb") as to:
                        return run([*command, str(file_of)], stdout=to)

                peers[label] = (one, Path(file_of).stat().st_size)

        def tool_run(threads, to_file=False):
            def one():
                if not to_file:
                    return run([*check, "--threads", str(threads), str(catalog)])
                with open(work / "out", "wb") as to:
                    return run([*check, "--threads", str(threads), str(catalog)], stdout=to)

            return one

        rows = {"tool, 1 thread": tool_run(1), "tool, 2 threads": tool_run(2), "tool, 1 thread, into a file": tool_run(1, True)}
        sizes = {name: size for name in rows}
        for label, (one, part) in peers.items():
            rows[label] = one
            sizes[label] = part
        results = interleaved(rows, call.rounds)

    speeds = {name: sizes[name] / median(runs) / 1e6 for name, runs in results.items()}
    one = speeds["tool, 1 thread"]
    print(f"{size / 1e6:.0f} MB, {listings} listings, {claims / listings:.1f} claims and {findings / listings:.1f} findings a listing;")
    print(f"{written / size:.2f} bytes written a byte read; medians of {call.rounds} interleaved rounds\n")
    print(f"{'':66} {'MB/s':>7} {'range':>12} {'tool/this':>9} {'peak MB':>8}")
    for name, runs in results.items():
        low, high = spread(runs)
        print(f"{name:66} {speeds[name]:7.1f} {1 / high:5.2f}-{1 / low:4.2f} {one / speeds[name]:10.2f} {median(runs, 'memory'):8.0f}")
    print(f"\ntwo threads {speeds['tool, 2 threads'] / one:.2f} times one")


if __name__ == "__main__":
    main()
