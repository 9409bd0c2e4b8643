#!/usr/bin/env python3
"""Records beyond all measure: what one costs in time and memory, what is said of it, and whether the rest goes on.

usage: tests/bench/huge_records.py TOOL [ROW...] [--gigabyte BYTES] [--million N]

    tests/bench/huge_records.py build/release/tools/grainside
    tests/bench/huge_records.py build/release/tools/grainside csv_columns yaml_keys --million 100000

TOOL is the built tool. Each row is one input in which one thing is far too large or too many, made while it is read, with
an ordinary record behind it: in the same stream where the format has records, else in a file of its own. A row holds where
the tool ends within --seconds (60) and --memory (2,000 MB), says what is wrong with file and line and what to do (where it
says anything: what is large but within the limits is read), and checks the record behind.

The time is told beside that of an ordinary catalog of as many bytes, by processor time (of 20 MB, times the bytes).
Exit status: 0 every row holds; 1 one does not; 2 a wrong call.
"""
import argparse
import itertools
import os
import pathlib
import re
import subprocess
import sys
import tempfile
import threading

MEGABYTE = 1_000_000
ORDINARY_BYTES = 20 * MEGABYTE
DOSSIER_BEHIND = b"sample: {what: bag}\nlisting: {name: Vegan leather tote}\n"
BEHIND = b'{"sku":"behind","name":"Vegan leather tote"}\n'
# One listing of 1 kB with four claims, two findings.
ORDINARY = (b'{"sku":"o","name":"Full grain leather tote","description":"Lining: cotton. Vegan leather handles. '
            b'Zinc alloy buckle. ' + b"A quiet bag for long days, made to be carried. " * 17 + b'"}\n')


def numbered(form, count):
    """`form` with each number below `count`, in pieces of some kB."""
    numbers = iter(range(count))
    while piece := list(itertools.islice(numbers, 1000)):
        yield "".join(form % number for number in piece).encode()


