"""Reasons and notes in a week's plan file: facts are kept, words that a teacher wrote stay."""

import tomllib
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.files.faults import FileFaults
from itembank.planning.choosing.topic_reason import Cause, Occasion, Reason
from itembank.planning.week.week_plan import (
    WeekTopic,
    plan_text,
    written_anew,
)
from tests.planning.week_plans import DAY, WEEK, lesson, plan, read, written

KNOWN = Reason(
    WEEK, Cause.PAST, DAY(2026, 9, 7), Occasion(DAY(2026, 11, 9), 54, 26), needed_for=("Ratio",)
)


def with_reasons(tmp_path):
    """Return a plan's path and its text; two topics have different pasts."""
    topics = (
        WeekTopic("ratio.share", 2, KNOWN),
        WeekTopic("fractions.order", 1, replace(KNOWN, last=None, needed_for=())),
    )
    path = written(tmp_path, plan(replace(lesson(), topics=topics)))
    return path, path.read_text(encoding="utf-8")


def test_words_a_teacher_writes_stand_in_the_place_of_ours_and_are_never_read(tmp_path):
    path, text = with_reasons(tmp_path)
    ours = "taught 7 Sep, last seen 7 days ago, 54 % right then, needed today for Ratio"
    mine = "needed today for nothing, pinned by you, asks again what Tue asked: ask me"
    assert ours in text
    path.write_text(text.replace(ours, mine), encoding="utf-8")
    made = read(path).lessons[0].topics[0]
    assert made.reason == replace(KNOWN, own=mine)
    assert (made.why, made.pinned) == (mine, False)
    assert read(written(tmp_path, read(path))) == read(path)


def test_a_line_that_is_written_over_does_not_keep_the_reason_of_another_topic(tmp_path):
    path, text = with_reasons(tmp_path)
    line = next(row for row in text.splitlines() if "needed today for Ratio" in row)
    path.write_text(text.replace(line, line.replace("ratio.share", "equations.one-step")))
    made = read(path).lessons[0].topics[0]
    assert (made.topic, made.reason, made.pinned) == ("equations.one-step", Reason(WEEK), True)


def test_a_topic_that_is_pinned_by_hand_keeps_its_facts(tmp_path):
    path, text = with_reasons(tmp_path)
    path.write_text(text.replace("count = 2, why", "count = 2, pinned = true, why"))
    made = read(path).lessons[0].topics[0]
    assert (made.reason, made.pinned) == (KNOWN, True)


def test_a_plan_of_an_older_version_keeps_its_sentences(tmp_path):
    path, text = with_reasons(tmp_path)
    path.write_text(text[: text.index("\n# Below is why")], encoding="utf-8")
    before = read(path)
    assert before.lessons[0].topics[0].why.startswith("taught 7 Sep, last seen 7 days ago")
    assert not any(topic.pinned for topic in before.lessons[0].topics)
    assert read(written(tmp_path, before, "again.toml")) == before


def test_a_fault_in_what_is_kept_of_a_reason_has_its_line(tmp_path):
    path, text = with_reasons(tmp_path)
    path.write_text(text.replace("right = 54", "right = 540"), encoding="utf-8")
    with pytest.raises(FileFaults, match="must be from 0 to 100, not 540") as caught:
        read(path)
    (fault,) = caught.value.faults
    assert fault.line > text[: text.index("[[reasons]]")].count("\n")


NOTES = st.text(st.characters(codec="utf-8", exclude_categories=["C", "Zl", "Zp"]), max_size=20)


@given(st.lists(st.tuples(st.integers(0, 400), NOTES, st.booleans()), max_size=6))
def test_what_a_person_noted_stays_when_a_plan_is_written_anew(notes):
    text = plan_text(plan(lesson()))
    lines = text.split("\n")
    noted = [f"# Note {k}: {note}".rstrip() for k, (_, note, _) in enumerate(notes)]
    for words, (place, _, beside) in zip(noted, notes, strict=True):
        place %= len(lines) - 1
        if beside and lines[place] and "#" not in lines[place]:
            lines[place] += f"  {words}"
        else:
            lines.insert(place, words)
    was = "\n".join(lines)
    # Where nothing else changed, the file is the same to the byte.
    assert written_anew(text, was) == was
    other = plan_text(plan(replace(lesson(), title="Another title", never=("ratio.share",))))
    found = written_anew(other, was)
    assert tomllib.loads(found) == tomllib.loads(other)
    assert all(words in found for words in noted)
    assert written_anew(other, found) == found
