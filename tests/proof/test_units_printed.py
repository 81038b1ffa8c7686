"""A key is in units that the prompt prints, in its mathematics or in its words."""

import pytest

from itembank.items.item import Find, Item, Tier
from itembank.notation import parse
from itembank.notation import tree as t
from itembank.proof.claim.key_fits import mismatched

EQUATION = parse("3x - 4 = 11")


def item(key, *prompt):
    ask = Find(t.Sym("x"), (EQUATION,))
    return Item(
        "made.up/core/7",
        "made.up",
        Tier.CORE,
        prompt,
        ask,
        parse(key),
        "solution",
        (),
        (),
        (),
        1,
        (),
    )


@pytest.mark.parametrize(
    ("key", "kinds"),
    [("x = 5 kg", "mass"), ("x = £5", "money"), ("x = 5 km/h", "length and time")],
)
def test_a_unit_that_is_nowhere_printed_is_told(key, kinds):
    said = mismatched(item(key, "Solve ", EQUATION, "."))
    assert said == f"the key is in units of {kinds}, which the prompt does not print"


@pytest.mark.parametrize(
    "prompt",
    [
        ("How many kilograms is x, if ", EQUATION, "?"),
        ("A sack holds ", parse("4 kg"), ". Solve ", EQUATION, "."),
    ],
)
def test_a_unit_in_the_words_or_in_the_mathematics_is_printed(prompt):
    assert mismatched(item("x = 5 kg", *prompt)) == ""
