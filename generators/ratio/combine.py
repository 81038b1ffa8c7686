"""Combining a : b and b : c."""

from __future__ import annotations

from math import gcd, lcm
from typing import Any

from generators._turns import by_turns
from generators.ratio._parts import lowest, whole_ratio
from itembank.items import kinds
from itembank.items.item import Draft, Find, Misconception, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

JOINED = Misconception(
    "ratio.combine-joined",
    "joins the two ratios without making the shared part the same",
    "What is b in the first ratio? What is it in the second? Are those the same size of part?",
)
ADDED = Misconception(
    "ratio.combine-added",
    "adds the two numbers for the shared part",
    "Is b counted twice? Compare a with b in your answer: is it still the first ratio?",
)
SHARED = Misconception(
    "ratio.combine-joined-shared",
    "joins the two ratios without making the shared part the same, and shares in that",
    "Check your amounts against the second ratio. Do they fit it?",
)
LISTED = Misconception(
    "ratio.combine-parts-for-amounts",
    "gives the parts of the ratio as the amounts",
    "Add up your amounts. Do they make the number in the question?",
)

_A, _B, _C = t.Sym("a"), t.Sym("b"), t.Sym("c")
_AB, _BC, _ALL = t.Ratio((_A, _B)), t.Ratio((_B, _C)), t.Ratio((_A, _B, _C))
_FIRST = tuple((a, b) for b in range(2, 7) for a in range(1, 9) if gcd(a, b) == 1)
_SECOND = tuple((b, c) for b in range(2, 10) for c in range(1, 8) if gcd(b, c) == 1)
_STORIES = (
    "A bed has {n} flowers: tulips, lilies and irises. The ratio of tulips to lilies is {p}. "
    "The ratio of lilies to irises is {q}. How many of each are there?",
    "A club has {n} members: juniors, seniors and masters. The ratio of juniors to seniors is {p}. "
    "The ratio of seniors to masters is {q}. How many of each are there?",
    "A depot sells {n} tickets: single, return and weekly. The ratio of single to return is {p}. "
    "The ratio of return to weekly is {q}. How many of each are sold?",
)


def _keep_multiple(first: tuple[int, int], factor: int, last: int) -> bool:
    # The second ratio is in its simplest form, as the first is.
    return gcd(first[1] * factor, last) == 1


def _keep_common(first: tuple[int, int], second: tuple[int, int]) -> bool:
    b, d = first[1], second[0]
    # The same pair of ratios read from the other end is the same question.
    return b % d != 0 and d % b != 0 and first < second[::-1]


def _keep_story(first: tuple[int, int], second: tuple[int, int], worth: int) -> bool:
    (a, b), (d, c) = first, second
    if b % d == 0 or d % b == 0:
        return False
    # Sharing in the unmatched ratio has to come out whole, so that the slip can be seen.
    total = (a * d + b * d + b * c) // gcd(b, d) * worth
    return total <= 500 and total % (a + b + c) == 0 and first < second[::-1]


