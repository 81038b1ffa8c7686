"""The line face: one line of text a pupil would type, which reads back to the same tree.

Round brackets in a line are either printed brackets (:class:`~.tree.Bracket`) or they only
group what a fraction bar, a raised exponent or a root sign groups on paper. They group

* the top or bottom of a fraction that is more than one number, letter or box:
  ``(x + 1)/3``, ``9/(2y)``; a printed bracket there shows as a second pair;
* an exponent, and what stands under a root, in the same way: ``x^(n + 1)``, ``√(x + 1)``;
* a fraction or mixed number that leads a product of letters: ``(3/4)x``.

A tree is **well formed** when paper shows it unambiguously, which comes to this:

* alternatives (*or*) hold lists, relations and expressions;
* a list holds relations, ratios, expressions and names; a relation holds ratios,
  expressions and names; a ratio holds expressions. A name stands nowhere else;
* an expression is a sum of products of signed terms. A ``Sum`` inside a sum or product, a
  ``Product`` inside a product, and either under a ``Neg`` need a ``Bracket``;
* a time of day stands alone or in a sum (see :mod:`.clock`); 14:35 is close up, where a
  ratio is 14 : 35. A quantity in several units has whole numbers before the last;
* a ``Neg`` may be any part of a sum or product without brackets: ``5 - -3``, ``2 × -3``.
  At the head it is the sign of the first part alone: ``-2 × 3`` is (−2) × 3 and
  ``-2 + 3`` is (−2) + 3. A ``Neg`` of a ``Neg`` needs a bracket: ``-(-3)``;
* a minus stands outside a fraction, power, product of letters, percentage, sum of money
  or quantity: ``-x^2``, ``-3x``, ``-£4``;
* a percentage, quantity or sum of money is made of one number, letter, box, fraction,
  mixed number, power, root, bracket or ``Juxt``; pence of a number or a box only;
* the base of a power is a number, letter, box or bracket;
* a ``Juxt`` has two or more factors, each a number, letter, box, power, root or bracket.
  A factor that starts with a digit may only lead or follow a bracket. A fraction or mixed
  number may lead where a letter or box comes later and no digit comes next;
* lists, relations and ratios have two or more parts, sums and products too;
* a unit's letters are not taken for unknowns, nor the other way about: number, space, unit
  is a quantity (``5 m``), a number and one letter close up is a product (``5m``), a number
  and a unit of several letters close up is a quantity (``5kg``), and a number and p close
  up is pence. A ``Juxt`` that would read as one of these (or as the word *of*) is refused;
* decimals have digits on both sides of the point, mixed numbers three positive parts.
"""

from __future__ import annotations

from contextvars import ContextVar
from itertools import pairwise
from typing import NoReturn

from itembank.notation.clock import clock_fault, times_in
from itembank.notation.grammar import (
    DOT,
    GLUED_UNIT,
    LETTERS,
    MAX_DIGITS,
    OF,
    OR,
    PENCE,
    ROOT_WORD,
    check_limits,
)
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
    symbols,
)
from itembank.notation.units import CURRENCY, TOGETHER, UNITS, shown_unit
from itembank.text.late_pattern import late

_SIMPLE: frozenset[type] = frozenset({Int, Dec, Sym, Blank})
_BASE = _SIMPLE | {Bracket}
_FACTOR = _BASE | {Power, Root}
_AMOUNT = _FACTOR | {Juxt, Frac, Mixed}
_UNSIGNED = _AMOUNT | {Percent, Money, Quantity, MixedUnits}
_SIGNED = _UNSIGNED | {Neg}
_TERM = _SIGNED | {Product}
_EXPRESSION = _TERM | {Sum}
_SIDE = _EXPRESSION | {Ratio, Label, ClockTime}
_CELL = _SIDE | {Relation}
_CHOICE = (_CELL - {Label}) | {Listing}
_ANY = _CELL | {Listing, Either}

