"""What prints of an item, whether it was generated or is read from a bank."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from itembank.items.item import Run, Slip, Step
    from itembank.notation.tree import Node


@dataclass(frozen=True, slots=True)
class Printed:
    """What prints of an item, read from its lines."""

    prompt: tuple[Run, ...]
    key: Node
    form: str
    steps: tuple[Step, ...]
    slips: tuple[Slip, ...]
    marks: int
    many: bool = False
    """Whether many answers are right, so that the key is an example."""
