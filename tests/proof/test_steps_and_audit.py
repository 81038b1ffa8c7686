"""Working is checked line by line, and the audit sees every kind of fault."""

from __future__ import annotations

import os
import random
import time
from dataclasses import replace

import pytest

from itembank.items.item import Find, Item, Misconception, Slip, Step, Tier
from itembank.items.topics.registry import UnknownTopic, find_item, find_topic, topics
from itembank.notation import tree as t
from itembank.processes.work_place import ThisMachine
from itembank.proof import audit as audit_module
from itembank.proof.audit import audit
from itembank.proof.item_audit import TopicAudit, check_item
from itembank.proof.lines.steps import step_fault
from tests.depth import cases, drawn, each, whole

x = t.Sym("x")
SUM = t.add(t.frac(1, 2), t.frac(1, 3))
EQUATION = t.equals(t.sub(t.juxt(t.num(3), x), t.num(4)), t.num(11))
ACROSS = Misconception("adds-across", "adds tops and bottoms", "What is 1/2 + 1/2 that way?")
OTHER = Misconception("keeps-one", "keeps one denominator", "Are the pieces the same size?")
LAST = Misconception("gives-last", "gives the last fraction", "Is that all of it?")
TAKEN = cases(3, 150, 30)
TWO = (Slip(ACROSS, t.frac(2, 5)), Slip(OTHER, t.frac(2, 3)))


def make(ask, key, form, steps, slips=(), prompt=(SUM,)):
    return Item("a.b/core/0", "a.b", Tier.CORE, prompt, ask, key, form, steps, slips, (), 1, ())


GOOD = (
    Step("Write both over 6.", t.equals(SUM, t.add(t.frac(3, 6), t.frac(2, 6)))),
    Step("Add the tops.", t.equals(t.add(t.frac(3, 6), t.frac(2, 6)), t.frac(5, 6))),
)


def test_good_working_passes():
    assert step_fault(make(Find(SUM), t.frac(5, 6), "simplest", GOOD)) == ""


def test_a_false_line_is_found():
    bad = (GOOD[0], Step("Add.", t.equals(t.add(t.frac(3, 6), t.frac(2, 6)), t.frac(5, 12))))
    assert "line 2" in step_fault(make(Find(SUM), t.frac(5, 6), "simplest", bad))


def test_working_that_stops_short_is_found():
    assert "does not give the key" in step_fault(
        make(Find(SUM), t.frac(5, 6), "simplest", GOOD[:1])
    )


def test_an_equation_line_with_another_solution_is_found():
    ask = Find(x, (EQUATION,))
    good = (
        Step("Add 4 to both sides.", t.equals(t.juxt(t.num(3), x), t.num(15))),
        Step("Divide both sides by 3.", t.equals(x, t.num(5))),
    )
    bad = (Step("Take 4 from both sides.", t.equals(t.juxt(t.num(3), x), t.num(7))), good[1])
    assert step_fault(make(ask, t.equals(x, t.num(5)), "solution", good)) == ""
    assert "line 1" in step_fault(make(ask, t.equals(x, t.num(5)), "solution", bad))


@pytest.mark.parametrize(
    ("key", "slips", "field"),
    [
        (t.frac(2, 5), (Slip(ACROSS, t.frac(1, 5)), Slip(OTHER, t.frac(2, 3))), "wrong_keys"),
        (t.frac(5, 6), (Slip(ACROSS, t.frac(10, 12)), Slip(OTHER, t.frac(2, 3))), "blind"),
        (t.frac(5, 6), (Slip(ACROSS, t.frac(2, 5)),), "blind"),
        (t.frac(5, 6), (*TWO, Slip(LAST, t.frac(2, 3))), "rivals"),
        (t.frac(5, 6), (*TWO, Slip(LAST, t.frac(4, 6))), "rivals"),
        (t.frac(10, 12), (Slip(ACROSS, t.frac(2, 5)), Slip(OTHER, t.frac(2, 3))), "form_faults"),
    ],
)
def test_the_audit_counts_each_kind_of_fault(key, slips, field):
    report = TopicAudit("a.b")
    check_item(make(Find(SUM), key, "simplest", GOOD, slips), report, symbolic=True)
    assert getattr(report, field) == 1
    assert not report.sound
    assert report.faults[0].startswith("a.b/core/0")


def test_a_sound_item_leaves_no_mark():
    report = TopicAudit("a.b")
    slips = (Slip(ACROSS, t.frac(2, 5)), Slip(OTHER, t.frac(2, 3)))
    check_item(make(Find(SUM), t.frac(5, 6), "simplest", GOOD, slips), report, symbolic=True)
    assert report.sound
    assert report.faults == []


@pytest.mark.parametrize("name", [topic.id for topic in topics()])
def test_a_question_of_each_part_of_a_topic_is_sound(name):
    topic, report = find_topic(name), TopicAudit(name)
    for tier, space in topic.spaces.items():
        for index in drawn(space, 1, random.Random(name)):
            check_item(topic.item(tier, index), report, symbolic=index in space.own)
    assert report.faults == []


