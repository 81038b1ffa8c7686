"""Many items on several processes: all outcomes in order, none lost, nothing left running."""

import os
import signal
import time

import pytest

from itembank.bank.proof.judging import judge_all, was_cut_off
from itembank.items.item import Find, Item, Tier
from itembank.notation.parse import parse
from itembank.processes.work_place import ThisMachine
from itembank.proof.judge import judge
from itembank.proof.outcome import Outcome, State
from tests.children import children


def item(number, key):
    target = parse(f"{number} + 1")
    return Item(
        address=f"larkhythe:sum-{number}",
        topic="number.add",
        tier=Tier.CORE,
        prompt=("Work out ", target, "."),
        ask=Find(target),
        key=parse(str(key)),
        form="integer",
        steps=(),
        slips=(),
        twin=(),
        marks=1,
        constants=(),
    )


ITEMS = [item(n, n + 1 if n % 5 else n) for n in range(1, 41)]


def told(one):
    """Return an outcome that says which item it is of, and who judged it."""
    return Outcome(State.PROVED, one.address, str(os.getpid()))


def number(one):
    return int(one.address.rpartition("-")[2])


def test_outcomes_come_in_the_order_of_the_items_from_several_processes():
    found = judge_all(ITEMS, told, place=ThisMachine(2))
    assert [outcome.says for outcome in found] == [item.address for item in ITEMS]
    assert len({outcome.first for outcome in found} - {str(os.getpid())}) == 2


def test_processes_judge_as_one_process_does():
    apart, here = (
        judge_all(ITEMS, judge, place=ThisMachine(2)),
        judge_all(ITEMS, judge, place=ThisMachine(1)),
    )
    assert apart == here == [judge(item) for item in ITEMS]
    wrong = {number(one) for one, out in zip(ITEMS, apart, strict=True) if out.state != "proved"}
    assert wrong == {5, 10, 15, 20, 25, 30, 35, 40}
    assert all(out.state in (State.PROVED, State.DISPROVED) for out in apart)


@pytest.mark.parametrize("processes", [1, 2])
def test_progress_counts_every_item_once(processes):
    seen = []
    judge_all(ITEMS, told, lambda done, total: seen.append((done, total)), ThisMachine(processes))
    assert seen == [(n, 40) for n in range(1, 41)]


def dies_at_seven(one):
    if number(one) == 7:
        os.kill(os.getpid(), signal.SIGKILL)
    return told(one)


def test_an_item_that_ends_its_process_is_left_to_a_person_and_no_other_is():
    found = judge_all(ITEMS, dies_at_seven, place=ThisMachine(2))
    assert found[6].state is State.NEEDS_PERSON
    assert found[6].says == "Its proof ended the process it ran in."
    assert was_cut_off(found[6])
    assert [out.state for out in found].count(State.PROVED) == 39


def endless_at_nine(one):
    while number(one) == 9:
        time.sleep(0.05)
    return told(one)


def test_an_item_whose_proof_has_no_end_is_left_to_a_person():
    found = judge_all(ITEMS, endless_at_nine, place=ThisMachine(2), longest=1.0)
    assert found[8].state is State.NEEDS_PERSON
    assert found[8].says == "Its proof took longer than 1 s."
    assert was_cut_off(found[8])
    assert [out.state for out in found].count(State.PROVED) == 39


def test_an_interrupt_leaves_no_process_behind():
    def stop(done, total):
        if done == 10:
            raise KeyboardInterrupt

    before = children()
    with pytest.raises(KeyboardInterrupt):
        judge_all(ITEMS, told, stop, ThisMachine(2))
    assert children() <= before


def test_no_items_and_few_items():
    assert judge_all([], told, place=ThisMachine(2)) == []
    (only,) = judge_all(ITEMS[:1], told, place=ThisMachine(2))
    assert only.first == str(os.getpid())
