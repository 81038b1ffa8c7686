"""Recurring decimals, exact percentages, and the fractions they are."""

from __future__ import annotations

from fractions import Fraction
from math import gcd

from generators.fractions._decimal_mistakes import (
    ALL_RECUR,
    BAR_AS_POINT,
    NINES,
    NUMERATOR_AFTER_POINT,
    STOPS,
    TIMES_TEN,
)
from itembank.items.forms.form_rules import decimal_node, number_node, simplest_node
from itembank.items.item import Draft, Find, Slip, Step, prompt
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

LOWEST = " as a fraction in its lowest terms."


def bar_as_point(top: int, bottom: int) -> t.Node:
    """Return a fraction whose bar is read as a decimal point: 3/4 as 3.4."""
    return decimal_node(Fraction(int(f"{top}{bottom}"), 10 ** len(str(bottom))))


def top_after_point(top: int) -> t.Node:
    """Return the numerator alone after a point: 3/4 as 0.3."""
    return decimal_node(Fraction(top, 10 ** len(str(top))))


def fraction_draft(
    asked: t.Node, ending: str, key: t.Node, form: str, steps: list[Step], wrong: tuple[Slip, ...]
) -> Draft:
    """Return the question to write a number in another form."""
    text = prompt("Write {n}" + ending, n=asked)
    # The printed number and the form asked for settle the question.
    return Draft(text, Find(asked), key, form, tuple(steps), wrong, (form, asked))


def recurring_decimal(a: int, b: int) -> Draft:
    """Return the question to write a fraction as a recurring decimal."""
    value = Fraction(a, b)
    asked, key = t.frac(a, b), decimal_node(value)
    steps = [
        Step(
            f"The fraction means {a} divided by {b}.", t.equals(asked, t.divide(t.Int(a), t.Int(b)))
        ),
        Step(
            "Divide until a remainder comes again; dot the digits that recur.",
            t.equals(t.divide(t.Int(a), t.Int(b)), key),
        ),
    ]
    cut = Fraction(100 * a // b, 100)
    wrong = slips(
        (STOPS, decimal_node(cut) if cut else None),
        (BAR_AS_POINT, bar_as_point(a, b)),
        (NUMERATOR_AFTER_POINT, top_after_point(a)),
    )
    ending = " as a decimal. Put dots over the digits that recur."
    return fraction_draft(asked, ending, key, "decimal", steps, wrong)


def exact_percentage(a: int, b: int) -> Draft:
    """Return the question to write a fraction as an exact percentage."""
    whole = Fraction(100 * a, b)
    asked, key = t.frac(a, b), t.Percent(simplest_node(whole))
    steps = [
        Step(
            "Multiply by 100.",
            t.equals(t.times(asked, t.Int(100)), t.frac(100 * a, b), simplest_node(whole)),
        ),
        Step("Write the per cent sign.", t.equals(asked, key)),
    ]
    wrong = slips(
        (STOPS, t.Percent(t.Int(int(whole)))), (TIMES_TEN, t.Percent(simplest_node(whole / 10)))
    )
    ending = " as a percentage. Use a mixed number, not a decimal."
    return fraction_draft(asked, ending, key, "percentage", steps, wrong)


def from_recurring(kind: int, a: int, b: int) -> Draft:
    """Make 0.ab (both recurring, kind 2; b recurring, kind 3) or 0.b (kind 4) a fraction."""
    if kind == 3:
        return late_recurring(a, b)
    digits = f"{a}{b}" if kind == 2 else str(b)
    nines, number = 10 ** len(digits) - 1, int(digits)
    asked, value = t.Dec("0", "", digits), Fraction(number, nines)
    many = "2 digits recur, so put them" if kind == 2 else "1 digit recurs, so put it"
    steps = [Step(f"{many} over {nines}.", t.equals(asked, t.frac(number, nines)))]
    common = gcd(number, nines)
    if common > 1:
        cancel = t.equals(t.frac(number, nines), number_node(value))
        steps.append(Step(f"Divide the numerator and denominator by {common}.", cancel))
    wrong = slips(
        (STOPS, Fraction(number, nines + 1)),
        (NINES, Fraction(number, 9 if kind == 2 else 99)),
    )
    return fraction_draft(asked, LOWEST, number_node(value), "lowest-terms", steps, wrong)


def late_recurring(a: int, b: int) -> Draft:
    """Return the question to write 0.ab, with b recurring, as a fraction."""
    asked = t.Dec("0", str(a), str(b))
    value = Fraction(9 * a + b, 90)
    tenfold = t.Dec(str(a), "", str(b))
    key = number_node(value)
    apart: t.Node = t.Sum(t.Int(a), (("+", t.frac(b, 9)),)) if a else t.frac(b, 9)
    steps = [
        Step(
            "Multiply by 10, so that the dot comes first.",
            t.equals(t.times(asked, t.Int(10)), tenfold),
        ),
        Step("1 digit recurs, so put it over 9.", t.equals(tenfold, apart)),
    ]
    if a:
        steps.append(Step("Make it one fraction.", t.equals(apart, t.frac(9 * a + b, 9))))
    raw, common = t.frac(9 * a + b, 90), gcd(9 * a + b, 90)
    steps.append(
        Step(
            "Undo the first step: divide by 10.",
            t.equals(t.divide(t.frac(9 * a + b, 9), t.Int(10)), raw),
        )
    )
    if common > 1:
        steps.append(Step(f"Divide the numerator and denominator by {common}.", t.equals(raw, key)))
    wrong = slips((STOPS, Fraction(10 * a + b, 100)), (ALL_RECUR, Fraction(10 * a + b, 99)))
    return fraction_draft(asked, LOWEST, key, "lowest-terms", steps, wrong)
