"""A question of one's own in the place of one of a starter: seen, proved, kept, asked, undone."""

import html
import json
import re
import shutil
from urllib.parse import quote

import pytest

from tests.desk.test_question_form import sent_by

LESSON = "/class/8K/lesson/2026-11-30/1"
GOOD = {
    "topic": "fractions.add-unlike",
    "tier": "core",
    "prompt": "Work out {3/4 + 1/6}.",
    "key": "11/12",
    "bank": "larkhythe",
}


def asked(home, lesson="8K-2026-11-30"):
    pack = json.loads((home / lesson / "pack.json").read_text())
    return [item["address"] for item in pack["versions"][0]["items"]]


def post(desk, path, **fields):
    return desk.post(path, data=fields, follow_redirects=False)


def texts(home):
    paths = [*home.glob("*.toml"), *home.glob("questions/*.toml"), *home.glob("plans/*.toml")]
    return {path.relative_to(home).as_posix(): path.read_bytes() for path in paths}


def test_a_question_is_written_in_the_place_of_another_and_taken_back(desk, home):
    before, plan = asked(home), (home / "plans" / "week-8K-2026-11-30.toml").read_text()
    others = {f"8K-2026-12-0{n}": asked(home, f"8K-2026-12-0{n}") for n in (1, 2, 3)}
    third = before[2]
    lesson = desk.get(LESSON).text
    assert f'href="{LESSON}/own?address={quote(third)}"' in lesson
    page = desk.get(f"{LESSON}/own?address={quote(third)}").text
    assert "your own question 3" in page
    assert "do not draw on" in page  # the demo's plans ask generated questions so far

    wrong = post(desk, f"{LESSON}/own", **GOOD | {"key": "4/10"}, address=third, do="put")
    assert wrong.status_code == 400
    assert "11/12" in html.unescape(wrong.text)
    assert "Work out {3/4 + 1/6}." in html.unescape(wrong.text)
    assert asked(home) == before
    assert not (home / "questions" / "fractions.add-unlike.toml").exists()

    answer = post(desk, f"{LESSON}/own", **GOOD, address=third, do="put")
    assert answer.status_code == 303
    assert answer.headers["location"].partition("?")[0] == LESSON
    assert answer.headers["location"].endswith("#q3")
    page = desk.get(answer.headers["location"]).text
    assert "It is kept as add-unlike-1" in page
    assert "1 pack made anew" in page  # no other lesson is touched
    mine = "larkhythe:add-unlike-1"
    assert asked(home) == [*before[:2], mine, *before[3:]]
    assert {name: asked(home, name) for name in others} == others
    assert 'banks = ["questions"]' in (home / "department.toml").read_text()
    assert mine in (home / "plans" / "week-8K-2026-11-30.toml").read_text()

    assert post(desk, f"{LESSON}/own", **GOOD, address=third, do="put").status_code == 404

    undone = post(desk, f"{LESSON}/undo")
    assert undone.status_code == 303
    assert asked(home) == before
    assert (home / "plans" / "week-8K-2026-11-30.toml").read_text() == plan
    # It stays in the bank, and can be asked again in its place.
    again = post(desk, f"{LESSON}/change", do="another", address=before[0], new=mine)
    assert again.status_code == 303
    assert asked(home)[0] == mine


def about(desk, number):
    """Return what a lesson's page says of a question's proof, and the page of it that it links."""
    page = desk.get(LESSON).text
    of_it = page[page.index(f'id="q{number}"') :]
    said = html.unescape(of_it[of_it.index("<h3>Proof</h3>") : of_it.index("</details>")])
    link = re.search(r'<a href="(/questions/[^"]*)">([^<]*)</a>', said)
    return said, link


def test_a_question_of_ones_own_is_signed_from_the_lesson_and_the_lesson_says_so(desk, home):
    assert about(desk, 3)[1] is None  # generated: nobody signs it
    post(desk, f"{LESSON}/own", **GOOD, address=asked(home)[2], do="put")
    said, link = about(desk, 3)
    assert "Nobody has signed it yet." in said
    assert link[2] == "Sign it in its bank"
    seen = re.search(r'name="version" value="([^"]*)"', desk.get(link[1]).text)[1]
    assert post(desk, f"{link[1]}/sign", by="HT", version=seen).status_code == 303
    said, link = about(desk, 3)
    assert "Signed by HT." in said
    assert link[2] == "See it in its bank"

    topic = home / "questions" / "fractions.add-unlike.toml"
    topic.write_text(topic.read_text().replace("{3/4 + 1/6}", "{1/6 + 3/4}"))
    said, link = about(desk, 3)
    assert "Signed, but edited since." in said
    assert "Its bank says it otherwise than this pack by now." in said
    assert link[2] == "Sign it in its bank"


