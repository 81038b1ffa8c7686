"""Percentage topics against values published elsewhere.

The examples are those of *Prealgebra 2e* (OpenStax, 2020, Creative Commons Attribution), section
6.2, *Solve General Applications of Percent*, as questions and answers only, from memory.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from generators.percentages._amounts import part_steps
from generators.percentages._whole_from_part import back_to_whole
from generators.percentages.change import Change
from generators.percentages.express import Express
from generators.percentages.repeated import Repeated
from generators.percentages.reverse import Reverse
from generators.percentages.simple_interest import SimpleInterest
from itembank.items.item import Draft, Find, Tier
from itembank.notation import line, parse
from itembank.notation import tree as t
from itembank.notation.value import exact
from itembank.proof.exact.reckoning.elimination import answer


def found(draft: Draft) -> tuple[str, Fraction]:
    assert isinstance(draft.ask, Find)
    (value,) = answer(draft.ask.target, draft.ask.relations)
    return line(draft.key), value


@pytest.mark.parametrize(
    ("tenths", "whole", "part"),
    [(350, 90, "31.5"), (1250, 28, "35"), (450, 80, "36"), (65, 18, "1.17"), (85, 56, "4.76")],
)
def test_openstax_percentages_of_amounts(tenths: int, whole: int, part: str) -> None:
    # 85 tenths of a per cent: a sales tax of 8.5% on $56 is $4.76, from memory too.
    last = part_steps(tenths, 100 * whole, "")[-1].maths
    assert isinstance(last, t.Relation)
    assert last.rest[-1][1] == parse(part)
    assert exact(last.first) == Fraction(part)


@pytest.mark.parametrize(("part", "whole", "key"), [(9, 36, "25%"), (144, 96, "150%")])
def test_openstax_percentages_to_find(part: int, whole: int, key: str) -> None:
    kind, index = ("story", 100 * part // whole) if part < whole else ("over", 150)
    tier = Tier.CORE if kind == "story" else Tier.CHALLENGE
    draft = Express().make(tier, kind, whole, index, 0)
    assert found(draft) == (key, Fraction(part, whole))


def test_a_rise_and_a_fall_by_as_much_is_a_loss() -> None:
    # Up by p% and down by p% leaves 1 − (p/100)² of a price: an old chestnut, from memory.
    for p in (50, 100, 200, 250):
        draft = Change().make(Tier.CHALLENGE, "twice", p, 400, -p)
        assert found(draft)[1] == 400 * (1 - Fraction(p, 1000) ** 2)


def test_value_added_tax_at_the_standard_rate() -> None:
    # 20% in the United Kingdom since January 2011 (from memory): six fifths of a net price.
    draft = Change().make(Tier.SUPPORT, "up", 200, 250)
    assert found(draft)[1] == 300


@pytest.mark.parametrize(("tenths", "part", "whole"), [(750, "36", "48"), (65, "1.17", "18")])
def test_openstax_wholes(tenths: int, part: str, whole: str) -> None:
    last = back_to_whole(tenths, int(100 * Fraction(part)), "")[-1].maths
    assert isinstance(last, t.Relation)
    assert last.rest[-1][1] == parse(whole)
    assert exact(last.first) == Fraction(whole)


def test_a_price_before_tax_at_the_standard_rate() -> None:
    # £54 with 20% tax is £45 without it: common practice in schools, no source.
    assert found(Reverse().make(Tier.CORE, "price", 200, 45)) == ("£45", Fraction(45))


@pytest.mark.parametrize(
    ("pounds", "tenths", "years", "end"),
    [(1000, 50, 2, "£1102.50"), (1000, 100, 3, "£1331"), (100, 100, 2, "£121")],
)
def test_compound_interest_of_the_tables(pounds: int, tenths: int, years: int, end: str) -> None:
    # 1.05² = 1.1025 and 1.1³ = 1.331 stand in every table of compound interest, from memory.
    assert found(Repeated().make(Tier.CORE, "interest", tenths, pounds, years))[0] == end


@pytest.mark.parametrize(
    ("pounds", "tenths", "years", "interest"),
    [(500, 60, 3, "£90"), (950, 30, 5, "£142.50"), (36_000, 65, 4, "£9360")],
)
def test_openstax_simple_interest(pounds: int, tenths: int, years: int, interest: str) -> None:
    # Prealgebra 2e, section 6.4, Solve Simple Interest Applications, from memory.
    assert found(SimpleInterest().make(Tier.SUPPORT, "interest", pounds, tenths, years))[0] == (
        interest
    )
