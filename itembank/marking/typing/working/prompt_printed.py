"""What a prompt prints about letters: their values, and the one equation that is to be solved."""

from __future__ import annotations

from fractions import Fraction

from itembank.items.item import Item
from itembank.marking.worth.marked_by_kind import marking_of
from itembank.notation import tree as t
from itembank.notation.value import exact


def printed_values(item: Item) -> dict[str, Fraction]:
    """Return the letters whose value the prompt prints, as in *when n = 8*.

    A letter that is asked for has none, and neither has one that is printed with two values.

    >>> from itembank.items.topics.registry import find_item
    >>> printed_values(find_item("equations.substitution/support/104"))
    {'n': Fraction(8, 1)}
    """
    known: dict[str, Fraction] = {}
    unknown = {run.name for run in item.prompt if isinstance(run, t.Sym)}
    for run in item.prompt:
        match run:
            case t.Relation(t.Sym(name), (("=", amount),)) if not t.symbols(amount):
                try:
                    worth = exact(amount)
                except t.NotationError:
                    continue
                if known.setdefault(name, worth) != worth:
                    unknown.add(name)
    return {name: worth for name, worth in known.items() if name not in unknown}


def equation_of(item: Item) -> t.Relation | None:
    """Return the one printed equation in one letter that a question asks to solve, or None.

    >>> from itembank.items.topics.registry import find_item
    >>> from itembank.notation.line import shown_line
    >>> shown_line(equation_of(find_item("equations.two-step/support/91")))
    '2y + 11 = 17'
    """
    equations = marking_of(item.ask).equations(item.ask)
    if len(equations) != 1:
        return None
    (relation,) = equations
    shown = relation in item.prompt and {op for op, _ in relation.rest} == {"="}
    return relation if shown and len(t.symbols(relation)) == 1 else None
