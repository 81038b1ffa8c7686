"""A teacher's ways through the desk in a real browser, from one end to the other."""

import asyncio
import re

import pytest
from typer.testing import CliRunner

from itembank.cli.main import app
from itembank.desk.replying.desk import Desk
from itembank.work.lesson.decide import decide
from tests.depth import only_whole
from tests.desk.keys import Keys
from tests.desk.served import served

PAGE = "/class/8K/lesson/2026-11-30/1"
WEEK = "/class/8K/week/2026-11-30"


@pytest.fixture
def base(home):
    with served(home) as address:
        yield address


@pytest.fixture
def page(browser):
    with browser.new_context() as context:
        opened = context.new_page()
        opened.set_default_timeout(30_000)
        yield opened


def test_from_the_plan_to_a_recorded_result_by_keys_alone(page, base, home, monkeypatch):
    monkeypatch.setenv("ITEMBANK_TODAY", "2026-11-30")
    keys = Keys(page, base)
    keys.open("/class/7M/week/2026-11-30")
    keys.enter("^Plan this week$")
    page.get_by_text("every key was proved twice").wait_for()
    keys.enter("^Monday, period 3$")
    page.wait_for_url("**/lesson/2026-11-30/3*")
    keys.enter("^Another like question 1$")
    page.get_by_text("1 pack made anew").wait_for()
    keys.enter("^Count the hands$")
    page.wait_for_url("**/count")
    for band, hands in (("Rebuild", "6"), ("Secure", "11"), ("Extend", "9")):
        keys.to(f"^One fewer in {band}$")
        page.keyboard.press("Tab")
        page.keyboard.press("ControlOrMeta+a")
        page.keyboard.type(hands)
    assert page.locator("#total").inner_text() == "26 counted"
    keys.enter("^Record it$")
    page.get_by_text("Recorded.").wait_for()
    groups = decide(Desk(home, home).department, "7M").decision.groups
    assert [group.pupils for group in groups] == [6, 11, 9]


def topics_of_week(page, base, monday):
    page.goto(f"{base}/class/8K/week/{monday}")
    return page.locator(".topics li").all_inner_texts()


@only_whole
def test_a_week_from_plan_to_the_next_weeks_plan(page, base, home, monkeypatch):
    page.goto(base + PAGE)
    before = page.locator("#q2 .prompt").inner_html()
    page.get_by_role("button", name="Another like question 2").click()
    page.get_by_text("1 pack made anew").wait_for()
    assert page.locator("#q2 .prompt").inner_html() != before

    for name in ("Starter", "Answers", "Next tasks", "Teacher notes"):
        href = page.get_by_role("link", name=name, exact=True).get_attribute("href")
        file = page.request.get(base + href)
        assert file.ok
        assert file.body().startswith(b"%PDF")

    monkeypatch.setenv("ITEMBANK_TODAY", "2026-11-30")
    page.get_by_role("link", name="Show it on the board").click()
    page.wait_for_url("**/board")
    for _ in range(8):
        page.keyboard.press("ArrowRight")
    assert page.locator("#q8 .answer").is_visible()
    page.goto(base + PAGE + "/record")
    for number in range(1, 9):
        page.get_by_label(f"Right answers to question {number}").fill("3")
    page.get_by_role("button", name="Record the questions").click()
    page.get_by_text("Recorded").first.wait_for()
    assert "teach" in page.locator("#after").inner_text().lower()
    poor = topics_planned(page, base)

    page.goto(base + PAGE)
    page.get_by_role("button", name="Take back what was recorded last").click()
    page.get_by_text("Taken back").first.wait_for()
    assert topics_planned(page, base) != poor


def topics_planned(page, base):
    """Plan the next week anew and return what it brings back, and why."""
    page.goto(base + "/class/8K/week/2026-12-07")
    page.get_by_role("button", name=re.compile("^Plan ")).click()
    page.get_by_text("every key was proved twice").wait_for()
    return topics_of_week(page, base, "2026-12-07")


@only_whole
def test_two_tabs_and_the_terminal_meet(page, browser, base, home):
    page.goto(base + PAGE)
    with browser.new_context() as other:
        second = other.new_page()
        second.goto(base + PAGE)
        page.get_by_role("button", name="Another like question 1").click()
        page.get_by_text("1 pack made anew").wait_for()
        # The other tab still shows the question that went: it is told, and nothing is lost.
        second.get_by_role("button", name="Another like question 1").click()
        second.get_by_text("That could not be done").wait_for()
        assert "does not ask" in second.get_by_role("alert").inner_text()
        second.go_back()
        second.reload()
        second.get_by_role("button", name="Keep question 1", exact=True).click()
        second.get_by_text("Kept by you").first.wait_for()
    plan = home / "plans" / "week-8K-2026-11-30.toml"
    page.goto(base + PAGE)
    order = ["week", "--plan", str(plan), "--questions", "mon 6", "--replace"]
    result = CliRunner().invoke(app, [*order, "--department", str(home), "--output", str(home)])
    assert result.exit_code == 0, result.output
    page.reload()
    assert page.locator(".questions > li").count() == 6


def test_the_way_back_shows_the_plan_as_it_is_now(page, base):
    page.goto(base + WEEK)
    page.goto(base + PAGE)
    page.get_by_role("button", name="Another like question 1").click()
    page.get_by_text("1 pack made anew").wait_for()
    now = page.locator("#q1 .prompt").inner_html()
    page.get_by_role("link", name="Whole week").click()
    page.go_back()
    assert page.locator("#q1 .prompt").inner_html() == now
    # Going back and loading again sends nothing twice.
    page.reload()
    assert page.locator("#q1 .prompt").inner_html() == now


def slow(app):
    """Return the desk behind a slow line: forms wait; count them."""

    async def waiting(scope, receive, send):
        if scope["method"] == "POST":
            waiting.forms += 1
            await asyncio.sleep(0.6)
        await app(scope, receive, send)

    waiting.forms = 0
    slow.last = waiting
    return waiting


REMEMBER_WHAT_IS_SAID = """() => new MutationObserver(() => {
  const note = document.querySelector("form [role=status]");
  if (note && note.checkVisibility()) sessionStorage.setItem("said", note.textContent);
}).observe(document.body, { childList: true, subtree: true })"""
"""By the page itself: a browser that is on its way elsewhere answers no question about it."""


def test_two_presses_on_a_slow_line_are_one(page, home, monkeypatch):
    monkeypatch.setenv("ITEMBANK_TODAY", "2026-11-30")
    with served(home, slow) as base:
        page.goto(base + PAGE + "/count")
        for _ in range(3):
            page.get_by_role("button", name="One more in Secure").click()
        page.get_by_role("button", name="Record it").dblclick()
        page.get_by_text("Recorded.").wait_for()
        assert slow.last.forms == 1
        # It says at once that it is at work.
        page.goto(base + PAGE)
        page.evaluate(REMEMBER_WHAT_IS_SAID)
        page.get_by_role("button", name="Take back what was recorded last").click()
        page.get_by_text("Taken back:").wait_for()
        assert page.evaluate("sessionStorage.getItem('said')") == "Taking it back …"
