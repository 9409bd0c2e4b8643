"""Many requests at once: concurrent_test.py TOOL CORPUS. tools/checks/threads runs it under the thread sanitizer, by which a
desk that had anything to report ends with another status than 0."""

import glob
import http.client
import os
import shutil
import sys
import tempfile
import threading
import unittest

from desk_client import Desk

TOOL, CORPUS = sys.argv[1:3]
BEGIN = "sample:\n  what: A tote\n"
DOSSIERS = ("fabric_sold_as_full_grain", "worn_gold_plating", "penfold_bonded_bifold")


def seller(value):
    return {"do": "set", "of": "sample", "key": "seller", "value": value}


def together(*works):
    """Runs each on a thread of its own, all begun at the same moment; what one of them raises is raised."""
    begin = threading.Barrier(len(works))
    raised = []

    def run(work):
        begin.wait()
        try:
            work()
        except BaseException as error:
            raised.append(error)

    threads = [threading.Thread(target=run, args=(work,)) for work in works]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    if raised:
        raise raised[0]


class ConcurrentTest(unittest.TestCase):
    def setUp(self):
        self.folder = tempfile.mkdtemp()
        for name in DOSSIERS:
            shutil.copy(os.path.join(CORPUS, "dossiers", name + ".yaml"), self.folder)

    def tearDown(self):
        shutil.rmtree(self.folder)

    def begin(self, *names):
        for name in names:
            with open(os.path.join(self.folder, name + ".yaml"), "w") as file:
                file.write(BEGIN)

    def ended_well(self, desk):
        self.assertEqual(desk.process.returncode, 0)

    def test_answers_side_by_side_are_those_of_each_alone(self):
        asked = [("GET", path, None) for path in ("/", "/about", "/methods", "/dossiers", "/nothing")]
        asked += [("GET", f"/dossier?name={name}", None) for name in DOSSIERS]
        asked += [("GET", f"/report?name={DOSSIERS[0]}&form={form}", None) for form in ("html", "markdown", "json", "csv")]
        asked += [("POST", "/words", {"text": text, "market": [market], "on": "2026-11-26"})
                  for text in ("Genuine PU leather tote, waterproof.", "Body: split leather. Lining: cotton.") for market in ("us", "eu")]
        with Desk(TOOL, self.folder) as desk:
            ask = lambda one: (lambda answer: (answer.status, answer.bytes))(desk.ask(*one))
            alone = [ask(one) for one in asked]
            self.assertGreater(len(set(alone)), len(asked) - 2)

            def work(first):
                for n in range(len(asked)):
                    at = (first + n) % len(asked)
                    self.assertEqual(ask(asked[at]), alone[at], asked[at])

            together(*[lambda first=first: work(2 * first) for first in range(8)])
        self.ended_well(desk)

    def test_saves_of_one_desk_lose_nothing(self):
        self.begin("shared", *[f"own-{n}" for n in range(4)])
        saved, lock = [], threading.Lock()
        with Desk(TOOL, self.folder) as desk:
            def save(n):
                own, shared = desk.state(f"own-{n}"), desk.state("shared")
                for turn in range(4):
                    answer = desk.change("save", own, seller(f"{n} {turn}"))
                    self.assertEqual(answer.status, 200, answer.text)
                    own = answer.data
                    while (answer := desk.change("save", shared, seller(f"{n} {turn}"))).status != 200:
                        self.assertEqual(answer.status, 409, answer.text)
                        shared = answer.data["now"]
                    shared = answer.data
                    with lock:
                        saved.append(shared["text"])
                self.assertEqual(own["undo"], 4)
                self.assertEqual(desk.post("/dossier/undo", {"name": own["name"], "was": own["digest"]}).data["undo"], 3)

            def look():
                for _ in range(8):
                    state = desk.state("shared")
                    self.assertTrue(state["text"].startswith(BEGIN))
                    self.assertIn(desk.get("/dossier", name="shared", was=state["digest"]).status, (200, 204))
                    self.assertEqual(desk.get("/dossiers").status, 200)

            together(*[lambda n=n: save(n) for n in range(4)], look, look)
            held = [desk.state("shared")["text"]]
        for path in glob.glob(os.path.join(self.folder, ".grainside-desk/shared/*.yaml")):
            with open(path) as file:
                held.append(file.read())
        self.assertEqual(len(saved), 16)
        for text in saved:
            self.assertIn(text, held)
        self.ended_well(desk)

    def test_a_new_address_while_requests_run(self):
        with Desk(TOOL, self.folder) as desk:
            ended = threading.Event()

            def ask():
                while not ended.is_set():
                    self.assertEqual(desk.get("/about").status, 200)
                    self.assertEqual(desk.ask("GET", "/?key=" + "0" * 32, cookie="").status, 403)

            def open_again():
                try:
                    for _ in range(8):
                        opened = desk.ask("GET", f"/?key={desk.another_address()}", cookie="")
                        self.assertEqual(opened.status, 303)
                        cookie = opened.headers["Set-Cookie"].split(";")[0]
                        self.assertEqual(desk.ask("GET", "/about", cookie=cookie).status, 200)
                finally:
                    ended.set()

            together(open_again, ask, ask, ask)
        self.ended_well(desk)

    def test_connections_come_and_go(self):
        with Desk(TOOL, self.folder) as desk:
            def come_and_go():
                for _ in range(2):
                    kept = [desk.connect() for _ in range(40)]
                    kept[0].sendall(b"GET /about HTTP/1.1\r\nHost: ")  # and no more
                    for one in kept:
                        one.close()

            def ask():
                for _ in range(8):
                    # One that has not arrived yet may be closed for another one.
                    try:
                        self.assertEqual(desk.get("/about").status, 200)
                    except (OSError, http.client.HTTPException):
                        pass

            together(come_and_go, come_and_go, come_and_go, ask, ask)
            desk.serves()
        self.ended_well(desk)

    def test_an_end_amid_requests(self):
        for _ in range(3):
            with Desk(TOOL, self.folder) as desk:
                whole = desk.post("/words", {"text": "PU leather tote", "on": "2026-11-26"}).bytes

                def ask():
                    for _ in range(200):
                        try:
                            answer = desk.post("/words", {"text": "PU leather tote", "on": "2026-11-26"})
                        except (OSError, http.client.HTTPException):
                            return  # the desk is gone
                        self.assertEqual((answer.status, answer.bytes), (200, whole))

                def end():
                    for _ in range(4):
                        desk.get("/dossiers")
                    desk.end()

                together(end, ask, ask, ask, ask)
            self.ended_well(desk)


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1], verbosity=2, warnings="ignore")
