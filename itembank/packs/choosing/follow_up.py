"""Chooses the follow-up sheets: the starter's topics again, from familiar to new.

The rules:

* a sheet's questions are shared evenly over the starter's topics and stand topic by topic in
  the plan's order, which is the order in which a class met them: familiar first;
* on the support and core sheets a topic's questions come in runs of two or three. Within a
  run one parameter alone changes, or two where the change of one would print a near copy, so
  that a pupil sees what the change does; between runs everything may change. (Small steps with
  one thing varied at a time are common practice, no source.) The challenge sheet has no runs:
  there each question is to be read afresh; nor has a story, which nobody reads twice for the
  sake of another number: stories are as unlike as the space allows;
* no two questions of a sheet are near copies (:mod:`itembank.items.measures.closeness`), and no
  answers repeat or end alike within a run, where the spaces allow;
* within a topic runs go from easy to hard, and so do the questions of a run;
* one question in four is of another kind than *work it out* where the topics have such questions;
  these stand outside runs;
* a sheet whose band asks for it opens with a worked example and a part-finished one, both on
  the first topic that has working of two lines or more, and linked like a run.
"""

from __future__ import annotations

import random
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations, islice

from itembank.errors import ItembankError
from itembank.items.item import Tier
from itembank.items.measures.closeness import closeness, ends_alike, same_answer
from itembank.items.measures.features import lines_worked
from itembank.packs.choosing.candidate import Candidate
from itembank.packs.choosing.chance import generator
from itembank.packs.choosing.cost import OUT_OF_MIX, SAME_KIND, likeness, sameness
from itembank.packs.choosing.fixed_questions import held_items
from itembank.packs.choosing.item_pool import LOOK_AHEAD, Pool
from itembank.packs.choosing.parameters import along, along_two, kind_at
from itembank.packs.choosing.starter import share_out
from itembank.packs.data.source import TopicSources, is_short, sources
from itembank.planning.department.sheet_items import SheetItems

LONGEST_RUN = 3
MOST_PAIRS = 6
"""So many pairs of parameters that change together are tried."""
MOST_LOOKED_AT = 100
"""So many questions of a tier tell what working the questions of a topic have."""


@dataclass(frozen=True, slots=True)
class ChosenSheet:
    """The items of one follow-up sheet."""

    tier: Tier
    worked: Candidate | None
    part_finished: Candidate | None
    items: tuple[Candidate, ...]


def choose_sheet(
    topics: Sequence[TopicSources], tier: Tier, count: int, opens: bool, seed: int, pool: Pool
) -> ChosenSheet:
    """Return a sheet of `count` questions of a tier; one that `opens` has worked examples.

    Raises:
        ItembankError: a topic has too few different questions.
    """
    rng = generator(seed, f"sheet/{tier}")
    worked = part_finished = None
    if opens:
        worked, part_finished = _examples(topics, tier, rng, pool)
    items: list[Candidate] = []
    for topic, share in zip(topics, _shares(topics, tier, count, pool), strict=True):
        opening = [item for item in (worked, part_finished) if item is not None]
        items += _group(topic, tier, share, rng, pool, [*opening, *items])
    return ChosenSheet(tier, worked, part_finished, tuple(items))


def held_sheet(
    topics: Sequence[TopicSources], tier: Tier, wanted: SheetItems, pool: Pool
) -> ChosenSheet:
    """Return a sheet of questions that are settled already, by their addresses.

    Raises:
        ItembankError: a question is not there or not to be used, or more than two examples.
    """
    if len(wanted.opens) > 2:
        raise ItembankError(f"The {tier} sheet opens with two examples at the most.")
    candidate = held_items(topics, (*wanted.opens, *wanted.questions), pool)
    for item in candidate:
        if not pool.free(item):
            raise ItembankError(f"{item.item.address} stands in this pack already.")
        pool.take(item)
    opens, items = candidate[: len(wanted.opens)], candidate[len(wanted.opens) :]
    return ChosenSheet(
        tier,
        opens[0] if opens else None,
        opens[1] if len(opens) > 1 else None,
        tuple(items),
    )


def _shares(topics: Sequence[TopicSources], tier: Tier, count: int, pool: Pool) -> list[int]:
    """Return the number of questions on each topic, no more than it has where it may run out.

    With nothing left at all the first topic is still asked for one, which tells of the fault.
    """
    even = share_out([None] * len(topics), count)
    if not any(map(is_short, topics)):
        return even
    room = [pool.room(topic, tier, most=count) if is_short(topic) else count for topic in topics]
    shares = [min(share, most) for share, most in zip(even, room, strict=True)]
    while sum(shares) < count and (
        open_ones := [place for place, most in enumerate(room) if shares[place] < most]
    ):
        shares[min(open_ones, key=lambda place: shares[place])] += 1
    return shares if any(shares) else [1, *shares[1:]]


