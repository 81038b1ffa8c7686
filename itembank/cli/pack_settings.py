"""What a pack is asked to be: the command line, then the plan, then the class, then defaults."""

from __future__ import annotations

import datetime
from collections.abc import Collection, Mapping
from dataclasses import dataclass, field, fields, replace
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar

from itembank.cli.taught import not_yet
from itembank.errors import ItembankError
from itembank.files.faults import FileFaults, join_words
from itembank.people.names_out import refuse_names
from itembank.planning.bands.bands import BandScheme, default_scheme
from itembank.planning.calendar.days import parse_day, usual_seed
from itembank.planning.department.department import (
    DEFAULT_FOLLOW_UP,
    DEFAULT_QUESTIONS,
    MOST_FOLLOW_UP,
    MOST_QUESTIONS,
    PAPERS,
    Department,
    SchoolClass,
)
from itembank.planning.department.draw_from import DrawFrom, Drawing, no_bank
from itembank.planning.department.known_topics import KnownTopics
from itembank.planning.department.plan_file import MOST_SEED, MOST_VARIANTS, Plan, PlannedTopic
from itembank.planning.topic_names import unknown_topic

if TYPE_CHECKING:
    from itembank.packs.build import PackRequest

T = TypeVar("T")

LONGEST_TITLE = 24  # characters that stand whole beside the class and the date on a slide


@dataclass(frozen=True, slots=True)
class Given:
    """What was typed; None where an option was left out."""

    class_name: str | None = None
    date: str | None = None
    title: str | None = None
    topics: tuple[str, ...] = ()
    questions: int | None = None
    seed: int | None = None
    follow_up: int | None = None
    variants: int | None = None
    large_print: bool | None = None
    paper: str | None = None
    two_up: bool | None = None
    banks: tuple[Path, ...] = ()
    questions_from: str | None = None
    prefer: str | None = None
    signed_only: bool | None = None
    beyond_year: bool | None = None

    @property
    def draw_from(self) -> DrawFrom:
        """Return what was typed about the source of questions.

        Raises:
            ItembankError: a folder named as a bank holds none.
        """
        for folder in self.banks:
            if (wrong := no_bank(folder)) is not None:
                raise ItembankError(wrong)
        return DrawFrom(
            self.banks or None,
            self.questions_from,
            self.prefer,
            self.signed_only,
            self.beyond_year,
        )


@dataclass(frozen=True, slots=True)
class Settings:
    """Everything a pack depends on, with nothing left open."""

    school: str
    class_name: str
    date: datetime.date
    title: str
    topics: tuple[PlannedTopic, ...]
    questions: int
    seed: int
    follow_up: int
    variants: int
    large_print: bool
    paper: str
    two_up: bool
    bands: BandScheme
    drawing: Drawing = field(default_factory=Drawing)

    @property
    def folder_name(self) -> str:
        """Return the name of the pack's folder: class and date."""
        return f"{self.class_name}-{self.date.isoformat()}"


def first(*values: T | None, default: T) -> T:
    """Return the first value that is not None.

    >>> first(None, 0, 3, default=8)
    0
    """
    return next((value for value in values if value is not None), default)


def resolve(
    given: Given,
    plan: Plan | None,
    department: Department | None,
    known: Collection[str],
    today: datetime.date,
    taught: Mapping[str, datetime.date | None] | None = None,
) -> Settings:
    """Settle every matter: as typed, else as planned, else as the class has it.

    Of the class's own topics those are left out that it is `taught` on the day of the lesson or
    later: a starter opens the lesson. A topic that is not one of `known`, which are those of the
    generators, is looked for in the banks that the pack may draw from.

    Raises:
        ItembankError: a value is out of its range, or no topic or class is known.
    """
    plan = plan or Plan(())
    wanted = given.class_name if given.class_name is not None else plan.class_name
    group = department.find_class(wanted) if department else None
    name = group.name if group else _class_name(wanted)
    typed = dict.fromkeys(one.lower() for one in given.topics)
    topics = tuple(PlannedTopic(one) for one in typed) or plan.topics
    own = bool(topics)
    date = parse_day(given.date, today) if given.date is not None else plan.date or today
    if not topics and group:
        early = not_yet(group.topics, taught or {}, date)
        topics = tuple(PlannedTopic(one) for one in group.topics if one not in early)
        if not topics:
            raise ItembankError(
                f"{group.name} has not been taught any of its topics before {date}: "
                + "; ".join(f"{topic} {when}" for topic, when in early.items())
                + ". Name what to ask with --topic."
            )
    if not topics:
        raise ItembankError(
            "There is no department.toml here or above, so no class to take topics from. "
            "Go to a department's folder, name it with --department, or name topics with --topic; "
            "‘itembank demo’ writes a department to try things with."
        )
    drawing = draw_from(given, plan, group, department).settle()
    if group is not None:
        drawing = replace(drawing, year=group.year)
    there = KnownTopics(known, drawing.banks)
    for topic in topics:
        if topic.id not in there:
            raise ItembankError(unknown_topic(topic.id, there))
    if there.faults:
        raise FileFaults(there.faults)
    # A class's title speaks of the class's topics, and would be wrong above any others.
    usual = group.title if group and not own else _title_of(topics, there)
    title = first(given.title, plan.title, default=usual)
    if not title.strip():
        raise ItembankError("The title is empty. Write one with --title, or leave it out.")
    refuse_names(title, "The title")
    questions = _questions(given, plan, group.questions if group else DEFAULT_QUESTIONS, topics)
    follow_up = first(
        given.follow_up,
        plan.follow_up,
        group.follow_up if group else None,
        default=DEFAULT_FOLLOW_UP,
    )
    variants = first(given.variants, plan.variants, default=1)
    seed = first(given.seed, plan.seed, default=usual_seed(name, date, title))
    paper = first(given.paper, plan.paper, group.paper if group else None, default="white")
    _in_range("A follow-up sheet has", follow_up, 1, MOST_FOLLOW_UP, "questions", "--follow-up")
    _in_range("A starter has", variants, 1, MOST_VARIANTS, "versions", "--variants")
    if not 0 <= seed <= MOST_SEED:
        raise ItembankError(f"The seed must be from 0 to {MOST_SEED}, not {seed}.")
    if paper not in PAPERS:
        raise ItembankError(f"There is no paper ‘{paper}’. Choose {join_words(PAPERS, 'or')}.")
    return Settings(
        school=department.school if department else "",
        class_name=name,
        date=date,
        title=title,
        topics=topics,
        questions=questions,
        seed=seed,
        follow_up=follow_up,
        variants=variants,
        large_print=first(
            given.large_print, plan.large_print, group.large_print if group else None, default=False
        ),
        paper=paper,
        two_up=first(given.two_up, plan.two_up, default=False),
        bands=group.bands if group else default_scheme(),
        drawing=drawing,
    )


