"""Topics and lessons for tests of what a week brings back."""

import datetime

from itembank.planning.choosing.choose_topics import (
    ChoiceSettings,
    LessonWish,
    TopicState,
)
from itembank.planning.choosing.memory import Seen, remember

MONDAY = datetime.date(2026, 11, 30)
PLAIN = ChoiceSettings(fewest_recent=0, fewest_older=0, rest=0)


def topic(name, taught_ago, right=None, seen_ago=None):
    taught = MONDAY - datetime.timedelta(days=taught_ago)
    seen = ()
    if right is not None:
        seen = (Seen(MONDAY - datetime.timedelta(days=seen_ago), right, 30),)
    return TopicState(name, name.title(), taught, remember(taught, seen), seen)


def some_topics(count, gap=9):
    return [topic(f"t{k}", 3 + gap * k, 10 + k, 2 + 5 * (k % 4)) for k in range(count)]


def week(*dates, questions=8, **rest):
    return [LessonWish(MONDAY + datetime.timedelta(days=d), questions, **rest) for d in dates]


def counts(choice):
    return {topic.topic: topic.count for topic in choice.topics}
