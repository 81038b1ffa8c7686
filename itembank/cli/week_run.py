"""Carries ``itembank week`` out: finds or makes the plan, changes it, builds and writes."""

from __future__ import annotations

import datetime
from dataclasses import dataclass, replace
from pathlib import Path

from itembank.cli.week_build import Builder
from itembank.cli.week_files import Week
from itembank.cli.week_lock import one_at_a_time
from itembank.cli.week_plan import NewPlan, Planner
from itembank.cli.words.wrapped import say
from itembank.errors import ItembankError
from itembank.files.faults import FileFaults, join_words
from itembank.files.snapshot import Snapshot, take
from itembank.files.toml_table import TomlFile
from itembank.planning.calendar.calendar import monday
from itembank.planning.calendar.days import parse_day
from itembank.planning.choosing.reason_words import reason_of_its_lesson
from itembank.planning.department.class_scheme import LessonKey
from itembank.planning.week.week_edit import Editor, Edits, find_day, refuse_closed
from itembank.planning.week.week_plan import FOLDER, PlannedLesson, WeekPlan
from itembank.text.folding import same_name
from itembank.text.in_words import long_day, weekday
from itembank.text.paths_shown import as_typed
from itembank.today import today


@dataclass(frozen=True, slots=True)
class Asked:
    """What was typed."""

    class_name: str | None
    first: str | None
    plan: Path | None
    only: str | None
    edits: Edits
    output: Path | None
    department: Path | None
    replace: bool


def run(asked: Asked) -> None:
    """Plan a week, or take its plan, and make the packs that are wanted.

    Raises:
        ItembankError: what was typed or stands in a file makes no sense, or cannot be written.
        CheckFailed: a key is wrong.
    """
    from itembank.planning.department.department import find_department

    place = asked.department
    if place is None and asked.plan is not None and asked.plan.absolute().parent.name == FOLDER:
        place = asked.plan.absolute().parent.parent
    home = find_department(place)
    with Builder() as builder, one_at_a_time(home):
        planner = _planner(place, asked.class_name, asked.plan)
        _Run(planner, asked, builder).carry_out()


def _planner(place: Path | None, class_name: str | None, plan_path: Path | None) -> Planner:
    from itembank.items.topics.registry import topics
    from itembank.planning.department.department import find_department
    from itembank.planning.department.folder import read_folder

    made = list(topics())
    titles = {one.id: one.title for one in made}
    folder = read_folder(
        find_department(place), tuple(titles), {one.id: one.prerequisites for one in made}
    )
    if class_name is None and plan_path is not None:
        class_name = _class_of(TomlFile(plan_path), [one.name for one in folder.department.classes])
    return Planner(folder, folder.department.find_class(class_name), titles)


def _class_of(file: TomlFile, classes: list[str]) -> str:
    """Return the class a plan file is for.

    Raises:
        FileFaults: it names none, or one that is not there.
    """
    top = file.top()
    name = top.text("class", None)
    if name and not any(same_name(name, one) for one in classes):
        top.fault("class", f"There is no class {name}. The classes are {join_words(classes)}.")
    file.finish()
    return name


