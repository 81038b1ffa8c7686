"""What the answer to a question counts or measures, as far as its words tell.

It says which units may stand beside a number whose key is bare: *how many boxes*, *in metres*.
"""

from __future__ import annotations

import re

from itembank.data_class import dataclass
from itembank.figures.figure import kind_of, printed_on
from itembank.items.item import Item
from itembank.notation import tree as t
from itembank.notation.units import CURRENCY, UNITS, unit_known
from itembank.text.late_pattern import late

_UNIT_NAMES: dict[str, str] = {}
for _unit, _known in (*UNITS.items(), *CURRENCY.items()):
    _UNIT_NAMES |= {_known.singular.lower(): _unit, _known.many.lower(): _unit}
    if len(_unit) > 1:
        _UNIT_NAMES[_unit.lower()] = _unit
_UNIT_NAMES |= {"pounds": "£", "pence": "p"}
_ANY_UNIT = "|".join(re.escape(name) for name in sorted(_UNIT_NAMES, key=len, reverse=True))
_NAMED = late(
    rf"\b(?:in|to|into|how many|how many more|number of|nearest|whole) ({_ANY_UNIT})(?![\w^])", re.I
)
_FRACTION_OF = late(rf"\b(?:fraction|decimal|part) of (?:an?|one|#) ({_ANY_UNIT})(?![\w^])", re.I)
_AFTER_NUMBER = late(rf"[ -]?({_ANY_UNIT})(?![\w^])", re.I)
_HOW_MANY = late(r"\b(?:how many|number of)((?: [a-z-]+){1,4})", re.I)
_COUNTED = late(
    r"\bhow many (?:of (?:them|these|those) )?(?:fit|go|are|is|were|was|can|could|will|would|do|does|did|have|has)\b",
    re.I,
)
"""How many fit in: things are counted, though no noun says which."""
_NUMBERS_OF = late(rf"\bnumbers of ({_ANY_UNIT})(?![\w^])", re.I, needs="numbers of ")
_TABLE_OF = late(r"^A table gives ([A-Za-z ]+), and ")
_IN_BRACKETS = late(r"\(([A-Za-z°]+(?:\^[23])?)\)")
_STOPS_NOUN = frozenset(
    (
        "are", "is", "was", "were", "do", "does", "did", "can", "could", "will", "would", "has",
        "have", "had", "in", "on", "of", "at", "to", "for", "from", "each", "there", "that", "than",
        "must", "should", "the", "a", "he", "she", "it", "they", "left", "altogether",
    )
)  # fmt: skip
_PLURALS = frozenset({"people", "children", "men", "women"})
_PURE = late(
    r"\b(?:fraction|percentage|per cent|ratio|probability|proportion|scale factor|times as)\b|"
    r"\bhow many times\b|%",
    re.I,
)
_MEASURES: tuple[tuple[str, re.Pattern[str]], ...] = tuple(
    (dimension, re.compile(rf"\b(?:{words})\b", re.I))
    for dimension, words in (
        ("area", "area"),
        ("volume", "volume"),
        ("speed", "speed|how fast"),
        ("angle", "angles?"),
        ("temperature", "temperatures?|how (?:hot|cold|warm)"),
        ("time", "how long (?:do|does|did|will|would|is the (?:journey|wait|lesson|film))|time"),
        ("mass", "mass|weight|how heavy|weighs?"),
        ("money", "costs?|price|pays?|how much money|earns?|spends?|saves?|bill|change"),
        (
            "length",
            "length|width|height|depth|distance|perimeter|circumference|radius|diameter|"
            "how (?:far|long|wide|tall|high|deep)",
        ),
    )
)


@dataclass(frozen=True, slots=True)
class About:
    """What an answer is a number of, as far as the words of its question tell.

    `units` may stand beside the number; `named` says that the question names the one unit;
    `noun` is what is counted instead, in the plural; `beside` are the units that are printed
    beside a letter already, as in 3k°.
    """

    units: frozenset[str] = frozenset()
    named: bool = False
    noun: str = ""
    beside: frozenset[str] = frozenset()


def about(item: Item) -> About:
    """Return what the answer to `item` counts or measures.

    >>> from itembank.items.topics.registry import find_item
    >>> about(find_item("fractions.add-mixed/challenge/216"))
    About(units=frozenset({'kg'}), named=True, noun='', beside=frozenset())
    >>> about(find_item("equations.form-and-solve/support/777")).noun
    'lettuces'
    """
    words = words_of(item)
    named = named_units(words)
    if named:
        return About(frozenset({named}), named=True)
    question = _last_sentence(words)
    if part := _FRACTION_OF.search(question):
        return About(frozenset({_UNIT_NAMES[part[1].lower()]}))
    noun = counted_noun(question) or counted_noun(words)
    if noun or _PURE.search(question) or _COUNTED.search(question):
        return About(noun=noun)
    if told := _NUMBERS_OF.search(words):  # a bus was late by these numbers of minutes
        return About(frozenset({_UNIT_NAMES[told[1].lower()]}))
    units = _measured(question, printed_units(item)) or _axis_units(item) or _letter_units(item)
    return About(units, beside=_beside_letters(item))


