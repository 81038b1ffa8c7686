"""Wrong methods on fractions, each carried out on the printed line as its name says.

They read only what is printed, in ways of their own, and share nothing with the generators.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from fractions import Fraction
from math import gcd, lcm

from itembank.items.item import Item
from itembank.notation import line
from tests.generators.mistakes import each_mistake

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
