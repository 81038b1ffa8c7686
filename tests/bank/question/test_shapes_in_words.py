"""Shapes, points and journeys in words: a question without a model, held to other calculations.

Areas are summed over the corners of a shape that is laid out, points are moved as complex numbers:
neither road to a key takes any of these.
"""
# A prompt stands on one line, however long, as a teacher would read it.
# ruff: noqa: E501

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.bank.question.asking import NeedsPerson
from itembank.notation.tree import NotationError
from itembank.proof.outcome import State
from itembank.wording.tasks.told_then_asked import as_one
from tests.bank.test_guide import judged, with_word

SIZES = st.integers(1, 40)
PLACES = st.integers(-9, 9)
ANGLES = st.integers(1, 80)


def state(prompt, key):
    """Return what becomes of a question: proved, disproved, or left to a person."""
    try:
        return judged({"prompt": prompt, "key": key}).state
    except NeedsPerson:
        return State.NEEDS_PERSON


def only_right(prompt, key, wrong):
    """Tell whether a key is proved, and one that is wrong is disproved."""
    return (state(prompt, key), state(prompt, wrong)) == (State.PROVED, State.DISPROVED)


def area_of(*corners):
    """Return the area within corners that are laid out, by Gauss's formula for a polygon."""
    ends = [*corners[1:], corners[0]]
    return abs(sum(a * d - b * c for (a, b), (c, d) in zip(corners, ends, strict=True))) / 2


def decimal(value):
    """Return a number with at most two decimal places as it is written."""
    return f"{float(value):.2f}".rstrip("0").rstrip(".")


@given(SIZES, SIZES)
def test_areas_are_those_that_are_measured(a, b):
    rectangle = area_of((0, 0), (a, 0), (a, b), (0, b))
    triangle = area_of((0, 0), (a, 0), (7, b))
    slanted = area_of((0, 0), (a, 0), (a + 5, b), (5, b))
    tall = f"{{{a} cm}} and a height of {{{b} cm}}"
    for prompt, area in (
        (f"A rectangle is {{{a} cm}} long and {{{b} cm}} wide. What is its area?", rectangle),
        (f"Work out the area of a rectangle {{{a} cm}} by {{{b} cm}}.", rectangle),
        (f"A triangle has a base of {tall}. Find its area.", triangle),
        (f"A parallelogram has a base of {tall}. Find its area.", slanted),
    ):
        assert only_right(prompt, f"{decimal(area)} cm^2", f"{decimal(area + 1)} cm^2")


@given(SIZES, SIZES, SIZES)
def test_a_trapezium_and_a_cuboid(a, b, c):
    area = area_of((0, 0), (a, 0), (b, c), (0, c))
    prompt = f"Find the area of a trapezium with parallel sides of {{{a} m}} and {{{b} m}} and height {{{c} m}}."
    assert only_right(prompt, f"{decimal(area)} m^2", f"{decimal(2 * area)} m^2")
    solid = f"of a cuboid {{{a} cm}} by {{{b} cm}} by {{{c} cm}}."
    faces = 2 * sum(area_of((0, 0), (p, 0), (p, q), (0, q)) for p, q in ((a, b), (b, c), (c, a)))
    assert only_right(f"Find the volume {solid}", f"{a * b * c} cm^3", f"{a * b * c + 1} cm^3")
    assert only_right(
        f"Find the surface area {solid}", f"{decimal(faces)} cm^2", f"{decimal(faces / 2)} cm^2"
    )


