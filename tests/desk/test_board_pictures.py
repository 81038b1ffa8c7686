"""Pictures on the board: legible at 8 m, on as many screens as that takes, led through in order."""

import shutil
from functools import cache

import pytest

from itembank.packs.data.pack_files import pack_json
from tests.depth import left
from tests.desk.served import served
from tests.desk.states import COMING, script
from tests.pages.test_one_slide import on_topics

PLACE = "8K-2026-12-03"
BIG = 24
"""The least size of letters on a slide, on a page 540 high."""
LAYOUT = script("layout.js")
LABELS = """() => [...document.querySelectorAll(".asked > li:not([hidden]) svg.figure")].filter(
  (svg) => svg.getClientRects().length  // not of working that is not shown
).map(
  (svg) => 540 * 20 / innerHeight * svg.getBoundingClientRect().width / svg.viewBox.baseVal.width
)"""
"""The size of the letters in each picture that is seen, of a screen 540 high."""
TOPICS = (
    ("geometry.compound-area", "geometry.nets", "graphs.coordinates", "fractions.shaded"),
    (
        "statistics.bar-charts",
        "probability.trees",
        "sequences.patterns",
        "geometry.area-of-circles",
    ),
)

MOST = 4
"""Pictures of which a board of eight questions has more."""


@cache
def packs():
    return [next(filter(is_full, drawn(topics))) for topics in TOPICS]


def drawn(topics):
    return (on_topics(*topics, seed=seed, fitted=False) for seed in range(50))


def is_full(pack):
    """Tell whether most questions of a pack have a picture."""
    return sum(item.picture is not None for item in pack.versions[0].items) > MOST


@pytest.fixture(params=[0, left(1)])
def at(request, planned_home, tmp_path):
    home = tmp_path / "larkhythe"
    shutil.copytree(planned_home, home)
    pack = packs()[request.param]
    (home / PLACE / "pack.json").write_bytes(pack_json(pack))
    with served(home) as base:
        yield pack, base + COMING


def opened(context, address):
    page = context.new_page()
    page.set_default_timeout(10_000)
    page.goto(address)
    page.evaluate("document.fonts.ready")
    for _ in range(100):
        if page.evaluate("document.documentElement.style.getPropertyValue('--size')"):
            return page
        page.wait_for_timeout(50)
    pytest.fail("no letters were fitted")


def numbers(page):
    seen = "[...document.querySelectorAll('.asked > li:not([hidden])')].map((li) => li.id)"
    return page.evaluate(seen)


@pytest.mark.parametrize(("width", "height"), [(1280, 720), left(1920, 1080)])
def test_pictures_are_read_from_the_back(browser, at, width, height):
    pack, lesson = at
    with browser.new_context(viewport={"width": width, "height": height}) as context:
        page = opened(context, f"{lesson}/board?stage=answers")
        seen, pictures = [], 0
        while page.evaluate("document.body.dataset.stage") == "answers":
            found = page.evaluate(script("board.js"))
            assert found["faults"] == []
            assert found["size"] > BIG
            labels = page.evaluate(LABELS)
            assert all(label > 0.99 * found["size"] for label in labels)
            seen += numbers(page)
            pictures += len(labels)
            page.keyboard.press("PageDown")
        items = pack.versions[0].items
        assert seen == [f"q{n}" for n in range(1, len(items) + 1)]
        assert pictures >= sum(item.picture is not None for item in items)


def test_a_remote_leads_through_the_questions_and_then_the_answers(browser, at):
    _, lesson = at
    with browser.new_context(viewport={"width": 1280, "height": 720}) as context:
        page = opened(context, f"{lesson}/board")
        screens = [numbers(page)]
        while "q8" not in screens[-1]:
            page.keyboard.press("PageDown")
            screens.append(numbers(page))
        assert len(screens) > 1
        for screen in screens:
            for question in screen:
                page.keyboard.press("PageDown")
                assert numbers(page) == screen
                assert page.locator(f"#{question} .answer").is_visible()
        page.keyboard.press("PageDown")
        assert page.evaluate("document.body.dataset.stage") == "next"
        page.keyboard.press("PageUp")
        assert numbers(page) == screens[-1]
        for _ in range(8):
            page.keyboard.press("PageUp")
        assert page.locator(".answer:visible").count() == 0
        assert numbers(page) == screens[-1]
        for screen in reversed(screens[:-1]):
            page.keyboard.press("PageUp")
            assert numbers(page) == screen
        page.mouse.move(300, 300)
        page.mouse.move(320, 320)
        page.get_by_role("button", name="The screen after").click()
        assert numbers(page) == screens[1]
        assert "of 8" in page.locator("#screen").inner_text()
        # A small screen scrolls instead.
        page.set_viewport_size({"width": 360, "height": 740})
        page.wait_for_timeout(200)
        assert len(numbers(page)) == 8
        assert page.evaluate(LAYOUT) == []


def test_without_script_every_picture_is_on_the_page(browser, at):
    pack, lesson = at
    size = {"width": 1280, "height": 720}
    with browser.new_context(viewport=size, java_script_enabled=False) as context:
        page = context.new_page()
        page.goto(f"{lesson}/board")
        shown = page.locator(".asked .as-asked svg.figure")
        assert shown.count() == sum(item.picture is not None for item in pack.versions[0].items)
        for n in range(shown.count()):
            assert shown.nth(n).bounding_box()["width"] > 60
