"""A run of questions that differ in one number: each change shows what it does."""

from __future__ import annotations

import random
from collections.abc import Callable, Iterator, Sequence
from itertools import combinations, islice
from typing import TypeAlias

from itembank.items.measures.closeness import closeness, ends_alike, same_answer
from itembank.packs.choosing.candidate import Candidate
from itembank.packs.choosing.item_pool import Pool
from itembank.packs.choosing.parameters import along, along_two

MOST_PAIRS = 6
"""So many pairs of parameters that change together are tried."""
MOST_LOOKED_AT = 100
"""So many questions of a tier tell what working the questions of a topic have."""


Fits: TypeAlias = Callable[[Candidate], bool]
"""Tells of a question that is free whether it may be in a run."""


def _fits(_: Candidate) -> bool:
    return True


def linked_run(
    anchor: Candidate,
    count: int,
    rng: random.Random,
    pool: Pool,
    page: Sequence[Candidate] = (),
    fits: Fits = _fits,
) -> list[Candidate]:
    """Take up to `count` items that differ from `anchor`, and each other, in one axis or two.

    All of them are such as `fits` accepts.

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
        best = max(best, _longest(anchor, alone, count, pool, page, fits, *rules), key=len)
        if len(best) < count:
            pairs = pairs or [_shuffled_two(anchor, two, rng) for two in _some_pairs(axes)]
            best = max(best, _longest(anchor, pairs, count, pool, page, fits, *rules), key=len)
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
    fits: Fits,
    answers: bool,
    endings: bool,
) -> list[Candidate]:
    """Return the first run of `count` items among some lists of neighbours, or the longest."""
    best: list[Candidate] = []
    for places in near:
        best = max(best, _along(anchor, places, count, pool, page, fits, answers, endings), key=len)
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
    fits: Fits,
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
        # The quick conditions first: whether it may be used may take a proof.
        open_ = fresh and fits(candidate)
        open_ = open_ and pool.free(candidate) and not pool.passed_over(candidate)
        if open_ and not pool.alike(candidate, run) and not pool.refuses(candidate):
            found.append(candidate)
        if len(found) == count:
            break
    return found
