"""Keys of topics with unknowns, found a third way: from what is printed, by python-flint."""

from __future__ import annotations

import re

from flint import fmpq, fmpq_mat

from itembank.figures.figure import kind_of
from itembank.notation import line
from tests.generators.key_reader import sample
from tests.generators.letter_values import worth


def row(equation: str, names: list[str]) -> list[fmpq]:
    """Return the coefficients and the right-hand side of a linear equation, from its values."""
    left, right = equation.split(" = ")
    zero = dict.fromkeys(names, fmpq(0))

    def gap(at: dict[str, fmpq]) -> fmpq:
        return worth(left, at) - worth(right, at)

    start = gap(zero)
    return [*(gap(zero | {name: fmpq(1)}) - start for name in names), -start]


def solved(equations: list[str], names: list[str]) -> list[fmpq]:
    rows = [row(each, names) for each in equations]
    left = fmpq_mat([each[:-1] for each in rows])
    right = fmpq_mat([[each[-1]] for each in rows])
    return [value[0] for value in left.solve(right).tolist()]


def test_simultaneous_equations_and_their_stories() -> None:
    for item, text in sample("equations.simultaneous"):
        numbers = [fmpq(int(n)) for n in re.findall(r"\d+", text)]
        key = line(item.key)
        if found := re.fullmatch(r"Solve the simultaneous equations (.*) and (.*)\.", text):
            x, y = solved([found[1], found[2]], ["x", "y"])
            assert key == f"x = {x}, y = {y}", (item.address, text, key)
        elif "£" in text:
            a, b, p, c, d, q = numbers
            (price, _) = fmpq_mat([[a, b], [c, d]]).solve(fmpq_mat([[p], [q]])).tolist()
            assert key == f"£{price[0]}", (item.address, text, key)
        else:
            total, apart = numbers
            assert key == str((total + apart) / 2), (item.address, text, key)


def test_balances() -> None:
    for item, text in sample("equations.balances"):
        assert item.figure is not None
        words = kind_of(item.figure).words(item.figure)
        pans = re.fullmatch(r".*level\. On the left: (.*)\. On the right: (.*)\.", words)
        assert pans, words
        name = re.search(r"block (\w)\?", text)
        assert name
        sides = []
        for pan in pans.groups():
            blocks = re.findall(r"(\d+) blocks? marked (\w+)", pan)
            sides.append(" + ".join(f"{count} × {label}" for count, label in blocks))
        assert solved([" = ".join(sides)], [name[1]]) == [worth(line(item.key), {})], words
