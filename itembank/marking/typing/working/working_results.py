"""What a line of typed working comes to, and which of its sides may be the answer.

``7 + 15 = 22``, ``x = 14 ÷ 2 = 7`` and ``2x = 14, x = 7`` show how an answer was found. What
the pupil comes to is the last link; a side before it may say the same in another notation.
"""

from __future__ import annotations

from collections.abc import Iterator

from itembank.items.item import Item
from itembank.marking.typing.working.prompt_printed import printed_values
from itembank.marking.worth.letters_unknown import unknown_letters
from itembank.marking.worth.same_worth import same
from itembank.notation import tree as t


def comes_to(node: t.Node) -> t.Node:
    """Return what a line of working comes to: its last side, with the letter it is worth.

    >>> from itembank.notation.line import shown_line
    >>> from itembank.notation.parse import parse
    >>> texts = ("7 + 15 = 22", "x = 14 ÷ 2 = 7", "14/2 = 7 = x", "2x = 14", "9/12 = 3/4 < 5/6")
    >>> [shown_line(comes_to(parse(text))) for text in texts]
    ['22', 'x = 7', 'x = 7', '14', '9/12 < 5/6']
    """
    if not isinstance(node, t.Relation):
        return node
    sides = [node.first, *(side for _, side in node.rest)]
    ops = [op for op, _ in node.rest]
    if set(ops) == {"="}:
        first, last = sides[0], sides[-1]
        if isinstance(first, t.Blank):
            return last
        if isinstance(last, t.Sym) and not isinstance(first, t.Sym):
            return t.Relation(last, (("=", sides[-2]),))
        return t.Relation(first, (("=", last),)) if isinstance(first, t.Sym) else last
    if "=" not in ops:
        return node
    groups: list[t.Node] = [sides[0]]
    signs: list[t.RelationOp] = []
    for op, side in node.rest:
        if op != "=":
            signs.append(op)
            groups.append(side)
        elif signs:
            groups[-1] = side
    return t.Relation(groups[0], tuple(zip(signs, groups[1:], strict=True)))


def results(item: Item, node: t.Node) -> Iterator[t.Node]:
    """Yield the sides of a chain of equals signs that may stand for its answer, best first.

    The last side is the answer. A side before it counts where what follows says the same
    in another kind of notation (3/4 = 0.75) or repeats the calculation (22 = 7 + 15). A chain
    that says what an expression is worth, 2x = 14, has no answer in it unless it is known what
    its letters stand for, or the answer is an expression itself.

    >>> from itembank.notation.line import shown_line
    >>> from itembank.items.topics.registry import find_item
    >>> from itembank.notation.parse import parse
    >>> item = find_item("fractions.add-like/core/2")
    >>> for text in ("22 = 7 + 15", "3/4 = 6/8", "2x = 14"):
    ...     print([shown_line(side) for side in results(item, parse(text))])
    ['7 + 15', '22']
    ['6/8']
    []
    """
    last = comes_to(node)
    if not isinstance(node, t.Relation) or {op for op, _ in node.rest} != {"="}:
        yield last
        return
    sides = [node.first, *(side for _, side in node.rest)]
    if isinstance(sides[0], t.Blank):
        sides = sides[1:]
    letter = last.first if isinstance(last, t.Relation) and isinstance(last.first, t.Sym) else None
    if letter is None and not _free(item, sides):
        return
    yield last
    # Two sides of one kind, 6/8 = 3/4, are a step and its result: only the last is the answer.
    kinds = {_kind(sides[-1])}
    for side in reversed(sides[:-1]):
        if _kind(side) in kinds or side == letter or not same(side, sides[-1]):
            return
        kinds.add(_kind(side))
        yield side if letter is None else t.Relation(letter, (("=", side),))


def _free(item: Item, sides: list[t.Node]) -> bool:
    """Tell whether the last of these equal sides may be an answer by itself."""
    if t.symbols(item.key) and not any(isinstance(p, t.Relation) for p in t.walk(item.key)):
        return True
    known = printed_values(item)
    return all(
        unknown_letters(side) <= set(known)
        or (isinstance(side, t.Ratio) and all(isinstance(part, t.Sym) for part in side.parts))
        for side in sides
    )


def _kind(node: t.Node) -> str:
    inner = node.of if isinstance(node, t.Neg | t.Bracket) else node
    if isinstance(inner, t.Quantity | t.Money):
        return "amount"
    return type(inner).__name__
