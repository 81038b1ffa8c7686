"""A starter that is made to fit a slide: what is asked is taken, what gave way is free again."""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from itembank.items.topics.space_part import OtherKind
from itembank.packs.choosing import one_slide
from itembank.packs.choosing.candidate import Candidate
from itembank.packs.choosing.item_pool import Pool
from itembank.packs.choosing.parameters import differing
from itembank.packs.choosing.starter import Share, choose_starter
from tests.packs.small_topics import adding

TOPICS = [adding(f"small.t{n}", 18) for n in range(4)]
SEEDS = range(8)


class Slide:
    """A slide on which a question takes the more room the larger its numbers are."""

    slips = False

    def __init__(self, room: float) -> None:
        self.room = room

    def share(self, candidate: Candidate, shown: bool) -> float:
        return float(max(candidate.values)) / 100

    def fits(self, questions: Sequence[Candidate], count: int) -> bool:
        return sum(self.share(question, False) for question in questions) <= self.room * count

    def without_slips(self) -> Slide:
        return self


@pytest.fixture(autouse=True)
def _nothing_is_roomy(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(one_slide, "ROOMY", 0.0)


def made(
    seed: int, pool: Pool, slide: Slide | None, count: int = 8, held: Sequence[Candidate] = ()
) -> list[Candidate]:
    shares = [Share(topic, count // 4) for topic in TOPICS]
    return choose_starter(shares, 1, seed, pool, held, slide)[0]


def addresses(questions: Sequence[Candidate]) -> list[str]:
    return [candidate.item.address for candidate in questions]


@pytest.mark.parametrize("room", [0.0, 0.8])
def test_nothing_else_is_taken_for_having_been_tried(room: float) -> None:
    pool = Pool()
    found = made(2, pool, Slide(room))
    everything = (
        pool.at(topic, tier, index)
        for topic in TOPICS
        for tier, space in topic.spaces.items()
        for index in range(len(space))
    )
    taken = {candidate.item.twin for candidate in everything if not pool.free(candidate)}
    assert taken == {candidate.item.twin for candidate in found}


@pytest.mark.parametrize("seed", SEEDS)
def test_what_is_asked_is_taken_and_what_gave_way_is_free(seed: int) -> None:
    slide, pool = Slide(0.8), Pool()
    before = made(seed, Pool(), None)
    after = made(seed, pool, slide)
    assert not slide.fits(before, 1)
    assert slide.fits(after, 1)
    assert not any(pool.free(candidate) for candidate in after)
    assert len({candidate.item.twin for candidate in after}) == len(after)
    asked = {candidate.item.twin for candidate in after}
    gone = [candidate for candidate in before if candidate.item.twin not in asked]
    assert gone
    assert all(pool.free(candidate) for candidate in gone)


@pytest.mark.parametrize("seed", SEEDS)
def test_where_no_slide_holds_it_the_first_choice_stays_and_is_taken(seed: int) -> None:
    pool = Pool()
    found = made(seed, pool, Slide(0.0))
    assert addresses(found) == addresses(made(seed, Pool(), None))
    assert not any(pool.free(candidate) for candidate in found)


@pytest.mark.parametrize("seed", SEEDS)
def test_what_is_held_stays_however_long_it_is(seed: int) -> None:
    topic = TOPICS[0]
    tier = next(iter(topic.spaces))
    pool = Pool()
    index = topic.spaces[tier].place((19, 18))
    assert index is not None
    longest = pool.at(topic, tier, index)
    found = made(seed, pool, Slide(0.8), held=[longest])
    assert longest in found
    assert Slide(0.8).fits(found, 1)


def test_more_questions_than_a_slide_has_room_for_are_left_as_they_are() -> None:
    class Asked(Slide):
        def fits(self, questions: Sequence[Candidate], count: int) -> bool:
            raise AssertionError("twelve questions take two slides")

    found = made(3, Pool(), Asked(1.0), count=12)
    assert addresses(found) == addresses(made(3, Pool(), None, count=12))


def test_what_is_given_back_is_offered_again_whatever_tells_it_from_others() -> None:
    topic = TOPICS[0]
    tier = next(iter(topic.spaces))
    for pool in (Pool(), Pool(lambda item: (item.key,))):
        candidate = pool.take(pool.at(topic, tier, 0))
        assert not pool.free(candidate)
        pool.give_back(candidate)
        assert pool.free(candidate)


def test_questions_of_two_kinds_have_nothing_in_common() -> None:
    first, other = OtherKind(made), OtherKind(addresses)
    assert differing((first, 1, 2), (other, 1, 2)) == 3
    assert differing((first, 1, 2), (7, 1, 2)) == 3
    assert differing((first, (1, 2)), (first, (1, 3))) == 1
