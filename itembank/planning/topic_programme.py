"""The topics of a week's starters as an integer programme: one path through the week a topic.

A topic's path leads from its past through the lessons that ask it. Each step has its worth:
the first by how the class stands on the topic, a later one by how long before it was asked
(:mod:`itembank.planning.topic_worth`). Steps are few, half the square of the lessons, and paths
are the kind of constraint whose relaxed solution is nearly whole, so that HiGHS hardly ever has
to branch, however far apart topics are wanted.
"""

from __future__ import annotations

import datetime
import random
from collections.abc import Mapping, Sequence

from itembank.planning.programme import Programme
from itembank.planning.topic_state import LessonWish, TopicState
from itembank.planning.topic_worth import DAY_LATER, first_worth, next_worths, worth
from itembank.planning.week_settings import ChoiceSettings

MORE = 0.1
"""What a further question on a topic in one starter is worth, of the first."""
AGAIN = 0.5
"""What a second starter of the week on a topic costs, of the worth of topics on average."""


def solve(
    lessons: Sequence[LessonWish],
    topics: Sequence[TopicState],
    prerequisites: Mapping[str, Sequence[str]],
    settings: ChoiceSettings,
    seed: int,
) -> list[list[int]]:
    """Return the number of questions for each lesson and topic that is worth most in all.

    Lessons are in order of date.

    Raises:
        ItembankError: nothing fits all that has to hold.
    """
    programme = Programme()
    limits = [limits_of(lesson, topics) for lesson in lessons]
    size = _size(lessons[0].date, topics, settings)
    # Ties are settled by a lot too small to outweigh any difference that matters.
    lot = random.Random(f"{seed}/topics")
    start = lessons[0].date
    needs = [{name for c in one.coming for name in prerequisites.get(c, ())} for one in lessons]
    later = [DAY_LATER ** (one.date - start).days for one in lessons]
    terms: list[list[list[int]]] = [[[] for _ in topics] for _ in lessons]
    for place, topic in enumerate(topics):
        extra = [
            less
            * (size * settings.prerequisite_bonus * (topic.topic in need) + 1e-4 * lot.random())
            for less, need in zip(later, needs, strict=True)
        ]
        stops = [i for i, (_, most) in enumerate(limits) if most[place]]
        starts: list[int] = []
        into: dict[int, list[int]] = {i: [] for i in stops}
        out: dict[int, list[int]] = {i: [] for i in stops}
        for n, i in enumerate(stops):
            first = first_worth(topic, lessons[i].date, start, settings)
            starts.append(programme.count(0, 1, first + extra[i]))
            into[i].append(starts[-1])
            dates = [lessons[k].date for k in stops[n:]]
            worths = next_worths(topic, dates, settings)
            for k, value in zip(stops[n + 1 :], worths, strict=True):
                step = programme.count(0, 1, value + extra[k])
                out[i].append(step)
                into[k].append(step)
            low, high = limits[i][0][place], limits[i][1][place]
            if not low:
                terms[i][place] = into[i]
            elif high > low:
                terms[i][place] = [programme.count(0, 1, MORE * first + extra[i])]
        programme.require(starts, 0, 1)
        for i in stops:
            # A lesson that must ask the topic is on its path; none is left before it is reached.
            forced = 1 if limits[i][0][place] else 0
            programme.require(into[i], forced, 1)
            programme.no_more(out[i], into[i])
        # A second starter of the week on a topic costs something, a third twice as much: where
        # topics have to come again, they take turns.
        again = [programme.count(0, 1, -AGAIN * size * k) for k in range(1, len(stops))]
        programme.no_more([one for i in stops for one in into[i]], again, 1)
    for lesson, (least, most), row in zip(lessons, limits, terms, strict=True):
        rest = lesson.questions - sum(least)
        programme.require([one for some in row for one in some], rest, rest)
        for places, fewest in mix(lesson, topics, least, most, settings):
            programme.require([one for place in places for one in row[place]], fewest, rest)
    solution = programme.solve()
    return [
        [low + sum(solution[one] for one in some) for low, some in zip(least, row, strict=True)]
        for (least, _), row in zip(limits, terms, strict=True)
    ]


def _size(date: datetime.date, topics: Sequence[TopicState], settings: ChoiceSettings) -> float:
    """Return what topics are worth on average on a day, for bonus and cost to be measured by."""
    values = [worth(one, date, settings) for one in topics if one.taught < date]
    return max(sum(values) / max(len(values), 1), 1.0)


def limits_of(lesson: LessonWish, topics: Sequence[TopicState]) -> tuple[list[int], list[int]]:
    """Return the fewest and the most questions a starter may have on each topic.

    It is one question a topic; where there are too few topics, questions are shared out as
    evenly as can be. The two differ by one at the most, so that a choice is yes or no.
    """
    least = [lesson.pinned.get(one.topic, 0) for one in topics]
    free = [place for place, one in enumerate(topics) if lesson.allows(one)]
    rest = lesson.questions - sum(least)
    while rest > 0:
        low = min(least[place] for place in free)
        lowest = {place for place in free if least[place] == low}
        if rest < len(lowest):
            return least, [count + (place in lowest) for place, count in enumerate(least)]
        for place in lowest:
            least[place] += 1
        rest -= len(lowest)
    return least, list(least)


def mix(
    lesson: LessonWish,
    topics: Sequence[TopicState],
    least: Sequence[int],
    most: Sequence[int],
    settings: ChoiceSettings,
) -> list[tuple[list[int], int]]:
    """Return sets of topics, by place, with the fewest further questions a starter has on each.

    They never ask for more than there is, nor for more than the pins leave room for.
    """
    room = lesson.questions - sum(least)
    found = []
    for recent, wanted in ((True, settings.fewest_recent), (False, settings.fewest_older)):
        places = [
            place
            for place, one in enumerate(topics)
            if most[place] and ((lesson.date - one.taught).days <= settings.recent) == recent
        ]
        settled = sum(least[place] for place in places)
        there = sum(most[place] for place in places) - settled
        fewest = min(max(round(wanted * lesson.questions / 8) - settled, 0), there, room)
        room -= fewest
        if fewest:
            found.append((places, fewest))
    return found
