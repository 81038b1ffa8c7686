"""What the question settles of what was typed: commas, x and *to*, letters that may be units."""

from __future__ import annotations

import re

from itembank.marking.typing.answer_setting import Setting
from itembank.marking.typing.nouns import without_words
from itembank.marking.typing.openings import without_opening
from itembank.marking.typing.parsed_answer import LONG_WORD, Unreadable
from itembank.marking.typing.times_typed import with_minutes
from itembank.marking.worth.marked_by_kind import marking_of
from itembank.notation import tree as t
from itembank.notation.clock import is_time
from itembank.notation.units import UNITS
from itembank.text.late_pattern import late

_GROUPED = late(r"(?<![\d.,])\d{1,3}(?:[, ]\d{3})+(?![\d,/]| *\d)")

_CLOSE_GROUPED = late(r"(?<![\d.,])\d{1,3}(?:,\d{3})+(?!\d)")

_TO = late(r"(?<=[\w)°%]) *(?:\bto\b|(?<=\d)to(?=[\d£])) *(?=[\w£.(])", re.I)

_RUN_ON = late(r"(?<=[\w)])(?<!\bor)(?<!\bof) +(?=[A-Za-z] ?=)")

_TIMES = late(r"(?<=[\d)π⁰¹²³⁴⁵⁶⁷⁸⁹]) *[xX] *(?=-?[\d(√π])|(?<=[\da-z)π]) +[xX] +(?=[\da-z(√π])")

_POWER_OF_TEN = late(r"(?<=\d) ?[eE] ?([+-]?\d{1,4})(?!\d)")

_AND_FRACTION = late(r"(\d) ?(?:and|&) ?(?=\d+ ?/ ?\d+[ %°A-Za-z^]*$)")

_PLUS_MINUS = late(r"^(?P<head>.*?)±(?P<tail>.*)$")

_DECIMAL_COMMA = late(r"(?<![\d.,])(\d+),(\d{1,2}|\d{4,})(?![\d,.])")

_HIGH_POINT = late(r"(?<![\d.·])(\d+)·(\d+)(?![\d.·^])")

_POINT = late(r"\(([^(),]+),([^(),]+)\)")

_RATIO_OF = late(r"(?<![A-Za-z])(sin|cos|tan) ?(\^ ?-1)? ?(\d+(?:\.\d+)?(?: ?°)?)(?![\d.°/])", re.I)

_TIMES_RATIO = late(r"(?<=[\d)]) ?(?=(?:sin|cos|tan)(?![A-Za-z]))", re.I)

_ONE_AMOUNT = late(rf"(?<=\d)( ?(?:{'|'.join(map(re.escape, UNITS))})) ?/ ?(?=\d)")

_SET_OF_ROOTS = late(r"(?<==) ?\(([^()]*,[^()]*)\)$")


def as_question_has_it(plain: str, asked: Setting) -> str:
    """Return a respelled answer with what only its question can settle brought to one spelling.

    Raises
    ------
    Unreadable
        There is no number in it, or a sign that says it is no number.

    >>> from itembank.notation.tree import Int
    >>> as_question_has_it("3 x 4", Setting(Int(12))), as_question_has_it("1,200", Setting(Int(5)))
    ('3 × 4', '1200')
    """
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
    plain = _with_letter(plain, key)
    if isinstance(key, t.Ratio) or any(isinstance(part, t.Ratio) for part in t.walk(key)):
        plain = _TO.sub(" : ", plain)
    if "x" not in letters or (not t.symbols(key) and "x" not in _TIMES.sub("", plain).lower()):
        plain = _TIMES.sub(" × ", plain)
        if not letters:
            plain = _POWER_OF_TEN.sub(r" × 10^\1", plain).replace("^+", "^")
    plain = _digits_joined(_parted(plain, asked), key)
    if "·" in plain and any(isinstance(part, t.Dec) for part in t.walk(key)):
        plain = _HIGH_POINT.sub(r"\1.\2", plain)
    plain = _in_own_case(plain, asked)
    if not letters & {"h", "m"} and not is_time(key):
        plain = with_minutes(plain)
    if "si" in plain or "co" in plain or "ta" in plain:
        plain = _TIMES_RATIO.sub(" × ", _RATIO_OF.sub(_bracketed, plain))
    return _with_units(plain, letters)


