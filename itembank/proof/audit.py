"""Walks whole spaces and proves every item of them."""

from __future__ import annotations

import random
from bisect import bisect_right
from collections.abc import Callable, Iterator, Sequence
from itertools import accumulate
from statistics import median

from itembank.items.item import Tier
from itembank.items.measures.difficulty import difficulty
from itembank.items.topics.registry import find_topic, topic_ids
from itembank.items.topics.space_part import is_other_kind
from itembank.processes.lost import Lost
from itembank.processes.work_place import Place, ThisMachine, all_or_lost
from itembank.proof.item_audit import TopicAudit, check_item
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

Progress = Callable[[int, int], None]


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
        reports[name].add(part[0])
        hard.setdefault((name, tier), []).extend(part[1])
        marks.setdefault((name, tier), []).append((work[number][2], part[2]))
    for (name, tier), found_there in marks.items():
        for twin in _repeated(name, tier, found_there):
            reports[name].repeats += 1
            reports[name].note(f"{name}/{tier}: one question comes twice: {twin}")
    for name in names:
        report = reports[name]
        report.difficulty = {
            tier: round(median(hard[name, tier]), 2) for tier in Tier if (name, tier) in hard
        }
        levels = list(report.difficulty.values())
        # The middles of fewer may stand in another order by chance.
        enough = all(limit >= min(len(s), MEASURED) for s in find_topic(name).spaces.values())
        if enough and levels != sorted(set(levels)):
            report.note(f"{name}: difficulty does not rise by tier: {report.difficulty}")
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
            report.note(f"{name}/{tier}/{index}: its proof {part.why}")
            marks.append(NO_MARK)
        else:
            report.add(part[0])
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
        # Tiers are held against one another by the questions that the topic itself asks.
        if place % measured_every == 0 and not is_other_kind(topic.spaces[Tier(tier)][index]):
            hard.append(difficulty(item))
        marks.append(mark_of(item.twin))
        symbolic = place % symbolic_every == 0
        report.symbolic += symbolic
        check_item(item, report, symbolic=symbolic)
    return report, hard, b"".join(marks)
