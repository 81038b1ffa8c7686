"""Builders of sums with parts: a fraction or percentage of an amount, and changes by one."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from itembank.notation import tree as t
from itembank.wording.tasks.sums.sums import Built, NotBuilt, alike, as_part, less, more, total


def percent_more(sign: str) -> Callable[[t.Node, t.Node], Built]:
    """Return what is a percentage, or a bare amount, more or less than something."""

    def build(by: t.Node, amount: t.Node) -> Built:
        if isinstance(by, t.Percent) and not isinstance(amount, t.Percent):
            return changed_by(sign)(amount, by)
        return (total if sign == "+" else less)(amount, bare_amount(by))

    return build


def percent_off(sign: str) -> Callable[[t.Node, t.Node], Built]:
    """Return what adds to, or takes off, an amount a percentage of it."""

    def build(by: t.Node, amount: t.Node) -> Built:
        if not isinstance(by, t.Percent) or isinstance(amount, t.Percent):
            raise NotBuilt("Only a percentage is taken off an amount.")
        return changed_by(sign)(amount, by)

    return build


def added(by: t.Node, to: t.Node) -> Built:
    """Return an amount, or a percentage of the whole, added on."""
    if isinstance(by, t.Percent) and not isinstance(to, t.Percent):
        return changed_by("+")(to, by)
    return total(to, by)


def bare_amount(node: t.Node) -> t.Node:
    """Return what is added or taken away; a fraction more may mean a fraction of it."""
    if isinstance(node, t.Frac | t.Percent | t.Mixed):
        raise NotBuilt("A fraction more or less may mean that much, or that part of it.")
    return node


def part_of(a: t.Node, b: t.Node) -> Built:
    """Return a part, a fraction or a percentage, of b."""
    if not isinstance(a, t.Frac | t.Mixed | t.Dec | t.Percent):
        raise NotBuilt("A part of a number is a fraction, a decimal or a percentage of it.")
    return t.Product(as_part(a), (("of", as_part(b)),)), ()


_ONES = {
    "hour": "h", "minute": "min", "day": "day", "week": "week", "year": "year", "metre": "m",
    "kilometre": "km", "kilogram": "kg", "litre": "l", "tonne": "t",
}  # fmt: skip


def part_of_one(words: Mapping[str, str], part: t.Node) -> Built:
    """Return a part of one hour, metre or pound, named in words."""
    name = words["unit"]
    single: t.Node = (
        t.Money(t.Int(1), "£") if name == "pound" else t.Quantity(t.Int(1), _ONES[name])
    )
    return part_of(part, single)[0], (1,)


def changed_by(sign: str) -> Callable[[t.Node, t.Node], Built]:
    """Return what adds, or takes away, an amount or a percentage."""

    def build(amount: t.Node, by: t.Node) -> Built:
        if isinstance(by, t.Frac):
            raise NotBuilt("By a fraction may mean by that much, or by that part of it.")
        change = (
            part_of(by, amount)[0] if isinstance(by, t.Percent) else as_part(alike((amount, by))[1])
        )
        return t.Sum(as_part(amount), ((sign, change),)), ()  # type: ignore[arg-type]

    return build


def share_of(a: t.Node, b: t.Node) -> Built:
    """Return a as a part of b; `b` is the whole."""
    return t.Product(as_part(a), (("÷", as_part(b)),)), ()


def whole_first(b: t.Node, a: t.Node) -> Built:
    """Return a as a part of b, the whole being named first."""
    return share_of(a, b)


def percentage_change(a: t.Node, b: t.Node) -> Built:
    """Return by what part of a the larger b is more."""
    more(b, a)
    return t.Product(t.Bracket(less(b, a)[0]), (("÷", as_part(a)),)), ()


def percentage_loss(a: t.Node, b: t.Node) -> Built:
    """Return by what part of a the smaller b is less."""
    more(a, b)
    return t.Product(t.Bracket(less(a, b)[0]), (("÷", as_part(a)),)), ()


def whole_of(part: t.Node, made: t.Node) -> Built:
    """Return the whole of which a percentage or a fraction comes to an amount."""
    if not isinstance(part, t.Percent | t.Frac) or t.symbols(part):
        raise NotBuilt("A part of a number is a percentage or a fraction.")
    return t.Product(as_part(made), (("÷", as_part(part)),)), ()
