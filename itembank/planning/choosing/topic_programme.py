"""The topics of a week's starters as an integer programme: one path through the week a topic.

A topic's path leads from its past through the lessons that ask it. Each step has its worth:
the first by how the class stands on the topic, a later one by how long before it was asked
(:mod:`itembank.planning.choosing.topic_worth`) and how often it has come by then. Paths are the
kind of constraint whose relaxed solution is nearly always whole, so that HiGHS hardly ever has to
branch, however far apart topics are wanted.
"""

from __future__ import annotations

import datetime
import random
from collections.abc import Collection, Mapping, Sequence

from itembank.planning.choosing.programme import Programme
from itembank.planning.choosing.topic_state import LessonWish, TopicState
from itembank.planning.choosing.topic_worth import DAY_LATER, first_worth, next_worths, worth
from itembank.planning.choosing.week_settings import ChoiceSettings

MORE = 0.1
"""What a further question on a topic in one starter is worth, of the first."""
AGAIN = 0.5
"""The k-th return of a topic within the week costs k times this, of what topics are worth on
average: where topics have to come again, they take turns."""
STALE = 20.0
"""What asking a topic costs that has no question left which was not used of late, of what topics
are worth on average: any other topic comes first (a judgement, no source)."""


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
    limits = _limits(lessons, topics)
    size = _size(lessons[0].date, topics, settings)
    # Ties are settled by a lot too small to outweigh any difference that matters.
    lot = random.Random(f"{seed}/topics")
    start = lessons[0].date
    # What the coming lesson rests on is worth more in that lesson's starter, and in no other.
    needs = [
        {name for coming in lesson.coming for name in prerequisites.get(coming, ())}
        for lesson in lessons
    ]
    later = [DAY_LATER ** (lesson.date - start).days for lesson in lessons]
    terms: list[list[list[int]]] = [[[] for _ in topics] for _ in lessons]
    for place, topic in enumerate(topics):
        bonus = [
            less
            * (size * settings.prerequisite_bonus * (topic.topic in need) + 1e-4 * lot.random())
            for less, need in zip(later, needs, strict=True)
        ]
        stops = [i for i, (_, most) in enumerate(limits) if most[place]]
        firsts = [first_worth(topic, lessons[i].date, start, settings) for i in stops]
        nexts = [
            next_worths(topic, [lessons[k].date for k in stops[n:]], settings)
            for n in range(len(stops))
        ]
        forced = [limits[i][0][place] > 0 for i in stops]
        extra = [bonus[i] for i in stops]
        costs = [AGAIN * size * k for k in range(len(stops))]
        if topic.rested is not None:
            costs = [cost + STALE * size * (k >= topic.rested) for k, cost in enumerate(costs)]
        # A step that is forced is among a lesson's fewest questions: it is not chosen again below.
        steps = _path(programme, firsts, nexts, extra, forced, costs)
        for n, i in enumerate(stops):
            if not forced[n]:
                terms[i][place] = steps[n]
            elif limits[i][1][place] > limits[i][0][place]:
                terms[i][place] = [programme.count(0, 1, MORE * firsts[n] + extra[n])]
    for lesson, (least, most), row in zip(lessons, limits, terms, strict=True):
        rest = lesson.questions - sum(least)
        programme.require([step for some in row for step in some], rest, rest)
        for places, fewest in mix(lesson, topics, least, most, settings):
            programme.require([step for place in places for step in row[place]], fewest, rest)
    solution = programme.solve()
    return [
        [low + sum(solution[step] for step in some) for low, some in zip(least, row, strict=True)]
        for (least, _), row in zip(limits, terms, strict=True)
    ]


def _path(
    programme: Programme,
    firsts: Sequence[float],
    nexts: Sequence[Sequence[float]],
    extra: Sequence[float],
    forced: Sequence[bool],
    costs: Sequence[float],
) -> list[list[int]]:
    """Add a topic's path through the lessons that may ask it; return the steps into each lesson.

    `firsts` is what asking it first in a lesson is worth, `nexts` what each later lesson adds
    after it, `extra` what a lesson adds in any case. The k-th return within the week costs
    `costs[k]`, so that topics that have to come again take turns; a place on the path is
    therefore a lesson together with how often the topic has come by then.
    """
    into: dict[tuple[int, int], list[int]] = {}
    out: dict[tuple[int, int], list[int]] = {}
    for n, first in enumerate(firsts):
        into[n, 0] = [programme.count(0, 1, first + extra[n] - costs[0])]
    # Every pair of lessons has a step for each number of times the topic may have come by then.
    for n, worths in enumerate(nexts):
        for k in range(n + 1):
            for m, value in enumerate(worths, n + 1):
                step = programme.count(0, 1, value + extra[m] - costs[k + 1])
                out.setdefault((n, k), []).append(step)
                into.setdefault((m, k + 1), []).append(step)
    # One path at most begins; with the rule below, one path is all there is.
    programme.require([into[n, 0][0] for n in range(len(firsts))], 0, 1)
    for place, steps in out.items():
        # No lesson is left that was not reached.
        programme.no_more(steps, into[place])
    found = [[step for k in range(n + 1) for step in into[n, k]] for n in range(len(firsts))]
    for steps, must in zip(found, forced, strict=True):
        programme.require(steps, int(must), 1)
    return found


