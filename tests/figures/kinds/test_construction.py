"""Constructions: Euclid's own, done again with compasses from the words alone; planted lies."""

from __future__ import annotations

from fractions import Fraction

import pytest

from itembank.figures.figure import FigureError, Reading, drawn, fault, kind_of, read, words
from itembank.figures.kinds.construction.construction import Construction
from itembank.items.asks.of_figure import as_find, of_figure
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.parse import parse
from itembank.notation.value import exact
from itembank.proof.measured.measure import as_measured, measured
from tests.figures.compasses import measure, placed
from tests.figures.every_figure import examples
from tests.figures.held import LIED, TOLD, holds
from tests.figures.lies import found_out, moved, relabelled, swapped, without

RIGHT = "perpendicular at a point on a line"
FROM = "perpendicular from a point to a line"


def given(**sizes: str) -> tuple[tuple[str, t.Node], ...]:
    return tuple((name.replace("_", " "), parse(size)) for name, size in sizes.items())


@pytest.mark.parametrize(
    ("figure", "name", "degrees"),
    [
        # Euclid, Elements, book I (from memory): an equilateral triangle (1), its angles two
        # thirds of a right angle (32); an angle bisected (9); a line at right angles to another
        # from a point on it (11), and to it from a point that is not (12). Bisecting gives the
        # angles of 30°, 15° and 22½° that are common in classrooms (common practice).
        (Construction("equilateral triangle", "ABC"), "ABC", 60),
        (Construction("equilateral triangle", "ABCD", halved=1), "ABD", 30),
        (Construction("equilateral triangle", "ABCDE", halved=2), "EBC", 15),
        (Construction("equilateral triangle", "ABCDE", halved=2), "ABE", 45),
        (Construction(RIGHT, "ABC"), "CBA", 90),
        (Construction(RIGHT, "ABCD", halved=1), "DBC", 45),
        (Construction(RIGHT, "ABCDE", halved=2), "DBE", Fraction(45, 2)),
        (Construction(FROM, "ABPQN"), "PNA", 90),
        (Construction("perpendicular bisector", "ABCDM"), "AMC", 90),
    ],
)
def test_the_constructions_of_euclid(figure, name, degrees):
    reading = Reading("angle", (name,))
    assert exact(read(figure, reading)) == degrees
    if reading in kind_of(figure).readings(figure):
        assert exact(measured(figure, reading)) == degrees
    assert measure(placed(words(figure), 50), name) == pytest.approx(float(degrees))


@holds(TOLD, "construction")
def test_the_words_alone_tell_every_angle_that_nothing_given_settles():
    """A third engine: circles are crossed in ordinary numbers, as the words say."""
    told = 0
    for figure in examples("construction", 80, seed=4):
        for reading in kind_of(figure).readings(figure):
            if reading.name == "angle" and not figure.given:
                here = measure(placed(words(figure), 47), reading.of[0])
                assert here == pytest.approx(float(exact(read(figure, reading)))), figure
                told += 1
    assert told > 40


LINE = Construction("perpendicular bisector", "ABCDM", given(AB="14 cm"))
ANGLE = Construction("angle bisector", "ABCD", given(angle_ABC="70°"), 1, 70)
LETTER = Construction(
    "angle bisector", "ABCD", given(angle_ABD="(3x + 5)°", angle_ABC="70°"), 1, 70
)
FOOT = Construction(FROM, "ABPQN")
TRIANGLE = Construction("equilateral triangle", "ABC")
HALF, NONE = Fraction(1, 2), Fraction(0)

LIES = {
    "a length is changed": (LINE, lambda: relabelled(LINE, "given", t.Label("14 cm"))),
    "the line that is drawn lies aslant": (LINE, lambda: moved(LINE, "drawn", HALF, NONE)),
    "the ends of a line have each other's letters": (LINE, lambda: swapped(LINE, "name", 0, 4)),
    "a point is missing": (LINE, lambda: without(LINE, "point", 2)),
    "an angle that is given is not so drawn": (
        ANGLE,
        lambda: relabelled(ANGLE, "given", t.equals(t.Label("angle ABC"), parse("72°"))),
    ),
    "the bisector is moved": (ANGLE, lambda: moved(ANGLE, "drawn", NONE, HALF)),
    "an arc of the angle has another centre": (ANGLE, lambda: moved(ANGLE, "arc", HALF, HALF, 1)),
    "an expression is changed": (
        LETTER,
        lambda: relabelled(LETTER, "given", t.equals(t.Label("angle ABD"), parse("(3x + 6)°"))),
    ),
    "the foot is moved": (FOOT, lambda: moved(FOOT, "point", HALF, NONE, 4)),
    "an arc round a crossing is missing": (FOOT, lambda: moved(FOOT, "arc", NONE, HALF, 1)),
    "a side is missing": (TRIANGLE, lambda: without(TRIANGLE, "drawn", 1)),
}


