"""Amounts with a sign or a unit: percentages, money, quantities in one unit or several."""

from __future__ import annotations

from html import escape
from itertools import pairwise
from typing import TYPE_CHECKING, Any, cast

from itembank.data_class import dataclass
from itembank.notation.tree.face import Faces, Part, Parts, Rank, Syntax, register_node
from itembank.notation.tree.fractions import Frac, Mixed
from itembank.notation.tree.line_signs import GLUED_UNIT, SPACED_UNIT, UNIT_SIGNS
from itembank.notation.tree.marked_up import THIN, element, row_of
from itembank.notation.tree.numbers import Dec, Int
from itembank.notation.tree.parsed import RefusedError, start_of
from itembank.notation.tree.part_shapes import OF, ROW
from itembank.notation.tree.spoken import said, said_row
from itembank.notation.tree.unknowns import Blank
from itembank.notation.tree.written import misplaced, pence_here, refuse, text_of
from itembank.notation.units import AS_WORDS, CURRENCY, TOGETHER, UNITS, shown_unit
from itembank.text.in_words import with_article

if TYPE_CHECKING:
    from itembank.notation.tree import Node


@dataclass(frozen=True, slots=True)
class Percent:
    """A number followed by a per cent sign."""

    of: Node


register_node(
    Percent,
    Faces(
        rank=Rank.UNSIGNED,
        parts=OF,
        line=lambda node: text_of(node.of, Rank.AMOUNT, "a percentage") + "%",
        words=lambda node: f"{said(node.of)} per cent",
        mathml=lambda node: f"{element(node.of)}<mtext>%</mtext>",
        single=False,
        syntax=Syntax(
            rules=(("measure", "compact PERCENT -> percent"),),
            signs={"PERCENT": '"%"'},
            build={"percent": lambda parts: Part(Percent(parts[0].node), start_of(parts))},
        ),
    ),
)


def _counted(amount: Node, singular: str, many: str) -> str:
    """Return an amount with the name of what is counted: 5 grams, but 3 quarters of a gram."""
    if type(amount) is Frac:
        return f"{said(amount)} of {with_article(singular)}"
    return f"{said(amount)} {singular if amount == Int(1) else many}"


@dataclass(frozen=True, slots=True)
class Money:
    """A sum of money: a currency sign (``£`` or ``p``) and a number."""

    amount: Node
    sign: str = "£"


def _money_line(node: Money) -> str:
    if node.sign not in CURRENCY:
        refuse(f"{node.sign!r} is not a known currency sign.")
    if node.sign != "p":
        return node.sign + text_of(node.amount, Rank.AMOUNT, "a sum of money")
    if not pence_here():
        refuse("A line in which p is a letter cannot hold pence.")
    if type(node.amount) not in (Int, Dec, Blank):
        misplaced(node.amount, "a number of pence")
    return text_of(node.amount, Rank.SIMPLE, "a number of pence") + "p"


def _money_words(node: Money) -> str:
    unit = CURRENCY[node.sign]
    amount = node.amount
    # £4.50 is said as pounds and pence; £4.5, which is no way to write it, as it stands.
    if type(amount) is not Dec or len(amount.places) != 2 or amount.recurring or node.sign == "p":
        return _counted(amount, unit.singular, unit.many)
    whole, hundredths = int(amount.whole), int(amount.places)
    smaller = ("penny", "pence") if node.sign == "£" else ("cent", "cents")
    large = f"{whole} {unit.singular if whole == 1 else unit.many}"
    # Both are always said: £0.75 is to be written in pence, and £2.00 is not £2.
    return f"{large} {hundredths} {smaller[hundredths != 1]}"


def _money_mathml(node: Money) -> str:
    sign = f"<mtext>{escape(node.sign)}</mtext>"
    amount = element(node.amount)
    return amount + sign if node.sign == "p" else sign + amount


def _read_pence(parts: list[Any]) -> Part:
    if type(parts[0].node) not in (Int, Dec, Blank):
        raise RefusedError("Only one number can be pence: write £ instead.", start_of(parts))
    return Part(Money(parts[0].node, "p"), start_of(parts))


def _read_money(parts: list[Any]) -> Part:
    return Part(Money(parts[1].node, str(parts[0])), start_of(parts))


register_node(
    Money,
    Faces(
        rank=Rank.UNSIGNED,
        parts=Parts(lambda node: (node.amount,), lambda node, below: Money(below[0], node.sign)),
        line=_money_line,
        words=_money_words,
        mathml=_money_mathml,
        single=False,
        syntax=Syntax(
            rules=(
                ("measure", "compact PENCE -> pence"),
                ("measure", "CURRENCY compact -> money"),
            ),
            signs={"CURRENCY": "/[£€$]/"},  # PENCE is the grammar's own: it depends on all nodes
            build={"pence": _read_pence, "money": _read_money},
        ),
    ),
)


