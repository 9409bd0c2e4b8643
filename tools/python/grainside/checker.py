"""Checking listings: text in, findings out."""

from __future__ import annotations

import datetime
import json
import os
import re
import warnings
from dataclasses import dataclass
from typing import Any, Iterable, Mapping, Optional, Union

from . import _engine
from ._values import CheckedLines, Faults, ReadingWarning
from .book import RuleBook, same_book

Day = Union[str, datetime.date, None]
OneListing = Union[Mapping[str, Any], str, bytes]
Name = Union[str, "os.PathLike[str]"]


def _day(on: Day) -> str:
    if on is None:
        return datetime.date.today().isoformat()
    if isinstance(on, datetime.date):
        return datetime.date(on.year, on.month, on.day).isoformat()
    if isinstance(on, str) and re.fullmatch("[0-9]{4}-[0-9]{2}-[0-9]{2}", on):
        try:
            return datetime.date.fromisoformat(on).isoformat()
        except ValueError:
            pass
    raise ValueError(f"on: {on!r} is no day written as 'YYYY-MM-DD'")


def _markets(asked: Iterable[str], book: RuleBook) -> tuple[str, ...]:
    if isinstance(asked, (str, bytes)):
        raise TypeError(f"markets: write a list of them, as in ['us', 'eu'], not {asked!r}")
    markets: list[str] = []
    for name in asked:
        if not isinstance(name, str):
            raise TypeError(f"markets: a market is a text, as in 'us', not {name!r}")
        market = name.lower()
        if market not in book.markets:
            raise ValueError(f"markets: there is no market {name!r}; the book has {', '.join(book.markets)}")
        if market not in markets:
            markets.append(market)
    return tuple(markets)


def _at_least_one(what: str, number: int) -> int:
    if not 1 <= number < 2**63:
        raise ValueError(f"{what}: counts from 1, not {number}")
    return number


def _bytes(lines: bytes) -> bytes:
    if not isinstance(lines, bytes):
        raise TypeError(
            f"JSON Lines are bytes, not {type(lines).__name__}; read the file in mode 'rb', or encode the text as UTF-8"
        )
    return lines


@dataclass(frozen=True)
class CheckSettings:
    """What a check depends on, as plain values that can be pickled, compared and written into a log.

    Get them from `checker.settings`; `settings.checker()` makes a checker of them, in whichever process.
    """

    folder: Optional[str]
    """The folder of the rule book; None: the built-in book."""
    digest: str
    """Of the rule book."""
    version: str
    """Of Grainside."""
    markets: tuple[str, ...]
    on: str
    """The day whose rules apply, always stated: a run that goes past midnight, or over time zones, has one day."""

    def checker(self) -> "Checker":
        """Raises BookMismatch where this process has another rule book or version."""
        return Checker(same_book(self.folder, self.digest, self.version), markets=self.markets, on=self.on)


