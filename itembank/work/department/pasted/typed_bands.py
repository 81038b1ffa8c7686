"""Bands as a teacher types them: ``5 7``, ``Red, Amber, Green`` or ``Red 0, Amber 5, Green 7``."""

from __future__ import annotations

import re

from itembank.errors import ItembankError
from itembank.text.cut_short import cut_short
from itembank.text.whole_number import whole_number
from itembank.work.department.answered import BandsAnswer

_OUT_OF = re.compile(r"\bout of (\d{1,3})\s*$", re.I)
HOW = "Write cut scores as in 5 7, or names as in Red 0, Amber 5, Green 7."


def read_typed_bands(text: str) -> BandsAnswer | None:
    """Return bands as typed; None for the usual ones.

    Raises:
        ItembankError: they cannot be read.

    >>> read_typed_bands("Red 0, Amber 6, Green 9 out of 10")
    BandsAnswer(names=('Red', 'Amber', 'Green'), cuts=(6, 9), out_of=10)
    >>> read_typed_bands("5 7").cuts, read_typed_bands("usual")
    ((5, 7), None)
    """
    if text.strip().casefold() in ("", "usual", "the usual", "default"):
        return None
    out_of = 8
    if match := _OUT_OF.search(text):
        out_of, text = int(match[1]), text[: match.start()]
    if re.fullmatch(r"[\d\s,;/]+", text):
        typed = re.findall(r"\d+", text)
        scores = tuple(score for score in map(whole_number, typed) if score is not None)
        if len(scores) < len(typed):
            wrong = next(score for score in typed if whole_number(score) is None)
            why = "has too many figures" if wrong.isascii() else "is not written in figures 0 to 9"
            raise ItembankError(f"The cut score ‘{cut_short(wrong, 40)}’ {why}. {HOW}")
        return BandsAnswer((), scores, out_of)
    names: list[str] = []
    lows: list[int] = []
    for part in filter(None, (part.strip() for part in re.split(r"[,;\n]", text))):
        found = re.fullmatch(r"(.*?\D)\s*(?:from\s+)?(\d{1,3})?(?:\s*[-–]\s*\d{1,3}|\s*\+)?", part)
        if found is None:
            raise ItembankError(f"‘{part}’ is no band. {HOW}")
        names.append(found[1].strip(" :=-–"))
        if found[2]:
            lows.append(int(found[2]))
    if len(lows) not in (0, len(names), len(names) - 1) or len(names) < 2:
        raise ItembankError(f"Give each band but the first its lowest score, or none. {HOW}")
    if len(lows) == len(names) and lows[0] != 0:
        raise ItembankError(f"{names[0]} begins at {lows[0]}. The first band begins at 0.")
    cuts = tuple(lows[1:] if len(lows) == len(names) else lows)
    return BandsAnswer(tuple(names), cuts, out_of if cuts else 8)
