"""Words of English classrooms in everything that prints of fractions, ratio and number."""

from __future__ import annotations

import random
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from itembank.bank.read.load import read_bank
from itembank.items.item import Tier
from itembank.items.topics.registry import topics
from tests.depth import cases, whole
from tests.generators.asked_plainly import plain

STRANDS = ("fractions.", "ratio.", "number.", "percentages.")
BANK = Path(__file__).parents[2] / "banks" / "key-stage-3"
# A class is told numerator and denominator, reciprocal, simplify; and subtract for minus.
NOT_SAID = re.compile(
    r"\b(tops?|bottoms?|upside[- ]down|flip\w*|top-heavy|turn\w* (?:it|the fraction) over"
    r"|reduce (?:it|the fraction)|minusing|timesing|fraction bar)\b",
    re.IGNORECASE,
)
# Spellings of other countries.
NOT_SPELT = re.compile(r"\b(\w+(?:liter|meter)s?|color\w*|gray|favor\w*)\b", re.IGNORECASE)
METRE = re.compile(r"(?:peri|para|dia|thermo)meters?", re.IGNORECASE)


def generated() -> Iterator[tuple[str, str]]:
    for topic in topics():
        if not topic.id.startswith(STRANDS):
            continue
        for misconception in topic.misconceptions:
            yield misconception.id, f"{misconception.name} {misconception.ask}"
        for tier in Tier:
            own = plain(topic, tier)
            for index in random.Random(str(tier)).sample(own, min(cases(5, 60, 24), len(own))):
                item = topic.item(tier, index)
                words = [run for run in item.prompt if isinstance(run, str)]
                yield item.address, " ".join([*words, *(step.say for step in item.steps)])


def written() -> Iterator[tuple[str, str]]:
    for entry in read_bank(BANK).entries():
        if entry.topic.startswith(STRANDS):
            item = entry.item
            slips = [f"{slip.name} {slip.ask}" for slip in item.misconceptions]
            yield entry.address, " ".join([item.prompt, *(say for say, _ in item.working), *slips])


@whole
@pytest.mark.parametrize("source", [generated, written], ids=lambda source: source.__name__)
def test_what_prints_is_said_as_in_an_english_classroom(source: object) -> None:
    assert callable(source)
    seen = 0
    for where, text in source():
        assert not NOT_SAID.search(text), (where, text)
        assert all(METRE.fullmatch(found[0]) for found in NOT_SPELT.finditer(text)), (where, text)
        seen += 1
    assert seen > 150


def test_a_misconception_is_named_in_words_and_asks_a_pupil_a_question() -> None:
    for topic in topics():
        for misconception in topic.misconceptions:
            if topic.id.startswith(STRANDS):
                assert re.match(r"[a-z]", misconception.name), misconception.name
                assert not misconception.name.endswith((".", "?")), misconception.name
                assert len(misconception.ask) <= 100, misconception.ask
                assert "?" in misconception.ask, misconception.ask


UNPARTED = re.compile(r"(?<![\d.])\d{5,}")
FIVE_FIGURES = (
    *("geometry.scale-factors-area", "geometry.surface-area", "measures.area-volume-units"),
    *("measures.maps", "number.multiply-decimals", "ratio.scale"),
)


def test_the_words_of_a_line_part_thousands_as_its_mathematics_does() -> None:
    """‘Real distances are 20000 times larger’ stood beside 20 000 × 15 cm."""
    parted = set()
    for topic in topics():
        for tier in Tier:
            space = topic.spaces[tier]
            # The topics that have such numbers are gone through, the others looked into.
            often = cases(40, 400, 120) if topic.id in FIVE_FIGURES else cases(3, 60, 12)
            for index in range(0, len(space), max(1, len(space) // often)):
                for step in topic.item(tier, index).steps:
                    assert not UNPARTED.search(step.say), (topic.id, tier, index, step.say)
                    if re.search(r"\d\xa0000", step.say):
                        parted.add(topic.id)
    assert parted >= set(FIVE_FIGURES) - {"ratio.scale"}
