"""A command: its words are read our way, and its help names what it takes as a teacher would."""

from __future__ import annotations

from collections.abc import Collection
from typing import Any, ClassVar

import typer
import typer.core

from itembank.cli.options.values import Reader, slots_of


class PlainCommand(typer.core.TyperCommand):
    """A command whose words are read by :mod:`itembank.cli.options.values`."""

    MAY_BE_BLANK: ClassVar[Collection[str]] = ()
    """The arguments that say something where they hold nothing."""

    def parse_args(self, ctx: Any, args: list[str]) -> list[str]:
        """Read the command's words, or show its help.

        Raises:
            ItembankError: says what was mistyped.
        """
        if ctx.resilient_parsing:  # a shell that completes half a line: nothing is wrong yet
            return super().parse_args(ctx, args)
        values = Reader(
            ctx.command_path, slots_of(self), ctx.help_option_names, self.MAY_BE_BLANK
        ).values(args)
        if values is None:
            typer.echo(ctx.get_help())
            ctx.exit()
        ctx.params.update(values)
        ctx.args = []
        return []

    def collect_usage_pieces(self, ctx: Any) -> list[str]:
        """Return the parts of the first line of the help: ``[OPTIONS] TOPIC [SCORE]...``."""
        pieces = [self.options_metavar or ""]
        for param in self.params:
            if param.param_type_name == "argument":
                name = param.metavar or param.name
                pieces.append(
                    (name if param.required else f"[{name}]") + "..." * (param.nargs != 1)
                )
        return pieces

    def format_options(self, ctx: Any, formatter: Any) -> None:
        """Write what the command takes, without the types that a program gives its arguments."""
        rows: dict[str, list[tuple[str, str]]] = {"argument": [], "option": []}
        for param in self.get_params(ctx):
            record = param.get_help_record(ctx)
            if record is not None:
                argument = param.param_type_name == "argument"
                name = (param.metavar or param.name) if argument else record[0]
                rows[param.param_type_name].append((name, record[1]))
        for head, kind in (("Arguments", "argument"), ("Options", "option")):
            if rows[kind]:
                with formatter.section(head):
                    formatter.write_dl(rows[kind])
