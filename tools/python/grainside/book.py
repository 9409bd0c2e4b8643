"""The rule book, loaded once and then shared by any number of checkers and threads."""

from __future__ import annotations

import os
import threading
from typing import Any, Optional, Union

from . import _engine
from ._values import BookMismatch

# By digest, which says what a book does whatever folder it came from. A worker unpickles the same book for each task.
_KEPT = 4
_kept: dict[str, "RuleBook"] = {}
_kept_lock = threading.Lock()


class RuleBook:
    """`RuleBook()` is the book that is built in, `RuleBook(folder)` reads one that is laid out like the project's rules/.

    Raises Faults with every fault of every file. Immutable; any number of threads may use one. It is pickled as folder and
    digest: the other process loads it there, and BookMismatch is raised where it finds another book.
    """

    folder: Optional[str]
    """The absolute path of its folder; None: the built-in book."""

    def __init__(self, folder: Union[str, "os.PathLike[str]", None] = None) -> None:
        self.folder = None if folder is None else os.path.abspath(os.fspath(folder))
        self._engine = _engine.Book(b"" if self.folder is None else os.fsencode(self.folder))

    @property
    def digest(self) -> str:
        """Sixteen hexadecimal digits: two books with the same digest give the same findings."""
        return self._engine.digest

    @property
    def rule_count(self) -> int:
        return self._engine.rule_count

    @property
    def markets(self) -> tuple[str, ...]:
        """The markets that a check may be asked for: 'us', 'eu', ..."""
        return self._engine.markets

    def __repr__(self) -> str:
        return f"<grainside.RuleBook {self.folder or 'built in'}, {self.rule_count} rules, digest {self.digest}>"

    def __reduce__(self) -> tuple[Any, ...]:
        return same_book, (self.folder, self.digest, _engine.version)


def same_book(folder: Optional[str], digest: str, version: str) -> RuleBook:
    """The book of this digest, from this process's memory or its folder. Raises BookMismatch where it is another one."""
    if version != _engine.version:
        raise BookMismatch(
            f"the check was set up by Grainside {version}, and this process has {_engine.version}; install the same "
            "version on every machine"
        )
    with _kept_lock:
        if digest in _kept:
            return _kept[digest]
    book = RuleBook(folder)
    if book.digest != digest:
        where = "the built-in rule book" if folder is None else f"the rule book in {folder}"
        raise BookMismatch(
            f"{where} has the digest {book.digest} in this process and had {digest} where the check was set up; bring the "
            "same book to every machine"
        )
    with _kept_lock:
        while len(_kept) >= _KEPT:
            del _kept[next(iter(_kept))]
        _kept[digest] = book
    return book
