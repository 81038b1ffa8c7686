"""The number of the question that people type before an answer: *a) 7*, *Q3: 7*, *1) 7*.

It is taken off only where it can be nothing else: a bracket that closes and was never opened, a
letter that the question has not, a number with a stop before a letter or a sum of money. A
number, a stop, a space and digits may be a decimal with a slip in it, and stay.
"""

from __future__ import annotations

import re

from itembank.marking.typing.answer_setting import Setting
from itembank.marking.worth.marked_by_kind import marking_of
from itembank.notation import tree as t
from itembank.text.late_pattern import late

_PART = late(r"(?P<open>\()?(?P<name>[a-hA-H]|i{1,3}|iv|vi{0,3}|\d{1,2})\) ?(?=\S)")
_NUMBERED = late(r"\d{1,2}\. (?=[A-Za-z] ?[=<>≤≥]|£)")
_QUESTION = late(r"(?:q(?:u|uestion)?)\.? ?\d{1,2} ?(?:\(?[a-h]\))?(?: ?[.):=-])? ?(?=\S)", re.I)
_ANSWER = late(r"[Aa] ?(?:: ?|\. )(?=\S)")

TWO_WAYS = "may be the number of the question, or part of the answer: type the answer alone."
_LINE = late(r"[\"“]?(?:line|step)(?![A-Za-z])", re.I)
_EITHER_WAY = late(r"(\d{1,2}\.(?= )|\([a-h]\)) ?-?[\d£].*", re.I)


def without_part_label(answer: str, asked: Setting) -> str:
    """Return an answer without the number of its question before it.

    >>> setting = Setting(t.Int(7))
    >>> [without_part_label(text, setting) for text in ("a) 7", "(b) 7", "1) 7", "Q3: 7", "A: 7")]
    ['7', '7', '7', '7', '7']
    >>> [without_part_label(text, setting) for text in ("1. £7", "1. 7", "(2) 7", "2x) 7")]
    ['£7', '1. 7', '(2) 7', '2x) 7']
    >>> without_part_label("(a) 7", Setting(t.Int(7), frozenset("a")))
    '(a) 7'
    """
    how, letters = marking_of(asked.ask), {letter.casefold() for letter in asked.letters}
    if how.reads == "line":
        # 1) 3/4 is what the first line should be.
        found = _PART.match(answer)
        named = found is not None and _LINE.match(answer, found.end()) is not None
        return answer[found.end() :] if found and named else answer
    if isinstance(asked.key, t.Label) or how.reads:
        names = () if asked.ask is None else how.names(asked.ask)
        found = _PART.match(answer) or _QUESTION.match(answer)
        rest = answer[found.end() :].strip(" .") if found else ""
        # b) 3/5 may be the card B, and f) true false; a) D can only be the answer to part a.
        if how.reads == "truth" and answer[:2].casefold().strip("(").startswith("f"):
            return answer
        alike = rest if len(rest) == 1 else rest.casefold()
        return rest if alike in {n if len(n) == 1 else n.casefold() for n in names} else answer
    if found := _PART.match(answer):
        rest = answer[found.end() :]
        name = found["name"].casefold()
        product = bool(found["open"]) and (name in letters or name.isdecimal())
        return answer if product or rest.count("(") != rest.count(")") else rest
    if found := _NUMBERED.match(answer):
        return answer[found.end() :]
    if "q" not in letters and (found := _QUESTION.match(answer)):
        return answer[found.end() :]
    parts = isinstance(asked.key, t.Listing | t.Either | t.Ratio)
    if not parts and "a" not in letters and (found := _ANSWER.match(answer)):
        return answer[found.end() :]
    return answer


def either_way(plain: str, asked: Setting) -> str:
    """Return what is said of a number or letter that may be a part of the answer, or ``""``.

    >>> either_way("1. 5", Setting(t.Int(5))), either_way("1.5", Setting(t.Int(5)))
    ('1. may be the number of the question, or part of the answer: type the answer alone.', '')
    >>> either_way("(a) 5", Setting(t.Int(5), frozenset("a")))[:12]
    '(a) may be t'
    """
    found = None if t.symbols(asked.key) else _EITHER_WAY.fullmatch(plain)
    return f"{found[1]} {TWO_WAYS}" if found else ""
