"""A pack as pure data: what `pack.json` holds and all that the pages are drawn from.

Nothing here knows how a pack is made or drawn. The JSON Schema of the file is
``Pack.model_json_schema()``; ``itembank.packs.data.pack_files`` writes and reads it.
"""

from __future__ import annotations

import datetime
from typing import Annotated, Literal

from pydantic import AfterValidator, BaseModel, BeforeValidator, ConfigDict, Field, WithJsonSchema

from itembank.items.asks import KINDS
from itembank.people.seats import seat_fault
from itembank.planning.bands.band_signs import ShapeName

TierName = Literal["support", "core", "challenge"]
PaperName = Literal["white", "cream", "blue", "green", "pink", "yellow"]
Proved = Literal["from the printed mathematics", "from a model of the words"]
SignOffState = Literal["none", "unsigned", "signed", "stale"]
MODES = ("with the teacher", "in pairs", "on your own")
ModeName = Literal["with the teacher", "in pairs", "on your own"]


class Data(BaseModel):
    """The base of every model here: unknown fields are faults, and nothing changes once made."""

    model_config = ConfigDict(extra="forbid", frozen=True)


class Maths(Data):
    """One piece of mathematics by its three written faces."""

    mathml: str = Field(description="Presentation MathML, W3C MathML Core.")
    line: str = Field(description="One-line text that reads back to the same mathematics.")
    words: str = Field(description="The phrase a teacher would say.")


class TextRun(Data):
    """A stretch of plain text inside a prompt."""

    kind: Literal["text"] = "text"
    text: str


class MathRun(Maths):
    """A stretch of mathematics inside a prompt."""

    kind: Literal["math"] = "math"


Run = Annotated[TextRun | MathRun, Field(discriminator="kind")]


class Key(Maths):
    """The answer an item expects and the form it must have."""

    form: str = Field(description="Name of the form, e.g. 'lowest-terms'.")
    form_words: str = Field(description="The form in words, e.g. 'a fraction in its lowest terms'.")


class Condition(Data):
    """What a number that is to be given has to be, such as a multiple of 7."""

    name: str = Field(description="'whole', 'prime', 'multiple', 'factor', …")
    of: list[str] = Field(default=[], description="The number it speaks of, in line notation.")


def _known_kind(name: str) -> str:
    if name not in KINDS or not KINDS[name].filed:
        known = sorted(kind.name for kind in KINDS.values() if kind.filed)
        raise ValueError(f"there is no kind of question called ‘{name}’, only {', '.join(known)}")
    return name


KindName = Annotated[
    str,
    AfterValidator(_known_kind),
    WithJsonSchema({"enum": [kind.name for kind in KINDS.values() if kind.filed]}),
]


class Ask(Data):
    """What the proof starts from, in line notation: the question behind the words."""

    kind: KindName = Field(description="What kind of question it is.")
    target: list[str] = Field(
        description="What is wanted; for order, compare, choose, common, sequence: the things; "
        "for subject: the formula and the letter; for round: the number and how many or what to; "
        "for give: a letter for each number of the answer."
    )
    relations: list[str] = Field(default=[], description="What is given, as equations.")
    detail: str = Field(
        default="",
        description="For order: 'ascending', 'descending'; choose: 'least', 'greatest'; rewrite: "
        "'simplify', 'expand', 'factorise'; common: 'hcf', 'lcm'; round: 'places', 'figures', "
        "'nearest'.",
    )
    labels: list[str] = Field(default=[], description="For choose: the name of each option.")
    pick: Literal["", "largest", "smallest", "positive", "negative"] = Field(
        default="", description="For find and solve: which one of several answers is wanted."
    )
    way: Literal["nearest", "down", "up"] = Field(
        default="nearest", description="For round: to the nearest, always down, or always up."
    )
    conditions: list[Condition] = Field(
        default=[], description="For give: what each number of the answer has to be."
    )
    constants: list[int] = Field(
        default=[], description="Numbers the model uses that the prompt need not print (180, 360)."
    )


class Step(Data):
    """A line of working and the words that go with it."""

    say: str
    maths: Maths | None = None
    marks: int = Field(
        default=0, ge=0, description="Marks earned by the working as far as this line."
    )


class Misconception(Data):
    """A likely wrong answer, what the pupil did to get it, and what to ask them."""

    id: str
    name: str
    wrong: Maths
    ask: str


class SignOff(Data):
    """A reviewer's statement that a key was checked."""

    by: str = Field(description="The reviewer's code, never a name.")
    on: datetime.date


