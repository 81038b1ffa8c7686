"""p is pence where money is meant, and a letter elsewhere. Each question judged by hand."""

import pytest

from itembank.notation import parse_together
from itembank.notation.tree import Money, symbols, walk


def pence(*lines):
    trees = parse_together(lines)
    money = any(isinstance(part, Money) and part.sign == "p" for t in trees for part in walk(t))
    assert money is not any("p" in symbols(tree) for tree in trees)
    return money


@pytest.mark.parametrize(
    "lines",
    [
        ("40p",),
        ("3 × 40p + £1.20", "£2.40"),
        ("£3.20 + 45p", "365p"),
        ("45p × 8", "£3.60"),
        ("20p : £1.50",),
        ("25p, 30p, 5p",),
        ("x + 20p = 65p", "45p"),
        ("x + (x - 20p) = £1.40", "80p"),
        ("15p + 3x", "£2"),
        ("60p ÷ 4", "15p"),
        ("3/4 of 80p", "60p"),
        ("100 - 65 = 35p",),
    ],
)
def test_money(lines):
    assert pence(*lines)


@pytest.mark.parametrize(
    "lines",
    [
        ("4p = 12", "p = 3"),
        ("3p + 2q",),
        ("3p + 2q + 4p", "7p + 2q"),
        ("6p + 9q", "3(2p + 3q)"),
        ("5p + 3",),
        ("5p - 3p + x",),
        ("2p × 3p", "6p^2"),
        ("3(2p + 5)", "6p + 15"),
        ("5p × 4q",),
        ("3pq + 2p",),
        ("4p/11 + 3p/11",),
        ("q + 5p = 3p",),
        ("2p < 14",),
    ],
)
def test_a_letter(lines):
    assert not pence(*lines)
