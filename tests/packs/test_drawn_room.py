"""How full slides and slips are, as it is told to whoever chooses: of both, and of one."""

from __future__ import annotations

from typing import Any

import pytest

from itembank.errors import ItembankError
from itembank.items.topics.registry import find_topic
from itembank.packs import drawn_room
from itembank.packs.choosing.candidate import Candidate
from itembank.packs.choosing.item_pool import Pool
from itembank.packs.choosing.question_room import shared_figure
from itembank.packs.drawn_room import DrawnRoom
from tests.packs.small_topics import adding

TOPIC = adding("small.t1", 18)


class Drawers:
    """Stands for whoever draws: a slide holds all, a slip nothing."""

    def __init__(self, error: Exception | None = None) -> None:
        self.error, self.asked = error, []

    def __call__(self, pack: Any, count: int) -> bool:
        if self.error:
            raise self.error
        self.asked.append(count)
        return True

    def share(self, item: Any, shown: bool) -> float | None:
        if self.error:
            raise self.error
        return 0.1 if shown else 0.2

    def on_slip(self, pack: Any) -> bool:
        return False

    def slip_share(self, item: Any) -> float:
        return 0.6


@pytest.fixture
def question() -> Candidate:
    return Pool().at(TOPIC, next(iter(TOPIC.spaces)), 0)


@pytest.fixture
def room(monkeypatch: pytest.MonkeyPatch) -> Any:
    monkeypatch.setattr(drawn_room, "as_data", lambda request, chosen: chosen)
    return lambda *, slips, error=None: DrawnRoom(None, (TOPIC,), Drawers(error), slips)


def test_with_slips_half_of_a_share_is_that_of_the_slip(room: Any, question: Candidate) -> None:
    assert room(slips=False).share(question, False) == 0.2
    assert room(slips=True).share(question, False) == pytest.approx(0.4)
    assert room(slips=True).share(question, True) == pytest.approx(0.35)
    assert room(slips=True).without_slips().share(question, True) == 0.1


def test_a_slip_is_to_hold_what_one_slide_holds_and_no_more(room: Any, question: Candidate) -> None:
    assert not room(slips=True).fits([question], 1)
    assert room(slips=True).fits([question], 2)
    assert room(slips=False).fits([question], 1)


def test_too_long_is_no_fault_and_any_other_error_of_a_question_of_ours_is(
    room: Any, question: Candidate
) -> None:
    long = room(slips=False, error=ItembankError("too long for a slide"))
    assert not long.fits([question], 1)
    assert long.share(question, False) is None
    wrong = room(slips=False, error=KeyError("a fault of the program"))
    with pytest.raises(KeyError):
        wrong.fits([question], 1)
    with pytest.raises(KeyError):
        wrong.share(question, False)


def test_a_figure_that_is_drawn_into_is_shared_with_no_other_question() -> None:
    topic = find_topic("graphs.lines-by-table")
    candidates = [
        Pool().at(topic, tier, index)
        for tier, space in topic.spaces.items()
        for index in (part[0] for part in space.part_indices if part)
    ]
    drawn_into = [candidate for candidate in candidates if candidate.item.key_figure is not None]
    others = [candidate for candidate in candidates if candidate.item.key_figure is None]
    assert drawn_into
    assert all(shared_figure(each) is None for each in drawn_into)
    assert all(shared_figure(other) is other.item.figure for other in others)
