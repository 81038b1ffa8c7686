"""A third engine over lines, bars and charts: lengths and places in rational numbers, by flint.

What the exact road takes from a figure's data is held to where its marks stand: two printed
numbers settle the scale, and all else is measured against it. No road of the proofs is called.
"""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise
from typing import Any

from flint import fmpq, fmpq_mat

from itembank.figures.drawing import Arc, Area, Drawing, Mark, Stroke, Text
from itembank.figures.figure import Figure, Reading, drawn, kind_of, read
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.value import exact
from tests.figures.every_figure import examples
from tests.figures.held import COUNT, MEASURED, holds
from tests.figures.third_engine.test_measures import ball, near, q, shoelace, turn

Spot = tuple[fmpq, fmpq]
LEAST, GREATEST = "least integer", "greatest integer"


def texts(drawing: Drawing, role: str) -> list[Text]:
    return [mark for mark in drawing.of(role) if isinstance(mark, Text)]


def worth(node: t.Node | str) -> fmpq:
    assert not isinstance(node, str)
    return q(exact(node))


def bare(node: t.Node) -> fmpq:
    """Return the number of an amount, without its unit."""
    return worth(node.amount if isinstance(node, t.Quantity | t.Money) else node)


def scaled(drawing: Drawing, role: str, axis: int) -> tuple[fmpq, fmpq]:
    """Return what a line of printed numbers says at place 0, and how much it rises in an em."""
    found = sorted((q(mark.at[axis]), worth(mark.content)) for mark in texts(drawing, role))
    (a, first), (b, last) = found[0], found[-1]
    rise = (last - first) / (b - a)
    for place, value in found:  # all of them lie on one scale
        assert value == first + (place - a) * rise
    return first - a * rise, rise


def named(drawing: Drawing, role: str, axis: int) -> dict[str, fmpq]:
    return {str(mark.content): q(mark.at[axis]) for mark in texts(drawing, role)}


def value_of(figure: Figure, reading: Reading) -> fmpq:
    return worth(read(figure, reading))


@holds(MEASURED, "number line")
def test_number_lines() -> None:
    for figure in examples("number line", COUNT, 3):
        picture = drawn(figure)
        nought, rise = scaled(picture, "number", 0)
        ticks = sorted(q(mark.points[0].x) for mark in picture.of("tick"))  # type: ignore[union-attr]
        assert len({b - a for a, b in pairwise(ticks)}) == 1
        tips = {q(mark.points[-1].x) for mark in picture.of("pointer")}  # type: ignore[union-attr]
        letters = named(picture, "point", 0)
        assert {*letters.values()} == tips
        jumps = [mark for mark in picture.of("jump") if isinstance(mark, Stroke)]
        ends = [mark for mark in picture.of("end of span") if isinstance(mark, Arc)]
        for reading in kind_of(figure).readings(figure):
            if reading.name == "letter":
                found = nought + letters[line(read(figure, reading)).strip('"')] * rise
                assert found == worth(_number(reading.of[0])), figure
            elif reading.name == "inequality":
                said = read(figure, reading)
                assert isinstance(said, t.Relation)
                sides = [said.first, *(side for _, side in said.rest)]
                numbers = sorted(worth(side) for side in sides if not t.symbols(side))
                assert numbers == sorted(nought + q(end.centre.x) * rise for end in ends), figure
                full = {op in ("≤", "≥", "<=", ">=") for op, _ in said.rest}
                assert full == {end.fill == "ink" for end in ends}, figure
            elif reading.name in (LEAST, GREATEST, "integers"):
                _whole_numbers(figure, reading, picture, ends, nought, rise)
            else:
                if reading.name == "step":
                    found = (ticks[1] - ticks[0]) * rise
                elif reading.name == "number":
                    found = nought + letters[reading.of[0]] * rise
                else:
                    start, end = _jump(jumps, reading)
                    found = nought + end * rise
                    if reading.name == "jump size":
                        found = abs(end - start) * rise
                assert value_of(figure, reading) == found, (figure, reading)


