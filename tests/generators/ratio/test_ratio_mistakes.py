"""Each likely mistake on ratio, carried out again from the printed question.

A method below reads only the printed line and does what the name of its misconception says. What
it gets must be the wrong answer of the slip, on random items of every tier. The methods share no
code with the generators.
"""

from __future__ import annotations

import random
import re
from collections.abc import Callable, Iterator, Sequence
from fractions import Fraction
from math import gcd, lcm

import pytest

from itembank.items.item import Item, Tier
from itembank.items.topics.registry import topics
from itembank.items.topics.topic import Topic
from itembank.notation import line
from tests.depth import cases, only_whole, whole
from tests.generators.mistakes import each_mistake, shown_by_own

WITH_RATES = {
    *("ratio.speed", "ratio.density", "ratio.currency"),
    *("ratio.convert-units", "ratio.compound-units", "ratio.inverse-proportion"),
}
"""Topics whose wrong methods are in test_rate_mistakes."""
TOPICS = tuple(
    topic for topic in topics() if topic.id.startswith("ratio.") and topic.id not in WITH_RATES
)
SAMPLE = cases(40, 120, 120)
NUMBER = r"(?:\d+ \d+/\d+|\d+/\d+|\d+\.\d+|\d+)"
AMOUNT = re.compile(rf"([£€]?)({NUMBER})(p\b|%| (?:mm|cm|km|m|kg|g|ml|l|min|h)\b)?")
RATIO = re.compile(rf"{AMOUNT.pattern}(?: : {AMOUNT.pattern})+")
SIZES = {"": 1, "%": Fraction(1, 100), "£": 100, "p": 1, "€": 1, "mm": 1, "cm": 10, "m": 1000,
         "km": 1_000_000, "g": 1, "kg": 1000, "ml": 1, "l": 1000, "min": 1, "h": 60}  # fmt: skip
Numbers = list[Fraction]
Method = Callable[["Question"], object]


class Question:
    """What is printed: its text, ratios, other amounts, and the units of these amounts."""

    def __init__(self, item: Item) -> None:
        self.tier = item.tier
        self.text = "".join(run if isinstance(run, str) else line(run) for run in item.prompt)
        found = list(RATIO.finditer(self.text))
        self.ratios = [[bare(match) for match in AMOUNT.finditer(m.group())] for m in found]
        self.units = [[unit(match) for match in AMOUNT.finditer(m.group())] for m in found]
        rest = list(AMOUNT.finditer(RATIO.sub(" ", self.text)))
        self.amounts = [bare(match) for match in rest]
        self.amount_units = [unit(match) for match in rest]

    @property
    def ratio(self) -> Numbers:
        return self.ratios[0]

    def same(self) -> Numbers:
        """Return the parts of the ratio in the smaller unit."""
        smaller = min(SIZES[u] for u in self.units[0])
        return [n * SIZES[u] / smaller for n, u in zip(self.ratio, self.units[0], strict=True)]


def bare(found: re.Match[str]) -> Fraction:
    return sum((Fraction(piece) for piece in found[2].split(" ")), Fraction(0))


def unit(found: re.Match[str]) -> str:
    return (found[1] or found[3] or "").strip()


def lowest(parts: Sequence[Fraction]) -> Numbers:
    scale = lcm(*(part.denominator for part in parts))
    whole = [int(part * scale) for part in parts]
    return [Fraction(part, gcd(*whole)) for part in whole]


def factor(parts: Numbers) -> Fraction:
    return Fraction(gcd(*map(int, parts)))


def at(place: str, words: str) -> Callable[[Question], int]:
    """Return the method that finds the place of a word of the last sentence in the first."""

    def find(asked: Question) -> int:
        names = re.search(words, asked.text, re.IGNORECASE)
        wanted = re.search(place, asked.text)
        assert names
        assert wanted
        return [name.lower() for name in names.groups()].index(wanted[1])

    return find


# --- Simplest form and the form 1 : n.