def _with_letter(plain: str, key: t.Node) -> str:
    """Return > 3 as x > 3, and x: 3 as x = 3, where the key begins with that letter."""
    if any(char in "<>≤≥" for char in plain[:1]) and _solves_inequality(key):
        plain = f"{key.first.name} {plain}"  # type: ignore[union-attr]
    if (
        isinstance(key, t.Relation)
        and isinstance(key.first, t.Sym)
        and plain[1:3].strip()[:1] == ":"
    ):
        plain = re.sub(rf"^({key.first.name}) ?: ?", r"\1 = ", plain, flags=re.I)
    return plain


def _parted(plain: str, asked: Setting) -> str:
    """Return an answer of several parts with a comma or *or* between them, whatever stood there."""
    key = asked.key
    if isinstance(key, t.Either) and any(isinstance(part, t.Listing) for part in key.parts):
        plain = re.sub(r"\)[ ,;]*(?:and|or|&)?[ ,;]*\(", ") or (", plain)
        plain = _POINT.sub(r"\1, \2", plain)
    if not (asked.several or isinstance(key, t.Relation)):
        return _AND_FRACTION.sub(r"\1 ", plain)
    if "±" in plain or "+-" in plain or "+/-" in plain:
        plain = _both_signs(plain)
    if not asked.several:
        plain = _AND_FRACTION.sub(r"\1 ", plain)
    if isinstance(key, t.Listing):
        plain = re.sub(r",? *\bthen\b *", ", ", plain)
    plain = re.sub(r",? *(?:\band\b|&|;) *", ", ", plain)
    if isinstance(key, t.Either):
        plain = _SET_OF_ROOTS.sub(r" \1", plain)  # x = {2, 5}
    if asked.letters:
        plain = _RUN_ON.sub(", ", plain)
    if plain[:1] == "(" and plain[-1:] == ")" and "," in plain and plain.count("(") == 1:
        plain = plain[1:-1]  # coordinates
    return plain


def _digits_joined(plain: str, key: t.Node) -> str:
    """Return an answer whose numbers are without commas and spaces between their digits."""
    if isinstance(key, t.Listing):
        # With as many commas as parts or more, one of them has to group digits.
        if plain.count(",") >= len(key.parts):
            plain = _CLOSE_GROUPED.sub(lambda found: found[0].replace(",", ""), plain)
        return plain
    if isinstance(key, t.Either):
        return plain
    plain = re.sub(r"(?<![\d.,])0,(?=\d+(?![\d,.]))", "0.", plain)
    plain = _GROUPED.sub(lambda found: re.sub("[, ]", "", found[0]), plain)
    # Where one number is asked for, a comma close up that groups no thousands is a point; but 2,5
    # for 2 × 5 gives the factors.
    product = isinstance(key, t.Product | t.Power)
    if product and not any(isinstance(part, t.Dec) for part in t.walk(key)):
        return plain
    return _DECIMAL_COMMA.sub(r"\1.\2", plain)


def _in_own_case(plain: str, asked: Setting) -> str:
    """Return an answer with the letters of its question large or small as they are printed."""
    letters, key = asked.letters, asked.key
    for letter in letters:
        capital = letter.upper()
        if letter.islower() and capital not in letters and capital in plain:
            plain = re.sub(rf"(?<![A-Za-z]{{2}}){capital}(?![A-Za-z]{{2}})", letter, plain)
        small = letter.lower()
        if letter.isupper() and small not in letters and letter in t.symbols(key):
            plain = re.sub(rf"(?<![A-Za-z]{{2}}){small}(?![A-Za-z]{{2}})", letter, plain)
    return plain


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
