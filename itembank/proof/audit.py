"""Walks whole spaces and proves every item of them."""

from __future__ import annotations

import random
from bisect import bisect_right
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction
from itertools import accumulate
from statistics import median
from typing import Any

from itembank.errors import CheckFailed
from itembank.items.asks import (
    Ask,
    Choose,
    Compare,
    Find,
    Give,
    Handlers,
    Inequality,
    Order,
    kind_of,
)
from itembank.items.item import Item, Tier
from itembank.items.measures.difficulty import difficulty
from itembank.items.topics.registry import find_topic, topic_ids
from itembank.notation import tree as t
from itembank.notation.value import parts
from itembank.processes.pool import Lost
from itembank.processes.work_place import Place, ThisMachine, all_or_lost
from itembank.proof import prove_fast, prove_symbolic
from itembank.proof.claim.finding import WrongKey
from itembank.proof.claim.key_solutions import value_given
from itembank.proof.exact.exact_road import by_first_road
from itembank.proof.lines.steps import step_fault
from itembank.proof.repeated_questions import NO_MARK, mark_of, repeats

LIMIT = 20_000
"""Tiers with more items than this are audited by a random sample of this many."""
SYMBOLIC_EVERY = 40
"""One item in this many also goes down the sympy road; packs send every item down it."""
MEASURED = 200
"""Items of a tier, spread evenly over those audited, whose difficulty makes its median: enough
for the order of the tiers, and the measure costs as much as a proof."""
CHUNK = 400
CHUNK_SECONDS = 300.0
"""So long a chunk may take, which mostly takes a few seconds; then its items are tried alone."""
ITEM_SECONDS = 30.0
"""Seconds that the checks of one such item may take."""
KEPT = 5

FAULTS = ("wrong_keys", "blind", "rivals", "form_faults", "step_faults", "repeats")
"""The counts of a report that are nought where a topic is sound."""

Progress = Callable[[int, int], None]


@dataclass
class TopicAudit:
    """What an audit found on one topic; `faults` holds the first few in words."""

    topic: str
    items: int = 0
    checked: int = 0
    symbolic: int = 0
    wrong_keys: int = 0
    blind: int = 0
    rivals: int = 0
    form_faults: int = 0
    step_faults: int = 0
    repeats: int = 0
    difficulty: dict[str, float] = field(default_factory=dict)
    """The median of each tier, over :data:`MEASURED` of its items."""
    faults: list[str] = field(default_factory=list)

    @property
    def sound(self) -> bool:
        """Return whether no fault was found."""
        return not self.faults and not any(getattr(self, name) for name in FAULTS)


def blind_slip(item: Item) -> str:
    """Return the name of a misconception that gives a right answer here, or ``""``.

    >>> from itembank.items.topics.registry import find_item
    >>> blind_slip(find_item("fractions.add-unlike/core/12"))
    ''
    """
    return next((s.misconception.name for s in item.slips if _right(item, s.wrong)), "")


def _right(item: Item, wrong: t.Node) -> bool:
    if not kind_of(item.ask).many:
        return _worth(item, wrong) == _worth(item, item.key)
    try:
        return not by_first_road(replace(item, key=wrong)).fault
    except t.NotationError:
        return False


def rivals(item: Item) -> tuple[str, str] | None:
    """Return the names of two misconceptions that give the same wrong answer, or None.

    Whoever sees that answer cannot know which of them it was, so an item names them together
    (:func:`~itembank.items.wrong_answers.told_apart`).

    >>> from itembank.items.topics.registry import find_item
    >>> rivals(find_item("fractions.add-unlike/core/12")) is None
    True
    """
    seen: dict[object, str] = {}
    for slip in item.slips:
        worth, name = _worth(item, slip.wrong), slip.misconception.name
        if worth in seen:
            return seen[worth], name
        seen[worth] = name
    return None


def _worth(item: Item, answer: t.Node) -> object:
    """Return what is equal for answers that are marked as one."""
    try:
        return WORTH.of(item.ask)(item.ask, answer)
    except t.NotationError:
        return answer


def _values(ask: Ask, answer: t.Node) -> tuple[Fraction, ...]:
    return parts(value_given(answer))


