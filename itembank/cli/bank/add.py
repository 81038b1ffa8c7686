"""``itembank bank add``: a question of one's own, by options or in a conversation."""

from __future__ import annotations

import datetime
from typing import TYPE_CHECKING, Annotated

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
from itembank.cli.bank.which import BankOption, bank_folder
from itembank.cli.options.complete import complete_topic
from itembank.cli.words.advice import told
from itembank.cli.words.ask import can_ask
from itembank.cli.words.wrapped import say
from itembank.errors import ItembankError

if TYPE_CHECKING:
    from pathlib import Path

    from itembank.bank.model.bank import Bank
    from itembank.bank.model.fields import BankItem
    from itembank.cli.bank.item_typed import Record

NEEDED = {"--topic": "topic", "--tier": "tier", "--prompt": "prompt", "--key": "key"}


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
    from itembank.bank.read.load import read_bank
    from itembank.cli.bank.item_typed import as_bank_item, in_order, next_id, the_topic
    from itembank.cli.bank.trial import (
        refuse_taken,
        refuse_wrong,
        the_author,
        try_item,
    )
    from itembank.files.faults import join_words

    folder = bank_folder(bank)
    found = read_bank(folder)
    record = record_of(
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
        id=id,
    )
    missing = [
        option
        for option, name in NEEDED.items()
        if not (topic if name == "topic" else record.get(name))
    ]
    if missing and can_ask():
        _add_by_asking(found, folder, record, topic or "", title or "")
        return
    if missing:
        raise ItembankError(
            f"{join_words(missing)} {'is' if len(missing) == 1 else 'are'} missing. "
            "At a terminal, ‘itembank bank add’ asks for them."
        )
    the_id, its_title = the_topic(found, topic or "", title)
    numbered = "id" not in record
    record.setdefault("id", next_id(found, the_id))
    record.setdefault("created", datetime.date.today())
    refuse_taken(found, record["id"])
    record["author"] = the_author(found, record.get("author"))
    item = as_bank_item(in_order(record))
    refuse_wrong(try_item(found, item, the_id), anyway)
    _save(folder, item, the_id, its_title, numbered)


def _add_by_asking(found: Bank, folder: Path, record: Record, topic: str, title: str) -> None:
    from itembank.cli.bank.conversation import Draft, converse, mend
    from itembank.cli.bank.item_typed import as_bank_item, in_order
    from itembank.cli.bank.trial import the_author, try_item
    from itembank.cli.words.ask import ask, one_of

    say(f"A new question for {found.title}.")
    say("What stands in [ ] is taken when you only press Enter. Ctrl-C stops; nothing is saved.")
    draft = Draft(found, record, topic, title)
    converse(draft)
    while True:
        draft.record.setdefault("created", datetime.date.today())
        say("")
        try:
            draft.record["author"] = the_author(found, draft.record.get("author"))
            item = as_bank_item(in_order(draft.record))
            sound = try_item(found, item, draft.topic)
        except ItembankError as error:
            say(told(error))
            answer = ask("Change it, or stop?", "change", one_of(("change", "stop")))
        else:
            usual = "yes" if sound else "change"
            answer = ask("Save it? yes, change or no", usual, one_of(("yes", "change", "no")))
        if answer in ("no", "stop"):
            say("It was not saved.")
            return
        if answer == "yes":
            try:
                _save(folder, item, draft.topic, draft.title)
                return
            except ItembankError as error:  # what was typed is not to be lost
                say(told(error))
                if ask("Change it, or stop?", "change", one_of(("change", "stop"))) == "stop":
                    say("It was not saved.")
                    return
        mend(draft)


def _save(folder: Path, item: BankItem, topic: str, title: str, numbered: bool = False) -> None:
    from itembank.bank.read.item_checks import is_generated
    from itembank.bank.write.edit import add_item

    own = None if is_generated(topic) else title
    file, item = add_item(folder, topic, item, title=own, numbered=numbered)
    say(f"Saved {item.id} in {file}.")
