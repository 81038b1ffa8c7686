"""Where each question of a pack comes from: its address, and what is known of it.

Where everything was generated, each key is proved and needs no sign-off: one sentence says so
of all. Where questions come from banks, each has its own state beside its address.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TypeAlias

from itembank.packs.data.pack import Pack
from itembank.packs.data.pack_item import PackItem
from itembank.packs.sources.sources_in_words import source_words
from itembank.pages.engine.document_titles import sheet_name
from itembank.pages.engine.faces.fonts import face
from itembank.pages.engine.page import theme
from itembank.pages.engine.page.page import Page
from itembank.pages.engine.paper import WIDTH, Paper, Part, heading_part, text_part
from itembank.pages.engine.text.paragraph import Block, Flow, draw, measure

GENERATED = (
    "An address names a question for ever: topic, tier, and its number in the tier. Every key "
    "here is proved; generated questions need no sign-off."
)
BANKS = (
    "An address names a question for ever: topic, tier and number of a generated question, or "
    "the bank and its name there. Beside it stands whether its key is proved, and who signed it."
)
SCRAP = 0.25
"""Less than this share of a page looks like what was left over."""

Row: TypeAlias = tuple[str, str, str]
"""A question's number on its sheet, its address, and what is known of it."""


def addresses(paper: Paper, pack: Pack) -> None:
    """Draw the addresses of all questions, sheet by sheet, each with its state."""
    size = paper.size
    groups: list[tuple[str, list[tuple[str, PackItem]]]] = []
    for version in pack.versions:
        name = f"Starter, version {version.letter}" if len(pack.versions) > 1 else "Starter"
        groups.append((name, [(str(i), item) for i, item in enumerate(version.items, 1)]))
    for sheet in pack.sheets:
        groups.append(
            (sheet_name(sheet.tier), [(str(i), item) for i, item in enumerate(sheet.items, 1)])
        )
        examples = (("Worked example", sheet.worked), ("To finish", sheet.part_finished))
        found = [(label, item) for label, item in examples if item is not None]
        if found:
            groups.append((f"{sheet_name(sheet.tier)}, examples", found))
    from_banks = any(
        item.source is not None and item.source.kind == "bank"
        for _, rows in groups
        for _, item in rows
    )
    intro = text_part(BANKS if from_banks else GENERATED, WIDTH, size, after=0.6 * size)
    head = [heading_part("Where each question comes from", paper.size), intro]
    items = [item for _, rows in groups for _, item in rows]
    head += [text_part(words, WIDTH, size, after=0.4 * size) for words in licences(items)]
    gap = 0.45 * size
    blocks: list[list[Part]] = []
    for name, rows in groups:
        said: list[Row] = [
            (label, item.address, source_words(item.source) if from_banks else "")
            for label, item in rows
        ]
        blocks.append([*head, heading_part(name, size, 3), _address_list(said, size)])
        head = []
    heights = [sum(part.height for part in parts) + gap for parts in blocks]
    turn = _turn(heights, paper.room, paper.full)
    for place, parts in enumerate(blocks):
        if place == turn:
            paper.new_page()
        paper.place(parts, gap=gap)


def _turn(heights: Sequence[float], room: float, full: float) -> int | None:
    """Return the block that begins the last page, where it would hold a scrap otherwise.

    >>> _turn([30, 30, 30, 30], 100, 200), _turn([30, 30, 30], 100, 200)
    (2, None)
    """
    fits = 0
    while fits < len(heights) and sum(heights[: fits + 1]) <= room:
        fits += 1
    if fits == len(heights) or sum(heights[fits:]) > full:
        return None
    for turn in range(fits, -1, -1):
        if sum(heights[turn:]) >= SCRAP * full:
            # Not from a page that would be left half empty.
            return turn if room - sum(heights[:turn]) <= 0.5 * full else None
    return None


def licences(items: Iterable[PackItem]) -> list[str]:
    """Return a sentence for each bank and licence that questions come under."""
    sources = [item.source for item in items if item.source is not None]
    terms = {
        (source.bank, source.licence): None for source in sources if source.bank and source.licence
    }
    return [f"Licence of the questions of {bank}: {licence}." for bank, licence in terms]


def _address_list(rows: Sequence[Row], size: float) -> Part:
    """Return addresses in two columns, read down each; in one, with their states beside them."""
    bold, plain = face(True), face()
    label = max(bold.width(label) for label, _, _ in rows) * size + 0.8 * size
    widest = max(plain.width(address) for _, address, _ in rows) * size + size
    stated = any(state for _, _, state in rows)
    two = not stated and label + widest <= WIDTH / 2
    half = (len(rows) + 1) // 2 if two else len(rows)
    columns = [column for column in (rows[:half], rows[half:]) if column]
    width = WIDTH / len(columns)
    indents = [max(bold.width(label) for label, _, _ in c) * size + 0.8 * size for c in columns]
    # A very long address goes over two lines rather than leave no room for its state.
    room = min(widest, 0.5 * (WIDTH - label)) if stated else 0.0
    made = [
        [
            (
                measure(Flow(address), (room or width - indent) - size, size),
                measure(Flow(state), width - indent - room, size) if state else None,
            )
            for _, address, state in column
        ]
        for column, indent in zip(columns, indents, strict=True)
    ]
    step = 0.18 * size

    def show(page: Page, x: float, top: float) -> None:
        document = page.document
        with document.tag("L", attributes="<</O /List /ListNumbering /Decimal>>"):
            for column, blocks, indent in zip(columns, made, indents, strict=True):
                y = top
                for (label, _, _), (block, state) in zip(column, blocks, strict=True):
                    with document.tag("LI"):
                        with document.tag("Lbl"):
                            page.text(x, y - block.baseline, label, size, bold=True)
                        with document.tag("LBody"):
                            draw(page, block, x + indent, y)
                            if state is not None:
                                draw(page, state, x + indent + room, y, colour=theme.QUIET)
                    y -= _height(block, state) + step
                x += width

    return Part(max(sum(_height(*pair) + step for pair in blocks) for blocks in made), show)


def _height(address: Block, state: Block | None) -> float:
    return max(address.height, state.height if state is not None else 0.0)
