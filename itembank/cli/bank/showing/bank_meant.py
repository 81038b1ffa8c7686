"""Which bank a command is about, and which of its items."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from itembank.cli.options.complete import complete_topic
from itembank.errors import ItembankError
from itembank.files.faults import join_words
from itembank.text.paths_shown import quoted_path

BANK_FILE = "bank.toml"
DEPARTMENT_FILE = "department.toml"
ItemArgument = Annotated[
    str, typer.Argument(metavar="ITEM", help="The question's id, as in garden-12.")
]
ItemsArgument = Annotated[
    list[str],
    typer.Argument(metavar="ITEM", help="One or more ids of questions, as in garden-12."),
]
OtherBank = Annotated[
    Path | None,
    typer.Option("--bank", "-b", metavar="BANK", hidden=True, help="The same as BANK."),
]
"""Commands about whole banks name them first; whoever is used to ``--bank`` may write that."""
DEEPEST = 2
"""How far below a department's folder its banks are looked for."""

BankOption = Annotated[
    Path | None,
    typer.Option(
        "--bank", "-b", metavar="BANK", help="The bank's folder; the one here if left out."
    ),
]
BankArgument = Annotated[
    Path | None,
    typer.Argument(metavar="BANK", help="The bank's folder; the one here if left out."),
]

TopicOrStrand = Annotated[
    list[str] | None,
    typer.Option(
        "--topic",
        "-t",
        metavar="TOPIC",
        help="Only this topic, or strand.",
        autocompletion=complete_topic,
    ),
]
TopicsOption = Annotated[
    list[str] | None,
    typer.Option(
        "--topic",
        "-t",
        metavar="TOPIC",
        help="Only this topic; give it again for more.",
        autocompletion=complete_topic,
    ),
]
TierMeant = Annotated[str | None, typer.Option(metavar="TIER", help="support, core or challenge.")]
KindMeant = Annotated[
    str | None,
    typer.Option(metavar="KIND", help="Its task, such as solve or round; word-problem or picture."),
]
AuthorMeant = Annotated[str | None, typer.Option(metavar="CODE", help="Who wrote it.")]
StatesOption = Annotated[
    list[str] | None,
    typer.Option(
        metavar="STATE",
        help="proved, disproved, needs-a-person, signed, stale, unsigned or retired; "
        "given again, questions in all of them.",
    ),
]


def bank_folder(named: Path | None, *others: Path | None) -> Path:
    """Return the folder of the bank that is meant.

    That is the one named (with or without ``bank.toml`` at its end), or the one around the
    current folder, or the only one in the department's folder.

    Raises:
        ItembankError: no bank is meant, or more than one could be.
    """
    given = [bank for bank in (named, *others) if bank is not None]
    if len(given) > 1:
        raise ItembankError(
            f"Give one bank: {join_words([str(folder) for folder in given], 'or')}."
        )
    if given:
        return _named(given[0])
    here = Path.cwd()
    around = (here, *here.parents)
    for folder in around:
        if (folder / BANK_FILE).is_file():
            return _short(folder)
    home = next((folder for folder in around if (folder / DEPARTMENT_FILE).is_file()), here)
    found = banks_below(home) or _named_by_department()
    if len(found) == 1:
        return _short(found[0])
    if found:
        names = [str(_short(folder)) for folder in found]
        raise ItembankError(
            f"There are {len(found)} banks here: {join_words(names)}. "
            f"Name one, such as --bank {quoted_path(names[0])}."
        )
    raise ItembankError(
        "There is no bank here. Name its folder with --bank, or start one: "
        "itembank bank new questions"
    )


def banks_below(home: Path) -> list[Path]:
    """Return the banks in a folder and the folders in it, sorted."""
    patterns = ["/".join([*["*"] * depth, BANK_FILE]) for depth in range(1, DEEPEST + 1)]
    return sorted(file.parent for pattern in patterns for file in home.glob(pattern))


def _named_by_department() -> list[Path]:
    """Return the banks that the department around here draws its questions from."""
    from itembank.work.places import banks_of, nearby_department

    return list(banks_of(nearby_department(None, None)))


def _short(folder: Path) -> Path:
    """Return the folder as seen from here, which is shorter to read."""
    here = Path.cwd()
    return folder.relative_to(here) if folder.is_relative_to(here) else folder


def _named(folder: Path) -> Path:
    if folder.name == BANK_FILE:
        folder = folder.parent
    if (folder / BANK_FILE).is_file():
        return folder
    if not folder.exists():
        raise ItembankError(
            f"There is no folder {folder}. Start a bank there: "
            f"itembank bank new {quoted_path(folder)}"
        )
    if not folder.is_dir():
        raise ItembankError(f"{folder} is a file. A bank is a folder with {BANK_FILE} in it.")
    below = banks_below(folder)
    advice = (
        f"Did you mean {join_words([str(folder) for folder in below], 'or')}?"
        if below
        else f"Start a bank there: itembank bank new {quoted_path(folder)}"
    )
    raise ItembankError(f"{folder} is not a bank: there is no {BANK_FILE} in it. {advice}")
