"""Bands: every score in exactly one, cut scores scaled by share, faults told plainly."""

import colorsys
from dataclasses import replace
from fractions import Fraction
from itertools import combinations, permutations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.planning.bands.band_signs import NOT_TOGETHER, SHAPES
from itembank.planning.bands.bands import (
    BandError,
    BandScheme,
    band_of,
    check_intervals,
    cut_scores,
    default_scheme,
    own_scheme,
)
from itembank.planning.bands.next_tasks import MODES, TIERS

marks = st.integers(1, 200)
counts = st.integers(2, 5)


def spans(bands):
    return [(band.name, band.lowest, band.highest) for band in bands]


def test_eight_marks():
    assert spans(default_scheme().bands(8)) == [
        ("Rebuild", 0, 4),
        ("Secure", 5, 6),
        ("Extend", 7, 8),
    ]


@pytest.mark.parametrize("n", range(1, 61))
def test_the_usual_rule_holds_for_every_total(n):
    """Up to half, up to four fifths, above: each score is held to the words of the rule."""
    bands = default_scheme().bands(n)
    for score in range(n + 1):
        share = Fraction(score, n)
        said = (
            "Rebuild"
            if share <= Fraction(1, 2)
            else "Secure"
            if share <= Fraction(4, 5)
            else "Extend"
        )
        assert band_of(score, bands).name == said
    assert [band.lowest for band in bands] == sorted({band.lowest for band in bands})
    # Both 1 of 2 and 1 of 1 leave no score between half and four fifths.
    assert len(bands) == (3 if n >= 3 else 2)


@pytest.mark.parametrize("count", [2, 3, 4, 5])
def test_no_usual_band_is_empty_once_the_total_allows(count):
    least = {2: 1, 3: 3, 4: 3, 5: 6}[count]
    for n in range(1, 61):
        lengths = [band.highest - band.lowest for band in default_scheme(count).bands(n)]
        assert min(lengths) >= 0, n
        if n >= least:
            assert len(lengths) == count, n


def test_odd_totals_round_nothing():
    assert cut_scores(5) == (3, 5)
    assert cut_scores(7) == (4, 6)
    assert cut_scores(9) == (5, 8)


@given(marks, counts)
def test_every_score_falls_in_exactly_one_band(n, count):
    bands = default_scheme(count).bands(n)
    for score in range(n + 1):
        holding = [band for band in bands if band.lowest <= score <= band.highest]
        assert len(holding) == 1
        assert band_of(score, bands) is holding[0]


@st.composite
def own_cuts(draw):
    out_of = draw(st.integers(1, 60))
    most = min(4, out_of)
    cuts = draw(st.sets(st.integers(1, out_of), min_size=1, max_size=most))
    return tuple(sorted(cuts)), out_of


@given(own_cuts(), marks)
def test_own_cuts_cover_every_score_once_at_any_length(own, n):
    cuts, out_of = own
    bands = own_scheme(cuts, out_of).bands(n)
    assert sorted(s for b in bands for s in range(b.lowest, b.highest + 1)) == list(range(n + 1))
    assert len(bands) >= 2


@given(own_cuts())
def test_own_cuts_stand_as_written_at_their_own_length(own):
    cuts, out_of = own
    assert tuple(band.lowest for band in own_scheme(cuts, out_of).bands(out_of)) == (0, *cuts)


@given(own_cuts(), marks)
def test_a_cut_is_the_least_score_with_at_least_its_share(own, n):
    cuts, out_of = own
    for cut, scaled in zip(cuts, cut_scores(n, cuts=cuts, out_of=out_of), strict=True):
        least = next(s for s in range(n + 1) if Fraction(s, n) >= Fraction(cut, out_of))
        assert scaled == least


@given(marks, counts)
def test_a_higher_score_never_falls_in_a_lower_band(n, count):
    bands = default_scheme(count).bands(n)
    order = [bands.index(band_of(score, bands)) for score in range(n + 1)]
    assert order == sorted(order)
    assert order[0] == 0
    assert order[-1] == len(bands) - 1


@given(marks)
def test_more_bands_keep_the_usual_edges(n):
    for count in (4, 5):
        assert set(cut_scores(n, 3)) <= set(cut_scores(n, count))


@given(counts)
def test_no_two_bands_share_a_sign(count):
    signs = default_scheme(count).signs
    for what in ("name", "letter", "shape", "colour", "colour_name"):
        assert len({getattr(sign, what) for sign in signs}) == count
    assert all(sign.shape in SHAPES for sign in signs)


