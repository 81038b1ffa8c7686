"""Other ways of writing the same thing, brought to what the line parser reads.

Each rule here is about words and marks that people use when they type, whatever the question:
*pounds* for £, *per cent* for %, dots for a recurring decimal. What depends on the question
is in :mod:`.read_answer`.
"""

from __future__ import annotations

import re
import unicodedata

from itembank.marking.typing.numerals import in_digits
from itembank.notation.units import UNITS
from itembank.text.late_pattern import late

_DOTS = late(r"(\d+\.\d+?)(?:\.{2,}|…| ?\b(?:recurring|rec)\b)")
_PLUS = late(r"(?:^|(?<=[=<>≤≥:,(])|(?<=or)|(?<=and)) *\+ *(?=[\d.£])")
_AMOUNT = r"(?P<n>\d[\d.,]*(?: \d+ ?/ ?\d+| ?/ ?\d+)?)"
_POUNDS = late(
    rf"{_AMOUNT} ?(?:pounds?|quid|gbp)\b"
    r"(?:(?: and|,)? (?P<p>\d\d?)(?: ?(?:p|pence)\b|(?![\d./])))?",
    re.I,
)
_POUNDS_PENCE = late(
    r"£ ?(\d{1,3}(?:,\d{3})+|\d+),?(?: and)? (\d\d?) ?(?:p\b|pence\b)|£ ?(\d+) (\d\d)(?![\d./])"
)
_POUNDS_DASH = late(r"£ ?(\d+) ?[-−–] ?(\d\d)(?![\d.])")
_SIGN_AFTER = late(r"(?<![\d.£€$])(\d[\d.,]*) ?([£€$])(?! ?\d)|%(\d[\d.]*)(?!\d)")
_MINUS_MONEY = late(r"£ ?[-−–] ?(?=\d)")
_PENCE = late(rf"{_AMOUNT} ?(?:pence|penny)\b", re.I)
_BOTH_SIGNS = late(r"(£ ?\d[\d,]*\.\d\d) ?p\b")
_PER_CENT = late(r" ?\b(?:per ?cent|percentage)\b", re.I)
_EQUALS = late(r" ?\b(?:equals|is equal to|is)\b ?", re.I)
_ROOT = late(r"(?<![A-Za-z])(?:the )?(?:square )?(?:root|sqrt)(?: of)? ?(?=[\w(])", re.I)
_JOINS = late(r"\b(?:OR|AND|OF|Or|And|Of)\b")
_CLOSE_OR = late(r"(?<=[\d)])or(?=[a-z]=|-?\d)")
_PI = late(r"(?<![A-Za-z])pi(?= ?[a-z]{2})(?![a-z])", re.I)
_RAISED_UNIT = late(
    r"(?<=[\d)π ])(?P<unit>mm|cm|km|m) ?\^ ?(?:\((?P<in>[23])\)|(?P<n>[23]))(?![\w(^])", re.I
)
_RAISED_FRACTION = late("([⁰¹²³⁴⁵⁶⁷⁸⁹]+)[⁄/]([₀₁₂₃₄₅₆₇₈₉]+)")
_DOUBLE = {"!=": "≠", "==": "=", "=<": "≤", "=>": "≥", "**": "^"}
_TAGS = late(
    r"^(?:(?:so|therefore|i (?:think|got|get|make)|my)\b,? ?)*"
    r"(?:(?:the |my )?(?:final )?ans(?:wer)?(?: is| was)? ?(?:\.(?!\d))? ?(?:[:=]|->|→)? ?"
    r"|it(?:'?s|’s| is)\b ?|[=∴] ?|total ?(?:is|[:=]) ?)+"
    r"|^(?:(?:so|therefore|i (?:think|got|get))\b,? ?)+",
    re.I,
)
_TWICE = late(
    r",? ?\(?\b(?:twice|only|both|in (?:total|all)|repeated(?: root)?|double root)\)?$", re.I
)
_MINUS = late(r"(?<![A-Za-z])(?:minus|negative|neg)\b\.? ?", re.I)
_OVER = late(r"(?<=[\w)]) (?:over|out of) (?=[\w(])|(?<=\d) in (?=\d)", re.I)
_BETWEEN = (
    (re.compile(r" ?\bplus (?:or|and) ?-", re.I), "±"),
    (re.compile(r"(?<=g) per (?=c?m ?(?:\^ ?3|³|3))"), "/"),
    (re.compile(r" ?\bplus\b ?", re.I), " + "),
    (re.compile(r" ?\b(?:times|multiplied by|lots of)\b ?", re.I), " × "),
    (re.compile(r" ?\bdivided by\b ?", re.I), " ÷ "),
    (re.compile(r"(?<=[\w)]) squared\b", re.I), "^2"),
    (re.compile(r"(?<=[\w)]) cubed\b", re.I), "^3"),
    (re.compile(r"(?<=[\w)]) ?(?:raised )?to the power(?: of)? (?=[-\w])", re.I), "^"),
    (re.compile(r"(?<=[\w)]) (?:raised )?to the (?=-?\d)", re.I), "^"),
)
_COMPARED = (
    (
        re.compile(
            r"(?:\bis |= ?)?(-?\d[\d./]*) (?:or|and) (?:more|over|above|greater|bigger)\b", re.I
        ),
        r" ≥ \1",
    ),
    (
        re.compile(r"(?:\bis |= ?)?(-?\d[\d./]*) (?:or|and) (?:less|under|below|smaller)\b", re.I),
        r" ≤ \1",
    ),
    (
        re.compile(
            r" ?(?:\bis )?\b(?:(?:greater|more|bigger|larger) than or equal(?:s)?(?: to)?"
            r"|at least)\b ?",
            re.I,
        ),
        " ≥ ",
    ),
    (
        re.compile(
            r" ?(?:\bis )?\b(?:(?:less|smaller|fewer) than or equal(?:s)?(?: to)?|at most)\b ?",
            re.I,
        ),
        " ≤ ",
    ),
    (re.compile(r" ?(?:\bis )?\b(?:greater|more|bigger|larger) than\b ?", re.I), " > "),
    (re.compile(r" ?(?:\bis )?\b(?:less|smaller) than\b ?", re.I), " < "),
)
_OR_MORE = late(
    r"\d (?:or|and) (?:more|over|above|greater|bigger|less|under|below|smaller)\b", re.I
)
_APART = late(r"([<>]) +=")
_THOUSANDS = late(r"(?<=\d)['’](?=\d{3}(?!\d))")
_SHUT = late(r"^['\"“‘](.*)['\"”’]$")
_BRACKETS = str.maketrans({"[": "(", "]": ")", "{": "(", "}": ")", "\\": "/"})
_ABOUT = str.maketrans(dict.fromkeys("≈≃≅≡", "="))
_SIGNS = late(r"(?<=[\w)]) ?\+ ?- ?(?=[\w(])")
_MORE_UNITS = {
    "mm": "millimeter|millimeters|mms",
    "cm": "centimeter|centimeters|cms",
    "m": "meter|meters",
    "km": "kilometer|kilometers|kms",
    "g": "gramme|grammes|grams|gm|gms",
    "kg": "kilo|kilos|kgs|kilogramme|kilogrammes",
    "t": "tons",
    "ml": "milliliter|milliliters|mls",
    "cl": "centiliter|centiliters",
    "l": "liter|liters|ltr|ltrs",
    "s": "sec|secs",
    "min": "mins",
    "h": "hr|hrs|hour|hours",
    "km/h": "km/h|kilometers per hour|kph|kmph|kmh|km/hr|km / h|km / hr|km/hour|km per h|km per hr|"
    "km per hour|km an hour|"
    "kms/h|kmh^-1|kmh-1|km p/h",
    "m/s": "m/s|m/sec|m / s|m per s|m per sec|m per second|ms^-1|ms-1|mps|meters per second",
    "°": "deg|degs",
    "mm^2": "mm2|sq mm|mm squared|mm sq",
    "cm^2": "cm2|sq cm|cm squared|squared cm|cm sq|square cm|cms squared|sq. cm",
    "m^2": "sq m|m squared|square m|sq. m",
    "mm^3": "mm3|mm cubed|cubic mm|cu mm",
    "cm^3": "cm3|cm cubed|cc|cubic cm|cu cm|cu. cm",
    "m^3": "m cubed|cubic m|cu m",
    "km^2": "km2|sq km|km squared|square km",
}
_WORDS: dict[str, str] = {}
for _unit, _names in UNITS.items():
    _WORDS |= {_names.singular.lower(): _unit, _names.many.lower(): _unit}
    _WORDS |= {word: _unit for word in _MORE_UNITS.get(_unit, "").split("|") if word}
    if len(_unit) > 1 and _unit.isalpha():
        _WORDS[_unit] = _unit  # so that 5 KG is read as well
