"""What to type to get further, for each matter that an error of the parts below names.

Those parts know nothing of options. They say what is the matter and what it is about
(:class:`~itembank.errors.ItembankError`); here stands what a person at the terminal does.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from pathlib import Path

from itembank.errors import ItembankError, SeveralErrors
from itembank.text.paths_shown import as_typed


@dataclass(frozen=True, slots=True)
class Advice:
    """A sentence on what to type; ``{path}`` in it stands for what the error is about.

    It is given by some commands only, where others have no such option.
    """

    words: str
    commands: Collection[str] = ()


ADVICE: Mapping[str, Advice] = {
    "another bank": Advice("Name another bank with --bank.", ["pack"]),
    "bank alone": Advice("For this pack alone: --questions-from both.", ["pack"]),
    "beyond the year": Advice("For this pack alone: --beyond-year.", ["pack"]),
    "no bank named": Advice("For this pack alone, name its folder with --bank.", ["pack"]),
    "no department here": Advice(
        "Go to the department's folder, or name it with --department; ‘itembank demo’ writes one "
        "to try things with."
    ),
    "no such department": Advice("Check how --department is spelt."),
    "pack there": Advice(
        "Add --replace to put the new one in its place, or name another place with --output."
    ),
    "place of a pack": Advice("Name another place with --output."),
    "place of packs": Advice("Or name another place for packs with --output."),
    "strand": Advice("‘itembank topics --strand {strand}’ lists its topics."),
}
"""What to type, by the matter of an error. A matter that needs no more words stands here not."""


def told(error: ItembankError, command: str = "") -> str:
    """Return what to tell a person of an error: its message, and what to type to get further.

    Advice for other commands than `command` is left out.

    >>> told(ItembankError("‘ratio’ is a strand.", matter="strand", strand="ratio"))
    '‘ratio’ is a strand. ‘itembank topics --strand ratio’ lists its topics.'
    """
    if isinstance(error, SeveralErrors):
        return "\n".join(told(part, command) for part in error.errors)
    advice = ADVICE.get(error.matter)
    if advice is None or (advice.commands and command not in advice.commands):
        return str(error)
    about = {
        name: as_typed(value) if isinstance(value, Path) else value
        for name, value in error.about.items()
    }
    return f"{error} {advice.words.format_map(about)}"
