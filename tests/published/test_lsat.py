"""Item statistics of the LSAT, section 6: published and recomputed values.

1,000 candidates, five right/wrong items: Bock & Lieberman, *Psychometrika* 35, 1970, also in
the R package ltm, whose output the marginal fit repeats.
"""

import numpy as np
import pytest

from itembank.records.statistics.interval import wilson
from itembank.records.statistics.item_statistics import corrected_correlation, facility, kr20
from itembank.records.statistics.rasch import rasch

# Each pattern of answers (first character: item 1) and how many candidates gave it.
PATTERNS = """
    00000:3 00001:6 00010:2 00011:11 00100:1 00101:1 00110:3 00111:4
    01000:1 01001:8 01010:0 01011:16 01100:0 01101:3 01110:2 01111:15
    10000:10 10001:29 10010:14 10011:81 10100:3 10101:28 10110:15 10111:80
    11000:16 11001:56 11010:21 11011:173 11100:11 11101:61 11110:28 11111:298
"""


@pytest.fixture(scope="module")
def lsat():
    pairs = [pair.split(":") for pair in PATTERNS.split()]
    return np.array(
        [[int(mark) for mark in marks] for marks, count in pairs for _ in range(int(count))]
    )


def test_the_table_is_whole(lsat):
    assert lsat.shape == (1000, 5)


# The figures of the tests below that name no program were recomputed from the table.


def test_facility(lsat):
    assert facility(lsat) == pytest.approx([0.924, 0.709, 0.553, 0.763, 0.870], abs=5e-4)


def test_reliability(lsat):
    assert kr20(lsat) == pytest.approx(0.295, abs=5e-4)


def test_correlation_with_the_rest_of_the_test(lsat):
    # "Excluding item" column of the R package ltm's description of the data; from memory.
    expected = [0.1128, 0.1532, 0.1728, 0.1444, 0.1216]
    assert corrected_correlation(lsat) == pytest.approx(expected, abs=5e-4)


def test_rasch_difficulties_by_conditional_likelihood(lsat):
    found = rasch(lsat)
    assert found.values == pytest.approx([-1.256, 0.475, 1.236, 0.168, -0.623], abs=5e-4)
    assert found.values.sum() == pytest.approx(0, abs=1e-9)


def test_conditional_and_marginal_difficulties_agree(lsat):
    # Marginal fit of the R package ltm: common slope 0.755. Its difficulties are in standard
    # deviations of ability, so they are the conditional ones divided by the slope, but for
    # where the zero is put; the two ways of fitting part by little (under 0.03 logits here).
    marginal = np.array([-3.615, -1.322, -0.318, -1.730, -2.780])
    centred = 0.755 * (marginal - marginal.mean())
    assert rasch(lsat).values == pytest.approx(centred, abs=0.03)


def test_wilson_interval_of_five_in_ten():
    # Wilson, *Journal of the American Statistical Association* 22, 1927; recomputed.
    assert wilson(5, 10)[1:] == pytest.approx((0.237, 0.763), abs=5e-4)
    # The bound solves (share - p)^2 = z^2 p (1 - p) / n, found here without the formula.
    z = 1.959963984540054
    low, high = 0.0, 0.5
    for _ in range(60):
        middle = (low + high) / 2
        outside = (0.5 - middle) ** 2 > z * z * middle * (1 - middle) / 10
        low, high = (middle, high) if outside else (low, middle)
    assert wilson(5, 10).low == pytest.approx(low, abs=1e-4)
