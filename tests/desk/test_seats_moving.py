"""Pupils who move, and what is forgotten for good, at the desk."""

import pytest

MOVING = "/class/8K/moving"
RECORD = "/class/8K/lesson/2026-12-01/3/record"


@pytest.fixture
def known(desk, monkeypatch):
    """Be a visitor of a desk where two pupils of 8K have scores."""
    monkeypatch.setenv("ITEMBANK_TODAY", "2026-12-02")
    table = {"how": "table", "table": "seat,score\nA1,6\nA2,3"}
    assert desk.post(RECORD, data=table, follow_redirects=False).status_code == 303
    return desk


def test_a_pupil_moves_to_another_class_and_back(known):
    fields = {"seat": "A1", "to_class": "7M", "to_seat": "B2", "date": "2026-12-02"}
    page = known.post(f"{MOVING}/move", data=fields)
    assert page.status_code == 200, page.text
    assert "counts for 7M now" in page.text
    assert "Take back the move of 8K/A1 to 7M/B2" in page.text
    other = known.post(f"{MOVING}/take-back", data={"words": "something else"})
    assert other.status_code == 400
    back = known.post(f"{MOVING}/take-back", data={"words": "the move of 8K/A1 to 7M/B2"})
    assert "Taken back: the move of 8K/A1" in back.text
    assert "take-back" not in back.text


@pytest.mark.parametrize(
    ("fields", "words"),
    [
        ({"seat": "A1", "to_class": "7M"}, "Say the seat to come"),
        ({"seat": "A1", "to_class": "7M", "to_seat": "Q99"}, "Q99"),
        ({"seat": "A1", "to_class": "away", "date": "soon"}, "is no day"),
    ],
)
def test_a_move_that_cannot_be_is_said_beside_what_was_typed(known, fields, words):
    page = known.post(f"{MOVING}/move", data=fields)
    assert page.status_code == 400
    assert words in page.text
    assert fields.get("to_seat", "") in page.text


def test_a_pupil_is_forgotten_only_when_the_name_is_typed(known):
    seen = known.get(f"{MOVING}/forget", params={"seat": "A1"})
    assert seen.status_code == 200
    assert "1 record would go" in seen.text
    assert "Type 8K/A1" in seen.text
    for typed in ("", "8K", "8K/A2"):
        refused = known.post(f"{MOVING}/forget", data={"seat": "A1", "typed": typed})
        assert refused.status_code == 400
        assert "Nothing was forgotten" in refused.text
    assert "1 record would go" in known.get(f"{MOVING}/forget", params={"seat": "A1"}).text
    done = known.post(f"{MOVING}/forget", data={"seat": "A1", "typed": "8k/a1"})
    assert done.status_code == 200
    assert "1 record removed: seat A1 of 8K." in done.text
    assert "Forgotten: seat A1 of 8K." in done.text
    assert "0 records" in known.get(f"{MOVING}/forget", params={"seat": "A1"}).text
    assert "1 record would" in known.get(f"{MOVING}/forget", params={"seat": "A2"}).text


def test_a_class_is_forgotten_by_its_name(known):
    assert "1 lesson would go" in known.get(f"{MOVING}/forget").text
    done = known.post(f"{MOVING}/forget", data={"typed": "8K"})
    assert "1 lesson removed: 8K." in done.text
    assert "no such results" in known.get("/results").text


def test_nothing_is_recorded_so_nothing_is_forgotten(looking):
    page = looking.get(f"{MOVING}/forget", params={"seat": "A1"})
    assert page.status_code == 400
    assert 'role="alert"' in page.text


def test_from_a_seat_to_the_forms_that_are_about_it(known):
    assert "/class/8K/moving?seat=A1" in known.get("/class/8K/seat/A1").text
    page = known.get("/class/8K/moving?seat=A1").text
    assert page.count("<option selected>A1</option>") == 2
    # A seat that is on no list is not taken for another one, nor for the whole class.
    page = known.get("/class/8K/moving?seat=Z9").text
    assert page.count("<option selected>Z9</option>") == 2
