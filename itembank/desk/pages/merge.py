"""A colleague's bank merged into the department's: handed over, looked through, written."""

from __future__ import annotations

import secrets
import tempfile
import threading
from collections import OrderedDict
from pathlib import Path

from starlette.concurrency import run_in_threadpool
from starlette.datastructures import FormData, UploadFile
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from itembank.desk.pages.bank_question import faces
from itembank.desk.pages.questions import AtBank, at_bank
from itembank.desk.replying.forms import action, text
from itembank.desk.replying.replies import onward, page
from itembank.errors import ItembankError, NotFound
from itembank.files.typed_path import typed_path
from itembank.text.in_words import counted

MOST_HELD = 3
"""Banks that wait for a merge to be confirmed; the oldest is let go first."""
MOST_FILES = 310
"""Files read from a form: a few more than a bank may have, so that it is told how many it may."""
_held: OrderedDict[str, tempfile.TemporaryDirectory[str]] = OrderedDict()
_lock = threading.Lock()


def show(request: Request) -> Response:
    """Ask for a colleague's bank."""
    return _ask(request, at_bank(request, to_change=True))


def _ask(request: Request, at: AtBank, fault: str = "", path: str = "") -> Response:
    return page(
        request,
        "merge",
        status=400 if fault else 200,
        **at.shared,
        preview=None,
        fault=fault,
        path=path,
        here=_is_here(request),
    )


def _is_here(request: Request) -> bool:
    """Tell whether this desk answers its own computer alone, so that folders may be named."""
    return request.app.state.password is None


async def hand_over(request: Request) -> Response:
    """Take a colleague's bank in, and show what would come of merging it."""
    async with request.form(max_fields=20, max_files=MOST_FILES) as form:
        sent = [
            (file.filename or "", await file.read())
            for file in form.getlist("files")
            if isinstance(file, UploadFile) and file.filename
        ]
        return await run_in_threadpool(_preview, request, sent, text(form, "path"))


def _preview(request: Request, sent: list[tuple[str, bytes]], path: str) -> Response:
    from itembank.work.bank.merge_preview import preview_merge
    from itembank.work.bank.received import files_in, files_sent, lay_out

    at = at_bank(request, to_change=True)
    folder = tempfile.TemporaryDirectory(prefix="itembank-bank-", ignore_cleanup_errors=True)
    try:
        if sent:
            files = files_sent(sent)
        elif path and _is_here(request):
            files = files_in(typed_path(path))
        else:
            raise ItembankError("Choose your colleague’s bank first.")
        lay_out(files, Path(folder.name))
        preview = preview_merge(at.bank.folder, Path(folder.name))
    except ItembankError as error:
        folder.cleanup()
        # What was handed over has no folder that its sender knows.
        said = str(error).replace(f"{folder.name}/", "").replace(folder.name, "your file")
        return _ask(request, at, said, path)
    return page(
        request,
        "merge",
        **at.shared,
        preview=preview,
        token=_hold(folder),
        new=[(item, faces(item.shown)) for item in preview.new],
        apart=[
            (difference, faces(difference.mine.shown), faces(difference.theirs.shown))
            for difference in preview.apart
        ],
    )


def _hold(folder: tempfile.TemporaryDirectory[str]) -> str:
    token = secrets.token_urlsafe(12)
    with _lock:
        _held[token] = folder
        while len(_held) > MOST_HELD:
            _held.popitem(last=False)[1].cleanup()
    return token


def write(request: Request, form: FormData) -> Response:
    """Merge what was looked through, as was chosen for each question that differs."""
    from itembank.work.bank.merge_preview import merge_and_settle

    at = at_bank(request, to_change=True)
    with _lock:
        folder = _held.pop(text(form, "token"), None)
    if folder is None:
        raise NotFound("The desk holds that bank no more. Hand it over again.")
    choices = {
        name.removeprefix("keep-"): str(value)
        for name, value in form.items()
        if name.startswith("keep-")
    }
    with folder:
        merged, left = merge_and_settle(at.bank.folder, Path(folder.name), choices)
    came = len(merged.report.only_second) - len(
        {id for conflict in merged.report.conflicts for id in conflict.ids}
        & set(merged.report.only_second)
    )
    said = f"Merged: {counted(came, 'new question')}."
    if left:
        said += f" To settle later, on their own pages: {', '.join(left)}."
    return onward(at.url(), said)


MERGE = "/questions/{bank}/merge"
ROUTES = [
    Route(MERGE, show),
    Route(MERGE, hand_over, methods=["POST"]),
    Route(MERGE + "/write", action(write), methods=["POST"]),
]
