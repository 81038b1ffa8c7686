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

    >>> [noun_stem(word) for word in ("boxes", "eggs", "people", "classes", "pennies", "houses")]
    ['box', 'egg', 'people', 'class', 'penny', 'house']
    """
    word = word.lower().removesuffix("'s").removesuffix("'")
    if word in _SINGLE:
        return _SINGLE[word]
    # Longer endings first: houses are not told by the -uses of cactuses.
    for ending, singular in (
        ("ies", "y"),
        ("ouses", "ouse"),
        ("auses", "ause"),
        ("uses", "us"),
        ("sses", "ss"),
        ("ches", "ch"),
        ("shes", "sh"),
        ("xes", "x"),
        ("oes", "o"),
    ):
        # So short before it, the ending is the noun's own: pies, fuses, toes.
        if word.endswith(ending) and len(word) > len(ending) + 1:
            return word.removesuffix(ending) + singular
    return word.removesuffix("s") if word.endswith("s") and word[-2:] not in ("ss", "us") else word


def plural(noun: str) -> str:
    """Return the plural of a counted noun.

    >>> plural("box"), plural("people"), plural("egg"), plural("baby"), plural("hero")
    ('boxes', 'people', 'eggs', 'babies', 'heroes')
    """
    if noun in _IRREGULAR:
        return _IRREGULAR[noun]
    if noun.endswith(("s", "x", "ch", "sh")):
        return noun + "es"
    if noun.endswith("y") and noun[-2:-1] not in "aeiou":
        return noun[:-1] + "ies"
    return noun + "s"


_IRREGULAR = {
    "child": "children", "man": "men", "woman": "women", "mouse": "mice", "goose": "geese",
    "foot": "feet", "tooth": "teeth", "loaf": "loaves", "shelf": "shelves", "knife": "knives",
    "leaf": "leaves", "half": "halves", "wolf": "wolves", "calf": "calves", "scarf": "scarves",
    "potato": "potatoes", "tomato": "tomatoes", "mango": "mangoes", "hero": "heroes",
    "volcano": "volcanoes", "domino": "dominoes", "shoe": "shoes", "horseshoe": "horseshoes",
    "toe": "toes", "canoe": "canoes", "quiz": "quizzes", "lens": "lenses", "gas": "gases",
    "axe": "axes", "cookie": "cookies", "brownie": "brownies", "smoothie": "smoothies",
    "movie": "movies", "calorie": "calories", "hoodie": "hoodies", "budgie": "budgies",
    "house": "houses", "bus": "buses", "people": "people",
}  # fmt: skip

_SINGLE = {form: noun for noun, many in _IRREGULAR.items() for form in (noun, many)} | {
    "person": "people"
}


_MANY = frozenset(_IRREGULAR.values()) | {"person"}


def is_plural(word: str) -> bool:
    """Tell whether a noun looks like a plural; *person* counts as one, since it stems to people."""
    return word.lower() in _MANY or (word.endswith("s") and not word.endswith("'s"))


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
    many = next(filter(is_plural, tokens), "")
    return noun_stem(many or tokens[0]) if many or single else ""


def noun_before(text: str, end: int) -> str:
    """Return what *each* speaks of: the noun of the last count before it in its sentence."""
    start = max(text.rfind(mark, 0, end) for mark in ".?!") + 1
    for match in reversed(list(re.finditer(SLOT, text[start:end]))):
        after = WORDS_AFTER.match(text, start + match.end())
        if after and not unit_at_start(after["words"]) and (noun := counted_noun(after["words"])):
            return noun
    many = re.match(r" ?(?:[A-Za-z'-]+ )*?([a-z]+s) (?:cost|are|weigh)\b", text[start:end], re.I)
    return noun_stem(many[1]) if many else ""
