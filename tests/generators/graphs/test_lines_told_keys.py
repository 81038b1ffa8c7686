"""Keys of graph questions without a picture, found again from the words by trying values.

Lines are functions in exact fractions, evaluated at points: a key fits where the line that it
names goes through what the words tell, and no other near it does.
"""

import re
from collections.abc import Callable
from fractions import Fraction
from itertools import product

import pytest

from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_topic
from itembank.notation.line import line
from tests.depth import cases, whole
from tests.generators.told_in_words import COUNT, text_of, told

MODULES = ("_gradients_told", "_equations_told", "_crossings_told", "_places_told")
TOPICS = tuple(
    f"graphs.{name}"
    for name in (
        *("gradient", "equation-of-line", "parallel-lines", "simultaneous"),
        *("coordinates", "midpoints"),
    )
)
STEP = cases(9, 3, 3)
"""One question in so many of a tier is counted."""
Line = Callable[[Fraction], Fraction]
_POINT = r"\((-?\d+), (-?\d+)\)"


def points(text: str) -> list[tuple[Fraction, Fraction]]:
    return [(Fraction(x), Fraction(y)) for x, y in re.findall(_POINT, text)]


def lines(text: str) -> list[Line]:
    """Return the lines y = mx + c of a text, as functions."""

    def made(m: Fraction, c: Fraction) -> Line:
        return lambda x: m * x + c

    plain = re.sub(r"\((\d+/\d+)\)", r"\1", text)  # (1/2)x is written with a fraction in brackets
    found = re.findall(r"y = (-?[\d/]*)x(?: ([+-]) (\d+))?", plain)
    return [
        made(
            Fraction({"": 1, "-": -1}.get(m, m)),
            Fraction(int(c or 0) * (-1 if sign == "-" else 1)),
        )
        for m, sign, c in found
    ]


def steep(at: Line) -> Fraction:
    return at(Fraction(1)) - at(Fraction(0))


def gradient_fits(item: Item, text: str, answer: str) -> bool:
    slope = Fraction(answer)
    if found := points(text):
        (a, b), (c, d) = found
        return b + slope * (c - a) == d
    up, down, along = (
        re.search(pattern, text)
        for pattern in (r"up (\d+)|(\d+) up", r"down (\d+)|(\d+) down", r"(\d+) along")
    )
    found = up or down
    assert found
    assert along
    rise = int(found[1] or found[2]) * (1 if up else -1)
    return slope * int(along[1]) == rise


def equation_fits(item: Item, text: str, answer: str) -> bool:
    (key,) = lines(answer)
    through = all(key(x) == y for x, y in points(text))
    if found := re.search(r"gradient (-?\d+)", text):
        return through and steep(key) == int(found[1])
    if given := lines(text):
        return through and steep(key) == steep(given[0])
    return through and len(points(text)) == 2


def parallel_fits(item: Item, text: str, answer: str) -> bool:
    if "k" not in text.replace("parallel", ""):
        return equation_fits(item, text, answer)
    given = lines(text.replace("kx", f"{answer}x"))
    return len(given) == 2 and steep(given[0]) == steep(given[1])


def crossing_fits(item: Item, text: str, answer: str) -> bool:
    ((x, y),) = points(answer)
    facts = [at(x) == y for at in lines(text)]
    facts += [x == int(k) for k in re.findall(r"x = (-?\d+)", text)]
    facts += [y == int(k) for k in re.findall(r"(?<!\+ )y = (-?\d+)(?!\d*x)", text)]
    for p, r in re.findall(r"(\d*)x \+ y = (-?\d+)", text):
        facts.append(int(p or 1) * x + y == int(r))
    assert len(facts) == 2, text
    return all(facts)


def place_fits(item: Item, text: str, answer: str) -> bool:
    ((x, y),) = points(answer)
    given = points(text)
    if "rectangle" in text:
        corners = [*given, (x, y)]
        sides = [sorted({corner[n] for corner in corners}) for n in (0, 1)]
        return sorted(corners) == sorted(product(*sides)) and all(len(s) == 2 for s in sides)
    if "parallelogram" in text:
        (a, b), (c, d), (e, f) = given  # A and C, and B and D, have one middle
        return (a + e, b + f) == (c + x, d + y)
    across = re.search(r"(\d+) squares? (?:to the )?(left|right)", text)
    up = re.search(r"(\d+) squares? (up|down)", text)
    assert across
    assert up
    ((a, b),) = given
    wide = int(across[1]) * (1 if across[2] == "right" else -1)
    return (x - a, y - b) == (wide, int(up[1]) * (1 if up[2] == "up" else -1))


def middle_fits(item: Item, text: str, answer: str) -> bool:
    found = re.findall(r"-?\d+(?:\.5)?", answer)
    x, y = (Fraction(each) for each in found)
    (a, b), (c, d) = points(text)
    if "midpoint of AB" in text:
        return (c - a, d - b) == (x - c, y - d)
    return (x - a, y - b) == (c - x, d - y)


FITS = dict(
    zip(
        TOPICS,
        (
            *(gradient_fits, equation_fits, parallel_fits, crossing_fits),
            *(place_fits, middle_fits),
        ),
        strict=True,
    )
)


@whole
@pytest.mark.parametrize("name", TOPICS)
def test_keys_of_lines_told_fit_their_words_and_wrong_answers_do_not(name):
    items = list(told(name, MODULES))
    assert len(items) >= 1.5 * COUNT
    for item in items:
        text = text_of(item)
        assert FITS[name](item, text, line(item.key)), (text, line(item.key))
        wrong = [line(slip.wrong) for slip in item.slips]
        assert len(wrong) >= 2
        assert not [each for each in wrong if FITS[name](item, text, each)], text


@whole
@pytest.mark.parametrize("name", TOPICS)
def test_each_tier_has_its_share_of_questions_without_a_picture(name):
    topic = find_topic(name)
    for tier, space in topic.spaces.items():
        short = [
            item
            for item in (topic.item(tier, index) for index in range(0, len(space), STEP))
            if item.figure is None and len(text_of(item)) <= 100
        ]
        assert len(short) * STEP >= max(30, 0.15 * len(space)), tier
    assert set(topic.spaces) == set(Tier)
