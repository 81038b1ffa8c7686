"""Set-up: every answer about the department, and every setting, to be changed; and taken back."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from itembank.desk.answering.answer_steps import (
    Step,
    faults_of,
    fields_of,
    read_step,
    rows_shown,
    step_at,
    steps_of,
)
from itembank.desk.answering.reading import Reading
from itembank.desk.answering.topics_form import ready_topics
from itembank.desk.replying.forms import action
from itembank.desk.replying.replies import onward, page, url
from itembank.errors import NotFound
from itembank.work.usual_home import is_demo

if TYPE_CHECKING:
    from itembank.desk.replying.desk import Desk
    from itembank.work.department.answered import Answers
    from itembank.work.department.made import Kept
    from itembank.work.department.setting_groups import Setting

CHANGED = (
    "Somebody changed these files while you were here, so nothing was written. Open this page "
    "anew in another tab to see what stands there now. Keep yours once more to write it over that."
)


def _kept(request: Request) -> Kept:
    from itembank.work.department.made import read_kept

    desk: Desk = request.app.state.desk
    return read_kept(desk.home)


def show(request: Request) -> Response:
    """Show all that is set up, each with the way to change it."""
    from itembank.work.department.earlier_set_ups import earlier_set_ups
    from itembank.work.department.outlook import outlook_on
    from itembank.work.department.setting_groups import CALLED, WHOLE

    kept = _kept(request)
    return page(
        request,
        "set_up",
        steps=_steps(kept.answers),
        outlook=outlook_on(kept.answers),
        groups={name: CALLED[name] for name in WHOLE},
        home=kept.folder,
        classes=[group.name for group in kept.answers.classes],
        demo=is_demo(kept.folder),
        changes=len(earlier_set_ups(kept.folder)),
    )


def _steps(answers: Answers) -> list[Step]:
    return [step for step in steps_of(answers) if step.part != "bands"]


def _digest(kept: Kept) -> str:
    from itembank.work.department.earlier_set_ups import digest_of

    return digest_of(kept.files)


def _read_then(kept: Kept, fields: Mapping[str, str], status: int) -> str:
    """Return what the files were when the person began to change them.

    A form that comes back with a fault is still about what it was filled in on; only once the
    person was told that the files changed is it about what they are now.
    """
    return _digest(kept) if status == 409 else fields.get("digest") or _digest(kept)


def _fields(form: FormData) -> dict[str, str]:
    return {name: value for name, value in form.items() if isinstance(value, str)}


def _step(request: Request, answers: Answers) -> Step:
    step = step_at(answers, request.path_params["step"])
    if step.part == "bands":
        raise NotFound("Nothing of that name is set up here.")
    return step


def part(request: Request) -> Response:
    """Show a part of what was answered."""
    kept = _kept(request)
    step = _step(request, kept.answers)
    return _part(request, kept, step, fields_of(step, kept.answers), Reading(kept.answers))


def _part(
    request: Request,
    kept: Kept,
    step: Step,
    fields: Mapping[str, str],
    reading: Reading,
    status: int = 400,
) -> Response:
    from itembank.work.department.looked_at import known_topics
    from itembank.work.department.outlook import outlook_on

    return page(
        request,
        "set_up_part",
        status=200 if reading.sound else status,
        step=step,
        fields=fields,
        rows=rows_shown(step, fields),
        reading=reading,
        outlook=outlook_on(kept.answers),
        titles=sorted(known_topics()[0].values()) if step.scheme else (),
        digest=_read_then(kept, fields, status),
    )


def change_part(request: Request, form: FormData) -> Response:
    """Change a part of what was answered, or show its form again with what is wrong."""
    from itembank.work.department.class_renamed import renaming_said
    from itembank.work.department.looked_at import look_at
    from itembank.work.department.made import change_department
    from itembank.work.department.new_year import in_new_year, without_days_taught

    kept = _kept(request)
    step, fields = _step(request, kept.answers), _fields(form)
    reading = read_step(step, fields, kept.answers)
    if reading.sound and fields.get("digest") != _digest(kept):
        reading.general.append(CHANGED)
        return _part(request, kept, step, fields, reading, 409)
    before = kept.files
    if reading.sound:
        if step.part == "year" and fields.get("new_year"):
            reading.answers = in_new_year(kept.answers, reading.answers)
            before = without_days_taught(before)
        if step.part == "classes":
            _give_topics(reading)
        look = look_at(reading.answers, kept.folder, before)
        every = (*look.missing, *look.wrong)
        mine = faults_of(step, reading.answers, every)
        reading.note(mine or [fault for fault in every if fault.part != "topics"])
        others = [fault for fault in every if fault.part == "topics" and fault not in mine]
        reading.general += [str(fault) for fault in others]
    if not reading.sound:
        return _part(request, kept, step, fields, reading)
    along = renaming_said(kept.folder, reading.answers)
    changed = change_department(kept, reading.answers, before)
    said = "Changed." if changed else "Nothing was changed: it says that already."
    return onward(url("set-up", step.address), " ".join((said, along, *reading.remarks)).strip())


def _give_topics(reading: Reading) -> None:
    """Give each year that has no topics yet an order to begin from, and say so."""
    for step in steps_of(reading.answers):
        known = {scheme.name for scheme in reading.answers.schemes}
        if step.scheme is not None and step.scheme.name not in known:
            reading.answers = ready_topics(reading.answers, step.scheme).answers
            said = f"Year {step.scheme.year} begins from a ready order of topics: look at it here."
            reading.remarks = (*reading.remarks, said)


def _group(request: Request) -> tuple[str, str, tuple[Setting, ...]]:
    """Return the class of an address, if any, the name of a group and its settings."""
    from itembank.work.department.setting_groups import CLASS, WHOLE

    desk: Desk = request.app.state.desk
    name, group = request.path_params.get("name", ""), request.path_params["group"]
    known = CLASS if name else WHOLE
    if group not in known:
        raise NotFound("Nothing of that name is set up here.")
    return desk.group(name).name if name else "", group, known[group]


def settings(request: Request) -> Response:
    """Show a group of settings, of the department or of a class."""
    from itembank.work.department.setting_text import settings_in
    from itembank.work.department.settings import department_data, table_of

    kept = _kept(request)
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
        digest=_read_then(kept, fields, status),
    )


def change_group(request: Request, form: FormData) -> Response:
    """Change settings, or show their form again with what is wrong."""
    from itembank.work.department.settings import change_settings

    kept, fields = _kept(request), _fields(form)
    name, _, group = _group(request)
    if fields.get("digest") != _digest(kept):
        return _settings(request, kept, fields, _refused(kept), 409)
    faults = change_settings(kept, group, fields, name)
    if faults:
        return _settings(request, kept, fields, _told(kept, faults))
    return onward(request.url.path, "Kept.")


def _refused(kept: Kept) -> Reading:
    return Reading(kept.answers, general=[CHANGED])


def _told(kept: Kept, faults: dict[str, str]) -> Reading:
    general = [faults.pop("")] if "" in faults else []
    return Reading(kept.answers, faults=faults, general=general)


def _class_name(request: Request) -> str:
    desk: Desk = request.app.state.desk
    name = request.path_params.get("name", "")
    return desk.group(name).name if name else ""


def bands(request: Request) -> Response:
    """Show the bands of the department, or of a class."""
    from itembank.work.department.band_settings import bands_shown

    kept = _kept(request)
    fields = bands_shown(kept, _class_name(request))
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
        name=_class_name(request),
        fields=fields,
        reading=reading,
        shapes=SHAPES,
        colours=colours,
        tiers=TIERS,
        modes=MODES,
        words=TASK_WORDS,
        usual=usual_signs(count),
        stands=_bands_now(request, kept),
        digest=_read_then(kept, fields, status),
    )


def _bands_now(request: Request, kept: Kept) -> tuple[str, ...]:
    """Return the bands in words, of a class in a starter of its own length."""
    from itembank.work.department.outlook import outlook_on

    desk: Desk = request.app.state.desk
    name = _class_name(request)
    if not name:
        return outlook_on(kept.answers).bands
    group = desk.group(name)
    return tuple(
        f"{band.name}: {band.lowest}"
        + (f" to {band.highest}" if band.highest != band.lowest else "")
        + f" of {group.questions} marks"
        for band in group.bands.bands(group.questions)
    )


def change_bands(request: Request, form: FormData) -> Response:
    """Change bands, or show their form again with what is wrong."""
    from itembank.work.department import band_settings

    kept, fields = _kept(request), _fields(form)
    if fields.get("digest") != _digest(kept):
        return _bands(request, kept, fields, _refused(kept), 409)
    faults = band_settings.change_bands(kept, fields, _class_name(request))
    if faults:
        return _bands(request, kept, fields, _told(kept, faults))
    return onward(request.url.path, "Kept. Packs that are made from now on have these bands.")


def take_back(request: Request, form: FormData) -> Response:
    """Take the last change of the set-up back."""
    from itembank.work.department.earlier_set_ups import take_back_set_up

    desk: Desk = request.app.state.desk
    take_back_set_up(desk.home)
    return onward("/set-up", "The last change is taken back.")


ROUTES = [
    Route("/set-up", show),
    Route("/set-up/take-back", action(take_back), methods=["POST"]),
    Route("/set-up/all/bands", bands),
    Route("/set-up/all/bands", action(change_bands), methods=["POST"]),
    Route("/set-up/all/{group}", settings),
    Route("/set-up/all/{group}", action(change_group), methods=["POST"]),
    Route("/set-up/class/{name}/bands", bands),
    Route("/set-up/class/{name}/bands", action(change_bands), methods=["POST"]),
    Route("/set-up/class/{name}/{group}", settings),
    Route("/set-up/class/{name}/{group}", action(change_group), methods=["POST"]),
    Route("/set-up/{step}", part),
    Route("/set-up/{step}", action(change_part), methods=["POST"]),
]
