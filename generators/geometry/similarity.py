"""Similar shapes: a missing side by the scale factor, both ways; shadows, nested triangles.

England's programme of study for key stage 3 (2013) asks pupils to "identify and construct
congruent triangles, and construct similar shapes by enlargement" and to use scale factors (from
memory).
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from typing import Any

from generators._turns import by_turns
from generators.geometry import _similar_mistakes as m
from generators.geometry._calculator import amount
from generators.geometry._enlarged_told import with_lengths
from generators.geometry._similar_nested import is_short, nested_base, rest_of_side, shadow
from itembank.items import kinds
from itembank.items.forms.form_rules import decimal_node
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.kinds import line_edits as e
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_FACTORS = tuple(Fraction(n, 20) for n in (30, 50, 70, 90, 25, 24, 28, 32))
_LETTERS = (("ABC", "PQR"), ("ABC", "DEF"), ("KLM", "XYZ"), ("PQR", "STU"))
_RECTANGLES = ("rectangles", "photos", "flags", "posters")
_SAME = "Lengths of similar shapes are all multiplied by the same scale factor."


def _support(k: int, a: int, b: int, back: bool) -> bool:
    apart = len({b * k, b + a * k - a, k}) == 3 if not back else b * k != a * k - a
    return a < b <= 3 * a and apart and a * k <= 60 and (a + b + k) % 2 == 0 and b != k


def _core(kind: str, factor: int, a: int, b: int) -> bool:
    f = _FACTORS[factor]
    first, other = a * f, b * f
    whole = first.denominator == 1 and (2 * other).denominator == 1
    apart = a != b and other != b + first - a
    if kind == "perimeter":
        return whole and apart and 3 <= a <= 12 and 2 * a + 2 < b and b % 6 == 0 and b > 14
    return whole and apart and 3 <= a <= 16 and 3 <= b <= 16 and (a + b + factor) % 2 == 0


def _challenge(kind: str, a: int, b: int, c: int) -> bool:
    if kind == "shadow":  # a post of a tenths has a shadow of b tenths; a tree's is c tenths
        fits = 10 <= a <= 24 and 8 <= b <= 30 and 30 <= c <= 90 and c >= 2 * b and a != b
        if not fits or a * c % b or (a + b + c) % 6:
            return False
        height = Fraction(a * c, b)
        apart = (
            c - b + a != height
            and is_short(Fraction(c, b))
            and Fraction(c, b) not in (height / 10, Fraction(a + c - b, 10))
        )
        return 25 <= height <= 120 and apart
    if kind == "rest":  # a on the side of the small triangle, b on its base, c on the large one's
        fits = 3 <= a <= 12 and 3 <= b <= 15 and b < c <= 40 and a != b
        if not fits or a * c % b or (a + b + c) % 2:
            return False
        side = Fraction(a * c, b)
        gap = {side - a, side, Fraction(a + c - b), Fraction(c - b)}
        return is_short(Fraction(c, b)) and len(gap) == 4
    # nested: the small triangle has a on the side and c on the base; b is the rest of the side
    fits = kind == "nested" and 2 <= a <= 12 and 2 <= b <= 15 and 3 <= c <= 15 and a != b
    if not fits or b * c % a:
        return False
    base = Fraction((a + b) * c, a)
    wrong = {Fraction(b * c, a), Fraction(c + b), base}
    return is_short(Fraction(b, a)) and len(wrong) == 3 and base <= 60


@register
class Similarity(Topic):
    """Whole scale factors; halves and fifths, perimeters; shadows and nested triangles."""

    id = "geometry.similarity"
    title = "Similar shapes"
    statements = ("geometry.similarity", "ratio.scale")
    misconceptions = (
        m.ADDITIVE,
        m.INVERSE,
        m.FACTOR_ONLY,
        m.PERIMETER_AS_AREA,
        m.PART_FOR_WHOLE,
        m.REST_ONLY,
        m.WHOLE_FOR_REST,
    )
    spaces = {
        Tier.SUPPORT: Space(
            _support, k=range(2, 7), a=range(2, 13), b=range(3, 16), back=(False, True)
        ),
        Tier.CORE: Space(
            _core,
            kind=("triangles", "perimeter"),
            factor=range(len(_FACTORS)),
            a=range(3, 17),
            b=range(3, 41),
        ),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=("shadow", "nested", "rest"),
            a=range(2, 25),
            b=range(2, 31),
            c=range(3, 91),
        ),
    }
    spaces = kinds.with_statements(spaces)
    spaces = kinds.with_working_spotted(
        spaces,
        "geometry.similarity",
        kinds.working_goes_wrong({m.INVERSE: (e.turned,), m.WHOLE_FOR_REST: (e.cut_short,)}),
    )
    spaces = with_lengths(spaces)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return self._rectangles(*values)
        kind, *rest = values
        make: dict[str, Callable[..., Draft]] = {
            "triangles": self._triangles,
            "perimeter": self._perimeter,
            "shadow": shadow,
            "nested": nested_base,
            "rest": rest_of_side,
        }
        return make[kind](*rest)

    def _rectangles(self, k: int, a: int, b: int, back: bool) -> Draft:
        things = by_turns(_RECTANGLES, a + b + k)
        small, large = (
            (amount(a, "cm"), amount(b, "cm")),
            (amount(a * k, "cm"), amount(b * k, "cm")),
        )
        first, second = (large, small) if back else (small, large)
        other, key = first[1], second[1]
        factor = t.Int(k)
        found = t.equals(t.divide(large[0], small[0]), factor)
        if back:
            target = t.divide(other, t.Bracket(t.divide(large[0], small[0])))
            last = Step(
                "The second one is smaller, so divide by it.",
                t.equals(t.divide(other, factor), key),
            )
            wrong = [
                (m.ADDITIVE, amount(b * k - a * k + a, "cm") if b * k > a * k - a else None),
                (m.INVERSE, amount(b * k * k, "cm")),
                (m.FACTOR_ONLY, amount(k, "cm")),
            ]
        else:
            target = t.times(other, t.Bracket(t.divide(large[0], small[0])))
            last = Step("Multiply by it.", t.equals(t.times(factor, other), key))
            wrong = [
                (m.ADDITIVE, amount(b + a * k - a, "cm")),
                (m.INVERSE, amount(Fraction(b, k), "cm") if b % k == 0 else None),
                (m.FACTOR_ONLY, amount(k, "cm")),
            ]
        return Draft(
            prompt(
                f"Two {things} are similar. The first is {{a}} wide and {{b}} long. "
                "The second is {c} wide. How long is it?",
                a=first[0],
                b=other,
                c=second[0],
            ),
            Find(target),
            key,
            "quantity",
            (Step(_SAME + " Find it from the widths.", found), last),
            slips(*wrong),
            ("rectangles", k, a, b, back),
        )

    def _triangles(self, factor: int, a: int, b: int) -> Draft:
        f = _FACTORS[factor]
        first, second = by_turns(_LETTERS, a + b + factor)
        small, large = amount(a, "cm"), amount(a * f, "cm")
        shown, wanted = amount(b, "cm"), amount(b * f, "cm")
        # By turns the larger triangle's side is asked for, and the smaller one's.
        up = (a + b) % 4 < 2
        if not up:
            shown, wanted = wanted, shown
        known, asked = (first, second) if up else (second, first)
        scale = decimal_node(f)
        ratio = t.Bracket(t.divide(large, small))
        target = t.times(shown, ratio) if up else t.divide(shown, ratio)
        last = (
            Step("Multiply by it.", t.equals(t.times(scale, shown), wanted))
            if up
            else Step(
                "The other one is smaller, so divide by it.",
                t.equals(t.divide(shown, scale), wanted),
            )
        )
        gap = a * f - a
        value, given = (b * f, Fraction(b)) if up else (Fraction(b), b * f)
        added = given + gap if up else given - gap
        turned = given / f if up else given * f
        return Draft(
            prompt(
                f"Triangles {first} and {second} are similar, with the corners in that order. "
                f"{first[:2]} is {{a}}, {second[:2]} is {{b}} and {known[1:]} is {{c}}. "
                f"Work out the length of {asked[1:]}.",
                a=small,
                b=large,
                c=shown,
            ),
            Find(target),
            wanted,
            "quantity",
            (
                Step(
                    f"{second[:2]} goes with {first[:2]}: find the scale factor.",
                    t.equals(t.divide(large, small), scale),
                ),
                last,
            ),
            slips(
                (m.ADDITIVE, amount(added, "cm") if added > 0 and added != value else None),
                (m.INVERSE, amount(turned, "cm") if is_short(turned) else None),
                (m.FACTOR_ONLY, amount(f, "cm") if f != value else None),
            ),
            ("triangles", factor, a, b),
        )

    def _perimeter(self, factor: int, a: int, b: int) -> Draft:
        f = _FACTORS[factor]
        small, large = amount(a, "cm"), amount(a * f, "cm")
        around, key, scale = amount(b, "cm"), amount(b * f, "cm"), decimal_node(f)
        return Draft(
            prompt(
                "A side of a shape is {a} long. In a similar shape, the side that goes with it is "
                "{b} long. The perimeter of the first shape is {c}. Work out the perimeter of the "
                "second.",
                a=small,
                b=large,
                c=around,
            ),
            Find(t.times(around, t.Bracket(t.divide(large, small)))),
            key,
            "quantity",
            (
                Step("Find the scale factor.", t.equals(t.divide(large, small), scale)),
                Step(
                    "A perimeter is a length, so multiply by it.",
                    t.equals(t.times(scale, around), key),
                ),
            ),
            slips(
                (m.ADDITIVE, amount(b + a * f - a, "cm")),
                (m.PERIMETER_AS_AREA, amount(b * f * f, "cm")),
                (m.FACTOR_ONLY, amount(f, "cm")),
            ),
            ("perimeter", factor, a, b),
        )
