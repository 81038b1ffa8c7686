"""Adding and subtracting negative numbers: along the number line, with brackets, in stories.

The programme of study for key stage 3 (England, 2013) asks pupils to "use the four operations …
applied to integers …, all both positive and negative" (from memory).
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from generators._jumps import jump_line
from generators._turns import by_turns
from generators.number import _signs as m
from generators.number._adding_wrong_lines import gone_wrong
from generators.number._negatives_added import (
    Kind,
    answers_of,
    challenge_fits,
    core_fits,
    support_fits,
)
from generators.number._writing import inside, worked
from itembank.items import kinds
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t

# Degrees Celsius: a greenhouse, a yard and a glasshouse in winter.
_WARMER = (
    ("At dawn the temperature in a greenhouse is", "By noon it has risen by", "at noon"),
    (
        "At 6 am the temperature in the yard of a bus depot is",
        "By 11 am it has risen by",
        "at 11 am",
    ),
    ("One night the temperature on an allotment is", "By midday it has risen by", "at midday"),
)
_COLDER = (
    (
        "At noon the temperature in a market garden is",
        "By midnight it has fallen by",
        "at midnight",
    ),
    ("At 4 pm the temperature in a bike workshop is", "By 4 am it has fallen by", "at 4 am"),
    ("In the evening the temperature on an allotment is", "By dawn it has fallen by", "at dawn"),
)
_FUNDS = (
    ("A bus depot’s tea fund", "The drivers pay in", "a bill of", "is paid from the fund"),
    ("A swimming club’s account", "The members pay in", "a bill of", "is paid from it"),
    ("An allotment society’s account", "The members pay in", "a hedge trimmer for", "is bought"),
)
_PLACES = ("at a bus depot", "on an allotment", "in a market garden", "at an outdoor pool")


@register
class NegativesAdd(Topic):
    """Up and down the number line; adding and subtracting negatives; three numbers and boxes."""

    id = "number.negatives-add"
    title = "Adding and subtracting negative numbers"
    statements = ("number.operations", "number.ordering")
    misconceptions = (
        m.ADDS_SIZES,
        m.DROPS_MINUS,
        m.SMALL_FROM_LARGE,
        m.TWO_MINUSES,
        m.WRONG_WAY,
        m.DROPS_BRACKET,
        m.DROPS_SECOND,
        m.SIZE_FOR_VALUE,
    )
    spaces = {
        Tier.SUPPORT: kinds.with_wrong_solutions(
            kinds.with_claims_and_matches(
                Space(support_fits, kind=tuple(Kind)[:5], a=range(2, 16), b=range(2, 21)),
                only=lambda kind, *_: kind < 3,
            ),
            gone_wrong,
        ),
        Tier.CORE: kinds.with_wrong_solutions(
            kinds.with_claims_and_matches(
                Space(
                    core_fits,
                    kind=tuple(Kind)[5:9],
                    a=(*range(3, 26), 30, 35, 40, 45, 50, 60),
                    b=(*range(3, 26), 40, 60, 75, 80, 90, 120),
                    c=(0, 50, 65, 70, 85, 95, 110),
                ),
                only=lambda kind, *_: kind != 8,
            ),
            gone_wrong,
        ),
        Tier.CHALLENGE: kinds.with_wrong_solutions(
            kinds.with_claims_and_matches(
                Space(
                    challenge_fits,
                    kind=tuple(Kind)[9:],
                    a=range(3, 16),
                    b=range(2, 21),
                    c=range(0, 13),
                ),
                only=lambda kind, *_: kind == 9,
            ),
            gone_wrong,
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, a, b, c = (*values, 0)[:4]
        key, wrong = answers_of(kind, a, b, c)
        twin = (int(kind), a, b, c)
        match kind:
            case Kind.WARMER | Kind.COLDER:
                return _temperature(kind, a, b, key, wrong, twin)
            case Kind.FUND:
                return _fund(a, b, c, key, wrong, twin)
            case Kind.BOX_FIRST | Kind.BOX_SECOND:
                return _box(kind, a, b, key, wrong, twin)
            case Kind.RANGE:
                return _range(a, b, c, key, wrong, twin)
        asked, lines = _sum(kind, a, b, c)
        steps = worked(asked, *lines, ("Count from there along the number line.", t.num(key)))
        start, change = _last_jump(kind, a, b, c)
        steps = (*steps[:-1], replace(steps[-1], figure=jump_line(start, change)))
        return Draft(
            prompt("Work out {e}.", e=asked),
            Find(asked),
            t.num(key),
            "integer",
            steps,
            slips(*wrong),
            twin,
        )


def _last_jump(kind: int, a: int, b: int, c: int) -> tuple[int, int]:
    """Return where the last count on the number line starts, and how far it goes."""
    match kind:
        case Kind.UP | Kind.BOTH_NEGATIVE:
            return -a, b
        case Kind.BELOW:
            return a, -b
        case Kind.DOWN | Kind.ADD_NEGATIVE:
            return -a, -b
        case Kind.TAKE_NEGATIVE:
            return a, b
    return b - a, -c


def _sum(kind: int, a: int, b: int, c: int) -> tuple[t.Node, list[tuple[str, t.Node]]]:
    """Return the sum as printed, and the lines of working before the answer."""
    low, high = t.num(-a), t.Int(b)
    minus_b = inside(-b)
    adding = "Subtracting a negative number is adding."
    match kind:
        case Kind.UP:
            return t.add(low, high), []
        case Kind.BELOW:
            return t.sub(t.Int(a), high), []
        case Kind.DOWN:
            return t.sub(low, high), []
        case Kind.TAKE_NEGATIVE:
            return t.sub(t.Int(a), minus_b), [(adding, t.add(t.Int(a), high))]
        case Kind.ADD_NEGATIVE:
            subtracting = "Adding a negative number is subtracting."
            return t.add(low, minus_b), [(subtracting, t.sub(low, high))]
        case Kind.BOTH_NEGATIVE:
            return t.sub(low, minus_b), [(adding, t.add(low, high))]
    # −a − (−b) + (−c)
    asked = t.Sum(low, (("-", minus_b), ("+", inside(-c))))
    return asked, [
        (
            "Subtracting a negative number is adding; adding one is subtracting.",
            t.Sum(low, (("+", high), ("-", t.Int(c)))),
        ),
        ("Work from left to right.", t.sub(t.num(b - a), t.Int(c))),
    ]


def _celsius(n: int) -> t.Node:
    amount = t.Quantity(t.Int(abs(n)), "°C")
    return t.Neg(amount) if n < 0 else amount


def _temperature(
    kind: int, a: int, b: int, key: int, wrong: tuple[Wrong, ...], twin: tuple[object, ...]
) -> Draft:
    rises = kind == Kind.WARMER
    at_first, then, when = by_turns(_WARMER if rises else _COLDER, a + 2 * b)
    start, change = _celsius(-a if rises else a), _celsius(b)
    asked = t.add(start, change) if rises else t.sub(start, change)
    text = prompt(
        f"{at_first} {{a}}. {then} {{b}}. What is the temperature {when}?", a=start, b=change
    )
    say = (
        f"Go up {b} degrees from {'−' if rises else ''}{a}."
        if rises
        else f"Go down {b} degrees from {a}."
    )
    line = jump_line(-a if rises else a, b if rises else -b)
    step = Step(say, t.equals(asked, _celsius(key)), line)
    written = slips(*((mistake, _celsius(n)) for mistake, n in wrong if isinstance(n, int)))
    return Draft(text, Find(asked), _celsius(key), "quantity", (step,), written, twin)


def _pounds(n: int) -> t.Node:
    amount = t.Money(t.Int(abs(n)))
    return t.Neg(amount) if n < 0 else amount


def _fund(
    a: int, b: int, c: int, key: int, wrong: tuple[Wrong, ...], twin: tuple[object, ...]
) -> Draft:
    account, paid_in, thing, bought = by_turns(_FUNDS, a // 5 + b // 5 + c // 5)
    owed, more, bill = _pounds(-a), _pounds(b), _pounds(c)
    asked = t.Sum(owed, (("+", more), ("-", bill)))
    text = prompt(
        f"{account} stands at {{a}}. {paid_in} {{b}}, and {thing} {{c}} {bought}. "
        "What does it stand at now?",
        a=owed,
        b=more,
        c=bill,
    )
    steps = (
        Step("Add what is paid in.", t.equals(t.add(owed, more), _pounds(b - a))),
        Step("Subtract what is paid out.", t.equals(t.sub(_pounds(b - a), bill), _pounds(key))),
    )
    written = slips(*((mistake, _pounds(n)) for mistake, n in wrong if isinstance(n, int)))
    return Draft(text, Find(asked), _pounds(key), "money", steps, written, twin)


def _box(
    kind: int, a: int, b: int, key: int, wrong: tuple[Wrong, ...], twin: tuple[object, ...]
) -> Draft:
    box, end = t.Blank(), t.num(-b)
    if kind == Kind.BOX_FIRST:
        # □ − (−a) = −b
        asked = t.equals(t.sub(box, inside(-a)), end)
        steps = [
            Step("Subtracting a negative number is adding.", t.equals(t.add(box, t.Int(a)), end))
        ]
    else:
        asked, steps = t.equals(t.add(t.Int(a), box), end), []
    steps += [
        Step(f"Subtract {a} from both sides.", t.equals(box, t.sub(end, t.Int(a)))),
        Step("Work it out.", t.equals(box, t.num(key))),
    ]
    text = prompt("Find the number that goes in the box: {e}.", e=asked)
    return Draft(
        text, Find(box, (asked,)), t.num(key), "integer", tuple(steps), slips(*wrong), twin
    )


def _range(
    a: int, b: int, c: int, key: int, wrong: tuple[Wrong, ...], twin: tuple[object, ...]
) -> Draft:
    shown = [_celsius(-a), _celsius(b), _celsius(-c)]
    warm, cold = shown[1], _celsius(-max(a, c))
    asked = t.sub(warm, t.Bracket(cold))
    place = by_turns(_PLACES, a + b + c)
    text = prompt(
        f"On three nights the lowest temperatures {place} were {{a}}, {{b}} and {{c}}. How much "
        "warmer was the warmest night than the coldest?",
        a=shown[0],
        b=shown[1],
        c=shown[2],
    )
    steps = (
        Step(f"In order, coldest first: −{max(a, c)}, −{min(a, c)}, {b}."),
        Step(
            "Subtract the coldest from the warmest.",
            t.equals(asked, t.add(warm, _celsius(max(a, c)))),
        ),
        Step("Work it out.", t.equals(t.add(warm, _celsius(max(a, c))), _celsius(key))),
    )
    written = slips(*((mistake, _celsius(n)) for mistake, n in wrong if isinstance(n, int)))
    return Draft(text, Find(asked), _celsius(key), "quantity", steps, written, twin)
