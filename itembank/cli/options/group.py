"""Groups of commands: the one place where faults become messages.

A group may hold groups that are read only when they are used, so that a command's start does
not pay for those it does not need.
"""

from __future__ import annotations

import functools
import importlib
from collections.abc import Callable
from typing import Any

import typer
import typer.core

from itembank.cli.options import usage
from itembank.cli.options.command import PlainCommand
from itembank.cli.options.values import Reader, slots_of
from itembank.cli.words.advice import told
from itembank.cli.words.wrapped import say
from itembank.errors import ItembankError

STOPPED = 130  # 128 + SIGINT, as shells count

KIND = "COMMAND_CLASS"
"""Where a module's command is read in a way of its own, the name of the class that does so."""
_MEANT = "meant"  # on a function that stands for a command: where that command is
_FIRST = "first"  # and where what is to run before it is


def later(app: typer.Typer, name: str, meant: str, short_help: str, first: str = "") -> None:
    """Add a command that is read when it is used.

    `meant` is its module and its name there, as in ``itembank.cli.bank.group:app``; it is a group
    of commands or the function of one. The list of commands has `short_help` to show until then.
    `first` names, in the same way, a function that runs before the function of the command.
    """

    def stand_in() -> None:
        raise AssertionError(f"{meant} was not put in its place")

    setattr(stand_in, _MEANT, meant)
    setattr(stand_in, _FIRST, first)
    app.command(name, cls=PlainCommand, short_help=short_help)(stand_in)


def _meant(name: str, command: Any) -> Any:
    """Return the command that `command` stands for; itself where it stands for none."""
    where = getattr(getattr(command, "callback", None), _MEANT, "")
    if not where:
        return command
    return _read(name, where, getattr(command.callback, _FIRST, ""))


@functools.cache
def _read(name: str, where: str, first: str) -> Any:
    home, found = _find(where)
    if first:
        found = _after(first, found)
    if not isinstance(found, typer.Typer):
        app = typer.Typer(add_completion=False, rich_markup_mode=None)
        app.command(name, cls=getattr(home, KIND, PlainCommand))(found)
        found = app
    return typer.main.get_command(found)


def _find(where: str) -> tuple[Any, Any]:
    """Return the module and what stands in it, as in ``itembank.cli.bank.group:app``."""
    module, _, attribute = where.partition(":")
    home = importlib.import_module(module)
    return home, getattr(home, attribute)


def _after(first: str, function: Callable[..., Any]) -> Callable[..., Any]:
    """Return `function` with what `first` names run before it, its options unchanged."""

    @functools.wraps(function)
    def both(*args: Any, **kwargs: Any) -> Any:
        _find(first)[1]()
        return function(*args, **kwargs)

    return both


class PlainGroup(typer.core.TyperGroup):
    """A group of commands; turns what a person can put right into one plain message."""

    def parse_args(self, ctx: Any, args: list[str]) -> list[str]:
        """Read what stands before the command; without a command, show the help.

        Raises:
            ItembankError: says what was mistyped.
        """
        if ctx.resilient_parsing:  # a shell that completes half a line: nothing is wrong yet
            return super().parse_args(ctx, args)
        read = Reader(ctx.command_path, slots_of(self), ctx.help_option_names)
        typed = read.sort(args, leading=True)
        if typed is None or typed[0]:
            # Help, the version and their like: each does its work here, and ends the command.
            return super().parse_args(ctx, args)
        ctx.args = typed[1]
        if not ctx.args:
            typer.echo(ctx.get_help(), err=True)
            ctx.exit(ItembankError.exit_status)
        return typed[1]

    def resolve_command(self, ctx: Any, args: list[str]) -> Any:
        """Find the command that is meant; one that stands for a group is put in its place.

        Raises:
            ItembankError: there is no such command.
        """
        name, *rest = args
        command = self.get_command(ctx, name)
        if command is None and ctx.resilient_parsing:
            return None, None, rest
        if command is None:
            raise usage.no_command(name, self.list_commands(ctx))
        return name, _meant(name, command), rest

    def invoke(self, ctx: Any) -> Any:
        """Run the chosen command; end with its exit status."""
        try:
            name, command, rest = self.resolve_command(ctx, ctx.args)
            ctx.invoked_subcommand = name
            with command.make_context(name, rest, parent=ctx) as inner:
                return inner.command.invoke(inner)
        except ItembankError as error:
            say(told(error, ctx.invoked_subcommand or ""), err=True)
            raise typer.Exit(error.exit_status) from None
        except KeyboardInterrupt:
            typer.echo("\nStopped.", err=True)
            raise typer.Exit(STOPPED) from None
        except BrokenPipeError:
            raise  # the reader of our output went away, as `head` does: typer ends quietly
        except OSError as error:
            if not error.filename:
                raise
            say(f"{error.filename}: {error.strerror}.", err=True)
            raise typer.Exit(ItembankError.exit_status) from None
