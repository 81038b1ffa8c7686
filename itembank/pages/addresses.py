"""Where each question of a pack comes from: the address that names it for ever."""

from __future__ import annotations

from collections.abc import Sequence

from itembank.packs.model import Pack

from .fonts import face
from .page import Page
from .paper import WIDTH, Paper, Part, heading_part, text_part
from .sheets import sheet_name
from .text import Flow, draw, measure


def addresses(paper: Paper, pack: Pack) -> None:
    """Draw the addresses of all questions, sheet by sheet."""
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
    head = [heading_part("Where each question comes from", paper.size), intro]
    for name, rows in groups:
        paper.place(
            [*head, heading_part(name, paper.size, 3), _address_list(rows, size)], gap=0.45 * size
        )
        head = []


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
