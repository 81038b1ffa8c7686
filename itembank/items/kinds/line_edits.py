"""What a mistake makes of a line of working: the right line with one thing in it changed."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from itembank.notation import tree as t

Edit = Callable[[t.Node], Iterator[t.Node]]
"""Yields the lines that a way of going wrong can make of a line; none where it has no hold."""

HALF = t.Frac(t.Int(1), t.Int(2))


def everywhere(edit: Edit) -> Edit:
    """Return an edit that changes a line or any one part of it.

    >>> from itembank.notation import parse
    >>> from itembank.notation.line import line
    >>> [line(made) for made in everywhere(left_out)(parse("√(3 + 4 + 5)"))]
    ['√(4 + 5)', '√(3 + 5)', '√(3 + 4)']
    """

    def edited(node: t.Node) -> Iterator[t.Node]:
        yield from edit(node)
        below = t.children(node)
        for place, part in enumerate(below):
            for made in edited(part):
                yield t.rebuilt(node, (*below[:place], made, *below[place + 1 :]))

    return edited


def left_out(node: t.Node) -> Iterator[t.Node]:
    """Yield a sum or a product with one of its terms or factors left out.

    >>> from itembank.notation import parse
    >>> from itembank.notation.line import line
    >>> [line(made) for made in left_out(parse("3 × 4 ÷ 2"))]
    ['4 ÷ 2', '3 ÷ 2', '3 × 4']
    """
    if not isinstance(node, t.Sum | t.Product):
        return
    first, rest = node.first, node.rest
    if rest[0][0] in ("+", "×"):
        yield _joined(node, rest[0][1], rest[1:])
    for place in range(len(rest)):
        yield _joined(node, first, (*rest[:place], *rest[place + 1 :]))


def _joined(node: t.Sum | t.Product, first: t.Node, rest: tuple[tuple[str, t.Node], ...]) -> t.Node:
    return type(node)(first, rest) if rest else first  # type: ignore[arg-type]


_OTHER = {"+": "-", "-": "+", "×": "÷", "÷": "×"}


def first_half(node: t.Node) -> Iterator[t.Node]:
    """Yield a sum that says the same twice with the second time left out.

    >>> from itembank.notation import parse
    >>> from itembank.notation.line import line
    >>> [line(made) for made in first_half(parse("16 cm + 5 cm + 16 cm + 5 cm"))]
    ['16 cm + 5 cm']
    """
    if isinstance(node, t.Sum) and {sign for sign, _ in node.rest} == {"+"}:
        parts = t.children(node)
        half = len(parts) // 2
        if half > 1 and parts[:half] == parts[half:]:
            yield t.add(*parts[:half])


def turned(node: t.Node) -> Iterator[t.Node]:
    """Yield a sum or a product with one sign made its opposite.

    >>> from itembank.notation import parse
    >>> from itembank.notation.line import line
    >>> [line(made) for made in turned(parse("3 + 4 - 2"))]
    ['3 - 4 - 2', '3 + 4 + 2']
    """
    if isinstance(node, t.Sum | t.Product):
        for place, (sign, part) in enumerate(node.rest):
            if sign in _OTHER:
                rest = (*node.rest[:place], (_OTHER[sign], part), *node.rest[place + 1 :])
                yield _joined(node, node.first, rest)


def added(node: t.Node) -> Iterator[t.Node]:
    """Yield a product with its factors added."""
    if isinstance(node, t.Product) and all(sign == "×" for sign, _ in node.rest):
        yield t.add(node.first, *(part for _, part in node.rest))


def subtracted(node: t.Node) -> Iterator[t.Node]:
    """Yield what is multiplied or divided by subtracting instead."""
    if isinstance(node, t.Product) and len(node.rest) == 1:
        yield t.sub(node.first, node.rest[0][1])


def swapped(node: t.Node) -> Iterator[t.Node]:
    """Yield a division or a difference with its two parts changed over."""
    if isinstance(node, t.Sum | t.Product) and len(node.rest) == 1:
        ((sign, part),) = node.rest
        if sign in ("-", "÷"):
            yield _joined(node, part, ((sign, node.first),))
    if isinstance(node, t.Frac):
        yield t.Frac(node.den, node.num)


def halved(node: t.Node) -> Iterator[t.Node]:
    """Yield half of the line."""
    whole = t.Bracket(node) if isinstance(node, t.Sum) else node
    first, rest = (node.first, node.rest) if isinstance(node, t.Product) else (whole, ())
    yield t.Product(first, (*rest, ("÷", t.Int(2))))


def doubled(node: t.Node) -> Iterator[t.Node]:
    """Yield twice the line."""
    whole = t.Bracket(node) if isinstance(node, t.Sum) else node
    parts = ((("×", node.first), *node.rest)) if isinstance(node, t.Product) else (("×", whole),)
    yield t.Product(t.Int(2), parts)


def divided_by_two(node: t.Node) -> Iterator[t.Node]:
    """Yield a division with 2 for what it divides by."""
    if isinstance(node, t.Product) and node.rest[-1][0] == "÷":
        yield t.Product(node.first, (*node.rest[:-1], ("÷", t.Int(2))))


def cut_short(node: t.Node) -> Iterator[t.Node]:
    """Yield nothing: whoever stops too soon leaves the last line out (:mod:`.wrong_workings`).

    *4% of £900* alone is a right beginning, and whether it or what follows is wrong is in doubt;
    after *3 × 4% of £900* what follows is.
    """
    yield from ()


def root_by_root(node: t.Node) -> Iterator[t.Node]:
    """Yield a root of a sum of squares as the sum of what is squared.

    >>> from itembank.notation import parse
    >>> from itembank.notation.line import line
    >>> [line(made) for made in root_by_root(parse("√((4 cm)^2 + (3 cm)^2)"))]
    ['4 cm + 3 cm']
    """
    if isinstance(node, t.Root) and isinstance(node.of, t.Sum):
        parts = t.children(node.of)
        if all(isinstance(part, t.Power) and part.exponent == t.Int(2) for part in parts):
            first, *rest = (_base(part) for part in parts)
            signs = (sign for sign, _ in node.of.rest)
            yield t.Sum(first, tuple(zip(signs, rest, strict=True)))


def _base(part: t.Node) -> t.Node:
    assert isinstance(part, t.Power)
    return part.base.of if isinstance(part.base, t.Bracket) else part.base


def doubled_for_squared(node: t.Node) -> Iterator[t.Node]:
    """Yield a square as twice its number."""
    if isinstance(node, t.Power) and node.exponent == t.Int(2):
        yield t.Bracket(t.times(t.Int(2), _base(node)))


def out_of(*wholes: int, unit: str = "°") -> Edit:
    """Return the edit that takes a difference out of another whole.

    >>> from itembank.notation import parse
    >>> from itembank.notation.line import line
    >>> [line(made) for made in out_of(360)(parse("180° - 65°"))]
    ['360° - 65°']
    """

    def edited(node: t.Node) -> Iterator[t.Node]:
        if isinstance(node, t.Sum) and all(sign == "-" for sign, _ in node.rest):
            for whole in wholes:
                first = t.Quantity(t.Int(whole), unit) if unit else t.Int(whole)
                if first != node.first:
                    yield t.Sum(first, node.rest)

    return edited


def _digits(total: int) -> list[int]:
    return [int(digit) for digit in reversed(str(total))]


def uncarried(terms: list[int]) -> int:
    """Return a sum in columns in which what is carried gets lost.

    >>> uncarried([27, 45]), uncarried([21, 27, 32, 24]), uncarried([21, 34])
    (62, 94, 55)
    """
    columns = max(len(str(term)) for term in terms)
    sums = [sum(term // 10**place % 10 for term in terms) for place in range(columns)]
    return sum(
        (made if place == columns - 1 else made % 10) * 10**place for place, made in enumerate(sums)
    )


def smaller_from_larger(whole: int, part: int) -> int:
    """Return a difference in columns, in each the smaller digit taken from the larger.

    >>> smaller_from_larger(180, 65), smaller_from_larger(180, 60)
    (125, 120)
    """
    return sum(
        abs(whole // 10**place % 10 - part // 10**place % 10) * 10**place
        for place in range(len(str(whole)))
    )
