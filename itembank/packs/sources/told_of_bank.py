"""What a pack says of a question of a bank: where it is from, how it was proved, who signed it."""

from __future__ import annotations

from itembank.bank.model.bank import Bank, Entry
from itembank.bank.model.content import content_hash
from itembank.bank.proof.signoff import SignState
from itembank.packs.data.convert import FROM_PRINT, FROM_WORDS
from itembank.packs.data.pack_item import SignOff, Source


def bank_source(bank: Bank, entry: Entry, sign: SignState) -> Source:
    """Return what a pack says of a question of a bank: where it is from, and who signed it.

    Of a stale sign-off it says who signed the question as it was.
    """
    return Source(
        kind="bank",
        bank=bank.name,
        id=entry.item.id,
        hash=content_hash(entry),
        proved=FROM_WORDS if entry.item.model else FROM_PRINT,
        sign_off=sign.state.value,
        signed=[SignOff(by=signoff.by, on=signoff.on) for signoff in sign.signoffs],
        author=entry.item.author or "",
        licence=entry.item.licence or bank.terms or "",
        credit=entry.item.source or "",
    )
