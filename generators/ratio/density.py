"""Density and pressure.

Key stage 3, ratio (England, 2013): "use compound units such as speed, unit pricing and density to
solve problems" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators.ratio._density_in_brief import BRIEF
from generators.ratio._density_mistakes import (
    ADDS_EDGES,
    DIVIDES,
    EDGES_ADDED,
    HEAVIEST,
    HUNDRED,
    KILOGRAMS,
    LIKE_WATER,
    MEAN,
    MULTIPLIES,
    ONE_MASS,
    PRESSURE_TIMES,
    PRESSURE_UPSIDE,
    SMALLEST,
    SUBTRACTS,
)
from generators.ratio._density_numbers import (
    MISTAKES,
    block_wrong,
    challenge_fits,
    core_fits,
    key_of,
    kilograms_wrong,
    support_fits,
    support_wrong,
)
from generators.ratio._materials import CM3, MIXED, SOLIDS
from generators.ratio._parts import amount
from generators.ratio._pressures import on_a_face, on_an_area
from generators.ratio._rates import by_formula, wrong_amounts
from generators.ratio._several_densities import densest, mixture
from itembank.items import kinds
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.kinds.brief import with_brief
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

_X = t.Sym("x")


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
                support_fits,
                kind=("density", "mass", "volume"),
                stuff=range(len(SOLIDS)),
                volume=(5, 8, 10, 12, 15, 20, 25, 30, 40, 50, 60, 80, 100, 120, 150, 200),
            )
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(
                core_fits,
                kind=("block",),
                a=range(5, 31),
                b=(2, 3, 4, 5, 6, 8, 10, 12, 15, 20),
                c=(2, 3, 4, 5, 8, 10),
            )
            .then(
                core_fits,
                kind=("kg",),
                a=range(len(SOLIDS)),
                b=(100, 200, 250, 300, 400, 500, 600, 700, 800, 1000, 1500, 2000),
                c=(0,),
            )
            .then(
                core_fits,
                kind=("pressure", "force"),
                a=(0,),
                b=(20, 25, 30, 40, 50, 60, 80, 120, 150, 200, 250, 300, 400),
                c=(2, 4, 5, 6, 8, 12, 15, 20, 24, 25, 30, 40, 60),
            )
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(
                challenge_fits,
                kind=("mixture",),
                a=range(len(MIXED)),
                b=(50, 60, 100, 150, 200, 250, 300, 400),
                c=(50, 60, 90, 100, 150, 200, 250, 300, 400, 500, 600, 700),
            )
            .then(
                challenge_fits,
                kind=("densest",),
                a=range(30, 110, 4),
                b=(20, 30, 40, 50, 60),
                c=(3, 5, 8),
            )
            .then(
                challenge_fits,
                kind=("face",),
                a=(12, 15, 18, 20, 24, 30, 36, 40, 45, 48, 60, 72, 80, 90),
                b=(20, 25, 30, 40, 45, 50, 60, 80, 90, 120),
                c=(10, 12, 15, 16, 20, 25, 30, 40, 50, 60),
            ),
            only=lambda kind, *_: kind != "densest",
        ),
    }
    spaces = with_brief(spaces, BRIEF)

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
            return on_an_area(kind, *more[1:])
        if kind == "mixture":
            return mixture(*more)
        return densest(*more) if kind == "densest" else on_a_face(*more)

    def _plain(self, kind: str, stuff: int, volume: int) -> Draft:
        name, density = SOLIDS[stuff]
        mass, room = amount(density * volume // 100, "g"), amount(volume, "cm^3")
        rate, unit = amount(Fraction(density, 100), CM3), {"density": CM3, "mass": "g"}
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
        likely = wrong_amounts(
            unit.get(kind, "cm^3"),
            key_of(kind, density, volume),
            MISTAKES[kind],
            support_wrong(kind, density, volume),
        )
        return by_formula(text, shown, asked, key, say, likely, (kind, stuff, volume))

    def _block(self, a: int, b: int, c: int) -> Draft:
        name, density = SOLIDS[(a + b + c) % len(SOLIDS)]
        edges = [amount(edge, "cm") for edge in (a, b, c)]
        rate, volume = amount(Fraction(density, 100), CM3), amount(a * b * c, "cm^3")
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
                "g", key, (ADDS_EDGES, DIVIDES, LIKE_WATER), block_wrong(density, a, b, c)
            ),
            ("block", a, b, c),
        )

    def _kilograms(self, stuff: int, volume: int) -> Draft:
        name, density = SOLIDS[stuff]
        grams, room = amount(density * volume // 100, "g"), amount(volume, "cm^3")
        shown = amount(Fraction(density * volume, 100_000), "kg")
        rate = amount(Fraction(density, 100), CM3)
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
                CM3,
                Fraction(density, 100),
                (KILOGRAMS, HUNDRED, SUBTRACTS),
                kilograms_wrong(density, volume),
            ),
            ("kg", stuff, volume),
        )
