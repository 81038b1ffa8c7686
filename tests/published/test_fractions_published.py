"""The fraction topics against questions and answers that others published.

OPENSTAX holds exercises of OpenStax Prealgebra 2e, under the title of the section each is from;
`openstax.py` beside this file says more of them. Where an answer there is improper, ours is the
same number as a mixed number; where a question there has a minus sign before it (168/192,
90/120, 3/8), ours and its answer are without. Each question is asked of the topic that sets
such questions, and the topic's own working and key are held to the published answer.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from generators.fractions.add_like import AddLike
from generators.fractions.add_mixed import AddMixed
from generators.fractions.add_unlike import AddUnlike
from generators.fractions.decimals_percentages import DecimalsPercentages
from generators.fractions.divide import Divide
from generators.fractions.equivalent import Equivalent
from generators.fractions.improper_mixed import ImproperMixed
from generators.fractions.lowest_terms import LowestTerms
from generators.fractions.mixed_operations import MixedOperations
from generators.fractions.multiply import Multiply
from itembank.items.item import Draft, Find, Tier
from itembank.items.topics.topic import Topic
from itembank.notation import line, parse
from itembank.notation import tree as t
from itembank.notation.value import exact
from tests.published.openstax import section

SUPPORT, CORE, CHALLENGE = Tier

# Section, topic, tier, parameters of the question, the question, the published answer.
OPENSTAX: tuple[tuple[str, Topic, Tier, tuple[Any, ...], str, str], ...] = (
    ("Visualize Fractions", ImproperMixed(), SUPPORT, (3, 9, 1), "28/9", "3 1/9"),
    ("Multiply and Divide Fractions", LowestTerms(), SUPPORT, (3, 1, 7), "7/21", "1/3"),
    ("Multiply and Divide Fractions", LowestTerms(), CORE, (8, 7, 24), "168/192", "7/8"),
    ("Multiply and Divide Fractions", Multiply(), SUPPORT, (1, 4, 3, 10, 9), "3/4 × 9/10", "27/40"),
    ("Multiply and Divide Fractions", Multiply(), SUPPORT, (0, 11, 5, 2, 4), "5/11 × 4", "20/11"),
    ("Multiply and Divide Fractions", Divide(), CORE, (2, 1, 8, 1), "1/2 ÷ 1/8", "4"),
    (
        "Multiply and Divide Mixed Numbers and Complex Fractions",
        *(Divide(), CHALLENGE, (1, (1, 2), (1, 2), 13, 9), "13 1/2 ÷ 9", "3/2"),
    ),
    (
        "Add and Subtract Fractions with Common Denominators",
        *(AddLike(), CORE, (0, 12, 7, 5), "7/12 - 5/12", "1/6"),
    ),
    (
        "Add and Subtract Fractions with Different Denominators",
        *(AddUnlike(), CORE, (0, 8, 5, 12, 7), "5/8 - 7/12", "1/24"),
    ),
    (
        "Add and Subtract Fractions with Different Denominators",
        *(AddUnlike(), CORE, (0, 6, 5, 4, 3), "5/6 - 3/4", "1/12"),
    ),
    (
        "Add and Subtract Fractions with Different Denominators",
        *(MixedOperations(), CHALLENGE, (0, (3, 4), (1, 6), (5, 8), (1, 3))),
        *("(3/4 + 1/6) ÷ (5/8 - 1/3)", "22/7"),
    ),
    (
        "Add and Subtract Mixed Numbers",
        *(AddMixed(), SUPPORT, (1, (9, 9), 2, 5, 4, 1), "2 4/9 + 5 1/9", "7 5/9"),
    ),
    (
        "Add and Subtract Mixed Numbers",
        *(AddMixed(), CORE, (0, (9, 5), 6, 4, 5, 2), "6 5/9 - 4 2/5", "2 7/45"),
    ),
    (
        "Add and Subtract Mixed Numbers",
        *(AddMixed(), CORE, (0, (5, 4), 6, 1, 4, 1), "6 4/5 - 1 1/4", "5 11/20"),
    ),
    (
        "Add and Subtract Mixed Numbers",
        *(AddMixed(), CORE, (1, (10, 10), 7, 3, 9, 1), "7 9/10 + 3 1/10", "11"),
    ),
    (
        "Add and Subtract Mixed Numbers",
        *(AddMixed(), CORE, (0, (12, 12), 2, 1, 5, 7), "2 5/12 - 1 7/12", "5/6"),
    ),
    (
        "Add and Subtract Mixed Numbers",
        *(AddMixed(), CORE, (0, (12, 12), 2, 1, 7, 5), "2 7/12 - 1 5/12", "1 1/6"),
    ),
    ("Solve Equations with Fractions", LowestTerms(), CORE, (4, 3, 30), "90/120", "3/4"),
    ("Solve Equations with Fractions", AddLike(), SUPPORT, (1, 5, 2, 1), "2/5 + 1/5", "3/5"),
    ("Solve Equations with Fractions", Multiply(), CORE, (1, 5, 16, 8, 15), "16/5 × 15/8", "6"),
    (
        "Solve Equations with Fractions",
        *(Divide(), CHALLENGE, (2, (2, 3), (1, 12), 8, 1), "8 2/3 ÷ 1 1/12", "8"),
    ),
    ("Solve Equations with Fractions", ImproperMixed(), CORE, (9, 5, 4), "9 4/5", "49/5"),
    ("Decimals and Fractions", DecimalsPercentages(), SUPPORT, (0, 40), "2/5", "0.4"),
    ("Decimals and Fractions", DecimalsPercentages(), CORE, (2, 15), "3/8", "0.375"),
)

# Rhind Mathematical Papyrus, table of 2/n, its entries of two terms, from memory; the
# arithmetic checks itself. As (2, n), and the denominators of the two unit fractions.
RHIND = ((5, 3, 15), (7, 4, 28), (9, 6, 18), (11, 6, 66))

# Length of the Farey sequence of order n, n = 1 … 10 (OEIS A005728), from memory. It holds
# 0/1 and 1/1 besides the proper fractions in lowest terms with denominators up to n.
FAREY = (2, 3, 5, 7, 11, 13, 19, 23, 29, 33)


@pytest.mark.parametrize(
    ("title", "topic", "tier", "values", "question", "published"),
    OPENSTAX,
    ids=[f"{section(row[0])}: {row[4]}" for row in OPENSTAX],
)
def test_topics_give_the_published_answers(
    title: str, topic: Topic, tier: Tier, values: tuple[Any, ...], question: str, published: str
) -> None:
    draft = topic.make(tier, *values)
    asked = [run for run in draft.prompt if not isinstance(run, str)]
    assert asked == [parse(question)], title
    assert draft.ask == Find(parse(question))
    assert exact(draft.key) == exact(parse(published))
    last = draft.steps[-1].maths
    assert last is not None
    assert draft.key in t.walk(last)


@pytest.mark.parametrize(("n", "first", "second"), RHIND)
def test_unit_fractions_of_the_rhind_table_add_up(n: int, first: int, second: int) -> None:
    draft = AddUnlike().make(SUPPORT, 1, first, 1, second // first, 1)
    assert second % first == 0
    assert line(draft.key) == f"2/{n}"


@pytest.mark.parametrize("order", range(2, 11))
def test_proper_fractions_to_scale_up_number_as_the_farey_sequence(order: int) -> None:
    space = Equivalent().spaces[SUPPORT]
    shown = {_proper(Equivalent().make(SUPPORT, *space[index])) for index in space.own}
    count = len({value for value in shown if value.denominator <= order})
    assert count == FAREY[order - 1] - 2


def _proper(draft: Draft) -> Fraction:
    """Return the complete fraction that the question prints."""
    relation = next(run for run in draft.prompt if not isinstance(run, str))
    whole = [
        node
        for node in t.walk(relation)
        if isinstance(node, t.Frac) and isinstance(node.num, t.Int) and isinstance(node.den, t.Int)
    ]
    assert len(whole) == 1
    return exact(whole[0])