@register
class Combine(Topic):
    """One shared number a multiple of the other; then not; then in words, sharing an amount."""

    id = "ratio.combine"
    title = "Combining two ratios"
    statements = ("ratio.notation",)
    misconceptions = (JOINED, ADDED, SHARED, LISTED)
    prerequisites = ("ratio.simplest-form", "ratio.one-part")
    spaces = {
        Tier.SUPPORT: kinds.with_given_answers(
            Space(_keep_multiple, first=_FIRST, factor=(2, 3, 4), last=range(1, 10))
        ),
        Tier.CORE: kinds.with_given_answers(Space(_keep_common, first=_FIRST, second=_SECOND)),
        Tier.CHALLENGE: Space(
            _keep_story, first=_FIRST[:20], second=_SECOND[:31], worth=(2, 3, 4, 5, 6, 8)
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.CHALLENGE:
            return self._story(*values)
        if tier is Tier.CORE:
            first, second = values
            if (first[0] + second[1]) % 2:
                first, second = second[::-1], first[::-1]
            return self._letters(first, second)
        first, factor, last = values
        second = (first[1] * factor, last)
        if (first[0] + factor + last) % 2:
            return self._letters(second[::-1], first[::-1])
        return self._letters(first, second)

    def _letters(self, first: tuple[int, int], second: tuple[int, int]) -> Draft:
        (a, b), (d, c) = first, second
        shown, other = whole_ratio(a, b), whole_ratio(d, c)
        common = lcm(b, d)
        up, across = common // b, common // d
        whole = (a * up, common, c * across)
        key = whole_ratio(*lowest(*whole))
        steps = [
            *_matched(shown, other, up, across, letters=True),
            Step("Join the two ratios at b.", t.equals(_ALL, whole_ratio(*whole))),
        ]
        if gcd(*whole) > 1:
            steps.append(
                Step(f"Divide every part by {gcd(*whole)}.", t.equals(whole_ratio(*whole), key))
            )
        return Draft(
            prompt=prompt(
                "{p} and {q}. Write {r} in its simplest form.",
                p=t.equals(_AB, shown),
                q=t.equals(_BC, other),
                r=_ALL,
            ),
            ask=Find(_ALL, (t.equals(_AB, shown), t.equals(_BC, other))),
            key=key,
            form="ratio",
            steps=tuple(steps),
            slips=slips(
                (JOINED, whole_ratio(*lowest(a, b, c))),
                (ADDED, whole_ratio(*lowest(a, b + d, c))),
            ),
            twin=("letters", *min((first, second), (second[::-1], first[::-1]))),
        )

    def _story(self, first: tuple[int, int], second: tuple[int, int], worth: int) -> Draft:
        (a, b), (d, c) = first, second
        common = lcm(b, d)
        up, across = common // b, common // d
        parts = (a * up, common, c * across)
        # A common factor of the three parts only makes one part worth more.
        count, factor = sum(parts), gcd(*parts)
        total, part_worth = count * worth, worth * factor
        small = lowest(*parts)
        first_ratio, second_ratio, given = whole_ratio(a, b), whole_ratio(d, c), t.Int(total)
        amounts = tuple(t.Int(part * worth) for part in parts)
        unmatched_worth = total // (a + b + c)
        joined = [Step("Join the two ratios at the shared part.", whole_ratio(*parts))]
        if factor > 1:
            smaller = t.equals(whole_ratio(*parts), whole_ratio(*small))
            joined.append(Step(f"Divide every part by {factor}.", smaller))
        return Draft(
            prompt=prompt(
                by_turns(_STORIES, a + c + worth), p=first_ratio, q=second_ratio, n=given
            ),
            ask=Find(
                t.Listing((_A, _B, _C)),
                (
                    t.equals(_AB, first_ratio),
                    t.equals(_BC, second_ratio),
                    t.equals(t.add(_A, _B, _C), given),
                ),
            ),
            key=t.Listing(amounts),
            form="amounts",
            steps=(
                *_matched(first_ratio, second_ratio, up, across, letters=False),
                *joined,
                Step(
                    "Add to find the number of parts.",
                    t.equals(t.add(*map(t.Int, small)), t.Int(sum(small))),
                ),
                Step(
                    "Divide to find what one part is worth.",
                    t.equals(t.divide(given, t.Int(sum(small))), t.Int(part_worth)),
                ),
                *(
                    Step(
                        f"Multiply to find the {place} amount.",
                        t.equals(t.times(t.Int(part), t.Int(part_worth)), t.Int(part * part_worth)),
                    )
                    for place, part in zip(("first", "second", "third"), small, strict=True)
                ),
                Step("Write the amounts in the order of the story.", t.Listing(amounts)),
            ),
            slips=slips(
                (
                    SHARED,
                    t.Listing(
                        (
                            t.Int(a * unmatched_worth),
                            t.Int(b * unmatched_worth),
                            t.Int(c * unmatched_worth),
                        )
                    ),
                ),
                (LISTED, t.Listing(tuple(map(t.Int, small)))),
            ),
            twin=("story", first, second, worth),
        )


def _matched(shown: t.Ratio, other: t.Ratio, up: int, across: int, letters: bool) -> list[Step]:
    """Return the lines that make the shared part the same in both ratios."""
    steps = []
    for name, known, ratio, factor in (
        ("a : b" if letters else "the first ratio", _AB, shown, up),
        ("b : c" if letters else "the second ratio", _BC, other, across),
    ):
        if factor > 1:
            scaled = whole_ratio(*(p.n * factor for p in ratio.parts if isinstance(p, t.Int)))
            steps.append(
                Step(
                    f"Multiply both parts of {name} by {factor}, "
                    f"so that {'b' if letters else 'the shared part'} is the same in both.",
                    t.equals(known, ratio, scaled) if letters else t.equals(ratio, scaled),
                )
            )
    return steps
