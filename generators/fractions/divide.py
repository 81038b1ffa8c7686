"""Dividing fractions, whole numbers and mixed numbers."""

from __future__ import annotations

from fractions import Fraction
from math import gcd
from typing import Any

from generators.fractions._answers import answer_form, finish
from generators.fractions.multiply import Number, improper, written
from itembank.items import kinds
from itembank.items.forms.form_rules import number_node, simplest_node
from itembank.items.item import Draft, Find, Misconception, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

NO_FLIP = Misconception(
    "fractions.divide-without-flipping",
    "multiplies by the second fraction instead of by its reciprocal",
    "How many halves are there in 3? Is 3 ÷ 1/2 more or less than 3?",
)
TIMES_WHOLE = Misconception(
    "fractions.divide-multiplies-by-whole",
    "multiplies by the whole number instead of dividing by it",
    "Share half a cake between 2 people. Does each of them get more or less than the half?",
)
FLIP_FIRST = Misconception(
    "fractions.divide-flips-first",
    "takes the reciprocal of the first number instead of the second",
    "What is 6 ÷ 2? What does your method give for 6/1 ÷ 2/1?",
)
FLIP_BOTH = Misconception(
    "fractions.divide-flips-both",
    "takes the reciprocals of both fractions and multiplies them",
    "How many halves fit into a half? What does your method give for 1/2 ÷ 1/2?",
)

# How many portions come out of a whole amount; each comes out whole.
STORIES = (
    (
        "l",
        "A bottle holds {p} of plant feed. Each tray of plants needs {q}. "
        "How many trays does the bottle feed?",
    ),
    (
        "kg",
        "A gardener has {p} of seed potatoes. Each bag holds {q}. "
        "How many bags do the potatoes fill?",
    ),
    (
        "m",
        "A row of plants is {p} long. Each gap between two plants is {q} long. "
        "How many gaps are there?",
    ),
    (
        "h",
        "A swimming pool is booked for {p}. Each lesson takes {q}. "
        "How many lessons fit into that time?",
    ),
    (
        "km",
        "A bus route is {p} long. It is divided into stages that are {q} long. "
        "How many stages are there?",
    ),
)

LESSONS = ((1, 2), (2, 3), (3, 4))


def _support(kind: int, b: int, a: int, n: int) -> bool:
    """Keep whole ÷ fraction (kind 0) and fraction ÷ whole (kind 1)."""
    if a >= b or gcd(a, b) != 1 or n < 2:
        return False
    return gcd(n, a) == 1 or (kind == 0 and a > 1)


def _core(b: int, a: int, d: int, c: int) -> bool:
    """Keep fraction ÷ fraction with different answers from every wrong method."""
    if a >= b or c >= d or gcd(a, b) != 1 or gcd(c, d) != 1 or a * d == b * c:
        return False
    # The wrong methods are blind only at 1, which is excluded: a/b is proper, and so is c/d.
    return gcd(a * d, b * c) > 1


def _challenge(kind: int, p: tuple[int, int], q: tuple[int, int], w: int, v: int) -> bool:
    """Keep mixed ÷ fraction (0), mixed ÷ whole (1), mixed ÷ mixed (2), and stories (3 on)."""
    (a, b), (c, d) = p, q
    if kind == 1:
        return d == 2 and v > 1 and w * b + a != v * b
    top, bottom = (w * b + a) * d, b * (c if kind != 2 else v * d + c)
    if top == bottom:
        return False
    if kind == 0:
        return v == 1 and gcd(top, bottom) > 1
    if kind == 2:
        return gcd(top, bottom) > 1 and (v * d + c) * b != (w * b + a) * d
    # Stories: the portions must come out whole, and there must be several.
    # A swimming lesson takes from half an hour to an hour.
    return v == 1 and w > 2 and top % bottom == 0 and (kind != 6 or q in LESSONS)


def _gone_wrong(b: int, a: int, d: int, c: int) -> tuple[kinds.WrongSolution, ...]:
    """Return how a/b ÷ c/d is written wrongly."""
    first, second, wrong = t.frac(a, b), t.frac(c, d), kinds.WrongSolution
    return (
        wrong(NO_FLIP, (t.times(first, second), t.frac(a * c, b * d))),
        wrong(FLIP_FIRST, (t.times(t.frac(b, a), second), t.frac(b * c, a * d))),
    )


def _gone_wrong_whole(kind: int, b: int, a: int, n: int) -> tuple[kinds.WrongSolution, ...]:
    whole, part, wrong = t.Int(n), t.frac(a, b), kinds.WrongSolution
    if kind == 0:
        return (wrong(NO_FLIP, (t.times(whole, part), t.frac(n * a, b))),)
    return (
        wrong(TIMES_WHOLE, (t.times(part, whole), t.frac(a * n, b))),
        wrong(
            FLIP_FIRST,
            (
                t.times(t.frac(b, a), whole),
                number_node(Fraction(b * n, a)) if a == 1 else t.frac(b * n, a),
            ),
        ),
    )


