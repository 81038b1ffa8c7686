"""Bands: intervals of scores, each with a name, a letter, a shape, a colour and a next task.

A band is a teaching aid, not a grade: it says what to do next today, and nothing else.

The usual cut scores follow one rule, the same for every total:

    a score lies in the lowest band while it is up to half of the marks, in the next while
    it is up to four fifths of them, and in the highest above that.

Four fifths is the success rate of about 80 % that shows material is being learnt: B. Rosenshine,
"Principles of Instruction", *American Educator*, Spring 2012 (from memory). Half is common
practice, no source. With four bands the lowest ends at a quarter; with five the highest begins
above nine tenths (both common practice, no source); with two there is only the half.

Nothing is rounded. The share of a score is compared as it is, so with an odd total the half
mark counts as above: 2 of 5 is up to half, and 3 of 5 is not. The highest score of a band that
ends at the share *s* is ⌊s·N⌋ for *N* marks, and the next band begins one above it.

A department that states cut scores of its own, out of *M* marks, keeps them there. For *N*
marks a band then begins at ⌈c·N/M⌉, the least score with at least the same *share* of the marks.

In a very short starter two bands may begin at the same score; no score then reaches the lower
of the two, and it is left out rather than shown to a class that cannot land in it. The first
band always holds 0 and the last always holds N, so at least two remain. The usual three are
all there from 3 marks on, the usual five from 6.

>>> [(band.name, band.lowest, band.highest) for band in default_scheme().bands(8)]
[('Rebuild', 0, 4), ('Secure', 5, 6), ('Extend', 7, 8)]
>>> [(band.name, band.lowest, band.highest) for band in default_scheme().bands(2)]
[('Rebuild', 0, 1), ('Extend', 2, 2)]
>>> [(band.name, band.lowest, band.highest) for band in default_scheme().bands(5)]
[('Rebuild', 0, 2), ('Secure', 3, 4), ('Extend', 5, 5)]
>>> band_of(5, default_scheme().bands(8)).name
'Secure'
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise
from math import floor

from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.planning.bands.band_signs import DEFAULT_SIGNS, ShapeName, Sign, signs_fault
from itembank.planning.bands.next_tasks import NextTask

FEWEST, MOST = 2, 5
DEFAULT_MARKS = 8
MOST_MARKS = 200
"""Marks of a starter at most."""


class BandError(ItembankError):
    """Cut scores or bands that do not give every score exactly one band."""


@dataclass(frozen=True, slots=True)
class Band:
    """An interval of scores, both ends included, with its signs and its next task."""

    name: str
    letter: str
    shape: ShapeName
    colour: str
    colour_name: str
    lowest: int
    highest: int
    task: NextTask


_QUARTER, _HALF = Fraction(1, 4), Fraction(1, 2)
_FOUR_FIFTHS, _NINE_TENTHS = Fraction(4, 5), Fraction(9, 10)
USUAL_TOPS: dict[int, tuple[Fraction, ...]] = {
    2: (_HALF,),
    3: (_HALF, _FOUR_FIFTHS),
    4: (_QUARTER, _HALF, _FOUR_FIFTHS),
    5: (_QUARTER, _HALF, _FOUR_FIFTHS, _NINE_TENTHS),
}
"""For a number of bands, the greatest share of the marks in each band below the highest."""


@dataclass(frozen=True, slots=True)
class BandScheme:
    """The bands of a class, by the usual rule or by cut scores of its own.

    `cuts` holds the lowest score of each band above the first, out of `out_of` marks; None is
    the usual rule, which is the same for any total.

    Raises:
        BandError: the cuts do not rise from 1 to `out_of`, two bands share a sign, or the
            signs are a triangle, a diamond, a circle and a square, or a ring and a circle.
    """

    signs: tuple[Sign, ...]
    cuts: tuple[int, ...] | None = None
    out_of: int = DEFAULT_MARKS

    def __post_init__(self) -> None:
        """Refuse a scheme that could not be shown or does not cover every score once."""
        check_count(len(self.signs))
        if self.cuts is not None:
            check_cuts(self.cuts, self.out_of)
            if len(self.cuts) != len(self.signs) - 1:
                raise BandError(
                    f"{len(self.signs)} bands need {len(self.signs) - 1} cut scores, "
                    f"not {len(self.cuts)}. Give the lowest score of each band above the first."
                )
        if fault := signs_fault(self.signs):
            raise BandError(fault)

    def bands(self, marks: int) -> tuple[Band, ...]:
        """Return the bands for a starter of `marks` marks, lowest first.

        A band that no score can reach is left out (see the top of this module).

        >>> [(b.letter, b.lowest, b.highest) for b in default_scheme().bands(12)]
        [('R', 0, 6), ('S', 7, 9), ('E', 10, 12)]
        """
        count = len(self.signs)
        lowest = (0, *cut_scores(marks, count, cuts=self.cuts, out_of=self.out_of))
        highest = (*(cut - 1 for cut in lowest[1:]), marks)
        return tuple(
            Band(
                name=sign.name,
                letter=sign.letter,
                shape=sign.shape,
                colour=sign.colour,
                colour_name=sign.colour_name,
                lowest=low,
                highest=high,
                task=sign.task,
            )
            for sign, low, high in zip(self.signs, lowest, highest, strict=True)
            if low <= high
        )


def default_scheme(count: int = 3) -> BandScheme:
    """Return the scheme used where a department states none, with 2 to 5 bands.

    >>> [sign.name for sign in default_scheme(4).signs]
    ['Rebuild', 'Practise', 'Secure', 'Extend']
    """
    check_count(count)
    return BandScheme(DEFAULT_SIGNS[count])


def own_scheme(cuts: Sequence[int], marks: int) -> BandScheme:
    """Return the usual signs with `cuts` out of `marks` in place of the usual cut scores.

    >>> [(b.name, b.lowest) for b in own_scheme([4, 8], 10).bands(10)]
    [('Rebuild', 0), ('Secure', 4), ('Extend', 8)]
    """
    check_count(len(cuts) + 1)
    return BandScheme(DEFAULT_SIGNS[len(cuts) + 1], tuple(cuts), marks)


def cut_scores(
    marks: int, count: int = 3, *, cuts: Sequence[int] | None = None, out_of: int = DEFAULT_MARKS
) -> tuple[int, ...]:
    """Return the lowest score of each band above the first, for a starter of `marks` marks.

    By the usual rule for `count` bands, or where `cuts` out of `out_of` are given by those
    (both rules stand at the top of this module). Two cut scores may be equal in a very short
    starter; the band between them is empty.

    Raises:
        BandError: there is less than one mark, or the bands or cuts are none.

    >>> cut_scores(8), cut_scores(10), cut_scores(5), cut_scores(2)
    ((5, 7), (6, 9), (3, 5), (2, 2))
    >>> cut_scores(16, cuts=[4, 6])
    (8, 12)
    """
    if marks < 1:
        raise BandError(f"A starter needs at least 1 mark, not {marks}.")
    if cuts is not None:
        check_cuts(cuts, out_of)
        # The ceiling, in whole numbers: a share of the marks that is just reached is reached.
        return tuple(-(-cut * marks // out_of) for cut in cuts)
    check_count(count)
    # In fractions: no float is four fifths, and its product may fall just short of a score.
    return tuple(floor(top * marks) + 1 for top in USUAL_TOPS[count])


def check_count(count: int) -> None:
    """Raise :class:`BandError` unless there are 2 to 5 bands."""
    if not FEWEST <= count <= MOST:
        raise BandError(f"There can be {FEWEST} to {MOST} bands, not {count}.")


def check_cuts(cuts: Sequence[int], marks: int) -> None:
    """Raise :class:`BandError` unless the cuts rise and lie between 1 and `marks`."""
    shown = ", ".join(map(str, cuts))
    for cut in cuts:
        if not 1 <= cut <= marks:
            raise BandError(
                f"The cut score {cut} is not between 1 and {marks}. "
                "A cut score is the lowest score of a band above the first."
            )
    for low, high in pairwise(cuts):
        if low == high:
            raise BandError(
                f"The cut scores {shown} repeat {low}, so a band would hold no score. "
                "Leave one of them out."
            )
        if low > high:
            raise BandError(f"The cut scores {shown} do not rise. Write them from low to high.")


def rescaled(intervals: Sequence[tuple[int, int]], marks: int) -> list[tuple[int, int]]:
    """Return the lowest and highest score of each of some bands, out of other marks.

    Bands by the usual rule stay so; others keep their shares. A band that no score can reach
    has a lowest score above its highest.

    >>> rescaled([(0, 4), (5, 6), (7, 8)], 5), rescaled([(0, 3), (4, 8)], 4)
    ([(0, 2), (3, 4), (5, 5)], [(0, 1), (2, 4)])
    """
    whole, cuts = intervals[-1][1], tuple(low for low, _ in intervals[1:])
    if marks == whole:
        return list(intervals)
    # The usual rule rounds for each total anew; scaled cuts would round what was rounded.
    usual = cut_scores(whole, len(intervals)) == cuts
    lows = (
        0,
        *cut_scores(marks, len(intervals), cuts=None if usual else cuts, out_of=whole),
    )
    return list(zip(lows, (*(low - 1 for low in lows[1:]), marks), strict=True))


def check_intervals(intervals: Sequence[tuple[str, int, int]], marks: int) -> None:
    """Raise :class:`BandError` unless the named intervals cover 0 to `marks` once, in order.

    >>> check_intervals([("Rebuild", 0, 4), ("Secure", 6, 8)], 8)
    Traceback (most recent call last):
    ...
    itembank.planning.bands.bands.BandError: No band holds the score 5. ...
    """
    for name, low, high in intervals:
        if low > high:
            raise BandError(
                f"The band {name} runs from {low} to {high}, so it holds no score. "
                "Its lowest score must not be above its highest."
            )
    first_name, first_low, _ = intervals[0]
    if first_low > 0:
        raise _gap(0, first_low - 1, f"Let {first_name} start at 0.")
    if first_low < 0:
        raise BandError(f"The band {first_name} starts at {first_low}. Let it start at 0.")
    for (below, _, high), (above, low, _) in pairwise(intervals):
        if low > high + 1:
            raise _gap(high + 1, low - 1, f"Raise the top of {below} or lower {above}.")
        if low <= high:
            raise BandError(
                f"The bands {below} and {above} overlap: both hold the score {low}. "
                f"Let {above} start at {high + 1}, or let {below} end at {low - 1}, "
                "and write the bands from lowest to highest."
            )
    last_name, _, last_high = intervals[-1]
    if last_high < marks:
        raise _gap(last_high + 1, marks, f"Let {last_name} end at {marks}.")
    if last_high > marks:
        raise BandError(
            f"The band {last_name} ends at {last_high}, but there are only {marks} marks. "
            f"Let it end at {marks}."
        )


def _gap(low: int, high: int, advice: str) -> BandError:
    scores = f"score {low}" if low == high else f"scores {low} to {high}"
    return BandError(f"No band holds the {scores}. {advice}")


def band_of(score: int, bands: Sequence[Band]) -> Band:
    """Return the band that holds `score`.

    Raises:
        BandError: the score lies outside all the bands.
    """
    for band in bands:
        if band.lowest <= score <= band.highest:
            return band
    top = max(band.highest for band in bands)
    raise BandError(f"The score {score} is not between 0 and {top}.")
