"""Forgets a pupil, a class or old lessons for good, and goes on with what was broken off."""

from __future__ import annotations

import contextlib
import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.packs.data.pack_place import packs_of, read_pack_data
from itembank.text.folding import same_name
from itembank.text.in_words import counted
from itembank.work.department.earlier_set_ups import forget_earlier_set_ups
from itembank.work.lesson.results_store import open_results
from itembank.work.places import packs_place

if TYPE_CHECKING:
    from itembank.planning.department.department import Department
    from itembank.records.forget.forgotten import Forgotten
    from itembank.records.forget.unfinished import Unfinished
    from itembank.records.pupils.whom import Whom


@dataclass(frozen=True, slots=True)
class ToForget:
    """What is to be forgotten: how many records of whom, in which store.

    `begun` says that it was begun already, so that there is nothing left to ask.
    """

    whom: Whom
    count: int
    store_name: str
    begun: bool

    @property
    def counted(self) -> str:
        """Return how much it is in words: records of a pupil, or lessons."""
        return counted(self.count, "record" if self.whom.seat else "lesson")


@dataclass(frozen=True, slots=True)
class ForgottenNow:
    """What became of it: `whom` is None where unused room of the store was swept alone.

    `listed` is the class or seat that department.toml still names; `unheard` says that it names
    none such, where nothing was kept of it either: it may be mistyped; `unfinished` is what else
    was begun before and is not done yet; `shared` tells of a store on a server; `copies` are
    packs with large-print copies for the seat, `looked_in` the one folder of packs that is known:
    nobody notes where else a pack was put.
    """

    whom: Whom | None
    forgotten: Forgotten
    store_name: str
    shared: bool
    listed: str = ""
    unfinished: tuple[Unfinished, ...] = ()
    copies: tuple[Path, ...] = ()
    looked_in: Path | None = None
    unheard: str = ""


def whom_of(
    seat: str | None = None, class_name: str | None = None, before: datetime.date | None = None
) -> Whom:
    """Return who or what is to be forgotten; a seat may name its class, as in 8K/A3.

    Raises:
        ItembankError: nothing is named, or the seat is none.
    """
    from itembank.people.seats import seat_fault
    from itembank.records.pupils.whom import Whom

    if seat is None:
        return Whom(class_name or "", before=before)
    name, slash, code = seat.rpartition("/")
    if not slash:
        name = class_name or ""
    elif class_name and not same_name(class_name, name):
        said = f"The seat is of {name}, and the class is said to be {class_name}. Leave one out."
        raise ItembankError(said, field="seat")
    if fault := seat_fault(code):
        raise ItembankError(fault, field="seat")
    return Whom(name, code.upper(), before)


def to_forget(department: Department, whom: Whom) -> ToForget:
    """Return what forgetting would remove: to be shown before it is done, since it is for good.

    Raises:
        ItembankError: nothing was ever recorded.
    """
    from itembank.records.forget.forgetting import count_rows
    from itembank.records.forget.unfinished import begun

    with open_results(department, make=False) as store:
        count = count_rows(store, whom)
        # Rows that are there were recorded since, maybe of somebody else: they are asked about.
        return ToForget(whom, count, store.name, not count and begun(store, whom))


def forget(department: Department, whom: Whom) -> ForgottenNow:
    """Forget for good, in the store and in the files it exported.

    Raises:
        ItembankError: the store cannot be written; then nothing was forgotten.
    """
    from itembank.records.forget.forgetting import count_rows
    from itembank.records.forget.forgetting import forget as forget_now
    from itembank.records.forget.unfinished import unfinished

    with open_results(department, make=False) as store:
        kept = count_rows(store, whom)
        forgotten = forget_now(store, whom)
        others = tuple(task for task in unfinished(store) if task.whom not in (None, whom))
        listed, unheard = _listed(department, whom)
        home = packs_place(department.folder)
        copies = large_print_for(whom, home)
        if whom.before is None:
            # What the set-up was may list the seat, and taking a change back would bring it back.
            forget_earlier_set_ups(department.folder)
        return ForgottenNow(
            whom,
            forgotten,
            store.name,
            store.shared,
            listed,
            others,
            copies,
            home,
            "" if kept else unheard,
        )


def _listed(department: Department, whom: Whom) -> tuple[str, str]:
    """Return the class or seat that the department lists, or a sentence that it does not."""
    if not whom.class_name:
        return "", ""
    for group in department.classes:
        if same_name(group.name, whom.class_name):
            seats = group.plan.seats
            if not whom.seat:
                return group.name, ""
            # A class that lists no seats takes any.
            if not seats or whom.seat in (seat.upper() for seat in seats):
                return (whom.seat, "") if seats else ("", "")
            return "", f"{group.name} lists no seat {whom.seat}, and nothing was kept of one."
    return "", f"There is no class {whom.class_name}, and nothing was kept of one."


def large_print_for(whom: Whom, home: Path) -> tuple[Path, ...]:
    """Return the packs in an output folder that hold large-print copies for a seat, by date."""
    if not whom.seat:
        return ()
    found = []
    for place in packs_of(home, whom.class_name):
        if whom.before is not None and place.date >= whom.before:
            continue
        with contextlib.suppress(ItembankError):
            look = read_pack_data(place.path)[1].get("look")
            seats = look.get("large_print") if isinstance(look, dict) else ()
            if isinstance(seats, list) and whom.seat in [str(seat).upper() for seat in seats]:
                found.append(place.path.parent)
    return tuple(found)


def finish_forgetting(department: Department) -> tuple[ForgottenNow, ...]:
    """Go on with all that was begun to be forgotten and is not done; nothing where all is done.

    Raises:
        ItembankError: nothing was ever recorded.
    """
    from itembank.records.forget.forgetting import finish
    from itembank.records.forget.unfinished import unfinished

    with open_results(department, make=False) as store:
        return tuple(
            ForgottenNow(begun.whom, finish(store, begun.number), store.name, store.shared)
            for begun in unfinished(store)
        )