def _number(said: str) -> t.Node:
    from itembank.notation.parse import parse

    return parse(said)


def _jump(jumps: list[Stroke], reading: Reading) -> tuple[fmpq, fmpq]:
    stroke = jumps[int(reading.of[0]) - 1]
    return q(stroke.points[0].x), q(stroke.points[-1].x)


def _whole_numbers(
    figure: Figure,
    reading: Reading,
    picture: Drawing,
    ends: list[Arc],
    nought: fmpq,
    rise: fmpq,
) -> None:
    """Hold the whole numbers of a span to those that stand under its thick line."""
    (stroke,) = (mark for mark in picture.of("span") if isinstance(mark, Stroke))
    places = [q(point.x) for point in stroke.points]
    limits = [(nought + q(end.centre.x) * rise, end.fill == "ink") for end in ends]
    open_up = bool(stroke.arrow) and places[-1] > places[0]

    def inside(n: int) -> bool:
        for value, counts in limits:
            above = open_up if len(limits) == 1 else value == min(limits)[0]
            if not (n == value and counts) and not (n > value if above else n < value):
                return False
        return True

    around = [int(value) + step for value, _ in limits for step in range(-2, 3)]
    held = sorted({n for n in around if inside(n)})
    if reading.name in (LEAST, GREATEST):
        value = value_of(figure, reading)
        assert value == (held[0] if reading.name == LEAST else held[-1]), figure
    else:
        low, high = sorted(value for value, _ in limits)
        within = [n for n in range(int(low) - 1, int(high) + 2) if inside(n)]
        node = read(figure, reading)
        assert isinstance(node, t.Listing)
        assert [worth(part) for part in node.parts] == within, figure


@holds(MEASURED, "double number line")
def test_double_number_lines() -> None:
    for figure in examples("double number line", COUNT, 3):
        picture = drawn(figure)
        ((name, over),) = (
            (str(mark.content.name), role)  # type: ignore[union-attr]
            for role in ("over", "under")
            for mark in texts(picture, role)
            if isinstance(mark.content, t.Sym)
        )
        labels = texts(picture, over)
        (letter,) = (mark for mark in labels if isinstance(mark.content, t.Sym))
        known = [mark for mark in labels if not isinstance(mark.content, t.Sym) and mark.at.x]
        for mark in known:
            assert not isinstance(mark.content, str)
            found = bare(mark.content) * q(letter.at.x) / q(mark.at.x)
            assert bare(read(figure, Reading("amount", (name,)))) == found, figure


@holds(MEASURED, "bar model")
def test_bar_models() -> None:
    for figure in examples("bar model", COUNT, 3):
        picture = drawn(figure)
        boxes = [mark for mark in picture.marks if isinstance(mark, Area) and "box" in mark.role]
        rows: dict[fmpq, list[Area]] = {}
        for box in boxes:
            rows.setdefault(q(box.points[0].y), []).append(box)
        whole = sum(map(_wide, boxes), fmpq(0))
        scales = set()
        for mark in texts(picture, "total"):
            scales.add(worth(mark.content) / whole)
        for mark in texts(picture, "bar total"):
            under = max(y for y in rows if y < q(mark.at.y))
            if not t.symbols(mark.content):  # type: ignore[arg-type]
                scales.add(worth(mark.content) / sum(map(_wide, rows[under]), fmpq(0)))
        (scale,) = scales
        bars = {
            str(mark.content): sum(
                map(_wide, next(row for y, row in rows.items() if y < q(mark.at.y) < y + 2)),
                fmpq(0),
            )
            for mark in texts(picture, "name")
        }
        dark = sum((_wide(box) for box in boxes if box.role == "shaded box"), fmpq(0))
        # The narrowest box of all is one part, where one is; its units stand beside it.
        for reading in kind_of(figure).readings(figure):
            if reading.name == "part":
                parts = whole * scale / value_of(figure, reading)
                assert parts.q == 1, figure
                assert all((_wide(box) * scale / value_of(figure, reading)).q == 1 for box in boxes)
                continue
            size = {"whole": whole, "shaded": dark}.get(reading.name)
            size = bars[reading.of[0]] if size is None else size
            assert value_of(figure, reading) == size * scale, (figure, reading)


