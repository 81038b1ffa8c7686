"""Inequalities shown on a number line: written with signs, and the integers that fit.

Key stage 3 (England, 2013): "use the symbols =, ≠, <, >, ≤, ≥" and "understand and use the concepts
and vocabulary of … inequalities" (from memory).
"""

from __future__ import annotations

from fractions import Fraction

from generators._drawn import to_draw
from generators._turns import by_turns
from generators.equations._line_mistakes import (
    CIRCLES,
    DIRECTION,
    FILLED_LEFT_OUT,
    MARKS_AS_ONES,
    NEXT_INSIDE,
    NOUGHT_LEFT_OUT,
    OPEN_COUNTED,
    WRONG_SIDE,
)
from itembank.figures.figure import Reading, read
from itembank.figures.kinds.line_span import Span
from itembank.figures.kinds.number_line import NumberLine
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.forms.form_rules import number_node
from itembank.items.item import Draft, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t

_LETTERS = "xnyw"
_STEPS = 10
_SCALES = (2, 5)
"""What the steps of a line of whole numbers may be worth; halves are told by a kind."""


def _support(kind: int, first: int, at: int, way: int, counts: bool) -> bool:
    """Keep one end, up (`way` 1) or down: the inequality, or the integer nearest to the end."""
    return kind == 0 or 2 < at < 8


def _core(kind: int, first: int, low: int, wide: int, ends: int) -> bool:
    """Keep two ends: the inequality, or the integers."""
    inside = wide - 1 + (ends & 1) + (ends >> 1)
    return low + wide < 10 and (kind == 0 or 2 < inside < 7)


def _challenge(kind: int, first: int, low: int, wide: int, ends: int) -> bool:
    """Keep steps that are no ones: an inequality, or integers between halves."""
    if low + wide > 9:
        return False
    if kind == 0:  # steps of 2 or 5, one end or two between the numbers that are printed
        return first in (0, -10, -20) and (low % 2 == 1 or (low + wide) % 2 == 1)
    if first not in (-4, -3, -2, -1):
        return False
    # Halves: an end at least lies between two integers.
    return (low % 2 == 1 or (low + wide) % 2 == 1) and wide > 3


def _one_end(first: int, at: int, way: int, counts: bool) -> bool:
    return 0 < at < _STEPS


def _two_ends(first: int, low: int, wide: int, ends: int) -> bool:
    return low + wide < _STEPS


def _to_show(topic: Topic, tier: Tier, first: int, at: int, *more: int) -> Draft:
    """Return an empty line on which an inequality with one end, or with two, is to be shown."""
    if len(more) == 2 and tier is Tier.SUPPORT:
        way, counts = more
        span = (
            Span(low=at, low_counts=bool(counts))
            if way > 0
            else Span(high=at, high_counts=bool(counts))
        )
    else:
        wide, ends = more
        span = Span(at, at + wide, bool(ends & 1), bool(ends >> 1))
    x = t.Sym(by_turns(_LETTERS, first + at + sum(more)))
    given, shown = _line(first, 1, None), _line(first, 1, span)
    wanted = read(shown, Reading("inequality", (x.name,)))
    text = prompt("Show the inequality {e} on the number line.", e=wanted)
    last = (
        "Draw a thick line between the circles."
        if span.low is not None and span.high is not None
        else f"Draw a thick arrow to the {'right' if span.high is None else 'left'}."
    )
    ends_said = tuple(
        Step(
            f"Draw {'a filled' if counts else 'an open'} circle at "
            f"{_number_said(first + place)}: it {'counts' if counts else 'does not count'}."
        )
        for place, counts in ((span.low, span.low_counts), (span.high, span.high_counts))
        if place is not None
    )
    return to_draw(
        text, given, shown, (*ends_said, Step(last)), ("to show", str(tier), first, at, *more)
    )


