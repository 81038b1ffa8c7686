"""Spot the mistake and odd one out, made of a topic's questions and of how they go wrong.

A topic says how pupils write a solution in which they make one of its mistakes; the right lines
are in its working.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import TYPE_CHECKING, Any, NamedTuple

from itembank.items.item import Draft, Find, Misconception, Rewrite, Tier
from itembank.items.kinds.card_kinds import Same, odd_one_out
from itembank.items.kinds.draft_worth import worth
from itembank.items.kinds.lot import lot
from itembank.items.kinds.wrong_lines import Does, spot_the_mistake
from itembank.notation import tree as t

if TYPE_CHECKING:
    from itembank.items.topics.space import Space
    from itembank.items.topics.topic import Topic


class WrongSolution(NamedTuple):
    """A solution as a pupil writes it who makes a mistake in one line.

    `wrong` is the number of that line, from 1; the lines after it follow from it.
    """

    mistake: Misconception
    lines: tuple[t.Node, ...]
    wrong: int = 1


Solutions = Callable[..., Sequence[WrongSolution]]
"""Gives the wrong solutions of the question at a point of a space: none where it will not do."""


GoneWrong = Callable[[Draft], Sequence[WrongSolution]]
"""Gives the wrong solutions of a question from the question itself and its working."""


def with_mistakes(space: Space, solutions: Solutions, count: int = 120) -> Space:
    """Return a space of a topic with wrong solutions of so many of its questions at its end.

    The questions work out what is printed, or rewrite it. Where a question can go wrong in
    several ways, one is drawn by lot.

    >>> from itembank.items.topics.registry import find_item
    >>> item = find_item("fractions.multiply/support/500")
    >>> type(item.ask).__name__
    'FaultyLine'
    """

    def wrong_solution(topic: Topic, tier: Tier, of: tuple[Any, ...]) -> Draft:
        asked = topic.make(tier, *of)
        return _spotted(asked, _drawn(solutions(*of), of))

    return space.also(wrong_solution, of=space.some(count, lambda *of: bool(solutions(*of))))


def with_odd_lines(space: Space, solutions: Solutions, count: int = 120) -> Space:
    """Return a space of a topic with cards of so many of its questions at its end.

    The cards are what is worked out, its right lines, and the line of a mistake, which is the odd
    one out.

    >>> from itembank.items.topics.registry import find_topic
    >>> find_topic("number.negatives-add").title
    'Adding and subtracting negative numbers'
    """

    def odd_line(topic: Topic, tier: Tier, of: tuple[Any, ...]) -> Draft:
        return _with_odd(topic.make(tier, *of), _drawn(solutions(*of), of))

    return space.also(odd_line, of=space.some(count, lambda *of: bool(solutions(*of))))


def with_working_gone_wrong(
    spaces: Mapping[Tier, Space],
    gone_wrong: GoneWrong,
    count: int = 80,
    only: Mapping[Tier, Callable[..., bool]] | None = None,
) -> dict[Tier, Space]:
    """Return the spaces of a topic with wrong solutions at the end of each, and with odd lines.

    Each is made by `gone_wrong` from a question and its working. Where it finds no way to go wrong
    at some points of a tier, `only` leaves them out.

    >>> from itembank.items.topics.registry import find_item
    >>> type(find_item("equations.two-step/core/2719").ask).__name__
    'FaultyLine'
    """

    def wrong_solution(topic: Topic, tier: Tier, of: tuple[Any, ...]) -> Draft:
        asked = topic.make(tier, *of)
        return _spotted(asked, _drawn(gone_wrong(asked), of))

    def odd_line(topic: Topic, tier: Tier, of: tuple[Any, ...]) -> Draft:
        asked = topic.make(tier, *of)
        return _with_odd(asked, _drawn(gone_wrong(asked), of))

    grown = {}
    for tier, space in spaces.items():
        some = space.some(count, (only or {}).get(tier))
        grown[tier] = space.also(wrong_solution, of=some).also(odd_line, of=some)
    return grown


def with_wrong_solutions(space: Space, solutions: Solutions, count: int = 120) -> Space:
    """Return a space with both at its end: wrong solutions, and cards with an odd line."""
    return with_odd_lines(with_mistakes(space, solutions, count), solutions, count)


def _spotted(asked: Draft, solution: WrongSolution) -> Draft:
    mistake, lines, wrong = solution
    return spot_the_mistake(
        _asked(asked),
        lines,
        wrong,
        asked.key,
        mistake=mistake,
        steps=asked.steps,
        twin=(*asked.twin, mistake.id),
        does=_does(asked),
    )


def _with_odd(asked: Draft, solution: WrongSolution) -> Draft:
    mistake, lines, wrong = solution
    question = _asked(asked)
    right = [node for node in _right(asked) if node not in (question, asked.key)]
    same: Same = "value" if not t.symbols(question) - {"π"} else "form"
    return odd_one_out(
        lines[wrong - 1],
        (question, *right[:1], asked.key),
        mistakes=((mistake, 1),),
        steps=asked.steps,
        twin=(*asked.twin, mistake.id),
        same="solution" if isinstance(question, t.Relation) else same,
    )


_DOES: dict[str, Does] = {
    "simplify": "simplifies",
    "expand": "expands",
    "factorise": "factorises",
}


def _does(draft: Draft) -> Does:
    if isinstance(draft.ask, Rewrite):
        return _DOES[draft.ask.detail]
    if isinstance(_asked(draft), t.Relation):
        return "solves"
    # Nothing is worked out where a fraction or a ratio is written with smaller numbers.
    return "simplifies" if isinstance(_asked(draft), t.Frac | t.Ratio) else "works out"


def _drawn(solutions: Sequence[WrongSolution], of: tuple[Any, ...]) -> WrongSolution:
    return solutions[lot(len(solutions), of, "goes wrong")]


def _asked(draft: Draft) -> t.Node:
    match draft.ask:
        case Find(t.Sym(), (equation,)):
            return equation
        case Find(target, ()) | Rewrite(target, _):
            return target
    raise ValueError("a solution goes wrong where something printed is worked out or rewritten")


def _right(draft: Draft) -> Iterator[t.Node]:
    """Yield what the working says that the question is equal to, line by line."""
    if isinstance(_asked(draft), t.Relation):
        yield from (step.maths for step in draft.steps if step.maths is not None)
        return
    value = worth(draft.key)
    for step in draft.steps:
        if isinstance(step.maths, t.Relation):
            for sign, node in step.maths.rest:
                if sign == "=" and worth(node) == value:
                    yield node
