"""Whether a line of working belongs to a question about cards, a statement or a wrong line."""

from __future__ import annotations

from collections.abc import Sequence

from itembank.items.asks import Ask, FaultyLine, Find, Match, OddOneOut, Rewrite, TrueOrFalse, asked
from itembank.notation import tree as t
from itembank.notation.value import NotExact
from itembank.proof.exact.cards import worth_the_same
from itembank.proof.lines.line_rules import line_fault


def of_any_card(cards: Sequence[t.Node], line: t.Node) -> str:
    """Return what is wrong with a line that has to be a step towards what some card is worth."""
    if isinstance(line, t.Label):
        return ""  # it names a card, and is held to the key alone
    if any(_is_whole(card) for card in cards) and _is_whole(line):
        return "" if any(_alike(card, line) for card in cards) else "is none of the cards"
    faults = []
    for card in cards:
        try:
            faults.append(line_fault(_worked_out(card), line))
        except t.NotationError:
            continue
        if not faults[-1]:
            return ""
    if not faults:
        raise NotExact("it is about none of the cards")
    return faults[0]


def _is_whole(node: t.Node) -> bool:
    """Tell whether a tree is a list or the equation of a line: nothing to be worked out."""
    if isinstance(node, t.Relation):
        return t.symbols(node) == {"x", "y"}
    return isinstance(node, t.Listing)


def _alike(card: t.Node, line: t.Node) -> bool:
    """Tell whether a line of working is the line, or the terms, that a card tells."""
    try:
        return worth_the_same(card, line)
    except t.NotationError:
        return False


def card_fault(ask: Match | OddOneOut, line: t.Node) -> str:
    """Return what is wrong with a line about one of the cards of a question."""
    return of_any_card(asked(ask), line)


def statement_fault(ask: TrueOrFalse, line: t.Node) -> str:
    """Return what is wrong with a line about a side of a statement, or its unknown's value."""
    if isinstance(line, t.Relation) and line in ask.given:
        return ""
    sides = (ask.statement.first, *(side for _, side in ask.statement.rest))
    if not ask.given:
        return of_any_card(sides, line)
    faults = []
    # Either what is given is put in, or the statement is solved as an equation.
    ways: list[Ask] = [Find(side, ask.given) for side in sides]
    if len(ask.given) == 1:
        ways.append(Find(ask.given[0].first, (ask.statement,)))
    for way in ways:
        try:
            faults.append(line_fault(way, line))
        except t.NotationError:
            continue
    if not faults:
        raise NotExact("it is about no side of the statement")
    return "" if "" in faults else faults[0]


def solution_fault(ask: FaultyLine, line: t.Node) -> str:
    """Return what is wrong with a line of the solution that is put right."""
    if isinstance(line, t.Label):
        return ""
    return line_fault(_worked_out(ask.question), line)


def _worked_out(card: t.Node) -> Ask:
    """Return the question what a card is worth."""
    if isinstance(card, t.Relation):
        letters = sorted(t.symbols(card) - {"π"})
        if len(letters) != 1:
            raise NotExact("an equation has not one letter")
        return Find(t.Sym(letters[0]), (card,))
    return Rewrite(card, "simplify") if t.symbols(card) - {"π"} else Find(card)
