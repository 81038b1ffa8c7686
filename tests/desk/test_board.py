"""The board on a projector: large enough for random starters, and led by keys, touch or nothing."""

import shutil

import pytest

from itembank.packs.data.pack_files import pack_json
from tests.depth import cases, left, whole
from tests.desk.served import served
from tests.desk.states import COMING, script
from tests.pages.test_one_slide import draws

DRAWS = cases(2, 6, 4)
BIG = 24
"""The least size of questions on the slide, on a page 540 high."""
PLACE = "8K-2026-12-03"


@pytest.fixture(scope="module")
def at(planned_home, tmp_path_factory):
    home = tmp_path_factory.mktemp("board") / "larkhythe"
    shutil.copytree(planned_home, home)
    with served(home) as base:
        yield home, base + COMING + "/board"


@pytest.fixture
def page(browser):
    with browser.new_context(viewport={"width": 1280, "height": 720}) as context:
        opened = context.new_page()
        opened.set_default_timeout(10_000)
        yield opened


def opened(page, address):
    page.goto(address)
    page.evaluate("document.fonts.ready")
    until(page, "document.documentElement.style.getPropertyValue('--size')")
    return page


def until(page, true):
    """Wait for a while until something is true of a page; its policy forbids to wait inside it."""
    for _ in range(200):
        if page.evaluate(true):
            return
        page.wait_for_timeout(50)
    pytest.fail(f"never true: {true}")


def stage(page):
    return page.evaluate("document.body.dataset.stage")


def seconds(page):
    minutes, _, rest = page.locator("#clock").inner_text().partition(":")
    return 60 * int(minutes) + int(rest)


def answers(page):
    return page.evaluate(
        "[...document.querySelectorAll('.answer')].filter(a => a.checkVisibility("
        "{ visibilityProperty: true })).length"
    )


@whole
@pytest.mark.parametrize(("width", "height"), [(1280, 720), left(1920, 1080)])
def test_random_starters_are_read_from_the_back(browser, at, width, height):
    home, address = at
    file = home / PLACE / "pack.json"
    kept, measured, faults = file.read_bytes(), [], []
    with browser.new_context(viewport={"width": width, "height": height}) as context:
        page = context.new_page()
        try:
            for pack in draws(DRAWS):
                file.write_bytes(pack_json(pack))
                found = opened(page, address + "?stage=answers").evaluate(script("board.js"))
                measured.append(found["size"])
                faults += found["faults"]
        finally:
            file.write_bytes(kept)
    assert not faults, faults
    assert sum(size < BIG for size in measured) <= 1, sorted(measured)
    assert min(measured) > BIG - 1.5


def test_a_remote_leads_through_it(page, at):
    opened(page, at[1])
    assert (stage(page), answers(page)) == ("questions", 0)
    for count in range(1, 9):
        page.keyboard.press("PageDown" if count % 2 else "ArrowRight")
        assert answers(page) == count
    assert page.locator(".bands").is_visible()
    page.keyboard.press("PageUp")
    assert answers(page) == 7
    assert not page.locator(".bands").is_visible()
    page.keyboard.press("ArrowRight")
    page.keyboard.press("ArrowRight")
    assert stage(page) == "next"
    page.keyboard.press("ArrowLeft")
    assert (stage(page), answers(page)) == ("questions", 8)


def test_each_key_does_one_thing(page, at):
    opened(page, at[1])
    page.keyboard.press("a")
    assert answers(page) == 8
    page.keyboard.press("q")
    assert answers(page) == 0
    page.keyboard.press("Space")
    page.keyboard.press("w")
    assert page.locator("#q1 .working").is_visible()
    page.keyboard.press("w")
    assert page.locator(".working:visible").count() == 0
    page.keyboard.press("+")
    assert page.locator("#clock").inner_text() == "7:00"
    page.keyboard.press("-")
    page.keyboard.press("-")
    assert page.locator("#clock").inner_text() == "5:00"
    page.keyboard.press("d")
    assert "dark" in page.evaluate("document.documentElement.className")
    page.keyboard.press("n")
    assert stage(page) == "next"
    page.keyboard.press("c")
    page.wait_for_url("**/count")
    page.go_back()
    assert page.locator(".asked").count()


def test_the_timer_ends_in_words(page, at):
    page.clock.install()
    opened(page, at[1] + "?minutes=1")
    page.keyboard.press("t")
    page.clock.run_for(31_000)
    left = seconds(page)
    assert 20 <= left <= 31
    page.keyboard.press("t")
    page.clock.run_for(20_000)
    assert left - seconds(page) <= 2  # it rests
    page.keyboard.press("t")
    page.clock.run_for(40_000)
    assert page.locator("#clock").inner_text() == "Time"


def test_the_buttons_are_reached_by_tab_alone(page, at):
    opened(page, at[1])
    for name in ("Questions", "Back", "Next answer"):
        page.keyboard.press("Tab")
        assert page.evaluate("document.activeElement.textContent") == name
    assert page.evaluate("getComputedStyle(document.querySelector('.controls')).opacity") == "1"
    page.keyboard.press("Enter")
    page.keyboard.press("Space")
    assert answers(page) == 2


def test_the_buttons_go_when_nobody_points(page, at):
    page.clock.install()
    opened(page, at[1])
    opacity = "getComputedStyle(document.querySelector('.controls')).opacity"
    assert page.evaluate(opacity) == "1"
    page.clock.run_for(5_000)
    assert page.evaluate(opacity) == "0"
    page.mouse.move(200, 200)
    page.mouse.move(210, 220)
    assert page.evaluate(opacity) == "1"