def filled(byte, count):
    piece = byte * MEGABYTE
    for _ in range(count // MEGABYTE):
        yield piece
    yield byte * (count % MEGABYTE)


class Row:
    """`says`: words of the message; empty: none is needed, for what is large is within the limits. `behind`: where the
    ordinary record stands: "stream" = in the same pipe; "file", "disk" = in a second file, the huge one being a pipe or a
    file; "dossier" = in a second dossier; "option" = nowhere, for a fault of such a file refuses the call."""

    def __init__(self, name, command, ending, pieces, says, behind):
        self.name = name
        self.command = command
        self.ending = ending
        self.pieces = pieces
        self.says = says
        self.behind = behind


def rows(gigabyte, million):
    def line(*parts):
        return lambda: itertools.chain(*(part if not isinstance(part, bytes) else [part] for part in
                                         (make() if callable(make) else make for make in parts)))

    def of(form, count):
        return lambda: numbered(form, count)

    def fill(byte, count):
        return lambda: filled(byte, count)

    check = ["check", "--format", "jsonl", "--on", "2026-11-26"]
    judge = ["judge", "--format", "jsonl"]
    return [
        Row("json_line_bytes", check, ".jsonl", line(b'{"name":"', fill(b"x", gigabyte), b'"}\n'),
            "this line is longer than any record may be", "stream"),
        Row("json_line_brackets", check, ".jsonl", line(fill(b"[", gigabyte), b"\n"),
            "this line is longer than any record may be", "stream"),
        Row("json_members", check, ".jsonl", line(b'{"name":"Leather bag"', of(',"m%d":"v"', million), b"}\n"), "", "stream"),
        Row("json_one_member_often", check, ".jsonl", line(b'{"name":"Leather bag"', of(',"material":"leather %d"', million), b"}\n"),
            "", "stream"),
        Row("json_properties", check, ".jsonl",
            line(b'{"name":"Leather bag","additionalProperty":[{"name":"a","value":"b"}',
                 of(',{"name":"p%d","value":"leather"}', million), b"]}\n"), "65536", "stream"),
        Row("json_graph", check, ".jsonl",
            line(b'{"@graph":[{"name":"a"}', of(',{"name":"p%d"}', million), b"]}\n"), "", "stream"),
        Row("json_file_bytes", check, ".json", line(b'[{"name":"', fill(b"x", gigabyte), b'"}]'), "larger", "file"),
        Row("json_file_on_disk", check, ".json", line(b'[{"name":"', fill(b"x", gigabyte), b'"}]'), "larger", "disk"),
        Row("json_file_members", check, ".json", line(b'[{"name":"Leather bag"', of(',"m%d":"v"', million), b"}]"), "", "file"),
        Row("json_file_lists", check, ".json", line(b'{"a":0', of(',"m%d":[{"name":"x"}]', million), b"}"), "list", "file"),
        Row("page_bytes", check, ".html", line(b"<title>Leather bag</title><p>", fill(b"x", gigabyte)), "larger", "file"),
        Row("page_attributes", check, ".html",
            line(b"<title>Leather bag</title><p", of(' a%d="v"', million), b">Leather bag</p>"), "attributes", "file"),
        Row("page_elements", check, ".html", line(b"<title>Leather bag</title>", of("<b>x%d", million)), "nested", "file"),
        Row("page_rows", check, ".html",
            line(b"<title>Leather bag</title><table>", of("<tr><th>n%d<td>leather", million), b"</table>"), "", "file"),
        Row("page_json", check, ".html",
            line(b'<script type="application/ld+json">{"@type":"Product","name":"Leather bag"', of(',"m%d":"v"', million),
                 b"}</script>"), "", "file"),
        Row("csv_columns", check, ".csv",
            line(b"name", of(",c%d", million), b"\nLeather bag", of(",v%d", million), b"\n"), "columns", "file"),
        Row("csv_cells", check, ".csv", line(b"name,description\nLeather bag", of(",v%d", million), b"\nbehind,vegan leather\n"),
            "values", "file"),
        Row("csv_cell_bytes", check, ".csv",
            line(b'sku,name,description\nx,Leather bag,"', fill(b"x", gigabyte), b'"\nbehind,bag,vegan\n'),
            "this row is longer than any record may be", "file"),
        Row("text_bytes", check, ".txt", line(fill(b"leather ", gigabyte // 8)), "larger", "file"),
        Row("dossier_keys", judge, ".yaml", line(b"sample: {what: bag}\n", of("k%d: v\n", million)), "huge.yaml", "dossier"),
        # As many as the limits of YAML let through (4 MiB, 500,000 nodes), each a fault.
        Row("dossier_wrong_keys", judge, ".yaml",
            line(b"sample: {what: bag}\n", of("k%d: v\n", min(million, 240_000))), "more are not shown", "dossier"),
        Row("dossier_bytes", judge, ".yaml", line(b"sample: {what: ", fill(b"x", gigabyte), b"}\n"), "larger", "dossier"),
        Row("dossier_readings", judge, ".yaml",
            line(b"sample: {what: bag}\nparts:\n  body:\n    readings:\n",
                 of("      - {method: magnet, outcome: weak-pull, note: n%d}\n", million)), "", "dossier"),
        Row("concessions", check + ["--concessions"], ".yaml",
            line(of("- {rule: vegan-called-leather, listing: l%d, reason: r, owner: o, until: 2026-12-31}\n", million)),
            "larger", "option"),
        Row("proofs", check + ["--proofs"], ".yaml",
            line(of("- {document: D%d, laboratory: L, date: 2026-01-01, scope: {says: waterproof}}\n", million)),
            "larger", "option"),
    ]


class Outcome:
    def __init__(self, sent, usage, status, out, err):
        self.sent = sent  # bytes that the tool took
        self.seconds = usage.ru_utime + usage.ru_stime
        self.memory = usage.ru_maxrss / 1024  # MB, resident at most
        self.status = status
        self.out = out
        self.err = err


def feed(path, pieces, sent):
    """Writes `pieces` into the pipe `path` until they end or nobody reads them."""
    try:
        with open(path, "wb", buffering=0) as pipe:
            for piece in pieces:
                pipe.write(piece)
                sent[0] += len(piece)
    except BrokenPipeError:
        pass


def run(tool, row, folder):
    path = folder / ("huge" + row.ending)
    inputs = [path.name]
    feeder = None
    sent = [0]
    pieces = row.pieces()
    if row.behind == "stream":
        pieces = itertools.chain(pieces, [BEHIND])
    if row.behind in ("stream", "file"):
        os.mkfifo(path)
        feeder = threading.Thread(target=feed, args=(path, pieces, sent), daemon=True)
        feeder.start()
    else:
        # What holds for the whole is asked of a file.
        with open(path, "wb") as file:
            for piece in pieces:
                file.write(piece)
        sent[0] = path.stat().st_size
    if row.behind == "dossier":
        (folder / "behind.yaml").write_bytes(DOSSIER_BEHIND)
        inputs.append("behind.yaml")
    elif row.behind != "stream":
        (folder / "behind.jsonl").write_bytes(BEHIND)
        inputs.append("behind.jsonl")
    with open(folder / "out", "wb") as out, open(folder / "err", "wb") as err:
        process = subprocess.Popen([tool, *row.command, *inputs], stdout=out, stderr=err, cwd=folder)
        _, status, usage = os.wait4(process.pid, 0)
        process.returncode = os.waitstatus_to_exitcode(status)
    if feeder:
        # One that nobody read is let go.
        os.close(os.open(path, os.O_RDONLY | os.O_NONBLOCK))
        feeder.join()
    with open(folder / "out", "rb") as out:
        out.seek(max(0, (folder / "out").stat().st_size - 4096))
        tail = out.read().decode(errors="replace")
    told = (folder / "err").read_text(errors="replace")
    for file in folder.iterdir():
        file.unlink()
    return Outcome(sent[0], usage, process.returncode, tail, told)


def faults_of(row, outcome, call):
    faults = []
    if outcome.seconds > call.seconds:
        faults.append(f"takes more than {call.seconds} s")
    if outcome.memory > call.memory:
        faults.append(f"takes more than {call.memory} MB")
    if outcome.status not in (0, 1, 2):
        faults.append(f"ends with {outcome.status}")
    if row.says and row.says not in outcome.err:
        faults.append(f"does not say '{row.says}'")
    if row.says and f"huge{row.ending}" not in outcome.err:
        faults.append("does not name the file")
    if outcome.err and "hint: " not in outcome.err:
        faults.append("does not say what to do")
    if row.behind != "option" and '"behind"' not in outcome.out:
        faults.append("does not check the record behind")
    return faults


def parse_call():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("tool", type=pathlib.Path)
    parser.add_argument("rows", nargs="*", metavar="ROW")
    parser.add_argument("--gigabyte", type=int, default=1_000_000_000, help="bytes of what is too long")
    parser.add_argument("--million", type=int, default=1_000_000, help="of what are too many")
    parser.add_argument("--seconds", type=float, default=60)
    parser.add_argument("--memory", type=float, default=2000)
    parser.add_argument("--errors", action="store_true", help="show what the tool said")
    call = parser.parse_args()
    call.tool = call.tool.resolve()
    unknown = set(call.rows) - {row.name for row in rows(1, 1)}
    if unknown or not call.tool.is_file():
        parser.error(f"no row {', '.join(sorted(unknown))}" if unknown else f"no tool {call.tool}")
    return call


def main():
    call = parse_call()
    failed = 0
    print("| Input | MB | Seconds | Ordinary of as many bytes | Ratio | Resident, MB | Said |")
    print("| --- | ---: | ---: | ---: | ---: | ---: | --- |", flush=True)
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        ordinary = Row("ordinary", ["check", "--format", "jsonl"], ".jsonl",
                       lambda: [ORDINARY * 100] * (ORDINARY_BYTES // len(ORDINARY) // 100), "", "stream")
        plain = run(call.tool, ordinary, folder)
        second_a_byte = plain.seconds / plain.sent
        for row in rows(call.gigabyte, call.million):
            if call.rows and row.name not in call.rows:
                continue
            outcome = run(call.tool, row, folder)
            faults = faults_of(row, outcome, call)
            failed += bool(faults)
            expected = outcome.sent * second_a_byte
            codes = sorted(set(re.findall(r"\[([a-z-]+)\]$", outcome.err, re.M)))
            print(f"| {row.name} | {outcome.sent / MEGABYTE:,.1f} | {outcome.seconds:.2f} | {expected:.2f} | "
                  f"{outcome.seconds / expected:.2f} | {outcome.memory:.0f} | {', '.join(codes) or 'nothing'} |", flush=True)
            if call.errors:
                print(outcome.err[:1500])
            for fault in faults:
                print(f"{row.name} {fault}", file=sys.stderr)
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
