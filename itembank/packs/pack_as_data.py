"""A pack as data, from its request and the questions that are chosen."""

from __future__ import annotations

from typing import TYPE_CHECKING

from itembank import VERSION
from itembank.packs.choosing.candidate import Candidate
from itembank.packs.chosen import Chosen
from itembank.planning.department.pack_request import PackRequest, stated

if TYPE_CHECKING:
    from itembank.packs.data.pack import Pack
    from itembank.packs.data.pack_item import PackItem

LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


def as_data(request: PackRequest, chosen: Chosen) -> Pack:
    """Return the chosen items and all else of the request as the data of a pack."""
    from itembank.packs.data import pack as model
    from itembank.packs.data.convert import Faces, pack_band, pack_item

    faces = Faces()
    titles = {topic.id: topic.title for topic in chosen.topics}
    banks = chosen.banks

    def item(candidate: Candidate, marks: int | None = None) -> PackItem:
        source = banks.source_of(candidate.item) if banks is not None else None
        title = titles[candidate.item.topic]
        return pack_item(candidate.item, candidate.source, faces, marks, source, title)

    def opening(candidate: Candidate | None) -> PackItem | None:
        return None if candidate is None else item(candidate)

    return model.Pack(
        made_by=made_by(),
        seed=stated(request.seed),
        lesson=model.Lesson(
            school=stated(request.school),
            class_name=stated(request.class_name),
            date=stated(request.date),
            title=stated(request.title),
        ),
        topics=[model.TopicLine(id=topic.id, title=topic.title) for topic in chosen.topics],
        versions=[
            model.Version(letter=letter, items=[item(candidate, 1) for candidate in version])
            for letter, version in zip(LETTERS, chosen.versions, strict=False)
        ],
        bands=[pack_band(band) for band in request.score_bands],
        sheets=[
            model.Sheet(
                tier=sheet.tier.value,
                worked=opening(sheet.worked),
                part_finished=opening(sheet.part_finished),
                items=[item(candidate) for candidate in sheet.items],
            )
            for sheet in chosen.sheets
        ],
        look=model.Look(
            large_print=stated(request.large_print).seats,
            paper=stated(request.paper),  # type: ignore[arg-type]
            print_tint=stated(request.print_tint),
            slips=stated(request.slips),
            self_mark=stated(request.self_mark),  # type: ignore[arg-type]
        ),
        drawing=(
            model.Provenance(questions_from="generated")
            if banks is None
            else banks.said(
                stated(request.follow_up),
                {candidate.item.address for candidate in chosen.taken()},
            )
        ),
    )


def as_asked(candidate: Candidate) -> PackItem:
    """Return a question of a starter as a slide asks it, without its working."""
    from itembank.packs.data.convert import Faces, pack_item

    return pack_item(candidate.item, candidate.source, Faces(), 1, asked_only=True)


def made_by() -> str:
    """Return the name and version of this tool, as packs record them."""
    return f"itembank {VERSION}"
