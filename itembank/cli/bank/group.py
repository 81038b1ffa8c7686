"""``itembank bank``: the commands of a department's own questions, each read when it is used."""

from __future__ import annotations

from typing import ClassVar

import typer

from itembank.cli.options.command_groups import Later, PlainGroup

COMMANDS = {
    "new": ("new:new", "Start a bank."),
    "add": ("add:add", "Add a question."),
    "change": ("change:change", "Change a question."),
    "list": ("list:list_", "List questions, and search for them."),
    "find": ("find:find", "Find questions by their words, and more."),
    "show": ("show:show", "Show a question as it will print."),
    "check": ("check:check", "Look for faults in a bank's files."),
    "prove": ("prove:prove", "Prove every key."),
    "sign": ("sign:sign", "Record who has checked which questions."),
    "move": ("move:move", "Move a question to another topic or bank."),
    "rename": ("move:rename", "Give a question another id."),
    "retire": ("move:retire", "Take a question out of use, and keep it."),
    "twins": ("twins:twins", "Find questions that ask the same."),
    "compare": ("compare:compare", "Say how two banks differ."),
    "merge": ("merge:merge", "Bring two banks together."),
    "settle": ("settle:settle", "Choose between versions of a question, or keep all."),
    "undo": ("undo:undo", "Take back the last change."),
    "import": ("table:import_", "Add questions from a CSV file."),
    "export": ("table:export", "Write questions to a CSV file."),
    "unlock": ("check:unlock", "Remove a lock that was left behind."),
    "schema": ("check:schema", "Print the JSON Schema of a bank's files."),
}
"""Where each command is, and what the list of commands says of it."""

SAVING = {
    *("new", "add", "change", "sign", "move", "rename", "retire"),
    *("merge", "settle", "undo", "import"),
}
"""The commands that hold a bank's lock, where colleagues see who does."""


class Commands(PlainGroup):
    """The group of a bank's commands."""

    LATER: ClassVar = {
        name: Later(
            f"itembank.cli.bank.{where}",
            says,
            "itembank.cli.words.initials:ask_once" if name in SAVING else "",
        )
        for name, (where, says) in COMMANDS.items()
    }


app = typer.Typer(
    name="bank",
    cls=Commands,
    no_args_is_help=True,
    add_completion=False,
    rich_markup_mode=None,
)


@app.callback()
def bank() -> None:
    """Keep a department's own questions: written by hand, proved like the others.

    A bank is a folder with bank.toml and one file a topic. Commands use the bank around the
    current folder, or the department's only one, unless told of another.

    \b
    From a first question to the class:
      itembank bank new questions --author HT="head of mathematics"
      itembank bank add
      itembank bank prove
      itembank bank sign garden-12 --by HT
      itembank pack --bank questions

    ‘itembank bank COMMAND --help’ says more about each command.
    """  # noqa: D301 - typer keeps the lines after \b as they are
