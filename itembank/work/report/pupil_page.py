"""A pupil's page, and the seats of a class that a teacher may want to look at.

Both are plain data; what goes on paper is sent or, as a file, noted in the store first.
"""

from __future__ import annotations

import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from itembank.data_class import dataclass
from itembank.errors import ItembankError, NotFound
from itembank.text.characters import shown
from itembank.text.in_words import counted, day_month_year, short_day
from itembank.today import today
from itembank.work.lesson.decide import thresholds_of
from itembank.work.lesson.results_store import open_results, place_of_results
from itembank.work.report.seat_list import any_results, days_of_lessons, schemes_of
from itembank.work.report.titles import Titles, titles_of

if TYPE_CHECKING:
    from itembank.planning.department.department import Department
    from itembank.records.reports.advice import Thresholds
    from itembank.records.reports.pupil_report import PupilReport
    from itembank.records.reports.pupil_starters import PupilAnswer, PupilStarter

FOR_A_TALK = (
    "This page is for a talk, not a verdict. It holds what was recorded in short starters, which "
    "are one small part of a pupil’s work."
)
FOR_PARENTS = (
    "Bands say what to practise next; they are a teaching aid, not a grade. The school’s "
    "data-protection and safeguarding rules come first, and the teacher’s judgement decides."
)
"""The caution where no other stands on the page: on paper."""
NOT_KEPT = (
    "Not recorded: attendance, effort, what was typed word for word, and anything outside starters."
)


@dataclass(frozen=True, slots=True)
class PupilPage:
    """What is recorded of one seat, with the titles of its topics."""

    found: PupilReport
    titles: Titles
    school: str
    thresholds: Thresholds

    @property
    def empty(self) -> bool:
        """Tell whether nothing at all is kept."""
        return not self.found.starters

    @property
    def nothing(self) -> str:
        """Return in words that nothing is kept, or where the pupil went; empty where there is."""
        found = self.found
        if not self.empty:
            return ""
        if found.gone is not None and found.gone.to_class:
            day = day_month_year(found.gone.date)
            return (
                f"Whoever sat here has had seat {found.gone.to_seat} of {found.gone.to_class} "
                f"since {day}; what is known of them is under that seat."
            )
        if found.gone is not None:
            day = day_month_year(found.gone.date)
            return (
                f"Whoever sat here left on {day}. Results from before that are no longer shown "
                "under this seat; they stay in the store until they are forgotten."
            )
        return f"Nothing is kept of seat {found.seat} of {found.class_name} in these days."

    @property
    def intro(self) -> list[str]:
        """Return what the page rests on, a sentence each."""
        found = self.found
        said = [f"{counted(len(found.starters), 'starter')} with results of this seat."]
        if found.elsewhere:
            where = ", ".join(found.elsewhere)
            said.append(f"Some were had in another seat, and came along: {where}.")
        if found.without:
            said.append(
                f"{counted(found.without, 'more starter')} of the class "
                f"{'has' if found.without == 1 else 'have'} results by seat, but none of this "
                "one; why is not recorded."
            )
        if found.by_hand:
            said.append(
                f"{counted(found.by_hand, 'starter')} {'was' if found.by_hand == 1 else 'were'} "
                "counted for the class as a whole, which tells nothing of one pupil."
            )
        return said

    @property
    def rule(self) -> str:
        """Return by which rule topics stand as they do."""
        from itembank.records.reports.pupil_starters import FEWEST

        low, high = (
            round(100 * line) for line in (self.thresholds.again_below, self.thresholds.on_from)
        )
        return (
            "These are counts of answers, and no estimate: a few answers tell little. With fewer "
            f"than {FEWEST} answers nothing is said of a topic. Less than {low} % right: to mend "
            f"first; {high} % and more: firm so far; between: on the way."
        )

    def standing(self, topic: str) -> str:
        """Return in words how a topic stands."""
        from itembank.records.reports.advice import Next

        zone = next(line.zone for line in self.found.topics if line.topic == topic)
        if zone is None:
            return "too few answers to say"
        return {Next.AGAIN: "to mend first", Next.GROUP: "on the way", Next.ON: "firm so far"}[zone]

    def mistake_words(self, answer: PupilAnswer) -> str:
        """Return what a slip in thinking is called; empty where none showed."""
        return self.titles.mistake(answer.topic, answer.mistake) if answer.mistake else ""


