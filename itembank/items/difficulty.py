"""A written measure of how hard an item is, from what is printed and what must be done.

It counts, so that it can be explained: each line of working, each kind of number met, each
letter. The weights are a judgement (common practice, no source); measured facilities
correct it once there are results.
"""

from __future__ import annotations

from itembank.items.item import Item
from itembank.notation.tree import (
    Blank,
    Bracket,
    Dec,
    Either,
    Frac,
    Int,
    Listing,
    Mixed,
    Neg,
    Node,
    Percent,
    Power,
    Product,
    Ratio,
    Root,
    Sum,
    Sym,
    children,
)

STEP = 1.0
"""Weight of one line of working."""
SENTENCE = 0.02
"""Weight of one word of prompt."""
KEY = 0.5
"""Share of the key's own weight that counts: a fraction is a harder answer than a whole number."""


def difficulty(item: Item) -> float:
    """Return the difficulty of an item, a positive number to one decimal place.

    One for each line of working, the weight of everything printed (:func:`weight`), a
    fiftieth for each word, and half the weight of the key.
    """
    printed = sum(weight(run) for run in item.prompt if not isinstance(run, str))
    words = sum(len(run.split()) for run in item.prompt if isinstance(run, str))
    lines = sum(1 for step in item.steps if step.maths is not None)
    return round(STEP * lines + printed + SENTENCE * words + KEY * weight(item.key), 1)


def weight(node: Node) -> float:
    """Return the weight of a tree: the weights of its parts and of what joins them.

    >>> from itembank.notation.tree import frac, num
    >>> weight(num(7)) < weight(num(48)) < weight(frac(7, 48)) < weight(num(-48)) + 1
    True
    """
    below = 0.0
    for child in children(node):
        below += weight(child)
    match node:
        case Int(n):
            return 0.1 if n <= 12 else 0.2 if n <= 100 else 0.4
        case Dec(_, places, recurring):
            return 0.3 + 0.1 * len(places) + (0.5 if recurring else 0)
        case Frac():
            return 0.4 + below
        case Mixed(_, _, den):
            return 0.9 if den <= 12 else 1.1
        case Neg():
            return 0.5 + below
        case Percent() | Bracket():
            return 0.3 + below
        case Sym() | Blank():
            return 0.3
        case Power(_, _):
            return 0.4 + below
        case Root(_, index):
            return (0.4 if index == 2 else 0.6) + below
        case Sum(_, rest) | Product(_, rest):
            return 0.3 * len(rest) + below
        case Ratio(parts) | Listing(parts) | Either(parts):
            return 0.2 * len(parts) + below
    return below
