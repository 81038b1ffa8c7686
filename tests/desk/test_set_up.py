"""Set-up: what stands in the files is shown, changed in place, refused where wrong, taken back."""

import datetime
import html
import re
import tomllib

import pytest
from sqlalchemy import func, select

from itembank.records.store.store import open_store
from itembank.records.store.store_place import store_place
from itembank.records.store.store_tables import lesson
from tests.desk.conftest import fresh_home, visitor
from tests.desk.states import lived_in
from tests.desk.test_question_form import sent_by

OLDER, AGAIN = "planning.older_questions", "deciding.again_below"


@pytest.fixture
def home(tmp_path):
    return fresh_home(tmp_path)


@pytest.fixture
def desk(home):
    return visitor(home)


def filled(desk, address):
    """Return the fields of the form at an address, as a browser would send them untouched."""
    return filled_in(desk.get(address).text)


def filled_in(text):
    """Return the fields of the form on a page, as a browser would send them untouched."""
    form = re.search(r'<form method="post" class="answers".*?</form>', text, re.S)[0]
    found = {}
    for tag in re.findall(r"<input[^>]*>", form):
        name, value = re.search(r'name="([^"]*)"', tag)[1], re.search(r'value="([^"]*)"', tag)[1]
        if "type=" in tag and 'type="hidden"' not in tag and " checked" not in tag:
            continue
        found[name] = html.unescape(value)
    for name, options in re.findall(r'<select[^>]*name="([^"]*)".*?>(.*?)</select>', form, re.S):
        chosen = re.search(r"<option([^>]*) selected>([^<]*)", options)
        value = chosen and (re.search(r'value="([^"]*)"', chosen[1]) or [0, chosen[2]])[1]
        found[name] = html.unescape(value or "")
    for name, value in re.findall(
        r'<textarea[^>]*name="([^"]*)"[^>]*>\n?(.*?)</textarea>', form, re.S
    ):
        found[name] = html.unescape(value)
    return found


def send(desk, address, **fields):
    return desk.post(address, data={**filled(desk, address), **fields}, follow_redirects=False)


def files(home):
    return {path.relative_to(home).as_posix(): path.read_text() for path in home.rglob("*.toml")}


PAGES = [
    "/set-up/school",
    "/set-up/year",
    "/set-up/classes",
    "/set-up/topics-year-8",
    "/set-up/all/bands",
    "/set-up/all/sources",
    "/set-up/all/planning",
    "/set-up/all/deciding",
    "/set-up/class/9S/print",
    "/set-up/class/9S/bands",
    "/set-up/class/8K/bands",
    "/set-up/class/8K/sources",
    "/set-up/class/8K/planning",
]


def test_every_page_is_linked_and_kept_untouched_changes_nothing(desk, home):
    before, index = files(home), desk.get("/set-up").text
    for address in PAGES:
        assert f'href="{address}"' in index
        answer = send(desk, address)
        assert answer.status_code == 303, (address, answer.text)
    assert files(home) == before
    assert "Take the last change" not in desk.get("/set-up").text


def test_a_change_keeps_comments_and_all_else_and_is_taken_back(desk, home):
    before = files(home)
    assert send(desk, "/set-up/classes", **{"class-1-lessons": "Mon 1, Wed 2"}).status_code == 303
    text = (home / "department.toml").read_text()
    was, now = before["department.toml"].splitlines(), text.splitlines()
    assert [line for line in now if line not in was] == ['lessons = ["Mon 1", "Wed 2"]']
    assert "# 8K is ahead of its scheme" in text
    assert 'value="Mon 1, Wed 2"' in desk.get("/set-up/classes").text
    assert send(desk, "/set-up/all/planning", **{"planning.weeks_apart": "9"}).status_code == 303
    desk.post("/set-up/take-back")
    assert (home / "department.toml").read_text() == text
    desk.post("/set-up/take-back")
    assert files(home) == before
    assert desk.post("/set-up/take-back").status_code == 400


def test_what_was_edited_by_hand_since_is_not_taken_back(desk, home):
    send(desk, "/set-up/school", school="Another School")
    file = home / "department.toml"
    file.write_text(file.read_text() + "# mine\n")
    answer = desk.post("/set-up/take-back")
    assert answer.status_code == 400
    assert "edited since" in answer.text
    assert file.read_text().endswith("# mine\n")


