"""Changes of dossiers are edits of their text, and of nothing else in it: edits_test.py TOOL CORPUS.

PyYAML, which is not the reader of this project, says what a file means before and after.
"""

import os
import random
import shutil
import sys
import unittest

import yaml

from desk_client import Desk, folder_with_the_corpus

TOOL, CORPUS = sys.argv[1:3]
READING = {"method": "loupe", "outcome": "nap", "date": "2026-11-20", "note": "at: the [seam], 'left' # 2"}

BLOCK = """\
# A bag, by hand.
sample:
  what: "A tote"   # as sold
  price: 10 EUR
  # bought where?
  category: bag
listing:
  name: 'Genuine "PU" leather tote, it''s new'
  description: |
    PU leather outside.

    Waterproof zip.
  material: >
    PU
    leather
  attributes:
    Lining: Cotton # twill
parts:

  body:   # outside
    readings:
      # first look
      - method: loupe
        outcome: nap
        date: 2026-11-01   # a Sunday

      - method: loupe
        # twice
        outcome: weave
        note: "a b"
  lining: {readings: [{method: loupe, outcome: weave}]}
costs:
  # what it takes
  materials:
    - item: hide
      area: 2 sq ft
      price: 4 EUR/sq ft
    - {item: thread, length: 1 m, price: 0.10 EUR/m}  # waxed
  labour: [{item: sewing, time: 10 min, rate: 15 EUR/h},
           {item: cutting, time: 5 min, rate: 15 EUR/h}]
  packing: 1 EUR
  freight: none
# the end"""
FLOW = "{sample: {what: A tote}, parts: {body: {readings: [{method: loupe, outcome: nap}]}}}\n"


def meaning(text):
    """Every scalar as its text: which of them are numbers and days is for those who read a dossier."""
    return yaml.load(text, yaml.BaseLoader)


