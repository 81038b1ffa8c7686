"""A department's folder: who the classes are and what their next lessons bring back.

The folder holds ``department.toml``::

    school = "Larkhythe School"
    default_class = "8K"

    [[classes]]
    name = "8K"
    year = 8
    title = "Adding fractions"
    topics = ["fractions.add-unlike", "ratio.share"]

A class may also state ``questions``, ``follow_up``, ``large_print``, ``paper``, ``print_tint`` and
``self_mark``, and a ``[classes.bands]`` of its own; a ``[bands]`` at the top of the file serves
every class. So do ``banks``, ``questions_from``, ``prefer``, ``signed_only`` and ``beyond_year``:
see :mod:`itembank.planning.department.question_sources`. What planning a week needs is told in
:mod:`itembank.planning.department.class_plan`.
"""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import field
from pathlib import Path

from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.files.faults import join_words
from itembank.files.toml_table import Table, TomlFile
from itembank.planning.bands.band_table import read_bands
from itembank.planning.bands.bands import BandScheme, default_scheme
from itembank.planning.choosing.week_settings import WeekSettings, read_week_settings
from itembank.planning.department.class_plan import ClassPlan, read_class_plan, taught_path
from itembank.planning.department.deciding import Deciding, read_deciding
from itembank.planning.department.known_topics import KnownTopics
from itembank.planning.department.large_copies import (
    LargePrint,
    note_strange_seats,
    read_large_print,
)
from itembank.planning.department.pack_request import SELF_MARK, USUAL, PackRequest, stated
from itembank.planning.department.papers import PAPERS
from itembank.planning.department.question_sources import StatedSources, read_sources
from itembank.planning.topic_names import unknown_topic
from itembank.text.characters import name_fault, shown, shown_value
from itembank.text.folding import folded, same_name

FILE_NAME = "department.toml"
MOST_QUESTIONS = 20
MOST_FOLLOW_UP = 20


@dataclass(frozen=True, slots=True)
class SchoolClass:
    """One class, with what its lessons use unless the teacher says otherwise."""

    name: str
    year: int
    title: str
    topics: tuple[str, ...]
    questions: int
    follow_up: int
    large_print: LargePrint
    paper: str
    print_tint: bool
    self_mark: str
    bands: BandScheme
    stated_sources: StatedSources = field(default_factory=StatedSources)
    plan: ClassPlan = field(default_factory=ClassPlan)

    @property
    def request(self) -> PackRequest:
        """Return what the class's packs are asked to be, its topics and title left open.

        Those depend on the day: some of its topics may not have been taught by then.
        """
        return PackRequest(
            class_name=self.name,
            year=self.year,
            questions=self.questions,
            follow_up=self.follow_up,
            large_print=self.large_print,
            paper=self.paper,
            print_tint=self.print_tint,
            self_mark=self.self_mark,
            bands=self.bands,
            stated_sources=self.stated_sources,
        )


@dataclass(frozen=True, slots=True)
class Department:
    """A school's department: its folder and its classes."""

    folder: Path
    school: str
    classes: tuple[SchoolClass, ...]
    default_class: str
    stated_sources: StatedSources = field(default_factory=StatedSources)
    deciding: Deciding = field(default_factory=Deciding)

    @property
    def request(self) -> PackRequest:
        """Return what the packs of all classes are asked to be."""
        return PackRequest(school=self.school, stated_sources=self.stated_sources)

    def find_class(self, name: str | None = None) -> SchoolClass:
        """Return the class of that name (capitals do not matter), or the default class.

        Raises:
            ItembankError: there is no such class; the message names those there are.
        """
        wanted = self.default_class if name is None else name
        for school_class in self.classes:
            if same_name(school_class.name, wanted):
                return school_class
        names = [school_class.name for school_class in self.classes]
        there = (
            f"The class is {names[0]}"
            if len(names) == 1
            else f"The classes are {join_words(names)}"
        )
        like = name_fault(name or "")
        raise ItembankError(
            f"There is no class {shown(name or '')} in {self.folder / FILE_NAME}. "
            f"{like or there + '.'}"
        )


def find_department(start: Path | None = None) -> Path:
    """Return the folder that holds ``department.toml``.

    With `start`, that folder itself (or the file in it) must be the department's; without,
    the current folder and then those above it are tried.

    Raises:
        ItembankError: no such file was found.
    """
    if start is not None:
        folder = start.parent if start.name == FILE_NAME else start
        if (folder / FILE_NAME).is_file():
            return folder
        if not folder.is_dir():
            raise ItembankError(
                f"There is no folder {folder}.", matter="no such department", folder=folder
            )
        raise ItembankError(f"The folder {folder} holds no {FILE_NAME}, so it is no department.")
    here = Path.cwd()
    # As far up as it goes, so that a command works in any folder of the department.
    for folder in (here, *here.parents):
        if (folder / FILE_NAME).is_file():
            return folder
    raise ItembankError(
        f"There is no {FILE_NAME} in {here} or above it.", matter="no department here"
    )


