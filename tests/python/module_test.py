"""The Python package as its users call it: the bytes of the tool, faults, pickling, threads, hostile input, the stub."""

import ast
import copy
import datetime
import os
import pickle
import re
import shutil
import subprocess
import sys
import tempfile
import threading
import time
import unittest
import warnings

import grainside
from grainside import _engine, parts
from tool import DAY, EXAMPLES, SOURCES, grainside as run_tool, make_catalog, told

TOTE = {"sku": "t-1", "name": "Genuine PU leather tote"}


class InFolder(unittest.TestCase):
    def setUp(self):
        folder = tempfile.TemporaryDirectory(prefix="grainside.")
        self.addCleanup(folder.cleanup)
        self.folder = folder.name

    def another_book(self):
        """The project's own with one reason put otherwise."""
        book = os.path.join(self.folder, "rules")
        shutil.copytree(os.path.join(SOURCES, "rules"), book)
        file = os.path.join(book, "wording", "imitation.yaml")
        with open(file, encoding="utf-8") as text:
            was = text.read()
        self.assertIn("because: ", was)
        with open(file, "w", encoding="utf-8") as text:
            text.write(was.replace("because: ", "because: In other words. ", 1))
        return book

    def write(self, name, data):
        path = os.path.join(self.folder, name)
        with open(path, "wb") as file:
            file.write(data)
        return path


