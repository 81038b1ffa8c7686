"""Each likely mistake on fractions, carried out again from the printed question.

A method below reads only the printed line and does what the name of its misconception says, in
:class:`fractions.Fraction`. What it gets must be the wrong answer of the slip, on random items of
every tier. The methods share no code with the generators.
"""

from __future__ import annotations

import random
import re
from collections.abc import Callable, Iterator
from fractions import Fraction
from math import gcd, lcm

import pytest

from itembank.items.item import Item, Tier
from itembank.items.topics.registry import topics
from itembank.items.topics.topic import Topic
from itembank.notation import line
from tests.generators.mistakes import each_mistake

TOPICS = tuple(topic for topic in topics() if topic.id.startswith("fractions."))
SAMPLE = 120
NUMBER = re.compile(r"(?:(\d+) )?(\d+)/(\d+)|(\d+)")
Method = Callable[[Item], object]
Parts = tuple[int, int, int]


def printed(item: Item) -> str:
    return "".join(run if isinstance(run, str) else line(run) for run in item.prompt)


def maths(item: Item) -> list[str]:
    return [line(run) for run in item.prompt if not isinstance(run, str)]


def numbers(text: str) -> list[Parts]:
    """Return each number as wholes, numerator and denominator (0 and 1 for a whole number)."""
    return [
        (int(whole), 0, 1) if whole else (int(big or 0), int(top), int(bottom))
        for big, top, bottom, whole in NUMBER.findall(text)
    ]


def value(parts: Parts) -> Fraction:
    return parts[0] + Fraction(parts[1], parts[2])


def read(text: str) -> Fraction:
    """Return the worth of one number as written: with a unit, a per cent sign or a point."""
    plain = text.strip("£%").removesuffix("%")
    plain = re.sub(r" (kg|cm|km|l|m|g|h|min|ml)$", "", plain)
    percent = 100 if text.endswith("%") else 1
    if "." in plain:
        return Fraction(plain) / percent
    (one,) = numbers(plain)
    return value(one) / percent


def two(item: Item) -> tuple[Parts, Parts]:
    first, second = numbers(" ; ".join(maths(item)))
    return first, second


def signed(item: Item) -> list[tuple[int, Parts]]:
    """Return the terms of a sum with their signs."""
    text = maths(item)[0]
    signs = [1] + [1 if sign == "+" else -1 for sign in re.findall(r" ([+-]) ", text)]
    return list(zip(signs, numbers(text), strict=True))


def boxed(item: Item) -> tuple[int, Fraction, Fraction, int]:
    """Return the sign after the box, the number after it, the result and the denominator."""
    text = maths(item)[0]
    given, result = numbers(text)
    return (1 if "□ +" in text else -1), value(given), value(result), given[2]


# --- Sums and differences.


def work_across(item: Item) -> Fraction:
    terms = signed(item)
    return Fraction(
        abs(sum(s * n for s, (_, n, _) in terms)), abs(sum(s * d for s, (_, _, d) in terms))
    )


def keep_numerators(item: Item) -> Fraction:
    if len(maths(item)) == 2:
        (_, a, b), (_, c, d) = two(item)
        return 1 - Fraction(a + c, lcm(b, d))
    terms = signed(item)
    common = lcm(*(d for _, (_, _, d) in terms))
    return Fraction(sum(s * n for s, (_, n, _) in terms), common)


def add_across(item: Item) -> Fraction:
    if len(maths(item)) == 2:
        (_, a, b), (_, c, d) = two(item)
        return 1 - Fraction(a + c, b + d)
    return work_across(item)


def denominators_multiplied(item: Item) -> Fraction:
    if "□" in maths(item)[0]:
        sign, given, result, d = boxed(item)
        return (result - sign * given) / d
    (s, (_, a, d)), (t, (_, b, e)) = signed(item)
    return Fraction(s * a + t * b, d * e)


def without(item: Item) -> Fraction:
    return sum((s * value(n) for s, n in signed(item)[:-1]), Fraction(0))


def last_added(item: Item) -> Fraction:
    sign, last = signed(item)[-1]
    assert sign < 0
    return without(item) + value(last)


def fraction_beside(item: Item) -> Fraction:
    (_, whole), *taken = signed(item)
    all_of_it = sum((value(one) for _, one in taken), Fraction(0))
    return value(whole) - int(all_of_it) + all_of_it % 1


def printed_sign(item: Item) -> Fraction:
    sign, given, result, _ = boxed(item)
    return abs(result + sign * given)


def pair_of_mixed(item: Item) -> tuple[int, Parts, Parts]:
    """Return what is to be done (1 add, −1 subtract) and the two mixed numbers, in its order."""
    first, second = two(item)
    text = printed(item)
    if "□" in text:
        return (-1 if "□ +" in text else 1), second, first
    minus = " - " in text or "left?" in text
    return (-1 if minus else 1), first, second


