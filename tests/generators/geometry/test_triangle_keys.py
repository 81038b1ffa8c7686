"""Right-angled and similar triangles: keys found again in ball arithmetic from the print alone."""

from __future__ import annotations

import random
import re
from itertools import islice

import pytest

from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_topic
from itembank.items.topics.space_part import is_other_kind
from itembank.notation import line
from tests.balls import arb
from tests.depth import cases, whole
from tests.generators.asked_plainly import plain
from tests.generators.geometry.measured_again import Solver, Worth, after, amounts, holds, text_of

pytestmark = whole
EACH = cases(16, 50, 30)


def pythagoras(text: str) -> Worth:
    given = amounts(text)
    if "isosceles" in text:
        side, base = given
        return Worth(base / 2 * (side**2 - (base / 2) ** 2).sqrt(), 2)
    if "diagonal of a rectangle is" in text:
        whole, side = given
        return Worth(side * (whole**2 - side**2).sqrt(), 2)
    if "straight across" in text:
        a, b = given
        return Worth(a + b - (a * a + b * b).sqrt(), 1)
    if "leans" in text or "The longest side of" in text:
        long, other = given
        return Worth((long**2 - other**2).sqrt(), 1)
    assert "hypotenuse" in text or "longest side." in text or "diagonal?" in text
    a, b = given
    return Worth((a * a + b * b).sqrt(), 1)


def similar(text: str) -> Worth:
    given = amounts(text)
    if "shadow" in text:
        high, shade, long = given
        more = high if "How much taller" in text else 0
        return Worth(high / shade * long - more, 1)
    if "DE is parallel to BC" in text:
        if "length of BC" in text:
            side, rest, base = given
            return Worth(base * (side + rest) / side, 1)
        side, small, large = given
        assert "length of DB" in text
        return Worth(side * (large - small) / small, 1)
    if "perimeter" in text:
        first, second, around = given
        return Worth(around * second / first, 1)
    if "Triangles" in text:
        found = re.search(r"Triangles (\w{3}) and (\w{3}) are similar", text)
        named = dict(re.findall(r"(\b[A-Z]{2}\b) is (\d+(?:\.\d+)? cm)", text))
        asked = re.search(r"length of (\w\w)\.", text)
        assert found
        assert asked
        lengths = {name: amounts(size)[0] for name, size in named.items()}
        one, two = found.groups()
        factor = lengths[two[:2]] / lengths[one[:2]]
        if asked[1] == two[1:]:
            return Worth(lengths[one[1:]] * factor, 1)
        assert asked[1] == one[1:]
        return Worth(lengths[two[1:]] / factor, 1)
    wide, long, other = given
    return Worth(long * other / wide, 1)


def areas(text: str) -> Worth:
    given = amounts(text)
    if "plan" in text:
        scale = re.search(r"1 : (\d+)", text)
        assert scale
        return Worth(given[0] * int(scale[1]) ** 2, 2)
    if "What is the scale factor" in text or "What is its scale factor" in text:
        return Worth((given[1] / given[0]).sqrt())
    if "have areas" in text:
        small, large, side = given
        return Worth(side * (large / small).sqrt(), 1)
    if factor := re.search(r"(?:scale factor(?: of)?|are multiplied by) (\d+)", text):
        return Worth(given[0] * int(factor[1]) ** 2, 2)
    first, area, second = given
    return Worth(area * (second / first) ** 2, 2)


def turn(degrees: arb) -> arb:
    return degrees * arb.pi() / 180


def trigonometry(text: str) -> Worth:
    given = amounts(text)
    if "someone sees" in text:
        far, angle, eyes = given
        return Worth(far * turn(angle).sin() / turn(angle).cos() + eyes, 1)
    if "higher than its foot" in text:
        long, rise = given
        return Worth((rise / long).asin() * 180 / arb.pi())
    if "of an acute angle is" in text:
        found = re.search(r"The (sine|cosine|tangent) of an acute angle is (0\.\d+)\.", text)
        assert found
        undo = {"sine": arb.asin, "cosine": arb.acos, "tangent": arb.atan}[found[1]]
        return Worth(undo(arb(found[2])) * 180 / arb.pi())
    if "leans against a wall" in text:
        long, foot = given
        return Worth(((long**2 - foot**2).sqrt() / foot).atan() * 180 / arb.pi())
    if "from its foot" in text:
        high, far = given
        return Worth((high / (high**2 + far**2).sqrt()).asin() * 180 / arb.pi())
    if "angle between the equal sides" in text:
        side, third = given
        cosine = 1 - third**2 / (2 * side**2)  # by the cosine rule, as below
        return Worth(cosine.acos() * 180 / arb.pi())
    if "isosceles" in text:
        side, angle = given
        # By the cosine rule, which the working does not use.
        return Worth((2 * side * side * (1 - turn(angle).cos())).sqrt(), 1)
    if "Work out the angle." in text:
        first, second = given
        if "opposite" not in text:
            return Worth((first / second).acos() * 180 / arb.pi())
        undone = (first / second).atan() if "adjacent" in text else (first / second).asin()
        return Worth(undone * 180 / arb.pi())
    angle, side = turn(given[0]), given[1]
    known = re.search(r"\. The (hypotenuse|side adjacent|side opposite)", text)
    asked = re.search(r"length of the (hypotenuse|side adjacent|side opposite)", text)
    assert known
    assert asked
    # With the hypotenuse as 1.
    lengths = {"hypotenuse": arb(1), "side adjacent": angle.cos(), "side opposite": angle.sin()}
    return Worth(side / lengths[known[1]] * lengths[asked[1]], 1)


