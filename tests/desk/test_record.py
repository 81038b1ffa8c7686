"""Recording at the desk: every depth, what makes no sense, what is there already, back again."""

import datetime
import html
import re

import pytest

from itembank.desk.replying.desk import Desk
from itembank.selfmark.slip import slip_key, slip_text
from itembank.work.lesson.decide import decide

PAGE = "/class/8K/lesson/2026-11-30/1"
RIGHT = (28, 27, 25, 26, 24, 20, 12, 9)


@pytest.fixture(autouse=True)
def that_day(monkeypatch, on_day):
    monkeypatch.setenv("ITEMBANK_TODAY", "2026-11-30")


def send(desk, **fields):
    return desk.post(f"{PAGE}/record", data=fields, follow_redirects=False)


def seen_last(page):
    """Return what the button that takes back sends: what the page saw recorded last."""
    return re.search(r'name="last" value="([^"]+)"', page)[1]


def take_back(desk, seen):
    return desk.post(f"{PAGE}/take-back", data={"last": seen}, follow_redirects=False)


def decision(home):
    return decide(Desk(home, home).department, "8K").decision


def test_hands_by_band(desk, home):
    answer = send(desk, how="bands", **{"band-0": "8", "band-1": "12", "band-2": "9"})
    assert answer.status_code == 303
    assert [group.pupils for group in decision(home).groups] == [8, 12, 9]
    page = desk.get(answer.headers["location"].partition("#")[0]).text
    assert "Recorded" in page
    assert "29 pupils" in page
    assert "teaching aid, not a grade" in page


def test_right_answers_by_question_with_how_sure_and_what_was_unclear(desk, home):
    right = {f"right-{n}": str(count) for n, count in enumerate(RIGHT, 1)}
    beside = {"view-sure": "12", "view-partly": "9", "unclear": "3", "note": "the box"}
    assert send(desk, how="right", pupils="28", **right, **beside).status_code == 303
    found = decision(home)
    assert [(line.right, line.out_of) for line in found.questions] == [(n, 28) for n in RIGHT]
    assert found.views.counts == {"not sure": 0, "partly": 9, "sure": 12}
    assert found.clarity == (3, 29, "the box")


def test_scores_by_seat_of_a_starter_that_stopped_early_are_out_of_what_was_asked(desk, home):
    assert (
        send(desk, how="seats", stopped="5", **{"score-A1": "5", "score-A2": "2"}).status_code
        == 303
    )
    found = decision(home)
    assert (found.out_of, found.not_asked) == (5, (6, 7, 8))
    # Five of five is the highest band, where five of eight would be none of it.
    assert [group.letter for group in found.groups if "A1" in group.seats] == ["E"]


def test_a_starter_that_stopped_early_counts_what_was_asked(desk, home):
    right = {f"right-{n}": str(count) for n, count in enumerate(RIGHT[:5], 1)}
    assert send(desk, how="right", pupils="28", **right).status_code == 303
    assert decision(home).not_asked == (6, 7, 8)


def test_scores_by_seat_leave_out_who_was_away(desk, home):
    assert send(desk, how="seats", **{"score-A1": "3", "score-A2": "8"}).status_code == 303
    assert decision(home).scores == {"A1": 3, "A2": 8}
    assert "A1" in desk.get(PAGE).text


def test_groups_on_paper_are_known_to_the_store_that_forgets(desk, home, capsys):
    from itembank.cli.main import run

    assert desk.post(f"{PAGE}/groups").status_code == 400
    send(desk, how="bands", **{"band-0": "8", "band-1": "12", "band-2": "9"})
    assert "Groups on paper" not in desk.get(PAGE).text
    send(desk, how="seats", there="replace", **{"score-A1": "3", "score-A2": "8"})
    assert "Groups on paper" in desk.get(PAGE).text
    made = desk.post(f"{PAGE}/groups")
    assert made.headers["content-type"] == "application/pdf"
    assert made.content.startswith(b"%PDF-")
    (path,) = home.glob("groups-*.pdf")
    with pytest.raises(SystemExit):
        run(["forget", "--seat", "8K/A1", "--yes", "--department", str(home)])
    told = capsys.readouterr()
    assert path.name in (told.out + told.err).replace("\n", "")


@pytest.mark.parametrize("between", [",", "\t"])
def test_a_pasted_table(desk, home, between):
    rows = [["seat", *map(str, range(1, 9))], ["A1", *"11110000"], ["B2", *"11111111"]]
    table = "\r\n".join(between.join(row) for row in rows)
    assert send(desk, how="table", table=table).status_code == 303
    assert decision(home).scores == {"A1": 4, "B2": 8}


def test_the_codes_of_result_slips(desk, home):
    key = slip_key((home / "8K-2026-11-30" / "pack.json").read_bytes())
    told = {"A1": "rrrrrrrr", "B2": "rrrnrrrn"}
    codes = [
        slip_text(key, seat, "", outcomes.count("r"), 8, outcomes)
        for seat, outcomes in told.items()
    ]
    assert send(desk, how="slips", slips="\n".join(codes)).status_code == 303
    assert decision(home).scores == {"A1": 8, "B2": 6}


