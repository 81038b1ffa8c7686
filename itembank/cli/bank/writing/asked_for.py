"""Asks for a new question, shows what comes of it, and saves it once that is wanted."""

from __future__ import annotations

from pathlib import Path

import typer

from itembank.cli.bank.showing.bank_screen import with_bar
from itembank.cli.bank.showing.question_text import trial_text
from itembank.cli.bank.writing.conversation import Draft, converse, mend
from itembank.cli.words.ask import ask, one_of
from itembank.cli.words.what_to_type import told
from itembank.cli.words.wrapped import say
from itembank.errors import ItembankError
from itembank.work.bank.bank_facts import bank_facts
from itembank.work.bank.trying import NewQuestion, save_trial, try_new


def add_by_asking(folder: Path, new: NewQuestion) -> None:
    """Ask for every part of a question, show what comes of it, and save it or not."""
    bank = with_bar(lambda bar: bank_facts(folder, bar))
    say(f"A new question for {bank.title}.")
    say("What stands in [ ] is taken when you only press Enter. Ctrl-C stops; nothing is saved.")
    draft = Draft(bank, dict(new.fields), new.topic, new.title or "")
    converse(draft)
    while not _settled(draft):
        mend(draft)


def _settled(draft: Draft) -> bool:
    """Try a question, and save it if that is wanted; return whether nothing is left to do."""
    new = NewQuestion(draft.topic, draft.record, draft.title)
    say("")
    try:
        trial = with_bar(lambda bar: try_new(draft.bank.folder, new, bar))
        typer.echo(trial_text(trial))
        usual = "yes" if trial.sound else "change"
        answer = ask("Save it? yes, change or no", usual, one_of(("yes", "change", "no")))
        if answer == "yes":
            saved = save_trial(trial, anyway=True)  # what its proof came to was just shown
            say(f"Saved {saved.id} in {saved.path}.")
            return True
    except ItembankError as error:  # what was typed is not to be lost
        say(told(error))
        answer = ask("Change it, or stop?", "change", one_of(("change", "stop")))
    if answer == "change":
        return False
    say("It was not saved.")
    return True