def only_one_part(asked: Question) -> Numbers:
    low = min(asked.ratio)
    return [part / factor(asked.ratio) if part == low else part for part in asked.ratio]


def hundreds(asked: Question) -> Numbers:
    large = [SIZES[u] > min(SIZES[v] for v in asked.units[0]) for u in asked.units[0]]
    return lowest(
        [part * 100 if big else part for part, big in zip(asked.ratio, large, strict=True)]
    )


def cleared_apart(asked: Question) -> Numbers:
    shown = re.findall(rf"{NUMBER} : {NUMBER}", asked.text)[0].split(" : ")
    whole = []
    for text, number in zip(shown, asked.ratio, strict=True):
        places = len(text.partition(".")[2])
        whole.append(number * (10**places if places else number.denominator))
    return lowest(whole)


def last(asked: Question) -> int:
    return 1 if "form n : 1" in asked.text else 0


def unit_form(parts: Numbers, one: int) -> Numbers:
    return [part / parts[one] for part in parts]


def set_one(asked: Question, other: Callable[[Fraction, Fraction], Fraction]) -> Numbers:
    number = last(asked)
    made = other(asked.same()[1 - number], asked.same()[number])
    return [made, Fraction(1)] if number else [Fraction(1), made]


# --- Shares.


def shares(asked: Question) -> Numbers:
    return [asked.amounts[0] * part / sum(asked.ratio) for part in asked.ratio]


def small(parts: Numbers) -> Numbers:
    return lowest(parts)


def by_fraction(asked: Question) -> Numbers:
    first = asked.amounts[0] * asked.ratio[0] / asked.ratio[1]
    return [first, asked.amounts[0] - first]


def one_part(asked: Question, single: Callable[[Fraction, Numbers], Fraction]) -> Numbers:
    """Return the answer where `single` says what one part is worth."""
    worth = single(asked.amounts[0], asked.ratio)
    if asked.tier is Tier.SUPPORT:
        return [worth * asked.ratio[1]]
    whole = worth * sum(asked.ratio)
    return [whole / 1000 if asked.tier is Tier.CHALLENGE else whole]


def rest_only(asked: Question) -> Numbers:
    middle = asked.ratio[1]
    rest = asked.amounts[0] / middle * (sum(asked.ratio) - middle)
    return [rest / 1000 if asked.tier is Tier.CHALLENGE else rest]


ASKED = at(r"How many (?:are )?(\w+)", r"(\w+) and (\w+)")


def difference(asked: Question, worth: Fraction) -> Numbers:
    parts = lowest(asked.ratio)
    if asked.tier is Tier.CORE:
        return [worth * sum(parts)]
    if asked.tier is Tier.CHALLENGE:
        return [worth * sorted(parts)[1]]
    return [worth * parts[ASKED(asked)]]


def gap(asked: Question) -> Fraction:
    parts = lowest(asked.ratio)
    return asked.amounts[0] / (max(parts) - min(parts))


# --- Ratios and fractions.

KIND = at(r"(?:are|is) (\w+)\?", r"(\w+) (?:and|to) (\w+)")


def other_share(asked: Question) -> Numbers:
    part = asked.amounts[0]
    share = part / 100 if "%" in asked.amount_units else part
    return [share, 1 - share]


# --- Scale drawings.


def real(asked: Question) -> Fraction:
    """Return the real length on the first plan, in centimetres."""
    return asked.amounts[0] * asked.ratios[0][1]


def back(asked: Question) -> bool:
    return "is really" in asked.text


def thousand(asked: Question) -> Numbers:
    if "in the form" in asked.text:
        length, on_plan = asked.amounts[:2]
        metres = length * (1000 if asked.amount_units[0] == "km" else 1)
        return [Fraction(1), metres * 1000 / on_plan]
    if back(asked):
        return [asked.amounts[0] * 1000 / asked.ratio[1]]
    return [real(asked) / 1000]


# --- Best value.


