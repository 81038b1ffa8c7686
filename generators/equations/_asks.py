"""Questions to ask a pupil about a mistake, with the numbers of the item it was made on.

Each function returns one question that a pupil of eleven can answer, and that is true of
every item it is called for: where what is true depends on a sign, the words do too.
"""

from __future__ import annotations

from fractions import Fraction

from generators.equations._words import Number, shown, shown_factor, shown_term, size
from itembank.items.item import Misconception
from itembank.notation import tree as t


def asking(which: Misconception, question: str) -> Misconception:
    """Return the misconception with a question of the item's own."""
    return Misconception(which.id, which.name, question)


def undo_number(b: Number) -> str:
    """Ask for the inverse of ``+ b``.

    >>> undo_number(8)
    '8 is added. What undoes adding 8?'
    >>> undo_number(-3)
    '3 is subtracted. What undoes subtracting 3?'
    """
    if b > 0:
        return f"{shown(b)} is added. What undoes adding {shown(b)}?"
    return f"{shown(-b)} is subtracted. What undoes subtracting {shown(-b)}?"


def undo_product(a: int, x: t.Sym) -> str:
    """Ask for the inverse of multiplying by `a`.

    >>> undo_product(-7, t.Sym("x"))
    '−7x means −7 × x. What undoes multiplying by −7?'
    """
    return f"{shown_term(a, x)} means {shown(a)} × {x.name}. What undoes multiplying by {shown(a)}?"


def undo_division(a: int, what: str) -> str:
    """Ask for the inverse of dividing `what` by `a`.

    >>> undo_division(4, "x")
    'x is divided by 4. What undoes dividing by 4?'
    """
    return f"{what} is divided by {shown(a)}. What undoes dividing by {shown(a)}?"


def one_of(k: Number, x: t.Sym) -> str:
    """Ask for one of what several were found of.

    >>> one_of(6, t.Sym("y"))
    'You have found 6y. What is y?'
    """
    return f"You have found {shown_term(k, x)}. What is {x.name}?"


def number_left(b: Number, d: Number) -> str:
    """Ask for the other side when ``+ b`` is undone and `d` stands there.

    >>> number_left(8, 18), number_left(-7, 29)
    ('You subtract 8 from both sides. What is 18 − 8?', 'You add 7 to both sides. What is 29 + 7?')
    """
    by = shown(size(b))
    if b > 0:
        return f"You subtract {by} from both sides. What is {shown(d)} − {by}?"
    return f"You add {by} to both sides. What is {shown(d)} + {by}?"


def letter_left(a: Number, c: Number, x: t.Sym) -> str:
    """Ask for the other side's term in the unknown, `ax`, when ``+ cx`` is undone.

    >>> letter_left(7, 5, t.Sym("k"))
    'You subtract 5k from both sides. What is 7k − 5k?'
    >>> letter_left(2, -6, t.Sym("k"))
    'You add 6k to both sides. What is 2k + 6k?'
    """
    by = shown_term(size(c), x)
    if c > 0:
        return f"You subtract {by} from both sides. What is {shown_term(a, x)} − {by}?"
    return f"You add {by} to both sides. What is {shown_term(a, x)} + {by}?"


def last_product(a: int, b: int) -> str:
    """Ask for the product that a half-multiplied bracket leaves out.

    >>> last_product(3, -4)
    'The 3 multiplies everything in the bracket. What is 3 × (−4)?'
    """
    return (
        f"The {shown(a)} multiplies everything in the bracket. "
        f"What is {shown(a)} × {shown_factor(b)}?"
    )


def last_products(a: int, b: int, c: int, d: int) -> str:
    """Ask for the two products that half-multiplied brackets leave out.

    >>> last_products(5, 2, -3, 4)
    'What is 5 × 2, and what is −3 × 4? Where are they in your working?'
    """
    return (
        f"What is {shown(a)} × {shown_factor(b)}, and what is {shown(c)} × {shown_factor(d)}? "
        "Where are they in your working?"
    )


def product(a: int, b: Number, goal: Number) -> str:
    """Ask whether `b` times `a` comes to what the question says.

    >>> product(-3, -4, -12)
    'What is −3 × (−4)? Is it −12?'
    """
    return f"What is {shown(a)} × {shown_factor(b)}? Is it {shown(goal)}?"


def last_done(a: int, b: int, multiplied: bool = True, added_last: bool = True) -> str:
    """Ask which of two operations was done last, and so is undone first.

    >>> last_done(3, -5)
    'Which was done last: multiplying by 3 or subtracting 5? Undo that first.'
    >>> last_done(4, 7, multiplied=False, added_last=False)
    'Which was done last: adding 7 or dividing by 4? Undo that first.'
    """
    scaled = f"{'multiplying' if multiplied else 'dividing'} by {a}"
    moved = f"adding {b}" if b > 0 else f"subtracting {-b}"
    first, last = (scaled, moved) if added_last else (moved, scaled)
    return f"Which was done last: {first} or {last}? Undo that first."


def on_number_line(d: Number, b: Number) -> str:
    """Ask where a sum lands that is below zero.

    >>> on_number_line(-4, 7), on_number_line(4, -9)
    ('On a number line, start at −4 and go up 7. Where do you land?', \
'On a number line, start at 4 and go down 9. Where do you land?')
    """
    way = f"up {shown(b)}" if b > 0 else f"down {shown(-b)}"
    return f"On a number line, start at {shown(d)} and go {way}. Where do you land?"


def lots(a: int, x: t.Sym, b: Number) -> str:
    """Ask which number is divided by which.

    >>> lots(5, t.Sym("n"), 35)
    '5 lots of n make 35. Do you divide 35 by 5, or 5 by 35?'
    """
    total = shown(b)
    return f"{a} lots of {x.name} make {total}. Do you divide {total} by {a}, or {a} by {total}?"


def fraction_of(a: int, b: int, x: t.Sym, c: Number) -> str:
    """Ask whether the unknown is bigger or smaller than a fraction of it.

    >>> fraction_of(2, 5, t.Sym("t"), 16)
    '2/5 of t is 16. Is t bigger or smaller than 16?'
    """
    part = f"{shown(Fraction(a, b))} of {x.name} is {shown(c)}."
    return f"{part} Is {x.name} bigger or smaller than {shown(c)}?"
