"""What was typed, tidied, given to the line parser; what it cannot read is told in plain words."""

from __future__ import annotations

import re

from itembank.marking.typing.answer_setting import Setting
from itembank.notation import tree as t
from itembank.notation.clock import is_time
from itembank.notation.parse import ParseError, parse
from itembank.notation.units import UNITS
from itembank.text.late_pattern import late

RATIOS = ("sin", "cos", "tan")

LONG_WORD = late(r"[A-Za-z]{3,}")

_LETTER_DIGIT = late(r"(?<![A-Za-z])([a-z])(\d+)")

_WORD_TOLD = late(r"‘([A-Za-z]+)’")

_FOR_WRITERS = late(r"\{|is the name of a function")

_SHORT_WORD = late(r"(?<![A-Za-z])[A-Za-z]{2}(?![A-Za-z])")
_SHORT_NAMES = ("pi", "am", "pm", "or", "of")

_AMOUNTS_APART = late(r"(?<=[A-Za-z%°]) +(?=[-£]?\d)")

_COLUMN = late(r" \(column \d+\)| at column \d+")


class Unreadable(ValueError):
    """The answer cannot be read; the message says where reading stopped, in plain words."""


def parsed(plain: str, typed: str, asked: Setting) -> t.Node:
    """Return tidied text as a tree; `typed` is the text before it was tidied.

    Raises
    ------
    Unreadable
        It is no mathematics; the message says where reading stopped.
    """
    pence = "p" not in asked.letters
    for word in LONG_WORD.findall(plain):
        if word not in UNITS and not set(word) <= asked.letters and word not in RATIOS:
            if word == "and" and not asked.several:
                raise Unreadable("Only one answer is wanted: decide on one.")
            raise Unreadable(f"‘{word}’ cannot be read here: type the answer alone.")
    for word in _SHORT_WORD.findall(plain):
        if word not in UNITS and not set(word) & asked.letters and word not in _SHORT_NAMES:
            raise Unreadable(f"‘{word}’ cannot be read here: type the answer alone.")
    try:
        return parse(plain, pence=pence, letters=asked.letters, times=is_time(asked.key) or None)
    except ParseError as error:
        if isinstance(asked.key, t.Listing) and "," not in plain:
            # Some people part the items of a list by nothing but spaces.
            apart = _AMOUNTS_APART.sub(", ", plain)
            if apart.count(",") != len(asked.key.parts) - 1:
                apart = ", ".join(plain.split())
            try:
                return parse(apart, pence=pence, letters=asked.letters)
            except ParseError:
                pass
        if "x" in asked.letters and re.search(r"\d ?x ?\d", plain):
            raise Unreadable("x is a letter in this question: write × or * for times.") from error
        if (found := _LETTER_DIGIT.search(plain)) and found[1] in asked.letters:
            letter, n = found.groups()
            told = f"‘{letter}{n}’ can be read in two ways: write {letter}^{n} for a power, or "
            raise Unreadable(f"{told}{n}{letter} for {n} times {letter}.") from error
        # What a writer of questions would do about a word is nothing to a pupil.
        if (told_of := _WORD_TOLD.match(str(error))) and _FOR_WRITERS.search(str(error)):
            raise Unreadable(
                f"‘{told_of[1]}’ cannot be read here: type the answer alone."
            ) from error
        seen = "" if len(plain) == len(typed) else f" (The answer was read as ‘{plain}’.)"
        raise Unreadable(f"{_COLUMN.sub('', str(error))}{seen}") from error
