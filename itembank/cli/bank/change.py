"""``itembank bank change``: a question mended, and proved again before it is saved."""

from __future__ import annotations

from typing import Annotated

import typer

from itembank.cli.bank.options import (
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
    record_of,
)
from itembank.cli.bank.which import BankOption, ItemArgument, bank_folder
from itembank.cli.words.wrapped import say
from itembank.errors import ItembankError
from itembank.files.fields.plain import stated


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
    from itembank.bank.read.load import read_bank
    from itembank.bank.write.edit import change_item
    from itembank.cli.bank.item_typed import ORDER, as_bank_item
    from itembank.cli.bank.trial import refuse_wrong, the_author, try_item
    from itembank.files.faults import join_words, nearest

    fields = record_of(
        tier=tier,
        prompt=prompt,
        key=key,
        task=task,
        form=form,
        marks=marks,
        model=model,
        find=find,
        constant=constant,
        not_needed=not_needed,
        choice=choice,
        choose=choose,
        working=working,
        mistake=mistake,
        accept=accept,
        author=author,
        licence=licence,
        source=source,
    )
    for part in clear or ():
        if part not in ORDER or part == "id":
            near = nearest(part, ORDER, 1)
            advice = f"Did you mean {near[0]}?" if near else f"It is {join_words(ORDER[1:], 'or')}."
            raise ItembankError(f"A question has no part ‘{part}’. {advice}")
        fields[part] = None
    if not fields:
        raise ItembankError("What is to change? Give an option such as --key 45.")
    found = read_bank(bank_folder(bank))
    entry = found.find(item)
    if author is not None:
        fields["author"] = the_author(found, author)
    before = stated(entry.item)
    after = {name: value for name, value in {**before, **fields}.items() if value is not None}
    refuse_wrong(try_item(found, as_bank_item(after), entry.topic), anyway)
    change_item(entry.path, entry.item.id, fields)
    say(f"Saved {entry.item.id} in {entry.path}.")
