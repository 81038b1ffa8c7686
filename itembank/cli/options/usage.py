"""Words for what was mistyped on the command line: an option, a value, a command.

The parser behind the command line has words of its own for these, which speak of integers
and arguments; a teacher gets one plain sentence that says what to type instead.
"""

from __future__ import annotations

import re
from typing import Any

import typer
import typer.core

from itembank.cli.options.values import read_plainly
from itembank.files.faults import join_words, nearest

# What the parser raises for anything mistyped, whichever library typer takes it from.
UsageError: Any = typer.BadParameter.__mro__[1]

# Commands that take no words of their own, and the option such a word was likely meant for.
MEANT_FOR = {"pack": "--topic", "topics": "--strand"}
_QUOTED = re.compile(r"'([^']*)'")
_EXTRA = re.compile(r"unexpected extra arguments?(?:\(s\))? \((.*)\)$")


class PlainCommand(typer.core.TyperCommand):
    """A command whose help names its arguments without the types a program gives them."""

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        for one in self.params:
            if one.param_type_name == "argument":
                # Marks such as <str> and <list[str]> say nothing to a teacher.
                setattr(one, "display_type_rich", lambda ctx: "")  # noqa: B010 - typed as a method

    def get_params(self, ctx: Any) -> list[Any]:
        """Return the options and arguments, ready to be read."""
        return read_plainly(super().get_params(ctx))

    def parse_args(self, ctx: Any, args: list[str]) -> list[str]:
        """Read the command's options; a fault in them knows which command it is of."""
        try:
            return super().parse_args(ctx, args)
        except UsageError as error:
            if error.ctx is None:
                error.ctx = ctx
            raise

    def get_help(self, ctx: Any) -> str:
        """Return the help, with TOPIC for the ``{TOPIC}`` of a program's manual."""
        return re.sub(r"\{([A-Z]\w*)\}", r"\1", super().get_help(ctx))


def is_help(error: Any) -> bool:
    """Tell whether what was raised only shows the help, as a bare ``itembank`` does."""
    return type(error).__name__ == "NoArgsIsHelpError"


def usage_words(error: Any, commands: list[str]) -> str:
    """Return one plain sentence or two for a usage error; `commands` are those there are."""
    path = error.ctx.command_path if error.ctx is not None else "itembank COMMAND"
    more = f"‘{path} --help’ shows what there is."
    message = str(error.message)
    quoted = _QUOTED.search(message)
    kind = type(error).__name__
    if kind == "NoSuchOption":
        typed = error.option_name
        if typed[1:].isdigit() and path == "itembank band":
            return f"‘{typed}’ is not a score. Write a whole number, 0 or more."
        if typed[1:].isdigit() and path == "itembank mark":
            return f"{typed} was read as an option. Put two dashes before it: -- {typed}"
        near = list(error.possibilities or ())
        advice = f"Did you mean {join_words(near, 'or')}?" if near else more
        return f"There is no option {typed}. {advice}"
    if kind == "BadOptionUsage":
        if "does not take" in message:
            return f"{error.option_name} takes no value. Write it alone."
        return f"{error.option_name} needs a value after it. ‘{path} --help’ shows which."
    if kind == "MissingParameter":
        return f"{error.param.metavar or error.param.name} is missing. {more}"
    if kind == "BadParameter" and error.param is not None:
        # Words and paths are taken as they come: only numbers can be of the wrong kind.
        return f"{error.param.opts[0]} needs a whole number, such as {error.param.opts[0]} 3."
    if message.startswith("No such command") and quoted:
        near = nearest(quoted[1], commands)
        advice = (
            f"Did you mean {join_words(near, 'or')}?"
            if near
            else f"The commands are {join_words(commands)}."
        )
        return f"There is no command ‘{quoted[1]}’. {advice}"
    if extra := _EXTRA.search(message):
        option = MEANT_FOR.get(error.ctx.info_name)
        advice = f"Did you mean {option} {extra[1].split()[0]}?" if option else more
        return f"‘{extra[1]}’ is not expected there. {advice}"
    return f"{error.format_message()} {more}"
