"""Words of a question that stand beside a typed number: *27 buses*, *3/4 of the members*."""

from __future__ import annotations

import re

from itembank.notation import tree as t
from itembank.notation.units import UNITS
from itembank.text.late_pattern import late

_HEAT = late(r"°|\btemperatures?\b|\bdegrees?\b|\bcelsius\b", re.I)
_CELSIUS = late(
    r"(?<=\d) ?(?:°(?: ?C(?:elsius)?)?|degrees?(?: C| celsius)?|deg C|C|celsius)(?!\w)\.?$", re.I
)
_TAIL = late(r"(?<=[\d\w)%°]) +([A-Za-z]{3,})$|(?<=\d)([A-Za-z]{5,})$")
_HEAD = late(r"([A-Za-z]{2,})[ :=]+")
_SMALL_WORDS = frozenset(
    (
        "ther", "ar", "is", "it", "they", "he", "sh", "w", "you", "i", "th", "a", "was", "wer",
        "ha", "hav", "need", "will", "b", "each", "get", "got", "tak", "cost", "altogether",
        "total", "left", "peopl", "chanc",
    )
)  # fmt: skip
_OF_WHAT = late(
    r"(?<=[\w%]) of (?:(?:an?|the|one|1|all|all the) ([A-Za-z]{3,})|([A-Za-z]{3,})|it|them)$", re.I
)
_WORDS_AFTER = late(r"(?<=\d) +([A-Za-z]+(?: [A-Za-z]+)+)$")
_MATHS = ("or", "and", "of", "to", "sqrt", "root", "pi", "than", "per", "recurring")
_TIMES = ("twice", "double", "triple")
_BOUNDS = frozenset(("over", "under", "above", "below", "more", "less", "fewer"))
"""Words that make a bound, or another number, of a number they stand before."""
_DENIALS = ("not", "no", "never", "isn", "except", "without")
_KEPT = frozenset((*_MATHS, *_TIMES, *_DENIALS))
"""Words with a meaning of their own, wherever else they stand: mathematics, and denials."""


def without_words(plain: str, key: t.Node, words: str) -> str:
    """Return an answer without the nouns of its question: 27 buses is 27.

    Only words that stand in the prompt are taken off, with small words such as *there are*
    in front of a number; any other word stays, and the answer cannot be read.

    >>> from itembank.notation.tree import Int
    >>> [without_words(text, Int(27), "How many buses are needed?")
    ...  for text in ("27 buses", "27 ducks")]
    ['27', '27 ducks']
    """
    known = {_stem(word) for word in re.findall(r"[a-z]+", words.lower())} | _SMALL_WORDS
    units = {part.unit for part in t.walk(key) if isinstance(part, t.Quantity)}
    if units == {"°C"} or (not units and _HEAT.search(words)):
        plain = _CELSIUS.sub("", plain)
    of = _OF_WHAT.search(plain)
    if of and _stem((of[1] or of[2] or "it").lower()) in known:
        plain = plain[: of.start()]

    def spoken(word: str) -> bool:
        folded = word.lower()
        return _stem(folded) in known and folded not in _KEPT and folded not in UNITS

    after = _WORDS_AFTER.search(plain)
    if after and set(after[1].lower().split()) <= _asked_words(words):
        plain = plain[: after.start()]
    # One word after another, from the end: 27 big red buses.
    after = _TAIL.search(plain)
    while after and spoken(after[1] or after[2]):
        plain = plain[: after.start()].rstrip(" ,.")
        after = _TAIL.search(plain)
    before = _HEAD.match(plain)
    while before and spoken(before[1]) and before[1].lower() not in _BOUNDS:
        plain = plain[before.end() :].lstrip(" :=")
        before = _HEAD.match(plain)
    return plain


def _asked_words(words: str) -> set[str]:
    """Return the words of what is asked: in a story, of its last sentence.

    *20 on the lower deck* answers *How many are on the lower deck?*; *20 on the top deck* does not.
    """
    last = re.split(r"(?<=[.?!])\s+", words.strip())[-1]
    return set(re.findall(r"[a-z]+", last.lower())) - UNITS.keys() - _KEPT


def _stem(word: str) -> str:
    """Return a noun without its plural ending, near enough to match bus with buses."""
    for ending in ("es", "s"):
        if len(word) > 3 and word.endswith(ending):
            return word[: -len(ending)].rstrip("e")
    return word.rstrip("e")
