"""From a ratio to a fraction of the whole, and back."""

from __future__ import annotations

from dataclasses import replace
from math import gcd
from typing import Any

from generators._bars import shares as bars_of
from generators._turns import by_turns
from generators.ratio._fraction_mistakes import (
    JOINED,
    OF_WHOLE,
    OTHER_PART,
    PART_TO_PART,
    REVERSED,
    WHOLE_AS_PART,
)
from generators.ratio._parts import COPRIME, lowest, whole_ratio
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_A, _B, _C = t.Sym("a"), t.Sym("b"), t.Sym("c")
_TO_FRACTION = (
    (
        "Red and white tulips are planted in the ratio {r}. What fraction of the tulips are {ask}?",
        ("red", "white"),
    ),
    (
        "The ratio of juniors to seniors in a swimming club is {r}. "
        "What fraction of the members are {ask}?",
        ("juniors", "seniors"),
    ),
    (
        "The ratio of electric to diesel buses at a depot is {r}. "
        "What fraction of the buses are {ask}?",
        ("electric", "diesel"),
    ),
    (
        "Sand and compost are mixed in the ratio {r}. What fraction of the mix is {ask}?",
        ("sand", "compost"),
    ),
)
_PARTS = tuple((a, b) for a in range(1, 12) for b in range(a + 1, 12) if gcd(a, b) == 1)
_END = "Write the ratio of {pair} in its simplest form."
_TO_RATIO = (
    ("{f} of the tulips in a bed are red. The rest are white. ", "red to white"),
    ("{f} of the members of a club are juniors. The rest are seniors. ", "juniors to seniors"),
    ("{f} of the buses at a depot are electric. The rest are diesel. ", "electric to diesel"),
    ("{f} of a mix is sand. The rest is compost. ", "sand to compost"),
)
_THREE = (
    (
        "{f} of the bulbs in a bed are tulips. The rest are lilies and irises in the ratio {r}. ",
        ("tulips", "lilies", "irises"),
    ),
    (
        "{f} of a club are juniors. The rest are seniors and masters in the ratio {r}. ",
        ("juniors", "seniors", "masters"),
    ),
    (
        "{f} of a depot's buses are diesel. The rest are electric and hybrid in the ratio {r}. ",
        ("diesel", "electric", "hybrid"),
    ),
)
# Fractions as (numerator, denominator); a denominator of 0 marks a percentage.
_SHARES = (
    *((p, q) for q in range(3, 13) for p in range(1, q) if gcd(p, q) == 1),
    *((p, 0) for p in range(5, 100, 5) if p != 50),
)
_FRACTIONS = tuple((p, q) for q in range(2, 9) for p in range(1, q) if gcd(p, q) == 1)
_DRAWN = (
    ("The bars show the members of a club.", ("juniors", "seniors")),
    ("The bars show the bulbs in a bed.", ("tulips", "lilies")),
    ("The bars show the tickets that were sold.", ("singles", "returns")),
)


def _keep_drawn(pair: tuple[int, int], factor: int, asked: int) -> bool:
    # Part over part is a second wrong answer only where it is a fraction.
    return pair[1 - asked] > 1 and pair[1] * factor <= 12


def _drawn(topic: Topic, tier: Tier, pair: tuple[int, int], factor: int, asked: int) -> Draft:
    """Return the question for the fraction that one of two bars is of both."""
    turn = (sum(pair) + factor) % 2
    parts, at = (pair[::-1] if turn else pair), asked ^ turn
    part, other, count = pair[asked] * factor, pair[1 - asked] * factor, sum(pair) * factor
    lead, names = by_turns(_DRAWN, pair[0] + pair[1] + factor)
    total = t.Int(count * by_turns((3, 4, 5, 6), pair[0] + factor))
    named = zip(map(str.capitalize, names), (n * factor for n in parts), strict=True)
    figure = bars_of(named, total)
    key = t.frac(*lowest(part, count))
    text = (
        f"{lead} What fraction of all of them are {names[at]}? "
        "Give your answer in its simplest form.",
    )
    cancelled = t.equals(t.frac(part, count), key)
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "lowest-terms",
        (
            Step(
                "Add to find the number of parts.",
                t.equals(t.add(*(t.Int(n * factor) for n in parts)), t.Int(count)),
            ),
            Step(f"{names[at].capitalize()}: {part} of the {count} parts.", t.frac(part, count)),
            *((Step(f"Divide both by {factor}.", cancelled),) if factor > 1 else ()),
        ),
        slips(
            (PART_TO_PART, t.frac(*lowest(part, other))),
            (OTHER_PART, t.frac(*lowest(other, count))),
        ),
        ("drawn", pair, factor, asked),
        figure=figure,
    )


