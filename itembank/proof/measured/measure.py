"""What is measured on a drawing, and whether the figure's data says the same.

A kind's measuring (:class:`Measuring`) is given the drawing alone: strokes, areas and labels at
exact places. It works with sympy's numbers and geometry, and shares nothing with the figure's own
`read`. So a drawing that says something else than its figure reaches no page.

>>> from itembank.figures.kinds.number.shaded_shape import ShadedShape
>>> disagreement(ShadedShape("rectangle", 2, 4, (0, 1, 2)))
''
"""

from __future__ import annotations

import importlib
from collections.abc import Callable, Sequence
from functools import lru_cache
from typing import Any

from itembank.data_class import dataclass
from itembank.figures.drawing import Drawing, Point
from itembank.figures.figure import Figure, Reading, drawn, kind_of, read
from itembank.items.asks import Find, OfFigure
from itembank.items.asks.of_figure import is_range
from itembank.notation import tree as t
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact

Measured = t.Node
"""A measurement as a tree: a number, a quantity, a list of them, or a name."""


@dataclass(frozen=True, slots=True)
class Measuring:
    """How one kind of figure is measured.

    Attributes
    ----------
    measure
        What a reading comes to on a drawing; raises NotExact where the drawing does not show it.
    relations
        The equations that hold between what is printed on a drawing, from where it stands.
    """

    measure: Callable[[Drawing, Reading], Measured]
    relations: Callable[[Drawing], tuple[t.Relation, ...]] = lambda drawing: ()


def measuring(figure: Figure) -> Measuring:
    """Return how a figure is measured: `MEASURING` of the module that stands here as its own there.

    What is ``kinds/chart/bar_chart.py`` there is ``chart/bar_chart_measured.py`` here.
    """
    # By name and not by a table: a kind of figure has no road to find that it did not bring along,
    # and only the modules of figures that are met are loaded, most of which import sympy.
    name = type(figure).__module__.removeprefix("itembank.figures.kinds.")
    module = importlib.import_module(f"itembank.proof.measured.{name}_measured")
    found: Measuring = module.MEASURING
    return found


@lru_cache(maxsize=1024)
def measured(figure: Figure, reading: Reading) -> Measured:
    """Return what a reading comes to on a figure's drawing; raises NotExact."""
    return measuring(figure).measure(drawn(figure), reading)


@lru_cache(maxsize=1024)
def disagreement(figure: Figure) -> str:
    """Return how a figure's drawing says something else than its data, as a clause, or ``""``.

    Everything that can be read from the figure is read and measured, not only what is asked.
    """
    kind = kind_of(figure)
    for reading in kind.readings(figure):
        said, found = read(figure, reading), measured(figure, reading)
        if not same_measured(said, found):
            of = f" of {' and '.join(reading.of)}" if reading.of else ""
            return (
                f"the figure says that the {reading.name}{of} is {_text(said)}, and it is drawn "
                f"as {_text(found)}"
            )
    # As sets: in which order labels are gone through is nobody's business.
    said_relations = {_equation(relation) for relation in kind.relations(figure)}
    found_relations = {
        _equation(relation) for relation in measuring(figure).relations(drawn(figure))
    }
    if said_relations != found_relations:
        return "what its labels say together is not what is drawn"
    return ""


def same_measured(said: t.Node, found: t.Node) -> bool:
    """Tell whether a measurement is what is said: a name, a number, an equation, a range."""
    # A name has no worth, so that a name and a number would stop sympy instead of differing.
    if isinstance(said, t.Label) or isinstance(found, t.Label):
        return said == found
    if isinstance(said, t.Relation) and isinstance(found, t.Relation):
        # Equations are compared up to a factor; one below 0 would turn a range round.
        if is_range(said):
            return _ops(said) == _ops(found) and all(
                map(same_measured, _sides(said), _sides(found))
            )
        return bool(_equation(said) == _equation(found))
    a, b = to_sympy(said), to_sympy(found)
    rows = [value if isinstance(value, list) else [value] for value in (a, b)]
    return len(rows[0]) == len(rows[1]) and all(
        _as_much(mine - theirs) for mine, theirs in zip(*rows, strict=True)
    )


