"""The teacher's notes: what to check, how the keys were proved, each question, and a script."""

from __future__ import annotations

from collections.abc import Sequence

from itembank.files.faults import join_words
from itembank.packs.data.pack import Pack
from itembank.packs.data.pack_item import PackItem
from itembank.packs.sources.sources_in_words import provenance_words
from itembank.pages.documents.address_list import addresses
from itembank.pages.documents.notes_summary import summary
from itembank.pages.engine.page import theme
from itembank.pages.engine.page.page import Page
from itembank.pages.engine.paper import (
    TOP,
    WIDTH,
    Paper,
    Part,
    heading_part,
    list_part,
    space,
    stack,
    text_part,
)
from itembank.pages.engine.table_drawn import Pieces, table_part, table_pieces
from itembank.pages.engine.text.paragraph import Flow, Piece, Strong, draw, measure, one_line
from itembank.pages.parts.questions.answers import key_shown
from itembank.pages.parts.questions.question_cell import prompt
from itembank.pages.parts.questions.solutions import steps_part
from itembank.pages.parts.teacher.method_marks import method_marks
from itembank.pages.parts.teacher.script import Line, mid_sentence, opening, scenes
from itembank.planning.bands.caution import NOT_A_GRADE

CHECKS: tuple[str, ...] = (
    "Check that the next-task slide names places and sheets that your room has today.",
    "Print the answers to the sheets too. They are made for black and white.",
    "Decide what the other pupils do if they need help while you teach the repair group.",
)
CAUTIONS: tuple[str, ...] = (
    f"{NOT_A_GRADE} A band says what to do next today; a few questions are too few to judge a "
    "pupil by.",
    "Your judgement decides. Where a pupil’s work says more than the score, choose another task.",
    "Your school’s rules on data protection and safeguarding come first. Keep seat codes, not "
    "names, beside scores.",
    "What is said of a wrong answer is a guess at how the pupil got it. Ask before you put it "
    "right.",
)

MODELS = (
    "‘Proved from its model’ means that the words hide the mathematics, and that the proof began "
    "with what the author wrote for it: read there whether the words say the same."
)

SCRIPT_GAPS = ((0.28, 0.6), (0.2, 0.45), (0.12, 0.35), (0.04, 0.25))
"""Room between the script's lines and after its scenes in ems, the most pleasant first."""


def teacher_notes(pack: Pack) -> bytes:
    """Return the notes for the teacher."""
    paper = Paper(pack, "Teacher notes", theme.PAPER_LEAST)
    summary(paper, pack)
    # The first page can be taken by itself, and so can the script, by whoever takes the group.
    # All else runs on behind them; what fits any place fills the page where a long summary ends.
    long = paper.sides > 1
    if long:
        paper.y -= paper.size
        _rest(paper, pack)
    if pack.sheets:  # the script goes through the examples and questions of one
        _turn(paper)
        _script(paper, pack)
    _turn(paper)
    _questions(paper, pack)
    _other_versions(paper, pack)
    method_marks(paper, pack)
    if not long:
        _rest(paper, pack)
    addresses(paper, pack)
    return paper.finish()


def _turn(paper: Paper) -> None:
    """Go to a new page, but not from one that would be left more than half empty."""
    if paper.y < TOP and paper.room > 0.5 * paper.full:
        paper.y -= 1.5 * paper.size
    else:
        paper.new_page()


# What was made, and how


def _rest(paper: Paper, pack: Pack) -> None:
    """Draw what else to look after, how the keys were proved, and cautions."""
    size = paper.size
    gap = 1.0 * size
    checks = list_part(CHECKS, WIDTH, size, mark="box")
    paper.place([heading_part("If there is time before you project", size), checks], gap=gap)
    proof = [text_part(words, WIDTH, size, after=0.4 * size) for words in _proof(pack)]
    paper.place([heading_part("How the keys were proved", size), *proof], gap=gap - 0.4 * size)
    paper.place([heading_part("Cautions", size), list_part(CAUTIONS, WIDTH, size)], gap=gap)


