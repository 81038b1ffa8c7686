"""Cards, lines and statements held against one another by what each is worth.

A card is worth a number with its dimension, a ratio, an expression whatever its letters are, the
solution of an equation, or, where an equation has an x and a y, the line that it is of. A list is
worth its terms, and beside lists a rule for the nth term is worth as many of its first terms.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise
from typing import Any

from itembank.items.asks.faulty_line import FaultyLine, line_name
from itembank.items.asks.matching import Match, pair_name
from itembank.items.asks.odd_one_out import LETTERS, OddOneOut
from itembank.items.asks.true_or_false import FALSE, TRUE, TrueOrFalse
from itembank.notation import tree as t
from itembank.notation.algebra import algebra
from itembank.notation.quotients import UNIT
from itembank.notation.value import NotExact, exact, parts, sides
from itembank.proof.claim.dimensions import dimension
from itembank.proof.claim.finding import Finding, found
from itembank.proof.exact.reckoning.elimination import answer
from itembank.proof.exact.reckoning.truth import true

Worths = list[Any]
"""What some cards are worth: equal where the cards are worth the same."""


def worths(cards: Sequence[t.Node]) -> Worths:
    """Return what some cards are worth, all of one sort.

    Raises
    ------
    NotExact
        If they are of several sorts (a number beside an equation, a length beside a mass), or
        one is worth nothing that can be worked out exactly.

    >>> from itembank.notation import parse
    >>> len({*worths([parse("2y = 4x + 6"), parse("y = 2x + 3")])})
    1
    >>> len({*worths([parse("3n - 1"), parse("2, 5, 8, 11")])})
    1
    >>> worths([parse("2/4"), parse("0.5")]), worths([parse("2x = 6"), parse("x + 1 = 5")])
    ([Fraction(1, 2), Fraction(1, 2)], [(Fraction(3, 1),), (Fraction(4, 1),)])
    """
    sorts = {_sort(card) for card in cards}
    if "terms" in sorts:
        return _terms(cards)
    if len(sorts) != 1:
        raise NotExact("the things to be compared are not all of one kind")
    (sort,) = sorts
    if sort == "line":
        return [_line(card) for card in cards]
    if sort == "ratio":
        return [_scaled(parts(card)) for card in cards]
    if sort == "equation":
        return _solutions(cards)
    if sort == "expression":
        return [algebra(card) for card in cards]
    if len({frozenset(dimension(card).items()) for card in cards}) != 1:
        raise NotExact("the things to be compared do not measure the same")
    try:
        return [exact(card) for card in cards]  # the quick way
    except NotExact:
        return [algebra(card) for card in cards]


def _sort(card: t.Node) -> str:
    if isinstance(card, t.Relation):
        return "line" if t.symbols(card) == {"x", "y"} else "equation"
    if isinstance(card, t.Ratio):
        return "ratio"
    if isinstance(card, t.Listing) and not card.brackets:
        return "terms"
    if isinstance(card, t.Listing | t.Either | t.Label):
        raise NotExact("a list in brackets or a name is worth nothing that can be compared")
    return "expression" if t.symbols(card) - {"π"} else "number"


def _terms(cards: Sequence[t.Node]) -> Worths:
    """Return the terms of each sequence: those that are listed, or the first ones by a rule."""
    lists = [[exact(part) for part in card.parts] for card in cards if isinstance(card, t.Listing)]
    count = len(lists[0])
    if count < 3 or any(len(terms) != count for terms in lists):
        raise NotExact("the lists do not have as many terms as one another, three or more")
    found: Worths = []
    for card in cards:
        if isinstance(card, t.Listing):
            found.append(tuple(exact(part) for part in card.parts))
        elif t.symbols(card) == {"n"} and t.is_expression(card):
            found.append(tuple(_at(card, place) for place in range(1, count + 1)))
        else:
            raise NotExact("beside lists of terms there is something else than a rule in n")
    return found


def _at(rule: t.Node, n: int) -> Fraction:
    """Return what a rule comes to for the term number n."""

    def put_in(node: t.Node) -> t.Node:
        return t.Bracket(t.Int(n)) if node == t.Sym("n") else t.with_parts(node, put_in)

    return exact(put_in(rule))


def _line(card: t.Node) -> tuple[Fraction, ...]:
    """Return the line of an equation in x and y: its coefficients, the first that counts made 1."""
    if not isinstance(card, t.Relation) or [op for op, _ in card.rest] != ["="]:
        raise NotExact("a line has one equation")
    apart = algebra(card.first) - algebra(card.rest[0][1])
    if apart.bottom.keys() != {UNIT}:
        raise NotExact("a letter stands below the bar of a fraction")
    places = {((("x", 1),), 1): 0, ((("y", 1),), 1): 1, UNIT: 2}
    if not apart.top.keys() <= places.keys():
        raise NotExact("the equation is not that of a straight line")
    found = [Fraction(0)] * 3
    for monomial, number in apart.top.items():
        found[places[monomial]] = Fraction(number)
    lead = found[0] or found[1]
    if not lead:
        raise NotExact("the equation is that of no line")
    return tuple(number / lead for number in found)


def _scaled(values: tuple[Fraction, ...]) -> tuple[Fraction, ...]:
    if not values[0]:
        raise NotExact("a ratio begins with nothing")
    return tuple(value / values[0] for value in values)


def _solutions(cards: Sequence[t.Node]) -> Worths:
    letters = {name for card in cards for name in t.symbols(card) - {"π"}}
    if len(letters) != 1:
        raise NotExact("the equations are not all in one letter")
    letter = t.Sym(letters.pop())
    return [answer(letter, (card,)) for card in cards if isinstance(card, t.Relation)]


def worth_the_same(first: t.Node, other: t.Node) -> bool:
    """Tell whether two cards are worth the same.

    Raises
    ------
    NotExact
        As for any cards.
    """
    a, b = worths((first, other))
    return bool(a == b)


def odd_place(values: Worths) -> int:
    """Return the place of the one value that all the others differ from, which are equal.

    Raises
    ------
    NotExact
        If there is not exactly one such value.

    >>> odd_place([3, 3, 4, 3])
    2
    """
    places = [place for place, value in enumerate(values) if values.count(value) == 1]
    if len(places) != 1 or len(values) < 3 or values.count(values[places[0] - 1]) + 1 < len(values):
        raise NotExact("there is not exactly one odd one out")
    return places[0]


def find_odd(ask: OddOneOut, key: t.Node) -> Finding:
    """Return the letter of the card that is worth something else than all others.

    >>> from itembank.notation import parse
    >>> cards = tuple(map(parse, ("1/2", "2/4", "3/5")))
    >>> find_odd(OddOneOut(cards), t.Label("A")).fault
    'it comes to "C", the key says "A"'
    """
    name = t.Label(LETTERS[odd_place(worths(ask.cards))])
    return found(name, key, key == name)


def find_faulty(ask: FaultyLine, key: t.Node) -> Finding:
    """Return the name of the one line that does not follow, and what the question comes to.

    Raises
    ------
    NotExact
        If no line is wrong, or more than one.

    >>> from itembank.notation import parse
    >>> ask = FaultyLine(parse("2x + 1 = 9"), (parse("2x = 10"), parse("x = 5")))
    >>> find_faulty(ask, parse('"line 1", x = 4')).fault
    ''
    """
    values = worths((ask.question, *ask.lines))
    wrong = [place for place, (a, b) in enumerate(pairwise(values), start=1) if a != b]
    if len(wrong) != 1:
        raise NotExact(f"{len(wrong)} lines do not follow from the line before, and not one")
    name = line_name(wrong[0])
    if not (isinstance(key, t.Listing) and len(key.parts) == 2):
        return found(name, key, False, "the answer is a line and a result")
    line, result = key.parts
    if line != name:
        return found(name, line, False)
    try:
        asked, given = worths((ask.question, result))
    except NotExact:
        return found(name, key, False, "the result is of another kind than the question")
    return found(name, key, asked == given, "" if asked == given else "the result is another")


def find_pairs(ask: Match, key: t.Node) -> Finding:
    """Return the partner of each card.

    Raises
    ------
    NotExact
        If a card has no partner or several, or two have one.

    >>> from itembank.notation import parse
    >>> ask = Match((parse("1/2"), parse("1/4")), (parse("0.25"), parse("0.5"), parse("0.4")))
    >>> find_pairs(ask, parse('"A–Q", "B–P"')).fault
    ''
    """
    values = worths((*ask.cards, *ask.partners))
    cards, partners = values[: len(ask.cards)], values[len(ask.cards) :]
    pairs = [[n for n, partner in enumerate(partners) if partner == value] for value in cards]
    places = [places[0] for places in pairs if len(places) == 1]
    if len(places) != len(cards) or len(set(places)) != len(places):
        raise NotExact("the cards cannot be matched in one way alone")
    ours = t.Listing(tuple(pair_name(card, place) for card, place in enumerate(places)))
    return found(ours, key, key == ours)


def find_truth(ask: TrueOrFalse, key: t.Node) -> Finding:
    """Return whether a statement is true.

    Raises
    ------
    NotExact
        If it cannot be decided.

    >>> from itembank.notation import parse
    >>> find_truth(TrueOrFalse(parse("2/3 > 3/4")), t.Label("true")).fault
    'it comes to "false", the key says "true"'
    """
    name = t.Label(TRUE if _is_true(ask) else FALSE)
    return found(name, key, key == name)


def _is_true(ask: TrueOrFalse) -> bool:
    letters = t.symbols(ask.statement) - {"π"}
    if letters and not ask.given:
        if any(op != "=" for op, _ in ask.statement.rest):
            raise NotExact("it is not decided here whether it is true for every letter")
        return all(algebra(a) == algebra(b) for a, _, b in sides(ask.statement))
    known = {}
    for given in ask.given:
        match given:
            case t.Relation(t.Sym(name), (("=", value),)) if name not in known:
                known[name] = exact(value)
            case _:
                raise NotExact("what is given is not a letter and its value")
    if set(known) != letters:
        raise NotExact("what is given is not each letter of the statement")
    _measures_alike(ask.statement)
    return true(ask.statement, known)


def _measures_alike(statement: t.Relation) -> None:
    every = [statement.first, *(side for _, side in statement.rest)]
    plain = [side for side in every if not t.symbols(side) and not isinstance(side, t.Ratio)]
    if len({frozenset(dimension(side).items()) for side in plain}) > 1:
        raise NotExact("the sides of the statement do not measure the same")
