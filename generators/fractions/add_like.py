"""Adding and subtracting fractions that have the same denominator."""

from __future__ import annotations

from fractions import Fraction
from math import gcd
from typing import Any

from generators.fractions._answers import answer_form, finish
from generators.fractions._misconceptions import ADD_ACROSS
from itembank.items import kinds
from itembank.items.forms.form_rules import simplest_node
from itembank.items.item import Draft, Find, Misconception, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

DENOMINATORS_GONE = Misconception(
    "fractions.subtract-denominators-away",
    "takes the denominators away as well, and leaves out the 0",
    "You have 5 sevenths and take away 2 sevenths. Are the pieces still sevenths?",
)
DENOMINATORS_MULTIPLIED = Misconception(
    "fractions.like-denominators-multiplied",
    "multiplies the denominators although they are the same already",
    "Are the pieces of both fractions the same size? Why would the pieces of the answer differ?",
)
OTHER_SIGN = Misconception(
    "fractions.missing-same-sign",
    "uses the printed sign on the two numbers shown instead of undoing it",
    "Put your answer in the box and work out that side. Does it come to what is printed?",
)
ADDS_LAST = Misconception(
    "fractions.like-adds-last",
    "adds the last fraction, although it is to be taken away",
    "Which sign stands in front of the last fraction? What does it tell you to do?",
)
LEAVES_LAST = Misconception(
    "fractions.like-leaves-last",
    "leaves the last fraction out",
    "How many fractions does the question take away? Have you taken every one of them?",
)
FRACTION_BESIDE = Misconception(
    "fractions.like-fraction-beside-whole",
    "takes away whole numbers only, and writes the fraction beside what is left",
    "What is 1 − 1/4? What does your method give?",
)


def _support(op: int, d: int, a: int, b: int) -> bool:
    """Keep sums and differences that are proper and need no cancelling."""
    if a >= d or b >= d:
        return False
    top = a + b if op else a - b
    return 0 < top < d and gcd(top, d) == 1 and (a < b or op == 0) and gcd(gcd(a, b), d) == 1


def _core(op: int, d: int, a: int, b: int) -> bool:
    """Keep sums above 1, and sums and differences that need cancelling."""
    if a >= d or b >= d or gcd(a, d) != 1 or gcd(b, d) != 1:
        return False
    if op:
        return a < b and a + b != d and (a + b > d or gcd(a + b, d) > 1)
    return a > b and gcd(a - b, d) > 1


def _challenge(kind: int, d: int, a: int, b: int, c: int) -> bool:
    """Keep three terms (0), a whole less two fractions (1) and a missing fraction (2, 3)."""
    if a >= d or b >= d or a == b or gcd(a, d) != 1 or gcd(b, d) != 1:
        return False
    if kind == 0:
        return (
            a < b
            and c < d
            and c not in (a, b)
            and gcd(c, d) == 1
            and a + b - c > 0
            and a + b - c != d
        )
    if kind == 1:
        return a < b and c < 4 and a + b != d
    # With a box, c has nothing to say. Neither the box nor what is shown may be whole.
    return c == 1 and (kind == 2 or a + b != d)


def _gone_wrong(op: int, d: int, a: int, b: int) -> tuple[kinds.WrongSolution, ...]:
    """Return how sums and differences over one denominator are written wrongly."""
    top, D, wrong = a + b if op else a - b, t.Int(d), kinds.WrongSolution
    over = (t.add if op else t.sub)(t.Int(a), t.Int(b))
    squared = (t.Frac(over, t.times(D, D)), t.frac(top, d * d))
    found = (wrong(DENOMINATORS_MULTIPLIED, squared),)
    across = (t.Frac(over, t.add(D, D)), t.frac(top, 2 * d))
    return (wrong(ADD_ACROSS, across), *found) if op else found


def _gone_wrong_three(kind: int, d: int, a: int, b: int, c: int) -> tuple[kinds.WrongSolution, ...]:
    if kind != 0:
        return ()
    over = t.Frac(t.add(t.Int(a), t.Int(b), t.Int(c)), t.Int(d))
    return (kinds.WrongSolution(ADDS_LAST, (over, t.frac(a + b + c, d))),)


