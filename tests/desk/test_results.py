"""Results of all classes and of each question at the desk, and bands by week as a chart."""

import re

import pytest

from tests.desk.conftest import visitor
from tests.desk.states import MID_WEEK, lived_in

LESSON = "/class/8K/lesson/2026-12-01/3"


@pytest.fixture(autouse=True)
def mid_week(on_day, monkeypatch):
    monkeypatch.setenv("ITEMBANK_TODAY", MID_WEEK)


@pytest.fixture(scope="module")
def recorded(planned_home, tmp_path_factory):
    """Be a visitor of a desk with one lesson counted by question and one by hands."""
    here = visitor(lived_in(planned_home, tmp_path_factory.mktemp("results")))
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("ITEMBANK_TODAY", MID_WEEK)
        sent = {"how": "bands", "band-0": "5", "band-1": "15", "band-2": "8"}
        assert here.post(f"{LESSON}/record", data=sent, follow_redirects=False).status_code == 303
        yield here


def test_every_page_leads_to_the_results(looking):
    for page in ("/", "/class/8K", "/questions", "/set-up"):
        assert 'href="/results"' in looking.get(page).text


def test_the_department_is_shown_by_class_and_by_topic(recorded):
    page = recorded.get("/results")
    assert page.status_code == 200
    assert "76 % (" in page.text  # 171 of 224
    assert "1 by score or band only" in page.text
    shares = [int(each) for each in re.findall(r"</svg> (\d+) %", page.text)][1:]
    assert shares == sorted(shares)
    for link in re.findall(r'href="(/results[^"]*|/class/[^"]*/report)"', page.text):
        assert recorded.get(link).status_code == 200, link


def test_each_question_is_shown_with_its_share_and_found_by_topic(recorded):
    whole = recorded.get("/results/questions").text
    assert "28 answers" in whole
    assert "32 % (" in whole  # 9 of 28, the last of them
    topic = re.search(r"/results/questions\?topic=([^\"]+)", recorded.get("/results").text)[1]
    part = recorded.get(f"/results/questions?topic={topic}")
    assert part.status_code == 200
    assert 0 < part.text.count("share-plot") < whole.count("share-plot")


@pytest.mark.parametrize(
    ("query", "status", "words"),
    [
        ("?class=8Z", 400, "8Z"),
        ("?topic=no-such", 400, "no such results"),
        ("?since=soon", 400, "is no day"),
        ("?class=7M", 400, "no such results of 7M"),
    ],
)
def test_what_is_not_there_is_said_and_what_was_typed_is_kept(recorded, query, status, words):
    page = recorded.get(f"/results/questions{query}")
    assert page.status_code == status
    assert words in page.text
    assert 'name="since"' in page.text


def test_nothing_is_recorded_yet(looking):
    page = looking.get("/results")
    assert page.status_code == 200
    assert 'class="note"' in page.text


def test_bands_by_week_are_a_chart_and_a_table_of_the_same(recorded):
    page = recorded.get("/class/8K/report").text
    bars = re.search(r'<svg class="band-bar".*?</svg>', page)[0]
    lengths = [float(each) for each in re.findall(r'width="([\d.]+)%" height', bars)][1:]
    assert lengths == pytest.approx([100 * n / 28 for n in (5, 15, 8)], abs=0.001)
    assert len(set(re.findall(r"url\(#band-\d\)", bars))) == 3
    assert re.findall(r">([A-Z] ?\d*)</text>", bars) == ["R", "S 15", "E 8"]
    table = page.split("Pupils in each band, counted once")[1].split("</table>")[0]
    assert re.findall(r"</span> (\d+)</td>", table) == ["1", "5", "15", "8"]
    assert "style=" not in page


@pytest.mark.parametrize(
    "address",
    [
        "/class/8Z",
        "/class/8Z/week/2026-11-30",
        "/class/8K/week/soon",
        "/class/8K/lesson/2026-12-06/1",
        "/class/8Z/report",
        "/questions/nowhere",
        "/questions/larkhythe/of/nothing",
        "/nope",
    ],
)
def test_what_an_address_names_and_is_not_there_is_404_with_a_way_onward(looking, address):
    page = looking.get(address)
    assert page.status_code == 404
    main = page.text.split("<main")[1]
    for link in ('href="/"', 'href="/class/8K"', 'href="/questions"', 'href="/results"'):
        assert link in main
