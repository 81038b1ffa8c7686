"""Number topics against values that are published elsewhere, each with its source beside it.

All of them are given from memory; the arithmetic of most checks itself.
"""

from __future__ import annotations

import pytest

from generators.number._standard import standard
from generators.number.hcf import Hcf
from generators.number.hcf import Kind as HcfKind
from generators.number.lcm import Kind as LcmKind
from generators.number.lcm import Lcm
from generators.number.prime_factors import Kind as PrimeKind
from generators.number.prime_factors import PrimeFactors
from itembank.items.item import Common, ErrorInterval, Round, Tier
from itembank.notation import line, parse
from itembank.notation import tree as t
from itembank.notation.value import exact
from itembank.proof.exact.error_intervals import interval_of
from itembank.proof.exact.integers import find_common
from itembank.proof.exact.rounding import find_rounded


# Euclid, Elements IX.36: perfect numbers are 2^(n − 1) × (2^n − 1) with a prime bracket: 28, 496,
# 8128. Hardy and Ramanujan's taxi: 1729. 1001 is 7 × 11 × 13.
@pytest.mark.parametrize(
    ("n", "product"),
    [
        (28, "2^2 × 7"),
        (496, "2^4 × 31"),
        (8128, "2^6 × 127"),
        (1729, "7 × 13 × 19"),
        (1001, "7 × 11 × 13"),
    ],
)
def test_known_prime_factorisations(n: int, product: str) -> None:
    draft = PrimeFactors().make(Tier.CORE, PrimeKind.MIDDLE, n, 0)
    assert line(draft.key) == product
    assert exact(draft.key) == n


def test_euclids_algorithm_and_the_lowest_multiple_of_the_first_ten_numbers() -> None:
    # Textbooks' example of Euclid's algorithm (Elements VII.2): 1071 and 462 have 21 in common.
    hcf = Hcf().make(Tier.SUPPORT, HcfKind.TWO, 462, 1071)
    assert line(hcf.key) == "21"
    # The first number that all of 1 to 10 divide is 2520 (OEIS A003418).
    lcm = Lcm().make(Tier.CORE, LcmKind.THREE, 7, 8, 45)
    assert line(lcm.key) == "2520"
    ask = Common(tuple(map(t.Int, range(1, 11))), "lcm")
    assert not find_common(ask, t.Int(2520)).fault


# The speed of light, exact by the definition of the metre (SI, 1983): 299 792 458 m/s. The
# astronomical unit (IAU, 2012): 149 597 870 700 m.
@pytest.mark.parametrize(
    ("digits", "exponent", "written"),
    [
        (299792458, 0, "2.99792458 × 10^8"),
        (149597870700, 0, "1.495978707 × 10^11"),
        (254, -4, "2.54 × 10^(-2)"),  # the inch in metres (1959), 0.0254
    ],
)
def test_defined_constants_in_standard_form(digits: int, exponent: int, written: str) -> None:
    number = standard(digits, exponent)
    assert line(number.node) == written
    assert exact(number.node) == exact(number.ordinary)


@pytest.mark.parametrize(
    ("text", "to", "amount", "key"),
    [
        ("22/7", "places", 2, "3.14"),  # Archimedes' bound for π
        ("355/113", "places", 6, "3.141593"),  # Zu Chongzhi's: π to six places
        ("299792458", "figures", 3, "300000000"),
        ("149597870700", "figures", 2, "150000000000"),
    ],
)
def test_known_numbers_rounded(text: str, to: str, amount: int, key: str) -> None:
    ask = Round(parse(text), to, amount)  # type: ignore[arg-type]
    found = find_rounded(ask, parse(key))
    assert not found.fault
    assert found.shown == key


def test_grains_on_the_chessboard() -> None:
    # 1 + 2 + 4 + … over 64 squares: 2^64 − 1 grains.
    assert exact(parse("2^64 - 1")) == 18_446_744_073_709_551_615


def test_pi_lies_in_the_interval_of_its_rounding() -> None:
    # π = 3.14159 26535 …: it has to lie where 3.142 says it does, and so do Archimedes' bounds not.
    interval = interval_of(ErrorInterval(t.Sym("x"), parse("3.142"), "places", 3))
    low, high = exact(interval.first), exact(interval.rest[1][1])
    assert low <= exact(parse("3.1415926535")) < high
    assert not low <= exact(parse("223/71")) < high
