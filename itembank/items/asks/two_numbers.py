"""Find the two numbers that have a sum and a product: one answer, in any order."""

from __future__ import annotations

from itembank.data_class import dataclass
from itembank.items.asks.ask_kind import Ask, Kind, Stored, only, register_kind
from itembank.notation import tree as t


@dataclass(frozen=True, slots=True)
class TwoNumbers(Ask):
    """Find the two numbers that add up to `total` and multiply to `product`."""

    total: t.Node
    product: t.Node


def _restored(stored: Stored) -> TwoNumbers:
    total, product = only(stored, 2)
    return TwoNumbers(total, product)


TWO_NUMBERS = register_kind(
    Kind(
        "two-numbers",
        TwoNumbers,
        trees=lambda ask: (ask.total, ask.product),
        store=lambda ask: Stored((ask.total, ask.product)),
        restore=_restored,
        twin=lambda ask, form: (("two-numbers",), (ask.total, ask.product), ()),
        does="find two numbers with a sum and a product",
        told="give an example",
    )
)
