"""What asking a topic is worth: the longer it rested and the weaker it is, the more.

::

    worth = days at rest × (share expected to be wrong)^weak × (times asked + 1)^−WIDENING

The first factor alone is rotation: the topic longest unseen comes first, so nothing is left
out. An index of this kind, how long something waited times what waiting costs, is how Whittle
shares a fixed number of turns among things that go stale ("Restless bandits: activity
allocation in a changing world", *Journal of Applied Probability* 25A, 1988; from memory); this
one is simpler than his, so that a weak topic never comes after a strong one. The second factor
weighs weakness; the third lets each return earn a longer rest, as gaps that widen do (Landauer
& Bjork, 1978; from memory). The powers are judgements, chosen on the simulation of a year
(``bench/simulate_year.py``), where `weak` from 0.25 to 0.75 and WIDENING from 0.15 to 0.35
change the lead by no more than a third of a point.
"""

from __future__ import annotations

import datetime
from collections.abc import Sequence

from itembank.planning.choosing.memory import Memory, asked, recall
from itembank.planning.choosing.topic_state import TopicState
from itembank.planning.choosing.week_settings import ChoiceSettings

WIDENING = 0.3
DAY_LATER = 0.5
"""What a day's delay within the week leaves of a worth: the lesson at hand comes first. Were
days alike, a weak topic would be kept back for Friday, since it gains most by waiting."""


def worth(topic: TopicState, date: datetime.date, settings: ChoiceSettings) -> float:
    """Return what asking a topic on a day is worth, before any bonus; 0 on the day it was seen.

    >>> day = datetime.date(2026, 10, 19)
    >>> from itembank.planning.choosing.memory import after_teaching
    >>> topic = TopicState("ratio.share", "Share in a ratio", day, after_teaching(day))
    >>> days = [day + datetime.timedelta(days=count) for count in (1, 8)]
    >>> worth(topic, days[0], ChoiceSettings()) < worth(topic, days[1], ChoiceSettings())
    True
    """
    days = max((date - topic.memory.last).days, 0)
    times = len({occasion.date for occasion in topic.seen})
    return days * _weakness(topic.memory, times, date, settings)


def _weakness(memory: Memory, times: int, date: datetime.date, settings: ChoiceSettings) -> float:
    wrong = 1 - recall(memory, date)
    return float(wrong**settings.weak * (times + 1) ** -WIDENING)


def first_worth(
    topic: TopicState, date: datetime.date, start: datetime.date, settings: ChoiceSettings
) -> float:
    """Return what asking a topic first on `date` is worth to a week that begins on `start`."""
    kept = DAY_LATER ** (date - start).days
    # Rest is between two askings: a topic that was only taught may come as soon as it likes.
    if topic.seen:
        kept *= _rested(topic.memory.last, date, settings)
    return float(worth(topic, date, settings) * kept)


def next_worths(
    topic: TopicState, dates: Sequence[datetime.date], settings: ChoiceSettings
) -> list[float]:
    """Return what asking a topic on each later date is worth, once it was asked on the first.

    What the class will show is not known yet: what is expected stands in for it. Days count
    only as far as a topic ought to rest, so that those which must come again within the week
    all rest about equally long.
    """
    # Without a share: what is expected stands in.
    after = asked(topic.memory, max(dates[0], topic.memory.last))
    # The asking on the first of these dates counts, though nothing is recorded of it yet.
    times = len({occasion.date for occasion in topic.seen}) + 1
    return [
        _weakness(after, times, date, settings) * _rested(dates[0], date, settings)
        for date in dates[1:]
    ]


def _rested(last: datetime.date, date: datetime.date, settings: ChoiceSettings) -> float:
    """Return what is left of a worth where a topic has rested for fewer days than it ought to.

    The root makes the first day of rest count for more than the last, so that two topics that
    rest two days each are better than one that rests three and one that rests one.
    """
    days = max((date - last).days, 0)
    return float((days / settings.rest) ** 0.5) if days < settings.rest else 1.0
