"""What the documents of a pack say, as plain blocks that any engine can lay out.

The other engines get the same words, the same formulas, the same kinds of page and the same
number of documents as ours. Signs of bands are left out for them, and our boxes and rules too.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Literal, TypeAlias

from itembank.packs.data.pack import Pack, Sheet
from itembank.packs.data.pack_item import Maths, PackItem, Step

PROOF = (
    "Each key was worked out twice, both times from the question as it is printed here: once by "
    "exact arithmetic and once by computer algebra. Both had to agree with the key, and the key "
    "had to have the form that the question asks for. Otherwise there would be no pack. The same "
    "version, choices and seed give the same pack; pack.json beside this file holds it as data."
)


@dataclass(frozen=True)
class Words:
    """Words in a paragraph."""

    text: str
    bold: bool = False


Run: TypeAlias = Words | Maths
Runs: TypeAlias = list[Run]


@dataclass(frozen=True)
class Heading:
    """A heading of level 1 to 3."""

    level: int
    text: str


@dataclass(frozen=True)
class Paragraph:
    """A paragraph, and the room below it in points."""

    runs: Runs
    after: float = 6.0


@dataclass(frozen=True)
class Table:
    """Cells in columns whose widths stand in these proportions; `gap` points between rows."""

    widths: tuple[int, ...]
    rows: list[list[Runs]]
    gap: float = 6.0


Block: TypeAlias = Heading | Paragraph | Table


@dataclass
class Document:
    """One file: its page, its size of type in points, and its blocks."""

    name: str
    title: str
    page: Literal["slide", "a4"]
    size: float
    blocks: list[Block] = field(default_factory=list)


def documents(pack: Pack, names: Sequence[str]) -> list[Document]:
    """Return the documents called `names` as blocks."""
    makers = {
        "starter": lambda: _slide(pack, "Starter", answers=False),
        "answers": lambda: _slide(pack, "Answers", answers=True),
        "next-tasks": lambda: _tasks(pack),
        "support": lambda: _sheet(pack, "support"),
        "core": lambda: _sheet(pack, "core"),
        "challenge": lambda: _sheet(pack, "challenge"),
        "follow-up-answers": lambda: _follow_up_answers(pack),
        "teacher-notes": lambda: _notes(pack),
    }
    return [makers[name.removesuffix(".pdf")]() for name in names]


def words(text: str, bold: bool = False) -> Run:
    """Return words as a run."""
    return Words(text, bold)


def runs(pieces: Sequence[object]) -> Runs:
    """Return our own pieces of a line (text, emphasised text, formulas) as runs."""
    found: Runs = []
    for piece in pieces:
        if isinstance(piece, Maths):
            found.append(piece)
        else:
            text = piece if isinstance(piece, str) else getattr(piece, "text", "")
            found.append(Words(text, bold=type(piece).__name__ == "Strong"))
    return found


def _prompt(item: PackItem) -> Runs:
    return runs(item.prompt)


def _lesson(pack: Pack) -> str:
    return f"{pack.lesson.class_name} • {pack.lesson.date:%A %d %B %Y} • {pack.lesson.title}"


def _opening(pack: Pack, title: str) -> list[Block]:
    return [Heading(1, title), Paragraph([words(_lesson(pack))])]


def _numbered(number: int, body: Runs) -> list[Runs]:
    return [[words(str(number), bold=True)], body]


def _score(pack: Pack, index: int) -> str:
    band = pack.bands[index]
    return f"{band.lowest}–{band.highest}"


def _slide(pack: Pack, title: str, answers: bool) -> Document:
    made = Document(title, f"{title}: {_lesson(pack)}", "slide", 28)
    for version in pack.versions:
        made.blocks += _opening(pack, title)
        cells: list[Runs] = []
        for number, item in enumerate(version.items, start=1):
            body = _prompt(item)
            if answers:
                body = [*body, words(" → "), item.key]
            cells += _numbered(number, body)
        made.blocks.append(Table((1, 12, 1, 12), _in_rows(cells, 4), 14))
        if answers:
            made.blocks.append(Paragraph([words(f"Add up your marks, out of {pack.marks}")]))
            scores = [
                [words(_score(pack, i), bold=True), words(f" {band.name}")]
                for i, band in enumerate(pack.bands)
            ]
            made.blocks.append(Table((1,) * len(scores), [scores]))
        else:
            foot = f"Work on your own, in silence, and show your steps. {pack.marks} marks in all."
            made.blocks.append(Paragraph([words(foot)]))
    return made


def _in_rows(cells: list[Runs], count: int) -> list[list[Runs]]:
    whole = [*cells, *([[]] * (-len(cells) % count))]
    return [whole[i : i + count] for i in range(0, len(whole), count)]


def _tasks(pack: Pack) -> Document:
    from itembank.pages.documents.task_slide import NOTICE

    made = Document("Next tasks", f"Next tasks: {_lesson(pack)}", "slide", 18)
    made.blocks += _opening(pack, "Next tasks")
    rows: list[list[Runs]] = [
        [[words(f"{b.name}, {_score(pack, i)} marks", bold=True)] for i, b in enumerate(pack.bands)]
    ]
    rows.append([[words(band.task.title, bold=True)] for band in pack.bands])
    for label in ("where", "first", "how", "stuck", "finished"):
        rows.append(
            [
                [words(label.capitalize(), bold=True), words(f" {getattr(band.task, label)}")]
                for band in pack.bands
            ]
        )
    made.blocks += [Table((1,) * len(pack.bands), rows), Paragraph([words(NOTICE)])]
    return made


def _steps(steps: Sequence[Step], finished: int | None = None) -> Table:
    """Return steps as rows: number, formula, words; formulas after the first few left out."""
    rows: list[list[Runs]] = []
    for number, step in enumerate(steps, start=1):
        shown = step.maths is not None and (finished is None or number <= finished)
        maths: Runs = [step.maths] if shown and step.maths is not None else []
        rows.append([[words(str(number), bold=True)], maths, [words(step.say)]])
    return Table((1, 10, 10), rows)


def _sheet(pack: Pack, tier: str) -> Document:
    sheet = next(sheet for sheet in pack.sheets if sheet.tier == tier)
    title = f"{tier.capitalize()} sheet"
    made = Document(title, f"{title}: {_lesson(pack)}", "a4", 14)
    made.blocks += [*_opening(pack, title), Paragraph([words("Seat code")])]
    for name, item, finished in (
        ("Worked example", sheet.worked, None),
        ("Now finish this one", sheet.part_finished, 1),
    ):
        if item is not None:
            made.blocks += [
                Heading(2, name),
                Paragraph(_prompt(item)),
                _steps(item.steps, finished),
            ]
            answer: Runs = [words("Answer: ", bold=True)]
            made.blocks.append(Paragraph(answer if finished else [*answer, item.key]))
    for number, item in enumerate(sheet.items, start=1):
        if number == 1 or item.topic != sheet.items[number - 2].topic:
            made.blocks.append(Heading(2, item.topic_title))
        row = _numbered(number, _prompt(item))
        made.blocks.append(Table((1, 24), [row], 110))
    return made


def _follow_up_answers(pack: Pack) -> Document:
    from itembank.pages.documents.follow_up_answers import HOW
    from itembank.pages.parts.questions.solutions import chain

    made = Document("Follow-up answers", f"Follow-up answers: {_lesson(pack)}", "a4", 12)
    made.blocks += _opening(pack, "Follow-up answers")
    for sheet in pack.sheets:
        made.blocks += [Heading(2, f"{sheet.tier.capitalize()} sheet"), Paragraph([words(HOW)])]
        extra = [sheet.part_finished] if sheet.part_finished is not None else []
        cells: list[Runs] = []
        topic = ""
        for number, item in enumerate([*extra, *sheet.items], start=1 - len(extra)):
            lines: Runs = [words(f"{item.topic_title} ")] if item.topic != topic else []
            topic = item.topic
            lines.append(item.key)
            for maths in chain(item.steps):
                lines += [words("   "), maths]
            cells += _numbered(number, lines)
        made.blocks.append(Table((1, 9, 1, 9), _in_rows(cells, 4)))
    return made


def _notes(pack: Pack) -> Document:
    from itembank.pages.documents.notes import CAUTIONS, CHECKS
    from itembank.pages.parts.teacher.script import opening, scenes

    made = Document("Teacher notes", f"Teacher notes: {_lesson(pack)}", "a4", 12)
    made.blocks += _opening(pack, "Teacher notes")
    for title, lines in (("Before you project", CHECKS), ("Cautions", CAUTIONS)):
        made.blocks.append(Heading(2, title))
        made.blocks.append(Table((1, 30), [[[words("•")], [words(line)]] for line in lines]))
    bands = [
        [
            [words(band.name)],
            [words(_score(pack, i))],
            [words(f"{band.task.title}: {band.task.mode}. {band.task.where}")],
        ]
        for i, band in enumerate(pack.bands)
    ]
    made.blocks += [Heading(2, "Scores and what comes next"), Table((2, 1, 6), bands)]
    made.blocks += [Heading(2, "How the keys were proved"), Paragraph([words(PROOF)])]
    made.blocks.append(Heading(2, "Starter questions"))
    for number, item in enumerate(pack.versions[0].items, start=1):
        key: Runs = [words("Key: ", bold=True), item.key, words(f" ({item.key.form_words})")]
        slips: list[list[Runs]] = [
            [[words(heading, bold=True)] for heading in ("Wrong answer", "Probably", "What to ask")]
        ]
        for misconception in item.misconceptions:
            slips.append(
                [[misconception.wrong], [words(misconception.name)], [words(misconception.ask)]]
            )
        made.blocks += [
            Heading(3, f"{number} {item.topic_title}"),
            Paragraph(_prompt(item)),
            Paragraph(key),
            _steps(item.steps),
            Table((2, 4, 5), slips),
        ]
        if item.untested:
            blind = f"This question does not look for: {'; '.join(item.untested)}."
            made.blocks.append(Paragraph([words(blind)]))
    made.blocks += [Heading(2, "Script for the repair group"), Paragraph(runs(opening(pack)))]
    for scene in scenes(pack):
        rows = [[[words(line.kind, bold=True)], runs(line.runs)] for line in scene.lines]
        made.blocks += [Heading(3, scene.title), Table((1, 12), rows)]
    made.blocks.append(Heading(2, "Where each question comes from"))
    for group in (*pack.versions, *pack.sheets):
        name = f"{group.tier.capitalize()} sheet" if isinstance(group, Sheet) else "Starter"
        made.blocks.append(Heading(3, name))
        examples = (group.worked, group.part_finished) if isinstance(group, Sheet) else ()
        listed = [*(example for example in examples if example is not None), *group.items]
        cells: list[Runs] = []
        for number, item in enumerate(listed, start=1):
            cells += _numbered(number, [words(item.address)])
        made.blocks.append(Table((1, 9, 1, 9), _in_rows(cells, 4), 3))
    return made
