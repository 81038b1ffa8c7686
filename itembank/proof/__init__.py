"""Proves keys against what is printed, by two roads that share no arithmetic.

:func:`prove_fast` is the exact road, quick enough for every item made;
:func:`prove_symbolic` is the sympy road and imports sympy when first called.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from itembank.items.item import Item

__all__ = ["prove_fast", "prove_symbolic"]


def prove_fast(item: Item) -> None:
    """Prove the key of `item` by exact arithmetic.

    Raises
    ------
    CheckFailed
        If the exact answer and the key differ; the message gives both.

    >>> from itembank.items.topics.registry import find_item
    >>> prove_fast(find_item("fractions.add-unlike/core/12"))
    """
    from itembank.proof.exact.exact_road import prove_fast as prove

    prove(item)


def prove_symbolic(item: Item) -> None:
    """Prove the key of `item` with sympy.

    Raises
    ------
    CheckFailed
        If sympy's answer and the key differ; the message gives both.

    >>> from itembank.items.topics.registry import find_item
    >>> prove_symbolic(find_item("fractions.add-unlike/core/12"))
    """
    from itembank.proof.sympy.sympy_road import prove

    prove(item)
