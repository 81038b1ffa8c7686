"""Function machines: what comes out, what went in, and what a machine does.

Key stage 3, algebra and number (England, 2013): "recognise and use relationships between operations
including inverse operations", and "model situations or procedures by translating them into
algebraic expressions" (from memory).
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import Any

from generators.algebra._machine_mistakes import (
    ADDED,
    FIRST_BOX,
    FIRST_TERM,
    FORWARDS,
    LEFT_OUT,
    MADE_NOTHING,
    NOTHING_CHANGES,
    OTHER_ORDER,
    SAME_ORDER,
    SUBTRACTED,
)
from generators.algebra._writing import asking, letter, shown
from itembank.figures.kinds.function_machine import Does, FunctionMachine, Sign
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.forms.form_rules import number_node
from itembank.items.item import Draft, Find, Rewrite, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t

_DOES: dict[str, Sign] = {"+": "+", "-": "−", "*": "×", "/": "÷"}
_SAYS = {"+": "Add {}", "-": "Subtract {}", "*": "Multiply by {}", "/": "Divide by {}"}
_UNDOES = {"+": "-", "-": "+", "*": "/", "/": "*"}
_WORDS = {"+": "adds {}", "-": "subtracts {}", "*": "multiplies by {}", "/": "divides by {}"}

Boxes = Sequence[tuple[str, int]]


def _through(value: Fraction | int, boxes: Boxes) -> Fraction:
    found = Fraction(value)
    for sign, n in boxes:
        if sign in "+-":
            found += n if sign == "+" else -n
        else:
            found *= n if sign == "*" else Fraction(1, n)
    return found


def _back(value: Fraction | int, boxes: Boxes) -> Fraction:
    return _through(value, [(_UNDOES[sign], n) for sign, n in reversed(boxes)])


def _fits(start: int, boxes: Boxes, low: int = 0, high: int = 150) -> bool:
    """Keep machines in which every number on the way is whole and of a fair size."""
    value = Fraction(start)
    for box in boxes:
        value = _through(value, [box])
        if value.denominator > 1 or not low <= value <= high:
            return False
    return True


def _support(kind: int, signs: str, a: int, b: int, start: int) -> bool:
    boxes = list(zip(signs, (a, b), strict=True))
    if not _fits(start, boxes, 0, 100) or start in (a, b) or a == b:
        return False
    if kind == 0:
        other = _through(start, boxes[::-1])
        return len({_through(start, boxes), _through(start, boxes[:1]), other}) == 3
    return False


def _core(kind: int, signs: str, a: int, b: int, start: int) -> bool:
    boxes = list(zip(signs, (a, b), strict=True))
    if a == b or abs(start) in (a, b):
        return False
    if kind == 0:  # what went in
        if start < 2 or not _fits(start, boxes, 1, 120):
            return False
        out = _through(start, boxes)
        forwards, same = _through(out, boxes), _through(out, [(_UNDOES[s], n) for s, n in boxes])
        return len({Fraction(start), forwards, same}) == 3 and same.denominator == 1
    if start >= 0 or not _fits(start, boxes, -90, 90) or "/" in signs:
        return False
    other = _through(start, boxes[::-1])
    return len({_through(start, boxes), _through(start, boxes[:1]), other}) == 3


def _challenge(kind: int, signs: str, a: int, b: int, start: int) -> bool:
    boxes = list(zip(signs, (a, b), strict=True))
    if a == b or start in (a, b):
        return False
    if kind == 0:  # three boxes, backwards
        if start < 2 or signs in ("+-", "-+") or not _fits(start, [*boxes, ("+", 3)], 1, 120):
            return False
        three = [*boxes, _third(a, b)]
        out = _through(start, three)
        same = _through(out, [(_UNDOES[s], n) for s, n in three])
        return (
            _fits(start, three, 1, 120) and len({Fraction(start), _through(out, three), same}) == 3
        )
    if kind == 1:  # which number the second box adds, subtracts or multiplies by
        if signs not in ("*+", "*-", "+*") or not _fits(start, boxes, 1, 120):
            return False
        out, middle = _through(start, boxes), _through(start, boxes[:1])
        last = out - middle if signs == "+*" else out + middle
        return len({Fraction(b), abs(out - start), last}) == 3 and start != out
    if kind == 2:  # comes out as it went in
        return signs == "*-" and a < 8 and b % (a - 1) == 0 and start == 2 and b != a
    return signs in ("*+", "*-", "+*", "-*") and start == 2


def _third(a: int, b: int) -> tuple[str, int]:
    """Return the third box of a machine."""
    return ("+", (a + b) % 7 + 2) if (a + b) % 2 else ("-", (a + b) % 5 + 1)


_TWO = ("*+", "*-", "+*", "-*", "/+", "/-", "+/")


@register
class FunctionMachines(Topic):
    """Out of two boxes; back through two; three boxes, a box to find and the rule in letters."""

    id = "algebra.function-machines"
    title = "Function machines"
    statements = ("number.inverses", "algebra.modelling")
    misconceptions = (
        *(OTHER_ORDER, FIRST_BOX, FORWARDS, SAME_ORDER, LEFT_OUT, NOTHING_CHANGES, FIRST_TERM),
        *(ADDED, SUBTRACTED, MADE_NOTHING),
    )
    spaces = {
        Tier.SUPPORT: Space(
            _support,
            kind=(0,),
            signs=_TWO,
            a=range(2, 10),
            b=range(2, 11),
            start=range(3, 13),
        ),
        Tier.CORE: Space(
            _core,
            kind=(0, 1),
            signs=_TWO,
            a=range(2, 9),
            b=range(2, 12),
            start=(-8, -6, -5, -4, -3, 4, 5, 6, 7, 8, 9, 11, 12),
        ),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=range(4),
            signs=_TWO,
            a=range(2, 10),
            b=range(2, 13),
            start=(2, 4, 5, 6, 7, 9, 10, 12),
        ),
    }
    spaces = kinds.with_statements(spaces)

    def make(self, tier: Tier, kind: int, signs: str, a: int, b: int, start: int) -> Draft:
        """Return the question for one point of the tier's space."""
        twin = (str(tier), kind, signs, a, b, start)
        boxes = list(zip(signs, (a, b), strict=True))
        if tier is Tier.CHALLENGE and kind:
            build = {1: _box, 2: _unchanged, 3: _rule}[kind]
            return build(boxes, start, twin)
        if tier is Tier.CHALLENGE:
            boxes = [*boxes, _third(a, b)]
        backwards = tier is not Tier.SUPPORT and kind == 0
        return _went_in(boxes, start, twin) if backwards else _comes_out(boxes, start, twin)


