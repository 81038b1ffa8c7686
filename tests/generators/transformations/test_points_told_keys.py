"""Keys of points moved without a picture, found again from the words with complex numbers.

A point is a complex number: turning is multiplying by i or −i, a mirror is taken to the real axis
and back, and an enlargement multiplies the way from the centre. What was there before is found by
doing it and looking whether it comes out.
"""

import re
from collections.abc import Callable
from fractions import Fraction

import pytest

from itembank.items.item import Tier
from itembank.items.topics.registry import find_topic
from itembank.notation import tree as t
from itembank.notation.line import line
from tests.depth import whole
from tests.generators.told_in_words import COUNT, text_of, told

MODULES = ("_translated_points", "_reflected_points", "_rotated_points", "_enlarged_points")
TOPICS = tuple(f"transformations.{name}" for name in ("translate", "reflect", "rotate", "enlarge"))
Move = Callable[[complex], complex]
_POINT = r"\((-?\d+), (-?\d+)\)"


def points(text: str) -> list[complex]:
    return [complex(int(x), int(y)) for x, y in re.findall(_POINT, text)]


def after(word: str, text: str) -> complex:
    """Return the point that stands after a word; the origin is 0."""
    found = re.search(rf"{word} (the origin|{_POINT})", text)
    assert found, text
    return 0j if found[1] == "the origin" else points(found[1])[0]


def translation(text: str) -> Move | None:
    found = re.search(r"(\d+) units? (right|left) and (\d+) units? (up|down)", text)
    if found is None:
        return None
    across = int(found[1]) * (1 if found[2] == "right" else -1)
    up = int(found[3]) * (1 if found[4] == "up" else -1)
    return lambda p: p + complex(across, up)


def reflection(text: str) -> Move | None:
    found = re.search(r"in the (?:line )?([xy]-axis|[xy] = -?\w+)", text)
    if found is None:
        return None
    mirror = {"x-axis": "y = 0", "y-axis": "x = 0"}.get(found[1], found[1])
    if mirror in ("y = x", "y = -x"):
        way = 1 + 1j if mirror == "y = x" else 1 - 1j
        return lambda p: (p / way).conjugate() * way
    k = int(mirror[4:])
    if mirror[0] == "x":
        return lambda p: -(p - k).conjugate() + k
    return lambda p: (p - k * 1j).conjugate() + k * 1j


def rotation(text: str) -> Move | None:
    found = re.search(r"(90|180)°(?: (anticlockwise|clockwise))? about", text)
    if found is None:
        return None
    centre = after("about", text)
    turn = {"180": -1, "90": 1j if found[2] == "anticlockwise" else -1j}[found[1]]
    return lambda p: (p - centre) * turn + centre


def enlargement(text: str) -> Move | None:
    found = re.search(r"scale factor (\d+)", text)
    if found is None:
        return None
    centre, k = after("centre", text), int(found[1])
    return lambda p: (p - centre) * k + centre


def place(p: complex) -> str:
    x, y = round(p.real, 6), round(p.imag, 6)
    assert (x, y) == (int(x), int(y))
    return f"({int(x)}, {int(y)})"


def answer(text: str) -> str:
    """Return the answer to a question, from its words."""
    if "mirror line" in text:
        p, q = points(text)
        middle = (p + q) / 2
        assert (p - q).real == 0 or (p - q).imag == 0
        at = ("x", middle.real) if (p - q).real else ("y", middle.imag)
        return f"{at[0]} = {Fraction(at[1])}"
    if re.search(r"scale factor\?", text):
        centre = after("centre", text)
        assert centre == 0
        p, q = (at for at in points(text) if at)
        if "is the image of" in text:
            p, q = q, p
        factor = Fraction(int(q.real), int(p.real))
        assert q == p * complex(factor)
        return str(factor)
    if re.search(r"does it take|does .* go", text) and "scale factor" not in text:
        a, b, c = points(text)
        return place(c - (b - a) if "Which point" in text else c + (b - a))
    move = translation(text) or reflection(text) or rotation(text) or enlargement(text)
    assert move is not None, text
    centre = re.search(rf"(?:about|centre) {_POINT}", text)
    (point,) = points(text.replace(centre[0], "") if centre else text)
    if not re.search(r"before\?|was the point|Where is A\?|coordinates of A\?", text):
        return place(move(point))
    (start,) = [
        p
        for p in (complex(x, y) for x in range(-40, 41) for y in range(-40, 41))
        if abs(move(p) - point) < 1e-9
    ]
    return place(start)


def shown(key: t.Node) -> str:
    text = line(key)
    if found := re.fullmatch(r"([xy]) = (-?[\d.]+)", text):
        return f"{found[1]} = {Fraction(found[2])}"
    return text


@whole
@pytest.mark.parametrize("name", TOPICS)
def test_points_told_go_where_complex_numbers_say(name):
    items = list(told(name, MODULES))
    assert {item.tier for item in items} == set(Tier)
    assert len(items) >= 3 * COUNT
    for item in items:
        assert shown(item.key) == answer(text_of(item)), text_of(item)


@whole
@pytest.mark.parametrize("name", TOPICS)
def test_a_wrong_answer_told_is_never_the_right_one(name):
    for item in told(name, MODULES):
        wrong = {shown(slip.wrong) for slip in item.slips}
        assert len(wrong) >= 2
        assert answer(text_of(item)) not in wrong


@pytest.mark.parametrize("name", TOPICS)
def test_each_tier_has_its_share_of_questions_without_a_picture(name):
    """A starter of many questions has room for few pictures."""
    topic, every = find_topic(name), list(told(name, MODULES, 10**4))
    for tier, space in topic.spaces.items():
        items = [item for item in every if item.tier is tier]
        assert len(items) >= max(30, 0.15 * len(space))
        assert all(item.figure is None and len(text_of(item)) <= 105 for item in items)


def test_a_mirror_line_in_the_other_letter_is_a_mistake_that_shows():
    """y = 2 for x = 2 is another line: it is no right answer by another name."""
    (mirrors,) = [
        [item for item in told("transformations.reflect", MODULES) if "mirror" in text_of(item)]
    ]
    assert mirrors
    for item in mirrors:
        letters = {line(slip.wrong)[0] for slip in item.slips}
        assert letters == {"x", "y"}
