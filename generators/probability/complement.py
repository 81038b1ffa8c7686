"""The probability that something does not happen; all probabilities of an event add up to 1.

England's programme of study for key stage 3 (2013) asks pupils to "understand that the
probabilities of all possible outcomes sum to 1" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from math import gcd
from typing import Any

from generators._scatter import unlike
from generators._turns import by_turns
from generators.probability import _misconceptions as m
from itembank.figures.kinds.chance.probability_table import ProbabilityTable
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.forms.form_rules import decimal_node
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_ONCE = (
    "The probability that a bus is late is {p}. What is the probability that it is not late?",
    "The probability that a seed grows is {p}. What is the probability that it does not grow?",
    "The probability of rain on the day of a gala is {p}. "
    "What is the probability that it does not rain?",
    "The probability that a swimmer wins her race is {p}. "
    "What is the probability that she does not win it?",
    "The probability that a book is on the shelf is {p}. "
    "What is the probability that it is not on the shelf?",
    "The probability that a spinner lands on red is {p}. "
    "What is the probability that it does not land on red?",
)
_DENOMINATORS = (3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 15, 16)
_PLACES = (10, 100, 1)
"""What a decimal is counted in; 1 is for per cent."""

# What an event is about, its outcomes, and how they are spoken of.
_EVENTS = (
    ("Colour", ("red", "blue", "green"), "the colours of a spinner", "that it lands on"),
    ("Weather", ("sun", "cloud", "rain"), "the weather on a day in May", "of"),
    ("Fruit", ("apple", "pear", "plum"), "fruit taken from a bowl at random", "of"),
    ("Plant", ("rose", "lily", "iris"), "plants taken from a tray at random", "of"),
)  # fmt: skip


def _once(top: int, bottom: int, decimal: int) -> bool:
    if decimal:
        # A tenth too many is another number only where there are hundredths.
        whole = {10: 10, 100: 100, 1: 100}[decimal]
        kept = bottom == _DENOMINATORS[0] and 0 < top < whole and 2 * top != whole
        return kept and (decimal != 100 or top % 10 != 0) and (decimal != 1 or top != 55)
    return top < bottom and gcd(top, bottom) == 1 and 2 * top != bottom and (top, bottom) != (1, 10)


def _hundredths(event: int, seed: int) -> tuple[int, int, int]:
    """Return three probabilities in hundredths."""
    first, second = unlike(event + len(_EVENTS) * seed, 2, 5, 60)
    return first, second, 100 - first - second


class _Core:
    """What is asked of a table."""

    LETTER, EITHER, NOT = range(3)


def _core(kind: int, event: int, seed: int) -> bool:
    values = _hundredths(event, seed)
    if min(values) < 4 or len({*values}) < 3:
        return False
    a = values[0]
    if kind == _Core.LETTER:
        return values[seed % 3] not in (45, 50)
    # Where two of three go together, the third is not half; a tenth too many is no whole.
    return kind == _Core.EITHER or (a not in (50, 55) and a > 10)


def _challenge(kind: int, times: int, event: int, seed: int) -> bool:
    known, share = _shares(times, seed)
    if share * (times + 1) + known != 100 or share < 3 or known < 4:
        return False
    left = 100 - known
    values = {times * share, share, left}
    return len({*values, known}) == 4 and left % 2 == 0


def _shares(times: int, seed: int) -> tuple[int, int]:
    """Return a known probability and the letter's, in hundredths."""
    known = 3 + seed
    return known, (100 - known) // (times + 1)


def _hundred(number: int) -> t.Node:
    return decimal_node(Fraction(number, 100))


@register
class Complement(Topic):
    """What does not happen; what is left in a table; letters in a table."""

    id = "probability.not"
    title = "Probabilities add up to 1"
    statements = ("probability.sum",)
    prerequisites = ("probability.single",)
    misconceptions = (
        *(m.SAME_AGAIN, m.LOSES_TENTH, m.FROM_TEN, m.NUMERATOR_LESS, m.STOPS_AT_SUM, m.EVEN_SHARE),
        *(m.STOPS_AT_LETTER, m.ALL_TO_LETTER, m.THE_OTHERS, m.FIRST_OF_TWO, m.MULTIPLIED_FOR_OR),
    )
    spaces = {
        Tier.SUPPORT: Space(_once, top=range(1, 100), bottom=_DENOMINATORS, decimal=(0, *_PLACES)),
        Tier.CORE: Space(_core, kind=range(3), event=range(len(_EVENTS)), seed=range(1, 60)),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=range(2),
            times=(2, 3, 4),
            event=range(len(_EVENTS)),
            seed=range(1, 88),
        ),
    }
    spaces = kinds.with_statements(spaces)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return _not(*values)
        return (_table if tier is Tier.CORE else _letters)(*values)


def _a(event: int, place: int) -> str:
    """Return an outcome as it stands in a question: fruit and plants with their article."""
    heading, names, *_ = _EVENTS[event]
    name = names[place]
    if heading not in ("Fruit", "Plant"):
        return name
    return f"an {name}" if name[0] in "aeiou" else f"a {name}"


