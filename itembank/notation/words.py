"""The words face: what a teacher would say aloud, for alternative text.

Digits stay digits, as screen readers say them. Whatever brackets, bars and raised exponents
show the eye is said, so that no two readings fit: a fraction of more than single numbers
and letters is "the fraction … over …, end of fraction". The phrasing is common classroom
practice, no source.

>>> from itembank.notation.tree import Int, Sym, add, equals, frac, juxt
>>> words(equals(add(juxt(Int(3), Sym("x")), frac(3, 4)), Int(7)))
'3 x plus 3 quarters equals 7'
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from .tree import (
    Blank,
    Bracket,
    ClockTime,
    Dec,
    Either,
    Frac,
    Int,
    Juxt,
    Label,
    Listing,
    Mixed,
    MixedUnits,
    Money,
    Neg,
    Node,
    NotationError,
    Percent,
    Power,
    Product,
    Quantity,
    Ratio,
    Relation,
    Root,
    Sum,
    Sym,
)
from .units import CURRENCY, UNITS

_PARTS = {
    2: ("half", "halves"),
    3: ("third", "thirds"),
    4: ("quarter", "quarters"),
    5: ("fifth", "fifths"),
    6: ("sixth", "sixths"),
    7: ("seventh", "sevenths"),
    8: ("eighth", "eighths"),
    9: ("ninth", "ninths"),
    10: ("tenth", "tenths"),
    11: ("eleventh", "elevenths"),
    12: ("twelfth", "twelfths"),
    20: ("twentieth", "twentieths"),
    100: ("hundredth", "hundredths"),
    1000: ("thousandth", "thousandths"),
}
_SUM = {"+": "plus", "-": "minus"}
_PRODUCT = {"×": "times", "÷": "divided by", "of": "of"}
_RELATION = {
    "=": "equals",
    "<": "is less than",
    ">": "is greater than",
    "≤": "is less than or equal to",
    "≥": "is greater than or equal to",
    "≠": "is not equal to",
}
_ROOTS = {2: "square", 3: "cube", 4: "fourth"}
_SMALL = (Int, Dec, Sym, Blank)
_GREEK_NAMES = """alpha beta gamma delta epsilon zeta eta theta iota kappa lambda mu nu xi
    omicron pi rho sigma tau upsilon phi chi psi omega"""
_GREEK = dict(zip("αβγδεζηθικλμνξοπρστυφχψω", _GREEK_NAMES.split(), strict=True))
_GREEK["ς"] = "final sigma"


def words(node: Node) -> str:
    """Return the phrase for `node`.

    Raises:
        NotationError: something in the tree is not a node, or a sign or unit is unknown.

    >>> words(Mixed(2, 3, 4)), words(Dec("0", "1", "6")), words(Money(Dec("4", "50")))
    ('2 and 3 quarters', '0 point 1 6 recurring', '4 pounds 50 pence')
    """
    speaker = _SPEAKERS.get(type(node))
    if speaker is None:
        raise NotationError(f"{type(node).__name__} is not a kind of notation.")
    try:
        return speaker(node)
    except KeyError as error:
        raise NotationError(f"{error} is not a sign that can be said here.") from None


def _dec(node: Dec) -> str:
    digits = " ".join(node.places)
    block = node.recurring
    said = f"{node.whole} point {digits}".rstrip()
    if not block:
        return said
    # One recurring digit is plainly the last; a longer block is said twice to mark it off.
    if len(block) == 1:
        return f"{said} {block} recurring"
    return f"{said} {' '.join(block)}, with {' '.join(block)} recurring"


def _sym(node: Sym) -> str:
    name = node.name
    if name.lower() in _GREEK:
        return ("capital " if name.isupper() else "") + _GREEK[name.lower()]
    return f"capital {name}" if name.isupper() else name


def _parts(top: int, bottom: int) -> str:
    if bottom not in _PARTS:
        return f"{top} over {bottom}"
    one, many = _PARTS[bottom]
    return f"{top} {one if top == 1 else many}"


def _frac(node: Frac) -> str:
    top, bottom = node.num, node.den
    if type(top) is Int and type(bottom) is Int:
        return _parts(top.n, bottom.n)
    if isinstance(top, _SMALL) and isinstance(bottom, _SMALL):
        return f"{words(top)} over {words(bottom)}"
    return f"the fraction {words(top)}, over {words(bottom)}, end of fraction"


def _mixed(node: Mixed) -> str:
    return f"{node.whole} and {_parts(node.num, node.den)}"


def _is_one(amount: Node) -> bool:
    """Tell whether a unit after `amount` is said in the singular."""
    return amount == Int(1)


def _counted(amount: Node, one: str, many: str) -> str:
    """Return an amount with the name of what is counted: 5 grams, but 3 quarters of a gram."""
    if type(amount) is Frac:
        return f"{words(amount)} of {'an' if one[0] in 'aeiou' or one == 'hour' else 'a'} {one}"
    return f"{words(amount)} {one if _is_one(amount) else many}"


def _money(node: Money) -> str:
    unit = CURRENCY[node.sign]
    amount = node.amount
    if type(amount) is not Dec or len(amount.places) != 2 or amount.recurring or node.sign == "p":
        return _counted(amount, unit.one, unit.many)
    whole, hundredths = int(amount.whole), int(amount.places)
    smaller = ("penny", "pence") if node.sign == "£" else ("cent", "cents")
    large = f"{whole} {unit.one if whole == 1 else unit.many}"
    small = f"{hundredths} {smaller[hundredths != 1]}"
    if not hundredths:
        return large
    return small if not whole else f"{large} {small}"


def _quantity(node: Quantity) -> str:
    unit = UNITS[node.unit]
    return _counted(node.amount, unit.one, unit.many)


def _clock(node: ClockTime) -> str:
    """Return a time as it is called out: the time 14 35, 9 oh 5 am, 14 hundred.

    >>> _clock(ClockTime(14, 0)), _clock(ClockTime(9, 5, "am")), _clock(ClockTime(2, None, "pm"))
    ('the time 14 hundred', '9 oh 5 am', '2 pm')
    """
    minute = node.minute
    if minute is None:
        said = str(node.hour)
    elif minute == 0:
        said = f"{node.hour} o’clock" if node.half else f"{node.hour} hundred"
    else:
        said = f"{node.hour} {'oh ' if minute < 10 else ''}{minute}"
    return f"{said} {node.half}" if node.half else f"the time {said}"


def _power(node: Power) -> str:
    base = words(node.base)
    if node.exponent == Int(2):
        return f"{base} squared"
    if node.exponent == Int(3):
        return f"{base} cubed"
    exponent = words(node.exponent)
    if isinstance(node.exponent, _SMALL):
        return f"{base} to the power {exponent}"
    return f"{base} to the power {exponent}, end of power"


def _root(node: Root) -> str:
    kind = _ROOTS[node.index]
    if isinstance(node.of, _SMALL):
        return f"the {kind} root of {words(node.of)}"
    return f"the {kind} root of {words(node.of)}, end of root"


def _chain(said: dict[str, str]) -> Callable[[Any], str]:
    def speak(node: Sum | Product | Relation) -> str:
        return " ".join(
            [words(node.first), *(f"{said[op]} {words(part)}" for op, part in node.rest)]
        )

    return speak


_SPEAKERS: dict[type, Callable[[Any], str]] = {
    Int: lambda node: str(node.n),
    Dec: _dec,
    Sym: _sym,
    Blank: lambda node: "a blank box",
    Label: lambda node: str(node.text),
    Frac: _frac,
    Mixed: _mixed,
    Neg: lambda node: f"minus {words(node.of)}",
    Percent: lambda node: f"{words(node.of)} per cent",
    Money: _money,
    Quantity: _quantity,
    MixedUnits: lambda node: " ".join([words(part) for part in node.parts]),
    ClockTime: _clock,
    Power: _power,
    Root: _root,
    Bracket: lambda node: f"open bracket {words(node.of)} close bracket",
    Juxt: lambda node: " ".join([words(factor) for factor in node.factors]),
    Sum: _chain(_SUM),
    Product: _chain(_PRODUCT),
    Ratio: lambda node: " to ".join([words(part) for part in node.parts]),
    Relation: _chain(_RELATION),
    Listing: lambda node: ", ".join([words(part) for part in node.parts]),
    Either: lambda node: ", or ".join([words(part) for part in node.parts]),
}
