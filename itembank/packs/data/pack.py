"""A pack as pure data: what `pack.json` holds and all that the pages are drawn from.

Nothing here knows how a pack is made or drawn. ``itembank.packs.data.pack_files`` writes and reads
the file, and has its JSON Schema.
"""

from __future__ import annotations

import datetime
from typing import Annotated, Literal

from itembank.packs.data.pack_data import Checked, Data, Published, said
from itembank.packs.data.pack_item import PackItem, TierName
from itembank.people.seats import seat_fault
from itembank.planning.bands.band_signs import ShapeName

PaperName = Literal["white", "cream", "blue", "green", "pink", "yellow"]

MODES = ("with the teacher", "in pairs", "on your own")

ModeName = Literal["with the teacher", "in pairs", "on your own"]


class NextTask(Data):
    """What pupils of a band do after the starter."""

    title: str
    tier: TierName
    mode: ModeName
    worked_example: bool = said(description="Whether the sheet opens with a worked example.")
    where: str = said(description="Where to sit or where to find the sheet.")
    first: str = said(description="What to read or do first.")
    how: str = said(description="How to work.")
    stuck: str = said(description="What to do when stuck.")
    finished: str = said(description="What to do when finished.")


class Band(Data):
    """An interval of scores with its signs and its next task: a teaching aid, not a grade."""

    name: str
    letter: str = said(min_length=1, max_length=2)
    shape: ShapeName
    colour: str = said(pattern=r"^#[0-9A-F]{6}$")
    colour_name: str
    lowest: int = said(ge=0)
    highest: int = said(ge=0)
    task: NextTask


class Sheet(Data):
    """One A4 follow-up sheet: a worked example and a part-finished one where it has them."""

    tier: TierName
    worked: PackItem | None = None
    part_finished: PackItem | None = None
    items: list[PackItem] = said(min_length=1)


class Version(Data):
    """One version of the starter; parallel versions share topics, tiers and difficulty."""

    letter: str
    items: list[PackItem] = said(min_length=1)


class Lesson(Data):
    """Whose lesson this is, when, and on what."""

    school: str
    class_name: str
    date: datetime.date
    title: str


class TopicLine(Data):
    """A topic of the pack, by name and title."""

    id: str
    title: str


class BankLine(Data):
    """A bank that questions were taken from."""

    name: str
    title: str


NOT_NEEDED = "not needed"


class LeftOut(Data):
    """So many questions of the banks, on the pack's topics, that were not used, and why.

    Those not needed are of topics with a great many: nobody tried whether they could be used.
    """

    why: Literal[
        "retired",
        "disproved",
        "needs a person",
        "unsigned",
        "sign-off stale",
        "beyond the year",
        "not needed",
    ]
    count: int = said(ge=1)


class Provenance(Data):
    """What the questions were taken from."""

    questions_from: Literal["generated", "bank", "both"]
    prefer: Literal["bank", "generated"] = said(
        default="bank", description="Which comes first where questions are taken from both."
    )
    signed_only: bool = False
    banks: list[BankLine] = said(default=[])
    offered: int = said(
        default=0, ge=0, description="Questions of the banks on these topics that could be used."
    )
    left_out: list[LeftOut] = said(default=[])
    follow_up: int | None = said(
        default=None,
        description="Questions asked for on each sheet; one has fewer where banks hold no more.",
    )


def _copies(value: object) -> object:
    """Return what packs up to version 4 say of large print as one copy, or none."""
    if isinstance(value, bool):
        return ("",) if value else ()
    # What a validator passes on is no longer JSON, whose lists would be read as they are.
    return tuple(value) if isinstance(value, list) else value


def _is_seat(seat: str) -> str:
    if seat and (fault := seat_fault(seat)):
        raise ValueError(fault)
    return seat


Copies = Annotated[
    tuple[Annotated[str, Checked(_is_seat)], ...],
    Checked(_copies, first=True),
    Published({"anyOf": [{"type": "array", "items": {"type": "string"}}, {"type": "boolean"}]}),
]


class Look(Data):
    """Audience options: how the pages are drawn, never what they say."""

    large_print: Copies = said(
        default=(),
        description="The large-print copies: the seat code of each, or '' where none is named. "
        "Packs up to version 4 said true, which is one copy, or false.",
    )
    paper: PaperName = said(
        default="white", description="The paper in the tray; slides show its colour too."
    )
    print_tint: bool = said(
        default=False, description="Whether the colour is printed, for white paper in the tray."
    )
    slips: bool = False
    self_mark: Literal["when done", "question by question"] = said(
        default="when done",
        description="When pupils who mark their own answers see how they went; packs up to "
        "version 5 do not say.",
    )

    def hold(self) -> None:
        """Refuse a pupil's name, wherever it would come from; raises ValueError."""
        for seat in self.large_print:
            _is_seat(seat)


class Pack(Data):
    """Everything for one lesson."""

    schema_version: Literal[1, 2, 3, 4, 5, 6] = 6
    made_by: str = said(description="Name and version of the tool that made the pack.")
    seed: int
    lesson: Lesson
    topics: list[TopicLine]
    versions: list[Version] = said(min_length=1)
    bands: list[Band] = said(min_length=2, max_length=5)
    sheets: list[Sheet]
    look: Look = Look()
    drawing: Provenance | None = said(
        default=None, description="Where questions came from; packs of version 1 do not say."
    )

    @property
    def marks(self) -> int:
        """Return the number of marks the starter is out of."""
        return sum(item.marks for item in self.versions[0].items)
