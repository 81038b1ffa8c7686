"""Questions of every kind are the same after a pack has held them; so is a letter p."""

from __future__ import annotations

import pytest

from itembank.notation import NotationError
from itembank.packs.data.asks import has_letter_p, pack_ask, read_ask
from itembank.packs.data.pack_item import Ask
from tests.proof.asked import asked


@pytest.mark.parametrize(
    ("kind", "question", "key"),
    [
        ("find", "b; a : b = 2 : 3; a + b = £60", "£36"),
        ("expand", "4(2p - 3)", "8p - 12"),
        ("solve", "3p + q = 7; p - q = 1", "p = 2, q = 1"),
        ("inequality", "-1 < 2x + 3 ≤ 7", "-2 < x ≤ 2"),
        ("subject", "y = 3x + 2; x", "x = (y - 2)/3"),
        ("sequence", "5, 8, 11", "3n + 2"),
        ("lcm", "4, 6", "12"),
        ("figures 2", "0.04567", "0.046"),
        ("order", "70p, £0.50", "£0.50, 70p"),
    ],
)
def test_a_question_reads_back(kind: str, question: str, key: str) -> None:
    item = asked(kind, question, key)
    stored = Ask.model_validate_json(pack_ask(item).model_dump_json())
    assert read_ask(stored, pence=not has_letter_p(item)) == item.ask


@pytest.mark.parametrize(
    "stored",
    [
        Ask(kind="rewrite", target=["x"], detail="shorten"),
        Ask(kind="solve", target=[], relations=[]),
        Ask(kind="subject", target=["y = x", "2"]),
        Ask(kind="round", target=["2.5", "x"], detail="places"),
        Ask(kind="common", target=["4", "6"], detail="sum"),
    ],
)
def test_a_question_that_makes_no_sense_is_refused(stored: Ask) -> None:
    with pytest.raises(NotationError):
        read_ask(stored, pence=True)
