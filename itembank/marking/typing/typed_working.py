"""Working that is typed with an answer: its lines, its links, and which of them is the answer.

``7 + 15 = 22``, ``x = 14 ÷ 2 = 7`` and ``2x = 14, x = 7`` show how an answer was found. What
the pupil comes to is the last link; the links before it are held to be true where that can be
told for certain, and an earlier line that gives another answer takes the answer back.

Lines are parted by line breaks, arrows, semicolons, commas and words such as *so*.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from itembank.items.forms.value_forms import value
from itembank.items.item import Item
from itembank.marking.worth.marked_by_kind import marking_of
from itembank.marking.worth.same import same
from itembank.marking.worth.worth import bounded, unit_of
from itembank.notation import tree as t
from itembank.notation.algebra import algebra, number
from itembank.notation.line import shown_line
from itembank.notation.units import CURRENCY, UNITS
from itembank.notation.value import exact
from itembank.text.late_pattern import late

_BREAKS = late(
    r"[\r\n;]+|[→⇒⟹➔➜⟶∴∵]|[-=]{1,2}>(?=\s)|(?<=\s)(?:-->?|->|=>)(?=\S)|"
    r",? *\b(?:so|therefore|hence|thus|then|giving|gives|which means|this means)\b[ ,:]*(?:that )?",
    re.I,
)
# A comma parts lines unless it groups the digits of a number or stands in a bracket.
_COMMAS = late(r",(?!\d{3}(?!\d))(?![^(]*\))|(?<=[\w)%°]) +and +(?=[^,=<>]*[=<>≤≥])", re.I)
_RUN_ON = late(r"(?:(?<=[\d)])|(?<=\d[A-Za-z])) +(?=[A-Za-z] ?[=<>≤≥])")
_GOES_ON = late(r"\s*[=≈]")
_DONE_TO_BOTH = late(
    r"^\s*(?:[-+−–×÷*/]\s*\w+|.*\b(?:both sides?|add|subtract|take|divide|times|multiply|share|"
    r"expand|collect|simplify|cancel|factorise|square|root|so|working|check)\b[^=<>]*)\s*$",
    re.I,
)
_SHOWS = late(
    r"[=≈\n→⇒;]|[<>≤≥].*,|->|^\s*[÷×]|\b(?:so|is|equals|therefore|hence|gives|because)\b", re.I
)


def shows_working(text: str) -> bool:
    """Tell whether there may be more in a typed text than an answer alone.

    >>> [shows_working(text) for text in ("7 + 15 = 22", "22", "x = 7")]
    [True, False, True]
    """
    return bool(_SHOWS.search(text))


def lines_of(text: str, commas: bool = True) -> list[str]:
    r"""Return the lines of working in a text; a line that begins with = goes on with the last.

    >>> lines_of("2x = 14, x = 7"), lines_of("2x = 14 → x = 7")
    (['2x = 14', 'x = 7'], ['2x = 14', 'x = 7'])
    >>> lines_of("7 + 15\n= 22"), lines_of("1,200 + 1 = 1,201"), lines_of("2x = 14 x = 7")
    (['7 + 15 = 22'], ['1,200 + 1 = 1,201'], ['2x = 14', 'x = 7'])
    >>> lines_of("6=3y y=2")
    ['6=3y', 'y=2']
    """
    found: list[str] = []
    for part in _BREAKS.split(text):
        if part is None or not part.strip(" ,.;"):
            continue
        if found and _GOES_ON.match(part):
            found[-1] = f"{found[-1].strip()} {part.strip()}"
            continue
        found.append(part.strip())
    if not commas:
        return found
    parted: list[str] = []
    for part in found:
        for piece in _COMMAS.split(part):
            if not piece or not piece.strip():
                continue
            if parted and _GOES_ON.match(piece):
                parted[-1] = f"{parted[-1]} {piece.strip()}"
                continue
            run = _RUN_ON.split(piece)
            if len(run) > 1 and all("=" in line for line in run):
                parted += [line.strip() for line in run]
            else:
                parted.append(piece.strip())
    return parted


def says_what_was_done(text: str) -> bool:
    """Tell whether a line says what is done to the line before, as *÷ 2* or *take 3 away* do.

    >>> says_what_was_done("÷2"), says_what_was_done("take 3 from both sides")
    (True, True)
    >>> says_what_was_done("x is 8")
    False
    """
    return bool(_DONE_TO_BOTH.match(text))


def comes_to(node: t.Node) -> t.Node:
    """Return what a line of working comes to: its last side, with the letter it is worth.

    >>> from itembank.notation.parse import parse
    >>> texts = ("7 + 15 = 22", "x = 14 ÷ 2 = 7", "14/2 = 7 = x", "2x = 14", "9/12 = 3/4 < 5/6")
    >>> [shown_line(comes_to(parse(text))) for text in texts]
    ['22', 'x = 7', 'x = 7', '14', '9/12 < 5/6']
    """
    if not isinstance(node, t.Relation):
        return node
    sides = [node.first, *(side for _, side in node.rest)]
    ops = [op for op, _ in node.rest]
    if set(ops) == {"="}:
        first, last = sides[0], sides[-1]
        if isinstance(first, t.Blank):
            return last
        if isinstance(last, t.Sym) and not isinstance(first, t.Sym):
            return t.Relation(last, (("=", sides[-2]),))
        return t.Relation(first, (("=", last),)) if isinstance(first, t.Sym) else last
    if "=" not in ops:
        return node
    groups: list[t.Node] = [sides[0]]
    signs: list[t.RelationOp] = []
    for op, side in node.rest:
        if op != "=":
            signs.append(op)
            groups.append(side)
        elif signs:
            groups[-1] = side
    return t.Relation(groups[0], tuple(zip(signs, groups[1:], strict=True)))


def results(item: Item, node: t.Node) -> Iterator[t.Node]:
    """Yield the sides of a chain of equals signs that may stand for its answer, best first.

    The last side is the answer. A side before it counts where what follows says the same
    in another kind of notation (3/4 = 0.75) or repeats the calculation (22 = 7 + 15). A chain
    that says what an expression is worth, 2x = 14, has no answer in it unless it is known what
    its letters stand for, or the answer is an expression itself.

    >>> from itembank.items.topics.registry import find_item
    >>> from itembank.notation.parse import parse
    >>> item = find_item("fractions.add-like/core/2")
    >>> for text in ("22 = 7 + 15", "3/4 = 6/8", "2x = 14"):
    ...     print([shown_line(side) for side in results(item, parse(text))])
    ['7 + 15', '22']
    ['6/8']
    []
    """
    last = comes_to(node)
    if not isinstance(node, t.Relation) or {op for op, _ in node.rest} != {"="}:
        yield last
        return
    sides = [node.first, *(side for _, side in node.rest)]
    if isinstance(sides[0], t.Blank):
        sides = sides[1:]
    letter = last.first if isinstance(last, t.Relation) and isinstance(last.first, t.Sym) else None
    if letter is None and not _free(item, sides):
        return
    yield last
    kinds = {_kind(sides[-1])}
    for side in reversed(sides[:-1]):
        if _kind(side) in kinds or side == letter or not same(side, sides[-1]):
            return
        kinds.add(_kind(side))
        yield side if letter is None else t.Relation(letter, (("=", side),))


def _free(item: Item, sides: list[t.Node]) -> bool:
    """Tell whether the last of these equal sides may be an answer by itself."""
    if t.symbols(item.key) and not any(isinstance(p, t.Relation) for p in t.walk(item.key)):
        return True
    known = printed_values(item)
    return all(
        t.symbols(side) <= set(known)
        or (isinstance(side, t.Ratio) and all(isinstance(part, t.Sym) for part in side.parts))
        for side in sides
    )


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


def _kind(node: t.Node) -> str:
    inner = node.of if isinstance(node, t.Neg | t.Bracket) else node
    if isinstance(inner, t.Quantity | t.Money):
        return "amount"
    return type(inner).__name__


@dataclass(frozen=True, slots=True)
class Link:
    """Two neighbouring sides of a line, and whether they are what the sign says.

    `holds` is None where that cannot be told; `flat` where both sides are finished numbers,
    so that one answer is said to be another.
    """

    left: t.Node
    op: t.RelationOp
    right: t.Node
    holds: bool | None
    flat: bool = False

    @property
    def answers(self) -> bool:
        """Whether the link gives a value for a letter, as an answer does and no step."""
        return isinstance(self.left, t.Sym) and flat(self.right)

    @property
    def text(self) -> str:
        """The link on one line."""
        return shown_line(t.Relation(self.left, ((self.op, self.right),)))


def links(item: Item, node: t.Node) -> list[Link]:
    """Return the links of one line of working, each with whether it is true.

    >>> from itembank.items.topics.registry import find_item
    >>> from itembank.notation.parse import parse
    >>> item = find_item("fractions.add-like/core/2")
    >>> [(one.text, one.holds) for one in links(item, parse("3 + 4 = 8 = 16 ÷ 2"))]
    [('3 + 4 = 8', False), ('8 = 16 ÷ 2', True)]
    """
    if isinstance(node, t.Listing | t.Either):
        return [link for part in node.parts for link in links(item, part)]
    if not isinstance(node, t.Relation):
        return []
    found = []
    left = node.first
    for op, right in node.rest:
        finished = op == "=" and flat(left) and flat(right)
        found.append(Link(left, op, right, _holds(item, left, op, right), finished))
        left = right
    return found


def flat(node: t.Node) -> bool:
    """Tell whether a side is a number that may stand as an answer, finished or nearly so.

    >>> from itembank.notation.parse import parse
    >>> [flat(parse(text)) for text in ("7", "£4.50", "7/7", "3 + 4", "x")]
    [True, True, True, False, False]
    """
    inner = node
    while isinstance(inner, t.Neg | t.Bracket | t.Money | t.Quantity | t.Percent):
        inner = t.children(inner)[0]
    match inner:
        case t.Frac(t.Int(), t.Int()) | t.Mixed():
            return True  # an answer, if an unfinished one: 7/7
    return not t.symbols(node) and not isinstance(node, t.Ratio | t.Label) and not value(node)


def _holds(item: Item, left: t.Node, op: t.RelationOp, right: t.Node) -> bool | None:
    try:
        if t.symbols(left) or t.symbols(right):
            return _holds_for_letters(item, left, op, right)
        if isinstance(left, t.Ratio) or isinstance(right, t.Ratio):
            return _ratios_hold(left, right)
        return _numbers_hold(left, op, right)
    except (t.NotationError, RecursionError, OverflowError):
        return None


def _ratios_hold(left: t.Node, right: t.Node) -> bool | None:
    """Compare two ratios by size, in whatever units: 25p : £3.50 = 1 : 14."""
    if not (isinstance(left, t.Ratio) and isinstance(right, t.Ratio)):
        return None
    pairs = list(zip(left.parts, right.parts, strict=False))
    if len(left.parts) != len(right.parts) or not all(bounded(p) for pair in pairs for p in pair):
        return None
    for change in (lambda node: node, bare):
        a, b = ([exact(change(pair[i])) for pair in pairs] for i in (0, 1))
        if all(x * b[0] == other * a[0] for x, other in zip(a, b, strict=True)):
            return True
    # Some parts may have their unit left out.
    return None if _units_in(left) or _units_in(right) else False


def _holds_for_letters(item: Item, left: t.Node, op: t.RelationOp, right: t.Node) -> bool | None:
    if op != "=" or not (bounded(left) and bounded(right)):
        return None
    letters = t.symbols(left) | t.symbols(right)
    printed = printed_values(item)
    if letters <= set(printed):
        values = {name: number(worth) for name, worth in printed.items()}
        return algebra(left, values) == algebra(right, values)
    if marking_of(item.ask).for_letters(letters):
        return algebra(left) == algebra(right)
    match equation_of(item), item.key:
        case t.Relation(), t.Relation(t.Sym(name), (("=", root),)):
            if letters != {name} or t.symbols(root):
                return None
            known = {name: algebra(root)}
            return algebra(left, known) == algebra(right, known)
    return None


def equation_of(item: Item) -> t.Relation | None:
    """Return the one printed equation in one letter that a question asks to solve, or None.

    >>> from itembank.items.topics.registry import find_item
    >>> shown_line(equation_of(find_item("equations.two-step/support/91")))
    '2y + 11 = 17'
    """
    equations = marking_of(item.ask).equations(item.ask)
    if len(equations) != 1:
        return None
    (relation,) = equations
    shown = relation in item.prompt and {op for op, _ in relation.rest} == {"="}
    return relation if shown and len(t.symbols(relation)) == 1 else None


def _numbers_hold(left: t.Node, op: t.RelationOp, right: t.Node) -> bool | None:
    if not (bounded(left) and bounded(right)):
        return None
    if op == "=" and same(left, right):
        return True
    try:
        a, b = exact(left), exact(right)
    except t.NotationError:
        # Surds and the like: compared exactly above; whether one is rounded cannot be told.
        decimals = any(isinstance(part, t.Dec) for side in (left, right) for part in t.walk(side))
        return None if decimals or op != "=" else False
    if op == "=":
        if a == b or _without_units(left, right) or _about(left, right) or _about(right, left):
            return True
        # 10% = 8 leaves out what the percentage is of.
        percents = [any(isinstance(p, t.Percent) for p in t.walk(s)) for s in (left, right)]
        return None if percents[0] != percents[1] or _unit_left_out(left, right) else False
    if any(_units_in(side) for side in (left, right)) and _units_in(left) != _units_in(right):
        return None
    return {"<": a < b, ">": a > b, "≤": a <= b, "≥": a >= b, "≠": a != b}[op]


def _without_units(left: t.Node, right: t.Node) -> bool:
    """Tell whether two sides agree as bare numbers: units are often left out of working."""
    try:
        return exact(bare(left)) == exact(bare(right)) and not _clash(left, right)
    except t.NotationError:
        return False


def _clash(left: t.Node, right: t.Node) -> bool:
    """Tell whether both sides are single amounts in different units of one kind: 5 m = 5 cm."""
    first, other = unit_of(left), unit_of(right)
    if first is None or other is None:
        return False
    return first[0] == other[0] and first[1] != other[1] and flat(left) and flat(right)


def bare(node: t.Node) -> t.Node:
    """Return a tree without its units, currency signs and per cent signs.

    >>> from itembank.notation.parse import parse
    >>> shown_line(bare(parse("3 × £4 + 5%")))
    '3 × 4 + 5'
    """
    match node:
        case t.Quantity(of, _) | t.Money(of, _) | t.Percent(of):
            return bare(of)
        case t.Neg(of):
            return t.Neg(bare(of))
        case t.Bracket(of):
            return t.Bracket(bare(of))
        case t.Sum(first, rest):
            return t.Sum(bare(first), tuple((op, bare(term)) for op, term in rest))
        case t.Product(first, pairs):
            return t.Product(bare(first), tuple((op, bare(factor)) for op, factor in pairs))
        case t.Frac(top, bottom):
            return t.Frac(bare(top), bare(bottom))
    return node


def _units_in(node: t.Node) -> frozenset[str]:
    return frozenset(
        part.unit if isinstance(part, t.Quantity) else part.sign
        for part in t.walk(node)
        if isinstance(part, t.Quantity | t.Money)
    )


def _unit_left_out(left: t.Node, right: t.Node) -> bool:
    """Tell whether one side is bare and some unit would make the sides agree: 120 = £1.20."""
    for side, other in ((left, right), (right, left)):
        if _units_in(side) or not _units_in(other):
            continue
        number, amount = exact(side), exact(other)
        sizes = [unit.size for unit in (*UNITS.values(), *CURRENCY.values())]
        if any(number * size == amount for size in sizes):
            return True
    return False


def _about(full: t.Node, short: t.Node) -> bool:
    """Tell whether `short` is a decimal that `full` rounds to: 1/3 = 0.33."""
    short = bare(short)
    inner = short.of if isinstance(short, t.Neg) else short
    if not isinstance(inner, t.Dec) or inner.recurring or isinstance(bare(full), t.Dec):
        return False
    half = Fraction(1, 2 * 10 ** len(inner.places))
    return abs(exact(bare(full)) - exact(short)) <= half
