"""Reports say what was recorded: from the store to the figure, against other libraries."""

import datetime

import numpy as np
import pytest

from itembank.planning.bands.bands import default_scheme
from itembank.records.entries.entries import (
    Answers,
    BandCount,
    Bands,
    Clarity,
    LessonFacts,
    OwnViews,
    QuestionFacts,
    Questions,
    Scores,
)
from itembank.records.entries.recording import record
from itembank.records.entries.undoing import undo
from itembank.records.reports.class_report import by_week, class_report, department_report
from itembank.records.reports.item_report import Line, contradictions, item_report
from itembank.records.results.results import class_history, class_results
from itembank.records.results.scope import Scope
from itembank.records.statistics.item_statistics import kr20, upper_lower
from itembank.records.statistics.pooled import pool, reliabilities
from itembank.records.statistics.rasch import rasch, rasch_of_starters
from itembank.records.statistics.starter_answers import starter_answers

DAY = datetime.date(2026, 9, 7)
# LSAT, section 6: answers and how many candidates gave them (Bock & Lieberman, *Psychometrika*
# 35, 1970, also in the R package ltm).
PATTERNS = """
    00000:3 00001:6 00010:2 00011:11 00100:1 00101:1 00110:3 00111:4
    01000:1 01001:8 01010:0 01011:16 01100:0 01101:3 01110:2 01111:15
    10000:10 10001:29 10010:14 10011:81 10100:3 10101:28 10110:15 10111:80
    11000:16 11001:56 11010:21 11011:173 11100:11 11101:61 11110:28 11111:298
"""


def facts(addresses, class_name="8K", date=DAY):
    rows = []
    for number, address in enumerate(addresses, 1):
        topic, tier, _ = address.split("/")
        rows.append(QuestionFacts(number, address, topic, tier))
    return LessonFacts(class_name, date, len(addresses), "A starter", "", tuple(rows))


def by_seat(table):
    """Return rows of answers (NaN: not asked) by seat."""
    return {
        f"S{seat}": {n: bool(value) for n, value in enumerate(row, 1) if not np.isnan(value)}
        for seat, row in enumerate(table, 1)
    }


def test_lsat_answers_through_the_store_give_the_published_statistics(store):
    pairs = [pair.split(":") for pair in PATTERNS.split()]
    table = [[float(m) for m in marks] for marks, count in pairs for _ in range(int(count))]
    asked = [f"number.round/core/{n}" for n in range(1, 6)]
    record(store, facts(asked), Answers(by_seat(table), {}))
    with store.reading() as connection:
        found = item_report(connection, Scope("8k"))
    items = {item.address: item for item in found.items}
    lines = [items[address] for address in asked]
    # Facility, KR-20 and conditional Rasch difficulties: published or recomputed values.
    shares = [line.interval.share for line in lines]
    assert shares == pytest.approx([0.924, 0.709, 0.553, 0.763, 0.870], abs=5e-4)
    assert found.starters[0].kr20 == pytest.approx(0.295, abs=5e-4)
    expected = [-1.256, 0.475, 1.236, 0.168, -0.623]
    assert [line.difficulty for line in lines] == pytest.approx(expected, abs=5e-4)
    assert all(0 < line.error < 0.2 for line in lines)
    # Correlation without the item: R package ltm, from memory.
    r = [line.correlation for line in lines]
    assert r == pytest.approx([0.1128, 0.1532, 0.1728, 0.1444, 0.1216], abs=5e-4)


@pytest.fixture
def several(store):
    """Record nine starters of two classes from few items, some answers missing."""
    rng = np.random.default_rng(4)
    pool_of = [f"ratio.t{t}/{tier}/1" for t in range(3) for tier in ("support", "core")]
    rows = []
    for n in range(9):
        asked = list(rng.choice(pool_of, 4, replace=False))
        chance = 1 / (1 + np.exp(rng.normal(size=4) - rng.normal(0.5, 1, (24, 1))))
        table = (rng.random((24, 4)) < chance) * 1.0
        table[rng.random((24, 4)) < 0.05] = np.nan
        name, date = ("8K", "9S")[n % 2], DAY + datetime.timedelta(days=3 * n)
        slips = {
            (f"S{s + 1}", k + 1): "wrong way"
            for s, k in zip(*np.nonzero(table == 0), strict=True)
            if rng.random() < 0.5
        }
        record(store, facts(asked, name, date), Answers(by_seat(table), slips))
        for (seat, k), value in np.ndenumerate(table):
            if not np.isnan(value):
                slip = (f"S{seat + 1}", k + 1) in slips
                rows.append((n, name, date, asked[k], seat, k, value, slip))
    names = ["starter", "cls", "date", "item", "seat", "k", "right", "slip"]
    import pandas as pd  # slow to load, and each process that runs tests reads this file

    return store, pd.DataFrame(rows, columns=names)