@pytest.mark.parametrize("lie", LIES)
@holds(LIED, "construction")
def test_a_drawing_that_lies_is_found_out(lie):
    figure, false = LIES[lie]
    assert not fault(figure)
    assert found_out(figure, false())


@pytest.mark.parametrize("figure", dict.fromkeys(figure for figure, _ in LIES.values()), ids=str)
def test_a_true_drawing_is_not_found_out(figure):
    assert not found_out(figure, drawn(figure))


@pytest.mark.parametrize(
    ("figure", "words_", "value"),
    [
        (LINE, "Work out the length of AM.", "7 cm"),
        (LINE, "What is the length of BM?", "7 cm"),
        (LINE, "Every point on line DC is as far from B as from which point?", '"A"'),
        (ANGLE, "Find the size of angle DBC.", "35°"),
        (ANGLE, "Every point on line BD is as far from line BC as from which line?", '"BA"'),
        (FOOT, "Which is the shortest distance from P to line AB: PA, PN or PQ?", '"PN"'),
        (
            FOOT,
            "Which construction is shown: perpendicular bisector, perpendicular from a point to a "
            "line or angle bisector?",
            f'"{FROM}"',
        ),
    ],
)
def test_ways_to_ask(figure, words_, value):
    ask = of_figure(figure, (words_,))
    (letter, reading), *more = ask.readings
    assert (ask.target, more) == (t.Sym(letter), [])
    assert line(read(figure, reading)) == line(measured(figure, reading)) == value


def test_a_letter_that_is_given_is_settled_by_both_roads():
    ask = of_figure(LETTER, ("Work out the value of ", t.Sym("x"), "."))
    for roads in (as_find(ask), as_measured(ask)):
        (relation,) = roads.relations
        found = {line(relation.first), line(relation.rest[0][1])}
        assert found in ({"x", "10"}, {"(3 × x + 5)°", "35°"}, {"(3x + 5)°", "35°"}), found


@pytest.mark.parametrize(
    ("figure", "words_"),
    [
        (LINE, "Work out the length of AC."),  # nothing given settles it
        (LINE, "Work out the length of AX."),
        (LINE, "Every point on line AB is as far from A as from which point?"),
        (LINE, "Every point on line CD is as far from M as from which point?"),
        (LINE, "Every point on line CD is as far from A as from which line?"),
        (FOOT, "Which is the shortest distance from Q to line AB: PA, PN or PQ?"),
        (FOOT, "Which is the shortest distance from P to line AB: PA, PB or PQ?"),
        (FOOT, "Which is the shortest distance from P to line AB: PA, PX or PN?"),
        (FOOT, "Which construction is shown: angle bisector or equilateral triangle?"),
        (FOOT, "Which construction is shown: line of symmetry or angle bisector?"),
    ],
)
def test_what_it_does_not_show_is_refused(figure, words_):
    with pytest.raises(FigureError):
        of_figure(figure, (words_,))


@pytest.mark.parametrize(
    ("figure", "said"),
    [
        (Construction("angle bisector", "ABC"), "bisected 1 to 2 times"),
        (Construction("angle bisector", "ABCC", halved=1), "4 letters, each another"),
        (Construction("equilateral triangle", "ABc"), "capital letters"),
        (Construction("perpendicular bisector", "ABCDM", given(AX="3 cm")), "no AX"),
        (Construction("perpendicular bisector", "ABCDM", given(AB="3 kg")), "is no length"),
        (
            Construction("perpendicular bisector", "ABCDM", given(AB="14 cm", AM="8 cm")),
            "cannot all be true",
        ),
        (Construction("angle bisector", "ABCD", given(angle_ABD="30°"), 1, 70), "drawn with 70°"),
        (Construction("angle bisector", "ABCD", given(angle_ABD="x°"), 1, 70), "does not settle x"),
        (Construction("perpendicular bisector", "ABCDM", given(AB="14 cm", BA="14 cm")), "twice"),
        (Construction(RIGHT, "ABC", given(angle_ABC="80°")), "cannot all be true"),
    ],
)
def test_what_contradicts_itself_is_refused(figure, said):
    assert said in fault(figure)
