"""How a department wants its weeks planned: ``[planning]`` in ``department.toml``.

At the top for every class, or as ``[classes.planning]`` for one::

    [planning]
    weeks_apart = 6        # no question comes twice, on starters or sheets, within so many weeks
    recent_days = 28       # for so long after its teaching a topic counts as recent
    recent_questions = 1   # the fewest on recent topics, of eight
    older_questions = 3    # the fewest on older topics, of eight
    this_year_questions = 4  # the fewest on topics of this school year, of eight
    weak = 50              # how much weakness weighs: 0 not at all, 100 as much as time unseen
    rest_days = 3          # a topic comes back sooner only where there is too little else
"""

from __future__ import annotations

from dataclasses import replace

from itembank.data_class import dataclass
from itembank.files.toml_table import Table

WEEKS_APART = 6
MOST_WEEKS = 52


@dataclass(frozen=True, slots=True)
class ChoiceSettings:
    """How topics are chosen (common practice, no source; held by the simulation of a year).

    `weak` is the power of the share expected to be wrong in what a topic is worth. A topic
    counts as recent for `recent` days after its teaching; the three numbers that follow are
    questions out of eight: what earlier years taught takes half of a starter at the most, where
    this year has taught enough. A topic that rested for less than `rest` days is worth less. One
    that the coming lesson needs gains `prerequisite_bonus` times what topics are worth on average.
    """

    weak: float = 0.5
    recent: int = 28
    fewest_recent: int = 1
    fewest_older: int = 3
    fewest_this_year: int = 4
    rest: int = 3
    prerequisite_bonus: float = 1.0


@dataclass(frozen=True, slots=True)
class WeekSettings:
    """The weeks between two uses of one question, and how topics are chosen."""

    weeks_apart: int = WEEKS_APART
    choice: ChoiceSettings = ChoiceSettings()


def read_week_settings(row: Table, common: WeekSettings) -> WeekSettings:
    """Read the ``[planning]`` table in `row`, noting faults; `common` fills what it leaves out."""
    table = row.table("planning")
    if table is None:
        return common
    usual = common.choice
    choice = replace(
        usual,
        weak=table.whole("weak", round(100 * usual.weak), 0, 100) / 100,
        recent=table.whole("recent_days", usual.recent, 1, 200),
        fewest_recent=table.whole("recent_questions", usual.fewest_recent, 0, 8),
        fewest_older=table.whole("older_questions", usual.fewest_older, 0, 8),
        fewest_this_year=table.whole("this_year_questions", usual.fewest_this_year, 0, 8),
        rest=table.whole("rest_days", usual.rest, 0, 14),
    )
    apart = table.whole("weeks_apart", common.weeks_apart, 0, MOST_WEEKS)
    if choice.fewest_recent + choice.fewest_older > 8:
        table.fault(
            "recent_questions" if "recent_questions" in table else "older_questions",
            f"‘recent_questions’ ({choice.fewest_recent}) and ‘older_questions’ "
            f"({choice.fewest_older}) come to more than 8. Lower one of them.",
        )
    table.close()
    return WeekSettings(apart, choice)
