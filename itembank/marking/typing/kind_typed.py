"""Answers about statements, cards and wrong lines, as pupils type them.

*t*, *False because …*, *AQ BP CR*, *line 2, it should be x = 4*.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from itembank.text.late_pattern import late

NO_TRUTH = "Answer true or false."
NO_PAIRS = "Give a partner for each card, its letter beside the card’s."
NO_LINE = "Give the number of the line first, and then the right answer."

_TRUTH = late(
    r"[(\[]?(?:(?:it|this|that|the statement|answer)(?:['’]s| is|:)? )?(?:is )?(?:always )?"
    r"(?:(?P<false>false|f|no|n|wrong|incorrect|untrue"
    r"|(?:not|isn['’]?t) (?:true|right|correct|always true)|✗|✘)"
    r"(?!\w)(?![ ,.?!;:/)-]*(?:true|yes)\b)"
    r"|(?P<true>true|t|yes|y|right|correct|✓|✔)"
    r"(?!\w)(?![ ,.?!;:/)-]*(?:false|no)\b))"
    r"(?! ?(?:or|and|/) ?(?:true|false|t|f|yes|no)\b)"
    r"(?! (?:is |was )?(?:wrong|incorrect|not)\b)(?!['’]| ?[+×*÷^/<>] ?[\d.]|-\d| - [\d.]+$)",
    re.I,
)
_CARD = late(
    r"(?<![A-Za-z])([A-Z])(?![A-Za-z])"
    r"|(?<![A-Za-z])(?!(?:to|is|so|go)(?![A-Za-z]))([A-Z])([A-Z])(?![A-Za-z])",
    re.I,
)
_LINE = late(
    r"(?:it is |it's |the mistake is |(?:in|on|at) |the )*"
    r"(?:(?:line|step|l(?=\d))(?: number| no\.?)? ?)?(?:(?P<n>[1-9])(?:st|nd|rd|th)?|"
    r"(?P<word>first|second|third|fourth|one|two|three|four))(?: (?:line|step))?(?![\w/%])(?!\.\d)"
    r"[\"'”’)]?[–-]?(?: is wrong| has (?:the|a) mistake)?(?: ?[–-](?= ))?[ ,;:.]*"
    r"(?:(?:and|so|it|the (?:right |correct )?(?:answer|result)|should(?: be| say)?|is|answer|"
    r"instead)[ :,]+)*(?P<rest>.*)",
    re.I,
)
_LINE_LAST = late(
    r"(?P<rest>.+?)[ ,;:.]+(?:and |in |on |at |the )*(?:line|step) ?"
    r"(?:(?P<n>[1-9])|(?P<word>one|two|three|four))",
    re.I,
)
_SAYS_LINE = late(r"(?<![A-Za-z])(?:line|step)(?![A-Za-z])", re.I)
_NOT_A_PAIR = late(r"\b(?:not|isn['’]?t|no|never)\b", re.I)
_NUMBERS = {
    **dict(zip(("first", "second", "third", "fourth"), "1234", strict=True)),
    **dict(zip(("one", "two", "three", "four"), "1234", strict=True)),
}


def truth_typed(plain: str) -> str:
    """Return ``true`` or ``false`` for an answer that begins with one of them, else ``""``.

    >>> [truth_typed(text) for text in ("T", "not true", "False because 1/2 is 2/4, not 2/3")]
    ['true', 'false', 'false']
    >>> [truth_typed(text) for text in ("true or false", "true, no false", "true? false", "maybe")]
    ['', '', '', '']
    >>> truth_typed("true is wrong"), truth_typed("true + 1"), truth_typed("it isn't true")
    ('', '', 'false')
    """
    found = _TRUTH.match(plain)
    return "" if found is None else "false" if found["false"] else "true"


def card_typed(plain: str, cards: Mapping[str, str]) -> str:
    """Return the letter of the card whose own line was typed, or ``""``.

    >>> card_typed("3 / 5", {"A": "1/2", "B": "3/5"})
    'B'
    """
    close = "".join(plain.split())
    return next((name for name, line in cards.items() if "".join(line.split()) == close), "")


def pairs_typed(plain: str, cards: Sequence[str], partners: Sequence[str]) -> tuple[str, ...]:
    """Return the partner of each card, in order; empty where not each card has one of its own.

    Only the partners may be given, in the order of the cards.

    >>> [pairs_typed(text, "ABC", "PQRS") for text in ("a-q b-p c-s", "AQ, BP, CS", "Q P S")]
    [('Q', 'P', 'S'), ('Q', 'P', 'S'), ('Q', 'P', 'S')]
    >>> pairs_typed("qps", "ABC", "PQRS"), pairs_typed("AQBPCS", "ABC", "PQRS")
    (('Q', 'P', 'S'), ('Q', 'P', 'S'))
    >>> pairs_typed("A to Q, B to P and C is S", "ABC", "PQRS")
    ('Q', 'P', 'S')
    >>> pairs_typed("A with Q, B with Q, C with P", "ABC", "PQRS"), pairs_typed("AQ", "AB", "PQ")
    ((), ())
    """
    if _NOT_A_PAIR.search(plain):
        return ()
    letters = [
        letter.upper() for found in _CARD.finditer(plain) for letter in found.groups() if letter
    ]
    close = "".join(plain.split()).upper()
    # RPQ and ARBPCQ, all close together.
    if len(close) in (len(cards), 2 * len(cards)) and set(close) <= {*cards, *partners}:
        letters = list(close)
    if len(letters) == len(cards) and set(letters) <= set(partners):
        chosen = dict(zip(cards, letters, strict=True))
    else:
        chosen = {}
        for first, other in zip(letters[::2], letters[1::2], strict=False):
            card, partner = (first, other) if first in cards else (other, first)
            if card in chosen or card not in cards or partner not in partners:
                return ()
            chosen[card] = partner
        if len(letters) != 2 * len(cards):
            return ()
    if set(chosen) != set(cards) or len(set(chosen.values())) != len(cards):
        return ()
    return tuple(chosen[card] for card in cards)


def line_typed(plain: str) -> tuple[str, str]:
    """Return the number of a line and what is said after it; both empty where none comes first.

    >>> [line_typed(text) for text in ("2, 3/4", "Line 2 should be x = 4", "second line: 3/4")]
    [('2', '3/4'), ('2', 'x = 4'), ('2', '3/4')]
    >>> line_typed("line 2, -3"), line_typed("2 - 3/4"), line_typed("2-3/4")  # a minus, and dashes
    (('2', '-3'), ('2', '3/4'), ('2', '3/4'))
    >>> line_typed("line 1, - 4"), line_typed("line 1: - 4"), line_typed("line 1 - 4")
    (('1', '- 4'), ('1', '- 4'), ('1', '4'))
    >>> line_typed('line 2", 3/4')  # the name in quotation marks, as a stored key has it
    ('2', '3/4')
    >>> line_typed("2. 3/4"), line_typed("L2, 3/4"), line_typed("3/4 in line 2")
    (('2', '3/4'), ('2', '3/4'), ('2', '3/4'))
    >>> line_typed("1, line 2"), line_typed("4(8x + 9), line 2"), line_typed("the error is line 2")
    (('2', '1'), ('2', '4(8x + 9)'), ('2', 'the error is'))
    >>> line_typed("2 3/4"), line_typed("3/4"), line_typed("line 2")
    (('2', '3/4'), ('', ''), ('2', ''))
    """
    found, last = _LINE.fullmatch(plain), _LINE_LAST.fullmatch(plain)
    # In 1, line 2 and 4(8x + 9), line 2 no line is named before the last.
    if last and len(_SAYS_LINE.findall(plain)) == 1 and (found is None or found["rest"]):
        found = last
    if found is None:
        return "", ""
    number = found["n"] or _NUMBERS[found["word"].lower()]
    return number, found["rest"].strip()