def test_the_buttons_cover_no_bands_unless_they_are_fetched(page, at):
    covers = (
        "getComputedStyle(document.querySelector('.controls')).opacity !== '0' && "
        "document.querySelector('.bands, .caution').checkVisibility({ visibilityProperty: true })"
    )
    page.clock.install()
    for start in ("answers", "next"):
        opened(page, f"{at[1]}?stage={start}")
        assert not page.evaluate(covers), start
    opened(page, at[1])
    page.keyboard.press("a")
    assert page.locator(".bands").is_visible()
    assert not page.evaluate(covers)
    page.mouse.move(200, 200)
    page.mouse.move(210, 220)
    assert page.evaluate(covers)


def test_a_mouse_that_is_left_on_the_buttons_hides_nothing_and_still_presses(page, at):
    page.clock.install()
    opened(page, at[1])
    page.get_by_role("button", name="Next answer").click()
    assert answers(page) == 1
    opacity = "getComputedStyle(document.querySelector('.controls')).opacity"
    page.clock.run_for(5_000)
    assert page.evaluate(opacity) == "0"
    page.mouse.down()
    page.mouse.up()
    assert answers(page) == 2
    assert page.evaluate(opacity) == "1"


def test_touch_leads_through_it(browser, at):
    size = {"width": 1280, "height": 720}
    with browser.new_context(viewport=size, has_touch=True) as context:
        page = context.new_page()
        page.clock.install()
        opened(page, at[1])
        page.touchscreen.tap(300, 200)
        page.touchscreen.tap(300, 200)
        assert answers(page) == 2
        page.clock.run_for(5_000)
        assert page.evaluate("document.documentElement.classList.contains('idle')")
        page.locator(".strip").tap()
        page.get_by_role("link", name="Next tasks").tap()
        assert stage(page) == "next"


def test_touch_goes_an_answer_back(browser, at):
    with browser.new_context(has_touch=True) as context:
        page = context.new_page()
        opened(page, at[1])
        page.touchscreen.tap(300, 200)
        page.touchscreen.tap(300, 200)
        page.get_by_role("button", name="An answer back").tap()
        assert answers(page) == 1


@pytest.mark.parametrize("key", [".", "b"])
def test_the_screen_goes_blank_and_comes_back_where_it_was(page, at, key):
    opened(page, at[1])
    page.keyboard.press("PageDown")
    page.keyboard.press(key)
    assert page.locator("main :visible").count() == 0
    page.keyboard.press("PageDown")
    assert answers(page) == 1
    page.keyboard.press(key)
    page.mouse.click(300, 200)
    assert page.locator("#q1 .prompt").is_visible()
    assert answers(page) == 1
    page.keyboard.press(key)
    page.keyboard.press(key)
    assert page.locator("#q1 .prompt").is_visible()
    page.keyboard.press(key)
    page.mouse.move(310, 210)  # a key sends the buttons away, the mouse fetches them
    page.get_by_role("button", name="Working").click()
    assert page.locator("#q1 .working").is_visible()


def test_the_start_of_a_remote_fills_the_screen_and_loses_nothing(page, at):
    opened(page, at[1])
    page.keyboard.press("PageDown")
    page.keyboard.press("F5")
    # Not by a text to be run, which the page's own policy refuses from the second look on.
    page.locator(":fullscreen").first.wait_for(state="attached")
    assert answers(page) == 1


@pytest.mark.parametrize("width", [768, left(1280), left(1920)])
def test_all_buttons_stand_on_one_line_however_many(page, at, width):
    page.set_viewport_size({"width": width, "height": width * 9 // 16})
    opened(page, at[1])
    page.evaluate("""() => {
        document.querySelector(".screens").hidden = false;
        document.getElementById("screen").textContent = "13–16 of 20";
        for (const letter of "AB")
            document.querySelector("[data-do=dark]").insertAdjacentHTML("beforebegin",
                `<a href="#">Version ${letter}</a>`);
    }""")
    boxes = page.locator(".controls :is(a, button)").evaluate_all(
        "nodes => nodes.map(node => node.getBoundingClientRect().toJSON())"
    )
    assert len(boxes) > 15
    assert len({round(box["top"]) for box in boxes}) == 1
    assert max(box["right"] for box in boxes) <= width


def test_without_script_links_lead_through_it(browser, at):
    size = {"width": 1280, "height": 720}
    with browser.new_context(viewport=size, java_script_enabled=False) as context:
        page = context.new_page()
        page.goto(at[1])
        assert page.locator(".answer:visible").count() == 0
        assert page.locator(".script:visible").count() == 0
        page.get_by_role("link", name="All answers").click()
        assert page.locator("#q8 .answer").is_visible()
        assert page.locator(".bands").is_visible()
        page.get_by_role("link", name="Next tasks").click()
        assert page.get_by_text("Finished?").first.is_visible()
        page.get_by_role("link", name="Leave").click()
        assert page.get_by_role("heading", level=1).inner_text().startswith("8K")


def test_nothing_moves_on_any_page(browser, at):
    with browser.new_context(reduced_motion="reduce") as context:
        page = context.new_page()
        for address in (at[1], at[1].removesuffix("/board")):
            opened_here = page.goto(address)
            assert opened_here.ok
            moving = page.evaluate(
                "[...document.querySelectorAll('*')].filter(e => { const s = getComputedStyle(e);"
                "return parseFloat(s.transitionDuration) || parseFloat(s.animationDuration); })"
                ".map(e => e.outerHTML.slice(0, 80))"
            )
            assert moving == []
