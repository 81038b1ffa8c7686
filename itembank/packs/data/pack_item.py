"""One question as it stands in a pack: its prompt, key and working, and where it comes from."""

from __future__ import annotations

import datetime
from typing import TYPE_CHECKING, Annotated, Any, Literal

from itembank.items.asks import KINDS
from itembank.items.asks.answer_given import ANSWERED
from itembank.items.asks.faulty_working import FAULTY_WORKING
from itembank.items.asks.who_is_right import WHO_IS_RIGHT
from itembank.packs.data.pack_data import Checked, Data, Published, ToldBy, said

if TYPE_CHECKING:
    from itembank.figures.figure import Figure

TierName = Literal["support", "core", "challenge"]
Proved = Literal["from the printed mathematics", "from a model of the words"]

SignOffState = Literal["none", "unsigned", "signed", "stale"]


class Maths(Data):
    """One piece of mathematics by its three written faces."""

    mathml: str = said(description="Presentation MathML, W3C MathML Core.")
    line: str = said(description="One-line text that reads back to the same mathematics.")
    words: str = said(description="The phrase a teacher would say.")


class TextRun(Data):
    """A stretch of plain text inside a prompt."""

    kind: Literal["text"] = "text"
    text: str


class MathRun(Maths):
    """A stretch of mathematics inside a prompt."""

    kind: Literal["math"] = "math"


class Picture(Data):
    """A figure by its data and its words; what is drawn follows from the data."""

    data: dict[str, Any] = said(description="Its kind, and the keys of that kind.")
    words: str = said(description="All that a pupil who cannot see it needs in order to answer.")

    @property
    def figure(self) -> Figure:
        """Return the figure; raises FigureError where the data makes no sense."""
        from itembank.figures.figure_data import from_data

        return from_data(self.data)


class FigureReading(Data):
    """What a letter of a question about a figure stands for."""

    letter: str
    name: str = said(description="'value', 'shaded', 'angle', …")
    of: list[str] = said(default=[], description="The labels of what it is read of.")


Run = Annotated[TextRun | MathRun, ToldBy("kind")]


class Key(Maths):
    """The answer an item expects and the form it must have."""

    form: str = said(description="Name of the form, e.g. 'lowest-terms'.")
    form_words: str = said(description="The form in words, e.g. 'a fraction in its lowest terms'.")


class Condition(Data):
    """What a number that is to be given has to be, such as a multiple of 7."""

    name: str = said(description="'whole', 'prime', 'multiple', 'factor', …")
    of: list[str] = said(default=[], description="The number it speaks of, in line notation.")


def _known_kind(name: str) -> str:
    if name not in KINDS or not KINDS[name].filed:
        known = sorted(kind.name for kind in KINDS.values() if kind.filed)
        raise ValueError(f"there is no kind of question called ‘{name}’, only {', '.join(known)}")
    return name


KindName = Annotated[
    str,
    Checked(_known_kind),
    Published({"enum": [kind.name for kind in KINDS.values() if kind.filed]}),
]


class Ask(Data):
    """What the proof starts from, in line notation: the question behind the words."""

    kind: KindName = said(description="What kind of question it is.")
    target: list[str] = said(
        description="What is wanted; for order, compare, choose, common, sequence and odd one "
        "out: the things; "
        "for true or false: the statement; for faulty line: the question and its lines; for match: "
        "the cards and their partners; "
        "for subject: the formula and the letter; for round: the number and how many or what to; "
        "for give: a letter for each number of the answer."
    )
    relations: list[str] = said(default=[], description="What is given, as equations.")
    detail: str = said(
        default="",
        description="For order: 'ascending', 'descending'; choose: 'least', 'greatest'; rewrite: "
        "'simplify', 'expand', 'factorise'; common: 'hcf', 'lcm'; round: 'places', 'figures', "
        "'nearest'.",
    )
    labels: list[str] = said(
        default=[],
        description="For choose and match: the name of each option or card; of several answers: "
        "who gives each.",
    )
    pick: Literal["", "largest", "smallest", "positive", "negative"] = said(
        default="", description="For find and solve: which one of several answers is wanted."
    )
    answers: list[str] = said(
        default=[],
        description="Where it is asked whether an answer to the question is right, or whose of "
        "several: the answers.",
    )
    answer_form: str = said(default="", description="The form that such answers have to have.")
    way: Literal["nearest", "down", "up"] = said(
        default="nearest", description="For round: to the nearest, always down, or always up."
    )
    conditions: list[Condition] = said(
        default=[], description="For give: what each number of the answer has to be."
    )
    readings: list[FigureReading] = said(
        default=[], description="For of figure: what its letters stand for."
    )
    constants: list[int] = said(
        default=[], description="Numbers the model uses that the prompt need not print (180, 360)."
    )

    @property
    def asked_kind(self) -> str:
        """Return the name of the kind as it is asked: `kind` says what answers to it are judged.

        One answer is right or not; several without names are lines of working, with names
        somebody's.
        """
        if not self.answers:
            return self.kind
        if len(self.answers) == 1:
            return ANSWERED.name
        return (WHO_IS_RIGHT if self.labels else FAULTY_WORKING).name


