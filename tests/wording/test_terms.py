"""Numbers that words name by a property are found again by trying every number."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.bank.model.fields import BankItem
from itembank.bank.question.as_item import read_item
from itembank.bank.question.given.task_given import NeedsPerson
from itembank.notation import parse
from itembank.notation import tree as t
from itembank.notation.value import exact
from itembank.proof.judge import judge
from itembank.proof.outcome import State
from itembank.wording.tasks.reader import read_prompt
from itembank.wording.tasks.sums.sums import NotBuilt

SMALL = st.integers(1, 400)


def built(*runs):
    """Return what a prompt's words make of its numbers, or None where they make nothing."""
    reading = read_prompt(runs)
    assert not reading.unread, reading.unread
    nodes = [run for run in runs if not isinstance(run, str)]
    try:
        target, _ = reading.saying.build(*(nodes[place] for place in reading.args))
    except NotBuilt:
        return None
    if isinstance(target, t.Listing):
        return [exact(part) for part in target.parts]
    return exact(target)


def is_prime(n):
    # A row of n ones is no rectangle of rows of ones: a definition that nothing else here uses.
    return n > 1 and not re.fullmatch(r"(11+?)\1+", "1" * n)


@given(n=st.integers(1, 40), limit=SMALL)
def test_the_next_and_the_last_multiple_are_the_nearest(n, limit):
    multiples = [k for k in range(1, 500) if k % n == 0]
    after = built("Find the next multiple of ", t.Int(n), " after ", t.Int(limit), ".")
    before = built("Find the largest multiple of ", t.Int(n), " less than ", t.Int(limit), ".")
    assert after == min(k for k in multiples if k > limit)
    assert before == max((k for k in multiples if k < limit), default=None)


@given(limit=st.integers(2, 300))
def test_the_next_prime_is_the_nearest(limit):
    after = built("What is the next prime number after ", t.Int(limit), "?")
    assert after == next(k for k in range(limit + 1, 1000) if is_prime(k))
    below = built("Write down the largest prime number less than ", t.Int(limit), ".")
    assert below == max((k for k in range(2, limit) if is_prime(k)), default=None)


@given(n=st.integers(2, 400))
def test_every_factor_is_listed_once(n):
    assert built("List all the factors of ", t.Int(n), ".") == [
        k for k in range(1, n + 1) if n % k == 0
    ]


@given(low=SMALL, width=st.integers(4, 60))
def test_primes_between_leave_the_ends_out_or_say_nothing(low, width):
    found = built(
        "Write down all the prime numbers between ", t.Int(low), " and ", t.Int(low + width), "."
    )
    inside = [k for k in range(low + 1, low + width) if is_prime(k)]
    if found is None:
        assert len(inside) < 2 or is_prime(low) or is_prime(low + width)
    else:
        assert found == inside


@given(first=st.integers(1, 50), step=st.integers(1, 20), place=st.integers(5, 200))
def test_a_term_of_an_even_sequence_is_the_one_that_counting_on_reaches(first, step, place):
    shown = t.Listing(tuple(t.Int(first + k * step) for k in range(4)))
    at = first
    for _ in range(place - 1):
        at += step
    assert built(f"Find the {place}th term of the sequence ", shown, ".") == at


@pytest.mark.parametrize(
    ("prompt", "key"),
    [
        ("Find the gradient of {y = -2x + 3}.", "-2"),
        ("Find the gradient of {y = -x/2 - 3}.", "-1/2"),
        ("Find the gradient of {y = -(2x - 3)}.", "-2"),
        ("Find the y-intercept of {y = -2x + 3}.", "3"),
        ("Find the 10th term of the sequence with nth term {-2n + 7}.", "-13"),
        ("Find the first 3 terms of the sequence with nth term {-n^2}.", "-1, -4, -9"),
        ("Find the 2nd term of the sequence with nth term {3 - n^2}.", "-1"),
    ],
)
def test_a_rule_may_begin_with_a_minus(prompt, key):
    read = read_item(BankItem(id="a-1", tier="core", prompt=prompt, key=key), "a:a-1", "t")
    assert judge(read).state is State.PROVED


@pytest.mark.parametrize(
    ("prompt", "says"),
    [
        ("How many times does {0} go into {12}?", "nought goes into nothing so many times"),
        ("How many {0p} coins make {£12}?", "nought goes into nothing so many times"),
        ("Estimate {347 × 2} by rounding each number to 0 significant figures.", "1 significant"),
        ("Find the remainder when {3} is divided by {5}.", "one that is not larger, nor 0"),
        ("Find the next 0 terms of {2, 4, 6}.", "From 1 to 12 terms"),
        ("Find the 0th term of {2, 4, 6}.", "The terms from the 1st to the 1000th"),
    ],
)
def test_what_cannot_be_built_is_told_as_it_is(prompt, says):
    with pytest.raises(NeedsPerson, match=says):
        read_item(BankItem(id="a-1", tier="core", prompt=prompt, key="1"), "a:a-1", "t")


@given(n=st.integers(0, 10**40), figures=st.integers(1, 8))
def test_an_estimate_rounds_numbers_of_any_length(n, figures):
    made = built(
        "Estimate ", t.Int(n), f" by rounding each number to {figures} significant figures."
    )
    digits = len(str(n))
    step = 10 ** max(digits - figures, 0)
    assert made == (n + step // 2) // step * step
    tens = built("Estimate ", t.Int(n), " by rounding each number to the nearest 10.")
    assert tens == (n + 5) // 10 * 10


@given(n=st.integers(1, 10**12), places=st.integers(1, 14))
def test_an_estimate_finds_the_first_digit_of_a_decimal(n, places):
    whole, part = divmod(n, 10**places)
    made = built(
        "Estimate ",
        parse(f"{whole}.{part:0{places}d}"),
        " by rounding each number to 1 significant figure.",
    )
    first = int(str(n)[0])
    rest = int(str(n)[1:] or 0)
    assert made * 10**places == (first + (2 * rest >= 10 ** (len(str(n)) - 1))) * 10 ** (
        len(str(n)) - 1
    )
