"""An answer with what may be left out put in: the unit, the letter, the order of the key."""

from __future__ import annotations

from itembank.marking.worth.same_worth import turned
from itembank.marking.worth.worth import unit_of
from itembank.notation import tree as t


def completed(given: t.Node, key: t.Node) -> t.Node:
    """Return an answer with what may be left out put in: the unit, the letter, the key's order.

    >>> from itembank.notation.line import line
    >>> from itembank.notation.parse import parse
    >>> pairs = (("5", "4 kg"), ("5", "x = 5"), ("3 ≤ x", "x ≥ 3"), ("7, -4", "x = -4 or x = 7"))
    >>> [line(completed(parse(text), parse(other))) for text, other in pairs]
    ['5 kg', 'x = 5', 'x ≥ 3', 'x = 7 or x = -4']
    >>> line(completed(parse("-5"), parse("-4 °C")))
    '-5 °C'
    """
    match key:
        case t.Relation(t.Sym() as letter, ((op, right),)):
            return _solved(given, letter, op == "=", right)
        case t.Relation():
            if isinstance(given, t.Relation) and given.rest[0][0] != key.rest[0][0]:
                return turned(given)
            return given
        case t.Listing(parts):
            if isinstance(given, t.Relation):
                given = t.Listing((given.first, *(side for _, side in given.rest)))
            if isinstance(given, t.Listing) and len(given.parts) == len(parts):
                pairs = zip(given.parts, _in_order(given.parts, parts), strict=True)
                return t.Listing(tuple(completed(left, wanted) for left, wanted in pairs))
            return given
        case t.Either(parts):
            answers: tuple[t.Node, ...] = (given,)
            single = not isinstance(parts[0], t.Listing)
            if isinstance(given, t.Either) or (single and isinstance(given, t.Listing)):
                answers = given.parts
            flat = [completed(answer, parts[0]) for answer in answers]
            return t.Either(tuple(flat)) if len(flat) > 1 else flat[0]
        case t.Neg(t.Quantity() | t.Money() as of):
            return completed(given, of)  # the minus is the answer's own
        case t.Quantity(_, unit) if unit_of(given) is None and not isinstance(given, t.Relation):
            return (
                t.Neg(t.Quantity(given.of, unit))
                if isinstance(given, t.Neg)
                else t.Quantity(given, unit)
            )
        case t.Money(_, sign) if unit_of(given) is None and not isinstance(given, t.Relation):
            return (
                t.Neg(t.Money(given.of, sign)) if isinstance(given, t.Neg) else t.Money(given, sign)
            )
    if isinstance(given, t.Relation) and len(given.rest) == 1:
        # The value alone was asked for.
        left, value_ = given.first, given.rest[0][1]
        return completed(value_ if isinstance(left, t.Sym) else left, key)
    return given


def _solved(given: t.Node, letter: t.Sym, equation: bool, right: t.Node) -> t.Node:
    if isinstance(given, t.Relation):
        if given.first != letter and len(given.rest) == 1 and given.rest[0][1] == letter:
            given = turned(given)
        op, side = given.rest[0]
        return t.Relation(given.first, ((op, completed(side, right)), *given.rest[1:]))
    return t.Relation(letter, (("=", completed(given, right)),)) if equation else given


def _in_order(given: tuple[t.Node, ...], parts: tuple[t.Node, ...]) -> tuple[t.Node, ...]:
    """Return the key's parts in the order of the letters that were given."""
    by_letter = {part.first: part for part in parts if isinstance(part, t.Relation)}
    if len(by_letter) < len(parts):
        return parts
    named = [part.first for part in given if isinstance(part, t.Relation)]
    if len(named) == len(parts) and set(named) == set(by_letter):
        return tuple(by_letter[name] for name in named)
    # Without letters the values stand for them in the order of the alphabet.
    return tuple(by_letter[name] for name in sorted(by_letter, key=repr))
