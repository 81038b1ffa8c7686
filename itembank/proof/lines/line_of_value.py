"""Lines towards what something is worth: a number, an expression, what a figure shows."""

from __future__ import annotations

from itembank.figures.figure import relations_on
from itembank.items.asks import (
    Find,
    OfFigure,
    Rewrite,
    Round,
    RoundReading,
    Solve,
    Subject,
    Summary,
)
from itembank.items.asks.of_figure import as_find, relations_in
from itembank.items.forms.form_rules import number_node
from itembank.notation import tree as t
from itembank.notation.value import NotExact, parts
from itembank.proof.exact.reckoning.elimination import (
    answer,
    eliminate,
    equations_of,
    known_letters,
)
from itembank.proof.exact.reckoning.equations import holds, sides_of, solve
from itembank.proof.exact.reckoning.truth import expression_parts, in_proportion, true
from itembank.proof.exact.rounding import gap, tree_rounded, unit_of
from itembank.proof.lines.line_of_equations import solved_fault, subject_fault
from itembank.proof.lines.line_of_list import row_fault
from itembank.wording.tasks.sums.list_sums import as_sum

ELSE = "is worth something else"


def worth_fault(ask: Find, line: t.Node) -> str:
    """Return what is wrong with a line for a question to work something out, or ``""``.

    Raises:
        NotExact: the line cannot be worked out.

    >>> from itembank.notation import parse
    >>> ask = Find(parse("x"), (parse("2x + 1 = 7"),))
    >>> worth_fault(ask, parse("2x = 6")), worth_fault(ask, parse("2x = 8"))
    ('', 'does not follow from the question')
    """
    target, relations = ask.target, ask.relations
    if isinstance(line, t.Relation):
        if not t.symbols(line) <= {name for relation in relations for name in t.symbols(relation)}:
            return _identity(line)
        return "" if _consequence(line, relations) else "does not follow from the question"
    if t.symbols(line) - {"π"}:
        if relations:
            return ""  # the target on its way to being worked out: its letters are still open
        return rewritten_fault(Rewrite(target, "simplify"), line)
    try:
        ours, given = answer(target, relations), parts(line)
    except NotExact:
        from itembank.proof.exact.identity import find_value

        return ELSE if find_value(target, relations, line).fault else ""
    if isinstance(line, t.Ratio) and len(given) == len(ours):
        # A ratio may be a step on the way to shares in that ratio, so proportion is enough.
        return "" if in_proportion(given, ours) else "is another ratio"
    return "" if given == ours else ELSE


def rewritten_fault(ask: Rewrite, line: t.Node) -> str:
    """Return what is wrong with a line for a question to write an expression anew, or ``""``.

    Raises:
        NotExact: it is a list, or past what exact algebra can do.

    >>> from itembank.notation import parse
    >>> rewritten_fault(Rewrite(parse("2(x + 3)"), "expand"), parse("2x + 3"))
    'is worth something else'
    """
    if isinstance(line, t.Relation):
        return _identity(line)
    if isinstance(line, t.Listing | t.Either):
        raise NotExact("it is a list, where the question has one expression")
    ours, given = expression_parts(ask.target), expression_parts(line)
    if len(ours) != len(given):
        return ELSE
    if len(ours) == 1:
        return "" if ours == given else ELSE
    # 0 : 0 agrees crosswise with every ratio.
    same = all(a * given[0] == ours[0] * b for a, b in zip(ours, given, strict=True))
    return "" if same and given[0].top else ELSE


def read_fault(ask: OfFigure, line: t.Node) -> str:
    """Return what is wrong with a line for a question about a figure, or ``""``.

    Raises:
        NotExact: the line cannot be worked out.
    """
    return _of_figure(_on_figure(ask, line), line)


def summary_fault(ask: Summary, line: t.Node) -> str:
    """Return what is wrong with a line for a mean, a median, a mode or a range, or ``""``.

    Raises:
        NotExact: the line cannot be worked out.
    """
    if isinstance(line, t.Listing):
        return row_fault(ask, line)
    return worth_fault(Find(as_sum(ask)), line)


def rounded_fault(ask: Round, line: t.Node) -> str:
    """Return what is wrong with a line for a question to round, or ``""``.

    Raises:
        NotExact: it is no number.
    """
    if isinstance(line, t.Relation | t.Listing | t.Either):
        raise NotExact("it is not a number")
    _, size = unit_of(line)
    step, _ = tree_rounded(ask.target, size, ask.detail, ask.amount)
    # A step may show more digits than the answer, so that near enough is right; an irrational
    # number has no last digit to be held to.
    low, high = gap(ask.target, line, size)
    return "" if max(abs(low), abs(high)) < step else "is not near the number to be rounded"


def read_rounded_fault(ask: RoundReading, line: t.Node) -> str:
    """Hold a line with a letter to what the labels say, a number to what is to be rounded.

    Raises:
        NotExact: the line cannot be worked out.
    """
    question = as_find(ask.of)
    if isinstance(line, t.Relation) or t.symbols(line) - {"π"}:
        return _of_figure(_on_figure(ask.of, line), line)
    target = question.target
    if question.relations:
        (value,) = answer(target, question.relations)
        target = number_node(value)  # in base units, as a quantity is worth
    return rounded_fault(Round(target, ask.detail, ask.amount, ask.way), line)


def _of_figure(ask: Find, line: t.Node) -> str:
    """Hold a line to what is read: a number, an equation of its letter, a solution."""
    target = ask.target
    if line == target:
        return ""  # a name, or the inequality that a line shows
    if isinstance(target, t.Relation) and isinstance(target.first, t.Sym):
        return subject_fault(Subject(target, target.first), line)
    if given := relations_in(target):
        return solved_fault(Solve(given), line)
    return worth_fault(ask, line)


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
