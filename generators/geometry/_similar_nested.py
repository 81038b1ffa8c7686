"""Similar triangles found in a picture told in words: shadows, and one triangle inside another."""

from __future__ import annotations

from fractions import Fraction

from generators._turns import by_turns
from generators.geometry import _similar_mistakes as m
from generators.geometry._calculator import amount
from itembank.items.forms.form_rules import decimal_node
from itembank.items.item import Draft, Find, Step, prompt
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_SHADOWS = (("post", "tree"), ("gate", "flagpole"), ("fence", "mast"), ("wall", "tree"))
_NESTED = "In triangle ABC, D lies on AB and E lies on AC, and DE is parallel to BC."


def is_short(value: Fraction) -> bool:
    """Tell whether a value has at most two decimal places."""
    return (100 * value).denominator == 1


def shadow(a: int, b: int, c: int) -> Draft:
    """Return the question for a height from the lengths of two shadows, in tenths of a metre."""
    high, shade, long = (amount(Fraction(n, 10), "m") for n in (a, b, c))
    value = Fraction(a * c, 10 * b)
    key = amount(value, "m")
    small, tall = by_turns(_SHADOWS, a + b + c)
    ratio = t.Frac(long, shade)
    divides = Fraction(c, b)
    return Draft(
        prompt(
            f"The shadow of a {small} {{a}} high is {{b}} long. At the same time the shadow of "
            f"a {tall} is {{c}} long. How high is the {tall}?",
            a=high,
            b=shade,
            c=long,
        ),
        Find(t.times(high, ratio)),
        key,
        "quantity",
        (
            Step(
                "The sun makes similar triangles. Find the scale factor from the shadows.",
                t.equals(t.divide(long, shade), decimal_node(divides)),
            ),
            Step(
                "Multiply the height by it.",
                t.equals(t.times(decimal_node(divides), high), key),
            ),
        ),
        slips(
            (m.ADDITIVE, amount(Fraction(a + c - b, 10), "m")),
            (
                m.INVERSE,
                amount(Fraction(c * b, 10 * a), "m") if is_short(Fraction(c * b, 10 * a)) else None,
            ),
            (
                m.FACTOR_ONLY,
                amount(divides, "m"),
            ),
        ),
        ("shadow", a, b, c),
    )


def nested_base(a: int, b: int, c: int) -> Draft:
    """Return the question for the base of the larger triangle."""
    first, rest, base = (amount(n, "cm") for n in (a, b, c))
    whole, key = amount(a + b, "cm"), amount(Fraction((a + b) * c, a), "cm")
    side, factor = t.Bracket(t.add(first, rest)), Fraction(a + b, a)
    return Draft(
        prompt(
            f"{_NESTED} AD is {{a}}, DB is {{b}} and DE is {{c}}. Work out the length of BC.",
            a=first,
            b=rest,
            c=base,
        ),
        Find(t.times(base, t.Frac(side, first))),
        key,
        "quantity",
        (
            Step(
                "Triangles ADE and ABC are similar. Find AB.",
                t.equals(t.add(first, rest), whole),
            ),
            Step(
                "Find how many times as long as AD it is.",
                t.equals(t.divide(whole, first), decimal_node(factor)),
            ),
            Step(
                "BC is as many times as long as DE.",
                t.equals(t.times(decimal_node(factor), base), key),
            ),
        ),
        slips(
            (
                m.PART_FOR_WHOLE,
                amount(Fraction(b * c, a), "cm"),
            ),
            (m.REST_ONLY, amount(b + c, "cm")),
        ),
        ("nested", a, b, c),
    )


def rest_of_side(a: int, b: int, c: int) -> Draft:
    """Return the question for the part of a side that lies outside the smaller triangle."""
    side, small, large = (amount(n, "cm") for n in (a, b, c))
    factor = decimal_node(Fraction(c, b))
    whole, key = amount(Fraction(a * c, b), "cm"), amount(Fraction(a * c, b) - a, "cm")
    return Draft(
        prompt(
            f"{_NESTED} AD is {{a}}, DE is {{b}} and BC is {{c}}. Work out the length of DB.",
            a=side,
            b=small,
            c=large,
        ),
        Find(t.sub(t.times(side, t.Frac(large, small)), side)),
        key,
        "quantity",
        (
            Step(
                "Triangles ADE and ABC are similar. Find the scale factor.",
                t.equals(t.divide(large, small), factor),
            ),
            Step("Find AB.", t.equals(t.times(factor, side), whole)),
            Step("Subtract AD.", t.equals(t.sub(whole, side), key)),
        ),
        slips(
            (m.WHOLE_FOR_REST, whole),
            (m.ADDITIVE, amount(c - b, "cm")),
        ),
        ("rest", a, b, c),
    )
