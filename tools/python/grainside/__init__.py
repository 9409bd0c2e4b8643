"""Grainside checks what listings of leather goods claim, against cited rules.

    import grainside

    checker = grainside.Checker(markets=["us", "eu"], on="2026-11-26")
    for finding in checker.check({"name": "Genuine PU leather tote"}):
        print(finding["grade"], finding["words"], finding.get("say_instead"))

A whole file at once, as bytes in and bytes out: `Checker.check_lines`. On several machines: `partitions` cuts the file,
`grainside.parts` has the task for a worker and what joins the parts; README.md has a recipe with Dask.

A RuleBook may be used by any number of threads; a Checker by one at a time. Nothing here is legal advice.
"""

from . import _engine
from ._values import BookMismatch, CheckedLines, Faults, Issue, ReadingWarning
from .book import RuleBook
from .checker import Checker, CheckSettings, exit_status, worst_of
from .partitions import Partition, partitions

for _one in (BookMismatch, CheckedLines, Faults, Issue, ReadingWarning, RuleBook, Checker, CheckSettings, Partition):
    _one.__module__ = __name__  # the name that messages and pickles give

__version__: str = _engine.version

__all__ = [
    "BookMismatch",
    "CheckSettings",
    "CheckedLines",
    "Checker",
    "Faults",
    "Issue",
    "Partition",
    "ReadingWarning",
    "RuleBook",
    "exit_status",
    "partitions",
    "worst_of",
]