def _proof(pack: Pack) -> list[str]:
    drawn = provenance_words(pack) if pack.drawing is not None and pack.drawing.banks else ""
    return [
        "Each key was worked out twice, both times from the question as it is printed here: once "
        "by exact arithmetic and once by computer algebra. Both had to agree with the key, and the "
        "key had to have the form that the question asks for. Otherwise there would be no pack.",
        *([f"{drawn} {MODELS}" if _from_model(pack) else drawn] if drawn else []),
        f"Made by {pack.made_by} with seed {pack.seed}. The same version, choices and seed give "
        "the same pack; pack.json beside this file holds all of it as data.",
    ]


def _from_model(pack: Pack) -> bool:
    """Tell whether some question of a bank was proved from a model of its words."""
    sources = [item.source for version in pack.versions for item in version.items]
    sources += [item.source for sheet in pack.sheets for item in sheet.items]
    return any(
        source is not None
        and source.kind == "bank"
        and source.proved == "from a model of the words"
        for source in sources
    )


# Starter questions


def _questions(paper: Paper, pack: Pack) -> None:
    version = pack.versions[0]
    title = "Each question: working and wrong answers"
    if len(pack.versions) > 1:
        title += f", version {version.letter}"
    told = _kinds_told(version.items)
    also = [text_part([told], WIDTH, paper.size, after=0.4 * paper.size)] if told else []
    head = [heading_part(title, paper.size), *also]
    for number, item in enumerate(version.items, start=1):
        paper.place([*head, *_asked(number, item, paper.size)])
        mistakes = _mistakes(item, paper.size, _unseen(version.items, number))
        paper.place_apart(mistakes.rows, f"Question {number}, continued", mistakes.again)
        paper.y -= paper.size
        head = []


def _kinds_told(items: Sequence[PackItem]) -> str:
    """Return the sentence on the kinds of question that a starter mixes, or ``""`` for one kind."""
    numbers: dict[str, list[str]] = {}
    for number, item in enumerate(items, start=1):
        if item.told:
            numbers.setdefault(item.told, []).append(str(number))
    if not numbers:
        return ""
    said = [f"{told} ({', '.join(which)})" for told, which in numbers.items()]
    aloud = " Ask for the reason aloud." if "true or false" in numbers else ""
    return f"Beside questions to work out there are others: {join_words(said)}.{aloud}"


def _asked(number: int, item: PackItem, size: float) -> list[Part]:
    """Return the question with its key and its working."""
    half, gap = 0.4 * size, 0.25 * size
    key: list[Piece] = [Strong("Key: "), *key_shown(item), f" ({item.key.form_words})"]
    if item.key_picture is not None:
        key.append(item.key_picture)
    both = [*prompt(item), "\u00a0\u00a0 ", *key]
    if len(measure(Flow(both), WIDTH, size).lines) == 1:
        asked = [text_part(both, WIDTH, size, after=half)]
    else:
        asked = [text_part(words, WIDTH, size, after=gap) for words in (prompt(item), key)]
    parts = [stack([heading_part(f"{number}  {item.topic_title}", size, 3), *asked])]
    if item.steps:
        parts.append(steps_part(item.steps, WIDTH, size, between=0.4, after=0.4 * size))
    return parts


def _unseen(items: Sequence[PackItem], number: int) -> list[str]:
    """Return the mistakes of a topic that no question on it can show.

    They are said once, at the last question on the topic. At each question alone the list
    would be long and idle: that a subtraction does not show who adds wrongly needs no saying.
    """
    topic = items[number - 1].topic
    on_it = [item for item in items if item.topic == topic]
    if any(item.topic == topic for item in items[number:]):
        return []
    # Mistakes that lead to one answer are named together there: each of them can be shown.
    shown = [misconception.name for item in on_it for misconception in item.misconceptions]
    untested = dict.fromkeys(name for item in on_it for name in item.untested)
    return [name for name in untested if not any(name in names for names in shown)]


