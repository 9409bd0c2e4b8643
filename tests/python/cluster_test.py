"""The Dask example on a scheduler and two workers of this machine: the same bytes as the tool, also when a worker is killed."""

import ctypes
import glob
import json
import os
import shutil
import signal
import subprocess
import sys
import tempfile
import time
import unittest

try:
    import distributed  # noqa: F401
except ImportError:
    print("python3-distributed is not installed")
    sys.exit(77)

import grainside
from tool import DAY, EXAMPLES, grainside as run_tool, make_catalog

LISTINGS = 3000
PART_BYTES = 60000
PATIENCE = 120  # seconds; only a fault takes so long
HERE = os.path.dirname(os.path.abspath(__file__))


def end_with_parent():
    """A test that is killed takes its cluster along: PR_SET_PDEATHSIG of prctl(2)."""
    ctypes.CDLL(None).prctl(1, signal.SIGKILL)


class Cluster(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.folder = tempfile.mkdtemp(prefix="grainside.")
        cls.addClassCleanup(shutil.rmtree, cls.folder)
        make_catalog(cls.folder, LISTINGS)
        cls.status, cls.records, cls.trouble = run_tool("check", "--on", DAY, "catalog.jsonl", cwd=cls.folder)
        cls.listings = cls.records.count(b'","claims":')
        cls.environment = dict(os.environ, GRAINSIDE_HOLD=cls.folder, DASK_CONFIG=cls.path("no_config"))
        scheduler = cls.path("scheduler.json")
        where = ["--host", "127.0.0.1", "--port", "0"]
        cls.start("dask_scheduler", *where, "--no-dashboard", "--scheduler-file", scheduler)
        cls.address = cls.wait_for(lambda: cls.address_in(scheduler), "the scheduler's address")
        cls.workers = {
            name: cls.start("dask_worker", cls.address, "--name", name, "--host", "127.0.0.1", "--no-nanny",
                            "--nthreads", "1", "--memory-limit", "0", "--no-dashboard", "--local-directory", cls.path(name),
                            "--preload", os.path.join(HERE, "hold_worker.py"))
            for name in ("victim", "survivor")
        }  # fmt: skip

    @classmethod
    def path(cls, name):
        return os.path.join(cls.folder, name)

    @classmethod
    def start(cls, what, *arguments):
        log = open(cls.path(f"{what}.log"), "ab")
        cls.addClassCleanup(log.close)
        process = subprocess.Popen(
            [sys.executable, "-m", f"distributed.cli.{what}", *arguments],
            cwd=cls.folder, env=cls.environment, stdout=log, stderr=log, preexec_fn=end_with_parent,
        )  # fmt: skip
        cls.addClassCleanup(cls.end, process)
        return process

    @staticmethod
    def end(process):
        process.kill()
        process.wait()

    @staticmethod
    def address_in(file):
        try:
            with open(file, encoding="utf-8") as text:
                return json.load(text)["address"]
        except (FileNotFoundError, ValueError):
            return None

    @classmethod
    def wait_for(cls, asked, what):
        until = time.monotonic() + PATIENCE
        while time.monotonic() < until:
            answer = asked()
            if answer:
                return answer
            time.sleep(0.02)
        for log in glob.glob(cls.path("*.log")):
            with open(log, encoding="utf-8") as text:
                print(f"--- {log}\n{text.read()}", file=sys.stderr)
        raise AssertionError(f"nothing came: {what}")

    def start_example(self, workers):
        process = subprocess.Popen(
            [sys.executable, os.path.join(EXAMPLES, "dask_catalog.py"), "--scheduler", self.address, "--wait-for", str(workers),
             "--on", DAY, "--part-bytes", str(PART_BYTES), "--out", "findings.jsonl", "catalog.jsonl"],
            cwd=self.folder, env=self.environment, stdout=subprocess.PIPE, stderr=subprocess.PIPE, preexec_fn=end_with_parent,
        )  # fmt: skip
        self.addCleanup(self.end, process)
        return process

    def expect_the_findings_of_the_tool(self, example):
        said, trouble = example.communicate(timeout=PATIENCE)
        self.assertEqual(trouble.decode(), self.trouble.decode())
        self.assertEqual(example.returncode, self.status)
        self.assertRegex(said.decode(), rf"^{self.listings} listings in \d+ parts; the worst grade: misleading\n$")
        with open(self.path("findings.jsonl"), "rb") as file:
            self.assertTrue(file.read() == self.records, "the findings are not those of the tool")
        self.assertEqual(glob.glob(self.path(".*.tmp")), [])
        self.assertFalse(os.path.exists(self.path("findings.jsonl.parts")))
        os.unlink(self.path("findings.jsonl"))

    def test_the_catalog_is_worth_it(self):
        self.assertEqual(self.status, 2)
        self.assertGreater(len(grainside.partitions(self.path("catalog.jsonl"), PART_BYTES)), 8)
        for code in (b"json-syntax", b"not-an-object", b"no-text", b"not-utf8"):
            self.assertIn(code, self.trouble)

    def test_two_workers_then_one_is_killed(self):
        with self.subTest("both live"):
            self.expect_the_findings_of_the_tool(self.start_example(workers=2))

        with self.subTest("one is killed with a part written and not yet renamed"):
            with open(self.path("armed"), "w", encoding="ascii"):
                pass
            example = self.start_example(workers=2)
            held = self.path("held")
            self.wait_for(lambda: os.path.exists(held) or example.poll() is not None, "a part in the victim's hands")
            with open(held, encoding="ascii") as file:
                process, half_done = file.read().split()
            self.assertEqual(int(process), self.workers["victim"].pid)
            self.assertTrue(os.path.exists(half_done))
            # Who lives on would do the victim's part, and then all parts are joined and removed: not while they are looked at.
            survivors = [worker for name, worker in self.workers.items() if name != "victim"]
            for worker in survivors:
                worker.send_signal(signal.SIGSTOP)
            self.workers["victim"].kill()
            self.workers["victim"].wait()
            # Under its own name there is nothing of the part that the victim had, and nothing of the others is there in half.
            try:
                self.expect_whole_parts(self.path("findings.jsonl.parts"))
            finally:
                for worker in survivors:
                    worker.send_signal(signal.SIGCONT)
            self.expect_the_findings_of_the_tool(example)

    def expect_whole_parts(self, folder):
        checker = grainside.Checker(on=DAY)
        planned = {f"part-{part.number:08d}.jsonl": part
                   for part in grainside.partitions(self.path("catalog.jsonl"), PART_BYTES)}  # fmt: skip
        for name in os.listdir(folder):
            if name.startswith("."):
                continue
            part = planned[name]
            checked = checker.check_lines(
                part.read(), name="catalog.jsonl", first_record=part.first_record, first_line=part.first_line
            )
            with open(os.path.join(folder, name), "rb") as file:
                self.assertTrue(file.read() == checked.records, name)


if __name__ == "__main__":
    unittest.main()
