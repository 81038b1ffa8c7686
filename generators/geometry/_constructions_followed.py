"""Questions for what follows from a construction: halves, wholes, known angles, and letters."""

from __future__ import annotations

from fractions import Fraction

from generators._turns import by_turns
from generators.equations._balance import balance
from generators.equations._writing import side
from generators.geometry import _construction_mistakes as m
from generators.geometry._angles import VALUE_ASKED, degrees_of, value_letter, whole_number
from generators.geometry._constructions_drawn import (
    ANGLE,
    BISECTOR,
    RIGHT,
    SIXTY,
    amount,
    angle_asked,
    construction,
    degrees,
    length_asked,
    letters_of,
    size_asked,
)
from generators.geometry._misconceptions import NUMBERS_WRONG_WAY
from itembank.figures.kinds.construction.construction import Construction
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Misconception, Step, prompt
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_UNITS = ("cm", "m", "mm")


def _halved(name: str, whole: t.Node, part: t.Node) -> Step:
    return Step(f"Halve {name}.", t.equals(t.divide(whole, t.Int(2)), part))


def _doubled(name: str, part: t.Node, whole: t.Node) -> Step:
    return Step(f"Double {name}.", t.equals(t.times(t.Int(2), part), whole))


def part_of_line(n: int, k: int) -> Draft:
    """Return the question for half of a line that is n long."""
    which, unit = n // 2, _UNITS[k]
    a, b, c, d, mid = letters_of(BISECTOR, which)
    whole, half = amount(n, unit), amount(n // 2, unit)
    return size_asked(
        construction(BISECTOR, which, ((a + b, whole),)),
        length_asked((a + mid, mid + b)[which % 2], n),
        half,
        (
            Step(f"The line {c}{d} is the perpendicular bisector of {a}{b}."),
            _halved(a + b, whole, half),
        ),
        [(m.NOT_HALVED, n), (m.DOUBLED, 2 * n)],
        ("part of a line", n, unit),
    )


def whole_line(n: int, k: int) -> Draft:
    """Return the question for a line whose half is n long."""
    which, unit = n, _UNITS[k]
    a, b, c, d, mid = letters_of(BISECTOR, which)
    half, whole = amount(n, unit), amount(2 * n, unit)
    given = (a + mid, mid + b)[which % 2]
    return size_asked(
        construction(BISECTOR, which, ((given, half),)),
        length_asked(a + b, n),
        whole,
        (
            Step(f"The line {c}{d} is the perpendicular bisector of {a}{b}."),
            _doubled(given, half, whole),
        ),
        [(m.COPIED, n), (m.HALVED_AGAIN, Fraction(n, 2))],
        ("whole line", n, unit),
    )


def part_of_angle(n: int, k: int) -> Draft:
    """Return the question for half of an angle of n degrees."""
    which = n // 2
    a, b, c, d = letters_of(ANGLE, which)[:4]
    whole, half = degrees(n), degrees(Fraction(n, 2))
    return size_asked(
        construction(ANGLE, which, ((f"angle {a}{b}{c}", whole),), 1, n),
        angle_asked((a + b + d, d + b + c)[which % 2], n),
        half,
        (
            Step(f"The line {b}{d} bisects angle {a}{b}{c}."),
            _halved("the angle", whole, half),
        ),
        [(m.NOT_HALVED, n), (m.DOUBLED, 2 * n)],
        ("part of an angle", n),
    )


def whole_angle(n: int, k: int) -> Draft:
    """Return the question for an angle whose half is n degrees."""
    a, b, c, d = letters_of(ANGLE, n)[:4]
    half, whole = degrees(n), degrees(2 * n)
    given = (a + b + d, d + b + c)[n % 2]
    return size_asked(
        construction(ANGLE, n, ((f"angle {given}", half),), 1, 2 * n),
        angle_asked(a + b + c, n),
        whole,
        (
            Step(f"The line {b}{d} bisects angle {a}{b}{c}."),
            _doubled("the half", half, whole),
        ),
        [(m.COPIED, n), (m.HALVED_AGAIN, Fraction(n, 2))],
        ("whole angle", n),
    )


def _made(shape: str, a: str, b: str, c: str) -> Step:
    if shape == SIXTY:
        each = t.equals(t.divide(degrees(180), t.Int(3)), degrees(60))
        return Step(f"All sides of triangle {a}{b}{c} are equal, so all its angles are.", each)
    return Step(f"The line {b}{a} is a perpendicular, so angle {a}{b}{c} is 90°.")


def known(n: int, k: int) -> Draft:
    """Return the question for half of an angle that arcs have made, 60° or 90°."""
    shape, whole = ((SIXTY, 60), (RIGHT, 90))[n // 6]
    a, b, c, d = letters_of(shape, n)[:4]
    asked, half = (a + b + d, d + b + c)[k], whole // 2
    return size_asked(
        construction(shape, n, (), 1),
        angle_asked(asked, n + k),
        degrees(half),
        (_made(shape, a, b, c), _halved("the angle", degrees(whole), degrees(half))),
        [(m.NOT_HALVED, whole), (m.MIXED_UP, 75 - half)],
        ("known", shape, asked),
    )


def known_twice(n: int, k: int) -> Draft:
    """Return the question for a part of 60° or 90° that was bisected twice."""
    shape, whole = ((SIXTY, 60), (RIGHT, 90))[n // 6]
    a, b, c, d, e = letters_of(shape, n)
    asked, times = ((e + b + c, 1), (a + b + e, 3))[k]
    half, part = Fraction(whole, 2), Fraction(whole, 4)
    return size_asked(
        construction(shape, n, (), 2),
        angle_asked(asked, n + k),
        degrees(part * times),
        (
            _made(shape, a, b, c),
            _halved("the angle", degrees(whole), degrees(half)),
            _halved(f"angle {d}{b}{c}", degrees(half), degrees(part)),
            *_with_rest(half, part, times),
        ),
        [
            (m.HALVED_ONCE, half),
            (m.OTHER_PART, part * (4 - times)),
            (m.MIXED_UP, Fraction(150 - whole, 4) * times),
        ],
        ("known twice", shape, asked),
    )


def _with_rest(half: Fraction, part: Fraction, times: int) -> tuple[Step, ...]:
    """Return the step that adds the first half, where three quarters are asked for."""
    if times == 1:
        return ()
    line = t.equals(t.add(degrees(half), degrees(part)), degrees(half + part))
    return (Step("Add the half and the quarter.", line),)


def quarter(n: int, k: int) -> Draft:
    """Return the question for a quarter, or three, of an angle of n degrees."""
    a, b, c, d, e = letters_of(ANGLE, n // 2)
    asked, times = ((e + b + c, 1), (a + b + e, 3))[k]
    half, part = Fraction(n, 2), Fraction(n, 4)
    return size_asked(
        construction(ANGLE, n // 2, ((f"angle {a}{b}{c}", degrees(n)),), 2, n),
        angle_asked(asked, n + k),
        degrees(part * times),
        (
            Step(f"The line {b}{d} bisects angle {a}{b}{c}, and {b}{e} bisects angle {d}{b}{c}."),
            _halved("the angle", degrees(n), degrees(half)),
            _halved("the half", degrees(half), degrees(part)),
            *_with_rest(half, part, times),
        ),
        [(m.HALVED_ONCE, half), (m.OTHER_PART, part * (4 - times)), (m.NOT_HALVED, n)],
        ("quarter", n, times),
    )


def from_quarter(n: int, k: int) -> Draft:
    """Return the question for four quarters of an angle, or three, where one is n degrees."""
    a, b, c, d, e = letters_of(ANGLE, n)
    asked, times = ((a + b + c, 4), (a + b + e, 3))[k]
    given = (e + b + c, d + b + e)[n % 2]
    steps = [
        Step(f"The line {b}{d} bisects angle {a}{b}{c}, and {b}{e} bisects angle {d}{b}{c}."),
        _doubled("the quarter", degrees(n), degrees(2 * n)),
    ]
    if times == 4:
        steps.append(_doubled("the half", degrees(2 * n), degrees(4 * n)))
    else:
        steps += _with_rest(Fraction(2 * n), Fraction(n), times)
    return size_asked(
        construction(ANGLE, n, ((f"angle {given}", degrees(n)),), 2, 4 * n),
        angle_asked(asked, n + k),
        degrees(times * n),
        steps,
        [(m.HALVED_ONCE, 2 * n), (m.COPIED, n), (m.OTHER_PART, (7 - times) * n)],
        ("from a quarter", n, times),
    )


def joined(n: int, k: int) -> Draft:
    """Return the question for an angle at C, where C of the bisector is joined to A and B."""
    a, b, c, d, mid = letters_of(BISECTOR, n)
    base = degrees(n)
    figure = construction(BISECTOR, n, ((f"angle {c}{a}{b}", base),), 0, n, True)
    if k == 0:
        return size_asked(
            figure,
            angle_asked(a + c + mid, n),
            degrees(90 - n),
            (
                Step(f"The line {c}{d} is at right angles to {a}{b}."),
                Step(
                    f"The angles of triangle {a}{c}{mid} add up to 180°.",
                    t.equals(t.sub(degrees(180), degrees(90), base), degrees(90 - n)),
                ),
            ),
            [(m.EQUAL_ACUTE, n), (m.RIGHT_LEFT_OUT, 180 - n)],
            ("joined", n, k),
        )
    return size_asked(
        figure,
        angle_asked(a + c + b, n),
        degrees(180 - 2 * n),
        (
            Step(
                f"{c} is on the perpendicular bisector, so {a}{c} = {b}{c}, and the angles at {a} "
                f"and {b} are equal."
            ),
            Step(
                f"The angles of triangle {a}{b}{c} add up to 180°.",
                t.equals(t.sub(degrees(180), base, base), degrees(180 - 2 * n)),
            ),
        ),
        [(m.EQUAL_ACUTE, n), (m.RIGHT_LEFT_OUT, 180 - n)],
        ("joined", n, k),
    )


def base(n: int, k: int) -> Draft:
    """Return the question for the angle at A, where an angle at C is given."""
    a, b, c, _, mid = letters_of(BISECTOR, n)
    top = 90 - n if k == 0 else 180 - 2 * n
    given = f"{b}{c}{mid}" if k == 0 else f"{a}{c}{b}"
    figure = construction(BISECTOR, n, ((f"angle {given}", degrees(top)),), 0, n, True)
    first = Step(f"{c} is on the perpendicular bisector, so {a}{c} = {b}{c}.")
    if k == 0:
        steps = (
            first,
            Step(
                f"The angle at {b}, in triangle {b}{c}{mid}.",
                t.equals(t.sub(degrees(180), degrees(90), degrees(top)), degrees(n)),
            ),
            Step(f"The angle at {a} is equal to it.", degrees(n)),
        )
    else:
        both = 180 - top
        steps = (
            first,
            Step(
                f"The angles at {a} and {b} together.",
                t.equals(t.sub(degrees(180), degrees(top)), degrees(both)),
            ),
            _halved("this, since they are equal", degrees(both), degrees(n)),
        )
    return size_asked(
        figure,
        angle_asked(c + a + b, n),
        degrees(n),
        steps,
        [(m.EQUAL_ACUTE, top), (m.RIGHT_LEFT_OUT, 180 - top)],
        ("base", n, k),
    )


def expression(n: int, k: int) -> tuple[int, int, int]:
    """Return a, b and the value of x, of the expression ax + b."""
    return 2 + k % 3, (n * 7 + k * 3) % 15 - 5, 3 + n % 19


def wrong_letters(a: int, b: int, value: int) -> list[tuple[Misconception, int | None]]:
    """Return what wrong ways give for x, where half of the whole is ax + b."""
    half = a * value + b
    return [
        (m.PART_FOR_WHOLE, whole_number(2 * half - b, a)),
        (m.HALF_DOUBLED, whole_number(2 * half - b, 2 * a)),
        (NUMBERS_WRONG_WAY, whole_number(half + b, a)),
        (m.SIZE_FOR_LETTER, half),
    ]


def letter_in_angle(n: int, k: int) -> Draft:
    """Return the question for x, where half of an angle is (ax + b)°."""
    a, b, value = expression(n, k)
    half = a * value + b
    p, q, r, s = letters_of(ANGLE, n)[:4]
    x = value_letter(a, b, value)
    given = (
        (f"angle {(p + q + s, s + q + r)[n % 2]}", degrees_of(a, x, b)),
        (f"angle {p}{q}{r}", degrees(2 * half)),
    )
    figure = construction(ANGLE, n, given, 1, 2 * half)
    first = Step(f"The line {q}{s} bisects angle {p}{q}{r}.")
    return _letter(figure, x, (a, b, value), first, degrees(2 * half), degrees(half))


def letter_in_length(n: int, k: int) -> Draft:
    """Return the question for x, where half of a line is (ax + b) cm."""
    a, b, value = expression(n, k)
    half = a * value + b
    p, q, r, s, mid = letters_of(BISECTOR, n)
    x, unit = value_letter(a, b, value), _UNITS[n % 3]
    part = t.Quantity(t.Bracket(side(a, x, b)), unit)
    given = (((p + mid, mid + q)[n % 2], part), (p + q, amount(2 * half, unit)))
    figure = construction(BISECTOR, n, given)
    first = Step(f"The line {r}{s} is the perpendicular bisector of {p}{q}.")
    return _letter(figure, x, (a, b, value), first, amount(2 * half, unit), amount(half, unit))


def _letter(
    figure: Construction,
    x: t.Sym,
    numbers: tuple[int, int, int],
    first: Step,
    whole: t.Quantity,
    part: t.Quantity,
) -> Draft:
    a, b, value = numbers
    half = a * value + b
    text = prompt(by_turns(VALUE_ASKED, a + b + value), x=x)
    equation = Step("So the expression is equal to that.", t.equals(side(a, x, b), t.Int(half)))
    return Draft(
        text,
        of_figure(figure, text),
        t.Int(value),
        "integer",
        (first, _halved("the whole", whole, part), equation, *balance(x, a, b, 0, half)),
        slips(*wrong_letters(a, b, value), key=t.Int(value)),
        ("letter", part.unit, a, b, value),
        figure=figure,
    )
