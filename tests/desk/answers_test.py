"""The desk's answers against the JSON Schemas of tools/schema: answers_test.py TOOL CORPUS SCHEMAS.

By a validator that is not ours (python3-jsonschema). The schemas are asked to refuse, too: what has a member more than the
desk sends, or lacks one that it always sends.
"""

import copy
import glob
import json
import os
import shutil
import sys
import unittest
import warnings

import jsonschema

from desk_client import Desk, folder_with_the_corpus

TOOL, CORPUS, SCHEMAS = sys.argv[1:4]
FAULTY = "sample: {what: A tote}\nparts: {body: {readings: [{method: none-such, outcome: x, note: 1}]}}\ncosts: {currency: EUR, fees: 3 USD, exchange: {GBP: 1.1}}\n"
# Members whose names are the dossier's.
FREE = ("sample", "values", "exchange")


def validators():
    """By name; references are names of files beside one another."""
    schemas = {}
    for path in glob.glob(SCHEMAS + "/*.schema.json"):
        with open(path, encoding="utf-8") as file:
            schemas["file:///" + os.path.basename(path)] = json.load(file)
    found = {}
    for place, schema in schemas.items():
        jsonschema.Draft202012Validator.check_schema(schema)
        resolver = jsonschema.RefResolver(place, schema, store=schemas)
        found[place[len("file:///"):].removesuffix(".schema.json")] = jsonschema.Draft202012Validator(schema, resolver=resolver)
    return found


def objects(value, path=()):
    """Each object in it with its path, one of each kind: lists are looked into until their first items of each shape."""
    if isinstance(value, dict):
        yield path, value
        for key, member in value.items():
            yield from objects(member, path + (key,))
    if isinstance(value, list):
        for index, item in enumerate(value[:3]):
            yield from objects(item, path + (index,))


