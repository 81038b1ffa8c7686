"""Geometric sequences: each term is the one before, multiplied by the same number.

Key stage 3, algebra (England, 2013): "recognise geometric sequences and appreciate other sequences
that arise" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators.sequences._geometric_mistakes import (
    ADDS_FIRST,
    ADDS_LAST,
    GIVES_DIFFERENCE,
    HALF_WAY,
    ONE_BACK,
    ONE_FACTOR_MORE,
    SIGN,
    TIMES_PLACE,
    UPSIDE_DOWN,
)
from generators.sequences._geometric_numbers import (
    challenge_fits,
    core_fits,
    support_fits,
    terms_of,
)
from generators.sequences._geometric_stories import in_a_story, repeated
from generators.sequences._writing import asking, ending, listed, shown
from itembank.items import kinds
from itembank.items.forms.form_rules import number_node
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.kinds import line_edits as e
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t


@register
class Geometric(Topic):
    """Whole multipliers; falling and alternating terms, and terms far on; backwards and stories."""

    id = "sequences.geometric"
    title = "Geometric sequences"
    statements = ("algebra.other-sequences",)
    prerequisites = ("sequences.term-to-term",)
    misconceptions = (
        *(ADDS_LAST, ADDS_FIRST, GIVES_DIFFERENCE, UPSIDE_DOWN, HALF_WAY, ONE_FACTOR_MORE),
        *(TIMES_PLACE, SIGN, ONE_BACK),
    )
    spare = "terms stay of a size that is worked out without a calculator"
    spaces = {
        Tier.SUPPORT: kinds.with_given_answers(
            Space(support_fits, kind=range(3), first=range(1, 31), r=(2, 3, 4, 5, 10))
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(core_fits, kind=range(3), first=range(1, 51), r=(2, 3, 4, 5, 10))
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(challenge_fits, kind=range(3), first=range(1, 61), r=(2, 3, 4, 5, 10))
        ),
    }
    spaces = kinds.with_working_spotted(
        spaces,
        "sequences.geometric",
        kinds.working_goes_wrong(
            {GIVES_DIFFERENCE: (e.subtracted,), UPSIDE_DOWN: (e.swapped,), ONE_BACK: (e.cut_short,)}
        ),
    )

    def make(self, tier: Tier, kind: int, first: int, r: int) -> Draft:
        """Return the question for one point of the tier's space."""
        twin = (str(tier), kind, first, r)
        if tier is Tier.SUPPORT:
            build: Any = (_next, _multiplier, _missing)[kind]
            draft: Draft = build(twin, Fraction(first), Fraction(r))
            return draft
        if tier is Tier.CORE:
            if kind == 0:
                return _next(twin, Fraction(first * r**3), Fraction(1, r))
            if kind == 1:
                return _next(twin, Fraction(first), Fraction(-r))
            return _far(twin, first, r)
        if kind == 0:
            return _back(twin, first, r)
        if kind == 1:
            return in_a_story(twin, first, r)
        return _next(twin, Fraction(first * r**3), Fraction(r + 1, r))


def _bracketed(node: t.Node) -> t.Node:
    return t.Bracket(node) if isinstance(node, t.Neg) else node


def _by(ratio: Fraction) -> t.Node:
    """Return a multiplier as it stands after a times sign."""
    return _bracketed(number_node(ratio))


def _next(twin: Any, first: Fraction, ratio: Fraction) -> Draft:
    terms = terms_of(first, ratio, 5)
    *given, value = terms
    a, b, _, d = map(number_node, given)
    asked = t.Product(d, (("×", _bracketed(b)), ("÷", _bracketed(a))))
    key = number_node(value)
    if ratio.numerator == 1:
        divisor = t.Int(ratio.denominator)
        found = t.equals(t.divide(a, b), divisor)
        say = f"Each term is divided by {ratio.denominator}."
        last = t.equals(t.divide(d, divisor), key)
    else:
        found = t.equals(
            t.Frac(b, a) if ratio.denominator > 1 else t.divide(b, _bracketed(a)),
            number_node(ratio),
        )
        say = f"Each term is multiplied by {shown(ratio)}."
        last = t.equals(t.times(d, _by(ratio)), key)
    wrong = [
        (ADDS_LAST, 2 * terms[3] - terms[2]),
        (ADDS_FIRST, terms[3] + terms[1] - terms[0]),
    ]
    if ratio < 0:
        wrong[1] = (asking(SIGN, f"What is {shown(given[3])} × ({shown(ratio)})?"), -value)
    return Draft(
        prompt(
            "Each term of a sequence is the term before multiplied by the same number. Find the "
            "next term: {s}.",
            s=listed(given),
        ),
        Find(asked),
        key,
        "number",
        (
            Step(
                "Divide a term by the term before it. " + say
                if ratio.numerator != 1
                else "Divide a term by the term after it. " + say,
                found,
            ),
            Step("Go on from the last term.", last),
        ),
        slips(*wrong, write=number_node, key=key),
        twin,
    )