def turned(place, by):
    """Return a point turned about the origin: a complex number times a power of i."""
    return place * 1j ** (by // 90)


@given(PLACES, PLACES, st.sampled_from((90, 180, 270)), st.booleans())
def test_points_are_turned_as_complex_numbers_are(a, b, degrees, clockwise):
    way = "" if degrees == 180 else " clockwise" if clockwise else " anticlockwise"
    prompt = f"What is the image of {{({a}, {b})}} after a rotation of {{{degrees}°}}{way} about the origin?"
    image = turned(complex(a, b), -degrees if clockwise else degrees)
    x, y = round(image.real), round(image.imag)
    assert only_right(prompt, f"({x}, {y})", f"({x + 1}, {y})")


@given(PLACES, PLACES, PLACES)
def test_points_are_reflected_as_far_behind_the_line_as_they_stand_before_it(a, b, k):
    for line, (x, y) in (
        ("the x-axis", (a, -b)),
        ("the {y}-axis", (-a, b)),
        ("the line {y = x}", (b, a)),
        ("the line {y = -x}", (-b, -a)),
        (f"the line {{x = {k}}}", (2 * k - a, b)),
        (f"the line {{y = {k}}}", (a, 2 * k - b)),
    ):
        assert only_right(f"Reflect {{({a}, {b})}} in {line}.", f"({x}, {y})", f"({x}, {y - 1})")


@given(PLACES, PLACES, PLACES, PLACES, st.integers(2, 9))
def test_points_are_moved_and_enlarged_and_halved_between(a, b, c, d, k):
    right, up = abs(c) + 1, abs(d) + 1
    moved = f"Translate {{({a}, {b})}} by {{{right}}} units to the left and {{{up}}} units up."
    assert only_right(moved, f"({a - right}, {b + up})", f"({a + right}, {b + up})")
    larger = f"What is the image of {{({a}, {b})}} after an enlargement with centre the origin and scale factor {{{k}}}?"
    assert only_right(larger, f"({a * k}, {b * k})", f"({a * k}, {b * k + 1})")
    middle = (decimal(Fraction(a + c, 2)), decimal(Fraction(b + d, 2)))
    asked = f"Find the midpoint of {{({a}, {b})}} and {{({c}, {d})}}."
    assert only_right(asked, f"({middle[0]}, {middle[1]})", f"({middle[0]}, {b + d + 90})")
    if a != c:
        slope = Fraction(d - b, c - a)
        line = f"Find the gradient of the line through {{({a}, {b})}} and {{({c}, {d})}}."
        assert only_right(line, str(slope), str(slope + 1))


@given(ANGLES, ANGLES, ANGLES, st.sampled_from((3, 4, 5, 6, 8, 9, 10, 12, 20)))
def test_angles_are_left_of_those_of_the_whole(a, b, c, sides):
    third = f"Two angles of a triangle are {{{a}°}} and {{{b}°}}. What is the third angle?"
    assert only_right(third, f"{180 - a - b}°", f"{360 - a - b}°")
    fourth = f"Three angles of a quadrilateral are {{{a}°}}, {{{b}°}} and {{{c}°}}. Find the missing angle."
    assert only_right(fourth, f"{360 - a - b - c}°", f"{a + b + c}°")
    regular = f"of a regular polygon with {{{sides}}} sides"
    assert only_right(
        f"Find each exterior angle {regular}.", f"{360 // sides}°", f"{361 // sides + 1}°"
    )
    inner = 180 - 360 // sides
    assert only_right(
        f"Find each interior angle {regular}.", f"{inner}°", f"{180 * (sides - 2) + 1}°"
    )


@given(st.integers(1, 12), st.integers(2, 90))
def test_journeys(hours, speed):
    far = hours * speed
    for prompt, key, wrong in (
        (
            f"A car travels {{{far} km}} in {{{hours} h}}. What is its average speed?",
            f"{speed} km/h",
            f"{speed + 1} km/h",
        ),
        (
            f"How long does it take to travel {{{far} km}} at {{{speed} km/h}}?",
            f"{hours} h",
            f"{hours + 1} h",
        ),
        (
            f"How far does a bus travel in {{{hours} h}} at {{{speed} km/h}}?",
            f"{far} km",
            f"{far + 1} km",
        ),
    ):
        assert only_right(prompt, key, wrong)


COLOURS = ("red", "blue", "green", "white")


@given(st.lists(st.integers(1, 9), min_size=2, max_size=4), st.integers(0, 3), st.booleans())
def test_chances_of_a_colour_are_counted(counts, place, without):
    told = [f"{{{count}}} {colour}" for count, colour in zip(counts, COLOURS, strict=False)]
    asked = min(place, len(counts) - 1)
    story = f"A bag holds {', '.join(told[:-1])} and {told[-1]} counters. "
    taken = "A counter is taken at random. What is the probability that it is "
    bag = [colour for count, colour in zip(counts, COLOURS, strict=False) for _ in range(count)]
    meant = sum((colour == COLOURS[asked]) is not without for colour in bag)
    prompt = f"{story}{taken}{'not ' if without else ''}{COLOURS[asked]}?"
    wrong = Fraction(meant, len(bag) + 1)
    assert only_right(prompt, str(Fraction(meant, len(bag))), str(wrong))


@given(st.integers(1, 99), st.sampled_from(("it rains", "a bus is late", "Priya wins")))
def test_something_happens_or_not(hundredths, said):
    contrary = {
        "it rains": "it does not rain",
        "a bus is late": "the bus is not late",
        "Priya wins": "she does not win",
    }[said]
    asked = f"What is the probability that {contrary}?"
    for chance, rest, wrong in (
        (decimal(hundredths / 100), decimal(1 - hundredths / 100), decimal(hundredths / 100 + 1)),
        (f"{hundredths}%", f"{100 - hundredths}%", f"{101 - hundredths}%"),
    ):
        assert only_right(f"The probability that {said} is {{{chance}}}. {asked}", rest, wrong)


UNLIKE = (
    ("A bag holds {3} red and {5} blue counters. A counter is taken at random. What is the probability that it is green?", "3/8"),
    ("A bag holds {3} red and {5} blue counters and some green. A counter is taken at random. What is the probability that it is red?", "3/8"),
    ("A bag holds {3} red and {5} red counters. A counter is taken at random. What is the probability that it is red?", "5/8"),
    ("A bag holds {3} red, {5} red and {2} blue counters. A counter is taken at random. What is the probability that it is red?", "5/7"),
    ("A bag holds {3} red and {5} large counters. A counter is taken at random. What is the probability that it is red?", "3/8"),
    ("A bag holds {3} red pens and {5} blue socks. A pen is taken at random. What is the probability that it is red?", "3/8"),
    ("A bag holds {3} red and {5} blue counters. Two counters are taken at random. What is the probability that it is red?", "3/8"),
    ("A bag holds {3} red and {5} blue counters. A red counter is taken out. A counter is taken at random. What is the probability that it is red?", "3/8"),
    ("A bag holds {3} red and {5} blue counters. A counter is taken at random. What is the probability that it is red or blue?", "3/8"),
    ("The probability that a bus is not late is {0.3}. What is the probability that it is late?", "0.7"),
    ("The probability that a bus is late is {0.3}. What is the probability that it is not early?", "0.7"),
    ("The probability that a bus is late is {0.3}. What is the probability that it is not late twice?", "0.7"),
    ("The probability that a bus is late or full is {0.3}. What is the probability that it is not late or full?", "0.7"),
    ("The probability that a bus is late is {0.3}. What is the probability that the train is not late?", "0.7"),
    ("The probability that a boy wins is {0.3}. What is the probability that the girl does not win?", "0.7"),
    ("The probability that it rains is {0.3}. What is the probability that it does not rain again?", "0.7"),
    ("The probability that it rains is {1.3}. What is the probability that it does not rain?", "-0.3"),
    ("The probability that both win is {0.3}. What is the probability that both do not win?", "0.7"),
    ("The probability that all buses are late is {0.3}. What is the probability that all buses are not late?", "0.7"),
    ("The probability that someone wins is {0.3}. What is the probability that someone does not win?", "0.7"),
    ("The point {(2, 3)} is the image of a point that is reflected in the x-axis. Where is the point?", "(2, -3)"),
    ("The point {(2, 3)} is reflected in the x-axis twice. Where is its image?", "(2, -3)"),
    ("Find the area of a triangle with base {6 cm} and slant height {4 cm}.", "12 cm^2"),
    ("A triangle has sides of {6 cm} and {4 cm}. Find its area.", "12 cm^2"),
    ("An isosceles triangle has a base of {6 cm} and a height of {4 cm}. Find its perimeter.", "20 cm"),
    ("A parallelogram has sides of {6 cm} and {4 cm}. What is its area?", "24 cm^2"),
    ("Two rectangles are {6 cm} long and {4 cm} wide. What is their area?", "24 cm^2"),
    ("A rectangle is {6 cm} long and {4 cm} wide. What is the area of half of it?", "24 cm^2"),
    ("A rectangle is {6 cm} long and {4 cm} wider. What is its area?", "24 cm^2"),
    ("A rectangle is {6 cm} long and {4 cm} wide. It is cut in two. What is its area?", "24 cm^2"),
    ("A rectangle was {6 cm} long and {4 cm} wide. What is its area?", "24 cm^2"),
    ("A rectangle has a perimeter of {6 cm} and a width of {4 cm}. What is its area?", "24 cm^2"),
    ("A square has a diagonal of {6 cm}. What is its area?", "36 cm^2"),
    ("A semicircle has a radius of {5 cm}. Find its area in terms of π.", "25π cm^2"),
    ("A circle has a circumference of {5 cm}. Find its area in terms of π.", "25π cm^2"),
    ("A cube without a lid has edges of {3 cm}. Find its surface area.", "54 cm^2"),
    ("Two exterior angles of a triangle are {50°} and {60°}. What is the third angle?", "70°"),
    ("Two angles of a triangle are {50°} and {60°}. What is the third exterior angle?", "70°"),
    ("What is the sum of the exterior angles of a hexagon?", "720°"),
    ("Find the size of each interior angle of an irregular octagon.", "135°"),
    ("A right-angled triangle has sides of {3 cm} and {5 cm}. Find its hypotenuse.", "√34 cm"),
    ("What is the image of {(2, 3)} after two reflections in the x-axis?", "(2, -3)"),
    ("What is the image of {(2, 3)} after a reflection in the x-axis and then in the y-axis?", "(2, -3)"),
    ("{(2, 3)} is the image of a point after a reflection in the line {x = 1}. Find the point.", "(0, 4)"),
    ("What is the image of {(2, 3)} after a rotation of {90°} about the origin?", "(-3, 2)"),
    ("What is the image of {(2, 3)} after a rotation of {90°} clockwise about {(1, 0)}?", "(3, -2)"),
    ("What is the image of {(2, 3)} after an enlargement with centre {(1, 1)} and scale factor {2}?", "(4, 6)"),
    ("Find the midpoint of {(2, 3)}, {(6, 9)} and {(4, 3)}.", "(4, 6)"),
    ("Find the gradient of the line perpendicular to the line through {(2, 3)} and {(6, 11)}.", "2"),
    ("A car travels {150 km} in {2 h}, waits and goes on. What is its average speed?", "75 km/h"),
    ("A car travels {150 km} in {2 h} and back in {3 h}. What is its average speed?", "75 km/h"),
    ("A boat travels {30 km} in {2 h} against the current. What is its speed?", "15 km/h"),
    ("{30%} of a number is {12}. What is {50%} of the number?", "40"),
    ("{30%} of a number is {12} less than the number. What is the number?", "40"),
    ("{30%} of a number is {12}. What is the next number?", "40"),
)  # fmt: skip


@pytest.mark.parametrize(("prompt", "key"), UNLIKE, ids=[prompt for prompt, _ in UNLIKE])
def test_words_that_ask_something_else_are_not_read_as_these(prompt, key):
    assert state(prompt, key) is not State.PROVED


WORDS = ("slant", "half of", "isosceles", "outer", "curved", "roughly", "exterior", "diagonal")


@pytest.mark.parametrize("word", WORDS)
def test_no_word_put_into_a_story_of_a_shape_is_passed_over(word):
    prompt = "A triangle has a base of {6 cm} and a height of {4 cm}. Find its area."
    for changed in with_word(prompt, word):
        try:
            assert state(changed, "12 cm^2") is not State.PROVED, changed
        except NotationError:
            continue


def test_two_sentences_are_one_only_where_the_second_asks_of_the_first():
    told = "A cube has edges of \ue000."
    assert (
        as_one(f"{told} Find its volume.") == "Find the volume of a cube that has edges of \ue000."
    )
    for asked in ("Find its mass.", "It is red. Find its volume.", "Find the volume of a box."):
        assert as_one(f"{told} {asked}") == f"{told} {asked}"
