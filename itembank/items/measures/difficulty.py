"""A written measure of how hard an item is, from its structure and the steps it takes.

The measure is a sum: each thing that makes a question harder
(:mod:`itembank.items.measures.features` counts them) has a weight in :data:`WEIGHTS`, so that any
figure can be explained. What weighs most is structure: lines of working, letters on both sides, a
minus before a bracket, a recurring decimal. The size of the numbers comes last. One plain line of
working is worth about 1.6, and a gap below 0.5 means that two questions are about as hard as each
other.

The weights were fitted by ``bench/fit_difficulty.py`` and then frozen, in steps of 0.05, to

* 187 pairs of questions that were judged one by one for which is harder, and 63 judged about
  equal (`tests/items/judged_pairs.csv`; 126 more are held out and were not fitted to). They
  were read for this project: no pupils' answers stand behind them;
* with less say, that an item lies above the middle of the tier below it on its topic;
* a guess of our own at each weight, towards which all are drawn.

On the pairs that were held out the order agrees with the judge's about nine times in ten; a
test states the figures. Pupils' answers correct it once there are enough of them
(:mod:`itembank.records.statistics.item_difficulty`).
"""

from __future__ import annotations

from itembank.items.item import Item
from itembank.items.measures.difficulty_by_kind import Features
from itembank.items.measures.features import features

WEIGHTS: Features = {
    # Reading, and forming a model.
    "words": 0.65,  # ten words of prompt
    "story": 0.4,  # the words have to be read for what they mean
    "formed": 0.1,  # a letter that the prompt does not print
    "formed both sides": 0.55,  # … and it comes on both sides
    # Steps.
    "lines": 1.6,  # lines of working, to the power of 0.7
    # What is asked.
    "solve": 0.75,
    "inequality": 0.45,
    "sign turns": 0.9,  # an inequality with a negative coefficient
    "rewrite": 0.25,  # simplify, expand or factorise
    "factorise": 0.6,
    "leading number": 0.65,  # a quadratic with a number before the square
    "subject": 0.85,  # rearrange a formula
    "sequence": 0.55,  # the rule of a sequence
    "common": 0.45,  # highest common factor, lowest common multiple
    "choose": 0.2,
    "more options": 0.45,  # beyond two
    "round": 0.4,
    "give": 0.3,  # one of many right answers: a guess of our own, fitted to nothing
    "read": 0.3,  # something read off a figure: a guess of our own, fitted to nothing
    "drawn": 0.25,  # each doubling of what is drawn: a guess too
    "listed": 0.1,  # each number of a list that is summed up: a guess too
    "back to whole": 0.8,  # a part of something unknown is given
    "given": 0.2,  # a value to put in place of a letter
    "more answers": 0.25,  # beyond one
    # Letters, and where the unknown stands.
    "both sides": 0.85,
    "taken away": 0.55,  # the unknown is taken away or has a negative coefficient
    "bracket": 0.75,
    "number inside": 0.55,  # a bracket with a coefficient in it
    "minus bracket": 0.95,
    "over a number": 1.05,  # letters in a fraction
    "fraction of a letter": 0.8,  # a coefficient that is a fraction
    "product of letters": 0.35,
    "square of a letter": 0.7,
    "terms found": 0.5,  # terms of an answer in letters, beyond one
    "fraction found": 0.6,  # the solution is a fraction
    "negative found": 0.25,  # the solution is negative
    # Kinds of number.
    "fraction": 0.65,
    "more fractions": 0.3,  # beyond one
    "unlike": 0.2,  # unlike denominators to add or compare
    "common multiple": 0.4,  # … none of which will do for all
    "divided by fraction": 0.3,
    "mixed": 0.6,
    "mixed found": 0.4,
    "negative": 0.35,
    "negative met": 0.5,  # printed or on the way
    "two signs": 0.3,  # adding or taking away a negative
    "decimal met": 0.75,
    "recurring": 1.55,
    "recurring late": 0.6,  # figures before the block that recurs
    "power": 0.5,
    "negative power": 0.25,
    "power nought": 0.55,
    "root": 0.5,
    "surd": 0.95,  # a root left in the answer
    "operations": 0.25,  # operations printed, where there are no letters
    "bar": 0.3,  # a fraction bar over or under a calculation
    "number bracket": 0.25,
    # Units and ratios.
    "converted": 0.15,  # two units of one kind
    "time": 0.65,  # … that are not tens
    "more kinds of unit": 0.15,
    "ratio": 0.25,
    "more ratios": 0.55,
    "more parts": 0.5,  # parts of a ratio beyond two
    "box below": 0.35,  # the unknown is a denominator
    # Load on the head.
    "size": 0.3,  # figures of the largest number printed, beyond two
}
EXPECTED_LINES: Features = {
    "story": 0.25,
    "formed": 0.2,
    "formed both sides": 0.77,
    "solve": 0.13,
    "factorise": 0.21,
    "leading number": 0.23,
    "subject": 0.47,
    "sequence": 0.4,
    "common": 0.61,
    "choose": 0.54,
    "more options": 0.94,
    "given": 0.28,
    "fraction found": 0.18,
    "more answers": 0.71,
    "both sides": 0.49,
    "bracket": 0.29,
    "number inside": 0.26,
    "over a number": 0.25,
    "fraction of a letter": 0.31,
    "more fractions": 0.15,
    "unlike": 0.12,
    "divided by fraction": 0.29,
    "mixed": 0.27,
    "mixed found": 0.35,
    "two signs": 0.26,
    "decimal met": 0.18,
    "recurring late": 1.49,
    "power": 0.29,
    "power nought": 0.45,
    "root": 0.11,
    "bar": 0.36,
    "time": 0.2,
    "ratio": 0.4,
    "more parts": 0.33,
    "box below": 0.38,
}
"""What each thing adds to the "lines" of a question whose working nobody wrote: a least-squares
fit over the questions that show theirs."""
LEAST_LINES = 1.42
"""The "lines" of a question without any of these."""


def difficulty(item: Item) -> float:
    """Return the difficulty of an item: a positive number to two decimal places.

    >>> from itembank.items.topics.registry import find_item
    >>> one_bracket = find_item("equations.both-sides-brackets/support/40")
    >>> two_brackets = find_item("equations.both-sides-brackets/challenge/40")
    >>> difficulty(one_bracket) < difficulty(two_brackets)
    True
    """
    found = features(item)
    if not found["working"]:
        more = sum(found[name] * lines for name, lines in EXPECTED_LINES.items())
        found["lines"] = LEAST_LINES + more
    return round(sum(found[name] * weight for name, weight in WEIGHTS.items()), 2)


def parts_of(item: Item) -> Features:
    """Return what makes up the difficulty of an item, the weightiest first.

    >>> from itembank.items.topics.registry import find_item
    >>> list(parts_of(find_item("fractions.add-unlike/core/9")))[:2]
    ['lines', 'fraction']
    """
    found = features(item)
    parts = {name: round(found[name] * weight, 2) for name, weight in WEIGHTS.items()}
    return dict(sorted(((n, p) for n, p in parts.items() if p), key=lambda pair: -pair[1]))
