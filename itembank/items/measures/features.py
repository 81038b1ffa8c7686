"""What makes an item hard, as counts: the rows that the difficulty measure weighs.

Everything is read from the item itself, so that a question of a bank and a generated one are
counted alike: from the prompt as it is printed, the question behind it, the key and the
working. Nothing looks at the topic's name or at the tier.
"""

from __future__ import annotations

from math import lcm, log10

from itembank.items.item import Item, Step
from itembank.items.measures.difficulty_by_kind import (
    ASKING,
    COUNTED,
    Asking,
    Features,
    alone,
)
from itembank.items.measures.tally import Tally, tally
from itembank.notation import tree as t
from itembank.notation.units import unit_known

LINES_BEND = 0.7
"""Power to which lines of working count: the tenth line is seldom as much more as the second."""
MOST_WORDS = 30
STORY = 9
"""Words from which a prompt has to be read for what it means."""
NO_MATHS = frozenset({"Give", "Leave"})
"""First words of a sentence that says how the answer is to be written, not what is asked."""


def features(item: Item) -> Features:
    """Return the counts of an item by name; :data:`.difficulty.WEIGHTS` says what each means.

    >>> from itembank.items.topics.registry import find_item
    >>> found = features(find_item("equations.both-sides/core/234"))  # 2k + 3 = 8k − 39
    >>> found["solve"], found["both sides"], found["recurring"]
    (1.0, 1.0, 0.0)
    """
    printed = tally(run for run in item.prompt if not isinstance(run, str))
    steps = [step for step in lines_worked(item) if not _says_again(step)]
    worked = tally(step.maths for step in steps if step.maths is not None)
    key = tally((item.key,))
    return {
        **_reading(item),
        "lines": len(steps) ** LINES_BEND,
        "working": float(bool(steps)),
        **_asked(item, printed, key),
        **_letters(printed, key, item),
        **_numbers(item, printed, worked, key),
        **_units(printed, worked, key),
        **_ratios(printed, key),
        "size": _size(printed.largest, 3.0),
        "size on the way": _size(worked.largest, 2.0),
    }


def _reading(item: Item) -> Features:
    text = "".join(run if isinstance(run, str) else "#" for run in item.prompt)
    sentences = [sentence.split() for sentence in text.replace("?", ".").split(". ")]
    count = sum(
        word != "#" for words in sentences if words and words[0] not in NO_MATHS for word in words
    )
    return {"words": min(count, MOST_WORDS) / 10, "story": float(count >= STORY)}


def lines_worked(item: Item) -> tuple[Step, ...]:
    """Return the working without lines that print the question again for a picture beside it.

    >>> from itembank.items.topics.registry import find_item
    >>> shown = find_item("equations.one-step/support/3")  # x + 2 = 8, on a balance first
    >>> len(shown.steps), len(lines_worked(shown))
    (2, 1)
    """
    return tuple(
        step for step in item.steps if step.figure is None or step.maths not in item.prompt
    )


def _says_again(step: Step) -> bool:
    """Tell whether a line only writes whole numbers over 1."""
    line = step.maths
    return isinstance(line, t.Relation) and all(
        _not_over_one(line.first) == _not_over_one(side) for _, side in line.rest
    )


def _not_over_one(node: t.Node) -> t.Node:
    match node:
        case t.Frac(top, t.Int(1)):
            return top
        case t.Product(first, rest):
            return t.Product(_not_over_one(first), tuple((op, _not_over_one(n)) for op, n in rest))
    return node


def _asked(item: Item, printed: Tally, key: Tally) -> Features:
    ask, kind = item.ask, ASKING.of(item.ask)
    relations = kind.relations(ask)
    behind = tally(relations)
    formed = bool(behind.letters - printed.letters) and not printed.ratios
    solved = kind.solved(ask, printed)
    given = sum(map(alone, relations)) if kind.valued and printed.letters else 0
    return {
        "formed": float(formed),
        "formed both sides": float(formed and behind.both_sides > 0),
        "solve": float(solved),
        **COUNTED,
        **kind.counts(ask, printed),
        "back to whole": float(behind.of_letter + printed.of_letter > 0),
        "given": float(min(given, 3)),
        "fraction found": float(solved and key.fractions > 0),
        "negative found": float(solved and key.negatives > 0),
        "more answers": _answers(item, kind) - 1.0,
    }


