"""Units as people write them, brought to the signs of :mod:`.units`.

A name after a number is the unit it names: *20 litres* is 20 l. So is what can only be a
slip for a sign: *kgs*, *Km*, *hrs*, *cm2*. What may as well be letters side by side
(*5Km*, *2lb* close up) is left alone here; :mod:`.unknown_words` tells about it.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from itembank.notation.tree.line_signs import DOT, LETTERS
from itembank.notation.units import CURRENCY, NEEDS_SPACE, TOGETHER, UNITS
from itembank.text.late_pattern import late

_SLIPS: dict[str, str] = {
    "mm": "mms|millimeter|millimeters",
    "cm": "cms|centimeter|centimeters",
    "m": "mtr|mtrs|mts|meter|meters",
    "km": "kms|kilometer|kilometers",
    "in": "ins",
    "yd": "yds",
    "mile": "mi",
    "g": "gm|gms|gr|grs|gramme|grammes",
    "kg": "kgs|kilo|kilos|kgm|kgms|kilogramme|kilogrammes",
    "oz": "ozs",
    "lb": "lbs",
    "st": "stones",
    "mg": "mgs",
    "ml": "mls|milliliter|milliliters",
    "cl": "cls",
    "l": "ltr|ltrs|lt|lts|liter|liters",
    "pt": "pts",
    "gal": "gals",
    "s": "sec|secs",
    "min": "mins|mns",
    "h": "hr|hrs",
    "week": "wk|wks",
    "month": "mth|mths",
    "year": "yr|yrs",
    "km/h": "kph|kmph|kmh|kmhr|km/hr|kms/h|kms/hr|km per hour|km an hour|kilometres an hour",
    "mph": "miles/h|miles/hour|mile/h|miles an hour",
    "m/s": "m/sec|ms^-1|metres/second|m per second|m per s",
    "g/cm^3": "g/cm^3|g/cm3|g per cm^3|g per cm3",
    "kg/m^3": "kg/m^3|kg/m3|kg per m^3|kg per m3",
    "°": "deg|degs",
    "°C": "degC|deg C|degrees C|° C|° Celsius|degrees centigrade|°Celsius",
    "mm^2": "mm2|sq mm|mm squared|square mm",
    "cm^2": "cm2|sq cm|cm squared|square cm",
    "m^2": "m2|sq m|m squared|square m",
    "km^2": "km2|sq km|km squared|square km",
    "mm^3": "mm3|mm cubed|cubic mm",
    "cm^3": "cm3|cm cubed|cubic cm|cc",
    "m^3": "m3|m cubed|cubic m",
    "%": "percent|per cent",
}
_PLAIN_SIGNS = ("mm", "cm", "km", "mg", "kg", "ml", "cl", "min", "ft", "oz", "lb", "mph", "gal")


def _names() -> dict[str, str]:
    """Return the sign for each spelling, spellings in small letters."""
    found = {name: sign for sign, names in _SLIPS.items() for name in names.lower().split("|")}
    for sign, unit in (*UNITS.items(), ("p", CURRENCY["p"])):
        found |= {unit.singular.lower(): sign, unit.many.lower(): sign}
    found |= {sign: sign for sign in _PLAIN_SIGNS}  # for 5 Km and 5 KG
    # £5 or 5 lb: left to be told.
    del found["pound"], found["pounds"]
    return found


NAMES = _names()
_NUMBER_END = f"[0-9{DOT}□)]"
_SPELT = late(
    f"(?:(?<={_NUMBER_END}) ?|(?<=[{LETTERS}]) )(?P<name>"
    + "|".join(re.escape(name) for name in sorted(NAMES, key=len, reverse=True))
    + f"|L)(?![{LETTERS}^0-9])",
    re.IGNORECASE,
)
_PI = late(rf"(?<![{LETTERS}])pi(?![{LETTERS}])")
_HALF = late(rf"(?<=\d) ?(?:[ap](?:\.m\.?|m)|[AP]M)(?![{LETTERS}])")

# Whatever has none of these has no name, slip or second unit in it.
_PERHAPS = late(r"[A-Za-z]{2}|[hL°]|[ap]\.|\d[mltg]")

_CAPITALS_MATTER = frozenset({"MG", "Mg", "ML", "Ml", "MM", "Mm"})
"""Capitals that make another unit of it: Mg is a tonne, ML a million litres."""
_CLOSE_UP = frozenset({"cm2", "m2", "mm2", "km2", "cm3", "m3", "mm3"})

_BIG_SMALL = {
    (big, small): small for big, smalls in TOGETHER.items() for small in smalls if big.isalpha()
}
# 2h 35m is no length: after hours, m is minutes.
_BIG_SMALL["h", "m"] = "min"
_NEXT = late(
    r"(?<=[0-9])(?P<gap1> ?)(?P<big>"
    + "|".join(sorted(sorted({big for big, _ in _BIG_SMALL}), key=len, reverse=True))
    + r")(?P<gap2> ?)(?=\d+(?:\.\d+)?(?P<gap3> ?)(?P<small>"
    + "|".join(sorted(sorted({small for _, small in _BIG_SMALL}), key=len, reverse=True))
    + f")(?![{LETTERS}^0-9]))"
)

Text = tuple[str, Sequence[int]]
"""Plain text, and the offset in the typed text that each of its characters came from."""


def with_signs(plain: str, origins: Sequence[int], letters: frozenset[str]) -> Text:
    """Return plain text with the names of units brought to their signs.

    `letters` are known to stand for numbers; what is spelt with them alone is left.

    >>> def signs(text): return with_signs(text, list(range(len(text))), frozenset())[0]
    >>> [signs(text) for text in ("20 litres", "5 KG", "2h35min", "30cm2", "40 percent", "2pi r")]
    ['20 l', '5 kg', '2 h 35 min', '30 cm^2', '40%', '2π r']
    >>> signs("3abc + 2 sweets")
    '3abc + 2 sweets'
    """
    # Most lines hold no unit. To search for a hundred names in each would cost most of reading.
    if not _PERHAPS.search(plain):
        return plain, origins
    edits: list[tuple[int, int, str]] = []
    for found in _SPELT.finditer(plain):
        name, gap = found["name"], found[0][: found.start("name") - found.start()]
        sign = _sign(name, bool(gap), letters)
        if sign and (sign != name or (not gap and sign in NEEDS_SPACE)):
            space = "" if sign in ("%", "°", "p") else " "
            edits.append((found.start(), found.end(), space + sign))
    plain, origins = _edited(plain, origins, edits)
    plain, origins = _parted(plain, origins)
    # 6pm is a time; 6 × p × m is meant only where p or m is known.
    if not letters & {"p", "m"}:
        edits = [
            (m.start(), m.end(), f" {m[0].strip()[0].lower()}m") for m in _HALF.finditer(plain)
        ]
        plain, origins = _edited(plain, origins, edits)
    if "p" not in letters or "i" not in letters:
        edits = [(m.start(), m.end(), "π") for m in _PI.finditer(plain)]
        plain, origins = _edited(plain, origins, edits)
    return plain, origins


def _sign(name: str, spaced: bool, letters: frozenset[str]) -> str:
    """Return the sign that a name after a number stands for, or nothing where it may be letters."""
    if name in ("L", "l"):
        return "l" if name == "L" and spaced and "L" not in letters else ""
    if name in _CAPITALS_MATTER or set(name) <= letters:
        return ""
    short = len(name) <= 2 and name.isalpha()
    # 5km is read by the grammar; 5Km may be K × m.
    if short and not spaced:
        return ""
    # Where h is a letter of the question, 3 hr may be 3 × h × r.
    if short and name.islower() and set(name) & letters:
        return ""
    return NAMES.get(name.lower(), "")


def _parted(plain: str, origins: Sequence[int]) -> Text:
    """Return text with spaces around the units of a quantity in two units: 2h35min."""
    while True:
        for found in _NEXT.finditer(plain):
            small = _BIG_SMALL.get((found["big"], found["small"]))
            if small is None:
                continue
            edits = [
                (found.start(), found.end(), f" {found['big']} "),
                (found.start("gap3"), found.end("small"), f" {small}"),
            ]
            changed = _edited(plain, origins, edits)
            if changed[0] != plain:
                plain, origins = changed
                break
        else:
            return plain, origins


def _edited(plain: str, origins: Sequence[int], edits: list[tuple[int, int, str]]) -> Text:
    """Return text with the stretches from start to end replaced, last first."""
    # From the end, so that the offsets of those before stay true.
    for start, end, new in reversed(edits):
        plain = plain[:start] + new + plain[end:]
        origins = [*origins[:start], *[origins[start]] * len(new), *origins[end:]]
    return plain, origins