@register
class AddLike(Topic):
    """Sums and differences over one denominator."""

    id = "fractions.add-like"
    title = "Adding and subtracting fractions with the same denominator"
    statements = ("number.operations",)
    misconceptions = (
        ADD_ACROSS,
        DENOMINATORS_MULTIPLIED,
        DENOMINATORS_GONE,
        OTHER_SIGN,
        ADDS_LAST,
        LEAVES_LAST,
        FRACTION_BESIDE,
    )
    prerequisites = ("fractions.lowest-terms", "fractions.improper-mixed")
    spaces = {
        Tier.SUPPORT: kinds.with_wrong_solutions(
            kinds.with_claims_and_matches(
                Space(_support, op=(0, 1), d=range(3, 14), a=range(1, 13), b=range(1, 13))
            ),
            _gone_wrong,
        ),
        Tier.CORE: kinds.with_wrong_solutions(
            kinds.with_claims_and_matches(
                Space(_core, op=(0, 1), d=range(4, 17), a=range(1, 16), b=range(1, 16))
            ),
            _gone_wrong,
        ),
        Tier.CHALLENGE: kinds.with_wrong_solutions(
            Space(
                _challenge,
                kind=range(4),
                d=(5, 6, 7, 8, 9, 10, 12),
                a=range(1, 10),
                b=range(1, 10),
                c=(1, 2, 3),
            ),
            _gone_wrong_three,
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is not Tier.CHALLENGE:
            op, d, a, b = values
            return self._pair(op, d, a, b)
        kind, d, a, b, c = values
        if kind == 0:
            return self._three(d, a, b, c)
        if kind == 1:
            return self._from_whole(d, a, b, c)
        return self._missing(kind, d, a, b)

    def _pair(self, op: int, d: int, a: int, b: int) -> Draft:
        join = t.add if op else t.sub
        asked = join(t.frac(a, d), t.frac(b, d))
        top = a + b if op else a - b
        value = Fraction(top, d)
        over_one = t.Frac(join(t.Int(a), t.Int(b)), t.Int(d))
        steps = (
            Step(
                f"The denominators are the same, so {'add' if op else 'subtract'} the numerators.",
                t.equals(asked, over_one, t.frac(top, d)),
            ),
            *finish(top, d),
        )
        wrong = slips(
            (ADD_ACROSS, Fraction(top, 2 * d) if op else None),
            (DENOMINATORS_GONE, None if op else top),
            (DENOMINATORS_MULTIPLIED, Fraction(top, d * d)),
        )
        wanted, form = answer_form(value)
        text = prompt("Work out {e}." + wanted, e=asked)
        return Draft(text, Find(asked), simplest_node(value), form, steps, wrong, (op, d, a, b))

    def _three(self, d: int, a: int, b: int, c: int) -> Draft:
        terms: tuple[tuple[t.SumOp, t.Node], ...] = (("+", t.frac(b, d)), ("-", t.frac(c, d)))
        tops: tuple[tuple[t.SumOp, t.Node], ...] = (("+", t.Int(b)), ("-", t.Int(c)))
        asked, top = t.Sum(t.frac(a, d), terms), a + b - c
        value = Fraction(top, d)
        steps = (
            Step(
                "The denominators are the same, so work on the numerators.",
                t.equals(asked, t.Frac(t.Sum(t.Int(a), tops), t.Int(d)), t.frac(top, d)),
            ),
            *finish(top, d),
        )
        # Working across is blind here: the denominators come to d + d − d.
        wrong = slips((ADDS_LAST, Fraction(a + b + c, d)), (LEAVES_LAST, Fraction(a + b, d)))
        wanted, form = answer_form(value)
        text = prompt("Work out {e}." + wanted, e=asked)
        twin = (0, d, a, b, c)
        return Draft(text, Find(asked), simplest_node(value), form, steps, wrong, twin)

    def _from_whole(self, d: int, a: int, b: int, whole: int) -> Draft:
        taken: tuple[tuple[t.SumOp, t.Node], ...] = (("-", t.frac(a, d)), ("-", t.frac(b, d)))
        whole += 1
        top = whole * d - a - b
        value = Fraction(top, d)
        wholes, parts = divmod(a + b, d)
        asked, over = t.Sum(t.Int(whole), taken), t.Sum(t.frac(whole * d, d), taken)
        steps = (
            Step(f"Write {whole} as a fraction over {d}.", t.equals(asked, over)),
            Step("Subtract the numerators.", t.equals(over, t.frac(top, d))),
            *finish(top, d),
        )
        wrong = slips(
            (ADDS_LAST, whole + Fraction(b - a, d)),
            (LEAVES_LAST, whole - Fraction(a, d)),
            (FRACTION_BESIDE, whole - wholes + Fraction(parts, d)),
        )
        wanted, form = answer_form(value)
        text = prompt("Work out {e}." + wanted, e=asked)
        return Draft(
            text, Find(asked), simplest_node(value), form, steps, wrong, (1, d, a, b, whole)
        )

    def _missing(self, kind: int, d: int, a: int, b: int) -> Draft:
        """Put the box first: box + a/d = 1 b/d (kind 2) or box − a/d = b/d (kind 3)."""
        total = b + d if kind == 2 else b
        shown = simplest_node(Fraction(total, d))
        given = t.frac(a, d)
        join, undo = (t.add, t.sub) if kind == 2 else (t.sub, t.add)
        relation = t.equals(join(t.Blank(), given), shown)
        top = total - a if kind == 2 else total + a
        value = Fraction(top, d)
        word = "addition: subtract" if kind == 2 else "subtraction: add"
        rest = undo(t.frac(total, d), given)
        over = [Step(f"Undo the {word}.", t.equals(rest, t.frac(top, d)))]
        if shown != t.frac(total, d):
            over.insert(0, Step(f"Write the result over {d}.", t.equals(shown, t.frac(total, d))))
        other = Fraction(total + a, d) if kind == 2 else Fraction(abs(total - a), d)
        wrong = slips((OTHER_SIGN, other), (DENOMINATORS_MULTIPLIED, Fraction(top, d * d)))
        _, form = answer_form(value)
        wanted = "a mixed number in its" if form == "mixed" else "a fraction in its"
        text = prompt(f"Find the missing number, as {wanted} simplest form.  {{r}}", r=relation)
        key = simplest_node(value)
        return Draft(
            text,
            Find(t.Blank(), (relation,)),
            key,
            form,
            (*over, *finish(top, d)),
            wrong,
            (kind, d, a, b),
        )
