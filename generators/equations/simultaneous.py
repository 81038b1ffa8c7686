"""Two linear equations in two letters.

Key stage 4, algebra (England, 2014): "solve two simultaneous equations in two variables (linear/
linear) algebraically" (from memory). Key stage 3 finds such solutions from graphs; many schools
begin the algebra in year 9.
"""

from __future__ import annotations

from fractions import Fraction
from math import gcd

from generators._turns import by_turns
from generators.equations._writing import side
from itembank.items import kinds
from itembank.items.asks import Solve
from itembank.items.forms.form_rules import number_node
from itembank.items.item import Draft, Find, Misconception, Step, Tier, prompt
from itembank.items.measures.years import SIMULTANEOUS_EQUATIONS, Part
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t

SWAPPED = Misconception(
    "equations.swapped",
    "gives the values to the wrong letters",
    "Put your values into both equations. Are both true?",
)
SUBTRACTS = Misconception(
    "equations.subtracts-to-eliminate",
    "subtracts the equations where adding makes the letter go",
    "What is y − (−y)? And y + (−y)?",
)
ADDS = Misconception(
    "equations.adds-to-eliminate",
    "adds the equations where subtracting makes the letter go",
    "What is y + y? And y − y?",
)
LEFT_ONLY = Misconception(
    "equations.left-side-multiplied",
    "multiplies only the left-hand side of an equation",
    "When you multiply an equation, what happens to its right-hand side?",
)
PART_ONLY = Misconception(
    "equations.part-substituted",
    "substitutes only the first term of the expression",
    "What is y equal to? Have you put all of it in place of y?",
)
STOPS = Misconception(
    "equations.other-unknown",
    "gives the value of the other unknown",
    "What does the question ask for? Is that what you have found?",
)
SHARES = Misconception(
    "equations.shares-equally",
    "divides the total as if both kinds were worth the same",
    "Are the two kinds worth the same?",
)
TOTALS_ONLY = Misconception(
    "equations.totals-subtracted",
    "subtracts the totals, though the numbers of both kinds differ",
    "By which things do the two orders differ?",
)
HALF_TOTAL = Misconception(
    "equations.total-less-difference",
    "subtracts the difference from the total and stops there",
    "Find both numbers. Do they add up to the total?",
)

_X, _Y = t.Sym("x"), t.Sym("y")


def _support(kind: int, a: int, b: int, x: int, y: int) -> bool:
    """Keep systems in which one letter goes when the equations are added or subtracted."""
    if x == y or a == b:
        return False
    if kind == 0:  # ax + y, bx − y; the wrong way does not come to the values swapped
        return b * x > y and a * x + y != b * x - y and (a - b) * (y - x) != 2 * y
    return a > b and (a + b) * (y - x) != 2 * y


def _core(kind: int, a: int, b: int, c: int, x: int, y: int) -> bool:
    if kind == 0:  # ax + by, cx + y
        apart = (c - a) * x + (1 - b) * y != (b * c - a) * y
        return x != y and b * c != a and a != b and c < 4 and x < 8 and y < 9 and apart
    if kind == 1:  # y = ax + b or ax − b, cx + y
        found = a * x + (b if (a + c + x) % 2 else -b)
        return y == 1 and a != b and found != x and c * x + found != (a + c) * found
    # Two numbers with a sum and a difference.
    return a == 2 and b == 2 and c == 1 and x > 1


def _challenge(kind: int, a: int, b: int, c: int, x: int, y: int) -> bool:
    if kind == 0:  # ax + by, cx − dy
        coprime = gcd(a, c) == gcd(a, b) == gcd(c, _other(b)) == 1
        return coprime and c > 1 and x != y and a * x + b * y > 0 and c * x != _other(b) * y
    # Prices: a and b of two kinds, then c and 2.
    gap = (a - c) * x + (b - 2) * y
    return c < 4 and 1 < y < x - 1 and x > 3 and a * 2 != b * c and abs(gap) not in (0, x, y)


def _other(b: int) -> int:
    """Return the number in front of y in the second equation."""
    return b + 1


_STORIES = (
    ("adult ticket", "child ticket"),
    ("large tray", "small tray"),
    ("bike helmet", "bike bell"),
    ("swimming lesson", "locker"),
    ("bag of compost", "pot of herbs"),
)


