"""A lesson's page: every question with its key, and every change of it, taken back to the byte."""

import html
import json
import re
from html.parser import HTMLParser
from urllib.parse import quote

import pytest

from itembank.packs.data.kinds_stored import kind_stored
from itembank.planning.week.week_plan import FOLDER

PAGE = "/class/8K/lesson/2026-11-30/1"
PLAN = "week-8K-2026-11-30.toml"


def pack(home, day="2026-11-30"):
    return json.loads((home / f"8K-{day}" / "pack.json").read_text())


def asked(home, day="2026-11-30"):
    return [item["address"] for item in pack(home, day)["versions"][0]["items"]]


def files(home):
    return {
        path.relative_to(home): path.read_bytes()
        for path in sorted(home.rglob("*"))
        if path.is_file() and "earlier" not in path.parts
    }


def change(desk, **fields):
    return desk.post(f"{PAGE}/change", data=fields, follow_redirects=False)


class Forms(HTMLParser):
    """Every form of a page, with what it sends before anybody types."""

    def __init__(self):
        super().__init__()
        self.forms = []

    def handle_starttag(self, tag, attrs):
        given = dict(attrs)
        if tag == "form":
            self.forms.append({"action": given["action"], "fields": {}, "buttons": []})
        elif tag == "input" and given.get("name"):
            self.forms[-1]["fields"][given["name"]] = given.get("value", "")
        elif tag == "button" and given.get("name"):
            self.forms[-1]["buttons"].append((given["name"], given["value"]))


def test_every_question_stands_there_with_its_key(looking, planned_home):
    text = looking.get(PAGE).text
    for item in pack(planned_home)["versions"][0]["items"]:
        key = re.sub(r' xmlns="[^"]*"', "", item["key"]["mathml"])
        assert re.sub("^<math[^>]*>", "", key) in text
        for mistake in item["misconceptions"]:
            assert html.escape(mistake["name"]) in text or mistake["name"] in html.unescape(text)


def test_another_like_it_takes_its_place_and_nothing_else_moves(desk, home):
    before, other = asked(home), asked(home, "2026-12-01")
    old = before[2]
    answer = change(desk, do="another", address=old, part="q3")
    assert answer.status_code == 303
    assert answer.headers["location"].endswith("#q3")
    after = asked(home)
    (place,) = [n for n in range(len(before)) if before[n] != after[n]]
    assert place == 2
    assert after[2].rpartition("/")[0] == old.rpartition("/")[0]  # its topic and its tier
    assert asked(home, "2026-12-01") == other


def test_what_is_offered_in_a_questions_place_can_be_taken(desk, home):
    old = asked(home)[4]
    offered = Forms()
    page = desk.get(f"{PAGE}/others", params={"address": old})
    offered.feed(page.text)
    addresses = [form["fields"]["new"] for form in offered.forms if "new" in form["fields"]]
    assert len(addresses) == len(set(addresses)) == 6
    assert not set(addresses) & {a for lesson in home.glob("8K-*") for a in asked_in(lesson)}
    wanted = offered.forms[3]
    answer = desk.post(
        wanted["action"],
        data=wanted["fields"] | dict(wanted["buttons"]),
        follow_redirects=False,
    )
    assert answer.status_code == 303
    assert asked(home)[4] == wanted["fields"]["new"]


def asked_in(folder):
    data = json.loads((folder / "pack.json").read_text())
    sheets = [item for sheet in data["sheets"] for item in sheet["items"]]
    return [item["address"] for item in (*data["versions"][0]["items"], *sheets)]


def test_each_change_is_taken_back_to_the_byte(desk, home):
    states = [files(home)]
    first = asked(home)
    for fields in (
        {"do": "another", "address": first[0]},
        {"do": "never", "address": first[1]},
        {"do": "length", "questions": "6"},
        {"do": "topic-in", "new": "ratio.share", "questions": "2"},
    ):
        answer = change(desk, **fields)
        assert answer.status_code == 303, answer.text
        assert files(home) != states[-1]
        states.append(files(home))
    for state in reversed(states[:-1]):
        assert desk.post(f"{PAGE}/undo", follow_redirects=False).status_code == 303
        assert files(home) == state
    last = desk.post(f"{PAGE}/undo")
    assert last.status_code == 400
    assert "no change of it is known" in last.text


def test_not_this_one_comes_in_no_later_change(desk, home):
    gone = asked(home)[3]
    change(desk, do="never", address=gone)
    change(desk, do="another", address=asked(home)[3])
    assert gone not in asked(home)


