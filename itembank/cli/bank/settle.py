"""``itembank bank settle``: of several versions of a question one is kept, or all of them."""

from __future__ import annotations

from typing import Annotated

import typer

from itembank.cli.bank.showing.bank_meant import BankOption, bank_folder
from itembank.cli.words.wrapped import say


def settle(
    item: Annotated[
        str, typer.Argument(metavar="ITEM", help="The version to keep, as in garden-12.3f2a.")
    ],
    both: Annotated[
        bool,
        typer.Option("--both", help="Keep the others too, under new ids, since they ask more."),
    ] = False,
    as_: Annotated[
        list[str] | None,
        typer.Option("--as", metavar="ID", help="The new id of the other; a free one if left out."),
    ] = None,
    bank: BankOption = None,
) -> None:
    """Keep one of the versions that a merge left, under the plain id; the others are retired.

    Their text and sign-offs stay in the bank, so merging again brings no version back. With
    --both the others stay in use, each under a new id, with their sign-offs: that is right where
    two people gave one id to different questions.

    \b
    Examples:
      itembank bank settle garden-12.3f2a
      itembank bank settle garden-12.3f2a --both
      itembank bank settle garden-12.3f2a --both --as garden-31
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.work.bank.merging import settle_question

    settled = settle_question(bank_folder(bank), item, both, as_ or ())
    if settled.renamed:
        others = [f"{old} as {new}" for old, new in settled.renamed]
        say(f"{item} is kept as {settled.base}, and {', '.join(others)}.")
    else:
        say(f"{item} is kept as {settled.base}. Retired: {', '.join(settled.retired)}.")
