"""The page in a browser: typed into, marked, read by machine, and never asking for anything."""

import html
import json
import re
from dataclasses import replace
from functools import cache
from itertools import pairwise

import pytest
from axe_playwright_python.sync_playwright import Axe

from itembank.figures.figure_data import from_data
from itembank.notation.line import shown_line
from itembank.packs.build import start_pack
from itembank.packs.data.convert import picture
from itembank.packs.data.pack_files import pack_json
from itembank.packs.data.pack_item import Maths, TextRun
from itembank.packs.pack_checks import stored_items
from itembank.pages.engine.page.sign_svg import sign_svg
from itembank.pages.write_pack import self_marking
from itembank.selfmark.html_page import page_script
from itembank.selfmark.slip import SlipFault, read_slip, slip_key
from tests.depth import left
from tests.packs.packs import request

EVIL = "<script>window.evil = 1</script><img src=x onerror='window.evil = 1'>"


@cache
def made(**changes):
    started = start_pack(request(**{"follow_up": 4, "variants": 1} | changes))
    started.proof.close()
    return started


def text_of(started, check="when done", pack=None):
    pack = pack or started.pack
    look = pack.look.model_copy(update={"self_mark": check})
    pack = pack.model_copy(update={"look": look})
    return self_marking(replace(started, pack=pack), pack_json(pack))


@pytest.fixture
def opened(browser, tmp_path):
    """Return what opens a page from a file; whatever the page asks for besides is a fault."""
    pages = []

    def open_(data, width=768, **options):
        path = tmp_path / "self-mark.html"
        path.write_bytes(data)
        page = browser.new_context(viewport={"width": width, "height": 900}, **options).new_page()
        page.asked, page.faults = [], []
        page.on("request", lambda asked: page.asked.append(asked.url))
        page.on("pageerror", lambda error: page.faults.append(str(error)))
        page.on("console", lambda said: page.faults.append(said.text))
        page.goto(path.as_uri())
        pages.append(page)
        return page

    yield open_
    for page in pages:
        assert [url for url in page.asked if not url.startswith(("file:", "data:"))] == []
        assert page.faults == []
        assert page.context.cookies() == []
        assert page.evaluate("localStorage.length + sessionStorage.length") == 0
        page.context.close()


def wrong_for(item):
    """Return a wrong answer that can be read, whatever the question asks for."""
    text = shown_line(item.key).replace('"', "")
    if text in ("true", "false"):
        return "false" if text == "true" else "true"
    if text.startswith("line "):
        return "line 9, 0.123"
    if len(text) == 1 and text.isalpha():
        return "B" if text == "A" else "A"
    return "0.123"


def fill(page, started, version=0, wrong=()):
    items = started.items[: len(started.pack.versions[version].items)]
    boxes = page.locator("section.version:not([hidden]) textarea")
    for place, item in enumerate(items):
        boxes.nth(place).fill(wrong_for(item) if place + 1 in wrong else shown_line(item.key))
    return items


def test_a_pupil_types_checks_and_hands_in_a_slip_that_reads_back(opened):
    started = made()
    page = opened(text_of(started))
    fill(page, started, wrong=(2, 5))
    page.click("#finish")
    assert page.inner_text("#score") == "You got 6 out of 8."
    said = page.locator("section.version .said")
    assert said.nth(0).inner_text() == "✓ Right."
    assert said.nth(1).inner_text().startswith("Not yet.")
    shown = page.locator(".band-part:visible")
    assert shown.count() == 1
    band = next(band for band in started.pack.bands if band.lowest <= 6 <= band.highest)
    assert band.name in shown.inner_text()
    sign = shown.locator("svg.sign")  # the shape in its colour, the letter in it, as on the slides
    assert sign.get_attribute("aria-hidden") == "true"
    assert sign.locator("text").text_content() == band.letter
    assert sign_svg(band.shape, band.letter, band.colour).encode() in text_of(started)
    assert sign.bounding_box()["width"] > 40
    assert band.task.title in shown.inner_text()
    assert page.locator("section.follow-up:visible").get_attribute("data-tier") == band.task.tier
    page.fill("#seat", "sam")
    page.click("#make-slip")
    assert page.locator("#seat-fault").is_visible()
    page.fill("#seat", "a3")
    page.click("#make-slip")
    code = page.inner_text("#slip-code")
    slip = read_slip(code, slip_key(pack_json(started.pack)), [1] * 8)
    assert (slip.seat, slip.score, slip.outcomes) == ("A3", 6, "rnrrnrrr")
    # The score is that of the first time, whatever is put right afterwards.
    page.locator("section.version textarea").nth(1).fill(shown_line(started.items[1].key))
    page.locator("section.version button.check").nth(1).click()
    assert said.nth(1).inner_text() == "✓ Right."
    assert page.inner_text("#score") == "You got 6 out of 8."


