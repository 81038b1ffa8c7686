"""Gradients told without a picture: by how far a line goes up, and by two points."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from generators._turns import by_turns
from generators.graphs._grids import pair
from generators.graphs._lines import quotient, signed, slope_node
from generators.graphs._misconceptions import GRADIENT_SIGN, RISE_ALONE, UPSIDE_DOWN
from itembank.items.item import Draft, Find, Slip, Step, Tier, prompt
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_GOES = (
    "A line goes {w} {r} for each {a} along. What is its gradient?",
    "For {a} along, a line goes {r} {w}. What is its gradient?",
)
_THROUGH = (
    "What is the gradient of the line through {p} and {q}?",
    "A line goes through {p} and {q}. What is its gradient?",
)


def _mistakes(rise: int, run: int) -> bool:
    """Tell whether each wrong way gives another gradient."""
    right = Fraction(rise, run)
    return len({right, 1 / right, -right, Fraction(rise)}) == 4


def _rises(rise: int, run: int) -> bool:
    simple = rise % run == 0 or run % rise == 0
    return simple and _mistakes(rise, run)


def _rising(x: int, y: int, run: int, rise: int) -> bool:
    """Keep points of the first quadrant whose gradient is whole, or one over a number."""
    return _rises(rise, run) and x != y and (x + 2 * y + run + rise) % 4 == 0


def _falls(rise: int, run: int) -> bool:
    return _mistakes(-rise, run) and rise % run != 0


def _falling(x: int, y: int, run: int, rise: int) -> bool:
    """Keep falling lines, whose gradient is a whole number or a fraction."""
    return y > rise and _mistakes(-rise, run) and (x + 2 * y + run + rise) % 4 == 0


def _steeper(rise: int, run: int) -> bool:
    """Keep larger numbers than those that were there first."""
    return max(rise, run) > 12 and _rises(rise, run) and (rise + run) % 2 == 0


def _far_falling(x: int, y: int, run: int, rise: int) -> bool:
    """Keep falling lines that begin left of the y-axis."""
    return _mistakes(-rise, run) and rise % run != 0 and (x + 2 * y + run + 3 * rise) % 7 == 0


def _by_rise(topic: Topic, tier: Tier, rise: int, run: int) -> Draft:
    """Return the gradient from how far up, or down at the core, a line goes."""
    down = tier is not Tier.SUPPORT
    size = -rise if down else rise
    up = t.Neg(t.Int(rise)) if down else t.Int(rise)
    text = by_turns(_GOES, rise + run).replace("{w}", "down" if down else "up")
    return Draft(
        prompt(text, r=t.Int(rise), a=t.Int(run)),
        Find(t.Sym("m"), (t.equals(t.times(t.Int(run), t.Sym("m")), up),)),
        slope_node(Fraction(size, run)),
        "number",
        (
            Step(
                f"Divide how far {'up' if not down else 'up (down is negative)'} by how far along.",
                quotient(size, run),
            ),
        ),
        _wrong(size, run),
        ("told rise", size, run),
    )


def _by_points(topic: Topic, tier: Tier, x: int, y: int, run: int, rise: int) -> Draft:
    """Return the gradient of the line through two points."""
    size = rise if tier is Tier.SUPPORT else -rise
    a, b = (x, y), (x + run, y + size)
    m, c = t.Sym("m"), t.Sym("c")
    return Draft(
        prompt(by_turns(_THROUGH, x + y + run), p=pair(*a), q=pair(*b)),
        Find(m, tuple(t.equals(t.num(v), t.add(t.times(m, signed(u)), c)) for u, v in (a, b))),
        slope_node(Fraction(size, run)),
        "number",
        (
            Step("How far up?", t.equals(t.sub(t.num(b[1]), signed(a[1])), t.num(size))),
            Step("How far along?", t.equals(t.sub(t.num(b[0]), signed(a[0])), t.num(run))),
            Step("Divide the first by the second.", quotient(size, run)),
        ),
        _wrong(size, run),
        ("told points", a, b),
    )


def _wrong(rise: int, run: int) -> tuple[Slip, ...]:
    slope = Fraction(rise, run)
    return slips(
        (UPSIDE_DOWN, 1 / slope), (GRADIENT_SIGN, -slope), (RISE_ALONE, rise), write=slope_node
    )


def with_told(spaces: Mapping[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of gradients with lines told in words at their ends."""
    far = range(2, 13)
    places = {"x": range(6), "y": range(1, 9), "run": range(2, 6), "rise": range(2, 9)}
    return {
        **spaces,
        Tier.SUPPORT: spaces[Tier.SUPPORT]
        .also(_by_rise, _rises, rise=far, run=far)
        .also(_by_points, _rising, **places)
        .also(_by_rise, _steeper, rise=range(2, 31), run=range(2, 31)),
        Tier.CORE: spaces[Tier.CORE]
        .also(_by_rise, _falls, rise=far, run=far)
        .also(_by_points, _falling, **places)
        .also(
            _by_points,
            _far_falling,
            x=range(-6, 0),
            y=range(-3, 6),
            run=range(3, 9),
            rise=range(2, 10),
        ),
    }
