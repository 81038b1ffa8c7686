"""A group of settings, of the department or of a class, to be changed."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from itembank.desk.answering.reading import Reading
from itembank.desk.answering.set_up_at import (
    digest_of,
    kept_of,
    read_then,
    refused,
    told,
)
from itembank.desk.replying.forms import action, fields_typed
from itembank.desk.replying.replies import onward, page
from itembank.errors import NotFound

if TYPE_CHECKING:
    from itembank.desk.replying.desk import Desk
    from itembank.work.department.made import Kept
    from itembank.work.department.setting_groups import Setting


def _group(request: Request) -> tuple[str, str, tuple[Setting, ...]]:
    """Return the class of an address, if any, the name of a group and its settings."""
    from itembank.work.department.setting_groups import CLASS, WHOLE

    desk: Desk = request.app.state.desk
    name, group = request.path_params.get("name", ""), request.path_params["group"]
    known = CLASS if name else WHOLE
    if group not in known:
        raise NotFound("Nothing of that name is set up here.")
    return desk.group(name).name if name else "", group, known[group]


def show(request: Request) -> Response:
    """Show a group of settings, of the department or of a class."""
    from itembank.work.department.setting_text import settings_in
    from itembank.work.department.settings import department_data, table_of

    kept = kept_of(request)
    name, _, group = _group(request)
    table, _ = table_of(department_data(kept), name)
    return _settings(request, kept, settings_in(table, group), Reading(kept.answers))


def _settings(
    request: Request, kept: Kept, fields: Mapping[str, str], reading: Reading, status: int = 400
) -> Response:
    from itembank.work.department.setting_groups import CALLED, usual_of
    from itembank.work.department.settings import with_choices

    name, group, rows = _group(request)
    return page(
        request,
        "set_up_settings",
        status=200 if reading.sound else status,
        name=name,
        called=CALLED[group],
        group_name=group,
        settings=with_choices(rows, kept),
        usual={row.name: usual_of(row, group, name) for row in rows},
        fields=fields,
        reading=reading,
        digest=read_then(kept, fields, status),
    )


def change(request: Request, form: FormData) -> Response:
    """Change settings, or show their form again with what is wrong."""
    from itembank.work.department.settings import change_settings

    kept, fields = kept_of(request), fields_typed(form)
    name, _, group = _group(request)
    if fields.get("digest") != digest_of(kept):
        return _settings(request, kept, fields, refused(kept), 409)
    faults = change_settings(kept, group, fields, name)
    if faults:
        return _settings(request, kept, fields, told(kept, faults))
    return onward(request.url.path, "Kept.")


ROUTES = [
    Route("/set-up/all/{group}", show),
    Route("/set-up/all/{group}", action(change), methods=["POST"]),
    Route("/set-up/class/{name}/{group}", show),
    Route("/set-up/class/{name}/{group}", action(change), methods=["POST"]),
]
