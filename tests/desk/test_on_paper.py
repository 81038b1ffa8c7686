"""A page of the desk that is printed from the browser."""

import pytest

from tests.desk.served import served

PAGE = "/class/8K/lesson/2026-11-30/1"
VISIBLE = "nodes => nodes.filter(node => node.checkVisibility()).map(node => node.innerText)"


@pytest.fixture(scope="module")
def base(planned_home):
    with served(planned_home) as address:
        yield address


def test_paper_shows_no_button_and_nothing_to_open_but_what_was_opened(browser, base):
    with browser.new_context() as context:
        page = context.new_page()
        page.goto(base + PAGE)
        seen = page.locator("main button, main .button, main details")
        assert len(seen.evaluate_all(VISIBLE)) > 20
        page.locator("#q2 details").evaluate("node => { node.open = true; }")
        page.emulate_media(media="print")
        (left,) = seen.evaluate_all(VISIBLE)
        assert "Likely wrong answers" in left
        assert page.locator("#q1 .key").is_visible()
        page.goto(base + PAGE + "/record")
        assert not page.locator("button").evaluate_all(VISIBLE)
        assert page.get_by_label("Right answers to question 1").is_visible()


@pytest.mark.parametrize("where", [PAGE, "/class/8K/week/2026-11-30"])
def test_a_question_or_a_lesson_is_not_parted_by_the_end_of_a_page(browser, base, where):
    with browser.new_context() as context:
        page = context.new_page()
        page.goto(base + where)
        page.emulate_media(media="print")
        cards = page.locator(".questions > li, .lesson")
        inside = cards.evaluate_all(
            "nodes => nodes.map(node => getComputedStyle(node).breakInside)"
        )
        assert len(inside) > 3
        assert set(inside) == {"avoid"}
