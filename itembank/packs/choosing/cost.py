"""What it costs to ask an item beside others: for looking like them, for crowding them.

Costs of different kinds are weighed against each other here, and the cheapest item is asked
(:meth:`~itembank.packs.choosing.item_pool.Pool.pick`).
"""

from __future__ import annotations

from collections.abc import Sequence

from itembank.items.measures.closeness import closeness, ends_alike, same_answer
from itembank.items.measures.kind_told import PICTURE, PLAIN
from itembank.packs.choosing.candidate import FULL, Candidate
from itembank.packs.choosing.parameters import differing

LINE = FULL
"""Characters of a prompt that stand on a line of half a slide."""
LONG = 2 * LINE
"""Characters beyond which it takes three lines of half a slide."""
OVERLONG = 5 * LINE
"""Characters beyond which an answer to judge takes more of a slide than it is worth."""
OVERLONG_COST = 0.6
"""What such a question costs on a starter, where the plain one asks for as much in half the words:
more than the want of another kind. On sheets there is room for it."""
LONG_COST = 0.25
"""What a second long prompt costs: less than a likeness, which misleads pupils."""
REPEATED = 0.5
"""What an answer costs that the page has already, beside 1 for a near copy."""
ENDS_ALIKE = 0.2
"""What an answer costs that ends as another on the page does."""
THIRD_ALIKE = 2.0
"""What a third answer running that ends alike costs, *false* three times: as much as other steps,
for whoever sees two of them guesses the third."""
SAME_STEPS = 0.05
"""What a question costs that is solved as another on the page is: of what would do as well, there
is one that asks something else. Less than anything that misleads pupils."""
SAME_KIND = 0.3
"""What a second question of one kind costs, *true or false* twice: less than a repeated answer."""
OUT_OF_MIX = 0.3
"""What it costs to have more than half other kinds on a page, or fewer than one in three."""
OTHER_STRUCTURE = 2.0
"""What it costs to be solved by other steps than the question of the same number next door:
as much as a gap of two thirds in difficulty."""
GAP = 3.0
"""What a difference of 1 in difficulty costs between versions."""
UNNOTICED = 0.1
"""The difference in difficulty between versions that is as good as none."""


def apart(candidate: Candidate, model: Candidate) -> float:
    """Return how far an item is from one that a neighbour has instead of it.

    Another structure costs as much as being plainly easier or harder; then counts the gap in
    difficulty, beyond what nobody would notice.
    """
    if candidate.structure != model.structure:
        return OTHER_STRUCTURE + GAP * abs(candidate.difficulty - model.difficulty)
    return GAP * max(0.0, abs(candidate.difficulty - model.difficulty) - UNNOTICED)


def likeness(candidate: Candidate, page: Sequence[Candidate]) -> float:
    """Return what it costs to have an item on a page with others, for looking like them.

    Each near copy counts 1 (:func:`~itembank.items.measures.closeness.closeness`), each question
    with the same answer half, since pupils would guess from the pattern of answers, and each whose
    answer ends alike a little.
    """
    mine = candidate.look
    cost = 0.0
    for neighbour in page:
        theirs = neighbour.look
        cost += max(closeness(mine, theirs), float(_neighbours(candidate, neighbour)))
        cost += REPEATED * same_answer(mine, theirs)
        cost += ENDS_ALIKE * ends_alike(mine, theirs)
    return cost


def sameness(candidate: Candidate, page: Sequence[Candidate]) -> float:
    """Return what it costs to be solved by the same steps as others of its topic on a page.

    So a topic that asks several things asks several of them, and not three times for the area of
    a square from its perimeter.
    """
    topic = [neighbour for neighbour in page if neighbour.item.topic == candidate.item.topic]
    return SAME_STEPS * sum(neighbour.structure == candidate.structure for neighbour in topic)


def mixing(candidate: Candidate, page: Sequence[Candidate]) -> float:
    """Return what it costs to ask a question of this kind on a page with others.

    A page mixes kinds: a third to a half of its questions ask for something else than to work it
    out, wherever the topics have such questions, and no two of these the same. (That pupils think
    harder where the next question is of another kind is common practice, no source.) The first
    picture of a topic is no change from what the topic asks, and costs nothing.
    """
    if not candidate.source.spaces[candidate.item.tier].mixed:
        return 0.0  # there is nothing to choose between
    if candidate.kind == PICTURE and not _pictured(candidate.item.topic, page):
        return 0.0
    kinds = [neighbour.kind for neighbour in page]
    others = sum(kind not in PLAIN for kind in kinds)
    plain = len(kinds) - others
    if candidate.kind in PLAIN:
        return OUT_OF_MIX * (plain > 2 * others)
    return SAME_KIND * kinds.count(candidate.kind) + OUT_OF_MIX * (others > plain)


def _pictured(topic: str, page: Sequence[Candidate]) -> bool:
    return any(
        candidate.item.topic == topic and candidate.item.figure is not None for candidate in page
    )


def _neighbours(first: Candidate, other: Candidate) -> bool:
    """Tell whether two generated items have all parameters equal but one, of several."""
    return (
        first.source is other.source
        and first.item.tier is other.item.tier
        and len(first.values) > 1
        and differing(first.values, other.values) <= 1
    )


def crowding(candidate: Candidate, others: Sequence[Candidate]) -> float:
    """Return what a long prompt costs when another question of the slide is long already.

    It counts by the lines it takes, so that of two that would do as well the shorter is asked,
    and a story is not always the one with the shortest words.
    """
    overlong = candidate.length > OVERLONG and candidate.kind not in PLAIN
    cost = OVERLONG_COST if overlong else 0.0
    if candidate.length > LONG and any(neighbour.length > LONG for neighbour in others):
        cost += LONG_COST * (candidate.length // LINE) / (LONG // LINE)
    return cost