@dataclass(frozen=True, slots=True)
class Quantity:
    """A number with a unit from :data:`itembank.notation.units.UNITS`, such as 4.5 kg."""

    amount: Node
    unit: str


def is_one(amount: Node) -> bool:
    """Tell whether the name of a unit after `amount` is in the singular: 1 day, 3/4 day.

    >>> is_one(Int(1)), is_one(Frac(Int(3), Int(4))), is_one(Int(2))
    (True, True, False)
    """
    return amount == Int(1) or isinstance(amount, Frac)


def _quantity_line(node: Quantity) -> str:
    unit = node.unit
    if unit not in UNITS:
        refuse(f"{unit!r} is not a known unit.")
    sign = "°" if unit == "°" else " " + shown_unit(unit, is_one(node.amount))
    return text_of(node.amount, Rank.AMOUNT, "the number of a quantity") + sign


def _quantity_words(node: Quantity) -> str:
    unit = UNITS[node.unit]
    return _counted(node.amount, unit.singular, unit.many)


def _quantity_mathml(node: Quantity) -> str:
    amount = element(node.amount)
    if node.unit == "°":
        return f"{amount}<mtext>°</mtext>"
    if node.unit == "l" or node.unit in AS_WORDS:
        # A lone l after digits is read as a 1, so litres are printed as a word.
        unit_name = UNITS[node.unit].singular if is_one(node.amount) else UNITS[node.unit].many
        return f"{amount}<mtext>\u00a0{unit_name}</mtext>"
    name, _, exponent = node.unit.partition("^")
    unit = f"<mtext>{THIN}{escape(name)}</mtext>"
    return amount + (f"<msup>{unit}<mn>{exponent}</mn></msup>" if exponent else unit)


def _read_quantity(parts: list[Any]) -> Part:
    sign = str(parts[1])
    return Part(Quantity(parts[0].node, UNIT_SIGNS.get(sign, sign)), start_of(parts))


register_node(
    Quantity,
    Faces(
        rank=Rank.UNSIGNED,
        parts=Parts(lambda node: (node.amount,), lambda node, below: Quantity(below[0], node.unit)),
        line=_quantity_line,
        words=_quantity_words,
        mathml=_quantity_mathml,
        single=False,
        syntax=Syntax(
            rules=(
                ("measure", "quantity"),
                ("measure", "compact DEGREE -> quantity"),
                ("quantity", "compact UNIT"),
            ),
            signs={
                "UNIT.6": "/" + f"{SPACED_UNIT}|{GLUED_UNIT}".replace("/", r"\/") + "/",
                "DEGREE": '"°"',
            },
            build={"quantity": _read_quantity},
        ),
    ),
)


@dataclass(frozen=True, slots=True)
class MixedUnits:
    """A quantity in two or more units of one kind, the largest first, such as 2 h 35 min.

    There are whole numbers before the last unit.
    """

    parts: tuple[Quantity, ...]


def _mixed_units_line(node: MixedUnits) -> str:
    parts = node.parts
    if len(parts) < 2 or not all(isinstance(part, Quantity) for part in parts):
        refuse("A quantity in several units has two or more of them.")
    for before, after in pairwise(parts):
        # 3 kg 2 m is two quantities with a sign left out, and no sum is guessed.
        if after.unit not in TOGETHER.get(before.unit, ()):
            refuse(
                f"{before.unit} and {after.unit} do not go together in one quantity: "
                "put a sign between them."
            )
        # 2.5 h 10 min would say minutes twice.
        if type(before.amount) not in (Int, Blank):
            refuse(f"Only a whole number of {before.unit} can stand before {after.unit}.")
    if type(parts[-1].amount) not in (Int, Dec, Mixed, Blank):
        refuse(f"Only a number of {parts[-1].unit} can stand after {parts[-2].unit}.")
    return " ".join([_quantity_line(part) for part in parts])


def _read_mixed_units(parts: list[Part]) -> Part:
    return Part(MixedUnits(tuple(cast(Any, part.node) for part in parts)), parts[0].start)


register_node(
    MixedUnits,
    Faces(
        rank=Rank.UNSIGNED,
        parts=ROW,
        line=_mixed_units_line,
        words=said_row(" "),
        mathml=row_of("<mtext>\u00a0</mtext>"),
        single=False,
        syntax=Syntax(
            rules=(("measure", "mixed_units"), ("mixed_units", "quantity quantity+")),
            build={"mixed_units": _read_mixed_units},
        ),
    ),
)