def read_department(
    folder: Path, known_topics: Collection[str] | None = None, text: str | None = None
) -> Department:
    """Read ``department.toml`` in `folder`; with `known_topics`, check each topic's name too.

    A `text` stands for the file, which may not be written yet.

    A topic that is not one of `known_topics` is looked for in the banks that the class uses.

    Raises:
        FileFaults: every fault of the file, each with its line, and those of a bank that had
            to be read.
    """
    file = TomlFile(folder / FILE_NAME, text)
    top = file.top()
    school = top.text("school", None, most=60)
    common = None
    if (table := top.table("bands")) is not None:
        common = read_bands(table)
    stated_sources = read_sources(top, folder)
    deciding = read_deciding(top)
    planning = read_week_settings(top, WeekSettings())
    in_use: dict[tuple[Path, ...], KnownTopics] = {}
    rows = top.tables("classes")
    classes = [
        _read_class(row, common or default_scheme(), stated_sources, known_topics, in_use, planning)
        for row in rows
    ]
    names = [school_class.name for school_class in classes]
    for index, row in enumerate(rows):
        if like := name_fault(names[index]):
            row.fault("name", like)
    # Commands take a class's name in capitals or not, so capitals alone tell no two apart.
    keys = [folded(name) for name in names]
    for index, row in enumerate(rows):
        if names[index] and keys[index] in keys[:index]:
            row.fault("name", f"There are two classes called {names[index]}. Rename one.")
    if not rows and "classes" not in top:
        top.fault("", "There is no class. Add a [[classes]] table with a name and topics.")
    default = top.text("default_class", names[0] if names else "")
    if "default_class" in top and default and default not in names:
        top.fault(
            "default_class",
            f"There is no class {default} in this file. "
            f"Write {join_words([n for n in names if n], 'or') or 'the name of a class'}.",
        )
    top.close()
    for known in in_use.values():
        file.faults += [fault for fault in known.faults if fault not in file.faults]
    file.finish()
    return Department(folder, school, tuple(classes), default, stated_sources, deciding)


def _read_class(
    row: Table,
    common: BandScheme,
    shared: StatedSources,
    known_topics: Collection[str] | None,
    in_use: dict[tuple[Path, ...], KnownTopics],
    planning: WeekSettings,
) -> SchoolClass:
    """Read one class; `in_use` keeps the topics of each choice of banks, so each is read once."""
    bands = common
    stated_sources = read_sources(row, row.file.path.parent).over(shared)
    if known_topics is not None:
        banks = stated_sources.banks or ()
        known_topics = in_use.setdefault(banks, KnownTopics(known_topics, banks))
    if (table := row.table("bands")) is not None:
        bands = read_bands(table) or common
    found = SchoolClass(
        name=row.text("name", None, most=12),
        year=row.whole("year", None, 1, 13),
        title=row.text("title", "Starter", most=60),
        topics=read_topics(row, known_topics),
        questions=row.whole("questions", stated(USUAL.questions), 1, MOST_QUESTIONS),
        follow_up=row.whole("follow_up", stated(USUAL.follow_up), 1, MOST_FOLLOW_UP),
        large_print=read_large_print(row) or LargePrint(),
        paper=row.choice("paper", "white", PAPERS),
        print_tint=row.flag("print_tint", False),
        self_mark=row.choice("self_mark", stated(USUAL.self_mark), SELF_MARK),
        bands=bands,
        stated_sources=stated_sources,
        plan=read_class_plan(row, planning),
    )
    note_strange_seats(row, found.large_print, found.plan.seats)
    for name in found.plan.taught:
        if known_topics is not None and name not in known_topics:
            where = (*row.path, "taught", *taught_path(row.any("taught"), name))
            row.file.fault(where, unknown_topic(name, known_topics), matter="no such topic")
    if any(mark in found.name for mark in "/\\:\n") or found.name.startswith("."):
        # The name becomes part of a folder's name.
        row.fault("name", f"The name ‘{found.name}’ must not start with . or hold / \\ or :.")
    row.close()
    return found


def read_topics(row: Table, known_topics: Collection[str] | None) -> tuple[str, ...]:
    """Read the ``topics`` of a table: at least one, none twice, all of them known."""
    found: list[str] = []
    values = row.items("topics")
    if not values:
        row.fault("topics", "There are no topics. List at least one.", matter="no such topic")
    for value in values:
        if not isinstance(value, str):
            row.fault("topics", f"A topic is a name in quotation marks, not {shown_value(value)}.")
        elif value in found:
            row.fault("topics", f"The topic {value} is listed twice.", value)
        elif known_topics is not None and value not in known_topics:
            row.fault("topics", unknown_topic(value, known_topics), value, matter="no such topic")
        else:
            found.append(value)
    return tuple(found)
