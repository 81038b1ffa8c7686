"""Numbers written out in words: one by one, and two that are joined by *and*."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from itembank.marking.typing.numerals import in_digits

_UNITS = (
    "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
    "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen",
    "nineteen",
)  # fmt: skip
_TENS = (
    "", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety",
)  # fmt: skip


def spelt(n: int) -> str:
    """Return a whole number below a thousand million as it is said in Britain."""
    for size, name in ((10**6, "million"), (10**3, "thousand")):
        if n >= size:
            rest = n % size
            joint = " and " if rest < 100 else " "
            return f"{spelt(n // size)} {name}" + (f"{joint}{spelt(rest)}" if rest else "")
    if n >= 100:
        return f"{_UNITS[n // 100]} hundred" + (f" and {spelt(n % 100)}" if n % 100 else "")
    if n >= 20:
        return _TENS[n // 10] + (f"-{_UNITS[n % 10]}" if n % 10 else "")
    return _UNITS[n]


@given(st.integers(0, 10**9 - 1))
def test_a_number_in_words_is_read_back(n: int) -> None:
    assert in_digits(spelt(n)) == str(n)


@given(st.sampled_from((100, 1_000, 10**6)), st.integers(1, 9), st.integers(1, 9))
def test_two_round_numbers_are_not_put_together(size: int, first: int, second: int) -> None:
    """Three hundred and two hundred came to 30,200, and two of thousands to their sum."""
    pair = first * size, second * size
    assert in_digits(" and ".join(map(spelt, pair))) == f"{pair[0]} and {pair[1]}"
