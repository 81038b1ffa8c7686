"""What results suggest: the rule, its honesty about small classes, pairs, own views."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.records.reports.advice import (
    SMALL,
    Next,
    Thresholds,
    advise,
    mixed_pairs,
)
from itembank.records.statistics.own_view import (
    FEWEST_FOR_AGREEMENT,
    agreement,
    compare_views,
    confident_answers,
    fooled_the_confident,
)

seats = st.from_regex(r"[A-F][1-6]", fullmatch=True)
scores = st.dictionaries(seats, st.integers(0, 8), max_size=36)
results = st.integers(1, 40).flatmap(lambda n: st.tuples(st.integers(0, n), st.just(n)))


@pytest.mark.parametrize(
    ("right", "out_of", "next_"),
    [(13, 27, Next.AGAIN), (14, 28, Next.GROUP), (22, 28, Next.GROUP), (24, 30, Next.ON)],
)
def test_the_lines_between_suggestions(right, out_of, next_):
    # 50 % and 80 % themselves belong to the better suggestion.
    assert advise(right, out_of).next is next_


@given(results)
def test_a_suggestion_is_close_when_its_interval_reaches_another(pair):
    found = advise(*pair)
    rule = Thresholds()
    ends = {rule.zone(found.interval.low), rule.zone(found.interval.high)}
    assert found.close == (ends != {found.next})
    assert ("A close call" in found.why) == found.close
    assert ("Only" in found.why) == (pair[1] < SMALL)


@given(results)
def test_an_interval_from_the_lowest_suggestion_to_the_highest_reaches_the_one_between(pair):
    found = advise(*pair)
    reached = {found.next, *found.others}
    assert Next.GROUP in reached or len(reached) == 1


def test_one_answer_is_too_few_to_say_anything():
    assert advise(1, 1).others == (Next.AGAIN, Next.GROUP)
    assert advise(1, 1).words == "too few to say; perhaps go on"


@given(results)
def test_no_more_is_said_than_the_figures_allow(pair):
    found = advise(*pair)
    unsure = any(word in found.words for word in ("perhaps", "too close", ", or "))
    assert unsure == (found.close or pair[1] < SMALL)
    assert str(found.next) in found.words
    if pair[1] == 3:
        assert "perhaps" in found.words


@given(results)
def test_more_right_answers_never_suggest_teaching_more(pair):
    right, out_of = pair
    if right < out_of:
        order = list(Next)
        assert order.index(advise(right, out_of).next) <= order.index(
            advise(right + 1, out_of).next
        )


def test_own_thresholds_move_the_lines():
    strict = Thresholds(again_below=0.7, on_from=0.95)
    assert advise(20, 30, strict).next is Next.AGAIN
    assert "70 %" in strict.rule
    with pytest.raises(ValueError, match="rise"):
        Thresholds(again_below=0.9, on_from=0.8)


@given(scores)
def test_pairs_hold_everyone_once_and_never_two_of_the_strongest(found):
    pairs = mixed_pairs(found)
    flat = [seat for pair in pairs for seat in pair]
    assert sorted(flat) == sorted(found)
    if len(found) > 1:
        assert all(2 <= len(pair) <= 3 for pair in pairs)
        middle = sorted(found.values())[len(found) // 2]
        assert all(min(found[seat] for seat in pair) <= middle for pair in pairs)
        assert all(found[pair[0]] >= found[pair[1]] for pair in pairs)


@given(st.lists(st.tuples(st.integers(0, 2), st.integers(0, 8)), min_size=8, max_size=40))
def test_agreement_is_goodman_and_kruskals_gamma(rows):
    from scipy.stats import somersd

    sure, marks = zip(*rows, strict=True)
    found = agreement(sure, marks)
    if found is None:
        return
    # Somers' D counts pairs tied in the score as well: gamma is D with those put aside.
    pairs = sum(a != b for i, a in enumerate(sure) for b in sure[:i])
    strict = sum(a != b and x != y for i, (a, x) in enumerate(rows) for b, y in rows[:i])
    assert found == pytest.approx(somersd(sure, marks).statistic * pairs / strict)


def test_agreement_of_few_is_not_given():
    few = FEWEST_FOR_AGREEMENT - 1
    assert agreement(range(few), range(few)) is None
    assert agreement([1] * 10, range(10)) is None


def test_over_and_under_confidence():
    views = {"A1": "sure", "A2": "sure", "B1": "not sure", "B2": "partly", "C1": "sure"}
    found = compare_views(views, {"A1": 4, "A2": 7, "B1": 7, "B2": 1}, ["A1", "B2"], ["A2", "B1"])
    assert (found.over, found.under) == (("A1",), ("B1",))
    assert found.counts == {"not sure": 1, "partly": 1, "sure": 3}
    with pytest.raises(ValueError, match="A1"):
        compare_views({"A1": "maybe"}, {}, [], [])


def test_questions_that_fooled_the_confident():
    views = dict.fromkeys(["A1", "A2", "A3", "A4"], "sure") | {"B1": "not sure"}
    answers = {
        "A1": {1: False, 2: False, 3: True},
        "A2": {1: False, 2: True, 3: True},
        "A3": {1: False, 2: False, 3: True},
        "B1": {1: False, 2: False, 3: False},
    }
    found = fooled_the_confident(confident_answers(views, answers))
    assert [(fooled.number, fooled.wrong, fooled.sure) for fooled in found] == [
        (1, 3, 3),
        (2, 2, 3),
    ]


def test_a_question_that_most_of_the_sure_had_right_fooled_nobody():
    views = {f"A{n}": "sure" for n in range(1, 13)}
    answers = {seat: {1: n > 2, 2: n > 4} for n, seat in enumerate(views, 1)}
    found = fooled_the_confident(confident_answers(views, answers))
    assert [(fooled.number, fooled.wrong, fooled.sure) for fooled in found] == [(2, 4, 12)]


def test_a_class_of_just_enough_pupils_is_not_called_small():
    # Of twelve, eight right: the interval goes from below a half to above four fifths.
    few, enough = advise(7, SMALL - 1), advise(8, SMALL)
    assert "perhaps" in few.words
    assert len(enough.others) == 2
    assert enough.words == "too close to say; perhaps a repair group"
    assert "Only" not in enough.why
    assert f"Only {SMALL - 1} pupils" in few.why
