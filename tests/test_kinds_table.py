"""The page in ``docs`` that says which kinds of question each topic has."""

import importlib.util
from pathlib import Path
from types import ModuleType

import pytest

from itembank.items.item import Item
from itembank.items.measures.kind_told import PLAIN
from itembank.items.topics import of_kind
from itembank.items.topics.of_kind import all_kinds, kinds_of
from itembank.items.topics.registry import find_topic, topic_ids
from itembank.items.topics.topic import Topic
from tests.depth import WHOLE, whole

DOCS = Path(__file__).resolve().parents[1] / "docs"


@pytest.fixture(scope="module")
def table() -> ModuleType:
    spec = importlib.util.spec_from_file_location("kinds_table", DOCS / "kinds_table.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


@whole
def test_the_page_is_of_the_topics_as_they_stand(
    table: ModuleType, monkeypatch: pytest.MonkeyPatch
) -> None:
    page = (DOCS / "kinds-of-question.md").read_text("utf-8")
    really = table.cells

    def cells(topic: Topic) -> list[str]:
        """Look at a few questions of each part, and at more where the page has another row."""
        for few in (2, of_kind.FEW):
            with pytest.MonkeyPatch.context() as patch:
                patch.setattr(of_kind, "FEW", few)
                patch.setattr(table, "kinds_of", kinds_of.__wrapped__)
                row: list[str] = really(topic)
            if f"| `{topic.id}` | {sum(map(bool, row))} | {' | '.join(row)} |\n" in page:
                break
        return row

    if not WHOLE:
        monkeypatch.setattr(table, "cells", cells)
    assert page == table.text(), "run: python docs/kinds_table.py"


def test_a_column_counts_kinds_that_there_are_and_no_kind_twice(table: ModuleType) -> None:
    counted = [kind for kinds in table.COLUMNS.values() for kind in kinds]
    assert set(counted) <= set(all_kinds()) - PLAIN
    assert len(set(counted)) == len(counted)


def test_a_row_says_the_tiers_whose_questions_are_of_the_kind(table: ModuleType) -> None:
    topic = find_topic("fractions.equivalent")
    row = dict(zip(table.COLUMNS, table.cells(topic), strict=True))
    asked = [tier for tier in topic.spaces if any(map(_missing, topic.walk(tier)))]
    assert row["missing number"].split() == [table.TIERS[tier] for tier in asked]
    assert not row["draw"]


def _missing(item: Item) -> bool:
    return any("Which number goes in the box" in run for run in item.prompt if isinstance(run, str))


def test_half_of_all_topics_have_several_kinds(table: ModuleType) -> None:
    page = (DOCS / "kinds-of-question.md").read_text("utf-8")
    kinds = {line.split("|")[1].strip(" `"): line.split("|")[2] for line in page.splitlines()[4:]
             if line.startswith("| `")}  # fmt: skip
    assert set(kinds) == set(topic_ids())
    assert sum(int(number) >= 2 for number in kinds.values()) * 2 >= len(kinds)
