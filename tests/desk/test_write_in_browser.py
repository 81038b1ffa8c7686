"""A question written in a browser: what comes of it stands beside it as it is typed."""

import pytest

from tests.desk.served import served

NEW = "/questions/larkhythe/new"


@pytest.fixture
def typed(browser, home):
    with served(home) as base, browser.new_context() as context:
        page = context.new_page()
        page.goto(base + NEW)
        yield page


def test_a_wrong_key_is_seen_as_it_is_typed_mended_and_saved_by_keyboard(typed, home):
    typed.select_option("#topic", "fractions.add-unlike")
    typed.focus("#prompt")
    typed.keyboard.type("Work out {3/4 + 1/6}.")
    typed.keyboard.press("Tab")
    typed.keyboard.type("4/10")
    typed.wait_for_selector("#tried .state-wrong")
    assert "11/12" in typed.inner_text("#tried")
    assert typed.inner_text("#verdict") == "Key wrong"
    typed.keyboard.type(" +")
    typed.wait_for_selector("#key[aria-invalid]")
    described = typed.get_attribute("#key", "aria-describedby")
    assert "column" in typed.inner_text(f"#{described}")
    typed.fill("#key", "11/12")
    typed.wait_for_selector("#tried .state-proved")
    assert not typed.query_selector("[aria-invalid]")
    typed.focus("#key")
    typed.keyboard.press("Enter")
    typed.wait_for_selector("text=Saved as add-unlike-1. Its key is proved.")
    assert "3/4 + 1/6" in (home / "questions" / "fractions.add-unlike.toml").read_text()
