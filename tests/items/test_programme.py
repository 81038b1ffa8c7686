"""The programme of study's statements, and the topics that name them."""

import importlib.util
from pathlib import Path

from itembank.items.topics.programme_of_study import STATEMENTS, statement
from itembank.items.topics.registry import topic_ids, topics


def test_labels_name_one_statement_each() -> None:
    assert len({each.id for each in STATEMENTS}) == len(STATEMENTS)


def test_every_topic_serves_statements_that_there_are() -> None:
    without = [topic.id for topic in topics() if not topic.statements]
    assert not without
    for topic in topics():
        assert len(set(topic.statements)) == len(topic.statements), topic.id
        for label in topic.statements:
            assert statement(label).id == label


def test_topics_rest_on_topics_that_there_are() -> None:
    known = set(topic_ids())
    lost = {topic.id: set(topic.prerequisites) - known for topic in topics()}
    assert not {name: missing for name, missing in lost.items() if missing}


def test_a_statement_is_served_or_says_why_not() -> None:
    served = {label for topic in topics() for label in topic.statements}
    assert {each.id for each in STATEMENTS if not each.left_out} <= served
    assert not {each.id for each in STATEMENTS if each.left_out} & served


def test_the_page_of_statements_is_of_the_topics_as_they_stand() -> None:
    docs = Path(__file__).resolve().parents[2] / "docs"
    spec = importlib.util.spec_from_file_location("statement_table", docs / "statement_table.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    page = (docs / "programme-of-study.md").read_text("utf-8")
    assert page == module.text(), "run: python docs/statement_table.py"
