"""What is asked about a line with a span: its inequality, its integers, or the one at its end."""

from __future__ import annotations

from generators.equations._inequality_lines import as_ones, told_by_line, whole_of, worth_of_step
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
from itembank.figures.kinds.number.number_line import NumberLine
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Step, prompt
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t

_FLIP: dict[t.RelationOp, t.RelationOp] = {"<": "≤", "≤": "<", ">": "≥", "≥": ">"}
_TURN: dict[t.RelationOp, t.RelationOp] = {"<": ">", "≤": "≥", ">": "<", "≥": "≤"}


def _with(relation: t.Relation, change: dict[t.RelationOp, t.RelationOp]) -> t.Relation:
    return t.Relation(relation.first, tuple((change[op], side) for op, side in relation.rest))


def write_inequality(line: NumberLine, x: t.Sym, twin: tuple[object, ...]) -> Draft:
    """Return the question that asks for the inequality."""
    text = prompt("The number line shows the values of {x}. Write the inequality for {x}.", x=x)
    key = read(line, Reading("inequality", (x.name,)))
    assert isinstance(key, t.Relation)
    span = line.span
    assert span is not None
    wrong: list[Wrong] = [(CIRCLES, _with(key, _FLIP))]
    if len(key.rest) == 1:
        wrong.append((DIRECTION, _with(key, _TURN)))
    elif worth_of_step(line) != 1:
        wrong.append((MARKS_AS_ONES, read(as_ones(line), Reading("inequality", (x.name,)))))
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
        told_by_line(line, x, key),
        slips(*wrong, key=key),
        twin,
        figure=line,
    )


def _ends_wrong(line: NumberLine, numbers: list[int]) -> list[Wrong]:
    """Return the lists with an open end counted and a filled one left out, and without 0."""
    from itembank.notation.value import exact

    span = line.span
    assert span is not None
    assert span.low is not None
    assert span.high is not None
    start, step = exact(line.first), worth_of_step(line)
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


def list_integers(line: NumberLine, x: t.Sym, twin: tuple[object, ...]) -> Draft:
    """Return the question that asks for the integers under the thick line."""
    text = prompt(
        "The number line shows the values of {x}. List the integers that {x} can be.", x=x
    )
    key = read(line, Reading("integers"))
    assert isinstance(key, t.Listing)
    least = read(line, Reading("least integer"))
    greatest = read(line, Reading("greatest integer"))
    numbers = list(range(whole_of(least), whole_of(greatest) + 1))
    *told, _ = told_by_line(line, x, key)
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


def integer_at_end(line: NumberLine, x: t.Sym, twin: tuple[object, ...]) -> Draft:
    """Return the question that asks for the smallest or the largest integer."""
    span = line.span
    assert span is not None
    up = span.low is not None
    size = "smallest" if up else "largest"
    text = prompt(
        f"The number line shows the values of {{x}}. What is the {size} integer that {{x}} can be?",
        x=x,
    )
    key = read(line, Reading("least integer" if up else "greatest integer"))
    value, sign = whole_of(key), 1 if up else -1
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
