"""Holds SARIF logs to the standard: check_log.py SCHEMA FOLDER LOG...

Each log against the schema, and then what a schema cannot say. FOLDER is where the artifacts' relative URIs lead.
Prints "N results, M regions read" over all logs. Exit status: 0 all is well, 1 something is not (it is printed).
"""

import json
import pathlib
import re
import sys
import urllib.parse

import jsonschema

# SARIF 2.1.0, 3.11.5 and 3.11.6 (from memory): braces stand doubled, square brackets and backslashes are escaped.
PLAIN_MESSAGE = re.compile(r"(?:[^\\\[\]{}]|\\[\\\[\]]|\{\{|\}\})*", re.DOTALL)
# What would move a terminal or turn the writing direction.
UNSAFE = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff]")


def words_of(text, region):
    """The slice of a region; columns count code points from 1, the end is behind the last."""
    lines = text.split("\n")[region["startLine"] - 1 : region["endLine"]]
    lines[-1] = lines[-1][: region["endColumn"] - 1]
    lines[0] = lines[0][region["startColumn"] - 1 :]
    return "\n".join(lines)


def same(slice_, words):
    if slice_ == words:
        return True
    try:
        return json.loads('"' + slice_ + '"') == words
    except json.JSONDecodeError:
        return False


class Checker:
    def __init__(self, folder):
        self.folder = pathlib.Path(folder)
        self.faults = []
        self.results = 0
        self.regions = 0

    def fault(self, what):
        self.faults.append(what)

    def expect(self, truth, what):
        if not truth:
            self.fault(what)

    def message(self, text, line_ends=False):
        self.expect(PLAIN_MESSAGE.fullmatch(text), f"a link or placeholder could be read in {text!r}")
        self.expect(not UNSAFE.search(text), f"unsafe characters in {text!r}")
        self.expect(line_ends or "\n" not in text, f"a line end in {text!r}")

    def log(self, log):
        for run in log["runs"]:
            rules = run["tool"]["driver"]["rules"]
            for rule in rules:
                for key in ("shortDescription", "fullDescription", "help"):
                    self.message(rule[key]["text"], line_ends=key == "help")
            artifacts = [artifact["location"]["uri"] for artifact in run["artifacts"]]
            self.expect(len(set(artifacts)) == len(artifacts), "an artifact stands twice")
            for result in run["results"]:
                self.results += 1
                self.result(result, rules, artifacts)
            prints = [(result["ruleId"], json.dumps(result["partialFingerprints"]), json.dumps(result["locations"]))
                      for result in run["results"]]
            self.expect(len(set(prints)) == len(prints), "two results cannot be told apart")
            for notification in run["invocations"][0]["toolExecutionNotifications"]:
                self.message(notification["message"]["text"])
            errors = [n for n in run["invocations"][0]["toolExecutionNotifications"] if n["level"] == "error"]
            self.expect(run["invocations"][0]["executionSuccessful"] == (not errors), "was the run successful?")

    def result(self, result, rules, artifacts):
        self.expect(rules[result["ruleIndex"]]["id"] == result["ruleId"], f"rule {result['ruleId']} by its number")
        self.message(result["message"]["text"])
        for related in result.get("relatedLocations", []):
            self.message(related["message"]["text"])
        for location in result["locations"] + result.get("relatedLocations", []):
            place = location.get("physicalLocation")
            if place is None:
                continue
            artifact = place["artifactLocation"]
            self.expect(artifacts[artifact["index"]] == artifact["uri"], f"artifact {artifact} by its number")
        place = result["locations"][0].get("physicalLocation")
        if place and "startColumn" in place.get("region", {}):
            self.region(place, result["properties"]["words"])

    def region(self, place, words):
        uri = urllib.parse.urlsplit(place["artifactLocation"]["uri"])
        path = self.folder / urllib.parse.unquote(uri.path)
        data = path.read_bytes()
        # Bytes that are no UTF-8 have columns of their own kind; tests of the library look at those.
        try:
            text = data.decode("utf-8-sig")
        except UnicodeDecodeError:
            return
        found = words_of(text, place["region"])
        self.regions += 1
        self.expect(same(found, words), f"{path}: {place['region']} holds {found!r} and not {words!r}")


def main() -> int:
    with open(sys.argv[1], encoding="utf-8") as file:
        schema = json.load(file)
    validator_class = jsonschema.validators.validator_for(schema)
    validator_class.check_schema(schema)
    validator = validator_class(schema)
    checker = Checker(sys.argv[2])
    for path in sys.argv[3:]:
        with open(path, encoding="utf-8") as file:
            log = json.load(file)
        errors = list(validator.iter_errors(log))
        for error in errors[:5]:
            checker.fault(f"{path}: {list(error.absolute_path)}: {error.message[:300]}")
        if not errors:
            checker.log(log)
    for fault in checker.faults[:20]:
        print(fault)
    print(f"{checker.results} results, {checker.regions} regions read")
    return 1 if checker.faults else 0


if __name__ == "__main__":
    sys.exit(main())
