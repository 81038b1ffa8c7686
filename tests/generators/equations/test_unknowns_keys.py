"""Keys of topics with unknowns, found a third way: from what is printed, by python-flint."""

from __future__ import annotations

import re
from functools import cache

from flint import fmpq, fmpq_mat, fmpq_poly

from itembank.figures.figure import kind_of
from itembank.notation import line
from tests.depth import whole
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
    rows = [row(equation, names) for equation in equations]
    left = fmpq_mat([each[:-1] for each in rows])
    right = fmpq_mat([[each[-1]] for each in rows])
    return [value[0] for value in left.solve(right).tolist()]


@whole
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


@whole
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


def ends(words: str) -> list[tuple[fmpq, bool, str]]:
    """Return the ends of a span in the words of a number line: number, whether it counts, side."""
    low, high, steps = re.search(r"goes from (.+?) to (.+?) in (\d+) equal steps", words).groups()  # type: ignore[union-attr]
    first, last = (fmpq(int(text.replace("negative ", "-"))) for text in (low, high))
    circles = [
        (first + (last - first) * int(at) / int(steps), kind == "filled")
        for kind, at in re.findall(r"an? (open|filled) circle (\d+) steps? after", words)
    ]
    sides = ["low", "high"] if len(circles) == 2 else ["low" if "to the right" in words else "high"]
    return [(*circle, side) for circle, side in zip(circles, sides, strict=True)]


def lies(value: fmpq, span: list[tuple[fmpq, bool, str]]) -> bool:
    return all(
        (value == end and counts) or (value > end if side == "low" else value < end)
        for end, counts, side in span
    )


@cache
def number(written: str) -> fmpq:
    return worth(written, {})


def fits(value: fmpq, relation: str, letter: str) -> bool:
    """Tell whether an inequality as it is written holds for a value of its letter."""
    parts = re.split(r" ([<>≤≥]) ", relation)
    sides = [value if part == letter else number(part) for part in parts[::2]]
    tests = {"<": fmpq.__lt__, ">": fmpq.__gt__, "≤": fmpq.__le__, "≥": fmpq.__ge__}
    return all(tests[op](a, b) for a, op, b in zip(sides, parts[1::2], sides[1:], strict=False))


@whole
def test_inequalities_on_a_line() -> None:
    tried = [fmpq(n, 4) for n in range(-250, 250)]
    for item, text in sample("equations.inequalities-on-a-line"):
        assert item.figure is not None
        span = ends(kind_of(item.figure).words(item.figure))
        key = line(item.key)
        inside = [n for n in range(-60, 60) if lies(fmpq(n), span)]
        if "Write the inequality" in text:
            name = text[-2]
            assert all(fits(n, key, name) == lies(n, span) for n in tried), (item.address, key)
            wrong = [line(slip.wrong) for slip in item.slips]
            assert all(any(fits(n, w, name) != lies(n, span) for n in tried) for w in wrong)
        elif "List the integers" in text:
            assert key == ", ".join(map(str, inside)), item.address
        else:
            assert key == str(min(inside) if "smallest" in text else max(inside)), item.address


@whole
def test_quadratic_equations() -> None:
    for item, text in sample("equations.quadratics"):
        key = line(item.key)
        if found := re.fullmatch(r"Solve (.*) = (.*)\.", text):
            name = re.search("[a-z]", found[1])
            assert name
            ring = fmpq_poly([0, 1])
            at = {name[0]: ring}
            roots = (worth(found[1], at) - worth(found[2], at)).roots()
            said = sorted(worth(word.split(" = ")[1], {}) for word in key.split(" or "))
            assert said == sorted(root for root, _ in roots), (item.address, text, key)
        else:
            more, area = (int(n) for n in re.findall(r"\d+", text))
            assert [n for n in range(1, 200) if n * (n + more) == area] == [int(key)], text