def _wide(box: Area) -> fmpq:
    xs = [q(point.x) for point in box.points]
    return max(xs) - min(xs)


@holds(MEASURED, "bar chart")
def test_bar_charts() -> None:
    for figure in examples("bar chart", COUNT, 3):
        picture = drawn(figure)
        nought, rise = scaled(picture, "number", 1)
        names = named(picture, "category", 0)
        kinds = [str(mark.content) for mark in texts(picture, "series")]
        found: dict[tuple[str, ...], fmpq] = {}
        count = max(len(kinds), 1)
        near_by = sorted(names.values())
        apart = min((b - a for a, b in pairwise(near_by)), default=fmpq(99))
        for place in range(count):
            bars = [mark for mark in picture.of(f"bar {place}") if isinstance(mark, Area)]
            for name, x in names.items():
                heights = [
                    nought + max(q(point.y) for point in bar.points) * rise
                    for bar in bars
                    if abs(sum((q(p.x) for p in bar.points), fmpq(0)) / 4 - x) < apart / 2
                ]
                key = (name, kinds[place]) if kinds else (name,)
                found[key] = heights[0] if heights else fmpq(0)
        _holds_counts(figure, found)


def _holds_counts(figure: Figure, found: dict[tuple[str, ...], fmpq]) -> None:
    tops = {name: value for (name, *_), value in found.items()}
    for reading in kind_of(figure).readings(figure):
        if reading.name == "total":
            counted = [
                value for name, value in found.items() if not reading.of or name[1:] == reading.of
            ]
            assert value_of(figure, reading) == sum(counted, fmpq(0)), figure
        elif reading.name in ("largest", "smallest"):
            pick = max if reading.name == "largest" else min
            name = line(read(figure, reading)).strip('"')
            tops = {first: v for (first, *more), v in found.items() if more == [*reading.of]}
            assert tops[name] == pick(tops.values()), figure
        elif reading.name == "value":
            assert value_of(figure, reading) == found[reading.of], (figure, reading)


@holds(MEASURED, "pictogram")
def test_pictograms() -> None:
    for figure in examples("pictogram", COUNT, 3):
        picture = drawn(figure)
        (key,) = (mark for mark in picture.of("key") if isinstance(mark, Area))
        (says,) = texts(picture, "key says")
        each = fmpq(int(str(says.content).split()[1]))
        found: dict[tuple[str, ...], fmpq] = {}
        for name, y in named(picture, "category", 1).items():
            # A part of a square stands at its row's foot, or not.
            high = max(q(p.y) for p in key.points) - min(q(p.y) for p in key.points)
            inked = [
                shoelace(mark)
                for mark in picture.of("square")
                if isinstance(mark, Area) and all(abs(q(p.y) - y) <= high / 2 for p in mark.points)
            ]
            found[(name,)] = sum(inked, fmpq(0)) / shoelace(key) * each
        _holds_counts(figure, found)


@holds(MEASURED, "pie chart")
def test_pie_charts() -> None:
    for figure in examples("pie chart", COUNT, 3):
        picture = drawn(figure)
        slices = [mark for mark in picture.of("sector") if isinstance(mark, Arc)]
        parts = [turn(mark.centre, mark.start, mark.end) for mark in slices]
        assert near(sum(parts[1:], parts[0]), ball(t.Int(1)), "1e-4")
        total = next((str(mark.content).split()[1] for mark in texts(picture, "total")), None)
        names = {}
        for mark, pointer in zip(texts(picture, "name"), picture.of("pointer"), strict=True):
            assert isinstance(pointer, Stroke)
            start = pointer.points[0]
            (place,) = [
                k for k, arc in enumerate(slices) if turn(arc.centre, arc.start, start) < parts[k]
            ]
            names[str(mark.content)] = parts[place]
        for reading in kind_of(figure).readings(figure):
            if reading.name in ("largest", "smallest"):
                name = line(read(figure, reading)).strip('"')
                others = [part for other, part in names.items() if other != name]
                big = reading.name == "largest"
                assert all(names[name] > o if big else names[name] < o for o in others), figure
                continue
            said = ball(read(figure, reading))
            if reading.name in ("total", "each"):
                assert total is not None
                assert near(said, ball(t.Int(int(total)))) or near(
                    said * int(total), ball(t.Int(360))
                )
                continue
            size = {"angle": 360, "fraction": 1, "value": int(total or 0)}[reading.name]
            # A drawn direction is a rational point near to the true one.
            assert near(said, names[reading.of[0]] * size, "1e-4"), (figure, reading)


