"""A hand-written question with answers to it that somebody gives: which is right.

The question is read by itself, as any other is, with such an answer for its key.
"""

from __future__ import annotations

import re

from itembank.bank.model.fields import BankItem
from itembank.bank.question.question import Question
from itembank.bank.question.task_given import NeedsPerson
from itembank.items.asks import Answered, WhoIsRight
from itembank.notation.line import line
from itembank.text.late_pattern import late
from itembank.wording.tasks.answer_said import AnswerSaid
from itembank.wording.tasks.kinds_said import NAME

_QUESTION = late(
    rf"(?P<question>.+[.?!:}})])\s+(?:{NAME}) says (?:that )?(?:the|an) answer is \{{.*",
    re.I | re.S,
)


def judged_answer(item: BankItem, said: AnswerSaid) -> Question:
    """Return the question whether an answer is right, or whose is, of a prompt that asks it.

    Raises
    ------
    NeedsPerson
        If the question that is answered is not understood, or has a picture.

    >>> from itembank.bank.question.maths import read_maths
    >>> from itembank.wording.tasks.answer_said import answer_said
    >>> prompt = "Round {3.47} to 1 decimal place. Mei says the answer is {3.5}. True or false?"
    >>> item = BankItem(id="a-1", tier="core", prompt=prompt, key='"true"')
    >>> judged_answer(item, answer_said(read_maths(item).runs)).ask.form
    'rounded'
    """
    from itembank.bank.question.as_item import read_with_model  # which reads this question too

    found = _QUESTION.fullmatch(item.prompt)
    if found is None or item.figure is not None:
        raise NeedsPerson("Whether an answer is right is asked in other words than can be read.")
    # The form is that of the answer which the key names, or of the only one.
    given = dict(said.answers)
    answer = given.get(item.key.strip('"'), said.answers[0][1])
    asked = item.model_copy(
        update={
            "prompt": found["question"],
            "key": line(answer),
            "form": None,
            "working": (),
            "misconceptions": (),
            "accept": (),
        }
    )
    inner, modelled = read_with_model(asked, item.id, item.id)
    if len(said.answers) > 1:
        ask = WhoIsRight(inner.ask, said.answers, inner.form)
        return Question(ask, inner.constants, modelled=modelled)
    return Question(Answered(inner.ask, answer, inner.form), inner.constants, modelled=modelled)
