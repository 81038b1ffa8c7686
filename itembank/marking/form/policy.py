"""How strictly an item is marked: the trade's defaults, and the words an item may change them by.

The defaults are common practice in schools (no source):

* the form the item names is required; but where its form is only a convention (a solution, an
  amount, a number), lowest terms are required only when the question says so;
* a unit may be left out, unless the question asks for units; a unit that the question names
  (*in centimetres*) is the one to give;
* pounds and pence have two places after the point;
* an answer that has not been rounded counts as the right value only when the question rounds.

An item's `accept` holds words that change them. :data:`ACCEPT` says what each means; besides
them stand ``within N`` (any answer no further than N from the key is right, N in the key's own
unit) and the name of any other form (an answer in that form is right as well).

>>> accept_fault("no-unit"), accept_fault("within 0.1"), accept_fault("decimal")
('', '', '')
>>> accept_fault("nounit")
'‘nounit’ is not a way to accept answers. Did you mean no-unit?'
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import lru_cache
from typing import Literal

from itembank.files.faults import join_words, nearest
from itembank.items.forms.form_rules import FORMS
from itembank.items.item import Item
from itembank.marking.worth.marked_by_kind import marking_of
from itembank.notation import tree as t
from itembank.notation.units import CURRENCY, UNITS
from itembank.notation.value import exact
from itembank.text.in_words import counted
from itembank.text.late_pattern import late
from itembank.wording.tasks.answer_phrases import rounding, says_simplest

ACCEPT: dict[str, str] = {
    "any-form": "any form of the right value",
    "any-order": "the parts of a list in any order",
    "any-places": "money and rounded numbers with more or fewer places after the point",
    "lowest-terms-needed": "fractions in their lowest terms only, though the question is silent",
    "no-unit": "the number alone, though the question asks for a unit",
    "unit-needed": "an answer with its unit only",
}

_WITHIN = late(r"within (\d{1,9}(?:\.\d{1,9})?|\d{1,6}/[1-9]\d{0,5})")
_UNITS_ASKED = late(
    r"\b(?:with|includ\w*|stat\w*|giv\w*|writ\w*) (?:\w+ ){0,4}units?\b(?! (?:price|cost|form))",
    re.I,
)
_WITHOUT_UNITS = late(r"\bwithout (?:the |its |any )?units?\b|\bno units?\b", re.I)
_INDEX = late(
    r"\bindex (?:form|notation)\b|\bwith (?:indices|an index)\b|\busing (?:indices|powers|index)\b|"
    r"\bas (?:a|one) (?:single )?power\b|\bas a product of powers\b",
    re.I,
)
CONVENTIONS = frozenset({"number", "solution", "inequality", "roots", "amount", "amounts"})
"""Forms that say how the tool writes an answer more than what was asked for."""

Rounding = tuple[Literal["places", "figures", "nearest"], int]


@dataclass(frozen=True, slots=True)
class Policy:
    """How an item's answers are marked.

    Attributes
    ----------
    forms : the forms that are right; none means any.
    lowest_terms : whether a form that is a convention requires fractions in lowest terms.
    unit : what to do about a unit: it may be missing, or it is needed.
    named_unit : the unit or currency sign the question names, or an empty string.
    places : whether money and rounded numbers need the places asked for.
    rounding : how the question rounds, or None.
    unrounded : the number before it is rounded, where it is known exactly.
    within : how far from the key an answer may be, in the key's own unit.
    ordered : whether the order of a list matters.
    powers : whether the question asks for powers with an index, as *in index form* does.
    """

    forms: tuple[str, ...]
    lowest_terms: bool = True
    unit: Literal["may be missing", "needed"] = "may be missing"
    named_unit: str = ""
    places: bool = True
    rounding: Rounding | None = None
    unrounded: Fraction | None = None
    within: Fraction = Fraction(0)
    ordered: bool = True
    powers: bool = False


def rounded_to(rounding: Rounding) -> str:
    """Return the words for what a question rounds to.

    >>> rounded_to(("places", 1)), rounded_to(("nearest", 100))
    ('1 decimal place', 'the nearest 100')
    """
    detail, amount = rounding
    return {
        "places": counted(amount, "decimal place"),
        "figures": counted(amount, "significant figure"),
        "nearest": f"the nearest {'whole number' if amount == 1 else amount}",
    }[detail]


def accept_fault(word: str) -> str:
    """Return what is wrong with a word of an item's `accept`, or an empty string."""
    if word in ACCEPT or word in FORMS:
        return ""
    if word.startswith("within"):
        return "" if _WITHIN.fullmatch(word) else f"‘{word}’ needs a number, as in ‘within 0.1’."
    like = nearest(word, [*ACCEPT, *FORMS], most=1)
    best = f"Did you mean {like[0]}?" if like else f"There are {join_words(sorted(ACCEPT))}."
    return f"‘{word}’ is not a way to accept answers. {best}"


