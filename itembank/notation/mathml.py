r"""The MathML face: presentation MathML as W3C MathML Core has it, set as a printer would.

Printer's rules held here, and where they come from:

* a minus is U+2212, and a prefix minus says ``form="prefix"`` so that it closes up;
* ×, ÷ and the ratio colon get their spaces said outright, because typesetters differ in
  their operator dictionaries (ziamath sets × tight);
* thin spaces part thousands from five digits up, and a number from its unit
  (BIPM, *The International System of Units*, 9th ed., 2019, 5.4.3 and 5.4.4; from memory);
* ``%``, ``°`` and ``p`` close up after the number, ``£`` before it (common British practice);
* letters are italic, units and names upright;
* a recurring block has a dot over its first and last digit. The dots are accents, since
  ziamath sets a combining dot inside ``<mn>`` beside the digit rather than over it.

Factors side by side are parted by U+2062 and the parts of a mixed number by U+2064, which
are invisible and tell a screen reader how to speak; ziamath 0.13 leaves no glyph or gap
for either.

>>> from itembank.notation.tree import Int, Neg, Sym, frac, juxt, equals
>>> body(equals(juxt(Int(3), Sym("x")), Neg(Int(6))))
'<mn>3</mn><mo>\u2062</mo><mi>x</mi><mo>=</mo><mo form="prefix">−</mo><mn>6</mn>'
"""

from __future__ import annotations

from collections.abc import Callable
from html import escape
from typing import Any

from itembank.notation.line import is_one, line
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
from itembank.notation.units import AS_WORDS, UNITS

_OPEN = '<math xmlns="http://www.w3.org/1998/Math/MathML" displaystyle="true">'
_MEDIUM = '<mo lspace="0.222em" rspace="0.222em">'
_THICK = '<mo lspace="0.278em" rspace="0.278em">'
_MINUS = '<mo form="prefix">−</mo>'
_THIN = "\u2009"
_SUM = {"+": "<mo>+</mo>", "-": "<mo>−</mo>"}
_PRODUCT = {"×": f"{_MEDIUM}×</mo>", "÷": f"{_MEDIUM}÷</mo>", "of": "<mtext>\u00a0of\u00a0</mtext>"}
_RELATION = {
    "=": "<mo>=</mo>",
    "<": "<mo>&lt;</mo>",
    ">": "<mo>&gt;</mo>",
    "≤": "<mo>≤</mo>",
    "≥": "<mo>≥</mo>",
    "≠": "<mo>≠</mo>",
}
# ziamath's box at ordinary size is only as big as a digit: too small to write in.
_BOX = '<mtext mathsize="1.25em">□</mtext>'


def mathml(node: Node) -> str:
    r"""Return `node` as a ``<math>`` element, without line breaks.

    The tree is drawn as it stands: brackets are printed where there is a ``Bracket`` and
    nowhere else. Whether a tree is well formed is for :func:`itembank.notation.line.line`.

    Raises:
        NotationError: something in the tree is not a node, or a sign or unit is unknown.

    >>> from itembank.notation.tree import Int
    >>> mathml(Int(12345))[-28:]
    'true"><mn>12\u2009345</mn></math>'
    """
    return f"{_OPEN}{body(node)}</math>"


def body(node: Node) -> str:
    """Return the elements inside ``<math>`` for `node`; more than one where it is a row.

    Raises:
        NotationError: something in the tree is not a node, or a sign or unit is unknown.
    """
    writer = _WRITERS.get(type(node))
    if writer is None:
        raise NotationError(f"{type(node).__name__} is not a kind of notation")
    try:
        return writer(node)
    except KeyError as error:
        raise NotationError(f"{error} is not a sign that can be printed here") from None


def _one(node: Node) -> str:
    """Return `node` as exactly one element."""
    inner = body(node)
    return inner if type(node) in _SINGLE else f"<mrow>{inner}</mrow>"


def _grouped(digits: str) -> str:
    r"""Return a whole number's digits with thin spaces between thousands, from five digits.

    >>> _grouped("1234567"), _grouped("1234")
    ('1\u2009234\u2009567', '1234')
    """
    if len(digits) < 5:
        return digits
    lead = len(digits) % 3
    blocks = [digits[i : i + 3] for i in range(lead, len(digits), 3)]
    return _THIN.join([digits[:lead], *blocks] if lead else blocks)


