"""What a pupil is told, word for word: each kind of sentence on items it is true of.

A right value in a form that was not asked for, half an answer, and the slips of typing that
pupils of eleven make.
"""

from __future__ import annotations

import pytest

from itembank.items.topics.registry import find_item
from itembank.marking.mark import mark
from itembank.marking.verdict import Verdict

RIGHT, FORM, WRONG = Verdict.RIGHT, Verdict.WRONG_FORM, Verdict.WRONG
KNOWN, UNREAD = Verdict.KNOWN, Verdict.UNREADABLE

TOLD = [
    ("number.factor-pairs/core/5", "1 : 2 = 1 : 2", WRONG, "Two numbers are asked for"),
    # One answer given twice: each is held to the form, with its unit or without.
    ("ratio.scale/core/3", "8 or 8cm", RIGHT, ""),
    ("ratio.scale/core/3", "80 mm or 8 cm", FORM, "give it in centimetres"),
    ("ratio.scale/core/3", "8 cm or 8 m", WRONG, "they differ: decide on one"),
    ("ratio.scale/core/3", "8 cm, 8 cm", WRONG, "more than once: give it once"),
    ("fractions.lowest-terms/support/5", "3/4 or 6/8", FORM, "cancel to lowest terms"),
    ("fractions.divide/challenge/5", "6 or 6cm", WRONG, "that unit is not: leave it out"),
    # A mixed number that is still a sum; a division that leaves a remainder.
    ("fractions.add-like/core/121", "1 + 3/11", FORM, "one mixed number, without the plus sign"),
    ("fractions.add-like/core/192", "1 + 7/15", FORM, "one mixed number, without the plus sign"),
    ("fractions.improper-mixed/support/41", "2 + 5/6", FORM, "one mixed number, without the plus"),
    ("fractions.add-like/core/28", "1÷7", FORM, "write the division as a fraction"),
    ("fractions.improper-mixed/core/4", "14 ÷ 5", FORM, "write the division as a fraction"),
    ("equations.negative-solutions/core/191", "5÷3", FORM, "write the division as a fraction"),
    ("fractions.of-quantity/support/182", "£15/3", FORM, "now divide"),
    ("fractions.lowest-terms/support/224", "7/7.5", FORM, "use whole numbers"),
    ("fractions.lowest-terms/core/207", "1 5/7", FORM, "no whole number in front"),
    # A decimal that was cut off, by the form that is asked for.
    ("fractions.add-like/core/28", "0.142857", WRONG, "not exact: give it as a fraction."),
    ("fractions.add-like/core/28", "14.3%", WRONG, "not exact: give it as a fraction."),
    ("fractions.add-like/core/121", "1.27", WRONG, "not exact: give it as a mixed number."),
    ("fractions.decimals-percentages/challenge/82", "33.3%", WRONG, "do not round it"),
    ("fractions.decimals-percentages/challenge/40", "0.318...", UNREAD, "put dots over the digits"),
    # Close is what the exact value is close to, in the key's own unit; an estimate is not rounded.
    ("ratio.scale/core/3", "9", WRONG, "That is too large"),
    ("geometry.area-of-circles/core/48", "4.1", WRONG, "close: look at the next digit"),
    ("geometry.area-of-circles/core/48", "4.3", WRONG, "That is too large"),
    ("number.estimate/core/131", "£240.4", WRONG, "That is too large"),
    ("number.estimate/core/131", "£240.00", RIGHT, ""),
    ("algebra.factorise/challenge/241", "(y + 3)(2x - 6)", WRONG, "Multiplied out, 2xy and 6x are"),
    ("algebra.form-expressions/support/109", "23 - w = 0", FORM, "leave out = 0"),
    # Ratios with units, as a fraction, or the n of 1 : n alone.
    ("ratio.simplest-form/core/488", "12 min : 60 min", FORM, "now leave the units out"),
    ("ratio.simplest-form/core/488", "12 min : 1 h", FORM, "write every part in the same unit"),
    ("ratio.scale/challenge/153", "4 cm : 20 m", FORM, "write every part in the same unit"),
    ("ratio.scale/challenge/153", "1 cm : 500 cm", FORM, "now leave the units out"),
    ("ratio.scale/challenge/153", "500", WRONG, "give the whole ratio, with the 1 and a colon"),
    ("ratio.unit-form/core/57", "n = 3.75", WRONG, "give the whole ratio, with the 1 and a colon"),
    ("ratio.simplest-form/support/103", "5/2", WRONG, "write them as a ratio, with a colon"),
    ("ratio.simplest-form/support/103", "5, 2", WRONG, "write them as a ratio, with a colon"),
    # Shares.
    ("ratio.share/core/448", "77 juniors, 55 seniors and 44 masters", RIGHT, ""),
    ("ratio.share/support/198", "5:8", WRONG, "The answer is not a ratio: give the amounts"),
    ("ratio.share/support/198", "3", WRONG, "The answer has 2 parts: give each of them"),
    ("ratio.share/support/198", "15 g, 24 g", WRONG, "The numbers are right, but the unit is not"),
    ("fractions.of-quantity/support/99", "12 g", WRONG, "look which unit the question is about"),
    # A choice, with a reason.
    ("ratio.best-value/support/282", "A because it is 56p", RIGHT, ""),
    ("ratio.best-value/support/282", "A, it costs 56p each", RIGHT, ""),
    ("ratio.best-value/support/282", "A because it's cheaper than B", RIGHT, ""),
    ("ratio.best-value/support/282", "the pack A", RIGHT, ""),
    ("ratio.best-value/support/282", "pack", WRONG, "Pack A, Pack B or Pack C."),
    ("ratio.best-value/support/282", "A and B", WRONG, "Pack A, Pack B or Pack C."),
    ("ratio.best-value/support/282", "A, B", WRONG, "Pack A, Pack B or Pack C."),
    ("ratio.best-value/support/282", "56p", WRONG, "Pack A, Pack B or Pack C."),
    # Signs.
    ("fractions.order/support/202", "smaller", RIGHT, ""),
    ("fractions.order/support/202", "2/7 is smaller", RIGHT, ""),
    ("fractions.order/support/202", "9/14 is bigger", RIGHT, ""),
    ("fractions.order/support/202", "9/14 is smaller", KNOWN, "A larger denominator"),
    # Equations.
    ("equations.two-step/support/1454", "5n = 25", WRONG, "That is true: go on until n stands"),
    ("equations.two-step/support/1454", "m = 5", WRONG, "The question is about n, not m."),
    ("equations.two-step/support/1454", "n = 5 or 6", WRONG, "decide on one"),
    ("equations.two-step/support/1454", "n = 4 or 6", WRONG, "Only one answer is wanted"),
    ("equations.form-and-solve/core/70", "4w = 20", WRONG, "Go on until w stands alone"),
    # Reasons and working that runs on; the words of what is asked after a number.
    ("equations.one-step/support/377", "x=8 because 6x8=48", RIGHT, ""),
    ("equations.both-sides/core/870", "6=3y y=2", RIGHT, ""),
    ("equations.both-sides/core/870", "6 = 3y y = 3", WRONG, "Try it: with y = 3"),
    ("equations.fractional/core/744", "3/8 of c = 9 so c = 24", RIGHT, ""),
    ("equations.substitution/support/423", "3x3-3=6", RIGHT, ""),
    ("equations.form-and-solve/core/277", "20 people", RIGHT, ""),
    ("equations.form-and-solve/core/277", "20 on the lower deck", RIGHT, ""),
    ("equations.form-and-solve/core/277", "20 on the top deck", UNREAD, ""),
    ("equations.form-and-solve/core/277", "20 and 22", UNREAD, "Only one answer is wanted"),
    ("fractions.of-quantity/core/158", "30 seeds come up", RIGHT, ""),
    ("equations.inequalities/support/492", "10 or more", RIGHT, ""),
    ("equations.inequalities/support/492", "y is 10 or less", KNOWN, "Try y = 9"),
    ("ratio.fraction-of-whole/support/117", "77%", WRONG, "not exact: give it as a fraction"),
    # The solution stands inside the equation.
    ("equations.one-step/support/377", "6 × 8 = 48", FORM, "now write what x is"),
    ("equations.one-step/support/377", "6(8) = 48", FORM, "now write what x is"),
    ("equations.two-step/support/1454", "5 × 5 - 1 = 24", FORM, "now write what n is"),
    ("equations.two-step/core/948", "49/7 - 5 = 2", FORM, "now write what k is"),
    ("equations.brackets/support/353", "5(3 + 6) = 45", FORM, "now write what b is"),
    ("equations.brackets/support/353", "5(4 + 5) = 45", WRONG, ""),
    ("equations.one-step/support/377", "6x8 = 48", UNREAD, "write × or * for times"),
    # A per cent sign that is left out hides no mistake.
    ("fractions.decimals-percentages/support/182", "7.3", KNOWN, "multiply 0.5 by to get 50"),
    ("fractions.decimals-percentages/support/182", "73", FORM, "give the per cent sign"),
    ("fractions.decimals-percentages/support/182", "74", WRONG, "That is too large"),
    ("fractions.decimals-percentages/support/182", "72", WRONG, "That is too small"),
    # A denial is no answer, though the question has the word.
    ("fractions.decimals-percentages/challenge/91", "22 2/9%", RIGHT, ""),
    ("fractions.decimals-percentages/challenge/91", "not 22 2/9%", UNREAD, "‘not’"),
    ("ratio.best-value/support/282", "not A", WRONG, ""),
    # Remainders, money, words.
    ("fractions.improper-mixed/support/41", "2 r 5", UNREAD, "A remainder is left over"),
    ("fractions.improper-mixed/support/41", "2 remainder 5", UNREAD, "A remainder is left over"),
    ("fractions.divide/support/9", "6 r 0", RIGHT, ""),
    ("ratio.proportion/core/198", "£8-70", RIGHT, ""),
    ("ratio.share/core/448", "lots", UNREAD, ""),
]


@pytest.mark.parametrize(("address", "typed", "verdict", "says"), TOLD)
def test_a_pupil_is_told_what_to_do(address, typed, verdict, says):
    marked = mark(find_item(address), typed)
    assert (marked.verdict, says in marked.says) == (verdict, True), marked
