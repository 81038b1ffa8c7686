"""What to type to get further, for each matter that an error of the parts below names.

Those parts know nothing of options. They say what is the matter and what it is about
(:class:`~itembank.errors.ItembankError`); here stands what a person at the terminal does.
"""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from itembank.cli.words.advice_given import Advice
from itembank.cli.words.week_advice import WEEK_ADVICE
from itembank.errors import ItembankError, SeveralErrors
from itembank.remark import Remark
from itembank.text.paths_shown import as_typed

ADVICE: Mapping[str, Advice] = {
    **WEEK_ADVICE,
    "another bank": Advice("Name another bank with --bank.", ["pack"]),
    "bank alone": Advice("For this pack alone: --questions-from both.", ["pack"]),
    "bank locked": Advice("If nobody is, ‘itembank bank unlock {folder}’ takes the lock away."),
    "beyond the year": Advice("For this pack alone: --beyond-year.", ["pack"]),
    "no bank named": Advice("For this pack alone, name its folder with --bank.", ["pack"]),
    "no department here": Advice("Go to the department's folder, or name it with --department."),
    "no such department": Advice("Check how --department is spelt."),
    "pack there": Advice(
        "Add --replace to put the new one in its place, or name another place with --output."
    ),
    "place of a pack": Advice("Name another place with --output."),
    "place of packs": Advice("Or name another place for packs with --output."),
    "no topics": Advice(
        "Go to a department's folder, name it with --department, or name topics with --topic."
    ),
    "nothing taught": Advice("Name what to ask with --topic."),
    "questions": Advice("Change --questions."),
    "questions for topics": Advice("Change --questions, or name fewer topics.", ["pack"]),
    "questions on a sheet": Advice("Change --follow-up."),
    "versions": Advice("Change --variants."),
    "strand": Advice("‘itembank topics --strand {strand}’ lists its topics."),
}
"""What to type, by the matter of an error. A matter that needs no more words stands here not."""


def told(said: ItembankError | Remark, command: str = "") -> str:
    """Return what to tell a person: a message, and what to type to get further.

    Advice for other commands than `command` is left out.

    >>> told(ItembankError("‘ratio’ is a strand.", matter="strand", strand="ratio"))
    '‘ratio’ is a strand. ‘itembank topics --strand ratio’ lists its topics.'
    """
    if isinstance(said, SeveralErrors):
        return "\n".join(told(part, command) for part in said.errors)
    advice = ADVICE.get(said.matter)
    if advice is None or (advice.commands and command not in advice.commands):
        return str(said)
    about = {
        name: as_typed(value) if isinstance(value, Path) else value
        for name, value in said.about.items()
    }
    return f"{said} {advice.words.format_map(about)}"