def pupil_page(
    department: Department,
    class_name: str,
    seat: str,
    since: datetime.date | None = None,
    until: datetime.date | None = None,
) -> PupilPage:
    """Return the page of a seat of a class, of this school year where no days are named.

    Raises:
        NotFound: the class lists no such seat, and nothing is recorded of it.
        ItembankError: there is no such class, or the days make no sense.
    """
    from itembank.records.reports.pupil_report import PupilReport, pupil_report

    group = department.find_class(class_name)
    code = seat.strip().upper()
    first, last = days_of_lessons(since, until)
    # Where nothing was ever recorded there is no store, and nothing is kept of anybody.
    found = PupilReport(group.name, code, first, last)
    if any_results(department):
        bands = schemes_of(department, group)
        lines = thresholds_of(department)
        with open_results(department, make=False) as store, store.reading() as connection:
            found = pupil_report(connection, group.name, code, bands, first, last, today(), lines)
    listed = [seat.upper() for seat in group.plan.seats]
    if not found.starters and found.gone is None and code not in listed:
        raise NotFound(
            f"Nothing is kept of a seat {shown(code)} of {group.name}, and the class lists none.",
            field="seat",
        )
    return PupilPage(found, titles_of(department), department.school, thresholds_of(department))


def pupil_pdf(page: PupilPage) -> bytes:
    """Return the page as a PDF that is sent and not kept."""
    from itembank.pages.documents.pupil_pages import PupilData, StarterRows, pupil_pages

    found, titles = page.found, page.titles
    where = f"{page.school}, " if page.school else ""
    return pupil_pages(
        PupilData(
            title=f"Seat {found.seat} of {found.class_name}",
            intro=[
                f"{where}{day_month_year(found.first)} to {day_month_year(found.last)}.",
                *(page.intro if not page.empty else [page.nothing]),
            ],
            caution=f"{FOR_A_TALK} {FOR_PARENTS}",
            topics=[
                (
                    titles.of(line.topic),
                    f"{line.right} of {line.out_of}",
                    page.standing(line.topic),
                    short_day(line.last),
                )
                for line in found.topics
            ],
            rule=page.rule,
            mistakes=[
                (titles.of(topic), titles.mistake(topic, name), str(times))
                for topic, name, times in found.mistakes
            ],
            starters=[
                StarterRows(
                    starter_title(starter),
                    starter_result(starter),
                    [
                        (
                            str(answer.number),
                            answer.prompt or titles.of(answer.topic),
                            outcome(answer),
                            page.mistake_words(answer),
                        )
                        for answer in starter.answers
                    ],
                )
                for starter in reversed(found.starters)
            ],
            not_kept=NOT_KEPT,
        )
    )


def write_pupil_page(department: Department, page: PupilPage, path: Path) -> None:
    """Write the page as a PDF, which is noted in the store first: forgetting finds it there.

    Raises:
        ItembankError: nothing is kept of the seat, or the file cannot be written.
    """
    from itembank.files.private import write_private
    from itembank.records.exporting import remember_files

    if page.empty:
        raise ItembankError(page.nothing)
    # What came from another class is in it too: then it is noted for every class.
    name = "" if page.found.elsewhere else page.found.class_name
    remember_files(place_of_results(department), [path], name)
    write_private(path, pupil_pdf(page))


def outcome(answer: PupilAnswer) -> str:
    """Return in a word how a question went.

    >>> from itembank.records.reports.pupil_starters import PupilAnswer
    >>> [outcome(PupilAnswer(1, "", "", right)) for right in (True, False, None)]
    ['right', 'wrong', 'not asked']
    """
    return "not asked" if answer.right is None else "right" if answer.right else "wrong"


def starter_title(starter: PupilStarter) -> str:
    """Return which starter it was: its day, period and title."""
    period = f", period {starter.period}" if starter.period else ""
    title = f", {starter.title}" if starter.title else ""
    return f"{day_month_year(starter.date)}{period}{title}"


def starter_result(starter: PupilStarter) -> str:
    """Return how it went: the score, the band, the pupil's own view where it is recorded."""
    band = f"{starter.marks} of {starter.out_of}, band {starter.band.name}."
    view = f" Own view before marking: {starter.view}." if starter.view else ""
    only = "" if starter.answers else " Only the score was recorded."
    return band + view + only
