# The compiled half of the package, not for use from outside: engine.cpp.
from typing import Optional

from ._values import Issue

version: str
grades: tuple[str, ...]

class Book:
    def __init__(self, folder: str | bytes) -> None: ...
    @property
    def digest(self) -> str: ...
    @property
    def rule_count(self) -> int: ...
    @property
    def markets(self) -> tuple[str, ...]: ...

class LineChecker:
    def __init__(self, book: Book, markets: tuple[str, ...], on: str) -> None: ...
    def run(
        self,
        input: bytes,
        name: str | bytes,
        lines: bool,
        first_record: int,
        first_line: int,
        claims: bool,
    ) -> tuple[bytes, tuple[Issue, ...], int, Optional[str]]: ...

def plan(path: str | bytes, part_bytes: int) -> list[tuple[int, int, int, int]]: ...
