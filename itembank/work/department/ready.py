"""What a scheme of work can begin from: the topics by strand, and an order for each year."""

from __future__ import annotations

from collections import defaultdict

from itembank.data_class import dataclass
from itembank.planning.calendar.calendar import Calendar
from itembank.planning.calendar.scheme import FOLDER as SCHEMES
from itembank.work.department.answered import SchemeAnswer, TopicAnswer
from itembank.work.department.answers_read import Files, answers_in

SHIPPED = "larkhythe"


@dataclass(frozen=True, slots=True)
class TopicFacts:
    """A topic that can be taught: its id, its title and the first year that it suits."""

    topic: str
    title: str
    year: int


def topics_by_strand() -> dict[str, tuple[TopicFacts, ...]]:
    """Return the topics there are, by strand, each after those that it rests on.

    >>> order = [answer.topic for answer in topics_by_strand()["ratio"]]
    >>> order.index("ratio.simplest-form") < order.index("ratio.share")
    True
    """
    from itembank.items.topics.listing import first_years
    from itembank.items.topics.registry import find_topic

    found: dict[str, list[TopicFacts]] = defaultdict(list)
    for name in _in_order():
        topic = find_topic(name)
        year = min(first_years(topic))
        found[topic.strand].append(TopicFacts(topic.id, topic.title, year))
    return {strand: tuple(found[strand]) for strand in sorted(found)}


def ready_scheme(year: int, calendar: Calendar | None = None) -> SchemeAnswer:
    """Return a scheme to begin from for a year group, under the name ``year-8``.

    For years 7 to 9 it is that of the demo department, week by week, without what is beyond the
    year, its last weeks joined where the calendar has fewer. For other years it is every topic
    that the year suits, each after those that it rests on, without weeks: they share out those
    of the year. Either is a beginning and no advice.

    >>> ready_scheme(8).topics[0]
    TopicAnswer(topic='fractions.equivalent', week=1, taught=None)
    """
    name = f"year-{year}"
    suits = {
        facts.topic
        for strand in topics_by_strand().values()
        for facts in strand
        if facts.year <= max(year, 7)
    }
    files = _shipped()
    if f"{SCHEMES}/{name}.toml" in files:
        answers = answers_in(files)
        own = answers.calendar
        scheme = next(scheme for scheme in answers.schemes if scheme.name == name)
        topics = []
        for topic in scheme.topics:
            if topic.topic not in suits:
                continue
            week = topic.week
            if week is None and topic.taught is not None and own is not None:
                week = own.week_number(topic.taught)
            if week is not None and calendar is not None:
                week = min(week, max(calendar.weeks, 1))
            topics.append(TopicAnswer(topic.topic, week))
        return SchemeAnswer(name, year, tuple(topics))
    order = [topic for topic in _in_order() if topic in suits]
    return SchemeAnswer(name, year, tuple(TopicAnswer(topic) for topic in order))


def _in_order() -> list[str]:
    """Return the topics, each after those that it rests on: first those that rest on none."""
    from itembank.work.department.looked_at import known_topics

    _, prerequisites = known_topics()

    def depth(name: str) -> int:
        below = [depth(topic) for topic in prerequisites[name] if topic in prerequisites]
        return 1 + max(below, default=-1)

    return sorted(prerequisites, key=lambda name: (depth(name), name))


def _shipped() -> Files:
    from itembank.files.shipped import shipped_folder

    folder = shipped_folder() / SHIPPED
    paths = [
        folder / "department.toml",
        folder / "calendar.toml",
        *(folder / SCHEMES).glob("*.toml"),
    ]
    return {path.relative_to(folder).as_posix(): path.read_text("utf-8") for path in paths}
