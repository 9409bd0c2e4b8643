"""Validates JSON Lines on standard input: validate_records.py SCHEMA...

Each line must fit exactly one of the schemas. Exit status: 0 all do, 1 one does not (it is printed).
"""

import json
import sys

import jsonschema


def main() -> int:
    validators = []
    for path in sys.argv[1:]:
        with open(path, encoding="utf-8") as file:
            schema = json.load(file)
        jsonschema.Draft202012Validator.check_schema(schema)
        validators.append(jsonschema.Draft202012Validator(schema))
    status = 0
    for number, line in enumerate(sys.stdin.buffer, start=1):
        record = json.loads(line.decode("utf-8"))
        fitting = [validator for validator in validators if validator.is_valid(record)]
        if len(fitting) == 1:
            continue
        status = 1
        print(f"line {number} fits {len(fitting)} schemas: {record!r}")
        for validator in validators:
            for error in validator.iter_errors(record):
                print(f"  {validator.schema['title']}: {error.message}")
    return status


if __name__ == "__main__":
    sys.exit(main())
