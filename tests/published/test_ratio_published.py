"""Ratio topics against values published elsewhere."""

from __future__ import annotations

from fractions import Fraction

import pytest

from generators.ratio._materials import SOLIDS
from generators.ratio.compound_units import CompoundUnits
from generators.ratio.density import Density
from generators.ratio.inverse_proportion import InverseProportion
from generators.ratio.proportion import Proportion
from generators.ratio.scale import Scale
from generators.ratio.simplest_form import SimplestForm
from generators.ratio.speed import Speed
from generators.ratio.unit_form import UnitForm
from itembank.items.item import Draft, Find, Tier
from itembank.notation import line, parse
from itembank.notation import tree as t
from itembank.notation.value import exact
from itembank.proof.exact.reckoning.elimination import answer
from tests.published.openstax import section


def found(draft: Draft) -> tuple[Fraction, ...]:
    assert isinstance(draft.ask, Find)
    return answer(draft.ask.target, draft.ask.relations)


# Exercises of OpenStax Prealgebra 2e (see openstax.py beside this file for what is known of
# them); each list is named by the section it is from. Minus signs before 90/120 and 3/8 are
# left out.
PROPORTIONS = section("Solve Proportions and their Applications")
LOWEST = section("Multiply and Divide Fractions")
MIXED = section("Multiply and Divide Mixed Numbers and Complex Fractions")
EQUATIONS = section("Solve Equations with Fractions")
DECIMALS = section("Decimals and Fractions")


@pytest.mark.parametrize(
    ("proportion", "unknown", "value"),
    [
        pytest.param("1.2/1.8 = d/6", "d", 4, id=f"{PROPORTIONS}: 1.2/1.8 = d/6"),
        pytest.param("x/36 = 5/9", "x", 20, id=f"{PROPORTIONS}: x/36 = 5/9"),
    ],
)
def test_openstax_proportions(proportion: str, unknown: str, value: int) -> None:
    relation = parse(proportion)
    assert isinstance(relation, t.Relation)
    assert answer(t.Sym(unknown), (relation,)) == (Fraction(value),)
    # The same question as a ratio, as our items put it.
    left, right = proportion.replace("/", " : ").split(" = ")
    as_ratios = parse(f"{left} = {right}")
    assert isinstance(as_ratios, t.Relation)
    assert answer(t.Sym(unknown), (as_ratios,)) == (Fraction(value),)


def test_openstax_proportion_by_our_generator() -> None:
    # PROPORTIONS: x/36 = 5/9 gives 20.
    draft = Proportion().make(Tier.SUPPORT, 9, 4, 5, 0)
    assert draft.prompt[1] == t.Int(9)
    # 9 people need 45 g, so 36 people need 180 g: the same proportion, nine times over.
    assert line(draft.key) == "180 g"
    assert Fraction(180, 9) == answer(t.Sym("x"), (parse("x/36 = 5/9"),))[0]  # type: ignore[arg-type]


# Quotients and fractions in lowest terms, read as ratios a : b.
@pytest.mark.parametrize(
    ("left", "right", "top", "bottom"),
    [
        pytest.param((7, 1, "frac"), (21, 1, "frac"), 1, 3, id=f"{LOWEST}: 7/21"),
        pytest.param((1, 2, "frac"), (1, 8, "frac"), 4, 1, id=f"{LOWEST}: 1/2 ÷ 1/8"),
        pytest.param((90, 1, "frac"), (120, 1, "frac"), 3, 4, id=f"{EQUATIONS}: 90/120"),
        pytest.param(
            *((26, 3, "mixed"), (13, 12, "mixed"), 8, 1), id=f"{EQUATIONS}: 8 2/3 ÷ 1 1/12"
        ),
        pytest.param((27, 2, "mixed"), (9, 1, "frac"), 3, 2, id=f"{MIXED}: 13 1/2 ÷ 9"),
    ],
)
def test_openstax_quotients_as_ratios(
    left: tuple[int, int, str], right: tuple[int, int, str], top: int, bottom: int
) -> None:
    draft = SimplestForm().make(Tier.CHALLENGE, left, right)
    # A question may put the larger part first; the pair of parts is the same.
    assert sorted(map(int, line(draft.key).split(" : "))) == sorted((top, bottom))
    assert found(draft)[0] / found(draft)[1] in (Fraction(top, bottom), Fraction(bottom, top))


