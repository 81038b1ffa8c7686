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
from itembank.marking.typing.nouns import without_words
from itembank.marking.typing.openings import without_opening
from itembank.marking.typing.parsed_answer import LONG_WORD, Unreadable, parsed
from itembank.marking.typing.part_label import either_way
from itembank.marking.typing.sign_typed import sign_typed
from itembank.marking.typing.spelling import respell, untagged, visible
from itembank.marking.typing.times_typed import as_time, time_unreadable, with_minutes
from itembank.marking.typing.working_results import comes_to
from itembank.marking.worth.letters_unknown import unknown_letters
from itembank.marking.worth.marked_by_kind import marking_of
from itembank.notation import tree as t
from itembank.notation.clock import is_time
from itembank.notation.units import UNITS
from itembank.text.late_pattern import late

LONGEST = 200
"""Characters of an answer that are read; no key needs more. Longer text is not looked at."""

_GROUPED = late(r"(?<![\d.,])\d{1,3}(?:[, ]\d{3})+(?![\d,/]| *\d)")

_CLOSE_GROUPED = late(r"(?<![\d.,])\d{1,3}(?:,\d{3})+(?!\d)")

_TO = late(r"(?<=[\w)°%]) *(?:\bto\b|(?<=\d)to(?=[\d£])) *(?=[\w£.(])", re.I)

_RUN_ON = late(r"(?<=[\w)])(?<!\bor)(?<!\bof) +(?=[A-Za-z] ?=)")

_TIMES = late(r"(?<=[\d)π⁰¹²³⁴⁵⁶⁷⁸⁹]) *[xX] *(?=-?[\d(√π])|(?<=[\da-z)π]) +[xX] +(?=[\da-z(√π])")

_POWER_OF_TEN = late(r"(?<=\d) ?[eE] ?([+-]?\d{1,4})(?!\d)")

_AND_SMALLER = late(r"(\d ?(?:h|m|km|kg|l|t))(?:,| and|, and| &) (?=\d[\d.]* ?[a-z]+$)")

_AND_FRACTION = late(r"(\d) ?(?:and|&) ?(?=\d+ ?/ ?\d+[ %°A-Za-z^]*$)")

_PLUS_MINUS = late(r"^(?P<head>.*?)±(?P<tail>.*)$")

_DECIMAL_COMMA = late(r"(?<![\d.,])(\d+),(\d{1,2}|\d{4,})(?![\d,.])")

_HIGH_POINT = late(r"(?<![\d.·])(\d+)·(\d+)(?![\d.·^])")

_POINT = late(r"\(([^(),]+),([^(),]+)\)")

_REASON = late(
    r"(?<=[\w)%°\u0307])[ ,]+(?:because|cause|cos(?! ?(?:\^ ?-1 ?)?[(\d]))\b.*", re.I | re.S
)

_RATIO_OF = late(r"(?<![A-Za-z])(sin|cos|tan) ?(\^ ?-1)? ?(\d+(?:\.\d+)?(?: ?°)?)(?![\d.°/])", re.I)

_TIMES_RATIO = late(r"(?<=[\d)]) ?(?=(?:sin|cos|tan)(?![A-Za-z]))", re.I)

_ONE_AMOUNT = late(rf"(?<=\d)( ?(?:{'|'.join(map(re.escape, UNITS))})) ?/ ?(?=\d)")

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

_SET_OF_ROOTS = late(r"(?<==) ?\(([^()]*,[^()]*)\)$")

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
    return parsed(_as_question_has_it(plain, asked), plain, asked)


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


