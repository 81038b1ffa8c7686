"""What follows from equations between what a figure shows: exact, and without sympy.

The unknowns are the letters that are printed on it, and what has no label (a side, an angle).
What has no label is got rid of first, so that what is left is between the letters alone.

>>> facts = Facts([{"x": 1, "": -3}, {"AB": 1, "x": -2}])
>>> facts.value({"AB": 1})
Fraction(6, 1)
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction
from typing import TypeAlias

from itembank.figures.drawing import Exact
from itembank.figures.written_as import in_unit
from itembank.notation import tree as t
from itembank.notation.linear import form_of as linear_form
from itembank.notation.value import fraction_of

Form: TypeAlias = Mapping[str, Exact]
"""A linear form as :data:`itembank.notation.linear.Linear`, in whole numbers where it has them:
they are far quicker to reckon with."""


def form_of(label: t.Node) -> Form:
    """Return the linear form of a label; raises NotationError where it has none.

    >>> form_of(t.add(t.Sym("x"), t.frac(1, 2)))
    {'x': 1, '': Fraction(1, 2)}
    """
    return {name: plain(count) for name, count in linear_form(label, {}).items()}


def plain(value: Exact) -> Exact:
    """Return a whole number as such."""
    return value.numerator if value.denominator == 1 else value


def plus(*forms: Form) -> Form:
    """Return the sum of linear forms."""
    total: dict[str, Exact] = {}
    for form in forms:
        for name, count in form.items():
            total[name] = total[name] + count if name in total else count
    return total


def less(first: Form, other: Form) -> Form:
    """Return one linear form less another."""
    return plus(first, {name: -count for name, count in other.items()})


class Facts:
    """Linear forms that are nought, solved as far as they go.

    Names of more than one letter are of what has no label: they are got rid of first.
    """

    def __init__(self, forms: Iterable[Form]) -> None:
        self.consistent = True
        # Each has 1 of the name it is under, and no other has any of that.
        self._rows: dict[str, Form] = {}
        for form in forms:
            self._take(form)

    def _take(self, form: Form) -> None:
        left = self._reduced(form)
        names = [name for name in left if name]
        if not names:
            self.consistent = self.consistent and not left
            return
        name = min(names, key=_first)
        row = _divided(left, left[name])
        for lead, old in self._rows.items():
            self._rows[lead] = _without(old, name, row)
        self._rows[name] = row

    def _reduced(self, form: Form) -> Form:
        """Return a form with all that is known put in its place."""
        for name in [name for name in form if name in self._rows]:
            form = _without(form, name, self._rows[name])
        return {name: count for name, count in form.items() if count}

    def value(self, form: Form) -> Fraction | None:
        """Return what a form comes to, None where it is not settled."""
        if not any(form):
            return fraction_of(form.get("", 0))  # a label that is a number
        left = self._reduced(form)
        return None if any(left) else fraction_of(left.get("", 0))

    def relations(self, units: Mapping[str, str]) -> tuple[t.Relation, ...]:
        """Return the equations between the letters alone, each letter with its unit."""
        kept = [row for row in self._rows.values() if all(len(name) <= 1 for name in row)]
        return tuple(_relation(row, units) for row in sorted(kept, key=lambda row: _key(row)))


def _key(row: Form) -> list[str]:
    return sorted(name for name in row if name)


def _first(name: str) -> tuple[bool, str]:
    return (len(name) <= 1, name)


def _without(form: Form, name: str, row: Form) -> Form:
    count = form.get(name)
    if not count:
        return form
    left = dict(form)
    for letter, times in row.items():
        rest = left.get(letter, 0) - count * times
        if rest:
            left[letter] = rest
        else:
            left.pop(letter, None)
    return left


def _divided(form: Form, by: Exact) -> Form:
    if by == 1:
        return form
    if by == -1:
        return {name: -count for name, count in form.items()}
    return {name: plain(Fraction(count) / by) for name, count in form.items()}


def _relation(row: Form, units: Mapping[str, str]) -> t.Relation:
    names = _key(row)
    left: t.Node | None = None
    for name in names:
        count = Fraction(row[name])
        size = in_unit(abs(count), "")
        term = t.Sym(name) if abs(count) == 1 else t.times(size, t.Sym(name))
        if left is None:
            left = term if count > 0 else t.Neg(term)
        else:
            left = t.add(left, term) if count > 0 else t.sub(left, term)
    assert left is not None
    return t.equals(left, in_unit(-Fraction(row.get("", 0)), units.get(names[0], "")))
