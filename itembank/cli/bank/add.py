"""``itembank bank add``: a question of one's own, by options or in a conversation."""

from __future__ import annotations

from typing import Annotated

import typer

from itembank.cli.bank.showing.bank_meant import BankOption, bank_folder
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
from itembank.cli.options.complete import complete_topic
from itembank.cli.words.ask import can_ask
from itembank.cli.words.wrapped import say
from itembank.errors import ItembankError


def add(
    topic: Annotated[
        str | None,
        typer.Option(
            "--topic",
            "-t",
            metavar="TOPIC",
            help="The topic, as in ratio.share.",
            autocompletion=complete_topic,
        ),
    ] = None,
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
    id: Annotated[
        str | None, typer.Option(metavar="ID", help="As in garden-12; one is made if left out.")
    ] = None,
    title: Annotated[
        str | None, typer.Option(metavar="TEXT", help="The title of a new topic of your own.")
    ] = None,
    anyway: Annotated[
        bool, typer.Option("--anyway", help="Save it though its key is disproved.")
    ] = False,
    bank: BankOption = None,
) -> None:
    """Add a question: at a terminal, what the options leave out is asked for.

    The question is shown as it will print, and its key is proved, before it is saved.
    Mathematics stands between braces, written in one line: {3/4 + 1/6}, {2(x + 3) = 14},
    {£60}, {2 : 3}, {x^2}, {√12}.

    \b
    Examples:
      itembank bank add
      itembank bank add -t ratio.share --tier core --task share \\
        --prompt "Share {£60} in the ratio {2 : 3}." --key "£24, £36" \\
        --working "Add the parts | 2 + 3 = 5" \\
        --mistake "£30, £30 | shares equally | What does the 3 tell you?"
      itembank bank add -t fractions.of-quantity --tier support \\
        --prompt "{3/4} of {60} plants are in flower. How many?" \\
        --model "3/4 × 60" --key 45
    """  # noqa: D301 - typer keeps the lines after \b as they are
    given = fields_of(locals())
    from itembank.cli.bank.showing.question_text import trial_text
    from itembank.files.faults import join_words
    from itembank.work.bank.trying import NewQuestion, save_trial, try_new

    folder = bank_folder(bank)
    new = NewQuestion(topic or "", given, title)
    if new.missing and can_ask():
        from itembank.cli.bank.writing.asked_for import add_by_asking

        add_by_asking(folder, new)
        return
    if new.missing:
        options = join_words([f"--{name}" for name in new.missing])
        raise ItembankError(
            f"{options} {'is' if len(new.missing) == 1 else 'are'} missing. "
            "At a terminal, ‘itembank bank add’ asks for them."
        )
    trial = with_bar(lambda bar: try_new(folder, new, bar))
    typer.echo(trial_text(trial))
    saved = save_trial(trial, anyway)
    say(f"Saved {saved.id} in {saved.path}.")