def test_the_picture_on_the_slip_says_the_code(opened):
    import zxingcpp
    from PIL import Image

    started = made()
    page = opened(text_of(started))
    fill(page, started)
    page.click("#finish")
    page.fill("#seat", "C-1234-X")
    page.click("#make-slip")
    picture = page.locator("#slip-picture").screenshot()
    from io import BytesIO

    (found,) = zxingcpp.read_barcodes(Image.open(BytesIO(picture)))
    assert found.text == page.inner_text("#slip-code")


def test_a_changed_figure_of_a_slip_is_noticed():
    key = slip_key(b"pack")
    from itembank.selfmark.slip import slip_text

    code = slip_text(key, "A3", "", 6, 8, "rrnrrrrn")
    assert read_slip(f"  {code.lower()} ", key, [1] * 8).score == 6
    changes = (("6/8", "7/8"), ("A3", "A4"), ("6/8", "6/9"), ("rrnrrrrn", "rrnrrrnr"))
    for old, new in changes:
        with pytest.raises(SlipFault):
            read_slip(code.replace(old, new), key, [1] * 8)
    with pytest.raises(SlipFault, match="belongs to another pack"):
        read_slip(code, slip_key(b"other"), [1] * 8)
    with pytest.raises(SlipFault, match="10"):
        read_slip(code, key, [1] * 10)
    with pytest.raises(SlipFault, match="not the code of a slip"):
        read_slip("A3 six", key, [1] * 8)


def test_codes_of_every_length_are_those_that_a_reader_reads(browser):
    import zxingcpp
    from PIL import Image

    page = browser.new_page()
    page.set_content('<p id="old"></p>')
    page.add_script_tag(content=page_script().replace("begin();\n", "window.code = qrCode;\n"))
    for length in (1, 14, 15, 26, 27, 42, 43, 62, 63, 84, 85, 106):
        text = ("A3 6/8 rrnrrrrn 4KQ72MXN " * 5)[:length]
        grid = page.evaluate("(text) => window.code(text)", text)
        size = len(grid) + 8
        image = Image.new("L", (size, size), 255)
        for y, row in enumerate(grid):
            for x, dark in enumerate(row):
                image.putpixel((x + 4, y + 4), 0 if dark else 255)
        (found,) = zxingcpp.read_barcodes(image.resize((size * 6, size * 6), Image.NEAREST))
        assert found.text == text
    page.close()


def test_what_is_missing_may_be_put_right_before_it_counts(opened):
    started = made()
    page = opened(text_of(started))
    fill(page, started)
    boxes = page.locator("section.version textarea")
    boxes.nth(3).fill("")
    boxes.nth(6).fill("three apples and a bit")
    page.click("#finish")
    notice = page.inner_text("#notice")
    assert "no answer to question 4" in notice
    assert "question 7" in notice
    assert page.locator("#result").is_hidden()
    boxes.nth(6).fill(shown_line(started.items[6].key))
    page.click("#finish")
    assert page.inner_text("#score") == "You got 7 out of 8."


def test_question_by_question_counts_the_first_check(opened):
    started = made()
    page = opened(text_of(started, "question by question"))
    boxes, buttons = (
        page.locator(f"section.version {one}") for one in ("textarea", "button.check")
    )
    fill(page, started)
    boxes.nth(0).fill("0.123")
    buttons.nth(0).click()
    assert page.locator("section.version .said").nth(0).inner_text().startswith("Not yet.")
    boxes.nth(0).fill(shown_line(started.items[0].key))
    buttons.nth(0).click()
    page.click("#finish")
    assert page.inner_text("#score") == "You got 7 out of 8."


