"""Plain text for the terminal: tables, wrapped paragraphs, an item with its working.

No meaning rests on colour, and none is used.
"""

from __future__ import annotations

import re
import shutil
import sys
import textwrap
from collections.abc import Collection, Iterable, Sequence
from typing import TYPE_CHECKING

from itembank.text.characters import short_message
from itembank.text.in_words import plural

if TYPE_CHECKING:
    from itembank.items.item import Item, Run
    from itembank.notation.tree import Node

WIDEST = 100
"""Columns of a line at most: longer ones are hard to read, however wide the window is."""
LONGEST_TIED = 40
"""Characters of mathematics that are kept on one line; longer ones may be broken at spaces."""
_PER_CENT = re.compile(r"(?<=\d) %")
_TIED = "\N{NO-BREAK SPACE}"  # made a plain space again when the lines are filled


def width() -> int:
    """Return the number of columns to fill: the terminal's, and 100 at most."""
    return max(40, min(WIDEST, shutil.get_terminal_size((80, 24)).columns))


def fits(text: str) -> bool:
    """Tell whether no line of `text` would be broken; true where nothing shows it in a window."""
    if not sys.stdout.isatty():
        return True
    return max(map(len, text.splitlines()), default=0) <= shutil.get_terminal_size((80, 24)).columns


def say(text: str, err: bool = False) -> None:
    """Print sentences; in a window they are broken between words, never inside one.

    Of anything huge that an error quotes, only the beginning is printed.
    """
    import typer

    if err:
        text = short_message(text)

    stream = sys.stderr if err else sys.stdout
    if stream.isatty():
        columns = shutil.get_terminal_size((80, 24)).columns
        text = "\n".join(
            textwrap.fill(line, columns, break_long_words=False, break_on_hyphens=False)
            for line in text.splitlines()
        )
    typer.echo(text, err=err)


def table(heads: Sequence[str], rows: Sequence[Sequence[str]], right: Collection[int] = ()) -> str:
    """Return rows under headings in aligned columns; those in `right` are set to the right.

    >>> print(table(["topic", "items"], [["a", "5"], ["bb", "10"]], right={1}))
    topic  items
    a          5
    bb        10
    """
    wide = [max(len(row[i]) for row in (heads, *rows)) for i in range(len(heads))]
    lines = []
    for row in (heads, *rows):
        cells = [
            cell.rjust(wide[i]) if i in right else cell.ljust(wide[i]) for i, cell in enumerate(row)
        ]
        lines.append("  ".join(cells).rstrip())
    return "\n".join(lines)


def paragraph(lead: str, text: str) -> str:
    """Return `text` wrapped beside `lead`, its later lines indented to match.

    >>> print(paragraph("  Key   ", "3/4"))
      Key   3/4
    """
    filled = textwrap.fill(
        _PER_CENT.sub(f"{_TIED}%", text),
        width(),
        initial_indent=lead,
        subsequent_indent=" " * len(lead),
        break_long_words=False,
        break_on_hyphens=False,
    )
    return filled.replace(_TIED, " ")


def maths(node: Node) -> str:
    """Return mathematics as one line of text, tied so that a short piece is not broken."""
    from itembank.notation.line import shown_line

    return tied(shown_line(node))


def tied(line: str) -> str:
    """Return a line of mathematics so that a short one is not broken."""
    return line.replace(" ", _TIED) if len(line) <= LONGEST_TIED else line


def prompt_text(prompt: Sequence[Run]) -> str:
    """Return a prompt as one line of text, its mathematics in line notation."""
    return "".join(run if isinstance(run, str) else _in_prompt(run) for run in prompt)


def _in_prompt(node: Node) -> str:
    from itembank.notation.tree import Label

    # The quotation marks of a name keep it apart for the parser; on a page it has none.
    return tied(node.text) if isinstance(node, Label) else maths(node)


def item_text(number: int, item: Item) -> str:
    """Return an item as a teacher would want to read it: question, key, working, mistakes."""
    from itembank.items.measures.difficulty import difficulty
    from itembank.items.measures.kind_told import PLAIN, kind_told

    lines = question_lines(f"{number}. ", item)
    if item.figure is not None:
        from itembank.figures.figure import words as figure_words

        lines.insert(1, paragraph("   Picture  ", figure_words(item.figure)))
    if (told := kind_told(item.ask, item.prompt)) not in PLAIN:
        lines.append(paragraph("   Kind     ", told))
    lines.append(paragraph("   Address  ", f"{item.address}  (difficulty {difficulty(item):.1f})"))
    return "\n".join(lines)


def question_lines(lead: str, item: Item) -> list[str]:
    """Return the lines of what prints of an item: question, key, working, mistakes."""
    from itembank.items.forms.form_rules import form_words

    return face_lines(
        lead,
        prompt_text(item.prompt),
        item.marks,
        f"{key_text(item)}  ({form_words(item.form)})",
        [(step.say, "" if step.maths is None else maths(step.maths)) for step in item.steps],
        [
            (maths(slip.wrong), slip.misconception.name, slip.misconception.ask)
            for slip in item.slips
        ],
    )


def key_text(item: Item) -> str:
    """Return a key as text; where many answers are right it is said to be one of them."""
    from itembank.items.asks import kind_of

    return example_key(maths(item.key)) if kind_of(item.ask).many else maths(item.key)


def example_key(key: str) -> str:
    """Return one of many right answers, said to be one."""
    return f"for example {key} (others are right)"


def face_lines(
    lead: str,
    prompt: str,
    marks: int,
    key: str,
    steps: Iterable[tuple[str, str]],
    slips: Iterable[tuple[str, str, str]],
) -> list[str]:
    """Return the lines of what prints of an item, from its parts as text."""
    worth = f"{marks}{_TIED}{plural(marks, 'mark')}"
    lines = [paragraph(lead, f"{prompt}  [{worth}]"), paragraph("   Key      ", key)]
    label = "   Working  "
    for words, line in steps:
        lines.append(paragraph(label, f"{words}  {line}" if line else words))
        label = " " * len(label)
    label = "   Likely   "
    for wrong, name, ask in slips:
        lines.append(paragraph(label, f"{wrong}: {name}. Ask: {ask}"))
        label = " " * len(label)
    return lines