class EditsTest(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.folder = folder_with_the_corpus(CORPUS)
        for name, text in (("block", BLOCK), ("block_crlf", BLOCK.replace("\n", "\r\n")), ("flow", FLOW), ("small", "sample:\n  what: A tote"), ("with_end", "---\nsample: {what: A tote}\n...\n")):
            with open(f"{cls.folder}/{name}.yaml", "w", newline="") as file:
                file.write(text)
        cls.desk = Desk(TOOL, cls.folder).__enter__()
        # Each try judges the dossier. Every third of the corpus is enough for every day; EVERY_DOSSIER=1 takes them all.
        names = [one["name"] for one in cls.desk.get("/dossiers").data["dossiers"]]
        own = {"block", "block_crlf", "flow", "small", "with_end"}
        cls.names = names if os.environ.get("EVERY_DOSSIER") else sorted(own) + [name for name in names if name not in own][::3]

    @classmethod
    def tearDownClass(cls):
        cls.desk.__exit__()
        shutil.rmtree(cls.folder)

    def tried(self, state, *changes, status=200):
        answer = self.desk.change("try", state, *changes)
        self.assertEqual(answer.status, status, f"{state['name']} {changes} {answer.text[:500]}")
        return answer.data

    def assert_only_added(self, before, after, where):
        """All lines of before stand in after, in order; what is new are whole lines or bytes within one."""
        at = 0
        while at < len(before) and at < len(after) and before[at] == after[at]:
            at += 1
        tail = len(before) - at
        self.assertTrue(tail == 0 or after.endswith(before[at:]), where)

    def test_readings_of_every_dossier(self):
        count = 0
        for name in self.names:
            state = self.desk.state(name)
            parts = [part["part"] for part in state["parts"]] if "parts" in state else []
            for part in sorted({*parts[:1], *parts[-1:], "trim"}):
                with self.subTest(dossier=name, part=part):
                    added = self.tried(state, {"do": "add-reading", "part": part, "reading": READING})
                    wanted = meaning(state["text"])
                    wanted.setdefault("parts", {}).setdefault(part, {}).setdefault("readings", []).append(READING)
                    self.assertEqual(meaning(added["text"]), wanted)
                    self.assert_only_added(state["text"], added["text"], name)
                    last = len(wanted["parts"][part]["readings"]) - 1
                    back = self.tried(state, {"do": "add-reading", "part": part, "reading": READING}, {"do": "remove-reading", "part": part, "index": last})
                    self.assertEqual(back["text"], state["text"])
                    count += 1
        print(f"{count} parts of {len(self.names)} dossiers: reading added, and removed again to the same bytes")

    def test_readings_changed_and_removed(self):
        count = seen = 0
        for name in self.names:
            state = self.desk.state(name)
            for part in state.get("parts", []):
                for index, reading in enumerate(part["readings"]):
                    seen += 1
                    if seen % 6 != 1:  # each judges the dossier five times
                        continue
                    with self.subTest(dossier=name, part=part["part"], index=index):
                        kept = {key: value for key, value in reading.items() if key not in ("index", "line", "title")}
                        do = {"do": "change-reading", "part": part["part"], "index": index}
                        same = self.tried(state, do | {"reading": kept})
                        self.assertEqual(same["text"], state["text"])
                        noted = self.tried(state, do | {"reading": kept | {"note": "seen, twice: #1"}})
                        wanted = meaning(state["text"])
                        wanted["parts"][part["part"]]["readings"][index]["note"] = "seen, twice: #1"
                        self.assertEqual(meaning(noted["text"]), wanted)
                        gone = self.tried(state, {"do": "remove-reading", "part": part["part"], "index": index})
                        wanted = meaning(state["text"])
                        del wanted["parts"][part["part"]]["readings"][index]
                        if not wanted["parts"][part["part"]]["readings"]:
                            del wanted["parts"][part["part"]]
                        if not wanted["parts"]:
                            del wanted["parts"]
                        self.assertEqual(meaning(gone["text"]), wanted)
                        self.assertLessEqual(len(gone["text"]), len(state["text"]))
                        count += 1
        print(f"{count} readings left as they are, noted, removed")

    def test_sample_and_listing(self):
        for name in self.names:
            state = self.desk.state(name)
            for of, key, value in (("sample", "seller", "Ferrow: Tide & Co, #1"), ("sample", "months_in_use", "3"), ("listing", "region", "eu")):
                with self.subTest(dossier=name, key=key):
                    if of == "listing" and "listing" not in state:
                        continue
                    changed = self.tried(state, {"do": "set", "of": of, "key": key, "value": value})
                    wanted = meaning(state["text"])
                    wanted[of][key] = value
                    self.assertEqual(meaning(changed["text"]), wanted)
                    if key not in meaning(state["text"])[of]:
                        self.assert_only_added(state["text"], changed["text"], name)
                        both = self.tried(state, {"do": "set", "of": of, "key": key, "value": value}, {"do": "set", "of": of, "key": key, "value": ""})
                        self.assertEqual(both["text"], state["text"])

    def test_wordings_are_taken(self):
        count = 0
        for name in self.names:
            state = self.desk.state(name)
            for field in state.get("listing", {}).get("fields", []):
                for finding in field["findings"]:
                    if "edit" not in finding:
                        continue
                    edit = finding["edit"]
                    change = {"do": "take-wording", "field": field["field"]} | edit
                    with self.subTest(dossier=name, words=edit["words"]):
                        if not field["editable"]:
                            self.tried(state, change, status=400)
                            continue
                        after = self.tried(state, change)
                        units = field["text"].encode("utf-16-le")
                        wanted = (units[: edit["at"][0] * 2] + edit["wording"].encode("utf-16-le") + units[edit["at"][1] * 2 :]).decode("utf-16-le")
                        said = next((one["text"] for one in after["listing"]["fields"] if one["field"] == field["field"]), "")
                        self.assertEqual(said, wanted)
                        count += 1
                        if count % 10 == 0:
                            self.tried(state, change | {"words": edit["words"] + "x"}, status=400)
        self.assertGreater(count, 9)
        print(f"{count} wordings taken")

    def test_costs(self):
        for name in ("block", "block_crlf", "watch_strap", "small", "flow"):
            state = self.desk.state(name)
            base = meaning(state["text"])
            for group in ("materials", "labour", "packing", "freight", "fees"):
                with self.subTest(dossier=name, group=group):
                    line = {"item": "a new one", "amount": "1.20-1.40 EUR"}
                    after = self.tried(state, {"do": "add-cost", "group": group, "line": line})
                    old = base.get("costs", {}).get(group)
                    lines = old if isinstance(old, list) else [] if old in (None, "none") else [old if isinstance(old, dict) else {"amount": old}]
                    self.assertEqual(meaning(after["text"])["costs"][group], lines + [line])
                    removed = self.tried(state, {"do": "add-cost", "group": group, "line": line}, {"do": "remove-cost", "group": group, "index": len(lines)})
                    if isinstance(old, list) or old is None:
                        self.assertEqual(removed["text"], state["text"])
                    changed = self.tried(state, {"do": "add-cost", "group": group, "line": line}, {"do": "change-cost", "group": group, "index": len(lines), "line": {"item": "a new one", "share": "10 %", "of": "hide, thread"}})
                    self.assertEqual(meaning(changed["text"])["costs"][group][-1], {"item": "a new one", "share": "10 %", "of": ["hide", "thread"]})
        state = self.desk.state("block")
        after = self.tried(state, {"do": "change-cost", "group": "materials", "index": 0, "line": {"item": "hide", "area": "3 sq ft", "price": "4 EUR/sq ft"}})
        self.assertEqual(after["text"], state["text"].replace("area: 2 sq ft", "area: 3 sq ft"))

    def test_block_style_exactly(self):
        for name in ("block", "block_crlf"):
            state = self.desk.state(name)
            end = "\r\n" if name == "block_crlf" else "\n"
            text = state["text"].replace("\r\n", "\n")

            def becomes(change, old, new):
                after = self.tried(state, change)["text"]
                self.assertEqual(after, text.replace(old, new, 1).replace("\n", end))

            becomes({"do": "set", "of": "sample", "key": "what", "value": "A bag"}, '"A tote"', "A bag")
            becomes({"do": "set", "of": "sample", "key": "seller", "value": "X"}, "  category: bag\n", "  category: bag\n  seller: X\n")
            becomes({"do": "set", "of": "sample", "key": "price", "value": ""}, "  price: 10 EUR\n", "")
            becomes({"do": "set", "of": "listing", "key": "description", "value": "One.\n\nTwo.\n"}, "    PU leather outside.\n\n    Waterproof zip.\n", "    One.\n\n    Two.\n")
            becomes({"do": "set", "of": "listing", "key": "additionalProperty.Lining", "value": "Linen"}, "Cotton # twill", "Linen # twill")
            # A block would take the comment for text.
            becomes({"do": "set", "of": "listing", "key": "additionalProperty.Lining", "value": "One.\nTwo."}, "Cotton # twill", '"One.\\nTwo." # twill')
            becomes({"do": "set", "of": "listing", "key": "material", "value": "One.\nTwo."}, ">\n    PU\n    leather\n", "|-\n    One.\n    Two.\n")
            becomes({"do": "set", "of": "listing", "key": "additionalProperty.Strap", "value": "One.\nTwo.\n"}, "Cotton # twill\n", "Cotton # twill\n    Strap: |\n      One.\n      Two.\n")
            becomes({"do": "add-reading", "part": "body", "reading": {"method": "loupe", "outcome": "nap"}}, '        note: "a b"\n', '        note: "a b"\n      - method: loupe\n        outcome: nap\n')
            becomes({"do": "remove-reading", "part": "body", "index": 1}, '      - method: loupe\n        # twice\n        outcome: weave\n        note: "a b"\n', "")
            becomes({"do": "remove-reading", "part": "lining", "index": 0}, "  lining: {readings: [{method: loupe, outcome: weave}]}\n", "")
            becomes({"do": "add-cost", "group": "labour", "line": {"item": "x", "amount": "1 EUR"}}, "rate: 15 EUR/h}]", "rate: 15 EUR/h},\n           {item: x, amount: 1 EUR}]")
            becomes({"do": "take-wording", "field": "name", "at": [0, 20], "words": 'Genuine "PU" leather', "wording": "It's"}, "Genuine \"PU\" leather", "It''s")

    def test_texts_of_listings(self):
        several = "One line: it's \"new\"\n\n  # two, indented\n- three\n"
        fields = (("name", "A 'fine' tote: #1"), ("description", several), ("material", "a\nb"), ("additionalProperty.Strap: long", "nylon, [new]"), ("additionalProperty.Care", several))
        count = 0
        for name in self.names:
            state = self.desk.state(name)
            before = meaning(state["text"])
            for field, text in fields:
                change = {"do": "set", "of": "listing", "key": field, "value": text}
                with self.subTest(dossier=name, field=field):
                    if "file" in before.get("listing", {}):
                        self.assertEqual(self.tried(state, change, status=400)["error"]["code"], "listing-file")
                        continue
                    after = self.tried(state, change)
                    wanted = meaning(state["text"])
                    of = wanted.setdefault("listing", {})
                    kind, _, attribute = field.partition(".")
                    (of.setdefault("attributes", {}) if attribute else of)[attribute or kind] = text
                    self.assertEqual(meaning(after["text"]), wanted)
                    said = {one["field"]: one["text"] for one in after["listing"]["fields"]}
                    self.assertEqual(said[field], text)
                    if attribute:
                        back = self.tried(state, change, change | {"value": ""})
                        # A text whose last line has an end gives one to a file that had none.
                        end = "\n" if text.endswith("\n") and not state["text"].endswith("\n") and "listing" not in before else ""
                        self.assertEqual(back["text"], state["text"] + end)
                    count += 1
        self.assertGreater(count, 40)
        print(f"{count} texts of listings")

    def test_a_listing_is_begun(self):
        changes = [{"do": "set", "of": "listing", "key": key, "value": value}
                   for key, value in (("captured", "2026-11-20"), ("name", "A tote"), ("description", "One.\n\nTwo.\n"), ("additionalProperty.Lining", "cotton"))]
        listing = "listing:\n  captured: 2026-11-20\n  name: A tote\n  description: |\n    One.\n\n    Two.\n  attributes: {Lining: cotton}"
        small = self.desk.state("small")
        self.assertEqual(self.tried(small, *changes)["text"], small["text"] + "\n" + listing + "\n")
        last = self.tried(small, {"do": "text", "text": small["text"] + "\nlisting:\n  name: A"}, changes[2] | {"key": "name"})
        self.assertEqual(last["text"], small["text"] + "\nlisting:\n  name: |\n    One.\n\n    Two.\n")
        empty = self.tried(small, {"do": "text", "text": "sample:\n  what: A tote\nlisting:   # to come\nparts: {}\n"}, *changes[:3])
        self.assertEqual(empty["text"], "sample:\n  what: A tote\nlisting:   # to come\n" + listing[9 : listing.index("  attributes")] + "parts: {}\n")
        flow = self.tried(self.desk.state("flow"), *changes)
        self.assertEqual(meaning(flow["text"])["listing"]["description"], "One.\n\nTwo.\n")
        self.assertTrue(flow["text"].startswith(FLOW.rstrip()[:-1]))
        # One that says nothing any more is a fault, and not written.
        state = self.desk.state("block")
        gone = [{"do": "set", "of": "listing", "key": key, "value": ""} for key in ("name", "description", "material", "additionalProperty.Lining")]
        kept = self.tried(state, {"do": "set", "of": "listing", "key": "captured", "value": "2026-11-20"}, *gone)
        self.assertEqual([fault["code"] for fault in kept["faults"]], ["missing-key"])
        self.assertNotIn("listing", meaning(self.tried(state, *gone)["text"]))

    def test_terms_of_costs(self):
        for name in ("block", "block_crlf", "watch_strap", "small", "flow"):
            state = self.desk.state(name)
            for key, value in (("exchange.USD", "0.86-0.88"), ("sales_tax", "22 %"), ("sold_in", "uk"), ("currency", "EUR")):
                with self.subTest(dossier=name, key=key):
                    change = {"do": "set", "of": "costs", "key": key, "value": value}
                    after = self.tried(state, change)
                    wanted = meaning(state["text"])
                    kind, _, currency = key.partition(".")
                    of = wanted.setdefault("costs", {})
                    (of.setdefault(kind, {}) if currency else of)[currency or kind] = value
                    self.assertEqual(meaning(after["text"]), wanted)
                    sheet = after["costs"]["sheet"]
                    self.assertEqual(sheet["exchange"][currency] if currency else sheet["values"][key], value)
                    if kind not in meaning(state["text"]).get("costs", {}):
                        self.assertEqual(self.tried(state, change, change | {"value": ""})["text"], state["text"])
        state = self.desk.state("block")
        line = {"do": "add-cost", "group": "fees", "line": {"item": "look", "amount": "10 USD"}}
        self.assertEqual([fault["code"] for fault in self.tried(state, line)["faults"]], ["missing-exchange"])
        rate = {"do": "set", "of": "costs", "key": "exchange.USD", "value": "0.8"}
        both = self.tried(state, line, rate)
        self.assertEqual([one["amount"]["value"] for one in both["costs"]["lines"] if one["item"] == "look"], [8])
        self.tried(state, {"do": "set", "of": "costs", "key": "exchange.", "value": "1"}, status=400)
        self.tried(state, {"do": "set", "of": "costs", "key": "exchange", "value": "1"}, status=400)

    def test_hostile_values_stay_values(self):
        random.seed(7)
        signs = ["a", " ", ": ", " #", "- ", "{", "}", "[", "]", ",", "'", '"', "\\", "\n", "&", "*", "!", "|", ">", "%", "@", "`", "~", "null", "\u00e9", "\U0001f45c", "---", "...", "<b>", "0x1", "\t", "?", "=", "\u00a0"]
        for name in ("block", "flow"):
            state = self.desk.state(name)
            values = signs + ["".join(random.choices(signs, k=random.randint(1, 8))) for _ in range(30)]
            for value in values:
                with self.subTest(dossier=name, value=value):
                    after = self.tried(state, {"do": "set", "of": "sample", "key": "seller", "value": value})
                    self.assertEqual(after["sample"]["seller"], value)
                    self.assertEqual(meaning(after["text"])["sample"]["seller"], value)
                    noted = self.tried(state, {"do": "add-reading", "part": "body", "reading": READING | {"note": value}})
                    self.assertEqual(meaning(noted["text"])["parts"]["body"]["readings"][-1]["note"], value)

    def test_what_is_no_change(self):
        state = self.desk.state("block")
        for change in ({"do": "nothing"}, {}, {"do": "add-reading", "part": "wing", "reading": READING}, {"do": "add-reading", "part": "body", "reading": {}}, {"do": "remove-reading", "part": "body", "index": 2}, {"do": "remove-reading", "part": "body", "index": -1}, {"do": "set", "of": "sample", "key": "nonsense", "value": "x"}, {"do": "set", "of": "parts", "key": "body", "value": "x"}, {"do": "set", "of": "listing", "key": "file", "value": "/etc/passwd"}, {"do": "add-cost", "group": "profit", "line": {"amount": "1 EUR"}}, {"do": "remove-cost", "group": "fees", "index": 0}, {"do": "take-wording", "field": "parts", "at": [0, 1], "words": "x", "wording": "y"}, {"do": "take-wording", "field": "name", "at": [5, 2], "words": "x", "wording": "y"}, {"do": "take-wording", "field": "name", "at": [0, 99999999], "words": "x", "wording": "y"}, {"do": "add-reading", "part": "body", "reading": {"method": "xrf-filed", "values": {"composition": "95 %"}}}):
            with self.subTest(change=change):
                self.tried(state, change, status=400)
        faulty = self.tried(state, {"do": "add-reading", "part": "body", "reading": {"method": "none-such", "outcome": "x"}})
        self.assertEqual(faulty["faults"][0]["code"], "unknown-method")
        self.assertEqual(self.desk.change("save", state, {"do": "add-reading", "part": "body", "reading": {"method": "none-such"}}).data["error"]["code"], "has-faults")
        self.assertEqual(self.desk.state("block")["text"], state["text"])


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1], verbosity=2, warnings="ignore")
