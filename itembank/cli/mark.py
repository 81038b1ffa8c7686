"""``itembank mark``: the verdict on one typed answer, or on a class's answer sheet."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, Any

import typer

from itembank.cli.options.plain_command import PlainCommand
from itembank.errors import CheckFailed, ItembankError


class AnswerCommand(PlainCommand):
    """A command whose last word may begin with a minus: -3 is an answer and no option."""

    MAY_BE_BLANK = ("answer",)  # of a pupil who wrote none

    def parse_args(self, ctx: Any, args: list[str]) -> list[str]:
        """Read the options, with an answer that begins with a minus put after two dashes."""
        return super().parse_args(ctx, answers_last(args))


COMMAND_CLASS = AnswerCommand


def answers_last(args: list[str]) -> list[str]:
    """Return the words of a command line with negative answers after two dashes.

    >>> answers_last(["ratio.share/core/7", "-3/4", "--bank", "questions"])
    ['ratio.share/core/7', '--bank', 'questions', '--', '-3/4']
    """
    if "--" in args:
        return args
    answers = [word for word in args if word[:1] == "-" and word[:2] != "--" and word != "-h"]
    if not answers:
        return args
    return [*(word for word in args if word not in answers), "--", *answers]


def mark(
    address: Annotated[
        str | None,
        typer.Argument(
            metavar="ADDRESS",
            help="Which question: topic/tier/number or BANK:ID, as teacher notes list it.",
        ),
    ] = None,
    answer: Annotated[
        str | None, typer.Argument(metavar="ANSWER", help="The answer as it was typed.")
    ] = None,
    bank: Annotated[
        list[Path] | None,
        typer.Option(metavar="DIR", help="Folder of the bank; those near here are known."),
    ] = None,
    pack: Annotated[
        Path | None,
        typer.Option(metavar="PACK", help="Pack whose starter was answered: its folder or file."),
    ] = None,
    sheet: Annotated[
        Path | None,
        typer.Option(
            metavar="FILE", help="Answers as CSV, under a heading such as seat,1,2,3. No names."
        ),
    ] = None,
    version: Annotated[
        str | None, typer.Option(metavar="LETTER", help="Version of the starter, as in A.")
    ] = None,
    output: Annotated[
        Path | None, typer.Option(metavar="FILE", help="Write the marks as CSV to this file.")
    ] = None,
    replace: Annotated[
        bool, typer.Option("--replace", help="Write over an older file of marks.")
    ] = False,
) -> None:
    """Mark one typed answer, or a class's answers to a starter.

    Says what to ask where an answer shows a known mistake.

    \b
    Examples:
      itembank mark ratio.share/support/228 "£48 and £42"
      itembank mark equations.two-step/core/7 -3
      itembank mark larkhythe:garden-12 "1 1/2" --bank questions
      itembank mark --pack output/8K-2026-11-30 --sheet answers.csv
    """  # noqa: D301 - typer keeps the lines after \b as they are
    if pack is not None or sheet is not None:
        if address is not None:
            raise ItembankError("Give an address and an answer, or --pack and --sheet, not both.")
        if pack is None or sheet is None:
            raise ItembankError("A class's answers need both --pack and --sheet.")
        from itembank.cli.mark_sheet import mark_answer_sheet

        mark_answer_sheet(pack, sheet, version, output, replace)
        return
    for name, value in (("--version", version), ("--output", output), ("--replace", replace)):
        if value:
            raise ItembankError(f"{name} goes with --pack and --sheet.")
    if address is None or answer is None:
        raise ItembankError(
            'Give an address and an answer, as in: itembank mark ratio.share/core/7 "12 and 18", '
            "or a class's answers with --pack and --sheet."
        )
    _mark_one(address, answer, tuple(bank or ()))


def _mark_one(address: str, answer: str, banks: tuple[Path, ...]) -> None:
    from itembank.cli.words.wrapped import say
    from itembank.items.asks import kind_of
    from itembank.marking.mark import mark as verdict_on
    from itembank.notation.line import shown_line
    from itembank.work.places import find_address

    item = find_address(address, banks)
    if ":" in address:
        # Generated keys are proved by every audit; a bank's may have been written a minute ago.
        from itembank.proof import prove_fast

        try:
            prove_fast(item)
        except CheckFailed as error:
            raise CheckFailed(f"{error}. Nothing is marked by such a key: put it right.") from None
    marked = verdict_on(item, answer)
    said = marked.verdict.value.capitalize()
    if marked.misconception is not None:
        say(f"{said}: {marked.misconception.name}. Ask: {marked.says}")
    elif marked.says:
        say(f"{said}. {marked.says}")
    else:
        say(f"{said}.")
    if kind_of(item.ask).many:
        say(f"Many answers are right: {shown_line(item.key)}, for example.")
    else:
        say(f"The key is {shown_line(item.key)}.")


app = typer.Typer(add_completion=False, rich_markup_mode=None)
app.command("mark", cls=AnswerCommand)(mark)
