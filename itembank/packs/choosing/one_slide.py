"""Chooses a starter again that turned out too full for one slide.

How full a slide is only whoever draws it can say, so that is handed in. Drawing takes a while, and
only what may be too long is drawn.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence

from itembank.figures.figure import drawn
from itembank.packs.choosing.candidate import Candidate
from itembank.packs.choosing.chance import generator
from itembank.packs.choosing.cost import LINE, apart, likeness
from itembank.packs.choosing.item_pool import Pool, TooFew
from itembank.packs.data.source import TopicSources

TooFull = Callable[[Sequence[Candidate]], bool]
"""Tells whether questions take more than one slide; it draws them, so it takes a while."""
ROOMY = 20 * LINE
"""Characters that stood on one slide in all draws that were tried, however they were shared."""
MOST_FITTED = 10
"""With more questions than this two slides are what is wanted."""
LINE_HIGH = 1.25
"""How high a line of words stands on a slide, in ems."""
SMALLEST = 0.75
"""How small a slide sets figures against its words, where it has to."""
HIGHEST = 28.0
"""Ems of figures so small, and of a line for each other question, beyond which no starter that
was tried stood on one slide: in both columns together there are 34."""
SEVERAL = 2
"""With so many figures another deal hardly ever helps: a topic that draws draws in every tier."""
SHORTER = 4.0
"""What a line of a question costs where shorter ones are wanted."""
SHORTER_LOOK_AHEAD = 64
"""How many unused items are looked at for one that is shorter."""
MOST_DEALS = 4
"""How often the tiers are dealt before a starter stays as it was."""


def _crowded(questions: Sequence[Candidate]) -> bool:
    """Tell whether questions may be too long for a slide: only then it is worth drawing them."""
    return sum(map(_room, questions)) > ROOMY


def _room(candidate: Candidate) -> float:
    """Return how many characters would take as much room as a question with its figure."""
    return candidate.length + LINE * _figure_high(candidate) / LINE_HIGH


def _figure_high(candidate: Candidate) -> float:
    """Return how high a question's figure is in ems, 0 where it has none."""
    figure = candidate.item.key_figure or candidate.item.figure
    return 0.0 if figure is None else float(drawn(figure).height)


def _hopeless(questions: Sequence[Candidate]) -> bool:
    """Tell whether figures and a line for each other question are too high for a slide.

    Whatever is done with them they take two, so there is no need to draw them.
    """
    return sum(max(SMALLEST * _figure_high(each), 1.0) for each in questions) > HIGHEST


def on_one_slide(
    first: list[Candidate],
    deal: Callable[[int], list[Candidate]],
    topics: Mapping[str, TopicSources],
    seed: int,
    pool: Pool,
    held: Sequence[Candidate],
    too_full: TooFull,
) -> list[Candidate]:
    """Return `first` where it fits a slide, else a starter that does, else `first` all the same.

    First its longest questions make way for shorter ones; where that is not enough the tiers are
    dealt anew, so that another topic has the long ones: `deal` takes another starter from the
    pool for each number. What is `held` stays. With several figures they are dealt once only.
    """
    if len(first) > MOST_FITTED or not _crowded(first):
        return first
    made = first
    figures = sum(candidate.item.figure is not None for candidate in first)
    for number in range(1 if figures >= SEVERAL else MOST_DEALS):
        try:
            made = deal(number) if number else first
        except TooFew:  # a small bank, dealt otherwise
            break
        if (found := _shortened(made, topics, seed, pool, held, too_full)) is not None:
            return found
        _give_back(made, held, pool)
    return [candidate if candidate in held else pool.take(candidate) for candidate in first]


def _give_back(questions: Iterable[Candidate], held: Sequence[Candidate], pool: Pool) -> None:
    for candidate in questions:
        if candidate not in held:
            pool.give_back(candidate)


def _shortened(
    questions: Sequence[Candidate],
    topics: Mapping[str, TopicSources],
    seed: int,
    pool: Pool,
    held: Sequence[Candidate],
    too_full: TooFull,
) -> list[Candidate] | None:
    """Return a starter like this one that is not too full; None, and nothing changed, if none is.

    One after another the longest questions make way for shorter ones of the same topic and tier,
    about as hard. What is `held` stays.
    """
    now = list(questions)
    if not _hopeless(now) and not too_full(now):
        return now
    rng = generator(seed, "shorter")
    may_go = [candidate for candidate in questions if candidate not in held]
    for longest in sorted(may_go, key=_room, reverse=True):
        rest = [candidate for candidate in now if candidate is not longest]
        topic, tier = topics[longest.item.topic], longest.item.tier
        try:
            other = pool.pick(topic, tier, rng, _shorter(longest, rest), SHORTER_LOOK_AHEAD)
        except TooFew:
            continue
        if _room(other) >= _room(longest):
            pool.give_back(other)
            continue
        pool.give_back(longest)
        now = in_order([*rest, other])
        if not _hopeless(now) and not too_full(now):
            return now
    _give_back(now, held, pool)
    for candidate in questions:
        pool.take(candidate)
    return None


def _shorter(model: Candidate, rest: Sequence[Candidate]) -> Callable[[Candidate], float]:
    """Return what it costs to ask an item instead of one that is too long."""

    def cost(candidate: Candidate) -> float:
        lines = _room(candidate) / LINE
        return SHORTER * lines + apart(candidate, model) + likeness(candidate, rest)

    return cost


def in_order(questions: Iterable[Candidate]) -> list[Candidate]:
    """Return questions as a starter asks them, the easiest first."""
    return sorted(questions, key=lambda candidate: candidate.difficulty)
