"""Ratios where the difference between two parts is given."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators._turns import by_turns
from generators.ratio._amounts_in_brief import DIFFERENCE
from generators.ratio._difference_mistakes import AS_TOTAL, IS_PART, LARGER, STOPS
from generators.ratio._differences_drawn import (
    both_drawn,
    both_fit,
    one_drawn,
    one_fits,
    worth_of_a_part,
)
from generators.ratio._parts import COPRIME, TRIPLES, amount, swapped, turned, whole_ratio
from itembank.items import kinds
from itembank.items.forms.form_rules import money_node
from itembank.items.item import Draft, Find, Misconception, Step, Tier, prompt
from itembank.items.kinds.brief import with_brief
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_A, _B, _C = t.Sym("a"), t.Sym("b"), t.Sym("c")
_PAIRS = tuple((a, b) for a, b in COPRIME if b - a > 1)
_COUNTED = (
    (
        "Red and white tulips are planted in the ratio {r}. There are {n} more {big} "
        "than {small}. How many are {ask}?",
        ("red", "white"),
    ),
    (
        "A club has juniors and seniors in the ratio {r}. There are {n} more {big} "
        "than {small}. How many {ask} are there?",
        ("juniors", "seniors"),
    ),
    (
        "A depot has electric and diesel buses in the ratio {r}. There are {n} more {big} "
        "than {small}. How many are {ask}?",
        ("electric", "diesel"),
    ),
)
_MIXED = (
    (
        "Sand and compost are mixed by mass in the ratio {r}. There is {n} more {big} than "
        "{small}. What is the mass of the whole mix?",
        ("sand", "compost"),
        "kg",
    ),
    (
        "A tank holds rainwater and tap water in the ratio {r}. There is {n} more {big} than "
        "{small}. How many litres of water are in the tank?",
        ("rainwater", "tap water"),
        "l",
    ),
    (
        "A club spends money on badges and caps in the ratio {r}. It spends {n} more on {big} "
        "than on {small}. How much does it spend altogether?",
        ("badges", "caps"),
        "£",
    ),
)
_PAID = (
    (
        "Juniors, seniors and masters share a prize in the ratio {r}. "
        "The {big} get {n} more than the {small}. How much do the {middle} get?",
        ("juniors", "seniors", "masters"),
    ),
    (
        "The costs of seeds, tools and pots are in the ratio {r}. "
        "The {big} cost {n} more than the {small}. How much do the {middle} cost?",
        ("seeds", "tools", "pots"),
    ),
    (
        "The costs of brushes, mops and buckets are in the ratio {r}. "
        "The {big} cost {n} more than the {small}. How much do the {middle} cost?",
        ("brushes", "mops", "buckets"),
    ),
)


def _keep_count(pair: tuple[int, int], value: int, larger: int) -> bool:
    # Where a single part is asked for, stopping at one part is right.
    return pair[larger] > 1


def _fill(text: str, **names: str) -> str:
    for name, word in names.items():
        text = text.replace(f"{{{name}}}", word)
    return text


@register
class Difference(Topic):
    """One amount; then the total; then one of three amounts, in pounds and pence."""

    id = "ratio.difference"
    title = "Using a ratio when the difference is known"
    statements = ("ratio.division",)
    misconceptions = (IS_PART, AS_TOTAL, STOPS, LARGER)
    prerequisites = ("ratio.one-part",)
    spaces = {
        Tier.SUPPORT: kinds.with_given_answers(
            Space(_keep_count, pair=_PAIRS, value=range(3, 13), larger=(0, 1)).also(
                one_drawn, one_fits, pair=_PAIRS, value=range(3, 13), larger=(0, 1)
            )
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(
                None, pair=_PAIRS, halves=(3, 4, 5, 6, 7, 8, 9, 11, 12, 13, 14, 15, 17, 18, 21)
            ).also(both_drawn, both_fit, pair=_PAIRS, value=range(6, 22))
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(None, triple=TRIPLES, quarters=(3, 6, 7, 9, 10, 12, 14, 15, 17, 19, 21))
        ),
    }
    spaces = with_brief(spaces, DIFFERENCE)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return self._count(*values)
        return self._total(*values) if tier is Tier.CORE else self._three(*values)

    def _count(self, pair: tuple[int, int], value: int, larger: int) -> Draft:
        parts = swapped(pair, sum(pair) + value)
        gap, asked = pair[1] - pair[0], pair[larger]
        text, names = by_turns(_COUNTED, pair[0] + value)
        big, small = parts.index(pair[1]), parts.index(pair[0])
        at = big if larger else small
        shown, given, key = whole_ratio(*parts), t.Int(gap * value), t.Int(asked * value)
        wrong: list[tuple[Misconception, t.Node]] = [
            (IS_PART, t.Int(gap * value * asked)),
            (STOPS, t.Int(value)),
        ]
        if gap * value % sum(pair) == 0 and gap * asked != sum(pair):
            wrong.append((AS_TOTAL, t.Int(gap * value // sum(pair) * asked)))
        return Draft(
            prompt=prompt(
                _fill(text, big=names[big], small=names[small], ask=names[at]), r=shown, n=given
            ),
            ask=Find((_A, _B)[at], _model(shown, big, small, given)),
            key=key,
            form="integer",
            steps=(
                *worth_of_a_part(pair[1], pair[0], given, t.Int(value)),
                Step(
                    f"Multiply to find the number asked for: {asked} parts.",
                    t.equals(t.times(t.Int(asked), t.Int(value)), key),
                ),
            ),
            slips=slips(*wrong),
            twin=("count", pair, value, larger),
        )

    def _total(self, pair: tuple[int, int], halves: int) -> Draft:
        parts = swapped(pair, sum(pair) + halves)
        text, names, unit = by_turns(_MIXED, pair[0] + halves)
        big, small = parts.index(pair[1]), parts.index(pair[0])
        worth, count, gap = Fraction(halves, 2), sum(pair), pair[1] - pair[0]
        shown, given, part_worth = (
            whole_ratio(*parts),
            amount(worth * gap, unit),
            amount(worth, unit),
        )
        key = amount(worth * count, unit)
        return Draft(
            prompt=prompt(_fill(text, big=names[big], small=names[small]), r=shown, n=given),
            ask=Find(t.add(_A, _B), _model(shown, big, small, given)),
            key=key,
            form="amount",
            steps=(
                *worth_of_a_part(pair[1], pair[0], given, part_worth),
                Step(
                    "Add to find the number of parts.", t.equals(t.add(*shown.parts), t.Int(count))
                ),
                Step(
                    "Multiply to find the whole.", t.equals(t.times(t.Int(count), part_worth), key)
                ),
            ),
            slips=slips(
                (IS_PART, amount(worth * gap * count, unit)),
                (LARGER, amount(worth * pair[1], unit)),
            ),
            twin=("total", pair, halves),
        )

    def _three(self, triple: tuple[int, int, int], quarters: int) -> Draft:
        parts = turned(triple, sum(triple) + quarters)
        worth, (least, mid, most) = Fraction(quarters, 4), triple
        text, names = by_turns(_PAID, mid + quarters)
        big, small, middle = (parts.index(part) for part in (most, least, mid))
        factor = by_turns((10, 15, 20, 25), quarters)
        shown = whole_ratio(*(part * factor for part in parts))
        given, part_worth = money_node(worth * (most - least)), money_node(worth)
        key = money_node(worth * mid)
        filled = _fill(text, big=names[big], small=names[small], middle=names[middle])
        return Draft(
            prompt=prompt(filled, r=shown, n=given),
            ask=Find((_A, _B, _C)[middle], _model(shown, big, small, given)),
            key=key,
            form="money",
            steps=(
                Step(
                    f"Divide every part of the ratio by {factor}.",
                    t.equals(shown, whole_ratio(*parts)),
                ),
                *worth_of_a_part(most, least, given, part_worth),
                Step(
                    f"Multiply to find the amount asked for: {mid} parts.",
                    t.equals(t.times(t.Int(mid), part_worth), key),
                ),
            ),
            slips=slips((IS_PART, money_node(worth * (most - least) * mid)), (STOPS, part_worth)),
            twin=("three", triple, quarters),
        )


def _model(shown: t.Ratio, big: int, small: int, given: t.Node) -> tuple[Any, ...]:
    """Return the relations behind the words: the ratio, and the given difference."""
    letters = (_A, _B, _C)[: len(shown.parts)]
    return (t.equals(t.Ratio(letters), shown), t.equals(t.sub(letters[big], letters[small]), given))
