"""Error intervals: between which numbers a rounded or truncated number lies.

The programme of study for key stage 3 (England, 2013) asks pupils to "use approximation through
rounding to estimate answers and calculate possible resulting errors expressed using inequality
notation a < x ≤ b" (from memory).
"""

from __future__ import annotations

from enum import IntEnum
from typing import Any, Literal, NamedTuple

from generators._turns import by_turns
from generators.number._rounding import Number
from generators.number._writing import decimal
from itembank.items import kinds
from itembank.items.item import Draft, ErrorInterval, Misconception, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t
from itembank.text.in_words import counted

WHOLE_STEP = Misconception(
    "number.interval-whole-step",
    "goes a whole step down and up instead of half a step",
    "Take a number near one of your ends and round it. Where does it go?",
)
UPPER_BELOW = Misconception(
    "number.interval-upper-end-with-one-more-digit",
    "takes the largest number with one more digit for the upper end",
    "Is there a larger number that still rounds to it, with more digits?",
)
SIGNS_SWAPPED = Misconception(
    "number.interval-signs-swapped",
    "includes the upper end and leaves the lower one out",
    "Round each of your two ends. Which of them goes to the number in the question?",
)
ROUNDED = Misconception(
    "number.interval-truncated-as-rounded",
    "takes a truncated number to have been rounded",
    "What happens to the digits that follow when a number is truncated?",
)


class Kind(IntEnum):
    """How the number was rounded."""

    WHOLE, TEN, HUNDRED = range(3)
    ONE_PLACE, TWO_PLACES, STORY = range(3, 6)
    FIGURES, TRUNCATED, ZERO_END = range(6, 9)


class Rounded(NamedTuple):
    """A rounded number: so many units of its last place, and the words for the rounding."""

    number: Number
    detail: Literal["places", "figures", "nearest"]
    amount: int
    said: str


def _rounded(kind: int, a: int, b: int) -> Rounded:
    match kind:
        case Kind.WHOLE:
            return Rounded(Number(a, 0), "nearest", 1, "the nearest whole number")
        case Kind.TEN:
            return Rounded(Number(a, -1), "nearest", 10, "the nearest 10")
        case Kind.HUNDRED:
            return Rounded(Number(a, -2), "nearest", 100, "the nearest 100")
        case Kind.ONE_PLACE | Kind.STORY:
            return Rounded(Number(a, 1), "places", 1, "1 decimal place")
        case Kind.TWO_PLACES:
            return Rounded(Number(a, 2), "places", 2, "2 decimal places")
        case Kind.FIGURES:
            # Two figures of a large number, or of a small one.
            return Rounded(Number(a, -b if b < 4 else b), "figures", 2, "2 significant figures")
        case Kind.TRUNCATED:
            return Rounded(Number(a, b), "places", b, counted(b, "decimal place"))
    return Rounded(Number(10 * a, b), "places", b, counted(b, "decimal place"))


def _support(kind: int, a: int) -> bool:
    """Keep two-digit numbers and tens and hundreds."""
    return a > 2 and (kind != Kind.WHOLE or a > 9) and a % 10 != 0


def _core(kind: int, a: int) -> bool:
    """Keep numbers with one and two decimal places."""
    return a % 10 != 0 and (kind != Kind.TWO_PLACES or a > 20)


def _challenge(kind: int, a: int, b: int) -> bool:
    """Keep significant figures, truncated numbers, and rounded ones that end in a nought."""
    match kind:
        case Kind.FIGURES:
            return 11 <= a <= 99 and a % 10 != 0 and b in (1, 2, 3, 4, 5)
        case Kind.TRUNCATED:
            return b in (1, 2) and a % 10 != 0
    return b in (1, 2) and a <= 99


_STORIES = (
    "The length of a hose in a market garden is {x} metres.",
    "The mass of a sack in a school kitchen is {x} kilograms.",
    "The mass of a parcel at a library is {x} kilograms.",
    "The height of a bean plant on an allotment is {x} centimetres.",
    "A bus journey is {x} kilometres long.",
)
LETTERS = ("x", "y", "n", "w", "d")


