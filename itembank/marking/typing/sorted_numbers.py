"""The numbers of a question, put in order on a line of their own before a median or a range."""

from __future__ import annotations

from fractions import Fraction

from itembank.items.item import Item
from itembank.marking.typing.spelling import visible
from itembank.notation import tree as t
from itembank.notation.value import exact_or_none
from itembank.text.late_pattern import late

_ROW = late(r"[-−\d., ;]+")
_NUMBER = late(r"[-−]?\d+(?:\.\d+)?")


def without_sorted_numbers(item: Item, answer: str) -> str:
    r"""Return an answer without lines, but for the last, that only list the question's numbers.

    Such a line is a step, and none of its numbers an answer.

    >>> from itembank.items.topics.registry import find_item
    >>> item = find_item("statistics.median/support/231")  # 8, 22, 9, 19, 5, 8, 28
    >>> without_sorted_numbers(item, "5 8 8 9 19 22 28\n9"), without_sorted_numbers(item, "8\n9")
    ('9', '8\n9')
    """
    *before, last = answer.split("\n")
    rows = _rows(item) if before else []
    if not rows:
        return answer
    return "\n".join([line for line in before if _numbers_in(line) not in rows] + [last])


def _rows(item: Item) -> list[list[Fraction]]:
    found = []
    for run in item.prompt:
        if isinstance(run, t.Listing):
            worths = [exact_or_none(part) for part in run.parts]
            found.append(sorted(worth for worth in worths if worth is not None))
    return [row for row in found if len(row) > 2]


def _numbers_in(line: str) -> list[Fraction]:
    """Return the numbers of a line in order of size, or nothing where it holds anything else."""
    plain = visible(line)
    if not _ROW.fullmatch(plain):
        return []
    return sorted(Fraction(found[0].replace("−", "-")) for found in _NUMBER.finditer(plain))
