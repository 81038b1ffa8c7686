"""Find the two numbers that have a sum and a product: one answer, in any order."""

from __future__ import annotations

from itembank.data_class import dataclass
from itembank.items.asks.ask_kind import Ask, Kind, Stored, only, register_kind
from itembank.items.asks.layers import Layers
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
        layers=Layers(
            first_road="itembank.proof.exact.sum_and_product:find_two",
            second_road="itembank.proof.sympy.sympy_two_numbers:two_numbers",
            working="itembank.proof.lines.line_of_many:two_fault",
            bank="itembank.bank.question.key_form:TWO_AMOUNTS",
            marking="itembank.marking.worth.marked_by_kind:TWO_NUMBERS",
            difficulty="itembank.items.measures.difficulty_by_kind:EXAMPLE",
        ),
    )
)
