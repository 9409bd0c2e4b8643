"""Checking the parts of a file on several machines, and joining what they wrote.

`check_part` is the task for a worker, under whichever scheduler: it may run twice, be killed at any moment and be run again
elsewhere. `join_parts` brings the parts together, or says what is missing. Both need one folder that every machine sees.
"""

from __future__ import annotations

import hashlib
import os
import secrets
from dataclasses import dataclass
from typing import BinaryIO, Callable, Iterable, Optional

from ._values import Issue
from .checker import CheckSettings
from .partitions import Partition

# The end of a listing's id and the next member of its closing line. Within a text of JSON its quotes would be escaped.
_CLOSING = b'","claims":'


class IncompleteParts(RuntimeError):
    """Parts are missing, or are not what their workers wrote."""


@dataclass(frozen=True)
class CheckedPart:
    """What a worker says of the part that it wrote."""

    number: int
    file: str
    """Its name in the folder of parts."""
    size: int
    sha256: str
    listings: int
    worst: Optional[str]
    issues: tuple[Issue, ...]

    @property
    def any_errors(self) -> bool:
        return any(issue.severity == "error" for issue in self.issues)


def part_file(number: int) -> str:
    return f"part-{number:08d}.jsonl"


def write_whole(path: str, write: Callable[[BinaryIO], object]) -> None:
    """Writes a file so that it is there whole or not at all, also where the process is killed: a temporary beside it is
    brought to the disk and renamed. A process that is killed leaves its temporary, named `.NAME.*.tmp`."""
    folder, name = os.path.split(os.path.abspath(path))
    temporary = os.path.join(folder, f".{name}.{secrets.token_hex(8)}.tmp")
    try:
        with open(temporary, "xb") as file:
            write(file)
            file.flush()
            os.fsync(file.fileno())
        os.replace(temporary, path)
    except BaseException:
        try:
            os.unlink(temporary)
        except FileNotFoundError:
            pass
        raise


def check_part(partition: Partition, settings: CheckSettings, folder: str) -> CheckedPart:
    """Checks one part and writes its records to a file of `folder`, which must exist. The same bytes each time."""
    checked = settings.checker().check_lines(
        partition.read(),
        name=partition.name,
        first_record=partition.first_record,
        first_line=partition.first_line,
    )
    file = part_file(partition.number)
    write_whole(os.path.join(folder, file), lambda out: out.write(checked.records))
    return CheckedPart(
        partition.number,
        file,
        len(checked.records),
        hashlib.sha256(checked.records).hexdigest(),
        checked.listings,
        checked.worst,
        checked.issues,
    )


def join_parts(
    planned: Iterable[Partition], done: Iterable[CheckedPart], folder: str, write: Callable[[bytes], object]
) -> int:
    """Gives the records of all parts to `write`, in the order of the file; returns the number of listings.

    Raises IncompleteParts before the first call of `write` where a part is missing, and later where a file is not what its
    worker wrote or has another number of closing lines than listings were read: use it within `write_whole`.
    """
    by_number = {part.number: part for part in done}
    numbers = [partition.number for partition in planned]
    missing = [str(number) for number in numbers if number not in by_number]
    if missing:
        raise IncompleteParts(f"not checked: part {', '.join(missing[:20])}{' ...' if len(missing) > 20 else ''}")
    listings = 0
    for number in numbers:
        part = by_number[number]
        path = os.path.join(folder, part.file)
        try:
            with open(path, "rb") as file:
                records = file.read()
        except FileNotFoundError:
            raise IncompleteParts(f"{path} is gone") from None
        if len(records) != part.size or hashlib.sha256(records).hexdigest() != part.sha256:
            raise IncompleteParts(f"{path} is not what its worker wrote")
        closing = records.count(_CLOSING)
        if closing != part.listings:
            raise IncompleteParts(f"{path} has {closing} closing lines, and {part.listings} listings were read")
        write(records)
        listings += part.listings
    return listings


def remove_parts(folder: str) -> None:
    """Removes what check_part wrote into `folder`, and what it left when it was killed; then the folder, if it is empty."""
    for name in os.listdir(folder):
        if name.startswith("part-") and name.endswith(".jsonl") or name.startswith(".part-") and name.endswith(".tmp"):
            os.unlink(os.path.join(folder, name))
    try:
        os.rmdir(folder)
    except OSError:
        pass  # something of somebody else's is in it

