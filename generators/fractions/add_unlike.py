"""Adding and subtracting fractions whose denominators differ."""

from __future__ import annotations

from fractions import Fraction
from math import lcm
from typing import Any

from generators.fractions._answers import SIMPLEST, answer_form, finish
from generators.fractions._misconceptions import (
    ADD_ACROSS,
    KEEP_NUMERATORS,
    SUBTRACT_ACROSS,
    keep_numerators,
)
from generators.fractions._unlike_mistakes import (
    ALL_ACROSS,
    DENOMINATORS_TOO,
    GIVES_USED,
    KEEPS_DENOMINATOR,
    NOT_UNDONE,
)
from generators.fractions._unlike_numbers import challenge_fits, core_fits, support_fits
from itembank.items import kinds
from itembank.items.forms.form_rules import simplest_node
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

STORIES = (
    "In a garden bed, {p} is beans, {q} is onions and the rest is herbs. "
    "What fraction of the bed is herbs?" + SIMPLEST,
    "In a club, {p} swim front crawl, {q} swim breaststroke and the rest swim backstroke. "
    "What fraction swim backstroke?" + SIMPLEST,
    "At a depot, {p} of the buses are electric, {q} are hybrid and the rest are diesel. "
    "What fraction are diesel?" + SIMPLEST,
)

# Denominators of three fractions; their lowest common multiple is at most 60, and the
# first two differ from one row to the next, for the stories use only those.
TRIPLES = (
    (2, 3, 4),
    (2, 5, 3),
    (3, 4, 6),
    (3, 5, 2),
    (4, 5, 10),
    (4, 6, 8),
    (5, 6, 4),
    (3, 8, 6),
    (3, 10, 5),
    (4, 10, 5),
    (6, 8, 3),
    (2, 9, 6),
    (4, 9, 6),
    (2, 7, 4),
)
_SUPPORT = Space(
    support_fits, op=(0, 1), b=range(2, 11), a=range(1, 8), k=range(2, 7), c=range(1, 12)
)
_CORE = Space(core_fits, op=(0, 1), b=range(3, 11), a=range(1, 8), d=range(3, 11), c=range(1, 8))
_CHALLENGE = Space(
    challenge_fits,
    kind=(0, 1, 2, 3),
    triple=TRIPLES,
    a=range(1, 6),
    c=range(1, 6),
    e=(1, 2, 3),
)


def _fractions(tier: Tier, of: tuple[int, ...]) -> tuple[int, int, int, int, int]:
    """Return the sign of the second fraction, and both, of a question with two."""
    op, b, a, last, c = of
    return 1 if op else -1, a, b, c, b * last if tier is Tier.SUPPORT else last


def _answers_differ(of: tuple[tuple[int, ...], ...]) -> bool:
    terms = [_fractions(Tier.CORE, point) for point in of]
    values = {Fraction(a, b) + sign * Fraction(c, d) for sign, a, b, c, d in terms}
    return len(values) == len(of) and len({sign for sign, *_ in terms}) == 1


def _box_shows(of: tuple[int, ...]) -> bool:
    """Keep questions in which what is not undone gives another numerator than what is."""
    sign, a, b, c, d = _fractions(Tier.SUPPORT, of)
    k = d // b
    return abs(a * k + 2 * sign * c) not in (a, a * k)


def _missing(topic: Topic, tier: Tier, of: tuple[int, ...]) -> Draft:
    """Return a sum whose first numerator is missing."""
    sign, a, b, c, d = _fractions(tier, of)
    total = Fraction(a, b) + sign * Fraction(c, d)
    result, other = simplest_node(total), t.frac(c, d)
    box, known = t.Frac(t.Blank(), t.Int(b)), t.frac(a, b)
    back = _signed([(1, result), (-sign, other)])
    k, top = d // b, int(total * d)
    undo = "Take the second fraction from" if sign > 0 else "Add the second fraction to"
    return kinds.missing_number(
        t.equals(_signed([(1, box), (sign, other)]), result),
        t.Int(a),
        steps=(
            Step(
                f"{undo} both sides.",
                t.equals(back, t.frac(a * k, d)),
            ),
            Step(f"Write it over {b}.", t.equals(t.frac(a * k, d), known)),
        ),
        slips=slips(
            (KEEPS_DENOMINATOR, a * k),
            (NOT_UNDONE, abs(top + sign * c)),
            key=t.Int(a),
        ),
        twin=(sign, a, b, c, d),
    )


