"""The bands of the department, or of a class, to be changed."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from itembank.desk.answering.reading import Reading
from itembank.desk.answering.set_up_at import (
    class_name_of,
    digest_of,
    kept_of,
    read_then,
    refused,
    told,
)
from itembank.desk.replying.forms import action, fields_typed
from itembank.desk.replying.replies import onward, page

if TYPE_CHECKING:
    from itembank.desk.replying.desk import Desk
    from itembank.work.department.made import Kept


def show(request: Request) -> Response:
    """Show the bands of the department, or of a class."""
    from itembank.work.department.band_settings import bands_shown

    kept = kept_of(request)
    fields = bands_shown(kept, class_name_of(request))
    return _bands(request, kept, fields, Reading(kept.answers))


def _bands(
    request: Request, kept: Kept, fields: Mapping[str, str], reading: Reading, status: int = 400
) -> Response:
    from itembank.planning.bands.band_signs import SHAPES
    from itembank.planning.bands.next_tasks import MODES, TIERS
    from itembank.work.department.band_settings import PALETTE, TASK_WORDS, usual_signs

    colours = {f"{colour} {name}": name for colour, name in PALETTE.items()}
    own = [value for key, value in fields.items() if key.endswith("-colour") and value]
    colours |= {value: value.partition(" ")[2] or value for value in own if value not in colours}
    count = sum(bool(fields.get(f"band-{n}-name")) for n in range(5))
    return page(
        request,
        "set_up_bands",
        status=200 if reading.sound else status,
        name=class_name_of(request),
        fields=fields,
        reading=reading,
        shapes=SHAPES,
        colours=colours,
        tiers=TIERS,
        modes=MODES,
        words=TASK_WORDS,
        usual=usual_signs(count),
        stands=_bands_now(request, kept),
        digest=read_then(kept, fields, status),
    )


def _bands_now(request: Request, kept: Kept) -> tuple[str, ...]:
    """Return the bands in words, of a class in a starter of its own length."""
    from itembank.work.department.outlook import outlook_on

    desk: Desk = request.app.state.desk
    name = class_name_of(request)
    if not name:
        return outlook_on(kept.answers).bands
    group = desk.group(name)
    return tuple(
        f"{band.name}: {band.lowest}"
        + (f" to {band.highest}" if band.highest != band.lowest else "")
        + f" of {group.questions} marks"
        for band in group.bands.bands(group.questions)
    )


def change(request: Request, form: FormData) -> Response:
    """Change bands, or show their form again with what is wrong."""
    from itembank.work.department import band_settings

    kept, fields = kept_of(request), fields_typed(form)
    if fields.get("digest") != digest_of(kept):
        return _bands(request, kept, fields, refused(kept), 409)
    faults = band_settings.change_bands(kept, fields, class_name_of(request))
    if faults:
        return _bands(request, kept, fields, told(kept, faults))
    return onward(request.url.path, "Kept. Packs that are made from now on have these bands.")


ROUTES = [
    Route("/set-up/all/bands", show),
    Route("/set-up/all/bands", action(change), methods=["POST"]),
    Route("/set-up/class/{name}/bands", show),
    Route("/set-up/class/{name}/bands", action(change), methods=["POST"]),
]
