"""Draws docs/pack.png, the picture in README.md, from the demo pack in output/.

Run it with the tests' environment after `make demo`: `.venv/bin/python docs/picture.py`.
"""

from __future__ import annotations

from pathlib import Path

import pypdfium2
from PIL import Image

HERE = Path(__file__).parent
GAP = 12
GREY = (200, 204, 210)


def page(folder: Path, name: str, width: int) -> Image.Image:
    """Return the first page of a PDF as a picture `width` pixels wide."""
    with pypdfium2.PdfDocument(folder / name) as document:
        first = document[0]
        return first.render(scale=width / first.get_width()).to_pil().convert("RGB")


def main() -> None:
    """Put the three slides beside the support sheet."""
    folder = max(path.parent for path in (HERE.parent / "output").glob("*/pack.json"))
    slides = [page(folder, name, 640) for name in ("starter.pdf", "answers.pdf", "next-tasks.pdf")]
    height = sum(slide.height for slide in slides) + 2 * GAP
    sheet = page(folder, "support.pdf", round(height * 210 / 297))
    picture = Image.new("RGB", (640 + sheet.width + 3 * GAP, height + 2 * GAP), GREY)
    top = GAP
    for slide in slides:
        picture.paste(slide, (GAP, top))
        top += slide.height + GAP
    picture.paste(sheet, (640 + 2 * GAP, GAP))
    picture.save(HERE / "pack.png", optimize=True)


if __name__ == "__main__":
    main()
