"""The questions of a pack that come from banks: where each stands there, and who has signed it."""

from __future__ import annotations

import contextlib
from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, Any

from itembank.data_class import dataclass
from itembank.desk.replying.replies import url
from itembank.errors import ItembankError

if TYPE_CHECKING:
    from itembank.work.bank.banks_at_hand import BankAtHand
    from itembank.work.bank.signed_now import SignedNow


@dataclass(frozen=True, slots=True)
class InBank:
    """A question in its bank."""

    where: str
    """The address of its page."""
    sign: SignedNow
    to_sign: bool
    """Whether it waits for a signature that can be given at its page."""


def banks_asked(banks: Sequence[BankAtHand], pack: Mapping[str, Any] | None) -> dict[str, InBank]:
    """Return those of a pack's questions that stand in a bank at hand, by their addresses.

    A bank with faults says nothing here: its own pages tell what is wrong.
    """
    wanted: dict[str, dict[str, Mapping[str, Any]]] = {}
    for item in pack["versions"][0]["items"] if pack else ():
        source = item.get("source")
        if source and source["kind"] == "bank":
            wanted.setdefault(source["bank"], {})[source["id"]] = item
    found = {}
    for bank in banks if wanted else ():
        asked = wanted.get(bank.name, {})
        with contextlib.suppress(ItembankError):
            for id, sign in _signed(bank, asked).items():
                to_sign = bank.own and sign.state != "signed"
                where = url("questions", bank.name, "of", id)
                found[asked[id]["address"]] = InBank(where, sign, to_sign)
    return found


def _signed(bank: BankAtHand, asked: Mapping[str, Mapping[str, Any]]) -> dict[str, SignedNow]:
    if not asked:
        return {}
    from itembank.work.bank.signed_now import signed_now

    return signed_now(bank.folder, {id: item["source"]["hash"] for id, item in asked.items()})
