"""Why a topic is in a starter, in one line a teacher can check."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from itembank.planning.choosing.memory import by_day
from itembank.planning.choosing.topic_state import LessonWish, TopicState


def reason(
    topic: TopicState,
    lesson: LessonWish,
    prerequisites: Mapping[str, Sequence[str]],
    topics: Sequence[TopicState],
) -> str:
    """Return why a topic is in a starter: only what is on record, nothing that is estimated.

    >>> import datetime
    >>> from itembank.planning.choosing.memory import Seen, remember
    >>> day = datetime.date(2026, 10, 19)
    >>> seen = (Seen(datetime.date(2026, 11, 18), 14, 26),)
    >>> one = TopicState("ratio.share", "Share in a ratio", day, remember(day, seen), seen)
    >>> reason(one, LessonWish(datetime.date(2026, 11, 30), 8), {}, [one])
    'taught 19 Oct, last seen 12 days ago, 54 % right then'
    """
    parts = [f"taught {topic.taught.day} {topic.taught:%b}"]
    seen = by_day(topic.seen)
    if seen:
        days = (lesson.date - seen[-1].date).days
        ago = "yesterday" if days == 1 else f"{days} days ago"
        if seen[-1].share is not None:
            parts.append(f"last seen {ago}, {round(100 * seen[-1].share)} % right then")
        else:
            how = "only as part of a score" if seen[-1].scored else "not recorded"
            parts.append(f"last seen {ago}, {how}")
            told = [one for one in seen if one.share is not None]
            if told:
                day = f"{told[-1].date.day} {told[-1].date:%b}"
                parts.append(f"{round(100 * (told[-1].share or 0))} % right on {day}")
    else:
        parts.append("not brought back yet")
    titles = {one.topic: one.title for one in topics}
    for name in lesson.coming:
        if topic.topic in prerequisites.get(name, ()):
            parts.append(f"needed today for {titles.get(name, name)}")
    if lesson.pinned.get(topic.topic):
        parts.append("pinned by you")
    return ", ".join(parts)