def draw_from(
    given: Given, plan: Plan | None, group: SchoolClass | None, department: Department | None
) -> DrawFrom:
    """Return where questions come from: as typed, else as planned, else as the class has it.

    Raises:
        ItembankError: a folder named as a bank holds none.
    """
    found = given.draw_from
    for other in (plan, group, department):
        if other is not None:
            found = found.over(other.draw_from)
    return found


def _title_of(topics: tuple[PlannedTopic, ...], known: KnownTopics) -> str:
    """Return a title for topics that come without one: a sole topic's, or the strands."""
    if len(topics) == 1:
        from itembank.items.topics.registry import find_topic

        name = topics[0].id
        title = find_topic(name).title if name in known.generated else known.in_banks[name]
        if len(title) <= LONGEST_TITLE:
            return title
    strands = dict.fromkeys(topic.id.partition(".")[0] for topic in topics)
    return join_words(tuple(strands)).capitalize()


def _class_name(wanted: str | None) -> str:
    name = wanted if wanted is not None else "Class"
    if not name.strip() or len(name) > 12 or any(c in name for c in "/\\:\n") or name[0] == ".":
        raise ItembankError(
            f"‘{name}’ cannot be a class's name. Use 12 letters and digits at most, such as 8K."
        )
    return name


def _questions(given: Given, plan: Plan, usual: int, topics: tuple[PlannedTopic, ...]) -> int:
    counted = sum(topic.count or 0 for topic in topics)
    free = sum(topic.count is None for topic in topics)
    stated = first(given.questions, plan.questions, default=0)
    if given.questions is None and plan.questions is None:
        stated = counted if counted and not free else max(usual, counted + free)
    _in_range("A starter has", stated, 1, MOST_QUESTIONS, "questions", "--questions")
    if counted + free > stated or (not free and counted != stated):
        need = "exactly" if not free else "at least"
        raise ItembankError(
            f"These {len(topics)} topics need {need} {counted + free} questions, not {stated}. "
            "Change --questions, or name fewer topics."
        )
    return stated


def _in_range(what: str, value: int, low: int, high: int, things: str, option: str) -> None:
    if not low <= value <= high:
        raise ItembankError(f"{what} {low} to {high} {things}, not {value}. Change {option}.")


def refuse_with_from(given: Given, plan: Path | None, department: Path | None) -> None:
    """Refuse what would change a pack that is only to be drawn again."""
    stated = [one.name for one in fields(Given) if getattr(given, one.name) not in (None, ())]
    names = {"class_name": "--class", "topics": "--topic", "banks": "--bank"}
    options = [names.get(name, f"--{name.replace('_', '-')}") for name in stated]
    options += ["--plan"] if plan is not None else []
    options += ["--department"] if department is not None else []
    if options:
        them = "that" if len(options) == 1 else "them"
        raise ItembankError(
            f"--from makes a pack again just as it was, so {join_words(options)} cannot change "
            f"it. Leave {them} out, or leave out --from to make a new pack."
        )


def as_request(settings: Settings) -> PackRequest:
    """Return the settings as the pack builder asks for them."""
    from itembank.packs.build import PackRequest

    return PackRequest(
        school=settings.school,
        class_name=settings.class_name,
        date=settings.date,
        title=settings.title,
        topics=settings.topics,
        questions=settings.questions,
        seed=settings.seed,
        follow_up=settings.follow_up,
        variants=settings.variants,
        large_print=settings.large_print,
        paper=settings.paper,
        slips=settings.two_up,
        bands=settings.bands.bands(settings.questions),
        drawing=settings.drawing,
    )
