"""A third engine over tables: what is written, and in which cell.

Each label is put into its cell by rational coordinates alone, and
what the figure says is worked out from there by python-flint (`fmpq`, `fmpq_mat`) or by counting.
The places of the labels are measured here, and nothing of the roads of the proofs is called.
"""

from __future__ import annotations

import statistics
from bisect import bisect
from fractions import Fraction
from itertools import pairwise

from flint import fmpq, fmpq_mat

from itembank.figures.drawing import Area, Drawing, Point, Stroke, Text
from itembank.figures.figure import Reading, drawn, kind_of, read
from itembank.figures.kinds.table.two_way_table import TwoWayTable
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.proof.exact.reckoning.elimination import answer
from tests.figures.every_figure import examples
from tests.figures.held import COUNT, MEASURED, holds
from tests.figures.third_engine.test_lines_and_charts import texts, value_of, worth
from tests.figures.third_engine.test_measures import q

Cell = str | t.Node | None


def table(picture: Drawing) -> list[list[Cell]]:
    """Return what stands in each cell between the lines of a table, row by row."""
    columns = sorted(q(points_of(mark)[0].x) for mark in picture.of("column line"))
    rows = sorted(-q(points_of(mark)[0].y) for mark in picture.of("row line"))
    found: list[list[Cell]] = [[None] * (len(columns) - 1) for _ in rows[1:]]
    for mark in picture.marks:
        if isinstance(mark, Text):
            column, row = bisect(columns, q(mark.at.x)) - 1, bisect(rows, -q(mark.at.y)) - 1
            assert found[row][column] is None
            found[row][column] = mark.content
    return found


def points_of(mark: object) -> tuple[Point, ...]:
    assert isinstance(mark, Stroke)
    return mark.points


def solved(rows: list[dict[str, fmpq]], ends: list[fmpq]) -> dict[str, fmpq]:
    """Return the unknowns that a system of linear equations settles, by Gauss and Jordan."""
    names = sorted({name for row in rows for name in row})
    made = [
        [*(row.get(name, fmpq(0)) for name in names), end]
        for row, end in zip(rows, ends, strict=True)
    ]
    if not names:
        return {}
    reduced, _ = fmpq_mat(len(made), len(names) + 1, [n for row in made for n in row]).rref()
    found = {}
    for place in range(len(made)):
        *parts, end = (reduced[place, k] for k in range(len(names) + 1))
        held = [(name, part) for name, part in zip(names, parts, strict=True) if part != 0]
        if len(held) == 1:
            found[held[0][0]] = end / held[0][1]
        assert held or end == 0  # the table does not contradict itself
    return found


@holds(MEASURED, "two-way table")
def test_two_way_tables() -> None:
    lettered = 0
    for figure in examples("two-way table", COUNT, 3):
        (_, *columns), *rows = table(drawn(figure))
        names = [str(name) for name, *_ in rows]
        unknown: dict[str, str] = {}
        known: dict[tuple[str, str], fmpq] = {}
        for name, cells in zip(names, (cells for _, *cells in rows), strict=True):
            for column, cell in zip(columns, cells, strict=True):
                if isinstance(cell, t.Int):
                    known[name, str(column)] = worth(cell)
                elif isinstance(cell, t.Sym):
                    unknown[cell.name] = f"{name} {column}"
        sums, ends = [], []
        lines = [[(name, str(column)) for column in columns] for name in names]
        for places in (*lines, *map(list, zip(*lines, strict=True))):
            row, end = {}, fmpq(0)
            for k, place in enumerate(places):
                sign = fmpq(-1 if k == len(places) - 1 else 1)
                if place in known:
                    end -= sign * known[place]
                else:
                    row[" ".join(place)] = sign
            sums.append(row)
            ends.append(end)
        found = {" ".join(place): value for place, value in known.items()} | solved(sums, ends)
        told = {r.of for r in kind_of(figure).readings(figure) if r.name == "count"}
        assert {" ".join(of) for of in told} == {*found}, figure
        for of in told:
            assert value_of(figure, Reading("count", of)) == found[" ".join(of)], (figure, of)
        for letter, place in unknown.items():
            if place in found:
                assert value_of(figure, Reading("letter", (letter,))) == found[place]
                lettered += 1
    assert lettered > COUNT // 10


