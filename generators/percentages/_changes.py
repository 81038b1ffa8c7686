"""A percentage change: what there is afterwards, and the multiplier that does it.

A change is given in tenths of one per cent, with a minus sign for a decrease.
"""

from __future__ import annotations

from generators.percentages._amounts import multiplier, per_cent
from itembank.items.item import Step
from itembank.notation import tree as t


def way(change: int) -> str:
    """Return where a price goes.

    >>> way(-50)
    'down'
    """
    return "up" if change > 0 else "down"


def afterwards(change: int) -> t.Node:
    """Return what there is after a change, as a sum of per cents.

    >>> from itembank.notation.line import line
    >>> line(afterwards(125)), line(afterwards(-200))
    ('100% + 12.5%', '100% - 20%')
    """
    whole, share = per_cent(1000), per_cent(abs(change))
    return t.add(whole, share) if change > 0 else t.sub(whole, share)


def multiplier_step(say: str, change: int) -> Step:
    """Return how the multiplier of a change is found.

    >>> from itembank.notation.line import line
    >>> line(multiplier_step("Find the multiplier.", -200).maths)
    '100% - 20% = 80% = 0.8'
    """
    now = t.equals(afterwards(change), per_cent(1000 + change), multiplier(1000 + change))
    return Step(say, now)


def changed(kind: str, old: t.Node, p: int) -> t.Node:
    """Return what an amount is after a change by p, as a sum.

    >>> from itembank.notation.line import line
    >>> line(changed("down", t.Int(80), 125))
    '80 - 12.5% of 80'
    """
    part = t.part_of(per_cent(p), old)
    return t.add(old, part) if kind == "up" else t.sub(old, part)
