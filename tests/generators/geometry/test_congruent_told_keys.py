"""Congruent triangles in words: keys found again by z3 from what is printed, and by it alone.

Every side and angle is an unknown. Equal parts are those at the same places of the two names, or,
for a mistake, those that the alphabet pairs. What is asked has to come out, and nothing else may.
"""

from __future__ import annotations

import re
from fractions import Fraction
from functools import cache
from itertools import combinations

import pytest
import z3

from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_topic
from itembank.notation import line
from tests.depth import some, whole
from tests.generators.in_brief.brief_reader import LONGEST, key_of
from tests.generators.told_in_words import text_of
from tests.other_kinds import made_by

TOPIC = "geometry.congruent-triangles"
NAMES = r"Triangles ([A-Z]{3}) and ([A-Z]{3}) are congruent in this order\. "
SIDES = re.compile(
    NAMES + r"([A-Z]{2}) = (\d+) cm and ([A-Z]{2}) = (\d+) cm\. What is ([A-Z]{2}) \+ ([A-Z]{2})\?"
)
ANGLES = re.compile(
    NAMES + r"Angle ([A-Z]) = (\d+)°, angle ([A-Z]) = (\d+)°\. Find angle ([A-Z])\."
)
LETTER = re.compile(
    NAMES + r"Angles ([A-Z]), ([A-Z]) and ([A-Z]) are (.+), (.+) and (.+)\. What is x\?"
)
AROUND = re.compile(
    r"A triangle has sides of (\d+) cm, (\d+) cm and (\d+) cm\. "
    r"What is the perimeter of a congruent triangle\?"
)
THIRD = re.compile(
    r"A triangle of perimeter (\d+) cm is congruent to one with sides of (\d+) cm and (\d+) cm\. "
    r"Find the third side\."
)


def part(name: str) -> z3.ArithRef:
    return z3.Real("".join(sorted(name)))


def congruent(first: str, second: str) -> list[z3.BoolRef]:
    """Return that parts at the same places are equal, and that angles come to 180°."""
    at = [*((k,) for k in range(3)), *combinations(range(3), 2)]
    equal = [part("".join(first[k] for k in p)) == part("".join(second[k] for k in p)) for p in at]
    return [*equal, *(sum(part(corner) for corner in name) == 180 for name in (first, second))]


def only(asked: z3.ArithRef, facts: list[z3.BoolRef]) -> Fraction:
    """Return the one value that something can have."""
    solver = z3.Solver()
    solver.add(facts)
    assert solver.check() == z3.sat
    value = solver.model().eval(asked, model_completion=True)
    solver.add(asked != value)
    assert solver.check() == z3.unsat
    return value.as_fraction()


def pairing(first: str, second: str, alphabet: bool) -> list[z3.BoolRef]:
    names = ("".join(sorted(first)), "".join(sorted(second))) if alphabet else (first, second)
    return congruent(*names)


def in_x(said: str) -> z3.ArithRef:
    number, letter = re.fullmatch(r"(\d*)(x?)°", said).groups()
    return int(number or 1) * z3.Real("x") if letter else z3.RealVal(number)


def solved(text: str, alphabet: bool = False) -> Fraction:
    """Return the answer, the corners paired as told or by the alphabet."""
    if found := SIDES.fullmatch(text):
        first, second, near, a, far, b, *asked = found.groups()
        told = [part(near) == int(a), part(far) == int(b)]
        return only(sum(map(part, asked)), [*pairing(first, second, alphabet), *told])
    if found := ANGLES.fullmatch(text):
        first, second, near, a, far, b, asked = found.groups()
        told = [part(near) == int(a), part(far) == int(b)]
        return only(part(asked), [*pairing(first, second, alphabet), *told])
    if found := LETTER.fullmatch(text):
        first, second, *rest = found.groups()
        told = [part(name) == in_x(size) for name, size in zip(rest[:3], rest[3:], strict=True)]
        return only(z3.Real("x"), [*pairing(first, second, alphabet), *told])
    if found := AROUND.fullmatch(text):
        mine, theirs = (z3.Reals(f"{who}1 {who}2 {who}3") for who in ("mine", "theirs"))
        told = [side == int(size) for side, size in zip(mine, found.groups(), strict=True)]
        same = [side == partner for side, partner in zip(mine, theirs, strict=True)]
        return only(sum(theirs), [*told, *same])
    around, a, b = map(int, THIRD.fullmatch(text).groups())
    return only(z3.Real("third"), [a + b + z3.Real("third") == around])


