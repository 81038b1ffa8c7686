"""Finding terms of a sequence from the rule for its nth term.

Key stage 3, algebra (England, 2013): "generate terms of a sequence from either a term-to-term or a
position-to-term rule" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators._turns import by_turns
from generators.sequences._term_mistakes import (
    ADDS,
    CONSTANT_FIRST,
    DIGITS,
    DOUBLES,
    FROM_NOUGHT,
    ORDER,
    OTHER_WAY,
    POSITION,
    ROWS_ONLY,
    RULE_OF_DIFFERENCE,
    SAME_OPERATION,
    STEP_GIVEN,
    STEP_TOO_MANY,
    WRONG_ACROSS,
)
from generators.sequences._term_numbers import challenge_fits, core_fits, support_fits
from generators.sequences._terms_compared import meeting, two_terms
from generators.sequences._writing import asking, ending, listed, signed
from itembank.items import kinds
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.kinds import line_edits as e
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_N = t.Sym("n")
_STORIES = (
    "Seedlings are planted in rows. The number in row n is {r}. Work out how many more seedlings "
    "there are in row {p} than in row {q}.",
    "Seats are set out in rows. The number in row n is {r}. Work out how many more seats there are "
    "in row {p} than in row {q}.",
    "Tiles are laid in rows. The number in row n is {r}. Work out how many more tiles there are in "
    "row {p} than in row {q}.",
    "Tins are stacked in rows. The number in row n is {r}. Work out how many more tins there are "
    "in row {p} than in row {q}.",
)


@register
class FindTerm(Topic):
    """A term of an + b; squares, positions and differences; the rule of two terms."""

    id = "sequences.find-term"
    title = "Finding terms of a sequence from a rule"
    statements = ("algebra.sequences", "algebra.substitution")
    prerequisites = ("equations.substitution",)
    misconceptions = (
        *(DIGITS, ADDS, ORDER, FROM_NOUGHT, CONSTANT_FIRST, DOUBLES, OTHER_WAY, SAME_OPERATION),
        *(ROWS_ONLY, RULE_OF_DIFFERENCE, STEP_TOO_MANY, STEP_GIVEN, POSITION, WRONG_ACROSS),
    )
    spaces = {
        Tier.SUPPORT: kinds.with_given_answers(
            Space(support_fits, kind=range(3), a=range(2, 10), b=range(-7, 10), n=range(2, 13)),
            only=lambda kind, *_: kind != 2,
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(core_fits, kind=range(3), a=range(2, 10), b=range(-8, 9), n=range(2, 16))
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(challenge_fits, kind=range(3), a=range(2, 9), b=range(-6, 9), n=range(2, 12))
        ),
    }
    spaces = kinds.with_working_spotted(
        spaces,
        "sequences.find-term",
        kinds.working_goes_wrong(
            {
                ADDS: (e.added,),
                DOUBLES: (e.everywhere(e.doubled_for_squared),),
                RULE_OF_DIFFERENCE: (e.everywhere(e.left_out),),
            }
        ),
    )

    def make(self, tier: Tier, kind: int, a: int, b: int, n: int) -> Draft:
        """Return the question for one point of the tier's space; `n` is a position."""
        twin = (str(tier), kind, a, b, n)
        build = {
            Tier.SUPPORT: (_term, _falling, _first_four),
            Tier.CORE: (_square, _which, _rows),
            Tier.CHALLENGE: (two_terms, meeting, _quadratic),
        }[tier][kind]
        return build(twin, a, b, n)


def _worked(rule: t.Node, n: int, substituted: t.Node, value: int, wrong: Any, twin: Any) -> Draft:
    place = t.Int(n)
    return Draft(
        prompt(
            f"The nth term of a sequence is {{r}}. Work out the {{n}}{ending(n)} term.",
            r=rule,
            n=place,
        ),
        Find(rule, (t.equals(_N, place),)),
        t.num(value),
        "integer",
        (Step(f"Substitute n = {n}.", t.equals(substituted, t.num(value))),),
        slips(*wrong, key=t.num(value)),
        twin,
    )