def _figure(boxes: Boxes, **end: t.Node) -> FunctionMachine:
    return FunctionMachine(tuple(Does(_DOES[sign], t.Int(n)) for sign, n in boxes), **end)


def _done(value: Fraction, box: tuple[str, int]) -> t.Node:
    """Return what a box does to a number, as a sum that is not worked out."""
    sign, n = box
    number = number_node(value)
    if sign in "+-":
        return t.add(number, t.Int(n)) if sign == "+" else t.sub(number, t.Int(n))
    return t.times(number, t.Int(n)) if sign == "*" else t.divide(number, t.Int(n))


def _lines(value: Fraction, boxes: Boxes) -> tuple[Step, ...]:
    steps = []
    for sign, n in boxes:
        after = _through(value, [(sign, n)])
        line = t.equals(_done(value, (sign, n)), number_node(after))
        steps.append(Step(_SAYS[sign].format(n) + ".", line))
        value = after
    return tuple(steps)


def _comes_out(boxes: Boxes, start: int, twin: tuple[object, ...]) -> Draft:
    figure = _figure(boxes, input=t.num(start))
    text = ("What is the output of this function machine?",)
    out = _through(start, boxes)
    return Draft(
        text,
        of_figure(figure, text),
        number_node(out),
        "integer",
        _lines(Fraction(start), boxes),
        slips(
            (OTHER_ORDER, _through(start, boxes[::-1])),
            (FIRST_BOX, _through(start, boxes[:1])),
            write=number_node,
            key=number_node(out),
        ),
        twin,
        figure=figure,
    )


def _went_in(boxes: Boxes, start: int, twin: tuple[object, ...]) -> Draft:
    out = _through(start, boxes)
    figure = _figure(boxes, output=number_node(out))
    text = ("What is the input of this function machine?",)
    undone = [(_UNDOES[sign], n) for sign, n in reversed(boxes)]
    steps = _lines(out, undone)
    first = Step("Start at the output and go back. " + steps[0].say, steps[0].maths)
    return Draft(
        text,
        of_figure(figure, text),
        t.num(start),
        "integer",
        (first, *steps[1:]),
        slips(
            (FORWARDS, _through(out, boxes)),
            (SAME_ORDER, _through(out, undone[::-1])),
            write=number_node,
            key=t.num(start),
        ),
        twin,
        figure=figure,
    )