def _mistakes(item: PackItem, size: float, unseen: Sequence[str]) -> Pieces:
    """Return what wrong answers may mean, and mistakes `unseen` by all questions on its topic."""
    blind = []
    if unseen:
        words = f"No question here on this topic looks for: {'; '.join(map(mid_sentence, unseen))}."
        blind = [space(0.2 * size), text_part(words, WIDTH, size, colour=theme.QUIET)]
    if not item.misconceptions:
        return Pieces([stack(blind)], space(0))
    rows = [
        (misconception.wrong, mid_sentence(misconception.name), misconception.ask)
        for misconception in item.misconceptions
    ]
    natural = max(
        one_line([misconception.wrong], size).width for misconception in item.misconceptions
    )
    first = min(max(0.15 * WIDTH, natural + size), 0.28 * WIDTH)
    widths = (first, 0.48 * (WIDTH - first), 0.52 * (WIDTH - first))
    table = table_pieces(("If you see", "the pupil probably", "so ask"), rows, widths, size)
    # What it does not look for stays with the last row, so that no head stands above it alone.
    return table._replace(rows=[*table.rows[:-1], stack([table.rows[-1], *blind])])


def _other_versions(paper: Paper, pack: Pack) -> None:
    """Draw the keys of the other versions; their questions differ in their numbers alone."""
    others = pack.versions[1:]
    if not others:
        return
    count = len(pack.versions[0].items)
    first = 0.14 * WIDTH
    for start in range(0, len(others), 4):
        some = others[start : start + 4]
        width = (WIDTH - first) / len(some)
        head = ("Question", *(f"Version {version.letter}" for version in some))
        part = table_part(
            head,
            [(str(i + 1), *(key_shown(v.items[i]) for v in some)) for i in range(count)],
            (first, *[width] * len(some)),
            paper.size,
            # With one version the numbers name no more than the answer does.
            row_headers=len(some) > 1,
        )
        title = "Keys of the other versions"
        opening = [heading_part(title, paper.size)] if start == 0 else []
        paper.place([*opening, part], gap=1.2 * paper.size)


# Script


def _script(paper: Paper, pack: Pack) -> None:
    """Draw the script: on one page where it can be set close enough."""
    parts: list[Part] = []
    for close in SCRIPT_GAPS:
        parts = _scenes(pack, paper.size, *close)
        if sum(part.height for part in parts) <= paper.full:
            break
    else:
        parts = _scenes(pack, paper.size, *SCRIPT_GAPS[0])
    paper.place(parts)


def _scenes(pack: Pack, size: float, between: float, after: float) -> list[Part]:
    """Return the script with so many ems between its lines and after each scene."""
    top = [
        heading_part("Script for the repair group", size),
        text_part(opening(pack), WIDTH, size, after=after * size),
    ]
    parts: list[Part] = []
    found = scenes(pack)
    for scene in found:
        lines = _lines(scene.lines, size, between * size)
        gap = [space(after * size)] if scene is not found[-1] else []
        parts.append(stack([*top, heading_part(scene.title, size, 3), lines, *gap]))
        top = []
    return parts


def _lines(lines: Sequence[Line], size: float, between: float) -> Part:
    indent = 3.0 * size
    blocks = [measure(Flow(line.runs), WIDTH - indent, size) for line in lines]

    def show(page: Page, x: float, top: float) -> None:
        document = page.document
        with document.tag("L", attributes="<</O /List /ListNumbering /None>>"):
            for line, block in zip(lines, blocks, strict=True):
                with document.tag("LI"):
                    with document.tag("Lbl"):
                        page.text(x, top - block.baseline, line.kind, size, bold=True)
                    with document.tag("LBody"):
                        draw(page, block, x + indent, top)
                top -= block.height + between

    height = sum(block.height for block in blocks) + between * (len(blocks) - 1)
    return Part(height, show)
