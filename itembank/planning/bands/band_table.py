"""A department's own bands, read from a ``[bands]`` table.

The table may give cut scores alone (``cuts = [5, 7]``), and so keep the usual bands, or a
``[[bands.band]]`` for each band. All scores in it are out of ``out_of`` marks, and are scaled
to starters of other lengths as :mod:`itembank.planning.bands.bands` says. Bands that state no score
at all are cut by the usual rule.
"""

from __future__ import annotations

import re
from dataclasses import fields
from typing import Any, cast

from itembank.files.toml_table import Table
from itembank.planning.bands.band_signs import SHAPES, ShapeName, Sign
from itembank.planning.bands.bands import (
    DEFAULT_MARKS,
    MOST,
    MOST_MARKS,
    BandError,
    BandScheme,
    check_intervals,
    default_scheme,
    own_scheme,
)
from itembank.planning.bands.next_tasks import MODES, TIERS, NextTask

_COLOUR = re.compile(r"#[0-9A-Fa-f]{6}")


def read_bands(table: Table) -> BandScheme | None:
    """Read the bands; faults are noted in the file, and then the result may be None."""
    # Other tables of the file may have faults already: only those of this one spoil its bands.
    before = len(table.file.faults)
    out_of = table.whole("out_of", DEFAULT_MARKS, 1, MOST_MARKS)
    cuts = table.items("cuts")
    rows = table.tables("band")
    scheme: BandScheme | None = None
    try:
        if rows and "cuts" in table:
            table.fault("cuts", "Give either cuts or [[bands.band]] tables, not both.")
        elif rows:
            scheme = _scheme(table, rows, out_of, before)
        elif all(isinstance(cut, int) and not isinstance(cut, bool) for cut in cuts) and cuts:
            scheme = own_scheme(cuts, out_of)
        else:
            table.fault(
                "cuts" if "cuts" in table else "",
                "State the bands: cuts = [5, 7], the lowest score of each band above the "
                "first, or a [[bands.band]] table for each band.",
            )
    except BandError as error:
        if rows:  # the table that holds them need have no line of its own
            rows[0].fault("", str(error))
        else:
            table.fault("cuts" if "cuts" in table else "", str(error))
    table.close()
    return scheme


def _scheme(table: Table, rows: list[Table], out_of: int, before: int) -> BandScheme | None:
    usual = default_scheme(len(rows)).signs if 2 <= len(rows) <= MOST else ()
    signs: list[Sign] = []
    lows: list[int] = []
    highs: list[int | None] = []
    by_rule = not any(key in row for row in rows for key in ("lowest", "highest"))
    for index, row in enumerate(rows):
        task = usual[index].task if usual else default_scheme().signs[0].task
        signs.append(_sign(row, task))
        if by_rule:
            row.close()
            continue
        lows.append(row.whole("lowest", None, 0, out_of))
        highs.append(row.whole("highest", None, 0, out_of) if "highest" in row else None)
        row.close()
    if len(table.file.faults) > before:
        return None
    if by_rule:
        return BandScheme(tuple(signs))
    # A top that is not stated is one below the next band's start, so it leaves no gap.
    tops = [*(low - 1 for low in lows[1:]), out_of]
    intervals = [
        (sign.name, low, top if high is None else high)
        for sign, low, high, top in zip(signs, lows, highs, tops, strict=True)
    ]
    if usual:
        check_intervals(intervals, out_of)
    return BandScheme(tuple(signs), tuple(lows[1:]), out_of)


def _sign(row: Table, usual: NextTask) -> Sign:
    colour = row.text("colour", None)
    if colour and not _COLOUR.fullmatch(colour):
        row.fault("colour", f'‘colour’ must be like "#D55E00", not ‘{colour}’.')
    return Sign(
        name=row.text("name", None, most=16),
        letter=row.text("letter", None, most=2),
        shape=cast(ShapeName, row.choice("shape", None, SHAPES)),
        colour=colour.upper(),
        colour_name=row.text("colour_name", None, most=20),
        task=_task(row.table("next_task"), usual),
    )


def _task(table: Table | None, usual: NextTask) -> NextTask:
    """Read a next task; what it leaves out is as in the usual task of that band."""
    if table is None:
        return usual
    read: dict[str, Any] = {}
    for field in fields(NextTask):
        default = getattr(usual, field.name)
        match field.name:
            case "tier":
                read["tier"] = table.choice("tier", default, TIERS)
            case "mode":
                read["mode"] = table.choice("mode", default, MODES)
            case "worked_example":
                read["worked_example"] = table.flag("worked_example", default)
            case "title":
                read["title"] = table.text("title", default, most=40)
            case name:
                read[name] = table.text(name, default, most=120)
    table.close()
    return NextTask(**read)