def _term(twin: Any, a: int, b: int, n: int) -> Draft:
    rule = signed(t.juxt(t.Int(a), _N), b)
    made = signed(t.times(t.Int(a), t.Int(n)), b)
    digits = int(f"{a}{n}") + b
    wrong = [
        (asking(DIGITS, f"What does {a}n mean when n is {n}: {a}{n}, or {a} × {n}?"), digits),
        (asking(ADDS, f"What does {a}n mean: {a} more than n, or {a} lots of n?"), a + n + b),
    ]
    return _worked(rule, n, made, a * n + b, wrong, twin)


def _falling(twin: Any, a: int, b: int, n: int) -> Draft:
    first = 10 * b
    rule = t.sub(t.Int(first), t.juxt(t.Int(a), _N))
    made = t.sub(t.Int(first), t.times(t.Int(a), t.Int(n)))
    wrong = [
        (asking(ORDER, "Which do you do first: subtract, or multiply?"), (first - a) * n),
        (asking(ADDS, f"What does {a}n mean: {a} more than n, or {a} lots of n?"), first - a - n),
    ]
    return _worked(rule, n, made, first - a * n, wrong, twin)


def _first_four(twin: Any, a: int, b: int, n: int) -> Draft:
    rule = signed(t.juxt(t.Int(a), _N), b)
    terms = tuple(signed(t.times(t.Int(a), t.Int(place)), b) for place in range(1, 5))
    values = [a * place + b for place in range(1, 5)]
    key = listed(values)
    return Draft(
        prompt("Write the first four terms of the sequence with nth term {r}.", r=rule),
        Find(t.Listing(terms)),
        key,
        "list",
        (
            Step("Substitute n = 1.", t.equals(terms[0], t.num(values[0]))),
            Step("Substitute n = 2.", t.equals(terms[1], t.num(values[1]))),
            Step("Substitute n = 3 and n = 4, and list the terms.", key),
        ),
        slips(
            (FROM_NOUGHT, listed([value - a for value in values])),
            (CONSTANT_FIRST, listed([a + b * place for place in range(4)]) if b > 0 else None),
            (
                asking(ADDS, f"What does {a}n mean: {a} more than n, or {a} lots of n?"),
                listed([a + b + place for place in range(1, 5)]),
            ),
            key=key,
        ),
        twin,
        constants=(1, 2, 3, 4),
    )


def _square(twin: Any, a: int, b: int, n: int) -> Draft:
    squared, place = t.Power(_N, t.Int(2)), t.Int(n)
    put = t.Power(place, t.Int(2))
    minus = (a + n) % 2 == 0
    if b == 1:  # n² + an, n² − an
        size = -a if minus else a
        term, done = t.juxt(t.Int(a), _N), t.times(t.Int(a), place)
        rule = t.sub(squared, term) if minus else t.add(squared, term)
        made = t.sub(put, done) if minus else t.add(put, done)
        value, doubled = n * n + size * n, 2 * n + size * n
        other = n * n + size + (-n if minus else n)
        second = asking(ADDS, f"What does {a}n mean: {a} more than n, or {a} lots of n?"), other
    else:
        size = -a if minus else a
        rule, made = signed(squared, size), signed(put, size)
        value, doubled = n * n + size, 2 * n + size
        second = (
            asking(ORDER, "Which do you do first: square, or add and subtract?"),
            (n + size) ** 2,
        )
    wrong = [(asking(DOUBLES, f"What is {n} squared: {n} + {n}, or {n} × {n}?"), doubled), second]
    return _worked(rule, n, made, value, wrong, twin)