def drawn(text: str) -> Worth:
    """Solve a right-angled triangle from the words of its picture, by its two acute angles."""
    asked, _, seen = text.partition("[")
    (right,) = re.findall(r"The angle at (\w) is a right angle", seen)
    first, other = [
        letter for letter in re.findall(r"orners (\w), (\w) and (\w)", seen)[0] if letter != right
    ]
    sides = {
        frozenset(ends): size
        for ends, size in re.findall(r"Side (\w\w) is (\w+(?:\.\d+)?(?: \w+)?)", seen)
    }
    known = {ends: amounts(size)[0] for ends, size in sides.items() if size[0].isdigit()}
    slope, leg, wall = (frozenset(ends) for ends in (first + other, first + right, other + right))
    told = re.search(rf"angle at ({first}|{other}) is (\d+)", seen)
    if told is not None:
        angle = turn(arb(int(told[2])))
        angle = angle if told[1] == first else turn(arb(90)) - angle
    elif slope not in known:
        angle = (known[wall] / known[leg]).atan()
    elif leg in known:
        angle = (known[leg] / known[slope]).acos()
    else:
        angle = (known[wall] / known[slope]).asin()
    parts = {slope: arb(1), leg: angle.cos(), wall: angle.sin()}
    if corner := re.search(r"angle (?:\w(\w)\w|(\w))\.", asked):
        labelled = re.search(rf"angle at (\w) is {corner[2]}\b", seen)
        at = corner[1] or (labelled[1] if labelled else "")
        assert at in (first, other)
        return Worth((angle if at == first else turn(arb(90)) - angle) * 180 / arb.pi())
    named = re.search(r"length of (\w\w)|How long is (\w\w)|(?:length|value of) (\w)\b", asked)
    assert named
    wanted = frozenset(named[1] or named[2] or "")
    if named[3]:
        (wanted,) = (ends for ends, size in sides.items() if size == named[3])
    assert wanted not in known
    (given, size), *_ = known.items()
    return Worth(size / parts[given] * parts[wanted], 1)


SOLVERS: dict[str, Solver] = {
    "geometry.trigonometry": trigonometry,
    "geometry.similarity": similar,
    "geometry.scale-factors-area": areas,
    "geometry.pythagoras": pythagoras,
}


def by_sign(item: Item) -> bool:
    """Hold a question for a sign to whole numbers; tell whether it is one."""
    found = re.search(r"between (\d+)\^2 \+ (\d+)\^2 and (\d+)\^2", text_of(item))
    if not found:
        return False
    a, b, c = map(int, found.groups())
    sign = {-1: "<", 0: "=", 1: ">"}[(a * a + b * b > c * c) - (a * a + b * b < c * c)]
    assert line(item.key) == f"{a}^2 + {b}^2 {sign} {c}^2"
    # These are the sides of a triangle, the longest of them on its own.
    sides = re.search(r"sides of (\d+) cm, (\d+) cm and (\d+) cm", text_of(item))
    assert sides
    assert sides.groups() == found.groups()
    assert a < b < c < a + b
    return True


@pytest.mark.parametrize("topic", SOLVERS)
@pytest.mark.parametrize("tier", list(Tier))
def test_a_key_is_found_again_from_the_words(topic: str, tier: Tier) -> None:
    source = find_topic(topic)
    own = plain(source, tier)
    for index in random.Random(f"{topic}/{tier}").sample(own, EACH):
        item = source.item(tier, index)
        if not by_sign(item):
            solver = SOLVERS[topic] if item.figure is None else drawn
            holds(item, solver(text_of(item)))


@pytest.mark.parametrize(
    ("topic", "tier"),
    [
        ("geometry.pythagoras", Tier.SUPPORT),
        ("geometry.pythagoras", Tier.CORE),
        ("geometry.trigonometry", Tier.SUPPORT),
        ("geometry.trigonometry", Tier.CORE),
    ],
)
def test_a_key_is_found_again_from_the_words_of_its_picture(topic: str, tier: Tier) -> None:
    source = find_topic(topic)
    size = len(source.spaces[tier])
    shuffled = (
        source.item(tier, k) for k in random.Random(f"{topic}/{tier}").sample(range(size), size)
    )
    with_picture = (
        item for item in shuffled if item.figure is not None and item.form != "true-or-false"
    )
    for item in islice(with_picture, EACH):
        holds(item, drawn(text_of(item)))


@pytest.mark.parametrize(
    ("tier", "makers"),
    [
        (Tier.SUPPORT, ["_angle_of_ratio"]),
        (Tier.CORE, ["_of_sides", "_drawn"]),
        (Tier.CHALLENGE, ["_ladder", "_seen", "_between_equal"]),
    ],
)
def test_each_way_to_ask_for_the_nearest_degree_is_found_again(
    tier: Tier, makers: list[str]
) -> None:
    source = find_topic("geometry.trigonometry")
    made: dict[str, list[int]] = {name: [] for name in makers}
    for index, point in enumerate(source.spaces[tier]):
        name = point[0].make.__name__ if is_other_kind(point) else ""
        if name in made:
            made[name].append(index)
    for name, indices in made.items():
        for index in random.Random(name).sample(indices, min(3 * EACH, len(indices))):
            item = source.item(tier, index)
            assert "to the nearest degree." in text_of(item)
            holds(item, (trigonometry if item.figure is None else drawn)(text_of(item)))


def test_an_angle_is_read_in_degrees() -> None:
    assert after("an angle of 35°", "an angle of") == arb(35)
