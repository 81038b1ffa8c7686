"""Rules for the nth term to match with the first terms of their sequences."""

from __future__ import annotations

from fractions import Fraction

from generators.sequences._nth_term_mistakes import ZERO_START
from generators.sequences._rule_written import Write, rule
from itembank.items.forms.form_rules import decimal_node, number_node
from itembank.items.item import Draft, Tier
from itembank.items.kinds.equal_ways import ways_matched
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

_Rule = tuple[int, int]
"""What n is multiplied by, and what is added; in tenths in the challenge tier."""


def _rules(tier: Tier, d: int, b: int) -> tuple[_Rule, _Rule, _Rule]:
    """Return three rules that are made of the same two numbers."""
    if tier is Tier.SUPPORT:
        return (d, b), (b, d), (d, -b)
    return (d, b), (-d, b), (d, -b)


def _terms(line: _Rule, first: int = 1) -> tuple[int, ...]:
    d, b = line
    return tuple(d * n + b for n in range(first, first + 4))


def _fits(tier: Tier, d: int, b: int, which: int) -> bool:
    """Keep rules whose sequences differ, from the one that counts from 0 as well."""
    lines = _rules(tier, d, b)
    if d == b or (tier is Tier.SUPPORT and d < b):
        return False
    if tier is Tier.CHALLENGE and (d % 10 == 0 or b % 10 == 0):
        return False
    sequences = {_terms(line) for line in lines} | {_terms(lines[which], 0)}
    return len(sequences) == 4 and (d + 2 * b + which) % (2 if tier is Tier.SUPPORT else 7) == 0


def rules_matched(topic: Topic, tier: Tier, d: int, b: int, which: int) -> Draft:
    """Return three rules to match with the first terms of their sequences; one list is left."""
    write: Write = decimal_node if tier is Tier.CHALLENGE else number_node
    over = 10 if tier is Tier.CHALLENGE else 1

    def listed(terms: tuple[int, ...]) -> t.Listing:
        return t.Listing(tuple(write(Fraction(term, over)) for term in terms))

    lines = _rules(tier, d, b)
    pairs = [
        (rule(Fraction(step, over), Fraction(start, over), write), listed(_terms((step, start))))
        for step, start in lines
    ]
    return ways_matched(
        pairs,
        listed(_terms(lines[which], 0)),
        called=("nth term", "the first terms of its sequence"),
        mistake=(ZERO_START, which),
        say=lambda _: "put n = 1, 2, 3 and 4 into the rule.",
        twin=("rules", tier.value, d, b, which),
        lines=[terms for _, terms in pairs],
    )


def with_rules(spaces: dict[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of a topic, with rules to match at the end of each tier."""
    numbers = {
        Tier.SUPPORT: (range(2, 13), range(2, 13)),
        Tier.CORE: (range(2, 12), range(2, 31)),
        Tier.CHALLENGE: ((2, 3, 5, 12, 15, 25, 4, 6), (*range(1, 30), 34, 41, 52)),
    }
    return {
        tier: space.also(
            rules_matched,
            lambda d, b, which, tier=tier: _fits(tier, d, b, which),
            d=numbers[tier][0],
            b=numbers[tier][1],
            which=range(3),
        )
        for tier, space in spaces.items()
    }