def _found(ask: Find, answer: t.Node) -> tuple[Fraction, ...]:
    values = parts(value_given(answer))
    if isinstance(ask.target, t.Ratio) and values[0]:
        return tuple(value / values[0] for value in values)
    return values


WORTH: Handlers[Callable[[Any, t.Node], object]] = Handlers("likely mistakes", otherwise=_values)
"""What is equal for answers that are marked as one, for each kind of question."""

WORTH.by_kind |= {
    # Here the answer is what is written, not what it is worth.
    **dict.fromkeys((Inequality, Order, Compare, Choose), lambda ask, answer: answer),
    Find: _found,
    Give: lambda ask, answer: tuple(sorted(_values(ask, answer))),
}


def audit(
    topics: tuple[str, ...] = (),
    *,
    limit: int = LIMIT,
    place: Place | None = None,
    progress: Progress | None = None,
    symbolic_every: int = SYMBOLIC_EVERY,
) -> list[TopicAudit]:
    """Prove every item of the named topics (default: all) and return one report a topic.

    Parameters
    ----------
    topics
        Ids of topics.
    limit
        A tier with more items than this is sampled: `limit` of them, at random, seed 1.
    place
        Where they are proved; default, on as many processes of this machine as it has cores.
    progress
        Called with (items done, items in all) as chunks of work come back.
    symbolic_every
        Send one item in this many down the sympy road too; 1 sends all.

    Raises
    ------
    UnknownTopic
        If a name is not a topic's.
    """
    names = topics or topic_ids()
    reports = {name: TopicAudit(name) for name in names}
    work = [chunk for name in names for chunk in _chunks(name, limit, symbolic_every)]
    # A topic may take ten times as long as another. In any order but theirs, those done stand
    # for those to come, and whoever waits can be told truly how long it will be.
    order = random.Random(1).sample(range(len(work)), len(work))
    total, done = sum(len(chunk[2]) for chunk in work), 0
    for name in names:
        reports[name].items = sum(len(space) for space in find_topic(name).spaces.values())
    marks: dict[tuple[str, str], list[tuple[Sequence[int], bytes]]] = {}
    hard: dict[tuple[str, str], list[float]] = {}
    parts: dict[int, Part] = {}
    for number, found in _run([work[n] for n in order], place or ThisMachine()):
        parts[order[number]] = found
        done += len(work[order[number]][2])
        if progress:
            progress(done, total)
    # What is told is told in the order of topics, tiers and items.
    for number, (name, tier, *_) in enumerate(work):
        part = parts[number]
        _merge(reports[name], part[0])
        hard.setdefault((name, tier), []).extend(part[1])
        marks.setdefault((name, tier), []).append((work[number][2], part[2]))
    for (name, tier), found_there in marks.items():
        for twin in _repeated(name, tier, found_there):
            reports[name].repeats += 1
            _note(reports[name], f"{name}/{tier}: one question comes twice: {twin}")
    for name in names:
        report = reports[name]
        report.difficulty = {
            tier: round(median(hard[name, tier]), 2) for tier in Tier if (name, tier) in hard
        }
        levels = list(report.difficulty.values())
        if levels != sorted(set(levels)):
            _note(report, f"{name}: difficulty does not rise by tier: {report.difficulty}")
    return [reports[name] for name in names]


def _repeated(
    name: str, tier: str, found: list[tuple[Sequence[int], bytes]]
) -> Iterator[tuple[object, ...]]:
    """Yield the questions of a tier that come again, each time they do."""
    topic = find_topic(name)
    starts = list(accumulate((len(indices) for indices, _ in found), initial=0))

    def question(place: int) -> tuple[object, ...]:
        number = bisect_right(starts, place) - 1
        return topic.item(Tier(tier), found[number][0][place - starts[number]]).twin

    for _, twin in repeats((marks for _, marks in found), question):
        yield twin


Chunk = tuple[str, str, Sequence[int], int, int, int]
"""Topic, tier, indices, one in how many goes down the sympy road and is measured, and the place
of the first among those."""
Part = tuple[TopicAudit, list[float], bytes]
"""What was found, the difficulties, and a mark of each item's question."""