def _box(boxes: Boxes, start: int, twin: tuple[object, ...]) -> Draft:
    """Return the question what number the second box has."""
    (first, a), (second, b) = boxes
    out = _through(start, boxes)
    middle = _through(start, boxes[:1])
    x = t.Sym("x")
    made, end = _done(Fraction(start), (first, a)), number_node(out)
    inside = t.Bracket(made) if second == "*" else made
    left: t.Node = t.times(inside, x) if second == "*" else _joined(made, second, x)
    verb = {"+": "adds a number", "-": "subtracts a number", "*": "multiplies by a number"}[second]
    asked = {"+": "does it add", "-": "does it subtract", "*": "does it multiply by"}[second]
    half = number_node(middle)
    line = {
        "+": t.sub(end, half),
        "-": t.sub(half, end),
        "*": t.divide(end, half),
    }[second]
    between = {"+": "How much is added", "-": "How much is subtracted", "*": "Divide the output"}
    wrong: list[Wrong] = [
        (LEFT_OUT, abs(out - start)),
        (ADDED, out + middle) if second != "*" else (SUBTRACTED, out - middle),
    ]
    say = {
        "*": "Divide the output by what comes out of the first box.",
    }.get(second, f"{between[second]} to come to the output?")
    return Draft(
        prompt(
            f"A function machine first {_WORDS[first].format('{a}')} and then {verb}. When the "
            f"input is {{s}}, the output is {{o}}. What number {asked}?",
            a=t.Int(a),
            s=t.Int(start),
            o=end,
        ),
        Find(x, (t.equals(left, end),)),
        t.Int(b),
        "integer",
        (
            Step("Find what comes out of the first box.", t.equals(made, half)),
            Step(say, t.equals(line, t.Int(b))),
        ),
        slips(*wrong, key=t.Int(b)),
        twin,
    )


def _joined(first: t.Node, sign: str, second: t.Node) -> t.Node:
    return t.add(first, second) if sign == "+" else t.sub(first, second)


def _unchanged(boxes: Boxes, _: int, twin: tuple[object, ...]) -> Draft:
    a, b = (n for _, n in boxes)
    x = t.Sym(letter(a, b))
    value = b // (a - 1)
    lots = t.juxt(t.Int(a), x)
    relation = t.equals(t.sub(lots, t.Int(b)), x)
    rest = t.juxt(t.Int(a - 1), x)
    return Draft(
        prompt(
            "A function machine first multiplies by {a} and then subtracts {b}. For one input the "
            "output is the same number as the input. What is this number?",
            a=t.Int(a),
            b=t.Int(b),
        ),
        Find(x, (relation,)),
        t.Int(value),
        "integer",
        (
            Step(f"Let the input be {x.name}. The output is equal to it.", relation),
            Step(
                f"Subtract {x.name} from both sides and add {b} to both sides.",
                t.equals(rest, t.Int(b)),
            ),
            *(
                (Step(f"Divide both sides by {a - 1}.", t.equals(x, t.Int(value))),)
                if a > 2
                else ()
            ),
        ),
        slips(
            (NOTHING_CHANGES, b),
            (MADE_NOTHING, Fraction(b, a)),
            key=t.Int(value),
        ),
        twin,
    )


def _rule(boxes: Boxes, _: int, twin: tuple[object, ...]) -> Draft:
    """Return the question for the output in letters."""
    (first, a), (second, b) = boxes
    x = t.Sym("n")
    size: Any = t.Int
    if first == "*":
        lots = t.juxt(size(a), x)
        key = _joined(lots, second, size(b))
        asked: t.Node = _joined(t.times(x, size(a)), second, size(b))
        steps: tuple[Step, ...] = (
            Step("Write what comes out of the first box.", t.equals(t.times(x, size(a)), lots)),
            Step(_SAYS[second].format(b) + ".", key),
        )
        wrong: list[Wrong] = [
            (OTHER_ORDER, _joined(lots, second, size(a * b))),
            (FIRST_BOX, lots),
        ]
    else:
        inside = t.Bracket(_joined(x, first, size(a)))
        asked = t.times(inside, size(b))
        lots = t.juxt(size(b), x)
        key = _joined(lots, first, size(a * b))
        product = t.Juxt((size(b), inside))
        steps = (
            Step(f"Put what comes out of the first box in a bracket. Multiply by {b}.", product),
            Step("Expand the bracket.", t.equals(product, key)),
        )
        wrong = [
            (
                asking(FIRST_TERM, f"{shown(inside.of)} is multiplied by {b}. What is {b} × {a}?"),
                _joined(lots, first, size(a)),
            ),
            (FIRST_BOX, inside.of),
        ]
    return Draft(
        prompt(
            f"A function machine first {_WORDS[first].format('{a}')} and then "
            f"{_WORDS[second].format('{b}')}. The input is {{n}}. Write an expression for the "
            "output without brackets.",
            a=size(a),
            b=size(b),
            n=x,
        ),
        Rewrite(asked, "simplify"),
        key,
        "expanded",
        steps,
        slips(*wrong, key=key),
        twin,
    )