def _wrong_line(topic: Topic, tier: Tier, line: int, of: tuple[int, ...]) -> Draft:
    """Return a sum in which the numerators are kept (line 1) or the denominators added (line 2)."""
    sign, a, b, c, d = _fractions(tier, of)
    asked = topic.make(tier, *of)
    bottom = lcm(b, d)
    left, right = a * (bottom // b), c * (bottom // d)
    mistake, below = DENOMINATORS_TOO, 2 * bottom
    if line == 1:
        mistake = keep_numerators(((a, b), (c, d)), bottom, Fraction(0))
        left, right, below = a, c, bottom
    changed = _signed([(1, t.frac(left, bottom)), (sign, t.frac(right, bottom))])
    total = _signed([(1, t.frac(a, b)), (sign, t.frac(c, d))])
    return kinds.spot_the_mistake(
        total,
        (changed, t.frac(left + sign * right, below)),
        line,
        asked.key,
        mistake=mistake,
        steps=asked.steps,
        twin=(line, sign, a, b, c, d),
    )


@register
class AddUnlike(Topic):
    """Sums and differences of fractions that first need a common denominator."""

    id = "fractions.add-unlike"
    title = "Adding and subtracting fractions with unlike denominators"
    statements = ("number.operations",)
    misconceptions = (
        ADD_ACROSS,
        SUBTRACT_ACROSS,
        ALL_ACROSS,
        KEEP_NUMERATORS,
        GIVES_USED,
        KEEPS_DENOMINATOR,
        NOT_UNDONE,
        DENOMINATORS_TOO,
    )
    prerequisites = ("fractions.equivalent", "fractions.add-like")
    spaces = {
        Tier.SUPPORT: _SUPPORT.also(kinds.claim, of=_SUPPORT.some(150))
        .also(_missing, _box_shows, of=_SUPPORT.some(140))
        .also(_wrong_line, line=(1, 2), of=_SUPPORT.some(70)),
        Tier.CORE: _CORE.also(kinds.claim, of=_CORE.some(150))
        .also(_wrong_line, line=(1, 2), of=_CORE.some(100))
        .also(kinds.match_answers, _answers_differ, of=_CORE.threes(160, lambda op, *_: op)),
        Tier.CHALLENGE: _CHALLENGE.also(
            kinds.claim, of=_CHALLENGE.where(lambda kind, *_: kind == 0).some(160)
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.CHALLENGE:
            kind, (b, d, f), a, c, e = values
            if kind:
                return self._rest(STORIES[kind - 1], kind, (a, b), (c, d))
            return self._terms(((1, a, b), (1, c, d), (-1, e, f)))
        op, b, a, last, c = values
        d = b * last if tier is Tier.SUPPORT else last
        return self._terms(((1, a, b), (1 if op else -1, c, d)))

    def _terms(self, terms: tuple[tuple[int, int, int], ...]) -> Draft:
        bottom = lcm(*(d for _, _, d in terms))
        tops = [n * (bottom // d) for _, n, d in terms]
        top = sum(sign * n for (sign, _, _), n in zip(terms, tops, strict=True))
        value = Fraction(top, bottom)
        asked = _signed([(s, t.frac(n, d)) for s, n, d in terms])
        changed = _signed(
            [(sign, t.frac(n, bottom)) for (sign, _, _), n in zip(terms, tops, strict=True)]
        )
        wanted, form = answer_form(value)
        raw = sum(s * n for s, n, _ in terms)
        below = sum(s * d for s, _, d in terms)
        every = "both" if len(terms) == 2 else "all three"
        sign = "Add" if all(s > 0 for s, _, _ in terms) else "Subtract"
        work = "Work on" if len(terms) > 2 else sign
        steps = (
            Step(f"Write {every} fractions over {bottom}.", t.equals(asked, changed)),
            Step(
                f"{work} the numerators; the denominator stays {bottom}.",
                t.equals(changed, t.frac(top, bottom)),
            ),
            *finish(top, bottom),
        )
        two = SUBTRACT_ACROSS if terms[1][0] < 0 else ADD_ACROSS
        wrong = slips(
            (ALL_ACROSS if len(terms) > 2 else two, Fraction(raw, abs(below))),
            (
                keep_numerators(tuple((n, d) for _, n, d in terms), bottom, value),
                Fraction(raw, bottom),
            ),
        )
        twin = tuple(sorted(terms))
        key = simplest_node(value)
        text = prompt("Work out {e}." + wanted, e=asked)
        return Draft(text, Find(asked), key, form, steps, wrong, twin)

    def _rest(self, story: str, kind: int, p: tuple[int, int], q: tuple[int, int]) -> Draft:
        (a, b), (c, d) = p, q
        bottom = lcm(b, d)
        used = a * (bottom // b) + c * (bottom // d)
        value = Fraction(bottom - used, bottom)
        first, second = t.frac(a, b), t.frac(c, d)
        r = t.Sym("r")
        changed = t.add(t.frac(a * (bottom // b), bottom), t.frac(c * (bottom // d), bottom))
        left = t.sub(t.Int(1), t.frac(used, bottom))
        steps = (
            Step(f"Write both fractions over {bottom}.", t.equals(t.add(first, second), changed)),
            Step("Add the numerators.", t.equals(changed, t.frac(used, bottom))),
            Step("Take this from 1 whole.", t.equals(left, t.frac(bottom - used, bottom))),
            *finish(bottom - used, bottom),
        )
        wrong = slips(
            (GIVES_USED, Fraction(used, bottom) if 2 * used != bottom else None),
            (ADD_ACROSS, 1 - Fraction(a + c, b + d)),
            (keep_numerators((p, q), bottom, value), 1 - Fraction(a + c, bottom)),
        )
        return Draft(
            prompt(story, p=first, q=second),
            Find(r, (t.equals(t.add(first, second, r), t.Int(1)),)),
            simplest_node(value),
            "simplest",
            steps,
            wrong,
            ("rest", kind, *sorted((p, q))),
            constants=(1,),
        )


def _signed(terms: list[tuple[int, Any]]) -> t.Sum:
    """Return signed terms as a sum, as written."""
    rest: list[tuple[t.SumOp, Any]] = [("+" if s > 0 else "-", node) for s, node in terms[1:]]
    return t.Sum(terms[0][1], tuple(rest))
