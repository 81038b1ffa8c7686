"""Who gets large print, as files and command lines say it: read, or refused with the reason."""

from __future__ import annotations

import pytest

from itembank.errors import ItembankError
from itembank.files.faults import FileFaults
from itembank.planning.department.department import read_department
from itembank.planning.department.large_copies import LargePrint, typed_large_print
from itembank.planning.department.pack_request import PackRequest
from itembank.planning.department.plan_file import read_plan

CLASS = """school = "Larkhythe School"

[[classes]]
name = "8K"
year = 8
topics = ["ratio.share"]
"""
SEATS = 'seats = ["A1-A6", "C5"]\n'
GIVEN = [
    ("true", ("",)),
    ("false", ()),
    ("[]", ()),
    ("0", ()),
    ("2", ("", "")),
    ("30", ("",) * 30),
    ('["A3", "C5"]', ("A3", "C5")),
    ('["A1-A3"]', ("A1", "A2", "A3")),
    ('["12"]', ("12",)),
]
REFUSED = [
    ("40", "40 copies is not made. Ask for 1 to 30, or 0 for none."),
    ("-1", "Ask for 1 to 30"),
    ("2.5", "a number of copies or a list of seats"),
    ('"A3"', "a number of copies or a list of seats"),
    ("[3]", "a code in quotation marks"),
    ('["A3-A1"]', "not a seat or a row of seats"),
    ('["Sam"]', "takes no pupils' names"),
    ('["A3", "a3"]', "Seat a3 is named twice"),
    ('["A3", "A1-A4"]', "Seat A3 is named twice"),
    ('["A1-A20", "B1-B20"]', "40 copies"),
]


def class_file(tmp_path, text):
    (tmp_path / "department.toml").write_text(text, encoding="utf-8")
    return read_department(tmp_path).classes[0]


def plan_file(tmp_path, text, seats_of=None):
    path = tmp_path / "plan.toml"
    path.write_text(text, encoding="utf-8")
    return read_plan(path, seats_of=seats_of)


@pytest.mark.parametrize(("said", "seats"), GIVEN)
def test_what_a_class_and_a_plan_may_say(tmp_path, said, seats):
    found = class_file(tmp_path, f"{CLASS}large_print = {said}\n")
    assert found.large_print == found.request.large_print == LargePrint(seats)
    plan = plan_file(tmp_path, f'topics = ["ratio.share"]\nlarge_print = {said}\n')
    assert plan.large_print == LargePrint(seats)


def test_a_plan_that_says_nothing_leaves_it_to_the_class(tmp_path):
    plan = plan_file(tmp_path, 'topics = ["ratio.share"]\n')
    assert plan.large_print is plan.print_tint is None
    group = class_file(tmp_path, CLASS + "large_print = 2\nprint_tint = true\n")
    found = plan.over(group.request)
    assert (found.large_print, found.print_tint) == (LargePrint.copies(2), True)
    none = plan_file(tmp_path, 'topics = ["ratio.share"]\nlarge_print = false\n')
    assert none.over(group.request).large_print == LargePrint()


@pytest.mark.parametrize(("said", "words"), REFUSED)
def test_what_is_refused_has_its_line_and_its_cure(tmp_path, said, words):
    for read, before in ((class_file, CLASS), (plan_file, 'topics = ["ratio.share"]\n')):
        with pytest.raises(FileFaults) as caught:
            read(tmp_path, f"{before}large_print = {said}\n")
        (fault,) = caught.value.faults
        assert fault.line == before.count("\n") + 1
        assert words in fault.message


def test_a_seat_that_the_class_does_not_have(tmp_path):
    assert class_file(tmp_path, CLASS + SEATS + 'large_print = ["a3"]\n').large_print.seats
    with pytest.raises(FileFaults) as caught:
        class_file(tmp_path, CLASS + SEATS + 'large_print = [\n    "A3",\n    "G7",\n]\n')
    (fault,) = caught.value.faults
    assert fault.line == 10
    assert "seat G7, which the class does not have" in fault.message
    assert "A1, A2, A3, A4, A5, A6 and C5" in fault.message
    text = 'topics = ["ratio.share"]\nclass = "8K"\nlarge_print = ["G7"]\n'
    with pytest.raises(FileFaults) as caught:
        plan_file(tmp_path, text, {"8K": ("A1", "A2")}.__getitem__)
    (fault,) = caught.value.faults
    assert fault.line == 3
    # A class that lists no seats is asked for any.
    assert plan_file(tmp_path, text, lambda name: ()).large_print == LargePrint(("G7",))


@pytest.mark.parametrize(
    ("text", "seats"),
    [
        ("2", ("", "")),
        ("A3,C5", ("A3", "C5")),
        (" A3 , C5,", ("A3", "C5")),
        ("A1-A3", ("A1", "A2", "A3")),
        ("0", ()),
        (" None ", ()),
    ],
)
def test_what_may_be_typed(text, seats):
    assert typed_large_print(text) == LargePrint(seats)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("40", "Ask for 1 to 30"),
        ("-2", "Ask for 1 to 30"),
        ("", "a number of copies, such as 2, or seats"),
        (",", "a number of copies, such as 2, or seats"),
        ("--paper", "a number of copies, such as 2, or seats"),
        ("Sam", "takes no pupils' names"),
        ("A3;C5", "not a seat code"),
        ("A3,A3", "named twice"),
        ("٣", "not a seat code"),
        ("--2", "a number of copies, such as 2, or seats"),
        ("9" * 5000, "not a seat code"),
    ],
)
def test_what_may_not(text, words):
    with pytest.raises(ItembankError, match=words):
        typed_large_print(text)


def test_none_goes_before_what_a_plan_or_a_class_has():
    plan = PackRequest(large_print=LargePrint(("A3",)))
    assert PackRequest(large_print=typed_large_print("none")).over(plan).large_print == LargePrint()
    assert PackRequest().over(plan).large_print == LargePrint(("A3",))
