"""What the builders of trees share: where a part begins, and the refusal of a second reading."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any, cast

from itembank.notation.tree.face import Part

if TYPE_CHECKING:
    from itembank.notation.tree import Node


class RefusedError(Exception):
    """Text that the rules allow but that has two readings or no meaning."""

    def __init__(self, message: str, offset: int) -> None:
        super().__init__(message)
        self.offset = offset


def start_of(parts: list[Any]) -> int:
    """Return the offset at which the first of `parts`, a token or a tree, begins."""
    first = parts[0]
    return first.start if isinstance(first, Part) else cast(int, first.start_pos)


def rest_of(parts: list[Any]) -> tuple[tuple[Any, Node], ...]:
    """Return the signs and the trees after the first of `parts`, in pairs."""
    return tuple((str(parts[i]), parts[i + 1].node) for i in range(1, len(parts), 2))


def chain(kind: Callable[..., Node]) -> Callable[[list[Any]], Part]:
    """Return what builds a node of parts with signs between them."""
    return lambda parts: Part(kind(parts[0].node, rest_of(parts)), parts[0].start)


def row(kind: Callable[..., Node]) -> Callable[[list[Any]], Part]:
    """Return what builds a node of parts that all have one sign between them."""
    return lambda parts: Part(kind(tuple(part.node for part in parts[::2])), parts[0].start)
