"""Error intervals: two roads, the words of the prompt, data and marking."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.errors import CheckFailed
from itembank.items.asks import kind_of
from itembank.items.item import ErrorInterval, Item, Tier
from itembank.marking.mark import mark
from itembank.marking.verdict import Verdict
from itembank.notation import line, parse
from itembank.notation import tree as t
from itembank.notation.value import NotExact
from itembank.proof import prove_fast, prove_symbolic
from itembank.proof.exact.error_intervals import find_interval, interval_of
from itembank.proof.sympy.sympy_error_intervals import error_interval

X = t.Sym("x")
# From memory: each can be checked in the head.
KNOWN = [
    ("3.4", "places", 1, "nearest", "3.35 ≤ x < 3.45"),
    ("120", "nearest", 10, "nearest", "115 ≤ x < 125"),
    ("8", "nearest", 1, "nearest", "7.5 ≤ x < 8.5"),
    ("0.070", "figures", 2, "nearest", "0.0695 ≤ x < 0.0705"),
    ("100", "figures", 1, "nearest", "95 ≤ x < 150"),
    ("5.6", "places", 1, "down", "5.6 ≤ x < 5.7"),
]
WRONG = ["3.3 ≤ x < 3.5", "3.35 ≤ x ≤ 3.45", "3.35 < x ≤ 3.45", "3.35 ≤ x ≤ 3.44", "3.35 ≤ x"]


def asked(value, to, amount, way="nearest"):
    return ErrorInterval(X, parse(value), to, amount, way)


@pytest.mark.parametrize(("value", "to", "amount", "way", "key"), KNOWN)
def test_both_roads_come_to_known_intervals(value, to, amount, way, key):
    ask = asked(value, to, amount, way)
    for road in (find_interval, error_interval):
        assert road(ask, parse(key)).fault == "", road
    kind = kind_of(ask)
    assert kind.restore(kind.store(ask)) == ask


@pytest.mark.parametrize("road", [find_interval, error_interval])
def test_near_misses_are_wrong_by_both_roads(road):
    ask = asked("3.4", "places", 1)
    for key in WRONG:
        assert road(ask, parse(key)).fault, key
    with pytest.raises(NotExact):
        road(asked("3.45", "places", 1), parse("3.35 ≤ x < 3.45"))


@given(
    st.integers(1, 9999),
    st.integers(0, 3),
    st.sampled_from(["nearest", "down"]),
    st.sampled_from([0, 0, 1, -1]),
)
def test_the_roads_agree_on_any_number(units, places, way, shift):
    value = f"{units // 10**places}.{units % 10**places:0{places}d}" if places else str(units)
    ask = asked(value, "places" if places else "nearest", places or 1, way)
    right = interval_of(ask)
    (_, letter), (_, high) = right.rest
    # The key as it is, or with its upper end a step of a thousandth off.
    off = t.add(high, t.frac(1, 1000)) if shift > 0 else t.sub(high, t.frac(1, 1000))
    key = right if not shift else t.Relation(right.first, (("≤", letter), ("<", off)))
    faults = {bool(road(ask, key).fault) for road in (find_interval, error_interval)}
    assert faults == {bool(shift)}


def item(text, key="3.35 ≤ x < 3.45"):
    before, after = text.split("{n}")
    prompt = (before, parse("3.4"), after, X, ".")
    node = parse(key)
    ask = asked("3.4", "places", 1)
    return Item("a/core/1", "a", Tier.CORE, prompt, ask, node, "inequality", (), (), (), 1, ())


GOOD = "A number is {n} when it is rounded to 1 decimal place. Write the error interval for "


def test_the_words_have_to_say_how_it_was_rounded():
    prove_fast(item(GOOD))
    prove_symbolic(item(GOOD))
    for other in (
        GOOD.replace("1 decimal place", "2 decimal places"),
        GOOD.replace("rounded", "truncated"),
        GOOD.replace("Write the error interval for", "Find"),
    ):
        with pytest.raises(CheckFailed):
            prove_fast(item(other))


def test_typed_intervals_are_marked_whole():
    right = item(GOOD)
    for typed in ("3.35 ≤ x < 3.45", "3.35 <= x < 3.45", "3.45 > x >= 3.35"):
        assert mark(right, typed).verdict is Verdict.RIGHT, typed
    for typed in WRONG:
        assert mark(right, typed).verdict is not Verdict.RIGHT, typed
    with pytest.raises(CheckFailed):
        prove_fast(replace(right, key=parse("3.35 ≤ x ≤ 3.45")))


def test_the_interval_is_written_in_decimals():
    assert line(interval_of(asked("3.4", "places", 1))) == "3.35 ≤ x < 3.45"