def test_item_statistics_agree_with_pandas(several):
    store, frame = several
    with store.reading() as connection:
        found = item_report(connection, Scope())
        one_class = item_report(connection, Scope("9S"))
    counts = frame.groupby("item")["right"].agg(["sum", "count"])
    slips = frame.groupby("item")["slip"].mean()
    assert {item.address for item in found.items} == set(counts.index)
    total = frame.groupby(["starter", "seat"])["right"].transform("sum")
    number = frame.groupby(["starter", "seat"])["right"].transform("count")
    frame["rest"] = (total - frame["right"]) / (number - 1)
    inside = frame[number > 1].groupby(["starter", "k"])
    frame["a"] = frame["right"] - inside["right"].transform("mean")
    frame["b"] = frame["rest"] - inside["rest"].transform("mean")
    for item in found.items:
        assert (item.right, item.out_of) == tuple(counts.loc[item.address])
        assert item.misconceptions.get("wrong way", 0) == pytest.approx(slips[item.address])
        rows = frame[frame["item"] == item.address].dropna()
        r = (rows.a * rows.b).sum() / np.sqrt((rows.a**2).sum() * (rows.b**2).sum())
        assert item.correlation == pytest.approx(r)
    theirs = frame[frame.cls == "9S"].groupby("item")["right"].count()
    assert {item.address: item.out_of for item in one_class.items} == theirs.to_dict()


@pytest.mark.parametrize("seed", range(4))
def test_pooled_statistics_are_those_of_one_starter_weighted(seed):
    rng = np.random.default_rng(seed)
    tables = [rng.integers(0, 2, (size, 5)).astype(float) for size in (25, 40)]
    starter = np.repeat([0, 1], [25, 40])
    asked = np.array([[0, 1, 2, 3, 4], [4, 3, 5, 6, 0]])
    found = pool(np.vstack(tables), starter, asked, 7)
    each = [upper_lower(table) for table in tables]
    assert found.upper_lower[1] == pytest.approx(each[0][1])
    assert found.upper_lower[5] == pytest.approx(each[1][2])
    assert found.upper_lower[0] == pytest.approx((25 * each[0][0] + 40 * each[1][4]) / 65)
    expected = [kr20(table) for table in tables]
    assert reliabilities(np.vstack(tables), starter, asked) == pytest.approx(expected)


def test_rasch_of_starters_is_that_of_one_table_with_gaps():
    rng = np.random.default_rng(2)
    hard = np.array([-1.0, -0.3, 0.2, 0.4, 0.7])
    answers = (rng.random((300, 3)) < 0.5) * 1.0
    starter = np.repeat([0, 1], 150)
    asked = np.array([[0, 1, 2], [4, 3, 2]])
    answers = (
        rng.random((300, 3)) < 1 / (1 + np.exp(hard[asked[starter]] - rng.normal(size=(300, 1))))
    ) * 1.0
    table = np.full((300, 5), np.nan)
    np.put_along_axis(table, asked[starter], answers, axis=1)
    difficulties, other = rasch_of_starters(answers, starter, asked, 5), rasch(table)
    assert difficulties.values == pytest.approx(other.values, abs=1e-7)
    assert difficulties.errors == pytest.approx(other.errors, abs=1e-7)