def mixed_apart(how: Callable[[int, Parts, Parts], Fraction]) -> Method:
    """Return the method that does the wholes rightly and the fraction parts as told."""

    def method(item: Item) -> Fraction:
        sign, left, right = pair_of_mixed(item)
        return left[0] + sign * right[0] + how(sign, left, right)

    return method


def part(number: Parts) -> Fraction:
    return Fraction(number[1], number[2])


# --- Products and quotients.


def operands(item: Item) -> tuple[Fraction, Fraction]:
    first, second = two(item)
    return value(first), value(second)


def whole_and_fraction(item: Item) -> tuple[int, Parts]:
    first, second = two(item)
    (whole,) = (one[0] for one in (first, second) if one[2] == 1)
    (other,) = (one for one in (first, second) if one[2] > 1)
    return whole, other


def small_improper(item: Item) -> Fraction:
    first, second = two(item)
    made = [Fraction(n[0] + n[1], n[2]) if n[1] else Fraction(n[0]) for n in (first, second)]
    return made[0] * made[1]


def denominators_added(item: Item) -> Fraction:
    (_, a, b), (_, c, d) = two(item)
    return Fraction(a * c, b + d)


def wholes_and_parts(item: Item) -> Fraction:
    first, second = two(item)
    return first[0] * second[0] + part(first) * part(second)


# --- One fraction written in another way.


def equivalent(item: Item) -> tuple[int, int, int]:
    """Return the known fraction with the part that has the box second, and the other part."""
    known, other = maths(item)[0].split(" = ")
    if "□" in known:
        known, other = other, known
    a, b = map(int, known.split("/"))
    top, bottom = other.split("/")
    return (b, a, int(bottom)) if top == "□" else (a, b, int(top))


def by_the_same(sign: int) -> Method:
    def method(item: Item) -> int:
        matched, changed, new = equivalent(item)
        assert (new - matched) * sign > 0
        return changed + new - matched

    return method


def subtracts_a_factor(item: Item) -> Fraction | None:
    """Any common factor may be the one that is taken away."""
    ((_, a, b),) = numbers(maths(item)[0])
    wrong = next(
        s.wrong for s in each_mistake(item) if s.misconception.id.endswith("by-subtracting")
    )
    ((_, c, d),) = numbers(line(wrong))
    taken = a - c
    fits = taken == b - d and taken > 1 and gcd(a, b) % taken == 0
    return Fraction(c, d) if fits else None


def amounts(item: Item, sizes: bool) -> tuple[Fraction, Fraction]:
    """Return the part and the whole of a story, in the smaller unit or as bare numbers."""
    size = {"min": 1, "h": 60, "cm": 1, "m": 100, "g": 1, "kg": 1000, "ml": 1, "l": 1000}
    size |= {"p": 1, "£": 100}
    found = []
    for text in maths(item):
        sign, number, unit = re.fullmatch(r"(£?)(\d+) ?(\w*)", text).groups()  # type: ignore[union-attr]
        found.append(Fraction(int(number) * (size[sign or unit] if sizes else 1)))
    whole, some = found
    return some, whole


def quotient(item: Item) -> tuple[int, int, int]:
    """Return the wholes, the remainder and the denominator of an improper fraction or story."""
    shown = numbers(" ; ".join(maths(item)))
    n, d = shown[0][1:] if len(shown) == 1 else sorted((one[0] for one in shown), reverse=True)
    return n // d, n % d, d


def over_numerator(item: Item) -> Fraction:
    w, r, d = quotient(item)
    return w + Fraction(r, w * d + r)


def swapped(item: Item) -> Fraction:
    w, r, d = quotient(item)
    return r + Fraction(w, d)


# --- Order.


def ordered(key: Callable[[str], Fraction | int]) -> Method:
    def method(item: Item) -> str:
        if "sign goes" in printed(item):
            left, right = maths(item)
            p, q = key(left), key(right)
            return f"{left} {'<' if p < q else '>' if p > q else '='} {right}"
        return ", ".join(sorted(maths(item)[0].split(", "), key=key))

    return method


def pointed(text: str) -> Fraction:
    return Fraction(text.replace("/", ".")) if "/" in text else read(text)


def faced(text: str) -> Fraction:
    return read(text.removesuffix("%"))


# --- Fractions of amounts.


def split(item: Item) -> tuple[list[Fraction], list[Fraction]]:
    """Return the fractions and the amounts of a question, each in printed order."""
    shown = [run for text in maths(item) for run in re.split(r" of | = ", text)]
    fractions = [Fraction(run) for run in shown if "/" in run]
    rest = [read(run) for run in shown if "/" not in run and run != "□"]
    return fractions, rest


