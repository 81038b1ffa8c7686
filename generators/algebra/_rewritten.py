"""The question that asks for an expression in another way: simplified, expanded or factorised."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Literal

from itembank.items.asks import Rewrite
from itembank.items.item import Draft, Run, Step
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t

_FORMS = {"simplify": "simplified", "expand": "expanded", "factorise": "factorised"}


def rewritten(
    how: Literal["simplify", "expand", "factorise"],
    text: tuple[Run, ...],
    asked: t.Node,
    key: t.Node,
    steps: tuple[Step, ...],
    wrong: Iterable[Wrong],
    twin: tuple[object, ...],
) -> Draft:
    """Return the question for an expression that is `asked`, its key in the form that `how` names.

    A wrong answer that happens to be the key is left out.
    """
    ask = Rewrite(asked, how)
    return Draft(text, ask, key, _FORMS[how], steps, slips(*wrong, key=key), twin)