@register
class Simultaneous(Topic):
    """A letter goes at once; one equation multiplied or put in; both multiplied, and stories."""

    id = "equations.simultaneous"
    title = "Simultaneous equations"
    statements = ("algebra.linear-equations",)
    prerequisites = ("equations.both-sides",)
    later = {
        Tier.SUPPORT: (Part(SIMULTANEOUS_EQUATIONS),),
        Tier.CORE: (Part(SIMULTANEOUS_EQUATIONS, lambda kind, a, b, c, x, y: kind < 2),),
        Tier.CHALLENGE: (Part(SIMULTANEOUS_EQUATIONS, lambda kind, a, b, c, x, y: kind == 0),),
    }
    misconceptions = (
        *(SWAPPED, SUBTRACTS, ADDS, LEFT_ONLY, PART_ONLY, STOPS, SHARES, HALF_TOTAL),
        TOTALS_ONLY,
    )
    spaces = {
        Tier.SUPPORT: Space(
            _support, kind=range(2), a=range(1, 6), b=range(1, 5), x=range(1, 8), y=range(1, 8)
        ),
        Tier.CORE: Space(
            _core,
            kind=range(3),
            a=range(2, 6),
            b=range(2, 5),
            c=range(1, 5),
            x=range(1, 10),
            y=(1, 2, 3, 4, 5, 6, 8, 11, 14, 17),
        ),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=range(2),
            a=range(2, 6),
            b=range(2, 5),
            c=range(1, 6),
            x=(2, 3, 4, 5, 6, 7, 8),
            y=(-4, -3, -2, -1, 1, 2, 3, 4, 5),
        ),
    }
    spaces = kinds.with_statements(spaces)

    def make(self, tier: Tier, kind: int, *values: int) -> Draft:
        """Return the question; the last two parameters are the solution, or stand for it."""
        twin = (str(tier), kind, *values)
        if tier is Tier.SUPPORT:
            return _at_once(twin, kind, *values)
        if tier is Tier.CORE:
            build = (_one_multiplied, _put_in, _sum_and_difference)[kind]
            return build(twin, *values)
        return (_both_multiplied, _prices)[kind](twin, *values)


def _row(a: int, b: int, total: int) -> t.Relation:
    """Return ax + by = total as it is written."""
    return t.equals(t.add(t.juxt(t.num(a), _X), t.juxt(t.num(b), _Y)), t.num(total))


def _both(x: Fraction | int, y: Fraction | int) -> t.Listing:
    return t.Listing((t.equals(_X, number_node(x)), t.equals(_Y, number_node(y))))


def _from(total: int, a: int, b: int, x: Fraction) -> Fraction:
    """Return y of ax + by = total."""
    return (total - a * x) / Fraction(b)


def _draft(
    first: t.Relation,
    second: t.Relation,
    x: int,
    y: int,
    steps: tuple[Step, ...],
    wrong: list[tuple[Misconception, tuple[Fraction | int, Fraction | int] | None]],
    twin: tuple[object, ...],
) -> Draft:
    key = _both(x, y)
    found: list[Wrong] = [(which, _both(*pair)) for which, pair in wrong if pair is not None]
    return Draft(
        prompt("Solve the simultaneous equations {p} and {q}.", p=first, q=second),
        Solve((first, second)),
        key,
        "roots",
        (*steps, Step("Write both values.", key)),
        slips(*found, key=key),
        twin,
    )


def _substituted(which: str, a: int, b: int, total: int, x: int, y: int) -> tuple[Step, ...]:
    """Return the lines that find y from ax + by = total."""
    lots = t.juxt(t.num(b), _Y)
    line = t.equals(t.add(t.num(a * x), lots), t.num(total))
    rest = t.equals(lots, t.num(total - a * x))
    steps = [Step(f"Substitute x = {x} in the {which} equation.", line)]
    if b == 1:
        steps.append(Step(f"Subtract {a * x} from both sides.", rest))
    else:
        steps.append(Step(f"Subtract {a * x} from both sides.", rest))
        steps.append(Step(f"Divide both sides by {b}.", t.equals(_Y, t.num(y))))
    return tuple(steps)


def _lots(count: int, total: int, x: int) -> tuple[Step, ...]:
    if count == 1:
        return ()
    shown = str(count).replace("-", "−")
    return (Step(f"Divide both sides by {shown}.", t.equals(_X, t.num(x))),)