@register
class ErrorIntervals(Topic):
    """To the nearest 1, 10 or 100; to decimal places; then figures, noughts and truncation."""

    id = "number.error-intervals"
    title = "Error intervals"
    statements = ("number.estimation", "number.rounding")
    prerequisites = ("number.round-figures",)
    misconceptions = (WHOLE_STEP, UPPER_BELOW, SIGNS_SWAPPED, ROUNDED)
    spaces = {
        Tier.SUPPORT: kinds.with_given_answers(
            Space(_support, kind=tuple(Kind)[:3], a=range(3, 99))
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(_core, kind=tuple(Kind)[3:6], a=range(11, 200, 2))
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(_challenge, kind=tuple(Kind)[6:], a=range(11, 160), b=(1, 2, 3, 4, 5))
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, a, b = (*values, 0)[:3]
        number, detail, amount, said = _rounded(kind, a, b)
        letter = t.Sym(by_turns(LETTERS, a + b))
        cut = kind == Kind.TRUNCATED
        # One more place: a step is ten of its units, and half a step five.
        units, places = number.units * 10, number.places + 1

        def interval(low: int, first: t.RelationOp, second: t.RelationOp, high: int) -> t.Relation:
            return t.Relation(_at(low, places), ((first, letter), (second, _at(high, places))))

        if cut:
            low, high = units, units + 10
            wrong = slips(
                (ROUNDED, interval(units - 5, "≤", "<", units + 5)),
                (UPPER_BELOW, interval(units, "≤", "≤", units + 9)),
                (SIGNS_SWAPPED, interval(units, "<", "≤", units + 10)),
            )
            steps = [
                Step("Truncating leaves digits out: it is what is left, or a little more."),
                Step("It is below the next one.", interval(low, "≤", "<", high)),
            ]
        else:
            low, high = units - 5, units + 5
            wrong = slips(
                (WHOLE_STEP, interval(units - 10, "≤", "<", units + 10)),
                (UPPER_BELOW, interval(low, "≤", "≤", units + 4)),
                (SIGNS_SWAPPED, interval(low, "<", "≤", high)),
            )
            value, half = _at(units, places), _at(5, places)
            end = Step(
                "The lower end rounds up to the number; the upper end rounds to the next one.",
                interval(low, "≤", "<", high),
            )
            steps = [
                Step("Go half a step down.", t.equals(t.sub(value, half), _at(low, places))),
                Step("Go half a step up.", t.equals(t.add(value, half), _at(high, places))),
                end,
            ]
            if tier is Tier.SUPPORT:
                half_said = "0.5" if places > 0 else str(5 * 10**-places)
                steps = [Step(f"Half a step is {half_said}: go so far down and up.", end.maths)]
            if tier is Tier.CHALLENGE:
                step_said = _step_said(number.places)
                steps = [Step(f"It was rounded to the nearest {step_said}."), *steps]
        key = interval(low, "≤", "<", high)
        return Draft(
            _text(kind, letter, number.node, said, cut, a),
            ErrorInterval(letter, number.node, detail, amount, "down" if cut else "nearest"),
            key,
            "inequality",
            tuple(steps),
            wrong,
            (int(kind), a, b),
        )


def _step_said(places: int) -> str:
    return str(10**-places) if places <= 0 else f"0.{'0' * (places - 1)}1"


def _at(units: int, places: int) -> t.Node:
    if places <= 0:
        return t.Int(units * 10**-places)
    return decimal(units, places)


def _text(
    kind: int, letter: t.Sym, number: t.Node, said: str, cut: bool, a: int
) -> tuple[str | t.Node, ...]:
    if kind == Kind.STORY:
        story = by_turns(_STORIES, a // 2)
        return prompt(
            f"{story} Rounded to {said}, {{x}} is {{n}}. Write the error interval for {{x}}.",
            x=letter,
            n=number,
        )
    how = "truncated" if cut else "rounded"
    return prompt(
        f"A number {{x}} is {{n}} when it is {how} to {said}. Write the error interval for {{x}}.",
        x=letter,
        n=number,
    )
