"""The first road to what something is worth: by elimination, or by exact algebra."""

from __future__ import annotations

from fractions import Fraction

from itembank.items.asks import Find, Summary
from itembank.notation import tree as t
from itembank.notation.value import NotExact, parts
from itembank.proof.claim.finding import Finding, ordinal, text, values_node
from itembank.proof.claim.key_solutions import Misfit, value_given
from itembank.proof.exact.identity import find_value
from itembank.proof.exact.reckoning.elimination import answer
from itembank.wording.tasks.sums.list_sums import as_sum


def find_worth(ask: Find, key: t.Node) -> Finding:
    """Return what the target is worth where the relations hold, and how the key is not that.

    Raises:
        NotExact: the relations do not settle it.

    >>> from itembank.notation import parse
    >>> find_worth(Find(parse("x + 1"), (parse("2x = 6"),)), parse("5")).fault
    'it comes to 4, the key says 5'
    """
    target, relations = ask.target, ask.relations
    proportional = isinstance(target, t.Ratio)
    try:
        # Most questions are linear, and elimination is the quick way.
        ours = answer(target, relations)
        fault = differ(ours, key, proportional)
    except Misfit as misfit:
        fault = str(misfit)
    except NotExact:
        # Roots, π and letters, in the question or only in the key, take the longer way.
        return find_value(target, relations, key)
    value = key.rest[0][1] if isinstance(key, t.Relation) and key.rest else key
    return Finding(values_node(ours, value, proportional), fault)


def find_summary(ask: Summary, key: t.Node) -> Finding:
    """Return the mean, median, mode or range of a list, worked out as the sum that it is.

    Raises:
        NotExact: the numbers do not settle it.

    >>> from itembank.notation import parse
    >>> find_summary(Summary(parse("2, 3, 7").parts, "mean"), parse("4")).fault
    ''
    """
    return find_worth(Find(as_sum(ask)), key)


def differ(ours: tuple[Fraction, ...], key: t.Node, proportional: bool) -> str:
    """Return a sentence if `key` is not worth what was found, otherwise ``""``."""
    given = parts(value_given(key))
    # In cross products, so that no part is divided by; 0 : 0, which agrees with every ratio,
    # is refused below.
    same = len(given) == len(ours) and (
        all(a * ours[0] == b * given[0] for a, b in zip(given, ours, strict=True))
        if proportional
        else given == ours
    )
    if same and not (proportional and not given[0]):
        return ""
    value = value_given(key)
    mine = text(values_node(ours, value, proportional))
    says = f"it comes to {mine}, the key says {text(value)}"
    if len(given) != len(ours):
        return f"{says}; the answer has {len(ours)} numbers"
    if len(ours) > 1 and not proportional:
        place = next(i for i, (a, b) in enumerate(zip(given, ours, strict=True), 1) if a != b)
        return f"{says}; they first differ at the {ordinal(place)}"
    return says
