"""Every page of the desk in a browser: no barrier that axe-core finds, nothing out of place."""

import pytest
from axe_playwright_python.sync_playwright import Axe

from tests.depth import WHOLE, whole
from tests.desk.met import UNLINKED, met
from tests.desk.served import served
from tests.desk.states import (
    COMING,
    MID_WEEK,
    RECORDED,
    STATES,
    by_seats,
    first_day,
    lived_in,
    script,
)

WIDTHS = (360, 768, 1920)
PAGES = (
    *("/", "/class/8K/week/2026-11-30", RECORDED, COMING, f"{COMING}/count", f"{COMING}/write"),
    *(f"{RECORDED}/board?stage=answers", "/begin/classes", "/results/questions", "/shown-parts"),
)
"""Pages of every build, and all parts of pages: `make whole` looks at all that links lead to."""
LAYOUT = script("layout.js")
FOLDED = "details:not([open])"
OPEN = "all => { all.forEach(d => { d.open = true; }); return all.length; }"
RULES = {
    "runOnly": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
    "resultTypes": ["violations"],
}


@pytest.fixture(autouse=True)
def mid_week(on_day, monkeypatch):
    monkeypatch.setenv("ITEMBANK_TODAY", MID_WEEK)


@pytest.fixture(scope="module")
def everywhere(planned_home, tmp_path_factory, browser):
    """Be a browser's page, the desk's address, and that of a desk others reach by a password."""
    home = lived_in(planned_home, tmp_path_factory.mktemp("lived"))
    own = str(tmp_path_factory.mktemp("own"))
    with (
        pytest.MonkeyPatch.context() as patch,
        served(home) as base,
        served(home, password="gravel lantern otter") as network,
        browser.new_context(reduced_motion="reduce") as context,
    ):
        for name, value in (("ITEMBANK_TODAY", MID_WEEK), ("HOME", own), ("USERPROFILE", own)):
            patch.setenv(name, value)
        by_seats(home)
        first_day()
        yield context.new_page(), base, network


def pages(page, base, network):
    """Go to every page of the desk, one after another; yield the whole address of each."""
    alone = [f"{network}/enter"]
    if WHOLE:
        yield from (base + address for address in met(page, base, "/", *STATES, *UNLINKED))
    else:
        alone += [base + address for address in PAGES]
    for address in alone:
        page.goto(address)
        yield address


def in_widths(page):
    """Return the faults of a page's layout at every width, one after another."""
    faults = {}
    for width in WIDTHS:
        page.set_viewport_size({"width": width, "height": 800})
        faults[width] = page.evaluate(LAYOUT)
    return faults


def in_the_way(page):
    """Return what axe-core finds on a page."""
    return [
        f"{fault['id']}: {fault['help']}: {[node['html'][:120] for node in fault['nodes']]}"
        for fault in Axe().run(page, options=RULES).response["violations"]
    ]


@pytest.fixture(scope="module")
def looked_at(everywhere):
    """Look at every page once, as it comes and with all that is folded away opened."""
    page = everywhere[0]
    barriers, no_room = [], {width: [] for width in WIDTHS}
    for address in pages(*everywhere):
        page.evaluate("document.fonts.ready")
        for state in ("as it comes", "opened"):
            if state == "opened" and not page.eval_on_selector_all(FOLDED, OPEN):
                continue  # there is nothing more to see
            for width, faults in in_widths(page).items():
                no_room[width] += [f"{address}, {state}: {fault}" for fault in faults]
        page.set_viewport_size({"width": 1280, "height": 800})
        barriers += [f"{address}: {fault}" for fault in in_the_way(page)]
    return barriers, no_room


@whole
def test_nothing_stands_in_anybodys_way(looked_at):
    barriers, _ = looked_at
    assert not barriers, "\n".join(barriers)


@whole
@pytest.mark.parametrize("width", WIDTHS)
def test_everything_has_room(looked_at, width):
    faults = looked_at[1][width]
    assert not faults, "\n".join(faults)


def test_long_mathematics_is_scrolled_where_it_stands_and_not_with_the_page(everywhere):
    """A line of working of a bank's question made the whole page go sideways at 400 px."""
    page, base, _ = everywhere
    page.set_viewport_size({"width": 400, "height": 800})
    page.goto(base + COMING)
    page.eval_on_selector_all(FOLDED, OPEN)
    assert page.locator(".working .line math").count()
    assert page.locator(".mistakes .wrong math").count()
    page.evaluate(
        """() => document.querySelectorAll(".working .line math, .mistakes .wrong math").forEach(
            (math) => {
              for (let n = 0; n < 4; n += 1) math.append(...math.cloneNode(true).childNodes);
            }
        )"""
    )
    assert page.evaluate("document.documentElement.scrollWidth") == 400
    # Nor is anything of it cut off below, or scrolled up and down.
    for place in page.locator(".working .line, .mistakes .wrong").all():
        tall, room = place.evaluate("each => [each.scrollHeight, each.clientHeight]")
        assert tall <= room + 1, place.inner_text()


def test_a_question_that_comes_back_for_a_form_is_a_page_like_any_other(everywhere):
    page, base, _ = everywhere
    page.set_viewport_size({"width": 360, "height": 800})
    page.goto(f"{base}{RECORDED}/count")
    page.fill("input[name='band-0']", "5")
    page.press("input[name='band-0']", "Enter")
    page.get_by_role("heading", name="This lesson is recorded already").wait_for()
    assert Axe().run(page, options=RULES).response["violations"] == []
    assert page.evaluate(LAYOUT) == []
