"""The volume of cuboids and cubes: from their edges, back to an edge, litres, boxes in a crate.

England's programme of study for key stage 3 (2013) asks pupils to "derive and apply formulae to
calculate and solve problems involving: [...] volume of cuboids (including cubes)" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators._turns import by_turns
from generators.geometry import _solid_mistakes as m
from generators.geometry._calculator import amount
from itembank.figures.kinds.solid.prism import Prism
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_FIND = ("Work out the volume of the {}.", "Find the volume of the {}.")
_RULE = "Multiply the length, the width and the height."
_TANKS = ("fish tank", "water tank", "glass tank", "rain tank")
_BOXES = (
    ("crate", "boxes of seeds"),
    ("crate", "boxes of bulbs"),
    ("carton", "boxes of screws"),
    ("cupboard", "boxes of paper"),
)
_EDGES = ("height", "width", "length")


def lying(a: int, b: int, c: int) -> tuple[int, int, int]:
    """Return the width, height and length of a cuboid that lies low; the sizes rise."""
    return by_turns(((c, a, b), (b, a, c), (c, b, a)), a + b + c)


def _volumes(a: int, b: int, c: int) -> tuple[int, ...]:
    return a * b * c, a + b + c, a * b, b * c, a * c, 2 * (a * b + b * c + c * a)


def _support(a: int, b: int, c: int, unit: str) -> bool:
    if (unit == "m" and c > 8) or (unit == "mm" and a < 5):
        return False
    if a == b == c:
        return a not in (2, 6)  # 2 + 2 + 2 is not 2 × 2 × 2, but 6 faces of 36 are 6 × 36
    return a < b < c and c <= 6 * a and len({*_volumes(a, b, c)}) == 6


def _core(kind: str, a: int, b: int, c: int) -> bool:
    if kind == "edge":
        apart = len({c, a * c, b * c, a * b * c - a - b}) == 4
        return a < b and a != c != b and apart and a * b * c % 3 == 0 and c <= 12
    if kind == "litres":  # in tens of centimetres but for one edge
        whole = a * b * c % 10 == 0
        return 2 <= a < b <= 8 and c in (20, 25, 30, 35, 45) and whole
    return kind == "cube" and a == b == c and c != 3


def _challenge(kind: str, a: int, b: int, c: int, k: int) -> bool:
    if kind == "fit":  # a × b × c boxes fit along the edges; each is k and so on
        fits = 2 <= a < b <= 6 and 3 <= c <= 5 and 4 <= k <= 11 and a != c != b
        return fits and a * b != a + b + c
    # k tens of litres in a tank that is 10a × 10b: c has no say
    depth = Fraction(10 * k, a * b)
    whole = (10 * depth) % 1 == 0 and 1 < depth <= 6 and 0 in (1000 * k % a, 1000 * k % b)
    return c == 2 and 3 <= a < b <= 9 and 2 <= k <= 30 and whole


@register
class VolumeOfCuboids(Topic):
    """From a figure; back to an edge, cubes, litres; boxes that fit, the depth of water."""

    id = "geometry.volume-of-cuboids"
    title = "Volume of cuboids"
    statements = ("geometry.formulae",)
    misconceptions = (
        m.EDGES_ADDED,
        m.ONE_FACE,
        m.SURFACE_FOR_VOLUME,
        m.DIVIDED_ONCE,
        m.SUBTRACTED_BACK,
        m.THIRD_FOR_ROOT,
        m.LITRE_AS_HUNDRED,
        m.ONE_LAYER,
        m.BOXES_ADDED,
    )
    prerequisites = ("geometry.area-of-rectangles",)
    spare = "Few crates of whole boxes, and depths of water with one decimal place, are not dull."
    spaces = {
        Tier.SUPPORT: Space(
            _support, a=range(2, 11), b=range(2, 13), c=range(2, 13), unit=("cm", "m", "mm")
        ),
        Tier.CORE: Space(
            _core,
            kind=("edge", "litres", "cube"),
            a=range(2, 13),
            b=range(2, 13),
            c=(*range(2, 13), 15, 20, 25, 30, 35, 40, 45),
        ),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=("fit", "deep"),
            a=range(2, 10),
            b=range(2, 10),
            c=range(2, 7),
            k=range(2, 31),
        ),
    }
    spaces = kinds.with_statements(spaces)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return self._drawn(*values)
        kind, *rest = values
        make = {"edge": self._edge, "litres": self._litres, "cube": self._cube}
        return make[kind](*rest) if tier is Tier.CORE else self._challenge(kind, *rest)

    def _drawn(self, a: int, b: int, c: int, unit: str) -> Draft:
        sizes = lying(a, b, c)
        edges = [amount(size, unit) for size in sizes]
        cube = f"{unit}^3"
        key = amount(a * b * c, cube)
        text = (by_turns(_FIND, a + b).format("cube" if a == b == c else "cuboid"),)
        figure = Prism("rectangle", *edges)
        w, h, _ = sizes
        face = amount(w * h, f"{unit}^2")
        return Draft(
            text,
            of_figure(figure, text),
            key,
            "quantity",
            (
                Step("Find the area of the front.", t.equals(t.times(*edges[:2]), face)),
                Step("Multiply by how far it goes back.", t.equals(t.times(face, edges[2]), key)),
            ),
            slips(
                (m.EDGES_ADDED, amount(a + b + c, cube)),
                (m.ONE_FACE, amount(w * h, cube)),
                (m.SURFACE_FOR_VOLUME, amount(2 * (a * b + b * c + c * a), cube)),
            ),
            ("drawn", a, b, c, unit),
            figure=figure,
        )

    def _edge(self, a: int, b: int, c: int) -> Draft:
        volume, first, other = amount(a * b * c, "cm^3"), amount(a, "cm"), amount(b, "cm")
        if (a + c) % 2:
            first, other = other, first
        wanted = by_turns(_EDGES, a + b + c)
        said = {
            "height": "{n} long and {k} wide",
            "width": "{n} long and {k} high",
            "length": "{n} wide and {k} high",
        }[wanted]
        face, key = amount(a * b, "cm^2"), amount(c, "cm")
        return Draft(
            prompt(
                f"A cuboid has a volume of {{v}}. It is {said}. Work out its {wanted}.",
                v=volume,
                n=first,
                k=other,
            ),
            Find(t.divide(volume, t.Bracket(t.times(first, other)))),
            key,
            "quantity",
            (
                Step(
                    "Multiply the two edges that are known.", t.equals(t.times(first, other), face)
                ),
                Step("Divide the volume by that.", t.equals(t.divide(volume, face), key)),
            ),
            slips(
                (m.DIVIDED_ONCE, amount(a * c, "cm")),
                (m.DIVIDED_ONCE, amount(b * c, "cm")),
                (m.SUBTRACTED_BACK, amount(a * b * c - a - b, "cm")),
            ),
            ("edge", a, b, c),
        )

    def _litres(self, a: int, b: int, c: int) -> Draft:
        edges = [amount(size, "cm") for size in (10 * b, 10 * a, c)]
        volume, key = amount(100 * a * b * c, "cm^3"), amount(Fraction(a * b * c, 10), "l")
        return Draft(
            prompt(
                f"A {by_turns(_TANKS, a + b + c)} is {{n}} long, {{k}} wide and {{h}} deep. "
                "How many litres of water fill it?",
                n=edges[0],
                k=edges[1],
                h=edges[2],
            ),
            Find(t.times(*edges)),
            key,
            "quantity",
            (
                Step(_RULE, t.equals(t.times(*edges), volume)),
                Step("A litre is 1000 cubic centimetres.", t.equals(volume, key)),
            ),
            slips(
                (m.LITRE_AS_HUNDRED, amount(a * b * c, "l")),
                (m.EDGES_ADDED, amount(10 * a + 10 * b + c, "l")),
            ),
            ("litres", a, b, c),
        )

    def _cube(self, a: int, b: int, c: int) -> Draft:
        volume, key = amount(c**3, "cm^3"), amount(c, "cm")
        return Draft(
            prompt("A cube has a volume of {v}. How long is each edge?", v=volume),
            Find(t.Root(volume, 3)),
            key,
            "quantity",
            (
                Step("Which number is multiplied by itself, and by itself again?"),
                Step("The edge is the cube root.", t.equals(t.Root(volume, 3), key)),
            ),
            slips(
                (
                    m.THIRD_FOR_ROOT,
                    t.Quantity(t.frac(c**3, 3), "cm") if c % 3 else amount(c**3 // 3, "cm"),
                ),
                (m.DIVIDED_ONCE, amount(c * c, "cm")),
            ),
            ("cube", c),
        )

    def _challenge(self, kind: str, a: int, b: int, c: int, k: int) -> Draft:
        return self._fit(a, b, c, k) if kind == "fit" else self._deep(a, b, k)

    def _fit(self, a: int, b: int, c: int, k: int) -> Draft:
        counts, box = (b, a, c), (k + 2, k, k - 1)
        large = [amount(count * size, "cm") for count, size in zip(counts, box, strict=True)]
        small = [amount(size, "cm") for size in box]
        crate, boxes = by_turns(_BOXES, a + b + c + k)
        key = t.Int(a * b * c)
        along = [
            t.equals(t.divide(whole, part), t.Int(count))
            for whole, part, count in zip(large, small, counts, strict=True)
        ]
        return Draft(
            prompt(
                f"A {crate} is {{a}} long, {{b}} wide and {{c}} high inside. It is filled with "
                f"{boxes}, each {{d}} long, {{e}} wide and {{f}} high. How many fit in?",
                **dict(zip("abcdef", (*large, *small), strict=True)),
            ),
            Find(t.divide(t.Bracket(t.times(*large)), t.Bracket(t.times(*small)))),
            key,
            "integer",
            (
                Step("How many fit along the length?", along[0]),
                Step("How many rows are there?", along[1]),
                Step("How many layers are there?", along[2]),
                Step("Multiply.", t.equals(t.times(*map(t.Int, counts)), key)),
            ),
            slips((m.ONE_LAYER, a * b), (m.BOXES_ADDED, a + b + c)),
            ("fit", a, b, c, k),
        )

    def _deep(self, a: int, b: int, k: int) -> Draft:
        water, long, wide = amount(10 * k, "l"), amount(10 * b, "cm"), amount(10 * a, "cm")
        volume, base = amount(10_000 * k, "cm^3"), amount(100 * a * b, "cm^2")
        key = amount(Fraction(100 * k, a * b), "cm")
        return Draft(
            prompt(
                f"The bottom of a {by_turns(_TANKS, a + b + k)} is {{n}} long and {{k}} "
                "wide. {w} of water is poured in. How deep is the water, in centimetres?",
                n=long,
                k=wide,
                w=water,
            ),
            Find(t.divide(water, t.Bracket(t.times(long, wide)))),
            key,
            "quantity",
            (
                Step("A litre is 1000 cubic centimetres.", t.equals(water, volume)),
                Step("Find the area of the bottom.", t.equals(t.times(long, wide), base)),
                Step("Divide the volume by that.", t.equals(t.divide(volume, base), key)),
            ),
            slips(
                (m.LITRE_AS_HUNDRED, amount(Fraction(10 * k, a * b), "cm")),
                (m.DIVIDED_ONCE, amount(1000 * k // b, "cm") if 1000 * k % b == 0 else None),
                (m.DIVIDED_ONCE, amount(1000 * k // a, "cm") if 1000 * k % a == 0 else None),
            ),
            ("deep", a, b, k),
        )
