"""Adding and subtracting mixed numbers."""

from __future__ import annotations

from fractions import Fraction
from math import gcd, lcm
from typing import Any

from generators.fractions._answers import AS_MIXED, SIMPLEST, mixed
from generators.fractions._misconceptions import (
    ADD_ACROSS,
    KEEP_NUMERATORS,
    SUBTRACT_ACROSS,
    keep_numerators,
)
from generators.fractions._mixed_mistakes import NO_CARRY, NO_PAYBACK, OTHER_SIGN, SMALL_FROM_LARGE
from itembank.items import kinds
from itembank.items.forms.form_rules import simplest_node
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

# Denominators that meet in one question; the first need one change, the others two.
NEAR = ((2, 4), (3, 6), (4, 8), (5, 10), (2, 8), (3, 9), (2, 6), (3, 12), (4, 12), (2, 10))
FAR = ((2, 3), (3, 4), (4, 6), (2, 5), (3, 5), (4, 5), (6, 8), (3, 8), (6, 9), (4, 10))

# Each story adds (+) or takes away (−); the amounts are in the unit.
STORIES = (
    (
        "+",
        "kg",
        "A gardener digs up {p} of potatoes and then {q} more. "
        "How many kilograms is that altogether?",
    ),
    (
        "-",
        "kg",
        "A sack holds {p} of carrots. The gardener sells {q} of them. How many kilograms are left?",
    ),
    (
        "+",
        "km",
        "A bus drives {p} to the station and then {q} to the depot. "
        "How many kilometres is that altogether?",
    ),
    (
        "-",
        "km",
        "A swimmer plans to swim {p} this week and has swum {q} so far. "
        "How many kilometres are left?",
    ),
)


def _support(op: int, pair: tuple[int, int], w: int, v: int, a: int, c: int) -> bool:
    """Keep parts that neither carry nor borrow, one denominator a multiple of the other."""
    b, d = pair
    if a >= b or c >= d or gcd(a, b) != 1 or gcd(c, d) != 1:
        return False
    if op:
        return a * d + c * b < b * d
    # Both wrong methods are checked: numerators kept, and numerators and denominators apart.
    top = a * d - c * b
    return (
        w > v
        and a > c
        and top > 0
        and (a - c) * gcd(b, d) != top
        and (a - c) * b * d != top * (d - b)
    )


def _core(op: int, pair: tuple[int, int], w: int, v: int, a: int, c: int) -> bool:
    """Keep parts that carry in a sum and borrow in a difference."""
    b, d = pair
    if a >= b or c >= d or gcd(a, b) != 1 or gcd(c, d) != 1:
        return False
    top = a * d + (c * b if op else -c * b)
    if op:
        return top > b * d
    # The two wrong methods differ from each other and from the key, and the answer has wholes.
    return top < 0 and w > v + 1 and 2 * -top != b * d


def _challenge(kind: int, pair: tuple[int, int], w: int, v: int, a: int, c: int) -> bool:
    """Keep questions with a missing number (0, 1) and stories (2 to 5) that carry or borrow."""
    b, d = pair
    if a >= b or c >= d or gcd(a, b) != 1 or gcd(c, d) != 1:
        return False
    if kind == 1 or (kind > 1 and STORIES[kind - 2][0] == "+"):
        return a * d + c * b > b * d
    top = a * d - c * b
    return top < 0 and w > v + 1 and 2 * -top != b * d


