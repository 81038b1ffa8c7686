"""How a department wants its weeks planned: ``[planning]`` in ``department.toml``.

At the top for every class, or as ``[classes.planning]`` for one::

    [planning]
    weeks_apart = 6        # no question comes twice in a starter within so many weeks
    recent_days = 21       # for so long after its teaching a topic counts as recent
    recent_questions = 2   # the fewest on recent topics, of eight
    older_questions = 3    # the fewest on older topics, of eight
    look_ahead_days = 21   # what a question saves from being forgotten is counted so far
    weak = 10              # per cent: how much a topic's weakness weighs
    rest_days = 6          # a topic that comes back sooner is worth less
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from itembank.toml_file import Table

WEEKS_APART = 6
MOST_WEEKS = 52


@dataclass(frozen=True, slots=True)
class ChoiceSettings:
    """How topics are chosen (common practice, no source; held by the simulation of a year).

    What asking saves is counted over `horizon` days; `weak` is the weight of the share expected
    to be wrong and of the share that was wrong last. A topic counts as recent for `recent` days
    after its teaching; the two numbers that follow are questions out of eight. The k-th further
    starter of the week on a topic costs 1 − `again`^k of what a topic is worth on average, and
    so does 1 − `running` for each other starter with it within `rest` days.
    """

    horizon: int = 21
    weak: float = 0.1
    recent: int = 21
    fewest_recent: int = 2
    fewest_older: int = 3
    rest: int = 6
    again: float = 0.1
    running: float = 0.1
    prerequisite_bonus: float = 0.1


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
        horizon=table.whole("look_ahead_days", usual.horizon, 1, 200),
        weak=table.whole("weak", round(100 * usual.weak), 0, 100) / 100,
        recent=table.whole("recent_days", usual.recent, 1, 200),
        fewest_recent=table.whole("recent_questions", usual.fewest_recent, 0, 8),
        fewest_older=table.whole("older_questions", usual.fewest_older, 0, 8),
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