def _not(top: int, bottom: int, decimal: int) -> Draft:
    whole = {0: bottom, 10: 10, 100: 100, 1: 100}[decimal]
    value = Fraction(top, whole)
    given: t.Node
    key: t.Node
    certain: t.Node
    wrong: list[tuple[Any, t.Node]]
    if decimal == 1:
        given, key = t.Percent(t.Int(top)), t.Percent(t.Int(100 - top))
        certain = t.Percent(t.Int(100))
        wrong = [(m.SAME_AGAIN, given), (m.LOSES_TENTH, t.Percent(t.Int(110 - top)))]
        form = "percentage"
    elif decimal:
        given, key, certain = decimal_node(value), decimal_node(1 - value), t.Int(1)
        wrong = [(m.SAME_AGAIN, given), (m.FROM_TEN, decimal_node(10 - value))]
        if decimal == 100:
            wrong.append((m.LOSES_TENTH, decimal_node(1 - value + Fraction(1, 10))))
        form = "decimal"
    else:
        given, key, certain = t.frac(top, whole), t.frac(whole - top, whole), t.Int(1)
        wrong = [(m.SAME_AGAIN, given)]
        if top < 10:
            wrong.append((m.NUMERATOR_LESS, t.frac(10 - top, whole)))
        if top > 1:
            wrong.append((m.UPSIDE_DOWN, t.frac(whole, top)))
        form = "fraction"
    return Draft(
        prompt(by_turns(_ONCE, top + whole), p=given),
        Find(t.sub(certain, given)),
        key,
        form,
        (Step("The two probabilities add up to 1.", t.equals(t.sub(certain, given), key)),),
        slips(*wrong, key=key),
        ("not", value, decimal),
        constants=(1, 100),
    )


def _table(kind: int, event: int, seed: int) -> Draft:
    heading, names, about, of = _EVENTS[event]
    a, b, c = _hundredths(event, seed)
    x = t.Sym("x")
    key: t.Node
    steps: list[Step]
    wrongs: list[tuple[Any, t.Node]]
    if kind == _Core.LETTER:
        place = seed % 3
        values = [a, b, c]
        hidden = values.pop(place)
        shown: list[t.Node] = [_hundred(n) for n in (a, b, c)]
        shown[place] = x
        text = prompt(f"The table shows {about}. Work out the value of {{x}}.", x=x)
        key = t.equals(x, _hundred(hidden))
        added = _hundred(sum(values))
        steps = [
            Step(
                "Add the probabilities that are known.",
                t.equals(t.add(*map(_hundred, values)), added),
            ),
            Step("All of them add up to 1.", t.equals(t.add(x, added), t.Int(1))),
            Step("Subtract from 1.", key),
        ]
        wrongs = [
            (m.STOPS_AT_SUM, t.equals(x, added)),
            (m.LOSES_TENTH, t.equals(x, _hundred(hidden + 10))),
        ]
        form = "solution"
    else:
        shown = [_hundred(a), _hundred(b), x]
        form = "decimal"
        if kind == _Core.EITHER:
            text = prompt(
                f"The table shows {about}. What is the probability {of} "
                f"{_a(event, 0)} or {_a(event, 2)}?"
            )
            key = _hundred(a + c)
            third = t.equals(t.sub(t.Int(1), _hundred(a), _hundred(b)), _hundred(c))
            steps = [
                Step(f"Find the probability of {names[2]}.", third),
                Step("Add the two.", t.equals(t.add(_hundred(a), _hundred(c)), key)),
            ]
            wrongs = [
                (m.THE_OTHERS, _hundred(b)),
                (m.MULTIPLIED_FOR_OR, decimal_node(Fraction(a * c, 10_000))),
                (m.FIRST_OF_TWO, _hundred(a)),
            ]
        else:
            text = prompt(
                f"The table shows {about}. What is the probability that it is not {_a(event, 0)}?"
            )
            key = _hundred(100 - a)
            steps = [Step("Subtract from 1.", t.equals(t.sub(t.Int(1), _hundred(a)), key))]
            wrongs = [(m.SAME_AGAIN, _hundred(a)), (m.LOSES_TENTH, _hundred(110 - a))]
    figure = ProbabilityTable(names, tuple(shown), heading)
    return Draft(
        text,
        of_figure(figure, text),
        key,
        form,
        tuple(steps),
        slips(*wrongs, key=key),
        (kind, event, a, b, c),
        figure=figure,
    )


def _letters(kind: int, times: int, event: int, seed: int) -> Draft:
    heading, names, about, of = _EVENTS[event]
    known, share = _shares(times, seed)
    x = t.Sym("x")
    many = t.juxt(t.Int(times), x)
    shown = (_hundred(known), x, many) if seed % 2 else (x, many, _hundred(known))
    letter_at, many_at = (1, 2) if seed % 2 else (0, 1)
    left, parts = _hundred(100 - known), times + 1
    steps = [
        Step(
            "All of them add up to 1.",
            t.equals(t.add(x, many), t.sub(t.Int(1), _hundred(known))),
        ),
        Step("Collect like terms.", t.equals(t.juxt(t.Int(parts), x), left)),
        Step(f"Divide by {parts}.", t.equals(x, _hundred(share))),
    ]
    if kind == 0:
        text = prompt(f"The table shows {about}. Work out the value of {{x}}.", x=x)
        key: t.Node = t.equals(x, _hundred(share))
        form = "solution"
        wrongs: list[tuple[Any, t.Node]] = [
            (m.ALL_TO_LETTER, t.equals(x, left)),
            (m.EVEN_SHARE, t.equals(x, _hundred((100 - known) // 2))),
        ]
    else:
        text = prompt(
            f"The table shows {about}. What is the probability {of} {_a(event, many_at)}?"
        )
        key = _hundred(times * share)
        form = "decimal"
        steps.append(
            Step(
                f"Multiply by {times}.",
                t.equals(t.times(t.Int(times), _hundred(share)), key),
            )
        )
        wrongs = [(m.STOPS_AT_LETTER, _hundred(share)), (m.ALL_TO_LETTER, left)]
    figure = ProbabilityTable(names, shown, heading)
    return Draft(
        text,
        of_figure(figure, text),
        key,
        form,
        tuple(steps),
        slips(*wrongs, key=key),
        (kind, times, event, known, letter_at),
        figure=figure,
    )