_LETTER = late(f"[{LETTERS}]")
_MISREAD = late(f"{OF}|{OR}|{ROOT_WORD}|{PENCE}|{GLUED_UNIT}")
_MISREAD_P = late(f"{OF}|{OR}|{ROOT_WORD}|{GLUED_UNIT}")
# Whether p after a number is pence is a fact of the whole line, read only where factors meet.
_pence: ContextVar[bool] = ContextVar("pence", default=True)
_TIME_ALONE = "A time of day stands alone, or in a sum with lengths of time or another time."
_TOO_LARGE = 10**MAX_DIGITS
_ROOTS = {2: "√", 3: "∛", 4: "∜"}
_SUM_OPS = {"+": " + ", "-": " - "}
_PRODUCT_OPS = {"×": " × ", "÷": " ÷ ", "of": " of "}
_RELATION_OPS = {op: f" {op} " for op in "=<>≤≥≠"}


def line(node: Node, *, pence: bool = True) -> str:
    """Return the canonical one-line text of a well-formed tree.

    With `pence` false, p is a letter wherever it stands, so 3p is three times p.

    Raises:
        NotationError: the tree is not well formed (see the module), or goes past the
            limits of :mod:`.grammar`; the message says which part and why.

    >>> from itembank.notation.tree import Int, Sym, add, equals, frac, juxt
    >>> line(equals(add(juxt(frac(3, 4), Sym("x")), Int(1)), frac(-3, 4)))
    '(3/4)x + 1 = -3/4'
    >>> line(Dec("0", "", "142857")) == "0.1̇42857̇"
    True
    >>> line(Juxt((Int(3), Int(4))))
    Traceback (most recent call last):
    ...
    itembank.notation.tree.NotationError: 3 and 4 cannot stand side by side without a sign.
    """
    token = _pence.set(pence)
    try:
        text = _text(node, _ANY, "a piece of mathematics")
    except RecursionError:
        raise NotationError("The mathematics is nested too deeply to write on a line.") from None
    finally:
        _pence.reset(token)
    fault = check_limits(text)
    if fault:
        raise NotationError(fault[1])
    return text


def shown_line(node: Node) -> str:
    """Return a tree as people may read it, whatever it is: its line, or failing that its content.

    A line is read as a whole, and in some p is a letter: there 3p is written though it is not
    threepence. So this is what messages and lists are made with, and :func:`line` what is to be
    read back.

    >>> from itembank.notation.parse import parse
    >>> shown_line(parse("10p ÷ 400p", pence=False))
    '10p ÷ 400p'
    """
    try:
        return line(node, pence="p" not in symbols(node))
    except NotationError:
        return repr(node)


def _refuse(message: str) -> NoReturn:
    raise NotationError(message)


