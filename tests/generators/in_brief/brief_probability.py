"""How short questions about chances and sets are worked out again from the printed text.

Events are taken as hundred equally likely cards of each and every pair is counted; what is drawn
from bags is counted over all ordered draws; members of sets are written out as Python's sets.
"""

from __future__ import annotations

from fractions import Fraction
from itertools import permutations, product


def pairs(p, q, fits):
    """Count the pairs of a hundred cards each, of which so many show the event."""
    first, second = ([card < 100 * part for card in range(100)] for part in (p, q))
    counted = sum(fits(a, b) for a, b in product(first, second))
    return Fraction(counted, 100**2)


def drawn(a, b, fits):
    """Count the ordered draws of two from a bag of two colours."""
    bag = ["first"] * int(a) + ["other"] * int(b)
    draws = list(permutations(bag, 2))
    return Fraction(sum(map(fits, draws)), len(draws))


def cells(a, b):
    return len(list(product(range(int(a)), range(int(b)))))


def two_sets(first, second, both):
    """Return two sets of so many members."""
    single = set(range(int(first)))
    return single, set(range(int(first - both), int(first - both + second)))


def overlap(total, first, second, outside):
    """Return how large the overlap is, by trying all."""
    return next(
        both
        for both in range(int(min(first, second)) + 1)
        if len(set.union(*two_sets(first, second, both))) + outside == total
    )


def tries(p, wanted):
    return next(n for n in range(1, 2000) if p * n == wanted)


COMBINED = {
    "Independent events have probabilities {} and {}. Find the probability of both.": (
        lambda p, q: pairs(p, q, lambda a, b: a and b)
    ),
    "Independent events have probabilities {} and {}. Find the probability of neither.": (
        lambda p, q: pairs(p, q, lambda a, b: not a and not b)
    ),
    "Independent events have probabilities {} and {}. Find the probability of exactly one.": (
        lambda p, q: pairs(p, q, lambda a, b: a != b)
    ),
    "Independent events have probabilities {} and {}. Find the probability of at least one.": (
        lambda p, q: pairs(p, q, lambda a, b: a or b)
    ),
    "A spinner lands on red with probability {}. What is the probability of red twice?": (
        lambda p: pairs(p, p, lambda a, b: a and b)
    ),
}
TREES = {
    "Two branches leave a point of a tree. One is {}. What is the other?": lambda p: 1 - p,
    "Three branches leave a point of a tree. Two are {} and {}. What is the third?": (
        lambda p, q: 1 - p - q
    ),
    "On a tree a branch of {} leads to one of {}. What is the probability of both?": (
        lambda p, q: pairs(p, q, lambda a, b: a and b)
    ),
    **{
        f"A bag has {{}} {single} and {{}} {other} {{w}}. Two are taken. {asked}": solve
        for single, other in (("red", "blue"), ("green", "white"), ("black", "yellow"))
        for asked, solve in (
            (
                f"Find the probability of two {single}.",
                lambda a, b: drawn(a, b, lambda draw: draw == ("first", "first")),
            ),
            (
                "Find the probability of one of each.",
                lambda a, b: drawn(a, b, lambda draw: draw[0] != draw[1]),
            ),
        )
    },
}
SPINNERS = {
    "Two spinners have {} and {} sections. How many outcomes are there for the two?": cells,
    "There are {} soups and {} cakes. How many ways are there to choose one of each?": cells,
    "There are {} shirts and {} hats. How many ways are there to choose one of each?": cells,
    "Spinners have {} and {} equal sections. {} pairs win. What is the probability of a win?": (
        lambda a, b, k: Fraction(k, cells(a, b))
    ),
    "Spinners have {} and {} equal sections. {} pairs win. "
    "How many wins do you expect in {} games?": lambda a, b, k, n: Fraction(k, cells(a, b)) * n,
}
_DO = (("pupils", "sing", "dance"), ("people", "swim", "run"))
GROUPS = {
    "{} pupils sing and {} of them also dance. How many sing but do not dance?": (
        lambda a, both: a - both
    ),
    "{} people swim and {} of them also run. How many swim but do not run?": (
        lambda a, both: a - both
    ),
    "{} pupils study French and {} of them also Spanish. How many study French only?": (
        lambda a, both: a - both
    ),
    **{
        f"{{}} {who} only {single}, {{}} only {other} and {{}} do both. How many {single}?": (
            lambda a, b, both: a + both
        )
        for who, single, other in _DO
    },
    **{
        f"{{}} {who} {single}, {{}} {other} and {{}} of these do both. "
        f"How many {who} is that in all?": (
            lambda a, b, both: len(set.union(*two_sets(a, b, both)))
        )
        for who, single, other in _DO
    },
    **{
        f"Of {{}} {who} {{}} {single}, {{}} {other} and {{}} do both. How many do neither?": (
            lambda n, a, b, both: n - len(set.union(*two_sets(a, b, both)))
        )
        for who, single, other in _DO
    },
    **{
        f"Of {{}} {who} {{}} {single}, {{}} {other} and {{}} do neither. How many do both?": overlap
        for who, single, other in _DO
    },
}
SETS = {
    "A set has {} members. {} of them are in another set too. How many are not?": (
        lambda a, both: a - both
    ),
    "A universal set has {} members and its subset A has {}. How many are not in A?": (
        lambda n, a: len(set(range(int(n))) - set(range(int(a))))
    ),
    "Two sets have {} and {} members. {} are in both. How many members has their union?": (
        lambda a, b, both: len(set.union(*two_sets(a, b, both)))
    ),
    "Of {} members {} are in A, {} are in B and {} in neither. How many are in both?": overlap,
}
EXPECTED = {
    "Red has probability {}. How many reds do you expect in {} spins?": lambda p, n: p * n,
    "A win has probability {}. How many wins do you expect in {} games?": lambda p, n: p * n,
    "Red has probability {}. How many spins of {} do you expect not to be red?": (
        lambda p, n: n - p * n
    ),
    "A win has probability {}. How many games of {} do you expect not to win?": (
        lambda p, n: n - p * n
    ),
    "Red has probability {}. How many spins would you expect to give {} reds?": tries,
    "A win has probability {}. How many games would you expect to give {} wins?": tries,
}
TOPICS = {
    "probability.combined": COMBINED,
    "probability.trees": TREES,
    "probability.sample-spaces": SPINNERS,
    "probability.venn": GROUPS,
    "probability.sets": SETS,
    "probability.expected-frequency": EXPECTED,
}