def _as_question_has_it(plain: str, asked: Setting) -> str:
    key, letters = asked.key, asked.letters
    plain = without_opening(plain, asked)
    if not letters and not any(char.isdigit() or char.isnumeric() for char in plain):
        raise Unreadable("There is no number in the answer.")
    if (said := marking_of(asked.ask).leads) is not None:
        plain = said.sub("", plain)
    if LONG_WORD.search(plain) or "°" in plain or " of " in plain or plain.endswith("C"):
        words = " ".join(run for run in asked.prompt if isinstance(run, str))
        plain = without_words(plain, key, words)
    if plain[:1] in ("≤", "≥") and not isinstance(key, t.Relation):
        raise Unreadable("The answer is a number, without a sign in front.")
    if any(char in "<>≤≥" for char in plain[:1]) and _solves_inequality(key):
        plain = f"{key.first.name} {plain}"  # type: ignore[union-attr]
    if (
        isinstance(key, t.Relation)
        and isinstance(key.first, t.Sym)
        and plain[1:3].strip()[:1] == ":"
    ):
        plain = re.sub(rf"^({key.first.name}) ?: ?", r"\1 = ", plain, flags=re.I)
    if isinstance(key, t.Ratio) or any(isinstance(part, t.Ratio) for part in t.walk(key)):
        plain = _TO.sub(" : ", plain)
    if "x" not in letters or (not t.symbols(key) and "x" not in _TIMES.sub("", plain).lower()):
        plain = _TIMES.sub(" × ", plain)
        if not letters:
            plain = _POWER_OF_TEN.sub(r" × 10^\1", plain).replace("^+", "^")
    if isinstance(key, t.Either) and any(isinstance(part, t.Listing) for part in key.parts):
        plain = re.sub(r"\)[ ,;]*(?:and|or|&)?[ ,;]*\(", ") or (", plain)
        plain = _POINT.sub(r"\1, \2", plain)
    if asked.several or isinstance(key, t.Relation):
        if "±" in plain or "+-" in plain or "+/-" in plain:
            plain = _both_signs(plain)
        if not asked.several:
            plain = _AND_FRACTION.sub(r"\1 ", plain)
        if isinstance(key, t.Listing):
            plain = re.sub(r",? *\bthen\b *", ", ", plain)
        plain = re.sub(r",? *(?:\band\b|&|;) *", ", ", plain)
        if isinstance(key, t.Either):
            plain = _SET_OF_ROOTS.sub(r" \1", plain)  # x = {2, 5}
        if letters:
            plain = _RUN_ON.sub(", ", plain)
        if plain[:1] == "(" and plain[-1:] == ")" and "," in plain and plain.count("(") == 1:
            plain = plain[1:-1]  # coordinates
    else:
        plain = _AND_FRACTION.sub(r"\1 ", plain)
    if isinstance(key, t.Listing):
        if plain.count(",") >= len(key.parts):
            plain = _CLOSE_GROUPED.sub(lambda found: found[0].replace(",", ""), plain)
    elif not isinstance(key, t.Either):
        plain = re.sub(r"(?<![\d.,])0,(?=\d+(?![\d,.]))", "0.", plain)
        plain = _GROUPED.sub(lambda found: re.sub("[, ]", "", found[0]), plain)
        # Where one number is asked for, a comma close up that groups no thousands is a point.
        whole = isinstance(key, t.Product | t.Power) and not any(
            isinstance(p, t.Dec) for p in t.walk(key)
        )
        if not whole:
            plain = _DECIMAL_COMMA.sub(r"\1.\2", plain)
    if "·" in plain and any(isinstance(part, t.Dec) for part in t.walk(key)):
        plain = _HIGH_POINT.sub(r"\1.\2", plain)
    for letter in letters:
        capital = letter.upper()
        if letter.islower() and capital not in letters and capital in plain:
            plain = re.sub(rf"(?<![A-Za-z]{{2}}){capital}(?![A-Za-z]{{2}})", letter, plain)
        small = letter.lower()
        if letter.isupper() and small not in letters and letter in t.symbols(key):
            plain = re.sub(rf"(?<![A-Za-z]{{2}}){small}(?![A-Za-z]{{2}})", letter, plain)
    if not letters & {"h", "m"} and not is_time(key):
        plain = with_minutes(plain)
    if "si" in plain or "co" in plain or "ta" in plain:
        plain = _TIMES_RATIO.sub(" × ", _RATIO_OF.sub(_bracketed, plain))
    return _with_units(plain, letters)


def _bracketed(found: re.Match[str]) -> str:
    """Return cos 57 as cos(57), and sin^-1 0.5 as sin^-1(0.5)."""
    return f"{found[1].lower()}{'^-1' if found[2] else ''}({found[3]})"


def _with_units(plain: str, letters: frozenset[str]) -> str:
    """Return an answer with the letters that are units set apart from those of the question."""
    plain = _ONE_AMOUNT.sub(r"\1 ÷ ", plain)
    if "p" not in letters:
        plain = re.sub(r"(?<=\d) p\b", "p", plain)
    if "l" not in letters and "L" not in letters:
        plain = re.sub(r"(?<=\d) ?L\b", " l", plain)
    if "m" not in letters and "M" not in letters:
        plain = re.sub(r"(?<=[\dπ]) ?M$", " m", plain)
    if "m" not in letters:
        plain = re.sub(r"(?<=[\dπ]) ?m\^?([23])(?![\d.])", r" m^\1", plain)
    # 5m and 5g close up are read as products, but no letter of the question is meant.
    units = "".join(
        name for name in UNITS if len(name) == 1 and name.isalpha() and name not in letters
    )
    if units:
        plain = re.sub(rf"(?<=\d)(?=[{units}](?![A-Za-z^(]))", " ", plain)
    longer = "|".join(name for name in UNITS if name.isalpha() and name not in letters)
    plain = re.sub(rf"(?<=π)(?=(?:{longer})(?![A-Za-z]))", " ", plain)
    single = "".join(letters & set("abcdefghijklmnopqrstuvwxyz"))
    if single:
        # 5 m is five metres, but five times m where m is a letter of the question.
        plain = re.sub(rf"(?<=\d) (?=[{single}](?![A-Za-z]))", "", plain)
    return plain


def _solves_inequality(key: t.Node) -> bool:
    match key:
        case t.Relation(t.Sym(), ((op, _),)):
            return op != "="
    return False


def _both_signs(plain: str) -> str:
    """Return an answer with ± as its two answers.

    >>> _both_signs("x = ±3"), _both_signs("2 ± √3")
    ('x = 3 or x = -3', '2 + √3 or 2 - √3')
    """
    plain = plain.replace("+/-", "±").replace("+-", "±")
    found = _PLUS_MINUS.match(plain)
    if not found or "±" in found["tail"]:
        return plain
    head, tail = found["head"], found["tail"]
    if not head.strip() or head.rstrip().endswith("="):
        return f"{head}{tail.strip()} or {head}-{tail.strip()}"
    return f"{head}+{tail} or {head}-{tail}"