@pytest.mark.parametrize("name", each([topic.id for topic in topics()], 8))
def test_every_topic_is_sound_on_a_sample(name):
    # The items of a tier are of a few structures, and differ in numbers: two dozen show each
    # one several times, and three show sympy each. Rare numbers are for `itembank audit`.
    limit, every = cases(24, 120), cases(8, 6)
    (report,) = audit((name,), limit=limit, place=ThisMachine(1), symbolic_every=every)
    assert report.faults == []
    assert report.sound
    assert report.symbolic == sum(
        -(-min(limit, len(s)) // every) for s in find_topic(name).spaces.values()
    )


def test_every_tier_is_large_enough_or_says_why():
    small = [
        f"{topic.id}/{tier}"
        for topic in topics()
        for tier in Tier
        if len(topic.spaces[tier]) < 200 and not topic.spare
    ]
    assert not small


@whole
@pytest.mark.parametrize("name", [topic.id for topic in topics()])
def test_items_come_back_identical_and_distinct(name):
    topic = find_topic(name)
    for tier in Tier:
        last = len(topic.spaces[tier]) - 1
        assert topic.item(tier, last) == topic.item(tier, last)
        # Neighbours, too: a number that no question uses makes two of them one.
        places = {
            place
            for first in range(0, last + 1, max(1, last // TAKEN))
            for place in (first, min(first + 1, last))
        }
        asked = {(item.prompt, item.figure) for item in (topic.item(tier, i) for i in places)}
        assert len(asked) == len(places)


def test_an_audit_on_several_cores_says_the_same(monkeypatch):
    monkeypatch.setattr(audit_module, "CHUNK", 20)
    name = topics()[0].id
    calls = []
    one = audit((name,), limit=60, place=ThisMachine(1))
    two = audit(
        (name,),
        limit=60,
        place=ThisMachine(2),
        progress=lambda done, total: calls.append((done, total)),
    )
    assert one == two
    assert calls[-1] == (180, 180)


@pytest.mark.parametrize("bad", ["hangs", "ends"])
def test_an_item_that_hangs_or_ends_its_process_is_named_and_the_rest_is_audited(monkeypatch, bad):
    topic = topics()[0]
    real = audit_module.check_item

    def check(item, report, *, symbolic):
        if item.address == address:
            if bad == "ends":
                os._exit(1)
            time.sleep(600)
        real(item, report, symbolic=symbolic)

    whole = audit((topic.id,), place=ThisMachine(1), limit=40)[0]
    sampled = [c for c in audit_module._chunks(topic.id, 40, 40) if c[1] == "core"]
    address = f"{topic.id}/core/{sampled[0][2][33]}"
    monkeypatch.setattr(audit_module, "check_item", check)
    monkeypatch.setattr(audit_module, "CHUNK_SECONDS", 0.5)
    monkeypatch.setattr(audit_module, "ITEM_SECONDS", 0.5)
    (found,) = audit((topic.id,), place=ThisMachine(2), limit=40)
    why = {"hangs": "took longer than 0.5 s", "ends": "ended the process it ran in"}[bad]
    assert found.faults == [f"{address}: its proof {why}"]
    assert not found.sound
    assert (found.checked, found.repeats) == (whole.checked, 0)
    assert {k: v for k, v in found.difficulty.items() if k != "core"} == {
        k: v for k, v in whole.difficulty.items() if k != "core"
    }


def test_tiers_in_another_order_are_told_where_enough_was_looked_at(monkeypatch):
    monkeypatch.setattr(audit_module, "difficulty", lambda item: 5 - list(Tier).index(item.tier))
    name = topics()[0].id
    (report,) = audit((name,), place=ThisMachine(1), limit=200, symbolic_every=1000)
    assert "difficulty does not rise by tier" in report.faults[0]
    (report,) = audit((name,), place=ThisMachine(1), limit=20, symbolic_every=1000)
    assert report.faults == []


def test_an_unknown_topic_is_refused():
    with pytest.raises(UnknownTopic, match=r"There is no topic ‘fractions\.nothing-like-it’"):
        audit(("fractions.nothing-like-it",))


A, B = t.Sym("a"), t.Sym("b")
SPLIT = (t.equals(t.ratio(A, B), t.ratio(t.num(3), t.num(5))), t.equals(t.add(A, B), t.num(40)))
RATIO_ONLY = SPLIT[:1]


@pytest.mark.parametrize(
    ("relations", "target", "line", "follows"),
    [
        (SPLIT, t.Listing((A, B)), t.equals(A, t.num(15)), True),
        (SPLIT, t.Listing((A, B)), t.equals(A, t.num(16)), False),
        (SPLIT, t.Listing((A, B)), t.equals(t.Sym("k"), t.num(5)), False),
        (SPLIT, t.Listing((A, B)), t.ratio(t.num(6), t.num(10)), True),
        (SPLIT, t.Listing((A, B)), t.ratio(t.num(5), t.num(3)), False),
        (SPLIT, t.Listing((A, B)), t.ratio(t.num(0), t.num(0)), False),
        (RATIO_ONLY, t.ratio(A, B), t.ratio(t.num(0), t.num(0)), False),
        (RATIO_ONLY, t.ratio(A, B), t.equals(t.ratio(A, B), t.ratio(t.num(6), t.num(10))), True),
        (RATIO_ONLY, t.ratio(A, B), t.equals(A, t.num(3)), False),
    ],
)
def test_a_line_with_letters_has_to_follow_from_what_is_given(relations, target, line, follows):
    key = (
        t.Listing((t.num(15), t.num(25)))
        if isinstance(target, t.Listing)
        else t.ratio(t.num(3), t.num(5))
    )
    end = Step("So.", t.equals(target, key))
    fault = step_fault(make(Find(target, relations), key, "list", (Step("Look.", line), end)))
    assert ("line 1" in fault) != follows


def test_what_no_page_can_print_is_a_fault():
    item = find_item("equations.two-step/core/5")
    inside = t.Sum(t.Int(1), (("+", t.add(t.Int(2), t.Int(3))),))
    for changed in (
        replace(item, prompt=("Work out ", inside, ".")),
        replace(item, steps=(*item.steps, Step("Add.", inside))),
        replace(item, slips=(*item.slips, Slip(item.slips[0].misconception, inside))),
    ):
        report = TopicAudit(item.topic)
        check_item(changed, report, symbolic=False)
        assert any("cannot be written" in fault for fault in report.faults)
