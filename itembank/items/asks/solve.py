"""Solve equations: every real solution."""

from __future__ import annotations

from itembank.data_class import dataclass
from itembank.items.asks.ask_kind import Ask, Kind, Stored, Twin, only, register_kind
from itembank.items.asks.layers import Layers
from itembank.notation import tree as t


@dataclass(frozen=True, slots=True)
class Solve(Ask):
    """Find every real solution of the equations, which are in one letter or several.

    The key is ``x = 3``; several solutions are an :class:`~itembank.notation.tree.Either`; in
    several letters each solution is a list, ``x = 2, y = 5``.
    """

    relations: tuple[t.Relation, ...]


def _twin(ask: Solve, form: str) -> Twin:
    letters = frozenset(name for relation in ask.relations for name in t.symbols(relation)) - {"π"}
    if len(letters) == 1:  # to solve 3x + 2 = 14 is to find x, given that 3x + 2 = 14
        return ("find", "number"), tuple(map(t.Sym, letters)), ask.relations
    return ("solve",), (), ask.relations


def _restore(stored: Stored) -> Solve:
    only(stored, 0)
    if not stored.relations:
        raise t.NotationError("there is nothing to solve")
    return Solve(stored.relations)


SOLVE = register_kind(
    Kind(
        "solve",
        Solve,
        trees=lambda ask: ask.relations,
        store=lambda ask: Stored(relations=ask.relations),
        restore=_restore,
        twin=_twin,
        does="solve",
        relations=True,
        answerable=True,
        whole=True,
        layers=Layers(
            first_road="itembank.proof.exact.roots:find_solutions",
            second_road="itembank.proof.sympy.sympy_solving:solutions",
            working="itembank.proof.lines.line_of_equations:solved_fault",
            bank="itembank.bank.question.key_form:SOLVED",
            repeating="itembank.proof.claim.repeats:solution_repeats",
            forms="itembank.proof.exact.key_forms:SOLVED",
            marking="itembank.marking.worth.marked_by_kind:SOLVE",
            difficulty="itembank.items.measures.difficulty_by_kind:SOLVE",
            later="itembank.items.measures.later_content:solving_content",
            tasks=(
                ("solve", "itembank.bank.question.tasks.letter_tasks:solve"),
                ("find-letter", "itembank.bank.question.tasks.letter_tasks:find_letter"),
            ),
        ),
    )
)
