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
from collections.abc import Sequence

from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.items.item import Tier
from itembank.packs.choosing.candidate import Candidate
from itembank.packs.choosing.chance import generator
from itembank.packs.choosing.cost import OUT_OF_MIX, SAME_KIND, likeness, sameness
from itembank.packs.choosing.fixed_questions import held_items
from itembank.packs.choosing.item_pool import Pool
from itembank.packs.choosing.linked_run import linked_run
from itembank.packs.choosing.parameters import kind_at
from itembank.packs.choosing.starter import share_out
from itembank.packs.choosing.worked_example import worked_examples
from itembank.packs.data.source import TopicSources, is_short
from itembank.planning.department.sheet_items import SheetItems

LONGEST_RUN = 3


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
        worked, part_finished = worked_examples(topics, tier, rng, pool)
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
    held = held_items(topics, (*wanted.opens, *wanted.questions), pool)
    for candidate in held:
        if not pool.free(candidate):
            raise ItembankError(f"{candidate.item.address} stands in this pack already.")
        pool.take(candidate)
    opens, items = held[: len(wanted.opens)], held[len(wanted.opens) :]
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
        # To whoever has fewest, so that what one topic lacks does not all fall to its neighbour.
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
                run += linked_run(anchor, length - len(run) - 1, rng, pool, others)
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
    others = [neighbour for neighbour in page if kind_at(neighbour.values) is not None]
    same = sum(neighbour.kind == candidate.kind for neighbour in others)
    return OUT_OF_MIX * (4 * len(others) > len(page)) + SAME_KIND * same
