"""The numbers a story prints in mathematics that its model does not use."""

from __future__ import annotations

from fractions import Fraction

from itembank.notation import tree as t
from itembank.notation.line import shown_line
from itembank.notation.units import UNITS, unit_known
from itembank.notation.value import exact_or_none
from itembank.wording.sentences.prompt import slot, slotted
from itembank.wording.sentences.question_sentences import questions
from itembank.wording.story.numbers.story import Story, values_used


def printed_fault(story: Story) -> str:
    """Return what is to be done about a printed number that the model does not use, or ``""``."""
    whole = {part for node in story.used for part in t.walk(node)}
    values = values_used(story)
    asking = "".join(questions(story.runs))
    in_question = {node for i, node in enumerate(slotted(story.runs).nodes) if _stands(i, asking)}
    for run in story.runs:
        if isinstance(run, str):
            continue
        if story.excuses(shown_line(run)) and run not in in_question:
            continue
        missing = _unused(run, whole, values)
        excused = story.excuses("" if missing is None else shown_line(missing))
        if missing is not None and not (
            (excused and run not in in_question) or _is_unit(run, story)
        ):
            if run in in_question:
                return f"The question itself speaks of {shown_line(missing)}, and the model does not use it."
            return (
                f"The model does not use {shown_line(missing)}, which the prompt prints: use it, or say "
                "in ‘not_needed’ why it is not needed."
            )
    return ""


def _stands(index: int, asking: str) -> bool:
    return slot(index) in asking or slot(index, letter=True) in asking


def _is_unit(node: t.Node, story: Story) -> bool:
    """Whether a 1 says what something is counted in: 1 cm stands for 5 km, 1 : 50, one ticket."""
    match node:
        case t.Ratio(parts):
            values = values_used(story)
            return t.Int(1) in parts and all(
                part == t.Int(1) or _unused(part, set(), values) is None for part in parts
            )
        case t.Quantity(t.Int(1), _) | t.Money(t.Int(1), _):
            return True
        case t.Int(1):
            # A letter by itself, as in a + 3c, is one of them.
            return any(isinstance(used, t.Relation) for used in story.used)
        case t.Relation(first, rest):
            return all(
                _unused(side, set(), values_used(story)) is None or _is_unit(side, story)
                for side in (first, *(side for _, side in rest))
            )
    return False


def _unused(node: t.Node, whole: set[t.Node], values: set[Fraction]) -> t.Node | None:
    """Return the first number of a printed tree that the model does not use, or None.

    A unit, a per cent sign or a minus goes with its number: {30 min} is not used by 30 h, {15%}
    not by £15, {-4} not by 4. In a model without units a bare 30 may stand for {30 min}.
    """
    if node in whole:
        return None
    match node:
        case t.Neg(of):
            taken = any(
                isinstance(part, t.Sum) and any(op == "-" and term == of for op, term in part.rest)
                for part in whole
            )
            return None if taken or _minus_of(node, whole) else node
        case t.Bracket(of):
            return _unused(of, whole, values)
        case t.Percent(of):
            worth, whole_number = exact_or_none(node), exact_or_none(of)
            if worth is None:
                return None
            multipliers = {worth, 1 + worth, 1 - worth}
            if multipliers & values or (whole_number in values and Fraction(100) in values):
                return None
            return node
        case t.Money(of, _) | t.Quantity(of, _) if t.symbols(of):
            letters = {name for part in whole for name in t.symbols(part)}
            return None if t.symbols(of) <= letters else node
        case t.MixedUnits(amounts):
            total = exact_or_none(node)
            sizes = {UNITS[part.unit].size for part in amounts}
            as_one = {total / size for size in sizes} if total is not None else set()
            if as_one & values or any(exact_or_none(part) == total for part in whole):
                return None
        case t.Money(of, _) | t.Quantity(of, _):
            same = any(
                type(part) is type(node)
                and exact_or_none(part) == exact_or_none(node)
                and unit_known(_unit_of(part)).dimension == unit_known(_unit_of(node)).dimension
                for part in whole
            )
            return None if same or _stands_bare(of, whole) else node
        case t.Int() | t.Dec() | t.Mixed():
            return None if exact_or_none(node) in values else node
        case t.Frac(t.Int(), t.Int()):
            parts = [exact_or_none(part) for part in t.children(node)]
            return None if exact_or_none(node) in values or set(parts) <= values else node
    for child in t.children(node):
        if (missing := _unused(child, whole, values)) is not None:
            return missing
    return None


def _unit_of(node: t.Node) -> str:
    return (
        node.unit
        if isinstance(node, t.Quantity)
        else node.sign
        if isinstance(node, t.Money)
        else ""
    )


def _minus_of(node: t.Neg, whole: set[t.Node]) -> bool:
    worth = exact_or_none(node)
    return worth is not None and any(
        isinstance(part, t.Neg | t.Money | t.Quantity) and exact_or_none(part) == worth
        for part in whole
    )


def _stands_bare(of: t.Node, whole: set[t.Node]) -> bool:
    """Whether a number stands in the model without a unit or sign around it."""
    worth = exact_or_none(of)
    inside = {
        part.of if isinstance(part, t.Percent) else part.amount
        for part in whole
        if isinstance(part, t.Money | t.Quantity | t.Percent)
    }
    outside = [
        child
        for part in whole
        if not isinstance(part, t.Money | t.Quantity | t.Percent)
        for child in t.children(part)
    ]
    roots = [part for part in whole if part not in inside]
    return any(
        isinstance(root, t.Int | t.Dec | t.Mixed | t.Frac) and exact_or_none(root) == worth
        for root in (*outside, *roots)
    )