@pytest.mark.parametrize(
    ("top", "bottom", "key"),
    [
        pytest.param(2, 5, "1 : 0.4", id=f"{DECIMALS}: 2/5 = 0.4"),
        pytest.param(3, 8, "1 : 0.375", id=f"{DECIMALS}: 3/8 = 0.375"),
    ],
)
def test_openstax_decimals_as_unit_ratios(top: int, bottom: int, key: str) -> None:
    draft = UnitForm().make(Tier.CORE, bottom, top, 0)
    assert line(draft.key) == key


def test_rhind_problem_63() -> None:
    # Rhind Mathematical Papyrus, problem 63 (from memory; the arithmetic checks itself): 700
    # loaves among four men in the proportion 2/3, 1/2, 1/3, 1/4.
    target = parse("a, b, c, d")
    relations = (parse("a : b : c : d = 2/3 : 1/2 : 1/3 : 1/4"), parse("a + b + c + d = 700"))
    shares = answer(target, relations)  # type: ignore[arg-type]
    assert shares == tuple(exact(parse(text)) for text in ("266 2/3", "200", "133 1/3", "100"))


def test_lilavati_rule_of_three() -> None:
    # Bhaskara II, Lilavati, on the rule of three (from memory; the arithmetic checks itself):
    # 2 1/2 palas of saffron for 3/7 niska; for 9 niskas, 52 1/2 palas.
    relation = parse("3/7 : 9 = 2 1/2 : x")
    assert answer(t.Sym("x"), (relation,)) == (Fraction(105, 2),)  # type: ignore[arg-type]


@pytest.mark.parametrize(("scale", "plan"), [(25_000, 4), (50_000, 2)])
def test_map_scales(scale: int, plan: int) -> None:
    # 4 cm to the kilometre is 1 : 25 000 and 2 cm is 1 : 50 000 (common practice, no source).
    draft = Scale().make(Tier.CHALLENGE, plan * 2, scale, 0)
    assert line(draft.key) == f"1 : {scale}"
    assert found(draft)[1] / found(draft)[0] == scale


def test_twice_the_workers_take_half_the_time() -> None:
    # The common rule of inverse proportion, without a source.
    draft = InverseProportion().make(Tier.SUPPORT, "job", 6, 12, 12)
    assert found(draft) == (Fraction(6 * 12, 12) * 3600,)
    assert line(draft.key) == "6 h"


def test_there_and_back_at_two_speeds_is_a_harmonic_mean() -> None:
    # 2vw/(v + w), as every textbook of mechanics has it (from memory): 60 and 30 give 40.
    draft = Speed().make(Tier.CHALLENGE, "two speeds", 60, 30, 30)
    assert line(draft.key) == "40 km/h"
    assert found(draft) == (Fraction(40 * 1000, 3600),)


@pytest.mark.parametrize(
    ("name", "grams"), [("aluminium", 2.70), ("copper", 8.93), ("lead", 11.34), ("silver", 10.50)]
)
def test_densities_are_those_of_the_tables(name: str, grams: float) -> None:
    # Tables of physical constants give grams in a cubic centimetre at room temperature (from
    # memory); ours are rounded to two figures.
    stuff = next(place for place, (known, _) in enumerate(SOLIDS) if known == name)
    draft = Density().make(Tier.SUPPORT, "density", stuff, 100)
    value = found(draft)[0] / 1000  # in grams and centimetres
    assert abs(value - Fraction(str(grams))) <= Fraction(1, 20)


@pytest.mark.parametrize(("metres", "kilometres"), [(10, "36 km/h"), (25, "90 km/h")])
def test_ten_metres_a_second_are_thirty_six_kilometres_an_hour(
    metres: int, kilometres: str
) -> None:
    # 1 m/s = 3.6 km/h: BIPM, The International System of Units, with the hour of 3600 s
    # (from memory).
    assert line(CompoundUnits().make(Tier.CHALLENGE, "to km/h", metres, 0, 0).key) == kilometres
