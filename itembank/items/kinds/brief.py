"""Short questions beside a topic's own: told in a line or two, without a picture.

A starter brings back several topics on one slide. Where each question has a picture or a long
story eight do not fit, so each tier of a topic that teaches with pictures has short ones too.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from fractions import Fraction
from typing import Any, NamedTuple

from itembank.items.forms.form_rules import decimal_node, money_node, number_node
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.topics.space import Space
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t


class Brief(NamedTuple):
    """A short question of a topic: what makes it, its filter, and the values it may take."""

    make: Callable[..., Draft]
    keep: Callable[..., bool] | None
    axes: Mapping[str, Sequence[Any]]


def with_brief(
    spaces: Mapping[Tier, Space], added: Mapping[Tier, Sequence[Brief]]
) -> dict[Tier, Space]:
    """Return the spaces of a topic, with short questions at the end of each tier.

    >>> def halved(topic, tier, n): ...
    >>> some = {Tier.CORE: Space(None, a=(1, 2))}
    >>> list(with_brief(some, {Tier.CORE: (Brief(halved, None, {"n": (4, 6)}),)})[Tier.CORE])
    [(1,), (2,), (halved, 4), (halved, 6)]
    """
    grown = dict(spaces)
    for tier, briefs in added.items():
        for brief in briefs:
            grown[tier] = grown[tier].also(brief.make, brief.keep, **brief.axes)
    return grown


def told(
    text: str,
    found: t.Node | Find,
    key: t.Node,
    form: str,
    steps: Iterable[tuple[str, t.Node | None]],
    wrongs: Iterable[Wrong],
    twin: tuple[object, ...],
    constants: tuple[int, ...] = (),
    **shown: t.Node,
) -> Draft:
    """Return a short question: what is found is worked out from the numbers that are shown.

    A wrong answer that is a number is written like the key: a decimal, money, or with its unit.
    A mistake that would come to less than nothing of a quantity or of money is left out.
    """
    measured = isinstance(key, t.Quantity | t.Money)
    kept = [
        (mistake, wrong)
        for mistake, wrong in wrongs
        if not (measured and isinstance(wrong, Fraction | int) and wrong <= 0)
    ]
    return Draft(
        prompt(text, **shown),
        found if isinstance(found, Find) else Find(found),
        key,
        form,
        tuple(Step(say, line) for say, line in steps),
        slips(*kept, write=lambda number: like(key, number), key=key),
        twin,
        constants=constants,
    )


def like(key: t.Node, number: Fraction | int) -> t.Node:
    """Return a number written as a key is.

    >>> like(t.Quantity(t.Int(3), "cm"), 7)
    Quantity(amount=Int(n=7), unit='cm')
    >>> like(t.Dec("0", "5"), Fraction(1, 4)), like(t.Int(3), Fraction(1, 4))
    (Dec(whole='0', places='25', recurring=''), Frac(num=Int(n=1), den=Int(n=4)))
    """
    match key:
        case t.Quantity(_, unit):
            return t.Quantity(decimal_node(number), unit)
        case t.Relation(first, ((_, last),)):
            return t.equals(first, like(last, number))
        case t.Percent():
            return t.Percent(decimal_node(number))
        case t.Money():
            return money_node(number)
        case t.Dec():
            return decimal_node(number)
    return number_node(number)


def degrees(number: Fraction | int) -> t.Quantity:
    """Return an angle in degrees."""
    return t.Quantity(decimal_node(number), "°")


def whole(number: Fraction | int) -> int | None:
    """Return a number that is whole, and None for another: a mistake that shows on few items."""
    return int(number) if Fraction(number).denominator == 1 else None