class Source(Data):
    """Where a question comes from, how its key was proved, and who has signed it."""

    kind: Literal["generated", "bank"]
    bank: str = Field(default="", description="Name of the bank that holds or names the question.")
    id: str = Field(default="", description="The question's id in the bank.")
    hash: str = Field(
        default="", description="Hash of all that printed of the bank's question when it was chosen."
    )
    proved: Proved = Field(
        description="What exact arithmetic and computer algebra both started from."
    )
    sign_off: SignOffState = Field(
        default="none", description="'none' where a question needs no sign-off: it was generated."
    )
    signed: list[SignOff] = Field(default=[], description="Who signed, and when, the latest last.")
    author: str = Field(default="", description="Code of who wrote the question.")
    licence: str = ""
    credit: str = Field(default="", description="What the bank says the question was taken from.")


class PackItem(Data):
    """One question as it stands in a pack."""

    address: str = Field(
        description="Names the question for ever: topic/tier/number, or bank:id for a bank's own."
    )
    topic: str
    topic_title: str
    tier: TierName
    marks: int = Field(ge=1)
    difficulty: float
    prompt: list[Run] = Field(min_length=1)
    key: Key
    ask: Ask
    steps: list[Step]
    misconceptions: list[Misconception]
    untested: list[str] = Field(
        default=[],
        description="Names of the misconceptions that other items of the tier show, and not this.",
    )
    accept: list[str] = Field(
        default=[], description="How marking may be more lenient than the form."
    )
    source: Source | None = Field(
        default=None, description="Where the question comes from; packs of version 1 do not say."
    )

    @property
    def many(self) -> bool:
        """Return whether many answers are right, so that the key is an example of one."""
        return KINDS[self.ask.kind].many


class NextTask(Data):
    """What pupils of a band do after the starter."""

    title: str
    tier: TierName
    mode: ModeName
    worked_example: bool = Field(description="Whether the sheet opens with a worked example.")
    where: str = Field(description="Where to sit or where to find the sheet.")
    first: str = Field(description="What to read or do first.")
    how: str = Field(description="How to work.")
    stuck: str = Field(description="What to do when stuck.")
    finished: str = Field(description="What to do when finished.")


class Band(Data):
    """An interval of scores with its signs and its next task: a teaching aid, not a grade."""

    name: str
    letter: str = Field(min_length=1, max_length=2)
    shape: ShapeName
    colour: str = Field(pattern=r"^#[0-9A-F]{6}$")
    colour_name: str
    lowest: int = Field(ge=0)
    highest: int = Field(ge=0)
    task: NextTask


class Sheet(Data):
    """One A4 follow-up sheet: a worked example and a part-finished one where it has them."""

    tier: TierName
    worked: PackItem | None = None
    part_finished: PackItem | None = None
    items: list[PackItem] = Field(min_length=1)


class Version(Data):
    """One version of the starter; parallel versions share topics, tiers and difficulty."""

    letter: str
    items: list[PackItem] = Field(min_length=1)


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


class LeftOut(Data):
    """So many questions of the banks, on the pack's topics, that could not be used, and why."""

    why: Literal[
        "retired", "disproved", "needs a person", "unsigned", "sign-off stale", "beyond the year"
    ]
    count: int = Field(ge=1)


class Provenance(Data):
    """What the questions were taken from."""

    questions_from: Literal["generated", "bank", "both"]
    prefer: Literal["bank", "generated"] = Field(
        default="bank", description="Which comes first where questions are taken from both."
    )
    signed_only: bool = False
    banks: list[BankLine] = []
    offered: int = Field(
        default=0, ge=0, description="Questions of the banks on these topics that could be used."
    )
    left_out: list[LeftOut] = []
    follow_up: int | None = Field(
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
    tuple[Annotated[str, AfterValidator(_is_seat)], ...],
    BeforeValidator(_copies),
    WithJsonSchema(
        {"anyOf": [{"type": "array", "items": {"type": "string"}}, {"type": "boolean"}]}
    ),
]


class Look(Data):
    """Audience options: how the pages are drawn, never what they say."""

    large_print: Copies = Field(
        default=(),
        description="The large-print copies: the seat code of each, or '' where none is named. "
        "Packs up to version 4 said true, which is one copy, or false.",
    )
    paper: PaperName = Field(
        default="white", description="The paper in the tray; slides show its colour too."
    )
    print_tint: bool = Field(
        default=False, description="Whether the colour is printed, for white paper in the tray."
    )
    slips: bool = False


class Pack(Data):
    """Everything for one lesson."""

    schema_version: Literal[1, 2, 3, 4, 5] = 5
    made_by: str = Field(description="Name and version of the tool that made the pack.")
    seed: int
    lesson: Lesson
    topics: list[TopicLine]
    versions: list[Version] = Field(min_length=1)
    bands: list[Band] = Field(min_length=2, max_length=5)
    sheets: list[Sheet]
    look: Look = Look()
    drawing: Provenance | None = Field(
        default=None, description="Where questions came from; packs of version 1 do not say."
    )

    @property
    def marks(self) -> int:
        """Return the number of marks the starter is out of."""
        return sum(item.marks for item in self.versions[0].items)
