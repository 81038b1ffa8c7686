"""A question's picture as a file to look at."""

from __future__ import annotations

from pathlib import Path

from itembank.errors import ItembankError
from itembank.figures.svg import svg
from itembank.files.together import write_whole
from itembank.items.item import Item


def draw_picture_file(item: Item, folder: Path) -> Path:
    """Draw the picture of a question as an SVG file in a folder, and return its path.

    It is called after the question's address, and takes the place of one of that name.

    Raises
    ------
    ItembankError
        If the question has no picture, or the folder cannot be written to.
    """
    if item.figure is None:
        raise ItembankError(f"{item.address} has no picture.")
    path = folder / (item.address.replace("/", "-").replace(":", "-") + ".svg")
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        reason = error.strerror or str(error)
        raise ItembankError(f"{folder} cannot be made: {reason}.") from None
    write_whole(path, svg(item.figure).encode())
    return path
