"""Named wrong methods on equations, each carried out on the printed lines by what it says.

A line is rewritten as the name says and solved with python-flint; nothing here knows the
parameters of an item.
"""

from __future__ import annotations

import operator
import re
from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise
from typing import Any, NamedTuple

import flint

from itembank.items.item import Item
from itembank.items.measures.features import lines_worked
from itembank.notation import tree as t
from tests.generators.equations.equation_engines import answer_of, calculate, flint_number
from tests.generators.equations.equation_samples import text

Method = Callable[[Item], Any]


class Linear(NamedTuple):
    """A line ``ax + b = cx + d``."""

    a: Any
    b: Any
    c: Any
    d: Any

    def root(self) -> Any:
        return (self.d - self.b) / (self.a - self.c)

    def turned(self) -> Linear:
        return Linear(self.c, self.d, self.a, self.b)


def linear(relation: t.Relation) -> Linear:
    """Read the coefficients off two values of each side."""
    (name,) = t.symbols(relation)

    def side(node: t.Node) -> tuple[Any, Any]:
        at0 = calculate(node, flint.fmpq, {name: flint.fmpq(0)})
        return calculate(node, flint.fmpq, {name: flint.fmpq(1)}) - at0, at0

    return Linear(*side(relation.first), *side(relation.rest[0][1]))


def asked(item: Item) -> t.Relation:
    """The printed equation; of a story or formula, the first line of its working."""
    for run in item.prompt:
        if isinstance(run, t.Relation) and len(t.symbols(run)) == 1:
            return run
    maths = item.steps[0].maths
    assert isinstance(maths, t.Relation)
    return maths


def lines(item: Item) -> list[tuple[str, t.Relation, Linear]]:
    """The printed lines that are equations in one letter, each with what is done to reach it."""
    found = [("", asked(item))]
    found += [
        (step.say, step.maths)
        for step in item.steps
        if isinstance(step.maths, t.Relation) and len(t.symbols(step.maths)) == 1
    ]
    return [(say, relation, linear(relation)) for say, relation in found]


def before(item: Item, pattern: str) -> tuple[re.Match[str], Linear]:
    """The line that the first step matching `pattern` works on."""
    printed = lines(item)
    for (_, _, line_before), (say, _, _) in pairwise(printed):
        found = re.fullmatch(pattern, say)
        if found:
            return found, line_before
    raise AssertionError((text(item), pattern))


NUMBER = r"(Subtract|Add) (\d+) (?:from|to) both sides\."
TERM = r"(Subtract|Add) (\d*)(?:[a-zA-Z]) (?:from|to) both sides\."
SCALE = r"(Divide|Multiply) both sides by (−?\d+)(?: and turn the inequality sign round)?\."


def alone(of: Linear) -> Linear:
    """The line with its unknown on the left and a number alone on the right."""
    return of if of.c == 0 else of.turned()


def number_across(item: Item) -> Any:
    """kx + b = d, and then kx = d + b."""
    _, of = before(item, NUMBER)
    of = alone(of)
    return (of.d + of.b) / of.a


def scale_again(item: Item) -> Any:
    """kx = d, and then x = kd."""
    _, of = before(item, SCALE)
    of = alone(of)
    return of.d * of.a


def same_operation(item: Item) -> Any:
    try:
        return number_across(item)
    except AssertionError:
        return scale_again(item)


def letter_across(item: Item) -> Any:
    """ax + b = cx + d, and then ax + cx + b = d."""
    found, of = before(item, TERM)
    goes = int(found[2] or 1) * (1 if found[1] == "Subtract" else -1)
    if of.c != goes:
        of = of.turned()
    assert of.c == goes
    return Linear(of.a + of.c, of.b, 0, of.d).root()


def last_line(item: Item) -> Linear:
    """kx = d, before it is divided."""
    found = [
        (line_before, say)
        for (_, _, line_before), (say, _, _) in pairwise(lines(item))
        if re.fullmatch(SCALE, say)
    ]
    return alone(found[-1][0])


def stops_early(item: Item) -> Any:
    return last_line(item).d


def subtracts_multiplier(item: Item) -> Any:
    of = last_line(item)
    return of.d - of.a


def adds_divisor(item: Item) -> Any:
    of = last_line(item)
    return of.d + 1 / of.a


def divided_wrong_way(item: Item) -> Any:
    of = last_line(item)
    return of.a / of.d


def subtracted_wrong_way(item: Item) -> Any:
    _, of = before(item, NUMBER)
    return of.b - of.d


def swapped_order(item: Item) -> Any:
    equation = asked(item)
    match equation.first:
        case t.Sum(first, (("-", second),)):
            return linear(t.equals(t.sub(second, first), answer_of(equation))).root()
    raise AssertionError(text(item))


def lost_minus(item: Item) -> Any:
    """first − kx = d: the number is taken across, and kx has lost its minus."""
    of = alone(linear(asked(item)))
    assert of.a < 0
    return (of.d - of.b) / -of.a


def undone(say: str) -> Callable[[Any], Any]:
    found = re.fullmatch(NUMBER, say) or re.fullmatch(SCALE, say)
    assert found, say
    by = flint.fmpq(int(found[2]))
    ways = {
        "Subtract": operator.sub,
        "Add": operator.add,
        "Divide": operator.truediv,
        "Multiply": operator.mul,
    }
    return lambda value: ways[found[1]](value, by)


def wrong_order(item: Item) -> Any:
    """The first two printed steps are done to the number in the other order."""
    value = alone(linear(asked(item))).d
    first, second, *more = [undone(step.say) for step in lines_worked(item)]
    for step in (second, first, *more):
        value = step(value)
    return value


