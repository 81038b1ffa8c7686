"""Asking, once, by which initials a person is shown to colleagues who share a bank."""

from __future__ import annotations

from itembank.cli.words.ask import ask, can_ask, note
from itembank.cli.words.wrapped import say
from itembank.errors import ItembankError
from itembank.people.colleague import (
    A_COLLEAGUE,
    VARIABLE,
    check_initials,
    chosen_initials,
    keep_initials,
)


def ask_once() -> None:
    """Ask for initials where a person sits at the terminal and nobody has asked them yet."""
    if chosen_initials() is not None or not can_ask():
        return
    say(
        "While you save a bank, colleagues who share its folder are told who is saving. "
        f"They see your initials, or ‘{A_COLLEAGUE}’. You are asked this once."
    )
    initials = ask("Your initials, such as HT; Enter for none", check=check_initials)
    try:
        note(f"Kept in {keep_initials(initials)}.")
    except ItembankError as error:
        note(f"{error} To state them yourself, set the environment variable {VARIABLE}.")