def test_an_item_that_contradicts_its_tier_is_listed(store):
    for tier, right in (("support", 6), ("core", 25)):
        asked = [f"ratio.share/{tier}/{n}" for n in range(1, 7)]
        date = DAY if tier == "support" else DAY + datetime.timedelta(days=1)
        record(
            store,
            facts(asked, date=date),
            Questions({1: (right, 30)} | dict.fromkeys(range(2, 7), (25, 30))),
        )
    with store.reading() as connection:
        found = item_report(connection, Scope())
    named = [contradiction for contradiction in found.contradictions if contradiction.line.address]
    assert [one.line.address for one in named] == ["ratio.share/support/1"]
    assert "harder than core" in named[0].words()
    assert "no Rasch difficulties yet" in found.note
    assert all(item.correlation is None for item in found.items)


def test_a_difficulty_is_set_beside_no_share():
    core = Line("", "ratio.share", "core", 250, 300, None, None)
    known = Line("", "ratio.share", "support", 20, 300, None, None, {}, 2.5, 0.2)
    bare = known._replace(difficulty=None, error=None)
    (with_one, _), (with_none, _) = (contradictions([], [line, core]) for line in (known, bare))
    assert not with_one.by_difficulty
    assert with_one.clear == with_none.clear > 1


def test_a_class_report_holds_what_was_recorded_and_nothing_taken_back(several):
    store, frame = several
    last = DAY + datetime.timedelta(days=40)
    with store.reading() as connection:
        found = class_report(connection, "8K", default_scheme(), DAY, last)
        whole = department_report(connection, Scope())
    mine = frame[frame.cls == "8K"].copy()
    mine["topic"] = mine["item"].str.split("/").str[0]
    mine["week"] = [d - datetime.timedelta(days=d.weekday()) for d in mine["date"]]
    assert len(found.lessons) == mine["date"].nunique()
    for line in found.topics:
        rows = mine[mine.topic == line.topic]
        assert line.out_of == len(rows)
        assert line.interval.share == pytest.approx(rows["right"].mean())
        weeks = rows.groupby("week")["right"].agg(["sum", "count"])
        assert {w: n for w, (_, n) in by_week(line).items()} == weeks["count"].to_dict()
        counted = whole.topics[line.topic]["8K"]
        assert counted == (rows["right"].sum(), len(rows))
    assert [topic.mastery.now for topic in found.topics] == sorted(
        topic.mastery.now for topic in found.topics
    )
    undo(store, "8K")
    with store.reading() as connection:
        after = class_report(connection, "8K", default_scheme(), DAY, last)
        answers = starter_answers(connection, Scope("8K"))
    assert sum(t.out_of for t in after.topics) < sum(t.out_of for t in found.topics)
    assert len(answers.starters) == len(found.lessons) - 1


def test_own_view_and_clarity_reach_the_report(store):
    asked = ["ratio.share/core/1", "ratio.share/core/2"]
    table = np.array([[1.0, 1.0]] * 6 + [[0.0, 0.0]] * 6)
    record(store, facts(asked), Answers(by_seat(table), {}))
    views = {f"S{n}": "sure" if n <= 7 else "not sure" for n in range(1, 13)}
    record(store, facts(asked), OwnViews(views, {}))
    record(store, facts(asked), Clarity(4, 12, "units"))
    with store.reading() as connection:
        found = class_report(connection, "8K", default_scheme(), DAY, DAY)
    done = found.lessons[0].decision
    assert done.views.over == ("S7",)
    assert done.views.agreement == pytest.approx(1.0)
    assert found.lessons[0].unclear == pytest.approx(1 / 3)


def test_an_empty_store_gives_empty_reports(store):
    with store.reading() as connection:
        found = item_report(connection, Scope())
        assert found.items == ()
        assert "no Rasch" in found.note
        assert class_report(connection, "8K", default_scheme(), DAY, DAY).topics == ()
        assert department_report(connection, Scope()).classes == ()


def test_a_lesson_taken_back_is_in_no_report(store):
    asked = ["ratio.share/core/1", "ratio.share/core/2"]
    record(store, facts(asked), Answers(by_seat(np.ones((3, 2))), {}))
    later = DAY + datetime.timedelta(days=7)
    record(store, facts(["fractions.order/core/1"], date=later), Questions({1: (3, 3)}))
    undo(store, "8K", later)
    with store.reading() as connection:
        assert set(class_history(connection, "8K").seen) == {"ratio.share"}
        found = class_report(connection, "8K", default_scheme(), DAY, later)
        whole = department_report(connection, Scope())
    assert [lesson.date for lesson in found.lessons] == [DAY]
    assert [topic.topic for topic in found.topics] == ["ratio.share"]
    assert [(group.lessons, group.last) for group in whole.classes] == [(1, DAY)]


