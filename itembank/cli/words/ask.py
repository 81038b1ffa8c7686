"""Asking a person a question at the terminal, one line at a time."""

from __future__ import annotations

import contextlib
import sys
from collections.abc import Callable, Sequence

import typer

from itembank.cli.words.unseen import refuse_unseen
from itembank.cli.words.what_to_type import told
from itembank.cli.words.wrapped import paragraph
from itembank.errors import ItembankError
from itembank.text.characters import visible

Check = Callable[[str], str]
"""Takes what was typed and returns it as it is meant; raises ItembankError to ask again."""


def can_ask() -> bool:
    """Tell whether a person sits at the other end; if so, arrow keys move within their line."""
    with contextlib.suppress(ImportError):  # not every system has it
        import readline  # noqa: F401  # input() uses it once it is there
    return sys.stdin.isatty() and sys.stdout.isatty()


def ask(label: str, default: str = "", check: Check | None = None, needed: bool = False) -> str:
    """Ask until the answer is good, and return it; an empty line stands for `default`.

    Raises:
        KeyboardInterrupt: the person ends the input (Ctrl-D) or stops the command (Ctrl-C).
    """
    shown = visible(f"{label} [{default}]: " if default else f"{label}: ")
    while True:
        try:
            typed = input(shown).strip() or default
        except EOFError:
            raise KeyboardInterrupt from None
        if not typed:
            if not needed:
                return ""
            note("This is needed. Ctrl-C stops, and saves nothing.")
            continue
        try:
            refuse_unseen([typed])
            return check(typed) if check is not None else typed
        except ItembankError as error:
            note(told(error))


def note(text: str) -> None:
    """Say something about an answer: set in, so that the questions stand out."""
    for line in text.splitlines():
        typer.echo(paragraph("  ", line))


def ask_lines(label: str, check: Check | None = None) -> list[str]:
    """Ask for lines until an empty one, and return them."""
    lines: list[str] = []
    while line := ask(f"{label} {len(lines) + 1}", check=check):
        lines.append(line)
    return lines


def one_of(words: Sequence[str]) -> Check:
    """Return a check that takes one of `words`, or enough of its beginning to tell it."""

    def check(typed: str) -> str:
        from itembank.files.faults import join_words

        lower = typed.lower()
        fits = [word for word in words if word == lower] or [
            word for word in words if word.startswith(lower)
        ]
        if len(fits) != 1:
            raise ItembankError(f"Write {join_words(list(words), 'or')}.")
        return fits[0]

    return check


def yes(label: str, default: bool = True) -> bool:
    """Ask a question that is answered by yes or no."""
    return ask(label, "yes" if default else "no", one_of(("yes", "no"))) == "yes"
