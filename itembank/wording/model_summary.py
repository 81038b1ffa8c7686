"""What a model says, as its question is held to it: what it takes away, divides, and finds."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from fractions import Fraction

from itembank.data_class import dataclass
from itembank.notation import tree as t


@dataclass(frozen=True, slots=True)
class Modelled:
    """What a model says: its lines, what is to be found, and the key.

    `worth` gives the value of an expression in the model's letters, or None.
    """

    lines: tuple[t.Node, ...]
    find: t.Node | None
    key: t.Node
    worth: Callable[[t.Node], Fraction | None]

    @property
    def target(self) -> t.Node | None:
        """Return what is worked out at the end: what is found, or the one expression."""
        if self.find is not None:
            return self.find
        loose = [node for node in self.lines if not isinstance(node, t.Relation)]
        return loose[0] if len(loose) == 1 else None

    @property
    def inverse(self) -> bool:
        """Whether something is found from relations, so that operations run backwards."""
        return any(isinstance(node, t.Relation) for node in self.lines)

    def parts(self) -> Iterator[t.Node]:
        """Yield every tree of the model and of what is to be found, whole and in pieces."""
        for node in self._all():
            yield from t.walk(node)

    def has(self, *kinds: type) -> bool:
        """Whether a node of one of these kinds stands in the model."""
        return any(isinstance(part, kinds) for node in self._all() for part in t.walk(node))

    def subtracts(self) -> bool:
        """Whether anything is taken away in the model."""
        return any(
            isinstance(part, t.Sum) and any(op == "-" for op, _ in part.rest)
            for node in self._all()
            for part in t.walk(node)
        )

    def divides(self) -> bool:
        """Whether anything is divided in the model."""
        return any(
            isinstance(part, t.Frac)
            or (isinstance(part, t.Product) and any(op == "÷" for op, _ in part.rest))
            for node in self._all()
            for part in t.walk(node)
        )

    def ends_by_subtracting(self) -> bool:
        """Whether the last thing the model does is to take away, with no sum after it."""
        target = self.target
        while isinstance(target, t.Bracket):
            target = target.of
        return isinstance(target, t.Sum) and target.rest[-1][0] == "-"

    def _all(self) -> tuple[t.Node, ...]:
        return self.lines if self.find is None else (*self.lines, self.find)
