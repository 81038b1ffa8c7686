"""The page's marker knows every node of the tree, and says so where it would not."""

from __future__ import annotations

from pathlib import Path

import pytest

from itembank.bank.model.bank import Entry
from itembank.bank.model.fields import BankItem
from itembank.bank.question.as_item import as_item
from itembank.notation import algebra, value
from itembank.notation.tree.face import FACES
from itembank.selfmark.questions import question_data
from tests.selfmark.test_same_verdict import marker_page

TABLES = ("BUILD", "LINE", "WORDS", "EXACT", "ALGEBRA")
NAMED = "({" + ", ".join(f"{name}: Object.keys({name})" for name in TABLES) + "})"
BUILDERS = {name for faces in FACES.values() for name in faces.syntax.build}


def page_with(browser, seen: str):
    return marker_page(
        browser, ("window.selfmark = {", f"window.seen = {seen}; window.selfmark = {{")
    )


@pytest.mark.parametrize(
    ("table", "needed"),
    [
        ("BUILD", BUILDERS),
        ("LINE", {kind.__name__ for kind in FACES}),
        ("WORDS", {kind.__name__ for kind in FACES}),
        ("EXACT", {kind.__name__ for kind in value.EXACT}),
        ("ALGEBRA", {kind.__name__ for kind in algebra.ALGEBRA}),
    ],
)
def test_each_table_of_the_page_has_what_the_marker_has(browser, table, needed):
    found = page_with(browser, NAMED).evaluate("window.seen")
    assert needed - set(found[table]) == set()


def sum_item(prompt, key):
    fields = {"id": "a-1", "tier": "core", "prompt": prompt, "key": key}
    item = BankItem.model_validate(fields)
    return as_item(Entry(item, "number.try", "try", Path("number.try.toml"), 1))


def test_a_question_with_a_node_that_the_page_has_not_is_left_to_the_teacher(browser):
    page = marker_page(browser)
    known = question_data(sum_item("Work out {3 - 8}.", "-5"))
    strange = {**known, "shown": [["Whirl", ["Int", "3"]]]}
    marked = """([data, answer]) => {
      const { mark, question } = window.selfmark;
      return mark(() => question(data), answer).verdict;
    }"""
    assert page.evaluate(marked, [known, "-5"]) == "right"
    assert page.evaluate(marked, [strange, "-5"]) == "undecided"
