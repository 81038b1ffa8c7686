"""What a line of working has to satisfy, one rule for each kind of question.

Each rule returns what is wrong with a line, ``""`` if it is right, and raises NotExact where a
line is neither right nor wrong as far as can be told.
"""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise
from typing import Any

from itembank.figures.figure import relations_on
from itembank.items.asks import (
    Answered,
    Ask,
    Choose,
    Common,
    Compare,
    Draw,
    Equivalent,
    ErrorInterval,
    FaultyLine,
    FaultyWorking,
    Find,
    Give,
    Handlers,
    Inequality,
    Match,
    Members,
    OddOneOut,
    OfFigure,
    Order,
    Pick,
    Rewrite,
    Round,
    RoundReading,
    Sequence,
    Solve,
    Subject,
    Summary,
    TrueOrFalse,
    TwoNumbers,
    WhoIsRight,
    asked,
)
from itembank.items.asks.of_figure import as_find, relations_in
from itembank.items.forms.form_rules import number_node
from itembank.notation import tree as t
from itembank.notation.algebra import algebra
from itembank.notation.value import NotExact, exact, parts
from itembank.proof.exact.elimination import answer, eliminate, equations_of, known_letters
from itembank.proof.exact.equations import holds, sides_of, solve
from itembank.proof.exact.error_intervals import interval_of
from itembank.proof.exact.integers import newton
from itembank.proof.exact.members_found import member_fault
from itembank.proof.exact.rounding import gap, tree_rounded, unit_of
from itembank.proof.exact.truth import expression_parts, in_proportion, true, values_of
from itembank.proof.lines.line_of_cards import card_fault, solution_fault, statement_fault
from itembank.proof.lines.line_of_equations import inequality_fault, solved_fault, subject_fault
from itembank.proof.lines.line_of_list import row_fault
from itembank.proof.lines.line_of_many import equivalent_fault, given_fault, two_fault
from itembank.wording.tasks.sums.list_sums import as_sum

ELSE = "is worth something else"


def line_fault(ask: Ask, line: t.Node) -> str:
    """Return what is wrong with a line of working for a question, or ``""``.

    Raises:
        NotationError: the line cannot be checked.

    >>> from itembank.notation import parse
    >>> line_fault(Rewrite(parse("2(x + 3)"), "expand"), parse("2x + 3"))
    'is worth something else'
    """
    if isinstance(line, t.Relation) and not t.symbols(line) - {"π"}:
        return "" if true(line) else "is not true"
    several = isinstance(line, t.Listing) and all(isinstance(p, t.Relation) for p in line.parts)
    if isinstance(line, t.Listing) and several and not TOGETHER.of(ask):
        return next((fault for part in line.parts if (fault := line_fault(ask, part))), "")
    return RULES.of(ask)(ask, line)


RULES: Handlers[Callable[[Any, t.Node], str]] = Handlers("the check of working")
"""What is wrong with a line of working, for each kind of question; raises as :func:`line_fault`."""

TOGETHER: Handlers[bool] = Handlers("lists in working", otherwise=False)
"""Whether relations in one line are one statement, and not each a line of its own."""

RULES.by_kind |= {
    Find: lambda ask, line: _find(ask, line),
    Rewrite: lambda ask, line: _rewrite(ask.target, line),
    Solve: lambda ask, line: solved_fault(ask.relations, line),
    Pick: lambda ask, line: line_fault(ask.of, line),
    Inequality: lambda ask, line: inequality_fault(ask, line),
    Subject: lambda ask, line: subject_fault(ask, line),
    Sequence: lambda ask, line: _sequence(ask.terms, line),
    Common: lambda ask, line: _common(ask.numbers, ask.detail, line),
    Round: lambda ask, line: _round(ask, line),
    **dict.fromkeys((Order, Compare, Choose), lambda ask, line: _among(asked(ask), line)),
    Give: given_fault,
    Members: member_fault,
    TwoNumbers: two_fault,
    ErrorInterval: lambda ask, line: inequality_fault(Inequality(interval_of(ask)), line),
    Equivalent: equivalent_fault,
    OfFigure: lambda ask, line: _of_figure(_on_figure(ask, line), line),
    RoundReading: lambda ask, line: _round_reading(ask, line),
    Draw: lambda ask, line: _drawn(ask, line),
    Summary: lambda ask, line: (
        row_fault(ask, line) if isinstance(line, t.Listing) else _find(Find(as_sum(ask)), line)
    ),
    **dict.fromkeys(
        (Answered, FaultyWorking, WhoIsRight), lambda ask, line: line_fault(ask.of, line)
    ),
    TrueOrFalse: lambda ask, line: statement_fault(ask, line, line_fault),
    FaultyLine: lambda ask, line: solution_fault(ask, line, line_fault),
    **dict.fromkeys((OddOneOut, Match), lambda ask, line: card_fault(ask, line, line_fault)),
}
TOGETHER.by_kind[Inequality] = True


def _of_figure(ask: Find, line: t.Node) -> str:
    """Hold a line to what is read: a number, an equation of its letter, a solution."""
    target = ask.target
    if line == target:
        return ""  # a name, or the inequality that a line shows
    if isinstance(target, t.Relation) and isinstance(target.first, t.Sym):
        return subject_fault(Subject(target, target.first), line)
    if given := relations_in(target):
        return solved_fault(given, line)
    return _find(ask, line)


def _drawn(ask: Draw, line: t.Node) -> str:
    """Hold a line to what is drawn, or to what stands beside it."""
    wanted = (t.Label(ask.wanted.told), *(node for _, node in ask.wanted.holds))
    return "" if line in wanted else "says something else than what is to be drawn"


