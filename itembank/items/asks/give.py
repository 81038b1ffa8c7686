"""Give any one answer that meets conditions: many answers are right, and the key is an example."""

from __future__ import annotations

from itembank.data_class import dataclass
from itembank.items.asks.ask_kind import Ask, Kind, Nodes, Stored, Twin, register_kind
from itembank.items.asks.layers import Layers
from itembank.notation import tree as t

CONDITIONS: dict[str, tuple[int, str]] = {
    "whole": (0, "a whole number"),
    "positive": (0, "more than 0"),
    "negative": (0, "less than 0"),
    "even": (0, "an even number"),
    "odd": (0, "an odd number"),
    "prime": (0, "a prime number"),
    "square": (0, "a square number"),
    "cube": (0, "a cube number"),
    "multiple": (1, "a multiple of {}"),
    "factor": (1, "a factor of {}"),
    "different": (0, "different from one another"),
}
"""What a number can have to be: how many numbers the condition speaks of, and how it is said."""


@dataclass(frozen=True, slots=True)
class Condition:
    """What each number of the answer has to be, such as a multiple of 7.

    `name` is one of :data:`CONDITIONS`. A whole number is 0, 1, 2, … or one of these with a
    minus sign; a factor is a whole number above 0 that divides another without remainder; *prime*
    and *square* numbers are whole numbers above 0 (common practice in schools, no source).
    *Different* is about the whole answer: no two of its numbers are equal.
    """

    name: str
    of: Nodes = ()


@dataclass(frozen=True, slots=True)
class Give(Ask):
    """Give any value of the letters for which every relation holds and every condition is met.

    One letter asks for one number, several ask for a list in the order of the letters. Where the
    relations do not change when letters change places, neither does what is right.

    >>> from itembank.notation import parse
    >>> from itembank.notation.tree import Sym
    >>> Give((Sym("x"),), (parse("1/3 < x < 1/2"),)).letters
    (Sym(name='x'),)
    """

    letters: tuple[t.Sym, ...]
    relations: tuple[t.Relation, ...] = ()
    conditions: tuple[Condition, ...] = ()


def _trees(ask: Give) -> Nodes:
    return (*ask.relations, *(node for condition in ask.conditions for node in condition.of))


def _store(ask: Give) -> Stored:
    conditions = tuple((condition.name, condition.of) for condition in ask.conditions)
    return Stored(ask.letters, ask.relations, conditions=conditions)


def _restore(stored: Stored) -> Give:
    letters = tuple(node for node in stored.target if isinstance(node, t.Sym))
    if not letters or len({*letters}) != len(stored.target):
        raise t.NotationError("what is to be given is a letter, or several different ones")
    if not (stored.relations or stored.conditions):
        raise t.NotationError("it is not said what the answer has to be")
    names = {letter.name for letter in letters}
    for relation in stored.relations:
        if t.symbols(relation) - names - {"π"}:
            raise t.NotationError("a relation is about another letter than the answer")
    return Give(letters, stored.relations, tuple(map(_condition, stored.conditions)))


def _condition(data: tuple[str, tuple[t.Node, ...]]) -> Condition:
    name, of = data
    if name not in CONDITIONS:
        raise t.NotationError(f"there is no condition called ‘{name}’")
    if len(of) != CONDITIONS[name][0]:
        raise t.NotationError(f"the condition ‘{name}’ speaks of {CONDITIONS[name][0]} numbers")
    return Condition(name, of)


def _twin(ask: Give, form: str) -> Twin:
    named = tuple(sorted(condition.name for condition in ask.conditions))
    of = tuple(node for condition in ask.conditions for node in condition.of)
    # A number between two others, as a fraction or as a decimal, is two questions.
    return ("give", len(ask.letters), form, named), (), (*ask.relations, *of)


GIVE = register_kind(
    Kind(
        "give",
        Give,
        trees=_trees,
        store=_store,
        restore=_restore,
        twin=_twin,
        does="give one of many right answers",
        told="give an example",
        relations=True,
        many=True,
        answerable=True,
        numbers="factored",
        layers=Layers(
            first_road="itembank.proof.exact.many_answers:find_given",
            second_road="itembank.proof.sympy.sympy_giving:given",
            working="itembank.proof.lines.line_of_many:given_fault",
            bank="itembank.bank.question.key_form:GIVEN",
            forms="itembank.proof.exact.key_forms:IN_WORDS",
            worth="itembank.proof.likely_mistakes:given_worth",
            marking="itembank.marking.worth.marked_by_kind:GIVE",
            difficulty="itembank.items.measures.difficulty_by_kind:GIVE",
            later="itembank.items.measures.later_content:given_content",
        ),
    )
)