@pytest.mark.parametrize(
    ("address", "fields"),
    [
        ("/set-up/school", {"school": "Mine"}),
        ("/set-up/all/deciding", {"deciding.on_from": "85"}),
        ("/set-up/all/bands", {"own": "yes", "band-1-low": "4", "band-2-low": "7"}),
    ],
)
def test_what_somebody_changed_meanwhile_is_told_and_not_written_over(desk, home, address, fields):
    mine = {**filled(desk, address), **fields}
    file = home / "department.toml"
    file.write_text(file.read_text() + "# theirs\n")
    there = files(home)
    answer = desk.post(address, data=mine)
    assert answer.status_code == 409
    assert "Somebody changed these files" in answer.text
    for name, value in fields.items():
        assert name == "own" or f'name="{name}" value="{value}"' in answer.text
    assert files(home) == there


def test_a_fault_between_does_not_hide_what_somebody_changed(desk, home):
    mine = {**filled(desk, "/set-up/classes"), "class-1-seats": "many"}
    send(desk, "/set-up/classes", **{"class-1-seats": "20"})
    theirs = files(home)
    wrong = desk.post("/set-up/classes", data=mine)
    assert wrong.status_code == 400
    again = {**filled_in(wrong.text), "class-1-seats": "28"}
    told = desk.post("/set-up/classes", data=again)
    assert told.status_code == 409
    assert files(home) == theirs
    meant = desk.post("/set-up/classes", data=filled_in(told.text), follow_redirects=False)
    assert meant.status_code == 303
    assert "E1-E4" in (home / "department.toml").read_text()


@pytest.mark.parametrize(
    ("address", "fields", "beside", "said"),
    [
        ("/set-up/class/9S/print", {"large_print": "Z9"}, "large_print", "does not have"),
        ("/set-up/class/9S/print", {"large_print": "Ada"}, "large_print", "seat"),
        ("/set-up/class/9S/print", {"questions": "ten"}, "questions", "whole number"),
        ("/set-up/class/9S/print", {"questions": "90"}, "questions", "20"),
        ("/set-up/class/9S/print", {"paper": "purple"}, "paper", "cream"),
        ("/set-up/all/sources", {"banks": "../nowhere"}, "banks", "no folder"),
        ("/set-up/all/planning", {OLDER: "8"}, OLDER, "8"),
        ("/set-up/all/deciding", {AGAIN: "90"}, AGAIN, "less than"),
        ("/set-up/class/9S/bands", {"band-0-shape": "book"}, "band-0-name", "shape"),
        ("/set-up/class/9S/bands", {"band-1-low": "x", "band-2-low": "3"}, "band-1-low", "whole"),
        ("/set-up/class/9S/bands", {"band-0-letter": "REP"}, "band-0-letter", "2"),
        ("/set-up/class/9S/bands", {"band-0-letter": "", "band-1-low": "x"}, "band-1-low", "whole"),
        ("/set-up/class/9S/bands", {"band-0-shape": "kite"}, "band-0-shape", "shape"),
        ("/set-up/classes", {"class-1-lessons": "Mon 3"}, "class-1-lessons", "same time"),
        ("/set-up/year", {"term-1-first": "", "term-1-last": ""}, "term-1-first", "begin"),
        ("/set-up/topics-year-8", {"topic-0-name": "Heraldry"}, "topic-0-name", "No topic"),
    ],
)  # fmt: skip
def test_what_is_wrong_stands_beside_its_field_and_nothing_is_written(
    desk, home, address, fields, beside, said
):
    before = files(home)
    answer = send(desk, address, **fields)
    assert answer.status_code == 400
    text = html.unescape(answer.text)
    assert said in text.partition(f'id="f-{beside}"')[2].partition("</span>")[0]
    assert files(home) == before