def test_what_is_expected_does_not_change_with_the_first_day(store):
    for week in range(4):
        date = DAY + datetime.timedelta(days=7 * week)
        asked = [f"ratio.share/core/{n}" for n in range(1, 4)]
        record(store, facts(asked, date=date), Questions({1: (20 + week, 28), 2: (9, 28)}))
    last = DAY + datetime.timedelta(days=30)
    with store.reading() as connection:
        whole, part = (
            class_report(connection, "8K", default_scheme(), first, last).topics[0]
            for first in (DAY, DAY + datetime.timedelta(days=14))
        )
    assert part.mastery == whole.mastery
    assert len(part.points) == 2
    assert part.out_of == whole.out_of / 2


ASKED = ["ratio.share/core/1", "ratio.share/core/2", "fractions.order/core/1"]
HANDS = Bands((BandCount("R", "Rebuild", 0, 1, 9), BandCount("E", "Extend", 2, 3, 18)))
WHOLE = [Scores({f"A{n}": n % 4 for n in range(1, 25)}), HANDS]


@pytest.mark.parametrize("what", WHOLE)
def test_a_score_says_nothing_of_a_topic_alone(store, what):
    record(store, facts(ASKED), what)
    later = DAY + datetime.timedelta(days=7)
    with store.reading() as connection:
        found = class_report(connection, "8K", default_scheme(), DAY, later)
        whole = department_report(connection, Scope())
        seen = class_history(connection, "8K").seen
    assert {topic: [(row.out_of, row.scored) for row in rows] for topic, rows in seen.items()} == {
        "ratio.share": [(0, True)],
        "fractions.order": [(0, True)],
    }
    for line in found.topics:
        assert (line.out_of, line.points, line.scored) == (0, (), (DAY,))
        assert by_week(line) == {}
        assert line.mastery.only_scored
        assert line.mastery.high - line.mastery.low > 0.4
    assert (whole.classes[0].out_of, whole.classes[0].scored, whole.topics) == (0, 1, {})


def test_class_and_department_say_the_same_of_topics(store):
    rng = np.random.default_rng(5)
    depths = [
        lambda: Questions({n: (int(rng.integers(28)), 28) for n in (1, 2, 3)}),
        lambda: Answers(by_seat(rng.integers(0, 2, (20, 3)) * 1.0), {}),
        lambda: Questions({1: (20, 28)}),
        lambda: WHOLE[0],
        lambda: HANDS,
    ]
    for step in range(15):
        date = DAY + datetime.timedelta(days=step)
        record(store, facts(ASKED, date=date), depths[step % len(depths)]())
    last = DAY + datetime.timedelta(days=30)
    with store.reading() as connection:
        one = class_report(connection, "8K", default_scheme(), DAY, last)
        whole = department_report(connection, Scope(first=DAY, last=last))
    assert {line.topic: line.out_of for line in one.topics} == {
        topic: by_class["8K"][1] for topic, by_class in whole.topics.items()
    }
    for line in one.topics:
        right, out_of = whole.topics[line.topic]["8K"]
        assert line.interval.share == pytest.approx(right / out_of)
        assert len(line.scored) == whole.classes[0].scored == 6
        assert not line.mastery.only_scored


def test_a_question_not_asked_tells_nothing_of_its_topic(store):
    record(store, facts(ASKED), Questions({1: (20, 28), 2: (9, 28)}))
    later = facts(ASKED, date=DAY + datetime.timedelta(days=2))
    record(store, later, Scores({"A1": 2, "A2": 1}, asked=(1, 2)))
    with store.reading() as connection:
        found = class_results(connection, "8K")
        assert {topic.topic for topic in found.topics} == {"ratio.share"}
        (scored,) = found.scored
    assert (scored.share, scored.marks) == (0.75, {"ratio.share": 2})
