"""A third engine over trees, machines and balances: what stands on a branch, in a box, on a pan.

Each label is put onto its branch, into its box or onto its pan by rational coordinates alone, and
what the figure says is worked out from there by python-flint (`fmpq`).
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import accumulate

from flint import fmpq

from itembank.figures.drawing import Area, Point, Text
from itembank.figures.figure import Reading, drawn, kind_of
from itembank.notation import tree as t
from itembank.proof.exact.reckoning.elimination import answer
from tests.figures.every_figure import examples
from tests.figures.held import COUNT, MEASURED, holds
from tests.figures.third_engine.test_lines_and_charts import texts, value_of, worth
from tests.figures.third_engine.test_measures import q
from tests.figures.third_engine.test_tables import points_of


@holds(MEASURED, "tree diagram")
def test_tree_diagrams() -> None:
    found_missing = 0
    for figure in examples("tree diagram", COUNT, 3):
        picture = drawn(figure)
        sticks = [points_of(mark) for mark in picture.of("branch")]
        ends = {str(mark.at.y): str(mark.content) for mark in texts(picture, "outcome")}
        assert len(ends) <= len(sticks)
        chances: dict[tuple[Point, ...], fmpq | None] = dict.fromkeys(sticks)
        for mark in texts(picture, "chance"):
            (on,) = (stick for stick in sticks if _meets(stick, mark.at))
            chances[on] = worth(mark.content)
        first = min(q(start.x) for start, _ in sticks)
        trunk = [stick for stick in sticks if q(stick[0].x) == first]
        lacking = 0
        for group in _groups(sticks):
            empty = [stick for stick in group if chances[stick] is None]
            if len(empty) == 1:
                chances[empty[0]] = 1 - sum((chances[s] for s in group if s not in empty), fmpq(0))  # type: ignore[misc]
                lacking += 1
                missing = chances[empty[0]]
            assert sum((chances[stick] for stick in group), fmpq(0)) == 1  # type: ignore[misc]
        named = {
            stick: next(
                str(mark.content)
                for mark in texts(picture, "outcome")
                if mark.at.y == stick[1].y and 0 <= mark.at.x - stick[1].x < 1
            )
            for stick in sticks
        }
        paths = {(named[stick],): chances[stick] for stick in trunk}
        for stick in trunk:
            for twig in sticks:
                if twig not in trunk and twig[0].y == stick[1].y:
                    paths[named[stick], named[twig]] = chances[stick] * chances[twig]  # type: ignore[operator]
        for reading in kind_of(figure).readings(figure):
            if reading.name == "missing":
                assert lacking == 1
                assert value_of(figure, reading) == missing
                found_missing += 1
                continue
            assert value_of(figure, reading) == paths[reading.of], (figure, reading)
    assert found_missing > COUNT // 10


def _meets(stick: tuple[Point, ...], at: Point) -> bool:
    """Tell whether a place is on a branch, between its ends."""
    (a, b), (c, d) = ((q(x), q(y)) for x, y in stick)
    x, y = q(at.x), q(at.y)
    return a < x < c and (y - b) * (c - a) == (d - b) * (x - a)


def _groups(sticks: list[tuple[Point, ...]]) -> Iterator[list[tuple[Point, ...]]]:
    for start in dict.fromkeys(stick[0] for stick in sticks):
        yield [stick for stick in sticks if stick[0] == start]


def _across(mark: Text) -> Fraction:
    return Fraction(mark.at.x)


@holds(MEASURED, "function machine")
def test_function_machines() -> None:
    for figure in examples("function machine", COUNT, 3):
        picture = drawn(figure)
        boxes = sorted(texts(picture, "does"), key=_across)
        arrows = sorted(
            (points_of(mark) for mark in picture.of("arrow")), key=lambda ends: ends[0].x
        )
        assert all(start.x < end.x for start, end in arrows)  # they point to the right
        (into,), (out,) = texts(picture, "input"), texts(picture, "output")
        row = [into, *boxes, out]
        assert [mark.at.x for mark in row] == sorted(mark.at.x for mark in row)
        for (start, end), before, after in zip(arrows, row[:-1], row[1:], strict=True):
            assert before.at.x < start.x < end.x < after.at.x
        # What it does is a straight line, y = mx + c: carried through as the pair (m, c).
        steps = [(str(box.content)[0], q(Fraction(str(box.content)[1:]))) for box in boxes]
        m, c = list(accumulate(steps, _through, initial=(fmpq(1), fmpq(0))))[-1]
        if into.content != "?":
            goes_in = worth(into.content)
            comes_out = m * goes_in + c
        else:
            comes_out = worth(out.content)
            goes_in = (comes_out - c) / m
        assert value_of(figure, Reading("input")) == goes_in, figure
        assert value_of(figure, Reading("output")) == comes_out, figure


def _through(line_: tuple[fmpq, fmpq], does: tuple[str, fmpq]) -> tuple[fmpq, fmpq]:
    (m, c), (sign, by) = line_, does
    return {
        "+": lambda: (m, c + by),
        "−": lambda: (m, c - by),
        "×": lambda: (m * by, c * by),
        "÷": lambda: (m / by, c / by),
    }[sign]()


@holds(MEASURED, "balance")
def test_balances() -> None:
    settled = 0
    for figure in examples("balance", COUNT, 3):
        picture = drawn(figure)
        (foot,) = (mark for mark in picture.of("foot") if isinstance(mark, Area))
        pivot = sum((q(point.x) for point in foot.points), fmpq(0)) / len(foot.points)
        pans = [points_of(mark) for mark in picture.of("pan")]
        assert {start.y for start, _ in pans} == {end.y for _, end in pans}  # it is level
        turning, weights = fmpq(0), fmpq(0)
        for block, mark in zip(picture.of("block"), texts(picture, "weight"), strict=True):
            assert isinstance(block, Area)
            xs = [q(point.x) for point in block.points]
            assert min(xs) < q(mark.at.x) < max(xs)
            side = 1 if q(mark.at.x) > pivot else -1
            if isinstance(mark.content, t.Sym):
                turning += side
            else:
                weights -= side * worth(mark.content)
        (relation,) = kind_of(figure).relations(figure)
        (letter,) = t.symbols(relation)
        if turning != 0:
            found = answer(t.Sym(letter), (relation,))
            assert [q(value) for value in found] == [weights / turning], figure
            settled += 1
    assert settled > COUNT // 2