@register
class AddMixed(Topic):
    """Sums and differences of mixed numbers: whole parts and fraction parts."""

    id = "fractions.add-mixed"
    title = "Adding and subtracting mixed numbers"
    statements = ("number.operations",)
    misconceptions = (
        ADD_ACROSS,
        SUBTRACT_ACROSS,
        KEEP_NUMERATORS,
        NO_CARRY,
        SMALL_FROM_LARGE,
        NO_PAYBACK,
        OTHER_SIGN,
    )
    prerequisites = ("fractions.add-unlike", "fractions.improper-mixed")
    spaces = {
        Tier.SUPPORT: kinds.with_claims_and_matches(
            Space(
                _support,
                op=(0, 1),
                pair=NEAR,
                w=range(2, 6),
                v=range(1, 4),
                a=range(1, 6),
                c=(1, 2, 3, 5),
            )
        ),
        Tier.CORE: kinds.with_claims_and_matches(
            Space(
                _core,
                op=(0, 1),
                pair=FAR,
                w=(2, 4, 5, 7),
                v=(1, 2, 3),
                a=range(1, 6),
                c=range(1, 8, 2),
            )
        ),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=range(6),
            pair=FAR[:8],
            w=(3, 4, 6),
            v=(1, 2),
            a=range(1, 6),
            c=(1, 2, 3, 5),
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, (b, d), w, v, a, c = values
        left, right = (w, a, b), (v, c, d)
        if tier is not Tier.CHALLENGE:
            return self._plain(kind, left, right)
        if kind < 2:
            return self._missing(kind, left, right)
        return self._story(kind - 2, left, right)

    def _plain(self, op: int, left: tuple[int, int, int], right: tuple[int, int, int]) -> Draft:
        p, q = t.Mixed(*left), t.Mixed(*right)
        asked = t.add(p, q) if op else t.sub(p, q)
        value, steps, wrong = _worked(op, left, right)
        twin = (op, *(sorted((left, right)) if op else (left, right)))
        text = prompt("Work out {e}." + _wanted(value), e=asked)
        return Draft(text, Find(asked), simplest_node(value), _form(value), steps, wrong, twin)

    def _missing(self, op: int, left: tuple[int, int, int], right: tuple[int, int, int]) -> Draft:
        """Make □ + right = left (op 0) or □ − right = left (op 1), undone by the worked sum."""
        p, q = t.Mixed(*left), t.Mixed(*right)
        relation = t.equals(t.sub(t.Blank(), q) if op else t.add(t.Blank(), q), p)
        value, steps, wrong = _worked(op, left, right)
        turned = t.equals(t.Blank(), t.add(p, q) if op else t.sub(p, q))
        undo = Step(f"Undo the {'subtraction: add' if op else 'addition: subtract'}.", turned)
        pv, qv = _value(left), _value(right)
        other = slips((OTHER_SIGN, pv - qv if op else pv + qv))
        wanted = "a mixed number in its" if _form(value) == "mixed" else "a fraction in its"
        text = prompt(f"Find the missing number, as {wanted} simplest form.  {{r}}", r=relation)
        return Draft(
            text,
            Find(t.Blank(), (relation,)),
            simplest_node(value),
            _form(value),
            (undo, *steps),
            (*other, *wrong[:1]),
            (op, left, right),
        )

    def _story(self, story: int, left: tuple[int, int, int], right: tuple[int, int, int]) -> Draft:
        sign, unit, words = STORIES[story]
        p, q = t.Quantity(t.Mixed(*left), unit), t.Quantity(t.Mixed(*right), unit)
        op = 1 if sign == "+" else 0
        value, steps, wrong = _worked(op, left, right)
        x = t.Sym("x")
        work = t.add(p, q) if op else t.sub(p, q)
        model = t.equals(t.Quantity(x, unit), work)
        first = Step(
            f"{'Add' if op else 'Subtract'} the two amounts.",
            t.add(t.Mixed(*left), t.Mixed(*right))
            if op
            else t.sub(t.Mixed(*left), t.Mixed(*right)),
        )
        return Draft(
            prompt(words + _wanted(value), p=p, q=q),
            Find(x, (model,)),
            simplest_node(value),
            _form(value),
            (first, *steps),
            wrong,
            (story + 2, *(sorted((left, right)) if op else (left, right))),
        )


def _value(m: tuple[int, int, int]) -> Fraction:
    return m[0] + Fraction(m[1], m[2])


def _form(value: Fraction) -> str:
    return "mixed" if value > 1 and value.denominator > 1 else "simplest"


def _wanted(value: Fraction) -> str:
    return AS_MIXED if _form(value) == "mixed" else SIMPLEST


def _worked(
    op: int, left: tuple[int, int, int], right: tuple[int, int, int]
) -> tuple[Fraction, tuple[Step, ...], Any]:
    """Return value, working and wrong answers of left + right (op 1) or left − right (op 0)."""
    (w, a, b), (v, c, d) = left, right
    join = t.add if op else t.sub
    bottom = lcm(b, d)
    left_top, right_top = a * (bottom // b), c * (bottom // d)
    asked: t.Node = join(t.Mixed(*left), t.Mixed(*right))
    changed: t.Node = join(t.Mixed(w, left_top, bottom), t.Mixed(v, right_top, bottom))
    steps = [Step(f"Write both fraction parts over {bottom}.", t.equals(asked, changed))]
    if op == 0 and left_top < right_top:
        before, left_top, w = changed, left_top + bottom, w - 1
        changed = t.Sum(
            t.Int(w), (("+", t.frac(left_top, bottom)), ("-", t.Mixed(v, right_top, bottom)))
        )
        steps.append(
            Step(
                f"Change 1 whole to {bottom}/{bottom}: the first fraction part is too small.",
                t.equals(before, changed),
            )
        )
    whole, top = (w + v, left_top + right_top) if op else (w - v, left_top - right_top)
    rest: t.Node = t.add(t.Int(whole), t.frac(top, bottom)) if whole else t.frac(top, bottom)
    word = "Add" if op else "Subtract"
    steps.append(
        Step(f"{word} the whole numbers, then the fraction parts.", t.equals(changed, rest))
    )
    value = whole + Fraction(top, bottom)
    if top >= bottom:
        carried = mixed(whole + 1, top - bottom, bottom)
        steps.append(Step(f"Change {bottom}/{bottom} to 1 whole.", t.equals(rest, carried)))
        rest = carried
    key = simplest_node(value)
    common = gcd(top, bottom)
    if rest != key and common == 1:
        steps.append(Step("Write it as a mixed number.", t.equals(rest, key)))
    elif rest != key:
        steps.append(
            Step(f"Divide the numerator and denominator by {common}.", t.equals(rest, key))
        )
    carries = op == 1 and a * d + c * b >= b * d
    borrows = op == 0 and a * d < c * b
    gap = Fraction(abs(a * d - c * b), b * d)
    wrong = slips(
        (NO_CARRY, value - 1 if carries else None),
        (SMALL_FROM_LARGE, _value((left[0] - v, 0, 1)) + gap if borrows else None),
        (NO_PAYBACK, value + 1 if borrows else None),
        (ADD_ACROSS, left[0] + v + Fraction(a + c, b + d) if op else None),
        (
            SUBTRACT_ACROSS,
            left[0] - v + Fraction(a - c, d - b)
            if not op and not borrows and a > c and d > b
            else None,
        ),
        (
            keep_numerators(((a, b), (c, d)), bottom, value),
            left[0] + (v if op else -v) + Fraction(a + c if op else a - c, bottom)
            if not carries and (op or not borrows)
            else None,
        ),
    )
    return value, tuple(steps), wrong
