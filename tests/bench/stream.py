#!/usr/bin/env python3
"""stream.py BUILD [--megabytes 5000] [--threads 2]: a long stream through standard input, in constant memory.

The catalog is made while it is read, so that no disk is asked. In its middle stands a broken record, which must be told
once with its line while all others are checked. The resident memory of the tool is looked at ten times a second and
printed for each tenth of the stream."""

import argparse
import os
import subprocess
import sys
import threading
import time
from pathlib import Path


def resident_mb(pid):
    with open(f"/proc/{pid}/statm") as statm:
        return int(statm.read().split()[1]) * os.sysconf("SC_PAGE_SIZE") / 1e6


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("build", type=Path)
    parser.add_argument("--megabytes", type=int, default=5000)
    parser.add_argument("--threads", type=int, default=2)
    call = parser.parse_args()
    bytes_wanted = call.megabytes * 1_000_000

    maker = subprocess.Popen([call.build / "tests/bench/make_catalog", str(bytes_wanted)], stdout=subprocess.PIPE)
    tool = subprocess.Popen(
        [call.build / "tools/grainside", "check", "--format", "jsonl", "--on", "2026-11-26", "--threads", str(call.threads)],
        stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.PIPE)
    state = {"fed": 0, "lines": 0, "broken": 0, "closing": 0}

    def feed():
        broken = False
        while block := maker.stdout.read(1 << 20):
            if not broken and state["fed"] > bytes_wanted / 2 and b"\n" in block:
                cut = block.index(b"\n") + 1
                state["broken"] = state["lines"] + 2
                block = block[:cut] + b'{"@type":"Product","name":"a broken one\n' + block[cut:]
                broken = True
            state["lines"] += block.count(b"\n")
            tool.stdin.write(block)
            state["fed"] += len(block)
        tool.stdin.close()

    def drain():
        mark, rest = b',"worst":', b""
        while block := tool.stdout.read(1 << 20):
            state["closing"] += (rest + block).count(mark)
            rest = block[-(len(mark) - 1):]  # a border may cut one

    messages = []
    workers = [threading.Thread(target=feed), threading.Thread(target=drain),
               threading.Thread(target=lambda: messages.append(tool.stderr.read().decode()))]
    began = time.perf_counter()
    for worker in workers:
        worker.start()
    peaks = [0.0] * 10
    while tool.poll() is None:
        tenth = min(9, state["fed"] * 10 // bytes_wanted)
        try:
            peaks[tenth] = max(peaks[tenth], resident_mb(tool.pid))
        except (OSError, IndexError, ValueError):
            pass
        time.sleep(0.1)
    for worker in workers:
        worker.join()
    seconds = time.perf_counter() - began

    listings = state["lines"] - 1
    lost = listings - state["closing"]
    print(f"{state['fed'] / 1e9:.2f} GB in {seconds:.0f} s, {state['fed'] / 1e6 / seconds:.0f} MB/s with {call.threads} threads;"
          f" {listings} listings, {state['closing']} closing lines")
    print("resident MB in each tenth of the stream: " + " ".join(f"{peak:.0f}" for peak in peaks))
    print("told: " + messages[0].strip().split("\n")[0])
    told = messages[0].count(": error: ")
    if tool.returncode != 2 or told != 1 or f"<stdin>:{state['broken']}:" not in messages[0] or lost != 0:
        sys.exit(f"wrong: exit status {tool.returncode}, {told} errors told, record {state['broken']}, {lost} listings lost")


if __name__ == "__main__":
    main()
