"""The ``itembank`` command and its sub-commands.

Nothing heavy is imported here: each command is read when it is used, and imports what it needs
when it runs.
"""

from __future__ import annotations

import gc
import os
import sys
from collections.abc import Sequence
from typing import TYPE_CHECKING, Annotated, ClassVar

import typer

from itembank import VERSION
from itembank.bank.index.store.index_remark import listen, watch
from itembank.cli.options.command_groups import Later, PlainGroup
from itembank.cli.words.screen import screens
from itembank.cli.words.unseen import decoded, refuse_unseen
from itembank.cli.words.what_to_type import told
from itembank.cli.words.wrapped import say
from itembank.errors import ItembankError
from itembank.text.characters import shown

if TYPE_CHECKING:
    from itembank.cli.words.bar import Bar

COMMANDS = {
    "pack": ("pack:pack", "Make everything for one lesson."),
    "band": ("band:band", "Say what pupils do next, from their scores."),
    "topics": ("topics:topics", "List the topics."),
    "map": ("map:map_", "Draw which topics rest on which."),
    "show": ("show:show", "Show sample questions of a topic."),
    "mark": ("mark:app", "Mark typed answers."),
    "audit": ("audit:audit", "Prove every key, and look for faults."),
    "bank": ("bank.group:app", "Keep a department's own questions."),
    "week": ("week:week", "Plan a class's week and make its packs."),
    "record": ("record:record", "Record how a starter went."),
    "cover": ("cover:cover", "Note what a class was asked instead of its starter."),
    "cancel": ("cancel:cancel", "Note that a class had, or will have, no lesson."),
    "shift": ("shift:shift", "Move one lesson to another day or period."),
    "move": ("move:move", "Move pupils to another class or seat, with what was recorded."),
    "undo": ("undo:undo", "Take back what was recorded last."),
    "decide": ("decide:decide", "Say what the results suggest."),
    "report": ("report.command:report", "Report on a class, its topics and questions."),
    "export": ("export:export", "Write all results as CSV files."),
    "unite": ("unite:unite", "Bring two results files together."),
    "desk": ("desk:desk", "Open the tool in your browser."),
    "begin": ("begin:begin", "Make a department, or change it, by answering questions."),
    "demo": ("demo:demo", "Write a demo department to try things with."),
    "forget": ("forget:forget", "Remove a pupil, a class or old results for good."),
}
"""Where each command is, and what the list of commands says of it."""


class Commands(PlainGroup):
    """The group of all commands."""

    LATER: ClassVar = {
        name: Later(f"itembank.cli.{where}", says) for name, (where, says) in COMMANDS.items()
    }


app = typer.Typer(
    name="itembank",
    cls=Commands,
    no_args_is_help=True,
    pretty_exceptions_enable=False,
    rich_markup_mode=None,
    context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100},
)


def _version(wanted: bool) -> None:
    if wanted:
        typer.echo(f"itembank {VERSION}")
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

    No department yet? ‘itembank begin FOLDER’ makes yours by asking; ‘itembank demo’ writes one
    to try things with.
    ‘itembank COMMAND --help’ says more about each command.
    """  # noqa: D301 - typer keeps the lines after \b as they are


def _bar() -> Bar:
    from itembank.cli.words.bar import Bar

    return Bar()


def run(arguments: Sequence[str] | None = None) -> None:
    """Run the command line, and exit with its status."""
    # Pydantic would look for plug-ins among all that is installed; none has anything to say here.
    os.environ.setdefault("PYDANTIC_DISABLE_PLUGINS", "__all__")
    # Sympy would reckon with python-flint's numbers wherever that happens to be installed, which
    # takes a tenth longer to load, and is an engine that keys are tested against.
    os.environ.setdefault("SYMPY_GROUND_TYPES", "python")
    listen(lambda sentence: say(sentence, err=True))
    watch(_bar)
    with screens():
        try:
            typed = decoded(sys.argv[1:] if arguments is None else arguments)
            refuse_unseen(typed)
            app(typed, prog_name="itembank")
        except ItembankError as error:
            say(told(error), err=True)
            sys.exit(error.exit_status)
        except UnicodeEncodeError as error:
            if os.environ.get("ITEMBANK_TRACEBACK"):
                raise
            held = shown(error.object[error.start : error.end])
            say(
                f"A name here holds what this system cannot write in one: {held}. Nothing was "
                "half-written. Name the folder or the file anew in plain letters, or have the "
                "system use UTF-8 (set PYTHONUTF8=1).",
                err=True,
            )
            sys.exit(ItembankError.exit_status)
        except Exception as error:
            # Nothing a person types should come here. If it does, it is ours to mend, and a page
            # of our own code in front of a class helps nobody.
            if os.environ.get("ITEMBANK_TRACEBACK"):
                raise
            print(
                f"itembank has a fault of its own ({type(error).__name__}: {shown(str(error))}). "
                "Nothing was half-written. Run it again with ITEMBANK_TRACEBACK=1 set, and send "
                "what it prints to whoever looks after itembank.",
                file=sys.stderr,
            )
            sys.exit(3)
        finally:
            # Nor is there anything to be gained by a last look for garbage, a sixth of the time
            # of a short command: all goes with the process. (Called with arguments, it is a
            # guest.)
            if arguments is None:
                gc.freeze()
