"""What to type to get further, for each matter that an error of the parts below names.

Those parts know nothing of options. They say what is the matter and what it is about
(:class:`~itembank.errors.ItembankError`); here stands what a person at the terminal does.
"""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from itembank.cli.words.advice_given import Advice
from itembank.cli.words.lesson_advice import LESSON_ADVICE
from itembank.cli.words.week_advice import WEEK_ADVICE
from itembank.errors import ItembankError, SeveralErrors
from itembank.files.faults import FileFaults, join_words
from itembank.remark import Remark
from itembank.text.paths_shown import quoted_path

ADVICE: Mapping[str, Advice] = {
    **LESSON_ADVICE,
    **WEEK_ADVICE,
    "another bank": Advice("Name another bank with --bank.", ["pack"]),
    "bank alone": Advice("For this pack alone: --questions-from both.", ["pack"]),
    "bank locked": Advice("If nobody is, ‘itembank bank unlock {folder}’ takes the lock away."),
    "beyond the year": Advice("For this pack alone: --beyond-year.", ["pack"]),
    "no bank named": Advice("For this pack alone, name its folder with --bank.", ["pack"]),
    "no department here": Advice(
        "Go to the department's folder, or name it with --department; ‘itembank demo’ writes one "
        "to try things with."
    ),
    "no such bank": Advice("Name its folder with --bank.", ["mark", "show"]),
    "no such department": Advice("Check how --department is spelt."),
    "changed since": Advice("‘itembank bank show {id}’ shows it as it is now."),
    "department there": Advice("‘itembank begin {folder}’ changes what is answered there."),
    "ids alone": Advice("Name questions, or give --topic or --all-proved, not both."),
    "key is wrong": Advice("Or add --anyway to save it as it is."),
    "not a bank": Advice("‘itembank bank new’ makes a bank."),
    "pack there": Advice(
        "Add --replace to put the new one in its place, or name another place with --output."
    ),
    "place of a pack": Advice("Name another place with --output."),
    "place of packs": Advice("Or name another place for packs with --output."),
    "no such topic": Advice("‘itembank topics’ lists them all."),
    "no topics": Advice(
        "Go to a department's folder, name it with --department, or name topics with --topic; "
        "‘itembank demo’ writes a department to try things with."
    ),
    "nothing taught": Advice("Name what to ask with --topic."),
    "question not to be asked": Advice("‘itembank show’ and ‘itembank bank list’ show addresses."),
    "question not whole": Advice("Give {fields}."),
    "questions": Advice("Change --questions."),
    "questions for topics": Advice("Change --questions, or name fewer topics.", ["pack"]),
    "questions on a sheet": Advice("Change --follow-up."),
    "questions to sign": Advice(
        "Name them, as in: itembank bank sign garden-1 --by HT. Or give --topic or --all-proved."
    ),
    "reason to retire": Advice('As in --because "too hard to read".'),
    "reviewer needed": Advice("Give a reviewer's code with --by, such as --by {example}."),
    "table there": Advice("Add --replace to write over it."),
    "topic without title": Advice("‘itembank topics’ lists those there are; or give --title."),
    "versions": Advice("Change --variants."),
    "where to move": Advice("Give --topic, or --to with the folder of another bank."),
    "strand": Advice("‘itembank topics --strand {strand}’ lists its topics."),
}
"""What to type, by the matter of an error. A matter that needs no more words stands here not."""


def told(said: ItembankError | Remark, command: str = "") -> str:
    """Return what to tell a person: a message, and what to type to get further.

    A fault of one field is told with the option that gives it. Advice for other commands than
    `command` is left out.

    >>> told(ItembankError("‘ratio’ is a strand.", matter="strand", strand="ratio"))
    '‘ratio’ is a strand. ‘itembank topics --strand ratio’ lists its topics.'
    >>> told(ItembankError("Write 3 numbers.", field="bands"))
    '--bands: Write 3 numbers.'
    """
    if isinstance(said, SeveralErrors):
        return "\n".join(told(part, command) for part in said.errors)
    if isinstance(said, FileFaults):
        matters = dict.fromkeys(fault.matter for fault in said.faults)
        words = [_advice(matter, {}, command) for matter in matters]
        # Once for all lines that it is about: a sheet may hold thirty of them.
        return (" " if len(said.faults) == 1 else "\n").join(filter(None, [str(said), *words]))
    field = "" if isinstance(said, Remark) else said.field
    option = f"{_option(field)}: " if field else ""
    return f"{option}{said} {_advice(said.matter, said.about, command)}".rstrip()


def _advice(matter: str, about: Mapping[str, Any], command: str) -> str:
    """Return what to type in a matter; nothing where `command` has no such option."""
    advice = ADVICE.get(matter)
    if advice is None or (advice.commands and command not in advice.commands):
        return ""
    return advice.words.format_map({name: _typed(name, value) for name, value in about.items()})


def _option(field: str) -> str:
    """Return the option that gives a field of a request."""
    return f"--{field.replace('_', '-')}"


def _typed(name: str, value: Any) -> Any:
    """Return what an error is about as it is typed: paths in quotes, fields as options."""
    if name == "fields":
        return join_words([_option(field) for field in value])
    return quoted_path(value) if isinstance(value, Path) else value