class Step(Data):
    """A line of working and the words that go with it."""

    say: str
    maths: Maths | None = None
    picture: Picture | None = None
    marks: int = said(
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

    by: str = said(description="The reviewer's code, never a name.")
    on: datetime.date


class Source(Data):
    """Where a question comes from, how its key was proved, and who has signed it."""

    kind: Literal["generated", "bank"]
    bank: str = said(default="", description="Name of the bank that holds or names the question.")
    id: str = said(default="", description="The question's id in the bank.")
    hash: str = said(
        default="",
        description="Hash of all that printed of the bank's question when it was chosen.",
    )
    proved: Proved = said(
        description="What exact arithmetic and computer algebra both started from."
    )
    sign_off: SignOffState = said(
        default="none", description="'none' where a question needs no sign-off: it was generated."
    )
    signed: list[SignOff] = said(default=[], description="Who signed, and when, the latest last.")
    author: str = said(default="", description="Code of who wrote the question.")
    licence: str = ""
    credit: str = said(default="", description="What the bank says the question was taken from.")


class PackItem(Data):
    """One question as it stands in a pack."""

    address: str = said(
        description="Names the question for ever: topic/tier/number, or bank:id for a bank's own."
    )
    topic: str
    topic_title: str
    tier: TierName
    marks: int = said(ge=1)
    difficulty: float
    prompt: list[Run] = said(min_length=1)
    picture: Picture | None = said(default=None, description="What is drawn with the question.")
    key: Key
    key_picture: Picture | None = said(default=None, description="What is drawn with the answer.")
    ask: Ask
    steps: list[Step]
    misconceptions: list[Misconception]
    untested: list[str] = said(
        default=[],
        description="Names of the misconceptions that other items of the tier show, and not this.",
    )
    accept: list[str] = said(
        default=[], description="How marking may be more lenient than the form."
    )
    source: Source | None = said(
        default=None, description="Where the question comes from; packs of version 1 do not say."
    )

    @property
    def many(self) -> bool:
        """Return whether many answers are right, so that the key is an example of one.

        Whether somebody's answer is right has one answer, however many the question has itself.
        """
        return KINDS[self.ask.asked_kind].many

    @property
    def left_to_finish(self) -> int:
        """Return how many lines of its working, the last, are left out of a part-finished example.

        That is half of them, the middle one of an odd number too. A line that prints the question
        again for a picture beside it is none to be left out.
        """
        printed = {run.line for run in self.prompt if isinstance(run, MathRun)}
        lines = sum(
            step.maths is not None and not (step.picture and step.maths.line in printed)
            for step in self.steps
        )
        return lines - lines // 2

    @property
    def drawn(self) -> bool:
        """Return whether the answer is drawn on the picture, so that nothing is written."""
        return self.ask.asked_kind == "draw"

    @property
    def told(self) -> str:
        """Return what a teacher calls its kind, or ``""`` where it is to be worked out."""
        told = KINDS[self.ask.asked_kind].told
        return told or ("missing number" if self.ask.target == ["□"] else "")
