"""What the desk sends back: a page from its template, or the way to the next page.

After every form the browser is sent on to a page (303 See Other, RFC 9110), so that going back or
loading again does nothing twice. A sentence for that next page waits here for it, under a number
in its address.
"""

from __future__ import annotations

import itertools
import secrets
from collections import OrderedDict
from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path
from typing import Any
from urllib.parse import quote

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from starlette.requests import Request
from starlette.responses import HTMLResponse, RedirectResponse, Response

from itembank.desk.replying import band_sign, mathematics
from itembank.errors import ItembankError
from itembank.packs.data.kinds_stored import kind_stored
from itembank.text import in_words
from itembank.text.true_minus import printed

TEMPLATES = Path(__file__).parents[1] / "templates"
MOST_WAITING = 200
"""Sentences that wait for the page they are said on; the oldest is let go first."""
_waiting: OrderedDict[str, tuple[str, str]] = OrderedDict()
_numbers = itertools.count()


def url(*parts: object) -> str:
    """Return an address of the desk from its parts, each written so that it stays one part.

    >>> url("class", "8K/2", "week")
    '/class/8K%2F2/week'
    """
    return "/" + "/".join(quote(str(part), safe="") for part in parts)


@lru_cache(maxsize=1)
def environment() -> Environment:
    """Return the templates, with what all of them may use; all text in them is escaped."""
    made = Environment(
        loader=FileSystemLoader(TEMPLATES),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        auto_reload=False,
    )
    made.filters |= {
        "maths": mathematics.maths,
        "prompt": mathematics.prompt,
        "picture": mathematics.picture,
        "sign": band_sign.sign,
        "kind": kind_stored,
        "printed": printed,
        "long_day": in_words.long_day,
        "day_month": in_words.day_month,
        "dated": in_words.day_month_year,
        "weekday": in_words.weekday,
        "counted": in_words.counted,
        "moment": in_words.moment,
    }
    made.globals |= {"url": url}
    return made


def page(request: Request, name: str, /, *, status: int = 200, **values: Any) -> Response:
    """Return a page: the template `name` with its values, and the sentence that waits for it."""
    desk = request.app.state.desk
    said = _waiting.pop(request.query_params.get("said", ""), None)
    head = _head(desk)
    text = (
        environment()
        .get_template(f"{name}.html")
        .render(request=request, page_name=name, said=said, **head, **values)
    )
    return HTMLResponse(text, status, headers={"cache-control": "no-store"})


def _head(desk: Any) -> Mapping[str, Any]:
    """Return what stands at the head of every page; it must not fail where a file is at fault."""
    try:
        department = desk.department
    except ItembankError:
        return {"school": "", "class_names": ()}
    names = tuple(group.name for group in department.classes)
    return {"school": department.school, "class_names": names}


def onward(where: str, said: str = "", kind: str = "done") -> Response:
    """Send the browser on to a page, which shows a sentence at its head.

    `kind` is *done*, *note* or *fault*; a part of the page may be named at the end of `where`.
    """
    where, mark, part = where.partition("#")
    if said:
        token = f"{next(_numbers)}-{secrets.token_urlsafe(6)}"
        _waiting[token] = kind, said
        while len(_waiting) > MOST_WAITING:
            _waiting.popitem(last=False)
        where += ("&" if "?" in where else "?") + "said=" + token
    return RedirectResponse(where + mark + part, 303)
