"""A pack as pure data: what `pack.json` holds and all that the pages are drawn from.

Nothing here knows how a pack is made or drawn. The JSON Schema of the file is
published in ``docs``; :mod:`itembank.packs.data.pack_files` writes and reads it.
"""

from __future__ import annotations

import datetime
import re
from dataclasses import dataclass, field
from typing import Annotated, Literal

from itembank.files.fields.kinds import Check, Limit, Line, Whole
from itembank.items.asks import KINDS
from itembank.planning.bands.band_signs import ShapeName

TierName = Literal["support", "core", "challenge"]
PaperName = Literal["white", "cream", "blue", "green", "pink", "yellow"]
Proved = Literal["from the printed mathematics", "from a model of the words"]
SignOffState = Literal["none", "unsigned", "signed", "stale"]
MODES = ("with the teacher", "in pairs", "on your own")
ModeName = Literal["with the teacher", "in pairs", "on your own"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Maths:
    """One piece of mathematics by its three written faces."""

    mathml: Annotated[str, "Presentation MathML, W3C MathML Core."]
    line: Annotated[str, "One-line text that reads back to the same mathematics."]
    words: Annotated[str, "The phrase a teacher would say."]


@dataclass(frozen=True, slots=True, kw_only=True)
class TextRun:
    """A stretch of plain text inside a prompt."""

    kind: Literal["text"] = "text"
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class MathRun(Maths):
    """A stretch of mathematics inside a prompt."""

    kind: Literal["math"] = "math"


Run = TextRun | MathRun


@dataclass(frozen=True, slots=True, kw_only=True)
class Key(Maths):
    """The answer an item expects and the form it must have."""

    form: Annotated[str, "Name of the form, e.g. 'lowest-terms'."]
    form_words: Annotated[str, "The form in words, e.g. 'a fraction in its lowest terms'."]


@dataclass(frozen=True, slots=True, kw_only=True)
class Condition:
    """What a number that is to be given has to be, such as a multiple of 7."""

    name: Annotated[str, "'whole', 'prime', 'multiple', 'factor', …"]
    of: Annotated[list[str], "The number it speaks of, in line notation."] = field(
        default_factory=list
    )


def _known_kind(name: str) -> str:
    if name not in KINDS or not KINDS[name].filed:
        known = sorted(kind.name for kind in KINDS.values() if kind.filed)
        raise ValueError(f"must be a kind of question ({', '.join(known)}), not ‘{name}’")
    return name


def _colour(value: str) -> str:
    if not re.fullmatch("#[0-9A-F]{6}", value):
        raise ValueError(f"must be like #D55E00, not ‘{value}’")
    return value


KindName = Annotated[
    str, Check(_known_kind, {"enum": [kind.name for kind in KINDS.values() if kind.filed]})
]


@dataclass(frozen=True, slots=True, kw_only=True)
class Ask:
    """What the proof starts from, in line notation: the question behind the words."""

    kind: Annotated[KindName, "What kind of question it is."]
    target: Annotated[
        list[str],
        "What is wanted; for order, compare, choose, common, sequence: the things; "
        "for subject: the formula and the letter; for round: the number and how many or what to; "
        "for give: a letter for each number of the answer.",
    ]
    relations: Annotated[list[str], "What is given, as equations."] = field(default_factory=list)
    detail: Annotated[
        str,
        "For order: 'ascending', 'descending'; choose: 'least', 'greatest'; rewrite: "
        "'simplify', 'expand', 'factorise'; common: 'hcf', 'lcm'; round: 'places', 'figures', "
        "'nearest'.",
    ] = ""
    labels: Annotated[list[str], "For choose: the name of each option."] = field(
        default_factory=list
    )
    pick: Annotated[
        Literal["", "largest", "smallest", "positive", "negative"],
        "For find and solve: which one of several answers is wanted.",
    ] = ""
    way: Annotated[
        Literal["nearest", "down", "up"], "For round: to the nearest, always down, or always up."
    ] = "nearest"
    conditions: Annotated[
        list[Condition], "For give: what each number of the answer has to be."
    ] = field(default_factory=list)
    constants: Annotated[
        list[int], "Numbers the model uses that the prompt need not print (180, 360)."
    ] = field(default_factory=list)


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """A line of working and the words that go with it."""

    say: str
    maths: Maths | None = None
    marks: Annotated[int, Whole(0), "Marks earned by the working as far as this line."] = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Misconception:
    """A likely wrong answer, what the pupil did to get it, and what to ask them."""

    id: str
    name: str
    wrong: Maths
    ask: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SignOff:
    """A reviewer's statement that a key was checked."""

    by: Annotated[str, "The reviewer's code, never a name."]
    on: datetime.date


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """Where a question comes from, how its key was proved, and who has signed it."""

    kind: Literal["generated", "bank"]
    bank: Annotated[str, "Name of the bank that holds or names the question."] = ""
    id: Annotated[str, "The question's id in the bank."] = ""
    hash: Annotated[str, "Hash of all that printed of the bank's question when it was drawn."] = ""
    proved: Annotated[Proved, "What exact arithmetic and computer algebra both started from."]
    sign_off: Annotated[
        SignOffState, "'none' where a question needs no sign-off: it was generated."
    ] = "none"
    signed: Annotated[list[SignOff], "Who signed, and when, the latest last."] = field(
        default_factory=list
    )
    author: Annotated[str, "Code of who wrote the question."] = ""
    licence: str = ""
    credit: Annotated[str, "What the bank says the question was taken from."] = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class PackItem:
    """One question as it stands in a pack."""

    address: Annotated[
        str, "Names the question for ever: topic/tier/number, or bank:id for a bank's own."
    ]
    topic: str
    topic_title: str
    tier: TierName
    marks: Annotated[int, Whole(1)]
    difficulty: float
    prompt: Annotated[list[Run], Limit(least=1)]
    key: Key
    ask: Ask
    steps: list[Step]
    misconceptions: list[Misconception]
    untested: Annotated[
        list[str], "Names of the misconceptions that other items of the tier show, and not this."
    ] = field(default_factory=list)
    accept: Annotated[list[str], "How marking may be more lenient than the form."] = field(
        default_factory=list
    )
    source: Annotated[
        Source | None, "Where the question comes from; packs of version 1 do not say."
    ] = None

    @property
    def many(self) -> bool:
        """Return whether many answers are right, so that the key is an example of one."""
        return KINDS[self.ask.kind].many


@dataclass(frozen=True, slots=True, kw_only=True)
class NextTask:
    """What pupils of a band do after the starter."""

    title: str
    tier: TierName
    mode: ModeName
    worked_example: Annotated[bool, "Whether the sheet opens with a worked example."]
    where: Annotated[str, "Where to sit or where to find the sheet."]
    first: Annotated[str, "What to read or do first."]
    how: Annotated[str, "How to work."]
    stuck: Annotated[str, "What to do when stuck."]
    finished: Annotated[str, "What to do when finished."]


@dataclass(frozen=True, slots=True, kw_only=True)
class Band:
    """An interval of scores with its signs and its next task: a teaching aid, not a grade."""

    name: str
    letter: Annotated[str, Line(most=2)]
    shape: ShapeName
    colour: Annotated[str, Check(_colour, {"pattern": "^#[0-9A-F]{6}$"})]
    colour_name: str
    lowest: Annotated[int, Whole(0)]
    highest: Annotated[int, Whole(0)]
    task: NextTask


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """One A4 follow-up sheet: a worked example and a part-finished one where it has them."""

    tier: TierName
    worked: PackItem | None = None
    part_finished: PackItem | None = None
    items: Annotated[list[PackItem], Limit(least=1)]


@dataclass(frozen=True, slots=True, kw_only=True)
class Version:
    """One version of the starter; parallel versions share topics, tiers and difficulty."""

    letter: str
    items: Annotated[list[PackItem], Limit(least=1)]


@dataclass(frozen=True, slots=True, kw_only=True)
class Lesson:
    """Whose lesson this is, when, and on what."""

    school: str
    class_name: str
    date: datetime.date
    title: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TopicLine:
    """A topic of the pack, by name and title."""

    id: str
    title: str


@dataclass(frozen=True, slots=True, kw_only=True)
class BankLine:
    """A bank that questions were drawn from."""

    name: str
    title: str


@dataclass(frozen=True, slots=True, kw_only=True)
class LeftOut:
    """So many questions of the banks, on the pack's topics, that could not be drawn, and why."""

    why: Literal[
        "retired", "disproved", "needs a person", "unsigned", "sign-off stale", "beyond the year"
    ]
    count: Annotated[int, Whole(1)]


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawing:
    """What the questions were drawn from."""

    questions_from: Literal["generated", "bank", "both"]
    prefer: Annotated[
        Literal["bank", "generated"], "Which comes first where questions are drawn from both."
    ] = "bank"
    signed_only: bool = False
    banks: list[BankLine] = field(default_factory=list)
    offered: Annotated[
        int, Whole(0), "Questions of the banks on these topics that could be drawn."
    ] = 0
    left_out: list[LeftOut] = field(default_factory=list)
    follow_up: Annotated[
        int | None, "Questions asked for on each sheet; one has fewer where banks hold no more."
    ] = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Look:
    """Audience options: how the pages are drawn, never what they say."""

    large_print: bool = False
    paper: PaperName = "white"
    slips: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Pack:
    """Everything for one lesson."""

    schema_version: Literal[1, 2, 3, 4] = 4
    made_by: Annotated[str, "Name and version of the tool that made the pack."]
    seed: int
    lesson: Lesson
    topics: list[TopicLine]
    versions: Annotated[list[Version], Limit(least=1)]
    bands: Annotated[list[Band], Limit(least=2, most=5)]
    sheets: list[Sheet]
    look: Look = field(default_factory=Look)
    drawing: Annotated[
        Drawing | None, "Where questions came from; packs of version 1 do not say."
    ] = None

    @property
    def marks(self) -> int:
        """Return the number of marks the starter is out of."""
        return sum(item.marks for item in self.versions[0].items)