def _text(node: Node, allowed: frozenset[type], place: str) -> str:
    """Return the text of `node`, which stands at `place`, where only `allowed` may stand."""
    kind = type(node)
    if kind not in allowed:
        if kind not in _ANY:
            _refuse(f"{kind.__name__} is not a kind of notation.")
        if kind is ClockTime:
            _refuse(_TIME_ALONE)
        _refuse(f"{kind.__name__} cannot stand as {place} without brackets.")
    match node:
        case Int(n):
            if not 0 <= n < _TOO_LARGE:
                _refuse(f"A whole number here is 0 or more, of at most {MAX_DIGITS} digits.")
            return str(n)
        case Dec():
            return _dec(node)
        case Sym(name):
            if not (len(name) == 1 and _LETTER.fullmatch(name)):
                _refuse(f"An unknown is one Latin or Greek letter, not {name!r}.")
            return name
        case Blank():
            return "□"
        case Label(text):
            if not text.strip() or '"' in text or not text.isprintable():
                _refuse(f"A name needs printable characters without quotation marks: {text!r}.")
            return f'"{text}"'
        case Frac(num, den):
            top = _grouped(num, "the top of a fraction")
            return f"{top}/{_grouped(den, 'the bottom of a fraction')}"
        case Mixed(whole, top_number, bottom):
            if min(whole, top_number, bottom) < 1 or max(whole, top_number, bottom) >= 10**60:
                _refuse("A mixed number has three positive whole numbers of at most 60 digits.")
            return f"{whole} {top_number}/{bottom}"
        case Neg(of):
            return "-" + _text(of, _UNSIGNED, "the number after a minus sign")
        case Percent(of):
            return _text(of, _AMOUNT, "a percentage") + "%"
        case Money():
            return _money(node)
        case Quantity(amount, unit):
            if unit not in UNITS:
                _refuse(f"{unit!r} is not a known unit.")
            sign = "°" if unit == "°" else " " + shown_unit(unit, is_one(amount))
            return _text(amount, _AMOUNT, "the number of a quantity") + sign
        case MixedUnits(parts):
            return _mixed_units(parts)
        case ClockTime():
            return _clock(node)
        case Power(base, exponent):
            below = _text(base, _BASE, "the base of a power")
            return f"{below}^{_grouped(exponent, 'an exponent')}"
        case Root(of, index):
            if index not in _ROOTS:
                _refuse(f"A root has index 2, 3 or 4, not {index}.")
            return _ROOTS[index] + _grouped(of, "the number under a root")
        case Bracket(of):
            _no_time(of)
            return f"({_text(of, _EXPRESSION, 'the inside of a bracket')})"
        case Juxt():
            return _juxt(node)
        case Sum(first, rest):
            if fault := clock_fault(node):
                _refuse(fault)
            return _chain(first, rest, _SUM_OPS, _TERM | {ClockTime}, "a term of a sum")
        case Product(first, rest):
            return _chain(first, rest, _PRODUCT_OPS, _SIGNED, "a factor of a product")
        case Relation(first, rest):
            return _chain(first, rest, _RELATION_OPS, _SIDE, "a side of a relation")
        case Ratio(parts):
            return _joined(parts, " : ", _EXPRESSION, "a part of a ratio")
        case Listing(parts):
            return _joined(parts, ", ", _CELL, "a part of a list")
        case Either(parts):
            return _joined(parts, " or ", _CHOICE, "one of several answers")


def _grouped(node: Node, place: str) -> str:
    """Return the text of `node`, in brackets unless it is one number, letter or box."""
    _no_time(node)
    text = _text(node, _EXPRESSION, place)
    return text if type(node) in _SIMPLE else f"({text})"


def is_one(amount: Node) -> bool:
    """Tell whether the name of a unit after `amount` is in the singular: 1 day, 3/4 day.

    >>> is_one(Int(1)), is_one(Frac(Int(3), Int(4))), is_one(Int(2))
    (True, True, False)
    """
    return amount == Int(1) or isinstance(amount, Frac)


def _mixed_units(parts: tuple[Quantity, ...]) -> str:
    if len(parts) < 2 or not all(isinstance(part, Quantity) for part in parts):
        _refuse("A quantity in several units has two or more of them.")
    for before, after in pairwise(parts):
        if after.unit not in TOGETHER.get(before.unit, ()):
            _refuse(
                f"{before.unit} and {after.unit} do not go together in one quantity: "
                "put a sign between them."
            )
        if type(before.amount) not in (Int, Blank):
            _refuse(f"Only a whole number of {before.unit} can stand before {after.unit}.")
    if type(parts[-1].amount) not in (Int, Dec, Mixed, Blank):
        _refuse(f"Only a number of {parts[-1].unit} can stand after {parts[-2].unit}.")
    return " ".join(_text(part, _ANY, "a part of a quantity") for part in parts)


def _clock(node: ClockTime) -> str:
    hour, minute, half = node.hour, node.minute, node.half
    if minute is not None and not 0 <= minute < 60:
        _refuse("A time of day has 0 to 59 minutes.")
    if half not in ("", "am", "pm"):
        _refuse("A time of day is am, pm, or by the 24-hour clock.")
    if not half:
        if minute is None or not 0 <= hour < 24:
            _refuse("A time by the 24-hour clock is from 00:00 to 23:59.")
        return f"{hour:02d}:{minute:02d}"
    if not 1 <= hour <= 12:
        _refuse("Before am and pm there is an hour from 1 to 12.")
    return f"{hour} {half}" if minute is None else f"{hour}:{minute:02d} {half}"


