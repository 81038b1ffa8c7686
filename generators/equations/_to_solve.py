"""The question of every topic that ends in *Solve …*: one equation in one letter."""

from __future__ import annotations

from collections.abc import Iterable

from generators.equations._pans import pictured
from generators.equations._words import Number
from generators.equations._writing import solution
from generators.equations._wrong_lines import solution_slips
from itembank.items.item import Draft, Find, Step, prompt
from itembank.items.wrong_answers import Wrong
from itembank.notation import tree as t


def to_solve(
    equation: t.Relation,
    x: t.Sym,
    value: Number,
    steps: tuple[Step, ...],
    wrongs: Iterable[Wrong],
    twin: tuple[object, ...],
    ending: str = "",
) -> Draft:
    """Return the question to solve an equation, whose one solution is x = `value`.

    `ending` is a sentence that follows the equation; `wrongs` are mistakes with the value that
    each gives the letter. Where it stands on the pans of a balance, the working shows one.

    >>> from itembank.notation.line import line
    >>> x = t.Sym("x")
    >>> found = to_solve(t.equals(t.add(x, t.num(3)), t.num(5)), x, 2, (), (), (3, 5))
    >>> line(found.key), found.form
    ('x = 2', 'solution')
    """
    return Draft(
        prompt(f"Solve {{e}}.{ending}", e=equation),
        Find(x, (equation,)),
        solution(x, value),
        "solution",
        pictured(equation, steps) if value > 0 else steps,
        solution_slips(x, value, *wrongs),
        twin,
    )
