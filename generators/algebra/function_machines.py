"""Function machines: what comes out, what went in, and what a machine does.

Key stage 3, algebra and number (England, 2013): "recognise and use relationships between operations
including inverse operations", and "model situations or procedures by translating them into
algebraic expressions" (from memory).
"""

from __future__ import annotations

from fractions import Fraction

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
from generators.algebra._machine_numbers import (
    UNDOES,
    Boxes,
    challenge_fits,
    core_fits,
    support_fits,
    third_box,
    through,
)
from generators.algebra._machines_in_brief import BRIEF
from generators.algebra._machines_with_letters import SAYS, WORDS, joined_by, rule_of, unchanged
from itembank.figures.kinds.number.function_machine import Does, FunctionMachine, Sign
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.forms.form_rules import number_node
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.kinds.brief import with_brief
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t

_DOES: dict[str, Sign] = {"+": "+", "-": "−", "*": "×", "/": "÷"}
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
            support_fits,
            kind=(0,),
            signs=_TWO,
            a=range(2, 10),
            b=range(2, 11),
            start=range(3, 13),
        ),
        Tier.CORE: Space(
            core_fits,
            kind=(0, 1),
            signs=_TWO,
            a=range(2, 9),
            b=range(2, 12),
            start=(-8, -6, -5, -4, -3, 4, 5, 6, 7, 8, 9, 11, 12),
        ),
        Tier.CHALLENGE: Space(
            challenge_fits,
            kind=range(4),
            signs=_TWO,
            a=range(2, 10),
            b=range(2, 13),
            start=(2, 4, 5, 6, 7, 9, 10, 12),
        ),
    }
    spaces = kinds.with_statements(spaces)
    spaces = with_brief(spaces, BRIEF)

    def make(self, tier: Tier, kind: int, signs: str, a: int, b: int, start: int) -> Draft:
        """Return the question for one point of the tier's space."""
        twin = (str(tier), kind, signs, a, b, start)
        boxes = list(zip(signs, (a, b), strict=True))
        if tier is Tier.CHALLENGE and kind:
            build = {1: _box, 2: unchanged, 3: rule_of}[kind]
            return build(boxes, start, twin)
        if tier is Tier.CHALLENGE:
            boxes = [*boxes, third_box(a, b)]
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
        after = through(value, [(sign, n)])
        line = t.equals(_done(value, (sign, n)), number_node(after))
        steps.append(Step(SAYS[sign].format(n) + ".", line))
        value = after
    return tuple(steps)


def _comes_out(boxes: Boxes, start: int, twin: tuple[object, ...]) -> Draft:
    figure = _figure(boxes, input=t.num(start))
    text = ("What is the output of this function machine?",)
    out = through(start, boxes)
    return Draft(
        text,
        of_figure(figure, text),
        number_node(out),
        "integer",
        _lines(Fraction(start), boxes),
        slips(
            (OTHER_ORDER, through(start, boxes[::-1])),
            (FIRST_BOX, through(start, boxes[:1])),
            write=number_node,
            key=number_node(out),
        ),
        twin,
        figure=figure,
    )


def _went_in(boxes: Boxes, start: int, twin: tuple[object, ...]) -> Draft:
    out = through(start, boxes)
    figure = _figure(boxes, output=number_node(out))
    text = ("What is the input of this function machine?",)
    undone = [(UNDOES[sign], n) for sign, n in reversed(boxes)]
    steps = _lines(out, undone)
    first = Step("Start at the output and go back. " + steps[0].say, steps[0].maths)
    return Draft(
        text,
        of_figure(figure, text),
        t.num(start),
        "integer",
        (first, *steps[1:]),
        slips(
            (FORWARDS, through(out, boxes)),
            (SAME_ORDER, through(out, undone[::-1])),
            write=number_node,
            key=t.num(start),
        ),
        twin,
        figure=figure,
    )


def _box(boxes: Boxes, start: int, twin: tuple[object, ...]) -> Draft:
    """Return the question what number the second box has."""
    (first, a), (second, b) = boxes
    out = through(start, boxes)
    middle = through(start, boxes[:1])
    x = t.Sym("x")
    made, end = _done(Fraction(start), (first, a)), number_node(out)
    inside = t.Bracket(made) if second == "*" else made
    left: t.Node = t.times(inside, x) if second == "*" else joined_by(made, second, x)
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
            f"A function machine first {WORDS[first].format('{a}')} and then {verb}. When the "
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
