"""Substitution into a formula."""

from __future__ import annotations

from generators.equations import _misconceptions as m
from generators.equations._formulas import richer, simple
from generators.equations._formulas_inside import letter_inside
from itembank.items import kinds
from itembank.items.forms.form_rules import number_node
from itembank.items.item import Draft, Find, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips


def _support(kind: int, a: int, b: int, x: int) -> bool:
    if kind == 2:  # P = 2a + 2b, a < b
        return x == 2 and a < b
    if kind == 3:  # A = bh/2
        return x == 2 and b > 1 and a != b and a * b % 2 == 0
    # 2 + 2 is 2 × 2: adding would not show. Odd and even keep the kinds in balance.
    return b % 2 == kind and (a != 2 or x != 2) and (kind == 0 or a * x > b)


def _core(kind: int, p: int, q: int, r: int) -> bool:
    if kind == 0:
        return r == 3 and p <= 6
    if kind == 1:
        return p < q and (p + q) * r % 2 == 0
    if q > 0:
        return False
    # Else two of the mistakes would give one answer.
    return p * (r - 1) != -2 * q * r if kind == 2 else p * (1 - q) != -2 * r * q


def _challenge(kind: int, p: int, q: int, r: int) -> bool:
    if kind == 2:
        return r == 3 and p not in (q, 2 * q)
    if kind in (3, 4):
        return p < q and (p + q) * r % 2 == 0
    # Odd and even keep the kinds in balance; at qr the value given would be 0.
    return p != q * r and (p in (4, 7) if kind == 5 else p % 2 == kind)


@register
class Substitution(Topic):
    """Into a simple formula; with squares, brackets or negatives; for a letter not alone."""

    id = "equations.substitution"
    title = "Substituting into formulae"
    statements = ("algebra.substitution", "algebra.formulae")
    misconceptions = (
        m.SIDE_BY_SIDE,
        m.ADDS_FACTORS,
        m.SUM_FIRST,
        m.POWER_OF_ALL,
        m.DOUBLES,
        m.SQUARE_SIGN,
        m.NO_BRACKET,
        m.NO_HALF,
        m.DROPS_MINUS,
        m.LOST_MINUS,
        m.ANSWER_SIGN,
        m.SAME_OPERATION,
        m.STOPS_EARLY,
        m.EXTRA_ONCE,
        m.SUBTRACTS_MULTIPLIER,
    )
    spaces = {
        Tier.SUPPORT: Space(
            _support, kind=range(4), a=range(2, 10), b=range(1, 13), x=range(2, 10)
        ),
        Tier.CORE: Space(
            _core,
            kind=range(4),
            p=range(2, 10),
            q=(-9, -8, -7, -6, -5, -4, -3, -2, 3, 4, 5, 6, 7, 8, 9, 10, 12),
            r=range(3, 8),
        ),
        Tier.CHALLENGE: Space(
            _challenge, kind=range(6), p=range(2, 10), q=range(3, 11), r=range(3, 9)
        ),
    }
    spaces = kinds.with_statements(spaces)

    def make(self, tier: Tier, *values: int) -> Draft:
        """Return the question: a formula, the values given, and the letter asked for."""
        build = {Tier.SUPPORT: simple, Tier.CORE: richer, Tier.CHALLENGE: letter_inside}[tier]
        formula, target, given, value, steps, wrong = build(*values)
        names = "abc"[: len(given)]
        listed = ["{" + name + "}" for name in names]
        known = " and ".join([", ".join(listed[:-1]), listed[-1]] if len(listed) > 1 else listed)
        return Draft(
            prompt(
                "Use {f} to work out {t} when " + known + ".",
                f=formula,
                t=target,
                **dict(zip(names, given, strict=True)),
            ),
            Find(target, (formula, *given)),
            number_node(value),
            "integer",
            steps,
            slips(*wrong, write=number_node, key=number_node(value)),
            values,
        )