def run_lengths(count: int) -> list[int]:
    """Return `count` cut into as few runs as can be of at most three, as even as can be.

    >>> run_lengths(3), run_lengths(4), run_lengths(10), run_lengths(0)
    ([3], [2, 2], [3, 3, 2, 2], [])
    """
    runs = -(-count // LONGEST_RUN)
    return share_out([None] * runs, count) if runs else []


def _group(
    topic: TopicSources,
    tier: Tier,
    count: int,
    rng: random.Random,
    pool: Pool,
    page: Sequence[Candidate] = (),
) -> list[Candidate]:
    """Take a topic's questions for a sheet on which others stand already."""
    lengths = [1] * count if tier is Tier.CHALLENGE else run_lengths(count)
    runs: list[list[Candidate]] = []
    for length in lengths:
        before = [*page, *(candidate for run in runs for candidate in run)]
        run: list[Candidate] = []
        while len(run) < length:
            anchor = _unlike(topic, tier, rng, pool, [*before, *run])
            # Nothing follows from a story or from another kind of question: go on from a new one.
            if not anchor.look.words and kind_at(anchor.values) is None:
                others = [*before, *run]
                run += _linked(anchor, length - len(run) - 1, rng, pool, others)
            run.append(anchor)
        runs.append(sorted(run, key=lambda candidate: (candidate.difficulty, candidate.index)))
    runs.sort(key=lambda run: run[0].difficulty)
    return [candidate for run in runs for candidate in run]


def _unlike(
    topic: TopicSources, tier: Tier, rng: random.Random, pool: Pool, page: Sequence[Candidate]
) -> Candidate:
    """Take the question that looks least like those of a page, among the first few offered."""
    return pool.pick(
        topic,
        tier,
        rng,
        lambda candidate: (
            likeness(candidate, page) + _rarity(candidate, page) + sameness(candidate, page)
        ),
    )


def _rarity(candidate: Candidate, page: Sequence[Candidate]) -> float:
    """Return what it costs to ask another kind of question than the topic's own on a sheet.

    A sheet is for practice: one question in four is of another kind, and no two of one kind.
    """
    if kind_at(candidate.values) is None:
        return 0.0
    others = [other for other in page if kind_at(other.values) is not None]
    same = sum(other.kind == candidate.kind for other in others)
    return OUT_OF_MIX * (4 * len(others) > len(page)) + SAME_KIND * same


def _linked(
    anchor: Candidate, count: int, rng: random.Random, pool: Pool, page: Sequence[Candidate] = ()
) -> list[Candidate]:
    """Take up to `count` items that differ from `anchor`, and each other, in one axis or two.

    The axis is drawn by lot from those with enough free items that make a good run: no near
    copies, of each other or of what stands on the `page`, answers that do not end alike, and none
    that stands there. Failing that two axes change; failing that an answer may stand on the page
    already, then answers may end alike. A near copy is never taken: better a shorter run.
    """
    if not count:
        return []
    axes = rng.sample(range(_axes(anchor)), _axes(anchor))
    alone = [_shuffled(anchor, axis, rng) for axis in axes]
    pairs: list[list[int]] = []
    best: list[Candidate] = []
    for rules in ((True, True), (False, True), (False, False)):
        best = max(best, _longest(anchor, alone, count, pool, page, *rules), key=len)
        if len(best) < count:
            pairs = pairs or [_shuffled_two(anchor, two, rng) for two in _some_pairs(axes)]
            best = max(best, _longest(anchor, pairs, count, pool, page, *rules), key=len)
        if len(best) == count:
            break
    return [pool.take(item) for item in best]


def _some_pairs(axes: Sequence[int]) -> Iterator[tuple[int, int]]:
    return islice(combinations(axes, 2), MOST_PAIRS)


def _longest(
    anchor: Candidate,
    near: Sequence[Sequence[int]],
    count: int,
    pool: Pool,
    page: Sequence[Candidate],
    answers: bool,
    endings: bool,
) -> list[Candidate]:
    """Return the first run of `count` items among some lists of neighbours, or the longest."""
    best: list[Candidate] = []
    for places in near:
        best = max(best, _along(anchor, places, count, pool, page, answers, endings), key=len)
        if len(best) == count:
            break
    return best


def _axes(anchor: Candidate) -> int:
    return len(anchor.values)


def _shuffled(anchor: Candidate, axis: int, rng: random.Random) -> list[int]:
    near = along(anchor.source.spaces[anchor.item.tier], anchor.index, axis)
    return rng.sample(near, len(near))


def _shuffled_two(anchor: Candidate, axes: tuple[int, int], rng: random.Random) -> list[int]:
    space = anchor.source.spaces[anchor.item.tier]
    near = along_two(space, anchor.index, axes, MOST_LOOKED_AT)
    return rng.sample(near, len(near))


def _along(
    anchor: Candidate,
    near: Sequence[int],
    count: int,
    pool: Pool,
    page: Sequence[Candidate],
    answers: bool,
    endings: bool,
) -> list[Candidate]:
    """Return up to `count` free items, among those at some indices, that make a run.

    None is a near copy of another or of a question of a `page`; where `answers` count, none has
    an answer of that page's, and where `endings` do, no two answers end alike.
    """
    found: list[Candidate] = []
    for index in near:
        candidate = pool.at(anchor.source, anchor.item.tier, index)
        if not candidate.can_be_looked_at:
            continue
        run = [anchor, *found]
        # The same answer twice running would teach that the change changes nothing.
        fresh = all(candidate.look.answer != earlier.look.answer for earlier in run)
        fresh = fresh and all(closeness(candidate.look, earlier.look) < 1 for earlier in run)
        if fresh and endings:
            fresh = not any(ends_alike(candidate.look, earlier.look) for earlier in run)
        fresh = fresh and not any(
            (answers and same_answer(candidate.look, placed.look))
            or closeness(candidate.look, placed.look) == 1
            for placed in page
        )
        open_ = fresh and pool.free(candidate) and not pool.passed_over(candidate)
        if open_ and not pool.alike(candidate, run) and not pool.refuses(candidate):
            found.append(candidate)
        if len(found) == count:
            break
    return found


def _examples(
    topics: Sequence[TopicSources], tier: Tier, rng: random.Random, pool: Pool
) -> tuple[Candidate, Candidate | None]:
    """Take a worked example and one like it, on the first topic with enough working to show.

    Where the questions may run out, one is kept for the sheet rather than for the second.
    """
    topic = _first_to_show(topics, tier, rng, pool)
    twice = _twice(topic, tier, rng, pool) if is_short(topic) else None

    def unshown(candidate: Candidate) -> float:
        other = kind_at(candidate.values) is not None  # an example shows how to work it out
        return (
            other + (_lines(candidate) < 2) + 0.5 * bool(twice and candidate.structure not in twice)
        )

    worked = pool.pick(topic, tier, rng, unshown)
    if all(map(is_short, topics)) and sum(pool.room(name, tier, most=2) for name in topics) < 2:
        return worked, None
    linked = _linked(worked, 1, rng, pool)
    if linked:
        return worked, linked[0]
    spare = next(name for name in (topic, *topics) if pool.room(name, tier, most=1))
    # Rarer than a good question is one with the very steps of another, so more are looked at.
    found = pool.pick(
        spare, tier, rng, lambda candidate: _unfitting(candidate, worked), 3 * LOOK_AHEAD
    )
    return worked, found


def _unfitting(candidate: Candidate, worked: Candidate) -> float:
    """Return how badly an example to finish would follow the one worked before it.

    Its steps should be those just read: best the same ones, at least as many, and a story only
    after a story.
    """
    return (
        float(candidate.structure != worked.structure)
        + float(kind_at(candidate.values) is not None)
        + abs(_lines(candidate) - _lines(worked))
        + 2.0 * (bool(candidate.look.words) != bool(worked.look.words))
    )


def _first_to_show(
    topics: Sequence[TopicSources], tier: Tier, rng: random.Random, pool: Pool
) -> TopicSources:
    """Return the first topic with working to show and a second question solved by the same steps.

    Failing that the first with working, or the first with any question left.
    """
    shown: list[TopicSources] = []
    for topic in topics:
        if not _has_working(topic, tier, rng, pool):
            continue
        if not is_short(topic) or _twice(topic, tier, rng, pool):
            return topic
        shown.append(topic)
    rest = (name for name in topics if pool.room(name, tier, most=1))
    return shown[0] if shown else next(rest, topics[0])


def _twice(topic: TopicSources, tier: Tier, rng: random.Random, pool: Pool) -> set[object]:
    """Return the ways of solving, of two lines or more, that several free questions share."""
    offers = _some(topic, tier, rng, pool)
    ways = [candidate.structure for candidate in offers if _lines(candidate) >= 2]
    return {way for way in ways if ways.count(way) > 1}


def _has_working(topic: TopicSources, tier: Tier, rng: random.Random, pool: Pool) -> bool:
    """Tell whether a topic has working to show; people leave it out of some questions."""
    if not is_short(topic):
        first = pool.first(topic, tier)
        return first is not None and _lines(first) >= 2
    return any(_lines(candidate) >= 2 for candidate in _some(topic, tier, rng, pool))


def _some(topic: TopicSources, tier: Tier, rng: random.Random, pool: Pool) -> Iterator[Candidate]:
    """Yield free questions of a tier: all of them, or of very many enough to tell by."""
    for source in sources(topic):
        yield from islice(pool.offers(source, tier, rng), MOST_LOOKED_AT)


def _lines(candidate: Candidate) -> int:
    return sum(step.maths is not None for step in lines_worked(candidate.item))
