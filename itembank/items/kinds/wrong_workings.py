"""Workings that go wrong in one line, made of a question's own working and of its mistakes.

The working of most questions is a row of calculations, each using what the one before came to.
A mistake changes the last of them in a way that gives its wrong answer; or a sum or a difference
is worked out wrongly in columns, and what follows uses it.

Which working a question shows is drawn by lot among those that are made here. So whoever adds a
way of going wrong gives it only to topics whose questions are not frozen yet.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction

from itembank.items.asks.faulty_line import MOST_LINES
from itembank.items.item import Draft, Misconception
from itembank.items.kinds.draft_worth import worth
from itembank.items.kinds.line_edits import (
    Edit,
    cut_short,
    smaller_from_larger,
    uncarried,
)
from itembank.items.kinds.mistakes import CARRY_LOST, POINT_KEPT, SMALLER_FROM_LARGER
from itembank.items.kinds.wrong_solutions import GoneWrong, WrongSolution
from itembank.notation import tree as t
from itembank.notation.line import line as written
from itembank.notation.units import CURRENCY, MADE_OF, UNITS
from itembank.notation.value import exact_or_none

Calculation = tuple[t.Node, t.Node]
"""What is worked out in a line, and what it comes to."""


_LONGEST_SUM = 5
"""In a longer one several tens are carried, and who loses them is far off."""


_LONGEST = 4
"""Terms of a line that may have more than one of them written out."""


def working_goes_wrong(
    edits: Mapping[Misconception, Sequence[Edit]], columns: bool = True
) -> GoneWrong:
    """Return what makes wrong workings of a question.

    Parameters
    ----------
    edits
        What each mistake makes of the last calculation. Of all lines that an edit gives, the one
        counts that comes to what the question has as the wrong answer of the mistake.
    columns
        Whether sums and differences of whole numbers may go wrong in columns too.
    """

    def gone_wrong(asked: Draft) -> Sequence[WrongSolution]:
        row = calculations(asked)
        if not row:
            return ()
        made = [*_last_line(asked, row, edits)]
        if columns:
            made += _in_columns(asked, row)
        return tuple(working for working in made if 2 <= len(working.lines) <= MOST_LINES)

    return gone_wrong


def value_of(answer: t.Node) -> t.Node:
    """Return the value that an answer gives: of *x = 3* the number."""
    return answer.rest[-1][1] if isinstance(answer, t.Relation) else answer


def calculations(asked: Draft) -> list[Calculation]:
    """Return the calculations of a working, or none where it is more than these.

    >>> from itembank.items.topics.registry import find_topic
    >>> from itembank.notation.line import line
    >>> topic = find_topic("statistics.mean")
    >>> [tier, *_] = topic.spaces
    >>> row = calculations(topic.make(tier, *topic.spaces[tier][0]))
    >>> [line(made) for _, made in row][-1]
    '6'
    """
    row = []
    for step in asked.steps:
        if step.maths is None:
            continue
        if not isinstance(step.maths, t.Relation):
            return []
        sides = [step.maths.first, *(side for _, side in step.maths.rest)]
        if any(sign != "=" for sign, _ in step.maths.rest):
            return []
        if isinstance(sides[0], t.Sym):
            del sides[0]
        if len(sides) < 2 or any(_no_calculation(side) for side in sides):
            return []
        row.append((sides[0], sides[-1]))
    if not row or worth(row[-1][1]) != worth(asked.key) or worth(row[-1][0]) != worth(asked.key):
        return []
    return row


def _no_calculation(side: t.Node) -> bool:
    return isinstance(side, t.Ratio) or bool(t.symbols(side) - {"π"})


def _last_line(
    asked: Draft, row: list[Calculation], edits: Mapping[Misconception, Sequence[Edit]]
) -> Iterator[WrongSolution]:
    *parts, (last, _) = row
    told = [t.equals(*part) for part in parts]
    whole = _at_once(last, parts[-1:])
    for slip in asked.slips:
        mistake, value = slip.misconception, value_of(slip.wrong)
        ways = edits.get(mistake, ())
        if worth(value) == worth(asked.key):
            continue
        for made in _changed(last, value, ways):
            unfinished = _may_go_on(made, last)
            if not unfinished:
                yield WrongSolution(mistake, (*told, made, value), len(told) + 1)
            if not parts and (unfinished or _goes_on(last, made)):
                yield WrongSolution(mistake, (last, made, value), 2)
            if whole != last:
                yield WrongSolution(mistake, (*told[:-1], whole, made, value), len(told) + 1)
                at_once = _at_once(made, parts[-1:])
                if at_once != made and not unfinished:
                    yield WrongSolution(mistake, (*told[:-1], at_once, made, value), len(told))
            break
        else:
            if whole == last:
                continue
            for made in _changed(whole, value, ways):
                if not _may_go_on(made, whole):
                    yield WrongSolution(mistake, (*told[:-1], made, value), len(told))
                yield WrongSolution(mistake, (*told[:-1], whole, made, value), len(told) + 1)
                break
        if cut_short in ways and parts and parts[-1][1] == value and whole != last:
            yield WrongSolution(mistake, (*told[:-1], whole, value), len(told) + 1)


def _changed(line: t.Node, value: t.Node, edits: Sequence[Edit]) -> Iterator[t.Node]:
    for edit in edits:
        for made in map(_tidy, edit(line)):
            if (
                made != value
                and measures(made) == measures(line) == measures(value)
                and worth(made) == worth(value)
                and _can_be_written(made)
            ):
                yield made


def _may_go_on(made: t.Node, line: t.Node) -> bool:
    """Tell whether a line could be the beginning of the right one, with more to come.

    *14 m × 5 m* for a triangle may be halved later: whether it is wrong, or the line after it,
    is in doubt. Only after *14 m × 5 m ÷ 2* it is not.
    """
    return len([*t.walk(made)]) < len([*t.walk(line)])


def _goes_on(line: t.Node, made: t.Node) -> bool:
    """Tell whether a line does one thing more than another, as who halves at the end."""
    if not isinstance(line, t.Product) or not isinstance(made, t.Product):
        return False
    return made.first == line.first and made.rest[: len(line.rest)] == line.rest


def _tidy(line: t.Node) -> t.Node:
    """Return a line without the brackets that nothing is left in but one number, or all of it."""
    while isinstance(line, t.Bracket):
        line = line.of
    return _unbracketed(line)


def _unbracketed(part: t.Node) -> t.Node:
    if isinstance(part, t.Power):
        return part  # of a measurement it keeps its bracket
    part = t.with_parts(part, _unbracketed)
    if isinstance(part, t.Frac):
        return t.with_parts(part, lambda node: node.of if isinstance(node, t.Bracket) else node)
    if isinstance(part, t.Bracket):
        number = part.of.amount if isinstance(part.of, t.Quantity | t.Money) else part.of
        return part.of if isinstance(number, t.Int | t.Dec | t.Bracket | t.Percent) else part
    return part


def _can_be_written(line: t.Node) -> bool:
    try:
        written(line)
    except t.NotationError:
        return False
    return True


def _at_once(line: t.Node, parts: Sequence[Calculation]) -> t.Node:
    """Return a calculation with what was worked out before put in its place."""
    for made, result in parts:
        if sum(part == result for part in t.walk(line)) > 1 and len(t.children(line)) > _LONGEST:
            continue
        alone = line == t.Root(result) or isinstance(made, t.Quantity | t.Int | t.Frac | t.Power)
        first = isinstance(line, t.Product) and isinstance(made, t.Product) and line.first == result
        if first and isinstance(line, t.Product) and isinstance(made, t.Product):
            return t.Product(made.first, (*made.rest, *line.rest))
        line = t.replaced(line, {result: made if alone else t.Bracket(made)})
    return _tidy(line)


def _in_columns(asked: Draft, row: list[Calculation]) -> Iterator[WrongSolution]:
    """Yield the workings in which one sum or difference goes wrong; what follows uses it."""
    given = {part for run in asked.prompt if not isinstance(run, str) for part in t.walk(run)}
    for place, (made, result) in enumerate(row):
        for mistake, wrong in _column_slips(made):
            lines: list[t.Node] = [t.equals(*part) for part in row[:place]]
            if place < len(row) - 1 and result in given:
                continue
            follows = _following(row, place, _like(result, Fraction(wrong)))
            if follows is None or worth(follows[-1]) == worth(asked.key):
                continue
            if place == len(row) - 1:
                yield WrongSolution(mistake, (*lines, made, *follows[-1:]), place + 2)
            else:
                yield WrongSolution(mistake, (*lines, *follows), place + 1)


def _following(row: list[Calculation], place: int, wrong: t.Node | None) -> list[t.Node] | None:
    """Return the lines from a wrong result on: parts, the last calculation, and its answer."""
    if wrong is None:
        return None
    made, result = row[place]
    standing = {part for line, comes_to in row for part in (*t.walk(line), comes_to)}
    if place < len(row) - 1 and wrong in standing:
        return None  # what stands for the wrong result, and what for a number that is given?
    meant: dict[t.Node, t.Node] = {result: wrong}
    lines: list[t.Node] = [t.equals(made, wrong)]
    for later, (line, comes_to) in enumerate(row[place + 1 :], start=place + 1):
        now = t.replaced(line, meant)
        number = _counted(now, comes_to)
        written = None if number is None else _like(comes_to, number)
        if written is None or comes_to in meant or (written in standing and later < len(row) - 1):
            return None
        meant[comes_to] = written
        lines += [now, written] if later == len(row) - 1 else [t.equals(now, written)]
    return [*lines, wrong] if place == len(row) - 1 else lines


def _column_slips(line: t.Node) -> Iterator[tuple[Misconception, Fraction | int]]:
    if isinstance(line, t.Product):
        parts = t.children(line)
        tenths = exact_or_none(line)
        if len(parts) == 2 and line.rest[0][0] == "×" and all(map(_is_tenths, parts)) and tenths:
            yield POINT_KEPT, tenths * 10
    if not isinstance(line, t.Sum):
        return
    sizes = [_size(part) for part in t.children(line)]
    numbers = [size for size in sizes if size is not None]
    signs = {sign for sign, _ in line.rest}
    if len(numbers) < len(sizes) or max(numbers) < 10:
        return
    # A sum that is no larger than one of its numbers would be seen to be wrong.
    if (
        signs == {"+"}
        and len(numbers) <= _LONGEST_SUM
        and max(numbers) < uncarried(numbers) != sum(numbers)
    ):
        yield CARRY_LOST, uncarried(numbers)
    if signs == {"-"} and len(numbers) == 2 and numbers[0] > numbers[1] > 9:
        differing = smaller_from_larger(*numbers)
        if differing != numbers[0] - numbers[1]:
            yield SMALLER_FROM_LARGER, differing


def _is_tenths(part: t.Node) -> bool:
    return isinstance(part, t.Dec) and (part.whole, len(part.places), part.recurring) == (
        "0",
        1,
        "",
    )


def _size(part: t.Node) -> int | None:
    amount = part.amount if isinstance(part, t.Quantity) else part
    return amount.n if isinstance(amount, t.Int) else None


def _like(result: t.Node, number: Fraction) -> t.Node | None:
    """Return a number written as a result is, and whole where that is; None where it is not."""
    from itembank.items.forms.form_rules import decimal_node  # no rule of forms is needed before

    if isinstance(result, t.Dec) and 1000 * number % 1 == 0 < number:
        return decimal_node(number)
    unit = result.unit if isinstance(result, t.Quantity) else None
    if (unit is None and not isinstance(result, t.Int)) or number <= 0 or number.denominator != 1:
        return None
    whole = t.Int(int(number))
    return whole if unit is None else t.Quantity(whole, unit)


def _counted(line: t.Node, result: t.Node) -> Fraction | None:
    """Return what a line comes to, counted in the unit of a result."""
    value = exact_or_none(line)
    unit = t.Quantity(t.Int(1), result.unit) if isinstance(result, t.Quantity) else t.Int(1)
    size = exact_or_none(unit)
    return None if value is None or size is None else value / size


def measures(node: t.Node) -> dict[str, int] | None:
    """Return the dimension of a line of working, by base dimensions; None where it has none."""
    match node:
        case t.Quantity(_, unit):
            name = UNITS[unit].dimension
            return dict(MADE_OF.get(name, {name: 1}))
        case t.Money(_, sign):
            return {CURRENCY[sign].dimension: 1}
        case t.Bracket(of) | t.Neg(of):
            return measures(of)
        case t.Root(of, 2):
            below = measures(of) or {}
            halves = {name: power // 2 for name, power in below.items()}
            return halves if all(power % 2 == 0 for power in below.values()) else None
        case t.Power(base, t.Int(power)):
            below = measures(base) or {}
            return {name: n * power for name, n in below.items()}
        case t.Sum(first, rest):
            every = [measures(first), *(measures(part) for _, part in rest)]
            return every[0] if all(path == every[0] for path in every) else None
        case t.Product(first, rest):
            total = dict(measures(first) or {})
            for sign, part in rest:
                for name, power in (measures(part) or {}).items():
                    total[name] = total.get(name, 0) + (-power if sign == "÷" else power)
            return {name: power for name, power in total.items() if power}
    return {}
