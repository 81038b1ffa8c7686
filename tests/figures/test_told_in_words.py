"""Charts, tables, lines and machines are told whole: their words alone give every reading.

The words are read by patterns of this file, and worked out without the figure's own code.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from fractions import Fraction

import pytest
import sympy

from itembank.figures.figure import Figure, Reading, kind_of, read, words
from itembank.items.item import Tier
from itembank.items.topics.registry import find_topic
from itembank.notation import tree as t
from itembank.notation.value import exact
from tests.figures.every_figure import examples
from tests.figures.held import TOLD, holds

Values = dict[tuple[str, ...], Fraction]


def number(said: str) -> Fraction:
    """Return a number that is said: 12, 0 point 5, negative 3."""
    plain = said.replace("negative ", "-").strip()
    if "point" in plain:
        return Fraction(plain.replace(" point ", ".").replace(" ", ""))
    return Fraction(plain)


def bars(text: str) -> Values:
    """Return the value of each bar, by its category, or its category and its series."""
    scale = re.search(r"in steps of (\d+)(?:, with (\d+) equal steps)?", text)
    assert scale is not None
    small = Fraction(int(scale[1]), int(scale[2] or 1))
    found: Values = {}
    for name, series, place in re.findall(r"The bar of (.+?)(?: for (.+?))? ends (.+?)\.", text):
        inner = list(map(Fraction, re.findall(r"\d+", place)))
        if place.startswith("halfway"):
            value = sum(inner, Fraction(0)) / 2
        else:
            value = inner[0] if len(inner) == 1 else inner[1] + inner[0] * small
        found[(name, series) if series else (name,)] = value
    for name, series in re.findall(r"No bar is drawn for (.+?)(?: for (.+?))?\.", text):
        found[(name, series) if series else (name,)] = Fraction(0)
    return found


def pictogram(text: str) -> Values:
    head, rows = text.removesuffix(".").split(". ", 1)
    each = Fraction(re.findall(r"\d+", head)[0])
    parts = {"a quarter": 1, "a half": 2, "half a": 2, "three quarters": 3}
    found: Values = {}
    for row in rows.split("; "):
        name, _, many = row.partition(" has ")
        whole = re.match(r"\d+", many)
        part = next((n for said, n in parts.items() if said in many), 0)
        found[(name,)] = each * (int(whole[0]) if whole else 0) + each * Fraction(part, 4)
    return found


def frequencies(text: str) -> Values:
    head = re.match(r"A table gives (?P<of>.+), and (?P<counts>.+) for each: ", text)
    assert head is not None
    found = {}
    for pair in text[head.end() :].removesuffix(".").split("; "):
        value, often = pair.removeprefix(f"{head['of']} ").split(f", {head['counts']} ")
        found[(value,)] = Fraction(often)
    return found


def cells(text: str) -> Values:
    """Return every cell of a two-way table, those that are empty from the totals, by sympy."""
    columns = text.split(" columns for ")[1].split(" and the total")[0].split(", ")
    columns.append("Total")
    rows = {
        "Total" if name == "totals" else name: held.split("; ")
        for name, held in re.findall(r"The row of (.+?) holds: (.+?)\.(?= The row|$)", text)
    }
    unknown = {(r, c): sympy.Symbol(f"{r} {c}") for r in rows for c in columns}
    equations = [
        sympy.Eq(unknown[r, c], int(shown))
        for r, held in rows.items()
        for c, shown in zip(columns, held, strict=True)
        if shown.isdigit()
    ]
    for r in rows:
        equations.append(sympy.Eq(sum(unknown[r, c] for c in columns[:-1]), unknown[r, "Total"]))
    for c in columns:
        parts = [unknown[r, c] for r in rows if r != "Total"]
        equations.append(sympy.Eq(sum(parts), unknown["Total", c]))
    (solution,) = sympy.linsolve(equations, list(unknown.values()))
    return {
        where: Fraction(int(value))
        for where, value in zip(unknown, solution, strict=True)
        if value.is_number
    }


@pytest.mark.parametrize(
    ("kind", "reader", "name"),
    [
        ("bar chart", bars, "value"),
        ("pictogram", pictogram, "value"),
        ("frequency table", frequencies, "value"),
        ("two-way table", cells, "count"),
    ],
)
@holds(TOLD, "bar chart", "pictogram", "frequency table", "two-way table")
def test_every_count_is_told(kind: str, reader: Callable[[str], Values], name: str) -> None:
    for figure in examples(kind, 40, seed=6):
        found = reader(words(figure))
        wanted = [reading for reading in readings(figure) if reading.name == name]
        assert wanted
        for reading in wanted:
            assert exact(read(figure, reading)) == found[reading.of], (words(figure), reading)
        if Reading("total") in readings(figure):
            assert exact(read(figure, Reading("total"))) == sum(found.values())


@pytest.mark.parametrize("topic", ["statistics.bar-charts", "statistics.pictograms"])
def test_no_length_is_told_of_what_a_question_calls_missing(topic: str) -> None:
    found = find_topic(topic)
    tried = 0
    for tier in (Tier.CORE, Tier.CHALLENGE):
        for at in range(0, len(found.spaces[tier]), 23):
            item = found.item(tier, at)
            if missing := re.search(r"The (?:bar|row) for (\w+) is missing", str(item.prompt)):
                assert item.figure is not None
                names = kind_of(item.figure).printed(item.figure)
                name = next(
                    label.text
                    for label in names
                    if isinstance(label, t.Label) and missing[1].startswith(label.text)
                )
                heard = words(item.figure)
                assert f"No bar is drawn for {name}." in heard or f"{name} has no squares" in heard
                tried += 1
    assert tried > 5


def readings(figure: Figure) -> tuple[Reading, ...]:
    return kind_of(figure).readings(figure)


@holds(TOLD, "function machine")
def test_what_a_machine_does_is_told() -> None:
    signs = {
        "adds": lambda value, by: value + by,
        "subtracts": lambda value, by: value - by,
        "multiplies by": lambda value, by: value * by,
        "divides by": lambda value, by: value / by,
    }
    for figure in examples("function machine", 40, seed=6):
        text = words(figure)
        does, ends = text.split(". ", 1)
        letter = sympy.Symbol("letter")
        value = letter
        for sign, by in re.findall(
            r"(adds|subtracts|multiplies by|divides by) (.+?)(?=, then|$)", does
        ):
            value = signs[sign](value, sympy.Rational(str(number(by))))
        shown = re.search(r"The number (.+?) (comes out|goes in)", ends)
        assert shown is not None
        given = sympy.Rational(str(number(shown[1])))
        put_in = given if shown[2] == "goes in" else sympy.solve(value - given, letter)[0]
        for name, worth in (("input", put_in), ("output", value.subs(letter, put_in))):
            assert exact(read(figure, Reading(name))) == Fraction(str(worth))


@holds(TOLD, "balance")
def test_both_sides_of_a_balance_are_told() -> None:
    for figure in examples("balance", 40, seed=6):
        text = words(figure)
        sides = re.search(r"On the left: (.+?)\. On the right: (.+?)\.", text)
        assert sides is not None
        (relation,) = kind_of(figure).relations(figure)
        told = [_blocks(side) for side in sides.groups()]
        said = [_blocks_of(side) for side in (relation.first, relation.rest[0][1])]
        assert [sorted(side) for side in told] == [sorted(side) for side in said]


def _blocks(side: str) -> list[str]:
    found = []
    for count, mark in re.findall(r"(\d+) blocks? marked (\w+)", side):
        found += [mark] * int(count)
    return found


def _blocks_of(node: t.Node) -> list[str]:
    parts = (node.first, *(part for _, part in node.rest)) if isinstance(node, t.Sum) else (node,)
    return [part.name if isinstance(part, t.Sym) else str(exact(part)) for part in parts]


@holds(TOLD, "number line")
def test_the_places_on_a_line_are_told() -> None:
    tried = 0
    for figure in examples("number line", 60, seed=6):
        text = words(figure)
        ends = re.search(r"goes from (.+?) to (.+?) in (?:(\d+) equal steps|1 step)", text)
        assert ends is not None
        try:
            low, high = number(ends[1]), number(ends[2])
        except ValueError:
            continue  # an end that is a fraction is said in other words
        steps = int(ends[3] or 1)
        assert exact(read(figure, Reading("step"))) == (high - low) / steps
        arrows = re.findall(r"The arrow (\w) points (\d+) steps? after", text)
        for name, mark in arrows:
            value = low + (high - low) * Fraction(int(mark), steps)
            assert exact(read(figure, Reading("number", (name,)))) == value
            tried += 1
        for told, start, end in re.findall(
            r"A jump of (\d+) goes from step (\d+) to step (\d+)", text
        ):
            assert int(told) == abs(int(end) - int(start)) * (high - low) / steps
    assert tried > 20


@holds(TOLD, "growing pattern")
def test_the_tiles_of_a_pattern_are_told() -> None:
    for figure in examples("growing pattern", 30, seed=6):
        shown = {
            int(place): int(tiles)
            for place, tiles in re.findall(r"pattern (\d+) has (\d+)", words(figure))
        }
        assert [*shown] == [1, 2, 3]
        more = shown[2] - shown[1]
        for reading in readings(figure):
            if reading.name == "tiles":
                place = int(reading.of[0])
                assert exact(read(figure, reading)) == shown[1] + more * (place - 1)


@holds(TOLD, "double number line")
def test_the_letter_of_a_double_line_is_told() -> None:
    for figure in examples("double number line", 40, seed=6):
        pairs = [
            (int(mark), over, under)
            for mark, over, under in re.findall(
                r"At mark (\d+), .+? is (\S+)[^.]*? and .+? is (\S+?)(?: \w+)?\.", words(figure)
            )
        ]
        (reading,) = readings(figure)
        letter = reading.of[0]
        known = {
            (mark, line_): int(shown)
            for mark, *both in pairs
            for line_, shown in enumerate(both)
            if shown.isdigit()
        }
        (at,) = [
            (mark, line_)
            for mark, *both in pairs
            for line_, shown in enumerate(both)
            if shown == letter
        ]
        other, amount = next((m, n) for (m, line_), n in known.items() if line_ == at[1])
        value = Fraction(amount * at[0], other)
        found = read(figure, reading)
        bare = found.amount if isinstance(found, t.Quantity | t.Money) else found
        assert exact(bare) == value


def told_bars(text: str) -> tuple[dict[str, list[int]], dict[str, int], list[tuple[int, Fraction]]]:
    """Return the lengths of the boxes of each bar, how many units are shaded, and amounts.

    Each amount comes with the number of units that it is for.
    """
    boxes: dict[str, list[int]] = {}
    dark: dict[str, int] = {}
    amounts: list[tuple[int, Fraction]] = []
    name = ""
    for sentence in re.split(r"(?<=\.) (?=[A-Z])", text):
        first = re.search(r"\d+(?: point \d+)?", sentence.split(" is ")[-1].split(" are ")[-1])
        if made := re.match(r"(?:The bar of (.+?)|Bar \d|A bar) has (.+)\.", sentence):
            name, sizes = made[1] or "", list(map(int, re.findall(r"\d+", made[2])))
            single = made[2].startswith("1 part that")
            boxes[name] = sizes[single:] if "units long" in made[2] else [1] * sizes[0]
            dark[name] = 0
        elif made := re.match(r"Its first (\d+) parts are shaded", sentence):
            dark[name] += sum(boxes[name][: int(made[1])])
        elif made := re.match(r"Its part (\d+) is shaded", sentence):
            dark[name] += boxes[name][int(made[1]) - 1]
        elif sentence.startswith("All of it is") and first:
            amounts.append((sum(boxes[name]), number(first[0])))
        elif re.match(r"(?:Both|All) bars together are|The whole bar is", sentence) and first:
            amounts.append((sum(map(sum, boxes.values())), number(first[0])))
    return boxes, dark, amounts


@holds(TOLD, "bar model")
def test_the_parts_of_bars_are_told() -> None:
    tried = 0
    for figure in examples("bar model", 60, seed=11):
        boxes, dark, amounts = told_bars(words(figure))
        (worth,) = {amount / units for units, amount in amounts}
        assert worth == exact(read(figure, Reading("part")))
        assert worth * sum(map(sum, boxes.values())) == exact(read(figure, Reading("whole")))
        for name, sizes in boxes.items():
            if name:
                assert worth * sum(sizes) == exact(read(figure, Reading("bar", (name,))))
        if any(dark.values()):
            assert worth * sum(dark.values()) == exact(read(figure, Reading("shaded")))
        tried += 1
    assert tried > 30
