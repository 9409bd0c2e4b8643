"""A desk that is started for a test, and a client of it: Python's own http.client and sockets, nothing of ours."""

import glob
import http.client
import json
import os
import re
import shutil
import signal
import socket
import subprocess
import tempfile
import time
import urllib.parse


def folder_with_the_corpus(corpus):
    """A folder of its own with the dossiers of `corpus` and what they name; who asks removes it."""
    folder = tempfile.mkdtemp()
    for file in glob.glob(corpus + "/dossiers/*") + glob.glob(corpus + "/demo/watch_strap*"):
        shutil.copy(file, folder)
    return folder


class Desk:
    """`grainside desk` on `folder`. Ended by its process id when the block is left."""

    def __init__(self, tool, folder, *options):
        self.process = subprocess.Popen([tool, "desk", *options, folder], stdin=subprocess.PIPE,
                                        stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)
        line = self.process.stdout.readline()
        found = re.fullmatch(r"http://127\.0\.0\.1:(\d+)/\?key=([0-9a-f]{32})\n", line)
        assert found, f"no address but {line!r}, {self.process.stderr.read() if not line else ''}"
        self.port, self.key = int(found[1]), found[2]
        self.says = self.process.stdout.readline()
        self.origin = f"http://127.0.0.1:{self.port}"
        self.cookie = ""

    def __enter__(self):
        self.open()
        return self

    def __exit__(self, *_):
        if self.process.poll() is None:
            self.end()
        for pipe in (self.process.stdin, self.process.stdout, self.process.stderr):
            pipe.close()

    def end(self, within=60):
        """One signal: a second one would not wait for open answers. The thread sanitizer keeps it back while the thread that it
        met waits for a connection, so one comes."""
        self.process.send_signal(signal.SIGINT)
        until = time.monotonic() + within
        while True:
            try:
                self.process.wait(1)
                return
            except subprocess.TimeoutExpired:
                assert time.monotonic() < until, "the desk does not end"
                try:
                    self.connect().close()
                except OSError:
                    pass  # it ends just now

    def open(self):
        answer = self.ask("GET", f"/?key={self.key}", cookie="")
        assert answer.status == 303, answer.status
        self.cookie = answer.headers["Set-Cookie"].split(";")[0]

    def another_address(self):
        self.process.stdin.write("\n")
        self.process.stdin.flush()
        return self.process.stdout.readline().strip().split("key=")[1]

    def ask(self, method, path, body=None, cookie=None, headers=None, timeout=60):
        """The answer, with `.text` and, of JSON, `.data`. Headers that are None are left out."""
        sent = {"Host": f"127.0.0.1:{self.port}", "Cookie": self.cookie if cookie is None else cookie}
        if method != "GET":
            sent |= {"Origin": self.origin, "Content-Type": "application/json"}
        sent |= headers or {}
        if isinstance(body, (dict, list)):
            body = json.dumps(body)
        if isinstance(body, str):
            body = body.encode()
        if body is not None:
            sent.setdefault("Content-Length", str(len(body)))
        connection = http.client.HTTPConnection("127.0.0.1", self.port, timeout=timeout)
        try:
            connection.putrequest(method, path, skip_host=True, skip_accept_encoding=True)
            for name, value in sent.items():
                if value:
                    connection.putheader(name, value)
            connection.endheaders(body)
            answer = connection.getresponse()
            answer.bytes = answer.read()
        finally:
            connection.close()
        answer.text = answer.bytes.decode("utf-8", "replace")
        if answer.headers.get("Content-Type", "").startswith("application/json") and answer.text:
            answer.data = json.loads(answer.text)
        return answer

    def get(self, path, **query):
        return self.ask("GET", path + ("?" + urllib.parse.urlencode(query) if query else ""))

    def post(self, path, body):
        return self.ask("POST", path, body)

    def state(self, name):
        answer = self.get("/dossier", name=name)
        assert answer.status == 200, answer.text
        return answer.data

    def change(self, how, state, *changes):
        return self.post("/dossier/" + how, {"name": state["name"], "was": state["digest"], "changes": list(changes)})

    def connect(self):
        return socket.create_connection(("127.0.0.1", self.port), timeout=30)

    def raw(self, request, timeout=15):
        """What comes back for these bytes until the desk closes."""
        with self.connect() as connection:
            connection.settimeout(timeout)
            connection.sendall(request)
            return read_all(connection)

    def serves(self):
        begun = time.monotonic()
        assert self.get("/about").status == 200
        return time.monotonic() - begun

    def memory(self):
        """Resident MiB."""
        with open(f"/proc/{self.process.pid}/statm") as file:
            return int(file.read().split()[1]) * os.sysconf("SC_PAGE_SIZE") / 2**20


def read_all(connection):
    got = b""
    try:
        while piece := connection.recv(65536):
            got += piece
    except (ConnectionError, socket.timeout):
        pass
    return got
