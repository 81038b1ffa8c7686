"""Where a line may not end: the one rule for every page.

A reader takes some things in at one glance, and a line that ends within them makes the reader go
back: a number and what it counts (36 | members), a name and its letter (Pack | A), a fraction
and its *of*, a rate, a price, and a last line that is one short word. The space there is made
one that does not break. What is too wide for any line is broken all the same.

These are printers' rules (common practice, no source; Knuth gives most of them in *The TeXbook*,
chapter 14, from memory).

>>> held("There are 36 members in all.").replace(NO_BREAK, "~")
'There are 36~members in~all.'
>>> held("Write a ratio in the form 1 : n or n : 1").replace(NO_BREAK, "~")
'Write a ratio in the form 1~:~n or n~:~1'
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from itembank.notation.units import UNITS
from itembank.packs.data.pack_item import Maths

NO_BREAK = "\u00a0"
SHORT = 8
"""A last line of one word with fewer signs than this is not left alone."""
MOST_HELD = 24
"""Most signs held together for the sake of a last word: with more, lines grow ragged."""

_UNIT_NAMES = "|".join(sorted({re.escape(u.partition("^")[0]) for u in UNITS}, key=len)[::-1])
_UNIT = re.compile(rf"(?:°C|{_UNIT_NAMES}|pence|pounds?|marks?)(?![A-Za-z])")
_NUMBER = re.compile(rf"[(£€$]?[−-]?\d[\d.,{NO_BREAK}\u2009]*%?")
_COUNTED = re.compile(r"[a-z][a-z’'-]*[a-z]")
_LETTER = re.compile(r"[A-Z][:.,;?!)]*")
_NAMED = re.compile(r"[A-Z]:")
_SIDE = re.compile(r"[A-Z]{1,3}[.,;?!)]*")
_ONE_SIGN = re.compile(r"<math[^>]*>(?:<mrow>)?<mi[^>]*>[^<]</mi>(?:</mrow>)?</math>")
_NOT_COUNTED = re.compile(
    "a|about|after|an|and|are|as|at|be|before|between|but|by|can|do|does|each|for|from|had|has"
    "|have|how|if|in|into|is|it|its|less|more|of|on|or|out|over|parallel|per|perpendicular|than"
    "|that|the|them|then|there|these|they|this|through|to|under|up|was|were|what|when|where|which"
    "|who|with"
)
"""Words that a number before them does not count."""
_AT_ONCE = frozenset(
    {("True", "or"), ("or", "false?"), ("smallest", "first:"), ("largest", "first:")}
)
"""Words that are taken in at one glance: what is asked, in hundreds of questions."""
_OPENING = frozenset({"A", "An", "I"})
"""Words that open a sentence and look lost at the end of a line."""
_BREAKS = " \n\t"
_PIECES = re.compile(f"[{_BREAKS}]+|[^{_BREAKS}]+")
_ENDS = (".", "?", "!", ";", ":", ",")


class _Token(NamedTuple):
    """What stands between two spaces: its signs, and the formula it begins and ends with."""

    text: str
    first: Maths | None
    last: Maths | None

    @property
    def closed(self) -> bool:
        """Whether a clause ends with it."""
        return self.text.endswith(_ENDS)


class _Gap(NamedTuple):
    """A space: the number of its run and its place there."""

    run: int
    at: int


def held(text: str) -> str:
    """Return one run of words with its spaces made fast where a line may not end."""
    return held_runs([text])[0]


def held_runs(runs: Sequence[str | Maths]) -> list[str]:
    """Return the words of each run, with the spaces made fast where a line may not end.

    A formula comes back as "". Words in bold come as words.
    """
    tokens, gaps = _tokens(runs)
    fast = {gap for gap, (a, b) in zip(gaps, pairwise(tokens), strict=True) if _one_thing(a, b)}
    out = ["" if isinstance(run, Maths) else run for run in runs]
    # Each row that is given a line of its own has a last word, not the last of them alone.
    ends = [
        place
        for place, (run, at) in enumerate(gaps)
        if "\n" in out[run] and "\n" in _spaces(out[run], at)
    ]
    for last in [*ends, len(tokens) - 1]:
        word = tokens[last].text if last > 0 else ""
        # What is held already, in what was given, is more than one word.
        if word and last - 1 not in ends and NO_BREAK not in word and is_short(word):
            before = len(tokens[last - 1].text) if gaps[last - 1] not in fast else 0
            if before + len(word) <= MOST_HELD:
                fast.add(gaps[last - 1])
    fast |= _facts(tokens, gaps)
    for run, at in fast:
        spaces = _spaces(out[run], at)
        if "\n" not in spaces:
            fixed = spaces.replace(" ", NO_BREAK)
            out[run] = out[run][:at] + fixed + out[run][at + len(spaces) :]
    return out


def _spaces(text: str, at: int) -> str:
    """Return all the spaces from one on; any of them would let a line end."""
    found = _PIECES.match(text, at)
    return found[0] if found else ""


def _tokens(runs: Sequence[str | Maths]) -> tuple[list[_Token], list[_Gap]]:
    """Return what stands between spaces, and the first of the spaces after each but the last."""
    tokens: list[_Token] = []
    gaps: list[_Gap] = []
    joined = False
    for number, run in enumerate(runs):
        if isinstance(run, Maths):
            pieces = [(run.line, 0)]
        else:
            pieces = [(found[0], found.start()) for found in _PIECES.finditer(run)]
        for text, at in pieces:
            maths = run if isinstance(run, Maths) else None
            if maths is None and text[0] in _BREAKS:
                if joined:
                    gaps.append(_Gap(number, at))
                joined = False
            elif joined:
                had = tokens[-1]
                tokens[-1] = _Token(had.text + text, had.first, maths)
            else:
                tokens.append(_Token(text, maths, maths))
                joined = True
    return tokens, gaps[: max(0, len(tokens) - 1)]


def is_short(word: str) -> bool:
    """Tell whether a word is too short to be a last line.

    >>> is_short("why."), is_short("together?")
    (True, False)
    """
    return len(word.rstrip(".?!)]")) < SHORT


def _one_thing(a: _Token, b: _Token) -> bool:
    """Tell whether a line may not end between two neighbours."""
    # A clause ends here, and a line may: the eye rests anyway.
    if a.closed:
        return False
    if a.text in _OPENING or (a.text, b.text) in _AT_ONCE:
        return True
    # What ends with a letter is no number, as most words are: it may be a name.
    if a.last is None and a.text[-1:].isalpha():
        if b.first is not None:
            return bool(_ONE_SIGN.fullmatch(b.first.mathml))
        return "A" <= b.text[:1] <= "Z" and bool(_LETTER.fullmatch(b.text))
    number = bool(_NUMBER.fullmatch(a.text))
    if number and _UNIT.match(b.text):
        return True
    # A small word after a number (36 in, 4 of) is not what it counts.
    if number and b.first is None:
        word = b.text.rstrip(".?!,;:)")
        return bool(_COUNTED.fullmatch(word)) and not _NOT_COUNTED.fullmatch(word)
    return a.last is not None and "<mfrac" in a.last.mathml and b.text == "of"


def _facts(tokens: Sequence[_Token], gaps: Sequence[_Gap]) -> set[_Gap]:
    """Return the spaces within a rate (£1 = €1.10), a price (6 for £4.26) or a label's amount.

    What a side is (AB = 5 cm), a sum of sides (AB + PQ), and a ratio in words (1 : n) are read at
    one glance too.
    """
    fast = set()
    for place, (a, b) in enumerate(pairwise(tokens)):
        after = tokens[place + 2] if place + 2 < len(tokens) else None
        if a.last is not None and after is not None and after.first is not None:
            price = b.text == "for" and after.text.startswith("£")
            if b.text == "=" or price:
                fast |= {gaps[place], gaps[place + 1]}
        if b.text == ":" and after is not None:
            fast |= {gaps[place], gaps[place + 1]}
        if not "A" <= a.text[:1] <= "Z":
            continue  # neither a side nor a label
        if after is not None and not a.closed and _SIDE.fullmatch(a.text):
            told = b.text == "=" and after.first is not None
            added = b.text == "+" and _SIDE.fullmatch(after.text)
            if told or added:
                fast |= {gaps[place], gaps[place + 1]}
        if b.first is not None and _NAMED.fullmatch(a.text):
            fast.add(gaps[place])
    return fast
