"""Small pieces that the topics on percentages share: hundredths, and tenths of a per cent.

Whole numbers throughout, so that the filters of the spaces stay quick.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from generators.ratio._parts import amount as amount_of
from itembank.items.forms.form_rules import decimal_node
from itembank.items.item import Misconception, Slip, Step
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t


def hundredths(top: int, bottom: int = 1) -> int | None:
    """Return a positive value in hundredths, or None where there are not two places enough.

    >>> hundredths(9, 2), hundredths(1, 3), hundredths(-4)
    (450, None, None)
    """
    value, rest = divmod(100 * top, bottom)
    return None if rest or value <= 0 else value


def apart(key: int, *wrong: int | None) -> bool:
    """Tell whether at least two mistakes give different wrong answers.

    >>> apart(450, 900, None, 450), apart(450, 900, 100)
    (False, True)
    """
    return len({value for value in wrong if value is not None and value != key}) > 1


def amount(value: int, unit: str) -> t.Node:
    """Return a value in hundredths with its unit.

    >>> amount(1250, "kg")
    Quantity(amount=Dec(whole='12', places='5', recurring=''), unit='kg')
    """
    return amount_of(Fraction(value, 100), unit)


def per_cent(tenths: int) -> t.Percent:
    """Return so many tenths of one per cent as they are written.

    >>> per_cent(125)
    Percent(of=Dec(whole='12', places='5', recurring=''))
    """
    return t.Percent(decimal_node(Fraction(tenths, 10)))


def multiplier(tenths: int) -> t.Node:
    """Return so many tenths of one per cent as a decimal number.

    >>> multiplier(1040)
    Dec(whole='1', places='04', recurring='')
    """
    return decimal_node(Fraction(tenths, 1000))


def wrong_amounts(
    unit: str, key: int, mistakes: Iterable[Misconception], found: Iterable[int | None]
) -> tuple[Slip, ...]:
    """Return the wrong answers, found in hundredths, that can be written and are not the key."""
    pairs = (
        (mistake, None if value is None else amount(value, unit))
        for mistake, value in zip(mistakes, found, strict=True)
    )
    return slips(*pairs, key=amount(key, unit))


def part_steps(tenths: int, whole: int, unit: str) -> list[Step]:
    """Return the working of a percentage of an amount, as it is done without a calculator.

    Parameters
    ----------
    tenths
        Tenths of one per cent.
    whole
        The amount in hundredths.
    unit
        Its unit, ``£``, or nothing.

    >>> [step.say for step in part_steps(350, 6000, "£")]
    ['Find 10%.', 'Find 30%.', 'Find 5%: half of 10%.', 'Add them.']
    """
    key = amount(whole * tenths // 1000, unit)
    n = amount(whole, unit)
    share = _FRACTION.get(tenths)
    if share is not None:
        say, top, bottom = share
        single = amount(whole // bottom, unit)
        first = Step(f"{say}, so divide by {bottom}.", t.equals(t.divide(n, t.Int(bottom)), single))
        if top == 1:
            return [first]
        return [first, Step(f"Multiply by {top}.", t.equals(t.times(t.Int(top), single), key))]
    tens, units = divmod(tenths, 100)
    ten = amount(whole // 10, unit)
    half = amount(whole // 20, unit)
    find_ten = Step("Find 10%.", t.equals(t.divide(n, t.Int(10)), ten))
    if units in (0, 50) and whole % 20 == 0 and tenths < 1000:
        tens_part = amount(whole * tens // 10, unit)
        steps = [find_ten]
        if tens > 1:
            steps.append(
                Step(f"Find {10 * tens}%.", t.equals(t.times(t.Int(tens), ten), tens_part))
            )
        if units:
            steps.append(Step("Find 5%: half of 10%.", t.equals(t.divide(ten, t.Int(2)), half)))
            if tens:
                steps.append(Step("Add them.", t.equals(t.add(tens_part, half), key)))
        return steps
    if tenths % 50 == 25 and whole % 40 == 0:
        return _by_halving(tenths, whole, unit)
    single = amount_of(Fraction(whole, 10000), unit)
    count = decimal_node(Fraction(tenths, 10))
    return [
        Step("Find 1%.", t.equals(t.divide(n, t.Int(100)), single)),
        Step(f"Multiply by {plain(tenths)}.", t.equals(t.times(count, single), key)),
    ]


def _by_halving(tenths: int, whole: int, unit: str) -> list[Step]:
    """Return the working of 2.5% and what ends like it: 10%, 5% and 2.5% by halving."""
    tens, units = divmod(tenths, 100)
    ten, half, quarter = (amount(whole // part, unit) for part in (10, 20, 40))
    steps = [Step("Find 10%.", t.equals(t.divide(amount(whole, unit), t.Int(10)), ten))]
    parts = []
    if tens:
        parts.append(amount(whole * tens // 10, unit))
    if tens > 1:
        steps.append(Step(f"Find {10 * tens}%.", t.equals(t.times(t.Int(tens), ten), parts[0])))
    steps.append(Step("Find 5%: half of 10%.", t.equals(t.divide(ten, t.Int(2)), half)))
    steps.append(Step("Find 2.5%: half of 5%.", t.equals(t.divide(half, t.Int(2)), quarter)))
    parts += [half, quarter] if units == 75 else [quarter]
    if len(parts) > 1:
        key = amount(whole * tenths // 1000, unit)
        steps.append(Step("Add what you need.", t.equals(t.add(*parts), key)))
    return steps


def plain(tenths: int) -> str:
    """Return so many tenths as text.

    >>> plain(125), plain(40)
    ('12.5', '4')
    """
    return f"{tenths // 10}.{tenths % 10}" if tenths % 10 else f"{tenths // 10}"


_FRACTION = {
    500: ("50% is one half", 1, 2),
    250: ("25% is one quarter", 1, 4),
    750: ("75% is three quarters", 3, 4),
    200: ("20% is one fifth", 1, 5),
    100: ("10% is one tenth", 1, 10),
    10: ("1% is one hundredth", 1, 100),
}
