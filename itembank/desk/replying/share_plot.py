"""A small picture of a share and how far it can be trusted, for a row of a table.

It stands beside the same figures in words, so a screen reader passes over it.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from markupsafe import Markup

if TYPE_CHECKING:
    from itembank.records.statistics.interval import Interval

WIDTH, HEIGHT, EDGE = 200, 24, 6
_PICTURE = Markup(
    '<svg class="share-plot" viewBox="0 0 {width} {height}" width="{width}" height="{height}" '
    'aria-hidden="true" focusable="false"><path class="scale" d="{scale}"/>'
    '<path class="span" d="M{low} {middle}H{high}"/>'
    '<circle class="share" cx="{share}" cy="{middle}" r="5"/></svg>'
)


def at(share: float) -> str:
    """Return where a share from 0 to 1 stands on the picture, in its units from the left.

    >>> at(0), at(0.5), at(1)
    ('6', '100', '194')
    """
    return f"{EDGE + share * (WIDTH - 2 * EDGE):g}"


def share_plot(interval: Interval) -> Markup:
    """Return the picture: a dot at the share, a bar over its interval, marks at 0, 50 and 100 %.

    >>> from itembank.records.statistics.interval import wilson
    >>> 'cx="100"' in share_plot(wilson(5, 10))
    True
    """
    middle = HEIGHT // 2
    marks = "".join(f"M{at(share)} 2V{HEIGHT - 2}" for share in (0, 0.5, 1))
    return _PICTURE.format(
        width=WIDTH,
        height=HEIGHT,
        middle=middle,
        scale=f"{marks}M{at(0)} {middle}H{at(1)}",
        low=at(interval.low),
        high=at(interval.high),
        share=at(interval.share),
    )
