"""A hand-written question with somebody's answer to it, which is right or wrong.

The question is read by itself, as any other is, with that answer for its key.
"""

from __future__ import annotations

import re

from itembank.bank.model.fields import BankItem
from itembank.bank.question.question import Question
from itembank.bank.question.task_given import NeedsPerson
from itembank.items.asks import Answered
from itembank.text.late_pattern import late
from itembank.wording.tasks.kinds_said import NAME, WHY

_JUDGED = late(
    rf"(?P<question>.+[.?!:}})])\s+(?:{NAME}) says (?:that )?(?:the|an) answer is "
    rf"\{{(?P<answer>[^{{}}]+)\}}\. True or false\?{WHY}\s*",
    re.I | re.S,
)


def judged_answer(item: BankItem) -> Question:
    """Return the question whether an answer is right, of a prompt that asks it.

    Raises
    ------
    NeedsPerson
        If the words are not those of the frame, or the question in it is not understood.

    >>> prompt = "Round {3.47} to 1 decimal place. Mei says the answer is {3.5}. True or false?"
    >>> item = BankItem(id="a-1", tier="core", prompt=prompt, key='"true"')
    >>> judged_answer(item).ask.form
    'rounded'
    """
    from itembank.bank.question.as_item import read_with_model  # which reads this question too

    found = _JUDGED.fullmatch(item.prompt)
    if found is None or item.figure is not None:
        raise NeedsPerson("Whether an answer is right is asked in other words than can be read.")
    asked = item.model_copy(
        update={
            "prompt": found["question"],
            "key": found["answer"],
            "form": None,
            "working": (),
            "misconceptions": (),
            "accept": (),
        }
    )
    inner, modelled = read_with_model(asked, item.id, item.id)
    judged = Answered(inner.ask, inner.key, inner.form)
    return Question(judged, inner.constants, modelled=modelled)