def of(method: Callable[..., Fraction]) -> Method:
    def carried_out(item: Item) -> Fraction:
        fractions, (amount,) = split(item)
        return method(amount, *fractions)

    return carried_out


# --- Several operations.


def operated(*rules: tuple[str, Callable[..., Fraction]]) -> Method:
    """Return the method that finds the shape of the question and works on its numbers."""

    def method(item: Item) -> Fraction:
        text = maths(item)[0]
        given = [value(number) for number in numbers(text.replace(")^2", ")"))]
        shape = re.sub(r"\d+/\d+|\d+(?=[ )])|(?<= )\d+$", "n", text.replace(")^2", ")²"))
        return dict(rules)[shape](*given)

    return method


def across(p: Fraction, q: Fraction) -> Fraction:
    return Fraction(p.numerator + q.numerator, p.denominator + q.denominator)


SHAPES = ("n + n × n", "n × (n + n)", "(n + n) ÷ n", "n ÷ (n + n)", "(n - n) × n")
BRACKETS, SQUARE = "(n + n) ÷ (n - n)", "(n)² + n ÷ n"


# --- Fractions, decimals and percentages.


def asked(item: Item) -> str:
    return maths(item)[0]


def bar_as_point(item: Item) -> Fraction:
    return Fraction(asked(item).replace("/", "."))


def after_point(item: Item) -> Fraction:
    return Fraction("0." + asked(item).split("/")[0])


def digits(item: Item) -> int:
    return int(re.sub(r"[^\d]", "", asked(item).removeprefix("0")) or 0)


def repeated(item: Item) -> str:
    """Return the digits under the dots."""
    found = re.findall(r"\d(?=\u0307)", asked(item))
    return "".join(found)


def stops(item: Item) -> Fraction:
    text = asked(item)
    if "/" in text:
        exact = Fraction(text)
        return Fraction(int(exact * 100), 100)
    return Fraction(text.replace("\u0307", ""))


METHODS: dict[tuple[str, str], Method] = {
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


def sample(topic: Topic) -> Iterator[Item]:
    for tier in Tier:
        size = len(topic.spaces[tier])
        chosen = random.Random(f"{topic.id}/{tier}").sample(range(size), min(SAMPLE, size))
        yield from (topic.item(tier, index) for index in chosen)


@pytest.mark.parametrize("topic", TOPICS, ids=lambda topic: topic.id)
def test_a_slip_is_what_its_wrong_method_gives_on_the_printed_question(topic: Topic) -> None:
    name = topic.id.partition(".")[2]
    for item in sample(topic):
        for slip in each_mistake(item):
            method = METHODS[name, slip.misconception.id.partition(".")[2]]
            text = line(slip.wrong)
            found = method(item)
            same = text == found if isinstance(found, str) else read(text) == found
            assert same, (item.address, printed(item), slip.misconception.name, text, found)


def test_every_misconception_of_the_strand_has_its_method() -> None:
    declared = {
        (topic.id.partition(".")[2], misconception.id.partition(".")[2])
        for topic in TOPICS
        for misconception in topic.misconceptions
    }
    assert declared == set(METHODS)


def test_no_question_to_ask_speaks_of_another_operation() -> None:
    # The signs of a question to ask stand in the printed question too; changing the numbers of
    # its example is no change of operation. A sum of equal parts may stand for a product.
    allowed = {"multiply": "+×", "divide": "÷"}
    for topic in TOPICS:
        name = topic.id.partition(".")[2]
        for item in sample(topic):
            text = printed(item).replace("-", "−")
            signs = set(re.findall(r"[+−×÷]", text)) | set(allowed.get(name, ""))
            if "□" in text and set("+−") & signs:
                # An addition with a box is undone by subtracting, and the other way round.
                signs |= set("+−")
            # A story names its operation in words.
            if not re.search(r"[+−×÷]", text):
                continue
            for slip in each_mistake(item):
                said = set(re.findall(r"[+−×÷]", slip.misconception.ask))
                assert said <= signs, (printed(item), slip.misconception.ask)


def test_a_question_about_kept_numerators_shows_a_fraction_of_the_item_and_one_it_is_not() -> None:
    asked = re.compile(r"Is (\d+)/(\d+) worth as much as (\d+)/(\d+)\?.*")
    for topic in TOPICS:
        if topic.id not in ("fractions.add-unlike", "fractions.add-mixed"):
            continue
        for item in sample(topic):
            for slip in each_mistake(item):
                which = slip.misconception
                if which.id == "fractions.keep-numerators" and which not in topic.misconceptions:
                    found = asked.fullmatch(slip.misconception.ask)
                    assert found, slip.misconception.ask
                    n, d, kept, common = map(int, found.groups())
                    assert f"{n}/{d}" in printed(item)
                    assert n == kept
                    assert d != common
                    assert common % d == 0