def _as_much(gap: Any) -> bool:
    """Tell whether a difference is nought; of roots and sines, to fifty places.

    Of these two ways to a side or an angle only the worth is compared here: the second road then
    works with what was measured, and proves its digits.
    """
    import sympy

    # Exactly, wherever that can be told: digits are for what sympy may not see to be nought.
    if gap.expand() == 0:
        return True
    # A letter has no digits to look at, and a fraction was told exactly above.
    if gap.free_symbols or gap.is_Rational:
        return False
    return bool(abs(sympy.N(gap, 60)) < sympy.Float("1e-50"))


def _ops(relation: t.Relation) -> list[t.RelationOp]:
    return [op for op, _ in relation.rest]


def _sides(relation: t.Relation) -> list[t.Node]:
    return [relation.first, *(side for _, side in relation.rest)]


def _equation(relation: t.Relation) -> Any:
    """Return what is equal for two equations that say the same, up to a factor."""
    import sympy

    (_, second), *more = relation.rest
    if more:
        raise NotExact("a relation of a figure has two sides")
    gap = sympy.expand(to_sympy(relation.first) - to_sympy(second))
    if not gap.free_symbols:
        return gap
    # 2x = 6 and x = 3 say the same, so both are divided by what stands before their first letter.
    return sympy.Poly(gap, *sorted(gap.free_symbols, key=str)).monic().as_expr()


def _text(node: t.Node) -> str:
    from itembank.notation.line import shown_line

    return shown_line(node)


def as_measured(ask: OfFigure) -> Find:
    """Return the question with what is measured put in its place; raises NotExact."""
    values: dict[t.Node, t.Node] = {
        t.Sym(letter): measured(ask.figure, reading) for letter, reading in ask.readings
    }
    target = t.replaced(ask.target, values)
    relations = measuring(ask.figure).relations(drawn(ask.figure))
    # Where no letter is left, what the labels say is not used: it would only be solved for nothing.
    return Find(target, relations if t.symbols(target) - {"π"} else ())


def measured_name(ask: OfFigure) -> t.Label | None:
    """Return the name that the drawing answers with, where the question asks for one."""
    if len(ask.readings) == 1 and ask.target == t.Sym(ask.readings[0][0]):
        found = measured(ask.figure, ask.readings[0][1])
        if isinstance(found, t.Label):
            return found
    return None


def amount_tree(value: Any, like: t.Node) -> t.Node:
    """Return a value in base units in the unit of another amount.

    >>> import sympy
    >>> from itembank.notation.parse import parse
    >>> amount_tree(sympy.Rational(3, 2), parse("£6")) == t.Money(t.frac(3, 2))
    True
    """
    if isinstance(like, t.Money):
        return t.Money(number_tree(value), "£" if like.sign == "p" else like.sign)
    if isinstance(like, t.Quantity):
        size = to_sympy(t.Quantity(t.Int(1), like.unit))
        return t.Quantity(number_tree(value / size), like.unit)
    return number_tree(value)


def area_of(corners: Sequence[Point]) -> Any:
    """Return the area of a shape with straight sides, from its corners in order.

    The sum of cross products (Gauss's shoelace formula, from memory), in sympy's rationals: its
    `Polygon` first looks whether any two sides cross, which takes a hundred times as long.

    >>> area_of((Point(0, 0), Point(4, 0), Point(0, 3)))
    6
    """
    import sympy

    xs, ys = ([sympy.Rational(value) for value in row] for row in zip(*corners, strict=True))
    after = zip((*xs[1:], xs[0]), (*ys[1:], ys[0]), strict=True)
    crosses = [x * y2 - x2 * y for x, y, (x2, y2) in zip(xs, ys, after, strict=True)]
    return abs(sympy.Add(*crosses)) / 2


def number_tree(value: Any) -> t.Node:
    """Return a rational number of sympy as a tree.

    >>> import sympy
    >>> number_tree(sympy.Rational(-3, 4))
    Neg(of=Frac(num=Int(n=3), den=Int(n=4)))
    """
    if not value.is_Rational:
        raise NotExact("what is drawn is no fraction of anything")
    return t.num(int(value)) if value.q == 1 else t.frac(int(value.p), int(value.q))
