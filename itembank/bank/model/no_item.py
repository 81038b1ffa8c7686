"""The words for an item that a bank does not hold, with those that may be meant."""

from __future__ import annotations

from collections.abc import Iterable

from itembank.errors import ItembankError
from itembank.files.faults import join_words, nearest


def no_item(wanted: str, ids: Iterable[str], where: str) -> ItembankError:
    """Return the error for an id that no item in use has.

    >>> print(no_item("garden-1", ["garden-12"], "the bank ours"))
    There is no item ‘garden-1’ in the bank ours. Did you mean garden-12?
    >>> print(no_item("p1", ["p1.5810", "p1.6b6a", "p2"], "the bank ours"))
    ‘p1’ is several items in the bank ours: p1.5810 and p1.6b6a. Name one of them.
    """
    there = list(ids)
    # Two banks that were merged gave this id to different questions, and nobody has chosen yet.
    several = [id for id in there if id.startswith(f"{wanted}.")]
    if len(several) > 1:
        return ItembankError(
            f"‘{wanted}’ is several items in {where}: {join_words(several)}. Name one of them."
        )
    near = nearest(wanted, there)
    advice = f" Did you mean {join_words(near, 'or')}?" if near else ""
    return ItembankError(f"There is no item ‘{wanted}’ in {where}.{advice}")
