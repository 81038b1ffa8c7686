"""Whole packs of real topics, with all three sheets, for the tests of the paper pages."""

from __future__ import annotations

import datetime
import random
from functools import cache

from itembank.items.topics.registry import find_topic, topic_ids
from itembank.packs.build import choose
from itembank.packs.data.pack import Look, Pack
from itembank.packs.pack_as_data import as_data
from itembank.planning.bands.bands import default_scheme
from itembank.planning.department.large_copies import LargePrint
from itembank.planning.department.pack_request import PackRequest, PlannedTopic

TOPICS = {
    "7M": ("fractions.equivalent", "fractions.lowest-terms", "equations.one-step"),
    "8K": ("fractions.add-unlike", "ratio.simplest-form", "ratio.share"),
    "9S": ("equations.both-sides", "equations.brackets", "equations.fractional"),
}


@cache
def real_pack(name: str = "8K", seed: int = 7, look: Look | None = None, variants: int = 1) -> Pack:
    """Return a pack of real items; the proof, which the pages do not need, is left out."""
    look = look or Look()
    request = PackRequest(
        school="Larkhythe School",
        class_name=name,
        date=datetime.date(2026, 11, 30),
        title="Fractions, ratio and equations",
        topics=tuple(PlannedTopic(topic, None) for topic in TOPICS[name]),
        questions=8,
        seed=seed,
        follow_up=10,
        variants=variants,
        large_print=LargePrint(look.large_print),
        paper=look.paper,
        print_tint=look.print_tint,
        slips=look.slips,
        self_mark="when done",
        bands=default_scheme(3),
    )
    return as_data(request, choose(request))


@cache
def draws_figures(name: str) -> bool:
    """Tell whether a topic draws figures, by a sample of its items."""
    rng, topic = random.Random(name), find_topic(name)
    return any(
        topic.item(tier, index).figure is not None
        for tier, space in topic.spaces.items()
        for index in rng.sample(range(len(space)), min(6, len(space)))
    )


@cache
def wordy_topics() -> tuple[str, ...]:
    """Return the topics without figures: the rules for sheets of lines are held on them."""
    return tuple(name for name in topic_ids() if not draws_figures(name))


@cache
def drawing_topics() -> tuple[str, ...]:
    """Return the topics that draw figures."""
    return tuple(name for name in topic_ids() if draws_figures(name))


def _four_topics(rng: random.Random, among: tuple[str, ...], number: int, follow_up: int) -> Pack:
    request = PackRequest(
        school="Larkhythe School",
        class_name="8K",
        date=datetime.date(2026, 11, 30),
        title="Four topics",
        topics=tuple(PlannedTopic(topic, None) for topic in rng.sample(among, 4)),
        questions=10,
        seed=number,
        follow_up=follow_up,
        variants=1,
        large_print=LargePrint(),
        print_tint=False,
        self_mark="when done",
        paper="white",
        slips=True,
        bands=default_scheme(3),
    )
    return as_data(request, choose(request))


_rng = random.Random(5)
_made: list[Pack] = []


def random_packs(draws: int) -> list[Pack]:
    """Return packs of ten questions on four topics drawn at random, with all three sheets.

    The same ones each time, of which a larger number holds those of a smaller.
    """
    for number in range(len(_made), draws):
        _made.append(_four_topics(_rng, wordy_topics(), number, 10))
    return _made[:draws]


_drawing_rng = random.Random(12)
_drawn: list[Pack] = []


def drawn_packs(draws: int) -> list[Pack]:
    """Return packs as `random_packs` does, of topics with figures and six questions a sheet."""
    for number in range(len(_drawn), draws):
        _drawn.append(_four_topics(_drawing_rng, drawing_topics(), number, 6))
    return _drawn[:draws]
