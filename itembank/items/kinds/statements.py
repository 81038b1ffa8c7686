"""True or false: a statement of numbers, of a solution, or of an identity."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from itembank.items.asks.true_or_false import FALSE, TRUE, TrueOrFalse
from itembank.items.item import Draft, Find, Misconception, Rewrite, Slip, Step, Tier, prompt
from itembank.items.kinds.draft_worth import worth
from itembank.items.kinds.lot import lot
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
        twin=(*asked.twin, *answer_twin(holds, slip)),
        given=given,
        always=() if given else tuple(map(t.Sym, sorted(t.symbols(says) - {"π"}))),
    )


def with_claims(space: Space, count: int = 120, only: Callable[..., bool] | None = None) -> Space:
    """Return a space of a topic with statements made of so many of its questions at its end.

    Where not all questions work out what is printed, `only` tells which do.

    >>> from itembank.items.topics.space import Space
    >>> len(with_claims(Space(None, a=range(1000))))
    1120
    """
    return space.also(claim, of=space.some(count, only))


def answer_twin(holds: bool, slip: Slip) -> tuple[object, ...]:
    """Return what tells a question with a wrong answer from others: whose mistake it is."""
    return () if holds else (slip.misconception.id,)
