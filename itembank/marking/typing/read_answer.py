"""What people type for an answer, brought to what the line parser reads.

The question settles what is ambiguous in what was typed: a comma parts the items of a list
but groups the digits of a number; *to* stands in a ratio for the colon; x between two numbers
is a times sign where the question has no letter x; p is a letter where the question uses it.

Limits, so that no text costs much: :data:`LONGEST` characters are read at all, within the
limits of :mod:`itembank.notation.tree.line_signs` (40 brackets deep, 200 digits); what is read
is at most a few hundred nodes. Text past a limit is refused before it is looked at.
"""

from __future__ import annotations

import re
from dataclasses import replace

from itembank.items.asks import Ask
from itembank.items.asks.faulty_line import line_name
from itembank.marking.typing.answer_setting import Setting
from itembank.marking.typing.choice_typed import SIGN_BESIDE, named, sign_beside
from itembank.marking.typing.kind_typed import (
    NO_LINE,
    NO_PAIRS,
    NO_TRUTH,
    card_typed,
    line_typed,
    pairs_typed,
    truth_typed,
)
from itembank.marking.typing.labels import in_order, sums_apart
from itembank.marking.typing.parsed_answer import Unreadable, parsed
from itembank.marking.typing.part_label import either_way
from itembank.marking.typing.question_spelling import as_question_has_it
from itembank.marking.typing.sign_typed import sign_typed
from itembank.marking.typing.spelling import respell, untagged, visible
from itembank.marking.typing.times_typed import as_time, time_unreadable
from itembank.marking.typing.working.working_results import comes_to
from itembank.marking.worth.letters_unknown import unknown_letters
from itembank.marking.worth.marked_by_kind import marking_of
from itembank.notation import tree as t
from itembank.text.late_pattern import late

LONGEST = 200
"""Characters of an answer that are read; no key needs more. Longer text is not looked at."""

_AND_SMALLER = late(r"(\d ?(?:h|m|km|kg|l|t))(?:,| and|, and| &) (?=\d[\d.]* ?[a-z]+$)")

_REASON = late(
    r"(?<=[\w)%°\u0307])[ ,]+(?:because|cause|cos(?! ?(?:\^ ?-1 ?)?[(\d]))\b.*", re.I | re.S
)

_REASON_FIRST = late(r"^(?:because|cause|cos|as)\b[^,;.]*[,;.] *", re.I)

_ESTIMATED = late(r"^(?:about|roughly|approx(?:imately|\.)?|around|nearly|~) ?(?=[\d£-])", re.I)

# Set apart, st is a unit: 25 st is a mass.
_ORDINAL = late(
    r"(?:the )?(?P<n>\d{1,6})(?:(?=st)| ?(?=[nrt]))(?P<end>st|nd|rd|th)"
    r"(?: (?:term|one|place|position|row))?",
    re.I,
)

_PER_CENT = late(r"(?<=\d) ?(?:pct|p\.?c)(?![A-Za-z])", re.I)

_REPEATED = late(r"\btwice\b", re.I)

_REMAINDER = late(r"\d ?(?:r|rem|remainder) ?\d|\bremainder\b", re.I)

_NO_REMAINDER = late(r",? ?(?:r|rem|(?:with )?(?:no )?remainder) ?0?$", re.I)

REMAINDER = "A remainder is left over: read what the question wants done with it."

_POUNDS = late(r"(?<=\d) ?pounds?\b", re.I)


