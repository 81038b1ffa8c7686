"""The nth term of an arithmetic sequence.

Key stage 3, algebra (England, 2013): "recognise arithmetic sequences and find the nth term" (from
memory).
"""

from __future__ import annotations

from fractions import Fraction

from generators.sequences._nth_term_mistakes import (
    DIFFERENCE_SIGN,
    FIRST_TERM,
    PLUS_DIFFERENCE,
    TIMES_ONLY,
    WRONG_WAY,
    ZERO_START,
)
from generators.sequences._rule_written import Write, rule
from generators.sequences._rules_matched import with_rules
from generators.sequences._writing import asking
from itembank.items import kinds
from itembank.items.asks import Sequence
from itembank.items.forms.form_rules import decimal_node, number_node
from itembank.items.item import Draft, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t
from itembank.notation.line import shown_line

_N = t.Sym("n")
_TENTHS = (2, 3, 5, 12, 15, 25)


def _support(kind: int, d: int, b: int) -> bool:
    """Keep dn + b and dn − b with positive terms; b is never 0, nor d."""
    return b not in (0, d) and d + b > 0 and (b > 0) == (kind == 0)


def _core(kind: int, d: int, b: int) -> bool:
    if kind == 0:  # goes down, from above 0
        return b > 3 * d and b - 1 != 0
    return d + b < 0 and b != -2 * d and abs(b) < 30  # begins below 0


def _challenge(kind: int, d: int, b: int) -> bool:
    if kind < 2:  # tenths, up from below 0 or down
        starts = d < b < 4 * d + 10 and b != 2 * d if kind == 0 else b > 4 * d
        return d in _TENTHS and b % 10 != 0 and starts
    if kind == 2:  # quarters or halves
        return d in (1, 2, 3, 5) and 0 < b < 16 and b != d and b % 4 != 0
    # It goes down from below 0, or through it.
    return d < 10 and 0 < b < 3 * d and b != d and b % d != 0


@register
class NthTerm(Topic):
    """Steps up from a positive number; down, or from below 0; by decimals, fractions, through 0."""

    id = "sequences.nth-term"
    title = "The nth term of a sequence"
    statements = ("algebra.nth-term",)
    prerequisites = ("sequences.find-term",)
    misconceptions = (
        *(PLUS_DIFFERENCE, FIRST_TERM, WRONG_WAY, DIFFERENCE_SIGN, ZERO_START, TIMES_ONLY),
    )
    spaces = {
        Tier.SUPPORT: kinds.with_given_answers(
            Space(_support, kind=range(2), d=range(2, 13), b=range(-9, 16))
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(_core, kind=range(2), d=range(2, 12), b=(*range(-29, 0), *range(7, 61)))
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(
                _challenge,
                kind=range(4),
                d=(*range(1, 10), 12, 15, 25),
                b=(*range(1, 30), 34, 41, 52, 63, 78, 85, 96, 104, 117),
            )
        ),
    }

    spaces = with_rules(spaces)

    def make(self, tier: Tier, kind: int, d: int, b: int) -> Draft:
        """Return the question; the sequence is dn + b, in units, tenths or quarters."""
        twin = (str(tier), kind, d, b)
        step, start = Fraction(d), Fraction(b)
        write: Write = number_node
        if tier is Tier.CORE and kind == 0:
            step = -step
        if tier is Tier.CHALLENGE:
            if kind < 2:
                step, start, write = step / 10, start / 10, decimal_node
                start = start if kind else -start
            if kind == 2:
                step, start = step / 4, start / 4
            if kind in (1, 3):
                step = -step
        return _draft(step, start, write, twin)


def _draft(step: Fraction, start: Fraction, write: Write, twin: tuple[object, ...]) -> Draft:
    terms = [step * n + start for n in range(1, 5)]
    first = terms[0]
    shown_terms = tuple(write(value) for value in terms)
    key = rule(step, start, write)
    gap = t.equals(_gap(shown_terms[1], shown_terms[0]), write(step))
    lots = shown_line(t.juxt(write(abs(step)), _N) if abs(step) != 1 else _N)
    size = shown_line(write(abs(step)))
    if step > 0:
        say = f"The terms go up by {size} each time, so the rule begins with {lots}."
    else:
        say = f"The terms go down by {size} each time, so the rule has −{lots}."
    compare = t.equals(_gap(shown_terms[0], write(step)), write(start))
    told = f"For n = 1 the {'first part' if step > 0 else 'part with n'} gives "
    wrong: list[Wrong] = [
        (
            asking(FIRST_TERM, f"Work out your rule for n = 1. Is it {_said(first, write)}?"),
            rule(step, first, write),
        ),
    ]
    if step > 0:
        wrong.append(
            (
                asking(
                    PLUS_DIFFERENCE,
                    f"Work out your rule for n = 2. Is it {_said(terms[1], write)}?",
                ),
                rule(Fraction(1), step, write) if step != 1 else None,
            )
        )
        wrong.append((WRONG_WAY, rule(step, -start, write)))
    else:
        wrong[0] = (asking(ZERO_START, wrong[0][0].ask), wrong[0][1])
        wrong.append((DIFFERENCE_SIGN, rule(-step, first + step, write)))
        wrong.append((TIMES_ONLY, rule(step, Fraction(0), write)))
    return Draft(
        prompt("Find the nth term of the sequence that begins {s}.", s=t.Listing(shown_terms)),
        Sequence(shown_terms),
        key,
        "nth-term",
        (
            Step(say, gap),
            Step(f"{told}{_said(step, write)}. The first term is {_said(first, write)}.", compare),
            Step("So the nth term is this.", key),
        ),
        slips(*wrong, key=key),
        twin,
    )


def _gap(high: t.Node, low: t.Node) -> t.Node:
    """Return one number less another, a negative one in brackets."""
    return t.Sum(high, (("-", t.Bracket(low) if isinstance(low, t.Neg) else low),))


def _said(value: Fraction, write: Write) -> str:
    return shown_line(write(value)).replace("-", "−")
