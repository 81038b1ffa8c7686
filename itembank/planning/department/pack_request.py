"""What a pack is asked to be: one request, whoever states it and however much is left open.

A teacher, a plan, a class and its department each state some matters and leave the others open.
Each of them is a :class:`PackRequest`, and :meth:`PackRequest.over` lays one over the next::

    typed.over(planned).over(of_the_class).over(of_the_department).over(USUAL)

The builder takes the request that comes out. It depends on nothing else, so that the same request
always gives the same pack.
"""

from __future__ import annotations

import datetime
from dataclasses import field, fields, replace
from typing import TypeVar

from itembank.data_class import dataclass
from itembank.planning.bands.bands import Band, BandScheme, default_scheme
from itembank.planning.department.large_copies import LargePrint
from itembank.planning.department.question_sources import QuestionSources, StatedSources
from itembank.planning.department.sheet_items import SheetItems

T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class PlannedTopic:
    """A topic that is asked for; with a count, that many starter questions are on it."""

    id: str
    count: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class PackRequest:
    """What a pack is asked to be; None, or nothing, where a matter is left open.

    >>> ten = PackRequest(questions=10)
    >>> found = ten.over(PackRequest(questions=6, paper="cream")).over(USUAL)
    >>> found.questions, found.paper, found.follow_up
    (10, 'cream', 10)
    """

    school: str | None = None
    class_name: str | None = None
    year: int | None = None
    """The class's year group; without one no content is beyond it."""
    date: datetime.date | None = None
    title: str | None = None
    topics: tuple[PlannedTopic, ...] = ()
    questions: int | None = None
    """Questions of the starter."""
    follow_up: int | None = None
    """Questions on each follow-up sheet."""
    variants: int | None = None
    """Parallel versions of the starter."""
    seed: int | None = None
    large_print: LargePrint | None = None
    """The copies that are made in large print, beside all that the class gets."""
    paper: str | None = None
    """The colour of the paper in the tray, which the colours of the sheets suit."""
    print_tint: bool | None = None
    """Whether that colour is printed on white paper, over the whole page."""
    slips: bool | None = None
    """Whether there are slips of the starter, two a page."""
    self_mark: str | None = None
    """When pupils who mark their own answers on a screen see how they went."""
    bands: BandScheme | None = None
    stated_sources: StatedSources = field(default_factory=StatedSources)
    items: tuple[str, ...] = ()
    """Addresses of questions that must stand in the starter."""
    avoid: frozenset[str] = frozenset()
    """Addresses of questions that should stand nowhere in the pack while there are others."""
    never: frozenset[str] = frozenset()
    """Addresses of questions that stand nowhere in the pack."""
    sheets: tuple[SheetItems, ...] = ()
    """Sheets whose questions are settled already; the others are chosen."""

    def over(self, other: PackRequest) -> PackRequest:
        """Return what is stated here, and for what is left open what `other` states."""
        # No copies in large print, no tint and a seed of 0 are stated: none of them is empty here.
        kept = {
            matter.name: getattr(other, matter.name)
            for matter in fields(self)
            if getattr(self, matter.name) in (None, (), frozenset())
        }
        return replace(self, **kept, stated_sources=self.stated_sources.over(other.stated_sources))

    @property
    def topic_ids(self) -> tuple[str, ...]:
        """Return the names of the topics, in their order."""
        return tuple(topic.id for topic in self.topics)

    @property
    def sources(self) -> QuestionSources:
        """Return where questions come from, with nothing left open.

        Raises:
            ItembankError: two of the settings contradict each other.
        """
        return replace(self.stated_sources.settle(), year=self.year)

    @property
    def score_bands(self) -> tuple[Band, ...]:
        """Return the bands of the starter's scores."""
        return stated(self.bands).bands(stated(self.questions))


def stated(value: T | None) -> T:
    """Return a matter that is settled by now.

    Raises:
        ValueError: it is still open: whoever asked for a pack has not laid it over :data:`USUAL`.

    >>> stated(8)
    8
    """
    if value is None:
        raise ValueError("a request that leaves a matter open cannot be built")
    return value


SELF_MARK = ("when done", "question by question")
"""When a pupil sees how an answer on the self-marking page went: all at the end, or each."""

USUAL = PackRequest(
    school="",
    questions=8,
    follow_up=10,
    variants=1,
    large_print=LargePrint(),
    paper="white",
    print_tint=False,
    slips=False,
    self_mark="when done",
    bands=default_scheme(),
)
"""What a pack is where nobody states anything: common practice, no source."""
