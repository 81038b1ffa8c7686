"""The kinds that the words of a story give to its numbers: £9 an hour, {12} eggs in each box.

Every number that is printed alone gets the kinds it may have, the likeliest first. What the
words leave open is an unknown kind of its own, and never makes a model wrong.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import field
from fractions import Fraction

from itembank.data_class import dataclass
from itembank.items.item import Run
from itembank.notation.tree import (
    Dec,
    Frac,
    Int,
    Mixed,
    MixedUnits,
    Money,
    Neg,
    Node,
    Percent,
    Quantity,
    walk,
)
from itembank.notation.units import UNITS
from itembank.notation.value import exact_or_none
from itembank.text.late_pattern import late
from itembank.wording.kinds.given_for import GivenFor
from itembank.wording.kinds.kind import PLAIN, Kind, of_thing, of_unit, unknown
from itembank.wording.kinds.things_counted import (
    WORDS_AFTER,
    counted_noun,
    noun_before,
    unit_at_start,
)
from itembank.wording.sentences.numbers_said import CARDINALS
from itembank.wording.sentences.phrases import unit_names
from itembank.wording.sentences.prompt import SLOT, index_of, slotted


@dataclass(frozen=True, slots=True)
class StoryKinds:
    """What a story's words say of its numbers.

    `by_value` holds for each value that is printed alone the kinds it may have, `by_node` those of
    each amount with a unit; `inside` are values inside larger pieces of mathematics, of which
    nothing is known; `nouns` are the things that are counted. `rates` are the kinds that amounts
    are given for, and `amounts` the kinds of the printed amounts themselves.
    """

    by_value: dict[Fraction, list[Kind]] = field(default_factory=dict)
    by_node: dict[Node, list[Kind]] = field(default_factory=dict)
    inside: frozenset[Fraction] = frozenset()
    nouns: frozenset[str] = frozenset()
    rates: tuple[Kind, ...] = ()
    amounts: tuple[Kind, ...] = ()


def story_kinds(runs: Sequence[Run]) -> StoryKinds:
    """Return the kinds that the words of a prompt give to its numbers.

    >>> from itembank.wording.kinds.kind import kind_words
    >>> runs = ("A shop sells ", Int(6), " eggs in each box. How many eggs are in ", Int(4), " boxes?")
    >>> [kind_words(story_kinds(runs).by_value[Fraction(n)][0]) for n in (6, 4)]
    ['eggs for each box', 'a count of boxes']
    """
    said = slotted(runs)
    read = _Reader(said.text, said.nodes)
    for place, node in enumerate(said.nodes):
        read.note(place, node)
    read.note_words()
    inside = frozenset(
        value
        for node in said.nodes
        if not _is_amount(node)
        for part in walk(node)
        if isinstance(part, Int | Dec | Frac | Mixed) and (value := exact_or_none(part)) is not None
    )
    rates = tuple(kind for many in read.given_for.rates.values() for kind in many)
    return StoryKinds(
        read.by_value, read.by_node, inside, frozenset(read.nouns), rates, tuple(read.amounts)
    )


class _Reader:
    def __init__(self, text: str, nodes: Sequence[Node]) -> None:
        self.text, self.nodes = text, nodes
        self.by_value: dict[Fraction, list[Kind]] = {}
        self.by_node: dict[Node, list[Kind]] = {}
        self.nouns: set[str] = set()
        self.amounts: list[Kind] = []
        self.places = {index_of(m[0]): m for m in re.finditer(SLOT, text)}
        self.given_for = GivenFor(text, nodes)

    def note(self, place: int, node: Node) -> None:
        """Note the kinds of one printed number."""
        match = self.places.get(place)
        if match is None or not _is_amount(node):
            return
        node = node.of if isinstance(node, Neg) else node
        match node:
            case Percent(of):
                for kind in self._rated(place, PLAIN):
                    self._add(exact_or_none(node), kind)
                    self._add(exact_or_none(of), kind)
                    self.by_node.setdefault(node, []).append(kind)
            case Quantity(amount, unit):
                self._amount(place, node, of_unit(unit), amount)
            case Money(amount, sign):
                self._amount(place, node, of_unit(sign), amount)
            case MixedUnits(parts):
                self._amount(place, node, of_unit(parts[0].unit), None)
                for part in parts:
                    self._amount(place, part, of_unit(part.unit), part.amount)
                    size = UNITS[part.unit].size
                    total = exact_or_none(node)
                    if total is not None:
                        self._add(total / size, of_unit(part.unit))
            case _:
                for kind in self._rated(place, self._beside(match, node, place)):
                    self._add(exact_or_none(node), kind)

    def _amount(self, place: int, node: Node, kind: Kind, amount: Node | None) -> None:
        base = Kind(kind.powers)  # a model with units reckons in base units
        self.by_node.setdefault(node, []).extend(self._rated(place, base))
        for rated in self._rated(place, kind) if amount is not None else ():
            self._add(exact_or_none(amount) if amount is not None else None, rated)

    def _rated(self, place: int, kind: Kind) -> list[Kind]:
        """Return a kind for each of what the words say it is for, and then alone."""
        self.amounts.append(kind)
        if rates := self.given_for.rates.get(place):
            return [kind.over(per) for per in rates]
        return [kind, *(kind.over(per) for per in self.given_for.may_rate.get(place, ()))]

    def _add(self, value: Fraction | None, kind: Kind) -> None:
        if value is not None and kind not in self.by_value.setdefault(value, []):
            self.by_value[value].append(kind)

    def _beside(self, slot: re.Match[str], node: Node, place: int) -> Kind:
        """Return the kind that the words after a bare number give it."""
        if isinstance(node, Frac) and self.text[slot.end() :].startswith(" of "):
            return PLAIN
        match = WORDS_AFTER.match(self.text, slot.end())
        if match and (unit := unit_at_start(match["words"])):
            return _named_unit(unit, self.text)
        if match and (noun := counted_noun(match["words"], exact_or_none(node) == 1)):
            self.nouns.add(noun)
            return of_thing(noun)
        if match and re.match(r"times\b(?! as)", match["words"], re.I):
            return of_thing("time")
        if slot.start() in self.given_for.in_packs and (
            noun := noun_before(self.text, slot.start())
        ):
            return of_thing(noun)  # 144 eggs in boxes of 6
        return unknown(f"n{place}")

    def note_words(self) -> None:
        """Note the kinds of numbers in words: three friends, two hours."""
        for match in _IN_WORDS.finditer(self.text):
            value = CARDINALS[match["number"].lower()]
            if unit := unit_at_start(match["words"]):
                self._add(value, _named_unit(unit, self.text))
            elif noun := counted_noun(match["words"]):
                self.nouns.add(noun)
                self._add(value, of_thing(noun))
        for match in _PART_OF_UNIT.finditer(self.text):
            if unit := unit_at_start(match["words"]):
                kind, value = _named_unit(unit, self.text), _PARTS_OF[match["part"].lower()]
                self._add(value, kind)
                self._add(1 / value, PLAIN.over(kind))


_PARTS_OF = {"half": Fraction(1, 2), "quarter": Fraction(1, 4), "third": Fraction(1, 3)}

_PART_OF_UNIT = late(
    r"\b(?P<part>half|quarter|third)(?: of)? an? (?P<words>[a-z]+(?: [a-z]+)?)", re.I
)

_IN_WORDS = late(
    rf"\b(?P<number>{'|'.join(word for word in CARDINALS if word not in ('zero', 'nought', 'nil'))})"
    r"[ -](?P<words>[a-z'-]+(?: [a-z'-]+)?)",
    re.I,
)


def _named_unit(name: str, text: str) -> Kind:
    unit = unit_names()[name.casefold()]
    if unit == "£" and re.search(r"\b(?:weigh|mass|stone|ounces?|heavy)", text, re.I):
        return unknown("pounds")
    return of_unit(unit)


def _is_amount(node: Node) -> bool:
    while isinstance(node, Neg):
        node = node.of
    if isinstance(node, Frac):
        return isinstance(node.num, Int) and isinstance(node.den, Int)
    if isinstance(node, Quantity | Money | Percent):
        inner = node.of if isinstance(node, Percent) else node.amount
        return _is_amount(inner)
    return isinstance(node, Int | Dec | Mixed | MixedUnits)
