"""Who may ask the desk, and that nobody holds it up: guard_test.py TOOL CORPUS."""

import os
import shutil
import socket
import sys
import tempfile
import threading
import time
import unittest

from desk_client import Desk, read_all

TOOL, CORPUS = sys.argv[1:3]
SMALL = "sample: {what: A tote}\n"
SCRIPT = "<script>alert(1)</script>"


class GuardTest(unittest.TestCase):
    def setUp(self):
        self.place = tempfile.mkdtemp()
        self.folder = os.path.join(self.place, "dossiers")
        os.mkdir(self.folder)
        self.write("tote.yaml", SMALL)
        with open(os.path.join(self.place, "secret.yaml"), "w") as file:
            file.write("sample: {what: secret of another folder}\n")

    def tearDown(self):
        shutil.rmtree(self.place)

    def write(self, name, text):
        with open(os.path.join(self.folder, name), "w") as file:
            file.write(text)

    def refused(self, answer, status, code=None):
        self.assertEqual(answer.status, status, answer.text)
        if code:
            self.assertEqual(answer.data["error"]["code"], code)
        self.assertEqual(answer.headers["X-Content-Type-Options"], "nosniff")

    def test_keys_open_once(self):
        with Desk(TOOL, self.folder) as desk:
            self.assertIn("'dossiers'", desk.says)
            self.refused(desk.ask("GET", f"/?key={desk.key}", cookie=""), 403)  # used
            self.refused(desk.ask("GET", "/?key=" + "0" * 32, cookie=""), 403)
            self.refused(desk.ask("GET", "/?key=", cookie=""), 403)
            again = desk.another_address()
            opened = desk.ask("GET", f"/?key={again}", cookie="")
            self.assertEqual((opened.status, opened.headers["Location"]), (303, "/"))
            for part in ("HttpOnly", "SameSite=Strict", "Path=/"):
                self.assertIn(part, opened.headers["Set-Cookie"])
            self.assertEqual(desk.get("/about").status, 200)  # the first session stays open

    def test_nothing_without_a_session(self):
        with Desk(TOOL, self.folder) as desk:
            name = desk.cookie.split("=")[0]
            for cookie in ("", f"{name}=", f"{name}=" + "0" * 32, desk.cookie[:-1], "other=1; " + desk.cookie[:-1] + "g"):
                for path in ("/about", "/dossiers", "/dossier?name=tote", "/index.html", "/report?name=tote&form=html"):
                    self.refused(desk.ask("GET", path, cookie=cookie), 403, "no-session")
                self.refused(desk.ask("POST", "/words", {"text": "a"}, cookie=cookie), 403, "no-session")
            page = desk.ask("GET", "/", cookie="")
            self.assertIn("press Enter", page.text)
            self.assertEqual(desk.ask("GET", "/about", cookie="a=b; " + desk.cookie).status, 200)

    def test_foreign_hosts_and_pages(self):
        with Desk(TOOL, self.folder) as desk:
            for host in ("example.org", f"example.org:{desk.port}", "127.0.0.1", "127.0.0.1:1", f"127.0.0.1.example.org:{desk.port}", f"[::1]:{desk.port}", f"evil@127.0.0.1:{desk.port}"):
                self.refused(desk.ask("GET", "/about", headers={"Host": host}), 403, "foreign-host")
            self.refused(desk.ask("GET", "/about", headers={"Host": None}), 403, "foreign-host")
            for origin in (None, "null", "http://example.org", f"https://127.0.0.1:{desk.port}", f"http://127.0.0.1:{desk.port + 1}", f"http://localhost:{desk.port}", desk.origin + "/"):
                self.refused(desk.ask("POST", "/words", {"text": "a"}, headers={"Origin": origin}), 403, "foreign-page")
            for site in ("cross-site", "same-site"):
                self.refused(desk.ask("GET", "/about", headers={"Sec-Fetch-Site": site}), 403, "foreign-page")
            self.refused(desk.ask("POST", "/words", "text=a", headers={"Content-Type": "application/x-www-form-urlencoded"}), 403, "wrong-type")
            self.refused(desk.ask("POST", "/words", "{}", headers={"Content-Type": "text/plain"}), 403, "wrong-type")
            self.refused(desk.ask("PUT", "/words", "{}"), 405)
            self.refused(desk.ask("DELETE", "/dossier?name=tote"), 405)
            local = {"Host": f"localhost:{desk.port}", "Origin": f"http://localhost:{desk.port}"}
            self.assertEqual(desk.ask("POST", "/words", {"text": "a"}, headers=local).status, 200)

    def test_every_answer_is_fenced_in(self):
        with Desk(TOOL, self.folder) as desk:
            for answer in (desk.get("/"), desk.get("/about"), desk.get("/nothing"), desk.ask("GET", "/", cookie=""), desk.post("/words", "no")):
                policy = answer.headers["Content-Security-Policy"]
                self.assertIn("default-src 'none'", policy)
                self.assertNotIn("unsafe", policy)
                for name, value in (("X-Content-Type-Options", "nosniff"), ("Cache-Control", "no-store"), ("Referrer-Policy", "no-referrer"), ("Cross-Origin-Opener-Policy", "same-origin"), ("Cross-Origin-Resource-Policy", "same-origin")):
                    self.assertEqual(answer.headers[name], value)
            report = desk.get("/report", name="tote", form="html")
            self.assertIn("sandbox", report.headers["Content-Security-Policy"])
            self.assertNotIn("script-src", report.headers["Content-Security-Policy"])

    def test_no_way_out_of_the_folder(self):
        os.symlink(os.path.join(self.place, "secret.yaml"), os.path.join(self.folder, "link.yaml"))
        os.mkfifo(os.path.join(self.folder, "pipe.yaml"))
        os.mkdir(os.path.join(self.folder, "folder.yaml"))
        with Desk(TOOL, self.folder) as desk:
            for name in ("../secret", "..%2Fsecret", "..%252Fsecret", "%2e%2e/secret", "/etc/passwd", ".", "..", "", "tote%00", "tote%00.txt", "..\\secret", "a/b", ".hidden", "-tote", "tote%20", "t" * 101, "%ff", "t%E2%80%AEet", "%0atote"):
                answer = desk.ask("GET", f"/dossier?name={name}")
                self.assertIn(answer.status, (400, 404), name)
                self.assertNotIn("secret of", answer.text)
            for path in ("/../secret.yaml", "/%2e%2e/secret.yaml", "/tote.yaml", "//etc/passwd", "/./index.html", "/.grainside-desk/"):
                self.assertEqual(desk.ask("GET", path).status, 404, path)
            for name in ("link", "pipe", "folder"):
                self.assertEqual(desk.ask("GET", f"/dossier?name={name}").status, 404, name)
                self.assertEqual(desk.post("/dossier/save", {"name": name, "was": "", "changes": []}).status, 404)
            listed = desk.get("/dossiers").data
            self.assertEqual([one["name"] for one in listed["dossiers"]], ["tote"])
            self.assertEqual(listed["others"], 3)
            # A history that leads elsewhere is not followed, and nothing is saved without one.
            elsewhere = os.path.join(self.place, "elsewhere")
            os.mkdir(elsewhere)
            os.symlink(elsewhere, os.path.join(self.folder, ".grainside-desk"))
            state = desk.state("tote")
            answer = desk.change("save", state, {"do": "set", "of": "sample", "key": "seller", "value": "x"})
            self.refused(answer, 500, "no-history")
            self.assertEqual(os.listdir(elsewhere), [])
            self.assertEqual(desk.state("tote")["text"], SMALL)

    def test_pictures_are_those_that_a_dossier_names(self):
        png = b"\x89PNG\r\n\x1a\n" + b"0" * 100
        os.symlink(os.path.join(self.place, "secret.yaml"), os.path.join(self.folder, "out.png"))
        self.write("text.png", SCRIPT)
        self.write("tote.yaml", SMALL + "parts:\n  body:\n    readings:\n" + "".join(
            f"      - {{method: loupe, outcome: nap, photo: {photo}}}\n" for photo in ("out.png", "text.png", "../secret.yaml", "missing.png")))
        with Desk(TOOL, self.folder) as desk:
            for photo, status in (("out.png", 404), ("text.png", 415), ("../secret.yaml", 404), ("missing.png", 404), ("tote.yaml", 404), ("", 404)):
                self.refused(desk.get("/picture", name="tote", photo=photo), status)
            image = {"Content-Type": "image/png"}
            kept = desk.ask("POST", "/picture?name=tote", png, headers=image)
            self.assertRegex(kept.data["photo"], r"^tote-\d{4}-\d\d-\d\d-1\.png$")
            self.assertTrue(desk.ask("POST", "/picture?name=tote", png, headers=image).data["photo"].endswith("-2.png"))
            self.refused(desk.get("/picture", name="tote", photo=kept.data["photo"]), 404)  # not named yet
            self.write("tote.yaml", SMALL + f"parts: {{body: {{readings: [{{method: loupe, outcome: nap, photo: {kept.data['photo']}}}]}}}}\n")
            shown = desk.get("/picture", name="tote", photo=kept.data["photo"])
            self.assertEqual((shown.status, shown.headers["Content-Type"], shown.bytes), (200, "image/png", png))
            self.refused(desk.ask("POST", "/picture?name=tote", SCRIPT, headers=image), 415, "no-picture")
            self.refused(desk.ask("POST", "/picture?name=other", png, headers=image), 404)
            self.refused(desk.ask("POST", "/picture?name=tote", png), 403, "wrong-type")

    def test_hostile_words_come_back_inert(self):
        self.write("tote.yaml", f"sample: {{what: '{SCRIPT}'}}\nlisting: {{description: '{SCRIPT} genuine PU leather'}}\n")
        self.write("a(b).yaml", SMALL)
        self.write(SCRIPT.replace("/", "_") + ".yaml", SMALL)
        with Desk(TOOL, self.folder) as desk:
            for answer in (desk.state("tote"), desk.post("/words", {"text": SCRIPT + " PU leather"}).data):
                self.assertTrue(answer)
            for path in ("/dossiers", "/dossier?name=tote"):
                answer = desk.ask("GET", path)
                self.assertEqual(answer.headers["Content-Type"], "application/json; charset=utf-8")
                self.assertEqual(answer.headers["X-Content-Type-Options"], "nosniff")
            self.assertEqual(desk.get("/dossiers").data["others"], 1)
            report = desk.get("/report", name="tote", form="html")
            self.assertNotIn(SCRIPT, report.text)
            self.assertIn("alert(1)", report.text)
            self.assertEqual(desk.ask("GET", "/x%0d%0aSet-Cookie:%20a=b").headers.get("Set-Cookie"), None)

    def test_bad_requests(self):
        with Desk(TOOL, self.folder) as desk:
            for body in ("", "{", "[]", '"a"', "{}", '{"text":1}', '{"text":"a","text":"b"}', "[" * 5000, '{"text":' + "[" * 5000, "{" + '"a":{' * 30 + "}" * 31, '{"text":"\\ud800"}', '{"text":"a","market":"eu"}', '{"text":"a","market":["nowhere"]}', '{"text":"a","on":"today"}', b'{"text":"\xff"}'):
                answer = desk.ask("POST", "/words", body)
                self.assertEqual(answer.status, 400, body)
                self.assertIn(answer.data["error"]["code"], ("bad-json", "bad-request"))
            self.refused(desk.post("/words", {"text": "a" * 300_000}), 413)
            self.assertEqual(desk.get("/nothing").status, 404)
            desk.serves()

    def test_malformed_heads(self):
        with Desk(TOOL, self.folder) as desk:
            host = f"Host: 127.0.0.1:{desk.port}\r\nCookie: {desk.cookie}\r\n".encode()
            for request, status in (
                    (b"GET /about HTTP/1.1\r\n" + host + b"\r\n", b"200"),
                    (b"GET /about HTTP/1.1\r\n" + host + host + b"\r\n", b"400"),
                    (b"GET /about\r\n" + host + b"\r\n", b"400"),
                    (b"GET /about HTTP/2.0\r\n" + host + b"\r\n", b"400"),
                    (b"GET about HTTP/1.1\r\n" + host + b"\r\n", b"400"),
                    (b"GET /about HTTP/1.1\r\n" + host + b" folded: x\r\n\r\n", b"400"),
                    (b"GET /about HTTP/1.1\r\nA\x00b: c\r\n" + host + b"\r\n", b"400"),
                    (b"GET /" + b"a" * 5000 + b" HTTP/1.1\r\n" + host + b"\r\n", b"414"),
                    (b"GET /about HTTP/1.1\r\nX: " + b"a" * 20000 + b"\r\n" + host + b"\r\n", b"431"),
                    (b"GET /about HTTP/1.1\r\nRange: bytes=" + b"0-,0-" * 2500 + b"\r\n" + host + b"\r\n", b"200"),
                    # A second request in the same connection, or in a body that was refused, is none.
                    ((b"GET /about HTTP/1.1\r\n" + host + b"\r\n") * 3, b"200")):
                got = desk.raw(request)
                self.assertEqual(got[9:12], status, request[:60])
                self.assertEqual(got.count(b"HTTP/1.1 "), 1, request[:60])
            smuggled = b"GET /about HTTP/1.1\r\n" + host + b"\r\n"
            for extra in (b"Content-Length: 5\r\nContent-Length: 6\r\n", b"Transfer-Encoding: chunked\r\n", b"Content-Length: 12abc\r\n", b"Content-Length: -1\r\n", b"Content-Length: 99999999999999999999999\r\n", b"Content-Encoding: gzip\r\nContent-Length: 5\r\n", b""):
                got = desk.raw(b"POST /words HTTP/1.1\r\n" + host + f"Origin: {desk.origin}\r\nContent-Type: application/json\r\n".encode() + extra + b"\r\n" + smuggled)
                self.assertIn(got[9:12], (b"400", b"411"), extra)
                self.assertEqual(got.count(b"HTTP/1.1 "), 1, extra)
            desk.serves()

    def test_a_body_of_a_gigabyte_is_refused_early(self):
        with Desk(TOOL, self.folder) as desk:
            before = desk.memory()
            for head in (b"Content-Length: 1073741824\r\n", b"Transfer-Encoding: chunked\r\n"):
                with desk.connect() as connection:
                    connection.sendall(f"POST /words HTTP/1.1\r\nHost: 127.0.0.1:{desk.port}\r\nCookie: {desk.cookie}\r\nOrigin: {desk.origin}\r\nContent-Type: application/json\r\n".encode() + head + b"\r\n")
                    begun, sent = time.monotonic(), 0
                    try:
                        while sent < 2**30:
                            sent += connection.send(b"10000\r\n" + b"a" * 65536 + b"\r\n")
                    except ConnectionError:
                        pass
                    self.assertLess(time.monotonic() - begun, 5)
                    self.assertLess(sent, 2**28)
            self.assertLess(desk.memory() - before, 8)  # MiB; 1024 were offered
            desk.serves()

    def test_slow_and_idle_clients_keep_nobody_waiting(self):
        with Desk(TOOL, self.folder) as desk:
            idle = [desk.connect() for _ in range(150)]
            self.assertLess(desk.serves(), 2)
            begun = time.monotonic()
            slow = desk.connect()
            slow.settimeout(30)
            ended = threading.Event()

            def drip():
                try:
                    for byte in b"GET /about HTTP/1.1\r\nX: aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa":
                        slow.sendall(bytes([byte]))
                        time.sleep(0.5)
                except OSError:
                    pass
                ended.set()

            dripping = threading.Thread(target=drip)
            dripping.start()
            while not ended.is_set():
                self.assertLess(desk.serves(), 2)
                time.sleep(0.2)
            self.assertLess(time.monotonic() - begun, 20)  # 62 bytes, one each half second, would be 31 seconds
            dripping.join()
            for one in idle:
                one.settimeout(5)
                self.assertEqual(read_all(one), b"")
                one.close()
            slow.close()
            desk.serves()

    def test_a_flood_of_connections(self):
        with Desk(TOOL, self.folder) as desk:
            before = desk.memory()
            kept = []
            for _ in range(10):
                kept += [desk.connect() for _ in range(60)]
                self.assertLess(desk.serves(), 2)
            self.assertLess(desk.memory() - before, 8)
            for one in kept:
                one.close()
            desk.serves()

    def test_ports_and_ends(self):
        with Desk(TOOL, self.folder) as desk:
            import subprocess
            taken = subprocess.run([TOOL, "desk", "--port", str(desk.port), self.folder], capture_output=True, text=True, stdin=subprocess.DEVNULL)
            self.assertEqual(taken.returncode, 2)
            self.assertIn("another desk may have it", taken.stderr)
            missing = subprocess.run([TOOL, "desk", "/nowhere/at/all"], capture_output=True, text=True, stdin=subprocess.DEVNULL)
            self.assertEqual((missing.returncode, missing.stdout), (2, ""))
            with self.assertRaises(OSError):
                socket.create_connection(("127.0.0.2", desk.port), timeout=2)
        self.assertEqual(desk.process.returncode, 0)


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1], verbosity=2, warnings="ignore")