def read_answer(text: str, asked: Setting) -> t.Node:
    """Return what was typed as a tree, read as an answer to a question with this setting.

    Raises
    ------
    Unreadable
        For anything that is not mathematics as people type it. No other exception is raised,
        whatever the text.

    >>> from itembank.notation.tree import Int
    >>> read_answer(" 1,200. ", Setting(Int(5)))
    Int(n=1200)
    >>> read_answer("3 to 20", Setting(t.Ratio((Int(1), Int(2)))))
    Ratio(parts=(Int(n=3), Int(n=20)))
    >>> read_answer("1.77...", Setting(Int(2)))
    Dec(whole='1', places='', recurring='7')
    """
    if len(text) > LONGEST:
        raise Unreadable(f"The answer is longer than {LONGEST} characters: type the answer alone.")
    plain = visible(text)
    key = asked.key
    if asked.ask is not None and (reads := marking_of(asked.ask).reads):
        return _read_by_kind(plain, asked, asked.ask, reads)
    if isinstance(key, t.Label):
        plain = untagged(plain).strip(" .;,\"'“”‘’")
        if not plain:
            raise Unreadable("There is no answer to read.")
        names = () if asked.ask is None else marking_of(asked.ask).names(asked.ask)
        if sign_beside(plain, names):
            raise Unreadable(SIGN_BESIDE)
        return t.Label(named(plain, list(names)))
    if doubtful := either_way(plain, asked):
        raise Unreadable(doubtful)
    if any(isinstance(part, t.Quantity) and part.unit == "lb" for part in t.walk(key)):
        plain = _POUNDS.sub(" lb", plain)
    if isinstance(key, t.Listing):
        words = " ".join(run for run in asked.prompt if isinstance(run, str))
        plain = sums_apart(in_order(plain, words, len(key.parts)), len(key.parts))
    if marking_of(asked.ask).sign and (compared := sign_typed(plain, asked)):
        return compared
    plain = _REASON.sub("", plain)
    if asked.about_how_many:
        plain = _ESTIMATED.sub("", plain)
    if not marking_of(asked.ask).repeated and (told := _REPEATED.search(plain)):
        raise Unreadable(f"‘{told[0]}’ cannot be read here: type the answer alone.")
    plain = respell(plain)
    if not asked.letters & set("pcPC"):
        plain = _PER_CENT.sub("%", plain)
    plain = as_time(_ordinal(plain, asked), key)
    if not asked.several:
        plain = _AND_SMALLER.sub(r"\1 ", plain)
    if unread := time_unreadable(plain, key):
        raise Unreadable(unread)
    if not plain:
        raise Unreadable("There is no answer to read.")
    if isinstance(key, t.Relation) and plain in ("<", ">", "=") and not t.symbols(key):
        return t.Relation(key.first, ((plain, key.rest[0][1]),))  # type: ignore[arg-type]
    if "r" not in asked.letters and _REMAINDER.search(plain):
        plain = _NO_REMAINDER.sub("", plain)
        if _REMAINDER.search(plain) or not plain:
            raise Unreadable(REMAINDER)
    return parsed(as_question_has_it(plain, asked), plain, asked)


def _read_by_kind(plain: str, asked: Setting, ask: Ask, reads: str) -> t.Node:
    """Return an answer about a statement, cards or a wrong line."""
    how = marking_of(ask)
    plain = untagged(plain).strip(" .;,\"'“”‘’")
    if not plain:
        raise Unreadable("There is no answer to read.")
    if reads == "truth":
        if truth := truth_typed(plain):
            return t.Label(truth)
        raise Unreadable(NO_TRUTH)
    if reads == "cards":
        names = how.names(ask)
        if sign_beside(plain, names):
            raise Unreadable(SIGN_BESIDE)
        return t.Label(card_typed(plain, how.cards(ask)) or named(plain, names))
    if reads == "pairs":
        cards = tuple(how.cards(ask))
        partners = pairs_typed(plain, cards, how.partners(ask))
        if not partners:
            raise Unreadable(NO_PAIRS)
        pairs = zip(cards, partners, strict=True)
        return t.Listing(tuple(t.Label(f"{card}–{partner}") for card, partner in pairs))
    number, rest = line_typed(plain)
    rest = _REASON_FIRST.sub("", rest)
    if not rest or not (isinstance(asked.key, t.Listing) and len(asked.key.parts) == 2):
        raise Unreadable(NO_LINE)
    result = read_answer(rest, replace(asked, key=asked.key.parts[1], ask=None))
    return t.Listing((line_name(int(number)), _last_result(result, asked.key.parts[1])))


def _last_result(result: t.Node, key: t.Node) -> t.Node:
    """Return what is said of a line without its working: c = 15 of c = 5 × 3, c = 5 × 3 = 15."""
    if isinstance(result, t.Listing) and not isinstance(key, t.Listing | t.Either):
        result = result.parts[-1]
    end = comes_to(result)
    # But 2x = 30 is no way to say that x is 30.
    expression = bool(unknown_letters(key)) and not isinstance(key, t.Relation)
    known = isinstance(end, t.Relation) or expression or not unknown_letters(result)
    return end if known else result


def _ordinal(plain: str, asked: Setting) -> str:
    """Return *the 15th term* as 15, unless the letters are the question's own."""
    amount = any(isinstance(part, t.Quantity | t.Money) for part in t.walk(asked.key))
    found = None if amount else _ORDINAL.fullmatch(plain)
    return found["n"] if found and not set(found["end"].lower()) <= asked.letters else plain