def packs(asked: Question) -> list[tuple[str, Fraction, Fraction, Fraction]]:
    """Return the name, the size as printed, the size in one unit and the price of each pack."""
    found = []
    for name, size, price in re.findall(r"(Pack \w): (.*?) for (.*?)\.(?: |$)", asked.text):
        match, cost = AMOUNT.fullmatch(size), AMOUNT.fullmatch(price)
        assert match
        assert cost
        found.append(
            (name, bare(match), bare(match) * SIZES[unit(match)], bare(cost) * SIZES[unit(cost)])
        )
    return found


def pack(key: Callable[[tuple[str, Fraction, Fraction, Fraction]], Fraction]) -> Method:
    return lambda asked: f'"{min(packs(asked), key=key)[0]}"'


METHODS: dict[str, Method] = {
    "simplest-reversed": lambda q: lowest(q.same())[::-1],
    "simplest-one-part": only_one_part,
    "simplest-subtracts-factor": lambda q: [part - factor(q.ratio) for part in q.ratio],
    "simplest-units-ignored": lambda q: lowest(q.ratio),
    "simplest-always-hundred": hundreds,
    "simplest-cleared-apart": cleared_apart,
    "unit-flipped": lambda q: unit_form(q.same(), last(q))[::-1],
    "unit-one-part": lambda q: set_one(q, lambda other, one: other),
    "unit-takes-away": lambda q: set_one(q, lambda other, one: other - (one - 1)),
    "unit-units-ignored": lambda q: unit_form(q.ratio, last(q)),
    "share-reversed": lambda q: shares(q)[::-1],
    "share-equal": lambda q: [q.amounts[0] / len(q.ratio)] * len(q.ratio),
    "share-as-fraction": by_fraction,
    "share-parts-for-amounts": lambda q: q.ratio,
    "share-one-part": lambda q: [q.amounts[0] / sum(lowest(q.ratio))],
    "share-not-difference": lambda q: [max(shares(q))],
    "one-part-additive": lambda q: [q.amounts[0] + q.ratio[1] - q.ratio[0]],
    "one-part-undivided": lambda q: one_part(q, lambda given, parts: given),
    "one-part-as-total": lambda q: one_part(q, lambda given, parts: given / sum(parts)),
    "one-part-not-total": rest_only,
    "one-part-unit-kept": lambda q: [q.amounts[0] / q.ratio[1] * sum(q.ratio)],
    "difference-as-part": lambda q: difference(q, q.amounts[0]),
    "difference-as-total": lambda q: difference(q, q.amounts[0] / sum(q.ratio)),
    "difference-one-part": lambda q: [gap(q)],
    "difference-larger-only": lambda q: [gap(q) * max(q.ratio)],
    "combine-joined": lambda q: lowest([*q.ratios[0], q.ratios[1][1]]),
    "combine-added": lambda q: lowest(
        [q.ratios[0][0], q.ratios[0][1] + q.ratios[1][0], q.ratios[1][1]]
    ),
    "combine-joined-shared": lambda q: [
        q.amounts[0] * part / (sum(q.ratios[0]) + q.ratios[1][1])
        for part in (*q.ratios[0], q.ratios[1][1])
    ],
    "combine-parts-for-amounts": lambda q: lowest(
        [q.ratios[0][0] / q.ratios[0][1], Fraction(1), q.ratios[1][1] / q.ratios[1][0]]
    ),
    "fraction-part-to-part": lambda q: [q.ratio[KIND(q)] / q.ratio[1 - KIND(q)]],
    "fraction-other-part": lambda q: [q.ratio[1 - KIND(q)] / sum(q.ratio)],
    "fraction-whole-as-part": lambda q: lowest([other_share(q)[0], Fraction(1)]),
    "fraction-ratio-reversed": lambda q: lowest(other_share(q)[::-1]),
    "fraction-numerator-joined": lambda q: lowest([Fraction(q.amounts[0].numerator), *q.ratio]),
    "fraction-rest-ignored": lambda q: lowest(
        [q.amounts[0], *(part / sum(q.ratio) for part in q.ratio)]
    ),
    "proportion-additive": lambda q: [amount_of(q) + people(q)[1] - people(q)[0]],
    "proportion-undivided": lambda q: [amount_of(q) * people(q)[1]],
    "proportion-no-exchange": lambda q: [abs(q.amounts[2] - q.amounts[3])],
    "proportion-euros-kept": lambda q: [q.amounts[2] * q.amounts[1] - q.amounts[3]],
    "proportion-price-only": lambda q: [q.amounts[3] / q.amounts[1]],
    "value-lowest-price": pack(lambda one: one[3]),
    "value-biggest-pack": pack(lambda one: -one[2]),
    "value-dearest-unit": pack(lambda one: -one[3] / one[2]),
    "value-units-ignored": pack(lambda one: one[3] / one[1]),
    "scale-additive": lambda q: [q.amounts[1] + q.amounts[2]],
    "scale-divides": lambda q: [q.amounts[2] / q.amounts[1]],
    "scale-multiplies": lambda q: [q.amounts[0] * 100 * q.ratio[1]],
    "scale-scales-swapped": lambda q: [q.amounts[0] * q.ratios[1][1] / q.ratios[0][1]],
    "scale-centimetres-as-metres": lambda q: [real(q)],
    "scale-metres-as-centimetres": lambda q: [q.amounts[0] / q.ratio[1]],
    "scale-units-ignored": lambda q: [Fraction(1), q.amounts[0] / q.amounts[1]],
    "scale-thousand": thousand,
    "scale-real-length": lambda q: [real(q)],
}


