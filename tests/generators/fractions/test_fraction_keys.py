"""Keys on fractions found a third way: from the printed words, and by counting out."""

from __future__ import annotations

import re
from itertools import pairwise

from flint import fmpq

from itembank.items.item import Tier
from itembank.notation import line
from tests.depth import whole
from tests.generators.fractions.fraction_reader import (
    BY_ID,
    SAMPLE,
    SIZES,
    answer,
    everything,
    mathematics,
    printed,
    sample,
    worth,
)


def test_the_reader_of_this_file_knows_its_arithmetic() -> None:
    # Values from memory; each can be done in the head.
    assert worth("1/2 + 1/3") == fmpq(5, 6)
    assert worth("2 1/2 × 2") == 5
    assert worth("(1/2)^2 + 3/4 ÷ 1/2") == fmpq(7, 4)
    assert worth("37.5%") == fmpq(3, 8)
    assert worth("0.16\u0307") == fmpq(1, 6)
    assert worth("0.2\u03077\u0307") == fmpq(3, 11)
    assert worth("0.1\u030742857\u0307") == fmpq(1, 7)
    assert worth("3/4 of 60 kg") == 45


@whole
def test_sums_products_and_conversions_come_to_their_keys() -> None:
    seen = 0
    for item in everything():
        shown = mathematics(item)
        text = printed(item)
        if len(shown) == 1 and not re.search("[□,]|Which sign", text):
            assert worth(shown[0]) == answer(item.key), item.address
            seen += 1
    assert seen > 20 * SAMPLE


@whole
def test_numbers_in_boxes_make_the_equation_true_and_no_other_does() -> None:
    seen = 0
    for item in everything():
        for shown in mathematics(item):
            if "□" not in shown:
                continue
            left, right = shown.split(" = ")
            key = line(item.key)
            for value, same in ((f"({key})", True), (f"({key} + 1)", False)):
                sides = [worth(side.replace("□", value)) for side in (left, right)]
                assert (sides[0] == sides[1]) is same, item.address
            seen += 1
    assert seen > 800 / 150 * SAMPLE


@whole
def test_orders_are_orders() -> None:
    for item in everything("order"):
        if "Which sign" in printed(item):
            first, second = mathematics(item)
            left, sign, right = re.fullmatch(r"(\S+) ([<>=]) (\S+)", line(item.key)).groups()
            assert (left, right) == (first, second)
            assert {"<": worth(left) < worth(right), ">": worth(left) > worth(right)}[sign]
            continue
        shown = mathematics(item)[0].split(", ")
        given = line(item.key).split(", ")
        assert sorted(given) == sorted(shown)
        values = [worth(part) for part in given]
        assert all(low < high for low, high in pairwise(values))
        # A list that is printed in the right order already asks for nothing.
        assert shown != given


@whole
def test_fractions_of_amounts_by_counting_out() -> None:
    for item in everything("of-quantity"):
        text = printed(item)
        if text.startswith("Work out"):
            continue
        amounts = [int(found) for found in re.findall(r"£?(\d+)(?! ?/|\d)(?<!/\d)(?<!/\d\d)", text)]
        whole = amounts[0]
        fractions = [(int(a), int(b)) for a, b in re.findall(r"(\d+)/(\d+)", text)]
        (a, b), *more = fractions
        # Deal the whole out into b equal heaps and keep a of them.
        first = len([n for n in range(whole) if n % b < a])
        assert whole % b == 0
        if not more:
            assert answer(item.key) == first
        elif "of the rest" in text:
            c, d = more[0]
            rest = whole - first
            assert rest % d == 0
            assert answer(item.key) == len([n for n in range(rest) if n % d < c])
        else:
            c, d = more[0]
            second = len([n for n in range(whole) if n % d < c])
            assert answer(item.key) == whole - first - second


@whole
def test_wholes_by_trying_every_number() -> None:
    for item in everything("find-whole"):
        text = printed(item)
        if "□" in text:
            continue
        a, b = (int(n) for n in re.search(r"(\d+)/(\d+)", text).groups())  # type: ignore[union-attr]
        known = int(re.search(r"(?:Now|That is) £?(\d+)", text).group(1))  # type: ignore[union-attr]
        left = " left" in text
        fits = [
            n
            for n in range(1, 2000)
            if n * a % b == 0 and (n - n * a // b if left else n * a // b) == known
        ]
        assert [answer(item.key)] == fits, item.address


@whole
def test_one_amount_as_a_fraction_of_another_in_the_smaller_unit() -> None:
    for item in sample(BY_ID["fractions.lowest-terms"], Tier.CHALLENGE):
        sizes = []
        for shown in mathematics(item):
            found = re.fullmatch(r"(£?)(\d+) ?(\w*)", shown)
            assert found is not None
            sizes.append(int(found[2]) * SIZES[found[1] or found[3]])
        whole, part = sizes
        assert answer(item.key) == fmpq(part, whole)


@whole
def test_stories_with_mixed_numbers_and_portions() -> None:
    seen = 0
    for item in everything("add-mixed", "divide", "improper-mixed"):
        text, shown = printed(item), mathematics(item)
        if len(shown) != 2:
            continue
        first, second = (worth(part) for part in shown)
        if "left?" in text:
            expected = first - second
        elif "altogether?" in text and item.topic.endswith("add-mixed"):
            expected = first + second
        elif item.topic.endswith("improper-mixed"):
            # The container is named first in three of the stories, and holds less.
            expected = max(first, second) / min(first, second)
        else:
            expected = first / second
        assert answer(item.key) == expected, item.address
        seen += 1
    assert seen > 200 / 150 * SAMPLE


@whole
def test_the_rest_of_a_whole_after_two_fractions() -> None:
    seen = 0
    for item in sample(BY_ID["fractions.add-unlike"], Tier.CHALLENGE):
        shown = mathematics(item)
        if len(shown) == 2:
            assert sum((worth(part) for part in shown), fmpq(0)) + answer(item.key) == 1
            seen += 1
    assert seen > 20 / 150 * SAMPLE
