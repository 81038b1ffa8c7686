"""Sign-offs: who checked which items and when, and what has changed since.

They stand in ``signoffs.toml`` beside the topics, one ``[[signoffs]]`` each, with the whole
printed content as it was: so any edit shows, and so does what was edited. A reviewer who signs
an item that the tool cannot prove vouches for it; it is then signed, and still not proved.
"""

from __future__ import annotations

import datetime
import re
from collections.abc import Callable, Iterable, Mapping
from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING, Any

from itembank.bank.model.bank import SIGNOFF_FILE
from itembank.bank.model.content import content_hash, data_hash, printed_on
from itembank.bank.model.item_changes import Change, changes
from itembank.bank.model.signed import SignOff
from itembank.data_class import dataclass
from itembank.files.faults import join_words
from itembank.text.in_words import day_month_year

if TYPE_CHECKING:
    from itembank.bank.model.bank import Entry
    from itembank.files.toml_table import Table, TomlFile

HEAD = "# Written when items are signed off: who checked which, when, and what it said then.\n"
_BLOCK = re.compile(r"(?m)^(?=\[\[signoffs\]\])")
"""Where an entry begins: the tool writes its heading so."""


class Signing(StrEnum):
    """Whether a reviewer's statement stands for what an item says now."""

    UNSIGNED = "unsigned"
    SIGNED = "signed"
    STALE = "stale"


@dataclass(frozen=True, slots=True)
class SignState:
    """Who signed an item. A stale one carries what changed since its latest sign-off."""

    state: Signing
    signoffs: tuple[SignOff, ...] = ()
    """Those that stand; where none does, the latest of each reviewer's."""
    changed: tuple[Change, ...] = ()

    @property
    def says(self) -> str:
        """Return the state as a phrase: ``signed by HT on 14 September 2026``."""
        if self.state is Signing.UNSIGNED:
            return "not signed"
        if self.state is Signing.SIGNED:
            return f"signed by {self.who}"
        since = "; ".join(map(str, self.changed)) or "the way it is kept"
        return f"stale: signed by {self.who}; changed since: {since}"

    @property
    def who(self) -> str:
        """Return who signed and when: ``HT on 14 September 2026``."""
        return join_words(
            [f"{signoff.by} on {day_month_year(signoff.on)}" for signoff in self.signoffs]
        )


def sign_state(entry: Entry, signoffs: Iterable[SignOff]) -> SignState:
    """Return whether an entry is signed, by whom and when, and what has changed if that is stale.

    `signoffs` may hold those of other items too.
    """
    own = [signoff for signoff in signoffs if signoff.item == entry.item.id]
    if not own:
        return SignState(Signing.UNSIGNED)
    return state_by(content_hash(entry), own, lambda: printed_on(entry.item, entry.topic))


def state_by(
    content: str, own: Iterable[SignOff], says: Callable[[], Mapping[str, Any]]
) -> SignState:
    """Return the state of an item by its own sign-offs and the hash of its content.

    `says` returns the content itself, and is called only where no sign-off stands for it.
    """
    own = list(own)
    if not own:
        return SignState(Signing.UNSIGNED)
    # By the content and not the day: an edit that is undone is what was signed once more.
    valid = [signoff for signoff in own if signoff.content == content]
    if valid:
        return SignState(Signing.SIGNED, latest_of_each(valid))
    last = latest_of_each(own)
    return SignState(Signing.STALE, last, changes(max(last, key=_when).was, says()))


def latest_of_each(signoffs: Iterable[SignOff]) -> tuple[SignOff, ...]:
    """Return the last sign-off of every reviewer, the earliest of these first."""
    last: dict[str, SignOff] = {}
    for signoff in sorted(signoffs, key=_when):
        last[signoff.by] = signoff
    return tuple(sorted(last.values(), key=_when))


def _when(signoff: SignOff) -> tuple[datetime.date, str, str]:
    return (signoff.on, signoff.by, signoff.content)


def by_item(signoffs: Iterable[SignOff]) -> dict[str, list[SignOff]]:
    """Return sign-offs by the id of their item."""
    found: dict[str, list[SignOff]] = {}
    for signoff in signoffs:
        found.setdefault(signoff.item, []).append(signoff)
    return found