@holds(MEASURED, "scatter graph")
def test_scatter_graphs() -> None:
    for figure in examples("scatter graph", COUNT, 3):
        picture = drawn(figure)
        scales = [scaled(picture, f"{axis} number", k) for k, axis in enumerate("xy")]

        def place(x: Any, y: Any, scales: list[Any] = scales) -> Spot:
            return tuple(
                nought + q(v) * rise for (nought, rise), v in zip(scales, (x, y), strict=True)
            )

        crosses: set[Spot] = set()
        for mark in picture.of("datum"):
            assert isinstance(mark, Stroke)
            (a, b), (c, d) = mark.points
            crosses.add(place(Fraction(a + c) / 2, Fraction(b + d) / 2))
        ends = [place(*point) for mark in picture.of("segment") for point in _points(mark)]
        sides = [_side(ends, cross) for cross in crosses] if ends else []
        for reading in kind_of(figure).readings(figure):
            said = read(figure, reading)
            if reading.name == "count":
                assert worth(said) == len(crosses)
            elif reading.name in ("above the line", "below the line"):
                sign = 1 if reading.name[0] == "a" else -1
                assert worth(said) == sum(sign * side > 0 for side in sides), figure
            elif reading.name in ("more", "less", "value"):
                k = "xy".index(reading.of[0])
                limit = q(Fraction(reading.of[1]))
                if reading.name == "value":
                    assert [worth(said)] == [c[1 - k] for c in crosses if c[k] == limit], figure
                else:
                    more = reading.name == "more"
                    counted = sum(c[k] > limit if more else c[k] < limit for c in crosses)
                    assert worth(said) == counted, figure
            elif reading.name == "correlation":
                agree = {(a[0] < b[0]) == (a[1] < b[1]) for a in crosses for b in crosses if a != b}
                assert agree == {line(said).strip('"') == "positive"}, figure
            elif reading.name == "outlier":
                far = max(crosses, key=lambda cross: abs(_side(ends, cross)))
                assert line(said) == f"({_plain(far[0])}, {_plain(far[1])})", figure
            elif reading.name == "estimate":
                k = "xy".index(reading.of[0])
                met = (worth(said), q(Fraction(reading.of[1])))
                x, y = met if k else met[::-1]
                # To the nearest half of a square, both ways.
                squares = _squares(picture, scales)
                off = abs(_side(ends, (x, y))) / abs(ends[1][k] - ends[0][k])
                assert off * 4 <= squares[1 - k], (figure, reading)


def _points(mark: Mark) -> tuple[Any, ...]:
    assert isinstance(mark, Stroke)
    return mark.points


def _squares(picture: Drawing, scales: list[tuple[fmpq, fmpq]]) -> list[fmpq]:
    """Return how much a square is worth along and up."""
    found = []
    for k, role in enumerate(("upright", "level")):
        at = sorted(q(_points(mark)[0][k]) for mark in picture.of(role))
        found.append((at[1] - at[0]) * scales[k][1])
    return found


def _side(ends: list[Spot], at: Spot) -> fmpq:
    """Return twice the area of the triangle on the line's ends: positive above the line."""
    (a, b), (c, d) = ends
    return fmpq_mat([[1, a, b], [1, c, d], [1, at[0], at[1]]]).det()


def _plain(value: fmpq) -> str:
    shown = Fraction(int(value.p), int(value.q))
    return str(shown) if shown.denominator == 1 else str(float(shown))