@holds(MEASURED, "frequency table")
def test_frequency_tables() -> None:
    for figure in examples("frequency table", COUNT, 3):
        cells = table(drawn(figure))
        # Two rows side by side, or two columns under each other: a head is no number.
        (_, *values), (_, *counts) = (
            cells if len(cells) == 2 else map(list, zip(*cells, strict=True))
        )
        pairs = {}
        for value, count in zip(values, counts, strict=True):
            assert isinstance(count, t.Int)
            name = value if isinstance(value, str) else line(value).strip('"')  # type: ignore[arg-type]
            pairs[name] = count.n
        row = [name for name, count in pairs.items() for _ in range(count)]
        for reading in kind_of(figure).readings(figure):
            said = read(figure, reading)
            if reading.name in ("largest", "smallest"):
                pick = max if reading.name == "largest" else min
                assert line(said).strip('"') == pick(pairs, key=lambda name: pairs[name])
                continue
            wanted = _counted(reading, pairs, row)
            assert worth(said) == q(Fraction(wanted)), (figure, reading)


def _counted(reading: Reading, pairs: dict[str, int], row: list[str]) -> int | Fraction:
    """Return what a table of frequencies comes to, by the list that it stands for."""
    if reading.name in ("total", "value"):
        return len(row) if reading.name == "total" else pairs[reading.of[0]]
    numbers = list(map(Fraction, row))
    if reading.name == "range":
        return max(numbers) - min(numbers)
    by = {"sum": sum, "mean": statistics.mean, "median": statistics.median}[reading.name]
    return Fraction(by(numbers))


@holds(MEASURED, "probability table")
def test_probability_tables() -> None:
    lettered = 0
    for figure in examples("probability table", COUNT, 3):
        cells = table(drawn(figure))
        if str(cells[1][0]) != "Probability":
            cells = [list(row) for row in zip(*cells, strict=True)]
        (_, *names), (_, *chances) = cells
        rest, times = fmpq(1), {}
        for name, chance in zip(names, chances, strict=True):
            assert chance is not None
            assert not isinstance(chance, str)
            if letters := t.symbols(chance):
                times[str(name)] = worth(
                    t.replaced(chance, dict.fromkeys(map(t.Sym, letters), t.Int(1)))
                )
            else:
                rest -= worth(chance)
        share = rest / sum(times.values(), fmpq(0)) if times else rest
        lettered += bool(times)
        assert times or rest == 0
        held = {
            str(name): times[str(name)] * share if str(name) in times else worth(chance)  # type: ignore[arg-type]
            for name, chance in zip(names, chances, strict=True)
        }
        for reading in kind_of(figure).readings(figure):
            said = read(figure, reading)
            if reading.name in ("largest", "smallest"):
                pick = max if reading.name == "largest" else min
                assert line(said).strip('"') == pick(held, key=lambda name: held[name])
                continue
            found = sum((held[name] for name in reading.of), fmpq(0))
            assert worth(said) == (1 - found if reading.name == "not" else found), (figure, reading)
        for relation in kind_of(figure).relations(figure):
            (letter,) = t.symbols(relation)
            assert [q(value) for value in answer(t.Sym(letter), (relation,))] == [share]
    assert lettered > COUNT // 4


@holds(MEASURED, "bus timetable")
def test_bus_timetables() -> None:
    for figure in examples("bus timetable", COUNT, 3):
        rows = table(drawn(figure))
        stops = [str(name) for name, *_ in rows]
        buses = [
            {
                name: 60 * time.hour + time.minute
                for name, time in zip(stops, column, strict=True)
                if isinstance(time, t.ClockTime)
            }
            for column in list(zip(*rows, strict=True))[1:]
        ]
        for reading in kind_of(figure).readings(figure):
            start, *both = reading.of
            end = both[reading.name == "time"]
            told = both[reading.name != "time"]
            at = sum(n * int(part) for n, part in zip((60, 1), told.split(":"), strict=True))
            between = [(bus[start], bus[end]) for bus in buses if start in bus and end in bus]
            if reading.name == "time":
                (wanted,) = {there for here, there in between if here == at}
            elif reading.name == "latest":
                wanted = max(here for here, there in between if there <= at)
            else:
                first = min(times for times in between if times[0] > at)
                wanted = first[reading.name == "arrival"]
            said = read(figure, reading)
            assert isinstance(said, t.ClockTime)
            assert 60 * said.hour + said.minute == wanted, (figure, reading)


