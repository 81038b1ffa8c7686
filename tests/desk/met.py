"""The pages of the desk, met as a visitor would: by following links.

A new page that is linked from anywhere is met without being named here, and so is held to all
that the tests of pages ask. Pages that no link leads to stand in `UNLINKED`.
"""

from urllib.parse import parse_qsl, quote, urljoin, urlsplit

from starlette.routing import Match

from itembank.desk.pages import all_routes
from itembank.desk.pages.shown_forms import STATES as SHOWN_STATES
from itembank.desk.pages.shown_forms import STEPS

FILES = ("/packs/{folder}/{file}", "/overview/{file}", "/typefaces")
"""What is no page of the desk but a file it sends."""
SHOWN = (
    "/shown-parts",
    *(
        f"/shown-parts/{what}/{quote(state)}"
        for what in (*STEPS, "question")
        for state in SHOWN_STATES
    ),
)
"""Where every part of pages stands in every state, for those who build the desk."""
UNLINKED = (
    "/nope",
    "/class/8K/week/soon",
    "/class/8K/moving/forget?seat=A1",
    "/begin",
    "/begin/year",
    "/begin/classes",
    "/begin/topics-8",
    "/begin/bands",
    "/begin/whole",
    "/begin/made",
    "/class/8K/seat/A1",
    "/results/questions",
    *SHOWN,
)


def route(address):
    """Return the route that answers an address, None where none does."""
    scope = {"type": "http", "method": "GET", "path": urlsplit(address).path}
    for each in all_routes():
        if each.matches(scope)[0] == Match.FULL:
            return each.path
    return None


def kind(address):
    """Return what an address has in common with those of its kind: route and names asked for."""
    asked = sorted(name for name, _ in parse_qsl(urlsplit(address).query) if name != "said")
    return (route(address), *asked)


def met(page, base, *starts):
    """Go to `starts`, and to the first address met of each further kind that links lead to.

    Yields each address as the page stands there: what is done with it there is nobody's concern.
    """
    found, waiting, kinds = set(), list(starts), {kind(start) for start in starts}
    while waiting:
        address = waiting.pop(0)
        if address in found or (address not in starts and kind(address) in kinds):
            continue
        kinds.add(kind(address))
        found.add(address)
        page.goto(base + address)
        for link in page.eval_on_selector_all("a[href]", "all => all.map(a => a.href)"):
            whole = urljoin(base + address, link).partition("#")[0]
            path = whole.removeprefix(base)
            drawn = urlsplit(whole).path.endswith(".pdf")  # looked at by the tests of pages
            if whole.startswith(base + "/") and route(path) not in (None, *FILES) and not drawn:
                waiting.append(path)
        yield address