class SameBytes(InFolder):
    def expect(self, command, lines, *arguments, **of_checker):
        self.write("catalog.jsonl", lines)
        status, records, trouble = run_tool(command, *arguments, "catalog.jsonl", cwd=self.folder)
        checker = grainside.Checker(**of_checker)
        checked = (checker.check_lines if command == "check" else checker.claims_lines)(lines)
        self.assertTrue(checked.records == records, "the records are not those of the tool")
        self.assertEqual(told(checked.issues), trouble)
        if command == "check":
            self.assertEqual(grainside.exit_status(checked.worst, checked.any_errors), status)
            self.assertEqual(checked.records.count(b'","claims":'), checked.listings)

    def test_checked(self):
        self.expect("check", make_catalog(self.folder, 400), "--on", DAY, on=DAY)

    def test_claims(self):
        self.expect("claims", make_catalog(self.folder, 200))

    def test_markets_and_another_book(self):
        lines = make_catalog(self.folder, 100)
        self.expect("check", lines, "--on", "2026-09-01", "--market", "US,eu", on="2026-09-01", markets=["US", "eu", "us"])
        book = self.another_book()
        self.expect("check", lines, "--on", DAY, "--rules", book, on=DAY, book=grainside.RuleBook(book))

    def test_odd_inputs(self):
        for lines in (
            b"",
            b"\n\n",
            b'{"name":"Calf belt"}',
            b"\xff\xfe{\x00",
            b'\xef\xbb\xbf{"name":"Genuine PU leather"}\n\x00\n{"name":"a\x00b"}\n{"name":"\xff"}\n',
            b'{"name":"\xc3\xa9","sku":"\\ud800"}\n' + b"[" * 100000 + b"\n",
            b'{"name":"' + b"leather " * 300000 + b'"}\n',
            b'{"name":"' + b"x" * (17 << 20) + b'","description":"PU leather"}\n',
            b"{" * 1500 + b"\n" + b"{\n" * 1500,
        ):
            with self.subTest(lines[:40]):
                self.expect("check", lines, "--on", DAY, on=DAY)

    def test_a_line_longer_than_any_record(self):
        lines = b'{"name":"PU leather"}\n' + b"x" * ((64 << 20) + 1) + b'\n{"name":"Calf belt"}\n'
        self.expect("check", lines, "--on", DAY, on=DAY)

    def test_parts_are_the_whole(self):
        lines = make_catalog(self.folder, 300)
        path = os.path.join(self.folder, "catalog.jsonl")
        checker = grainside.Checker(on=DAY)
        whole = checker.check_lines(lines, name=path)
        for part_bytes in (1, 333, 5000, len(lines)):
            with self.subTest(part_bytes):
                planned = grainside.partitions(path, part_bytes)
                done = [
                    checker.check_lines(one.read(), name=one.name, first_record=one.first_record, first_line=one.first_line)
                    for one in planned
                ]
                self.assertTrue(b"".join(one.records for one in done) == whole.records)
                self.assertEqual(told(issue for one in done for issue in one.issues), told(whole.issues))
                self.assertEqual([one.number for one in planned], list(range(1, len(planned) + 1)))

    def test_written_and_joined_parts(self):
        lines = make_catalog(self.folder, 300)
        path = os.path.join(self.folder, "catalog.jsonl")
        folder = os.path.join(self.folder, "parts")
        os.mkdir(folder)
        checker = grainside.Checker(on=DAY)
        planned = grainside.partitions(path, 20000)
        done = [parts.check_part(one, checker.settings, folder) for one in reversed(planned)]
        self.assertEqual(parts.check_part(planned[0], checker.settings, folder), done[-1])  # twice is the same
        joined = []
        whole = checker.check_lines(lines, name=path)
        self.assertEqual(parts.join_parts(planned, done, folder, joined.append), whole.listings)
        self.assertTrue(b"".join(joined) == whole.records)

        with self.assertRaisesRegex(parts.IncompleteParts, "^not checked: part 1$"):
            parts.join_parts(planned, done[:-1], folder, joined.append)
        self.write(os.path.join(folder, done[0].file), self.read(os.path.join(folder, done[0].file))[:-1])
        with self.assertRaisesRegex(parts.IncompleteParts, "is not what its worker wrote$"):
            parts.join_parts(planned, done, folder, joined.append)
        os.unlink(os.path.join(folder, done[0].file))
        with self.assertRaisesRegex(parts.IncompleteParts, "is gone$"):
            parts.join_parts(planned, done, folder, joined.append)

        self.write(path, lines + b"\n")
        with self.assertRaisesRegex(grainside.Faults, "when it was cut into parts.*file-changed"):
            parts.check_part(planned[0], checker.settings, folder)
        self.write(os.path.join(folder, "mine.txt"), b"")
        parts.remove_parts(folder)
        self.assertEqual(os.listdir(folder), ["mine.txt"])

    @staticmethod
    def read(path):
        with open(path, "rb") as file:
            return file.read()

    def test_a_file_that_cannot_be_written_whole_is_not_there(self):
        target = self.write("out", b"before")
        with self.assertRaises(ZeroDivisionError):
            parts.write_whole(target, lambda file: file.write(b"half") and 1 // 0)
        self.assertEqual(self.read(target), b"before")
        self.assertEqual(os.listdir(self.folder), ["out"])


class OneListing(unittest.TestCase):
    def setUp(self):
        self.checker = grainside.Checker(on=DAY)

    def test_dict_and_json_are_alike(self):
        (finding,) = self.checker.check(TOTE)
        self.assertEqual((finding["listing"], finding["words"], finding["grade"]), ("t-1", "Genuine PU leather", "misleading"))
        for text in ('{"sku":"t-1",\n\n"name":"Genuine PU leather tote"}', b'{"sku":"t-1","name":"Genuine PU leather tote"}'):
            self.assertEqual(self.checker.check(text), [finding])
        self.assertEqual(self.checker.check({"name": "Slim belt in nappa"}), [])

    def test_claims(self):
        says = [claim["says"] for claim in self.checker.claims({"name": "Goat leather pouch, brass zip"})]
        self.assertIn("goat-leather", says)
        self.assertIn("brass", says)

    def test_every_fault_is_in_the_text(self):
        with self.assertRaises(grainside.Faults) as caught:
            self.checker.check('{"name":"a",}', name="draft.json")
        self.assertEqual(caught.exception.issues[0].code, "json-syntax")
        self.assertRegex(str(caught.exception), r"^draft\.json:1:12: error: .*\[json-syntax\]")
        again = pickle.loads(pickle.dumps(caught.exception))
        self.assertEqual((str(again), again.issues), (str(caught.exception), caught.exception.issues))

    def test_what_is_no_listing(self):
        for listing, fault in (
            (7, TypeError),
            (None, TypeError),
            (bytearray(b"{}"), TypeError),
            ({"name": float("nan")}, ValueError),
            ({"name": object()}, TypeError),
            ("", grainside.Faults),
            ("[]", ValueError),
            ('[{"name":"a"},{"name":"b"}]', ValueError),
            ({"sku": "no text"}, grainside.Faults),
            ("\ud800", grainside.Faults),
        ):
            with self.subTest(repr(listing)), self.assertRaises(fault):
                self.checker.check(listing)

    def test_a_warning_is_no_fault(self):
        with self.assertWarnsRegex(grainside.ReadingWarning, "not-utf8"):
            self.checker.check(b'{"name":"Calf \xff belt"}')

    def test_ids_and_paths_are_inert(self):
        checked = self.checker.check_lines(b'{"name":"PU leather \\u001b[31m"}\nx\n', name="a\x1b\n\udcff.jsonl")
        self.assertNotIn(b"\x1b", checked.records)
        self.assertNotIn("\x1b", str(checked.issues[0]))


class Settings(InFolder):
    def test_days_and_markets(self):
        self.assertEqual(grainside.Checker(on=datetime.date(2026, 9, 27)).settings.on, "2026-09-27")
        self.assertRegex(grainside.Checker().settings.on, r"^\d{4}-\d{2}-\d{2}$")
        for on in ("2026-02-30", "20260901", "2026-9-1", "", "yesterday", 20260901, "\u0662\u0660\u0662\u0666-09-01"):
            with self.subTest(on), self.assertRaisesRegex(ValueError, "is no day"):
                grainside.Checker(on=on)
        with self.assertRaisesRegex(ValueError, "there is no market 'atlantis'; the book has .*us"):
            grainside.Checker(markets=["us", "atlantis"])
        for markets in ("us", b"us", [1]):
            with self.subTest(markets), self.assertRaisesRegex(TypeError, "markets: "):
                grainside.Checker(markets=markets)
        with self.assertRaises(TypeError):
            grainside.Checker("rules")

    def test_faults_of_a_book_come_all_at_once(self):
        self.write("parts.yaml", b"x: [\n")
        with self.assertRaises(grainside.Faults) as caught:
            grainside.RuleBook(self.folder)
        self.assertGreater(len(caught.exception.issues), 1)
        for issue in caught.exception.issues:
            self.assertTrue(issue.file.startswith(self.folder), issue.file)
            self.assertIn(issue.message, str(caught.exception))
        with self.assertRaises(grainside.Faults):
            grainside.RuleBook(os.path.join(self.folder, "nothing"))

    def test_version_and_digest_are_those_of_the_tool(self):
        said = subprocess.run([os.environ["GRAINSIDE_TOOL"], "--version"], capture_output=True, text=True, check=True).stdout
        book = grainside.RuleBook()
        self.assertIn(f"grainside {grainside.__version__}\n", said)
        self.assertIn(f"rule book {book.digest}: {book.rule_count} rules", said)

    def test_pickled(self):
        other = grainside.RuleBook(self.another_book())
        self.assertNotEqual(other.digest, grainside.RuleBook().digest)
        for book in (grainside.RuleBook(), other):
            checker = grainside.Checker(book, markets=["us"], on="2026-09-27")
            for again in (pickle.loads(pickle.dumps(checker)), copy.copy(checker), copy.deepcopy(checker)):
                self.assertEqual(again.settings, checker.settings)
                self.assertEqual(again.check(TOTE), checker.check(TOTE))
            self.assertEqual(pickle.loads(pickle.dumps(book)).digest, book.digest)
            self.assertEqual(pickle.loads(pickle.dumps(checker.settings)), checker.settings)

    def test_another_book_or_version_on_the_other_side(self):
        settings = grainside.Checker(on=DAY).settings
        folder = self.another_book()
        for change, fault in (
            ({"digest": "0123456789abcdef"}, "the built-in rule book has the digest .* had 0123456789abcdef"),
            ({"digest": "0123456789abcdef", "folder": folder}, f"{re.escape(folder)} has the digest"),
            ({"version": "9.9.9"}, "set up by Grainside 9.9.9"),
        ):
            other = grainside.CheckSettings(**{**settings.__dict__, **change})
            with self.subTest(change), self.assertRaisesRegex(grainside.BookMismatch, fault):
                pickle.loads(pickle.dumps(other)).checker()

    def test_exit_status(self):
        for worst, any_errors, fail_at, want in (
            (None, False, "vague", 0),
            ("vague", False, "misleading", 0),
            ("vague", False, "vague", 1),
            ("misleading", False, "misleading", 1),
            ("contradicted", False, "misleading", 1),
            ("misleading", True, "misleading", 2),
        ):
            self.assertEqual(grainside.exit_status(worst, any_errors, fail_at), want)
        with self.assertRaises(ValueError):
            grainside.exit_status(None, False, "bad")
        self.assertEqual(grainside.worst_of(["vague", None, "misleading"]), "misleading")
        self.assertIsNone(grainside.worst_of([None]))


class Lines(InFolder):
    def test_what_are_no_lines(self):
        checker = grainside.Checker(on=DAY)
        for lines in ("text", bytearray(b"{}"), memoryview(b"{}"), None, 7):
            with self.subTest(repr(lines)), self.assertRaisesRegex(TypeError, "JSON Lines are bytes"):
                checker.check_lines(lines)
        for place in ({"first_record": 0}, {"first_line": -1}, {"first_line": 2**64}):
            with self.subTest(place), self.assertRaisesRegex(ValueError, "counts from 1"):
                checker.check_lines(b"", **place)

    def test_what_cannot_be_cut(self):
        for path, fault in (("-", "not-a-file"), (self.folder, "is-directory"), ("/nothing", "cannot-open")):
            with self.subTest(path), self.assertRaisesRegex(grainside.Faults, fault):
                grainside.partitions(path)
        with self.assertRaises(ValueError):
            grainside.partitions(self.write("a.jsonl", b"{}"), 0)
        self.assertEqual(grainside.partitions(self.write("empty.jsonl", b"")), [])


class Threads(InFolder):
    def test_a_checker_at_work_says_so_and_others_run_meanwhile(self):
        # Only where the interpreter's lock is free during a check can this thread find the checker at work.
        lines = make_catalog(self.folder, 2000)
        checker = grainside.Checker(on=DAY)
        want = checker.check_lines(lines).records
        seen = threading.Event()
        wrong = []

        def work():
            while not seen.is_set():
                try:
                    if checker.check_lines(lines).records != want:
                        wrong.append("other records")
                except RuntimeError:
                    pass  # the other thread was at work

        thread = threading.Thread(target=work)
        thread.start()
        until = time.monotonic() + 120
        said = ""
        while not said and time.monotonic() < until:
            try:
                checker.check({"name": "Calf belt"})
            except RuntimeError as refusal:
                said = str(refusal)
        seen.set()
        thread.join()
        self.assertIn("at work in another thread", said)
        self.assertEqual(wrong, [])
        self.assertTrue(checker.check_lines(lines).records == want)  # and it works on

    def test_a_checker_a_thread(self):
        lines = make_catalog(self.folder, 300)
        settings = grainside.Checker(on=DAY).settings
        want = settings.checker().check_lines(lines)
        got = [None] * 4

        def work(at):
            got[at] = settings.checker().check_lines(lines)

        threads = [threading.Thread(target=work, args=(at,)) for at in range(len(got))]
        for thread in threads:
            thread.start()
        for thread in threads:
            thread.join()
        self.assertEqual(got, [want] * len(got))


class Surface(unittest.TestCase):
    def test_the_stub_is_the_engine(self):
        with open(os.path.join(os.path.dirname(_engine.__file__), "_engine.pyi"), encoding="ascii") as file:
            stub = ast.parse(file.read())
        names = set()
        for node in stub.body:
            if isinstance(node, ast.AnnAssign):
                names.add(node.target.id)
                kind = {"str": str, "tuple[str, ...]": tuple}[ast.unparse(node.annotation)]
                self.assertIsInstance(getattr(_engine, node.target.id), kind)
            elif isinstance(node, ast.FunctionDef):
                names.add(node.name)
                self.expect_call(node, getattr(_engine, node.name))
            elif isinstance(node, ast.ClassDef):
                names.add(node.name)
                made = getattr(_engine, node.name)
                for member in node.body:
                    if member.decorator_list:
                        self.assertIsInstance(vars(made)[member.name], property)
                    else:
                        self.expect_call(member, getattr(made, member.name))
                stated = {member.name for member in node.body}
                self.assertEqual(stated, {name for name in vars(made) if not name.startswith("_")} | {"__init__"})
        self.assertEqual(names, {name for name in vars(_engine) if not name.startswith("_")})

    def expect_call(self, stated, real):
        # "run(self: ..., input: bytes, ...) -> tuple": what pybind11 says of the arguments.
        arguments = re.findall(r"(?:\(|, )(\w+): ", real.__doc__.splitlines()[0])
        self.assertEqual([one.arg for one in stated.args.args], arguments, stated.name)

    def test_everything_public_is_documented(self):
        for name in grainside.__all__:
            self.assertTrue(getattr(grainside, name).__doc__, name)
        for of, names in (
            (grainside.Checker, ("check", "claims", "check_lines", "claims_lines")),
            (grainside.RuleBook, ("digest", "markets")),
        ):
            for name in names:
                self.assertTrue(getattr(of, name).__doc__, name)

    def test_what_is_said_of_things(self):
        self.assertRegex(repr(grainside.RuleBook()), r"^<grainside\.RuleBook built in, \d+ rules, digest [0-9a-f]{16}>$")
        self.assertIn("on 2026-11-26", repr(grainside.Checker(on=DAY)))

    def test_every_worker_with_another_book_is_named_before_the_work(self):
        sys.path.insert(0, EXAMPLES)
        self.addCleanup(sys.path.remove, EXAMPLES)
        import dask_catalog

        settings = grainside.Checker(on=DAY).settings
        other = grainside.CheckSettings(**{**settings.__dict__, "digest": "0123456789abcdef"})

        class TwoWorkers:
            def run(self, task, *arguments, on_error):
                return {address: task(*arguments) for address in ("tcp://b", "tcp://a")}

        dask_catalog.ask_workers(TwoWorkers(), settings)
        with self.assertRaisesRegex(grainside.BookMismatch, "^worker tcp://a: BookMismatch: .*\nworker tcp://b: "):
            dask_catalog.ask_workers(TwoWorkers(), other)

    def test_examples_have_help_and_refuse_wrong_calls_before_any_work(self):
        example = os.path.join(EXAMPLES, "dask_catalog.py")
        said = subprocess.run([sys.executable, example, "--help"], capture_output=True, text=True, check=True).stdout
        self.assertIn("Exit status:", said)
        for wrong in (["--fail-at", "bad"], ["--market", "atlantis"], ["--on", "never"], ["--rules", "/nothing"]):
            call = [sys.executable, example, "--out", "/nothing/out", *wrong, "/nothing.jsonl"]
            done = subprocess.run(call, capture_output=True, text=True, check=False)
            self.assertEqual(done.returncode, 2, done.stderr)
            self.assertRegex(done.stderr, "^dask_catalog: ")
            self.assertNotIn("Traceback", done.stderr)


if __name__ == "__main__":
    warnings.simplefilter("error", grainside.ReadingWarning)
    unittest.main()
