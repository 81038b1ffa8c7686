"""What comes of pieces of work: their results as they come, and those that are lost."""

from __future__ import annotations

from collections.abc import Generator
from typing import TypeAlias, TypeVar

from itembank.data_class import dataclass

P = TypeVar("P")

R = TypeVar("R")


@dataclass(frozen=True, slots=True)
class Lost:
    """A piece of work that has no result, and why: ``took longer than 30 s``."""

    why: str


Results: TypeAlias = Generator[tuple[int, R | Lost], None, None]
"""The place of each piece, and what came of it, as they come."""