@cache
def told_items(tier: Tier) -> list[Item]:
    topic = find_topic(TOPIC)
    space = topic.spaces[tier]
    there = made_by(space, lambda make: make.__name__ != "stated_answer")
    return [topic.item(tier, index) for index in there]


@whole
@pytest.mark.parametrize("tier", Tier)
def test_every_key_is_found_again_from_the_words(tier: Tier) -> None:
    for item in some(told_items(tier), 40):
        assert item.figure is None
        assert solved(text_of(item)) == key_of(item), item.address


@pytest.mark.parametrize("tier", Tier)
def test_triangles_can_be_made(tier: Tier) -> None:
    for item in told_items(tier):
        text = text_of(item)
        if found := AROUND.fullmatch(text) or THIRD.fullmatch(text):
            *_, a, b = sides = [int(size) for size in found.groups()]
            if THIRD.fullmatch(text):
                sides = [a, b, int(key_of(item))]
            assert 2 * max(sides) < sum(sides), item.address
        elif found := SIDES.fullmatch(text):
            assert int(found[4]) != int(found[6])
        else:
            sizes = solved_angles(text, key_of(item))
            assert min(sizes) > 0
            assert sum(sizes) == 180


def solved_angles(text: str, key: Fraction) -> list[Fraction]:
    if found := ANGLES.fullmatch(text):
        return [Fraction(found[4]), Fraction(found[6]), key]
    sizes = LETTER.fullmatch(text).groups()[5:]
    return [
        Fraction(size[:-2] or 1) * key if "x" in size else Fraction(size[:-1]) for size in sizes
    ]


@pytest.mark.parametrize("tier", Tier)
def test_short_questions_are_short_unlike_and_enough(tier: Tier) -> None:
    texts = [text_of(item) for item in told_items(tier)]
    assert len({*texts}) == len(texts)
    assert max(map(len, texts)) <= LONGEST
    assert len(texts) >= 0.14 * len(find_topic(TOPIC).spaces[tier])


@whole
@pytest.mark.parametrize("tier", Tier)
def test_mistakes_lead_where_they_are_said_to(tier: Tier) -> None:
    topic = find_topic(TOPIC)
    for item in some(told_items(tier), 40):
        text = text_of(item)
        numbers = [Fraction(n) for n in re.findall(r"\d+", text)]
        values = topic.spaces[tier][int(item.address.rpartition("/")[2])]
        for slip in topic.draft(tier, *values).slips:
            wrong = Fraction(re.search(r"[\d./]+", line(slip.wrong))[0])
            match slip.misconception.id.removeprefix("geometry."):
                case "letters-in-order" if ANGLES.fullmatch(text):
                    # The alphabet makes the angle that is told the partner of the one asked for.
                    first, second, *_, told, size, asked = ANGLES.fullmatch(text).groups()
                    assert sorted(second).index(told) == sorted(first).index(asked)
                    assert wrong == int(size)
                case "letters-in-order":
                    assert wrong == solved(text, alphabet=True) != key_of(item)
                case "partner-alone":
                    near, a, far, b, added, _ = SIDES.fullmatch(text).groups()[2:]
                    assert wrong == key_of(item) - {near: int(a), far: int(b)}[added]
                case "stops-at-partner":
                    assert wrong == int(ANGLES.fullmatch(text)[6])
                case "congruent-adds-and-stops" | "congruent-sides-added-only":
                    assert wrong == sum(numbers[-2:])
                case "congruent-one-side-taken":
                    assert wrong in {numbers[0] - side for side in numbers[1:]}
                case "congruent-both-together":
                    assert wrong == 2 * sum(numbers)
                case "congruent-side-left-out":
                    assert wrong in {sum(numbers) - side for side in numbers}
                case "angle-numbers-left-out":
                    assert wrong * (180 - unlettered(text)) == key_of(item) * 180
                case "angle-numbers-added":
                    many = (180 - unlettered(text)) / key_of(item)
                    assert wrong * many == 180 + unlettered(text)
                case name:
                    assert name == "angle-for-letter"
                    assert wrong in solved_angles(text, key_of(item))


def unlettered(text: str) -> Fraction:
    [size] = [size for size in LETTER.fullmatch(text).groups()[5:] if "x" not in size]
    return Fraction(size[:-1])
