"""The shapes that several nodes share: how to come to what is below them, and to put it back."""

from __future__ import annotations

from typing import Any

from itembank.notation.tree.face import Parts


def _rejoined(node: Any, below: tuple[Any, ...]) -> Any:
    rest = tuple((op, part) for (op, _), part in zip(node.rest, below[1:], strict=True))
    return type(node)(below[0], rest)


OF = Parts(lambda node: (node.of,), lambda node, below: type(node)(*below))
"""One node, called `of`, and nothing else."""
CHAIN = Parts(lambda node: (node.first, *[part for _, part in node.rest]), _rejoined)
"""A first part, and a rest of pairs of a sign and a part."""
ROW = Parts(lambda node: node.parts, lambda node, below: type(node)(below))
"""Any number of parts, called `parts`."""
