"""The task of a bank by its name, from the kind of question that it asks."""

from __future__ import annotations

from collections.abc import Callable
from typing import cast

from itembank.bank.model.fields import BankItem
from itembank.bank.question.given.task_given import Given
from itembank.items.asks import KINDS, Ask
from itembank.items.asks.handlers import resolved

Task = Callable[[BankItem, Given], Ask]
"""What makes a question of the mathematics that is given, or raises `NeedsPerson`."""


def task_names() -> tuple[str, ...]:
    """Return the name of every task that some kind of question is asked by.

    >>> {"round", "hcf", "solve"} <= set(task_names())
    True
    """
    return tuple(name for kind in KINDS.values() for name, _ in kind.layers.tasks)


def task_named(name: str) -> Task:
    """Return the task of a name.

    Raises
    ------
    KeyError
        If no kind of question is asked by such a task.

    >>> task_named("hcf").__name__
    'hcf'
    """
    for kind in KINDS.values():
        for task, reference in kind.layers.tasks:
            if task == name:
                return cast(Task, resolved(reference))
    raise KeyError(name)
