"""Write a number in another way: many answers are right, and the key is an example."""

from __future__ import annotations

from itembank.data_class import dataclass
from itembank.items.asks.ask_kind import Ask, Kind, Stored, only, register_kind
from itembank.items.asks.layers import Layers
from itembank.notation import tree as t
from itembank.notation.line import shown_line
from itembank.notation.value import exact


@dataclass(frozen=True, slots=True)
class Equivalent(Ask):
    """Give a fraction that is worth as much as a number, and is not written as it is.

    Every number but 0 has as many as one likes: 2/3 is 4/6, 6/9, 8/12, ….
    """

    target: t.Node


def _restored(stored: Stored) -> Equivalent:
    (target,) = only(stored, 1)
    return Equivalent(target)


EQUIVALENT = register_kind(
    Kind(
        "equivalent",
        Equivalent,
        trees=lambda ask: (ask.target,),
        store=lambda ask: Stored((ask.target,)),
        restore=_restored,
        twin=lambda ask, form: (("equivalent", form), (ask.target,), ()),
        does="give an equivalent fraction",
        told="give an example",
        many=True,
        layers=Layers(
            first_road="itembank.proof.exact.equivalents:find_equivalent",
            second_road="itembank.proof.sympy.sympy_equivalents:equivalent",
            working="itembank.proof.lines.line_of_many:equivalent_fault",
            bank="itembank.bank.question.key_form:FRACTION",
            forms="itembank.proof.exact.key_forms:IN_WORDS",
            marking="itembank.marking.worth.marked_by_kind:EQUIVALENT",
            difficulty="itembank.items.measures.difficulty_by_kind:EXAMPLE",
        ),
    )
)


def not_equivalent(ask: Equivalent, answer: t.Node) -> str:
    """Return what keeps an answer from being right, a sentence without its full stop, or ``""``.

    Raises:
        NotExact: a number has no exact rational value.

    >>> from itembank.notation import parse
    >>> ask = Equivalent(parse("2/3"))
    >>> [not_equivalent(ask, parse(text)) for text in ("4/6", "3/4", "2/3")]
    ['', '3/4 is not equal to 2/3', '2/3 is the number in the question']
    """
    match answer:
        case t.Bracket(of):
            return not_equivalent(ask, of)
        case t.Relation(first, (("=", last),)) if first == ask.target:
            return not_equivalent(ask, last)  # 2/3 = 4/6
        case t.Relation() | t.Listing() | t.Either():
            return "one number is asked for"
    if answer == ask.target:
        return f"{shown_line(answer)} is the number in the question"
    if exact(answer) != exact(ask.target):
        return f"{shown_line(answer)} is not equal to {shown_line(ask.target)}"
    return ""
