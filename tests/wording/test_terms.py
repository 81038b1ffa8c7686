"""Numbers that words name by a property are found again by trying every number."""

import re

from hypothesis import given
from hypothesis import strategies as st

from itembank.notation import tree as t
from itembank.notation.value import exact
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
