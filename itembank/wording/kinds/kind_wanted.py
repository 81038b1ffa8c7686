"""The kinds that a question asks for: a length, a sum of money, how many boxes, litres a minute."""

from __future__ import annotations

import re
from collections.abc import Sequence

from itembank.data_class import dataclass
from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.notation.units import unit_known
from itembank.text.late_pattern import late
from itembank.wording.kinds.kind import PLAIN, Kind, either, of_dimension, of_unit
from itembank.wording.kinds.story_kinds import StoryKinds
from itembank.wording.kinds.things_counted import SMALL_WORDS, is_plural, noun_stem, unit_at_start
from itembank.wording.model_summary import Modelled
from itembank.wording.sentences.phrases import unit_names
from itembank.wording.sentences.prompt import SLOT, slotted
from itembank.wording.sentences.units_said import unit_said


@dataclass(frozen=True, slots=True)
class Wanted:
    """The kinds that a question may ask for; `sized` where the size of the unit is fixed.

    `noun` is what is counted, of *How many eggs …*; `says` names what is asked, for a message.
    """

    kinds: tuple[Kind, ...]
    sized: bool
    says: str
    noun: str = ""


_KINDS: tuple[tuple[re.Pattern[str], tuple[str, ...]], ...] = tuple(
    (late(pattern, re.I), kinds)
    for pattern, kinds in (
        (
            r"\bhow (?:far|wide|tall|high|deep)\b|\bwhat (?:length|width|height|distance|depth)\b|"
            r"\bthe (?:perimeter|distance|circumference|width|height|depth)\b",
            ("length",),
        ),
        (
            r"\bhow heavy\b|\bwhat (?:mass|weight)\b|\bhow much (?:does|do|did|will|would) .* weigh\b|"
            r"\bthe (?:\w+ )?(?:mass|weight) of\b",
            ("mass",),
        ),
        (r"\bhow long\b", ("length", "time", "calendar time")),
        (r"\b(?:what|work out|find|calculate)\b.*\bthe (?:\w+ ){0,2}area\b", ("area",)),
        (r"\b(?:what|work out|find|calculate)\b.*\bthe (?:\w+ )?volume\b", ("volume",)),
        (r"\b(?:what|work out|find|calculate|how)\b.*\bspeed\b", ("speed",)),
    )
)

_MONEY = late(
    r"\bhow much (?:(?:more |less )?money|does (?:it|each|the|a|one|an)\b.*\bcost|(?:do|does|did|will|would|is|are)\b.*"
    r"\b(?:cost|pay|spend|earn|charge|save|owe)\b)|\bwhat (?:do|does|did|will|would) .*\bcost\b|"
    r"\b(?:the|what) (?:\w+ )?(?:cost|price|fare|profit|wage)\b",
    re.I,
)

_MANY = late(
    r"\bhow many (?:more |fewer |full |whole |other |extra |complete )?(?P<noun>[a-z'-]+)(?: (?P<next>[a-z'-]+))?",
    re.I,
)

_RATE_ASKED = late(
    r"\bin (?P<top>[a-z]+) (?P<per>per|for each|for every|an?|each) (?P<bottom>[a-z]+)\b", re.I
)

_PART = late(
    r"\b(?:what|which) (?:fraction|percentage|proportion)\b|\bas an? (?:fraction|percentage)\b",
    re.I,
)

_MUCH = late(r"\bhow much (?:more |less )?(?P<noun>[a-z'-]+)\b", re.I)


def wanted_kinds(
    runs: Sequence[Run], question: str, model: Modelled, kinds: StoryKinds
) -> Wanted | None:
    """Return the kinds that a question asks for, or None where that is not known."""
    key_unit = _unit_of_key(model.key)
    bare = not any(isinstance(part, t.Quantity | t.Money) for part in model.parts())
    if key_unit and bare:
        return Wanted((of_unit(key_unit),), True, _named(key_unit))
    if key_unit:
        base = of_dimension(unit_known(key_unit).dimension)
        return Wanted((base,), True, _named(key_unit))
    if _PART.search(question) or isinstance(model.key, t.Percent):
        return Wanted((PLAIN,), True, "a part of a whole")
    if rate := _RATE_ASKED.search(question):
        units = [unit_names().get(rate[name].casefold()) for name in ("top", "bottom")]
        if units[1]:
            top = of_unit(units[0]) if units[0] else PLAIN
            return Wanted(
                (top.over(of_unit(units[1])),),
                True,
                f"{rate['top']} {rate['per']} {rate['bottom']}",
            )
    unit = unit_said(question)
    if unit and not any(isinstance(part, t.Percent) for part in t.walk(model.key)):
        sizes = [of_unit(unit)]
        if not bare:
            # A key that is a bare number of a unit is reckoned from the base unit.
            sizes.append(of_dimension(unit_known(unit).dimension))
        return Wanted((*sizes, PLAIN) if unit == "°" else tuple(sizes), True, _named(unit))
    many = _MANY.search(question)
    if many:
        words = [many["noun"], many["next"] or ""]
        if any(word.casefold() in unit_names() for word in words) or words[0] == "degrees":
            return None
        # *How many pencil cases* is about cases, though the word after *many* is another.
        follows = is_plural(words[1]) and words[1].lower() not in SMALL_WORDS
        if follows and not is_plural(words[0]):
            words[0] = " ".join(words)
        noun = next((noun_stem(w) for w in words if w and noun_stem(w) in kinds.nouns), "")
        named = noun_stem(words[0].split()[-1])
        return Wanted((PLAIN,), True, f"how many {words[0]}", noun or named)
    text = slotted(runs).text
    prints_money = any(
        isinstance(part, t.Money)
        for run in runs
        if not isinstance(run, str)
        for part in t.walk(run)
    )
    if prints_money and _MONEY.search(question):
        return Wanted((of_dimension("money"), of_unit("€"), of_unit("$")), False, "a sum of money")
    for pattern, names in _KINDS:
        if names == ("speed",) and not any("length" in dict(k.powers) for k in kinds.amounts):
            continue  # a typing speed is in words
        if pattern.search(question):
            return Wanted(tuple(of_dimension(name) for name in names), False, either(names[:2]))
    if much := _MUCH.search(question):
        found = _measured(text, much["noun"])
        if found:
            return Wanted(tuple(found), False, f"how much {much['noun']}")
    return None


def _named(unit: str) -> str:
    return unit_known(unit).many


def _measured(text: str, noun: str) -> list[Kind]:
    """Return the kinds in which a story in words measures something: {300} grams of rice."""
    names = unit_names()
    of_noun = rf"{SLOT}[ -]?(?P<words>[^\W_]+(?: [a-z]+)?) of (?:\w+ )?{re.escape(noun)}\b"
    found = {unit_at_start(m["words"]).casefold() for m in re.finditer(of_noun, text, re.I)}
    return [of_unit(names[name]) for name in sorted(found) if name]


def _unit_of_key(key: t.Node) -> str:
    units = {
        part.unit if isinstance(part, t.Quantity) else part.sign
        for part in t.walk(key)
        if isinstance(part, t.Quantity | t.Money)
    }
    if len({_dimension(unit) for unit in units}) != 1:
        return ""
    return min(units, key=lambda unit: unit_known(unit).size)


def _dimension(unit: str) -> str:
    return unit_known(unit).dimension