def _keep_fraction(pair: tuple[int, int], asked: int, story: int) -> bool:
    # The other part is not 1: a part over 1 would be no fraction, which nobody writes.
    return pair[1 - asked] != 1


def _keep_three(share: tuple[int, int], pair: tuple[int, int], swap: int) -> bool:
    (p, q), (a, b) = share, pair
    # Equal denominators would hide the slip of joining the numbers as they stand.
    return a + b != q - p and a + b != q and (swap == 0 or a != b)


@register
class FractionOfWhole(Topic):
    """Ratio to fraction; then fraction or percentage to ratio; then the rest shared again."""

    id = "ratio.fraction-of-whole"
    title = "Ratios and fractions of the whole"
    statements = ("ratio.multiplicative", "ratio.linear")
    misconceptions = (PART_TO_PART, OTHER_PART, WHOLE_AS_PART, REVERSED, JOINED, OF_WHOLE)
    prerequisites = ("ratio.simplest-form", "fractions.lowest-terms")
    spaces = {
        Tier.SUPPORT: kinds.with_given_answers(
            Space(_keep_fraction, pair=_PARTS, asked=(0, 1), story=range(4)).also(
                _drawn, _keep_drawn, pair=_PARTS, factor=range(1, 6), asked=(0, 1)
            )
        ),
        Tier.CORE: kinds.with_given_answers(Space(None, share=_SHARES, story=range(4))),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(_keep_three, share=_FRACTIONS, pair=((1, 1), *COPRIME[:14]), swap=(0, 1))
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return self._fraction(*values)
        return self._ratio(*values) if tier is Tier.CORE else self._three(*values)

    def _fraction(self, pair: tuple[int, int], asked: int, story: int) -> Draft:
        turn = (pair[0] + pair[1] + story) % 2
        parts = pair[::-1] if turn else pair
        at = asked ^ turn
        part, other, count = pair[asked], pair[1 - asked], sum(pair)
        text, names = _TO_FRACTION[story]
        shown, key = whole_ratio(*parts), t.frac(part, count)
        return Draft(
            prompt=prompt(text.replace("{ask}", names[at]), r=shown),
            ask=Find(t.Frac((_A, _B)[at], t.add(_A, _B)), (t.equals(t.Ratio((_A, _B)), shown),)),
            key=key,
            form="lowest-terms",
            steps=(
                Step(
                    "Add to find the number of parts.", t.equals(t.add(*shown.parts), t.Int(count))
                ),
                Step(
                    f"{part} of the {count} parts "
                    f"{'is' if part == 1 else 'are'} {names[at]}, so write that as a fraction.",
                    key,
                ),
            ),
            slips=slips((PART_TO_PART, t.frac(part, other)), (OTHER_PART, t.frac(other, count))),
            twin=("fraction", pair, asked, story),
        )

    def _ratio(self, share: tuple[int, int], story: int) -> Draft:
        top, bottom = share
        text, pair = _TO_RATIO[story]
        shown: t.Node = t.frac(top, bottom) if bottom else t.Percent(t.Int(top))
        unity: t.Node = t.Int(1) if bottom else t.Percent(t.Int(100))
        bottom = bottom or 100
        rest: t.Node = (
            t.frac(bottom - top, bottom) if unity == t.Int(1) else t.Percent(t.Int(bottom - top))
        )
        whole = (top, bottom - top)
        key = whole_ratio(*lowest(*whole))
        parts = t.Ratio((shown, rest))
        steps = [
            Step("Subtract from the whole to find the rest.", t.equals(t.sub(unity, shown), rest)),
            Step(
                "Write the two shares as a ratio of whole numbers.",
                t.equals(parts, whole_ratio(*whole)),
            ),
        ]
        factor = gcd(*whole)
        if factor > 1:
            steps.append(
                Step(f"Divide both parts by {factor}.", t.equals(whole_ratio(*whole), key))
            )
        return Draft(
            prompt=prompt(text + _END.replace("{pair}", pair), f=shown),
            ask=Find(t.Ratio((_A, _B)), (t.equals(_A, shown), t.equals(t.add(_A, _B), t.Int(1)))),
            key=key,
            form="ratio",
            steps=tuple(steps),
            slips=slips(
                (WHOLE_AS_PART, whole_ratio(*lowest(top, bottom))),
                (REVERSED, t.Ratio(key.parts[::-1])),
            ),
            twin=("ratio", share, story),
            constants=(1,),
        )

    def _three(self, share: tuple[int, int], pair: tuple[int, int], swap: int) -> Draft:
        (p, q), (a, b) = share, pair[::-1] if swap else pair
        count, rest = a + b, q - p
        text, names = by_turns(_THREE, p + q + a)
        shown, other = t.frac(p, q), whole_ratio(a, b)
        second, third = t.frac(rest * a, q * count), t.frac(rest * b, q * count)
        whole = (p * count, rest * a, rest * b)
        key = whole_ratio(*lowest(*whole))
        shares = t.Ratio((shown, second, third))
        steps = [
            Step(
                "Take the fraction from 1 to find the rest.",
                t.equals(t.sub(t.Int(1), shown), t.frac(rest, q)),
            ),
            Step(
                _of_rest(names[1], a, count),
                t.equals(t.part_of(t.frac(a, count), t.frac(rest, q)), second),
            ),
            Step(
                _of_rest(names[2], b, count),
                t.equals(t.part_of(t.frac(b, count), t.frac(rest, q)), third),
            ),
            Step(f"Multiply every share by {q * count}.", t.equals(shares, whole_ratio(*whole))),
        ]
        factor = gcd(*whole)
        if factor > 1:
            steps.append(
                Step(f"Divide every part by {factor}.", t.equals(whole_ratio(*whole), key))
            )
        joined = lowest(p, a, b)
        return Draft(
            prompt=prompt(text + _END.replace("{pair}", " to ".join(names)), f=shown, r=other),
            ask=Find(
                t.Ratio((_A, _B, _C)),
                (
                    t.equals(_A, shown),
                    t.equals(t.add(_A, _B, _C), t.Int(1)),
                    t.equals(t.Ratio((_B, _C)), other),
                ),
            ),
            key=key,
            form="ratio",
            steps=tuple(steps),
            slips=slips(
                (replace(JOINED, ask=_first_share(joined, names[0], share)), whole_ratio(*joined)),
                (OF_WHOLE, whole_ratio(*lowest(p * count, q * a, q * b))),
            ),
            twin=("three", share, (a, b)),
            constants=(1,),
        )


def _of_rest(name: str, part: int, count: int) -> str:
    """Return the sentence that says which part of the rest a kind is."""
    return f"{name.capitalize()}: {part} of the {count} parts of the rest."


def _first_share(parts: tuple[int, ...], name: str, share: tuple[int, int]) -> str:
    """Ask whether the first part of a ratio is the fraction of the whole it has to be."""
    verb = "is" if parts[0] == 1 else "are"
    return (
        f"In your ratio {parts[0]} of the {sum(parts)} parts {verb} {name}. "
        f"Is that {share[0]}/{share[1]} of the whole?"
    )
