"""What may be said of a wrong answer: something true that says where to look, never the answer.

First what is nearly right (the sign, the order, the place value, one answer of two), then what
trying the answer out shows, then whether it is too large or too small.
"""

from __future__ import annotations

from itembank.items.item import Item
from itembank.marking.telling.list_hints import of_list, of_ratio, of_several
from itembank.marking.telling.nearly import single
from itembank.marking.telling.relation_hints import of_relation
from itembank.marking.telling.tried import size_of, tried
from itembank.marking.worth.marked_by_kind import marking_of
from itembank.marking.worth.same_worth import same
from itembank.notation import tree as t

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
            said = of_several(given, key)
        case t.Listing():
            said = of_list(item, given, key)
        case t.Ratio():
            said = of_ratio(item, given, key)
        case t.Relation():
            said = of_relation(item, given, key)
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
