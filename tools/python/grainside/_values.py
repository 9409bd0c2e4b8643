"""Plain values that the engine and the package share. All can be pickled and compared."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Iterable, Optional


@dataclass(frozen=True)
class Issue:
    """One fault or remark about what was read. str() of it is what the command line tool prints."""

    severity: str
    """'error', 'warning' or 'note'."""
    code: str
    """Permanent and short, for example 'json-syntax'."""
    file: str
    """As the caller named it; may be empty."""
    line: int
    """From 1; 0: not known."""
    column: int
    """In bytes, from 1; 0: not known."""
    message: str
    hint: str
    """What to do; may be empty."""
    excerpt: str = ""
    """The line of the fault, control characters replaced; may be empty."""
    text: str = ""
    """All of it as lines for a terminal, which hold no control character but the ends of lines."""

    def __str__(self) -> str:
        if self.text:
            return self.text.rstrip("\n")
        return f"{self.file}: {self.severity}: {self.message} [{self.code}]" + (f"\nhint: {self.hint}" if self.hint else "")


class Faults(ValueError):
    """What was given cannot be used: a rule book, a listing, a file. Holds every issue and not only the first."""

    issues: tuple[Issue, ...]

    def __init__(self, issues: Iterable[Issue]) -> None:
        self.issues = tuple(issues)
        super().__init__(self.issues)

    def __str__(self) -> str:
        return "\n".join(str(issue) for issue in self.issues)


class BookMismatch(RuntimeError):
    """Settings came from a process with another rule book or another version of Grainside."""


class ReadingWarning(UserWarning):
    """Checker.check and Checker.claims read a listing, but not all of it as it was written."""


@dataclass(frozen=True)
class CheckedLines:
    """What came out of a piece of JSON Lines."""

    records: bytes
    """The bytes that `grainside check --format jsonl` writes (`claims` likewise): records, one a line."""
    issues: tuple[Issue, ...]
    """What was wrong with the input, in its order. Broken records are left out and the others done."""
    listings: int
    """How many were read; of check_lines, so many closing lines are in `records`."""
    worst: Optional[str]
    """The worst grade of a finding; None: nothing was found, or findings were not asked for."""

    @property
    def any_errors(self) -> bool:
        return any(issue.severity == "error" for issue in self.issues)