def test_live_and_without_script_the_same_is_seen_and_nothing_written(desk, home):
    first = asked(home)[0]
    before = texts(home)
    live = post(desk, f"{LESSON}/own/try", **GOOD, address=first)
    assert live.status_code == 200
    assert "<html" not in live.text
    assert "Key proved" in live.text
    plain = post(desk, f"{LESSON}/own", **GOOD, address=first, do="try")
    assert "Key proved" in plain.text
    assert 'value="11/12"' in plain.text
    assert texts(home) == before


def test_one_begins_with_the_words_of_the_question_that_is_there(desk, home):
    for number, address in enumerate(asked(home), 1):
        page = desk.get(f"{LESSON}/own?address={quote(address)}&words=yes").text
        assert f"your own question {number}" in page
        assert "Key proved" in page, html.unescape(page)
    sent = dict(sent_by(page))
    assert "{" in sent["prompt"]
    assert sent["key"]
    assert not sent["say-0"]  # working would not follow a number that is changed
    assert not sent["wrong-0"]


def test_what_is_not_proved_is_kept_and_not_asked(desk, home):
    before, address = asked(home), asked(home)[1]
    story = GOOD | {"prompt": "Ann has {12} tins. How many has Bo?", "key": "7"}
    answer = post(desk, f"{LESSON}/own", **story, address=address, do="put")
    assert answer.status_code == 400
    assert "goes into no starter" in answer.text
    assert not (home / "questions" / "fractions.add-unlike.toml").exists()
    kept = post(desk, f"{LESSON}/own", **story, address=address, do="keep")
    assert kept.status_code == 303
    assert kept.headers["location"].startswith("/questions/larkhythe/of/add-unlike-1")
    assert asked(home) == before
    assert "banks =" not in re.sub(r"#.*", "", (home / "department.toml").read_text())


def test_what_the_class_may_not_be_asked_is_kept_and_that_is_said(desk, home):
    path = home / "department.toml"
    path.write_text('banks = ["questions"]\nsigned_only = true\n' + path.read_text())
    before = asked(home)
    answer = post(desk, f"{LESSON}/own", **GOOD, address=before[0], do="put")
    assert answer.status_code == 303
    page = html.unescape(desk.get(answer.headers["location"]).text)
    assert "kept as add-unlike-1" in page
    assert "the starter is as it was" in page
    assert asked(home) == before


def test_a_department_without_a_bank_has_one_started_on_the_way(desk, home):
    shutil.rmtree(home / "questions")
    address = asked(home)[0]
    where = f"{LESSON}/own?address={quote(address)}"
    page = desk.get(where).text
    assert "Start the bank" in page
    assert "write_question.js" not in page  # there is nothing to write in yet, and it would fail
    answer = post(desk, f"{LESSON}/own/bank", address=address)
    assert answer.status_code == 303
    page = desk.get(answer.headers["location"]).text
    assert "Questions of Larkhythe School" in page
    sent = {**dict(sent_by(page)), **GOOD, "bank": "ours", "do": "put"}
    answer = post(desk, f"{LESSON}/own", **sent)
    assert answer.status_code == 303, html.unescape(answer.text)
    assert asked(home)[0] == "ours:add-unlike-1"


@pytest.mark.parametrize("address", ["", "fractions.add-unlike/core/999999", "larkhythe:pool-1"])
def test_what_the_starter_does_not_ask_has_no_place(looking, address):
    assert looking.get(f"{LESSON}/own?address={quote(address)}").status_code == 404
    assert post(looking, f"{LESSON}/own", **GOOD, address=address, do="put").status_code == 404


def test_what_a_plan_asks_is_not_taken_from_under_it(desk, home):
    before, bank = asked(home), texts(home)
    assert post(desk, f"{LESSON}/own", **GOOD, address=before[0], do="put").status_code == 303
    there = texts(home)
    for path, fields in (
        ("/questions/larkhythe/undo", {}),
        ("/set-up/take-back", {}),
    ):
        refused = post(desk, path, **fields)
        assert refused.status_code == 400
        assert "8K is asked larkhythe:add-unlike-1" in html.unescape(refused.text)
        assert texts(home) == there
    form = dict(sent_by(desk.get("/set-up/all/sources").text, "answers"))
    refused = post(desk, "/set-up/all/sources", **form | {"banks": ""})
    assert refused.status_code == 400
    assert "8K is asked larkhythe:add-unlike-1" in html.unescape(refused.text)
    assert texts(home) == there
    # Out of the week first, and then all of it can be taken back.
    assert post(desk, f"{LESSON}/undo").status_code == 303
    assert post(desk, "/set-up/take-back").status_code == 303
    assert post(desk, "/questions/larkhythe/undo").status_code == 303
    assert {**texts(home), "questions/bank.toml": b""} == {**bank, "questions/bank.toml": b""}
    assert asked(home) == before
