"""What to do after a starter: teach again to all, a repair group, or go on.

The rule looks at the share of right answers:

* below `again_below`, too many were wrong for a group: teach it again to all;
* from `on_from`, enough were right: go on;
* in between, go on with a repair group of those who were wrong.

Going on from 80 % follows Rosenshine, "Principles of Instruction", *American Educator*, Spring
2012 (from memory); half the class as the line for teaching all of it again is common practice,
no source. Both are settings. The Wilson interval says how far the share can be trusted: where
it reaches over a line, the advice is a close call and worded as one, and in a small class it
nearly always is. Of so few pupils nothing is said without “perhaps”.
"""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum

from itembank.data_class import dataclass
from itembank.people.seats import seat_order
from itembank.records.statistics.interval import Interval, wilson
from itembank.text.in_words import counted

SMALL = 12
"""Pupils below which the advice says that so few tell little (common practice, no source)."""


class Next(StrEnum):
    """What the results suggest."""

    AGAIN = "teach again to all"
    GROUP = "a repair group"
    ON = "go on"


@dataclass(frozen=True, slots=True)
class Thresholds:
    """The lines between the three suggestions, and the confidence of the intervals."""

    again_below: float = 0.5
    on_from: float = 0.8
    confidence: float = 0.9

    def __post_init__(self) -> None:
        if not 0 < self.again_below < self.on_from < 1 or not 0 < self.confidence < 1:
            raise ValueError("the lines must rise from 0 to 1, with a confidence between 0 and 1")

    def zone(self, share: float) -> Next:
        """Return what a share of right answers suggests."""
        if share < self.again_below:
            return Next.AGAIN
        return Next.ON if share >= self.on_from else Next.GROUP

    @property
    def rule(self) -> str:
        """Return the rule in one sentence.

        >>> Thresholds().rule
        'Below 50 % right: teach again to all; from 80 %: go on; between: a repair group.'
        """
        low, high = round(100 * self.again_below), round(100 * self.on_from)
        return (
            f"Below {low} % right: {Next.AGAIN}; from {high} %: {Next.ON}; between: {Next.GROUP}."
        )


@dataclass(frozen=True, slots=True)
class Advice:
    """A suggestion, how sure it is, and the figures behind it.

    `others` are the suggestions that the interval reaches as well: none where the call is clear.
    """

    next: Next
    others: tuple[Next, ...]
    interval: Interval
    pupils: int
    why: str

    @property
    def close(self) -> bool:
        """Tell whether the interval reaches over a line."""
        return bool(self.others)

    @property
    def words(self) -> str:
        """Return the suggestion as firmly as the figures allow, and no more so.

        >>> advise(9, 27).words, advise(12, 27).words
        ('teach again to all', 'teach again to all, or a repair group')
        >>> advise(0, 3).words, advise(2, 3).words
        ('perhaps teach again to all', 'too few to say; perhaps a repair group')
        """
        if len(self.others) == len(Next) - 1:
            why = "too few to say" if self.pupils < SMALL else "too close to say"
            return f"{why}; perhaps {self.next}"
        said = " or ".join([f"{self.next}," if self.others else str(self.next), *self.others])
        return f"perhaps {said}" if self.pupils < SMALL else said


def advise(right: float, out_of: int, thresholds: Thresholds | None = None) -> Advice:
    """Return what `right` answers out of `out_of` pupils suggest.

    Raises:
        ValueError: nobody answered, or more are right than answered.

    >>> advise(9, 27).next.value, advise(9, 27).close
    ('teach again to all', False)
    >>> print(advise(4, 5).why.partition(".")[0])
    80 % right (Wilson interval 44 to 95 %)
    """
    if out_of < 1:
        raise ValueError("nobody answered, so there is nothing to go by")
    thresholds = thresholds or Thresholds()
    interval = wilson(right, out_of, thresholds.confidence)
    found = thresholds.zone(interval.share)
    reached = [thresholds.zone(interval.low), found, thresholds.zone(interval.high)]
    # An interval from the lowest zone to the highest passes through the middle one.
    if Next.AGAIN in reached and Next.ON in reached:
        reached.append(Next.GROUP)
    others = tuple(step for step in Next if step in reached and step is not found)
    low, high = round(100 * interval.low), round(100 * interval.high)
    why = [f"{round(100 * interval.share)} % right (Wilson interval {low} to {high} %)."]
    if others:
        names = " and ".join(f"“{zone}”" for zone in others)
        why.append(f"A close call: the interval reaches into {names}.")
    if out_of < SMALL:
        why.append(
            f"Only {counted(out_of, 'pupil')}: look at their work rather than at the figure."
        )
    return Advice(found, others, interval, out_of, " ".join(why))


def mixed_pairs(scores: Mapping[str, float]) -> list[tuple[str, ...]]:
    """Return pairs of mixed strength: the strongest half meets the weaker half, in order.

    Each pair then has about the same gap, so no pupil is paired with one far out of reach
    (common practice, no source). With an odd number the last pair is a three.

    >>> mixed_pairs({"A1": 8, "A2": 3, "B1": 6, "B2": 1, "C1": 5})
    [('A1', 'A2'), ('B1', 'B2', 'C1')]
    """
    ranked = sorted(scores, key=lambda seat: (-scores[seat], seat_order(seat)))
    if len(ranked) < 2:
        return [tuple(ranked)] if ranked else []
    half = len(ranked) // 2
    # The one in the middle goes to the last pair, which has the weakest in it.
    odd = ranked.pop(half) if len(ranked) % 2 else None
    pairs: list[tuple[str, ...]] = list(zip(ranked[:half], ranked[half:], strict=True))
    if odd is not None:
        pairs[-1] = (*pairs[-1], odd)
    return pairs
