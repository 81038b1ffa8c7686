"""A week on disk: its packs, its overview and its plan, written together."""

from __future__ import annotations

import datetime
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Any

from itembank.errors import ItembankError
from itembank.packs.data.pack_place import PACK_FILE, folder_name, read_pack_data
from itembank.planning.choosing.topic_reason import Cause, Reason
from itembank.planning.department.sheet_items import LessonSheets, SheetItems
from itembank.planning.week.week_plan import (
    FOLDER,
    PlannedLesson,
    WeekPlan,
    WeekTopic,
    plan_text,
    written_anew,
)
from itembank.text.paths_shown import quoted_path
from itembank.work.week.earlier_plans import clear_oldest, place_for_next
from itembank.work.week.kinds_asked import kinds_asked, kinds_in

if TYPE_CHECKING:
    from itembank.files.snapshot import Snapshot
    from itembank.work.week.planner import Planner
    from itembank.work.week.week_build import Builder


@dataclass
class Week:
    """A plan with its questions settled, where it stands, and where packs go."""

    planner: Planner
    plan: WeekPlan
    path: Path
    home: Path
    how_to_build: str = ""

    @cached_property
    def skipped(self) -> list[str]:
        """Return the days of the week on which a lesson falls out, and why."""
        return self.planner.closed_days(self.plan.week)

    @property
    def overview(self) -> Path:
        """Return where the week on one page goes."""
        return self.home / self.plan.file_name.replace(".toml", ".pdf")

    def folder(self, lesson: PlannedLesson) -> Path:
        """Return a pack's folder; a second lesson on one day has its period in the name."""
        same_day = [planned for planned in self.plan.lessons if planned.date == lesson.date]
        period = lesson.period if len(same_day) > 1 else ""
        return self.home / folder_name(self.plan.class_name, lesson.date, period)

    def write(
        self,
        builder: Builder,
        lessons: Sequence[PlannedLesson],
        replace: bool,
        rewrite: bool,
        was: Snapshot | None = None,
        keep_earlier: bool = True,
    ) -> None:
        """Make the packs of some lessons and write them with overview and plan, or nothing.

        A plan file that says all this already is not touched unless it is to `rewrite`. `was` is
        that file before anything was made of it; it is kept beside the plans, so that the change
        can be taken back, unless that is what happens here.

        Raises:
            ChangedSince: somebody has saved the plan since then; theirs stays, and all else too.
            ItembankError: something cannot be made or written, or is there already.
            CheckFailed: a key is wrong.
        """
        from itembank.packs.data.write_packs import write_together

        folders = [self.folder(lesson) for lesson in lessons]
        if not replace and (there := [folder for folder in folders if folder.exists()]):
            names = ", ".join(folder.name for folder in there)
            raise ItembankError(
                f"{self.home} holds packs already: {names}.", matter="packs there", folders=there
            )
        builder.build([self.planner.request(lesson) for lesson in lessons])
        files: dict[Path, bytes] = {}
        if rewrite or not self.path.exists():
            shown = quoted_path(Path(FOLDER) / self.path.name)
            run = self.how_to_build.format(path=shown)
            text = plan_text(self.plan, self.skipped, run)
            files[self.path] = (written_anew(text, was.text) if was else text).encode()
            if keep_earlier and was is not None and was.raw not in (None, files[self.path]):
                files[place_for_next(self.path)] = was.raw
        packs = builder.packs()
        told = {
            lesson.key: kinds_in(made[PACK_FILE])
            for lesson, made in zip(lessons, packs, strict=True)
        }
        files[self.overview] = self._page(told)
        known = {} if was is None else {self.path: was}
        if was is not None and self.path not in files:
            was.refuse_newer()  # packs of what the plan said before would not be of this plan
        write_together(dict(zip(folders, packs, strict=True)), files, replace, known)
        clear_oldest(self.path)

    def differs(self, lesson: PlannedLesson) -> bool:
        """Tell whether there is a pack of a lesson that holds other questions than the plan."""
        return self.built(lesson) not in (None, lesson.asked)

    def built(self, lesson: PlannedLesson) -> tuple[str, ...] | None:
        """Return what the starter asks in the pack of a lesson that is there, or None.

        Of a pack that cannot be read, which is then as good as another, that is nothing.
        """
        if not (self.folder(lesson) / PACK_FILE).exists():
            return None
        try:
            _, pack = read_pack_data(self.folder(lesson))
            return tuple(str(item["address"]) for item in pack["versions"][0]["items"])
        except (ItembankError, LookupError, TypeError):
            return ()

    def as_built(self, lesson: PlannedLesson) -> PlannedLesson:
        """Return a lesson with what its pack asks; as it is where that cannot be read."""
        try:
            _, pack = read_pack_data(self.folder(lesson))
            items = pack["versions"][0]["items"]
            counts = Counter(str(item["topic"]) for item in items)
            sheets = tuple(_sheet(sheet) for sheet in pack["sheets"])
            return replace(
                lesson,
                title=str(pack["lesson"]["title"]),
                questions=len(items),
                seed=int(pack["seed"]),
                topics=tuple(
                    WeekTopic(name, n, Reason(lesson.date, Cause.PACK))
                    for name, n in counts.items()
                ),
                asked=tuple(str(item["address"]) for item in items),
                sheets=LessonSheets(
                    tuple(counts),
                    sheets,
                    max((len(sheet.questions) for sheet in sheets), default=0),
                ),
            )
        except (ItembankError, ValueError, LookupError, TypeError):
            return lesson

    def _page(self, told: Mapping[tuple[datetime.date, str], str]) -> bytes:
        """Return the week on one page; `told` are the kinds of question in the new packs."""
        from itembank.pages.documents.week_overview import week_overview
        from itembank.work.week.week_page import week_data

        kinds = {
            lesson.key: told[lesson.key] if lesson.key in told else kinds_asked(self.folder(lesson))
            for lesson in self.plan.lessons
        }
        return week_overview(week_data(self.planner, self.plan, self.skipped, kinds))


def _sheet(stored: Mapping[str, Any]) -> SheetItems:
    opening = [stored[name]["address"] for name in ("worked", "part_finished") if stored[name]]
    questions = tuple(str(item["address"]) for item in stored["items"])
    return SheetItems(str(stored["tier"]), tuple(map(str, opening)), questions)
