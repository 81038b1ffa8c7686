"""Rectangles, squares, boxes, paths and angles: what a length round, an area, a volume is."""

from __future__ import annotations

import re
from fractions import Fraction
from math import isqrt

from itembank.wording.meaning.told.tale import Reading, Tale, late_search, reads
from itembank.wording.sentences.prompt import SLOT

_FLAT = r"\b(?:rectang\w+|lawn|plot|field|garden|floor|wall|room|hall|sheet|page|card|pitch|court|bed|patio|yard|window|carpet|picture|photo\w*|poster|table|playground|pool|path|board|door|mat|rug|banner|flag|screen)\b"
_OTHER = r"\b(?:triang\w+|circ\w+|radius|diameter|trapez\w+|parallelogram|hexagon|pentagon|octagon|diagonal|scale|semi\w*|cylinder|pyramid|prism|l-shape\w*|tiles?|scale|map|ratio|twice|times as|longer than|shorter than|border|frame)\b"


def shape_reading(tale: Tale) -> Reading | None:
    """Return the length, area or volume that a story of a plain shape asks for."""
    return _path(tale) or _rectangle(tale) or _square(tale) or _box(tale) or _sides_equal(tale)


def _rectangle(tale: Tale) -> Reading | None:
    if late_search(_OTHER, tale.text) or not late_search(_FLAT, tale.text):
        return None
    money = tale.of("money")
    sides = [n for n in tale.numbers if n.measure == "length"]
    if len(sides) != 2 or len(money) > 1 or len(tale.numbers) != 2 + len(money):
        return None
    between = tale.text[sides[0].at + 1 : sides[1].at]
    if not late_search(
        r"\bby $|\b(?:long|wide|high|width|length|height|and|deep)\b|×", between
    ) or late_search(r"[.]", between):
        return None
    a, b = (n.value for n in sides)
    round_it = 2 * (a + b)
    if late_search(
        r"\bthree sides\b|\bwall\b.*\b(?:along|against|side)\b|\b(?:along|against)\b.*\b(?:wall|house|river|fence)\b|\bgate\b|\bdoor\b|\bgap\b",
        tale.text,
    ):
        return None
    if not money:
        if tale.asks_for(r"\barea\b"):
            return reads("an area is length by width", a * b)
        if tale.asks_for(
            r"\bperimeter\b|\ball (?:the )?way round\b|\bgo(?:es)? (?:right |all )?round\b|\b(?:fenc\w+|edging|ribbon|trim)\b"
        ):
            return reads("all the way round is twice the length and twice the width", round_it)
        return None
    price = money[0]
    clause = price.after.lower()
    if not tale.asks_for(r"\bcosts?\b|\bhow much\b|\bprice\b"):
        return None
    if re.match(r"(?:for |per |a |each |every )+(?:square )", clause) or re.match(
        r"(?:for each|for every|per|a|each) (?:m\^2|square)", clause
    ):
        return reads("so much for each unit of area", a * b * price.value)
    if re.match(r"(?:for |per |a |each |every )+(?:metre|centimetre|m\b|cm\b)", clause):
        return reads("so much for each unit of length round it", round_it * price.value)
    return None


_PATH = r"\b(?:path|border|frame|strip|edging)\b"


def _path(tale: Tale) -> Reading | None:
    """Return the area of a path of one width round a rectangle."""
    lengths = tale.of("length")
    if len(lengths) != 3 or len(tale.numbers) != 3 or not late_search(_PATH, tale.text):
        return None
    if not late_search(r"\b(?:round|around|surround\w*)\b", tale.told) or not tale.asks_for(
        r"\barea\b"
    ):
        return None
    wide = [n for n in lengths if late_search(r"^(?:\w+ )?(?:wide|in width)\b", n.after)]
    own = re.search(
        rf"\b(?:path|border|frame|strip|edging)(?: \w+){{0,3}}? ({SLOT})", tale.told, re.I
    )
    if len(wide) > 1 and own and own[1] in tale.by_char:
        wide = [tale.by_char[own[1]]]
    wide = wide or [n for n in lengths if late_search(r"\bwidth\b", tale.clause_of(n))]
    if len(wide) != 1:
        return None
    (w,) = wide
    a, b = (n.value for n in lengths if n is not w)
    outer = (a + 2 * w.value) * (b + 2 * w.value)
    if tale.asks_for(_PATH):
        return reads("the path alone, all round", outer - a * b)
    return None


