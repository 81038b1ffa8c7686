"""Every unit is heard among words, in small letters and capitals, by whatever words it stands."""

from __future__ import annotations

import pytest

from itembank.notation.units import UNITS, unit_known
from itembank.wording.sentences.units_said import kinds_in_words

BASE = {"speed": {"length", "time"}, "area": {"length"}, "volume": {"length"}}
NAMES = sorted(
    {
        (name, unit)
        for unit, facts in UNITS.items()
        for name in (facts.singular, facts.many)
        if name.isascii() and name[:1].isalpha() and len(name) > 2
    }
)


@pytest.mark.parametrize(("name", "unit"), NAMES)
@pytest.mark.parametrize("words", ["How many {}?", "It is ({}) long.", "7-{} and more", "x {}"])
def test_a_unit_is_heard(name, unit, words):
    kind = unit_known(unit).dimension
    expected = BASE.get(kind, {kind})
    if name in ("pounds", "pound"):
        expected = {"money"}  # or a mass: money is what they are taken for
    for spelling in (name, name.upper()):
        assert expected <= kinds_in_words(words.format(spelling))


@pytest.mark.parametrize("words", ["", "How many are left?", "Hour-long", "kmh", "Work out."])
def test_no_unit_is_heard_in_other_words(words):
    assert ("time" in kinds_in_words(words)) is ("Hour" in words)
