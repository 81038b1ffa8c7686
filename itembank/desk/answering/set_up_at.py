"""What the pages of the set-up share: the files as they are, and whether they changed meanwhile."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from starlette.requests import Request

from itembank.desk.answering.reading import Reading

if TYPE_CHECKING:
    from itembank.desk.replying.desk import Desk
    from itembank.work.department.made import Kept

CHANGED = (
    "Somebody changed these files while you were here, so nothing was written. Open this page "
    "anew in another tab to see what stands there now. Keep yours once more to write it over that."
)


def kept_of(request: Request) -> Kept:
    """Return what is set up, as the files have it now."""
    from itembank.work.department.made import read_kept

    desk: Desk = request.app.state.desk
    return read_kept(desk.home)


def digest_of(kept: Kept) -> str:
    """Return what tells whether the files have changed since a person saw them."""
    from itembank.work.department import earlier_set_ups

    return earlier_set_ups.digest_of(kept.files)


def read_then(kept: Kept, fields: Mapping[str, str], status: int) -> str:
    """Return what the files were when the person began to change them.

    A form that comes back with a fault is still about what it was filled in on; only once the
    person was told that the files changed is it about what they are now.
    """
    return digest_of(kept) if status == 409 else fields.get("digest") or digest_of(kept)


def refused(kept: Kept) -> Reading:
    """Return what is said where the files changed while a person filled in a form."""
    return Reading(kept.answers, general=[CHANGED])


def told(kept: Kept, faults: dict[str, str]) -> Reading:
    """Return faults as a form shows them: each beside its field, the rest above all."""
    general = [faults.pop("")] if "" in faults else []
    return Reading(kept.answers, faults=faults, general=general)


def class_name_of(request: Request) -> str:
    """Return the class in an address, as it is written in the files; empty where there is none.

    Raises:
        NotFound: there is no such class.
    """
    desk: Desk = request.app.state.desk
    name = request.path_params.get("name", "")
    return desk.group(name).name if name else ""
