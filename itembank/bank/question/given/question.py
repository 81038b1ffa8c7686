"""The question behind the words of a hand-written item."""

from __future__ import annotations

from itembank.data_class import dataclass
from itembank.items.item import Ask


@dataclass(frozen=True, slots=True)
class Question:
    """The question behind the words: what a proof starts from, and what only words add to it.

    `constants` are whole numbers that words stand for (the 2 of *half*); `form` is a form the
    question asks for by its very words, as *what percentage* does, or ``""``; `modelled` says that
    a model, options or a task stand for words that are not read one by one; `any_order` that the
    answer is a list in any order.
    """

    ask: Ask
    constants: tuple[int, ...] = ()
    form: str = ""
    task: str = ""
    modelled: bool = False
    any_order: bool = False
