"""The unit that the words of a question ask for: a key in another unit is not its answer.

*Change 3.5 kg to grams* is not answered by 3.5 kg, though nothing is worth more.
"""

from __future__ import annotations

import re

from itembank.notation.tree import Money, Node, Quantity, walk
from itembank.notation.units import CURRENCY, UNITS

_NAMES = {
    name.casefold(): unit
    for unit, facts in (*UNITS.items(), *CURRENCY.items())
    for name in (unit, facts.one, facts.many)
}
# A lone m, g or l among words may be a letter or a label, so units of one letter are spelt out.
_ASKED = re.compile(
    r"\b(?:in|to|into|how many) ("
    + "|".join(
        re.escape(name)
        for name in sorted(_NAMES, key=len, reverse=True)
        if len(name) > 1 and name[0].isalpha()
    )
    + r")(?![\w^]| per )",
    re.I,
)


def unit_said(words: str) -> str:
    """Return the unit in which the words ask for the answer, or ``""`` for none or several.

    >>> unit_said("Change 3.5 kg to grams."), unit_said("What is the speed in metres per second?")
    ('g', 'm/s')
    >>> unit_said("Give it in cm or in km."), unit_said("Put it in a box.")
    ('', '')
    """
    found = {_NAMES[match[1].casefold()] for match in _ASKED.finditer(words)}
    return found.pop() if len(found) == 1 else ""


def other_unit(key: Node, words: str) -> str:
    """Return what is wrong where the words name a unit and the key has another, or ``""``.

    >>> from itembank.notation.tree import Int
    >>> other_unit(Quantity(Int(3), "kg"), "Change it to grams.")
    'the question asks for grams, the key is in kilograms'
    """
    wanted = unit_said(words)
    facts = {**UNITS, **CURRENCY}
    used = {part.unit for part in walk(key) if isinstance(part, Quantity)}
    used |= {part.sign for part in walk(key) if isinstance(part, Money)}
    if not wanted or not used or used == {wanted}:
        return ""
    names = " and ".join(sorted(facts[unit].many for unit in used))
    return f"the question asks for {facts[wanted].many}, the key is in {names}"
