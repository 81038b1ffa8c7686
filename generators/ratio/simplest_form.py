"""Writing a ratio in its simplest form."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from math import gcd, lcm
from typing import Any

from generators.ratio._parts import (
    COPRIME,
    METRIC,
    amount,
    factored,
    lowest,
    swapped,
    unit_name,
    whole_ratio,
)
from generators.ratio._simplest_mistakes import (
    CLEARS_EACH,
    HUNDRED,
    ONE_ONLY,
    PART_TO_WHOLE,
    REVERSED,
    TAKES_AWAY,
    UNITS_LOST,
)
from itembank.figures.kinds.number.shaded_shape import ShadedShape
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.forms.form_rules import decimal_node
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_KINDS = (*METRIC, ("mm", "cm", 10))
_PARTS = (
    *((n, d, "frac") for d in (2, 3, 4, 5, 6, 8) for n in range(1, d) if gcd(n, d) == 1),
    *((n, d, "mixed") for d in (2, 3, 4) for n in range(d + 1, 3 * d) if gcd(n, d) == 1),
    *((n, 10, "dec") for n in (3, 6, 7, 8, 9, 12, 15, 18)),
    *((n, 100, "dec") for n in (15, 24, 36, 45, 75, 125, 225)),
)
_SHAPES = (
    *((2, columns) for columns in (3, 4, 5, 6, 8, 9, 10)),
    *((3, columns) for columns in (3, 4, 5, 6, 8, 10)),
    *((4, columns) for columns in (4, 5, 6, 8)),
)
"""Rows and columns of the rectangles that are shaded."""


def _keep_shaded(shape: tuple[int, int], dark: int, first: int) -> bool:
    """Keep a ratio that cancels and whose two parts are neither equal nor very small."""
    every = shape[0] * shape[1]
    rest = every - dark
    return 0 < dark < every and dark != rest and gcd(dark, every) > 1 and min(dark, rest) > 2


def _shaded(topic: Topic, tier: Tier, shape: tuple[int, int], dark: int, first: int) -> Draft:
    """Return the question for the ratio of shaded to unshaded parts, or the other way (1)."""
    rows, columns = shape
    rest = rows * columns - dark
    figure = ShadedShape("rectangle", rows, columns, tuple(range(dark)))
    names, counts = ("shaded", "unshaded"), (dark, rest)
    names, counts = (names[::-1], counts[::-1]) if first else (names, counts)
    key = whole_ratio(*lowest(*counts))
    text = (
        f"What is the ratio of {names[0]} parts to {names[1]} parts? "
        "Give your answer in its simplest form.",
    )
    factor = gcd(*counts)
    alone = min(counts)
    half_done = tuple(n // factor if n == alone else n for n in counts)
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "ratio",
        (
            Step("Count the parts of each kind.", whole_ratio(*counts)),
            *_cancel(counts),
        ),
        slips(
            (REVERSED, whole_ratio(*lowest(*counts[::-1]))),
            (PART_TO_WHOLE, whole_ratio(*lowest(counts[0], dark + rest))),
            (ONE_ONLY, whole_ratio(*half_done)),
        ),
        ("shaded", shape, dark, first),
        figure=figure,
    )


def _keep_units(kind: tuple[str, str, int], twentieths: int, halves: int) -> bool:
    # Equal numbers of hundredths would make two slips meet; half millimetres are dull.
    return twentieths != halves and (kind[2] != 10 or twentieths % 2 == 0)


def _keep_parts(left: tuple[int, int, str], right: tuple[int, int, str]) -> bool:
    (p, q, _), (r, s, _) = left, right
    # Equal denominators hide the slip of clearing each part by itself.
    return left < right and q != s and p * s != r * q and p * p * s != r * r * q


def _node(part: tuple[int, int, str]) -> t.Node:
    top, bottom, style = part
    if style == "dec":
        return decimal_node(Fraction(top, bottom))
    if style == "mixed":
        return t.Mixed(top // bottom, top % bottom, bottom)
    return t.frac(top, bottom)


def _multiplied(shown: t.Ratio, factor: int) -> t.Ratio:
    """Return a ratio with each part in brackets, multiplied by `factor`."""
    return t.Ratio(tuple(t.Bracket(t.times(part, t.Int(factor))) for part in shown.parts))


def _cancel(parts: tuple[int, ...]) -> Iterator[Step]:
    """Yield the lines that take whole-number parts to lowest terms."""
    factor, small, whole = gcd(*parts), lowest(*parts), whole_ratio(*parts)
    if factor == 1:
        return
    shared = factored(factor, *small)
    yield Step(f"The highest common factor of the two parts is {factor}.", t.equals(whole, shared))
    yield Step(f"Divide both parts by {factor}.", t.equals(shared, whole_ratio(*small)))


def _gone_wrong(pair: tuple[int, int], factor: int) -> tuple[kinds.WrongSolution, ...]:
    """Return how a ratio of whole numbers is simplified wrongly."""
    a, b = swapped(pair, sum(pair) + factor)
    wrong, K = kinds.WrongSolution, t.Int(factor)
    left, right = t.Int(a * factor), t.Int(b * factor)
    ends = whole_ratio(a, b * factor)
    found = (wrong(ONE_ONLY, (t.Ratio((t.Bracket(t.divide(left, K)), right)), ends)),)
    if min(a, b) == 1:
        return found
    taken = t.Ratio((t.Bracket(t.sub(left, K)), t.Bracket(t.sub(right, K))))
    return (*found, wrong(TAKES_AWAY, (taken, whole_ratio((a - 1) * factor, (b - 1) * factor))))


def _gone_wrong_units(
    kind: tuple[str, str, int], twentieths: int, halves: int
) -> tuple[kinds.WrongSolution, ...]:
    if halves % 2:
        return ()
    _, _, size = kind
    sides = (twentieths * size // 20, halves // 2)
    left, right = swapped((0, 1), twentieths + halves)
    plain, least = whole_ratio(sides[left], sides[right]), lowest(sides[left], sides[right])
    if plain == whole_ratio(*least):
        return ()
    return (kinds.WrongSolution(UNITS_LOST, (plain, whole_ratio(*least))),)


@register
class SimplestForm(Topic):
    """Whole numbers; then amounts in different units; then fractions and decimals."""

    id = "ratio.simplest-form"
    title = "Writing a ratio in its simplest form"
    statements = ("ratio.notation",)
    misconceptions = (
        REVERSED,
        ONE_ONLY,
        TAKES_AWAY,
        UNITS_LOST,
        HUNDRED,
        CLEARS_EACH,
        PART_TO_WHOLE,
    )
    spaces = {
        Tier.SUPPORT: kinds.with_wrong_solutions(
            kinds.with_claims_and_matches(Space(None, pair=COPRIME, factor=range(2, 13))),
            _gone_wrong,
        ),
        Tier.CORE: kinds.with_wrong_solutions(
            kinds.with_claims_and_matches(
                Space(_keep_units, kind=_KINDS, twentieths=range(2, 20), halves=range(2, 9))
            ).also(_shaded, _keep_shaded, shape=_SHAPES, dark=range(3, 30), first=(0, 1)),
            _gone_wrong_units,
        ),
        Tier.CHALLENGE: kinds.with_claims_and_matches(
            Space(_keep_parts, left=_PARTS, right=_PARTS)
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return self._whole(*values)
        return self._units(*values) if tier is Tier.CORE else self._parts(*values)

    def _whole(self, pair: tuple[int, int], factor: int) -> Draft:
        a, b = swapped(pair, sum(pair) + factor)
        shown, key = whole_ratio(a * factor, b * factor), whole_ratio(a, b)
        one_only = (a, b * factor) if a < b else (a * factor, b)
        away = ((a - 1) * factor, (b - 1) * factor)
        wrong = [(REVERSED, whole_ratio(b, a)), (ONE_ONLY, whole_ratio(*one_only))]
        # A part that is the common factor itself would become 0; and each slip has its own worth.
        if min(a, b) > 1 and away[0] * one_only[1] != away[1] * one_only[0]:
            wrong.append((TAKES_AWAY, whole_ratio(*away)))
        return Draft(
            prompt=prompt("Write {r} in its simplest form.", r=shown),
            ask=Find(shown),
            key=key,
            form="ratio",
            steps=tuple(_cancel((a * factor, b * factor))),
            slips=slips(*wrong),
            twin=("whole", pair, factor),
        )

    def _units(self, kind: tuple[str, str, int], twentieths: int, halves: int) -> Draft:
        small, large, size = kind
        few, many = twentieths * size // 20, Fraction(halves, 2)
        turn = twentieths + halves
        left, right = swapped((0, 1), turn)
        nodes = (amount(few, small), amount(many, large))
        shown = t.Ratio((nodes[left], nodes[right]))
        same = (few, halves * size // 2)
        key = lowest(same[left], same[right])
        plain = (few * 2, halves)
        ordered = (same[left], same[right])
        alike = t.Ratio(tuple(amount(part, small) for part in ordered))
        steps = (
            Step(f"Write both amounts in {unit_name(small)}.", t.equals(shown, alike)),
            Step(
                "The units are now the same, so leave them out.",
                t.equals(alike, whole_ratio(*ordered)),
            ),
            *_cancel(ordered),
        )
        wrong = [
            (UNITS_LOST, whole_ratio(*lowest(plain[left], plain[right]))),
            (REVERSED, whole_ratio(*reversed(key))),
        ]
        if size in (60, 1000):
            hundred = (few, halves * 50)
            wrong.append((HUNDRED, whole_ratio(*lowest(hundred[left], hundred[right]))))
        return Draft(
            prompt=prompt("Write {r} in its simplest form, without units.", r=shown),
            ask=Find(shown),
            key=whole_ratio(*key),
            form="ratio",
            steps=steps,
            slips=slips(*wrong),
            twin=("units", small, twentieths, halves),
        )

    def _parts(self, left: tuple[int, int, str], right: tuple[int, int, str]) -> Draft:
        if (left[0] + right[0]) % 2:
            left, right = right, left
        shown = t.Ratio((_node(left), _node(right)))
        decimals = left[2] == right[2] == "dec"
        values = [side[:2] if decimals else lowest(*side[:2]) for side in (left, right)]
        common = lcm(*(bottom for _, bottom in values))
        whole = tuple(top * common // bottom for top, bottom in values)
        key = lowest(*whole)
        over = shown if decimals else t.Ratio(tuple(t.frac(*value) for value in values))
        steps = [
            Step(
                f"Multiply both parts by {common}, so that both become whole.",
                t.equals(over, _multiplied(over, common)),
            ),
            Step("Work out each part.", t.equals(_multiplied(over, common), whole_ratio(*whole))),
            *_cancel(whole),
        ]
        if over != shown:
            steps.insert(0, Step("Write each part as a fraction.", t.equals(shown, over)))
        return Draft(
            prompt=prompt("Write {r} as a ratio of whole numbers in its simplest form.", r=shown),
            ask=Find(shown),
            key=whole_ratio(*key),
            form="ratio",
            steps=tuple(steps),
            slips=slips(
                (CLEARS_EACH, whole_ratio(*lowest(left[0], right[0]))),
                (REVERSED, whole_ratio(*reversed(key))),
            ),
            twin=("parts", *sorted((left, right))),
        )
