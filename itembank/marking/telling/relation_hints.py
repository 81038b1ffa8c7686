"""What is nearly right about a wrong equation, inequality or sign between two numbers."""

from __future__ import annotations

from itembank.items.asks import asked
from itembank.items.item import Item
from itembank.marking.telling.nearly import single, too_many
from itembank.marking.telling.tried import right_side
from itembank.marking.worth.marked_by_kind import marking_of
from itembank.marking.worth.same_worth import TURNED, same, turned
from itembank.marking.worth.worth import says_the_same
from itembank.notation import tree as t


def of_relation(item: Item, given: t.Node, key: t.Relation) -> str:
    """Return what is right of an answer whose key is an equation, an inequality or a sign."""
    if marking_of(item.ask).sign:
        return _compared(asked(item.ask), given)
    letter = key.first if isinstance(key.first, t.Sym) else None
    if isinstance(given, t.Listing | t.Either) and len(key.rest) == 1:
        return too_many(given, key)
    if letter is not None and isinstance(given, t.Relation):
        # First of all: to be told that a true line is wrong would be a false hint.
        if says_the_same(given, key):
            return f"That is true: go on until {letter.name} stands alone on one side."
        alone = given.first == letter or given.rest[-1][1] == letter
        if letter.name in t.symbols(given) and not alone:
            return f"Go on until {letter.name} stands alone, and check the steps before."
        subject = given.first if isinstance(given.first, t.Sym) else None
        if (
            subject is not None
            and subject != letter
            and len(given.rest) == 1
            and same(given.rest[0][1], key.rest[0][1])
            and key.rest[0][0] == "="
        ):
            return f"The question is about {letter.name}, not {subject.name}."
    if marking_of(item.ask).range or item.form == "inequality":
        return _inequality(given, key)
    if letter is not None and len(key.rest) == 1 and key.rest[0][0] == "=":
        right = right_side(given, letter)
        return single(item, right, key.rest[0][1]) if right is not None else ""
    return ""


def _compared(numbers: tuple[t.Node, ...], given: t.Node) -> str:
    if isinstance(given, t.Relation) and len(given.rest) == 1:
        sides = (given.first, given.rest[0][1])
        if not all(any(same(a, b) for b in numbers) for a in sides):
            return "Those are not the two numbers of the question."
        return "The sign is not right: which of the two is larger, or are they worth the same?"
    return "Give the sign that goes between the two numbers: <, > or =."


def _inequality(given: t.Node, key: t.Relation) -> str:
    if not isinstance(given, t.Relation):
        if len(key.rest) == 1 and same(given, key.rest[0][1]):
            return "The number is right: give the letter and the inequality sign as well."
        return "The answer is an inequality: give a letter, a sign and a number."
    if len(given.rest) != len(key.rest):
        ends = (t.Relation(key.rest[0][1], key.rest[1:]), t.Relation(key.first, key.rest[:1]))
        if any(same(given, end) for end in ends if len(key.rest) == 2):
            return "That is right at one end: give the other end as well."
        return ""
    if not isinstance(key.first, t.Sym):
        ways = (given, turned(given))
        if any(_sides_agree(way, key) for way in ways):
            return "The numbers are right: look again at the signs."
        return ""
    for way in (given, turned(given)):
        if way.first != key.first:
            continue
        (op, side), (wanted, number_) = way.rest[0], key.rest[0]
        if same(side, number_):
            return _sign(op, wanted, key.first)
        if (
            op == wanted
            and isinstance(side, t.Neg) != isinstance(number_, t.Neg)
            and same(t.Neg(t.Bracket(side)), number_)
        ):
            return "The sign of the number is not right: is it more or less than 0?"
        return ""
    return ""


def _sides_agree(way: t.Relation, key: t.Relation) -> bool:
    mine = [way.first, *(side for _, side in way.rest)]
    theirs = [key.first, *(side for _, side in key.rest)]
    return all(map(same, mine, theirs))


def _sign(op: str, wanted: str, letter: t.Sym) -> str:
    if op == "=":
        return "The number is right, but there is more than one answer: use an inequality sign."
    if {op, wanted} in ({"<", "≤"}, {">", "≥"}):
        return f"Nearly: can {letter.name} be equal to that number or not?"
    if op in TURNED:
        return (
            f"The number is right, but the sign is not: try a number that is less for {letter.name}"
            " and one that is more."
        )
    return ""
