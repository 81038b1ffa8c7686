"""How close two items look to a pupil who meets both on one page.

Two questions are near copies where they have one structure and at most one of their numbers
differs, or where they tell one story: whoever has done the first does the second without
thinking. Answers that repeat, or that end alike three times running (10 : 15 : 18,
20 : 15 : 18, 25 : 15 : 18), are guessed from the pattern. Everything that keeps such questions
apart uses this one measure.
"""

from __future__ import annotations

from collections.abc import Sequence

from itembank.items.measures.looks import Look
from itembank.notation import tree as t

SAME_STORY = 0.75
"""Share of two stories' words that are common from which they are one story."""
TOLD_AGAIN = 0.7
"""How close two items are that tell one story with other numbers."""


def closeness(first: Look, second: Look) -> float:
    """Return how close two items are, from 0 (little in common) to 1 (near copies).

    One story with other numbers lies between.

    >>> from itembank.items.measures.looks import look
    >>> from itembank.items.topics.registry import find_item
    >>> def seen(index):
    ...     return look(find_item(f"equations.both-sides/core/{index}"))
    >>> closeness(seen(234), seen(234)), closeness(seen(234), seen(1503))
    (1.0, 0.0)
    """
    if first.words and second.words:
        if not same_story(first, second):
            return 0.0
        return 1.0 if _numbers_alike(first, second) else TOLD_AGAIN
    if first.shape != second.shape or len(first.numbers) < 2:
        return 0.0
    if first.sides and first.sides == second.sides and first.answer == second.answer:
        return 1.0  # one shape, moved to another place of its grid
    return float(_numbers_alike(first, second))


def _numbers_alike(first: Look, second: Look) -> bool:
    """Tell whether at most one number differs, place by place."""
    if len(first.numbers) != len(second.numbers):
        return False
    return sum(a != b for a, b in zip(first.numbers, second.numbers, strict=True)) <= 1


def same_story(first: Look, second: Look) -> bool:
    """Tell whether two items tell one story, whatever their numbers."""
    common = len(first.words & second.words)
    return bool(common) and common >= SAME_STORY * len(first.words | second.words)


def same_answer(first: Look, second: Look) -> bool:
    """Tell whether two items have one answer; of a few options to name that says little."""
    return first.answer == second.answer and not isinstance(first.answer, t.Label)


def ends_alike(first: Look, second: Look) -> bool:
    """Tell whether two answers of several parts end alike, as 10 : 15 : 18 and 20 : 15 : 18."""
    return first.ending is not None and first.ending == second.ending


def alike_running(looks: Sequence[Look]) -> int:
    """Return how many times three answers running end alike."""
    return sum(
        ends_alike(first, second) and ends_alike(second, third)
        for first, second, third in zip(looks, looks[1:], looks[2:], strict=False)
    )
