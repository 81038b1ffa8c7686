"""Unlike things are not added: 3 kg + 2 m is no question, whatever its numbers come to."""

import pytest

from itembank.items.item import Find, Item, Tier
from itembank.notation import parse
from itembank.proof.claim.dimensions import unlike_things
from itembank.proof.judge import judge
from itembank.proof.outcome import State


@pytest.mark.parametrize(
    ("text", "key"),
    [
        ("3 kg + 2 m", "5 kg"),
        ("20° + 5 °C", "25 °C"),
        ("5 + 3 kg", "8 kg"),
        ("£40 + 10%", "£40.10"),
        ("3 m × 4 m + 2 m", "14 m^2"),
        ("3 years + 2 days", "5 days"),
    ],
)
def test_such_a_sum_is_left_to_a_person(text, key):
    target = parse(text)
    item = Item(
        "a:b", "ratio.speed", Tier.CORE, ("Work out ", target, "."), Find(target), parse(key),
        "value", (), (), (), 1, (),
    )  # fmt: skip
    found = judge(item)
    assert found.state is State.NEEDS_PERSON
    assert "adds unlike things" in found.says


@pytest.mark.parametrize(
    "text",
    ["3 kg + 200 g", "£3 + 45p", "3 m × 4 m + 2 m^2", "60 km ÷ 2 h + 5 km/h", "2 l + 5 cm^3",
     "14:35 + 50 min", "x + 3 kg", "3 + 4", "x cm + 2x cm", "£40 + 10% of £40"],
)  # fmt: skip
def test_like_things_are_added(text):
    assert unlike_things([parse(text)]) == ""
