"""Where a topic asks in its own wordings: not of cards, lines, statements or stated answers."""

from __future__ import annotations

from typing import Any

from itembank.items.asks import kind_of
from itembank.items.item import Tier
from itembank.items.topics.space_part import OtherKind, is_other_kind
from itembank.items.topics.topic import Topic

_SHORT = ("_in_brief", "_told", "_points")
"""How modules of short questions are named."""
_LONGER = ("_trigonometry_told", "_sets_told")


def in_brief(point: tuple[Any, ...]) -> bool:
    """Tell whether a question of a line or two stands at a point, which needs no picture."""
    if not is_other_kind(point):
        return False
    module = point[0].make.__module__
    return module.endswith(_SHORT) and not module.endswith(_LONGER)


def plain(topic: Topic, tier: Tier) -> list[int]:
    """Return the indices of a tier whose questions stand in no frame, drawn stories among them.

    Short questions are left out: their wordings are read in :mod:`.brief_reader` and in the
    tests of what is told (:mod:`.told_in_words`).
    """
    framed: dict[OtherKind, bool] = {}
    found = []
    for index, point in enumerate(topic.spaces[tier]):
        if in_brief(point):
            continue
        if is_other_kind(point):
            # What one mark makes is of one kind: its first question tells of all.
            if point[0] not in framed:
                framed[point[0]] = _framed(topic, tier, index)
            if framed[point[0]]:
                continue
        found.append(index)
    return found


def _framed(topic: Topic, tier: Tier, index: int) -> bool:
    ask = topic.item(tier, index).ask
    return kind_of(ask).judges or kind_of(ask).frame
