"""Density and pressure.

Key stage 3, ratio (England, 2013): "use compound units such as speed, unit pricing and density to
solve problems" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators._turns import by_turns
from generators.ratio._parts import amount
from generators.ratio._rates import apart, written, wrong_amounts
from itembank.items import kinds
from itembank.items.item import Choose, Draft, Find, Misconception, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

MULTIPLIES = Misconception(
    "ratio.density-multiplies",
    "multiplies where it should divide",
    "What is the mass of 1 cubic centimetre? How do you find it?",
)
DIVIDES = Misconception(
    "ratio.density-divides",
    "divides where it should multiply, or the other way round",
    "What is the mass of 1 cubic centimetre? And of 2?",
)
SUBTRACTS = Misconception(
    "ratio.density-subtracts",
    "subtracts the numbers",
    "What does the unit tell you to do with mass and volume?",
)
ADDS_EDGES = Misconception(
    "ratio.density-adds-edges",
    "adds the three edges for the volume",
    "How many cubes of 1 cm fit in one layer? How many layers are there?",
)
LIKE_WATER = Misconception(
    "ratio.density-volume-as-mass",
    "gives the volume as the mass",
    "Is the mass of 1 cubic centimetre 1 gram here?",
)
KILOGRAMS = Misconception(
    "ratio.density-kilograms-kept",
    "divides kilograms where grams are wanted",
    "In which unit of mass is the density? In which unit is the mass?",
)
HUNDRED = Misconception(
    "ratio.density-hundred-grams",
    "takes 100 grams for a kilogram",
    "How many grams are there in a kilogram?",
)
MEAN = Misconception(
    "ratio.density-mean",
    "takes the mean of the two densities",
    "Is there as much of the one as of the other?",
)
ONE_MASS = Misconception(
    "ratio.density-adds",
    "adds the two densities",
    "Can a mixture be denser than each of its parts?",
)
HEAVIEST = Misconception(
    "ratio.density-heaviest",
    "takes the heaviest to be the densest",
    "Is a large tree denser than a small coin? What else matters?",
)
SMALLEST = Misconception(
    "ratio.density-smallest",
    "takes the smallest to be the densest",
    "Is a small cork denser than a large stone? What else matters?",
)
PRESSURE_TIMES = Misconception(
    "ratio.pressure-multiplies",
    "multiplies the force and the area",
    "How much force is there on 1 square centimetre? How do you find it?",
)
PRESSURE_UPSIDE = Misconception(
    "ratio.pressure-divides-the-other-way",
    "divides where it should multiply, or the other way round",
    "Is there more force on a larger area, at the same pressure?",
)
EDGES_ADDED = Misconception(
    "ratio.pressure-adds-edges",
    "adds the two edges for the area",
    "How do you find the area of a rectangle?",
)

# Grams in 100 cubic centimetres: common tables of materials, from memory and rounded.
SOLIDS = (
    ("cork", 24),
    ("pine", 50),
    ("oak", 70),
    ("wax", 95),
    ("brick", 180),
    ("concrete", 240),
    ("glass", 250),
    ("aluminium", 270),
    ("slate", 280),
    ("iron", 780),
    ("copper", 890),
    ("silver", 1050),
    ("lead", 1130),
)
_THINGS = ("A crate", "A tool box", "A water tank", "A stack of books", "A sack of soil")
_MIXED = ((130, 100), (140, 100), (104, 100), (105, 100), (140, 104), (130, 105), (125, 100))
_CM3 = "g/cm^3"
_X = t.Sym("x")


def _support(kind: str, stuff: int, volume: int) -> bool:
    """Keep masses that are whole grams, and mistakes that show."""
    density = SOLIDS[stuff][1]
    return density * volume % 100 == 0 and apart(
        _key(kind, density, volume), *_wrong(kind, density, volume)
    )


def _key(kind: str, density: int, volume: int) -> Fraction:
    return {
        "density": Fraction(density, 100),
        "mass": Fraction(density * volume, 100),
        "volume": Fraction(volume),
    }[kind]


def _wrong(kind: str, density: int, volume: int) -> tuple[Fraction | None, ...]:
    """Return what the likely mistakes give, in the order of :data:`_MISTAKES`."""
    mass = density * volume // 100
    if kind == "density":
        return Fraction(mass * volume), Fraction(abs(mass - volume)), written(volume, mass)
    if kind == "mass":
        return written(100 * volume, density), written(density, 100 * volume), Fraction(volume)
    return written(mass * density, 100), written(100 * mass - density, 100), None


_MISTAKES = {
    "density": (MULTIPLIES, SUBTRACTS, DIVIDES),
    "mass": (DIVIDES, DIVIDES, LIKE_WATER),
    "volume": (MULTIPLIES, SUBTRACTS, DIVIDES),
}


def _core(kind: str, a: int, b: int, c: int) -> bool:
    """Keep blocks (edges a, b, c), kilograms (a stuff, b volume), pressures and forces."""
    if kind == "block":
        density = SOLIDS[(a + b + c) % len(SOLIDS)][1]
        volume = a * b * c
        if not a > b >= c or density * volume % 100 or volume > 6000:
            return False
        return apart(Fraction(density * volume, 100), *_block_wrong(density, a, b, c))
    if kind == "kg":
        density, mass = SOLIDS[a][1], SOLIDS[a][1] * b
        return mass % 10_000 == 0 and apart(Fraction(density, 100), *_kg_wrong(density, b))
    # b square centimetres at c tenths of a newton each.
    if b * c % 10:
        return False
    key = Fraction(c, 10) if kind == "pressure" else Fraction(b * c, 10)
    return apart(key, *_pressure_wrong(kind, b, c))


def _block_wrong(density: int, a: int, b: int, c: int) -> tuple[Fraction | None, ...]:
    return (
        written(density * (a + b + c), 100),
        written(100 * a * b * c, density),
        Fraction(a * b * c),
    )


def _kg_wrong(density: int, volume: int) -> tuple[Fraction | None, ...]:
    """Return what KILOGRAMS, HUNDRED and SUBTRACTS give."""
    return (
        written(density, 100_000, 5),
        written(density, 1000, 3),
        Fraction(abs(density * volume // 100 - volume)),
    )


def _pressure_wrong(kind: str, area: int, tenths: int) -> tuple[Fraction | None, ...]:
    """Return what PRESSURE_TIMES (or a subtraction) and PRESSURE_UPSIDE give."""
    force = area * tenths // 10
    if kind == "pressure":
        return Fraction(force * area), written(area, force)
    return written(10 * area, tenths), written(tenths, 10 * area)


def _challenge(kind: str, a: int, b: int, c: int) -> bool:
    """Keep mixtures (a pair of densities, volumes b and c), choices, and forces on a face."""
    if kind == "mixture":
        first, second = _MIXED[a]
        if b == c or (first * b) % 100 or (second * c) % 100:
            return False
        average = written(first * b + second * c, 100 * (b + c))
        return average is not None and apart(
            average, written(first + second, 200, 3), written(first + second, 100)
        )
    if kind == "densest":
        return _three(a, b, c)
    # A force of a tens of newtons on a face of b by c centimetres.
    pressure = written(10 * a, b * c)
    if pressure is None or b <= c or not 1 <= 100 * pressure <= 2000:
        return False
    return apart(pressure, *_face_wrong(a, b, c))


def _face_wrong(a: int, b: int, c: int) -> tuple[Fraction | None, ...]:
    return Fraction(10 * a * b * c), written(b * c, 10 * a), written(10 * a, b + c)


def _pieces(a: int, b: int, c: int) -> tuple[tuple[int, int], ...]:
    """Return mass and volume of three pieces: the smallest, the densest, the heaviest."""
    return (a * b, 10 * b), ((a + c) * (b + 10), 10 * (b + 10)), ((a - c) * 2 * b, 20 * b)


def _three(a: int, b: int, c: int) -> bool:
    small, dense, heavy = _pieces(a, b, c)
    return c < a and small[0] < dense[0] < heavy[0] and small[1] < dense[1] < heavy[1]


@register
class Density(Topic):
    """One step; blocks, kilograms and pressure; mixtures, choices, and forces on a face."""

    id = "ratio.density"
    title = "Density and pressure"
    statements = ("ratio.compound-units",)
    misconceptions = (
        MULTIPLIES,
        DIVIDES,
        SUBTRACTS,
        ADDS_EDGES,
        LIKE_WATER,
        KILOGRAMS,
        HUNDRED,
        MEAN,
        ONE_MASS,
        HEAVIEST,
        SMALLEST,
        PRESSURE_TIMES,
        PRESSURE_UPSIDE,
        EDGES_ADDED,
    )
    prerequisites = ("ratio.speed",)
    spaces = {
        Tier.SUPPORT: kinds.with_given_answers(
            Space(
                _support,
                kind=("density", "mass", "volume"),
                stuff=range(len(SOLIDS)),
                volume=(5, 8, 10, 12, 15, 20, 25, 30, 40, 50, 60, 80, 100, 120, 150, 200),
            )
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(
                _core,
                kind=("block",),
                a=range(5, 31),
                b=(2, 3, 4, 5, 6, 8, 10, 12, 15, 20),
                c=(2, 3, 4, 5, 8, 10),
            )
            .then(
                _core,
                kind=("kg",),
                a=range(len(SOLIDS)),
                b=(100, 200, 250, 300, 400, 500, 600, 700, 800, 1000, 1500, 2000),
                c=(0,),
            )
            .then(
                _core,
                kind=("pressure", "force"),
                a=(0,),
                b=(20, 25, 30, 40, 50, 60, 80, 120, 150, 200, 250, 300, 400),
                c=(2, 4, 5, 6, 8, 12, 15, 20, 24, 25, 30, 40, 60),
            )
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(
                _challenge,
                kind=("mixture",),
                a=range(len(_MIXED)),
                b=(50, 60, 100, 150, 200, 250, 300, 400),
                c=(50, 60, 90, 100, 150, 200, 250, 300, 400, 500, 600, 700),
            )
            .then(
                _challenge,
                kind=("densest",),
                a=range(30, 110, 4),
                b=(20, 30, 40, 50, 60),
                c=(3, 5, 8),
            )
            .then(
                _challenge,
                kind=("face",),
                a=(12, 15, 18, 20, 24, 30, 36, 40, 45, 48, 60, 72, 80, 90),
                b=(20, 25, 30, 40, 45, 50, 60, 80, 90, 120),
                c=(10, 12, 15, 16, 20, 25, 30, 40, 50, 60),
            ),
            only=lambda kind, *_: kind != "densest",
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, *more = values
        if tier is Tier.SUPPORT:
            return self._plain(kind, *more)
        if kind == "block":
            return self._block(*more)
        if kind == "kg":
            return self._kilograms(*more[:2])
        if kind in ("pressure", "force"):
            return self._pressure(kind, *more[1:])
        if kind == "mixture":
            return self._mixture(*more)
        return self._densest(*more) if kind == "densest" else self._face(*more)

    def _plain(self, kind: str, stuff: int, volume: int) -> Draft:
        name, density = SOLIDS[stuff]
        mass, room = amount(density * volume // 100, "g"), amount(volume, "cm^3")
        rate, unit = amount(Fraction(density, 100), _CM3), {"density": _CM3, "mass": "g"}
        if kind == "density":
            text = f"A piece of {name} has a mass of {{m}} and a volume of {{v}}. "
            text += "Work out its density in g/cm³."
            shown, asked, key = {"m": mass, "v": room}, t.divide(mass, room), rate
            say = "Density is mass divided by volume."
        elif kind == "mass":
            text = f"The density of {name} is {{d}}. Work out the mass of {{v}} of it, in grams."
            shown, asked, key = {"d": rate, "v": room}, t.times(rate, room), mass
            say = "Mass is density times volume."
        else:
            text = f"The density of {name} is {{d}}. A piece of it has a mass of {{m}}. "
            text += "Work out its volume in cubic centimetres."
            shown, asked, key = {"d": rate, "m": mass}, t.divide(mass, rate), room
            say = "Volume is mass divided by density."
        return Draft(
            prompt(text, **shown),
            Find(_X, (t.equals(_X, asked),)),
            key,
            "quantity",
            (Step(say, t.equals(asked, key)),),
            wrong_amounts(
                unit.get(kind, "cm^3"),
                _key(kind, density, volume),
                _MISTAKES[kind],
                _wrong(kind, density, volume),
            ),
            (kind, stuff, volume),
        )

    def _block(self, a: int, b: int, c: int) -> Draft:
        name, density = SOLIDS[(a + b + c) % len(SOLIDS)]
        edges = [amount(edge, "cm") for edge in (a, b, c)]
        rate, volume = amount(Fraction(density, 100), _CM3), amount(a * b * c, "cm^3")
        key = Fraction(density * a * b * c, 100)
        return Draft(
            prompt(
                f"A block of {name} measures {{a}} by {{b}} by {{c}}. The density of {name} is "
                "{d}. Work out the mass of the block in grams.",
                a=edges[0],
                b=edges[1],
                c=edges[2],
                d=rate,
            ),
            Find(_X, (t.equals(_X, t.times(rate, *edges)),)),
            amount(key, "g"),
            "quantity",
            (
                Step("Find the volume of the block.", t.equals(t.times(*edges), volume)),
                Step(
                    "Mass is density times volume.",
                    t.equals(t.times(rate, volume), amount(key, "g")),
                ),
            ),
            wrong_amounts(
                "g", key, (ADDS_EDGES, DIVIDES, LIKE_WATER), _block_wrong(density, a, b, c)
            ),
            ("block", a, b, c),
        )

    def _kilograms(self, stuff: int, volume: int) -> Draft:
        name, density = SOLIDS[stuff]
        grams, room = amount(density * volume // 100, "g"), amount(volume, "cm^3")
        shown = amount(Fraction(density * volume, 100_000), "kg")
        rate = amount(Fraction(density, 100), _CM3)
        return Draft(
            prompt(
                f"A piece of {name} has a mass of {{m}} and a volume of {{v}}. Work out its "
                "density in g/cm³.",
                m=shown,
                v=room,
            ),
            Find(_X, (t.equals(_X, t.divide(shown, room)),)),
            rate,
            "quantity",
            (
                Step("Write the mass in grams.", t.equals(shown, grams)),
                Step("Density is mass divided by volume.", t.equals(t.divide(grams, room), rate)),
            ),
            wrong_amounts(
                _CM3,
                Fraction(density, 100),
                (KILOGRAMS, HUNDRED, SUBTRACTS),
                _kg_wrong(density, volume),
            ),
            ("kg", stuff, volume),
        )

    def _pressure(self, kind: str, area: int, tenths: int) -> Draft:
        name = by_turns(_THINGS, area // 5 + tenths)
        force, room, each = (
            t.Int(area * tenths // 10),
            t.Int(area),
            amount(Fraction(tenths, 10), ""),
        )
        if kind == "pressure":
            text = (
                f"{name} presses on {{a}} square centimetres of the floor with a force of {{f}} "
                "newtons. What is the pressure, in newtons per square centimetre?"
            )
            shown: dict[str, t.Node] = {"a": room, "f": force}
            asked: t.Node = t.divide(force, room)
            key: t.Node = each
            say, value = "Pressure is force divided by area.", Fraction(tenths, 10)
        else:
            text = (
                f"{name} stands on {{a}} square centimetres of the floor. The pressure there is "
                "{p} newtons per square centimetre. How many newtons is the force altogether?"
            )
            shown, asked, key = {"a": room, "p": each}, t.times(each, room), force
            say, value = "Force is pressure times area.", Fraction(area * tenths, 10)
        return Draft(
            prompt(text, **shown),
            Find(_X, (t.equals(_X, asked),)),
            key,
            "decimal",
            (Step(say, t.equals(asked, key)),),
            wrong_amounts(
                "",
                value,
                (PRESSURE_TIMES if kind == "pressure" else PRESSURE_UPSIDE, PRESSURE_UPSIDE),
                _pressure_wrong(kind, area, tenths),
            ),
            (kind, area, tenths),
        )

    def _mixture(self, pair: int, b: int, c: int) -> Draft:
        first, second = _MIXED[pair]
        rates = [amount(Fraction(density, 100), _CM3) for density in (first, second)]
        rooms = [amount(volume, "cm^3") for volume in (b, c)]
        masses = [amount(first * b // 100, "g"), amount(second * c // 100, "g")]
        average = Fraction(first * b + second * c, 100 * (b + c))
        mass, room = amount((first * b + second * c) // 100, "g"), amount(b + c, "cm^3")
        products = [t.times(rate, volume) for rate, volume in zip(rates, rooms, strict=True)]
        return Draft(
            prompt(
                "A cook mixes {v} of syrup, of density {d}, with {w} of juice, of density {e}. "
                "The volumes add up. Work out the density of the mixture in g/cm³.",
                v=rooms[0],
                d=rates[0],
                w=rooms[1],
                e=rates[1],
            ),
            Find(
                _X,
                (t.equals(_X, t.divide(t.Bracket(t.add(*products)), t.Bracket(t.add(*rooms)))),),
            ),
            amount(average, _CM3),
            "quantity",
            (
                Step("Find the mass of the syrup.", t.equals(products[0], masses[0])),
                Step("Find the mass of the juice.", t.equals(products[1], masses[1])),
                Step("Add the masses.", t.equals(t.add(*masses), mass)),
                Step("Add the volumes.", t.equals(t.add(*rooms), room)),
                Step(
                    "Divide all of the mass by all of the volume.",
                    t.equals(t.divide(mass, room), amount(average, _CM3)),
                ),
            ),
            wrong_amounts(
                _CM3,
                average,
                (MEAN, ONE_MASS),
                (written(first + second, 200, 3), written(first + second, 100)),
            ),
            ("mixture", pair, b, c),
        )

    def _densest(self, a: int, b: int, c: int) -> Draft:
        pieces = _pieces(a, b, c)
        turn = (a // 4 + b // 10 + c) % 3
        placed = pieces[turn:] + pieces[:turn]
        names = {piece: f"Piece {letter}" for piece, letter in zip(placed, "ABC", strict=True)}
        text = "Which piece of metal is the densest? " + " ".join(
            f"{names[piece]}: {{m{k}}} and {{v{k}}}." for k, piece in enumerate(placed)
        )
        runs: dict[str, t.Node] = {}
        for k, (mass, volume) in enumerate(placed):
            runs[f"m{k}"], runs[f"v{k}"] = amount(mass, "g"), amount(volume, "cm^3")
        key = t.Label(names[pieces[1]])
        sums = {
            piece: t.divide(amount(piece[0], "g"), amount(piece[1], "cm^3")) for piece in placed
        }
        return Draft(
            prompt(text, **runs),
            Choose(tuple((names[piece], sums[piece]) for piece in placed), "greatest"),
            key,
            "name",
            (
                *(
                    Step(
                        f"{names[piece]}: divide the mass by the volume.",
                        t.equals(sums[piece], amount(Fraction(*piece), _CM3)),
                    )
                    for piece in placed
                ),
                Step("Compare the densities.", key),
            ),
            slips((SMALLEST, t.Label(names[pieces[0]])), (HEAVIEST, t.Label(names[pieces[2]]))),
            ("densest", a, b, c),
        )

    def _face(self, a: int, b: int, c: int) -> Draft:
        name = by_turns(_THINGS, a + b // 5 + c)
        edges, force, area = (t.Int(b), t.Int(c)), t.Int(10 * a), t.Int(b * c)
        pressure = Fraction(10 * a, b * c)
        return Draft(
            prompt(
                f"{name} presses on the floor with a force of {{f}} newtons. Its base is a "
                "rectangle, {b} centimetres long and {c} centimetres wide. What is the pressure, "
                "in newtons per square centimetre?",
                f=force,
                b=edges[0],
                c=edges[1],
            ),
            Find(_X, (t.equals(_X, t.divide(force, t.Bracket(t.times(*edges)))),)),
            amount(pressure, ""),
            "decimal",
            (
                Step("Find the area of the base.", t.equals(t.times(*edges), area)),
                Step(
                    "Pressure is force divided by area.",
                    t.equals(t.divide(force, area), amount(pressure, "")),
                ),
            ),
            wrong_amounts(
                "",
                pressure,
                (PRESSURE_TIMES, PRESSURE_UPSIDE, EDGES_ADDED),
                _face_wrong(a, b, c),
            ),
            ("face", a, b, c),
        )