def test_parallel_versions_are_marked_each_by_its_own_keys(opened):
    started = made(variants=2)
    page = opened(text_of(started))
    page.check("input[value=B]")
    boxes = page.locator("section.version:not([hidden]) textarea")
    for place, item in enumerate(started.items[8:16]):
        boxes.nth(place).fill(shown_line(item.key))
    page.click("#finish")
    assert page.inner_text("#score") == "You got 8 out of 8."
    page.fill("#seat", "B2")
    page.click("#make-slip")
    slip = read_slip(page.inner_text("#slip-code"), slip_key(pack_json(started.pack)), [1] * 8)
    assert slip.version == "B"


def with_text(pack, text):
    """Return a pack whose first question, title and next tasks hold a text."""
    version = pack.versions[0]
    item = version.items[0]
    asked = item.model_copy(update={"prompt": [TextRun(text=text), *item.prompt]})
    bands = [
        band.model_copy(
            update={"name": text[:20], "task": band.task.model_copy(update={"first": text})}
        )
        for band in pack.bands
    ]
    return pack.model_copy(
        update={
            "versions": [version.model_copy(update={"items": [asked, *version.items[1:]]})],
            "lesson": pack.lesson.model_copy(update={"title": text}),
            "bands": bands,
        }
    )


def test_a_script_in_a_question_does_not_run(opened):
    started = made()
    item = replace(started.items[0], prompt=(EVIL, *started.items[0].prompt))
    evil = replace(started, items=(item, *started.items[1:]), pack=with_text(started.pack, EVIL))
    page = opened(text_of(evil))
    fill(page, evil)
    page.locator("section.version textarea").nth(1).fill("<img src=x onerror='window.evil=1'>")
    page.click("#finish")
    page.click("#finish")
    assert page.evaluate("window.evil") is None
    assert EVIL in page.inner_text(".prompt >> nth=0")


def test_only_the_page_s_own_script_may_run(opened):
    page = opened(text_of(made()))
    page.evaluate(
        "() => { const s = document.createElement('script');"
        " s.textContent = 'window.evil = 1'; document.body.append(s); }"
    )
    assert page.evaluate("window.evil") is None
    assert any("Content Security Policy" in fault for fault in page.faults)
    page.faults.clear()


def test_no_answer_stands_readable_in_the_source():
    started = made()
    source = text_of(started).decode()
    after = source.partition('id="answers"')[2].partition("</script>")[0]
    head = re.sub(r' (?:rows|maxlength)="\d+"', "", source.partition("<script>")[0])
    for _, stored in stored_items(started.pack):
        for wrong in stored.misconceptions:
            assert html.escape(wrong.ask) not in source
        assert f'"{stored.key.line}"' not in head
    assert re.fullmatch(r">[A-Za-z0-9+/=]+", after)
    assert "misconception" not in after


def test_the_page_is_the_same_bytes_each_time():
    assert text_of(made()) == text_of(made())
    assert text_of(made()) != text_of(made(), "question by question")


@pytest.mark.parametrize("width", [360, left(768), left(1920)])
def test_the_page_is_accessible_and_fits_before_and_after(opened, width):
    started = made(variants=2)
    page = opened(text_of(started), width=width)
    for step in ("typing", "done"):
        if step == "done":
            fill(page, started, wrong=(1, 2, 3))
            page.click("#finish")
            page.fill("#seat", "A3")
            page.click("#make-slip")
        found = Axe().run(page, options={"runOnly": ["wcag2a", "wcag2aa", "wcag21aa", "wcag22aa"]})
        assert json.dumps(found.response["violations"], indent=1)[:2000] == "[]"
        assert page.evaluate("document.documentElement.scrollWidth") <= width


