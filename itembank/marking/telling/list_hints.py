"""What is nearly right about a wrong answer of several parts: answers, a list, a ratio."""

from __future__ import annotations

from itertools import pairwise, permutations

from itembank.items.item import Item
from itembank.marking.telling.nearly import WRONG_UNIT, wrong_unit_only
from itembank.marking.worth.marked_by_kind import marking_of
from itembank.marking.worth.same_worth import missing, same, unknowns
from itembank.notation import tree as t
from itembank.notation.line import shown_line
from itembank.notation.value import exact


def of_several(given: t.Node, key: t.Either) -> str:
    """Return what is right of an answer to a question with several answers.

    >>> from itembank.notation.parse import parse
    >>> of_several(parse("x = 7"), parse("x = -4 or x = 7"))
    'What is given is right. Another answer is missing.'
    """
    left = missing(given, key)
    if left > 0:
        more = "Another answer is" if left == 1 else f"{left} more answers are"
        return f"What is given is right. {more} missing."
    parts = given.parts if isinstance(given, t.Either | t.Listing) else ()
    hits = [part for part in parts if any(same(part, wanted) for wanted in key.parts)]
    if hits and len(hits) < len(parts):
        count = "One of the answers is" if len(hits) == 1 else f"{len(hits)} of the answers are"
        return f"{count} right: look again at the {'other' if len(parts) == 2 else 'others'}."
    return ""


def of_list(item: Item, given: t.Node, key: t.Listing) -> str:
    """Return what is right of a list: its parts, their number or their order."""
    if isinstance(given, t.Ratio) and not unknowns(key):
        return "The answer is not a ratio: give the amounts, with commas between."
    if not isinstance(given, t.Listing):
        if any(same(given, part) for part in key.parts):
            return f"That is one part of the answer: give all {len(key.parts)}."
        return f"The answer has {len(key.parts)} parts: give each of them, with commas between."
    parts, wanted = given.parts, key.parts
    ordered = marking_of(item.ask).ordered(item.ask)
    if len(parts) != len(wanted):
        if len(parts) < len(wanted):
            return f"The answer has {len(wanted)} parts, and there are {len(parts)} here."
        return f"The answer has only {len(wanted)} parts, and there are {len(parts)} here."
    # Orders grow as the factorial: five parts have 120, eight have 40 320.
    if len(parts) <= 5 and any(
        all(map(same, some, wanted)) for some in permutations(parts) if some != parts
    ):
        # All in order, but read from the wrong end: that is a slip of its own.
        if ordered and all(map(same, parts[::-1], wanted)):
            return "That is the wrong way round: look which end the order begins from."
        if ordered:
            return _out_of_order(ordered == "ascending", parts)
        return "The right numbers are there, in the wrong order: check which is which."
    if ordered:
        for part in parts:
            if not any(same(part, want) for want in wanted):
                return f"{shown_line(part)} is not one of the numbers in the question."
    names = unknowns(key)
    if names:
        for name, part in zip(names, wanted, strict=True):
            if any(same(own, part) for own in parts if isinstance(own, t.Relation)):
                return f"{name} is right: look again at the rest."
        if _swapped(parts, wanted):
            return "The right numbers are there, but not with the right letters."
        return ""
    pairs = list(zip(parts, wanted, strict=True))
    if all(wrong_unit_only(mine, theirs) for mine, theirs in pairs):
        return WRONG_UNIT.replace("number is", "numbers are")
    right = [place for place, pair in enumerate(pairs) if same(*pair)]
    if right and not ordered:
        names_ = ("first", "second", "third", "fourth", "fifth", "sixth")
        if len(right) == 1 and right[0] < len(names_):
            return f"The {names_[right[0]]} part is right: look again at the rest."
        return f"{len(right)} of the {len(parts)} parts are right: look again at the rest."
    return ""


def _swapped(parts: tuple[t.Node, ...], wanted: tuple[t.Node, ...]) -> bool:
    """Tell whether letters have one another's values."""
    mine = [part.rest[0][1] if isinstance(part, t.Relation) else part for part in parts]
    theirs = [part.rest[0][1] for part in wanted if isinstance(part, t.Relation)]
    return len(mine) == len(theirs) and any(
        all(map(same, some, theirs)) for some in permutations(mine)
    )


def _out_of_order(up: bool, parts: tuple[t.Node, ...]) -> str:
    """Return a sentence that names two neighbours that stand the wrong way round."""
    for left, right in pairwise(parts):
        a, b = exact(left), exact(right)
        if (a > b) if up else (a < b):
            pair = f"{shown_line(left)} and {shown_line(right)}"
            return f"Look again at {pair}: which of the two is larger?"
    return ""


def of_ratio(item: Item, given: t.Node, key: t.Ratio) -> str:
    """Return what is right of a ratio: its numbers, their order, all parts of it but one."""
    if not isinstance(given, t.Ratio):
        parts = _as_parts(given)
        if parts and same(t.Ratio(parts), key):
            return "The right numbers are there: write them as a ratio, with a colon between."
        if len(key.parts) == 2 and any(
            same(given, n) and part == t.Int(1) for n, part in (key.parts, key.parts[::-1])
        ):
            return "The number is right: give the whole ratio, with the 1 and a colon."
        return "The answer is a ratio: give it with a colon between the numbers."
    if len(given.parts) != len(key.parts):
        return f"The ratio has {len(key.parts)} parts, and there are {len(given.parts)} here."
    if len(key.parts) <= 4 and any(
        same(t.Ratio(some), key) for some in permutations(given.parts) if some != given.parts
    ):
        return "The right numbers are there, in the wrong order: which comes first?"
    if len(key.parts) == 3 and not t.symbols(given):
        for place, name in enumerate(("first", "second", "third")):
            rest = [i for i in range(3) if i != place]
            some = t.Ratio(tuple(given.parts[i] for i in rest))
            if same(some, t.Ratio(tuple(key.parts[i] for i in rest))):
                return f"Only the {name} part is not right: look again at that one."
    match marking_of(item.ask).target(item.ask):
        case t.Ratio() as ratio if not t.symbols(ratio):
            return (
                f"That is not the same ratio as {shown_line(ratio)}: was every part multiplied or "
                "divided by the same number?"
            )
    return ""


def _as_parts(given: t.Node) -> tuple[t.Node, ...]:
    match given:
        case t.Frac(top, bottom):
            return (top, bottom)
        case t.Listing(parts):
            return parts
    return ()
