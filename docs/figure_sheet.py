"""Draws docs/sheets/figures.png: some figures of every kind, as they stand on a printed sheet.

Run it with the tests' environment: `.venv/bin/python docs/figure_sheet.py`. The figures are those
that the tests draw at random, so a new kind is on the sheet as soon as it has examples. Another
file, and another scale, can be named: `figure_sheet.py FILE 0.5`.
"""

from __future__ import annotations

import sys
from pathlib import Path

import pypdfium2
from PIL import Image

HERE = Path(__file__).parent
sys.path.insert(0, str(HERE.parent))

from itembank.figures.figure import WIDEST, Figure, drawn  # noqa: E402
from itembank.packs.data.convert import picture  # noqa: E402
from itembank.pages.engine.page.page import Document  # noqa: E402
from itembank.pages.engine.text.picture import MARGIN, draw_picture  # noqa: E402
from tests.figures.every_figure import examples, names  # noqa: E402

SIZE = 14.0
"""The type of a sheet, in points."""
COLUMNS, AMONG = 4, 24
"""How many figures of a kind are shown, and of how many they are chosen to differ."""
ACROSS = (WIDEST + 1) * SIZE
GAP = 14.0
COLOURS = 32


def shown(name: str) -> list[Figure]:
    """Return figures of a kind that look as unlike as can be: from the lowest to the highest."""
    found = sorted(examples(name, AMONG), key=lambda figure: len(drawn(figure).marks))
    return [found[place * (AMONG - 1) // (COLUMNS - 1)] for place in range(COLUMNS)]


def sheet() -> bytes:
    """Return one long page with a row of figures for every kind."""
    rows = [(name, shown(name)) for name in names()]
    high = [max(float(drawn(figure).height) for figure in row) * SIZE for _, row in rows]
    height = sum(high) + len(rows) * (2 * SIZE + 2 * GAP) + GAP
    document = Document("Figures of every kind")
    page = document.page((COLUMNS * ACROSS + GAP, height))
    top = height - GAP
    for (name, row), tall in zip(rows, high, strict=True):
        with document.tag("H1"):
            page.text(GAP, top - SIZE, name, SIZE, bold=True)
        top -= SIZE + GAP
        for place, figure in enumerate(row):
            below = top - float(drawn(figure).height + 2 * MARGIN) * SIZE
            draw_picture(page, picture(figure), GAP + place * ACROSS, below, SIZE)
        top -= tall + SIZE + GAP
    return document.finish()


def main() -> None:
    """Draw the sheet where the documents are, or where it is said."""
    path = Path(sys.argv[1]) if len(sys.argv) > 1 else HERE / "sheets" / "figures.png"
    scale = float(sys.argv[2]) if len(sys.argv) > 2 else 1.0
    with pypdfium2.PdfDocument(sheet()) as document:
        image: Image.Image = document[0].render(scale=scale).to_pil().convert("RGB")
    image.quantize(COLOURS).save(path, optimize=True)


if __name__ == "__main__":
    main()
