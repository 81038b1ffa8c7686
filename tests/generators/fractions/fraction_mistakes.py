"""The wrong method of every misconception that a fraction topic names."""

from __future__ import annotations

import re
from collections.abc import Callable
from fractions import Fraction
from math import gcd, lcm

from itembank.figures.figure import words as figure_words
from itembank.items.item import Item
from tests.generators.fractions.fraction_methods import (
    BRACKETS,
    SHAPES,
    SQUARE,
    Method,
    across,
    add_across,
    after_point,
    amounts,
    asked,
    bar_as_point,
    by_the_same,
    denominators_added,
    denominators_multiplied,
    digits,
    equivalent,
    faced,
    fraction_beside,
    keep_numerators,
    last_added,
    mixed_apart,
    numbers,
    of,
    operands,
    operated,
    ordered,
    over_numerator,
    part,
    pointed,
    printed_sign,
    read,
    repeated,
    signed,
    small_improper,
    stops,
    subtracts_a_factor,
    swapped,
    two,
    value,
    whole_and_fraction,
    wholes_and_parts,
    without,
    work_across,
)


def _drawn(item: Item) -> tuple[int, int, int]:
    """Return how many parts were asked about, how many not, and how many make one whole.

    Of the words for who cannot see the figure, and of the question.
    """
    assert item.figure is not None
    said = figure_words(item.figure)
    rows = re.search(r"(\d+) rows of (\d+) equal parts", said)
    equal = re.search(r"(\d+) equal parts", said)
    assert equal is not None
    each = int(rows[1]) * int(rows[2]) if rows else int(equal[1])
    wholes = re.search(r"There are (\d+)", said)
    shaded = re.search(r"(\d+) of the parts (?:is|are)", said)
    assert shaded is not None
    rest = each * (int(wholes[1]) if wholes else 1) - int(shaded[1])
    other = "not shaded" in str(item.prompt[0])
    return (rest, int(shaded[1]), each) if other else (int(shaded[1]), rest, each)


def _of_drawn(make: Callable[[int, int, int], Fraction]) -> Method:
    return lambda item: make(*_drawn(item))


