"""``itembank demo``: the demo department and the banks that ship, to try things with."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from itembank.cli.words.wrapped import say
from itembank.errors import ItembankError
from itembank.text.paths_shown import quoted_path


def demo(
    folder: Annotated[
        Path, typer.Argument(metavar="FOLDER", help="A new folder to put them in.")
    ] = Path("banks"),
) -> None:
    """Write the demo department, and the banks to start from, into a new folder.

    The department is that of Larkhythe School, which is invented: classes 7M, 8K and 9S, a
    calendar, schemes of work and a bank of questions. Copy it and make it yours, or try all
    commands on it.

    \b
    Examples:
      itembank demo
      itembank demo trial
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.files.shipped import shipped_files
    from itembank.files.together import Together

    try:
        with Together() as change:
            change.folder(folder, shipped_files(), free=True)
    except FileExistsError:
        raise ItembankError(
            f"{folder} is there already. Nothing was written. Name another folder, such as "
            "‘itembank demo trial’."
        ) from None
    except OSError as error:
        reason = error.strerror or str(error)
        raise ItembankError(
            f"{folder} cannot be written: {reason}. Nothing was written. Name another folder."
        ) from None
    school = quoted_path(folder / "larkhythe")
    say(
        f"Wrote {folder}: the demo department larkhythe, and the banks key-stage-3 and "
        "key-stage-4 to start from."
    )
    say(f"Next: itembank pack --department {school}")
