"""Makes a pack, whole and proved, in a folder of its own."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.packs.data.pack_place import folder_name
from itembank.planning.calendar.days import parse_day
from itembank.planning.department.pack_request import PackRequest, stated
from itembank.planning.department.taught import not_yet, taught_dates
from itembank.today import today
from itembank.work.next_lesson import next_lesson_day
from itembank.work.pack.settled_request import settle
from itembank.work.places import banks_of, nearby_department

if TYPE_CHECKING:
    from itembank.packs.build import Started
    from itembank.packs.data.pack import Pack
    from itembank.processes.beside import Ahead


@dataclass(frozen=True, slots=True)
class Early:
    """A topic that is to be asked before the class is taught it, or is left out for that."""

    topic: str
    when: str
    """As in *is taught on 30 November*."""
    asked: bool
    """Whether it is asked all the same, because somebody named it."""


@dataclass(frozen=True, slots=True)
class PackMade:
    """A pack that stands in its folder."""

    pack: Pack
    folder: Path
    early: tuple[Early, ...] = ()

    @property
    def files(self) -> list[str]:
        """Return the names of its files, sorted."""
        return sorted(file.name for file in self.folder.iterdir())


def make_pack(
    typed: PackRequest,
    home: Path,
    *,
    day: str | None = None,
    plan: Path | None = None,
    department: Path | None = None,
    replacing: bool = False,
    begun: Ahead | None = None,
) -> PackMade:
    """Make the pack that is asked for and write it to a folder in `home`, whole or not at all.

    What `typed` leaves open comes from the `plan` file, the class and the `department`, which is
    the one around the current folder unless it is named. `day` is the day of the lesson as a
    person writes it; the class's next lesson where neither it nor the plan says. `begun` is a
    process that gets ready to prove keys already; it is ended with this.

    Raises:
        ItembankError: something asked for cannot be had; says what, and what there is.
        CheckFailed: a key is wrong; names the item and both answers.
    """
    from itembank.packs.proof_ahead import begin_proof

    # First of all: nothing takes as long as what the second process loads.
    with begun or begin_proof() as begun:
        return _make(typed, home, day, plan, department, replacing, begun)


def _make(
    typed: PackRequest,
    home: Path,
    day: str | None,
    plan: Path | None,
    department: Path | None,
    replacing: bool,
    begun: Ahead,
) -> PackMade:
    from itembank.items.topics.registry import topic_ids
    from itembank.planning.department.plan_file import read_plan

    known = tuple(topic_ids())
    found = nearby_department(department, known)
    near = (*(typed.stated_sources.banks or ()), *banks_of(found))

    def seats_of(class_name: str | None) -> tuple[str, ...]:
        named = typed.class_name or class_name
        return found.find_class(named).plan.seats if found else ()

    planned = read_plan(plan, known, near, seats_of) if plan is not None else None
    if day is not None:
        typed = replace(typed, date=parse_day(day, today()))
    named = typed.class_name or (planned.class_name if planned else None)
    group = found.find_class(named) if found else None
    taught = taught_dates(found, group) if found and group else {}
    usual_day = next_lesson_day(found, group) if found and group else today()
    request = settle(typed, planned, found, known, usual_day, taught)
    _refuse_existing(home / folder_of(request), replacing)

    # Imported here, where all that was asked for can be had.
    from itembank.packs.build import start_pack
    from itembank.pages.draw import fits_slides

    made = _write(start_pack(request, begun, fits_slides), home, replacing)
    own = group.topics if group and not (typed.topics or (planned and planned.topics)) else ()
    early = not_yet([*own, *request.topic_ids], taught, stated(request.date))
    asked = set(request.topic_ids)
    return replace(
        made, early=tuple(Early(topic, when, topic in asked) for topic, when in early.items())
    )


def draw_again(pack_file: Path, home: Path, *, replacing: bool = False) -> PackMade:
    """Make the pages of a pack again from its data, every key proved anew.

    Raises:
        ItembankError: the file is no pack, or does not agree with itself.
        CheckFailed: a key is not what its stored question comes to.
    """
    from itembank.packs.pack_checks import start_reading

    return _write(start_reading(pack_file), home, replacing)


def folder_of(request: PackRequest) -> str:
    """Return the name of the folder of the pack that is asked for."""
    return folder_name(stated(request.class_name), stated(request.date))


def _refuse_existing(folder: Path, replacing: bool) -> None:
    """Say so before any work when the pack could not be written."""
    if folder.exists() and not replacing:
        raise ItembankError(
            f"There is a pack in {folder} already.", matter="pack there", folder=folder
        )


def _write(started: Started, home: Path, replacing: bool) -> PackMade:
    from itembank.pages.write_pack import write_pack

    lesson = started.pack.lesson
    folder = home / folder_name(lesson.class_name, lesson.date)
    write_pack(started, folder, replace=replacing)
    return PackMade(started.pack, folder)