def _gone_wrong_mixed(
    kind: int, p: tuple[int, int], q: tuple[int, int], w: int, v: int
) -> tuple[kinds.WrongSolution, ...]:
    if kind not in (0, 2):
        return ()
    a, b = improper((w, *p))
    c, d = improper((v, *q)) if kind == 2 else q
    right = t.divide(t.frac(a, b), t.frac(c, d))
    return tuple(
        found._replace(lines=(right, *found.lines), wrong=2) for found in _gone_wrong(b, a, d, c)
    )


@register
class Divide(Topic):
    """Quotients: by a whole number, of two fractions, of mixed numbers."""

    id = "fractions.divide"
    title = "Dividing fractions"
    statements = ("number.operations",)
    misconceptions = (NO_FLIP, TIMES_WHOLE, FLIP_FIRST, FLIP_BOTH)
    prerequisites = ("fractions.multiply",)
    spaces = {
        Tier.SUPPORT: kinds.with_wrong_solutions(
            kinds.with_claims_and_matches(
                Space(_support, kind=(0, 1), b=range(2, 9), a=range(1, 8), n=range(2, 11))
            ),
            _gone_wrong_whole,
        ),
        Tier.CORE: kinds.with_wrong_solutions(
            kinds.with_claims_and_matches(
                Space(_core, b=range(2, 11), a=range(1, 9), d=range(2, 11), c=range(1, 9))
            ),
            _gone_wrong,
        ),
        Tier.CHALLENGE: kinds.with_wrong_solutions(
            Space(
                _challenge,
                kind=range(8),
                p=((1, 2), (1, 3), (2, 3), (1, 4), (3, 4), (2, 5), (3, 5)),
                q=((1, 2), (1, 3), (2, 3), (1, 4), (3, 4), (1, 6), (3, 8)),
                w=(1, 2, 3, 4, 6),
                v=(1, 2, 5),
            ),
            _gone_wrong_mixed,
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            kind, b, a, n = values
            return (
                _draft(-1, (n, 0, 1), (0, a, b)) if kind == 0 else _draft(-1, (0, a, b), (n, 0, 1))
            )
        if tier is Tier.CORE:
            b, a, d, c = values
            return _draft(-1, (0, a, b), (0, c, d))
        kind, (a, b), (c, d), w, v = values
        right = (v, 0, 1) if kind == 1 else (v, c, d) if kind == 2 else (0, c, d)
        return _draft(kind - 3, (w, a, b), right)


def _draft(story: int, left: Number, right: Number) -> Draft:
    """Return the quotient as a bare question, or as a story if `story` is 0 or more."""
    (a, b), (c, d) = improper(left), improper(right)
    asked: t.Node = t.divide(written(left), written(right))
    fractions = t.divide(t.frac(a, b), t.frac(c, d))
    steps: list[Step] = []
    if story >= 0:
        steps.append(
            Step("Divide to see how often the small amount fits into the large one.", asked)
        )
    if fractions != asked:
        bare = (
            "improper fractions"
            if (left[0] and left[1]) or (right[0] and right[1])
            else "fractions"
        )
        steps.append(Step(f"Write both numbers as {bare}.", t.equals(asked, fractions)))
    turned = t.times(t.frac(a, b), t.frac(d, c))
    steps.append(
        Step("Multiply by the reciprocal of the second fraction.", t.equals(fractions, turned))
    )
    across = t.Frac(t.times(t.Int(a), t.Int(d)), t.times(t.Int(b), t.Int(c)))
    steps.append(
        Step(
            "Multiply the numerators, and multiply the denominators.",
            t.equals(turned, across, t.frac(a * d, b * c)),
        )
    )
    value = Fraction(a * d, b * c)
    wrong = slips(
        (NO_FLIP if right[1] else TIMES_WHOLE, Fraction(a * c, b * d)),
        (FLIP_FIRST, Fraction(b * c, a * d)),
        (FLIP_BOTH, Fraction(b * d, a * c) if not (left[0] or right[0]) else None),
    )
    wanted, form = answer_form(value)
    key = simplest_node(value)
    done = (*steps, *finish(a * d, b * c))
    twin = (story, left, right)
    if story < 0:
        text = prompt("Work out {e}." + wanted, e=asked)
        return Draft(text, Find(asked), key, form, done, wrong, twin)
    unit, words = STORIES[story]
    p, q = t.Quantity(written(left), unit), t.Quantity(written(right), unit)
    x = t.Sym("x")
    model = t.equals(x, t.divide(p, q))
    return Draft(prompt(words, p=p, q=q), Find(x, (model,)), key, "integer", done, wrong, twin)
