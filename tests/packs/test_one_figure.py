"""Two questions about one figure: never one question in two disguises."""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from itembank.figures.kinds.number.number_line import NumberLine
from itembank.items.item import Draft, Find, Tier, prompt
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t
from itembank.packs.choosing.candidate import Candidate
from itembank.packs.choosing.item_pool import Pool
from itembank.packs.choosing.shared_figures import about_one_figure
from itembank.packs.choosing.shorter_ones import Rooms, ShorterOnes


class Shown(Topic):
    """Asks two things of a number, which stands in a figure with another."""

    id = "small.shown"
    title = "Shown"
    spaces = {  # noqa: RUF012
        tier: Space(None, place=range(80)) for tier in Tier
    }

    def make(self, tier: Tier, place: int) -> Draft:
        number, which = 20 + place // 2, place % 2
        said = ("Work out {n} and 1 more.", "What do you get if {n} is taken three times over?")
        return Draft(
            prompt=prompt(said[which], n=t.Int(number)),
            ask=Find(t.Int(number)),
            # Of one figure only a question and its twin have answers that differ.
            key=t.Int(100 * (number // 2) + 7 * ((number + which) % 2)),
            form="integer",
            steps=(),
            slips=(),
            twin=(number,),
            figure=NumberLine(t.Int(0), t.Int(number // 2), number // 2),
        )


TOPIC = Shown()


class Slide:
    slips = False

    def share(self, candidate: Candidate, shown: bool) -> float:
        return 0.1 if shown else 0.4

    def fits(self, questions: Sequence[Candidate], count: int) -> bool:
        return True

    def without_slips(self) -> Slide:
        return self


@pytest.mark.parametrize("seed", range(20))
def test_a_pair_is_of_one_figure_and_of_two_questions(seed: int) -> None:
    pool = Pool()
    first, other, third = (
        pool.take(pool.at(TOPIC, Tier.CORE, index)) for index in (2 * seed, 2 * seed + 27, 79)
    )
    shorter = ShorterOnes({TOPIC.id: TOPIC}, seed, pool, [third], Rooms(Slide()))
    swaps = about_one_figure([], [first, other, third], shorter)
    instead = {id(model): asked for model, asked in swaps}
    pair = [instead.get(id(model), model) for model in (first, other)]
    assert pair[0].item.figure == pair[1].item.figure
    assert len({asked.item.twin for asked in (*pair, third)}) == 3
