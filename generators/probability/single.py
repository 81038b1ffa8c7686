"""The probability of one event: counters, spinners and tickets; then from a probability back.

England's programme of study for key stage 3 (2013) asks pupils to work out probabilities of
"equally and unequally likely outcomes" and to use "the 0-1 probability scale" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from math import gcd
from typing import Any

from generators._turns import by_turns
from generators.probability import _misconceptions as m
from itembank.items import kinds
from itembank.items.forms.form_rules import number_node
from itembank.items.item import Draft, Find, Run, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

SIMPLEST = " Give your answer in its simplest form."

# Two kinds of thing, and one that is taken.
_TWO = (
    "A bag holds {a} red counters and {b} blue counters. A counter is taken at random. "
    "What is the probability that it is red?",
    "A drawer holds {a} white swimming caps and {b} black ones. A cap is taken at random. "
    "What is the probability that it is white?",
    "A fair spinner has {a} green sections and {b} yellow sections, all of one size. "
    "What is the probability that it lands on green?",
    "A bowl holds {a} apples and {b} pears. A piece of fruit is taken at random. "
    "What is the probability that it is an apple?",
    "A depot has {a} electric buses and {b} diesel buses. A bus is chosen at random. "
    "What is the probability that it is electric?",
    "A shelf holds {a} novels and {b} comics. A book is taken at random. "
    "What is the probability that it is a novel?",
)
# Three kinds of thing, of which the first will do.
_FIRST_OF_THREE = (
    "A bag holds {a} red, {b} blue and {c} green counters. A counter is taken at random. "
    "What is the probability that it is red?",
    "A box holds {a} bean seeds, {b} pea seeds and {c} leek seeds. A seed is taken at random. "
    "What is the probability that it is a bean?",
    "A fair spinner has {a} red, {b} white and {c} black sections, all of one size. "
    "What is the probability that it lands on red?",
    "A workshop has {a} road bikes, {b} town bikes and {c} trail bikes. A bike is chosen at "
    "random. What is the probability that it is a road bike?",
)
# Three kinds of thing, two of which will do.
_THREE = (
    "A bag holds {a} red, {b} blue and {c} green counters. A counter is taken at random. "
    "What is the probability that it is red or blue?",
    "A box holds {a} bean seeds, {b} pea seeds and {c} leek seeds. A seed is taken at random. "
    "What is the probability that it is a bean or a pea?",
    "A fair spinner has {a} red, {b} white and {c} black sections, all of one size. "
    "What is the probability that it lands on red or white?",
    "A workshop has {a} road bikes, {b} town bikes and {c} trail bikes. A bike is chosen at "
    "random. What is the probability that it is a road bike or a town bike?",
)
_HOW_MANY = (
    "A bag holds {n} counters. The probability of taking a red counter is {p}. "
    "How many red counters are in the bag?",
    "There are {n} tickets. The probability of taking a winning ticket is {p}. "
    "How many of the tickets win?",
    "A tray holds {n} plants. A plant is taken at random. The probability that it is a tulip is "
    "{p}. How many tulips are there?",
)
_THE_REST = (
    "A bag holds {a} red counters, and the rest are blue. The probability of taking a red counter "
    "is {p}. How many blue counters are in the bag?",
    "Of the tickets in a draw {a} win. The probability of taking a winning ticket is {p}. "
    "How many of the tickets do not win?",
    "A tray holds {a} tulips, and the rest are lilies. A plant is taken at random. The "
    "probability that it is a tulip is {p}. How many lilies are there?",
)
_MORE = (
    "A bag holds {a} red counters and {b} blue counters. Tomasz puts in {c} more red counters. "
    "A counter is taken at random. What is the probability that it is red?",
    "A bowl holds {a} apples and {b} pears. Leila puts in {c} more apples. A piece of fruit is "
    "taken at random. What is the probability that it is an apple?",
    "A shelf holds {a} novels and {b} comics. A librarian adds {c} more novels. A book is taken "
    "at random. What is the probability that it is a novel?",
)


def _support(a: int, b: int, c: int) -> bool:
    """Keep what is in lowest terms as it stands; without a third kind `c` is 0."""
    return (
        gcd(a, b + c) == 1
        and a not in (b, b + c)
        and len({a, b, c}) == 3
        and c in (0, b + 1, b + 3)
    )


class _Core:
    """The kinds of core question."""

    CANCEL, EITHER, HOW_MANY = range(3)


def _core(kind: int, a: int, b: int, c: int) -> bool:
    if kind == _Core.CANCEL:
        return c == 2 and gcd(a, b) > 1 and a != b
    total = a + b + c
    if kind == _Core.EITHER:
        either = Fraction(a + b, total)
        wrong = {Fraction(a, total), Fraction(a + b, c), Fraction(2, 3), Fraction(c, total)}
        return len(wrong) == 4 and either not in wrong and len({a, b, c}) == 3 and c < 10
    return _parts(a, b, c)


def _parts(a: int, b: int, c: int) -> bool:
    """Keep a of b parts with c in each: more than one part is left."""
    return 1 < a < b - 1 and gcd(a, b) == 1 and c not in (a, b) and b != 2 * a


class _Challenge:
    """The kinds of challenge question."""

    THE_REST, MORE = range(2)


def _challenge(kind: int, a: int, b: int, c: int) -> bool:
    if kind == _Challenge.MORE:
        new = Fraction(a + c, a + b + c)
        wrong = {Fraction(a + c, a + b), Fraction(a, a + b), Fraction(a, a + b + c)}
        return new not in wrong and len(wrong) == 3 and a != b and a + c != b and c < 7
    return kind == _Challenge.THE_REST and _parts(a, b, c)


@register
class Single(Topic):
    """What is taken, spun or drawn; in simplest form; and back from a probability."""

    id = "probability.single"
    title = "Probability of a single event"
    statements = ("probability.experiments",)
    prerequisites = ("fractions.lowest-terms",)
    misconceptions = (
        *(m.PART_TO_PART, m.EQUALLY_LIKELY, m.THE_OTHERS, m.FIRST_OF_TWO),
        *(m.OLD_TOTAL, m.DIVIDES_PART, m.TIMES_FRACTION, m.ALL_OF_THEM),
    )
    spaces = {
        Tier.SUPPORT: Space(_support, a=range(2, 13), b=range(2, 14), c=range(17)),
        Tier.CORE: Space(_core, kind=range(3), a=range(2, 13), b=range(2, 13), c=range(2, 16)),
        Tier.CHALLENGE: Space(
            _challenge, kind=range(2), a=range(2, 10), b=range(3, 13), c=range(2, 13)
        ),
    }
    spaces = kinds.with_statements(spaces)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            a, b, c = values
            if c:
                words = by_turns(_FIRST_OF_THREE, a + b) + AS_FRACTION
                text = prompt(words, a=t.Int(a), b=t.Int(b), c=t.Int(c))
                return _chance(text, (a,), (a, b, c), "fraction")
            words = by_turns(_TWO, a + 2 * b)
            return _chance(
                prompt(words + AS_FRACTION, a=t.Int(a), b=t.Int(b)), (a,), (a, b), "fraction"
            )
        kind, a, b, c = values
        if tier is Tier.CORE:
            if kind == _Core.CANCEL:
                words = by_turns(_TWO, a + 2 * b)
                return _chance(prompt(words + SIMPLEST, a=t.Int(a), b=t.Int(b)), (a,), (a, b))
            if kind == _Core.HOW_MANY:
                return _how_many(a, b, c)
            words = by_turns(_THREE, a + b + c)
            text = prompt(words + SIMPLEST, a=t.Int(a), b=t.Int(b), c=t.Int(c))
            return _chance(text, (a, b), (a, b, c))
        return (_the_rest, _more)[kind](a, b, c)


AS_FRACTION = " Give your answer as a fraction."


def _chance(
    text: tuple[Run, ...],
    wanted: tuple[int, ...],
    every: tuple[int, ...],
    form: str = "lowest-terms",
) -> Draft:
    """Return the question how likely some of several kinds are."""
    good, total = sum(wanted), sum(every)
    key = number_node(Fraction(good, total))
    top = t.add(*map(t.Int, wanted))
    target = t.Frac(top, t.add(*map(t.Int, every)))
    steps = [
        Step("Find how many there are in all.", t.equals(t.add(*map(t.Int, every)), t.Int(total)))
    ]
    if len(wanted) > 1:
        steps.append(Step("Find how many will do.", t.equals(top, t.Int(good))))
    written = t.frac(good, total)
    line = written if written == key else t.equals(written, key)
    steps.append(Step("Write those that will do over all of them.", line))
    wrong: list[tuple[Any, Fraction]] = [
        (m.PART_TO_PART, Fraction(good, total - good)),
        (m.THE_OTHERS, Fraction(total - good, total)),
        (m.EQUALLY_LIKELY, Fraction(len(wanted), len(every))),
    ]
    if len(wanted) > 1:
        wrong.append((m.FIRST_OF_TWO, Fraction(wanted[0], total)))
    return Draft(
        text,
        Find(target),
        key,
        form,
        tuple(steps),
        slips(*wrong, write=number_node, key=key),
        ("of", wanted, every),
    )


def _how_many(a: int, b: int, c: int) -> Draft:
    n, p = t.Int(b * c), t.frac(a, b)
    key = t.Int(a * c)
    return Draft(
        prompt(by_turns(_HOW_MANY, a + b + c), n=n, p=p),
        Find(t.times(p, n)),
        key,
        "integer",
        (
            Step(f"Find 1/{b} of them.", t.equals(t.divide(n, t.Int(b)), t.Int(c))),
            Step(f"Find {a}/{b} of them.", t.equals(t.times(t.Int(a), t.Int(c)), key)),
        ),
        slips((m.DIVIDES_PART, c), (m.THE_OTHERS, (b - a) * c), key=key),
        ("how many", a, b, c),
    )


def _the_rest(a: int, b: int, c: int) -> Draft:
    part, p, letter = t.Int(a * c), t.frac(a, b), t.Sym("n")
    key, every = t.Int((b - a) * c), t.Int(b * c)
    less = Fraction(a * c * a, b)
    return Draft(
        prompt(by_turns(_THE_REST, a + b + c), a=part, p=p),
        Find(t.sub(letter, part), (t.equals(t.times(p, letter), part),)),
        key,
        "integer",
        (
            Step(
                f"{a}/{b} of them are {a * c}. Find 1/{b} of them.",
                t.equals(t.divide(part, t.Int(a)), t.Int(c)),
            ),
            Step("Find all of them.", t.equals(t.times(t.Int(b), t.Int(c)), every)),
            Step("Subtract those that are known.", t.equals(t.sub(every, part), key)),
        ),
        slips(
            (m.ALL_OF_THEM, every),
            (m.DIVIDES_PART, c),
            (m.TIMES_FRACTION, less if less.denominator == 1 else None),
            key=key,
        ),
        ("the rest", a, b, c),
    )


def _more(a: int, b: int, c: int) -> Draft:
    first, second, more = map(t.Int, (a, b, c))
    good, total = a + c, a + b + c
    key = number_node(Fraction(good, total))
    written = t.frac(good, total)
    target = t.Frac(t.add(first, more), t.add(first, second, more))
    return Draft(
        prompt(by_turns(_MORE, a + b + c) + SIMPLEST, a=first, b=second, c=more),
        Find(target),
        key,
        "lowest-terms",
        (
            Step("Find how many will do now.", t.equals(t.add(first, more), t.Int(good))),
            Step(
                "Find how many there are in all now.",
                t.equals(t.add(first, second, more), t.Int(total)),
            ),
            Step(
                "Write those that will do over all of them.",
                written if written == key else t.equals(written, key),
            ),
        ),
        slips(
            (m.OLD_TOTAL, Fraction(good, a + b)),
            (m.PART_TO_PART, Fraction(good, b)),
            (m.THE_OTHERS, Fraction(b, total)),
            write=number_node,
            key=key,
        ),
        ("more", a, b, c),
    )
