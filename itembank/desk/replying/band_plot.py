"""A bar cut into bands, for a row of a chart: each with its letter and a pattern of its own.

A table beside it says the same in figures, so a screen reader passes over the picture.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

from markupsafe import Markup

if TYPE_CHECKING:
    from itembank.work.report.band_weeks import BandCount

HEIGHT = 30
_SPARE = "#9aa5ad"
"""The ground of a band whose colour is not known (any more)."""
_MARKS = (
    "",
    "M0 10L10 0",
    "M3 5A2 2 0 1 0 7 5A2 2 0 1 0 3 5",
    "M5 0V10",
    "M0 5H10",
    "M0 0L10 10M0 10L10 0",
    "M0 5H10M5 0V10",
)
"""What is drawn again and again over a band's colour, by its place; the lowest is plain."""
_LETTER, _WITH_COUNT = 0.09, 0.2
"""Shares of a bar from which a letter, and the number beside it, have room on a phone."""


def band_patterns(letters: Sequence[str], colours: Mapping[str, str]) -> Markup:
    """Return the patterns that the bars of a page are filled with, one for each letter.

    >>> band_patterns(["R"], {"R": "#0072B2"}).count("<pattern")
    1
    """
    cell = Markup(
        '<pattern id="band-{place}" width="10" height="10" patternUnits="userSpaceOnUse">'
        '<path d="M0 0H10V10H0Z" fill="{colour}"/>'
        '<path d="{marks}" fill="none" stroke="#fff" stroke-width="3"/>'
        '<path d="{marks}" fill="none" stroke="#1b2530" stroke-width="1.5"/></pattern>'
    )
    cells = [
        cell.format(
            place=place, colour=colours.get(letter, _SPARE), marks=_MARKS[place % len(_MARKS)]
        )
        for place, letter in enumerate(letters)
    ]
    whole = Markup('<svg class="band-patterns" width="0" height="0" aria-hidden="true">{}</svg>')
    return whole.format(Markup("").join(cells))


def pattern_patch(letter: str, letters: Sequence[str]) -> Markup:
    """Return a small patch of a band's pattern, for the key of a chart.

    >>> "url(#band-1)" in pattern_patch("S", "RSE")
    True
    """
    patch = Markup(
        '<svg class="band-patch" width="30" height="20" aria-hidden="true">'
        '<rect width="30" height="20" fill="url(#band-{place})"/></svg>'
    )
    return patch.format(place=letters.index(letter))


def band_bar(bands: Sequence[BandCount], letters: Sequence[str]) -> Markup:
    """Return a bar whose parts are as long as the bands have pupils.

    `letters` are those of all bands of the chart, in the order of their patterns.

    >>> from itembank.work.report.band_weeks import BandCount
    >>> bar = band_bar([BandCount("R", "Rebuild", 10), BandCount("S", "Secure", 30)], "RS")
    >>> 'width="25%"' in bar, 'width="75%"' in bar, ">S 30<" in bar
    (True, True, True)
    """
    whole = sum(band.pupils for band in bands)
    part = Markup(
        '<rect x="{at}%" y="0" width="{wide}%" height="{height}" fill="url(#band-{place})" '
        'stroke="#1b2530"/>'
    )
    said = Markup('<text x="{middle}%" y="20" text-anchor="middle">{words}</text>')
    drawn: list[Markup] = []
    texts: list[Markup] = []
    before = 0
    for band in bands:
        share = band.pupils / whole if whole else 0
        at = before / whole if whole else 0
        before += band.pupils
        if not share:
            continue
        drawn.append(
            part.format(
                at=f"{100 * at:g}",
                wide=f"{100 * share:g}",
                height=HEIGHT,
                place=letters.index(band.letter),
            )
        )
        if share >= _LETTER:
            words = f"{band.letter} {band.pupils}" if share >= _WITH_COUNT else band.letter
            texts.append(said.format(middle=f"{100 * (at + share / 2):g}", words=words))
    bar = Markup(
        '<svg class="band-bar" width="100%" height="{height}" aria-hidden="true">{}{}</svg>'
    )
    return bar.format(Markup("").join(drawn), Markup("").join(texts), height=HEIGHT)