METHODS: dict[tuple[str, str], Method] = {
    ("shaded", "shaded-part-to-part"): _of_drawn(lambda asked, rest, each: Fraction(asked, rest)),
    ("shaded", "shaded-other-part"): _of_drawn(lambda asked, rest, each: Fraction(rest, each)),
    ("shaded", "shaded-upside-down"): _of_drawn(lambda asked, rest, each: Fraction(each, asked)),
    ("shaded", "shaded-parts-of-all"): _of_drawn(
        lambda asked, rest, each: Fraction(asked, asked + rest)
    ),
    ("add-like", "add-across"): work_across,
    ("add-like", "like-denominators-multiplied"): denominators_multiplied,
    ("add-like", "subtract-denominators-away"): lambda item: sum(
        s * n for s, (_, n, _) in signed(item)
    ),
    ("add-like", "missing-same-sign"): printed_sign,
    ("add-like", "like-adds-last"): last_added,
    ("add-like", "like-leaves-last"): without,
    ("add-like", "like-fraction-beside-whole"): fraction_beside,
    ("add-unlike", "add-across"): add_across,
    ("add-unlike", "subtract-across"): work_across,
    ("add-unlike", "work-across"): work_across,
    ("add-unlike", "keep-numerators"): keep_numerators,
    ("add-unlike", "add-gives-used"): lambda item: sum(map(value, two(item)), Fraction(0)),
    ("add-mixed", "add-across"): mixed_apart(lambda _, p, q: Fraction(p[1] + q[1], p[2] + q[2])),
    ("add-mixed", "subtract-across"): mixed_apart(
        lambda _, p, q: Fraction(p[1] - q[1], q[2] - p[2])
    ),
    ("add-mixed", "keep-numerators"): mixed_apart(
        lambda sign, p, q: Fraction(p[1] + sign * q[1], lcm(p[2], q[2]))
    ),
    ("add-mixed", "mixed-no-carry"): mixed_apart(lambda _, p, q: (part(p) + part(q)) % 1),
    ("add-mixed", "mixed-smaller-from-larger"): mixed_apart(lambda _, p, q: abs(part(p) - part(q))),
    ("add-mixed", "mixed-no-payback"): mixed_apart(lambda _, p, q: 1 + part(p) - part(q)),
    ("add-mixed", "mixed-missing-same-sign"): printed_sign,
    ("multiply", "multiply-both-parts"): lambda item: part(whole_and_fraction(item)[1]),
    ("multiply", "multiply-adds-whole"): lambda item: Fraction(
        whole_and_fraction(item)[0] + whole_and_fraction(item)[1][1], whole_and_fraction(item)[1][2]
    ),
    ("multiply", "multiply-flips"): lambda item: operands(item)[0] / operands(item)[1],
    ("multiply", "multiply-adds-denominators"): denominators_added,
    ("multiply", "multiply-wholes-and-parts"): wholes_and_parts,
    ("multiply", "multiply-whole-part-only"): lambda item: (
        whole_and_fraction(item)[0] * whole_and_fraction(item)[1][0]
        + part(whole_and_fraction(item)[1])
    ),
    ("multiply", "multiply-fraction-part-only"): lambda item: (
        two(item)[0][0] + part(two(item)[0]) * operands(item)[1]
    ),
    ("multiply", "multiply-converts-by-adding"): small_improper,
    ("divide", "divide-without-flipping"): lambda item: operands(item)[0] * operands(item)[1],
    ("divide", "divide-multiplies-by-whole"): lambda item: value(two(item)[0]) * two(item)[1][0],
    ("divide", "divide-flips-first"): lambda item: operands(item)[1] / operands(item)[0],
    ("divide", "divide-flips-both"): lambda item: 1 / operands(item)[0] / operands(item)[1],
    ("between", "between-added"): lambda item: sum(map(value, two(item))),
    ("between", "between-apart"): lambda item: value(two(item)[1]) - value(two(item)[0]),
    # The numerators as they were, and half way between them.
    ("between", "keep-numerators"): lambda item: Fraction(
        two(item)[0][1] + two(item)[1][1], 2 * lcm(two(item)[0][2], two(item)[1][2])
    ),
    ("equivalent", "equivalent-by-adding"): by_the_same(1),
    ("equivalent", "equivalent-by-subtracting"): by_the_same(-1),
    ("equivalent", "equivalent-one-part"): lambda item: equivalent(item)[1],
    ("lowest-terms", "cancel-one-part"): lambda item: (lambda a, b: Fraction(a // gcd(a, b), b))(
        *numbers(asked(item))[0][1:]
    ),
    ("lowest-terms", "cancel-by-subtracting"): subtracts_a_factor,
    ("lowest-terms", "ignore-units"): lambda item: Fraction(*amounts(item, sizes=False)),
    ("lowest-terms", "reverse-part-and-whole"): lambda item: (
        1 / Fraction(*amounts(item, sizes=True))
    ),
    ("improper-mixed", "mixed-swapped"): swapped,
    ("improper-mixed", "mixed-over-numerator"): over_numerator,
    ("improper-mixed", "improper-adds-whole"): lambda item: (lambda w, n, d: Fraction(w + n, d))(
        *numbers(asked(item))[0]
    ),
    ("improper-mixed", "improper-times-numerator"): lambda item: (
        lambda w, n, d: Fraction(w * n + d, d)
    )(*numbers(asked(item))[0]),
    ("order", "order-denominators-only"): ordered(lambda text: -int(text.split("/")[1])),
    ("order", "order-numerators-only"): ordered(lambda text: int(text.split("/")[0])),
    ("order", "order-by-gap"): ordered(
        lambda text: int(text.split("/")[0]) - int(text.split("/")[1])
    ),
    ("order", "order-percent-as-number"): ordered(faced),
    ("order", "order-bar-as-point"): ordered(pointed),
    ("of-quantity", "of-gives-the-rest"): of(lambda n, f: n - n * f),
    ("of-quantity", "of-subtracts-denominator"): of(lambda n, f: n - f.denominator),
    ("of-quantity", "of-one-part"): of(lambda n, f: n / f.denominator),
    ("of-quantity", "of-divides-by-numerator"): of(lambda n, f: n / f),
    ("of-quantity", "of-rest-as-whole"): of(lambda n, f, g: n * g),
    ("of-quantity", "of-rest-as-first"): of(lambda n, f, g: n * f * g),
    ("of-quantity", "of-gives-used"): of(lambda n, f, g: n * f + n * g),
    ("of-quantity", "of-whole-as-rest"): of(lambda n, f, g: n - n * f - (n - n * f) * g),
    ("find-whole", "whole-takes-fraction-of-part"): of(lambda n, f: n * f),
    ("find-whole", "whole-adds-denominator"): of(lambda n, f: n + f.denominator),
    ("find-whole", "whole-one-part"): of(lambda n, f: n / f.numerator),
    ("find-whole", "whole-multiplies-only"): of(lambda n, f: n * f.denominator),
    ("find-whole", "whole-left-as-used"): of(lambda n, f: n / f),
    ("find-whole", "whole-adds-fraction-of-left"): of(lambda n, f: n + n * f),
    ("mixed-operations", "order-left-to-right"): operated((SHAPES[0], lambda a, b, c: (a + b) * c)),
    ("mixed-operations", "order-adds-before-dividing"): operated(
        (SQUARE, lambda a, b, c: (a * a + b) / c)
    ),
    ("mixed-operations", "order-ignores-brackets"): operated(
        (SHAPES[1], lambda a, b, c: a * b + c),
        (SHAPES[2], lambda a, b, c: a + b / c),
        (SHAPES[3], lambda a, b, c: a / b + c),
        (SHAPES[4], lambda a, b, c: a - b * c),
    ),
    ("mixed-operations", "order-square-doubles"): operated((SQUARE, lambda a, b, c: a + a + b / c)),
    ("mixed-operations", "add-across"): operated(
        (SHAPES[0], lambda a, b, c: across(a, b * c)),
        (SHAPES[1], lambda a, b, c: a * across(b, c)),
        (SHAPES[2], lambda a, b, c: across(a, b) / c),
        (SHAPES[3], lambda a, b, c: a / across(b, c)),
        (BRACKETS, lambda a, b, c, d: across(a, b) / (c - d)),
    ),
    ("mixed-operations", "divide-without-flipping"): operated(
        (SHAPES[2], lambda a, b, c: (a + b) * c),
        (SHAPES[3], lambda a, b, c: a * (b + c)),
        (BRACKETS, lambda a, b, c, d: (a + b) * (c - d)),
        (SQUARE, lambda a, b, c: a * a + b * c),
    ),
    ("mixed-operations", "multiply-flips"): operated((SHAPES[4], lambda a, b, c: (a - b) / c)),
    ("decimals-percentages", "convert-bar-as-point"): bar_as_point,
    ("decimals-percentages", "convert-numerator-after-point"): after_point,
    ("decimals-percentages", "convert-denominator-as-percent"): lambda item: Fraction(
        int(asked(item).split("/")[1]), 100
    ),
    ("decimals-percentages", "convert-numerator-as-percent"): lambda item: Fraction(
        int(asked(item).split("/")[0]), 100
    ),
    ("decimals-percentages", "convert-times-ten"): lambda item: read(asked(item)) * 10 / 100,
    ("decimals-percentages", "convert-divides-by-ten"): lambda item: (
        Fraction(asked(item).removesuffix("%")) / 10
    ),
    ("decimals-percentages", "convert-wrong-way"): lambda item: read(asked(item)) / 100 / 100,
    ("decimals-percentages", "convert-sign-dropped"): lambda item: Fraction(
        asked(item).removesuffix("%")
    ),
    ("decimals-percentages", "convert-too-few-noughts"): lambda item: Fraction(
        digits(item), 10 ** (len(asked(item).partition(".")[2]) - 1)
    ),
    ("decimals-percentages", "convert-percentage-over-ten"): lambda item: Fraction(
        digits(item), 10
    ),
    ("decimals-percentages", "convert-one-over"): lambda item: Fraction(1, digits(item)),
    ("decimals-percentages", "convert-recurring-stops"): stops,
    ("decimals-percentages", "convert-wrong-nines"): lambda item: Fraction(
        int(repeated(item)), 9 if len(repeated(item)) == 2 else 99
    ),
    ("decimals-percentages", "convert-all-recur"): lambda item: Fraction(
        int(asked(item).replace("\u0307", "")[2:]), 99
    ),
}
