"""What a task is about, and its mathematics taken apart."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from itembank.data_class import dataclass
from itembank.notation import tree as t
from itembank.notation.value import exact
from itembank.proof.claim.finding import text


class NeedsPerson(t.NotationError):
    """The tool cannot work out this item's answer; the message says why, in a sentence."""


@dataclass(frozen=True, slots=True)
class Given:
    """What a task is about: its trees, what holds besides, the letter asked for, the words."""

    args: tuple[t.Node, ...]
    where: tuple[t.Node, ...]
    letter: str
    words: str
    modelled: bool = False

    @property
    def all(self) -> tuple[t.Node, ...]:
        """Return every tree, what holds besides among them."""
        return (*self.args, *self.where)


def _flat(given: Sequence[t.Node]) -> Iterator[t.Node]:
    """Yield the nodes; a list of relations, as in x = 5, y = 2, is each of them."""
    for node in given:
        if isinstance(node, t.Listing) and all(isinstance(part, t.Relation) for part in node.parts):
            yield from node.parts
        else:
            yield node


def parted(given: Sequence[t.Node]) -> tuple[list[t.Relation], list[t.Node]]:
    """Return the relations among the nodes, and the others."""
    relations: list[t.Relation] = []
    others: list[t.Node] = []
    for node in _flat(given):
        if isinstance(node, t.Relation):
            relations.append(node)
        else:
            others.append(node)
    return relations, others


def only_one(given: Sequence[t.Node], task: str) -> t.Node:
    """Return the one piece of mathematics that a task is about.

    Raises:
        NeedsPerson: there are several, or none.
    """
    if len(given) != 1:
        raise NeedsPerson(
            f"To {task} takes one piece of mathematics in {{ }}; here are {len(given)}. "
            "Give a model that says what is worked out."
        )
    if isinstance(given[0], t.Either):
        raise NeedsPerson(f"To {task}, there is more than one expression here, joined by or.")
    return given[0]


def only_expression(given: Sequence[t.Node], task: str) -> t.Node:
    """Return the one expression that a task is about.

    Raises:
        NeedsPerson: there are several, or it is a relation or a list.
    """
    target = only_one(given, task)
    if isinstance(target, t.Relation | t.Listing):
        raise NeedsPerson(f"To {task} takes an expression, and {text(target)} is not one.")
    return target


def things_given(given: Sequence[t.Node], task: str) -> tuple[t.Node, ...]:
    """Return the parts of a list, or several pieces of mathematics, as things."""
    if len(given) == 1 and isinstance(given[0], t.Listing):
        return given[0].parts
    if len(given) > 1 and not any(isinstance(node, t.Listing | t.Relation) for node in given):
        return tuple(given)
    raise NeedsPerson(f"{task} takes a list, {{1, 2, 3}}, or several pieces of mathematics.")


def is_negative(node: t.Node) -> bool:
    """Whether a number is less than nothing; False where it has no exact value.

    >>> is_negative(t.Neg(t.Int(3))), is_negative(t.Int(3))
    (True, False)
    """
    try:
        return exact(node) < 0
    except t.NotationError:
        return False
