"""Pie charts: reading sectors, an angle that is missing, and how many a sector stands for.

England's programme of study for key stage 3 (2013) asks pupils to "construct and interpret ...
pie charts ... for categorical data" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators.statistics import _chart_mistakes as m
from generators.statistics._pies import STORIES, TOTALS, angles_of, count_for, two_sectors
from generators.statistics._pies_asked import ALONE, OF_ALL, Ask
from generators.statistics._pies_in_brief import BRIEF
from itembank.items import kinds
from itembank.items.item import Draft, Tier
from itembank.items.kinds import line_edits as e
from itembank.items.kinds.brief import with_brief
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic


def _support(ask: int, story: int, total: int, seed: int) -> bool:
    angles = angles_of(story, seed)
    if angles is None:
        return False
    if ask == Ask.MOST:
        return total == TOTALS[0] and angles[0] != max(angles)
    # The same for every pie of so many: a few of each are enough.
    return seed < 60 and all(count_for(total, angle).denominator == 1 for angle in angles)


def _core(ask: int, story: int, total: int, seed: int) -> bool:
    angles = angles_of(story, seed)
    if angles is None:
        return False
    degrees = angles[seed % 4]
    if ask == Ask.MISSING:
        return total == TOTALS[0] and degrees != 180
    if ask == Ask.FRACTION:
        return total == TOTALS[0] and degrees not in (180, 120, 72)
    if any(count_for(total, angle).denominator > 1 for angle in angles):
        return False
    return count_for(total, degrees) not in (degrees, Fraction(total, 4))


def _challenge(ask: int, story: int, total: int, seed: int) -> bool:
    angles = angles_of(story, seed)
    if angles is None or any(count_for(total, angle).denominator > 1 for angle in angles):
        return False
    first, second = two_sectors(seed)
    a, b = count_for(total, angles[first]), count_for(total, angles[second])
    gap = abs(a - b)
    return gap not in (a, b, abs(angles[first] - angles[second]))


@register
class PieCharts(Topic):
    """The largest sector and a missing angle; fractions and numbers; how many more."""

    id = "statistics.pie-charts"
    title = "Pie charts"
    statements = ("statistics.charts",)
    prerequisites = ("fractions.of-quantity", "fractions.lowest-terms")
    misconceptions = (
        *(
            m.OTHER_END,
            m.FIRST_IN_LINE,
            m.TURN_IS_180,
            m.ADDS_ANGLES,
            m.OUT_OF_100,
            m.ANGLE_AS_COUNT,
        ),
        *(
            m.QUARTER_EACH,
            m.DIVIDES_BY_ANGLE,
            m.DEGREES_FOR_MORE,
            m.ADDS_FOR_MORE,
            m.OTHER_PART,
            m.TOTAL_AS_DEGREES,
            m.NEXT_ANGLE,
            m.READS_ONE_OF_TWO,
        ),
    )
    spaces = {
        Tier.SUPPORT: Space(
            _support,
            ask=(Ask.MOST, Ask.EACH),
            story=range(len(STORIES)),
            total=TOTALS,
            seed=range(1, 110),
        ),
        Tier.CORE: Space(
            _core,
            ask=(Ask.MISSING, Ask.FRACTION, Ask.COUNT),
            story=range(len(STORIES)),
            total=TOTALS,
            seed=range(1, 110),
        ),
        Tier.CHALLENGE: Space(
            _challenge,
            ask=(Ask.MORE,),
            story=range(len(STORIES)),
            total=TOTALS,
            seed=range(110, 300),
        ),
    }
    spaces = with_brief(kinds.with_statements(spaces), BRIEF)
    spaces = kinds.with_working_spotted(
        spaces,
        "statistics.pie-charts",
        kinds.working_goes_wrong(
            {m.ADDS_FOR_MORE: (e.turned,), m.READS_ONE_OF_TWO: (e.cut_short,)}
        ),
    )
    spaces = kinds.with_people_asked(spaces, "statistics.pie-charts")

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        ask, story, total, seed = values
        angles = angles_of(story, seed)
        assert angles is not None
        if ask in ALONE:
            return ALONE[ask](story, angles, seed)
        return OF_ALL[ask](story, angles, total, seed)