def _no_time(node: Node) -> None:
    if isinstance(node, Sum) and times_in(node) == 1:
        _refuse(_TIME_ALONE)


def _dec(node: Dec) -> str:
    whole, places, block = node.whole, node.places, node.recurring
    digits = whole + places + block
    if not (whole and places + block and digits.isascii() and digits.isdigit()):
        _refuse("A decimal needs digits before and after its point.")
    if len(digits) > MAX_DIGITS:
        _refuse(f"A number may have at most {MAX_DIGITS} digits.")
    if len(block) > 1:
        block = f"{block[0]}{DOT}{block[1:]}"
    return f"{whole}.{places}{block}{DOT if block else ''}"


def _money(node: Money) -> str:
    if node.sign not in CURRENCY:
        _refuse(f"{node.sign!r} is not a known currency sign.")
    if node.sign == "p":
        if not _pence.get():
            _refuse("A line in which p is a letter cannot hold pence.")
        return _text(node.amount, frozenset({Int, Dec, Blank}), "a number of pence") + "p"
    return node.sign + _text(node.amount, _AMOUNT, "a sum of money")


def _juxt(node: Juxt) -> str:
    if len(node.factors) < 2:
        _refuse("Factors side by side must be two or more.")
    first, *rest = node.factors
    leads = type(first) in (Frac, Mixed)
    head = _text(first, _FACTOR | {Frac, Mixed}, "a factor side by side")
    texts = [_text(factor, _FACTOR, "a factor side by side") for factor in rest]
    # Brackets round a leading fraction only group it, so printed ones show as a second pair.
    groups = leads_letters(first, rest)
    if leads and not groups:
        _refuse(f"The fraction {head} can only stand in front of a letter.")
    all_texts = [f"({head})" if groups else head, *texts]
    for before, text, factor in zip(all_texts, texts, node.factors, strict=False):
        if text[0].isdigit() and type(factor) is not Bracket:
            _refuse(f"{before} and {text} cannot stand side by side without a sign.")
    text = "".join(all_texts)
    misread = (_MISREAD if _pence.get() else _MISREAD_P).search(text)
    if misread:
        _refuse(f"{text} would be read with {misread.group()!r} as one word; change a letter.")
    return text


def leads_letters(first: Node, rest: list[Node]) -> bool:
    """Tell whether `first`, its brackets taken off, is a fraction in front of letters.

    >>> from itembank.notation.tree import Sym, frac
    >>> leads_letters(Bracket(frac(3, 4)), [Sym("x")])
    True
    >>> leads_letters(Bracket(frac(3, 4)), [Bracket(frac(5, 6))])
    False
    """
    while type(first) is Bracket:
        first = first.of
    if type(first) not in (Frac, Mixed):
        return False
    after = rest[0].base if type(rest[0]) is Power else rest[0]
    return type(after) not in (Int, Dec) and any(symbols(factor) for factor in rest)


def _chain(
    first: Node,
    rest: tuple[tuple[str, Node], ...],
    ops: dict[str, str],
    allowed: frozenset[type],
    place: str,
) -> str:
    if not rest:
        _refuse(f"There must be two or more parts for there to be {place}.")
    texts = [_text(first, allowed, place)]
    for op, part in rest:
        if op not in ops:
            _refuse(f"{op!r} cannot join parts here; use one of {', '.join(ops)}.")
        texts += (ops[op], _text(part, allowed, place))
    return "".join(texts)


def _joined(parts: tuple[Node, ...], mark: str, allowed: frozenset[type], place: str) -> str:
    if len(parts) < 2:
        _refuse(f"There must be two or more parts for there to be {place}.")
    return mark.join(_text(part, allowed, place) for part in parts)
