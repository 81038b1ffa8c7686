"""A story as its second reading sees it: words with slots, and every number with what it counts."""

from __future__ import annotations

import re
from collections.abc import Sequence
from fractions import Fraction
from functools import cached_property, lru_cache

from itembank.data_class import dataclass
from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.notation.units import CURRENCY, UNITS, unit_known
from itembank.notation.value import exact_or_none
from itembank.text.late_pattern import late
from itembank.wording.kinds.things_counted import unit_at_start
from itembank.wording.sentences.numbers_said import CARDINALS
from itembank.wording.sentences.phrases import unit_names
from itembank.wording.sentences.prompt import SLOT, Slotted, index_of, sentences, slotted
from itembank.wording.sentences.question_sentences import questions


@dataclass(frozen=True, slots=True)
class Number:
    """A number of a story: where its slot stands, what it is worth (base units), what it measures.

    `measure` is a dimension, ``"money"``, ``"percent"``, ``"part"`` (a fraction below 1) or ``""``;
    `after` are the words that follow it, up to the next number or the end of the clause.
    """

    char: str
    at: int
    node: t.Node
    value: Fraction
    measure: str
    after: str
    in_words: bool

    @property
    def counts(self) -> bool:
        """Whether it is a bare number, that may count things."""
        return self.measure == ""


@dataclass(frozen=True, slots=True)
class Reading:
    """What a story comes to by its words: the values that answer it, and why, for a message."""

    values: frozenset[Fraction]
    says: str


def reads(says: str, *values: Fraction | int | None) -> Reading | None:
    """Return a reading with the values that are known, or None where one is not.

    >>> reads("half of it", Fraction(3)).says
    'half of it'
    """
    if not values or any(value is None for value in values):
        return None
    return Reading(frozenset(Fraction(value) for value in values if value is not None), says)


UNCLEAR = frozenset[Fraction]()
"""The values of a reading that no model can meet: the words leave open what is meant."""


class Tale:
    """A story, with its numbers in order; numbers in words count as numbers here."""

    def __init__(self, runs: Sequence[Run]) -> None:
        whole, self._in_words = _with_words(runs)
        self.said: Slotted = slotted(whole)
        self.text: str = self.said.text
        asking = questions(whole)
        self.asks: int = len(asking)
        question = asking[-1] if asking else ""
        # If 4 men take 9 days, how long do 12 take: what comes before the comma is told.
        opened = re.match(
            r"(?:if|when|given that|suppose)\b.*?, ((?:how|what|which|find|work out)\b.*)",
            question,
            re.I,
        )
        self.question: str = opened[1] if opened else question

    @cached_property
    def told(self) -> str:
        """Return the story without its question."""
        return self.text.replace(self.question, " ", 1)

    @cached_property
    def sentences(self) -> list[str]:
        """Return the sentences of the story, the question among them."""
        return sentences(self.text)

    @cached_property
    def numbers(self) -> list[Number]:
        """Return the numbers of the story and of its question, in order."""
        found = []
        for match in re.finditer(SLOT, self.text):
            place = index_of(match[0])
            number = _number(self.said.nodes[place], match, self.text, place in self._in_words)
            if number is not None:
                found.append(number)
        return found

    @cached_property
    def by_char(self) -> dict[str, Number]:
        """Return the numbers by their slots."""
        return {number.char: number for number in self.numbers}

    def get(self, match: re.Match[str], name: str | int) -> Number | None:
        """Return the number in a group of a match."""
        return self.by_char.get(match[name] or "")

    def asked(self, number: Number) -> bool:
        """Whether a number stands in the question."""
        return number.char in self.question

    def sentence_of(self, number: Number) -> str:
        """Return the sentence that a number stands in."""
        return next((s for s in self.sentences if number.char in s), "")

    def clause_of(self, number: Number) -> str:
        """Return the clause that a number stands in."""
        clauses = re.split(r",| and | but | then |;", self.sentence_of(number))
        return next((clause for clause in clauses if number.char in clause), "")

    def asks_for(self, pattern: str) -> bool:
        """Whether the question matches a pattern."""
        return late_search(pattern, self.question)

    def of(self, *measures: str) -> list[Number]:
        """Return the numbers that measure one of these."""
        return [number for number in self.numbers if number.measure in measures]


def late_search(pattern: str, text: str) -> bool:
    """Whether a pattern, which has no capitals, is found in a text, whatever the text's capitals.

    A pattern that ignores case takes twice as long to compile, and a bank needs hundreds.

    >>> late_search("monday|tuesday", "On Tuesday")
    True
    """
    return _compiled(pattern).search(text.lower()) is not None


@lru_cache(maxsize=4096)
def _compiled(pattern: str) -> re.Pattern[str]:
    return re.compile(pattern)


_CARDINAL = late(
    r"(?<![\w'-])(?<!the )(?<!The )(?<!these )(?<!those )(?<!all )(?<!both )(?<!nearest )"
    rf"({'|'.join(w for w in CARDINALS if w not in ('zero', 'one', 'nought', 'nil', 'quarterly', 'fortnight', 'hundred', 'thousand', 'million'))})"
    r"(?= [a-z])(?! (?:decimal|significant|places))",
    re.I,
)


def _with_words(runs: Sequence[Run]) -> tuple[list[Run], frozenset[int]]:
    """Return a prompt with a node for each number in words, and which of its nodes these are."""
    found: list[Run] = []
    in_words = []
    nodes = 0
    for run in runs:
        if not isinstance(run, str):
            found.append(run)
            nodes += 1
            continue
        start = 0
        for match in _CARDINAL.finditer(run):
            found += [run[start : match.start()], t.Int(int(CARDINALS[match[1].lower()]))]
            start = match.end()
            in_words.append(nodes)
            nodes += 1
        found.append(run[start:])
    return found, frozenset(in_words)


def _number(node: t.Node, match: re.Match[str], text: str, in_words: bool) -> Number | None:
    rest = text[match.end() :]
    after = re.split(rf"[.,;?!]|{SLOT}", rest, maxsplit=1)[0].strip()
    value = exact_or_none(node)
    if value is None:
        return None
    inner = node.of if isinstance(node, t.Neg) else node
    measure = ""
    match inner:
        case t.Percent():
            measure = "percent"
        case t.Money(_, sign):
            measure = CURRENCY[sign].dimension
        case t.Quantity(_, unit):
            measure = UNITS[unit].dimension
        case t.MixedUnits(parts):
            measure = UNITS[parts[0].unit].dimension
        case t.Int() | t.Dec() | t.Mixed() | t.Frac():
            name = unit_at_start(rest.lstrip(" -").split(",")[0].split(".")[0].split("?")[0])
            if name and not after.startswith("pounds of"):
                unit = unit_names()[name.casefold()]
                facts = unit_known(unit)
                measure, value = facts.dimension, value * facts.size
            elif isinstance(inner, t.Frac) and 0 < value < 1:
                measure = "part"
        case _:
            return None
    return Number(match[0], match.start(), node, value, measure, after, in_words)
