"""The seats of a class that a teacher may want to look at."""

from __future__ import annotations

import datetime
from typing import TYPE_CHECKING

from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.people.seats import seat_order
from itembank.today import today
from itembank.work.lesson.results_store import open_results, place_of_results

if TYPE_CHECKING:
    from itembank.planning.bands.bands import BandScheme
    from itembank.planning.department.department import Department, SchoolClass
    from itembank.records.reports.pupil_starters import Schemes
    from itembank.records.reports.seats_to_look_at import LookAt


@dataclass(frozen=True, slots=True)
class SeatList:
    """The seats of a class: those with results, and others that the class lists."""

    class_name: str
    known: tuple[LookAt, ...]
    unknown: tuple[str, ...]

    @property
    def wanted(self) -> tuple[LookAt, ...]:
        """Return the seats that a teacher may want to look at."""
        return tuple(line for line in self.known if line.wanted)

    @property
    def rule(self) -> str:
        """Return by which rule a seat is in the list."""
        from itembank.records.reports.pupil_starters import FEWEST
        from itembank.records.reports.seats_to_look_at import LATEST

        return (
            f"Here are seats that were in the lowest band in most of their last {LATEST} starters, "
            f"with {FEWEST} starters at the least. It is a reason to look, and nothing more: your "
            "judgement decides."
        )


def seat_list(
    department: Department,
    class_name: str,
    since: datetime.date | None = None,
    until: datetime.date | None = None,
) -> SeatList:
    """Return the seats of a class, those to look at first.

    Raises:
        ItembankError: there is no such class, or the days make no sense.
    """
    from itembank.records.reports.seats_to_look_at import seats_to_look_at

    group = department.find_class(class_name)
    first, last = days_of_lessons(since, until)
    known: tuple[LookAt, ...] = ()
    if any_results(department):
        bands = schemes_of(department, group)
        with open_results(department, make=False) as store, store.reading() as connection:
            known = seats_to_look_at(connection, group.name, bands, first, last, today())
    # Results are kept under capitals, however the class lists its seats.
    others = {seat.upper() for seat in group.plan.seats} - {line.seat for line in known}
    return SeatList(group.name, known, tuple(sorted(others, key=seat_order)))


def any_results(department: Department) -> bool:
    """Tell whether anything can have been recorded: asking must not make a results file."""
    place = place_of_results(department)
    return not place.is_file or place.path.exists()


def schemes_of(department: Department, group: SchoolClass) -> Schemes:
    """Return what gives the bands of a class; of one that is gone, those of `group`."""

    def of(name: str) -> BandScheme:
        try:
            return department.find_class(name).bands
        except ItembankError:
            return group.bands

    return of


def days_of_lessons(
    since: datetime.date | None, until: datetime.date | None
) -> tuple[datetime.date, datetime.date]:
    """Return the first and the last day of the lessons that count."""
    from itembank.work.report.reports import ReportRequest, days_of

    return days_of(ReportRequest(since=since, until=until))
