"""The kinds that the words of a story give to its numbers: £9 an hour, {12} eggs in each box.

Every number that is printed alone gets the kinds it may have, the likeliest first. What the
words leave open is an unknown kind of its own, and never makes a model wrong.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field
from fractions import Fraction

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
    NotationError,
    Percent,
    Quantity,
    walk,
)
from itembank.notation.units import UNITS
from itembank.notation.value import exact
from itembank.text.late_pattern import late
from itembank.wording.kinds.kind import PLAIN, Kind, of_thing, of_unit, unknown
from itembank.wording.sentences.numbers_said import CARDINALS
from itembank.wording.sentences.phrases import unit_names
from itembank.wording.sentences.prompt import SLOT, index_of, slotted

_PER_NOUN = r"(?:of (?:the|its|these|those) )?(?P<per>(?:square |cubic )?[a-z'-]+(?: [a-z'-]+)?)"
_PER = late(
    rf"(?P<amount>{SLOT})[ -]?(?:(?:of )?[a-z'-]+[ -]){{0,3}}?"
    rf"(?:per|(?<!\bin )(?<!\bon )(?<!\bat )(?<!\bof )(?<!\bby )(?<!\bas )(?<!\bis )(?<!\bto )(?<!\bor )"
    r"(?<!\bfor )(?<!\bwas )(?<!\band )(?<!\bwith )(?<!\bfrom )(?<!\binto )(?<!\bthan )an?|"
    rf"each|every|(?:for|to|in|on|with|at|from) (?:each|every)|to the) {_PER_NOUN}",
    re.I,
)
"""What an amount is for, in so many words: £9 an hour, 12 eggs in each box."""
_MAY_BE_PER = late(
    rf"(?P<amount>{SLOT})[ -]?(?:(?:of )?[a-z'-]+[ -]){{0,4}}?(?:in|on|for|with|by) (?:an?|one) {_PER_NOUN}",
    re.I,
)
"""What an amount may be for: 60 km in an hour, but £45 for one day and £12 for each extra day."""
_EACH = late(
    rf"(?P<amount>{SLOT})(?: [a-z'-]+){{0,2}}? (?:each|apiece|for (?:any|each) one)\b(?! (?:[a-z]|{SLOT}))",
    re.I,
)
_EACH_OF = late(
    rf"(?P<amount>{SLOT})(?-i:[^.,\ue000-\uf8ff])*\b(?:each|every one) of (?:its |the |her |his |their |these )?{SLOT} "
    r"(?P<per>[a-z'-]+)",
    re.I,
)
_EACH_SPAN = late(
    rf"\b(?:each|every) (?P<per>second|minute|hour|day|week|month|year)\b(?:[^.?!;,\ue000-\uf8ff])*(?P<amount>{SLOT})",
    re.I,
)
_IN_PACKS = late(
    rf"\b(?P<per>boxes|packs|packets|bags|bunches|crates|trays|rows|teams|groups|cartons|sets|tins|bundles|stacks|"
    rf"batches|tables|cases|sacks|strips|sheets|piles) of (?P<amount>{SLOT})(?! ?(?:by|cm|m|kg|g|ml)\b)",
    re.I,
)
_COSTS = (
    r"(?:costs?|weighs?|holds?|uses?|needs?|takes?|has|seats?|carr(?:y|ies)|makes?|is|measures?|earns?|"
    r"gives?|covers?|contains?|can (?:hold|carry|seat|take)|lasts?|serves?|feeds?|produces?|sells? for|"
    r"is sold for|is bought for|charges?|fills?|eats?|drinks?)"
)
_SUBJECT = late(
    rf"(?:^|[.?!,;] ?|\band |\bif |\bthat )(?:an?|each|every|one) (?P<per>(?:square |cubic )?[a-z'-]+(?: [a-z'-]+)?)"
    rf"(?: of [a-z'-]+(?: [a-z'-]+)?)?(?: [a-z'-]+)? {_COSTS} (?:an? |about |exactly )?(?P<amount>{SLOT})",
    re.I,
)
_PAIR = late(
    rf"(?P<one>{SLOT}) ?(?:of [a-z'-]+ )?(?:stands? for|represents?|shows?|is worth|are worth|is equal to|equals|buys?|"
    rf"costs?|gets?|to|for|=|is|means?) (?:about |every |each )?(?P<many>{SLOT})",
    re.I,
)
_TO_ONE = late(rf"(?P<one>{SLOT}) to the (?P<per>pound|euro|dollar)\b", re.I)
_NEXT = late(r"[ -]?(?P<words>[^\W_]+[\w'^/]*(?: [a-z'-]+){0,3})", re.I)
_SMALL = frozenset(
    [
        "of",
        "the",
        "a",
        "an",
        "and",
        "or",
        "in",
        "on",
        "at",
        "to",
        "for",
        "by",
        "with",
        "from",
        "is",
        "are",
        "was",
        "were",
        "as",
        "than",
        "more",
        "less",
        "fewer",
        "times",
        "each",
        "every",
        "per",
        "altogether",
        "that",
        "which",
        "who",
        "when",
        "it",
        "they",
        "she",
        "he",
        "its",
        "his",
        "her",
        "their",
        "has",
        "have",
        "had",
        "costs",
        "cost",
        "but",
        "so",
        "then",
        "away",
        "off",
        "back",
        "left",
        "long",
        "wide",
        "high",
        "tall",
        "deep",
        "thick",
        "old",
        "further",
        "extra",
        "others",
        "other",
        "another",
        "between",
        "percent",
        "out",
        "into",
        "apart",
        "only",
        "same",
        "such",
        "also",
        "long",
        "equal",
        "parts",
        "part",
        "not",
        "how",
        "what",
        "goes",
        "go",
        "up",
        "down",
        "full",
        "all",
        "both",
        "this",
        "these",
        "those",
        "will",
        "would",
        "can",
        "could",
        "do",
        "does",
        "did",
        "be",
        "been",
    ]
)


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


def noun_stem(word: str) -> str:
    """Return a noun without the ending of its plural.

    >>> [noun_stem(word) for word in ("boxes", "eggs", "people", "classes", "pennies", "bus")]
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
}  # fmt: skip


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
        if isinstance(part, Int | Dec | Frac | Mixed) and (value := _value(part)) is not None
    )
    rates = tuple(kind for many in read.rates.values() for kind in many)
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
        self.rates: dict[int, list[Kind]] = {}
        self.in_packs: set[int] = set()
        self.may_rate: dict[int, list[Kind]] = {}
        self._find_rates()

    def note(self, place: int, node: Node) -> None:
        """Note the kinds of one printed number."""
        match = self.places.get(place)
        if match is None or not _is_amount(node):
            return
        node = node.of if isinstance(node, Neg) else node
        match node:
            case Percent(of):
                for kind in self._rated(place, PLAIN):
                    self._add(_value(node), kind)
                    self._add(_value(of), kind)
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
                    total = _value(node)
                    if total is not None:
                        self._add(total / size, of_unit(part.unit))
            case _:
                for kind in self._rated(place, self._beside(match, node, place)):
                    self._add(_value(node), kind)

    def _amount(self, place: int, node: Node, kind: Kind, amount: Node | None) -> None:
        base = Kind(kind.powers)  # a model with units reckons in base units
        self.by_node.setdefault(node, []).extend(self._rated(place, base))
        for rated in self._rated(place, kind) if amount is not None else ():
            self._add(_value(amount) if amount is not None else None, rated)

    def _rated(self, place: int, kind: Kind) -> list[Kind]:
        """Return a kind for each of what the words say it is for, and then alone."""
        self.amounts.append(kind)
        if rates := self.rates.get(place):
            return [kind.over(per) for per in rates]
        return [kind, *(kind.over(per) for per in self.may_rate.get(place, ()))]

    def _add(self, value: Fraction | None, kind: Kind) -> None:
        if value is not None and kind not in self.by_value.setdefault(value, []):
            self.by_value[value].append(kind)

    def _beside(self, slot: re.Match[str], node: Node, place: int) -> Kind:
        """Return the kind that the words after a bare number give it."""
        if isinstance(node, Frac) and self.text[slot.end() :].startswith(" of "):
            return PLAIN
        match = _NEXT.match(self.text, slot.end())
        if match and (unit := unit_at_start(match["words"])):
            return _named_unit(unit, self.text)
        if match and (noun := _noun(match["words"], _value(node) == 1)):
            self.nouns.add(noun)
            return of_thing(noun)
        if match and re.match(r"times\b(?! as)", match["words"], re.I):
            return of_thing("time")
        if slot.start() in self.in_packs and (noun := self._noun_before(slot.start())):
            return of_thing(noun)  # 144 eggs in boxes of 6
        return unknown(f"n{place}")

    def _find_rates(self) -> None:
        for match in _PER.finditer(self.text):
            self._rate(match["amount"], self._per(match["per"]))
        for match in _MAY_BE_PER.finditer(self.text):
            self._may_rate(match["amount"], self._per(match["per"]))
        for match in _SUBJECT.finditer(self.text):
            per = self._per(match["per"])
            # A litre costs £1.20: used as it stands where one litre is bought.
            (self._may_rate if per and per.measures() else self._rate)(match["amount"], per)
        for match in _EACH_SPAN.finditer(self.text):
            self._may_rate(match["amount"], self._per(match["per"]))
        for match in _IN_PACKS.finditer(self.text):
            self.in_packs.add(match.start("amount"))
            self._rate(match["amount"], of_thing(noun_stem(match["per"])))
        for match in _EACH_OF.finditer(self.text):
            self._rate(match["amount"], self._per(match["per"]))
        for match in _EACH.finditer(self.text):
            if noun := self._noun_before(match.start()):
                self._rate(match["amount"], of_thing(noun))
        for match in _PAIR.finditer(self.text):
            single, many = (self.nodes[index_of(match[name])] for name in ("one", "many"))
            for this, other, char in ((single, many, match["many"]), (many, single, match["one"])):
                if isinstance(this, Quantity | Money) and this.amount == Int(1):
                    unit = this.unit if isinstance(this, Quantity) else this.sign
                    if isinstance(other, Quantity | Money | Int | Dec):
                        self._may_rate(char, of_unit(unit))
        for match in _TO_ONE.finditer(self.text):
            self._may_rate(match["one"], of_unit(unit_names()[match["per"].lower()]))

    def _per(self, words: str) -> Kind | None:
        names = unit_names()
        tokens = words.split()
        for size in (len(tokens), *range(1, len(tokens))):
            for start in range(len(tokens) - size + 1):
                name = " ".join(tokens[start : start + size]).lower().removesuffix("'s")
                if name in names and (len(name) > 1) and name not in ("in", "st", "pt"):
                    return of_unit(names[name])
        noun = noun_stem(tokens[0]) if tokens and tokens[0].lower() not in _SMALL else ""
        return of_thing(noun) if noun else None

    def _rate(self, char: str, per: Kind | None) -> None:
        if per is not None:
            self.rates.setdefault(index_of(char), []).append(per)

    def _may_rate(self, char: str, per: Kind | None) -> None:
        if per is not None:
            self.may_rate.setdefault(index_of(char), []).append(per)

    def _noun_before(self, end: int) -> str:
        """Return what *each* speaks of: the noun of the last count before it in its sentence."""
        start = max(self.text.rfind(mark, 0, end) for mark in ".?!") + 1
        for match in reversed(list(re.finditer(SLOT, self.text[start:end]))):
            after = _NEXT.match(self.text, start + match.end())
            if after and not unit_at_start(after["words"]) and (noun := _noun(after["words"])):
                return noun
        plural = re.match(
            r" ?(?:[A-Za-z'-]+ )*?([a-z]+s) (?:cost|are|weigh)\b", self.text[start:end], re.I
        )
        return noun_stem(plural[1]) if plural else ""

    def note_words(self) -> None:
        """Note the kinds of numbers in words: three friends, two hours."""
        for match in _IN_WORDS.finditer(self.text):
            value = CARDINALS[match["number"].lower()]
            if unit := unit_at_start(match["words"]):
                self._add(value, _named_unit(unit, self.text))
            elif noun := _noun(match["words"]):
                self.nouns.add(noun)
                self._add(value, of_thing(noun))
        for match in _PART_OF_UNIT.finditer(self.text):
            if unit := unit_at_start(match["words"]):
                kind, value = _named_unit(unit, self.text), _PARTS_OF[match["part"].lower()]
                self._add(value, kind)
                self._add(1 / value, PLAIN.over(kind))


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


_PARTS_OF = {"half": Fraction(1, 2), "quarter": Fraction(1, 4), "third": Fraction(1, 3)}
_PART_OF_UNIT = late(
    r"\b(?P<part>half|quarter|third)(?: of)? an? (?P<words>[a-z]+(?: [a-z]+)?)", re.I
)
_IN_WORDS = late(
    rf"\b(?P<number>{'|'.join(word for word in CARDINALS if word not in ('zero', 'nought', 'nil'))})"
    r"[ -](?P<words>[a-z'-]+(?: [a-z'-]+)?)",
    re.I,
)


def _noun(words: str, single: bool = False) -> str:
    """Return the noun that words after a number begin with: a plural among them.

    After 1 it is the first word; after another number a singular is no thing that is counted.
    """
    tokens = []
    for token in words.split():
        if token.lower() in _SMALL:
            break
        tokens.append(token)
    if not tokens:
        return ""
    plural = next(
        (t for t in tokens if t.lower() in _PLURALS or (t.endswith("s") and not t.endswith("'s"))),
        "",
    )
    return noun_stem(plural or tokens[0]) if plural or single else ""


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


def _value(node: Node) -> Fraction | None:
    try:
        return exact(node)
    except NotationError:
        return None
