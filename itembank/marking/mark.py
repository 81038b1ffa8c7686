"""The verdict on a typed answer: right, right in another form, a known mistake, or wrong."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from itembank.items.forms import form_fault, form_words
from itembank.items.item import Item, Misconception
from itembank.marking.typed import Unreadable, read_answer
from itembank.notation.tree import (
    Bracket,
    Dec,
    Int,
    Label,
    Listing,
    Money,
    Node,
    NotationError,
    Percent,
    Quantity,
    Ratio,
    Relation,
    Sym,
)
from itembank.notation.units import CURRENCY, UNITS
from itembank.notation.value import exact

TURNED = {"<": ">", ">": "<", "≤": "≥", "≥": "≤", "=": "=", "≠": "≠"}


class Verdict(StrEnum):
    """What an answer is worth."""

    RIGHT = "right"
    WRONG_FORM = "right value, wrong form"
    KNOWN = "known wrong method"
    WRONG = "wrong"
    UNREADABLE = "unreadable"


@dataclass(frozen=True, slots=True)
class Marked:
    """A verdict, with the sentence that goes with it and the misconception it shows."""

    verdict: Verdict
    says: str = ""
    misconception: Misconception | None = None


def mark(item: Item, answer: str) -> Marked:
    """Return the verdict on a typed answer. Never raises, whatever was typed.

    >>> from itembank.items.registry import find_item
    >>> item = find_item("fractions.improper-mixed/core/0")
    >>> from itembank.notation.line import line
    >>> mark(item, line(item.key)).verdict
    <Verdict.RIGHT: 'right'>
    """
    try:
        given = read_answer(answer, item.key)
    except Unreadable as error:
        return Marked(Verdict.UNREADABLE, str(error))
    given = _as_asked(given, item.key)
    if same(given, item.key):
        fault = form_fault(item.form, given)
        if not fault or _kind(given) == _kind(item.key):
            return Marked(Verdict.RIGHT)
        for slip in item.slips:
            if given == slip.wrong:
                return Marked(Verdict.KNOWN, slip.misconception.ask, slip.misconception)
        return Marked(
            Verdict.WRONG_FORM, f"The value is right. Give {form_words(item.form)}: {fault}."
        )
    for slip in item.slips:
        if same(given, slip.wrong):
            return Marked(Verdict.KNOWN, slip.misconception.ask, slip.misconception)
    if isinstance(item.key, Percent) and same(given, item.key.of):
        return Marked(Verdict.WRONG_FORM, "The number is right. The per cent sign is missing.")
    return Marked(Verdict.WRONG)


def same(given: Node, key: Node) -> bool:
    """Return whether two answers are worth the same; a unit left out is taken as the key's.

    >>> from itembank.notation.tree import frac
    >>> same(frac(2, 4), frac(1, 2)), same(Int(5), Quantity(Int(5), "cm"))
    (True, True)
    """
    try:
        return _same(given, key)
    except (NotationError, OverflowError):
        return False


def _same(given: Node, key: Node) -> bool:
    match key:
        case Label(text):
            return isinstance(given, Label) and _folded(given.text) == _folded(text)
        case Relation(_, _):
            return _same_relation(given, key)
        case Ratio(parts):
            if not isinstance(given, Ratio) or len(given.parts) != len(parts):
                return False
            a, b = (
                [_worth(p, q) for p, q in zip(given.parts, parts, strict=True)],
                [exact(p) for p in parts],
            )
            return a[0] != 0 and all(x * b[0] == y * a[0] for x, y in zip(a, b, strict=True))
        case Listing(parts):
            return (
                isinstance(given, Listing)
                and len(given.parts) == len(parts)
                and all(_same(p, q) for p, q in zip(given.parts, parts, strict=True))
            )
    if isinstance(given, Relation | Ratio | Listing | Label):
        return False
    return _worth(given, key) == exact(key)


def _worth(given: Node, key: Node) -> Fraction:
    """Return the value of an amount, in the key's unit where it has none of its own."""
    own, wanted = _unit(given), _unit(key)
    if own is None and wanted is not None:
        return exact(given) * wanted[1]
    if own is not None and (wanted is None or own[0] != wanted[0]):
        raise NotationError("the unit is of another kind")
    return exact(given)


def _unit(node: Node) -> tuple[str, Fraction] | None:
    if isinstance(node, Quantity):
        return UNITS[node.unit].dimension, UNITS[node.unit].size
    if isinstance(node, Money):
        return CURRENCY[node.sign].dimension, CURRENCY[node.sign].size
    return None


def _same_relation(given: Node, key: Relation) -> bool:
    if not isinstance(given, Relation) or len(given.rest) != 1 or len(key.rest) != 1:
        return False
    op, right = given.rest[0]
    key_op, key_right = key.rest[0]
    if not isinstance(key.first, Sym):
        # Two numbers and the sign between them: both have to be the ones asked about.
        ways = ((given.first, op, right), (right, TURNED[op], given.first))
        return any(
            sign == key_op and _same(a, key.first) and _same(b, key_right) for a, sign, b in ways
        )
    return given.first == key.first and op == key_op and _same(right, key_right)


def _as_asked(given: Node, key: Node) -> Node:
    """Bring an answer to the key's shape: 5 or 5 = x to x = 5, 3 ≤ x to x ≥ 3."""
    if isinstance(given, Bracket):
        given = given.of
    if not isinstance(key, Relation) or len(key.rest) != 1:
        if isinstance(given, Relation) and isinstance(given.first, Sym) and len(given.rest) == 1:
            op, right = given.rest[0]
            return right if op == "=" and not isinstance(key, Ratio | Listing | Label) else given
        return given
    if isinstance(given, Relation):
        if len(given.rest) == 1 and given.first != key.first:
            op, right = given.rest[0]
            if right == key.first:
                turned = TURNED[op]
                return Relation(right, ((turned, given.first),))  # type: ignore[arg-type]
        return given
    if key.rest[0][0] == "=" and isinstance(key.first, Sym):
        return Relation(key.first, (("=", given),))
    return given


def _kind(node: Node) -> object:
    """Return the shape of an answer when only a unit or a spare zero may differ from the key."""
    match node:
        case Relation(first, ((op, right),)):
            return (first, op, _kind(right))
        case Listing(parts):
            return tuple(_kind(part) for part in parts)
        case Money(amount, _) | Quantity(amount, _):
            return _kind(amount)
        case Dec(whole, places, recurring) if not recurring:
            places = places.rstrip("0")
            return Dec(whole.lstrip("0") or "0", places) if places else Int(int(whole))
    return node


def _folded(text: str) -> str:
    return " ".join(text.casefold().split())
