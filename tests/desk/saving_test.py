"""Nothing that is saved, or written by hand, is ever lost or half there: saving_test.py TOOL CORPUS WRITTEN_BETWEEN."""

import glob
import hashlib
import http.client
import os
import random
import shutil
import signal
import sys
import tempfile
import threading
import time
import unittest
import unittest.mock

from desk_client import Desk

TOOL, CORPUS, WRITTEN_BETWEEN = sys.argv[1:4]
BEGIN = "# kept\nsample:\n  what: A tote  # as sold\n"


def seller(value):
    return {"do": "set", "of": "sample", "key": "seller", "value": value}


def with_seller(value):
    return BEGIN + f"  seller: {value}\n"


class SavingTest(unittest.TestCase):
    def setUp(self):
        self.folder = tempfile.mkdtemp()
        self.file = os.path.join(self.folder, "tote.yaml")
        self.write(BEGIN)

    def tearDown(self):
        shutil.rmtree(self.folder)

    def write(self, text):
        with open(self.file, "w") as file:
            file.write(text)

    def read(self):
        with open(self.file) as file:
            return file.read()

    def kept(self):
        """All texts that the history holds; what a kill left half written has another name."""
        texts = []
        for path in glob.glob(os.path.join(self.folder, ".grainside-desk/tote/*.yaml")):
            with open(path) as file:
                texts.append(file.read())
        return texts

    def steps_back(self):
        """Files of undo, without the newest ones that say what the dossier says: a kill left those."""
        files = sorted(glob.glob(os.path.join(self.folder, ".grainside-desk/tote/undo-*")))
        now = self.read()
        while files:
            with open(files[-1]) as file:
                if file.read() != now:
                    break
            files.pop()
        return len(files)

    def test_saved_undone_redone(self):
        os.chmod(self.file, 0o640)
        with Desk(TOOL, self.folder) as desk:
            state = desk.state("tote")
            self.assertEqual(state["digest"], hashlib.sha256(BEGIN.encode()).hexdigest())
            for n in range(1, 6):
                state = desk.change("save", state, seller(f"number {n}")).data
                self.assertEqual((state["text"], state["undo"], state["redo"]), (with_seller(f"number {n}"), n, 0))
                self.assertEqual(self.read(), state["text"])
            self.assertEqual(os.stat(self.file).st_mode & 0o777, 0o640)
        with Desk(TOOL, self.folder) as desk:  # undo works across restarts
            step = lambda how, of: desk.post("/dossier/" + how, {"name": "tote", "was": of["digest"]})
            for n in (4, 3, 2, 1, 0):
                state = step("undo", state).data
                self.assertEqual(state["text"], with_seller(f"number {n}") if n else BEGIN)
                self.assertEqual((state["undo"], state["redo"]), (n, 5 - n))
            self.assertEqual(step("undo", state).data["error"]["code"], "nothing-to-undo")
            for n in (1, 2):
                state = step("redo", state).data
                self.assertEqual((self.read(), state["undo"], state["redo"]), (with_seller(f"number {n}"), n, 5 - n))
            state = desk.change("save", state, seller("another way")).data
            self.assertEqual((state["undo"], state["redo"]), (3, 0))
            self.assertEqual(step("redo", state).data["error"]["code"], "nothing-to-redo")
            self.assertEqual(step("undo", state | {"digest": "0" * 64}).status, 409)

    def test_tried_is_not_written(self):
        with Desk(TOOL, self.folder) as desk:
            before = os.stat(self.file).st_mtime_ns
            tried = desk.change("try", desk.state("tote"), seller("x")).data
            self.assertEqual(tried["text"], with_seller("x"))
            self.assertEqual((self.read(), os.stat(self.file).st_mtime_ns), (BEGIN, before))
            self.assertFalse(os.path.exists(os.path.join(self.folder, ".grainside-desk")))

    def test_new_dossiers(self):
        with Desk(TOOL, self.folder) as desk:
            made = desk.post("/dossier/new", {"name": "T\u00e4schchen 2", "what": "A: \"tote\"", "category": "bag", "listing": {"name": "PU leather # tote", "description": "One.\n\n  Two: {three}\n"}})
            self.assertEqual(made.status, 200, made.text)
            self.assertEqual(made.data["sample"], {"what": "A: \"tote\"", "category": "bag"})
            self.assertEqual([one["text"] for one in made.data["listing"]["fields"]], ["PU leather # tote", "One.\n\n  Two: {three}\n"])
            self.assertEqual(desk.post("/dossier/new", {"name": "tote"}).data["error"]["code"], "exists")
            self.assertEqual(self.read(), BEGIN)
            self.assertEqual(desk.post("/dossier/new", {"name": "other", "category": "boat"}).data["error"]["code"], "has-faults")
            for name in ("../x", "", ".x", "a/b", "x\u0000", "x" * 101):
                self.assertEqual(desk.post("/dossier/new", {"name": name}).status, 400, name)
            self.assertEqual(sorted(file for file in os.listdir(self.folder) if not file.startswith(".")), ["T\u00e4schchen 2.yaml", "tote.yaml"])

    def test_a_hand_edit_between_two_saves(self):
        with Desk(TOOL, self.folder) as desk:
            state = desk.state("tote")
            by_hand = BEGIN + "  category: bag\n"
            self.assertEqual(desk.get("/dossier", name="tote", was=state["digest"]).status, 204)
            self.write(by_hand)
            self.assertEqual(desk.get("/dossier", name="tote", was=state["digest"]).data["text"], by_hand)
            answer = desk.change("save", state, seller("x"))
            self.assertEqual((answer.status, answer.data["error"]["code"]), (409, "stale"))
            self.assertEqual(answer.data["now"]["text"], by_hand)
            self.assertEqual(self.read(), by_hand)
            state = desk.change("save", answer.data["now"], seller("x")).data
            self.assertEqual(self.read(), by_hand + "  seller: x\n")
            self.assertEqual(desk.post("/dossier/undo", {"name": "tote", "was": state["digest"]}).data["text"], by_hand)

    def test_two_desks_lose_nothing(self):
        with Desk(TOOL, self.folder) as one, Desk(TOOL, self.folder) as other:
            saved, refused = [], [0]
            lock = threading.Lock()

            def work(desk, name):
                state = desk.state("tote")
                for n in range(12):
                    while True:
                        answer = desk.change("save", state, seller(f"{name} {n}"))
                        if answer.status == 200:
                            with lock:
                                saved.append(with_seller(f"{name} {n}"))
                            state = answer.data
                            break
                        self.assertEqual(answer.status, 409)
                        refused[0] += 1
                        state = answer.data["now"]

            workers = [threading.Thread(target=work, args=pair) for pair in ((one, "one"), (other, "other"))]
            for worker in workers:
                worker.start()
            for worker in workers:
                worker.join()
            self.assertEqual(len(saved), 24)
            held = self.kept() + [self.read()]
            for text in saved:
                self.assertIn(text, held)
            print(f"two desks: {len(saved)} saved, {refused[0]} times refused with the other's state")

    def test_an_editor_without_locks_loses_nothing(self):
        """Editors put a new file in the place of the old one, or write into it, whenever they like."""
        for in_place in (False, True):
            with self.subTest(in_place=in_place), Desk(TOOL, self.folder) as desk:
                self.write(BEGIN)
                stop = threading.Event()
                written = []

                def edit():
                    n = 0
                    while not stop.is_set():
                        text = BEGIN + f"  # by hand {n} {in_place}\n"
                        if in_place:
                            with open(self.file, "r+") as file:
                                file.write(text)
                                file.truncate()
                        else:
                            beside = self.file + ".editor"
                            with open(beside, "w") as file:
                                file.write(text)
                            os.rename(beside, self.file)
                        written.append(text)
                        n += 1
                        time.sleep(random.random() * 0.03)

                editor = threading.Thread(target=edit)
                editor.start()
                done = refused = 0
                state = desk.state("tote")
                until = time.monotonic() + 6
                while time.monotonic() < until:
                    answer = desk.change("save", state, seller(f"desk {done}"))
                    if answer.status == 200:
                        done += 1
                        state = answer.data
                    else:
                        self.assertIn(answer.status, (400, 409), answer.text)
                        refused += 1
                        state = answer.data["now"] if answer.status == 409 else desk.state("tote")
                stop.set()
                editor.join()
                # What the editor wrote last stands there, or was what the desk replaced, knowing it.
                held = self.kept() + [self.read()]
                self.assertTrue(any(written[-1] in text or text.startswith(written[-1]) for text in held), written[-1])
                self.assertIn(self.read().split("  # by hand")[0], (BEGIN, *[with_seller(f"desk {n}") for n in range(done + 1)]))
                print(f"editor {'in place' if in_place else 'by renaming'}: {len(written)} edits by hand, {done} saves, {refused} refused")

    def test_written_by_hand_in_the_moment_of_saving(self):
        """Chance meets that moment too seldom: the editor of written_between.cpp never misses it."""
        for by_hand in (["# first\n" + BEGIN], ["# first\n" + BEGIN, "# second\n" + BEGIN]):
            self.write(BEGIN)
            files = [os.path.join(self.folder, f"hand-{n}") for n in range(len(by_hand))]
            for file, text in zip(files, by_hand):
                with open(file, "w") as out:
                    out.write(text)
            with unittest.mock.patch.dict(os.environ, {"LD_PRELOAD": WRITTEN_BETWEEN, "WRITTEN_BY_HAND": ":".join(files)}):
                desk = Desk(TOOL, self.folder)
            with desk:
                answer = desk.change("save", desk.state("tote"), seller("by the desk"))
                self.assertEqual(answer.status, 409, answer.text[:300])
                self.assertEqual(answer.data["now"]["text"], by_hand[-1])
                self.assertEqual(self.read(), by_hand[-1])
                for text in by_hand[:-1]:
                    self.assertIn(text, self.kept())
                again = desk.change("save", answer.data["now"], seller("knowing it"))
                self.assertEqual((again.status, self.read()), (200, by_hand[-1] + "  seller: knowing it\n"))
            shutil.rmtree(os.path.join(self.folder, ".grainside-desk"))

    def test_killed_at_any_time(self):
        random.seed(11)
        rounds = int(os.environ.get("KILLS", "15"))
        saved = BEGIN
        for n in range(rounds):
            desk = Desk(TOOL, self.folder)
            desk.open()
            state = desk.state("tote")
            self.assertFalse(state["faults"])
            self.assertEqual(state["undo"], self.steps_back())
            known = {state["text"]}

            def save_on(state=state, known=known, n=n, desk=desk):
                try:
                    for k in range(1000):
                        known.add(with_seller(f"round {n} {k}"))
                        state = desk.change("save", state, seller(f"round {n} {k}")).data
                except (OSError, http.client.HTTPException, ValueError, AttributeError):
                    return  # the desk is gone

            saver = threading.Thread(target=save_on)
            saver.start()
            time.sleep(0.02 + random.random() * 0.15)
            os.kill(desk.process.pid, signal.SIGKILL)
            saver.join()
            desk.__exit__()
            saved = self.read()
            self.assertIn(saved, known)
            for text in self.kept():
                self.assertTrue(text == BEGIN or text.startswith(BEGIN), text)
        with Desk(TOOL, self.folder) as desk:
            state = desk.state("tote")
            self.assertEqual(state["text"], saved)
            seen = {state["text"]}
            for _ in range(min(state["undo"], 20)):
                state = desk.post("/dossier/undo", {"name": "tote", "was": state["digest"]}).data
                self.assertTrue(state["text"] == BEGIN or state["text"].startswith(BEGIN))
                self.assertNotIn(state["text"], seen)  # every step goes back
                seen.add(state["text"])
            self.assertGreater(len(seen), 5)
            print(f"killed {rounds} times; {len(seen) - 1} steps undone")

    def test_steps_are_bounded(self):
        with Desk(TOOL, self.folder) as desk:
            state = desk.state("tote")
            for n in range(215):
                state = desk.change("save", state, seller(f"n{n}")).data
            self.assertEqual(state["undo"], 200)


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1], verbosity=2, warnings="ignore")
