"""Whether an answer that is to be judged has the form that its question asks for."""

from __future__ import annotations

from dataclasses import replace

from itembank.items.asks import Answered, WhoIsRight
from itembank.items.asks.true_or_false import TRUE
from itembank.items.item import Item
from itembank.notation import tree as t
from itembank.proof.exact.key_forms import key_form_fault
from itembank.wording.tasks.other_kinds.answer_said import answer_said


def form_left_open(item: Item, answer: t.Node | str) -> str:
    """Return why an answer of the right worth is neither right nor wrong by its form, or ``""``.

    Of 4/6 to a question for the lowest terms of 8/12 a teacher may say either.

    Parameters
    ----------
    item
        The question, with what is printed.
    answer
        What a road finds: the name *true*, or who gives the answer of the right worth.
    """
    ask = item.ask
    if isinstance(ask, Answered) and answer == t.Label(TRUE):
        given = ask.answer
    elif isinstance(ask, WhoIsRight) and isinstance(answer, t.Label):
        given = dict(ask.answers)[answer.text]
    else:
        return ""
    said = answer_said(item.prompt)
    asked = said.question if said is not None else item.prompt
    inner = replace(item, prompt=asked, ask=ask.of, key=given, form=ask.form)
    fault = key_form_fault(inner)
    return f"the answer that is given has not the form that is asked for: {fault}" if fault else ""
