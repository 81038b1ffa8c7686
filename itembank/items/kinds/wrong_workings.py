"""Workings that go wrong in one line, made of a question's own working and of its mistakes.

The working of most questions is a row of calculations, each using what the one before came to.
A mistake changes the last of them in a way that gives its wrong answer; or a sum or a difference
is worked out wrongly in columns, and what follows uses it.

Which working a question shows is drawn by lot among those that are made here. So whoever adds a
way of going wrong gives it only to topics whose questions are not frozen yet.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from itembank.items.asks.faulty_line import MOST_LINES
from itembank.items.item import Draft, Misconception
from itembank.items.kinds.calculations import Calculation, calculations, value_of
from itembank.items.kinds.column_workings import goes_wrong_in_columns
from itembank.items.kinds.draft_worth import worth
from itembank.items.kinds.line_edits import (
    Edit,
    cut_short,
)
from itembank.items.kinds.wrong_solutions import GoneWrong, WrongSolution
from itembank.notation import tree as t
from itembank.notation.line import line as written
from itembank.notation.units import CURRENCY, MADE_OF, UNITS

LONGEST = 4
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
            made += goes_wrong_in_columns(asked, row)
        return tuple(working for working in made if 2 <= len(working.lines) <= MOST_LINES)

    return gone_wrong


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
        if sum(part == result for part in t.walk(line)) > 1 and len(t.children(line)) > LONGEST:
            continue
        alone = line == t.Root(result) or isinstance(made, t.Quantity | t.Int | t.Frac | t.Power)
        first = isinstance(line, t.Product) and isinstance(made, t.Product) and line.first == result
        if first and isinstance(line, t.Product) and isinstance(made, t.Product):
            return t.Product(made.first, (*made.rest, *line.rest))
        line = t.replaced(line, {result: made if alone else t.Bracket(made)})
    return _tidy(line)


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