def _square(tale: Tale) -> Reading | None:
    if (
        not late_search(r"\bsquare\b(?! (?:met|cent|kilo|milli|root|number))", tale.text)
        or len(tale.numbers) != 1
    ):
        return None
    if late_search(
        r"\b(?:circ\w+|diagonal|cut|triang\w+|tiles?|rectang\w+|half|twice|mean)\b", tale.text
    ):
        return None
    (number,) = tale.numbers
    told = tale.clause_of(number)
    side: Fraction | None = None
    if late_search(r"\b(?:bent|folded|made|formed|shaped|turned) (?:in|into|to make)\b", tale.told):
        side = number.value / 4  # a wire bent into a square
    elif late_search(r"\bperimeter\b", told) and not tale.asked(number):
        side = number.value / 4
    elif number.measure == "area" or (late_search(r"\barea\b", told) and not tale.asked(number)):
        side = _root(number.value)
    elif number.measure in ("length", "") and late_search(r"\bsides?\b|\blong\b", told):
        side = number.value
    if side is None:
        return None
    if tale.asks_for(r"\bperimeter\b|\bround\b"):
        return reads("a square has four sides", 4 * side)
    if tale.asks_for(r"\barea\b"):
        return reads("the area of a square is its side by its side", side * side)
    if tale.asks_for(r"\bside\b|\bhow long\b"):
        return reads("the side of the square", side)
    return None


def _root(value: Fraction) -> Fraction | None:
    top, bottom = isqrt(value.numerator), isqrt(value.denominator)
    root = Fraction(top, bottom)
    return root if root * root == value else None


def _box(tale: Tale) -> Reading | None:
    if len(tale.numbers) != 3 or late_search(_OTHER, tale.text):
        return None
    if not late_search(
        r"\b(?:box|cuboid|tank|pool|block|carton|crate|brick|room|container)\b", tale.text
    ):
        return None
    numbers = tale.numbers
    if any(n.measure != "length" for n in numbers):
        return None
    is_open = late_search(r"\b(?:no|without a|open) (?:lid|top)\b|\bopen\b", tale.text)
    if is_open:
        deep = [n for n in numbers if late_search(r"^(?:high|deep|tall|in height)\b", n.after)]
        card = tale.asks_for(r"\b(?:surface area|card|material|metal|wood|paint|glass|sheet)\b")
        if len(deep) != 1 or not card:
            return None
        p, q = (n.value for n in numbers if n is not deep[0])
        return reads("there is no top", p * q + 2 * deep[0].value * (p + q))
    a, b, c = (n.value for n in numbers)
    if tale.asks_for(r"\blargest face\b|\bbiggest face\b"):
        return reads("the largest face", max(a * b, b * c, a * c))
    if tale.asks_for(r"\bsmallest face\b"):
        return reads("the smallest face", min(a * b, b * c, a * c))
    if tale.asks_for(r"\bsurface area\b|\barea of (?:all|every)"):
        return reads("all six faces", 2 * (a * b + b * c + a * c))
    if tale.asks_for(r"\bvolume\b") or (
        tale.asks_for(r"\bhold\b|\bcapacity\b")
        and tale.asks_for(r"\blit|\bhow much\b|\bcapacity\b")
    ):
        return reads("a volume is length by width by height", a * b * c)
    if tale.asks_for(r"\bedges?\b") and tale.asks_for(r"\btotal\b|\ball\b"):
        return reads("a box has four edges of each length", 4 * (a + b + c))
    return None


_EQUAL_SIDES = (
    ("equilateral triangle", 3), ("square", 4), ("rhombus", 4), ("regular pentagon", 5),
    ("regular hexagon", 6), ("regular octagon", 8), ("regular decagon", 10),
)  # fmt: skip


def _sides_equal(tale: Tale) -> Reading | None:
    """Return the side or the perimeter of a shape whose sides are all as long."""
    if late_search(r"\b(?:longer|shorter|more|less) than\b", tale.text):
        return None
    found = [n for name, n in _EQUAL_SIDES if late_search(rf"\b{name}\b", tale.text)]
    if not found and (
        m := re.search(r"triangle has three equal sides|three equal sides", tale.text, re.I)
    ):
        found = [3] if m and late_search(r"\btriangle\b", tale.text) else []
    numbers = [n for n in tale.numbers if n.measure == "length"]
    words = re.search(r"\btriangle has \S equal sides", tale.text)
    if words and not found:
        found = [3]
    if (
        len(found) != 1
        or len(numbers) != 1
        or any(n.measure and n not in numbers for n in tale.numbers)
    ):
        return None
    (number,) = numbers
    if late_search(r"\bperimeter\b", tale.clause_of(number)) and tale.asks_for(r"\bside\b"):
        return reads("all of its sides make the perimeter", number.value / found[0])
    if late_search(r"\bsides?\b", tale.clause_of(number)) and tale.asks_for(r"\bperimeter\b"):
        return reads("the perimeter is all of its sides", number.value * found[0])
    return None
