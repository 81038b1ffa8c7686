r"""Characters that nobody sees, or that look like others: found, named, and shown safely.

Which characters have no glyph or steer a terminal is from Unicode's categories Cc, Cf, Zl and Zp
and its list of default ignorable code points. Which letters look like which is from Unicode
Technical Standard #39 (confusables), from memory, for the letters that matter here: those of
Greek and Cyrillic that a reader takes for Latin ones.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator

from itembank.data_class import dataclass

_UNSEEN = (
    "\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u034f\u061c\u115f\u1160\u17b4\u17b5\u180b-\u180e"
    "\u200b-\u200f\u2028-\u202e\u2060\u2065-\u206f\u3164\ufeff\uffa0\ufff0-\ufffb\ufffe\uffff"
    "\ud800-\udfff\U0001d173-\U0001d17a\U000e0000-\U000e0fff"
)
_UNSEEN_MATHS = "\u2061-\u2064"  # between the parts of a formula that is copied from a page
_RETURN = "\r(?!\n)"  # goes back to the start of the line, but before its end it is part of that
_HIDDEN = re.compile(f"[{_UNSEEN}{_UNSEEN_MATHS}]|{_RETURN}")
_HIDDEN_BUT_MATHS = re.compile(f"[{_UNSEEN}]|{_RETURN}")

_LIKE = dict(
    zip(
        "АВЕЅІЈКМНОРСТУХаеіјосрѕухһԁԛԝΑΒΕΖΗΙΚΜΝΟΡΤΥΧο",
        "ABESIJKMHOPCTYXaeijocpsyxhdqwABEZHIKMNOPTYXo",
        strict=True,
    )
)
_SOFT = "\xad"
_WORD = re.compile(r"[^\W_]+")

SHOWN = 80
"""Most characters of a thing that was typed or stands in a file that a message shows."""


@dataclass(frozen=True, slots=True)
class Found:
    """A character that is not what it seems: where it is (from 0), and what there is to say."""

    at: int
    says: str


def has_hidden(text: str) -> bool:
    """Tell whether :func:`hidden` would yield anything."""
    return _HIDDEN.search(text) is not None


def without_hidden(text: str) -> str:
    """Return text with a space for each character that :func:`hidden` would yield."""
    return _HIDDEN.sub(" ", text)


def named(char: str) -> str:
    r"""Return what a character is called, for a person who cannot see it.

    >>> named("\u200b"), named("\x1b"), named("\udcff")
    ('ZERO WIDTH SPACE (U+200B)', 'a control character (U+001B)', 'a byte that is no UTF-8 (FF)')
    """
    code = ord(char)
    if 0xDC80 <= code <= 0xDCFF:
        return f"a byte that is no UTF-8 ({code - 0xDC00:02X})"
    kind = "a control character" if unicodedata.category(char) == "Cc" else "a character"
    return f"{unicodedata.name(char, kind)} (U+{code:04X})"


def told(char: str) -> str:
    """Return a character as a sentence shows it; one that is not what it seems is named.

    >>> told("×"), told("х")
    ('×', 'х, which is CYRILLIC SMALL LETTER HA (U+0445) and only looks like x')
    """
    if char in _LIKE:
        return f"{char}, which is {named(char)} and only looks like {_LIKE[char]}"
    return named(char) if has_hidden(char) else char


def hidden(text: str, *, in_maths: bool = False) -> Iterator[Found]:
    r"""Yield each character that cannot be seen or steers a terminal, but tabs and new lines.

    With `in_maths`, those that stand unseen between the parts of a formula are let be.

    >>> [(found.at, found.says) for found in hidden("8K\u200b")]
    [(2, 'There is ZERO WIDTH SPACE (U+200B) here, which nobody can see. Take it out.')]
    """
    for match in (_HIDDEN_BUT_MATHS if in_maths else _HIDDEN).finditer(text):
        says = f"There is {named(match[0])} here, which nobody can see. Take it out."
        yield Found(match.start(), says)


def look_alikes(text: str, *, name: bool = False) -> Iterator[Found]:
    """Yield letters of another alphabet that pass for Latin ones, beside Latin letters or digits.

    A whole word in another alphabet is let be, but in a `name`, which is to be typed again.

    >>> [found.says for found in look_alikes("8К")]
    ['К is CYRILLIC CAPITAL LETTER KA (U+041A), which only looks like K. Type K instead.']
    >>> list(look_alikes("Мир2, 2π")), len(list(look_alikes("КМ", name=True)))
    ([], 2)
    """
    for word in _WORD.finditer(text):
        letters = word[0]
        if letters.isascii() or not any(char in _LIKE for char in letters):
            continue
        others = any(char.isalpha() and char not in _LIKE for char in letters)
        latin = any(char.isascii() and char.isalpha() for char in letters)
        digits = any(char.isdigit() for char in letters)
        if latin or ((digits or name) and not others):
            for place, char in enumerate(letters, word.start()):
                if char in _LIKE:
                    like = _LIKE[char]
                    says = f"{char} is {named(char)}, which only looks like {like}. "
                    yield Found(place, f"{says}Type {like} instead.")


def name_fault(text: str) -> str:
    """Return why a name that is to be typed again and again cannot be this, or nothing.

    Letters in other widths, and several letters drawn as one, pass for the plain ones too.

    >>> name_fault("8K"), name_fault("8É")
    ('', '')
    >>> name_fault("８K")
    '８ is FULLWIDTH DIGIT EIGHT (U+FF18), which only looks like 8. Type 8 instead.'
    """
    for alike in (*hidden(text), *look_alikes(text, name=True)):
        return alike.says
    if _SOFT in text:  # in a sentence it says where a long word may be broken
        return f"There is {named(_SOFT)} here, which nobody can see. Take it out."
    for char in text:
        plain = unicodedata.normalize("NFKC", char)
        if plain != char and plain.isascii() and plain.strip():
            return f"{char} is {named(char)}, which only looks like {plain}. Type {plain} instead."
    return ""


def visible(text: str) -> str:
    r"""Return text with every character that cannot be seen, or steers a terminal, as its number.

    >>> visible("\x1b[31mred\u202e"), visible("a\tb\n")
    ('\\x1b[31mred\\u202e', 'a\tb\n')
    """
    return _HIDDEN.sub(lambda found: _numbered(found[0]), text)


def _numbered(char: str) -> str:
    code = ord(char)
    if 0xDC80 <= code <= 0xDCFF:
        return f"\\x{code - 0xDC00:02x}"
    if code < 0x100:
        return f"\\x{code:02x}"
    return f"\\u{code:04x}" if code < 0x10000 else f"\\U{code:08x}"


def shown(text: str, most: int = SHOWN) -> str:
    r"""Return text as a message shows it: on one line, all of it seen, and not longer than `most`.

    What is cut says how long the whole is.

    >>> shown("ratio.share"), shown("9" * 3000, 5), shown("a\x1b")
    ('ratio.share', '99999… (3,000 characters)', 'a\\x1b')
    """
    cut = text if len(text) <= most else f"{text[:most]}… ({len(text):,} characters)"
    return visible(" ".join(cut.splitlines()))


def shown_value(value: object, most: int = 40) -> str:
    """Return a value of a TOML file as a person wrote it, as :func:`shown`.

    >>> shown_value(True), shown_value({"a": 1}), shown_value("8K"), shown_value([1] * 90, 9)
    ('true', 'a table', "'8K'", '[1, 1, 1,… (270 characters)')
    """
    if isinstance(value, dict):
        return "a table"
    if isinstance(value, bool):
        return str(value).lower()
    return shown(str(value) if hasattr(value, "isoformat") else repr(value), most)


_QUOTED = re.compile(rf"‘([^‘’]{{{2 * SHOWN},}})’")
_UNBROKEN = re.compile(r"\S{400,}")  # a path may well have 300
_MOST_LINE = 6000  # a list of all topics has some 2,500


def short_message(message: str) -> str:
    """Return a message without the bulk of anything huge that it quotes.

    >>> short_message("‘" + "9" * 3000 + "’ is not a score.")[-39:]
    '99… (3,000 characters)’ is not a score.'
    """
    message = _QUOTED.sub(lambda found: f"‘{shown(found[1])}’", message)
    message = _UNBROKEN.sub(lambda found: shown(found[0]), message)
    if max(map(len, message.split("\n"))) <= _MOST_LINE:
        return message
    return "\n".join(
        line if len(line) <= _MOST_LINE else shown(line, _MOST_LINE) for line in message.split("\n")
    )
