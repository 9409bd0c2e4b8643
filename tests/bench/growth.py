#!/usr/bin/env python3
"""growth.py BUILD [--rounds 5] [--svg tests/bench/growth.svg]: what a byte costs when the vocabulary and the catalog grow.

The vocabulary: the built-in book against books with two, five and ten times as many terms, made of invented words that no
text holds. The time of start-up is not what is asked, so each point is the difference between the time for a longer
catalog and for a shorter one, by their difference in bytes. The catalog: 1, 10 and 100 times 2 MB, start-up taken off in
the same way (an empty catalog). Processor time, one thread, medians over interleaved rounds of the ratio within a round. Checks first that a grown book finds
the same. Prints the points and draws them as an SVG."""

import argparse
import random
import shutil
import statistics
import tempfile
from pathlib import Path

from measured_run import interleaved, run

ROOT = Path(__file__).resolve().parents[2]
SYLLABLES = [a + b for a in "bdfgklmnprstvz" for b in ("a", "e", "i", "o", "u", "ai", "or", "en")]


def grown_rules(folder, times):
    """A copy of rules/ with `times` as many English terms."""
    shutil.copytree(ROOT / "rules", folder)
    draw = random.Random(times)
    words = sum(text.count(",") for text in (file.read_text() for file in (ROOT / "rules/vocabulary/en").glob("*.yaml")))
    lines = ["# Invented words for tests/bench/growth.py.\n"]
    made = set()
    while len(made) < words * (times - 1):
        term = " ".join("x" + "".join(draw.choices(SYLLABLES, k=draw.randint(2, 4))) for _ in range(draw.randint(1, 3)))
        made.add(term)
    made = sorted(made)
    for start in range(0, len(made), 500):
        lines.append(f"- says: leather\n  words: [{', '.join(made[start:start + 500])}]\n")
    (folder / "vocabulary/en/invented.yaml").write_text("".join(lines))
    return len(made)


def svg(vocabulary, catalog):
    """Two panels: cost for a byte, the first point = 1."""
    width, height, left, top, panel = 720, 260, 60, 30, 280
    parts = [f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width} {height}" font-family="sans-serif" font-size="12">',
             f'<title>Cost for a byte, relative to the first point</title><rect width="{width}" height="{height}" fill="white"/>']
    for number, (name, points) in enumerate((("terms in the book, times", vocabulary), ("catalog, times 2 MB", catalog))):
        x0 = left + number * (panel + 60)
        y = lambda value: top + 180 - value / 1.5 * 180
        for value in (0, 0.5, 1, 1.5):
            parts.append(f'<line x1="{x0}" x2="{x0 + panel}" y1="{y(value):.0f}" y2="{y(value):.0f}" stroke="#ccc"/>'
                         f'<text x="{x0 - 8}" y="{y(value) + 4:.0f}" text-anchor="end">{value:g}</text>')
        step = panel / max(1, len(points) - 1)
        places = [(x0 + i * step, y(value)) for i, (_, value) in enumerate(points)]
        parts.append('<polyline fill="none" stroke="#1f4e79" stroke-width="2" points="'
                     + " ".join(f"{x:.0f},{py:.1f}" for x, py in places) + '"/>')
        for (x, py), (label, value) in zip(places, points):
            parts.append(f'<circle cx="{x:.0f}" cy="{py:.1f}" r="4" fill="#1f4e79"/>'
                         f'<text x="{x:.0f}" y="{py - 10:.0f}" text-anchor="middle">{value:.2f}</text>'
                         f'<text x="{x:.0f}" y="{top + 200}" text-anchor="middle">{label}</text>')
        parts.append(f'<text x="{x0 + panel / 2}" y="{top + 220}" text-anchor="middle">{name}</text>')
    return "\n".join([*parts, "</svg>", ""])


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("build", type=Path)
    parser.add_argument("--rounds", type=int, default=5)
    parser.add_argument("--svg", type=Path)
    call = parser.parse_args()
    tool, maker = str(call.build / "tools/grainside"), str(call.build / "tests/bench/make_catalog")

    with tempfile.TemporaryDirectory() as folder:
        work = Path(folder)
        sizes = {}
        for megabytes in (0, 2, 20, 120, 200):
            path = work / f"{megabytes}.jsonl"
            with open(path, "wb") as to:
                run([maker, str(megabytes * 1_000_000)], stdout=to)
            sizes[megabytes] = path.stat().st_size
        books, terms = {1: ROOT / "rules"}, {1: 0}
        for times in (2, 5, 10):
            books[times] = work / f"rules{times}"
            terms[times] = grown_rules(books[times], times)

        def check(book, megabytes, out=None):
            rules = ["--rules", str(book)] if book else []
            command = [tool, "check", "--format", "jsonl", "--on", "2026-11-26", "--threads", "1", *rules]
            if out is None:
                return run([*command, str(work / f"{megabytes}.jsonl")])
            with open(out, "wb") as to:
                return run([*command, str(work / f"{megabytes}.jsonl")], stdout=to)

        for times, book in books.items():
            check(book, 2, work / f"out{times}")
            run(["cmp", str(work / "out1"), str(work / f"out{times}")], good=(0,))

        rows = {}
        for times, book in books.items():
            for megabytes in (0, 120):
                rows["book", times, megabytes] = lambda book=book, megabytes=megabytes: check(book, megabytes)
        for megabytes in (0, 2, 20, 200):
            rows["catalog", megabytes] = lambda megabytes=megabytes: check(None, megabytes)
        results = interleaved(rows, call.rounds)

    # Round by round, because the machine's speed drifts: what is compared ran within the same seconds.
    def costs(longer, shorter, size):
        return [(a.processor - b.processor) / size * 1e9 for a, b in zip(results[longer], results[shorter])]

    def told(what, points, label):
        first = next(iter(points.values()))
        ratios = {}
        for key, values in points.items():
            ratios[key] = statistics.median(value / one for value, one in zip(values, first))
            print(f"{what} {label(key)}: {statistics.median(values):6.2f} ns a byte, {ratios[key]:.2f} of the first")
        return ratios

    by_book = told("book", {times: costs(("book", times, 120), ("book", times, 0), sizes[120]) for times in books},
                   lambda times: f"{times:3} times ({terms[times]:6} terms added)")
    by_size = told("catalog", {m: costs(("catalog", m), ("catalog", 0), sizes[m]) for m in (2, 20, 200)},
                   lambda megabytes: f"{megabytes // 2:3} times 2 MB")
    if call.svg:
        call.svg.write_text(svg([(f"{times}", ratio) for times, ratio in by_book.items()],
                                [(f"{megabytes // 2}", ratio) for megabytes, ratio in by_size.items()]))


if __name__ == "__main__":
    main()
