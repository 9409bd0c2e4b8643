"""compare_tables.py TABLE_DUMP: random tables, written and read by Python's csv module (a reader that is not ours), must
be read alike by the library. Fixed seed."""
import csv
import io
import random
import subprocess
import sys
import tempfile

PIECES = ["a", "leather", "G\u00fcrtel", " ", ",", ";", "|", '"', '""', "\n", "\r\n", "\t", "5\"", "\U0001f45c", "x" * 300]


def value(rng):
    return "".join(rng.choice(PIECES) for _ in range(rng.randint(0, 6)))


def read_dump(raw):
    """(record, [(name, text)]) of each row."""
    stream = io.BytesIO(raw)
    while line := stream.readline():
        record, fields = map(int, line.split())
        texts = []
        for _ in range(fields):
            name, text = map(int, stream.readline().split())
            texts.append((stream.read(name).decode(), stream.read(text).decode()))
            assert stream.read(1) == b"\n"
        yield record, texts


def main():
    rng = random.Random(20261126)
    rows_compared = differences = 0
    with tempfile.TemporaryDirectory() as folder:
        for table in range(150):
            separator = rng.choice(",;|\t")
            width = rng.randint(1, 9)
            names = [f"c{i}" + rng.choice(["", " x", ",y", ';"z"']) for i in range(width)]
            path = f"{folder}/{table}.csv"
            with open(path, "w", encoding=rng.choice(["utf-8", "utf-8-sig"]), newline="") as file:
                writer = csv.writer(file, delimiter=separator, lineterminator=rng.choice(["\n", "\r\n"]),
                                    quoting=rng.choice([csv.QUOTE_MINIMAL, csv.QUOTE_ALL]))
                writer.writerow(names)
                for _ in range(rng.randint(0, 60)):
                    writer.writerow([value(rng) for _ in names])
            with open(path, encoding="utf-8-sig", newline="") as file:
                rows = list(csv.reader(file, delimiter=separator))
            # Rows without any text are passed over, and so are texts of nothing but white space.
            prefix = "additionalProperty."
            want = []
            for record, row in enumerate((row for row in rows[1:] if row), 1):
                texts = [(prefix + name, text) for name, text in zip(rows[0], row) if text.strip(" \t\r\n")]
                if texts:
                    want.append((record, texts))
            run = subprocess.run([sys.argv[1], path, separator], capture_output=True, check=False)
            got = list(read_dump(run.stdout))
            stray = [line for line in run.stderr.decode().splitlines() if "warning" not in line and "hint" not in line]
            rows_compared += len(want)
            if got != want or run.returncode not in (0, 1) or any("error" in line for line in stray):
                differences += 1
                print(f"table {table} ({path}, {separator!r}): {run.stderr.decode()}")
                for one, other in zip(got, want):
                    if one != other:
                        print(f"  read {one!r}\n  want {other!r}")
                        break
    print(f"{rows_compared} rows, {differences} tables read differently")
    return 1 if differences or rows_compared < 1000 else 0


sys.exit(main())
