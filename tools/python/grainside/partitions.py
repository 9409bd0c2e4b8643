"""Cutting a file of JSON Lines into parts that are checked apart."""

from __future__ import annotations

import os
from dataclasses import dataclass
from typing import Union

from . import _engine
from ._values import Faults, Issue


@dataclass(frozen=True)
class Partition:
    """Whole lines of a file, and the numbers that make their findings those of the whole file. Small; may be pickled."""

    path: str
    """Absolute; every machine must see the file there."""
    name: str
    """What issues and the ids of listings without one call the file: the path as it was given to `partitions`."""
    number: int
    """From 1, in the order of the file."""
    start: int
    """Bytes of the file before it."""
    end: int
    """Bytes of the file up to its end."""
    first_record: int
    first_line: int
    file_bytes: int
    """Of the whole file when it was cut."""

    def read(self) -> bytes:
        """Its lines. Raises Faults where the file has another size than when it was cut, and OSError."""
        with open(self.path, "rb") as file:
            size = os.fstat(file.fileno()).st_size
            file.seek(self.start)
            lines = file.read(self.end - self.start)
        if size != self.file_bytes or len(lines) != self.end - self.start:
            message = f"the file had {self.file_bytes} bytes when it was cut into parts, and has {size} now"
            hint = "cut it again, and leave it alone until its parts are checked"
            raise Faults([Issue("error", "file-changed", self.name, 0, 0, message, hint)])
        return lines


def partitions(path: Union[str, "os.PathLike[str]"], part_bytes: int = 64 << 20) -> list[Partition]:
    """Cuts a file of JSON Lines into parts of about `part_bytes` bytes, each ended by a line; the last may be smaller.

    One pass over the file counts its records, the nodes of an "@graph" one by one. No part is empty; an empty file has none.
    Raises Faults where the file cannot be read, or cannot be read twice.
    """
    if part_bytes < 1:
        raise ValueError(f"part_bytes: a part has a byte or more, not {part_bytes}")
    name = os.fspath(path)
    if not isinstance(name, str):
        raise TypeError(f"path: this is {type(name).__name__} and no str or path")
    places = _engine.plan(os.fsencode(name), min(part_bytes, 2**63))
    file_bytes = places[-1][1] if places else 0
    return [
        Partition(os.path.abspath(name), name, number, start, end, record, line, file_bytes)
        for number, (start, end, record, line) in enumerate(places, 1)
    ]
