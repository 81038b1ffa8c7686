"""The lines between teaching again, a repair group and going on, as a department draws them.

At the top of ``department.toml``, in per cent::

    [deciding]
    again_below = 50      # below this share right: teach again to all
    on_from = 80          # from this share right: go on; between the two: a repair group
    confidence = 90       # of the intervals shown

What the lines rest on is told in :mod:`itembank.records.reports.advice`, which draws on them.
"""

from __future__ import annotations

from itembank.data_class import dataclass
from itembank.files.toml_table import Table


@dataclass(frozen=True, slots=True)
class Deciding:
    """Shares of right answers from 0 to 1, and the confidence of intervals."""

    again_below: float = 0.5
    on_from: float = 0.8
    confidence: float = 0.9


def read_deciding(top: Table) -> Deciding:
    """Read the ``[deciding]`` table at the top of a department's file, noting faults."""
    table = top.table("deciding")
    if table is None:
        return Deciding()
    usual = Deciding()
    again = table.whole("again_below", round(100 * usual.again_below), 1, 98)
    on = table.whole("on_from", round(100 * usual.on_from), 2, 99)
    confidence = table.whole("confidence", round(100 * usual.confidence), 50, 99)
    if again >= on:
        table.fault(
            "again_below" if "again_below" in table else "on_from",
            f"‘again_below’ ({again}) must be less than ‘on_from’ ({on}).",
        )
    table.close()
    return Deciding(again / 100, on / 100, confidence / 100)
