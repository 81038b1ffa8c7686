"""Terms of sequences and straight lines said in words: *the next term*, *the 10th term*, *the gradient*.

A sequence is gone on with where its steps are all alike (three terms or more) or its ratios are
(four or more).
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import partial
from itertools import pairwise

from itembank.notation import tree as t
from itembank.notation.value import exact
from itembank.wording.sentences.numbers_said import ORDINALS
from itembank.wording.tasks.sayings.arithmetic import Saying
from itembank.wording.tasks.sayings.whole_numbers import (
    HOW_MANY,
    MOST,
    Words,
    how_many,
    whole_number,
)
from itembank.wording.tasks.sums.sums import Built, NotBuilt, as_part, less

_PLACES = {**ORDINALS, "twentieth": 20, "thirtieth": 30, "fiftieth": 50, "hundredth": 100}
_PLACE = rf"(?P<place>\d{{1,4}}(?:st|nd|rd|th)|{'|'.join(_PLACES)})"


def _place(words: Words) -> int:
    said = words["place"]
    place = _PLACES.get(said) or int(re.sub(r"\D", "", said))
    if not 1 <= place <= MOST:
        raise NotBuilt(f"The terms from the 1st to the {MOST}th are worked out here.")
    return place


def _listed(nodes: Sequence[t.Node]) -> tuple[t.Node, ...]:
    parts = nodes[0].parts if len(nodes) == 1 and isinstance(nodes[0], t.Listing) else tuple(nodes)
    if len(parts) < 3 or any(t.symbols(part) for part in parts):
        raise NotBuilt("A sequence takes three numbers or more, to see how it goes on.")
    return parts


def _after_the_last(parts: Sequence[t.Node], steps: int) -> Built:
    """Return the term so many steps after the last that is printed."""
    values = [exact(part) for part in parts]
    last, before = parts[-1], parts[-2]
    if len({b - a for a, b in pairwise(values)}) == 1:
        step = t.Bracket(less(last, before)[0])
        more: t.Node = step if steps == 1 else t.Product(t.Int(steps), (("×", step),))
        return t.Sum(as_part(last), (("+", more),)), (steps,)
    if len(parts) > 3 and all(values) and len({b / a for a, b in pairwise(values)}) == 1:
        ratio: t.Node = t.Bracket(t.Product(as_part(last), (("÷", as_part(before)),)))
        times: t.Node = ratio if steps == 1 else t.Power(ratio, t.Int(steps))
        return t.Product(as_part(last), (("×", times),)), (steps,)
    raise NotBuilt("How this sequence goes on is not known: its steps are not all alike.")


def _next(words: Words, *nodes: t.Node) -> Built:
    parts, many = _listed(nodes), how_many(words)
    made = [_after_the_last(parts, step) for step in range(1, many + 1)]
    if many == 1:
        return made[0]
    return t.Listing(tuple(node for node, _ in made)), tuple(range(1, many + 1))


def _term(words: Words, *nodes: t.Node) -> Built:
    return _term_at(_place(words), nodes)


def _numbered_term(place: t.Node, *nodes: t.Node) -> Built:
    return _term_at(whole_number(place), nodes)


def _term_at(place: int, nodes: Sequence[t.Node]) -> Built:
    if len(nodes) == 1 and t.symbols(nodes[0]) == {"n"}:
        return _with_n(nodes[0], place), (place,)
    parts = _listed(nodes)
    if place <= len(parts):
        raise NotBuilt("That term is printed.")
    return _after_the_last(parts, place - len(parts))


def _first_terms(words: Words, *nodes: t.Node) -> Built:
    if len(nodes) != 1 or t.symbols(nodes[0]) != {"n"} or not words.get("many"):
        raise NotBuilt("The first terms come from an nth term, and it has to be said how many.")
    many = how_many(words)
    return t.Listing(tuple(_with_n(nodes[0], n) for n in range(1, many + 1))), tuple(
        range(1, many + 1)
    )


def _with_n(node: t.Node, n: int, letter: str = "n") -> t.Node:
    """Return an expression with a number for n: 5n − 2 with 10 is 5 × 10 − 2."""
    match node:
        case t.Sym(name) if name == letter:
            return t.Int(n)
        case t.Neg(of):
            return t.Neg(as_part(_with_n(of, n, letter)))
        case t.Juxt(factors):
            first, *rest = (_with_n(factor, n, letter) for factor in factors)
            return t.Product(first, tuple(("×", factor) for factor in rest))
        case t.Sum(first, terms):
            return t.Sum(
                _with_n(first, n, letter),
                tuple((op, _bracketed(_with_n(term, n, letter))) for op, term in terms),
            )
        case t.Product(first, terms):
            return t.Product(
                _with_n(first, n, letter),
                tuple((op, _with_n(term, n, letter)) for op, term in terms),
            )
        case t.Power(base, exponent):
            return t.Power(_with_n(base, n, letter), _with_n(exponent, n, letter))
        case t.Bracket(of):
            return t.Bracket(_with_n(of, n, letter))
        case t.Frac(top, bottom):
            return t.Frac(_with_n(top, n, letter), _with_n(bottom, n, letter))
    if any(t.symbols(child) for child in t.children(node)):
        raise NotBuilt("A term of this sequence is not worked out here.")
    return node


def _bracketed(node: t.Node) -> t.Node:
    return t.Bracket(node) if isinstance(node, t.Sum) else node


def _line_at(line: t.Node, x: int) -> t.Node:
    """Return y of a straight line y = … at a whole number x.

    Raises:
        NotBuilt: it is no equation y = …, or no straight line.
    """
    match line:
        case t.Relation(t.Sym("y"), (("=", side),)) if t.symbols(side) <= {"x"}:
            values = [exact(_with_n(side, k, "x")) for k in range(5)]
            if len({b - a for a, b in pairwise(values)}) == 1:
                return t.Bracket(_with_n(side, x, "x"))
    raise NotBuilt("This is read off a straight line that is given as y = ….")


def _gradient(line: t.Node) -> Built:
    """Return by how much y grows where x grows by 1, from 0 to 1."""
    return t.Sum(_line_at(line, 1), (("-", _line_at(line, 0)),)), (0, 1)


def _intercept(line: t.Node) -> Built:
    return _line_at(line, 0), (0,)


_IN = (
    r"(?: (?:of|in|for)(?: (?:this|the|each))?(?: (?:linear|arithmetic|geometric|number|following))?"
    r"(?: (?:sequence|pattern|list))?(?: of numbers)?)"
)
_SAID = r"(?: (?:with|whose|that has)(?: (?:the|an))? n\s?th term(?: (?:is|of|rule))?)"
_TERMS = r"(?:terms?|numbers?)"
TERM_SAYINGS = (
    Saying(rf"<FIND> the next (?:{HOW_MANY} )?{_TERMS}{_IN}:? <Ms>", _next),
    Saying(rf"<FIND> the next (?:{HOW_MANY} )?{_TERMS}{_IN}?", _next, "", True),
    Saying(rf"(?:what|which) (?:number|term)? ?comes next{_IN}?:? <Ms>", partial(_next, {})),
    Saying(rf"(?:what|which) (?:number|term)? ?comes next{_IN}?", partial(_next, {}), "", True),
    Saying(rf"continue (?:this|the) sequence for (?:{HOW_MANY} )(?:more )?terms", _next, "", True),
    Saying(rf"<FIND> the {_PLACE} {_TERMS}{_IN}{_SAID}?:? <Ms>", _term),
    Saying(rf"<FIND> the {_PLACE} {_TERMS}{_IN}?", _term, "", True),
    Saying(rf"<FIND> the <M>(?:st|nd|rd|th) {_TERMS}{_IN}{_SAID}?:? <Ms>", _numbered_term),
    Saying(rf"<FIND> the first {HOW_MANY} {_TERMS}{_IN}{_SAID}?:? <M>", _first_terms),
    Saying(rf"<FIND> the first {HOW_MANY} {_TERMS}{_IN}?", _first_terms, "", True),
    Saying(rf"(?:list|write out) the first {HOW_MANY} {_TERMS}{_IN}{_SAID}?:? <M>", _first_terms),
    Saying(
        r"<FIND> the gradient of(?: the)?(?: (?:straight )?line| graph)?(?: (?:of|with equation))? <NP>",
        _gradient,
    ),
    Saying(
        r"<FIND> the y-?\s?intercept of(?: the)?(?: (?:straight )?line| graph)?(?: (?:of|with equation))? <NP>",
        _intercept,
    ),
)
