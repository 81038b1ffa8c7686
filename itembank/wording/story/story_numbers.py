"""Holds the model of a word problem to the figures, signs and units that its story prints.

A story is not read word by word; its model says what it asks. But nothing that could change the
answer is passed over: every number, in braces or not, in figures or in words, is used by the
model or said not to be needed; no sign or quantity stands outside braces; units agree.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.notation.line import shown_line
from itembank.notation.units import CURRENCY, UNITS, Unit
from itembank.notation.value import exact
from itembank.text.late_pattern import late
from itembank.wording.sentences.numbers_said import CARDINALS, numbers_said, strange_signs
from itembank.wording.sentences.phrases import UNIT, UNITS_ASKED, unit_names
from itembank.wording.sentences.prompt import SLOT, index_of, slot, slotted
from itembank.wording.sentences.question_sentences import questions
from itembank.wording.sentences.units_said import unit_said
from itembank.wording.tasks.reader import counts


@dataclass(frozen=True, slots=True)
class Story:
    """A prompt with the mathematics that stands for it.

    `used` are the lines of the model, what it is to find, and the options; `constants` the whole
    numbers it may use though none is printed; `not_needed` maps a number of the prompt, as it
    stands there, to the reason why the answer does not depend on it.
    """

    runs: tuple[Run, ...]
    used: tuple[t.Node, ...]
    constants: tuple[int, ...] = ()
    not_needed: Mapping[str, str] | None = None

    @property
    def words(self) -> str:
        """Return the words alone, a gap where mathematics stands."""
        return "".join(run if isinstance(run, str) else " " for run in self.runs)


def story_fault(story: Story) -> str:
    """Return what the model leaves out of account, as a sentence, or ``""``.

    >>> from itembank.notation import parse
    >>> runs = ("Work out ", parse("2/5"), " of 30.")
    >>> story_fault(Story(runs, (parse("2/5"),)))
    '30 stands outside { }: put it in { } and use it in the model, or say in ‘not_needed’ why not.'
    """
    return _sign(story) or _printed(story) or _said(story) or _units(story)


def _sign(story: Story) -> str:
    said = slotted(story.runs)
    # An exchange rate, {£1} = {$1.25}, is given as it stands.
    found = strange_signs(re.sub(rf"(?<={SLOT}) ?= ?(?={SLOT})", " to ", said.text))
    if not found:
        return ""
    shown = re.sub(SLOT, lambda match: shown_line(said.nodes[index_of(match[0])]), found)
    return f"‘{shown}’ stands outside {{ }}: put all of a number or a sum in one pair of braces."


def _printed(story: Story) -> str:
    whole = {part for node in story.used for part in t.walk(node)}
    values = values_used(story)
    asking = "".join(questions(story.runs))
    in_question = {node for i, node in enumerate(slotted(story.runs).nodes) if _stands(i, asking)}
    for run in story.runs:
        if isinstance(run, str):
            continue
        if _excused(shown_line(run), story) and run not in in_question:
            continue
        missing = _unused(run, whole, values)
        excused = _excused("" if missing is None else shown_line(missing), story)
        if missing is not None and not (
            (excused and run not in in_question) or _is_unit(run, story)
        ):
            if run in in_question:
                return f"The question itself speaks of {shown_line(missing)}, and the model does not use it."
            return (
                f"The model does not use {shown_line(missing)}, which the prompt prints: use it, or say "
                "in ‘not_needed’ why it is not needed."
            )
    return ""


def _stands(index: int, asking: str) -> bool:
    return slot(index) in asking or slot(index, letter=True) in asking


def _is_unit(node: t.Node, story: Story) -> bool:
    """Whether a 1 says what something is counted in: 1 cm stands for 5 km, 1 : 50, one ticket."""
    match node:
        case t.Ratio(parts):
            values = values_used(story)
            return t.Int(1) in parts and all(
                part == t.Int(1) or _unused(part, set(), values) is None for part in parts
            )
        case t.Quantity(t.Int(1), _) | t.Money(t.Int(1), _):
            return True
        case t.Int(1):
            # A letter by itself, as in a + 3c, is one of them.
            return any(isinstance(used, t.Relation) for used in story.used)
        case t.Relation(first, rest):
            return all(
                _unused(side, set(), values_used(story)) is None or _is_unit(side, story)
                for side in (first, *(side for _, side in rest))
            )
    return False


def _excused(text: str, story: Story) -> bool:
    return text in (story.not_needed or {})


def values_used(story: Story) -> set[Fraction]:
    """Return the values of all numbers that the model uses, and of the constants."""
    values = {Fraction(n) for n in story.constants}
    for node in story.used:
        for part in t.walk(node):
            if isinstance(part, t.Int | t.Dec | t.Mixed | t.Frac | t.Percent):
                try:
                    values.add(exact(part))
                except t.NotationError:
                    continue
    return values


def _unused(node: t.Node, whole: set[t.Node], values: set[Fraction]) -> t.Node | None:
    """Return the first number of a printed tree that the model does not use, or None.

    A unit, a per cent sign or a minus goes with its number: {30 min} is not used by 30 h, {15%}
    not by £15, {-4} not by 4. In a model without units a bare 30 may stand for {30 min}.
    """
    if node in whole:
        return None
    match node:
        case t.Neg(of):
            taken = any(
                isinstance(part, t.Sum) and any(op == "-" and term == of for op, term in part.rest)
                for part in whole
            )
            return None if taken or _minus_of(node, whole) else node
        case t.Bracket(of):
            return _unused(of, whole, values)
        case t.Percent(of):
            worth, whole_number = _value(node), _value(of)
            if worth is None:
                return None
            multipliers = {worth, 1 + worth, 1 - worth}
            if multipliers & values or (whole_number in values and Fraction(100) in values):
                return None
            return node
        case t.Money(of, _) | t.Quantity(of, _) if t.symbols(of):
            letters = {name for part in whole for name in t.symbols(part)}
            return None if t.symbols(of) <= letters else node
        case t.MixedUnits(amounts):
            total = _value(node)
            sizes = {UNITS[part.unit].size for part in amounts}
            as_one = {total / size for size in sizes} if total is not None else set()
            if as_one & values or any(_value(part) == total for part in whole):
                return None
        case t.Money(of, _) | t.Quantity(of, _):
            same = any(
                type(part) is type(node)
                and _value(part) == _value(node)
                and _facts(_unit_of(part)).dimension == _facts(_unit_of(node)).dimension
                for part in whole
            )
            return None if same or _stands_bare(of, whole) else node
        case t.Int() | t.Dec() | t.Mixed():
            return None if _value(node) in values else node
        case t.Frac(t.Int(), t.Int()):
            parts = [_value(part) for part in t.children(node)]
            return None if _value(node) in values or set(parts) <= values else node
    for child in t.children(node):
        if (missing := _unused(child, whole, values)) is not None:
            return missing
    return None


def _unit_of(node: t.Node) -> str:
    return (
        node.unit
        if isinstance(node, t.Quantity)
        else node.sign
        if isinstance(node, t.Money)
        else ""
    )


def _minus_of(node: t.Neg, whole: set[t.Node]) -> bool:
    worth = _value(node)
    return worth is not None and any(
        isinstance(part, t.Neg | t.Money | t.Quantity) and _value(part) == worth for part in whole
    )


def _stands_bare(of: t.Node, whole: set[t.Node]) -> bool:
    """Whether a number stands in the model without a unit or sign around it."""
    worth = _value(of)
    inside = {
        part.of if isinstance(part, t.Percent) else part.amount
        for part in whole
        if isinstance(part, t.Money | t.Quantity | t.Percent)
    }
    outside = [
        child
        for part in whole
        if not isinstance(part, t.Money | t.Quantity | t.Percent)
        for child in t.children(part)
    ]
    roots = [part for part in whole if part not in inside]
    return any(
        isinstance(root, t.Int | t.Dec | t.Mixed | t.Frac) and _value(root) == worth
        for root in (*outside, *roots)
    )


def _value(node: t.Node) -> Fraction | None:
    try:
        return exact(node)
    except t.NotationError:
        return None


def _spare(story: Story) -> Counter[Fraction]:
    """Return the numbers the model has beyond those the prompt prints, and the constants.

    A number in words needs one of its own: the {2} of *{2} adult tickets* is not the *two* of
    *two child tickets*.
    """
    printed = _standing(run for run in story.runs if not isinstance(run, str))
    spare = _standing(story.used) - printed
    for constant in map(Fraction, story.constants):
        spare[constant] = max(spare[constant], 1)
    return spare


def _standing(nodes: Iterable[t.Node]) -> Counter[Fraction]:
    """Return the numbers that stand by themselves: 3/4 is one, and its 3 and 4 are none."""
    found: Counter[Fraction] = Counter()
    waiting = list(nodes)
    while waiting:
        node = waiting.pop()
        if isinstance(node, t.Int | t.Dec | t.Mixed) or (
            isinstance(node, t.Frac) and isinstance(node.num, t.Int) and isinstance(node.den, t.Int)
        ):
            if (value := _value(node)) is not None:
                found[value] += 1
        else:
            waiting.extend(t.children(node))
    return found


# Work out one of the other angles: any of them, where the model shares equally.
_ONE_OF_ALIKE = late(
    r"\b(?:find|work out|calculate|what is|(?:size|value|length) of) one of the (?:other|equal|two)\b",
    re.I,
)


def _divides(story: Story) -> bool:
    return any(
        isinstance(part, t.Frac)
        or (isinstance(part, t.Product) and any(op == "÷" for op, _ in part.rest))
        for node in story.used
        for part in t.walk(node)
    )


def _said(story: Story) -> str:
    """Return what is to be done about a number outside braces that nothing accounts for."""
    left = _spare(story)
    shown = counts(story.runs)
    for number in numbers_said(story.words):
        if _excused(number.text, story):
            continue
        stands_for = [number.value]
        if 0 < number.value < 1:
            stands_for.append(1 / number.value)
        if used := next((value for value in stands_for if left[value] > 0), None):
            left[used] -= 1
            continue
        if number.text.lower() in CARDINALS and number.value in shown:
            continue
        if number.text.lower() == "one" and _ONE_OF_ALIKE.search(story.words) and _divides(story):
            continue
        unknown = {name for node in story.used for name in t.symbols(node)} - {"π", "□"}
        if number.value == len(unknown) and re.search(
            rf"\b{number.text} (?:\w+ )?numbers\b", story.words
        ):
            continue
        if number.figures:
            return (
                f"{number.text} stands outside {{ }}: put it in {{ }} and use it in the model, or "
                "say in ‘not_needed’ why not."
            )
        return (
            f"The words say ‘{number.text}’, which the model does not use: use it and put it "
            "among the ‘constants’, or say in ‘not_needed’ why it is not needed."
        )
    return ""


_UNIT_AFTER = late(
    rf"({SLOT})[ -]?(?P<unit>{UNIT})(?![\w^])(?: (?:per|an|a|each|every) (?P<per>{UNIT})(?![\w^]))?",
    re.I,
)
_RATE = late(
    rf"{SLOT}(?: \w+){{0,2}}? (?:for )?(?:per|an?|each|every) (?P<per>{UNIT}|month|year)(?![\w^])",
    re.I,
)
_SAID_IN = late(rf"\b(?:in|how many) (?P<unit>{UNITS_ASKED})(?![\w^])", re.I)
_FOR_A = late(r"\bfor (?:an?|the|one|the whole|a whole) (hour|day|week|month|year)\b", re.I)
_SPANS: dict[str, dict[str, int]] = {
    "month": {"year": 12}, "week": {"year": 52, "day": 7}, "day": {"week": 7, "hour": 24, "year": 365},
    "year": {"month": 12, "week": 52},
}  # fmt: skip
"""How many of a span make another, where a story counts by one and asks about the other."""
_FREE = ("day", "week", "month", "year")
"""Spans that stories count by, as *{2} hours on {5} days*: not two units of one amount."""


def _units(story: Story) -> str:
    """Return how units named beside bare numbers, or asked for, are not of one size."""
    names = unit_names()
    said = slotted(story.runs)
    named: dict[str, str] = {}
    for match in _UNIT_AFTER.finditer(said.text):
        if _is_bare(said.nodes[index_of(match[1])]):
            found = [match["unit"]] if not match["unit"].lower().startswith(_FREE) else []
            _note(named, [*found, match["per"]])
    rates = [match["per"] for match in _RATE.finditer(said.text)]
    spans = [match[1] for match in _FOR_A.finditer(said.text)]
    counted = [
        word.lower().removesuffix("s")
        for word in re.findall(
            r"\b(days|weeks|months|years|hours)\b", "".join(questions(story.runs))
        )
    ]
    for rate in rates:
        other = [word for word in counted if word != rate.lower() and rate.lower() in _SPANS]
        if other and not ({_SPANS[rate.lower()].get(other[0], 0)} & _factors(story)):
            return f"The amount is for a {rate}, and the question speaks of {other[0]}s."
        factor = _SPANS.get(rate.lower(), {}).get(spans[0].lower(), 0) if spans else 0
        if spans and spans[0].lower() != rate.lower() and factor not in _factors(story):
            return f"The amount is for a {rate}, and the words speak of a {spans[0]}: add a model."
    _note(named, rates)
    _note(named, [match["unit"] for match in _SAID_IN.finditer(said.text)] if named else [])
    said_in = {names[match["unit"].casefold()] for match in _SAID_IN.finditer(said.text)}
    if not named and len(said_in) < 2:
        return ""
    _note(named, [_facts(unit).many for unit in said_in])
    asked = unit_said(story.words)
    if asked:
        for unit in _made_of(asked):
            named.setdefault(unit, _facts(unit).many)
    by_dimension: dict[str, list[str]] = {}
    for unit in named:
        by_dimension.setdefault(_facts(unit).dimension, []).append(unit)
    factors = _factors(story)
    modelled = {
        UNITS[part.unit].dimension
        for node in story.used
        for part in t.walk(node)
        if isinstance(part, t.Quantity)
    }
    for name, units in by_dimension.items():
        if name in modelled:
            continue  # the model has units of its own
        sizes = sorted({_facts(unit).size for unit in units})
        if any(not ({high / low, low / high} & factors) for low, high in pairwise(sizes)):
            first, second = (named[unit] for unit in units[:2])
            return (
                f"{first} and {second} both stand outside {{ }}, and the model does not change one "
                "into the other: put the units in { } with their numbers."
            )
    return ""


def unit_after(runs: Sequence[Run]) -> set[str]:
    """Return the units that stand in words after bare numbers.

    >>> unit_after(("A film lasts ", t.Int(2), " hours."))
    {'h'}
    """
    said, names = slotted(runs), unit_names()
    return {
        names[match["unit"].casefold()]
        for match in _UNIT_AFTER.finditer(said.text)
        if _is_bare(said.nodes[index_of(match[1])])
    }


def _factors(story: Story) -> set[Fraction]:
    """Return the numbers that the model has more often than the prompt prints them.

    The 60 of *{60} km in {30} minutes* is a distance, and changes no minutes to hours.
    """
    printed = _numbers(run for run in story.runs if not isinstance(run, str))
    return set(_numbers(story.used) - printed) | {Fraction(n) for n in story.constants}


def _numbers(nodes: Iterable[t.Node]) -> Counter[Fraction]:
    values = (
        exact(part) for node in nodes for part in t.walk(node) if isinstance(part, t.Int | t.Dec)
    )
    return Counter(values)


def _made_of(unit: str) -> tuple[str, ...]:
    """Return the units that a rate is made of, km and h of km/h; a plain unit alone."""
    parts = tuple(unit.split("/"))
    return parts if all(part in UNITS or part in CURRENCY for part in parts) else (unit,)


def _note(named: dict[str, str], words: Iterable[str | None]) -> None:
    """Add the units that words name, each with its word."""
    names = unit_names()
    for word in filter(None, words):
        unit = names.get(word.casefold())
        if unit:
            named.setdefault(unit, word)


def _facts(unit: str) -> Unit:
    return UNITS.get(unit) or CURRENCY[unit]


def _is_bare(node: t.Node) -> bool:
    return not any(isinstance(part, t.Quantity | t.Money) for part in t.walk(node))
