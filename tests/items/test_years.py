"""What topics declare of their year agrees with what their questions are."""

from __future__ import annotations

import pytest

from itembank.bank.model.fields import BankItem
from itembank.bank.question.as_item import read_item
from itembank.items.item import Tier
from itembank.items.measures.later_content import later_content
from itembank.items.measures.years import FIRST_YEAR_KS3, FIRST_YEAR_KS4, RECURRING_DECIMALS
from itembank.items.topics.registry import find_topic, topics
from itembank.notation import tree as t
from tests.depth import cases, whole

LOOKED_AT = cases(5, 150, 40)


@whole
@pytest.mark.parametrize("topic", topics(), ids=lambda topic: topic.id)
def test_what_a_topic_declares_is_what_its_questions_show(topic):
    for tier, space in topic.spaces.items():
        own = space.own  # other kinds of question are of the content that they are made of
        for number in own[:: max(1, len(own) // LOOKED_AT)]:
            item = topic.item(tier, number)
            assert later_content(item) == topic.content(tier, *space[number]), item.address


def test_every_recurring_decimal_of_a_topic_is_declared():
    """Held over the whole space, by a look at what is printed and what is asked for alone."""
    topic = find_topic("fractions.decimals-percentages")
    for tier in Tier:
        for number in topic.spaces[tier].own:
            values = topic.spaces[tier][number]
            item = topic.item(tier, number)
            shown = [run for run in (*item.prompt, item.key) if not isinstance(run, str)]
            recurs = any(
                isinstance(p, t.Dec) and p.recurring for node in shown for p in t.walk(node)
            )
            assert (topic.from_year(tier, *values) == FIRST_YEAR_KS4) is recurs
            assert (topic.content(tier, *values) == RECURRING_DECIMALS) is recurs


KS4 = FIRST_YEAR_KS4
KS3 = FIRST_YEAR_KS3


@pytest.mark.parametrize(
    ("prompt", "key", "more", "year"),
    [
        ("Solve {x^2 - 5x + 6 = 0}.", "x = 2 or x = 3", {}, KS4),
        ("Solve {(x + 1)(x - 4) = 0}.", "x = -1 or x = 4", {}, KS4),
        ("Solve {5x - 6 = 9}.", "x = 3", {}, KS3),
        ("Solve the simultaneous equations {x + y = 5} and {x - y = 1}.", "x = 3, y = 2", {}, KS4),
        ("Factorise {x^2 + 5x + 6}.", "(x + 2)(x + 3)", {}, KS4),
        ("Factorise {4x^2 - 9}.", "(2x + 3)(2x - 3)", {}, KS4),
        ("Factorise {x^2 + 5x}.", "x(x + 5)", {}, KS3),
        ("Expand and simplify {(x + 2)(x + 3)}.", "x^2 + 5x + 6", {}, KS3),
        ("Simplify {√20}.", "2√5", {}, KS4),
        ("Work out {√49}.", "7", {}, KS3),
        ("Write {0.4̇} as a fraction.", "4/9", {"task": "convert", "form": "lowest-terms"}, KS4),
        ("Write {5/6} as a decimal.", "0.83̇", {"task": "convert", "form": "decimal"}, KS4),
        ("Write {5/8} as a decimal.", "0.625", {"task": "convert", "form": "decimal"}, KS3),
        ("Find the nth term of the sequence that begins {2, 5, 10, 17}.", "n^2 + 1", {}, KS4),
        ("Find the nth term of the sequence that begins {2, 5, 8, 11}.", "3n - 1", {}, KS3),
        ("Solve {2x + 1 ≤ 9}.", "x ≤ 4", {}, KS4),
    ],
)
def test_content_of_key_stage_4_is_told_by_the_question(prompt, key, more, year):
    item = BankItem(id="a-1", tier="core", prompt=prompt, key=key, **more)
    found = later_content(read_item(item, "a:a-1", "some.topic"))
    assert (KS3 if found is None else found.from_year) == year


def test_every_content_names_its_statement_and_document():
    contents = {
        part.content for topic in topics() for parts in topic.later.values() for part in parts
    }
    assert len(contents) >= 2
    for content in contents:
        assert content.from_year == FIRST_YEAR_KS4
        assert content.statement.endswith((".", ".)"))
        assert content.document.endswith("key stage 4")
