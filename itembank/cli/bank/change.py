"""``itembank bank change``: a question mended, and proved again before it is saved."""

from __future__ import annotations

from typing import Annotated

import typer

from itembank.cli.bank.showing.bank_meant import BankOption, ItemArgument, bank_folder
from itembank.cli.bank.showing.bank_screen import with_bar
from itembank.cli.bank.writing.options import (
    Accept,
    Author,
    Choice,
    Choose,
    Constant,
    FindOption,
    Form,
    Key,
    Licence,
    Marks,
    Mistake,
    Model,
    NotNeeded,
    Prompt,
    Source,
    Task,
    Tier,
    Working,
    fields_of,
)
from itembank.cli.words.wrapped import say
from itembank.errors import ItembankError


def change(
    item: ItemArgument,
    tier: Tier = None,
    prompt: Prompt = None,
    key: Key = None,
    task: Task = None,
    form: Form = None,
    marks: Marks = None,
    model: Model = None,
    find: FindOption = None,
    constant: Constant = None,
    not_needed: NotNeeded = None,
    choice: Choice = None,
    choose: Choose = None,
    working: Working = None,
    mistake: Mistake = None,
    accept: Accept = None,
    author: Author = None,
    licence: Licence = None,
    source: Source = None,
    clear: Annotated[
        list[str] | None,
        typer.Option(metavar="PART", help="Take this part out, such as form or working."),
    ] = None,
    anyway: Annotated[
        bool, typer.Option("--anyway", help="Save it though its key is disproved.")
    ] = False,
    bank: BankOption = None,
) -> None:
    """Change parts of a question; the rest of its file stays as it is, comments too.

    Lines of working, of the model and likely mistakes are given anew, all of them. A sign-off
    becomes stale. The files can be changed in an editor just as well.

    \b
    Examples:
      itembank bank change garden-1 --key 45
      itembank bank change garden-1 --tier core --clear form
    """  # noqa: D301 - typer keeps the lines after \b as they are
    given = fields_of(locals())
    from itembank.cli.bank.showing.question_text import trial_text
    from itembank.work.bank.trying import refuse_unknown_fields, save_trial, try_change

    fields = {**given, **dict.fromkeys(clear or ())}
    refuse_unknown_fields(fields)
    if not fields:
        raise ItembankError("What is to change? Give an option such as --key 45.")
    folder = bank_folder(bank)
    trial = with_bar(lambda bar: try_change(folder, item, fields, report=bar))
    typer.echo(trial_text(trial))
    saved = save_trial(trial, anyway)
    say(f"Saved {saved.id} in {saved.path}.")