def _at_once(twin: tuple[object, ...], kind: int, a: int, b: int, x: int, y: int) -> Draft:
    sign = -1 if kind == 0 else 1
    p, q = a * x + y, b * x + sign * y
    count, total = (a + b, p + q) if kind == 0 else (a - b, p - q)
    say = "Add the equations: y goes."
    if kind:
        say = "Subtract the second equation from the first: y goes."
    other, made = (a - b, p - q) if kind == 0 else (a + b, p + q)
    wrong_x = Fraction(made, other)
    return _draft(
        _row(a, 1, p),
        _row(b, sign, q),
        x,
        y,
        (
            Step(say, t.equals(t.juxt(t.num(count), _X), t.num(total))),
            *_lots(count, total, x),
            *_substituted("first", a, 1, p, x, y),
        ),
        [
            (SWAPPED, (y, x)),
            (SUBTRACTS if kind == 0 else ADDS, (wrong_x, _from(p, a, 1, wrong_x))),
        ],
        twin,
    )


def _one_multiplied(twin: tuple[object, ...], a: int, b: int, c: int, x: int, y: int) -> Draft:
    p, q = a * x + b * y, c * x + y
    count, total = b * c - a, b * q - p
    made = _row(b * c, b, b * q)
    lots = t.equals(t.juxt(t.num(abs(count)), _X), t.num(abs(total)))
    order = "first equation from the new one" if count > 0 else "new equation from the first"
    wrong_x = Fraction(q - p, count)
    return _draft(
        _row(a, b, p),
        _row(c, 1, q),
        x,
        y,
        (
            Step(f"Multiply the second equation by {b}.", made),
            Step(f"Subtract the {order}: y goes.", lots),
            *_lots(abs(count), abs(total), x),
            *_substituted("second", c, 1, q, x, y),
        ),
        [(SWAPPED, (y, x)), (LEFT_ONLY, (wrong_x, _from(q, c, 1, wrong_x)))],
        twin,
    )


def _put_in(twin: tuple[object, ...], a: int, b: int, c: int, x: int, _: int) -> Draft:
    plus = b if (a + c + x) % 2 else -b
    y = a * x + plus
    inside = side(a, _X, plus)
    d = c * x + y
    rule = t.equals(_Y, inside)
    lots = t.juxt(t.Int(c), _X)
    second = t.equals(t.add(lots, _Y), t.num(d))
    more: list[tuple[t.SumOp, t.Node]] = [("+", t.juxt(t.Int(a), _X))]
    more.append(("+" if plus > 0 else "-", t.Int(b)))
    put = t.equals(t.Sum(lots, tuple(more)), t.num(d))
    wrong_x = Fraction(d, a + c)
    undo = f"Subtract {b} from both sides." if plus > 0 else f"Add {b} to both sides."
    at = t.equals(_Y, t.add(t.times(t.Int(a), t.Int(x)), t.num(plus)))
    return _draft(
        rule,
        second,
        x,
        y,
        (
            Step("Substitute the expression for y in the second equation.", put),
            Step("Collect like terms.", t.equals(side(a + c, _X, plus), t.num(d))),
            Step(undo, t.equals(t.juxt(t.Int(a + c), _X), t.num(d - plus))),
            Step(f"Divide both sides by {a + c}.", t.equals(_X, t.Int(x))),
            Step(f"Substitute x = {x} in the first equation.", at),
        ),
        [
            (SWAPPED, (y, x) if y != x else None),
            (PART_ONLY, (wrong_x, a * wrong_x + plus)),
        ],
        twin,
    )


_PAIRS = (
    "Two numbers add up to {s}. The difference between them is {d}. Work out the larger number.",
    "Two classes have {s} pupils altogether. One class has {d} more pupils than the other. How "
    "many pupils has the larger class?",
    "Two buses carry {s} people altogether. One bus carries {d} more people than the other. How "
    "many people does the fuller bus carry?",
    "A gardener plants {s} bulbs in two beds. One bed gets {d} more bulbs than the other. How many "
    "bulbs does the bed with more bulbs get?",
    "Dana and Femi swim {s} lengths altogether. Dana swims {d} more lengths than Femi. How many "
    "lengths does Dana swim?",
)


def _sum_and_difference(twin: tuple[object, ...], a: int, b: int, c: int, x: int, y: int) -> Draft:
    del a, b, c
    less, more = 2 * x + 5, 2 * x + 5 + y
    total, apart = less + more, y
    first = t.equals(t.add(_X, _Y), t.Int(total))
    second = t.equals(t.sub(_X, _Y), t.Int(apart))
    return Draft(
        prompt(by_turns(_PAIRS, x + y), s=t.Int(total), d=t.Int(apart)),
        Find(_X, (first, second)),
        t.Int(more),
        "integer",
        (
            Step(
                "Write x for the larger number and y for the smaller. Write two equations.",
                t.Listing((first, second)),
            ),
            Step(
                "Add the equations: y goes.", t.equals(t.juxt(t.Int(2), _X), t.Int(total + apart))
            ),
            Step("Divide both sides by 2.", t.equals(_X, t.Int(more))),
        ),
        slips(
            (STOPS, less),
            (SHARES, Fraction(total, 2)),
            (HALF_TOTAL, total - apart if total - apart not in (less, more) else None),
            key=t.Int(more),
        ),
        twin,
    )


