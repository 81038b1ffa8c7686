"""``itembank band``: from scores to next tasks, in the room."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from itembank.cli.options.usual_options import DepartmentOption
from itembank.cli.words.wrapped import say
from itembank.errors import ItembankError
from itembank.planning.bands.bands import (
    DEFAULT_MARKS,
    MOST_MARKS,
    Band,
    BandScheme,
    band_of,
    default_scheme,
    own_scheme,
)
from itembank.planning.bands.caution import CAUTION
from itembank.planning.bands.groups import Entry, Group, group, read_scores, score_fault
from itembank.text.in_words import counted
from itembank.work.places import nearby_department


def band(
    scores: Annotated[
        list[str] | None, typer.Argument(metavar="SCORE", help="One or more scores.")
    ] = None,
    out_of: Annotated[
        int | None, typer.Option(metavar="N", help="Marks of the starter; the class's, or 8.")
    ] = None,
    cuts: Annotated[
        str | None,
        typer.Option(metavar="N,N", help="Lowest score of each band above the first, as in 5,7."),
    ] = None,
    bands: Annotated[
        int | None, typer.Option(metavar="N", help="Number of bands, from 2 to 5.")
    ] = None,
    csv: Annotated[
        Path | None,
        typer.Option(metavar="FILE", help="Rows of seat code and score, as in A1,5. No names."),
    ] = None,
    class_: Annotated[
        str | None, typer.Option("--class", metavar="NAME", help="Use this class's bands.")
    ] = None,
    department: DepartmentOption = None,
) -> None:
    """Say which band a score falls in, and what its next task is.

    One score is answered in a line; several, or a CSV file, are counted and grouped.
    Bands are a teaching aid, not a grade.

    \b
    Examples:
      itembank band 5 --out-of 8
      itembank band 3 8 6 6 2 7 --out-of 8
      itembank band 5 --out-of 10 --cuts 4,8
      itembank band --csv scores.csv --class 9S --out-of 10
    """  # noqa: D301 - typer keeps the lines after \b as they are
    if out_of is not None and not 1 <= out_of <= MOST_MARKS:
        raise ItembankError(f"A starter has 1 to {MOST_MARKS} marks, not {out_of}. See --out-of.")
    scheme, out_of = _scheme(cuts, bands, out_of, class_, department)
    chosen = scheme.bands(out_of)
    if csv and scores:
        raise ItembankError("Give scores or a file with --csv, not both.")
    if csv:
        found = read_scores(csv, out_of)
        typer.echo(grouped_text(group(found.entries, chosen), out_of))
        if found.absent:
            typer.echo(f"No score: {' '.join(found.absent)}")
        return
    marks = [_score(text, out_of) for text in scores or []]
    if not marks:
        raise ItembankError("Give a score, as in: itembank band 5 --out-of 8")
    if len(marks) == 1:
        say(one_line(marks[0], out_of, band_of(marks[0], chosen)))
        say(CAUTION)
    else:
        typer.echo(grouped_text(group([Entry("", mark) for mark in marks], chosen), out_of))


def _score(text: str, marks: int) -> int:
    if fault := score_fault(text, marks):
        raise ItembankError(fault)
    return int(text)


def _scheme(
    cuts: str | None,
    count: int | None,
    marks: int | None,
    class_name: str | None,
    folder: Path | None,
) -> tuple[BandScheme, int]:
    """Choose the bands, and the marks they share out where none are stated.

    The bands are of the cut scores given, of the number given, the class's, or the usual ones.
    """
    usual = DEFAULT_MARKS if marks is None else marks
    given = [name for name, value in (("--cuts", cuts), ("--bands", count)) if value is not None]
    if given and (class_name or folder):
        raise ItembankError(f"Give {given[0]} or a class's own bands, not both.")
    if cuts is not None:
        words = [word.strip() for word in cuts.split(",")]
        if not all(word.isascii() and word.isdigit() and len(word) < 7 for word in words):
            raise ItembankError(f"‘{cuts}’ are not cut scores. Write them as in --cuts 5,7.")
        scheme = own_scheme([int(word) for word in words], usual)
        if count is not None and count != len(scheme.signs):
            raise ItembankError(
                f"{len(words)} cut scores make {len(scheme.signs)} bands, not {count}. "
                "Leave out --bands."
            )
        return scheme, usual
    if count is not None:
        return default_scheme(count), usual
    found = nearby_department(folder, None)
    if found is None:
        if class_name:
            raise ItembankError(
                f"There is no department here to find class {class_name} in. "
                "Name its folder with --department."
            )
        return default_scheme(), usual
    chosen = found.find_class(class_name)
    # A starter gives a mark a question, so a class's usual starter has as many marks.
    return chosen.bands, chosen.questions if marks is None else marks


def signs(band: Band) -> str:
    """Return the band's signs in words, so that none rests on colour alone."""
    return f"{band.name} ({band.letter}, {band.shape}, {band.colour_name})"


def one_line(score: int, marks: int, band: Band) -> str:
    """Return the answer to one score: band, signs and next task."""
    task = band.task
    return (
        f"{score} out of {marks}: {signs(band)}: "
        f"{task.title}, {task.mode}, {task.tier} sheet. {task.first}"
    )


def grouped_text(groups: tuple[Group, ...], marks: int) -> str:
    """Return the groups as lines of text, with the caution that a band is no grade."""
    heads = [signs(in_band.band) for in_band in groups]
    spans = [_span(in_band.band) for in_band in groups]
    wide, span_wide = max(map(len, heads)), max(map(len, spans))
    total = sum(in_band.count for in_band in groups)
    lines = [f"{counted(total, 'score')} out of {marks}"]
    for in_band, head, span in zip(groups, heads, spans, strict=True):
        lines.append("")
        lines.append(f"{head:<{wide}}  {span:>{span_wide}}  {counted(in_band.count, 'pupil')}")
        if in_band.codes:
            lines.append(f"    Seats   {' '.join(in_band.codes)}")
        elif in_band.count:
            lines.append(f"    Scores  {' '.join(str(e.score) for e in in_band.entries)}")
        task = in_band.band.task
        lines.append(f"    Next    {task.title}, {task.mode}, {task.tier} sheet")
    return "\n".join([*lines, "", CAUTION])


def _span(band: Band) -> str:
    return f"{band.lowest}" if band.lowest == band.highest else f"{band.lowest}–{band.highest}"
