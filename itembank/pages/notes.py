"""The teacher's notes: what to check, how the keys were proved, each question, and a script."""

from __future__ import annotations

from collections.abc import Sequence

from itembank.packs.model import Band, Pack, PackItem

from . import theme
from .fonts import face
from .page import Page
from .paper import WIDTH, Paper, Part, list_part, space, stack, text_part
from .questions import prompt
from .script import Line, mid_sentence, opening, scenes
from .sheets import sheet_name
from .signs import interval, sign
from .slides import lesson_line
from .table import Cell, table_part
from .text import Flow, Piece, Strong, draw, measure, one_line
from .working import steps_part

CHECKS: tuple[str, ...] = (
    "Read every question and its key below. Work two of them out yourself.",
    "Show the starter and look from the back of the room. Can you read each question?",
    "Check that the next-task slide names places and sheets that your room has today.",
    "Print the sheets and their answers. They are made for black and white.",
    "Decide who teaches the repair group and what the other pupils do if they need help.",
)
CAUTIONS: tuple[str, ...] = (
    "A band says what to do next today. It is a teaching aid, not an assessment grade, and a few "
    "questions are too few to judge a pupil by.",
    "Your judgement decides. Where a pupil’s work says more than the score, choose another task.",
    "Your school’s rules on data protection and safeguarding come first. Keep seat codes, not "
    "names, beside scores.",
    "A likely wrong answer is a guess at what the pupil did. Ask before you put it right.",
)


def teacher_notes(pack: Pack) -> bytes:
    """Return the notes for the teacher."""
    paper = Paper(pack, "Teacher notes", theme.PAPER_LEAST)
    _first_side(paper, pack)
    paper.new_page()
    _questions(paper, pack)
    _other_versions(paper, pack)
    _addresses(paper, pack)
    # The script comes last, so that its page can be handed to whoever takes the group.
    _script(paper, pack)
    return paper.finish()


def _heading(paper: Paper, text: str, level: int = 2) -> Part:
    size = paper.size + {1: 10, 2: 4, 3: 1}[level]
    colour = theme.ACCENT
    return text_part(
        text, WIDTH, size, kind=f"H{level}", bold=True, colour=colour, after=0.45 * paper.size
    )


# First side


def _first_side(paper: Paper, pack: Pack) -> None:
    size = paper.size
    gap = 1.0 * size
    paper.place(
        [
            _heading(paper, "Teacher notes", 1),
            text_part([lesson_line(pack.lesson)], WIDTH, size, colour=theme.QUIET),
        ],
        gap=gap,
    )
    checks = list_part(CHECKS, WIDTH, size, mark="box")
    paper.place([_heading(paper, "Before you project"), checks], gap=gap)
    paper.place(
        [_heading(paper, f"Scores out of {pack.marks}, and what comes next"), _bands(pack, size)],
        gap=gap,
    )
    proof = [text_part(words, WIDTH, size, after=0.4 * size) for words in _proof(pack)]
    paper.place([_heading(paper, "How the keys were proved"), *proof], gap=gap - 0.4 * size)
    paper.place([_heading(paper, "Cautions"), list_part(CAUTIONS, WIDTH, size)])


def _bands(pack: Pack, size: float) -> Part:
    side = 1.5 * size
    name = max(face().width(band.name) for band in pack.bands) * size + side + 2 * size
    name = min(name, 0.34 * WIDTH)
    score = face(True).width("Score") * size + 1.4 * size
    rest = WIDTH - name - score
    rows = []
    for band in pack.bands:
        task = band.task
        how = f"{task.title}: {sheet_name(task.tier).lower()}, {task.mode}. {task.where}"
        rows.append((Cell(band.name, side + 0.5 * size, _sign(band, side)), interval(band), how))
    head = ("Band", "Score", "Next task")
    return table_part(head, rows, (name, score, rest), size, row_headers=True)


def _sign(band: Band, side: float):  # type: ignore[no-untyped-def]
    def show(page: Page, x: float, baseline: float) -> None:
        sign(page, band, x, baseline - 0.3 * side, side)

    return show


def _proof(pack: Pack) -> list[str]:
    return [
        "Each key was worked out twice, both times from the question as it is printed here: once "
        "by exact arithmetic and once by computer algebra. Both had to agree with the key, and the "
        "key had to have the form that the question asks for. Otherwise there would be no pack.",
        f"Made by {pack.made_by} with seed {pack.seed}. The same version, choices and seed give "
        "the same pack; pack.json beside this file holds all of it as data.",
    ]


# Starter questions


def _questions(paper: Paper, pack: Pack) -> None:
    version = pack.versions[0]
    title = "Starter questions"
    if len(pack.versions) > 1:
        title += f", version {version.letter}"
    head = [_heading(paper, title)]
    for number, item in enumerate(version.items, start=1):
        paper.place([*head, *_question(paper, number, item)], gap=1.0 * paper.size)
        head = []


