"""Writing a ratio in the form 1 : n or n : 1."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators.ratio._parts import METRIC, amount, unit_name, whole_ratio
from itembank.items import kinds
from itembank.items.forms.form_rules import decimal_node
from itembank.items.item import Draft, Find, Misconception, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

FLIPPED = Misconception(
    "ratio.unit-flipped",
    "finds n, but writes it on the wrong side of the 1",
    "Read the form aloud. Which part has to be 1: the first or the second?",
)
ONE_ONLY = Misconception(
    "ratio.unit-one-part",
    "changes the part that has to be 1 and leaves the other as it was",
    "What did you divide one part by? What has to happen to the other part?",
)
TAKES_AWAY = Misconception(
    "ratio.unit-takes-away",
    "takes the same number from both parts to get to 1",
    "2 cups of rice need 4 cups of water. How much does 1 cup need? What does your method say?",
)
UNITS_LOST = Misconception(
    "ratio.unit-units-ignored",
    "divides the numbers without making the units the same",
    "Are the two amounts in the same unit? What has to be done before you divide?",
)

_ONE_N = t.Ratio((t.Int(1), t.Sym("n")))
_N_ONE = t.Ratio((t.Sym("n"), t.Int(1)))


def _keep_decimal(divisor: int, other: int, last: int) -> bool:
    # N is more than 1 and no whole number.
    return other > divisor and other % divisor != 0


def _keep_units(kind: tuple[str, str, int], twentieths: int, halves: int) -> bool:
    # Equal numbers of hundredths would make the two slips meet.
    return twentieths != halves


def _pair(unit: t.Node, n: t.Node, last: int) -> t.Ratio:
    """Return the two parts in order: the part that becomes 1 comes last where `last` is 1."""
    return t.Ratio((n, unit)) if last else t.Ratio((unit, n))


@register
class UnitForm(Topic):
    """n a whole number; then a decimal; then amounts in different units."""

    id = "ratio.unit-form"
    title = "Writing a ratio in the form 1 : n or n : 1"
    statements = ("ratio.notation",)
    misconceptions = (FLIPPED, ONE_ONLY, TAKES_AWAY, UNITS_LOST)
    prerequisites = ("ratio.simplest-form",)
    spaces = {
        Tier.SUPPORT: kinds.with_claims_and_matches(
            Space(None, divisor=range(2, 13), n=range(2, 13), last=(0, 1))
        ),
        Tier.CORE: kinds.with_claims_and_matches(
            Space(_keep_decimal, divisor=(2, 4, 5, 8, 10, 20), other=range(3, 42), last=(0, 1))
        ),
        Tier.CHALLENGE: kinds.with_claims_and_matches(
            Space(_keep_units, kind=METRIC, twentieths=(2, 4, 5, 8, 16, 25), halves=range(3, 16))
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.CHALLENGE:
            return self._units(*values)
        divisor, other, last = values
        if tier is Tier.SUPPORT:
            other *= divisor
        return self._numbers(divisor, other, last)

    def _numbers(self, divisor: int, other: int, last: int) -> Draft:
        n = decimal_node(Fraction(other, divisor))
        shown, key = _pair(t.Int(divisor), t.Int(other), last), _pair(t.Int(1), n, last)
        place = "second" if last else "first"
        divided = _pair(
            t.Frac(t.Int(divisor), t.Int(divisor)), t.Frac(t.Int(other), t.Int(divisor)), last
        )
        return Draft(
            prompt=prompt("Write {r} in the form {f}.", r=shown, f=_N_ONE if last else _ONE_N),
            ask=Find(shown),
            key=key,
            form="n-to-one" if last else "one-to-n",
            steps=(
                Step(
                    f"Divide both parts by {divisor}, so that the {place} part is 1.",
                    t.equals(shown, divided),
                ),
                Step("Work out each part.", t.equals(divided, key)),
            ),
            slips=slips(
                (ONE_ONLY, _pair(t.Int(1), t.Int(other), last)),
                (TAKES_AWAY, _pair(t.Int(1), t.Int(other - divisor + 1), last)),
                (FLIPPED, _pair(n, t.Int(1), last)),
            ),
            twin=(divisor, other, last),
        )

    def _units(self, kind: tuple[str, str, int], twentieths: int, halves: int) -> Draft:
        small, large, size = kind
        few, many = twentieths * size // 20, Fraction(halves, 2)
        last = (twentieths + halves) % 2
        same = halves * size // 2
        n, plain = decimal_node(Fraction(same, few)), decimal_node(many / few)
        shown = _pair(amount(few, small), amount(many, large), last)
        key = _pair(t.Int(1), n, last)
        alike = _pair(amount(few, small), amount(same, small), last)
        bare = whole_ratio(same, few) if last else whole_ratio(few, same)
        divided = _pair(t.Frac(t.Int(few), t.Int(few)), t.Frac(t.Int(same), t.Int(few)), last)
        wrong = [
            (FLIPPED, _pair(n, t.Int(1), last)),
            (ONE_ONLY, _pair(t.Int(1), t.Int(same), last)),
        ]
        # Nobody writes a recurring decimal where numbers of two units are divided.
        if not (isinstance(plain, t.Dec) and plain.recurring):
            wrong.insert(0, (UNITS_LOST, _pair(t.Int(1), plain, last)))
        return Draft(
            prompt=prompt(
                "Write {r} in the form {f}, without units.", r=shown, f=_N_ONE if last else _ONE_N
            ),
            ask=Find(shown),
            key=key,
            form="n-to-one" if last else "one-to-n",
            steps=(
                Step(f"Write both amounts in {unit_name(small)}.", t.equals(shown, alike)),
                Step("The units are now the same, so leave them out.", t.equals(alike, bare)),
                Step(f"Divide both parts by {few}.", t.equals(bare, divided)),
                Step("Work out each part.", t.equals(divided, key)),
            ),
            slips=slips(*wrong),
            twin=("units", small, twentieths, halves),
        )
