"""A hand-written question with answers to it that are given: which is right, or whether one is.

The question is read by itself, as any other is, with such an answer for its key.
"""

from __future__ import annotations

import re

from itembank.bank.model.fields import BankItem
from itembank.bank.question.given.question import Question
from itembank.bank.question.given.task_given import NeedsPerson
from itembank.items.asks import Answered, WhoIsRight
from itembank.items.item import Item
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.text.late_pattern import late
from itembank.wording.tasks.other_kinds.answer_said import AnswerSaid
from itembank.wording.tasks.other_kinds.kinds_said import NAME
from itembank.wording.tasks.other_kinds.statement_said import StatementSaid

_QUESTION = late(
    rf"(?P<question>.+[.?!:}})])\s+(?:{NAME}) says (?:that )?(?:the|an) answer is \{{.*",
    re.I | re.S,
)


def judged_answer(item: BankItem, said: AnswerSaid) -> Question:
    """Return the question whether an answer is right, or whose is, of a prompt that asks it.

    Raises
    ------
    NeedsPerson
        If the question that is answered is not understood.

    >>> from itembank.bank.question.given.maths import read_maths
    >>> from itembank.wording.tasks.other_kinds.answer_said import answer_said
    >>> prompt = "Round {3.47} to 1 decimal place. Mei says the answer is {3.5}. True or false?"
    >>> item = BankItem(id="a-1", tier="core", prompt=prompt, key='"true"')
    >>> judged_answer(item, answer_said(read_maths(item).runs)).ask.form
    'rounded'
    """
    found = _QUESTION.fullmatch(item.prompt)
    if found is None:
        raise NeedsPerson("Whether an answer is right is asked in other words than can be read.")
    # The form is that of the answer which the key names, or of the only one.
    given = dict(said.answers)
    answer = given.get(item.key.strip('"'), said.answers[0][1])
    inner, modelled = _read(item, found["question"], answer)
    if len(said.answers) > 1:
        ask = WhoIsRight(inner.ask, said.answers, inner.form)
        return Question(ask, inner.constants, modelled=modelled)
    return Question(Answered(inner.ask, answer, inner.form), inner.constants, modelled=modelled)


def judged_statement(item: BankItem, said: StatementSaid) -> Question:
    """Return the question whether what a prompt states is true.

    Raises
    ------
    NeedsPerson
        If it states nothing that a question in known words asks for.

    >>> from itembank.bank.question.given.maths import read_maths
    >>> from itembank.wording.tasks.other_kinds.statement_said import statement_said
    >>> prompt = "True or false? The median of {2, 5, 9} is {5}."
    >>> item = BankItem(id="a-1", tier="core", prompt=prompt, key='"true"')
    >>> judged_statement(item, statement_said(read_maths(item).runs)).ask.answer
    Int(n=5)
    """
    refusals: list[NeedsPerson] = []
    for runs in said.questions:
        prompt = "".join(run if isinstance(run, str) else f"{{{line(run)}}}" for run in runs)
        try:
            inner, modelled = _read(item, prompt, said.answer)
        except NeedsPerson as refusal:
            refusals.append(refusal)
            continue
        ask = Answered(inner.ask, said.answer, inner.form)
        return Question(ask, inner.constants, modelled=modelled)
    raise refusals[0]


def _read(item: BankItem, prompt: str, answer: t.Node) -> tuple[Item, bool]:
    """Return the question that an answer is given to, and whether it rests on a model."""
    from itembank.bank.question.as_item import read_with_model  # which reads this question too

    own = {"form": None, "working": (), "misconceptions": (), "accept": ()}
    asked = item.model_copy(update={"prompt": prompt, "key": line(answer), **own})
    return read_with_model(asked, item.id, item.id)
