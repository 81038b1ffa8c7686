"""Place value and order of decimals: what a digit is worth, marks of a number line, lists in order.

The programme of study for key stage 3 (England, 2013) asks pupils to "understand and use place
value for decimals …" and to "order positive and negative integers, decimals …; use the number line
as a model for ordering of the real numbers" (from memory).
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import Any

from generators._line_in_order import TOLD, in_decimals
from generators._turns import by_turns
from generators.number import _decimal_order_mistakes as m
from generators.number._decimal_orders import (
    TURNS,
    WRONG,
    Decimal,
    Kind,
    by_size,
    in_order,
    listed_fit,
    things_of,
)
from generators.number._decimals_between import halfway, one_between, with_places
from generators.number._decimals_on_a_line import LINES, mark_fits, on_a_line
from generators.number._writing import apart
from itembank.items.forms.form_rules import decimal_node
from itembank.items.item import Compare, Draft, Find, Order, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t


def _support(kind: int, w: int, p: int, q: int, r: int) -> bool:
    """Keep short lists, signs between two numbers, tenths on a line, and digits to be read."""
    match kind:
        case Kind.THREE:
            return w <= 4 and listed_fit(kind, w, p, q, r)
        case Kind.SIGN:
            # w.p and w.pr: equal tenths, one of them with hundredths; q is which comes first.
            return w <= 4 and q <= 2
        case Kind.LINE:
            return r == 1 and q <= len(LINES) and mark_fits(q, p)
    return w <= 1 and apart(w, p, q, r)


def _core(kind: int, w: int, p: int, q: int, r: int) -> bool:
    """Keep four numbers with noughts in them or negative ones, fine lines, stories, halfway."""
    match kind:
        case Kind.FINE_LINE:
            return w <= 6 and r == 1 and q != 5
        case Kind.STORY:
            return p > 1 and listed_fit(kind, w, p, q, r)
        case Kind.NEGATIVES:
            return w <= 2 and listed_fit(kind, w, p, q, r)
        case Kind.HALFWAY:
            # w.p and a number with hundredths, up to 2 further on; halfway has two places at most.
            # The difference must not stand between, and is not the half of it.
            return w > 1 and apart(p, q) and 4 <= r <= 9 and (10 * q + r - 10 * p) % 2 == 0
    return w <= 4 and p > 1 < q and listed_fit(kind, w, p, q, r)


def _challenge(kind: int, w: int, p: int, q: int, r: int) -> bool:
    """Keep numbers between, marks below zero, and lists of both signs."""
    match kind:
        case Kind.BETWEEN:
            return w <= 6 and r == 1 and q <= 3
        case Kind.NEGATIVE_LINE:
            return r == 1 and q <= len(LINES) and mark_fits(q, p)
    return w <= 3 and listed_fit(kind, w, p, q, r)


# What the numbers of a story measure, and how they are to be put in order.
_STORIES = (
    ("Four swimmers finish a race in these times, in seconds:", "Write the times", True, 28),
    ("Four pumpkins from an allotment have these masses, in kilograms:", "Write them", False, 3),
    ("A market garden has four nets of these lengths, in metres:", "Write the lengths", True, 2),
    ("Four sacks in a school kitchen have these masses, in kilograms:", "Write them", False, 9),
)
_FIRST = ("shortest first", "heaviest first", "shortest first", "heaviest first")


@register
class OrderDecimals(Topic):
    """Tenths and hundredths in order, on a line and one by one; then below zero and between."""

    id = "number.order-decimals"
    title = "Comparing and ordering decimals"
    statements = ("number.place-value", "number.ordering")
    misconceptions = (
        m.LONGER,
        m.SHORTER,
        m.TENTHS_ONLY,
        m.ONE_PLACE_OUT,
        m.FACE_VALUE,
        m.STEP_IS_ONE,
        m.STEP_TOO_SMALL,
        m.IGNORES_SIGNS,
        m.NEGATIVES_TURNED,
        m.WRONG_END,
        m.THE_END,
        m.DIFFERENCE,
        m.HALF_DIFFERENCE,
        m.PAST_LARGER,
        m.STEP_IS_TENTH,
    )
    spaces = {
        Tier.SUPPORT: Space(
            _support,
            kind=tuple(Kind)[:4],
            w=range(0, 7),
            p=range(1, 10),
            q=range(1, 10),
            r=range(1, 10),
        ),
        Tier.CORE: Space(
            _core,
            kind=tuple(Kind)[4:8],
            w=range(0, 7),
            p=range(1, 10),
            q=range(1, 10),
            r=(1, 3, 4, 6, 7, 9),
        ).then(
            _core,
            kind=(Kind.HALFWAY,),
            w=range(2, 7),
            p=range(1, 10),
            q=range(1, 10),
            r=(4, 6, 8),
        ),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=tuple(Kind)[9:],
            w=range(0, 7),
            p=range(1, 10),
            q=range(1, 10),
            r=(1, 2, 4, 6, 8, 9),
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, w, p, q, r = values
        twin = (int(kind), w, p, q, r)
        match kind:
            case Kind.SIGN:
                return _sign(w, p, q, r, twin)
            case Kind.LINE:
                gap, steps = LINES[q - 1]
                return on_a_line(1000 * w, 1000 * gap, steps, p, twin)
            case Kind.FINE_LINE:
                return on_a_line(1000 * w + 100 * p, 100, 10, q, twin)
            case Kind.NEGATIVE_LINE:
                gap, steps = LINES[q - 1]
                return on_a_line(-1000 * (w + gap), 1000 * gap, steps, p, twin)
            case Kind.DIGIT:
                return _digit(w, p, q, r, twin)
            case Kind.BETWEEN:
                return one_between(w, p, q, twin)
            case Kind.HALFWAY:
                return halfway(w, p, q, r, twin)
        return _list(kind, w, p, q, r, twin)


def _list(kind: int, w: int, p: int, q: int, r: int, twin: tuple[object, ...]) -> Draft:
    number = w + p + q + r
    before, falling = "Write these in order of size", number % 3 == 0
    after = "largest first" if falling else "smallest first"
    if kind == Kind.STORY:
        told = number % len(_STORIES)
        before, who, rises, least = _STORIES[told]
        falling, after = not rises, _FIRST[told]
        w += least
    things = things_of(kind, w, p, q, r)

    def listing(order: Sequence[Decimal]) -> t.Listing:
        return t.Listing(tuple(thing.node for thing in order))

    right = in_order(things, by_size)
    wrong = [in_order(things, method) for _, method in WRONG[kind]]
    if falling:
        right.reverse()
        for order in wrong:
            order.reverse()
    shown = [right[place] for place in by_turns(TURNS[len(things)], p + 2 * q + r)]
    nodes = tuple(thing.node for thing in shown)
    if kind == Kind.STORY:
        text = prompt(f"{before} {{things}}. {who} in order, {after}.", things=t.Listing(nodes))
    else:
        text = prompt(f"{before}, {after}: {{things}}.", things=t.Listing(nodes))
    places = max(thing.places for thing in things)
    padded = ", ".join(with_places(thing, places) for thing in shown)
    lines = [Step(f"Write them with as many decimal places: {padded}.")]
    if any(thing.units < 0 for thing in things):
        lines.append(Step("The further a negative number is from zero, the smaller it is."))
    mistakes = [mistake for mistake, _ in WRONG[kind]]
    line = in_decimals([Fraction(thing.size, 1000) for thing in shown], decimal_node)
    say = "Put them in order, as they were printed."
    last = Step(f"{say} {TOLD}" if line else say, listing(right), line)
    return Draft(
        text,
        Order(nodes, "descending" if falling else "ascending"),
        listing(right),
        "list",
        (*lines, last),
        slips(*zip(mistakes, map(listing, wrong), strict=True)),
        twin,
    )


def _sign(w: int, p: int, q: int, r: int, twin: tuple[object, ...]) -> Draft:
    """Return: which sign goes between w.p and w.pr, in one order or the other."""
    short, long = Decimal(10 * w + p, 1), Decimal(100 * w + 10 * p + r, 2)
    first, second = (short, long) if q == 1 else (long, short)
    left, right = first.node, second.node
    sign: t.RelationOp = "<" if q == 1 else ">"
    other: t.RelationOp = ">" if q == 1 else "<"
    key = t.relate(left, sign, right)
    steps = (
        Step("The ones and the tenths are equal."),
        Step(f"{with_places(short, 2)} has no hundredths, {with_places(long, 2)} has {r}.", key),
    )
    return Draft(
        prompt("Put <, > or = between {a} and {b}.", a=left, b=right),
        Compare(left, right),
        key,
        "sign",
        steps,
        slips(
            (m.SHORTER, t.relate(left, other, right)), (m.TENTHS_ONLY, t.relate(left, "=", right))
        ),
        twin,
    )


_PLACES = ("tenths", "hundredths", "thousandths")


def _digit(w: int, p: int, q: int, r: int, twin: tuple[object, ...]) -> Draft:
    """Ask what a digit of w.pqr is worth."""
    digits = (p, q, r)
    at = (w + p + q + r) % 3
    digit, bottom = digits[at], 10 ** (at + 1)
    number = t.Dec(str(w), f"{p}{q}{r}")
    key = t.Frac(t.Int(digit), t.Int(bottom))
    after = ("first", "second", "third")[at]
    steps = (Step(f"The {digit} is in the {after} place after the point: {_PLACES[at]}.", key),)
    wrong = slips(
        (m.ONE_PLACE_OUT, t.Frac(t.Int(digit), t.Int(bottom * 10))),
        (m.FACE_VALUE, t.Int(digit)),
    )
    return Draft(
        prompt("What is the value of the {d} in {n}?", d=t.Int(digit), n=number),
        Find(key),
        key,
        "fraction",
        steps,
        wrong,
        twin,
        constants=(bottom,),
    )
