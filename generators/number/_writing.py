"""How the topics of this strand write numbers, working and wrong answers."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from itembank.items.item import Draft, Find, Step, prompt
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t


def apart(*values: object) -> bool:
    """Tell whether all values differ: a key, and what the mistakes of its question lead to.

    >>> apart(7, 5, -7), apart(7, 5, 7)
    (True, False)
    """
    return len({*values}) == len(values)


def decimal(units: int, places: int) -> t.Node:
    """Return `units` of the last of so many decimal places, without needless noughts.

    >>> from itembank.notation.line import line
    >>> [line(decimal(units, 2)) for units in (305, -40, 200)]
    ['3.05', '-0.4', '2']
    """
    whole, rest = divmod(abs(units), 10**places)
    digits = f"{rest:0{places}d}".rstrip("0") if rest else ""
    node: t.Node = t.Dec(str(whole), digits) if digits else t.Int(whole)
    return t.Neg(node) if units < 0 else node


def exact_decimal(units: int, places: int) -> t.Node:
    """Return `units` of the last of so many decimal places, with all of these places written.

    >>> from itembank.notation.line import line
    >>> line(exact_decimal(300, 2)), line(exact_decimal(7, 0))
    ('3.00', '7')
    """
    if not places:
        return t.num(units)
    whole, rest = divmod(abs(units), 10**places)
    node = t.Dec(str(whole), f"{rest:0{places}d}")
    return t.Neg(node) if units < 0 else node


def inside(n: int) -> t.Node:
    """Return a whole number as it stands inside a sum: in brackets where it is negative.

    >>> from itembank.notation.line import line
    >>> line(inside(-3)), line(inside(3))
    ('(-3)', '3')
    """
    return t.Bracket(t.num(n)) if n < 0 else t.Int(n)


def worked(start: t.Node, *lines: tuple[str, t.Node]) -> tuple[Step, ...]:
    """Return working in which each line says that the line before is equal to the next.

    >>> from itembank.notation.line import line
    >>> [step] = worked(t.add(t.Int(2), t.Int(3)), ("Add.", t.Int(5)))
    >>> step.say, line(step.maths)
    ('Add.', '2 + 3 = 5')
    """
    steps = []
    for say, node in lines:
        steps.append(Step(say, t.equals(start, node)))
        start = node
    return tuple(steps)


def work_out(
    asked: t.Node,
    key: t.Node,
    steps: tuple[Step, ...],
    wrong: Iterable[Wrong],
    twin: tuple[object, ...],
    form: str = "decimal",
) -> Draft:
    """Return the question to work out what is printed; a wrong answer that is right is left out.

    >>> draft = work_out(t.times(t.Int(2), t.Int(3)), t.Int(6), (), (), ())
    >>> draft.prompt[0], draft.form
    ('Work out ', 'decimal')
    """
    shown = prompt("Work out {e}.", e=asked)
    return Draft(shown, Find(asked), key, form, steps, slips(*wrong, key=key), twin)


def quotient(top: int, bottom: int) -> Fraction:
    """Return what a wrong division comes to; it may be no whole number."""
    return Fraction(top, bottom)