def _question(paper: Paper, number: int, item: PackItem) -> list[Part]:
    size = paper.size
    half, gap = 0.4 * size, 0.25 * size
    key: list[Piece] = [Strong("Key: "), item.key, f" ({item.key.form_words})"]
    both = [*prompt(item), "\u00a0\u00a0 ", *key]
    if len(measure(Flow(both), WIDTH, size).lines) == 1:
        asked = [text_part(both, WIDTH, size, after=half)]
    else:
        asked = [text_part(words, WIDTH, size, after=gap) for words in (prompt(item), key)]
    parts = [stack([_heading(paper, f"{number}  {item.topic_title}", 3), *asked])]
    if item.steps:
        parts.append(steps_part(item.steps, WIDTH, size, between=0.4, after=0.4 * size))
    if item.misconceptions:
        rows = [(one.wrong, mid_sentence(one.name), one.ask) for one in item.misconceptions]
        head = ("If you see", "the pupil probably", "so ask")
        natural = max(one_line([one.wrong], size).width for one in item.misconceptions)
        first = min(max(0.15 * WIDTH, natural + size), 0.28 * WIDTH)
        widths = (first, 0.48 * (WIDTH - first), 0.52 * (WIDTH - first))
        parts.append(table_part(head, rows, widths, size, after=0.2 * size))
    if item.untested:
        blind = f"This question cannot show: {'; '.join(map(mid_sentence, item.untested))}."
        parts.append(text_part(blind, WIDTH, size, colour=theme.QUIET))
    return parts


def _other_versions(paper: Paper, pack: Pack) -> None:
    """Draw the keys of the other versions; their questions differ in their numbers alone."""
    others = pack.versions[1:]
    if not others:
        return
    rows: list[tuple[object, ...]] = []
    for i in range(len(pack.versions[0].items)):
        rows.append((str(i + 1), *(version.items[i].key for version in others)))
    first = 0.14 * WIDTH
    for start in range(0, len(others), 4):
        some = others[start : start + 4]
        width = (WIDTH - first) / len(some)
        head = ("Question", *(f"Version {version.letter}" for version in some))
        part = table_part(
            head,
            [(str(i + 1), *(v.items[i].key for v in some)) for i in range(len(rows))],
            (first, *[width] * len(some)),
            paper.size,
            row_headers=True,
        )
        title = "Keys of the other versions"
        opening = [_heading(paper, title)] if start == 0 else []
        paper.place([*opening, part], gap=1.2 * paper.size)


# Script


def _script(paper: Paper, pack: Pack) -> None:
    size = paper.size
    head = [
        _heading(paper, "Script for the repair group"),
        text_part(opening(pack), WIDTH, size, after=0.7 * size),
    ]
    parts = []
    for scene in scenes(pack):
        lines = _lines(scene.lines, size)
        parts.append(stack([*head, _heading(paper, scene.title, 3), lines, space(0.6 * size)]))
        head = []
    paper.place(parts)


def _lines(lines: Sequence[Line], size: float) -> Part:
    indent = 3.0 * size
    blocks = [measure(Flow(line.runs), WIDTH - indent, size) for line in lines]
    between = 0.28 * size

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

    return Part(sum(block.height + between for block in blocks), show)


# Addresses


def _addresses(paper: Paper, pack: Pack) -> None:
    """Draw where each question comes from: the address that names it for ever."""
    size = paper.size
    groups: list[tuple[str, list[tuple[str, str]]]] = []
    for version in pack.versions:
        name = f"Starter, version {version.letter}" if len(pack.versions) > 1 else "Starter"
        groups.append((name, [(str(i), one.address) for i, one in enumerate(version.items, 1)]))
    for sheet in pack.sheets:
        rows = [(str(i), one.address) for i, one in enumerate(sheet.items, 1)]
        groups.append((sheet_name(sheet.tier), rows))
        examples = (("Worked example", sheet.worked), ("To finish", sheet.part_finished))
        found = [(label, item.address) for label, item in examples if item is not None]
        if found:
            groups.append((f"{sheet_name(sheet.tier)}, examples", found))
    intro = text_part(
        "An address names a question for ever: topic, tier, and its number in the tier.",
        WIDTH,
        size,
        after=0.6 * size,
    )
    head = [_heading(paper, "Where each question comes from"), intro]
    for name, rows in groups:
        paper.place([*head, _heading(paper, name, 3), _address_list(rows, size)], gap=0.45 * size)
        head = []
    paper.y -= 0.8 * size


def _address_list(rows: Sequence[tuple[str, str]], size: float) -> Part:
    """Return addresses in two columns, read down each."""
    label = max(face(True).width(label) for label, _ in rows) * size + 0.8 * size
    widest = label + max(face().width(address) for _, address in rows) * size + size
    half = (len(rows) + 1) // 2 if widest <= WIDTH / 2 else len(rows)
    columns = [column for column in (rows[:half], rows[half:]) if column]
    width = WIDTH / len(columns)
    bold = face(True)
    indents = [max(bold.width(label) for label, _ in c) * size + 0.8 * size for c in columns]
    made = [
        [measure(Flow(address), width - indent - size, size) for _, address in column]
        for column, indent in zip(columns, indents, strict=True)
    ]
    step = 0.18 * size

    def show(page: Page, x: float, top: float) -> None:
        document = page.document
        with document.tag("L", attributes="<</O /List /ListNumbering /Decimal>>"):
            for column, blocks, indent in zip(columns, made, indents, strict=True):
                y = top
                for (label, _), block in zip(column, blocks, strict=True):
                    with document.tag("LI"):
                        with document.tag("Lbl"):
                            page.text(x, y - block.baseline, label, size, bold=True)
                        with document.tag("LBody"):
                            draw(page, block, x + indent, y)
                    y -= block.height + step
                x += width

    return Part(max(sum(block.height + step for block in blocks) for blocks in made), show)
