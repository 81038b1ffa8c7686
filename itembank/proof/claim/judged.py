"""Whether an answer that somebody gives to a question is right, by either road.

The road finds what the question comes to; what it says of the answer, as of a key, tells.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from itembank.items.asks import Ask, FaultyWorking, Handlers, WhoIsRight, kind_of
from itembank.items.asks.answer_given import Answered
from itembank.items.asks.faulty_line import line_name
from itembank.items.asks.true_or_false import FALSE, TRUE
from itembank.notation import tree as t
from itembank.notation.value import NotExact
from itembank.proof.claim.finding import Finding, found


def _as_many(ours: t.Node | str, answer: t.Node) -> bool:
    """Tell whether an answer has the parts that were found, each of the same letter or number."""
    return isinstance(ours, str) or _sort(ours) == _sort(answer)


def _sort(answer: t.Node) -> object:
    match answer:
        case t.Listing(parts) | t.Either(parts):
            return (type(answer), *map(_sort, parts))
        case t.Relation(t.Sym(name), (("=", _),)):
            return name
    return "value"


Road = Handlers[Callable[[Any, t.Node], Finding]]
"""What a road makes of each kind of question, and how a key differs from it."""


def find_judged(ask: Answered, key: t.Node, road: Road) -> Finding:
    """Return whether the answer is right, and whether the key says so.

    Raises
    ------
    NotExact
        If the question is of another kind, its answer has parts, or the road cannot settle it.
    """
    name = t.Label(TRUE if _right(ask.of, ask.answer, road) else FALSE)
    return found(name, key, key == name)


def find_who(ask: WhoIsRight, key: t.Node, road: Road) -> Finding:
    """Return who gives the right answer, and whether the key says so.

    Raises
    ------
    NotExact
        If nobody does or more than one, and as for one answer.
    """
    names = [name for name, answer in ask.answers if _right(ask.of, answer, road)]
    # Two right answers in unlike spelling make the question unfair, so this is for a person to see.
    if len(names) != 1:
        raise NotExact(f"{len(names)} of the answers are right, and not one")
    name = t.Label(names[0])
    return found(name, key, key == name)


Same = Callable[[t.Node, t.Node], bool]
"""Whether a road finds two trees worth the same."""


def find_faulty_working(ask: FaultyWorking, key: t.Node, road: Road, same: Same) -> Finding:
    """Return the line of a working that is wrong, and whether the key names it and the answer.

    The answer is held to the question by the road, and the lines to that answer by its `same`.

    Raises
    ------
    NotExact
        If no line is wrong or more than one, and as for one answer.
    """
    if not (isinstance(key, t.Listing) and len(key.parts) == 2):
        return found("", key, False, "the answer is a line and a result")
    line, result = key.parts
    # The result first: lines are held to the answer, which has to be the right one for that.
    if not _right(ask.of, result, road):
        return found("", key, False, "the result is another")
    wrong = _wrong_lines(ask.lines, result, same)
    if len(wrong) != 1:
        raise NotExact(f"{len(wrong)} lines are wrong, and not one")
    name = line_name(wrong[0])
    return found(name, line, line == name)


def _wrong_lines(lines: tuple[t.Node, ...], answer: t.Node, same: Same) -> list[int]:
    """Return the numbers of the lines that do not follow.

    First come calculations of parts, *3 + 5 + 7 = 15*: each is right where it is true. A result
    that is wrong is used by the lines after it, and stands there for what should have been found.
    The other lines are worth the answer: the first for itself, and each as the one before it.
    """
    wrong: list[int] = []
    meant: dict[t.Node, t.Node] = {}
    before: t.Node | None = None
    for number, line in enumerate(lines, start=1):
        if isinstance(line, t.Relation) and not t.symbols(line) - {"π"}:
            if before is not None or len(line.rest) != 1 or line.rest[0][0] != "=":
                raise NotExact("a part is worked out where the answer should be")
            made, result = line.first, line.rest[0][1]
            true = same(made, result)
            should = t.replaced(made, meant)
            if not true:
                wrong.append(number)
            if not true or should != made:
                # In brackets, since the lines that use it put it beside other signs.
                meant[result] = t.Bracket(should)
            continue
        # Held to the line before and not to the answer: else all after a slip were wrong as well.
        if not (same(before, line) if before else _worth_it(line, answer, meant, same)):
            wrong.append(number)
        before = line
    if before is None:
        raise NotExact("no line of the working comes to the answer")
    return wrong


def _worth_it(line: t.Node, answer: t.Node, meant: dict[t.Node, t.Node], same: Same) -> bool:
    """Tell whether the first line that is worth the answer is worth it."""
    if isinstance(line, t.Relation) and not isinstance(answer, t.Relation):
        letters = t.symbols(line) - {"π"}
        if len(letters) != 1:
            raise NotExact("the equation is not in one letter")
        answer = t.equals(t.Sym(next(iter(letters))), answer)
    elif isinstance(answer, t.Relation) and not isinstance(line, t.Relation):
        answer = answer.rest[-1][1]
    return same(t.replaced(line, meant), answer)


def _right(of: Ask, answer: t.Node, road: Road) -> bool:
    kind = kind_of(of)
    if not kind.answerable:
        raise NotExact("whether such an answer is right is not one thing")
    # The answer that is judged takes the key's place, so that a road needs no second way to say it.
    made = road.of(of)(of, answer)
    several = isinstance(answer, t.Listing | t.Either)
    if several and not (kind.whole and _as_many(made.answer, answer)):
        raise NotExact("whether such an answer is right is not one thing")
    return not made.fault
