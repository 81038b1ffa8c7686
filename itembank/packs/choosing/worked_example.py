"""A sheet's worked example, and one like it that is left to finish."""

from __future__ import annotations

import random
from collections.abc import Iterator, Sequence
from itertools import islice

from itembank.items.item import Tier
from itembank.items.measures.features import lines_worked
from itembank.items.measures.looks import skeleton
from itembank.packs.choosing.candidate import Candidate
from itembank.packs.choosing.item_pool import LOOK_AHEAD, Pool
from itembank.packs.choosing.linked_run import MOST_LOOKED_AT, linked_run
from itembank.packs.choosing.parameters import kind_at
from itembank.packs.data.source import TopicSources, is_short, sources


def worked_examples(
    topics: Sequence[TopicSources], tier: Tier, rng: random.Random, pool: Pool
) -> tuple[Candidate, Candidate | None]:
    """Take a worked example and one like it, on the first topic with enough working to show.

    Where the questions may run out, one is kept for the sheet rather than for the second.
    """
    topic = _first_to_show(topics, tier, rng, pool)
    twice = _twice(topic, tier, rng, pool) if is_short(topic) else None

    def unshown(candidate: Candidate) -> float:
        unlike = kind_at(candidate.values) is not None  # an example shows how to work it out
        return (
            unlike
            + (_lines(candidate) < 2)
            + 0.5 * bool(twice and candidate.structure not in twice)
        )

    worked = pool.pick(topic, tier, rng, unshown)
    if all(map(is_short, topics)) and sum(pool.room(name, tier, most=2) for name in topics) < 2:
        return worked, None
    linked = linked_run(
        worked,
        1,
        rng,
        pool,
        # Its last lines are left out, so they have to be such as were just read, and not read.
        fits=lambda candidate: (
            candidate.structure == worked.structure and not _turned_round(candidate, worked)
        ),
    )
    if linked:
        return worked, linked[0]
    # The topic of the worked one may have no other question left.
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
        + float(_turned_round(candidate, worked))
        + abs(_lines(candidate) - _lines(worked))
        + 2.0 * (bool(candidate.look.words) != bool(worked.look.words))
    )


def _turned_round(candidate: Candidate, worked: Candidate) -> bool:
    """Tell whether all of a question's numbers and its answer stand in the example before it.

    From 4 cm by 8 cm to 24 cm, and then from 24 cm by 48 cm to 4 cm: the 8 is there to copy.
    """
    answer: list[object] = []
    skeleton(candidate.look.answer, answer)
    there: list[object] = [*worked.look.numbers]
    skeleton(worked.look.answer, there)
    return bool(answer) and {*map(str, candidate.look.numbers), *map(str, answer)} <= {
        *map(str, there)
    }


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
