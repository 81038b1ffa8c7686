"""A pupil's page: all that is theirs, nothing of another seat, and nothing once forgotten."""

import datetime
import shutil

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from itembank.errors import NotFound
from itembank.files.shipped import shipped_folder
from itembank.planning.bands.bands import default_scheme
from itembank.planning.department.department import read_department
from itembank.records.entries.entries import Answers, LessonFacts, OwnViews, QuestionFacts, Scores
from itembank.records.entries.recording import record
from itembank.records.pupils.homes import Move
from itembank.records.pupils.moved_rows import moved_rows
from itembank.records.pupils.moves import move_seats
from itembank.records.pupils.whom import Whom
from itembank.records.reports.pupil_report import pupil_report
from itembank.records.reports.seats_to_look_at import seats_to_look_at
from itembank.records.store.store import open_store
from itembank.work.lesson.forget import forget
from itembank.work.lesson.results_store import open_results
from itembank.work.report.pupil_page import pupil_page, pupil_pdf, write_pupil_page
from itembank.work.report.seat_list import seat_list

DAY = datetime.date(2026, 11, 2)
LATE = datetime.date(2026, 12, 20)
WEEK = datetime.timedelta(days=7)
SEATS = ("A1", "A2", "B1")


@pytest.fixture
def store(tmp_path):
    with open_store(str(tmp_path / "results.sqlite3")) as opened:
        yield opened


@pytest.fixture(autouse=True)
def that_day(monkeypatch):
    monkeypatch.setenv("ITEMBANK_TODAY", "2026-12-20")


def facts(day, class_name="8K", questions=4):
    rows = tuple(
        QuestionFacts(n, f"ratio.share/core/{n}", "ratio.share", "core", f"Question {n}")
        for n in range(1, questions + 1)
    )
    return LessonFacts(class_name, day, questions, "Sharing", "", rows)


def page(connection, seat, class_name="8K"):
    def bands(_):
        return default_scheme()

    return pupil_report(connection, class_name, seat, bands, DAY, LATE, LATE)


ANSWERS = st.dictionaries(
    st.sampled_from(SEATS), st.dictionaries(st.integers(1, 4), st.booleans(), min_size=1)
)


@given(days=st.lists(ANSWERS.filter(bool), min_size=1, max_size=4), change=st.booleans())
@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_a_page_holds_all_of_its_seat_and_nothing_of_another(days, change, tmp_path_factory):
    where = str(tmp_path_factory.mktemp("pupils") / "results.sqlite3")
    when = [DAY + datetime.timedelta(days=n) for n in range(len(days))]
    with open_store(where) as store:
        for day, right in zip(when, days, strict=True):
            wrong = {(s, n): f"slip-{s}" for s, row in right.items() for n in row if not row[n]}
            record(store, facts(day), Answers(right, wrong))
        seat = "A1"
        if change:  # the pupil moves on, and another takes the place
            going = [Move("8K", "A1", "9S", "C3", LATE), Move("8K", "A2", "8K", "A1", LATE)]
            move_seats(store, going)
        with store.reading() as connection:
            found = page(connection, "C3", "9S") if change else page(connection, seat)
            nobody = page(connection, "A2") if change else None
    told = {
        starter.date: {
            answer.number: answer.right for answer in starter.answers if answer.right is not None
        }
        for starter in found.starters
    }
    assert told == {day: rows["A1"] for day, rows in zip(when, days, strict=True) if "A1" in rows}
    assert {name for _, name, _ in found.mistakes} <= {"slip-A1"}
    assert sum(line.out_of for line in found.topics) == sum(map(len, told.values()))
    assert {starter.seat for starter in found.starters} <= {"A1"}
    assert all(starter.marks == sum(told[starter.date].values()) for starter in found.starters)
    if nobody is not None:
        assert not nobody.starters
        assert nobody.gone is not None


