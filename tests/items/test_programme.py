"""The programme of study's statements, and the topics that name them."""

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
