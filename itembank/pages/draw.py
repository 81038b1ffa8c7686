"""Every document of a pack, by file name."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from itembank.packs.data.pack import Pack
from itembank.packs.data.pack_item import PackItem

Drawer = Callable[[Pack], bytes]


def drawers(pack: Pack) -> dict[str, Drawer]:
    """Return what draws each file of `pack`, by its name, in the order they are used."""
    from itembank.pages.documents.follow_up_answers import follow_up_answers
    from itembank.pages.documents.notes import teacher_notes
    from itembank.pages.documents.sheets import DRAWERS as sheets
    from itembank.pages.documents.slides import answers, starter
    from itembank.pages.documents.slips import slips
    from itembank.pages.documents.task_slide import next_tasks

    found: dict[str, Drawer] = {
        "starter.pdf": starter,
        "answers.pdf": answers,
        "next-tasks.pdf": next_tasks,
    }
    if pack.look.slips or len(pack.versions) > 1:
        found["slips.pdf"] = slips
    for sheet in pack.sheets:
        found[f"{sheet.tier}.pdf"] = sheets[sheet.tier]
    if pack.sheets:
        found["follow-up-answers.pdf"] = follow_up_answers
    found["teacher-notes.pdf"] = teacher_notes
    if pack.look.large_print:
        from itembank.pages.documents.large_print import large_print_drawers

        found |= large_print_drawers(pack)
    return found


class _FitsSlides:
    """Tells how full slides and slips are."""

    def __call__(self, pack: Pack, count: int) -> bool:
        """Tell whether the starter of a pack stands on so many slides, in all its versions."""
        from itembank.pages.documents.slides import on_slides

        return on_slides(pack, count)

    def share(self, item: PackItem, shown: bool) -> float | None:
        """Return the least share of a slide that a question takes; None if it cannot be set.

        Its figure counts unless it is `shown` by another question.
        """
        from itembank.pages.documents.slides import MOST_ROOM
        from itembank.pages.parts.slide.least_room import least_share

        return least_share(item, shown, MOST_ROOM)

    def on_slip(self, pack: Pack) -> bool:
        """Tell whether one side of a slip holds the starter, in all its versions."""
        from itembank.pages.documents.slips import on_slip

        return on_slip(pack)

    def slip_share(self, item: PackItem) -> float:
        """Return the least share of one side of a slip that a question takes."""
        from itembank.pages.documents.slips import least_share

        return least_share(item)


fits_slides = _FitsSlides()


def draw_pack(pack: Pack) -> dict[str, bytes]:
    """Return every PDF of `pack` by file name. The same pack always gives the same bytes.

    Raises:
        ItembankError: something is too long for its page at the smallest size allowed.
    """
    return {name: draw(pack) for name, draw in drawers(pack).items()}


def load_all() -> None:
    """Load what every document is drawn with, so that a copy of this process need not."""
    from itembank.pages.engine.faces import fonts, maths_face
    from itembank.pages.engine.faces.maths_metrics import metrics
    from itembank.pages.engine.maths import setting
    from itembank.pages.engine.pdf import attached, compact_file, xmp

    assert all((attached, compact_file, setting, xmp))
    for load in (partial(fonts.face, True), fonts.face, maths_face.font_file, metrics):
        load()
