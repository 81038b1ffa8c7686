"""Two triangles: told in words, measured again, lies found out, questions read whole or refused."""

from __future__ import annotations

import dataclasses
import itertools
import math
import re

import pytest

from itembank.figures.drawing import Arc, Text
from itembank.figures.figure import FigureError, Reading, drawn, fault, kind_of, read, words
from itembank.figures.kinds.plane.congruence import Told, condition
from itembank.figures.kinds.plane.polygon import Polygon
from itembank.figures.kinds.plane.two_triangles import TwoTriangles
from itembank.items.asks.of_figure import as_find, of_figure
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.parse import parse
from itembank.notation.value import NotExact, exact
from itembank.proof.measured.measure import disagreement, measuring
from tests.depth import cases
from tests.figures.every_figure import examples
from tests.figures.held import COUNT, LIED, MEASURED, TOLD, holds
from tests.figures.lies import relabelled, swapped

Rebuilt = dict[str, float]
"""What is told of a triangle: sides by two letters in order, angles by one, in degrees."""


def rebuilt(said: str) -> tuple[Rebuilt, Rebuilt]:
    """Return what the words tell of each triangle."""
    both = re.findall(
        r"A triangle has the corners (\w), (\w) and (\w)\.(.*?)(?=A triangle|$)", said
    )
    assert len(both) == 2
    found = []
    for *_, rest in both:
        told = {
            "".join(sorted(side)): float(number.replace(" point ", "."))
            for side, number in re.findall(r"Side (\w\w) is (\d+(?: point \d+)?)\.", rest)
        }
        told |= {c: float(n) for c, n in re.findall(r"The angle at (\w) is (\d+)", rest)}
        told |= dict.fromkeys(re.findall(r"The angle at (\w) is a right angle", rest), 90.0)
        found.append(told)
    return found[0], found[1]


def letters(told: Rebuilt, said: str, which: int) -> str:
    return "".join(re.findall(r"the corners (\w), (\w) and (\w)", said)[which])


def triangles(told: Rebuilt, corners: str) -> list[tuple[float, ...]] | None:
    """Return every triangle with what is told, as sides across from its corners; None if endless.

    A third engine: the place of the third corner is looked for on circles and rays.
    """
    a, b, c = corners
    angles = [told.get(corner) for corner in corners]
    if angles.count(None) == 1:
        at = angles.index(None)
        angles[at] = 180 - sum(angle for angle in angles if angle is not None)
    sides = [told.get("".join(sorted(pair))) for pair in (b + c, a + c, a + b)]
    known = [k for k in range(3) if sides[k] is not None]
    if len(known) == 3:
        return [tuple(sides)]
    if len(known) == 2:
        i, j = known
        (k,) = {0, 1, 2} - {i, j}
        if angles[k] is not None:
            spot = complex(0, 0) + sides[j] * complex(
                math.cos(math.radians(angles[k])), math.sin(math.radians(angles[k]))
            )
            sides[k] = abs(spot - sides[i])
            return [tuple(sides)]
        for across, other in ((i, j), (j, i)):
            if angles[across] is not None:
                turn = math.radians(angles[across])
                spot = sides[other] * complex(math.cos(turn), math.sin(turn))
                reach = sides[across] ** 2 - spot.imag**2
                out = []
                for way in (1, -1):
                    far = spot.real + way * math.sqrt(max(reach, 0))
                    if far > 1e-9 and not (way == -1 and reach < 1e-9):
                        made = list(sides)
                        made[k] = far
                        out.append(tuple(made))
                return out
        return None
    if len(known) == 1 and None not in angles:
        (k,) = known
        worth = sides[k] / math.sin(math.radians(angles[k]))
        return [tuple(worth * math.sin(math.radians(angle)) for angle in angles)]
    return None


def certain(figure: TwoTriangles) -> bool:
    """Tell whether the two are congruent for certain, from the words alone."""
    said = words(figure)
    both = [triangles(told, letters(told, said, n)) for n, told in enumerate(rebuilt(said))]
    if any(each is None or len(each) != 1 for each in both):
        return False
    mine, theirs = (sorted(each[0]) for each in both)
    return all(math.isclose(x, y, rel_tol=1e-9) for x, y in zip(mine, theirs, strict=True))


@holds(TOLD, "two triangles")
def test_the_words_are_enough_to_answer() -> None:
    met = set()
    for figure in examples("two triangles", 60, seed=2):
        try:
            found = read(figure, Reading("condition"))
        except FigureError:
            continue
        first, second = rebuilt(words(figure))
        if len(first) == len(second) == 3:
            assert certain(figure) == (found != t.Label("none")), words(figure)
            met.add(found.text)
    assert {"SSS", "SAS", "ASA", "none"} <= met