@pytest.mark.parametrize("count", [2, 3, 4, 5])
def test_the_usual_signs_are_a_set_of_their_own(count):
    signs = default_scheme(count).signs
    assert not {sign.shape for sign in signs} & NOT_TOGETHER
    # Hues by the wheel of red, green and blue: no red or orange comes before a green.
    hues = [colorsys.rgb_to_hsv(*bytes.fromhex(sign.colour[1:]))[0] for sign in signs]
    grey = [sign.colour == "#000000" for sign in signs]
    reds = [i for i, hue in enumerate(hues) if not grey[i] and (hue < 1 / 8 or hue > 23 / 24)]
    greens = [i for i, hue in enumerate(hues) if 1 / 5 < hue < 1 / 2]
    assert not (reds and greens and min(reds) < max(greens))
    assert count > 3 or not (reds or greens)


def test_four_shapes_that_stand_together_elsewhere_are_refused():
    shapes = ("triangle", "diamond", "circle", "square")
    signs = [
        replace(sign, shape=shape)
        for sign, shape in zip(default_scheme(4).signs, shapes, strict=True)
    ]
    for order in permutations(signs):
        with pytest.raises(BandError, match="cannot all be signs"):
            BandScheme(order)
    five = (*signs[:3], *default_scheme(5).signs[3:])
    BandScheme(five)
    with pytest.raises(BandError, match="cannot all be signs"):
        BandScheme((replace(five[4], shape="square"), *five[:4]))
    for three in combinations(signs, 3):
        BandScheme(three)


def test_shapes_that_look_alike_are_refused():
    sign, two = default_scheme(2).signs
    with pytest.raises(BandError, match="look alike"):
        BandScheme((replace(sign, shape="circle"), replace(two, shape="ring")))


@pytest.mark.parametrize("count", [2, 3, 4, 5])
def test_next_tasks_are_short_whole_sentences(count):
    for sign in default_scheme(count).signs:
        task = sign.task
        assert task.tier in TIERS
        assert task.mode in MODES
        for words in (task.where, task.first, task.how, task.stuck, task.finished):
            assert words[-1] in ".?!"
            assert len(words) <= 100
            for sentence in words.replace("?", ".").split("."):
                assert len(sentence.split()) <= 17, sentence


def test_tiers_rise_with_the_bands():
    for count in (2, 3, 4, 5):
        tiers = [TIERS.index(sign.task.tier) for sign in default_scheme(count).signs]
        assert tiers == sorted(tiers)


@pytest.mark.parametrize(
    ("cuts", "out_of", "words"),
    [
        ((7, 5), 8, "do not rise"),
        ((5, 5), 8, "repeat 5"),
        ((0, 5), 8, "cut score 0"),
        ((5, 9), 8, "between 1 and 8"),
        ((1, 2, 3, 4, 5), 8, "2 to 5 bands"),
        ((), 8, "2 to 5 bands"),
    ],
)
def test_bad_cuts(cuts, out_of, words):
    with pytest.raises(BandError, match=words):
        own_scheme(cuts, out_of)


@pytest.mark.parametrize(
    ("intervals", "words"),
    [
        ([("A", 0, 4), ("B", 6, 8)], "No band holds the score 5"),
        ([("A", 0, 2), ("B", 6, 8)], "No band holds the scores 3 to 5"),
        ([("A", 0, 5), ("B", 5, 8)], "both hold the score 5"),
        ([("A", 1, 4), ("B", 5, 8)], "No band holds the score 0"),
        ([("A", 0, 4), ("B", 5, 7)], "No band holds the score 8"),
        ([("A", 0, 4), ("B", 5, 9)], "only 8 marks"),
        ([("A", 0, 4), ("B", 5, 4)], "holds no score"),
        ([("A", -1, 4), ("B", 5, 8)], "starts at -1"),
    ],
)
def test_gaps_and_overlaps(intervals, words):
    with pytest.raises(BandError, match=words):
        check_intervals(intervals, 8)


def test_a_starter_without_marks_and_a_score_outside():
    with pytest.raises(BandError, match="at least 1 mark"):
        default_scheme().bands(0)
    for score in (-1, 9):
        with pytest.raises(BandError, match="not between 0 and 8"):
            band_of(score, default_scheme().bands(8))


def test_two_bands_with_one_letter():
    sign, two, three = default_scheme().signs
    with pytest.raises(BandError, match="Two bands have the name Rebuild"):
        BandScheme((sign, two, sign), (5, 7))
    with pytest.raises(BandError, match="need 2 cut scores, not 1"):
        BandScheme((sign, two, three), (5,))
