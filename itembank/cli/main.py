"""The ``itembank`` command and its sub-commands.

Nothing heavy is imported here: each command imports what it needs when it runs.
"""

from __future__ import annotations

import gc
from collections.abc import Sequence
from typing import Annotated

import typer

from itembank.cli.audit import audit
from itembank.cli.band import band
from itembank.cli.group import PlainGroup, later
from itembank.cli.mark import mark
from itembank.cli.pack import pack
from itembank.cli.show import show
from itembank.cli.topics import topics
from itembank.cli.usage import PlainCommand

app = typer.Typer(
    name="itembank",
    cls=PlainGroup,
    no_args_is_help=True,
    pretty_exceptions_enable=False,
    rich_markup_mode=None,
    context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100},
)


def _version(wanted: bool) -> None:
    if wanted:
        from importlib.metadata import version

        typer.echo(f"itembank {version('itembank')}")
        raise typer.Exit()


@app.callback()
def itembank(
    version: Annotated[
        bool,
        typer.Option("--version", callback=_version, is_eager=True, help="Show the version."),
    ] = False,
) -> None:
    """Plan, write, prove and print the short quiz that opens a maths lesson.

    \b
    Examples, in a department's folder:
      itembank pack                    everything for the next lesson of the usual class
      itembank band 5 --out-of 8       what a pupil with 5 out of 8 does next
      itembank show ratio.share        some questions of a topic, with keys and working

    ‘itembank COMMAND --help’ says more about each command.
    """  # noqa: D301 - typer keeps the lines after \b as they are


app.command(cls=PlainCommand, short_help="Make everything for one lesson.")(pack)
app.command(cls=PlainCommand, short_help="Say what pupils do next, from their scores.")(band)
app.command(cls=PlainCommand, short_help="List the topics.")(topics)
app.command(cls=PlainCommand, short_help="Show sample questions of a topic.")(show)
app.command(cls=PlainCommand, short_help="Mark one typed answer.")(mark)
app.command(cls=PlainCommand, short_help="Prove every key, and look for faults.")(audit)
later(app, "bank", "itembank.cli.bank:app", "Keep a department's own questions.")


def run(arguments: Sequence[str] | None = None) -> None:
    """Run the command line, and exit with its status."""
    # Most of what a command makes lives until it ends: looking for garbage as often as Python
    # does by default found none, and took a twentieth of a pack's time.
    gc.set_threshold(100_000)
    app(arguments, prog_name="itembank")
