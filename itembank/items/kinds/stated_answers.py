"""True or false: a statement that gives the answer to a question, of a figure or of a story."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING, Any

from itembank.items.asks import Answered
from itembank.items.asks.round_reading import ROUNDED
from itembank.items.asks.true_or_false import FALSE, TRUE
from itembank.items.forms.form_rules import form_fault
from itembank.items.item import Draft, Run, Slip, Step, Tier
from itembank.items.kinds.draft_worth import worth
from itembank.items.kinds.lot import lot
from itembank.items.kinds.statements import WHY
from itembank.items.kinds.wrong_lines import NAMES
from itembank.items.wrong_answers import told_apart
from itembank.notation import tree as t

if TYPE_CHECKING:
    from itembank.items.topics.space import Space
    from itembank.items.topics.topic import Topic

_FORM = re.compile(r" ?(?:Give|Leave|Write) your answer [^.?]*\.$")
_ASKS = re.compile(
    r"(?:(?<=^)|(?<=[.?!] ))(?:What (?P<be>is|are)|Work out|Find|Calculate|Write down) "
    r"(?=(?:the|its|my|angle|each|his|her|their) )(?P<thing>[^.?!]*)(?P<stop>[.?]?)$"
)


def stated_answer(topic: Topic, tier: Tier, of: tuple[Any, ...]) -> Draft:
    """Return a statement that gives an answer to a question of the topic, which is right or wrong.

    *The area of the triangle is 24 cm²*, where the words of the question allow it; else somebody
    says the answer after the question. Every other answer is a wrong one, of a mistake that the
    topic knows. How an answer is to be written is asked of a rounded one alone, so that answers
    that are wrong differ in worth.
    """
    asked = topic.make(tier, *of)
    slips = told_apart(asked.slips)
    false = [slip for slip in slips if differs(asked.key, slip.wrong) and _fits(asked, slip.wrong)]
    holds = lot(2, of, "answer") == 0 or not false
    slip = (false or slips)[lot(len(false or slips), of, "which answer")]
    answer = asked.key if holds else slip.wrong
    key, other = (TRUE, FALSE) if holds else (FALSE, TRUE)
    runs = asked.prompt
    if not isinstance(asked.ask, ROUNDED) and isinstance(runs[-1], str):
        runs = (*runs[:-1], _FORM.sub("", runs[-1]))
    stated = None if isinstance(answer, t.Label) else _stated(runs, answer)
    runs, shown = stated or (_said(runs, answer, of), answer)
    return Draft(
        runs,
        Answered(asked.ask, shown, _form(asked.form, shown)),
        t.Label(key),
        "true-or-false",
        (*asked.steps, Step(f"So the statement is {key}.")),
        (Slip(slip.misconception, t.Label(other)),),
        ("stated", *asked.twin, key, *(() if holds else (slip.misconception.id,))),
        1,
        asked.constants,
        figure=asked.figure,
    )


def _form(form: str, shown: t.Node) -> str:
    # The value of x is 3, where the question has the answer x = 3.
    return "value" if form == "solution" and not isinstance(shown, t.Relation) else form


def _fits(asked: Draft, answer: t.Node) -> bool:
    return isinstance(asked.ask, ROUNDED) or not form_fault(asked.form, answer)


def _said(runs: tuple[Run, ...], answer: t.Node, of: tuple[Any, ...]) -> tuple[Run, ...]:
    """Return a question after which somebody says an answer."""
    words = "".join(run for run in runs if isinstance(run, str))
    names = [name for name in NAMES if name not in words]
    who = names[lot(len(names), of, "who")]
    return _joined((*runs, f"\n{who} says the answer is ", answer, f". True or false? {WHY}"))


def with_statements(
    spaces: Mapping[Tier, Space], count: int = 80, only: Callable[..., bool] | None = None
) -> dict[Tier, Space]:
    """Return the spaces of a topic, each with answers stated for so many of its questions.

    They stand at the end of each. Where not all questions will do, `only` tells which.

    >>> from itembank.items.topics.space import Space
    >>> spaces = {Tier.CORE: Space(None, a=range(1000))}
    >>> len(with_statements(spaces)[Tier.CORE])
    1080
    """
    return {
        tier: space.also(stated_answer, of=space.some(count, only))
        for tier, space in spaces.items()
    }


def differs(key: t.Node, wrong: t.Node) -> bool:
    """Tell whether a wrong answer is of the key's sort and is worth something else.

    >>> from itembank.notation import parse
    >>> texts = (("6 cm^2", "12 cm^2"), ("6 cm^2", "6 cm"), ("1/2", "2/4"), ("x = 2", "2"))
    >>> [differs(parse(key), parse(wrong)) for key, wrong in texts]
    [True, False, False, False]
    """
    return _sort(key) == _sort(wrong) and worth(key) != worth(wrong)


def _sort(answer: t.Node) -> object:
    units = frozenset(part.unit for part in t.walk(answer) if isinstance(part, t.Quantity))
    match answer:
        case t.Relation(first, rest):
            letter = first if isinstance(first, t.Sym) else None
            return ("relation", letter, len(rest), *(_sort(side) for _, side in rest))
        case t.Listing(parts) | t.Either(parts):
            return tuple(map(_sort, parts))
        case t.Label():
            return "name"
    return ("value", units, isinstance(answer, t.Money))


def _stated(runs: tuple[Run, ...], answer: t.Node) -> tuple[tuple[Run, ...], t.Node] | None:
    """Return the prompt with its question turned into a statement, where its words allow it."""
    # The question begins in one run and may go on over mathematics to the end.
    start = next((n for n in range(len(runs) - 1, -1, -1) if _begins(runs, n)), None)
    if start is None:
        return None
    text = "".join(run if isinstance(run, str) else "\0" for run in runs[start:])
    found = _ASKS.search(text)
    nodes = [run for run in runs[start:] if not isinstance(run, str)]
    if found is None:
        return None
    if text[: found.start()].count("\0"):
        return None
    if isinstance(answer, t.Relation):
        if not re.match(r"the value of \0$", found["thing"]):
            if not found["thing"].startswith("the equation of"):
                return None
        else:
            answer = answer.rest[-1][1]
    be = found["be"] or ("are" if found["thing"].startswith("the coordinates") else "is")
    pieces = found["thing"].split("\0")
    thing: list[Run] = [pieces[0][0].upper() + pieces[0][1:]]
    for node, piece in zip(nodes, pieces[1:], strict=True):
        thing += [node, piece]
    lead = text[: found.start()]
    made = (*runs[:start], lead, "True or false? ", *thing, f" {be} ", answer, f". {WHY}")
    return _joined(made), answer


def _begins(runs: tuple[Run, ...], place: int) -> bool:
    run = runs[place]
    if not isinstance(run, str):
        return False
    text = "".join(r if isinstance(r, str) else "\0" for r in runs[place:])
    return _ASKS.search(text) is not None


def _joined(runs: tuple[Run, ...]) -> tuple[Run, ...]:
    made: list[Run] = []
    for run in runs:
        if isinstance(run, str) and made and isinstance(made[-1], str):
            made[-1] += run
        elif run != "":
            made.append(run)
    return tuple(made)
