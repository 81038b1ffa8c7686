"""What a person ought to know of a week that was made, besides where it is."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from itembank.files.faults import join_words
from itembank.planning.department.class_scheme import LessonKey
from itembank.planning.week.week_plan import PlannedLesson
from itembank.remark import Remark
from itembank.text.in_words import weekday
from itembank.work.week.begin import Begun
from itembank.work.week.week_files import Week


def remarks_on(
    week: Week,
    begun: Begun,
    built: Sequence[PlannedLesson],
    closed: Mapping[LessonKey, str],
) -> tuple[Remark, ...]:
    """Return the remarks on a week, of which the packs of some lessons were `built`.

    `closed` are the lessons of which nothing may change any more, and why.
    """
    return (
        *map(Remark, week.planner.folder.remarks),
        *begun.remarks,
        *_asked_again(built),
        *_not_built(week, begun, built, closed),
        *_beyond_year(week),
    )


def _asked_again(lessons: Sequence[PlannedLesson]) -> Iterator[Remark]:
    """Yield a remark on each topic that has too few questions."""
    days: dict[str, list[str]] = {}
    for lesson in lessons:
        for topic in lesson.topics:
            if topic.reason is not None and topic.reason.again is not None:
                days.setdefault(topic.topic, []).append(weekday(lesson.date))
    for name, named in days.items():
        yield Remark(
            f"{name} comes again with questions asked of late on {join_words(named)}: it has no "
            "others.",
            matter="too few questions",
            topic=name,
        )


def _not_built(
    week: Week,
    begun: Begun,
    built: Sequence[PlannedLesson],
    closed: Mapping[LessonKey, str],
) -> Iterator[Remark]:
    """Yield a remark on each lesson that stays as it was, or whose pack is an older one."""
    for lesson in week.plan.lessons:
        if lesson.key in closed:
            if lesson.date >= begun.first:
                yield Remark(f"{lesson} {closed[lesson.key]} and stays as it was.")
        elif lesson not in built and week.differs(lesson):
            yield Remark(
                f"The pack of {lesson} is not as the plan has it now.",
                matter="pack not as planned",
                path=week.path,
                day=lesson.date,
            )


def _beyond_year(week: Week) -> Iterator[Remark]:
    """Yield a remark on each topic of the scheme that the class is too young for."""
    planner = week.planner
    for name, why in planner.beyond_year.items():
        yield Remark(
            f"{why} {planner.school_class.name} is not asked about it. To ask for it all the "
            f'same, write beyond_year = ["{name}"] in department.toml.'
        )