class AnswersTest(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.folder = folder_with_the_corpus(CORPUS)
        for name, text in (("faulty", FAULTY), ("broken", "sample: {what: half\n"), ("small", "sample: {what: A tote}\n"), ("no_utf8", b"sample: {what: \xff}\n")):
            with open(f"{cls.folder}/{name}.yaml", "wb") as file:
                file.write(text if isinstance(text, bytes) else text.encode())
        cls.desk = Desk(TOOL, cls.folder, "--market", "eu").__enter__()
        cls.validators = validators()

    @classmethod
    def tearDownClass(cls):
        cls.desk.__exit__()
        shutil.rmtree(cls.folder)

    def assert_fits(self, schema, answer, status=200):
        self.assertEqual(answer.status, status, answer.text[:500])
        errors = [f"{list(error.absolute_path)}: {error.message[:300]}" for error in self.validators[schema].iter_errors(answer.data)]
        self.assertEqual(errors, [])
        return answer.data

    def assert_closed(self, schema, data):
        """A member that nobody knows is refused, at each object of it."""
        count = 0
        for path, _ in list(objects(data)):
            if path and path[-1] in FREE:
                continue
            more = copy.deepcopy(data)
            at = more
            for step in path:
                at = at[step]
            at["unknown"] = 1
            with self.subTest(path=path):
                self.assertFalse(self.validators[schema].is_valid(more))
            count += 1
        return count

    def assert_needed(self, schema, data, *paths):
        for path in paths:
            less = copy.deepcopy(data)
            at = less
            for step in path[:-1]:
                at = at[step]
            del at[path[-1]]
            with self.subTest(without=path):
                self.assertFalse(self.validators[schema].is_valid(less))

    def test_what_it_is_about(self):
        about = self.assert_fits("desk_about", self.desk.get("/about"))
        self.assertIn({"currency": "EUR", "name": "euro"}, about["currencies"])
        self.assertIn({"material": "full-grain-leather", "name": "full grain leather"}, about["materials"])
        self.assertFalse([one for one in about["materials"] if one["material"].startswith("trait-") or one["material"] == "waterproof"])
        self.assert_closed("desk_about", about)
        self.assert_needed("desk_about", about, ("market",), ("currencies",), ("grades", 0, "means"))
        methods = self.assert_fits("desk_methods", self.desk.get("/methods"))
        self.assertEqual({one["kind"] for method in methods["methods"] for one in method["inputs"]}, {"outcome", "quantity", "colour", "elements", "fibres"})
        self.assert_closed("desk_methods", methods)
        self.assert_needed("desk_methods", methods, ("methods", 0, "cautions"), ("methods", 0, "inputs"))

    def is_incomplete(self, state, method, inputs):
        """Whether a reading of these inputs and no others is refused for what it lacks."""
        reading = {"method": method["method"], "date": "2026-09-20", "values": {}}
        for one in inputs:
            if one["kind"] == "outcome":
                reading["outcome"] = one["choices"][-1]["id"]  # the last is "unclear", which no number is against
            else:
                reading["values"][one["key"]] = one["example"].removesuffix(" none")
        answer = self.desk.change("try", state, {"do": "add-reading", "part": method["parts"][0], "reading": reading})
        faults = (answer.data["error"] if answer.status == 400 else answer.data).get("faults", [])
        return bool({fault["code"] for fault in faults} & {"missing-quantity", "empty-reading"})

    def test_what_is_needed_is_what_the_reader_misses(self):
        state = self.desk.get("/dossier", name="small").data
        for method in self.desk.get("/methods").data["methods"]:
            inputs = method["inputs"]
            if len(inputs) == 1:
                self.assertTrue(inputs[0]["needed"], method["method"])
                continue
            for one in inputs:
                with self.subTest(method=method["method"], key=one["key"]):
                    # Alone it makes a reading, where nothing else is needed and it does not ask for others.
                    others = any(other["needed"] for other in inputs if other is not one)
                    self.assertEqual(self.is_incomplete(state, method, [one]), others or one.get("together", False))
                    without = [other for other in inputs if other is not one]
                    self.assertEqual(self.is_incomplete(state, method, without), one["needed"] or one.get("together", False))

    def test_dossiers(self):
        dossiers = self.assert_fits("desk_dossiers", self.desk.get("/dossiers"))
        self.assert_closed("desk_dossiers", dossiers)
        self.assert_needed("desk_dossiers", dossiers, ("dossiers", 0, "readings"), ("others",))

    def test_words(self):
        text = "Tote in genuine vegan leather\nLining: 60% cotton, 30% polyester. Waterproof, durable. Full grain \U0001f45c leather from Spain. Not real leather."
        words = self.assert_fits("desk_words", self.desk.post("/words", {"text": text}))
        self.assertTrue(words["claims"] and any("edit" in one for one in words["findings"]))
        self.assert_closed("desk_words", words)
        self.assert_needed("desk_words", words, ("findings", 0, "at"), ("findings", 0, "because"), ("claims", 0, "says_name"), ("claims", 0, "kind"), ("summary", "worst"))
        self.assert_fits("desk_words", self.desk.post("/words", {"text": ""}))

    def test_what_keeps_a_wording_from_being_taken(self):
        text = "Tote in vegan leather, waterproof. Made in Italy. Assembled in Spain. No PVC."
        words = self.assert_fits("desk_words", self.desk.post("/words", {"text": text, "market": ["eu", "us"]}))
        found = {one["words"]: one for one in words["findings"]}
        self.assertNotIn("no_edit", found["vegan leather"])
        self.assertNotIn("taken_as_true", found["vegan leather"]["edit"])
        self.assertEqual(found["waterproof"]["no_edit"], "what would be true cannot be known from the listing")
        self.assertNotIn("edit", found["waterproof"])
        self.assertEqual(found["Made in Italy"]["edit"]["taken_as_true"], "Assembled in Spain")
        said = {one["words"]: one["says_name"] for one in words["claims"]}
        self.assertEqual(said["Made in Italy"], "made in Italy")

    def test_a_wording_beside_words_that_go_is_told_with_what_follows(self):
        text = "Made in Italy, sewn in Vietnam, from calf. Chrome-free leather. Luxury leather."
        words = self.assert_fits("desk_words", self.desk.post("/words", {"text": text, "market": ["eu"]}))
        found = {one["words"]: one for one in words["findings"]}
        self.assertEqual(found["Made in Italy"]["edit"]["wording"], "Sewn")
        self.assertEqual(found["Made in Italy"]["edit"]["reads"], "Sewn in Vietnam")
        # So it is told at the words that stay, too.
        both = self.desk.post("/words", {"text": "Made in Italy, sewn in Vietnam.", "market": ["eu", "us"]}).data["findings"]
        self.assertEqual({one["edit"]["reads"] for one in both if "edit" in one}, {"Sewn in Vietnam"})
        praise = self.desk.post("/words", {"text": "Tote with an eco-friendly strap.", "market": []}).data["findings"][0]
        self.assertEqual(praise["edit"]["reads"], "a strap")
        cites = [(one["cite"], one.get("from_memory")) for one in found["Chrome-free"]["cited"]]
        self.assertEqual(len(cites), len(set(cites)), cites)
        self.assertGreater(len(found["Chrome-free"]["sources"]), len(cites), "the book has two that are told alike")

    def test_markets_are_those_asked_for(self):
        text = "Wallet in vegan leather, made in Italy, chrome-free and eco-friendly."
        ask = lambda market: [one["rule"] for one in self.desk.post("/words", {"text": text, "market": market}).data["findings"]]
        european = "generic-green-eu"
        # The call asks for eu; an empty list asks for none all the same.
        for market, holds in ([], False), (["eu"], True), (["us"], False), (["us", "eu"], True), (None, True):
            with self.subTest(market=market):
                (self.assertIn if holds else self.assertNotIn)(european, ask(market))

    def test_states(self):
        names = [one["name"] for one in self.desk.get("/dossiers").data["dossiers"]]
        seen = set()
        for name in names:
            with self.subTest(dossier=name):
                if name == "no_utf8":
                    answer = self.desk.get("/dossier", name=name)
                    self.assert_fits("desk_state" if answer.status == 200 else "desk_error", answer, answer.status)
                    continue
                state = self.assert_fits("desk_state", self.desk.get("/dossier", name=name))
                seen |= {".".join(step for step in path if isinstance(step, str)) for path, _ in objects(state)}
        # Nothing of the schema went unasked.
        for kind in ("listing.fields.findings.cited", "listing.fields.findings.edit", "verdicts.limits", "verdicts.edit", "plan", "costs.lines.amount",
                     "costs.sums.price", "parts.beliefs.candidates", "costs.sheet.exchange", "faults"):
            self.assertIn(kind, seen)
        print(f"{len(names)} states fit, {len(seen)} kinds of objects")

    def test_states_are_closed(self):
        for name in ("velmora_crossbody", "watch_strap", "faulty"):
            state = self.desk.state(name)
            self.assertGreater(self.assert_closed("desk_state", state), 8)
            self.assert_needed("desk_state", state, ("name",), ("text",), ("warnings",), ("sample",), ("costs",), ("costs", "sheet", "exchange"), ("parts", 0, "readings"))
        state = self.desk.state("velmora_crossbody")
        self.assert_needed("desk_state", state, ("verdicts", 0, "at"), ("verdicts", 0, "probability"), ("judged",), ("planned",), ("costs", "sums"),
                           ("listing", "fields"), ("listing", "fields", 0, "editable"))

    def test_changes_and_errors(self):
        state = self.desk.state("small")
        added = {"do": "add-reading", "part": "body", "reading": {"method": "water-drop", "outcome": "stands"}}
        self.assert_fits("desk_state", self.desk.change("try", state, added))
        saved = self.assert_fits("desk_state", self.desk.change("save", state, added))
        self.assert_fits("desk_state", self.desk.post("/dossier/undo", {"name": "small", "was": saved["digest"]}))
        self.assert_fits("desk_state", self.desk.post("/dossier/new", {"name": "fresh", "listing": {"name": "A tote", "region": "eu"}}))
        self.assertEqual(self.desk.state("fresh")["listing"]["region"], "eu")
        unnamed = self.assert_fits("desk_error", self.desk.change("try", state, {"do": "add-reading", "part": "hardware", "reading": {"method": "xrf-filed", "values": {"composition": "Zn 95.4%"}}}), 400)
        self.assertEqual(unnamed["error"]["key"], "composition")
        stale = self.assert_fits("desk_error", self.desk.change("save", saved, added), 409)
        self.assertIn("now", stale)
        self.assert_closed("desk_error", stale)
        faults = self.assert_fits("desk_error", self.desk.change("save", state, added | {"reading": {"method": "none-such"}}), 400)
        self.assertTrue(faults["error"]["faults"])
        self.assert_closed("desk_error", faults)
        self.assert_needed("desk_error", faults, ("error",), ("error", "code"), ("error", "faults", 0, "line"))
        self.assert_fits("desk_error", self.desk.get("/nowhere"), 404)
        self.assert_fits("desk_error", self.desk.get("/dossier", name="none"), 404)
        self.assert_fits("desk_error", self.desk.ask("POST", "/words", "{"), 400)
        self.assert_fits("desk_error", self.desk.ask("GET", "/about", cookie="none"), 403)


if __name__ == "__main__":
    warnings.simplefilter("ignore")
    unittest.main(argv=sys.argv[:1], verbosity=2, warnings="ignore")