@holds(MEASURED, "two triangles")
def test_labels_stand_where_they_are_told() -> None:
    """Each label is nearest to its own side or in its own corner, by floating-point geometry."""
    for figure in examples("two triangles", cases(16, COUNT, COUNT), seed=3):
        assert not disagreement(figure)
        made = drawn(figure)
        outlines = [[complex(*map(float, p)) for p in a.points] for a in made.of("polygon")]
        corners = {
            str(mark.content): min(
                (p for outline in outlines for p in outline),
                key=lambda p, mark=mark: abs(p - complex(*map(float, mark.at))),
            )
            for mark in made.of("corner")
            if isinstance(mark, Text)
        }
        assert len({*corners.values()}) == 6
        for told in rebuilt(words(figure)):
            for name, size in told.items():
                if len(name) == 2:
                    middle = (corners[name[0]] + corners[name[1]]) / 2
                    near = min(
                        made.of("side label"),
                        key=lambda m, middle=middle: abs(complex(*map(float, m.at)) - middle),
                    )
                    assert float(exact(near.content)) == size
                elif size != 90:
                    arcs = [a for a in made.of("angle") if isinstance(a, Arc)]
                    assert any(complex(*map(float, a.centre)) == corners[name] for a in arcs)


def triangle(names: str, *told: str, right: str = "", accurate: bool = False) -> Polygon:
    """Return a triangle of fixed shape, told by ‘AB 7’ and ‘A 40°’."""
    spots = ((0, 0), (0, 8), (5, 3)) if not right else ((0, 8), (5, 0), (0, 0))
    rows = [each.split(" ") for each in told]
    return Polygon(
        tuple((t.Int(x), t.Int(y)) for x, y in spots),
        names,
        lettered=True,
        sides=tuple((name, parse(label)) for name, label in rows if len(name) == 2),
        angles=tuple((name, parse(label)) for name, label in rows if len(name) == 1),
        right=right,
        accurate=accurate,
    )


PAIR = TwoTriangles(
    triangle("ABC", "BC 7", "CA 5.8", "C 77°", "AB 8"), triangle("PQR", "QR 7", "RP 5.8", "R 77°")
)


@pytest.mark.parametrize(
    ("question", "answer"),
    [
        ("Which condition shows that the triangles are congruent: SSS, SAS, ASA, RHS or none?",
         "SAS"),
        ("Work out the length of PQ.", "8"),
        ("Find the size of angle R.", "77°"),
        ("Find the size of angle P.", None),
        ("Work out the length of PS.", None),
        ("Which condition shows that the triangles are not congruent: SSS, SAS, ASA, RHS or none?",
         None),
        ("Which condition shows that the triangles are congruent: SSS, SAS or ASA?", None),
        ("Which condition shows that the triangles are similar: SSS, SAS, ASA, RHS or none?", None),
        ("What is the area of triangle ABC?", None),
    ],
)  # fmt: skip
def test_a_question_is_read_whole_or_refused(question: str, answer: str | None) -> None:
    if answer is None:
        with pytest.raises(FigureError):
            as_find(of_figure(PAIR, (question,)))
        return
    target = as_find(of_figure(PAIR, (question,))).target
    assert (target.text if isinstance(target, t.Label) else line(target)) == answer


@holds(LIED, "two triangles")
@pytest.mark.parametrize(
    "made",
    [
        lambda: relabelled(PAIR, "side label", t.Int(9), 0),
        lambda: relabelled(PAIR, "angle label", parse("50°"), 1),
        lambda: swapped(PAIR, "corner", 0, 1),
        lambda: swapped(PAIR, "side label", 0, 2),
    ],
)
def test_planted_lies_are_found_out(made) -> None:
    false, wrong = made(), 0
    for reading in kind_of(PAIR).readings(PAIR):
        try:
            wrong += line(measuring(PAIR).measure(false, reading)) != line(read(PAIR, reading))
        except NotExact:
            wrong += 1
    assert wrong


@pytest.mark.parametrize(
    ("first", "second", "said"),
    [
        (triangle("ABC", "AB 8"), triangle("CDE", "CD 8"), "a letter in common"),
        (triangle("ABC", "AB 8", accurate=True), triangle("PQR"), "not drawn accurately"),
        (triangle("ABC", "AB x"), triangle("PQR", "PQ 8"), "are to be numbers"),
        (triangle("ABC", "AB 8cm"), triangle("PQR", "PQ 8mm"), "in one unit"),
        (triangle("ABC", "AB 8", "BC 9"), triangle("PQR", "PQ 8"), "of the first one"),
    ],
)
def test_what_cannot_be_drawn_is_said_plainly(first: Polygon, second: Polygon, said: str) -> None:
    assert said in fault(TwoTriangles(first, second))


def test_which_triangle_stands_first_makes_no_difference() -> None:
    for figure in examples("two triangles", 60, seed=4):
        turned = dataclasses.replace(figure, first=figure.second, second=figure.first)
        found = []
        for each in (figure, turned):
            try:
                found.append(read(each, Reading("condition")).text)
            except FigureError:
                found.append("")
        assert found[0] == found[1]


def test_a_pair_that_swings_is_never_congruent_for_certain() -> None:
    """Two sides and an angle across from the shorter: no letters, turned any way, say SAS."""
    for order in itertools.permutations(range(3)):
        short, long, third = order
        first = Told({short: 6, long: 8}, {short: 40})
        second = Told({0: 6, 1: 8}, {0: 40})
        assert condition(first, second) == "none"
        assert third not in first.sides


def test_a_longer_side_across_settles_it_without_a_name() -> None:
    told = Told(
        {0: 8, 1: 6}, {0: 40}
    )  # only one triangle is like that, and none of the four says so
    assert condition(told, told) == ""