def _both_multiplied(twin: tuple[object, ...], a: int, b: int, c: int, x: int, y: int) -> Draft:
    d = _other(b)
    p, q = a * x + b * y, c * x - d * y
    count, total = a * d + c * b, d * p + b * q
    wrong_x = Fraction(p + q, count)
    other = a * d - c * b
    minus = Fraction(d * p - b * q, other) if other else None
    return _draft(
        _row(a, b, p),
        _row(c, -d, q),
        x,
        y,
        (
            Step(f"Multiply the first equation by {d}.", _row(a * d, b * d, d * p)),
            Step(f"Multiply the second equation by {b}.", _row(c * b, -b * d, b * q)),
            Step("Add the equations: y goes.", t.equals(t.juxt(t.Int(count), _X), t.num(total))),
            *_lots(count, total, x),
            *_substituted("first", a, b, p, x, y),
        ),
        [
            (SWAPPED, (y, x)),
            (LEFT_ONLY, (wrong_x, _from(p, a, b, wrong_x))),
            (SUBTRACTS, None if minus is None else (minus, _from(p, a, b, minus))),
        ],
        twin,
    )


def _prices(twin: tuple[object, ...], a: int, b: int, c: int, x: int, y: int) -> Draft:
    """Return a story: a of one kind and b of another, then c and 2."""
    first_name, second_name = by_turns(_STORIES, a + b + c + x + y)
    p, q = a * x + b * y, c * x + 2 * y
    names = (
        _many(a, first_name),
        _many(b, second_name),
        _many(c, first_name),
        _many(2, second_name),
    )
    big, small = t.Sym("a"), t.Sym("b")

    def row(m: int, n: int, total: int) -> t.Relation:
        left = t.add(t.juxt(t.Int(m), big), t.juxt(t.Int(n), small))
        return t.equals(left, t.Money(t.Int(total)))

    given = row(a, b, p), row(c, 2, q)
    count, total = 2 * a - b * c, 2 * p - b * q
    doubled = row(2 * a, 2 * b, 2 * p)
    steps = [
        Step(
            f"Write a for the price of one {first_name} and b for the price of one {second_name}.",
            t.Listing(given),
        ),
    ]
    if b == 2:
        steps.append(
            Step(
                "Subtract one equation from the other: b goes.",
                t.equals(t.juxt(t.Int(abs(a - c)), big), t.Money(t.Int(abs(p - q)))),
            )
        )
        left = abs(a - c)
    else:
        steps.append(Step("Multiply the first equation by 2.", doubled))
        steps.append(Step(f"Multiply the second equation by {b}.", row(b * c, 2 * b, b * q)))
        left = abs(count)
        steps.append(
            Step(
                "Subtract one from the other: b goes.",
                t.equals(t.juxt(t.Int(left), big), t.Money(t.Int(abs(total)))),
            )
        )
    if left > 1:
        steps.append(Step(f"Divide by {left}.", t.equals(big, t.Money(t.Int(x)))))
    return Draft(
        prompt(
            f"{{a}} {names[0]} and {{b}} {names[1]} cost {{p}}. {{c}} {names[2]} and {{d}} "
            f"{names[3]} cost {{q}}. How much does one {first_name} cost?",
            a=t.Int(a),
            b=t.Int(b),
            p=t.Money(t.Int(p)),
            c=t.Int(c),
            d=t.Int(2),
            q=t.Money(t.Int(q)),
        ),
        Find(big, given),
        t.Money(t.Int(x)),
        "money",
        tuple(steps),
        slips(
            (STOPS, t.Money(t.Int(y))),
            (SHARES, t.Money(t.Int(p // (a + b))) if p % (a + b) == 0 else None),
            (TOTALS_ONLY, t.Money(t.Int(abs(p - q)))),
            key=t.Money(t.Int(x)),
        ),
        twin,
    )


def _many(count: int, name: str) -> str:
    if count == 1:
        return name
    head, of, rest = name.partition(" of ")
    return f"{head}s{of}{rest}"
