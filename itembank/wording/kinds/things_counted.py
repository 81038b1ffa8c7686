"""What the words beside a number say that it counts: the stem of a noun, or a unit."""

from __future__ import annotations

import re

from itembank.text.late_pattern import late
from itembank.wording.sentences.phrases import unit_names
from itembank.wording.sentences.prompt import SLOT

WORDS_AFTER = late(r"[ -]?(?P<words>[^\W_]+[\w'^/]*(?: [a-z'-]+){0,3})", re.I)

SMALL_WORDS = frozenset(
    (
        "of", "the", "a", "an", "and", "or", "in", "on", "at", "to", "for", "by", "with", "from",
        "is", "are", "was", "were", "as", "than", "more", "less", "fewer", "times", "each", "every",
        "per", "altogether", "that", "which", "who", "when", "it", "they", "she", "he", "its",
        "his", "her", "their", "has", "have", "had", "costs", "cost", "but", "so", "then", "away",
        "off", "back", "left", "long", "wide", "high", "tall", "deep", "thick", "old", "further",
        "extra", "others", "other", "another", "between", "percent", "out", "into", "apart", "only",
        "same", "such", "also", "equal", "parts", "part", "not", "how", "what", "goes", "go", "up",
        "down", "full", "all", "both", "this", "these", "those", "will", "would", "can", "could",
        "do", "does", "did", "be", "been",
    )
)  # fmt: skip


def noun_stem(word: str) -> str:
    """Return a noun without the ending of its plural.

    >>> [noun_stem(word) for word in ("boxes", "eggs", "people", "classes", "pennies", "buses")]
    ['box', 'egg', 'people', 'class', 'penny', 'bus']
    """
    word = word.lower().removesuffix("'s").removesuffix("'")
    if word in _PLURALS:
        return _PLURALS[word]
    for ending, singular in (
        ("ies", "y"),
        ("xes", "x"),
        ("sses", "ss"),
        ("ches", "ch"),
        ("shes", "sh"),
        ("uses", "us"),
    ):
        if word.endswith(ending) and len(word) > len(ending) + 1:
            return word.removesuffix(ending) + singular
    return word.removesuffix("s") if word.endswith("s") and word[-2:] not in ("ss", "us") else word


_PLURALS = {
    "people": "people", "person": "people", "children": "child", "men": "man", "women": "woman",
    "loaves": "loaf", "shelves": "shelf", "knives": "knife", "leaves": "leaf", "halves": "half",
    "mice": "mouse", "geese": "goose", "feet": "foot", "potatoes": "potato", "tomatoes": "tomato",
    "buses": "bus", "minibuses": "minibus", "gases": "gas",
}  # fmt: skip


def unit_at_start(words: str) -> str:
    """Return the name of a unit that words begin with, the longest there is, or ``""``.

    >>> unit_at_start("kilometres per hour for"), unit_at_start("square metres"), unit_at_start("in")
    ('kilometres per hour', 'square metres', '')
    """
    names, tokens = unit_names(), words.split()
    for size in range(min(len(tokens), 4), 0, -1):
        name = " ".join(tokens[:size])
        if name.casefold() in names and name.lower() not in ("in", "st", "pt", "stone"):
            return name
    return ""


def counted_noun(words: str, single: bool = False) -> str:
    """Return the noun that words after a number begin with: a plural among them.

    After 1 it is the first word; after another number a singular is no thing that is counted.
    """
    tokens = []
    for token in words.split():
        if token.lower() in SMALL_WORDS:
            break
        tokens.append(token)
    if not tokens:
        return ""
    plural = next(
        (t for t in tokens if t.lower() in _PLURALS or (t.endswith("s") and not t.endswith("'s"))),
        "",
    )
    return noun_stem(plural or tokens[0]) if plural or single else ""


def noun_before(text: str, end: int) -> str:
    """Return what *each* speaks of: the noun of the last count before it in its sentence."""
    start = max(text.rfind(mark, 0, end) for mark in ".?!") + 1
    for match in reversed(list(re.finditer(SLOT, text[start:end]))):
        after = WORDS_AFTER.match(text, start + match.end())
        if after and not unit_at_start(after["words"]) and (noun := counted_noun(after["words"])):
            return noun
    plural = re.match(r" ?(?:[A-Za-z'-]+ )*?([a-z]+s) (?:cost|are|weigh)\b", text[start:end], re.I)
    return noun_stem(plural[1]) if plural else ""
