"""True or false: a statement of numbers, of a solution, or of an identity."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from itembank.items.asks.answered import Answered
from itembank.items.asks.ask_kind import kind_of
from itembank.items.asks.round import Round
from itembank.items.asks.true_or_false import FALSE, TRUE, TrueOrFalse
from itembank.items.forms.form_rules import form_fault
from itembank.items.item import Draft, Find, Misconception, Rewrite, Slip, Step, Tier, prompt
from itembank.items.kinds.draft_worth import worth
from itembank.items.kinds.lot import lot
from itembank.items.kinds.wrong_lines import NAMES
from itembank.items.wrong_answers import told_apart
from itembank.notation import tree as t

if TYPE_CHECKING:
    from itembank.items.topics.space import Space
    from itembank.items.topics.topic import Topic

WHY = "Be\u00a0ready\u00a0to\u00a0say\u00a0why."


def statement(
    says: t.Relation,
    holds: bool,
    *,
    mistake: Misconception,
    steps: tuple[Step, ...],
    twin: tuple[object, ...],
    given: tuple[t.Relation, ...] = (),
    always: tuple[t.Sym, ...] = (),
) -> Draft:
    """Return the question whether a statement is true; the reason is given aloud.

    Parameters
    ----------
    says, holds
        The statement, and whether it is true.
    mistake
        Who makes it takes a false statement for true, or a true one for false.
    steps
        The working that shows it; what follows from it is added.
    given, always
        What its letters are worth; or else it is meant for every value of the letters `always`.
    twin
        What tells the question from others.

    >>> from itembank.notation import parse
    >>> across = Misconception("m.across", "adds across", "What is 1/2 + 1/2?")
    >>> made = statement(
    ...     parse("1/2 + 1/3 = 2/5"), False, mistake=across,
    ...     steps=(Step("Add.", parse("1/2 + 1/3 = 5/6")),), twin=(1, 2, 1, 3),
    ... )
    >>> made.key, made.steps[-1].say
    (Label(text='false'), 'So the statement is false.')
    """
    key, other = (TRUE, FALSE) if holds else (FALSE, TRUE)
    shown: dict[str, t.Node] = {"s": says}
    text = "True or false?"
    if always:
        names = [f"x{n}" for n in range(len(always))]
        shown |= dict(zip(names, always, strict=True))
        joined = " and ".join(", ".join(f"{{{name}}}" for name in names).rsplit(", ", 1))
        plural = len(always) > 1
        text = f"True or false, whatever {'numbers' if plural else 'number'} {joined} "
        text += "stand for?" if plural else "stands for?"
    text += " "
    if given:
        shown |= {f"g{n}": relation for n, relation in enumerate(given)}
        text += f"When {' and '.join(f'{{g{n}}}' for n in range(len(given)))}, "
    return Draft(
        prompt(f"{text}{{s}}. {WHY}", **shown),
        TrueOrFalse(says, given),
        t.Label(key),
        "true-or-false",
        (*steps, Step(f"So the statement is {key}.")),
        (Slip(mistake, t.Label(other)),),
        ("true or false", *twin, key),
        1,
    )


def claim(topic: Topic, tier: Tier, of: tuple[Any, ...]) -> Draft:
    """Return a question of the topic with an answer to it, and whether that is right.

    Every other answer is a wrong one, of a mistake that the topic knows. For questions that work
    out what is printed, and for those that solve an equation in one letter.
    """
    asked = topic.make(tier, *of)
    slips = told_apart(asked.slips)
    # A mistake of form alone, such as to factorise in part, gives nothing that is not so.
    false = [slip for slip in slips if worth(slip.wrong) != worth(asked.key)]
    holds = lot(2, of, "claim") == 0 or not false
    slip = (false or slips)[lot(len(false or slips), of, "which")]
    answer = asked.key if holds else slip.wrong
    given: tuple[t.Relation, ...]
    match asked.ask:
        case Find(t.Sym() as x, (equation,)) if isinstance(answer, t.Relation):
            says, given = equation, (t.equals(x, answer.rest[-1][1]),)
        case Find(target, ()) | Rewrite(target, _):
            says, given = t.equals(target, answer), ()
        case _:
            raise ValueError(f"{topic.id} asks something else at {of} than to work it out")
    return statement(
        says,
        holds,
        mistake=slip.misconception,
        steps=asked.steps,
        twin=(*asked.twin, *_answer_twin(holds, slip)),
        given=given,
        always=() if given else tuple(map(t.Sym, sorted(t.symbols(says) - {"π"}))),
    )


def answer_claim(topic: Topic, tier: Tier, of: tuple[Any, ...]) -> Draft:
    """Return a question of the topic with somebody's answer to it, which is right or wrong.

    For questions in words, as stories are. Every other answer is a wrong one, of a mistake that
    the topic knows, in the form that is asked for.
    """
    asked = topic.make(tier, *of)
    value = worth(asked.key)
    wrong = [
        slip
        for slip in told_apart(asked.slips)
        if worth(slip.wrong) != value and _may_be_given(asked, slip.wrong)
    ]
    holds = lot(2, of, "claim") == 0 or not wrong
    slip = (wrong or asked.slips)[lot(len(wrong or asked.slips), of, "which")]
    answer = asked.key if holds else slip.wrong
    key, other = (TRUE, FALSE) if holds else (FALSE, TRUE)
    words = "".join(run for run in asked.prompt if isinstance(run, str))
    names = [name for name in NAMES if name not in words]
    # Of a question with many right answers nobody has *the* answer.
    says = f" says {'an' if kind_of(asked.ask).many else 'the'} answer is "
    said = f"\n{names[lot(len(names), of, 'who')]}{says}"
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
        ("answer", *asked.twin, *_answer_twin(holds, slip)),
        1,
        asked.constants,
    )


def _may_be_given(asked: Draft, answer: t.Node) -> bool:
    """Keep answers in the form that is asked for; a number is rounded wrongly in any form."""
    if isinstance(asked.ask, Round):
        return answer != asked.ask.target
    return not form_fault(asked.form, answer)


def with_answers(space: Space, count: int = 120, only: Callable[..., bool] | None = None) -> Space:
    """Return a space of a topic with answers to judge to so many of its questions at its end.

    Where the answer is not one thing (a list, a name), `only` leaves the question out.
    """
    return space.also(answer_claim, of=space.some(count, only))


def with_claims(space: Space, count: int = 120, only: Callable[..., bool] | None = None) -> Space:
    """Return a space of a topic with statements made of so many of its questions at its end.

    Where not all questions work out what is printed, `only` tells which do.

    >>> from itembank.items.topics.space import Space
    >>> len(with_claims(Space(None, a=range(1000))))
    1120
    """
    return space.also(claim, of=space.some(count, only))


def _answer_twin(holds: bool, slip: Slip) -> tuple[object, ...]:
    return () if holds else (slip.misconception.id,)
