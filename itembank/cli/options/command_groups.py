"""Groups of commands: the one place where faults become messages.

The commands of a group, which may be groups themselves, are a table (`LATER`) and are read only
when they are used, so that a command's start does not pay for those it does not need; not even a
stand-in of each is made, which took a fiftieth of the start.
"""

from __future__ import annotations

import functools
import importlib
from collections.abc import Callable, Mapping
from typing import Any, ClassVar, NamedTuple

import typer
import typer.core

from itembank.cli.options import usage
from itembank.cli.options.plain_command import PlainCommand
from itembank.cli.options.values import Reader, slots_of
from itembank.cli.words.what_to_type import told
from itembank.cli.words.wrapped import say
from itembank.errors import ItembankError

STOPPED = 130  # 128 + SIGINT, as shells count

KIND = "COMMAND_CLASS"
"""Where a module's command is read in a way of its own, the name of the class that does so."""


class Later(NamedTuple):
    """A command that is read when it is used.

    `meant` is its module and its name there, as in ``itembank.cli.bank.group:app``; it is a group
    of commands or the function of one. The list of commands has `says` to show until then.
    `first` names, in the same way, a function that runs before the function of the command.
    """

    meant: str
    says: str
    first: str = ""

    def read(self, name: str) -> Any:
        """Return the command itself, under the name it is to have."""
        home, found = _find(self.meant)
        return _command(name, found, self.first, getattr(home, KIND, PlainCommand))


@functools.cache
def _command(name: str, found: Any, first: str, kind: type[PlainCommand]) -> Any:
    """Return the command of a function or a group, which is the same however often it is used."""
    if first:
        found = _after(first, found)
    if not isinstance(found, typer.Typer):
        app = typer.Typer(add_completion=False, rich_markup_mode=None)
        app.command(name, cls=kind)(found)
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

    LATER: ClassVar[Mapping[str, Later]] = {}
    """Its commands, by their names."""

    def list_commands(self, ctx: Any) -> list[str]:
        """Return the names of its commands, in the order in which they are listed."""
        return list(self.LATER)

    def get_command(self, ctx: Any, cmd_name: str) -> Any:
        """Return what stands for a command in the list of commands, without reading it."""
        later = self.LATER.get(cmd_name)
        return later and PlainCommand(cmd_name, short_help=later.says)

    def read_command(self, name: str) -> Any:
        """Return a command, read now."""
        return self.LATER[name].read(name)

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
        """Find the command that is meant, and read it.

        Raises:
            ItembankError: there is no such command.
        """
        name, *rest = args
        if name in self.LATER:
            return name, self.read_command(name), rest
        if ctx.resilient_parsing:
            return None, None, rest
        raise usage.no_command(name, self.list_commands(ctx))

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