def read_signoffs(folder: Path) -> tuple[SignOff, ...]:
    """Return the sign-offs of the bank in `folder`; none where it has no such file.

    Raises:
        FileFaults: the file cannot be read, or an entry is not one the tool wrote.
    """
    path = folder / SIGNOFF_FILE
    if not path.exists():
        return ()
    from itembank.files.toml_table import TomlFile

    return signoffs_of_file(TomlFile(path))


def signoffs_of_file(file: TomlFile) -> tuple[SignOff, ...]:
    """Return the sign-offs that a file holds, each once.

    Raises:
        FileFaults: an entry is not one the tool wrote.
    """
    top = file.top()
    found = [_read(table) for table in top.tables("signoffs")]
    top.close()
    file.finish()
    return tuple(dict.fromkeys(signoff for signoff in found if signoff is not None))


def _read(table: Table) -> SignOff | None:
    item, by, content = (table.text(key) for key in ("item", "by", "content"))
    on = table.any("on")
    if not isinstance(on, datetime.date) or isinstance(on, datetime.datetime):
        table.fault("on", "‘on’ must be a date, as in 2026-09-14.")
    was = table.table("was")
    if was is None:
        table.fault("", "‘was’ is missing here: what the item said when it was signed.")
    elif content and data_hash(was.data) != content:
        # Otherwise an edited sign-off would vouch for words that nobody has checked.
        table.fault(
            "content",
            f"The content of this sign-off of ‘{item}’ was changed by hand. "
            "Take the sign-off out and sign the item again.",
        )
    table.close()
    if was is None or not isinstance(on, datetime.date):
        return None
    return SignOff(item, by, on, content, was.data)


def signoff_of(entry: Entry, by: str, on: datetime.date) -> SignOff:
    """Return the statement that `by` checked what an entry says now."""
    content = printed_on(entry.item, entry.topic)
    return SignOff(entry.item.id, by, on, content_hash(entry), content)


def signoffs_text(signoffs: Iterable[SignOff], before: str = "") -> str:
    """Return the text of a sign-off file that holds `signoffs`; `before` is what it held.

    Entries of `before` that are still wanted stay as they are, with their comments; the others
    are taken out; new ones follow, by date.
    """
    wanted = set(signoffs)
    head, *blocks = _BLOCK.split(before or HEAD)
    kept: dict[SignOff, str] = {}
    for block in blocks:
        record = signoff_in(block)
        # As they stand, so that a merge shows only what is new and comments are kept.
        if record in wanted:
            kept.setdefault(record, block)
    new = [_block(signoff) for signoff in sorted(wanted - set(kept), key=_place)]
    pieces = [piece.rstrip("\n") + "\n" for piece in (head, *kept.values(), *new) if piece.strip()]
    return "\n".join(pieces)


def added_text(new: Iterable[SignOff], before: bool) -> str:
    """Return what to write at the end of a sign-off file for new ones, by date.

    `before` tells whether the file is there already.
    """
    blocks = [_block(signoff) for signoff in sorted(set(new), key=_place)]
    return "\n".join([*([] if before else [HEAD]), *blocks])


def _place(signoff: SignOff) -> tuple[object, ...]:
    return (signoff.on, signoff.item, signoff.by, signoff.content)


_WRITTEN = re.compile(
    r"""\[\[signoffs\]\]
item = "([^"\\\n]*)"
by = "([^"\\\n]*)"
on = (\d{4}-\d\d-\d\d)
content = "([^"\\\n]*)"
"""
)
"""How the tool writes an entry; what else stands in it does not tell it from others."""


def signoff_in(block: str) -> SignOff:
    """Return the sign-off that an entry of a file writes, but for what was signed."""
    if written := _WRITTEN.match(block):
        item, by, on, content = written.groups()
        return SignOff(item, by, datetime.date.fromisoformat(on), content)
    import tomllib

    (data,) = tomllib.loads(block)["signoffs"]
    return SignOff(data["item"], data["by"], data["on"], data["content"])


def _block(signoff: SignOff) -> str:
    import tomlkit

    table = tomlkit.table()
    for key in ("item", "by", "on", "content"):
        table.add(key, getattr(signoff, key))
    table.add("was", dict(signoff.was))
    entries = tomlkit.aot()
    entries.append(table)
    document = tomlkit.document()
    document.append("signoffs", entries)
    return tomlkit.dumps(document)