class _Run:
    """One run, with what it has found out so far."""

    def __init__(self, planner: Planner, asked: Asked, builder: Builder) -> None:
        self.planner, self.asked, self.builder = planner, asked, builder
        self.notes: list[str] = []
        self.first = datetime.date.min  # the day typed
        self.before: WeekPlan | None = None  # where only what changes is to be built
        self.stays: tuple[PlannedLesson, ...] = ()
        self.closed: dict[LessonKey, str] = {}  # lessons whose packs stay, and why
        self.given: dict[LessonKey, PlannedLesson] = {}
        self.read: WeekPlan | None = None
        self.was: Snapshot | None = None  # the plan's file before anything was made of it

    def carry_out(self) -> None:
        """Do it all."""
        path, plan = self._plan()
        home = self._home()
        plan = self._as_given(Week(self.planner, plan, path, home))
        if self.asked.edits:
            self.before = plan
            refuse_closed(plan, self.asked.edits, self.closed)
            known = self.planner.known(plan.week, plan.lessons[0].seed)
            editor = Editor(plan, known, self.planner.known_topics, self.planner.topic_of)
            plan = self._with_closed(editor.apply(self.asked.edits))
        from itembank.cli.week_questions import with_questions

        there = Week(self.planner, plan, path, home)
        built = {one.key: there.built(one) or () for one in plan.lessons}
        plan = self._with_closed(with_questions(self.planner, plan, built, self.closed))
        week = Week(self.planner, plan, path, home)
        lessons = self._wanted(week)
        rewrite = plan != self.read
        week.write(self.builder, lessons, self.asked.replace, rewrite=rewrite, was=self.was)
        self._tell(week, lessons)

    def _as_given(self, week: Week) -> WeekPlan:
        """Return a plan that says of closed lessons what their packs ask, where it said nothing.

        Notes which lessons are closed: there is a pack of theirs, and it stays.
        """
        lessons = []
        for one in week.plan.lessons:
            why = self.planner.closed(one)
            gone = self.planner.recorded.fell_out(one.date, one.period)
            if why and (gone or week.folder(one).exists()):
                if self.read is None and one not in self.stays and not gone:
                    one = week.as_built(one)
                self.closed[one.key] = why
                self.given[one.key] = one
            lessons.append(one)
        return replace(week.plan, lessons=tuple(lessons))

    def _with_closed(self, plan: WeekPlan) -> WeekPlan:
        """Return a plan with its closed lessons as they were."""
        lessons = [self.given.get(one.key, one) for one in plan.lessons]
        return replace(plan, lessons=tuple(lessons))

    def _home(self) -> Path:
        from itembank.work.places import output_home

        return self.asked.output if self.asked.output is not None else output_home(Path.cwd())

    def _plan(self) -> tuple[Path, WeekPlan]:
        """Return where the plan is or will be, and the plan as it was or newly made."""
        if self.asked.plan is not None:
            self.was = take(self.asked.plan)
            return self.asked.plan, self._read(self.asked.plan)
        planner = self.planner
        first = parse_day(self.asked.first or "today", today())
        planner.lessons_from(first)  # without any there is nothing to do
        self.first = first
        name = WeekPlan(planner.school_class.name, monday(first), ()).file_name
        path = planner.home / FOLDER / name
        self.was = take(path)
        if self.was.raw is None:
            return path, self._noted(planner.new_plan(first, None))
        if self.asked.edits:
            return path, self._read(path)
        if not self.asked.replace:
            raise ItembankError(
                f"There is a plan of this week in {path} already. Build from it with --plan "
                f"{as_typed(path)} --replace, or plan anew with --replace: what you pinned or "
                "banned stays."
            )
        try:
            old = self._read(path)
        except FileFaults as error:
            raise ItembankError(
                f"{error}\nThe week is planned anew around what you pinned there: mend the file, "
                "or take it away to begin without it."
            ) from None
        new = planner.new_plan(first, old)
        self.read = None
        self.stays = (*new.past, *new.closed)
        return path, self._noted(new)

    def _noted(self, new: NewPlan) -> WeekPlan:
        self.notes += [
            f"There is no starter on {long_day(one.date)}, period {one.period}: nothing was taught "
            "before."
            for one in new.early
        ]
        return new.plan

    def _read(self, path: Path) -> WeekPlan:
        from itembank.planning.week.week_file import read_week_plan

        planner = self.planner
        self.read = read_week_plan(
            path,
            planner.folder.department,
            planner.folder.calendar,
            planner.known_topics,
            planner.topic_of,
            planner.school_class.name,
        )
        self.notes += [
            f"{path}: {self.read.class_name}'s timetable has no lesson on {one}; it is kept all "
            "the same."
            for one in self.read.lessons
            if not planner.in_timetable(one)
        ]
        return self.read

    def _wanted(self, week: Week) -> list[PlannedLesson]:
        """Return the lessons whose packs are to be made."""
        lessons = list(week.plan.lessons)
        if self.asked.only is not None:
            number = find_day(week.plan, self.asked.only)
            if number is None:
                raise ItembankError(
                    f"--only {self.asked.only}: write a day such as tue or {lessons[0].date}."
                )
            one = lessons[number]
            if one.key in self.closed:
                raise ItembankError(
                    f"{one} {self.closed[one.key]}, so its pack stays as the class had it. Name "
                    "a lesson to come."
                )
            return [one]
        if self.before is not None:
            old = set(self.before.lessons)
            return [one for one in lessons if one not in old or not week.folder(one).exists()]
        return [one for one in lessons if one not in self.stays and one.key not in self.closed]

    def _tell(self, week: Week, built: list[PlannedLesson]) -> None:
        told: dict[str, str] = {}
        for lesson in built:
            say(f"{lesson}: {lesson.title}")
            for one in lesson.topics:
                # What was known when the week was planned reads oddly on its third day.
                before = told.get(one.topic)
                own = reason_of_its_lesson(one.reason, one.pinned)
                why = ", ".join(filter(None, (f"as on {before}", own))) if before else one.why
                told[one.topic] = weekday(lesson.date)
                say(f"  {one.count} on {self.planner.title(one.topic)}: {why}")
        for line in week.skipped:
            say(f"No lesson on {line}")
        few: dict[str, list[str]] = {}
        for lesson in built:
            for one in lesson.topics:
                if one.reason is not None and one.reason.again is not None:
                    few.setdefault(one.topic, []).append(weekday(lesson.date))
        self.notes += [
            f"{name} comes again with questions asked of late on {join_words(days)}: it has no "
            f"others. Write some (‘itembank bank add’), or leave it out (--ban {name})."
            for name, days in few.items()
        ]
        for lesson in week.plan.lessons:
            if lesson.key in self.closed:
                if lesson.date >= self.first:
                    self.notes.append(f"{lesson} {self.closed[lesson.key]} and stays as it was.")
            elif lesson not in built and week.differs(lesson):
                self.notes.append(
                    f"The pack of {lesson} is not as the plan has it now. To make it anew: "
                    f"--plan {as_typed(week.path)} --only {lesson.date} --replace"
                )
        self.notes += [
            f"{why} {self.planner.school_class.name} is not asked about it. To ask for it all the "
            f'same, write beyond_year = ["{name}"] in department.toml.'
            for name, why in self.planner.beyond_year.items()
        ]
        for remark in (*self.planner.folder.remarks, *self.notes):
            say(f"Note: {remark}")
        for lesson in built:
            say(f"Written to {week.folder(lesson)}.")
        if not built:
            say("No pack had to be made: nothing has changed.")
        say(f"The week on one page: {week.overview}.")
        plan = as_typed(week.path)
        say(f"Change the plan if you like, then: itembank week --plan {plan} --replace")
