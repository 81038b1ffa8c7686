"""Keys on equations by z3 and python-flint, which the tool itself does not use.

z3 decides that a key is the only solution, and python-flint finds it again from two values of the
printed equation.
"""

from __future__ import annotations

import flint
import pytest
import z3

from itembank.items.item import Find, Inequality
from itembank.notation import tree as t
from tests.depth import cases, whole
from tests.generators.equations.equation_engines import (
    answer_of,
    calculate,
    flint_number,
    z3_relation,
)
from tests.generators.equations.equation_samples import SOLVED, sampled, text
from tests.generators.mistakes import each_mistake

pytestmark = whole


@pytest.mark.parametrize("name", SOLVED)
def test_flint_finds_the_key_from_two_values_of_the_printed_equation(name: str) -> None:
    """A linear f with f(0) = p and f(1) = q vanishes at p/(p − q), the rule of false position."""
    for item in sampled(name, cases(60, 200, 200)):
        (equation,) = [run for run in item.prompt if isinstance(run, t.Relation)]
        (unknown,) = t.symbols(equation)

        def gap(value: int, equation: t.Relation = equation, unknown: str = unknown) -> flint.fmpq:
            known = {unknown: flint.fmpq(value)}
            left = calculate(equation.first, flint.fmpq, known)
            return left - calculate(equation.rest[0][1], flint.fmpq, known)

        root = gap(0) / (gap(0) - gap(1))
        assert flint_number(answer_of(item.key)) == root
        assert isinstance(item.key, t.Relation)
        assert item.key.first == t.Sym(unknown)
        for slip in each_mistake(item):
            assert flint_number(answer_of(slip.wrong)) != root, (text(item), slip)


@pytest.mark.parametrize("name", ["form-and-solve", "substitution"])
def test_z3_allows_the_key_and_nothing_else(name: str) -> None:
    for item in sampled(name, cases(20, 60, 60)):
        if item.figure is not None:
            continue  # test_geometry_areas finds these from what is said of the figure
        assert isinstance(item.ask, Find)
        letters = {s for relation in item.ask.relations for s in t.symbols(relation)}
        known = {s: z3.Real(s) for s in letters}
        solver = z3.Solver()
        solver.add(*(z3_relation(relation, known) for relation in item.ask.relations))
        assert solver.check() == z3.sat
        target = calculate(item.ask.target, z3.RealVal, known)
        solver.add(target != calculate(answer_of(item.key), z3.RealVal, {}))
        assert solver.check() == z3.unsat, text(item)
        for slip in each_mistake(item):
            assert flint_number(answer_of(slip.wrong)) != flint_number(answer_of(item.key))


def test_z3_finds_no_number_where_an_inequality_and_its_key_part_company() -> None:
    for item in sampled("inequalities", cases(30, 120, 120)):
        assert isinstance(item.ask, Inequality)
        assert isinstance(item.key, t.Relation)
        (unknown,) = t.symbols(item.ask.relation)
        known = {unknown: z3.Real(unknown)}
        asked = z3_relation(item.ask.relation, known)
        solver = z3.Solver()
        solver.add(asked != z3_relation(item.key, known))
        assert solver.check() == z3.unsat, text(item)
        for slip in each_mistake(item):
            assert isinstance(slip.wrong, t.Relation)
            apart = z3.Solver()
            apart.add(asked != z3_relation(slip.wrong, known))
            assert apart.check() == z3.sat, (text(item), slip)
