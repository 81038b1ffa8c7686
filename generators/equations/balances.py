"""Balances that are level: what one block weighs.

Key stage 3, algebra (England, 2013): "use algebraic methods to solve linear equations in one
variable (including all forms that require rearrangement)" (from memory); a balance shows what it
means to do the same to both sides.
"""

from __future__ import annotations

from fractions import Fraction

from generators._turns import by_turns
from generators.equations._pans import on_pans
from generators.equations._writing import side
from itembank.figures.kinds.number.balance import Balance
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.forms.form_rules import number_node
from itembank.items.item import Draft, Misconception, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t

IGNORES_NUMBER = Misconception(
    "equations.balance-number-ignored",
    "ignores the block with a number beside the letters",
    "What else stands on that pan? Does it weigh nothing?",
)
STOPS_EARLY = Misconception(
    "equations.balance-stops-early",
    "gives the weight of all the blocks with the letter",
    "How many blocks weigh that together? What does one of them weigh?",
)
ADDS_ACROSS = Misconception(
    "equations.balance-added-across",
    "counts the blocks with the letter on both pans together",
    "Take one such block off each pan. How many are left, and where?",
)
NUMBERS_ADDED = Misconception(
    "equations.balance-numbers-added",
    "adds the numbers of the two pans instead of taking one from the other",
    "Take the same weight off both pans. What is left on each?",
)
ALL_BLOCKS = Misconception(
    "equations.balance-shared-by-all",
    "shares the weight among all the blocks, whatever stands on them",
    "Do all blocks weigh the same? What is written on them?",
)

_LETTERS = "xynwkb"


# A pan holds four blocks at most: more would take more room than a slide has beside words.


def _support(kind: int, a: int, c: int, b: int, x: int) -> bool:
    """Keep a letters and one number, level with one number; `b` is the number beside them."""
    return x not in (a, b) and a * x + b < 80


def _core(kind: int, a: int, c: int, b: int, x: int) -> bool:
    """Keep letters on both pans, with more on one; `b` lies beside those that are more."""
    if not 0 < c < a or x in (a, b):
        return False
    if kind == 0:
        return a < 4 and a - c == 1
    return b == 1 and a - c > 1  # the number lies beside the fewer letters alone


def _challenge(kind: int, a: int, c: int, b: int, x: int) -> bool:
    """Keep two numbers on a pan, or an answer that is a fraction; `x` counts halves."""
    if kind == 0:
        return 0 < c < a and a - c == 2 and x not in (a, b)
    return c > 0 and a - c == 2 and x % 2 == 1 and x > 2


@register
class Balances(Topic):
    """Letters on one pan; letters on both; numbers on both and answers that are no whole number."""

    id = "equations.balances"
    title = "Balances"
    statements = ("algebra.linear-equations",)
    misconceptions = (IGNORES_NUMBER, STOPS_EARLY, ADDS_ACROSS, NUMBERS_ADDED, ALL_BLOCKS)
    spaces = {
        Tier.SUPPORT: Space(_support, kind=(0,), a=(2, 3), c=(0,), b=range(1, 13), x=range(2, 16)),
        Tier.CORE: Space(
            _core, kind=range(2), a=(2, 3, 4), c=(1, 2), b=range(1, 16), x=range(2, 16)
        ),
        Tier.CHALLENGE: Space(
            _challenge, kind=range(2), a=(2, 3), c=(0, 1, 2), b=range(1, 16), x=range(2, 22)
        ),
    }
    spaces = kinds.with_statements(spaces)

    def make(self, tier: Tier, kind: int, a: int, c: int, b: int, x: int) -> Draft:
        """Return the question; `a` and `c` count the letters on the pans."""
        twin = (str(tier), kind, a, c, b, x)
        letter = t.Sym(by_turns(_LETTERS, a + b + c + x))
        lots = a - c
        value = Fraction(x, lots) if tier is Tier.CHALLENGE and kind else Fraction(x)
        rest = int(lots * value)
        if tier is Tier.CHALLENGE:
            plus = 0 if kind else 3
            more = 0 if kind else 2 + (a + x) % 3
            turned = (a + b + x) % 2 == 1
            pans = (a, b + plus), (c, rest + b + plus)
            return _balance(letter, *pans, more, twin, turned=turned)
        if tier is Tier.CORE and kind:
            # The number lies beside the fewer letters alone.
            return _balance(letter, (a, 0), (c, rest), 0, twin, turned=(a + x) % 2 == 1)
        turned = tier is Tier.CORE and (a + b + x) % 2 == 1
        return _balance(letter, (a, b), (c, rest + b), 0, twin, turned=turned)


def _blocks(letter: t.Sym, count: int, number: int, more: int = 0) -> tuple[t.Node, ...]:
    numbers = (number - more, more) if more else (number,)
    return (*(letter,) * count, *(t.Int(n) for n in numbers if n))


def _balance(
    letter: t.Sym,
    many: tuple[int, int],
    few: tuple[int, int],
    more: int,
    twin: tuple[object, ...],
    *,
    turned: bool,
) -> Draft:
    """Return the question; each pan as how many letters and what number, the larger count first."""
    (a, left), (c, right) = many, few
    pans = (
        _blocks(letter, a, left),
        _blocks(letter, c, right, more),
    )
    figure = Balance(*(pans[::-1] if turned else pans))
    name = letter.name
    text = prompt("What is the weight of block {x}?", x=letter)
    lots, rest = a - c, right - left
    value = Fraction(rest, lots)
    key = number_node(value)

    def level(m: int, p: int, n: int, q: int) -> t.Relation:
        sides = side(m, letter, p), side(n, letter, q)
        return t.equals(*(sides[::-1] if turned else sides))

    shown = Step("Write what the balance shows as an equation.", level(a, left, c, right))
    steps = [shown] if c else []
    now = (a, left, c, right)
    if c:
        now = (lots, left, 0, right)
        blocks = "1 block" if c == 1 else f"{c} blocks"
        after = level(*now)
        steps.append(Step(f"Take {blocks} {name} off each pan.", after, on_pans(after)))
    if left:
        now = (lots, 0, 0, rest)
        after = level(*now)
        steps.append(
            Step(f"Take {left} off each pan.", after, on_pans(after) if lots > 1 else None)
        )
    if lots > 1:
        steps.append(Step(f"Share it equally among {lots} blocks.", t.equals(letter, key)))
    wrong: list[Wrong] = [(STOPS_EARLY, rest if lots > 1 else None)]
    if left:
        wrong.append((IGNORES_NUMBER, Fraction(right, lots)))
        wrong.append((NUMBERS_ADDED, Fraction(right + left, lots)))
    if c:
        wrong.append((ADDS_ACROSS, Fraction(rest, a + c)))
    elif left:
        wrong.append((ALL_BLOCKS, Fraction(right, a + 1)))
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "number",
        tuple(steps),
        slips(*wrong, write=number_node, key=key),
        twin,
        figure=figure,
    )
