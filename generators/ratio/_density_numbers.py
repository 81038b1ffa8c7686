"""Which densities and pressures are asked for, and what the mistakes give."""

from __future__ import annotations

from fractions import Fraction

from generators.ratio._density_mistakes import DIVIDES, LIKE_WATER, MULTIPLIES, SUBTRACTS
from generators.ratio._materials import MIXED, SOLIDS
from generators.ratio._rates import apart, written


def support_fits(kind: str, stuff: int, volume: int) -> bool:
    """Keep masses that are whole grams, and mistakes that show."""
    density = SOLIDS[stuff][1]
    return density * volume % 100 == 0 and apart(
        key_of(kind, density, volume), *support_wrong(kind, density, volume)
    )


def key_of(kind: str, density: int, volume: int) -> Fraction:
    """Return a density in g/cm³, a mass in grams, or a volume in cubic centimetres.

    >>> key_of("mass", 270, 20)
    Fraction(54, 1)
    """
    return {
        "density": Fraction(density, 100),
        "mass": Fraction(density * volume, 100),
        "volume": Fraction(volume),
    }[kind]


def support_wrong(kind: str, density: int, volume: int) -> tuple[Fraction | None, ...]:
    """Return what the likely mistakes give, in the order of :data:`MISTAKES`."""
    mass = density * volume // 100
    if kind == "density":
        return Fraction(mass * volume), Fraction(abs(mass - volume)), written(volume, mass)
    if kind == "mass":
        return written(100 * volume, density), written(density, 100 * volume), Fraction(volume)
    return written(mass * density, 100), written(100 * mass - density, 100), None


MISTAKES = {
    "density": (MULTIPLIES, SUBTRACTS, DIVIDES),
    "mass": (DIVIDES, DIVIDES, LIKE_WATER),
    "volume": (MULTIPLIES, SUBTRACTS, DIVIDES),
}


def core_fits(kind: str, a: int, b: int, c: int) -> bool:
    """Keep blocks (edges a, b, c), kilograms (a stuff, b volume), pressures and forces."""
    if kind == "block":
        density = SOLIDS[(a + b + c) % len(SOLIDS)][1]
        volume = a * b * c
        if not a > b >= c or density * volume % 100 or volume > 6000:
            return False
        return apart(Fraction(density * volume, 100), *block_wrong(density, a, b, c))
    if kind == "kg":
        density, mass = SOLIDS[a][1], SOLIDS[a][1] * b
        return mass % 10_000 == 0 and apart(Fraction(density, 100), *kilograms_wrong(density, b))
    # b square centimetres at c tenths of a newton each.
    if b * c % 10:
        return False
    key = Fraction(c, 10) if kind == "pressure" else Fraction(b * c, 10)
    return apart(key, *pressure_wrong(kind, b, c))


def block_wrong(density: int, a: int, b: int, c: int) -> tuple[Fraction | None, ...]:
    """Return what ADDS_EDGES, DIVIDES and LIKE_WATER give, in grams."""
    return (
        written(density * (a + b + c), 100),
        written(100 * a * b * c, density),
        Fraction(a * b * c),
    )


def kilograms_wrong(density: int, volume: int) -> tuple[Fraction | None, ...]:
    """Return what KILOGRAMS, HUNDRED and SUBTRACTS give."""
    return (
        written(density, 100_000, 5),
        written(density, 1000, 3),
        Fraction(abs(density * volume // 100 - volume)),
    )


def pressure_wrong(kind: str, area: int, tenths: int) -> tuple[Fraction | None, ...]:
    """Return what PRESSURE_TIMES (or a subtraction) and PRESSURE_UPSIDE give."""
    force = area * tenths // 10
    if kind == "pressure":
        return Fraction(force * area), written(area, force)
    return written(10 * area, tenths), written(tenths, 10 * area)


def challenge_fits(kind: str, a: int, b: int, c: int) -> bool:
    """Keep mixtures (a pair of densities, volumes b and c), choices, and forces on a face."""
    if kind == "mixture":
        first, second = MIXED[a]
        if b == c or (first * b) % 100 or (second * c) % 100:
            return False
        average = written(first * b + second * c, 100 * (b + c))
        return average is not None and apart(
            average, written(first + second, 200, 3), written(first + second, 100)
        )
    if kind == "densest":
        return _three_apart(a, b, c)
    # A force of a tens of newtons on a face of b by c centimetres.
    pressure = written(10 * a, b * c)
    if pressure is None or b <= c or not 1 <= 100 * pressure <= 2000:
        return False
    return apart(pressure, *face_wrong(a, b, c))


def face_wrong(a: int, b: int, c: int) -> tuple[Fraction | None, ...]:
    """Return what PRESSURE_TIMES, PRESSURE_UPSIDE and EDGES_ADDED give."""
    return Fraction(10 * a * b * c), written(b * c, 10 * a), written(10 * a, b + c)


def three_pieces(a: int, b: int, c: int) -> tuple[tuple[int, int], ...]:
    """Return mass and volume of three pieces: the smallest, the densest, the heaviest."""
    return (a * b, 10 * b), ((a + c) * (b + 10), 10 * (b + 10)), ((a - c) * 2 * b, 20 * b)


def _three_apart(a: int, b: int, c: int) -> bool:
    small, dense, heavy = three_pieces(a, b, c)
    return c < a and small[0] < dense[0] < heavy[0] and small[1] < dense[1] < heavy[1]
