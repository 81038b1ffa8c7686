"""Every page of the desk in a browser: no barrier that axe-core finds, nothing out of place."""

import pytest
from axe_playwright_python.sync_playwright import Axe

from tests.desk.met import UNLINKED, addresses
from tests.desk.served import served
from tests.desk.states import MID_WEEK, RECORDED, STATES, by_seats, first_day, lived_in, script

WIDTHS = (360, 768, 1920)
LAYOUT = script("layout.js")
RULES = {
    "runOnly": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
    "resultTypes": ["violations"],
}


@pytest.fixture(autouse=True)
def mid_week(on_day, monkeypatch):
    monkeypatch.setenv("ITEMBANK_TODAY", MID_WEEK)


@pytest.fixture(scope="module")
def everywhere(planned_home, tmp_path_factory, browser):
    """Be a browser's page, the desk's address, and the whole addresses of all its pages."""
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
        page = context.new_page()
        found = addresses(page, base, "/", *STATES, *UNLINKED)
        yield page, base, [*(base + each for each in found), f"{network}/enter"]


def test_nothing_stands_in_anybodys_way(everywhere):
    page, _, found = everywhere
    page.set_viewport_size({"width": 1280, "height": 800})
    axe, faults = Axe(), []
    for address in found:
        page.goto(address)
        # What is folded away is a part of the page as well.
        page.eval_on_selector_all("details", "all => all.forEach(d => { d.open = true; })")
        for fault in axe.run(page, options=RULES).response["violations"]:
            where = [node["html"][:120] for node in fault["nodes"]]
            faults.append(f"{address}: {fault['id']}: {fault['help']}: {where}")
    assert not faults, "\n".join(faults)


@pytest.mark.parametrize("width", WIDTHS)
def test_everything_has_room(everywhere, width):
    page, _, found = everywhere
    page.set_viewport_size({"width": width, "height": 800})
    faults = []
    for address in found:
        page.goto(address)
        page.evaluate("document.fonts.ready")
        faults += [f"{address}: {fault}" for fault in page.evaluate(LAYOUT)]
        # What is folded away has room too when it is opened.
        page.eval_on_selector_all("details", "all => all.forEach(d => { d.open = true; })")
        faults += [f"{address}, opened: {fault}" for fault in page.evaluate(LAYOUT)]
    assert not faults, "\n".join(sorted(set(faults)))


def test_a_question_that_comes_back_for_a_form_is_a_page_like_any_other(everywhere):
    page, base, _ = everywhere
    page.set_viewport_size({"width": 360, "height": 800})
    page.goto(f"{base}{RECORDED}/count")
    page.fill("input[name='band-0']", "5")
    page.press("input[name='band-0']", "Enter")
    page.get_by_role("heading", name="This lesson is recorded already").wait_for()
    assert Axe().run(page, options=RULES).response["violations"] == []
    assert page.evaluate(LAYOUT) == []