def _answers(item: Item, kind: Asking) -> int:
    if kind.whole_list or not isinstance(item.key, t.Listing | t.Either):
        return 1
    return len(item.key.parts)


def _letters(printed: Tally, key: Tally, item: Item) -> Features:
    # Where every letter is given its value, brackets and products are of numbers after all.
    kind = ASKING.of(item.ask)
    valued = kind.valued and not kind.solved(item.ask, printed)
    worked_with = 0.0 if valued else 1.0
    return {
        "both sides": float(printed.both_sides > 0),
        "taken away": float(printed.taken > 0),
        "bracket": worked_with * min(printed.letter_brackets, 2),
        "number inside": worked_with * (printed.inner_numbers > 0),
        "minus bracket": float(printed.minus_brackets > 0),
        "over a number": worked_with * min(printed.letter_fractions, 2),
        "fraction of a letter": float(printed.fraction_coefficients > 0),
        "product of letters": worked_with * min(printed.letter_products, 2),
        "square of a letter": float(printed.letter_powers > 0),
        "terms found": float(key.terms) if key.letters else 0.0,
    }


def _numbers(item: Item, printed: Tally, worked: Tally, key: Tally) -> Features:
    fractions = printed.fractions + printed.mixed
    bottoms = set(printed.bottoms)
    added = printed.number_sums > 0 or ASKING.of(item.ask).compared
    unlike = added and len(bottoms) > 1
    operations = printed.terms + printed.times + printed.divided
    return {
        "fraction": float(fractions > 0),
        "more fractions": max(0.0, min(fractions, 4) - 1.0),
        "unlike": float(unlike),
        "common multiple": float(unlike and lcm(*bottoms) != max(bottoms)),
        "divided by fraction": float(printed.divided_by_fraction > 0),
        "mixed": float(min(printed.mixed, 2)),
        "mixed found": float(key.mixed > 0),
        "negative": float(min(printed.negatives, 2)),
        "negative met": float(printed.negatives + worked.negatives + key.negatives > 0),
        "two signs": float(printed.double_signs > 0),
        "decimal met": float(printed.decimals + worked.decimals + key.decimals > 0),
        "recurring": float(printed.recurring + key.recurring > 0),
        "recurring late": float(printed.recurring_late > 0),
        "power": float(printed.powers > 0),
        "negative power": float(printed.negative_powers + key.negative_powers > 0),
        "power nought": float(printed.nought_powers > 0),
        "root": float(printed.roots + key.roots > 0),
        "surd": float(key.roots > 0),
        "operations": 0.0 if printed.letters else float(min(operations, 6)),
        "bar": float(printed.bars > 0),
        "number bracket": float(min(printed.number_brackets, 2)),
    }


def _units(printed: Tally, worked: Tally, key: Tally) -> Features:
    units = printed.units | worked.units | key.units
    kinds = {unit_known(unit).dimension for unit in units}
    converted = len(units) > len(kinds)
    hours = bool({"h", "min", "s"} & (printed.units | key.units))
    return {
        "converted": float(converted),
        "time": float(converted and hours),
        "more kinds of unit": max(0.0, len(kinds) - 1.0),
    }


def _ratios(printed: Tally, key: Tally) -> Features:
    return {
        "ratio": float(printed.ratios > 0),
        "more ratios": max(0.0, printed.ratios - 1.0),
        "more parts": max(0.0, max(printed.ratio_parts, key.ratio_parts) - 2.0),
        "box below": float(printed.boxes_below > 0),
    }


def _size(largest: int, most: float) -> float:
    """Return the figures of a number beyond two; of a very large one there is little to work."""
    return max(0.0, log10(max(largest, 1)) - 1) if largest < 10_000 else most