def test_a_score_alone_says_nothing_of_a_question_and_own_view_and_absence_are_told(tmp_path):
    with open_store(str(tmp_path / "results.sqlite3")) as store:
        record(store, facts(DAY), Scores({"A1": 1, "A2": 4}))
        record(store, facts(DAY), OwnViews({"A1": "sure", "A2": "not sure"}, {}))
        record(store, facts(DAY + datetime.timedelta(days=1)), Scores({"A2": 2}))
        with store.reading() as connection:
            found = page(connection, "a1")
    (only,) = found.starters
    assert (only.marks, only.out_of, only.view, only.answers) == (1, 4, "sure", ())
    assert only.lowest
    assert (found.topics, found.without) == ((), 1)


def test_a_seat_is_one_to_look_at_by_most_of_enough_starters(tmp_path):
    with open_store(str(tmp_path / "results.sqlite3")) as store:
        for n, (low, once) in enumerate([(0, 4), (1, 0), (4, 4), (0, 4)]):
            scores = {"A1": low, "A2": once} | ({"B1": 0} if n < 2 else {})
            record(store, facts(DAY + datetime.timedelta(days=n)), Scores(scores))
        with store.reading() as connection:
            found = seats_to_look_at(connection, "8K", lambda _: default_scheme(), DAY, LATE, LATE)
    assert [line.seat for line in found if line.wanted] == ["A1"]
    first = found[0]
    assert (first.lowest, first.starters, first.marks, first.out_of) == (3, 4, 5, 16)


@pytest.fixture
def department(tmp_path):
    home = tmp_path / "larkhythe"
    ignored = shutil.ignore_patterns("plans", "*.sqlite3")
    shutil.copytree(shipped_folder() / "larkhythe", home, ignore=ignored)
    found = read_department(home, None)
    right = {"A1": {1: False, 2: True}, "A2": {1: True, 2: True}}
    with open_results(found) as store:
        record(store, facts(DAY, questions=2), Answers(right, {}))
    return found


def test_what_is_forgotten_is_gone_from_the_page_and_its_file_is_named(department, tmp_path):
    path = tmp_path / "a1.pdf"
    made = pupil_page(department, "8k", "a1")
    write_pupil_page(department, made, path)
    assert path.read_bytes() == pupil_pdf(made)
    done = forget(department, Whom("8K", "A1"))
    assert path in [left for left, _ in done.forgotten.left]
    after = pupil_page(department, "8K", "A1")
    assert after.empty
    assert "Nothing is kept of seat A1" in after.nothing
    assert "A1" not in [line.seat for line in seat_list(department, "8K").known]
    assert len(pupil_page(department, "8K", "A2").found.starters) == 1


def test_a_seat_that_nobody_lists_is_not_found(department):
    with pytest.raises(NotFound, match="Z9"):
        pupil_page(department, "8K", "Z9")


def test_a_move_within_the_class_is_no_coming_to_it(store):
    for week in range(4):
        record(store, facts(DAY + week * WEEK), Scores({"B1": 2}))
    record(store, facts(DAY + 4 * WEEK), Scores({"A1": 2, "B1": 2}))
    move_seats(
        store,
        [
            Move("8L", "C1", "8K", "A2", DAY + 2 * WEEK),
            Move("8K", "A2", "8K", "A1", DAY + 3 * WEEK),
        ],
    )
    with store.reading() as connection:
        assert page(connection, "A1").without == 2  # in its third and fourth week
        assert page(connection, "B1").without == 0


def test_a_school_of_many_moves_has_its_reports(store):
    record(store, facts(DAY), Scores({"A1": 2, "B1": 3}))
    moves = [
        Move(f"10X{group}", f"{row}{n}", f"11X{group}", f"{row}{n}", DAY + WEEK)
        for group in range(8)
        for row in "ABCDEF"
        for n in range(1, 31)
    ]
    move_seats(store, [*moves, Move("8K", "A1", "8K", "A2", DAY + WEEK)])
    with store.reading() as connection:
        (moved,) = moved_rows(connection)
        assert (moved.seat, moved.home.seat) == ("A1", "A2")
        assert [line.marks for line in page(connection, "A2").starters] == [2]
