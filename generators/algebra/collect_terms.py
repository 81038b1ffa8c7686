"""Collecting like terms.

Key stage 3, algebra (England, 2013): "simplify and manipulate algebraic expressions to maintain
equivalence by collecting like terms" (from memory).
"""

from __future__ import annotations

from fractions import Fraction

from generators.algebra._collected_in_stories import in_groups, perimeter, third_side, to_add
from generators.algebra._collecting_mistakes import (
    ADDS_ALL,
    FIRST_ONLY,
    FRACTIONS_ADDED,
    HALF_ROUND,
    LETTER_CANCELLED,
    LONE_LETTER,
    NEGATIVE_LOST,
    POWERS_ADD,
    SIGN_ADDED,
    SIGNS_KEPT,
    SQUARE_AS_PLAIN,
    UNLIKE,
)
from generators.algebra._collecting_numbers import challenge_fits, core_fits, support_fits
from generators.algebra._rewritten import rewritten
from generators.algebra._worked_wrongly import like_terms
from generators.algebra._writing import (
    Term,
    asking,
    collected,
    expression,
    letter,
    shown,
    term,
    trying,
    two_letters,
)
from itembank.items import kinds
from itembank.items.item import Draft, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong
from itembank.notation import tree as t


@register
class CollectTerms(Topic):
    """Like terms of one letter, of two, of squares and products; sides and parts as expressions."""

    id = "algebra.collect-terms"
    title = "Collecting like terms"
    statements = ("algebra.manipulation", "algebra.notation")
    misconceptions = (
        *(UNLIKE, POWERS_ADD, LONE_LETTER, LETTER_CANCELLED, NEGATIVE_LOST, SIGN_ADDED),
        *(SQUARE_AS_PLAIN, FRACTIONS_ADDED, HALF_ROUND, ADDS_ALL, SIGNS_KEPT, FIRST_ONLY),
    )
    spaces = {
        Tier.SUPPORT: kinds.with_claims_and_matches(
            Space(
                support_fits,
                kind=range(4),
                a=range(2, 10),
                b=range(1, 9),
                c=range(2, 7),
                d=(1, 2, 4),
            )
        ),
        Tier.CORE: kinds.with_claims_and_matches(
            Space(
                core_fits,
                kind=range(4),
                a=range(2, 9),
                b=range(2, 8),
                c=range(1, 8),
                d=range(1, 9, 2),
            )
        ),
        Tier.CHALLENGE: Space(
            challenge_fits,
            kind=range(5),
            a=range(2, 10),
            b=range(2, 8),
            c=range(2, 9),
            d=(1, 3, 4, 5, 7),
        ),
    }
    spaces = kinds.with_working_gone_wrong(
        spaces,
        like_terms,
        only={
            Tier.SUPPORT: lambda kind, *_: kind > 1,
            Tier.CHALLENGE: lambda kind, *_: kind in (1, 3),
        },
    )

    def make(self, tier: Tier, kind: int, a: int, b: int, c: int, d: int) -> Draft:
        """Return the question for one point of the tier's space."""
        twin = (str(tier), kind, a, b, c, d)
        if tier is Tier.CHALLENGE and kind == 0:
            return perimeter(a, b, c, d, twin)
        if tier is Tier.CHALLENGE and kind == 2:
            return to_add(a, b, c, d, twin)
        if tier is Tier.CHALLENGE and kind == 4:
            return third_side(a, b, c, d, twin)
        terms = _TERMS[tier, kind](a, b, c, d)
        return _simplify(terms, twin)


def _one(a: int, b: int) -> str:
    return letter(a, b)


def _squares(a: int, b: int, c: int, d: int) -> tuple[Term, ...]:
    x = letter(a, b, c, d)
    return (a, x + x), (b, x), (c, x + x), (-d, x)


def _products(a: int, b: int, c: int, d: int) -> tuple[Term, ...]:
    x, y = two_letters(a, b, c, d)
    return (a, x + y), (b, x), (-c, y + x), (d, x)


def _both_squares(a: int, b: int, c: int, d: int) -> tuple[Term, ...]:
    x, y = two_letters(a, b, c, d)
    return (a, x + x + y), (b, x + y + y), (-c, x + x + y), (d, x + y + y)


def _two(a: int, b: int, c: int, d: int) -> tuple[Term, ...]:
    x, y = two_letters(a, b, c, d)
    return (a, x), (b, y), (c, x), (d, y)


def _two_signed(a: int, b: int, c: int, d: int) -> tuple[Term, ...]:
    x, y = two_letters(a, b, c, d)
    return (a, x), (-b, y), (-c, x), (d, y)


def _parts(a: int, b: int, c: int, d: int) -> tuple[Term, ...]:
    x, y = two_letters(a, b, c, d)
    return (Fraction(1, a), x), (b, y), (Fraction(-1, c), x), (-d, y)


def _with_number(a: int, b: int, c: int, _: int) -> tuple[Term, ...]:
    x = letter(a, b, c)
    return (a, x), (c, ""), (b, x)


def _below(a: int, b: int, c: int, d: int) -> tuple[Term, ...]:
    x = letter(a, b, c, d)
    return (a, x), (-b, ""), (-c, x), (d, "")


