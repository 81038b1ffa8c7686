"""The digits that a rounded key is printed with, in standard form too."""

import pytest

from itembank.items.asks import Round
from itembank.notation import parse
from itembank.proof.exact.rounding import find_rounded, rounding_fault
from itembank.proof.judge import judge
from itembank.proof.outcome import State
from tests.proof.asked import asked


@pytest.mark.parametrize(
    ("detail", "amount", "key", "fault"),
    [
        ("figures", 3, "1.50 × 10^4", ""),
        ("figures", 3, "1.5 × 10^4", "it needs 2 decimal places, it has 1"),
        ("figures", 2, "1.50 × 10^4", "it needs 1 decimal place, it has 2"),
        ("figures", 1, "2 × 10^-3", ""),
        ("figures", 2, "2.3 × 10^-3", ""),
        ("figures", 2, "2.30 × 10^-3", "it needs 1 decimal place, it has 2"),
        ("figures", 2, "-2.3 × 10^6", ""),
        # Worth 6.8, and not the number 6.8.
        ("places", 1, "3.4 × 2", "it is not one number"),
        ("places", 1, "1/2", "it is not a whole number or a decimal"),
    ],
)
def test_the_digits_of_a_rounded_number(detail, amount, key, fault):
    assert rounding_fault(detail, amount, parse(key)) == fault


@pytest.mark.parametrize(
    ("kind", "printed", "key", "proved"),
    [
        ("figures 3", "14967", "1.50 × 10^4", True),
        ("figures 3", "14967", "1.5 × 10^4", False),
        ("figures 2", "0.002349", "2.3 × 10^-3", True),
        ("figures 2", "0.002349", "2.30 × 10^-3", False),
        ("places 1", "6.84", "6.8", True),
        # A half goes away from zero.
        ("places 1", "6.25", "6.3", True),
        ("places 1", "6.25", "6.2", False),
        ("nearest 10", "-45", "-50", True),
        ("nearest 10", "-45", "-40", False),
        ("places 1", "6.84", "3.4 × 2", False),
    ],
)
def test_a_key_with_other_digits_is_not_proved(kind, printed, key, proved):
    assert (judge(asked(kind, printed, key)).state is State.PROVED) == proved


@pytest.mark.parametrize(
    ("printed", "figures", "shown"),
    [("99.96", 3, "100"), ("9.97", 2, "10"), ("0.0996", 2, "0.10"), ("-99.96", 3, "-100")],
)
def test_what_rounds_up_to_a_longer_number_is_told_with_fewer_places(printed, figures, shown):
    ask = Round(parse(printed), "figures", figures)
    assert find_rounded(ask, parse("1")).shown == shown
