"""What follows from equations between what a figure shows: exact, and without sympy.

The unknowns are the letters that are printed on it, and what has no label (a side, an angle).
What has no label is got rid of first, so that what is left is between the letters alone.

>>> facts = Facts([{"x": Fraction(1), "": Fraction(-3)}, {"AB": Fraction(1), "x": Fraction(-2)}])
>>> facts.value({"AB": Fraction(1)})
Fraction(6, 1)
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction

from itembank.figures.written_as import in_unit
from itembank.notation import tree as t
from itembank.notation.linear import Linear


def plus(*forms: Linear) -> Linear:
    """Return the sum of linear forms."""
    total: Linear = {}
    for form in forms:
        for name, count in form.items():
            total[name] = total[name] + count if name in total else count
    return total


def less(first: Linear, other: Linear) -> Linear:
    """Return one linear form less another."""
    return plus(first, {name: -count for name, count in other.items()})


class Facts:
    """Linear forms that are nought, solved as far as they go.

    Names of more than one letter are of what has no label: they are got rid of first.
    """

    def __init__(self, forms: Iterable[Linear]) -> None:
        self.consistent = True
        self.rows: list[tuple[str, Linear]] = []
        for form in forms:
            self._take(form)

    def _take(self, form: Linear) -> None:
        left = self.reduced(form)
        names = sorted((name for name in left if name), key=_first)
        if not names:
            self.consistent = self.consistent and not left.get("")
            return
        name = names[0]
        row = {other: count / left[name] for other, count in left.items()}
        self.rows = [(lead, _without(old, name, row)) for lead, old in self.rows]
        self.rows.append((name, row))

    def reduced(self, form: Linear) -> Linear:
        """Return a form with all that is known put in its place."""
        for name, row in self.rows:
            form = _without(form, name, row)
        return {name: count for name, count in form.items() if count}

    def value(self, form: Linear) -> Fraction | None:
        """Return what a form comes to, None where it is not settled."""
        left = self.reduced(form)
        return None if any(left) else left.get("", Fraction(0))

    def relations(self, units: Mapping[str, str]) -> tuple[t.Relation, ...]:
        """Return the equations between the letters alone, each letter with its unit."""
        kept = [row for _, row in self.rows if all(len(name) <= 1 for name in row)]
        return tuple(_relation(row, units) for row in sorted(kept, key=lambda row: _key(row)))


def _key(row: Linear) -> list[str]:
    return sorted(name for name in row if name)


def _first(name: str) -> tuple[bool, str]:
    return (len(name) <= 1, name)


def _without(form: Linear, name: str, row: Linear) -> Linear:
    count = form.get(name)
    if not count:
        return form
    left = dict(form)
    for other, times in row.items():
        taken = count * times
        left[other] = left[other] - taken if other in left else -taken
    return {other: rest for other, rest in left.items() if rest}


def _relation(row: Linear, units: Mapping[str, str]) -> t.Relation:
    names = _key(row)
    left: t.Node | None = None
    for name in names:
        count = row[name]
        size = in_unit(abs(count), "")
        term = t.Sym(name) if abs(count) == 1 else t.times(size, t.Sym(name))
        if left is None:
            left = term if count > 0 else t.Neg(term)
        else:
            left = t.add(left, term) if count > 0 else t.sub(left, term)
    assert left is not None
    return t.equals(left, in_unit(-row.get("", Fraction(0)), units.get(names[0], "")))