@holds(MEASURED, "cube plan")
def test_cube_plans() -> None:
    for figure in examples("cube plan", COUNT, 3):
        picture = drawn(figure)
        stacks: dict[tuple[fmpq, fmpq], int] = {}
        for square in picture.of("square"):
            assert isinstance(square, Area)
            xs, ys = ([q(p[k]) for p in square.points] for k in (0, 1))
            side = max(xs) - min(xs)
            inside = [
                worth(mark.content)
                for mark in texts(picture, "number")
                if min(xs) < q(mark.at.x) < max(xs) and min(ys) < q(mark.at.y) < max(ys)
            ]
            stacks[min(xs), min(ys)] = int(sum(inside, fmpq(0)))
        # Every cube at its place in space; a view leaves one direction out.
        cubes = {(*at, up) for at, high in stacks.items() for up in range(high)}
        across, along = (
            int((max(at[k] for at in stacks) - min(at[k] for at in stacks)) / side) + 1
            for k in (0, 1)
        )
        wanted = {
            Reading("cubes"): len(cubes),
            Reading("squares", ("plan",)): len({(x, y) for x, y, _ in cubes}),
            Reading("squares", ("front elevation",)): len({(x, up) for x, _, up in cubes}),
            Reading("squares", ("side elevation",)): len({(y, up) for _, y, up in cubes}),
            Reading("cuboid"): across * along * (1 + max(up for *_, up in cubes)),
        }
        for reading in kind_of(figure).readings(figure):
            assert value_of(figure, reading) == wanted[reading], (figure, reading)


@holds(MEASURED, "sample space")
def test_sample_spaces() -> None:
    for figure in examples("sample space", COUNT, 3):
        picture = drawn(figure)
        heads = {
            (role, str(mark.at[k])): mark.content
            for role, k in (("first", 0), ("second", 1))
            for mark in texts(picture, role)
        }
        (sign,) = [str(mark.content) for mark in texts(picture, "rule")] or [""]
        shown = []
        for mark in texts(picture, "cell"):
            pair = heads["first", str(mark.at.x)], heads["second", str(mark.at.y)]
            if sign not in ("+", "−", "×"):
                continue
            a, b = map(worth, pair)
            value = {"+": a + b, "−": max(a - b, b - a), "×": a * b}[sign]
            assert worth(mark.content) == value, figure
            shown.append(value)
        boxes = picture.of("cell box")
        for reading in kind_of(figure).readings(figure):
            if not reading.of:
                assert value_of(figure, reading) == len(boxes)
                continue
            test, *bounds = reading.of
            bound = q(Fraction(bounds[0])) if bounds else fmpq(0)
            kept = [value for value in shown if _passes(value, test, bound)]
            assert value_of(figure, reading) == len(kept), (figure, reading)


def _passes(value: fmpq, test: str, bound: fmpq) -> bool:
    if test in ("even", "odd", "multiple of"):
        by = bound if test == "multiple of" else fmpq(2)
        rest = value - by * (value / by).floor() if by > 0 else None
        return rest == (test == "odd") and value.q == 1
    return {
        "is": value == bound,
        "more than": value > bound,
        "less than": value < bound,
        "at least": value >= bound,
        "at most": value <= bound,
    }[test]


def test_columns_are_alike_where_there_is_room_and_as_wide_as_they_need_be_elsewhere() -> None:
    def widths(*names: str) -> list[fmpq]:
        rows = tuple(
            tuple(t.Int(n) for n in row) for row in ((20, 5, 25), (10, 5, 15), (30, 10, 40))
        )
        picture = drawn(TwoWayTable(("8K", "9S"), names, rows))
        at = sorted(q(points_of(mark)[0].x) for mark in picture.of("column line"))
        return [b - a for a, b in pairwise(at)]

    _, *alike = widths("bus", "car")
    assert len({*alike}) == 1
    _, *apart = widths("yellow", "red")
    assert apart[0] > apart[1]
