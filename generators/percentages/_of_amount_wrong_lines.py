"""How a percentage of an amount is worked out wrongly, line by line."""

from __future__ import annotations

from generators._turns import by_turns
from generators.percentages._amounts import amount, hundredths, multiplier, per_cent
from generators.percentages._of_amount_mistakes import AS_ONE_HALF, DIVIDES, IGNORES_HUNDRED, POINT
from itembank.items import kinds
from itembank.notation import tree as t

UNITS = ("£", "kg", "", "m", "g", "ml", "km", "£")


def gone_wrong(kind: str, p: int, n: int, *_: int) -> tuple[kinds.WrongSolution, ...]:
    """Return how a percentage of an amount is worked out wrongly."""
    if kind not in ("sum", "over", "halves"):
        return ()
    unit = by_turns(UNITS, n // 10 + p // 5)
    whole, wrong = amount(100 * n, unit), kinds.WrongSolution
    found = []
    if kind == "over":
        part = hundredths((p - 1000) * n, 1000)
        if part is not None:
            lines = (t.part_of(per_cent(p - 1000), whole), amount(part, unit))
            found.append(wrong(IGNORES_HUNDRED, lines))
        return tuple(found)
    quotient = hundredths(10 * n, p)
    if quotient is not None and kind == "sum" and quotient != p * n // 10:
        by = t.divide(whole, per_cent(p).of)
        found.append(wrong(DIVIDES, (by, amount(quotient, unit))))
    if p % 100 and p * n % 100 == 0:
        # 5% as 0.5, and 2.5% as 0.25: the point one place too far to the right.
        times = t.times(multiplier(10 * p), whole)
        which = POINT if kind == "sum" or p >= 100 else AS_ONE_HALF
        if p < 100 or kind == "sum":
            found.append(wrong(which, (times, amount(p * n, unit))))
    return tuple(found)