def minus_left_off(item: Item) -> Any:
    of = last_line(item) if re.fullmatch(SCALE, item.steps[-1].say) else lines(item)[-1][2]
    of = alone(of)
    assert of.d < 0
    return -of.d / of.a


def smaller_from_larger(item: Item) -> Any:
    _, of = before(item, NUMBER)
    of = alone(of)
    assert of.d * of.b > 0, "one number is taken from another of the same sign"
    assert abs(of.b) > abs(of.d) if of.d > 0 else abs(of.d) > abs(of.b)
    return minus_left_off(item)


def bracketed(item: Item) -> tuple[str, t.Relation]:
    """The line whose brackets are expanded next."""
    printed = lines(item)
    for (_, relation, _), (say, _, _) in pairwise(printed):
        if say.startswith("Expand"):
            return say, relation
    raise AssertionError(text(item))


def factor(node: t.Node) -> int:
    value = flint_number(node)
    return int(value.p)


def half_multiplied(node: t.Node) -> t.Node:
    """Multiply only the first term of each bracket; a number in front with its minus."""
    match node:
        case t.Juxt((front, t.Bracket(t.Sum(first, rest)))):
            return t.Sum(t.juxt(front, t.Bracket(first)), rest)
        case t.Neg(t.Juxt((front, t.Bracket(t.Sum(first, rest))))):
            return t.Sum(t.Neg(t.juxt(front, t.Bracket(first))), rest)
        case t.Sum(first, ((op, second),)):
            left, right = half_multiplied(first), half_multiplied(second)
            if op == "-" and isinstance(right, t.Sum):  # −c(x + e) becomes −cx + e
                return t.Sum(left, (("-", right.first), *right.rest))
            return t.Sum(left, ((op, right),))
        case t.Relation(first, ((op, second),)):
            return t.Relation(half_multiplied(first), ((op, half_multiplied(second)),))
    return node


def first_term_only(item: Item) -> Any:
    _, relation = bracketed(item)
    wrong = half_multiplied(relation)
    assert isinstance(wrong, t.Relation)
    assert wrong != relation
    return linear(wrong).root()


def bracket_sign(item: Item) -> Any:
    """−c(x + e) becomes −cx + ce."""
    _, relation = bracketed(item)
    match relation.first:
        case t.Sum(_, (("-", t.Juxt((front, t.Bracket(t.Sum(_, ((op, last),)))))),)):
            last_term = factor(front) * factor(last) * (-1 if op == "+" else 1)
            of = linear(relation)
            return Linear(of.a, of.b - 2 * last_term, of.c, of.d).root()
    raise AssertionError(text(item))


def part_cleared(item: Item) -> Any:
    """Multiply by the denominator, but not the number that stands beside the fractions."""
    of = linear(asked(item))
    found = next(f for step in item.steps if (f := re.fullmatch(SCALE, step.say)))
    by = int(found[2])
    return (
        Linear(of.a * by, of.b, 0, of.d * by).root()
        if of.b
        else Linear(of.a * by, 0, 0, of.d).root()
    )


def multiplies_by_fraction(item: Item) -> Any:
    _, of = before(item, SCALE)
    return of.d * of.a


def ignores_numerator(item: Item) -> Any:
    found, of = before(item, SCALE)
    return of.d * int(found[2])


def parts(item: Item) -> tuple[t.Node, t.Node]:
    match asked(item).first:
        case t.Sum(first, ((_, second),)):
            return first, second
    raise AssertionError(text(item))


def adds_denominators(item: Item) -> Any:
    first, second = parts(item)
    assert isinstance(first, t.Frac)
    assert isinstance(second, t.Frac)
    both = t.Frac(t.add(first.num, second.num), t.add(first.den, second.den))
    return linear(t.equals(both, answer_of(asked(item)))).root()


def adds_like_terms(item: Item) -> Any:
    _, relation, _ = lines(item)[1]
    match relation.first:
        case t.Sum(first, (("-", second),)):
            return linear(t.equals(t.add(first, second), answer_of(relation))).root()
    raise AssertionError(text(item))


def own_denominator(item: Item) -> Any:
    def times_its_own(node: t.Node) -> t.Node:
        assert isinstance(node, t.Frac)
        return t.juxt(node.den, t.Bracket(node.num))

    relation = asked(item)
    return linear(
        t.equals(times_its_own(relation.first), times_its_own(answer_of(relation)))
    ).root()


METHODS: dict[str, Method] = {
    "same-operation": same_operation,
    "wrong-way-round": divided_wrong_way,
    "subtracts-wrong-way-round": subtracted_wrong_way,
    "mixed-inverse": subtracts_multiplier,
    "adds-divisor": adds_divisor,
    "swapped-order": swapped_order,
    "lost-minus": lost_minus,
    "wrong-order": wrong_order,
    "stops-early": stops_early,
    "first-term-only": first_term_only,
    "bracket-sign": bracket_sign,
    "adds-letters": letter_across,
    "adds-numbers": number_across,
    "adds-like-terms": adds_like_terms,
    "smaller-from-larger": smaller_from_larger,
    "answer-sign": minus_left_off,
    "multiplies-by-fraction": multiplies_by_fraction,
    "ignores-numerator": ignores_numerator,
    "part-cleared": part_cleared,
    "adds-denominators": adds_denominators,
    "own-denominator": own_denominator,
}


def short(which: str) -> str:
    return which.partition(".")[2]


def working_only(item: Item) -> Item:
    """The item as if its first line of working were the question."""
    first = item.steps[0].maths
    assert isinstance(first, t.Relation)
    return replace(item, prompt=("Solve ", first, "."), steps=item.steps[1:])