def test_settings_are_written_and_left_out_again(desk, home):
    send(desk, "/set-up/class/8K/print", paper="blue", large_print="A3, C5", questions="6")
    row = tomllib.loads((home / "department.toml").read_text())["classes"][1]
    assert (row["paper"], row["large_print"], row["questions"]) == ("blue", ["A3", "C5"], 6)
    send(desk, "/set-up/class/8K/print", paper="", large_print="", questions="")
    row = tomllib.loads((home / "department.toml").read_text())["classes"][1]
    assert not {"paper", "large_print", "questions"} & set(row)


def test_bands_with_signs_scores_and_a_next_task(desk, home):
    fields = {
        "own": "yes",
        "out_of": "10",
        "band-0-name": "Roots",
        "band-0-letter": "T",
        "band-1-low": "5",
        "band-2-low": "8",
        "band-2-shape": "leaf",
        "band-1-task-where": "The window seats.",
        "band-1-task-worked_example": "yes",
    }
    assert send(desk, "/set-up/all/bands", **fields).status_code == 303
    bands = tomllib.loads((home / "department.toml").read_text())["bands"]
    assert [row["lowest"] for row in bands["band"]] == [0, 5, 8]
    assert (bands["out_of"], bands["band"][0]["letter"]) == (10, "T")
    assert bands["band"][1]["next_task"] == {"where": "The window seats.", "worked_example": True}
    assert 'value="The window seats."' in desk.get("/set-up/all/bands").text
    send(desk, "/set-up/all/bands", own="no")
    assert "bands" not in tomllib.loads((home / "department.toml").read_text())


def test_next_tasks_that_stand_in_the_file_stay_when_a_name_changes(desk, home):
    send(desk, "/set-up/class/9S/bands", **{"band-0-name": "Mend"})
    rows = tomllib.loads((home / "department.toml").read_text())["classes"][2]["bands"]["band"]
    assert rows[0]["next_task"]["title"] == "Repair it together"
    assert [row["name"] for row in rows] == ["Mend", "Practise", "Stretch"]


@pytest.mark.parametrize(
    "address",
    ["/set-up/bands", "/set-up/all/print", "/set-up/class/8K/deciding", "/set-up/nothing"],
)
def test_what_is_not_set_up_is_not_found(desk, address):
    assert desk.get(address).status_code == 404


def test_a_class_that_is_not_there(desk):
    answer = desk.get("/set-up/class/1X/print")
    assert (answer.status_code, "1X" in answer.text) == (404, True)


def test_a_class_of_a_year_that_is_new_has_topics_to_begin_from(desk, home):
    new = {"class-3-name": "10B", "class-3-lessons": "Fri 4", "class-3-seats": "12"}
    answer = send(desk, "/set-up/classes", **new)
    assert answer.status_code == 303
    assert "Year 10 begins from a ready order" in desk.get(answer.headers["location"]).text
    assert 'href="/set-up/topics-year-10"' in desk.get("/set-up").text
    assert desk.get("/class/10B").status_code == 200


def test_another_school_year(desk, home):
    fields = {"term-0-first": "2 Sep 2027", "term-0-last": "17 Dec 2027"}
    for n in (1, 2):
        fields |= {f"term-{n}-{name}": "" for name in ("name", "first", "last")}
    for n in range(6):
        fields |= {f"off-{n}-{name}": "" for name in ("why", "first", "last")}
    fields |= {"week_a": "6 Sep 2027"}
    before = files(home)
    answer = send(desk, "/set-up/year", **fields)
    assert answer.status_code == 400  # days of the old year stand in the files
    assert "outside the school year" in answer.text
    assert files(home) == before
    assert send(desk, "/set-up/year", new_year="yes", **fields).status_code == 303
    row = tomllib.loads((home / "department.toml").read_text())["classes"][1]
    assert "taught" not in row
    assert desk.get("/class/8K/week/2027-09-13").status_code == 200
    desk.post("/set-up/take-back")
    assert files(home) == before


def test_bands_that_are_typed_count_whatever_is_ticked(desk, home):
    send(desk, "/set-up/all/bands", own="no", **{"band-0-name": "Roots"})
    assert "Roots" in (home / "department.toml").read_text()


