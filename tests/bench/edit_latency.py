#!/usr/bin/env python3
"""edit_latency.py TOOL [ROUNDS]: how long after a change `TOOL edit` has told what is to be said of the document.

A listing of 3,000 characters is opened; each round types a letter into it (didChange) and waits for the diagnostics of
that version, then asks for a method that there is not, whose answer costs nothing but the way there and back. Medians
and 95th percentiles in milliseconds, and the ratio of the medians, which a busy machine moves less.
"""
import json
import statistics
import subprocess
import sys
import time

SENTENCES = (
    "Slim tote in full grain calf leather, lined in organic cotton. ",
    "The buckles are solid brass, plated with nickel. ",
    "A waterproof pocket of genuine PU leather holds a phone. ",
    "Hand-stitched handles, edges painted twice, made in Portugal. ",
)
CHARACTERS = 3000
URI = "untitled:listing.txt"


class Server:
    def __init__(self, tool):
        self.process = subprocess.Popen([tool, "edit", "--on", "2026-11-26"], stdin=subprocess.PIPE,
                                        stdout=subprocess.PIPE, stderr=subprocess.DEVNULL)

    def send(self, **message):
        body = json.dumps({"jsonrpc": "2.0", **message}).encode()
        self.process.stdin.write(b"Content-Length: %d\r\n\r\n%s" % (len(body), body))
        self.process.stdin.flush()

    def receive(self):
        length = 0
        while (line := self.process.stdout.readline().strip()):
            name, value = line.split(b":")
            if name == b"Content-Length":
                length = int(value)
        return json.loads(self.process.stdout.read(length))


def percentile(values, share):
    return sorted(values)[min(len(values) - 1, int(share * len(values)))]


def main():
    rounds = int(sys.argv[2]) if len(sys.argv) > 2 else 300
    text = ("".join(SENTENCES) * (CHARACTERS // len("".join(SENTENCES)) + 1))[:CHARACTERS]
    server = Server(sys.argv[1])
    server.send(id=0, method="initialize", params={"processId": None, "rootUri": None, "capabilities": {}})
    server.receive()
    server.send(method="textDocument/didOpen", params={
        "textDocument": {"uri": URI, "languageId": "plaintext", "version": 1, "text": text}})
    found = len(server.receive()["params"]["diagnostics"])
    # What is timed must be a check that finds something.
    assert found >= 10, found
    told, empty = [], []
    for version in range(2, rounds + 2):
        begin = time.perf_counter()
        place = {"line": 0, "character": CHARACTERS // 2}
        server.send(method="textDocument/didChange", params={
            "textDocument": {"uri": URI, "version": version},
            "contentChanges": [{"range": {"start": place, "end": place}, "text": "x" if version % 2 else " "}]})
        assert server.receive()["params"]["version"] == version
        told.append(1000 * (time.perf_counter() - begin))
        begin = time.perf_counter()
        server.send(id=version, method="grainside/nothing", params={})
        assert server.receive()["error"]["code"] == -32601
        empty.append(1000 * (time.perf_counter() - begin))
    for name, values in (("didChange to diagnostics", told), ("empty request", empty)):
        print(f"{name}: median {statistics.median(values):.2f} ms, 95 % {percentile(values, 0.95):.2f} ms")
    print(f"ratio of the medians: {statistics.median(told) / statistics.median(empty):.1f}; {found} findings, "
          f"{rounds} rounds")


if __name__ == "__main__":
    main()