def people(asked: Question) -> tuple[Fraction, Fraction]:
    """Return the two numbers that have no unit: how many there are, and how many are asked for."""
    few, many = (n for n, u in zip(asked.amounts, asked.amount_units, strict=True) if u == "")
    return few, many


def amount_of(asked: Question) -> Fraction:
    (given,) = (n for n, u in zip(asked.amounts, asked.amount_units, strict=True) if u)
    return given


def sample(topic: Topic) -> Iterator[Item]:
    for tier in Tier:
        own = topic.spaces[tier].own
        chosen = random.Random(f"{topic.id}/{tier}").sample(own, min(SAMPLE, len(own)))
        yield from (topic.item(tier, index) for index in chosen)


@whole
@pytest.mark.parametrize("topic", TOPICS, ids=lambda topic: topic.id)
def test_a_slip_is_what_its_wrong_method_gives_on_the_printed_question(topic: Topic) -> None:
    for item in sample(topic):
        asked = Question(item)
        for slip in each_mistake(item):
            found = METHODS[slip.misconception.id.partition(".")[2]](asked)
            text = line(slip.wrong)
            wrong = text if isinstance(found, str) else [bare(m) for m in AMOUNT.finditer(text)]
            assert wrong == found, (item.address, asked.text, slip.misconception.name, text, found)


@whole
def test_a_wrong_answer_has_the_unit_of_the_right_one() -> None:
    for topic in TOPICS:
        for item in sample(topic):
            units = {unit(m) for m in AMOUNT.finditer(line(item.key))}
            for slip in each_mistake(item):
                assert {unit(m) for m in AMOUNT.finditer(line(slip.wrong))} == units, item.address


@only_whole
def test_every_misconception_of_the_strand_has_its_method() -> None:
    declared = {
        misconception.id.partition(".")[2]
        for topic in TOPICS
        for misconception in topic.misconceptions
        if misconception.id in shown_by_own(topic)
    }
    assert declared == set(METHODS)


@whole
def test_a_length_is_asked_for_in_a_unit() -> None:
    for topic in TOPICS:
        for item in sample(topic):
            text = Question(item).text
            if "How long" in text and not re.search(r"How long (?:does|do|will|would)\b", text):
                assert re.search(r", in (?:centi)?metres\?$", text), text