class Checker:
    """Checks listings by a rule book.

    book: the built-in one where none is given.
    markets: apply the rules of these markets, as in ['us', 'eu'], besides those of every market; none: of the regions that a
        listing states.
    on: apply the rules in force on this day, 'YYYY-MM-DD' or a date; default: today.

    A checker works for one thread at a time and raises RuntimeError where a second one asks; `settings.checker()` makes
    another that shares the book. It is pickled as its settings.
    """

    def __init__(self, book: Optional[RuleBook] = None, *, markets: Iterable[str] = (), on: Day = None) -> None:
        if book is None:
            book = RuleBook()
        elif not isinstance(book, RuleBook):
            raise TypeError(f"book: this is {type(book).__name__} and no grainside.RuleBook")
        self._book = book
        self._settings = CheckSettings(book.folder, book.digest, _engine.version, _markets(markets, book), _day(on))
        self._engine = _engine.LineChecker(book._engine, self._settings.markets, self._settings.on)

    @property
    def book(self) -> RuleBook:
        return self._book

    @property
    def settings(self) -> CheckSettings:
        return self._settings

    def __repr__(self) -> str:
        return f"<grainside.Checker by {self._book!r}, markets {list(self._settings.markets)}, on {self._settings.on}>"

    def __reduce__(self) -> tuple[Any, ...]:
        return CheckSettings.checker, (self._settings,)

    def check(self, listing: OneListing, *, name: Name = "listing") -> list[dict[str, Any]]:
        """The findings of one listing: a dict of schema.org's Product, or its JSON as str or bytes.

        Each finding is a dict as tools/schema/finding.schema.json has it; 'start' and 'end' count bytes of the field in
        UTF-8. Raises Faults where the listing cannot be read, and warns with ReadingWarning where a part of it cannot.
        """
        return self._one(listing, name, claims=False)[:-1]

    def claims(self, listing: OneListing, *, name: Name = "listing") -> list[dict[str, Any]]:
        """What one listing asserts, part by part: dicts as tools/schema/claim.schema.json has them."""
        return self._one(listing, name, claims=True)

    def check_lines(
        self, lines: bytes, *, name: Name = "catalog.jsonl", first_record: int = 1, first_line: int = 1
    ) -> CheckedLines:
        """Checks JSON Lines, one product a line; `records` are the bytes of `grainside check --format jsonl`.

        name: what ids of listings without one, and issues, call the source.
        first_record, first_line: the numbers of what comes first, where `lines` are a part of a file (see partitions).

        A broken record is told of in `issues`, and the others are checked. Other threads run meanwhile.
        """
        return self._lines(lines, name, first_record, first_line, claims=False)

    def claims_lines(
        self, lines: bytes, *, name: Name = "catalog.jsonl", first_record: int = 1, first_line: int = 1
    ) -> CheckedLines:
        """The same with `grainside claims --format jsonl`, which knows no closing lines and no grades."""
        return self._lines(lines, name, first_record, first_line, claims=True)

    def _lines(self, lines: bytes, name: Name, first_record: int, first_line: int, claims: bool) -> CheckedLines:
        return CheckedLines(
            *self._engine.run(
                _bytes(lines),
                os.fsencode(name),
                True,
                _at_least_one("first_record", first_record),
                _at_least_one("first_line", first_line),
                claims,
            )
        )

    def _one(self, listing: OneListing, name: Name, claims: bool) -> list[dict[str, Any]]:
        if isinstance(listing, Mapping):
            text = json.dumps(listing if isinstance(listing, dict) else dict(listing), allow_nan=False).encode()
        elif isinstance(listing, str):
            # A lone surrogate has no UTF-8; what it becomes is reported as the bytes of a file would be.
            text = listing.encode("utf-8", "surrogatepass")
        elif isinstance(listing, bytes):
            text = listing
        else:
            raise TypeError(f"a listing is a dict, or JSON as str or bytes, not {type(listing).__name__}")
        records, issues, listings, _ = self._engine.run(text, os.fsencode(name), False, 1, 1, claims)
        if any(issue.severity == "error" for issue in issues):
            raise Faults(issues)
        if listings != 1:
            raise ValueError(f"one listing is asked for, and here are {listings}; check_lines takes many")
        for issue in issues:
            warnings.warn(str(issue), ReadingWarning, stacklevel=3)
        return [json.loads(record) for record in records.splitlines()]


def exit_status(worst: Optional[str], any_errors: bool, fail_at: str = "misleading") -> int:
    """What `grainside check --fail-at` ends with: 2 an error, 1 a grade as bad as `fail_at` or worse, 0 neither."""
    if fail_at not in _engine.grades:
        raise ValueError(f"fail_at: there is no grade {fail_at!r}; grades are {', '.join(_engine.grades)}")
    if any_errors:
        return 2
    return int(worst is not None and _engine.grades.index(worst) <= _engine.grades.index(fail_at))


def worst_of(grades: Iterable[Optional[str]]) -> Optional[str]:
    """The worst of these grades; None, which stands for nothing found, counts for nothing."""
    return min((grade for grade in grades if grade is not None), key=_engine.grades.index, default=None)
