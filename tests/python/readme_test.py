"""The sessions of tools/python/README.md: each block of Python with its output, four blanks in, right behind it."""

import contextlib
import io
import os
import re
import sys

try:
    import pandas  # noqa: F401  one of the sessions does
except ImportError:
    print("python3-pandas is not installed: the sessions were not run")
    sys.exit(77)

README = os.path.join(os.environ["GRAINSIDE_SOURCES"], "tools", "python", "README.md")
SESSION = re.compile(r"^```python\n((?:(?!```)[^\n]*\n)*)```\n\n((?:    [^\n]*\n)+)", re.MULTILINE)

with open(README, encoding="utf-8") as page:
    sessions = SESSION.findall(page.read())
different = 0
for code, output in sessions:
    wanted = re.sub("^    ", "", output, flags=re.MULTILINE)
    came = io.StringIO()
    with contextlib.redirect_stdout(came):
        exec(compile(code, README, "exec"), {"__name__": "__main__"})
    if came.getvalue() != wanted:
        different += 1
        print("--- the page says\n" + wanted + "--- came out\n" + came.getvalue())
print(f"{len(sessions)} sessions, {different} different")
sys.exit(0 if len(sessions) >= 2 and different == 0 else 1)