def _find(ask: Find, line: t.Node) -> str:
    target, relations = ask.target, ask.relations
    if isinstance(line, t.Relation):
        if not t.symbols(line) <= {name for relation in relations for name in t.symbols(relation)}:
            return _identity(line)
        return "" if _consequence(line, relations) else "does not follow from the question"
    if t.symbols(line) - {"π"}:
        if relations:
            return ""  # the target on its way to being worked out: its letters are still open
        return _rewrite(target, line)
    try:
        ours, given = answer(target, relations), parts(line)
    except NotExact:
        from itembank.proof.exact.identity import find_value

        return ELSE if find_value(target, relations, line).fault else ""
    if isinstance(line, t.Ratio) and len(given) == len(ours):
        # A ratio may be a step on the way to shares in that ratio, so proportion is enough.
        return "" if in_proportion(given, ours) else "is another ratio"
    return "" if given == ours else ELSE


def _on_figure(ask: OfFigure, line: t.Node) -> Find:
    """Return the question; a line with letters is held to what the figure's labels say."""
    question = as_find(ask)
    if question.relations or not t.symbols(line) - {"π"}:
        return question
    return Find(question.target, relations_on(ask.figure))


def _consequence(line: t.Relation, relations: tuple[t.Relation, ...]) -> bool:
    """Tell whether `line` follows from the question, and so leaves its solutions as they were."""
    try:
        given = known_letters(relations)
        known = dict(given)
        forms = [form for relation in relations for form in equations_of(relation, given)]
        # Elimination adds what it settles to `known`; `given` stays what was given outright.
        free = eliminate(forms, known)
        if not free:
            return true(line, known)
        # Where letters stay free, a line that follows settles no letter more.
        try:
            return eliminate([*forms, *equations_of(line, given)], dict(known)) == free
        except NotExact:
            return False
    except NotExact:
        every = solve(relations)
        return bool(every) and all(holds([line], solution) for solution in every)


def _identity(line: t.Relation) -> str:
    if all(op == "=" for op, _ in line.rest):
        return "" if all(a == b for a, b in sides_of(line)) else "is not true for every letter"
    raise NotExact("its sign is not an equals sign")


def _rewrite(target: t.Node, line: t.Node) -> str:
    if isinstance(line, t.Relation):
        return _identity(line)
    if isinstance(line, t.Listing | t.Either):
        raise NotExact("it is a list, where the question has one expression")
    ours, given = expression_parts(target), expression_parts(line)
    if len(ours) != len(given):
        return ELSE
    if len(ours) == 1:
        return "" if ours == given else ELSE
    # 0 : 0 agrees crosswise with every ratio.
    same = all(a * given[0] == ours[0] * b for a, b in zip(ours, given, strict=True))
    return "" if same and given[0].top else ELSE


def _sequence(terms: tuple[t.Node, ...], line: t.Node) -> str:
    values = [exact(term) for term in terms]
    if isinstance(line, t.Listing):
        row, given = values, [exact(part) for part in line.parts]
        # The terms, their differences, and the differences of those.
        for _ in range(3):
            if given == row[: len(given)]:
                return ""
            row = [b - a for a, b in pairwise(row)]
        raise NotExact("it is a list of neither the terms nor their differences")
    rule = newton(values)
    if isinstance(line, t.Relation) or rule is None or t.symbols(line) != {"n"}:
        raise NotExact("it is not an expression in n")
    given_rule, degree = algebra(line), max((sum(n for _, n in m[0]) for m in rule.top), default=0)
    left = (rule - given_rule).top
    # The working finds 3n first, then the + 2: what is still open is of a lower degree.
    if any(sum(n for _, n in powers) >= max(degree, 1) for powers, _ in left):
        return "does not begin as the nth term does"
    return ""


def _common(numbers: tuple[t.Node, ...], detail: str, line: t.Node) -> str:
    values = [exact(node) for node in numbers]
    given = [exact(part) for part in (line.parts if isinstance(line, t.Listing) else (line,))]
    for shown in given:
        if not shown or not any(
            (value / shown if detail == "hcf" else shown / value).denominator == 1
            for value in values
        ):
            word = "factor" if detail == "hcf" else "multiple"
            return f"holds a number that is no {word} of any of the numbers"
    return ""


def _round(ask: Round, line: t.Node) -> str:
    if isinstance(line, t.Relation | t.Listing | t.Either):
        raise NotExact("it is not a number")
    _, size = unit_of(line)
    step, _ = tree_rounded(ask.target, size, ask.detail, ask.amount)
    # A step may show more digits than the answer, so that near enough is right; an irrational
    # number has no last digit to be held to.
    low, high = gap(ask.target, line, size)
    return "" if max(abs(low), abs(high)) < step else "is not near the number to be rounded"


def _round_reading(ask: RoundReading, line: t.Node) -> str:
    """Hold a line with a letter to what the labels say, a number to what is to be rounded."""
    question = as_find(ask.of)
    if isinstance(line, t.Relation) or t.symbols(line) - {"π"}:
        return _of_figure(_on_figure(ask.of, line), line)
    target = question.target
    if question.relations:
        (value,) = answer(target, question.relations)
        target = number_node(value)  # in base units, as a quantity is worth
    return _round(Round(target, ask.detail, ask.amount, ask.way), line)


def _among(things: tuple[t.Node, ...], line: t.Node) -> str:
    """Hold numbers to be those of a question to order, compare or choose from, however written."""
    if t.symbols(line) - {"π"}:
        raise NotExact("it has a letter in it")
    values = [value for thing in things for value in values_of(thing)]
    if all(any(a == b for b in values) for a in values_of(line)):
        return ""
    raise NotExact("it holds a number that is not in the question")