def _multiplier(twin: Any, first: Fraction, ratio: Fraction) -> Draft:
    terms = terms_of(first, ratio)
    a, b = number_node(terms[0]), number_node(terms[1])
    asked, key = t.divide(b, a), number_node(ratio)
    return Draft(
        prompt(
            "Each term of this sequence is the term before multiplied by the same number: {s}. "
            "What is this number?",
            s=listed(terms),
        ),
        Find(asked),
        key,
        "integer",
        (Step("Divide the second term by the first.", t.equals(asked, key)),),
        slips(
            (GIVES_DIFFERENCE, terms[1] - terms[0]),
            (UPSIDE_DOWN, 1 / ratio),
            write=number_node,
            key=key,
        ),
        twin,
    )


def _missing(twin: Any, first: Fraction, ratio: Fraction) -> Draft:
    terms = terms_of(first, ratio)
    box = t.Blank()
    a, b, c, d = map(number_node, terms)
    relation = t.equals(t.divide(box, b), t.divide(b, a))
    return Draft(
        prompt(
            "Each term of a sequence is the term before multiplied by the same number. Find the "
            "missing term: {s}.",
            s=t.Listing((a, b, box, d)),
        ),
        Find(box, (relation,)),
        c,
        "integer",
        (
            Step(
                "Divide the second term by the first.", t.equals(t.divide(b, a), number_node(ratio))
            ),
            Step("Multiply the second term by that.", t.equals(t.times(b, number_node(ratio)), c)),
        ),
        slips(
            (HALF_WAY, (terms[1] + terms[3]) / 2),
            (ADDS_FIRST, 2 * terms[1] - terms[0]),
            write=number_node,
            key=c,
        ),
        twin,
    )


def _far(twin: Any, first: int, r: int) -> Draft:
    place = 4 + (first + r) % 3
    asked = repeated(t.Int(first), r, place - 1)
    value = first * r ** (place - 1)
    power = t.times(t.Int(first), t.Power(t.Int(r), t.Int(place - 1)))
    return Draft(
        prompt(
            "The first term of a sequence is {f}. Each term is {r} times the term before. Work out "
            f"the {{k}}{ending(place)} term.",
            f=t.Int(first),
            r=t.Int(r),
            k=t.Int(place),
        ),
        Find(asked),
        t.Int(value),
        "integer",
        (
            Step(
                f"From the 1st term to the {place}{ending(place)} there are {place - 1} steps.",
                t.equals(asked, power),
            ),
            Step("Work it out.", t.equals(power, t.Int(value))),
        ),
        slips(
            (ONE_FACTOR_MORE, value * r),
            (TIMES_PLACE, first * r * (place - 1)),
            key=t.Int(value),
        ),
        twin,
    )


def _back(twin: Any, first: int, r: int) -> Draft:
    place = 4 + (first + r) % 2
    value = first * r ** (place - 1)
    x = t.Sym("a")
    relation = t.equals(repeated(x, r, place - 1), t.Int(value))
    steps = []
    now = value
    for k in range(place - 1, 0, -1):
        before = now // r
        line = t.equals(t.divide(t.Int(now), t.Int(r)), t.Int(before))
        steps.append(Step(f"Divide by {r} to find the {k}{ending(k)} term.", line))
        now = before
    return Draft(
        prompt(
            "Each term of a sequence is {r} times the term before. "
            f"The {{k}}{ending(place)} term is {{v}}. Work out the first term.",
            r=t.Int(r),
            k=t.Int(place),
            v=t.Int(value),
        ),
        Find(x, (relation,)),
        t.Int(first),
        "integer",
        tuple(steps),
        slips(
            (ONE_BACK, value // r),
            (ONE_FACTOR_MORE, Fraction(first, r)),
            (TIMES_PLACE, Fraction(value, r * (place - 1))),
            write=number_node,
            key=t.Int(first),
        ),
        twin,
    )
