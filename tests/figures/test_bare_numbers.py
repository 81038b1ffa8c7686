"""What is read off a figure as a plain number is printed as one: no unit is lost on the way."""

from __future__ import annotations

import copy
import re
from collections.abc import Iterator
from typing import Any

import pytest

from itembank.bank.model.fields import BankItem
from itembank.bank.read.item_checks import item_faults
from itembank.figures.figure import KINDS, FigureError
from itembank.figures.figure_data import Misplaced, from_data, to_data
from tests.figures.every_figure import examples, names

LINE = {"kind": "number line", "first": 0, "steps": 4, "points": {"A": 3}}


@pytest.mark.parametrize(
    ("data", "key", "told"),
    [
        ({**LINE, "last": "1 km"}, "last", "‘1 km’"),
        ({**LINE, "last": "£10"}, "last", "‘£10’"),
        ({"kind": "balance", "left": ["π", "π"], "right": [48]}, "left", "‘π’"),
        (
            {"kind": "function machine", "does": [{"sign": "×", "number": 3}], "input": "4 cm"},
            "input",
            "‘4 cm’",
        ),
        (
            {"kind": "sample space", "first": ["£1", "£2"], "second": [3, 4], "rule": "sum"},
            "first",
            "‘£1’",
        ),
        (
            {
                "kind": "frequency table",
                "heading": "Length",
                "values": ["1 cm", "2 m"],
                "frequencies": [3, 4],
            },
            "values",
            "‘1 cm’",
        ),
        ({"kind": "balance", "left": ["x", "x"], "right": ["£48"]}, "right", "‘£48’"),
        ({"kind": "balance", "left": ["x", "x"], "right": [8, "£40"]}, "right", "‘£40’"),
        (
            {"kind": "sample space", "first": [1, 2], "second": [3, "4 m"], "rule": "sum"},
            "second",
            "‘4 m’",
        ),
    ],
)
def test_an_amount_where_a_number_is_read_is_a_fault_at_its_key(
    data: dict[str, Any], key: str, told: str
) -> None:
    with pytest.raises(Misplaced, match=told):
        from_data(data)
    question = BankItem(id="l-1", tier="core", prompt="What number is at A?", key="3", figure=data)
    (fault,) = item_faults(question)
    assert fault.field == ("figure", key)
    assert "write the number alone" in fault.message


def test_a_line_may_go_up_to_a_hundred_per_cent() -> None:
    from_data({**LINE, "first": "0%", "last": "100%"})


def _numbers(data: Any, path: tuple[Any, ...] = ()) -> Iterator[tuple[Any, ...]]:
    """Yield the way to each number that stands as mathematics in a figure's data."""
    if isinstance(data, dict):
        parts = [(key, value) for key, value in data.items() if key != "kind"]
    elif isinstance(data, list):
        parts = list(enumerate(data))  # type: ignore[arg-type]
    else:
        if isinstance(data, str) and re.fullmatch(r"-?\d+(\.\d+|/\d+)?", data):
            yield path
        return
    for key, value in parts:
        yield from _numbers(value, (*path, key))


@pytest.mark.parametrize("name", names())
def test_only_fields_that_bear_amounts_take_one(name: str) -> None:
    bears = KINDS[name].bears
    for figure in examples(name, 6, seed=5):
        data = to_data(figure)
        for way in list(_numbers(data))[:8]:
            if way[0] in bears:
                continue
            for amount in ("{} cm", "£{}", "{}%", "{} kg"):
                lie = copy.deepcopy(data)
                held: Any = lie
                for key in way[:-1]:
                    held = held[key]
                held[way[-1]] = amount.format(held[way[-1]])
                try:
                    made = from_data(lie)
                except FigureError:
                    continue
                # A name may look like a number, and it is printed as it stands.
                assert to_data(made) == lie
                assert isinstance(held[way[-1]], str)
                assert not _read_as_mathematics(made, held[way[-1]])


def _read_as_mathematics(figure: Any, text: str) -> bool:
    from itembank.figures.bare_numbers import AMOUNTS, _nodes
    from itembank.notation import tree as t
    from itembank.notation.line import line

    return any(
        line(part) == text
        for node in _nodes(tuple(getattr(figure, key) for key in figure.__dataclass_fields__))
        for part in t.walk(node)
        if isinstance(part, AMOUNTS)
    )
