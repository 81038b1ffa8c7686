"""A sign between two printed numbers, typed alone or said in words: =, *less*, *0.7 is bigger*."""

from __future__ import annotations

import re

from itembank.marking.typing.answer_setting import Setting
from itembank.marking.typing.parsed_answer import Unreadable, parsed
from itembank.marking.typing.spelling import respell
from itembank.marking.worth.same_worth import same
from itembank.notation import tree as t
from itembank.text.late_pattern import late

_STOPS = " .;,!"

_SIGN_WORDS: tuple[tuple[t.RelationOp, re.Pattern[str]], ...] = tuple(
    (op, re.compile(rf"{op}|(?:is )?(?:the )?(?:{words})(?: (?:than|to))?"))  # type: ignore[misc]
    for op, words in (
        ("=", r"same|equals?|(?:they|both)(?: are|'re|’re)? (?:the )?(?:same|equal)"),
        ("<", "less|smaller|smallest|lower"),
        (">", "more|greater|greatest|bigger|biggest|larger|largest|higher"),
    )
)

_IS = late(r"(?P<it>[\d(].*?) (?:is |= ?)?(?P<word>(?:the )?[a-z]+)")


def sign_typed(plain: str, asked: Setting) -> t.Relation | None:
    """Return the relation that a sign alone, or its word, says of the two numbers.

    ``=``, *equal*, *less* and *0.7 is bigger* are read; anything else is read as mathematics.
    """
    match asked.key:
        case t.Relation(left, ((_, right),)):
            pass
        case _:
            return None
    said = plain.casefold().strip(_STOPS)
    for op, words in _SIGN_WORDS:
        if words.fullmatch(said):
            return t.Relation(left, ((op, right),))
        found = _IS.fullmatch(said)
        if found and op != "=" and words.fullmatch(found["word"]):
            try:
                named = parsed(respell(found["it"]), found["it"], asked)
            except Unreadable:
                return None
            for side, other in ((left, right), (right, left)):
                if same(named, side):
                    return t.Relation(side, ((op, other),))
    return None
