"""Sums and differences that go wrong in columns: a carry or an exchange forgotten."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from itembank.items.item import Draft, Misconception
from itembank.items.kinds.calculations import Calculation
from itembank.items.kinds.draft_worth import worth
from itembank.items.kinds.line_edits import smaller_from_larger, uncarried
from itembank.items.kinds.mistakes import CARRY_LOST, POINT_KEPT, SMALLER_FROM_LARGER
from itembank.items.kinds.wrong_solutions import WrongSolution
from itembank.notation import tree as t
from itembank.notation.value import exact_or_none

_LONGEST_SUM = 5
"""In a longer one several tens are carried, and who loses them is far off."""


def goes_wrong_in_columns(asked: Draft, row: list[Calculation]) -> Iterator[WrongSolution]:
    """Yield the workings in which one sum or difference goes wrong; what follows uses it."""
    given = {part for run in asked.prompt if not isinstance(run, str) for part in t.walk(run)}
    for place, (made, result) in enumerate(row):
        for mistake, wrong in _column_slips(made):
            lines: list[t.Node] = [t.equals(*part) for part in row[:place]]
            if place < len(row) - 1 and result in given:
                continue
            follows = _following(row, place, _like(result, Fraction(wrong)))
            if follows is None or worth(follows[-1]) == worth(asked.key):
                continue
            if place == len(row) - 1:
                yield WrongSolution(mistake, (*lines, made, *follows[-1:]), place + 2)
            else:
                yield WrongSolution(mistake, (*lines, *follows), place + 1)


def _following(row: list[Calculation], place: int, wrong: t.Node | None) -> list[t.Node] | None:
    """Return the lines from a wrong result on: parts, the last calculation, and its answer."""
    if wrong is None:
        return None
    made, result = row[place]
    standing = {part for line, comes_to in row for part in (*t.walk(line), comes_to)}
    if place < len(row) - 1 and wrong in standing:
        return None  # what stands for the wrong result, and what for a number that is given?
    meant: dict[t.Node, t.Node] = {result: wrong}
    lines: list[t.Node] = [t.equals(made, wrong)]
    for later, (line, comes_to) in enumerate(row[place + 1 :], start=place + 1):
        now = t.replaced(line, meant)
        number = _counted(now, comes_to)
        written = None if number is None else _like(comes_to, number)
        if written is None or comes_to in meant or (written in standing and later < len(row) - 1):
            return None
        meant[comes_to] = written
        lines += [now, written] if later == len(row) - 1 else [t.equals(now, written)]
    return [*lines, wrong] if place == len(row) - 1 else lines


def _column_slips(line: t.Node) -> Iterator[tuple[Misconception, Fraction | int]]:
    if isinstance(line, t.Product):
        parts = t.children(line)
        tenths = exact_or_none(line)
        if len(parts) == 2 and line.rest[0][0] == "×" and all(map(_is_tenths, parts)) and tenths:
            yield POINT_KEPT, tenths * 10
    if not isinstance(line, t.Sum):
        return
    sizes = [_size(part) for part in t.children(line)]
    numbers = [size for size in sizes if size is not None]
    signs = {sign for sign, _ in line.rest}
    if len(numbers) < len(sizes) or max(numbers) < 10:
        return
    # A sum that is no larger than one of its numbers would be seen to be wrong.
    if (
        signs == {"+"}
        and len(numbers) <= _LONGEST_SUM
        and max(numbers) < uncarried(numbers) != sum(numbers)
    ):
        yield CARRY_LOST, uncarried(numbers)
    if signs == {"-"} and len(numbers) == 2 and numbers[0] > numbers[1] > 9:
        differing = smaller_from_larger(*numbers)
        if differing != numbers[0] - numbers[1]:
            yield SMALLER_FROM_LARGER, differing


def _is_tenths(part: t.Node) -> bool:
    return isinstance(part, t.Dec) and (part.whole, len(part.places), part.recurring) == (
        "0",
        1,
        "",
    )


def _size(part: t.Node) -> int | None:
    amount = part.amount if isinstance(part, t.Quantity) else part
    return amount.n if isinstance(amount, t.Int) else None


def _like(result: t.Node, number: Fraction) -> t.Node | None:
    """Return a number written as a result is, and whole where that is; None where it is not."""
    from itembank.items.forms.form_rules import decimal_node  # no rule of forms is needed before

    if isinstance(result, t.Dec) and 1000 * number % 1 == 0 < number:
        return decimal_node(number)
    unit = result.unit if isinstance(result, t.Quantity) else None
    if (unit is None and not isinstance(result, t.Int)) or number <= 0 or number.denominator != 1:
        return None
    whole = t.Int(int(number))
    return whole if unit is None else t.Quantity(whole, unit)


def _counted(line: t.Node, result: t.Node) -> Fraction | None:
    """Return what a line comes to, counted in the unit of a result."""
    value = exact_or_none(line)
    unit = t.Quantity(t.Int(1), result.unit) if isinstance(result, t.Quantity) else t.Int(1)
    size = exact_or_none(unit)
    return None if value is None or size is None else value / size
