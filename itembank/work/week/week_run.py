"""Makes a class's week: finds or makes its plan, changes it, builds its packs and writes all."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path

from itembank.errors import ItembankError
from itembank.people.lock import Waiting
from itembank.planning.department.class_scheme import LessonKey
from itembank.planning.department.department import find_department
from itembank.planning.week.lesson_meant import find_lesson, refuse_closed
from itembank.planning.week.week_changes import AsBefore
from itembank.planning.week.week_edit import Editor
from itembank.planning.week.week_plan import FOLDER, PlannedLesson, WeekPlan
from itembank.work.week.begin import Begun, begin, planner_of, read_plan_of
from itembank.work.week.earlier_plans import before_last_change
from itembank.work.week.planner import Planner
from itembank.work.week.remarks import remarks_on
from itembank.work.week.request import Built, Progress, Step, WeekMade, WeekRequest, untold
from itembank.work.week.week_build import Builder
from itembank.work.week.week_files import Week
from itembank.work.week.week_turn import one_at_a_time


def make_week(
    request: WeekRequest, waiting: Waiting | None = None, progress: Progress = untold
) -> WeekMade:
    """Plan a week, or take its plan, and make the packs that are wanted.

    `waiting` is told, time and again, who else is planning a week in the department's folder;
    `progress` each step as it begins.

    Raises:
        ItembankError: what is wanted or stands in a file makes no sense, or cannot be written.
            Where its matter is ``plan there`` or ``packs there``, the same request with
            `replace` goes on.
        CheckFailed: a key is wrong.
    """
    place = request.department
    if place is None and request.plan is not None:
        above = request.plan.absolute().parent
        place = above.parent if above.name == FOLDER else None
    home = find_department(place)
    # The second process loads what every pack needs while this one plans.
    with Builder() as builder, one_at_a_time(home, waiting):
        planner = planner_of(home, request)
        progress(Step.PLAN)
        return _Making(planner, request, begin(planner, request)).carry_out(builder, progress)


@dataclass
class _Making:
    """The making of one week, with what is found out on the way."""

    planner: Planner
    request: WeekRequest
    begun: Begun
    closed: dict[LessonKey, str] = field(default_factory=dict)
    """The lessons whose packs stay as they are, and why."""
    kept: dict[LessonKey, PlannedLesson] = field(default_factory=dict)
    """Those lessons, as the class had them."""

    def carry_out(self, builder: Builder, progress: Progress) -> WeekMade:
        """Change the plan, settle its questions, build and write."""
        from itembank.work.week.like_it import with_new_questions
        from itembank.work.week.week_questions import with_questions

        before = plan = self._as_given()
        changes = self.request.changes
        undone = None
        if self.request.undo:
            undone = before_last_change(self.begun.path)
            changes = (AsBefore(read_plan_of(self.planner, undone)[0]),)
        if changes:
            refuse_closed(plan, changes, self.closed)
            changes = with_new_questions(self.planner, plan, changes)
            known = self.planner.known(plan.week, plan.lessons[0].seed)
            editor = Editor(plan, known, self.planner.known_topics, self.planner.topic_of)
            plan = self._with_closed(editor.apply(changes))
        there = self._week(plan)
        progress(Step.QUESTIONS)
        built = {lesson.key: there.built(lesson) or () for lesson in plan.lessons}
        plan = self._with_closed(with_questions(self.planner, plan, built, self.closed))
        week = self._week(plan)
        lessons = self._wanted(week, before if changes else None)
        progress(Step.PACKS)
        week.write(
            builder,
            lessons,
            self.request.replace,
            rewrite=plan != self.begun.read,
            was=self.begun.was,
            keep_earlier=undone is None,
        )
        # Last of all: broken off before, the way back is still there.
        if undone is not None:
            undone.unlink(missing_ok=True)
        return self._made(week, lessons)

    def _week(self, plan: WeekPlan) -> Week:
        return Week(self.planner, plan, self.begun.path, self._output, self.request.how_to_build)

    @property
    def _output(self) -> Path:
        from itembank.work.places import packs_place

        return self.request.output or packs_place(self.planner.home)

    def _as_given(self) -> WeekPlan:
        """Return the plan, which says of closed lessons what their packs ask where it said nothing.

        Notes which lessons are closed: there is a pack of theirs, and it stays.
        """
        begun, planner = self.begun, self.planner
        week = self._week(begun.plan)
        lessons = []
        for lesson in begun.plan.lessons:
            why = planner.closed(lesson)
            gone = planner.gone(lesson.date, lesson.period)
            if why and (gone or week.folder(lesson).exists()):
                if begun.read is None and lesson not in begun.stays and not gone:
                    lesson = week.as_built(lesson)
                self.closed[lesson.key] = why
                self.kept[lesson.key] = lesson
            lessons.append(lesson)
        return replace(begun.plan, lessons=tuple(lessons))

    def _with_closed(self, plan: WeekPlan) -> WeekPlan:
        """Return a plan with its closed lessons as they were."""
        lessons = [self.kept.get(lesson.key, lesson) for lesson in plan.lessons]
        return replace(plan, lessons=tuple(lessons))

    def _wanted(self, week: Week, before: WeekPlan | None) -> list[PlannedLesson]:
        """Return the lessons whose packs are to be made; after changes, those that differ."""
        lessons = week.plan.lessons
        if self.request.only is not None:
            lesson = lessons[find_lesson(week.plan, self.request.only)]
            if lesson.key in self.closed:
                raise ItembankError(
                    f"{lesson} {self.closed[lesson.key]}, so its pack stays as the class had it.",
                    matter="lesson closed",
                    lesson=lesson.key,
                )
            return [lesson]
        if before is not None:
            old = set(before.lessons)
            return [
                lesson
                for lesson in lessons
                if lesson not in old or not week.folder(lesson).exists()
            ]
        stays = self.begun.stays
        return [
            lesson for lesson in lessons if lesson not in stays and lesson.key not in self.closed
        ]

    def _made(self, week: Week, lessons: Sequence[PlannedLesson]) -> WeekMade:
        planner, plan = self.planner, week.plan
        names = dict.fromkeys(name for lesson in plan.lessons for name in lesson.counts)
        return WeekMade(
            department=planner.home,
            plan=plan,
            path=week.path,
            overview=week.overview,
            built=tuple(Built(lesson, week.folder(lesson)) for lesson in lessons),
            titles={name: planner.title(name) for name in names},
            skipped=tuple(week.skipped),
            remarks=remarks_on(week, self.begun, lessons, self.closed),
        )