def _which(twin: Any, a: int, b: int, n: int) -> Draft:
    rule, value = signed(t.juxt(t.Int(a), _N), b), a * n + b
    relation = t.equals(rule, t.Int(value))
    lots = t.equals(t.juxt(t.Int(a), _N), t.Int(a * n))
    undo = f"Subtract {b} from both sides." if b > 0 else f"Add {-b} to both sides."
    back = asking(
        SAME_OPERATION,
        f"{abs(b)} is {'added' if b > 0 else 'subtracted'}. What undoes that?",
    )
    return Draft(
        prompt(
            "The nth term of a sequence is {r}. Which term is equal to {v}? Give its position.",
            r=rule,
            v=t.Int(value),
        ),
        Find(_N, (relation,)),
        t.Int(n),
        "integer",
        (
            Step("Let n be the position.", relation),
            Step(undo, lots),
            Step(f"Divide both sides by {a}.", t.equals(_N, t.Int(n))),
        ),
        slips(
            (
                asking(OTHER_WAY, f"Is {value} a term or a position?"),
                a * value + b,
            ),
            (back, Fraction(value + b, a)),
            key=t.Int(n),
        ),
        twin,
    )


def _rows(twin: Any, a: int, b: int, n: int) -> Draft:
    far = n + 3 + (a + b) % 5
    rule = signed(t.juxt(t.Int(a), _N), b)
    first = signed(t.times(t.Int(a), t.Int(far)), b)
    second = signed(t.times(t.Int(a), t.Int(n)), b)
    high, low = a * far + b, a * n + b
    asked = t.Sum(t.Bracket(first), (("-", t.Bracket(second)),))
    return Draft(
        prompt(by_turns(_STORIES, a + b + n), r=rule, p=t.Int(far), q=t.Int(n)),
        Find(asked),
        t.Int(high - low),
        "integer",
        (
            Step(f"Row {far}.", t.equals(first, t.Int(high))),
            Step(f"Row {n}.", t.equals(second, t.Int(low))),
            Step("Subtract.", t.equals(t.sub(t.Int(high), t.Int(low)), t.Int(high - low))),
        ),
        slips(
            (ROWS_ONLY, far - n),
            (
                asking(
                    RULE_OF_DIFFERENCE,
                    f"Work out row {far} and row {n} first. What is their difference?",
                ),
                a * (far - n) + b,
            ),
            key=t.Int(high - low),
        ),
        twin,
    )


def _quadratic(twin: Any, a: int, b: int, n: int) -> Draft:
    squared, place = t.Power(_N, t.Int(2)), t.Int(n)
    lots, size = t.juxt(t.Int(a), squared), abs(b)
    term = t.juxt(t.Int(size), _N)
    rule = t.add(lots, term) if b > 0 else t.sub(lots, term)
    put, done = t.times(t.Int(a), t.Power(place, t.Int(2))), t.times(t.Int(size), place)
    made = t.add(put, done) if b > 0 else t.sub(put, done)
    sizes = t.num(a * n * n), t.Int(size * n)
    middle = t.add(*sizes) if b > 0 else t.sub(*sizes)
    value = a * n * n + b * n
    return Draft(
        prompt(
            f"The nth term of a sequence is {{r}}. Work out the {{n}}{ending(n)} term.",
            r=rule,
            n=place,
        ),
        Find(rule, (t.equals(_N, place),)),
        t.num(value),
        "integer",
        (
            Step(f"Substitute n = {n}. Square before you multiply.", t.equals(made, middle)),
            Step("Add." if b > 0 else "Subtract.", t.equals(middle, t.num(value))),
        ),
        slips(
            (
                asking(ORDER, f"Which do you do first: square {n}, or multiply it by {a}?"),
                (a * n) ** 2 + b * n,
            ),
            (
                asking(DOUBLES, f"What is {n} squared: {n} + {n}, or {n} × {n}?"),
                2 * a * n + b * n if n != 2 else None,
            ),
            key=t.num(value),
        ),
        twin,
    )
