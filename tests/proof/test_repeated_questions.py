"""Repeats are found by marks, whatever is held at a time, and never by chance alone."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from itembank.items.item import Tier
from itembank.proof import audit as audit_module
from itembank.proof.repeated_questions import NO_MARK, mark_of, repeats

questions = st.lists(st.tuples(st.integers(0, 4), st.sampled_from(["a", "b"])), max_size=30)


def by_hand(items):
    return [(n, item) for n, item in enumerate(items) if item in items[:n]]


@given(questions, st.integers(1, 8))
def test_every_repeat_is_found_however_few_are_held(items, at_once):
    found = repeats(map(mark_of, items), items.__getitem__, at_once=at_once)
    assert list(found) == by_hand(items)


@given(questions)
def test_marks_that_are_equal_by_chance_make_no_repeat(items):
    assert list(repeats([b"equal..."] * len(items), items.__getitem__)) == by_hand(items)


def test_what_could_not_be_looked_at_repeats_nothing():
    assert list(repeats([NO_MARK, NO_MARK], [("a",), ("a",)].__getitem__)) == []


def test_a_member_of_an_enumeration_is_its_text():
    assert (Tier.CORE,) == ("core",)
    assert mark_of(("core",)) == mark_of((Tier.CORE,))


def test_an_audit_tells_of_a_question_that_comes_twice(monkeypatch):
    topic = audit_module.find_topic("ratio.share")
    space = topic.spaces["core"]
    there = next(c for c in audit_module._chunks(topic.id, 60, 40) if c[1] == "core")

    monkeypatch.setattr(
        audit_module,
        "_chunks",
        lambda *_: iter([(*there[:2], [*there[2][:-1], there[2][0]], *there[3:])]),
    )
    (found,) = audit_module.audit((topic.id,), place=audit_module.ThisMachine(1), limit=60)
    assert len(space) > 60
    assert found.repeats == 1
    assert "one question comes twice" in " ".join(found.faults)