_UNIT_WORDS = late(
    r"(?<=[\d)π\u0307]) ?(?P<word>"
    + "|".join(re.escape(word) for word in sorted(_WORDS, key=len, reverse=True))
    + r")\b(?!\^)",
    re.I,
)
_STOPS = " .;,!?"
_UNSEEN = frozenset(("Cc", "Cf", "Co", "Cs", "Cn"))
_JOINERS = frozenset("\u2061\u2062\u2063\u2064")
# A pattern that heeds no case takes these for letters of English, and no table has words with them.
_PASS_FOR = {"\u017f": "s", "\u212a": "K", "\u0131": "i", "\u0130": "I"}


def visible(text: str) -> str:
    r"""Return `text` in plain digits and without what cannot be seen.

    Control and bidi characters and lone surrogates become spaces; digits of any script become
    0 to 9, full-width characters the usual ones.

    >>> visible("\u202e 7\u0000"), visible("３\uff0e５"), visible("٣")
    ('7', '3.5', '3')
    """
    # Nearly all answers; nothing below could change them.
    if text.isascii() and text.isprintable():
        return " ".join(text.split())
    text = _RAISED_FRACTION.sub(lambda f: f" {_levelled(f[1])}/{_levelled(f[2])}", text)
    return " ".join("".join(map(_plain, text)).split())