def _int(node: Int) -> str:
    return f"<mn>{_grouped(str(node.n))}</mn>"


def _dot(digit: str) -> str:
    return f'<mover accent="true"><mn>{digit}</mn><mo>˙</mo></mover>'


def _dec(node: Dec) -> str:
    whole = _grouped(node.whole)
    block = node.recurring
    if not block:
        return f"<mn>{whole}.{node.places}</mn>"
    between = f"<mn>{block[1:-1]}</mn>" if len(block) > 2 else ""
    last = _dot(block[-1]) if len(block) > 1 else ""
    return f"<mrow><mn>{whole}.{node.places}</mn>{_dot(block[0])}{between}{last}</mrow>"


def _quantity(node: Quantity) -> str:
    amount = _one(node.amount)
    if node.unit == "°":
        return f"{amount}<mtext>°</mtext>"
    if node.unit == "l" or node.unit in AS_WORDS:
        # A lone l after digits is read as a 1, so litres are printed as a word.
        unit_name = UNITS[node.unit].one if is_one(node.amount) else UNITS[node.unit].many
        return f"{amount}<mtext>\u00a0{unit_name}</mtext>"
    name, _, exponent = node.unit.partition("^")
    unit = f"<mtext>{_THIN}{escape(name)}</mtext>"
    return amount + (f"<msup>{unit}<mn>{exponent}</mn></msup>" if exponent else unit)


def _clock(node: ClockTime) -> str:
    return f"<mtext>{line(node).replace(' ', chr(0xA0))}</mtext>"


def _money(node: Money) -> str:
    sign = f"<mtext>{escape(node.sign)}</mtext>"
    amount = _one(node.amount)
    return amount + sign if node.sign == "p" else sign + amount


def _root(node: Root) -> str:
    if node.index == 2:
        return f"<msqrt>{body(node.of)}</msqrt>"
    return f"<mroot>{_one(node.of)}<mn>{node.index}</mn></mroot>"


def _juxt(node: Juxt) -> str:
    return "<mo>\u2062</mo>".join([body(factor) for factor in node.factors])


def _chain(signs: dict[str, str]) -> Callable[[Any], str]:
    """Return a writer for parts joined by `signs`; a part of its own row gets an ``mrow``."""

    def write(node: Sum | Product | Relation) -> str:
        return body(node.first) + "".join([signs[op] + body(part) for op, part in node.rest])

    return write


def _mixed(node: Mixed) -> str:
    return (
        f"<mrow><mn>{node.whole}</mn><mo>\u2064</mo>"
        f"<mfrac><mn>{node.num}</mn><mn>{node.den}</mn></mfrac></mrow>"
    )


_WRITERS: dict[type, Callable[[Any], str]] = {
    Int: _int,
    Dec: _dec,
    Sym: lambda node: f"<mi>{escape(node.name)}</mi>",
    Blank: lambda node: _BOX,
    Label: lambda node: f"<mtext>{escape(node.text)}</mtext>",
    Frac: lambda node: f"<mfrac>{_one(node.num)}{_one(node.den)}</mfrac>",
    Mixed: _mixed,
    Neg: lambda node: _MINUS + body(node.of),
    Percent: lambda node: f"{_one(node.of)}<mtext>%</mtext>",
    Money: _money,
    Quantity: _quantity,
    MixedUnits: lambda node: "<mtext>\u00a0</mtext>".join([body(part) for part in node.parts]),
    ClockTime: _clock,
    Power: lambda node: f"<msup>{_one(node.base)}{_one(node.exponent)}</msup>",
    Root: _root,
    Bracket: lambda node: f"<mrow><mo>(</mo>{body(node.of)}<mo>)</mo></mrow>",
    Juxt: _juxt,
    Sum: _chain(_SUM),
    Product: _chain(_PRODUCT),
    Ratio: lambda node: f"{_THICK}:</mo>".join([body(part) for part in node.parts]),
    Relation: _chain(_RELATION),
    Listing: lambda node: "<mo>,</mo>".join([body(part) for part in node.parts]),
    Either: lambda node: "<mtext>\u00a0or\u00a0</mtext>".join([body(p) for p in node.parts]),
}

# The nodes whose writers give exactly one element.
_SINGLE = frozenset(
    {Int, Dec, Sym, Blank, Label, ClockTime, Frac, Mixed, Power, Root, Bracket},
)
