"""The surface of cylinders that are drawn: all of it, or the curved part; exact in π, or rounded.

England's programme of study for key stage 3 (2013) asks pupils to "use the properties of faces,
surfaces, edges and vertices of [...] cylinders [...] to solve problems in 3-D" (from memory).
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from generators._turns import by_turns
from generators.geometry import _solid_mistakes as m
from generators.geometry._calculator import PI, amount, of_pi
from generators.geometry._circle_steps import IN_PI, PI_SIGN, TWO, disc, halved
from generators.geometry._cylinders_drawn import ACCURACY, drawn, shapely
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Misconception, RoundReading, Step, Tier
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

MISTAKES = (m.ONE_CIRCLE, m.CURVED_ONLY, m.HALF_WAY_ROUND, m.VOLUME_FOR_SURFACE, m.ENDS_COUNTED)
_FIND = (
    "Work out the {} of the cylinder.",
    "Find the {} of the cylinder.",
    "Calculate the {} of the cylinder.",
)
_ALL, _CURVED = "total surface area", "curved surface area"


def with_surfaces(spaces: Mapping[Tier, Space]) -> dict[Tier, Space]:
    """Return a topic's spaces with surfaces after its core and its challenge."""
    core = spaces[Tier.CORE].also(
        exact,
        _exact,
        all_of_it=(False, True),
        across=(False, True),
        n=range(3, 21),
        h=range(3, 26),
        unit=("cm", "m"),
    )
    challenge = spaces[Tier.CHALLENGE].also(
        rounded,
        _rounded,
        kind=("place", "figures"),
        across=(False, True),
        tenths=(*range(21, 100), *range(100, 180, 10)),
        h=range(3, 26),
        unit=("cm", "m"),
    )
    return {**spaces, Tier.CORE: core, Tier.CHALLENGE: challenge}


def _surface(radius: Fraction | int, h: int) -> Fraction:
    """Return how many times π the whole surface is."""
    return Fraction(2 * radius * radius + 2 * radius * h)


def _curved(radius: Fraction | int, h: int) -> Fraction:
    return Fraction(2 * radius * h)


def _wrongs(
    all_of_it: bool, across: bool, radius: Fraction, h: int
) -> list[tuple[Misconception, Fraction]]:
    """Return what each mistake makes of it, as times of π."""
    right, misread = (_surface, 2 * radius) if all_of_it else (_curved, 2 * radius)
    if not across:
        misread = radius / 2
    found = [(m.CYLINDER_ACROSS if across else m.CYLINDER_HALF, right(misread, h))]
    if all_of_it:
        found.append((m.ONE_CIRCLE, radius * radius + 2 * radius * h))
        found.append((m.CURVED_ONLY, _curved(radius, h)))
    else:
        found.append((m.HALF_WAY_ROUND, radius * h))
        found.append((m.ENDS_COUNTED, _surface(radius, h)))
    return [*found, (m.VOLUME_FOR_SURFACE, radius * radius * h)]


def _told_apart(all_of_it: bool, across: bool, radius: Fraction, h: int) -> bool:
    """Tell whether no two mistakes, and no mistake and the key, come to the same."""
    key = _surface(radius, h) if all_of_it else _curved(radius, h)
    values = [key, *(value for _, value in _wrongs(all_of_it, across, radius, h))]
    return len({*values}) == len(values)


def _exact(all_of_it: bool, across: bool, n: int, h: int, unit: str) -> bool:
    radius = Fraction(n, 2) if across else Fraction(n)
    if radius.denominator > 1 or not 3 <= radius <= 10 or h in (radius, 2 * radius):
        return False
    sized = unit != "m" or (radius <= 5 and h <= 10)
    return sized and shapely(2 * radius, h) and _told_apart(all_of_it, across, radius, h)


def _rounded(kind: str, across: bool, tenths: int, h: int, unit: str) -> bool:
    size = Fraction(tenths, 10)
    wide = size if across else 2 * size
    if (unit == "m" and (wide > 9 or h > 12)) or h in (size, 2 * size):
        return False
    kept = (tenths + 3 * h + len(kind) + across) % 17 == 3
    return kept and shapely(wide, h) and _told_apart(True, across, wide / 2, h)


def exact(
    topic: Topic, tier: Tier, all_of_it: bool, across: bool, n: int, h: int, unit: str
) -> Draft:
    """Return the question for a surface in terms of π."""
    given, high, square = amount(n, unit), amount(h, unit), f"{unit}^2"
    whole = n // 2 if across else n
    radius, figure = amount(whole, unit), drawn(across, given, high)
    end, side = of_pi(whole**2, square), of_pi(_curved(whole, h), square)
    key = of_pi(_surface(whole, h), square) if all_of_it else side
    text = (by_turns(_FIND, n + h).format(_ALL if all_of_it else _CURVED) + IN_PI,)
    unrolled = Step(
        "The curved surface unrolls to a rectangle, which is as long as the circumference.",
        t.equals(_unrolled(radius, high), side),
    )
    ends = Step("Find the area of each end.", t.equals(disc(radius), end))
    both = Step(
        "Add the curved surface and both ends.", t.equals(t.add(side, t.times(TWO, end)), key)
    )
    wrongs = _wrongs(all_of_it, across, Fraction(whole), h)
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "simplified",
        (
            *halved(across, given, whole, unit),
            unrolled,
            *((ends, both) if all_of_it else ()),
        ),
        slips(*((mistake, of_pi(value, square)) for mistake, value in wrongs)),
        ("surface", all_of_it, across, n, h, unit),
        constants=(2,),
        figure=figure,
    )


def rounded(
    topic: Topic, tier: Tier, kind: str, across: bool, tenths: int, h: int, unit: str
) -> Draft:
    """Return the question for a whole surface that is rounded."""
    size, accuracy, square = Fraction(tenths, 10), ACCURACY[kind], f"{unit}^2"
    given, high = amount(size, unit), amount(h, unit)
    half = size / 2 if across else size
    value, radius = PI * _surface(half, h), amount(half, unit)
    figure = drawn(across, given, high)
    text = (f"{by_turns(_FIND, tenths + h).format(_ALL)} {accuracy.said(square)}",)
    wrongs = [(mistake, PI * value) for mistake, value in _wrongs(True, across, half, h)]
    wrongs.append((m.NO_PI, _surface(half, h)))
    return Draft(
        text,
        RoundReading(of_figure(figure, text), accuracy.detail, accuracy.amount),
        accuracy.node(value, square),
        "rounded",
        (
            *halved(across, given, half, unit),
            Step(
                "Add the curved surface and both ends.",
                t.add(
                    _unrolled(radius, high), t.times(TWO, PI_SIGN, t.Power(t.Bracket(radius), TWO))
                ),
            ),
            *accuracy.steps(value, square),
        ),
        slips(*((mistake, accuracy.node(value, square)) for mistake, value in wrongs)),
        ("surface", kind, across, tenths, h, unit),
        constants=(2,),
        figure=figure,
    )


def _unrolled(radius: t.Node, high: t.Node) -> t.Node:
    """Return 2 × π × 5 cm × 8 cm."""
    return t.times(TWO, PI_SIGN, radius, high)
