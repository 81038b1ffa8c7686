"""Fits the weights of the difficulty measure again: ``python bench/fit_difficulty.py``.

What it fits to: the pairs of `tests/items/judged_pairs.csv` that are not held out, and, with
less say, that the items of a tier lie above the middle of the tier below in every generated
topic. Each weight is drawn towards what a teacher would guess (:data:`GUESSES`; common
practice, no source), so that what the pairs say little of keeps a sensible weight, and none is
negative. A pair costs log(1 + e^(2(margin − gap))), the margin being larger where one is
*much* harder; a pair judged equal costs a quarter of the square of its gap (the form of a
Bradley–Terry model: R. A. Bradley and M. E. Terry, *Biometrika* 39, 1952).

It prints the tables that :mod:`itembank.items.measures.difficulty` holds, and how the pairs come
out.
"""

from __future__ import annotations

import random
import sys
from itertools import pairwise
from pathlib import Path

import numpy as np
from scipy.optimize import minimize, nnls

sys.path.insert(0, str(Path(__file__).parents[1]))

from itembank.items.item import Item, Tier
from itembank.items.measures.features import features
from itembank.items.topics.registry import find_topic, topic_ids
from tests.items.judged import bank_items, pairs

GUESSES = {
    "words": 0.3,
    "story": 0.3,
    "lines": 0.8,
    "formed": 0.4,
    "formed both sides": 0.5,
    "solve": 0.2,
    "inequality": 0.3,
    "sign turns": 0.8,
    "rewrite": 0.3,
    "factorise": 0.5,
    "leading number": 0.8,
    "subject": 0.8,
    "sequence": 0.6,
    "common": 0.4,
    "choose": 0.2,
    "more options": 0.4,
    "round": 0.3,
    "back to whole": 0.6,
    "given": 0.2,
    "fraction found": 0.5,
    "negative found": 0.3,
    "more answers": 0.5,
    "both sides": 0.7,
    "taken away": 0.5,
    "bracket": 0.5,
    "number inside": 0.3,
    "minus bracket": 0.9,
    "over a number": 0.6,
    "fraction of a letter": 0.7,
    "product of letters": 0.5,
    "square of a letter": 0.5,
    "terms found": 0.3,
    "fraction": 0.4,
    "more fractions": 0.3,
    "unlike": 0.4,
    "common multiple": 0.4,
    "divided by fraction": 0.5,
    "mixed": 0.5,
    "mixed found": 0.4,
    "negative": 0.4,
    "negative met": 0.5,
    "two signs": 0.4,
    "decimal met": 0.4,
    "recurring": 1.4,
    "recurring late": 0.6,
    "power": 0.4,
    "negative power": 0.5,
    "power nought": 0.5,
    "root": 0.4,
    "surd": 0.8,
    "operations": 0.2,
    "bar": 0.3,
    "number bracket": 0.3,
    "converted": 0.5,
    "time": 0.5,
    "more kinds of unit": 0.1,
    "ratio": 0.2,
    "more ratios": 0.4,
    "more parts": 0.4,
    "box below": 0.3,
    "size": 0.3,
    "size on the way": 0.2,
}
NAMES = list(GUESSES)
TRUST = 3.0
"""How firmly the guesses are held; chosen by cross-validation on the fitted pairs."""
TIERS = 2.0
"""The say of the tiers of one topic, where a judged pair has 1."""
MARGIN, MUCH, TIER_MARGIN = 0.7, 1.5, 0.5
EACH = 60
"""Items of a tier that are looked at."""


def row(item: Item) -> np.ndarray:
    """Return the counts of an item as numbers, in the order of the names."""
    found = features(item)
    if not found["working"]:
        found["lines"] = 2.0
    return np.array([found[name] for name in NAMES])


def steps_up() -> np.ndarray:
    """Return how far items of each topic's tiers lie from the middle of the tier below."""
    found = []
    for name in topic_ids():
        topic, rng, rows = find_topic(name), random.Random(5), []
        for tier in Tier:
            size = len(topic.spaces[tier])
            places = rng.sample(range(size), min(size, EACH))
            rows.append(np.array([row(topic.item(tier, place)) for place in places]))
        found += [high[:20] - np.median(low, axis=0) for low, high in pairwise(rows)]
    return np.concatenate(found)


def fit(gaps: np.ndarray, harder: np.ndarray, much: np.ndarray, up: np.ndarray) -> np.ndarray:
    """Return the weights that cost least."""
    guesses = np.array(list(GUESSES.values()))
    margin = np.where(much, MUCH, MARGIN)

    def cost(weights: np.ndarray) -> float:
        gap = gaps @ weights
        judged = np.where(harder != 0, np.logaddexp(0, 2 * (margin - gap * harder)) / 2, gap**2 / 4)
        tiers = np.logaddexp(0, 3 * (TIER_MARGIN - up @ weights)) / 3 / 20
        trust = TRUST * ((weights - guesses) ** 2).sum()
        return float(judged.sum() + TIERS * tiers.sum() + trust)

    bounds = [(0, None)] * len(guesses)
    options = {"maxiter": 2000, "maxfun": 1_000_000}
    return minimize(cost, guesses, bounds=bounds, method="L-BFGS-B", options=options).x


def expected_lines() -> dict[str, float]:
    """Return what each count adds to the lines of working, for items that show none."""
    rng = random.Random(6)
    items = [item for item in bank_items().values() if item.steps]
    for name in topic_ids():
        topic = find_topic(name)
        for tier in Tier:
            items += [topic.item(tier, rng.randrange(len(topic.spaces[tier]))) for _ in range(9)]
    found = [features(item) for item in items]
    causes = [name for name in NAMES if name not in ("lines", "size", "size on the way", "words")]
    counts = np.array([[1.0, *(counted[name] for name in causes)] for counted in found])
    weights, _ = nnls(counts, np.array([counted["lines"] for counted in found]))
    return {
        name: round(float(weight), 2)
        for name, weight in zip(("", *causes), weights, strict=True)
        if weight >= 0.1
    }


def main() -> None:
    """Print the tables and how many pairs come out as judged."""
    judged = pairs()
    gaps = np.array([row(pair.first) - row(pair.second) for pair in judged])
    harder = np.array([pair.harder for pair in judged])
    much = np.array([pair.much for pair in judged])
    held = np.array([pair.held_out for pair in judged])
    weights = fit(gaps[~held], harder[~held], much[~held], steps_up())
    weights = np.round(weights * 20) / 20
    print({name: float(weight) for name, weight in zip(NAMES, weights, strict=True)})
    print(expected_lines())
    for said, chosen in (("fitted", ~held), ("held out", held)):
        if said == "held out" and "--held-out" not in sys.argv:
            continue
        ordered = chosen & (harder != 0)
        right = (gaps @ weights * harder > 0)[ordered]
        print(f"{said}: {right.sum()} of {ordered.sum()} pairs come out as judged")


if __name__ == "__main__":
    main()
