"""Whether the words of a prompt and the task that its file names go together."""

from __future__ import annotations

from itembank.bank.model.fields import BankItem
from itembank.bank.question.given.task_given import NeedsPerson

_AGREE = {
    "work-out": ("work-out", "missing", "find-letter", "convert", "round", "simplify", "nth-term"),
    "solve": ("solve", "find-letter", "missing", "work-out"),
    "simplify": ("simplify", "convert", "work-out"),
    "convert": ("convert", "work-out", "simplify", "round"),
    "round": ("round", "convert", "work-out"),
    "order": ("order", "convert", "work-out"),
    "compare": ("compare",),
}
"""The tasks of a file, each with the readings of the words that it fits."""


def agree(item: BankItem, task: str, lettered: bool = True) -> None:
    """Raise NeedsPerson where the file names another task than the words."""
    if item.task is None or task == item.task or task in _AGREE.get(item.task, ()):
        return
    if item.task == "simplify" and task == "expand" and not lettered:
        return  # a surd multiplied out has no brackets left to simplify
    raise NeedsPerson(f"The words say to {SAID.get(task, task)}, but the task is ‘{item.task}’.")


SAID = {
    "hcf": "find the highest common factor",
    "lcm": "find the lowest common multiple",
    "prime-factors": "write a product of primes",
    "nth-term": "find the nth term",
    "make-subject": "change the subject",
    "expand": "expand",
    "factorise": "factorise",
    "share": "share in a ratio",
    "round": "round",
    "work-out": "work something out",
    "missing": "find a missing number",
    "find-letter": "find the value of a letter",
    "solve": "solve",
    "order": "put in order",
    "compare": "compare",
    "convert": "write in another way",
    "simplify": "simplify",
    "extreme": "find the largest or the smallest",
}