@register
class InequalitiesOnALine(Topic):
    """One end; two ends, and the integers between; scales that go up by another number than 1."""

    id = "equations.inequalities-on-a-line"
    title = "Inequalities on a number line"
    statements = ("number.ordering",)
    misconceptions = (
        *(CIRCLES, DIRECTION, OPEN_COUNTED, FILLED_LEFT_OUT, NOUGHT_LEFT_OUT, NEXT_INSIDE),
        *(WRONG_SIDE, MARKS_AS_ONES),
    )
    spaces = {
        Tier.SUPPORT: Space(
            _support,
            kind=range(2),
            first=(-6, -4, -2, 0),
            at=range(1, 10),
            way=(-1, 1),
            counts=(False, True),
        ).also(
            _to_show,
            _one_end,
            first=(-6, -4, -2, 0),
            at=range(1, 10),
            way=(-1, 1),
            counts=(False, True),
        ),
        Tier.CORE: Space(
            _core,
            kind=range(2),
            first=(-6, -4, -2, 0),
            low=range(1, 8),
            wide=range(2, 8),
            ends=range(4),
        ).also(
            _to_show,
            _two_ends,
            first=(-6, -4, -2, 0),
            low=range(1, 7),
            wide=range(2, 7),
            ends=range(4),
        ),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=range(2),
            first=(-20, -10, 0, -4, -3, -2, -1),
            low=range(1, 8),
            wide=range(2, 9),
            ends=range(4),
        ),
    }
    spaces = kinds.with_statements(spaces)

    def make(self, tier: Tier, kind: int, first: int, at: int, *more: int) -> Draft:
        """Return the question for one point of the tier's space."""
        twin = (str(tier), kind, first, at, *more)
        x = t.Sym(by_turns(_LETTERS, first + at + sum(more)))
        if tier is Tier.SUPPORT:
            way, counts = more
            span = (
                Span(low=at, low_counts=bool(counts))
                if way > 0
                else Span(high=at, high_counts=bool(counts))
            )
            line = _line(first, 1, span)
            return _extreme(line, x, twin) if kind else _write(line, x, twin)
        wide, ends = more
        span = Span(at, at + wide, bool(ends & 1), bool(ends >> 1))
        if tier is Tier.CORE:
            line = _line(first, 1, span)
            return _integers(line, x, twin) if kind else _write(line, x, twin)
        if kind == 0:
            return _write(_line(first, by_turns(_SCALES, at + wide + ends), span), x, twin)
        return _integers(_halves(first, span), x, twin)


def _number_said(number: int) -> str:
    return str(number).replace("-", "−")


def _line(first: int, step: int, span: Span | None) -> NumberLine:
    """Return a line of ten steps; every second mark has its number."""
    inner = tuple(range(2, _STEPS, 2))
    return NumberLine(t.num(first), t.num(first + _STEPS * step), _STEPS, inner, span=span)