def test_what_is_there_is_replaced_or_joined_only_when_asked(desk, home):
    send(desk, how="seats", **{"score-A1": "3"})
    asked = send(desk, how="seats", **{"score-A2": "5"})
    assert asked.status_code == 409
    assert 'name="score-A2" value="5"' in asked.text
    assert decision(home).scores == {"A1": 3}
    send(desk, how="seats", there="add", **{"score-A2": "5"})
    assert decision(home).scores == {"A1": 3, "A2": 5}
    send(desk, how="seats", there="replace", **{"score-A4": "6"})
    assert decision(home).scores == {"A4": 6}
    page = desk.get(PAGE).text
    assert "Take back what was recorded last: scores by seat" in page
    seen = seen_last(page)
    assert take_back(desk, seen).status_code == 303
    assert decision(home).scores == {"A1": 3, "A2": 5}
    # A page that was open all the while does not reach further back.
    refused = take_back(desk, seen)
    assert refused.status_code == 400
    assert "look at the lesson again" in refused.text
    assert decision(home).scores == {"A1": 3, "A2": 5}


@pytest.mark.parametrize(
    ("fields", "said"),
    [
        ({"how": "bands", "band-0": "eight"}, "Rebuild: write a whole number"),
        ({"how": "bands", "band-0": "40"}, "40 pupils, but only 29 sit in the class"),
        ({"how": "bands"}, "Nobody was counted"),
        ({"how": "right", "right-1": "30", "right-2": "31"}, "Question 2 has 31 right"),
        ({"how": "right", "right-2": "3"}, "A question in between has no number"),
        ({"how": "seats"}, "No seat has a score yet"),
        ({"how": "seats", "score-A1": "9"}, "9"),
        ({"how": "seats", "score-A1": "1,2"}, "A score is one number"),
        ({"how": "table", "table": ""}, "Paste a table first"),
        ({"how": "table", "table": "name,score\nAda Byron,3"}, "what you typed"),
        ({"how": "beside", "note": "Ada Byron"}, "how many asked"),
        ({"how": "slips", "slips": ""}, "Paste the codes"),
        ({"how": "slips", "slips": "A1 8/8 rrrrrrrr AAAAAAAA"}, "A1"),
        ({"how": "slips", "slips": "/etc/passwd"}, "what you typed"),
        ({"how": "dance"}, "does not say how"),
        ({}, "does not say how"),
    ],
)
def test_what_makes_no_sense_records_nothing(desk, home, fields, said):
    answer = send(desk, **fields)
    assert answer.status_code == 400
    assert said in html.unescape(answer.text)
    assert "/tmp" not in answer.text
    assert "Not recorded" not in answer.text
    assert "Record how it went" in desk.get(PAGE).text


@pytest.mark.parametrize(
    ("fields", "offered"),
    [
        ({"how": "bands", "band-0": "40"}, True),
        ({"how": "right", "right-1": "30", "pupils": "40"}, True),
        ({"how": "table", "table": "seat,score\nZ9,3"}, True),
        ({"how": "bands", "band-0": "eight"}, False),
    ],
)
def test_where_seats_are_short_the_way_to_change_them_is_offered(desk, fields, offered):
    page = send(desk, **fields).text
    assert ('href="/set-up/classes"' in page) is offered
    assert "department.toml" not in page


@pytest.mark.parametrize("sign", [",", ";", "\t"])
@pytest.mark.parametrize("headed", [",", ";", "\t"])
def test_a_table_is_read_whatever_parts_its_rows(desk, home, headed, sign):
    table = f"seat{headed}score\nA1{sign}3\nA2{headed}5"
    assert send(desk, how="table", table=table).status_code == 303
    assert decision(home).scores == {"A1": 3, "A2": 5}


def test_a_pasted_answer_that_holds_a_comma_stays_in_its_cell(desk, home):
    head = "\t".join(["seat", *map(str, range(1, 9))])
    row = "\t".join(["A1", "3, 4", *(str(7 * n) for n in range(1, 8))])
    assert send(desk, how="table", table=f"{head}\n{row}").status_code == 303
    assert decision(home).pupils == 1