def _chunks(name: str, limit: int, symbolic_every: int) -> Iterator[Chunk]:
    for tier, space in find_topic(name).spaces.items():
        indices: Sequence[int] = range(len(space))
        if len(indices) > limit:
            indices = sorted(random.Random(1).sample(indices, limit))
        measured_every = max(1, len(indices) // MEASURED)
        for start in range(0, len(indices), CHUNK):
            some = indices[start : start + CHUNK]
            yield name, str(tier), some, symbolic_every, measured_every, 0


def _run(work: list[Chunk], place: Place) -> Iterator[tuple[int, Part]]:
    """Yield the number of each chunk, as they come, and what was found in it.

    In a chunk that hangs, or ends the process it is checked in, each item is checked by itself,
    so that it is known which of them it is, and what all others come to.
    """
    lost = []
    results = place.each(check_chunk, work, longest=CHUNK_SECONDS, loads=["sympy"])
    try:
        for number, part in results:
            if isinstance(part, Lost):
                lost.append(number)
            else:
                yield number, part
    finally:
        results.close()
    for number in lost:
        yield number, _one_by_one(work[number], place)


def _one_by_one(chunk: Chunk, place: Place) -> Part:
    name, tier, indices, symbolic_every, measured_every, first = chunk
    ones: list[Chunk] = [
        (name, tier, [index], symbolic_every, measured_every, first + n)
        for n, index in enumerate(indices)
    ]
    found = all_or_lost(place, check_chunk, ones, longest=ITEM_SECONDS, few=0, loads=["sympy"])
    report = TopicAudit(name)
    hard: list[float] = []
    marks: list[bytes] = []
    for index, part in zip(indices, found, strict=True):
        if isinstance(part, Lost):
            report.checked += 1
            _note(report, f"{name}/{tier}/{index}: its proof {part.why}")
            marks.append(NO_MARK)
        else:
            _merge(report, part[0])
            hard += part[1]
            marks.append(part[2])
    return report, hard, b"".join(marks)


def check_chunk(chunk: Chunk) -> Part:
    """Check some items of one tier; returns counts, difficulties, and marks of the questions."""
    name, tier, indices, symbolic_every, measured_every, first = chunk
    topic, report = find_topic(name), TopicAudit(name)
    hard: list[float] = []
    marks: list[bytes] = []
    for place, index in enumerate(indices, first):
        item = topic.item(Tier(tier), index)
        report.checked += 1
        if place % measured_every == 0:
            hard.append(difficulty(item))
        marks.append(mark_of(item.twin))
        symbolic = place % symbolic_every == 0
        report.symbolic += symbolic
        check_item(item, report, symbolic=symbolic)
    return report, hard, b"".join(marks)


def check_item(item: Item, report: TopicAudit, *, symbolic: bool) -> None:
    """Check one item and add what is found to `report`."""
    try:
        prove_fast(item)
        if symbolic:
            prove_symbolic(item)
    except WrongKey as error:
        report.wrong_keys += 1
        _note(report, str(error))
    except CheckFailed as error:
        report.form_faults += 1
        _note(report, str(error))
    name = blind_slip(item)
    if name:
        report.blind += 1
        _note(report, f"{item.address}: the misconception {name!r} gives the right answer")
    if len({slip.wrong for slip in item.slips}) < 2:
        report.blind += 1
        _note(report, f"{item.address}: fewer than two different likely wrong answers")
    if pair := rivals(item):
        report.rivals += 1
        _note(
            report,
            f"{item.address}: two misconceptions give one answer: {pair[0]!r} and {pair[1]!r}",
        )
    fault = step_fault(item)
    if fault:
        report.step_faults += 1
        _note(report, f"{item.address}: {fault}")


def _merge(into: TopicAudit, part: TopicAudit) -> None:
    for name in ("checked", "symbolic", *FAULTS):
        setattr(into, name, getattr(into, name) + getattr(part, name))
    for fault in part.faults:
        _note(into, fault)


def _note(report: TopicAudit, fault: str) -> None:
    if len(report.faults) < KEPT:
        report.faults.append(fault)
