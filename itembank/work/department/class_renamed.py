"""A class that gets another name: its plans and its results go with it, whole or not at all."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import TYPE_CHECKING

from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.files.snapshot import take
from itembank.files.together import Together
from itembank.files.toml_edit import with_data
from itembank.planning.week.week_plan import FILE_NAME, FOLDER
from itembank.text.folding import folded, same_name
from itembank.text.in_words import counted
from itembank.work.department.answered import Answers

if TYPE_CHECKING:
    from sqlalchemy import Connection


@dataclass(frozen=True, slots=True)
class Renamed:
    """A class with the name that it had and the one that it gets."""

    was: str
    name: str


def renamed_in(answers: Answers) -> tuple[Renamed, ...]:
    """Return the classes that get another name; one in other capitals is the same name.

    >>> from itembank.work.department.answered import ClassAnswer
    >>> renamed_in(Answers(classes=(ClassAnswer(name="9K", was="8K"), ClassAnswer(name="7M"))))
    (Renamed(was='8K', name='9K'),)
    """
    return tuple(
        Renamed(group.was, group.name)
        for group in answers.classes
        if group.was and group.name and not same_name(group.was, group.name)
    )


@dataclass(frozen=True, slots=True)
class Along:
    """What goes with the classes that are renamed: how many plans, and recorded lessons."""

    plans: int = 0
    lessons: int = 0


def renaming_said(home: Path, answers: Answers) -> str:
    """Return what comes of the classes that are to get another name; empty where there are none.

    Raises:
        ItembankError: the results cannot be read.
    """
    renamed = renamed_in(answers)
    if not renamed:
        return ""
    plans = sum(len(_plans_of(home, change.was)) for change in renamed)
    with _results(home) as connection:
        lessons = sum(_recorded(connection, change.was) for change in renamed if connection)
    names = ", ".join(f"{change.was} is called {change.name}" for change in renamed)
    went = f"{counted(plans, 'plan')} and {counted(lessons, 'recorded lesson')}"
    return (
        f"{names}: {went} go along. Packs that are made already keep the old name; make those to "
        "come anew."
    )


def _recorded(connection: Connection, class_name: str) -> int:
    from sqlalchemy import func, select

    from itembank.records.store.store_tables import lesson, of_class

    query = select(func.count()).select_from(lesson).where(of_class(class_name))
    return connection.scalar(query) or 0


@dataclass
class Carrying:
    """What takes plans and results along, as a part of a change of a department's files."""

    home: Path
    renamed: tuple[Renamed, ...]
    connection: Connection | None
    along: Along = Along()

    def into(self, change: Together) -> None:
        """Have a change put the plans in their new places, and change the results.

        Raises:
            ItembankError: there are plans or results under a new name already.
        """
        plans = sum(_carry_plans(change, self.home, renamed) for renamed in self.renamed)
        lessons = 0
        if self.connection is not None:
            lessons = sum(_carry_results(self.connection, renamed) for renamed in self.renamed)
        self.along = Along(plans, lessons)

    def clear(self) -> None:
        """Take away the folders that nothing is left in."""
        for renamed in self.renamed:
            for folder in (self.home / FOLDER / "earlier").glob(f"week-{renamed.was}-*"):
                with suppress(OSError):  # something else is in it
                    folder.rmdir()


@contextmanager
def carrying(home: Path, renamed: tuple[Renamed, ...]) -> Iterator[Carrying]:
    """Give what takes plans and results along with classes that are renamed.

    The results are kept as they were unless the body ends well, so that the files are to be put
    in their places within it.

    Raises:
        ItembankError: the results cannot be written.
    """
    if not renamed:
        yield Carrying(home, (), None)
        return
    with _results(home) as connection:
        yield Carrying(home, renamed, connection)


def _carry_plans(change: Together, home: Path, renamed: Renamed) -> int:
    count = 0
    for path in _plans_of(home, renamed.name):
        raise _taken(renamed, f"the plan {path.name}")
    for path in _plans_of(home, renamed.was):
        new = path.with_name(f"week-{renamed.name}-{path.stem[-10:]}.toml")
        _carry(change, path, new, renamed)
        earlier = path.parent / "earlier"
        for old in sorted((earlier / path.stem).glob("*.toml")):
            _carry(change, old, earlier / new.stem / old.name, renamed)
        count += 1
    return count


def _plans_of(home: Path, class_name: str) -> list[Path]:
    return [
        path
        for path in sorted((home / FOLDER).glob("week-*.toml"))
        if (found := FILE_NAME.fullmatch(path.name)) and same_name(found[1], class_name)
    ]


def _carry(change: Together, path: Path, new: Path, renamed: Renamed) -> None:
    """Have a plan stand at another place, of the class under its new name."""
    was = take(path)
    try:
        data = tomllib.loads(was.text)
    except tomllib.TOMLDecodeError as error:
        raise ItembankError(f"{path} cannot be read as TOML: {error}. Mend it first.") from None
    text = with_data(was.text, {**data, "class": renamed.name})
    text = text.replace(f"week-{renamed.was}-", f"week-{renamed.name}-")
    first, line_end, rest = text.partition("\n")
    if first.startswith("#"):
        text = first.replace(f" for {renamed.was}.", f" for {renamed.name}.") + line_end + rest
    change.file(new, was.encode(text), was=take(new))
    change.take_away(was)


@contextmanager
def _results(home: Path) -> Iterator[Connection | None]:
    """Give a connection to the results in a transaction; None where there are none."""
    from itembank.records.store.store import open_store
    from itembank.records.store.store_place import store_place

    try:
        store = open_store(store_place(home), make=False)
    except ItembankError as error:
        if error.matter != "no results yet":
            raise
        yield None
        return
    with store, store.writing("Nothing was changed.") as connection:
        yield connection


def _carry_results(connection: Connection, renamed: Renamed) -> int:
    from sqlalchemy import select, update

    from itembank.records.store.store_tables import exported, lesson, move

    key, new = folded(renamed.was), folded(renamed.name)
    if _recorded(connection, renamed.name):
        raise _taken(renamed, "a recorded lesson")
    count = _recorded(connection, renamed.was)
    named = {"class_name": renamed.name}
    connection.execute(
        update(lesson).where(lesson.c.class_key == key).values(class_key=new, **named)
    )
    for end in ("from", "to"):
        values = {f"{end}_class": renamed.name, f"{end}_key": new}
        connection.execute(update(move).where(move.c[f"{end}_key"] == key).values(**values))
    # What was exported keeps the name as it was typed then, maybe in other capitals.
    typed = connection.scalars(select(exported.c.class_name).distinct()).all()
    names = [name for name in typed if same_name(name, renamed.was)]
    connection.execute(update(exported).where(exported.c.class_name.in_(names)).values(**named))
    return count


def _taken(renamed: Renamed, what: str) -> ItembankError:
    return ItembankError(
        f"{renamed.was} cannot be called {renamed.name}: there is {what} under that name already. "
        "Choose another name. Nothing was changed.",
        field="classes",
    )
