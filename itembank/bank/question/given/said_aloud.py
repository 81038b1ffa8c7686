"""Words in capitals, as in *How many are NOT red*, which say what they say in small letters.

Readers take a word with a capital for a name, and names change nothing. A word all of whose
letters are large is one that pupils are not to overlook, so that a prompt is read with it in small
letters as well (:func:`itembank.bank.question.asking.question_of`).
"""

from __future__ import annotations

import re
from dataclasses import replace

from itembank.bank.question.given.maths import Maths
from itembank.text.late_pattern import late

_ALOUD = late(r"(?<![^\W_])[A-Z]{2,}(?![^\W_])|(?<=[A-Z]{2} )A(?= [A-Z]{2})")
_SHORT = frozenset(("AN", "AS", "AT", "BY", "DO", "IF", "IN", "IS", "NO", "OF", "ON", "OR", "TO"))
_NAMING = tuple(map(frozenset, ("ABCDEFO", "JKLMNO", "PQRSO", "STUVW", "WXYZO")))
"""The letters that points are called by together; O is a centre, or the origin."""


def in_small_letters(maths: Maths) -> Maths:
    """Return what is printed with each word in capitals in small letters, but not points: ABCD.

    >>> from itembank.bank.model.fields import BankItem
    >>> from itembank.bank.question.given.maths import read_maths
    >>> prompt = "A side of ABCD is {3 cm}. How long is it NOT?"
    >>> item = BankItem(id="a-1", tier="core", prompt=prompt, key="3 cm")
    >>> in_small_letters(read_maths(item)).runs[2]
    '. How long is it not?'
    """
    runs = tuple(_ALOUD.sub(_lower, run) if isinstance(run, str) else run for run in maths.runs)
    return maths if runs == maths.runs else replace(maths, runs=runs)


def tells_no_names(maths: Maths) -> bool:
    """Tell whether all words are in capitals, so that nobody can tell which of them are names."""
    words = " ".join(run for run in maths.runs if isinstance(run, str))
    return _ALOUD.search(words) is not None and not re.search(r"[a-z]{2}", words)


def _lower(found: re.Match[str]) -> str:
    word = found[0]
    letters = frozenset(word)
    if word == "A":
        return "a"
    points = len(letters) == len(word) and any(letters <= some for some in _NAMING)
    if points or (len(word) == 2 and word not in _SHORT):
        return word
    before = found.string[: found.start()]
    # With nothing before it, not even a space, it begins the prompt: all other runs follow a sum.
    starts = not before or before.rstrip()[-1:] in (".", "?", "!", ":")
    return word.capitalize() if starts else word.lower()
