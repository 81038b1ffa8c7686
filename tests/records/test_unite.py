"""Two copies of a results file that went their own ways come together without loss or doubling."""

import contextlib
import datetime
import shutil

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from itembank.errors import ItembankError
from itembank.records.entries.entries import Answers, Clarity, Scores
from itembank.records.entries.recording import record
from itembank.records.entries.undoing import undo
from itembank.records.forget.forgetting import forget
from itembank.records.pupils.homes import Move
from itembank.records.pupils.moves import move_seats
from itembank.records.pupils.whom import Whom
from itembank.records.results.lessons import lessons
from itembank.records.store.copies import copies_beside
from itembank.records.store.store import open_store
from itembank.records.unite.uniting import unite
from tests.depth import cases, whole

from .stores import DAY, dump, facts

WHATS = st.sampled_from(
    [
        Scores({"A1": 3, "A2": 1}),
        Scores({"A1": 4}),
        Answers({"A1": {1: True, 2: False}}, {("A1", 2): "ratio.adds"}),
        Clarity(2, None, "which way round"),
    ]
)
ACTS = st.lists(
    st.tuples(st.sampled_from(["record", "record", "undo"]), st.integers(0, 1), WHATS), max_size=5
)
MOMENT = datetime.datetime(2026, 11, 30, 9, 0)


def play(store, acts, start, step=2):
    for number, (act, day, what) in enumerate(acts):
        date = DAY + datetime.timedelta(days=day)
        if act == "record":
            now = MOMENT + datetime.timedelta(minutes=start + step * number)
            record(store, facts(date), what, replace=True, now=now)
        else:
            with contextlib.suppress(ItembankError):
                undo(store, "8K", date)


def state(store):
    """Return what a store says, by the names of entries: which there are, and which count."""
    from itembank.records.store import store_tables as tables
    from itembank.records.unite.both_files import entries_of_file as _entries
    from itembank.records.unite.which_counts import _content

    with store.reading() as connection:
        entries, numbers = _entries(connection)
        found = {
            uid: (
                entry.key,
                entry.undone_at is None,
                not entry.winners,
                _content(connection, entry.kind, numbers[uid]),
            )
            for uid, entry in entries.items()
        }
        questions = connection.execute(tables.question.select()).all()
        per_lesson = [(lesson.class_name, lesson.date) for lesson in lessons(connection)]
    assert len(per_lesson) == len(set(per_lesson))  # nothing counts twice
    return found, len(questions)


@whole
@given(prefix=ACTS, one=ACTS, other=ACTS)
@settings(
    max_examples=cases(8, 50, 25), deadline=None, suppress_health_check=[HealthCheck.too_slow]
)
def test_a_union_loses_nothing_and_counts_nothing_twice(tmp_path_factory, prefix, one, other):
    folder = tmp_path_factory.mktemp("unite")
    places = [folder / name for name in ("a.sqlite3", "b.sqlite3", "c.sqlite3", "d.sqlite3")]
    with open_store(str(places[0])) as store:
        play(store, prefix, 0)
    shutil.copy(places[0], places[1])
    with open_store(str(places[0])) as store:
        play(store, one, 100)
    with open_store(str(places[1])) as store:
        play(store, other, 101)
    for source, copy in zip(places[:2], places[2:], strict=True):
        shutil.copy(source, copy)
    with open_store(str(places[2])) as a, open_store(str(places[3])) as b:
        before = [state(a)[0], state(b)[0]]
        unite(a, places[1])
        unite(b, places[0])
        first, second = state(a), state(b)
        assert first == second
        assert set(first[0]) == {*before[0], *before[1]}
        for each in before:
            for uid, (key, live, _, content) in each.items():
                found = first[0][uid]
                assert (found[0], found[3]) == (key, content)
                assert found[1] <= live  # taken back in either is taken back
        assert unite(a, places[1]).entries == 0
        assert unite(a, places[0]).entries == 0
        assert state(a) == first


def two(tmp_path):
    mine, copy = tmp_path / "results.sqlite3", tmp_path / "results (a copy).sqlite3"
    with open_store(str(mine)) as store:
        record(store, facts(), Scores({"A1": 3, "ZQ7": 1}))
    shutil.copy(mine, copy)
    return mine, copy


def test_two_corrections_of_one_lesson_are_both_told_and_a_person_decides(tmp_path):
    mine, copy = two(tmp_path)
    with open_store(str(copy)) as store:
        record(store, facts(), Scores({"A1": 2}), replace=True)
    with open_store(str(mine)) as store:
        record(store, facts(), Scores({"A1": 4}), replace=True)
        (told,) = unite(store, copy).differing
        assert (told.class_name, told.date, told.kinds) == ("8K", DAY, ("scores", "scores"))

        def counts():
            from .stores import counting

            return [row[1] for row in counting(store)[0][4]]

        assert counts() == [4]
        undo(store, "8K")
        assert counts() == [2]
        unite(store, copy)
        assert counts() == [2]
        undo(store, "8K")
        assert counts() == [3, 1]


