"""Answers that people give to a question of a topic: is this one right, and whose is."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING, Any

from itembank.items.asks.answer_given import Answered
from itembank.items.asks.ask_kind import kind_of
from itembank.items.asks.round import Round
from itembank.items.asks.round_reading import RoundReading
from itembank.items.asks.true_or_false import FALSE, TRUE
from itembank.items.asks.who_is_right import WhoIsRight
from itembank.items.forms.form_rules import form_fault
from itembank.items.item import Draft, Run, Slip, Step, Tier
from itembank.items.kinds.draft_worth import worth
from itembank.items.kinds.lot import lot, shuffled
from itembank.items.kinds.stated_answers import differs
from itembank.items.kinds.statements import WHY, answer_twin
from itembank.items.kinds.wrong_lines import NAMES
from itembank.items.wrong_answers import told_apart
from itembank.notation import tree as t

if TYPE_CHECKING:
    from itembank.items.topics.space import Space
    from itembank.items.topics.topic import Topic


def answer_claim(topic: Topic, tier: Tier, of: tuple[Any, ...]) -> Draft:
    """Return a question of the topic with somebody's answer to it, which is right or wrong.

    For questions in words, as stories are. Every other answer is a wrong one, of a mistake that
    the topic knows, in the form that is asked for.
    """
    asked = topic.make(tier, *of)
    wrong = _wrong(asked)
    holds = lot(2, of, "claim") == 0 or not wrong
    slip = (wrong or asked.slips)[lot(len(wrong or asked.slips), of, "which")]
    answer = asked.key if holds else slip.wrong
    key, other = (TRUE, FALSE) if holds else (FALSE, TRUE)
    names = _not_in(asked)
    said = f"\n{names[lot(len(names), of, 'who')]}{_says(asked)}"
    question = asked.prompt
    if isinstance(question[-1], str):
        question = (*question[:-1], question[-1] + said)
    else:
        question = (*question, said)
    return Draft(
        (*question, answer, f". True or false? {WHY}"),
        Answered(asked.ask, answer, asked.form),
        t.Label(key),
        "true-or-false",
        (*asked.steps, Step(f"So the answer is {'right' if holds else 'wrong'}: {key}.")),
        (Slip(slip.misconception, t.Label(other)),),
        ("answer", *asked.twin, *answer_twin(holds, slip)),
        1,
        asked.constants,
    )


def _may_be_given(asked: Draft, answer: t.Node) -> bool:
    """Keep answers in the form that is asked for; a number is rounded wrongly in any form."""
    if isinstance(asked.ask, Round):
        return answer != asked.ask.target
    if isinstance(asked.ask, RoundReading):
        return True
    return not form_fault(asked.form, answer)


def with_answers(space: Space, count: int = 120, only: Callable[..., bool] | None = None) -> Space:
    """Return a space of a topic with answers to judge to so many of its questions at its end.

    Where the answer is not one thing (a list, a name), `only` leaves the question out.
    """
    return space.also(answer_claim, of=space.some(count, only))


def whose_answer(topic: Topic, tier: Tier, of: tuple[Any, ...]) -> Draft:
    """Return a question of the topic with two or three answers to it: whose is right.

    The others make mistakes that the topic knows.
    """
    asked = topic.make(tier, *of)
    chosen: list[Slip] = []
    for slip in shuffled(_wrong(asked), *of, "whose"):
        if worth(slip.wrong) not in [worth(taken.wrong) for taken in chosen]:
            chosen.append(slip)
    answers = shuffled((asked.key, *(slip.wrong for slip in chosen[:2])), *of, "order")
    names = shuffled(_not_in(asked), *of, "who")[: len(answers)]
    giver = {answer: t.Label(name) for answer, name in zip(answers, names, strict=True)}
    runs: list[Run] = [*asked.prompt]
    for place, (name, answer) in enumerate(zip(names, answers, strict=True)):
        before = " and " if place == len(names) - 1 else ", "
        said = f"{before}{name} says " if place else f"\n{name}{_says(asked)}"
        last = runs[-1]
        if isinstance(last, str):
            said = last + said
            runs.pop()
        runs += [said, answer]
    right = giver[asked.key]
    return Draft(
        (*runs, ". Who is right?"),
        WhoIsRight(asked.ask, tuple(zip(names, answers, strict=True)), asked.form),
        right,
        "name",
        (*asked.steps, Step(f"So {right.text} is right.")),
        tuple(Slip(slip.misconception, giver[slip.wrong]) for slip in chosen[:2]),
        ("whose answer", *asked.twin, *sorted(slip.misconception.id for slip in chosen[:2])),
        1,
        asked.constants,
        figure=asked.figure,
    )


def with_who_is_right(
    space: Space, count: int = 120, only: Callable[..., bool] | None = None
) -> Space:
    """Return a space of a topic with so many of its questions and people's answers at its end.

    Where the answer is not one thing, or no mistake gives one of the form that is asked for,
    `only` leaves the question out.
    """
    return space.also(whose_answer, of=space.some(count, only))


def with_people_asked(
    spaces: Mapping[Tier, Space], name: str, count: int = 60
) -> dict[Tier, Space]:
    """Return the spaces of a topic, each with answers of three people at its end: whose is right.

    For questions of a picture or a list as well as for stories. `name` is the topic's id. A
    question of which no two mistakes give answers of the key's own sort is left out.

    >>> from itembank.items.topics.registry import find_topic
    >>> topic = find_topic("statistics.median")
    >>> "".join(map(str, topic.item(Tier.CORE, len(topic.spaces[Tier.CORE]) - 1).prompt))[-13:]
    'Who is right?'
    """

    def kept(tier: Tier) -> Callable[..., bool]:
        def keep(of: tuple[Any, ...]) -> bool:
            from itembank.items.topics.registry import find_topic

            asked = find_topic(name).make(tier, *of)
            wrong = _wrong(asked)
            alike = all(differs(asked.key, slip.wrong) for slip in wrong)
            # x = 1, y = 3 in a row of answers would not show where one ends.
            parts = asked.key.parts if isinstance(asked.key, t.Listing) else ()
            single = not any(isinstance(part, t.Relation) for part in parts)
            apart = any(worth(wrong[0].wrong) != worth(slip.wrong) for slip in wrong)
            return alike and single and apart

        return keep

    return {
        tier: space.also(whose_answer, kept(tier), of=space.some(count))
        for tier, space in spaces.items()
    }


def with_given_answers(space: Space, only: Callable[..., bool] | None = None) -> Space:
    """Return a space of a topic with both kinds of question on answers given, at its end.

    Where the answer is not one thing, `only` leaves the question out of both.

    >>> from itembank.items.topics.space import Space
    >>> fresh = Space(kind=("story",), number=range(3))
    >>> len(fresh), len(with_given_answers(fresh))
    (3, 9)
    """
    return with_who_is_right(with_answers(space, only=only), only=only)


def _says(asked: Draft) -> str:
    # Of a question with many right answers nobody has *the* answer.
    return f" says {'an' if kind_of(asked.ask).many else 'the'} answer is "


def _wrong(asked: Draft) -> list[Slip]:
    """Return the mistakes that give an answer of another worth, which somebody might give."""
    value = worth(asked.key)
    return [
        slip
        for slip in told_apart(asked.slips)
        if worth(slip.wrong) != value and _may_be_given(asked, slip.wrong)
    ]


def _not_in(asked: Draft) -> list[str]:
    """Return the names of people whom the question does not speak of."""
    words = "".join(run for run in asked.prompt if isinstance(run, str))
    return [name for name in NAMES if name not in words]
