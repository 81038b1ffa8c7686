"""What may be said of a wrong answer: something true that says where to look, never the answer.

First what is nearly right (the sign, the order, the place value, one answer of two), then what
trying the answer out shows, then whether it is too large or too small.
"""

from __future__ import annotations

from itertools import pairwise, permutations

from itembank.items.asks import asked
from itembank.items.item import Item
from itembank.marking.telling.nearly import WRONG_UNIT, single, too_many, wrong_unit_only
from itembank.marking.telling.tried import right_side, size_of, tried
from itembank.marking.worth.marked_by_kind import marking_of
from itembank.marking.worth.same_worth import TURNED, missing, same, turned, unknowns
from itembank.marking.worth.worth import says_the_same
from itembank.notation import tree as t
from itembank.notation.line import shown_line
from itembank.notation.value import exact

CHECK = "That is not the answer yet: check each step."


def hint(item: Item, given: t.Node) -> str:
    """Return a sentence for a wrong answer. It is true of that answer, and names what to do.

    >>> from itembank.items.topics.registry import find_item
    >>> from itembank.notation.parse import parse
    >>> item = find_item("equations.two-step/support/91")  # 2y + 11 = 17
    >>> hint(item, parse("y = -3"))
    'The size is right, but the sign is not: is it more or less than 0?'
    >>> hint(item, parse("y = 5"))
    'Try it: with y = 5 the left side is 21 and the right side 17.'
    """
    try:
        return _hint(item, given) or CHECK
    # A hint is an extra: where none can be found, the verdict still stands.
    except (t.NotationError, RecursionError, OverflowError):
        return CHECK


def _hint(item: Item, given: t.Node) -> str:
    key = item.key
    if said := _by_kind(item, given):
        return said
    match key:
        case t.Label():
            return _label(item, given)
        case t.Either():
            said = _several(given, key)
        case t.Listing():
            said = _list(item, given, key)
        case t.Ratio():
            said = _ratio(item, given, key)
        case t.Relation():
            said = _relation(item, given, key)
        case _:
            match given:
                case t.Relation(t.Sym(name), (("=", right),)) if name not in t.symbols(key):
                    given = right
            said = single(item, given, key)
    return said or tried(item, given) or size_of(given, key)


def _by_kind(item: Item, given: t.Node) -> str:
    """Return what may be said of an answer about a statement, pairs or a wrong line."""
    reads = marking_of(item.ask).reads
    if reads == "truth":
        return "Look again: work it out, and find a reason."
    if not (isinstance(given, t.Listing) and isinstance(item.key, t.Listing)):
        return ""
    right = [same(*pair) for pair in zip(given.parts, item.key.parts, strict=False)]
    if reads == "pairs":
        if not any(right):
            return "None of the pairs is right yet: work out what each card comes to."
        count = sum(right)
        return (
            f"{count} of the {len(right)} pairs {'is' if count == 1 else 'are'} right: "
            "look again at the rest."
        )
    if reads == "line":
        if right[0]:
            return "That is the line. The right answer is another: go on from the line before."
        if right[-1]:
            return "The answer is right. Which line does not follow from the one before?"
        return "Check each line against the one before: which does not follow?"
    return ""


def _label(item: Item, given: t.Node) -> str:
    match marking_of(item.ask).names(item.ask), given:
        case (_, _, *_) as names, t.Label(text):
            if text.casefold() not in (name.casefold() for name in names):
                return f"Give the name of one choice: {', '.join(names[:-1])} or {names[-1]}."
    return "That is not the one: work out what each choice comes to and compare."


def _several(given: t.Node, key: t.Either) -> str:
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


def _list(item: Item, given: t.Node, key: t.Listing) -> str:
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


def _ratio(item: Item, given: t.Node, key: t.Ratio) -> str:
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


def _relation(item: Item, given: t.Node, key: t.Relation) -> str:
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
