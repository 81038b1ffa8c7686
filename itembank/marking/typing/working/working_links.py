"""The links of a line of working, two sides and the sign between them, and whether each is true."""

from __future__ import annotations

from itembank.data_class import dataclass
from itembank.items.item import Item
from itembank.marking.typing.working.prompt_printed import equation_of, printed_values
from itembank.marking.typing.working.sides_agree import flat, numbers_hold, ratios_hold
from itembank.marking.worth.letters_unknown import unknown_letters
from itembank.marking.worth.marked_by_kind import marking_of
from itembank.marking.worth.worth import bounded
from itembank.notation import tree as t
from itembank.notation.algebra import algebra
from itembank.notation.line import shown_line
from itembank.notation.quotients import number


@dataclass(frozen=True, slots=True)
class Link:
    """Two neighbouring sides of a line, and whether they are what the sign says.

    `holds` is None where that cannot be told; `flat` where both sides are finished numbers,
    so that one answer is said to be another.
    """

    left: t.Node
    op: t.RelationOp
    right: t.Node
    holds: bool | None
    flat: bool = False

    @property
    def answers(self) -> bool:
        """Whether the link gives a value for a letter, as an answer does and no step."""
        return isinstance(self.left, t.Sym) and flat(self.right)

    @property
    def text(self) -> str:
        """The link on one line."""
        return shown_line(t.Relation(self.left, ((self.op, self.right),)))


def links(item: Item, node: t.Node) -> list[Link]:
    """Return the links of one line of working, each with whether it is true.

    >>> from itembank.items.topics.registry import find_item
    >>> from itembank.notation.parse import parse
    >>> item = find_item("fractions.add-like/core/2")
    >>> [(link.text, link.holds) for link in links(item, parse("3 + 4 = 8 = 16 ÷ 2"))]
    [('3 + 4 = 8', False), ('8 = 16 ÷ 2', True)]
    """
    if isinstance(node, t.Listing | t.Either):
        return [link for part in node.parts for link in links(item, part)]
    if not isinstance(node, t.Relation):
        return []
    found = []
    left = node.first
    for op, right in node.rest:
        finished = op == "=" and flat(left) and flat(right)
        found.append(Link(left, op, right, _holds(item, left, op, right), finished))
        left = right
    return found


def _holds(item: Item, left: t.Node, op: t.RelationOp, right: t.Node) -> bool | None:
    try:
        if unknown_letters(left) or unknown_letters(right):
            return _holds_for_letters(item, left, op, right)
        if isinstance(left, t.Ratio) or isinstance(right, t.Ratio):
            return ratios_hold(left, right)
        return numbers_hold(left, op, right)
    except (t.NotationError, RecursionError, OverflowError):
        return None


def _holds_for_letters(item: Item, left: t.Node, op: t.RelationOp, right: t.Node) -> bool | None:
    if op != "=" or not (bounded(left) and bounded(right)):
        return None
    letters = unknown_letters(left) | unknown_letters(right)
    printed = printed_values(item)
    # The question says what the letters are worth, so a line may be false of just those.
    if letters <= set(printed):
        values = {name: number(worth) for name, worth in printed.items()}
        return algebra(left, values) == algebra(right, values)
    if marking_of(item.ask).for_letters(letters):
        return algebra(left) == algebra(right)
    match equation_of(item), item.key:
        case t.Relation(), t.Relation(t.Sym(name), (("=", root),)):
            if letters != {name} or t.symbols(root):
                return None
            # A line of solving is true of the solution, though it is no identity.
            known = {name: algebra(root)}
            return algebra(left, known) == algebra(right, known)
    return None
