"""Two equations in a story: sums and differences, and prices."""

from __future__ import annotations

from fractions import Fraction

from generators._turns import by_turns
from generators.equations._simultaneous_mistakes import HALF_TOTAL, SHARES, STOPS, TOTALS_ONLY
from itembank.items.item import Draft, Find, Step, prompt
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_X, _Y = (t.Sym("x"), t.Sym("y"))


_STORIES = (
    ("adult ticket", "child ticket"),
    ("large tray", "small tray"),
    ("bike helmet", "bike bell"),
    ("swimming lesson", "locker"),
    ("bag of compost", "pot of herbs"),
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


def sum_and_difference(twin: tuple[object, ...], a: int, b: int, c: int, x: int, y: int) -> Draft:
    """Return the question for two numbers whose sum and difference are told."""
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


def prices(twin: tuple[object, ...], a: int, b: int, c: int, x: int, y: int) -> Draft:
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