def _levelled(digits: str) -> str:
    return unicodedata.normalize("NFKC", digits)


def _plain(char: str) -> str:
    if "\uff01" <= char <= "\uff5e":
        return chr(ord(char) - 0xFEE0)
    if char in _PASS_FOR:
        return _PASS_FOR[char]
    category = unicodedata.category(char)
    if category == "Nd":
        return str(unicodedata.decimal(char))
    return " " if category in _UNSEEN and char not in _JOINERS else char


def respell(text: str) -> str:
    """Return `text` with words and marks that mean the same brought to one spelling.

    >>> respell("1.777… ."), respell("40 per cent"), respell("4 pounds and 5 pence")
    ('1.7̇', '40%', '£4.05')
    >>> respell("= 3 kilograms"), respell("x equals +5")
    ('3 kg', 'x=5')
    """
    if "." in text or "…" in text or "rec" in text:
        text = _DOTS.sub(lambda found: _recurring(found[1]), text)
    text = _SHUT.sub(r"\1", text.translate(_BRACKETS).translate(_ABOUT))
    text = _APART.sub(r"\1=", text)
    for double, single in _DOUBLE.items():
        if double in text:
            text = text.replace(double, single)
    text = untagged(text)
    if any(char.isalpha() for char in text):
        text = _worded(text)
    if any(sign in text for sign in "£€$%"):
        text = _SIGN_AFTER.sub(lambda f: f"{f[2]}{f[1]}" if f[1] else f"{f[3]}%", text)
        text = _MINUS_MONEY.sub("-£", _BOTH_SIGNS.sub(r"\1", text))
        if found := _POUNDS_DASH.fullmatch(text):
            text = f"£{found[1]}.{found[2]}"
        text = _POUNDS_PENCE.sub(lambda f: f"£{f[1] or f[3]}.{int(f[2] or f[4]):02d}", text)
    text = _THOUSANDS.sub("", text)
    if "+" in text:
        text = _SIGNS.sub(" - ", _PLUS.sub("", text))
    return untagged(text)


def untagged(text: str) -> str:
    """Return an answer without what only leads up to it, and without stops around it.

    >>> [untagged(text) for text in ("= Pack B", "Answer: line 2, 5/6.", "I think it's B", "x = 3")]
    ['Pack B', 'line 2, 5/6', 'B', 'x = 3']
    """
    return _TAGS.sub("", text.lstrip(" ;,!").rstrip(_STOPS))


def _worded(text: str) -> str:
    """Return a text with its words for numbers, signs and units written as mathematics."""
    text = _CLOSE_OR.sub(" or ", _JOINS.sub(lambda found: found[0].lower(), text))
    text = in_digits(_TWICE.sub("", text))
    text = _MINUS.sub("-", text)
    text = _ROOT.sub("√", text)
    text = _PER_CENT.sub("%", text)
    if "than" in text or "at " in text or _OR_MORE.search(text):
        for pattern, sign in _COMPARED:
            text = pattern.sub(sign, text)
    text = _EQUALS.sub("=", text)
    text = _POUNDS.sub(_pounds, text)
    text = _PENCE.sub(r"\g<n>p", text)
    text = _RAISED_UNIT.sub(lambda f: f"{f['unit'].lower()}^{f['in'] or f['n']}", text)
    text = _PI.sub("π", text)
    text = _UNIT_WORDS.sub(lambda found: " " + _WORDS[found["word"].lower()], text)
    for pattern, sign in _BETWEEN:
        text = pattern.sub(sign, text)
    return _OVER.sub("/", text.replace(" °", "°"))


def _pounds(found: re.Match[str]) -> str:
    pence = found["p"]
    return f"£{found['n']}" if pence is None else f"£{found['n']}.{int(pence):02d}"


def _recurring(digits: str) -> str:
    """Return a decimal typed with dots at its end, its shortest repeated tail marked recurring.

    1.777 gives 1.7̇, 0.1666 gives 0.16̇ and 0.2727 gives 0.2̇7̇; 1.7 gives 1.7̇.
    """
    whole, places = digits.split(".")
    # The shortest block that comes twice: 0.3333… has the block 3, not 33.
    for size in range(1, len(places) // 2 + 1):
        block = places[-size:]
        if places[-2 * size : -size] == block:
            head = places[: -2 * size]
            while head.endswith(block):
                head = head[:-size]
            break
    else:
        head, block = places[:-1], places[-1]
    dot = "\u0307"
    marked = block[0] + dot + (block[1:] + dot if len(block) > 1 else "")
    return f"{whole}.{head}{marked}"