@pytest.mark.parametrize(
    ("fields", "said"),
    [
        ({"do": "another", "address": "ratio.share/core/1"}, "does not ask that question any more"),
        ({"do": "another", "address": ""}, "does not ask that question"),
        ({"do": "length", "questions": "eight"}, "write a whole number, not ‘eight’"),
        ({"do": "length", "questions": "21"}, "A starter has 1 to 20 questions"),
        ({"do": "length"}, "Say how many questions"),
        ({"do": "topic-in", "new": "ratio.shaer"}, "ratio.share"),
        ({"do": "sing"}, "The desk knows no change called ‘sing’"),
        ({}, "The desk knows no change"),
    ],
)
def test_what_makes_no_sense_is_one_sentence_and_changes_nothing(desk, home, fields, said):
    before = files(home)
    answer = change(desk, **fields)
    assert answer.status_code == 400
    assert said in html.unescape(answer.text)
    assert "Traceback" not in answer.text
    assert files(home) == before


def test_a_lesson_that_is_over_offers_no_change_and_takes_none(desk, home, monkeypatch):
    monkeypatch.setenv("ITEMBANK_TODAY", "2026-12-02")
    before = files(home)
    assert "stay as they are" in desk.get(PAGE).text
    assert 'value="another"' not in desk.get(PAGE).text
    answer = change(desk, do="another", address=asked(home)[0])
    assert answer.status_code == 400
    assert files(home) == before


@pytest.mark.parametrize(
    "path",
    [
        "/class/8Z",
        "/class/8K/week/soon",
        "/class/8K/lesson/2026-11-30/7",
        "/class/8K/lesson/2026-13-01/1",
        "/class/%3Cscript%3E/week/2026-11-30",
    ],
)
def test_what_is_not_there_is_told_plainly(looking, path):
    answer = looking.get(path)
    assert answer.status_code == 404
    assert "<script>" not in answer.text.replace('<script src="/static/desk.js" defer>', "")
    assert "This is not here" in answer.text


def test_a_plan_with_a_fault_is_told_with_its_line_on_its_own_pages_alone(desk, home):
    plan = home / FOLDER / PLAN
    plan.write_text(plan.read_text().replace("questions = 8", "questions = 80", 1))
    answer = desk.get(PAGE)
    assert answer.status_code == 400
    assert f"{PLAN}" in answer.text
    assert "line" in answer.text
    today = desk.get("/")
    assert today.status_code == 200
    assert "7M" in today.text


def test_two_who_change_at_once_each_find_their_change_or_are_told(home):
    """Two tabs, or a tab and the terminal: one after the other, and nothing half-made."""
    import threading

    from tests.desk.conftest import visitor

    first = asked(home)
    answers = []

    def press(place):
        answers.append(
            visitor(home)
            .post(
                f"{PAGE}/change",
                data={"do": "another", "address": first[place]},
                follow_redirects=False,
            )
            .status_code
        )

    threads = [threading.Thread(target=press, args=(place,)) for place in (0, 5)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    now = asked(home)
    changed = [place for place in (0, 5) if now[place] != first[place]]
    assert len(changed) == answers.count(303) >= 1


def test_a_question_gives_way_to_one_of_a_kind_that_is_chosen(desk, home):
    lesson = "/class/8K/lesson/2026-11-30/1"
    pack = home / "8K-2026-11-30" / "pack.json"
    items = json.loads(pack.read_text())["versions"][0]["items"]
    place, old = next(
        (n, item["address"])
        for n, item in enumerate(items)
        if item["topic"] == "equations.one-step"
    )
    page = desk.get(f"{lesson}/others?address={quote(old)}")
    assert '<option value="match pairs" >Match pairs</option>' in page.text
    page = desk.get(f"{lesson}/others?address={quote(old)}&kind=match+pairs")
    assert '<option value="match pairs" selected>' in page.text
    assert page.text.count("Match each") >= page.text.count("Take this one") > 1
    new = re.search(r'name="new" value="([^"]+)"', page.text)[1]
    sent = {"do": "another", "address": old, "new": new}
    changed = desk.post(f"{lesson}/change", data=sent)
    assert "match pairs" in re.search(r"Other kinds: ([^<]*)", changed.text)[1]
    after = json.loads(pack.read_text())["versions"][0]["items"]
    assert after[place]["address"] == new
    assert after[place]["ask"]["kind"] == "match"
    week = desk.get("/class/8K/week/2026-11-30").text
    assert "match pairs" in re.search(r"Other kinds: ([^<]*)", week)[1]
    wrong = desk.get(f"{lesson}/others?address={quote(new)}&kind=round")
    assert wrong.status_code == 400
    assert "One-step equations has work it out, " in wrong.text


def test_what_could_not_be_changed_leads_back_to_its_lesson(looking):
    answer = looking.post(f"{PAGE}/change", data={"do": "length", "questions": "99"})
    assert answer.status_code == 400
    assert f'href="{PAGE}">Back to the lesson' in answer.text


def test_each_question_says_of_what_kind_it_is(looking, planned_home):
    cards = looking.get(PAGE).text.split('<li class="card"')[1:]
    told = [kind_stored(item) for item in pack(planned_home)["versions"][0]["items"]]
    assert any(told)
    for card, kind in zip(cards, told, strict=True):
        head = card.split('class="key"')[0]
        assert (f'kind">{kind.capitalize()}</p>' in head) if kind else ("kind" not in head)
