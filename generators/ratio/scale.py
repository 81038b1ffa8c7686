"""Scale drawings: lengths on a plan and real lengths."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators._in_figures import in_figures
from generators.ratio._parts import amount, whole_ratio
from generators.ratio._plans_drawn import drawn_plan, plan_fits, to_real
from generators.ratio._scale_in_brief import BRIEF
from generators.ratio._scale_mistakes import (
    ADDS,
    CM_AS_M,
    DIVIDES,
    M_AS_CM,
    MULTIPLIES,
    REAL,
    SCALES_SWAPPED,
    THOUSAND,
    UNITS_IGNORED,
)
from itembank.items import kinds
from itembank.items.forms.form_rules import decimal_node
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.kinds import line_edits as e
from itembank.items.kinds.brief import with_brief
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_X, _R = t.Sym("x"), t.Sym("r")
_ONE_N = t.Ratio((t.Int(1), t.Sym("n")))
# What may be that long: up to 8 m, 50 m, 1 km, and more.
_THINGS = ((8, "flower bed", "shed"), (50, "pool", "bus garage"), (1000, "path", "fence"))
_LONG = ("bus route", "river")


def _thing(metres: Fraction | int) -> str:
    """Return something that may be that many metres long."""
    kind = int(metres) % 2
    return next((two[kind] for most, *two in _THINGS if metres <= most), _LONG[kind])


def _keep_stands(metres: int, halves: int) -> bool:
    # 2 × 2 = 2 + 2 and 1.5 × 3 = 1.5 + 3 would hide the slip of adding.
    return (halves - 2) * (metres - 1) != 2


def _keep_length(scale: int, halves: int, back: int) -> bool:
    # A real length is a whole number of centimetres.
    return 300 <= scale * halves <= 20_000 and scale * halves % 2 == 0


def _keep_challenge(halves: int, scale: int, second_scale: int) -> bool:
    # `other` 0 asks for the scale; otherwise it is the scale of a second plan.
    if second_scale == 0:
        return halves % 2 == 0
    # Both plans have to fit on a sheet of paper.
    return (
        second_scale != scale <= 500
        and scale * halves % second_scale == 0
        and scale * halves <= 60 * second_scale
    )


@register
class Scale(Topic):
    """1 cm stands for some metres; then 1 : n both ways; then the scale, or two plans."""

    id = "ratio.scale"
    title = "Scale drawings"
    statements = ("ratio.scale",)
    misconceptions = (
        ADDS,
        DIVIDES,
        MULTIPLIES,
        SCALES_SWAPPED,
        CM_AS_M,
        M_AS_CM,
        UNITS_IGNORED,
        THOUSAND,
        REAL,
    )
    prerequisites = ("ratio.unit-form",)
    spaces = {
        Tier.SUPPORT: kinds.with_given_answers(
            Space(_keep_stands, metres=(2, 4, 5, 8, 10, 20, 25, 50), halves=range(4, 34))
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(
                _keep_length,
                scale=(20, 25, 40, 50, 100, 125, 200, 250, 400, 500),
                halves=range(4, 31),
                back=(0, 1),
            ).also(
                drawn_plan,
                plan_fits,
                scale=(40, 50, 80, 100, 200, 250, 400, 500),
                long=range(10, 21, 2),
                wide=range(5, 17),
                side=(0, 1),
            )
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(
                _keep_challenge,
                halves=range(4, 31),
                scale=(
                    50,
                    100,
                    200,
                    250,
                    400,
                    500,
                    1250,
                    1500,
                    2500,
                    4000,
                    12_500,
                    20_000,
                    25_000,
                ),
                other=(0, 20, 25, 40, 50, 100, 125, 200, 250),
            )
        ),
    }
    spaces = kinds.with_working_spotted(
        spaces, "ratio.scale", kinds.working_goes_wrong({MULTIPLIES: (e.turned,)})
    )
    spaces = with_brief(spaces, BRIEF)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return self._stands(*values)
        if tier is Tier.CORE:
            return self._length(*values)
        halves, scale, other = values
        if other:
            return self._two_plans(halves, scale, other)
        return self._find_scale(halves // 2, scale)

    def _stands(self, metres: int, halves: int) -> Draft:
        length = Fraction(halves, 2)
        on_plan, thing = amount(length, "cm"), _thing(length * metres)
        unit, each, key = amount(1, "cm"), amount(metres, "m"), amount(length * metres, "m")
        return Draft(
            prompt=prompt(
                f"On a plan, {{u}} stands for {{e}}. A {thing} is {{n}} long on the plan. "
                "How long is it really, in metres?",
                u=unit,
                e=each,
                n=on_plan,
            ),
            ask=Find(_X, (t.equals(t.Ratio((unit, on_plan)), t.Ratio((each, _X))),)),
            key=key,
            form="quantity",
            steps=(
                Step(
                    "Each centimetre stands for the same length, so multiply.",
                    t.equals(t.times(decimal_node(length), each), key),
                ),
            ),
            slips=slips(
                (ADDS, amount(length + metres, "m")), (DIVIDES, amount(length / metres, "m"))
            ),
            twin=("stands", metres, halves),
        )

    def _length(self, scale: int, halves: int, back: int) -> Draft:
        length = Fraction(halves, 2)
        thing = _thing(length * scale / 100)
        on_plan, shown = amount(length, "cm"), whole_ratio(1, scale)
        metres = length * scale / 100
        real, real_cm = amount(metres, "m"), amount(length * scale, "cm")
        if back:
            return Draft(
                prompt=prompt(
                    f"A plan has the scale {{r}}. A {thing} is really {{n}} long. "
                    "How long is it on the plan, in centimetres?",
                    r=shown,
                    n=real,
                ),
                ask=Find(_X, (t.equals(t.Ratio((_X, real)), shown),)),
                key=on_plan,
                form="quantity",
                steps=(
                    Step("Change metres to centimetres.", t.equals(real, real_cm)),
                    Step(
                        f"Lengths on the plan are {in_figures(scale)} times smaller, so divide.",
                        t.equals(t.divide(real_cm, t.Int(scale)), on_plan),
                    ),
                ),
                slips=slips(
                    (M_AS_CM, amount(metres / scale, "cm")),
                    (THOUSAND, amount(length * 10, "cm")),
                    (MULTIPLIES, amount(length * scale * scale, "cm")),
                ),
                twin=("length", scale, halves, back),
            )
        return Draft(
            prompt=prompt(
                f"A plan has the scale {{r}}. A {thing} is {{n}} long on the plan. "
                "How long is it really, in metres?",
                r=shown,
                n=on_plan,
            ),
            ask=Find(_X, (t.equals(t.Ratio((on_plan, _X)), shown),)),
            key=real,
            form="quantity",
            steps=to_real(scale, on_plan, real_cm, real),
            slips=slips(
                (CM_AS_M, amount(length * scale, "m")), (THOUSAND, amount(metres / 10, "m"))
            ),
            twin=("length", scale, halves, back),
        )

    def _find_scale(self, length: int, scale: int) -> Draft:
        size, unit = (100, "m") if scale * length < 200_000 else (100_000, "km")
        distance = Fraction(length * scale, size)
        thing = _thing(length * scale // 100)
        sheet = "map" if thing in _LONG else "plan"
        on_plan, real = amount(length, "cm"), amount(distance, unit)
        real_cm, shown = amount(length * scale, "cm"), t.Ratio((on_plan, real))
        alike, bare = t.Ratio((on_plan, real_cm)), whole_ratio(length, length * scale)
        key = whole_ratio(1, scale)
        return Draft(
            prompt=prompt(
                f"A {thing} is really {{n}} long. On a {sheet} it is {{p}} long. "
                f"Write the scale of the {sheet} in the form {{f}}.",
                n=real,
                p=on_plan,
                f=_ONE_N,
            ),
            ask=Find(shown),
            key=key,
            form="one-to-n",
            steps=(
                Step(f"Write the length on the {sheet} first, then the real length.", shown),
                Step("Write both lengths in centimetres.", t.equals(shown, alike)),
                Step("The units are now the same, so leave them out.", t.equals(alike, bare)),
                Step(f"Divide both parts by {length}.", t.equals(bare, key)),
            ),
            slips=slips(
                (UNITS_IGNORED, t.Ratio((t.Int(1), decimal_node(distance / length)))),
                (THOUSAND, whole_ratio(1, scale * 10)),
            ),
            twin=("scale", scale, length),
        )

    def _two_plans(self, halves: int, scale: int, second_scale: int) -> Draft:
        length = Fraction(halves, 2)
        thing = _thing(length * scale / 100)
        first, second = whole_ratio(1, scale), whole_ratio(1, second_scale)
        on_plan, real = amount(length, "cm"), amount(length * scale, "cm")
        key = amount(length * scale / second_scale, "cm")
        return Draft(
            prompt=prompt(
                f"A {thing} is {{n}} long on a plan with the scale {{p}}. "
                "How long is it on a plan with the scale {q}, in centimetres?",
                n=on_plan,
                p=first,
                q=second,
            ),
            ask=Find(
                _X, (t.equals(t.Ratio((on_plan, _R)), first), t.equals(t.Ratio((_X, _R)), second))
            ),
            key=key,
            form="quantity",
            steps=(
                Step(
                    "Multiply to find the real length.",
                    t.equals(t.times(t.Int(scale), on_plan), real),
                ),
                Step(
                    f"Lengths on the second plan are {in_figures(second_scale)} times smaller than "
                    "real: divide.",
                    t.equals(t.divide(real, t.Int(second_scale)), key),
                ),
            ),
            slips=slips(
                (SCALES_SWAPPED, amount(length * second_scale / scale, "cm")), (REAL, real)
            ),
            twin=("plans", scale, second_scale, halves),
        )