_TERMS = {
    (Tier.SUPPORT, 0): lambda a, b, c, d: ((a, _one(a, b)), (b, _one(a, b))),
    (Tier.SUPPORT, 1): lambda a, b, c, d: ((a, _one(a, b)), (-b, _one(a, b))),
    (Tier.SUPPORT, 2): _with_number,
    (Tier.SUPPORT, 3): _two,
    (Tier.CORE, 0): _two_signed,
    (Tier.CORE, 1): _below,
    (Tier.CORE, 2): _squares,
    (Tier.CORE, 3): _products,
    (Tier.CHALLENGE, 1): _parts,
    (Tier.CHALLENGE, 3): _both_squares,
}


def _names(terms: tuple[Term, ...]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(name for _, letters in terms for name in letters))


def _simplify(terms: tuple[Term, ...], twin: tuple[object, ...]) -> Draft:
    asked, grouped, key = expression(*terms), in_groups(terms), expression(*collected(terms))
    rows = [asked]
    steps = []
    if grouped != terms:
        rows.append(expression(*grouped))
        say = "Write like terms next to each other. Keep each sign with the term after it."
        if not any(value < 0 for value, _ in terms):
            say = "Write like terms next to each other."
        if any(letters[::-1] == other != letters for _, letters in terms for _, other in terms):
            say = "The order of the letters in a product does not matter. Group like terms."
        steps.append(Step(say, t.equals(*rows)))
    steps.append(Step(_how(terms), t.equals(rows[-1], key)))
    return rewritten(
        "simplify",
        prompt("Simplify {e}.", e=asked),
        asked,
        key,
        tuple(steps),
        _wrong(terms),
        twin,
    )


def _how(terms: tuple[Term, ...]) -> str:
    if len(terms) == 2:
        (_, x), (second, _) = terms
        if second == -1:
            return f"{x} means one {x}: subtract 1 from the number in front."
        if second == 1:
            return f"{x} means one {x}: add 1 to the number in front."
        return f"Both are {x}-terms, so {'add' if second > 0 else 'subtract'} the numbers in front."
    return "Collect like terms."


def _wrong(terms: tuple[Term, ...]) -> list[Wrong]:
    """Return the likely mistakes that the terms invite, each with what it gives."""
    names, wrong = _names(terms), list[Wrong]()
    found = collected(terms)
    if len(terms) == 2:
        (a, x), (b, _) = terms
        total = a + b
        wrong.append(
            (
                asking(
                    POWERS_ADD,
                    f"If {x} is 2, what is {shown(term(total, x))}? "
                    f"What is {shown(term(total, x + x))}?",
                ),
                term(total, x + x),
            )
        )
        if b < 0:
            wrong.append((trying(LETTER_CANCELLED, x), term(total, "")))
        else:
            wrong.append((UNLIKE, term(a * b, x + x)) if b > 1 else (LONE_LETTER, term(a, x)))
        return wrong
    if any(isinstance(value, Fraction) for value, _ in terms):
        (a, x), (b, y), (c, _), (d, _) = terms
        wrong.append((FRACTIONS_ADDED, expression((a - c, x), (b + d, y))))
        wrong.append(
            (
                asking(NEGATIVE_LOST, f"Start at {b} and go down {-d}. Where are you?"),
                expression((a + c, x), (-b - d, y)),
            )
        )
        return wrong
    total = sum(value for value, _ in terms)
    kinds = [letters for _, letters in found]
    if any("".join(sorted(letters)) in {name * 2 for name in names} for letters in kinds):
        x = names[0]
        wrong.append((SQUARE_AS_PLAIN, term(total, x) if total else None))
        square = sum(value for value, letters in terms if len(letters) == 2)
        plain = sum(value for value, letters in terms if len(letters) == 1)
        wrong.append((POWERS_ADD, expression((square, x * 4), (plain, x))))
    elif len(found) > 1:
        joined = "".join(names)
        if len(names) == 2 and any(len(letters) == 3 for letters in kinds):
            joined = names[0] * 2 + names[1] * 2
        wrong.append((trying(UNLIKE, *names), term(total, joined) if total else None))
    lost = next((n for n, (value, _) in enumerate(terms) if n and value < 0), None)
    if lost is not None:
        value, letters = terms[lost]
        question = f"What sign stands in front of {shown(term(-value, letters))}?"
        turned = (*terms[:lost], (-value, letters), *terms[lost + 1 :])
        wrong.append((asking(NEGATIVE_LOST, question), expression(*collected(turned))))
    alone = next((n for n, (value, letters) in enumerate(terms) if value == 1 and letters), None)
    if alone is not None:
        less = (*terms[:alone], *terms[alone + 1 :])
        wrong.append((LONE_LETTER, expression(*collected(less))))
    numbers = [value for value, letters in terms if not letters]
    if len(numbers) == 2 and numbers[0] < 0 < numbers[1]:
        sizes = -(numbers[1] - numbers[0])
        rest = [row for row in found if row[1]]
        question = f"Start at −{-numbers[0]} and go up {numbers[1]}. Where are you?"
        wrong.append((asking(SIGN_ADDED, question), expression(*rest, (sizes, ""))))
    if len(wrong) < 2:
        # The letters of the first kind of term are multiplied, though its terms are added.
        x = terms[0][1]
        wrong.append(
            (
                asking(POWERS_ADD, "When you add terms, does the power of a letter change?"),
                expression(
                    *((value, letters * 2 if letters == x else letters) for value, letters in found)
                ),
            )
        )
    return wrong