def _halves(first: int, span: Span) -> NumberLine:
    """Return a line of ten half steps; the integers have their numbers."""
    return _line_of(first, first + _STEPS // 2, span)


def _line_of(first: int, last: int, span: Span) -> NumberLine:
    return NumberLine(t.num(first), t.num(last), _STEPS, tuple(range(2, _STEPS, 2)), span=span)


_FLIP: dict[t.RelationOp, t.RelationOp] = {"<": "≤", "≤": "<", ">": "≥", "≥": ">"}
_TURN: dict[t.RelationOp, t.RelationOp] = {"<": ">", "≤": "≥", ">": "<", "≥": "≤"}


def _with(relation: t.Relation, change: dict[t.RelationOp, t.RelationOp]) -> t.Relation:
    return t.Relation(relation.first, tuple((change[op], side) for op, side in relation.rest))


def _write(line: NumberLine, x: t.Sym, twin: tuple[object, ...]) -> Draft:
    text = prompt("The number line shows the values of {x}. Write the inequality for {x}.", x=x)
    key = read(line, Reading("inequality", (x.name,)))
    assert isinstance(key, t.Relation)
    span = line.span
    assert span is not None
    wrong: list[Wrong] = [(CIRCLES, _with(key, _FLIP))]
    if len(key.rest) == 1:
        wrong.append((DIRECTION, _with(key, _TURN)))
    elif _worth_of_step(line) != 1:
        wrong.append((MARKS_AS_ONES, read(_as_ones(line), Reading("inequality", (x.name,)))))
    else:
        # The two signs are exchanged, or one circle alone is misread.
        (first_op, middle), (second_op, end) = key.rest
        if first_op != second_op:
            changed = t.Relation(key.first, ((second_op, middle), (first_op, end)))
            wrong[0] = (CIRCLES, changed)
            wrong.append((OPEN_COUNTED, _with(key, dict.fromkeys(_FLIP, "≤"))))
        else:
            which = OPEN_COUNTED if first_op == "<" else FILLED_LEFT_OUT
            wrong.append(
                (which, t.Relation(key.first, ((_FLIP[first_op], middle), (second_op, end))))
            )
    return Draft(
        text,
        of_figure(line, text),
        key,
        "inequality",
        _told(line, x, key),
        slips(*wrong, key=key),
        twin,
        figure=line,
    )


def _worth_of_step(line: NumberLine) -> Fraction:
    from itembank.notation.value import exact

    return exact(read(line, Reading("step")))


def _as_ones(line: NumberLine) -> NumberLine:
    """Return the line as it is read by who counts every mark as 1."""
    from itembank.notation.value import exact

    first = int(exact(line.first))
    return NumberLine(line.first, t.num(first + _STEPS), _STEPS, span=line.span)


def _told(line: NumberLine, x: t.Sym, key: t.Node) -> tuple[Step, ...]:
    span = line.span
    assert span is not None
    steps = []
    if (step := _worth_of_step(line)) != 1:
        wide = t.divide(number_node(step * _STEPS), t.Int(_STEPS))
        steps.append(Step("Find what one step is worth.", t.equals(wide, number_node(step))))
    for at, counts in ((span.low, span.low_counts), (span.high, span.high_counts)):
        if at is not None:
            circle = "filled" if counts else "open"
            verb = "counts" if counts else "does not count"
            steps.append(Step(f"The {circle} circle {verb} its own number."))
    if span.low is None:
        say = "The arrow goes to the left, so the values are less."
    elif span.high is None:
        say = "The arrow goes to the right, so the values are greater."
    else:
        say = f"{x.name} lies between the two numbers."
    return (*dict.fromkeys(steps), Step(say, key))


def _ends_wrong(line: NumberLine, numbers: list[int]) -> list[Wrong]:
    """Return the lists with an open end counted and a filled one left out, and without 0."""
    from itembank.notation.value import exact

    span = line.span
    assert span is not None
    assert span.low is not None
    assert span.high is not None
    start, step = exact(line.first), _worth_of_step(line)
    more, fewer = list(numbers), list(numbers)
    for at, counts, place in (
        (span.low, span.low_counts, 0),
        (span.high, span.high_counts, len(numbers)),
    ):
        value = start + step * at
        if value.denominator > 1:
            continue
        if counts:
            fewer = [n for n in fewer if n != value]
        else:
            more.insert(place if place == 0 else len(more), int(value))
    wrong: list[Wrong] = []
    if more != numbers:
        wrong.append((OPEN_COUNTED, _listed(more)))
    if fewer != numbers and len(fewer) > 1:
        wrong.append((FILLED_LEFT_OUT, _listed(fewer)))
    if 0 in numbers and len(numbers) > 2:
        wrong.append((NOUGHT_LEFT_OUT, _listed([n for n in numbers if n])))
    # Beyond the ends, where these mistakes leave room for another.
    for outside in ([numbers[0] - 1, *numbers, numbers[-1] + 1], [*numbers, numbers[-1] + 1]):
        list_there, others = _listed(outside), {node for _, node in wrong}
        if len(others) < 2 and list_there not in others:
            wrong.append((WRONG_SIDE, list_there))
    return wrong


def _listed(numbers: list[int]) -> t.Listing:
    return t.Listing(tuple(map(t.num, numbers)))


def _integers(line: NumberLine, x: t.Sym, twin: tuple[object, ...]) -> Draft:
    text = prompt(
        "The number line shows the values of {x}. List the integers that {x} can be.", x=x
    )
    key = read(line, Reading("integers"))
    assert isinstance(key, t.Listing)
    least = read(line, Reading("least integer"))
    greatest = read(line, Reading("greatest integer"))
    numbers = list(range(_int(least), _int(greatest) + 1))
    *told, _ = _told(line, x, key)
    return Draft(
        text,
        of_figure(line, text),
        key,
        "list",
        (
            *told,
            Step("List the whole numbers under the thick line, negative ones and 0 too.", key),
        ),
        slips(*_ends_wrong(line, numbers), key=key),
        twin,
        figure=line,
    )


def _int(node: t.Node) -> int:
    from itembank.notation.value import exact

    return int(exact(node))


def _extreme(line: NumberLine, x: t.Sym, twin: tuple[object, ...]) -> Draft:
    span = line.span
    assert span is not None
    up = span.low is not None
    size = "smallest" if up else "largest"
    text = prompt(
        f"The number line shows the values of {{x}}. What is the {size} integer that {{x}} can be?",
        x=x,
    )
    key = read(line, Reading("least integer" if up else "greatest integer"))
    value, sign = _int(key), 1 if up else -1
    counts = span.low_counts if up else span.high_counts
    wrong: list[Wrong] = [(NEXT_INSIDE, value + sign)]
    if counts:
        wrong[0] = (FILLED_LEFT_OUT, value + sign)
        wrong.append((WRONG_SIDE, value - sign))
    else:
        wrong.append((OPEN_COUNTED, value - sign))
    circle = "filled circle counts" if counts else "open circle does not count"
    return Draft(
        text,
        of_figure(line, text),
        key,
        "integer",
        (Step(f"The {circle} its own number. The {size} integer under the arrow is this.", key),),
        slips(*wrong, key=key),
        twin,
        figure=line,
    )
