"""Recording, replacing, correcting and taking back: nothing is overwritten, and all comes back."""

import datetime

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from itembank.errors import ItembankError
from itembank.records.entries.details import answers_of, scores_of, tallies_by_question
from itembank.records.entries.entries import (
    Answers,
    BandCount,
    Bands,
    Clarity,
    OwnViews,
    Questions,
    Scores,
)
from itembank.records.entries.recording import RecordedAlready, record, record_all
from itembank.records.entries.undoing import undo
from itembank.records.results.correct import correct
from itembank.records.results.lessons import lessons
from itembank.records.store.store import open_store

from .stores import DAY, counting, dump, facts

SEATS = ["A1", "A2", "B1", "B10"]
bands = st.tuples(*[st.integers(0, 30)] * 3).map(
    lambda n: Bands(
        (
            BandCount("R", "Rebuild", 0, 1, n[0]),
            BandCount("S", "Secure", 2, 2, n[1]),
            BandCount("E", "Extend", 3, 4, n[2]),
        )
    )
)
counts = st.integers(1, 30).flatmap(
    lambda there: st.fixed_dictionaries(
        {n: st.tuples(st.integers(0, there), st.just(there)) for n in range(1, 5)}
    ).map(Questions)
)
scores = st.dictionaries(st.sampled_from(SEATS), st.integers(0, 4), min_size=1).map(Scores)
answers = st.dictionaries(
    st.sampled_from(SEATS),
    st.fixed_dictionaries({n: st.booleans() for n in range(1, 5)}),
    min_size=1,
).map(lambda right: Answers(right, {}))
results = st.one_of(bands, counts, scores, answers)
views = st.dictionaries(
    st.sampled_from(SEATS), st.sampled_from(["sure", "partly", "not sure"]), min_size=1
).map(lambda found: OwnViews(found, {}))
clarities = st.builds(Clarity, st.integers(0, 30), st.just(None), st.just("which side is x"))
anything = st.one_of(results, views, clarities)


@pytest.fixture(scope="module")
def places(tmp_path_factory):
    folder = tmp_path_factory.mktemp("stores")
    numbers = iter(range(10**6))
    return lambda: str(folder / f"{next(numbers)}.sqlite3")


@given(first=results, second=results, other=anything)
@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_undo_takes_back_exactly_what_was_recorded_last(places, first, second, other):
    with open_store(places()) as store:
        record(store, facts(), first)
        before = counting(store)
        record(store, facts(), second, replace=True)
        with_second = counting(store)
        assert undo(store, "8k")[2] is True
        assert counting(store) == before
        record(store, facts(), second, replace=True)
        assert counting(store) == with_second
        later = facts(DAY + datetime.timedelta(days=1))
        record(store, later, other)
        assert undo(store, "8K", later.date)[2] is False
        assert counting(store) == with_second


@given(parts=st.lists(anything, min_size=1, max_size=4))
@settings(max_examples=15, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_undoing_everything_leaves_nothing_that_counts_and_deletes_nothing(places, parts):
    with open_store(places()) as store:
        for part in parts:
            record(store, facts(), part, replace=True)
        rows = {name: len(found) for name, found in dump(store).items()}
        for _ in parts:
            undo(store, "8K")
        assert counting(store) == []
        assert {name: len(found) for name, found in dump(store).items()} == rows
        with pytest.raises(ItembankError, match="nothing to undo"):
            undo(store, "8K")


@given(first=results, second=results, view=views, clear=clarities, later=anything)
@settings(max_examples=15, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_what_was_recorded_in_one_go_is_taken_back_in_one_go(
    places, first, second, view, clear, later
):
    with open_store(places()) as store:
        record_all(store, facts(), [first, view])
        before = counting(store)
        record_all(store, facts(), [second, view, clear], replace=True)
        other = facts(DAY + datetime.timedelta(days=1))
        record(store, other, later)
        assert len(undo(store, "8K")[0]) == 1
        kinds, day, again = undo(store, "8K")
        assert (kinds[1:], day, again) == (("own-view", "clarity"), DAY, True)
        assert counting(store) == before
        assert len(undo(store, "8K")[0]) == 2
        assert counting(store) == []


def test_recording_twice_warns_and_changes_nothing(store):
    record(store, facts(), Scores({"A1": 3}))
    before = dump(store, times=True)
    with pytest.raises(RecordedAlready, match="scores by seat already"):
        record(store, facts(), Questions({1: (5, 9)}))
    assert dump(store, times=True) == before


def test_own_views_stand_beside_results(store):
    record_all(store, facts(), [Scores({"A1": 3}), OwnViews({"A1": "sure"}, {}), Clarity(2)])
    assert len(counting(store)) == 3


def test_of_several_things_all_are_recorded_or_none(store):
    record(store, facts(), Clarity(2))
    before = dump(store)
    with pytest.raises(RecordedAlready):
        record_all(store, facts(), [Scores({"A1": 3}), Clarity(3)])
    assert dump(store) == before


def test_answers_give_scores_by_the_marks_of_the_questions(store):
    from dataclasses import replace

    one = facts(questions=2)
    first, second = one.questions
    heavy = replace(one, out_of=4, questions=(first, replace(second, marks=3)))
    number = record(
        store, heavy, Answers({"A1": {1: True, 2: True}, "A2": {1: True, 2: False}}, {})
    )
    with store.reading() as connection:
        assert scores_of(connection, number) == {"A1": 4, "A2": 1}
        assert tallies_by_question(connection, number) == {1: (2, 2), 2: (1, 2)}


def test_a_correction_replaces_and_undo_brings_the_first_back(store):
    shown = {("A1", 2): "ratio.adds", ("A2", 2): "ratio.adds"}
    right = {"A1": {1: True, 2: False}, "A2": {1: True, 2: False}}
    record(store, facts(questions=2), Answers(right, shown))
    before = counting(store)
    _, number = correct(store, "8K", DAY, [("A1", 2, True)])
    with store.reading() as connection:
        assert answers_of(connection, number)["A1"] == {1: True, 2: True}
        assert tallies_by_question(connection, number)[2] == (1, 2)
    assert "ratio.adds" in repr(counting(store))
    assert repr(counting(store)).count("ratio.adds") == 1
    undo(store, "8K")
    assert counting(store) == before


@pytest.mark.parametrize(
    ("what", "change", "words"),
    [
        (Scores({"A1": 3}), ("A2", None, 3), "seat A2"),
        (Scores({"A1": 3}), ("A1", None, 5), "between 0 and 4"),
        (Scores({"A1": 3}), ("A1", 2, True), "Only scores"),
        (Answers({"A1": {1: True}}, {}), ("A1", None, 3), "answer by answer"),
        (Answers({"A1": {1: True}}, {}), ("A1", 9, True), "no question 9"),
        (Questions({1: (3, 9)}), ("A1", 1, True), "counted by hands"),
    ],
)
def test_corrections_that_do_not_fit_change_nothing(store, what, change, words):
    record(store, facts(), what)
    before = dump(store, times=True)
    with pytest.raises(ItembankError, match=words):
        correct(store, "8K", DAY, [change])
    assert dump(store, times=True) == before


def test_a_pack_made_again_does_not_change_what_results_were_about(store):
    record(store, facts(questions=4), Questions(dict.fromkeys(range(1, 5), (5, 9))))
    record(store, facts(questions=2), Clarity(1))
    with store.reading() as connection:
        assert lessons(connection, "8K")[0].out_of == 4
    assert len(dump(store)["question"]) == 4
