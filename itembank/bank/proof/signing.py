"""Signs items off: all of those asked for, or, where something stands against one, none."""

from __future__ import annotations

import datetime
from collections.abc import Callable, Iterable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar

from itembank.bank.model.bank import SIGNOFF_FILE
from itembank.bank.proof.prove import prove_entries
from itembank.bank.proof.signoff import added_text, read_signoffs, signoff_of
from itembank.bank.saving.bank_lock import locked
from itembank.bank.saving.save import save, take_bytes
from itembank.data_class import dataclass
from itembank.errors import CheckFailed, ItembankError
from itembank.files.faults import join_words, nearest
from itembank.processes.work_place import Progress
from itembank.proof.outcome import Outcome, State
from itembank.text.in_words import counted

if TYPE_CHECKING:
    from itembank.bank.model.bank import Bank, Entry
    from itembank.bank.model.signed import SignOff

AnEntry = TypeVar("AnEntry", bound="Entry")


@dataclass(frozen=True, slots=True)
class Signed:
    """What became of one item: `proved` as well, and whether this sign-off is a new one."""

    id: str
    signoff: SignOff
    proved: bool
    new: bool = True

    @property
    def says(self) -> str:
        """Return what to tell: ``signed``, ``signed, not proved``, or signed already."""
        word = "signed" if self.new else "signed already"
        return word if self.proved else f"{word}, not proved"


def sign(
    bank: Bank,
    ids: Sequence[str],
    by: str,
    on: datetime.date,
    report: Progress | None = None,
) -> tuple[Signed, ...]:
    """Record that `by` has checked these items on a day, and return what became of each.

    They are proved first; `report` is called with (items judged, items in all).

    An item that the tool cannot prove can be signed: the reviewer vouches for it, and it is
    signed but not proved. One whose key is disproved cannot.

    Raises:
        CheckFailed: the key of one is disproved; nothing is signed.
        ItembankError: there is no such author or item, or one is retired; nothing is signed.
    """
    entries, refusals = wanted(bank.find, ids)
    outcomes = judged(bank, entries, refusals, by, lambda found: prove_entries(found, report))
    return record_signoffs(bank.folder, entries, outcomes, by, on)


def judged(
    bank: Bank,
    entries: Sequence[AnEntry],
    refusals: Sequence[str],
    by: str,
    prove: Callable[[Sequence[AnEntry]], Sequence[Outcome]],
) -> Sequence[Outcome]:
    """Return what the proofs of items came to that `by` is to sign.

    `refusals` is what stands against it already; everything is told at once.

    Raises: as :func:`sign`.
    """
    refusals = [*_unknown(bank, by), *refusals]
    outcomes = prove(entries)
    wrong = [
        f"{entry.address} cannot be signed, because its key is disproved. {outcome.says}"
        for entry, outcome in zip(entries, outcomes, strict=True)
        if outcome.state is State.DISPROVED
    ]
    if refusals:
        raise ItembankError("\n".join([*refusals, *wrong]))
    if wrong:
        raise CheckFailed("\n".join(wrong))
    return outcomes


def record_signoffs(
    folder: Path,
    entries: Sequence[Entry],
    outcomes: Sequence[Outcome],
    by: str,
    on: datetime.date,
    standing: Callable[[], Iterable[SignOff]] | None = None,
) -> tuple[Signed, ...]:
    """Write down that `by` has checked what these items say, and return what became of each.

    `standing` returns the sign-offs that these items have; it is asked while the bank is locked.
    Without it the whole file is read for them.

    Raises:
        FileFaults: the sign-offs there are cannot be read.
        ItembankError: they cannot be saved.
    """
    with locked(folder):
        file = take_bytes(folder / SIGNOFF_FILE)
        before = standing() if standing is not None else read_signoffs(folder)
        there = {(signoff.item, signoff.by, signoff.content): signoff for signoff in before}
        found = []
        for entry, outcome in zip(entries, outcomes, strict=True):
            new = signoff_of(entry, by, on)
            old = there.get((new.item, by, new.content))
            proved = outcome.state is State.PROVED
            found.append(Signed(new.item, old or new, proved, new=old is None))
        added = [signed.signoff for signed in found if signed.new]
        if added:
            text = added_text(added, before=bool(file.raw and file.raw.strip()))
            signed = added[0].item if len(added) == 1 else counted(len(added), "question")
            save(folder, [(file, file.with_more(text))], f"{signed} signed by {by}")
    return tuple(found)


def _unknown(bank: Bank, by: str) -> list[str]:
    """Return why nothing can be signed by `by`, who is none of the bank's authors."""
    if by in bank.authors:
        return []
    near = nearest(by, bank.authors) or sorted(bank.authors)
    advice = f" Did you mean {join_words(near, 'or')}?" if near else ""
    where = "Author codes stand under [authors] in bank.toml."
    if not bank.authors:
        where = (
            "It names none yet. Add a code with a role under [authors] in bank.toml, as in "
            'HT = "head of mathematics".'
        )
    return [f"There is no author ‘{by}’ in the bank {bank.name}.{advice} {where}"]


def wanted(find: Callable[[str], AnEntry], ids: Sequence[str]) -> tuple[list[AnEntry], list[str]]:
    """Return the items that are asked for, each once, and what stands against signing them."""
    refusals = []
    entries: dict[str, AnEntry] = {}
    for id in ids:
        try:
            entry = find(id)
        except ItembankError as error:
            refusals.append(str(error))
            continue
        if entry.item.retired is not None:
            refusals.append(f"{entry.address} is retired, so there is nothing to sign.")
        entries[entry.item.id] = entry
    return list(entries.values()), refusals
