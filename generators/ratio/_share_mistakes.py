"""The mistakes that are made in sharing in a ratio."""

from __future__ import annotations

from itembank.items.item import Misconception

REVERSED = Misconception(
    "ratio.share-reversed",
    "finds the shares and gives them in the other order",
    "Which number of the ratio comes first? Is your first amount the one that goes with it?",
)


EQUAL = Misconception(
    "ratio.share-equal",
    "shares equally, without looking at the ratio",
    "If the shares were equal, what would the ratio be?",
)


AS_FRACTION = Misconception(
    "ratio.share-as-fraction",
    "takes the ratio a : b as the fraction a/b of the whole amount",
    "How many parts are there altogether? What fraction of the whole is the first share?",
)


PARTS = Misconception(
    "ratio.share-parts-for-amounts",
    "gives the numbers of the ratio as the amounts",
    "Add up your amounts. Do they make the number in the question?",
)


STOPS = Misconception(
    "ratio.share-one-part",
    "finds the value of one part and stops",
    "What does that number stand for? How many of those parts does each share have?",
)


ONE_SHARE = Misconception(
    "ratio.share-not-difference",
    "gives the largest share, not how much larger it is",
    "Read the last sentence again. What are you asked to compare?",
)