def test_one_seat_is_put_right_where_answers_or_scores_are_recorded(desk, home):
    right = f"{PAGE}/put-right"
    assert "Put one seat right" not in desk.get(PAGE).text
    table = "seat,1,2,3,4,5,6,7,8\nA1,1,1,0,0,0,0,0,0\nA2,0,0,0,0,0,0,0,0"
    assert send(desk, how="table", table=table).status_code == 303
    assert "Put one seat right" in desk.get(PAGE).text
    page = desk.post(right, data={"seat": "A1", "question": "4", "is": "right"}).text
    assert "Put right: A1, question 4." in page
    assert decision(home).scores == {"A1": 3, "A2": 0}
    assert take_back(desk, seen_last(page)).status_code == 303
    assert decision(home).scores == {"A1": 2, "A2": 0}
    for fields in ({}, {"seat": "A1"}, {"seat": "F9", "question": "4", "is": "right"}):
        assert desk.post(right, data=fields).status_code == 400
    assert send(desk, how="seats", there="replace", **{"score-A1": "5"}).status_code == 303
    assert desk.post(right, data={"seat": "A1", "score": "6"}).status_code == 200
    assert desk.post(right, data={"seat": "A1", "score": "60"}).status_code == 400
    assert decision(home).scores == {"A1": 6}


BARE = "/class/7M/lesson/2026-11-30/3"


def test_a_lesson_of_which_nothing_is_known_is_recorded_by_its_marks(desk, home):
    assert "Record how it went" in desk.get(BARE).text
    form = desk.get(f"{BARE}/record").text
    assert 'name="out_of" value="8"' in form  # as many as the class's starters have
    assert "right-1" not in form
    assert 'name="slips"' not in form
    form = desk.get(f"{BARE}/record?out_of=10").text
    assert "Extend, 9 to 10" in form
    counted = desk.get(f"{BARE}/count?out_of=10").text
    assert '<input type="hidden" name="out_of" value="10">' in counted
    fields = {"how": "seats", "out_of": "10", "score-A1": "10"}
    refused = desk.post(f"{BARE}/record", data={**fields, "score-A2": "11"})
    assert "Seat A2: The score 11 is not between 0 and 10" in refused.text
    assert 'name="out_of" value="10"' in refused.text
    page = desk.post(f"{BARE}/record", data={**fields, "score-A2": "3"}).text
    assert 'state-recorded">Recorded<' in page
    found = decide(Desk(home, home).department, "7M", datetime.date(2026, 11, 30)).decision
    assert (found.pupils, found.facts.out_of) == (2, 10)
    # Its marks are known from now on.
    again = desk.get(f"{BARE}/record").text
    assert 'name="out_of"' not in again
    assert "Extend, 9 to 10" in again
    joined = desk.post(f"{BARE}/record", data={"how": "seats", "score-B1": "7", "there": "add"})
    assert joined.status_code == 200
    found = decide(Desk(home, home).department, "7M", datetime.date(2026, 11, 30)).decision
    assert (found.pupils, found.facts.out_of) == (3, 10)


@pytest.mark.parametrize("marks", ["0", "201", "ten", "-4"])
def test_marks_that_no_starter_has_are_refused_and_asked_for_again(desk, marks):
    form = desk.get(f"{BARE}/record", params={"out_of": marks}).text
    assert "A starter has 1 to 200 marks" in form
    answer = desk.post(f"{BARE}/record", data={"how": "seats", "score-A1": "5", "out_of": marks})
    assert answer.status_code == 400
    assert "A starter has 1 to 200 marks" in answer.text
    assert 'name="score-A1" value="5"' in answer.text
    assert "state-recorded" not in desk.get(BARE).text


def test_the_board_holds_answers_and_bands_from_the_pack(looking):
    page = looking.get(f"{PAGE}/board").text
    assert page.count('class="answer"') == 8
    assert "They are not a grade" in page
    for stage in ("questions", "answers", "next", "nonsense"):
        assert looking.get(f"{PAGE}/board?stage={stage}&minutes=999").status_code == 200


@pytest.mark.parametrize(
    ("fields", "kept"),
    [
        ({"how": "seats", "score-A1": "5", "score-A2": "55"}, ["score-A1", "score-A2"]),
        ({"how": "bands", "band-0": "4", "band-1": "x", "note": "the box"}, ["band-0", "band-1"]),
        ({"how": "right", "right-1": "31", "pupils": "28", "right-2": "30"}, ["right-1", "pupils"]),
    ],
)
def test_what_was_typed_is_still_there_where_it_could_not_be_recorded(desk, fields, kept):
    answer = send(desk, **fields)
    assert answer.status_code == 400
    assert "What you typed is still here" in answer.text
    for name in kept:
        assert f'name="{name}" value="{fields[name]}"' in answer.text
    if "note" in fields:
        assert answer.text.count('value="the box"') == 1  # in the form it was typed in alone
    if fields["how"] == "seats":
        assert "Seat A2: The score 55 is not between 0 and 8" in answer.text
    again = send(desk, **{"how": "seats", "score-A1": "5"})
    assert again.status_code == 303


def test_a_pasted_table_and_slips_come_back_too(desk):
    for how, typed in (("table", "seat,score\nA1,99"), ("slips", "A1 8/8 rrrrrrrr AAAAAAAA")):
        answer = send(desk, how=how, **{how: typed})
        assert answer.status_code == 400
        assert f">\n{typed}</textarea>" in html.unescape(answer.text)
