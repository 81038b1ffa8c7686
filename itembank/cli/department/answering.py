"""How answers about a department are typed: a line, rows that are pasted, a file's name."""

from __future__ import annotations

import re
import select
import sys
from collections.abc import Callable, Iterable
from pathlib import Path

from itembank.cli.words.ask import Check, ask, note, one_of
from itembank.errors import ItembankError
from itembank.files.faults import decode_text
from itembank.files.typed_path import is_file, typed_path
from itembank.work.department.answered import Answers
from itembank.work.department.wrong import Wrong

Keep = Callable[[Answers], object]
"""Told what is answered by now, within a part too, so that nothing is lost."""


class GoBack(Exception):
    """The person wants the part before."""


class StopHere(Exception):
    """The person wants to go on another day."""


def answer(label: str, default: str = "", check: Check | None = None, needed: bool = False) -> str:
    """Ask for one line; ``back`` and ``stop`` are heard wherever one is asked.

    Raises:
        GoBack: the person typed ``back``.
        StopHere: the person typed ``stop``.
        KeyboardInterrupt: as :func:`~itembank.cli.words.ask.ask`.
    """

    def heard(typed: str) -> str:
        obey(typed)
        return check(typed) if check is not None else typed

    while not (typed := ask(label, default, heard)) and needed:
        note("This is needed. Type ‘stop’ to go on another day: nothing is lost.")
    return typed


def obey(typed: str) -> None:
    """Go back, or stop, if that is what was typed.

    Raises:
        GoBack: it is ``back``.
        StopHere: it is ``stop``.
    """
    word = typed.strip().casefold()
    if word == "back":
        raise GoBack
    if word in ("stop", "quit", "exit"):
        raise StopHere


def answer_rows(label: str) -> str:
    """Ask for one line, or for pasted rows, which an empty line ends; return them as they came.

    What names a file is what stands in that file.

    Raises:
        GoBack, StopHere, KeyboardInterrupt: as :func:`answer`.
    """
    first = answer_raw(f"{label}: ")
    obey(first)
    if file := file_named(first):
        try:
            return decode_text(file)
        except ItembankError as error:
            note(str(error))
            return answer_rows(label)
    # A single word is no row: what follows it was typed ahead.
    row = bool(re.search(r"[ ,;]", first.strip()))
    if "\t" not in first and "\n" not in first and not (row and _more_comes()):
        return first.strip()
    lines = [first]
    # A pasted row of empty cells holds tabs, so only a line of nothing ends the rows.
    while line := answer_raw("… "):
        lines.append(line)
    return "\n".join(lines)


def answer_raw(shown: str) -> str:
    """Return a line as it was typed, spaces and tabs too.

    Raises:
        KeyboardInterrupt: the person ends the input (Ctrl-D) or stops the command (Ctrl-C).
    """
    try:
        return input(shown)
    except EOFError:
        raise KeyboardInterrupt from None


def _more_comes() -> bool:
    """Whether more lines came together with the one before, as they do where rows are pasted."""
    try:
        return bool(select.select([sys.stdin], [], [], 0.05)[0])
    except (OSError, ValueError):  # Windows knows this of nothing but networks
        return False


def file_named(typed: str) -> Path | None:
    """Return the file that is named, or None where what was typed names none.

    A file dropped on the window comes in quotation marks, or with a space after it.
    """
    name = typed.strip().strip("'\"").strip()
    if not name or "\t" in typed or "\n" in name:
        return None
    path = typed_path(name)
    return path if is_file(path) else None


def tell_wrong(wrong: Iterable[Wrong], most: int = 8) -> None:
    """Say what is wrong, the first of it where it is much."""
    told = list(dict.fromkeys(map(str, wrong)))
    for line in told[:most]:
        note(line)
    if len(told) > most:
        note(f"… and {len(told) - most} more.")


def yes(label: str, default: bool = True) -> bool:
    """Ask a question that is answered by yes or no."""
    return answer(label, "yes" if default else "no", one_of(("yes", "no"))) == "yes"


def show(lines: Iterable[str]) -> None:
    """Tell lines one under the other."""
    for line in lines:
        note(line)
