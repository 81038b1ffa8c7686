"""How short questions about densities, plans, prisms and machines are worked out again.

What is asked for is found by trying, with the exact fractions of FLINT, which are quick, until it
gives what is printed.
"""

from __future__ import annotations

from fractions import Fraction
from math import hypot

from flint import fmpq


def tried(holds, parts=20, most=400):
    """Return the one number up to `most`, counted in parts of 1, for which something holds."""
    [found] = [x for n in range(1, parts * most) if holds(x := fmpq(n, parts))]
    return found


def triangle(base, high):
    """Return half of the rectangle round a triangle."""
    return base * high / 2


def turns(sides):
    """Return the sum of the interior angles: each corner's half turn, less one full turn."""
    return 180 * sides - 360


def machine(a, b, x):
    return sum((x for _ in range(int(a))), fmpq(0)) + b


DENSITY = {
    "A stone has a mass of {} and a volume of {}. What is its density?": (
        lambda mass, volume: tried(lambda d: d * volume == mass, 2)
    ),
    "A metal has a density of {}. What is the mass of {} of it?": lambda d, volume: d * volume,
    "A metal has a density of {}. What is the volume of {} of it?": (
        lambda d, mass: tried(lambda volume: d * volume == mass, 1)
    ),
    "A cuboid {} by {} by {} has a mass of {}. What is its density?": (
        lambda a, b, c, mass: tried(lambda d: d * a * b * c == mass, 10)
    ),
}
PLANS = {
    "On a plan {} stands for {}. What real length does {} stand for?": (
        lambda single, each, drawn: drawn / single * each
    ),
    "On a plan {} stands for {}. How long on the plan is a path of {}?": (
        lambda single, each, real: tried(lambda drawn: drawn / single * each == real, 2)
    ),
    "A plan has the scale {} : {}. How many metres does {} on the plan stand for?": (
        lambda single, scale, drawn: drawn * scale / single / 100
    ),
    "A plan has the scale {} : {}. How many centimetres on the plan are {} in reality?": (
        lambda single, scale, real: tried(lambda cm: cm * scale / single == 100 * real, 2)
    ),
}
PRISMS = {
    "A prism has a cross-section of {} and a length of {}. What is its volume?": (
        lambda end, long: sum(end for _ in range(int(long)))
    ),
    "A prism has a volume of {} and a cross-section of {}. How long is it?": (
        lambda volume, end: tried(lambda long: end * long == volume, 1)
    ),
    "A prism {} long has a triangle of base {} and height {} as its end. What is its volume?": (
        lambda long, base, high: triangle(base, high) * long
    ),
}
POLYGONS = {
    "What do the interior angles of a polygon with {} sides add up to?": turns,
    "The interior angles of a polygon add up to {}. How many sides has it?": (
        lambda total: tried(lambda sides: turns(sides) == total, 1)
    ),
    "A polygon has {} sides. All its angles but one add up to {}. How large is that one?": (
        lambda sides, known: turns(sides) - known
    ),
}
MACHINES = {
    "A machine multiplies by {} and then adds {}. What is the output for {}?": machine,
    "A machine multiplies by {} and then adds {}. What input has the output {}?": (
        lambda a, b, y: tried(lambda x: machine(a, b, x) == y, 1)
    ),
    "A machine multiplies by {} and then subtracts {}. Which input comes out the same?": (
        lambda a, b: tried(lambda x: machine(a, -b, x) == x, 1)
    ),
}
_TWO = (("cats", "dogs"), ("cars", "vans"), ("pens", "pads"), ("hens", "ducks"))


def grown(parts, enough):
    """Return the amounts that come when every part grows by one until there is enough."""
    amounts = list(parts)
    while not enough(amounts):
        amounts = [amount + part for amount, part in zip(amounts, parts, strict=True)]
        assert max(amounts) < 2000
    return amounts


def by_gap(a, b, gap):
    return grown((a, b), lambda have: have[1] - have[0] == gap)


def by_first(a, b, first):
    return grown((a, b), lambda have: have[0] == first)


DIFFERENCES = {
    **{
        f"The ratio of {few} to {many} is {{}} : {{}}. There are {{}} more {many}. "
        f"How many {many} are there?": (lambda a, b, gap: by_gap(a, b, gap)[1])
        for few, many in _TWO
    },
    **{
        f"The ratio of {few} to {many} is {{}} : {{}}. There are {{}} more {many}. "
        "How many are there in all?": (lambda a, b, gap: sum(by_gap(a, b, gap)))
        for few, many in _TWO
    },
    "Pens, pads and pins are in the ratio {} : {} : {}. There are {} more pins than pens. "
    "How many in all?": (
        lambda a, b, c, gap: sum(grown((a, b, c), lambda have: have[2] - have[0] == gap))
    ),
}
ONE_PART = {
    **{
        f"The ratio of {few} to {many} is {{}} : {{}}. There are {{}} {few}. "
        f"How many {many} are there?": lambda a, b, first: by_first(a, b, first)[1]
        for few, many in _TWO
    },
    **{
        f"The ratio of {few} to {many} is {{}} : {{}}. There are {{}} {few}. "
        "How many are there in all?": lambda a, b, first: sum(by_first(a, b, first))
        for few, many in _TWO
    },
    "Pens, pads and pins are in the ratio {} : {} : {}. There are {} pads. "
    "How many are there in all?": (
        lambda a, b, c, pads: sum(grown((a, b, c), lambda have: have[1] == pads))
    ),
}
PYTHAGORAS = {
    "A rectangle has a side of {} and a diagonal of {}. How long is its other side?": (
        lambda a, c: tried(lambda b: a * a + b * b == c * c, 1)
    ),
    "A rectangle is {} by {}. How long is its diagonal?": (
        lambda a, b: Fraction(hypot(a, b)).limit_denominator(100)
    ),
    "A rectangle has a side of {} and a diagonal of {}. What is its area?": (
        lambda a, c: a * tried(lambda b: a * a + b * b == c * c, 1)
    ),
}
TOPICS = {
    "ratio.difference": DIFFERENCES,
    "ratio.one-part": ONE_PART,
    "geometry.pythagoras": PYTHAGORAS,
    "ratio.density": DENSITY,
    "ratio.scale": PLANS,
    "geometry.volume-of-prisms": PRISMS,
    "geometry.polygon-angles": POLYGONS,
    "algebra.function-machines": MACHINES,
}
