"""The options that say what a question is, the same for every command that writes one."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Annotated, Any

import typer

if TYPE_CHECKING:
    from itembank.work.bank.question_fields import Fields

Text = str | None
Texts = list[str] | None

Tier = Annotated[Text, typer.Option(metavar="TIER", help="support, core or challenge.")]
Prompt = Annotated[
    Text, typer.Option(metavar="TEXT", help="The question, its mathematics between { and }.")
]
Key = Annotated[Text, typer.Option(metavar="LINE", help="The answer, in one line.")]
Task = Annotated[
    Text, typer.Option(metavar="TASK", help="work-out, solve, simplify …; as it reads if left out.")
]
Form = Annotated[
    Text, typer.Option(metavar="FORM", help="The form the answer must have; the task's usual one.")
]
Marks = Annotated[int | None, typer.Option(metavar="N", help="Marks; 1.")]
Model = Annotated[
    Texts,
    typer.Option(metavar="LINE", help="The mathematics behind the words; give it again for more."),
]
FindOption = Annotated[
    Text, typer.Option("--find", metavar="LINE", help="What the model is asked for, such as b.")
]
Constant = Annotated[
    Texts, typer.Option(metavar="N", help="A number the model needs and the words do not print.")
]
NotNeeded = Annotated[
    Texts,
    typer.Option(
        metavar="NUMBER=WHY", help="A number of the question that the model leaves out, and why."
    ),
]
Choice = Annotated[
    Texts, typer.Option(metavar="NAME=WORTH", help="For the task choose: one of the choices.")
]
Choose = Annotated[
    Text, typer.Option(metavar="WHICH", help="For the task choose: least or greatest.")
]
Working = Annotated[
    Texts, typer.Option(metavar="WORDS|LINE", help="A line of working; give it again for more.")
]
Mistake = Annotated[
    Texts,
    typer.Option(metavar="WRONG|WHAT|ASK", help="A wrong answer, what they do, what to ask."),
]
Accept = Annotated[Texts, typer.Option(metavar="RULE", help="How marking is more lenient.")]
Author = Annotated[Text, typer.Option(metavar="CODE", help="Who wrote it, by code.")]
Licence = Annotated[Text, typer.Option(metavar="TEXT", help="Its licence; the bank's.")]
Source = Annotated[Text, typer.Option(metavar="TEXT", help="Where it comes from.")]


PARTS = (
    *("id", "tier", "prompt", "key", "task", "form", "marks", "model", "find", "constant"),
    *("not_needed", "choice", "choose", "working", "mistake", "accept"),
    *("author", "licence", "source"),
)
"""The options that say what a question is."""


def fields_of(given: Mapping[str, Any]) -> Fields:
    """Return what the options of a command say of a question; those left out are not in it.

    Raises:
        ItembankError: a line of working, a mistake, a choice or a constant is not written
            as it has to be.

    >>> fields_of({"key": "5", "working": ["Add | 2 + 3 = 5"], "choice": None, "bank": "b"})
    {'key': '5', 'working': [['Add', '2 + 3 = 5']]}
    """
    from itembank.cli.bank.writing.item_typed import mistakes, pair, whole_numbers, working_line

    record = {name: given[name] for name in PARTS if given.get(name) is not None}
    if record.get("tier"):
        record["tier"] = record["tier"].lower()
    if lines := record.pop("working", None):
        record["working"] = [working_line(line) for line in lines]
    if numbers := record.pop("constant", None):
        record["constants"] = whole_numbers(numbers, "--constant")
    if spare := record.pop("not_needed", None):
        record["not_needed"] = dict(pair(text, "--not-needed NUMBER=WHY") for text in spare)
    if choices := record.pop("choice", None):
        record["options"] = dict(pair(text, "--choice NAME=WORTH") for text in choices)
    if texts := record.pop("mistake", None):
        record["misconceptions"] = mistakes(texts)
    return record
