"""What the tests of the Python package share: the built tool, and the invented catalog."""

import os
import subprocess
import sys

TOOL = os.environ["GRAINSIDE_TOOL"]
SOURCES = os.environ["GRAINSIDE_SOURCES"]
EXAMPLES = os.path.join(SOURCES, "tools", "python", "examples")
DAY = "2026-11-26"


def make_catalog(folder, listings, name="catalog.jsonl"):
    with open(os.path.join(folder, name), "wb") as file:
        subprocess.run([sys.executable, os.path.join(EXAMPLES, "make_catalog.py"), str(listings)], stdout=file, check=True)
    with open(os.path.join(folder, name), "rb") as file:
        return file.read()


def grainside(command, *arguments, cwd=None, data=None):
    """(exit status, standard output, standard error) of the tool."""
    done = subprocess.run(
        [TOOL, command, "--format", "jsonl", *arguments], cwd=cwd, input=data, capture_output=True, check=False
    )
    return done.returncode, done.stdout, done.stderr


def told(issues):
    """Issues as the tool writes them to standard error."""
    return "".join(f"grainside: {issue}\n" for issue in issues).encode()