def policy(item: Item) -> Policy:
    """Return how `item` is marked: what its words ask for, changed by what it accepts.

    >>> from itembank.items.topics.registry import find_item
    >>> policy(find_item("ratio.scale/core/3")).named_unit
    'cm'
    """
    words = "".join(run for run in item.prompt if isinstance(run, str))
    found = _from_words(words, item.form, item.accept, _unit_of(item.key))
    if (rounded := marking_of(item.ask).rounded(item.ask)) is None:
        return found
    target, to = rounded
    return replace(found, rounding=to, unrounded=_unrounded(target, item.key))


def _unrounded(target: t.Node, key: t.Node) -> Fraction | None:
    """Return the number that is rounded, in the key's unit; None for roots and π."""
    unit = _unit_of(key)
    facts = UNITS.get(unit) or CURRENCY.get(unit)
    percent = any(isinstance(part, t.Percent) for part in t.walk(key))
    try:
        return exact(target) / (facts.size if facts else Fraction(1, 100) if percent else 1)
    except t.NotationError:
        return None


def _unit_of(key: t.Node) -> str:
    for part in t.walk(key):
        if isinstance(part, t.Quantity):
            return part.unit
        if isinstance(part, t.Money):
            return part.sign
    return ""


@lru_cache(maxsize=4_096)
def _from_words(words: str, form: str, accept: tuple[str, ...], unit: str) -> Policy:
    forms = (form, *(word for word in accept if word in FORMS))
    needed = bool(unit and _UNITS_ASKED.search(words) and not _WITHOUT_UNITS.search(words))
    if "no-unit" in accept:
        needed = False
    if "unit-needed" in accept:
        needed = True
    within = next((_WITHIN.fullmatch(word) for word in accept if word.startswith("within")), None)
    return Policy(
        forms=() if "any-form" in accept else forms,
        lowest_terms=form not in CONVENTIONS
        or "lowest-terms-needed" in accept
        or says_simplest(words),
        unit="needed" if needed else "may be missing",
        named_unit=unit if _names(words, unit) else "",
        places="any-places" not in accept,
        rounding=rounding(words),
        within=Fraction(within[1]) if within else Fraction(0),
        ordered="any-order" not in accept,
        powers=bool(_INDEX.search(words)),
    )


def _names(words: str, unit: str) -> bool:
    """Tell whether a question asks for its answer in this unit, as *in centimetres* does."""
    known = UNITS.get(unit) or CURRENCY.get(unit)
    if known is None:
        return False
    names = "|".join(re.escape(name) for name in (unit, known.one, known.many))
    return bool(re.search(rf"\b(?i:in|to|into|how many) (?:{names})(?!\w)", words))


# What an answer counts or measures, where the key is a bare number.

_UNIT_NAMES: dict[str, str] = {}
for _unit, _known in (*UNITS.items(), *CURRENCY.items()):
    _UNIT_NAMES |= {_known.one.lower(): _unit, _known.many.lower(): _unit}
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
_STOPS_NOUN = frozenset(
    [
        "are",
        "is",
        "was",
        "were",
        "do",
        "does",
        "did",
        "can",
        "could",
        "will",
        "would",
        "has",
        "have",
        "had",
        "in",
        "on",
        "of",
        "at",
        "to",
        "for",
        "from",
        "each",
        "there",
        "that",
        "than",
        "must",
        "should",
        "the",
        "a",
        "he",
        "she",
        "it",
        "they",
        "left",
        "altogether",
    ]
)
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
    `noun` is what is counted instead, in the plural.
    """

    units: frozenset[str] = frozenset()
    named: bool = False
    noun: str = ""


def about(item: Item) -> About:
    """Return what the answer to `item` counts or measures.

    >>> from itembank.items.topics.registry import find_item
    >>> about(find_item("fractions.add-mixed/challenge/216"))
    About(units=frozenset({'kg'}), named=True, noun='')
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
    if noun or _PURE.search(question):
        return About(noun=noun)
    return About(_measured(question, printed_units(item)))


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
    sentences = [one for one in re.split(r"(?<=[.?!])\s+", words.strip()) if one.strip(" #.")]
    return sentences[-1] if sentences else words


def _measured(question: str, printed: frozenset[str]) -> frozenset[str]:
    """Return the units that may stand beside the answer to a question that measures."""
    kinds: dict[str, set[str]] = {}
    for unit in printed:
        kinds.setdefault((UNITS.get(unit) or CURRENCY[unit]).dimension, set()).add(unit)
    dimension = next((one for one, words in _MEASURES if words.search(question)), "")
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