def test_a_class_s_order_of_topics_and_where_it_is_in_it_are_changed(desk, home):
    where, path = "/set-up/class/8K/teaching", home / "department.toml"
    before = path.read_text()
    page = html.unescape(desk.get(where).text)
    assert "Sharing an amount in a given ratio: 2026-11-19" in page
    assert "<option selected>year-8</option>" in page
    digest = re.search(r'name="digest" value="([^"]*)"', page)[1]
    same = {"digest": digest, "scheme": "year-8"}
    typed = {
        **same,
        "taught": "Sharing an amount in a given ratio: 20 Nov 2026\nratio.combine: not yet",
        "topics": "Sharing an amount in a given ratio\nfractions.divide",
    }
    wrong = desk.post(where, data=typed | {"taught": "Sharing in a ratio"})
    assert wrong.status_code == 400
    assert "with a colon between" in wrong.text
    wrong = desk.post(where, data=typed | {"topics": "ratio.shar"})
    assert wrong.status_code == 400
    assert path.read_text() == before
    assert desk.post(where, data=typed, follow_redirects=False).status_code == 303
    group = tomllib.loads(path.read_text())["classes"][1]
    assert group["taught"] == {
        "ratio.share": datetime.date(2026, 11, 20),
        "ratio.combine": "not yet",
    }
    assert group["topics"] == ["ratio.share", "fractions.divide"]
    assert "# 8K is ahead of its scheme" in path.read_text()
    desk.post("/set-up/take-back")
    assert path.read_text() == before


def test_the_class_that_is_meant_is_chosen(desk, home):
    where, path = "/set-up/all/general", home / "department.toml"
    page = desk.get(where).text
    assert "<option selected>8K</option>" in page
    digest = re.search(r'name="digest" value="([^"]*)"', page)[1]
    desk.post(where, data={"digest": digest, "default_class": "9S"})
    assert 'default_class = "9S"' in path.read_text()


def rename(desk, name):
    page = html.unescape(desk.get("/set-up/classes").text)
    sent = dict(sent_by(page, "answers"))
    place = next(n for n in range(9) if sent.get(f"class-{n}-was") in ("8K", "8X"))
    return desk.post(
        "/set-up/classes", data=sent | {f"class-{place}-name": name}, follow_redirects=False
    )


def everything(home):
    found = {p.relative_to(home).as_posix(): p.read_bytes() for p in home.rglob("*.toml")}
    return {name: held for name, held in found.items() if "set-up" not in name}


def recorded(home, name):
    with open_store(store_place(home), make=False) as store, store.reading() as connection:
        return connection.scalar(
            select(func.count()).select_from(lesson).where(lesson.c.class_name == name)
        )


def test_a_class_that_is_renamed_takes_its_plans_and_results_along(planned_home, tmp_path):
    home = lived_in(planned_home, tmp_path)
    desk = visitor(home)
    desk.post("/class/8K/lesson/2026-12-01/3/change", data={"do": "length", "questions": "7"})
    before = everything(home)
    assert recorded(home, "8K") == 1
    answer = rename(desk, "8X")
    assert answer.status_code == 303, html.unescape(answer.text)
    said = desk.get(answer.headers["location"]).text
    assert "8K is called 8X: 1 plan and 1 recorded lesson go along" in said
    assert "8K" not in (home / "department.toml").read_text().partition("[[classes]]")[0]
    assert not list(home.glob("plans/**/week-8K-*"))
    plan = (home / "plans" / "week-8X-2026-11-30.toml").read_text()
    assert 'class = "8X"' in plan
    assert (recorded(home, "8K"), recorded(home, "8X")) == (0, 1)
    week = desk.get("/class/8X/week/2026-11-30").text
    assert "Recorded" in week
    # Taking back would leave them behind, and says so; the old name brings all back.
    assert desk.post("/set-up/take-back").status_code == 400
    assert rename(desk, "8K").status_code == 303
    assert everything(home) == before
    assert recorded(home, "8K") == 1


def test_a_name_that_has_plans_already_is_refused_and_nothing_is_changed(planned_home, tmp_path):
    home = lived_in(planned_home, tmp_path)
    (home / "plans" / "week-8X-2026-09-07.toml").write_text('class = "8X"\n')
    before = everything(home)
    answer = rename(visitor(home), "8X")
    assert answer.status_code == 400
    assert "under that name already" in html.unescape(answer.text)
    assert everything(home) == before
    assert recorded(home, "8K") == 1