def _axis_units(item: Item) -> frozenset[str]:
    """Return the one unit that a figure's axis or table bears, as *Rainfall (mm)* does."""
    if item.figure is None:
        return frozenset()
    words = kind_of(item.figure).words(item.figure)
    found = {_UNIT_NAMES.get(name, name) for name in _IN_BRACKETS.findall(words)}
    if table := _TABLE_OF.match(words):  # a table of minutes, and how many trips took each
        found.add(_UNIT_NAMES.get(table[1].lower(), ""))
    return frozenset(found & set(UNITS)) if len(found) == 1 else frozenset()


def _letter_units(item: Item) -> frozenset[str]:
    """Return the one unit of a figure's labels where a letter among them stands without it.

    Beside 48° such an x is an angle: both 44 and 44° say how large. Where x° is printed, x is a
    number.
    """
    if item.figure is None or _beside_letters(item):
        return frozenset()
    printed = printed_on(item.figure)
    units = {part.unit for run in printed for part in t.walk(run) if isinstance(part, t.Quantity)}
    return frozenset(units) if len(units) == 1 and any(map(t.symbols, printed)) else frozenset()


def _beside_letters(item: Item) -> frozenset[str]:
    printed = [run for run in item.prompt if not isinstance(run, str)]
    if item.figure is not None:
        printed += printed_on(item.figure)
    return frozenset(
        part.unit
        for run in printed
        for part in t.walk(run)
        if isinstance(part, t.Quantity) and t.symbols(part)
    )


def words_of(item: Item) -> str:
    """Return the words of a prompt, # standing for what is printed as mathematics."""
    return "".join(run if isinstance(run, str) else "#" for run in item.prompt)


def named_units(words: str) -> str:
    """Return the unit that the words of a question name, the last one, or an empty string.

    >>> named_units("How long is it really, in metres?"), named_units("How long is it?")
    ('m', '')
    """
    found = _NAMED.findall(words)
    return _UNIT_NAMES.get(found[-1].lower(), "") if found else ""


def counted_noun(words: str) -> str:
    """Return what the words of a question ask the number of, where it is no unit.

    >>> counted_noun("How many full boxes are there?"), counted_noun("How many are red?")
    ('boxes', '')
    """
    for found in reversed(list(_HOW_MANY.finditer(words))):
        for word in found[1].lower().split():
            if word in _STOPS_NOUN:
                break
            if word in _UNIT_NAMES:
                return ""
            if word in _PLURALS or (word.endswith("s") and not word.endswith("ss")):
                return word
    return ""


def printed_units(item: Item) -> frozenset[str]:
    """Return the units and currency signs that a prompt prints, as signs or as words."""
    found = set()
    for place, run in enumerate(item.prompt):
        if isinstance(run, str):
            after = _AFTER_NUMBER.match(run) if place else None
            if after:
                found.add(_UNIT_NAMES[after[1].lower()])
            continue
        for part in t.walk(run):
            if isinstance(part, t.Quantity):
                found.add(part.unit)
            elif isinstance(part, t.Money):
                found.add(part.sign)
    return frozenset(found)


def _last_sentence(words: str) -> str:
    sentences = [
        sentence for sentence in re.split(r"(?<=[.?!])\s+", words.strip()) if sentence.strip(" #.")
    ]
    return sentences[-1] if sentences else words


def _measured(question: str, printed: frozenset[str]) -> frozenset[str]:
    """Return the units that may stand beside the answer to a question that measures."""
    kinds: dict[str, set[str]] = {}
    for unit in printed:
        kinds.setdefault(unit_known(unit).dimension, set()).add(unit)
    dimension = next((dimension for dimension, words in _MEASURES if words.search(question)), "")
    if dimension == "angle":
        return frozenset({"°"})
    if not dimension:
        # What is added up or shared has the unit of what is printed, if that is of one kind.
        dimension = next(iter(kinds)) if len(kinds) == 1 else ""
    found = kinds.get(dimension, set())
    if not found and dimension in ("area", "volume"):
        power = 2 if dimension == "area" else 3
        found = {f"{unit}^{power}" for unit in kinds.get("length", ())} & set(UNITS)
    if not found and dimension == "speed":
        pairs = {
            f"{far}/{time}" for far in kinds.get("length", ()) for time in kinds.get("time", ())
        }
        found = pairs & set(UNITS)
    return frozenset(found) if len(found) == 1 else frozenset()
