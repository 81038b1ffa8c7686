"""A minus sign changes nothing of how many digits a rounded answer has to have."""

import pytest

from itembank.items.item import Round
from itembank.marking.mark import mark
from itembank.marking.verdict import Verdict
from tests.marking.questions import question


@pytest.mark.parametrize(
    ("printed", "detail", "amount", "key", "answers"),
    [
        ("2.496", "places", 2, "2.50", ("2.5", "2.500")),
        ("2.496 kg", "places", 2, "2.50 kg", ("2.5 kg", "2.500 kg", "2.5")),
        ("14967", "figures", 3, "1.50 × 10^4", ("1.5 × 10^4", "1.500 × 10^4", "15000.0")),
        ("0.00396", "figures", 2, "0.0040", ("0.004", "0.00400")),
    ],
)
@pytest.mark.parametrize("sign", ["", "-"])
def test_digits_too_many_or_too_few_are_the_wrong_form(sign, printed, detail, amount, key, answers):
    to = "2 decimal places" if detail == "places" else f"{amount} significant figures"
    asked = question(
        f"{sign}{key}",
        "rounded",
        f"Round {{{sign}{printed}}} to {to}.",
        lambda maths: Round(maths[0], detail, amount),
    )
    assert mark(asked, f"{sign}{key}").verdict is Verdict.RIGHT
    for answer in answers:
        marked = mark(asked, f"{sign}{answer}")
        assert marked.verdict is Verdict.WRONG_FORM, answer
        assert f"give it to {to}." in marked.says