def test_the_keyboard_alone_is_enough(opened):
    started = made()
    page = opened(text_of(started))
    for item in started.items[:8]:
        page.keyboard.press("Tab")
        while page.evaluate("document.activeElement.tagName") != "TEXTAREA":
            page.keyboard.press("Tab")
        page.keyboard.type(shown_line(item.key))
    while page.evaluate("document.activeElement.id") != "finish":
        page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    assert page.evaluate("document.activeElement.id") == "result-heading"
    assert page.inner_text("#score") == "You got 8 out of 8."


@pytest.mark.parametrize("right", [left(0), 5, left(8)])
def test_the_next_task_s_questions_are_marked_by_their_own_keys(opened, right):
    started = made()
    page = opened(text_of(started))
    fill(page, started, wrong=range(right + 1, 9))
    page.click("#finish")
    section = page.locator("section.follow-up:visible")
    tier = section.get_attribute("data-tier")
    (sheet,) = [sheet for sheet in started.pack.sheets if sheet.tier == tier]
    opening = sheet.part_finished
    asked = [*([opening] if opening else []), *sheet.items]
    assert section.locator("textarea").count() == len(asked)
    for place, stored in enumerate(asked):
        section.locator("textarea").nth(place).fill(stored.key.line)
        section.locator("button.check").nth(place).click()
        assert section.locator(".said").nth(place).inner_text().startswith("✓ Right.")
    if opening:
        assert "Now finish this one" in section.inner_text()
    # What the next task asks for does not change the score.
    assert page.inner_text("#score") == f"You got {right} out of 8."


def test_on_paper_there_is_the_slip_alone(opened):
    started = made()
    page = opened(text_of(started))
    fill(page, started)
    page.click("#finish")
    page.emulate_media(media="print")
    assert page.locator(".prompt >> nth=0").is_visible()
    page.emulate_media(media="screen")
    page.fill("#seat", "A3")
    page.click("#make-slip")
    page.emulate_media(media="print")
    assert page.locator("#slip-code").is_visible()
    assert page.locator(".prompt >> nth=0").is_hidden()
    assert page.locator("h1").is_hidden()


def test_a_browser_that_sets_no_mathematics_shows_its_line(opened):
    page = opened(text_of(made()))
    page.evaluate("document.documentElement.classList.add('no-mathml')")
    assert page.locator(".prompt math >> nth=0").is_hidden()
    assert page.locator(".prompt .line >> nth=0").is_visible()


def test_a_worked_example_shows_the_picture_of_its_answer_and_of_its_steps():
    line = {"kind": "number line", "first": 0, "last": 1, "steps": 4}
    answer = picture(from_data({**line, "points": {"P": 3}}))
    step = picture(from_data({**line, "points": {"Q": 1}}))
    started = made()
    plain, sheets, more = text_of(started), [], 0
    for sheet in started.pack.sheets:
        if (worked := sheet.worked) is not None:
            there = [worked.key_picture, *(step.picture for step in worked.steps)]
            more += there.count(None)
            steps = [each.model_copy(update={"picture": step}) for each in worked.steps]
            worked = worked.model_copy(update={"key_picture": answer, "steps": steps})
        sheets.append(sheet.model_copy(update={"worked": worked}))
    text = text_of(started, pack=started.pack.model_copy(update={"sheets": sheets}))
    assert more > 1
    assert text.count(b"<svg") - plain.count(b"<svg") == more
    assert html.escape(answer.words) in text.decode()
    assert html.escape(step.words) in text.decode()


def test_no_line_begins_with_what_stands_against_a_formula(opened):
    """A browser would end a line between a formula and its full stop: "in the ratio 3 : 4 : 7"."""
    started = made()
    page = opened(text_of(started), width=360)
    version = page.locator("section.version").first
    shown = version.locator(".question .prompt")
    stops = 0
    for place, item in enumerate(started.pack.versions[0].items):
        inside = shown.nth(place).evaluate(
            "(p) => [...p.querySelectorAll('.tied')].map((s) => s.textContent)"
        )
        for maths, after in pairwise(item.prompt):
            if isinstance(maths, Maths) and isinstance(after, TextRun) and after.text[0] in ".,?:;":
                stops += 1
                assert any(after.text[0] in text for text in inside), (place, inside)
    assert stops
