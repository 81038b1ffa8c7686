"""The words face: what a teacher would say aloud, for alternative text.

Digits stay digits, as screen readers say them. Whatever brackets, bars and raised exponents
show the eye is said, so that no two readings fit: a fraction of more than single numbers
and letters is "the fraction … over …, end of fraction", and one of letters says where it ends
if anything follows. The phrasing is common classroom practice, no source.

>>> from itembank.notation.tree import Int, Sym, add, equals, frac, juxt
>>> words(equals(add(juxt(Int(3), Sym("x")), frac(3, 4)), Int(7)))
'3 x plus 3 quarters equals 7'
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from itembank.notation.tree import (
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
from itembank.notation.units import CURRENCY, UNITS
from itembank.text.late_pattern import late

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
    >>> from itembank.notation.tree import Int, Sym, add, frac
    >>> words(Frac(Sym("n"), Int(3))), words(add(Frac(Sym("n"), Int(3)), Int(1)))
    ('n over 3', 'n over 3, end of fraction, plus 1')
    """
    said = _said(node)
    for mark, end in _ENDS.items():
        said = said.removesuffix(mark).replace(mark, end)
    return _AFTER_END.sub(",", said)


_FRACTION, _POWER = "\0", "\1"
_ENDS = {_FRACTION: ", end of fraction", _POWER: ", end of power"}
"""Where a simple fraction or power ends: said only if something follows."""
_ENDED = late(r", end of (?:fraction|power|root)\Z")
_AFTER_END = late(r"(?:(?<=, end of fraction)|(?<=, end of power)|(?<=, end of root))(?= )")


def _said(node: Node) -> str:
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
        return f"{top} over {bottom}{_FRACTION}"
    one, many = _PARTS[bottom]
    return f"{top} {one if top == 1 else many}"


def _frac(node: Frac) -> str:
    top, bottom = node.num, node.den
    if type(top) is Int and type(bottom) is Int:
        return _parts(top.n, bottom.n)
    if isinstance(top, _SMALL) and isinstance(bottom, _SMALL):
        return f"{_said(top)} over {_said(bottom)}{_FRACTION}"
    return f"the fraction {_said(top)}, over {_said(bottom)}, end of fraction"


def _mixed(node: Mixed) -> str:
    return f"{node.whole} and {_parts(node.num, node.den)}"


def _is_one(amount: Node) -> bool:
    """Tell whether a unit after `amount` is said in the singular."""
    return amount == Int(1)


def _counted(amount: Node, one: str, many: str) -> str:
    """Return an amount with the name of what is counted: 5 grams, but 3 quarters of a gram."""
    if type(amount) is Frac:
        return f"{_said(amount)} of {'an' if one[0] in 'aeiou' or one == 'hour' else 'a'} {one}"
    return f"{_said(amount)} {one if _is_one(amount) else many}"


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
    base = _said(node.base)
    if node.exponent == Int(2):
        return f"{base} squared"
    if node.exponent == Int(3):
        return f"{base} cubed"
    exponent = _said(node.exponent)
    if isinstance(node.exponent, _SMALL):
        return f"{base} to the power {exponent}{_POWER}"
    return f"{base} to the power {exponent}, end of power"


def _root(node: Root) -> str:
    kind = _ROOTS[node.index]
    if isinstance(node.of, _SMALL):
        return f"the {kind} root of {_said(node.of)}"
    return f"the {kind} root of {_said(node.of)}, end of root"


def _neg(node: Neg) -> str:
    """Return a negative number, or what is taken away.

    >>> words(Neg(Int(3))), words(Neg(Sym("x"))), words(Neg(Power(Int(3), Int(2))))
    ('negative 3', 'minus x', 'minus 3 squared')
    """
    number = isinstance(node.of, Int | Dec | Mixed | Money | Quantity | Percent) or (
        isinstance(node.of, Frac) and isinstance(node.of.num, Int) and isinstance(node.of.den, Int)
    )
    return f"{'negative' if number else 'minus'} {_said(node.of)}"


def _juxt(node: Juxt) -> str:
    """Return factors side by side; a root of a number after another is short.

    >>> words(Juxt((Int(5), Root(Int(2), 2))))
    '5 root 2'
    """
    said = [_said(node.factors[0])]
    for factor in node.factors[1:]:
        if isinstance(factor, Root) and factor.index == 2 and isinstance(factor.of, Int):
            said.append(f"root {_said(factor.of)}")
        else:
            said.append(_said(factor))
    return " ".join(said)


def _listing(node: Listing) -> str:
    """Return things listed; after one that says where it ends, *then* parts it from the next.

    >>> words(Listing((Int(1), Int(2)))), words(Listing((Frac(Sym("n"), Int(3)), Int(1))))
    ('1, 2', 'n over 3, end of fraction, then 1')
    """
    said = [_said(part) for part in node.parts]
    ended = [text.endswith(tuple(_ENDS)) or _ENDED.search(text) is not None for text in said]
    gaps = [" then " if over else ", " for over in ended[:-1]]
    return "".join(text + gap for text, gap in zip(said, [*gaps, ""], strict=True))


def _chain(said: dict[str, str]) -> Callable[[Any], str]:
    def speak(node: Sum | Product | Relation) -> str:
        return " ".join(
            [_said(node.first), *(f"{said[op]} {_said(part)}" for op, part in node.rest)]
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
    Neg: _neg,
    Percent: lambda node: f"{_said(node.of)} per cent",
    Money: _money,
    Quantity: _quantity,
    MixedUnits: lambda node: " ".join([_said(part) for part in node.parts]),
    ClockTime: _clock,
    Power: _power,
    Root: _root,
    Bracket: lambda node: f"open bracket {_said(node.of)} close bracket",
    Juxt: _juxt,
    Sum: _chain(_SUM),
    Product: _chain(_PRODUCT),
    Ratio: lambda node: " to ".join([_said(part) for part in node.parts]),
    Relation: _chain(_RELATION),
    Listing: _listing,
    Either: lambda node: ", or ".join([_said(part) for part in node.parts]),
}