def test_what_was_forgotten_does_not_come_back(tmp_path):
    mine, copy = two(tmp_path)
    later = DAY + datetime.timedelta(days=1)
    with open_store(str(copy)) as store:
        record(store, facts(later), Answers({"ZQ7": {1: True}, "A1": {1: True}}, {}))
    with open_store(str(mine)) as store:
        forget(store, Whom("8K", "ZQ7"))
        done = unite(store, copy)
        assert done.kept_out == {("8k", "zq7")}
        assert not any(row[1] == "ZQ7" for row in dump(store)["score"])
        forget(store, Whom("8K", before=later))
        assert unite(store, copy).entries == 0
        with store.reading() as connection:
            assert [lesson.date for lesson in lessons(connection)] == [later]
    with open_store(str(copy)) as store:
        done = unite(store, mine)
        assert done.entries_forgotten_there == 1
        with store.reading() as connection:
            assert [lesson.date for lesson in lessons(connection)] == [later]


def test_copies_of_an_older_store_know_each_other(tmp_path):
    from itembank.records.store.migrate import downgrade

    mine, copy = two(tmp_path)
    with open_store(str(mine)) as store, store.writing() as connection:
        downgrade(connection, "0007")
    shutil.copy(mine, copy)
    with open_store(str(mine)) as store:
        done = unite(store, copy)
    assert (done.entries, done.lessons, done.differing) == (0, 0, [])


@pytest.mark.parametrize(
    ("name", "told"),
    [
        ("results (conflicted copy 2026-11-30).sqlite3", True),
        ("results-MACHINE.sqlite3", True),
        ("results (1).sqlite3", True),
        ("Copy of Results.sqlite3", True),
        ("results.sqlite3.conflict", True),
        ("results.sqlite3-wal", True),
        ("results (1).sqlite3-journal", True),
        ("results.sqlite3-journal", False),
        ("results.csv", False),
        ("other.sqlite3", False),
    ],
)
def test_copies_beside_the_results_file_are_noticed(tmp_path, name, told):
    mine = tmp_path / "results.sqlite3"
    open_store(str(mine)).close()
    shutil.copy(mine, tmp_path / name)
    assert copies_beside(mine) == ([tmp_path / name] if told else [])


def test_what_is_no_results_file_is_refused(tmp_path):
    mine, _ = two(tmp_path)
    text = tmp_path / "text.sqlite3"
    text.write_text("seat,score\n" * 500)
    before = mine.read_bytes()
    with open_store(str(mine)) as store:
        for wrong in (text, tmp_path / "absent.sqlite3", mine):
            with pytest.raises(ItembankError, match=wrong.name):
                unite(store, wrong)
    assert mine.read_bytes() == before


def test_a_server_takes_in_what_a_file_holds_as_a_file_does(shared, tmp_path):
    """Two files of one past come into a store on a server: all of both, and once."""
    first, second = str(tmp_path / "first.sqlite3"), str(tmp_path / "second.sqlite3")
    right = {"A1": {1: True, 2: False}, "A2": {1: True, 2: True}}
    with open_store(first) as store:
        play(store, [("record", 0, Answers(right, {("A1", 2): "ratio.adds"}))], 0)
        play(store, [("record", 1, Clarity(2, None, "which way round"))], 1)
    shutil.copyfile(first, second)
    with open_store(second) as store:
        play(store, [("record", 0, Scores({"A1": 4, "A2": 2})), ("undo", 1, None)], 10)
        play(store, [("record", 2, Scores({"A1": 1}))], 20)
        move_seats(store, [Move("8K", "A2", "8L", "C1", DAY + datetime.timedelta(days=9))])
        forget(store, Whom("8K", "A1", before=DAY + datetime.timedelta(days=2)))
    found = []
    with open_store(str(tmp_path / "here.sqlite3")) as here:
        for store in (here, shared):
            unite(store, tmp_path / "first.sqlite3")
            play(store, [("record", 0, Scores({"A1": 2, "B1": 3}))], 15)
            done = unite(store, tmp_path / "second.sqlite3")
            once = dump(store)
            again = unite(store, tmp_path / "second.sqlite3")
            assert (again.entries, again.lessons, again.moves) == (0, 0, 0)
            assert dump(store) == once
            found.append((done, once))
    on_file, on_server = found
    assert on_server == on_file
    assert on_file[0].entries
    assert on_file[0].moves == 1
    assert on_file[0].forgotten_there == {("8k", "a1")}
    assert on_file[0].differing