def _size(date: datetime.date, topics: Sequence[TopicState], settings: ChoiceSettings) -> float:
    """Return what topics are worth on average on a day, for bonus and cost to be measured by."""
    values = [worth(topic, date, settings) for topic in topics if topic.taught < date]
    # At least 1, so that bonus and cost still rank topics that are worth nothing yet.
    return max(sum(values) / max(len(values), 1), 1.0)


def _limits(
    lessons: Sequence[LessonWish], topics: Sequence[TopicState]
) -> list[tuple[list[int], list[int]]]:
    """Return the limits of each lesson; what a lesson must ask uses up what a topic has left."""
    left = {topic.topic: topic.rested for topic in topics if topic.rested is not None}
    found = []
    for lesson in lessons:
        least, most = limits_of(lesson, topics, [name for name, n in left.items() if n <= 0])
        for topic, count in zip(topics, least, strict=True):
            if topic.topic in left:
                left[topic.topic] -= count
        found.append((least, most))
    return found


def limits_of(
    lesson: LessonWish, topics: Sequence[TopicState], spent: Collection[str] = ()
) -> tuple[list[int], list[int]]:
    """Return the fewest and the most questions a starter may have on each topic.

    It is one question a topic; where there are too few topics, questions are shared out as
    evenly as can be. The two differ by one at the most, so that a choice is yes or no. Topics
    that are `spent` have no question left that was not used of late, and rest while there are
    others.
    """
    least = [lesson.pinned.get(topic.topic, 0) for topic in topics]
    allowed = [place for place, topic in enumerate(topics) if lesson.allows(topic)]
    free = [place for place in allowed if topics[place].topic not in spent] or allowed
    rest = lesson.questions - sum(least)
    while rest > 0:
        low = min(least[place] for place in free)
        lowest = {place for place in free if least[place] == low}
        if rest < len(lowest):
            return least, [count + (place in lowest) for place, count in enumerate(least)]
        for place in lowest:
            least[place] += 1
        # A whole round of one more each; what is left after the last round is the choice.
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
            for place, topic in enumerate(topics)
            if most[place] and ((lesson.date - topic.taught).days <= settings.recent) == recent
        ]
        settled = sum(least[place] for place in places)
        there = sum(most[place] for place in places) - settled
        # Never more than can be had, or the programme would have no solution at all.
        fewest = min(max(round(wanted * lesson.questions / 8) - settled, 0), there, room)
        # Each want is rounded by itself, so that two of them can come to more than a starter has.
        room -= fewest
        if fewest:
            found.append((places, fewest))
    return [*found, *_this_year(lesson, topics, least, most, settings, found)]


def _this_year(
    lesson: LessonWish,
    topics: Sequence[TopicState],
    least: Sequence[int],
    most: Sequence[int],
    settings: ChoiceSettings,
    others: Sequence[tuple[list[int], int]],
) -> list[tuple[list[int], int]]:
    """Return the set of this year's topics with its fewest, where there are earlier ones at all.

    The sets of recent and of older topics come first: what they need of earlier years, where
    this year has too few of theirs, is left to them.
    """
    if not any(topic.earlier for topic in topics):
        return []
    places = [n for n, topic in enumerate(topics) if most[n] and not topic.earlier]
    settled = sum(least[n] for n in places)
    open_ones = {n for n in places if most[n] > least[n]}
    room = lesson.questions - sum(least)
    for group, fewest in others:
        room -= max(0, fewest - len(open_ones.intersection(group)))
    wanted = round(settings.fewest_this_year * lesson.questions / 8) - settled
    fewest = min(max(wanted, 0), len(open_ones), room)
    return [(places, fewest)] if fewest > 0 else []
