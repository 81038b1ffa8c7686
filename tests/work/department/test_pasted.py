"""Answers pasted from spreadsheets: forgiving of how they are written, and of nothing else."""

import datetime

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from itembank.errors import ItembankError
from itembank.planning.calendar.calendar import Calendar, Closed, Term
from itembank.planning.calendar.timetable import WeeklyLesson
from itembank.text.in_words import day_month_year, long_date, short_day
from itembank.work.department.answered import Answers
from itembank.work.department.joined_answers import with_year
from itembank.work.department.pasted.pasted_cells import rows_of
from itembank.work.department.pasted.pasted_classes import read_pasted_classes, seats_told
from itembank.work.department.pasted.pasted_days import days_in, read_pasted_day
from itembank.work.department.pasted.pasted_lessons import read_pasted_lessons
from itembank.work.department.pasted.pasted_seats import read_pasted_seats
from itembank.work.department.pasted.pasted_topics import read_pasted_topics
from itembank.work.department.pasted.pasted_year import read_pasted_year
from tests.depth import cases

DAY = datetime.date
TODAY = DAY(2026, 11, 28)
AUTUMN = Term("Autumn", DAY(2026, 9, 3), DAY(2026, 12, 18))
SPRING = Term("Spring", DAY(2027, 1, 4), DAY(2027, 3, 25))


def lessons(text):
    return [str(lesson) for lesson in read_pasted_lessons(text)]


@pytest.mark.parametrize(
    ("typed", "read"),
    [
        ("Mon 3, Tue 1", ["Mon 3", "Tue 1"]),
        ("Monday period 3; tues P1", ["Mon 3", "Tue 1"]),
        ("A Fri 2", ["A Fri 2"]),
        ("Mon3/Thu4", ["Mon 3", "Thu 4"]),
        ("Mon 3 & 4", ["Mon 3", "Mon 4"]),
        ("Mon 1-2\nWeds 5", ["Mon 1", "Mon 2", "Wed 5"]),
        ("Week A: Mon 1, Thu 2\nWeek B: Wed 4", ["A Mon 1", "A Thu 2", "B Wed 4"]),
        ("Wk1 Mon 3 Wk2 Mon 4", ["A Mon 3", "B Mon 4"]),
        ("Fri 5 (Week B), Mon 1", ["B Fri 5", "Mon 1"]),
        ("Fri 5 B, Mon 1", ["B Fri 5", "Mon 1"]),
        ("MonA3, BThu2", ["A Mon 3", "B Thu 2"]),
        ("M3 Tu1 W2 Th4 F5", ["Mon 3", "Tue 1", "Wed 2", "Thu 4", "Fri 5"]),
    ],
)
def test_lessons_are_read_as_people_write_them(typed, read):
    assert lessons(typed) == read


@pytest.mark.parametrize(
    ("typed", "word"),
    [
        ("Mon", "Monday has no period"),
        ("3, Mon 2", "no day"),
        ("T3", "Tuesday or Thursday"),
        ("Mon 3A", "A Mon 3"),
        ("Sat 1", "Saturday"),
        ("Mon 3, Mr Larch", "Mr"),
        ("Mon 3, week A", "no lesson after it"),
        ("", "no lesson"),
    ],
)
def test_what_could_mean_two_things_is_asked_about(typed, word):
    with pytest.raises(ItembankError, match=word):
        read_pasted_lessons(typed)


WEEKLY = st.lists(
    st.builds(
        WeeklyLesson,
        st.integers(0, 4),
        st.integers(1, 9).map(str),
        st.sampled_from(["", "A", "B"]),
    ),
    min_size=1,
    max_size=6,
    unique=True,
)


@given(WEEKLY, st.sampled_from([", ", "; ", "\n", " / "]))
def test_lessons_as_the_files_write_them_are_read_back(weekly, between):
    assert list(read_pasted_lessons(between.join(map(str, weekly)))) == weekly


YEAR = st.dates(DAY(2026, 8, 1), DAY(2027, 7, 31))


@given(YEAR, st.sampled_from(["iso", "british", "dots", "short", "long", "excel", "serial"]))
def test_a_day_is_read_however_it_is_written(date, way):
    written = {
        "iso": date.isoformat(),
        "british": f"{date:%d/%m/%Y}",
        "dots": f"{date.day}.{date.month}.{date:%y}",
        "short": short_day(date),
        "long": long_date(date),
        "excel": f"{date.day}-{short_day(date)[-3:]}-{date:%y}",
        "serial": str((date - DAY(1899, 12, 30)).days),
    }[way]
    assert read_pasted_day(written, 2026) == date


@given(YEAR, st.integers(1, 20))
def test_a_span_is_two_days(first, length):
    last = first + datetime.timedelta(length)
    for text in (
        f"{day_month_year(first)} to {day_month_year(last)}",
        f"{first:%d/%m/%Y} - {last:%d/%m/%Y}",
        *([f"{first.day}–{day_month_year(last)}"] if first.month == last.month else []),
    ):
        found, _ = days_in(f"Half term: {text}", 2026)
        assert found == [first, last]


@pytest.mark.parametrize("typed", ["31/06/2026", "Tue 7 Sep 2026", "7/13", "soon", ""])
def test_what_is_no_day_is_refused(typed):
    with pytest.raises(ItembankError):
        read_pasted_day(typed, 2026)


def test_cells_with_line_breaks_and_a_quotation_mark_left_open():
    assert [row.cells for row in rows_of('8K\t"Mon 3,\nTue 1"\r\n8L\tx')] == [
        ("8K", "Mon 3,\nTue 1"),
        ("8L", "x"),
    ]
    assert [row.cells for row in rows_of('8K,12" rulers\n8L,x')] == [
        ("8K", '12" rulers'),
        ("8L", "x"),
    ]


CLASSES = [("7M", 7, "HT", ["Mon 3", "A Fri 2"]), ("10x/Ma1", 10, "", ["Tue 1"])]


@pytest.mark.parametrize(
    "text",
    [
        "Class\tYear\tTeacher\tLessons\n7M\t7\tHT\tMon 3, A Fri 2\n10x/Ma1\t10\t\tTue 1",
        "Lessons;Teacher;Set\nMon 3, A Fri 2;h.t.;7M\nTue 1;;10x/Ma1",
        "7M\t7\tHT\tMon 3, A Fri 2\n10x/Ma1\t10\t\tTue 1",
        "Maths 2026\n\nClass\tLesson 1\tLesson 2\tStaff\n7M\tMon P3\tFri 2 (A)\tHT\n10x/Ma1\tTue 1",
        "Class\tDay\tPeriod\tWeek\tTeacher\n7M\tMon\t3\t\tHT\n\tFri\t2\tA\t\n10x/Ma1\tTue\t1\t",
        "Class\tMon\tTue\tFri A\tTeacher\n7M\t3\t\t2\tHT\n10x/Ma1\t\tP1\t",
        'Year group,Class,Lessons,Teacher\n7,7M,"Mon 3\nA Fri 2",HT\n10,10x/Ma1,Tue 1,',
    ],
)
def test_classes_in_many_layouts(text):
    pasted = read_pasted_classes(text)
    assert pasted.wrong == ()
    told = [
        (group.name, group.year, group.teacher, [str(lesson) for lesson in group.lessons])
        for group in pasted.found
    ]
    assert told == CLASSES


def test_merged_years_hold_for_the_rows_below():
    pasted = read_pasted_classes(
        "Year\tClass\tLessons\n8\tRed\tMon 1\n\tBlue\tMon 2\n9\tGold\tMon 3"
    )
    assert [group.year for group in pasted.found] == [8, 8, 9]


def test_each_fault_of_classes_has_its_cell():
    text = "Class\tYear\tTeacher\tLessons\n7M\tseven\tHT\tMonday\n8K\t8\tMs Larch\tTue 1"
    wrong = read_pasted_classes(text).wrong
    assert [(fault.row, fault.column) for fault in wrong] == [(2, 2), (2, 4), (3, 3)]


def test_a_class_that_is_said_to_be_in_two_years_is_asked_about():
    text = "Class\tYear\tLessons\n8K\t8\tMon 1\n8K\t9\tTue 2\n9S\t9\tMon 2\n8K\t\tFri 1"
    (fault,) = read_pasted_classes(text).wrong
    assert "two years, 8 and 9" in fault.message
    assert (fault.row, fault.column) == (3, 2)


def test_a_year_that_is_stated_counts_before_that_of_the_class_above():
    read = read_pasted_classes(
        "Class\tYear\tLessons\n7M\t7\tMon 1\nElm\t\tTue 1\nElm\t8\tTue 2\nElm\t\tWed 2"
    )
    assert read.wrong == ()
    assert [(group.name, group.year) for group in read.found] == [("7M", 7), ("Elm", 8)]


def test_a_class_without_a_year_is_asked_about():
    assert "Which year" in read_pasted_classes("Class\tLessons\nRed\tMon 1").wrong[0].message


def test_a_number_of_pupils_makes_seats_and_names_make_none():
    assert seats_told("29")[0][-1] == "E5"
    assert seats_told("61")[0] == ()
    for text in (
        "Class\tSeats\tLessons\n8K\tSam Larch\tMon 1",
        "Class\tPupil name\tLessons\n8K\tSam Larch\tMon 1",
        "Class\tPupils\tLessons\n8K\tSam Larch\tMon 1",
        "Class\tPupils\tLessons\n8K\t29\tMon 1\n8L\tSam\tMon 2",
    ):
        pasted = read_pasted_classes(text)
        assert pasted.wrong
        assert "Sam" not in " ".join(map(str, pasted.wrong))
        assert not any(group.seats for group in pasted.found)


@pytest.mark.parametrize(
    "heading", ["Pupils", "No. of pupils", "Number of students", "Students", "Pupil count"]
)
def test_how_many_pupils_there_are_may_stand_below_them(heading):
    pasted = read_pasted_classes(f"Class\tLessons\t{heading}\n8K\tMon 1\t29\n8L\tMon 2\tA1-A6")
    assert (pasted.wrong, pasted.remarks) == ((), ())
    assert [len(group.seats) for group in pasted.found] == [29, 6]


@pytest.mark.parametrize(
    "text",
    [
        "A1-A3\nB1",
        "A1 A2 A3 B1",
        "A1\tA2\tA3\nB1",
        "Seats\nA1–A3, B1",
        "Class,Seats\n8k,A1-A3\n,B1",
    ],
)
def test_seats_in_many_layouts(text):
    assert read_pasted_seats(text, ("8K",)).found == {"8K": ("A1", "A2", "A3", "B1")}


@pytest.mark.parametrize("text", ["Sam Larch", "Surname\tSeat\nLarch\tA1", "A1\tSam", "12/05/2014"])
def test_names_among_seats_are_refused_and_not_repeated(text):
    pasted = read_pasted_seats(text, ("8K",))
    assert pasted.wrong
    told = " ".join(map(str, pasted.wrong))
    assert "name" in told
    assert "Sam" not in told
    assert "Larch" not in told
    assert "2014" not in told


WANTED = ((AUTUMN, SPRING), (Closed(DAY(2026, 10, 26), DAY(2026, 10, 30), "Half term"),))


@pytest.mark.parametrize(
    "text",
    [
        "Term\tFirst day\tLast day\nAutumn\t03/09/2026\t18/12/2026\n"
        "Spring\t04/01/2027\t25/03/2027\nHalf term\t26/10/2026\t30/10/2026",
        "Half term,26 Oct,30 Oct\nAutumn term,3 Sep,18 Dec\nSpring term,4 Jan,25 Mar",
        "Autumn term: Thursday 3 September 2026 to Friday 18 December 2026\n"
        "Half term: 26 to 30 October 2026\nSpring term: 4 January to 25 March 2027",
        "Term\tStarts\tHalf term\tEnds\nAutumn\t3-Sep-26\t26-30 Oct\t18-Dec-26\n"
        "Spring\t4-Jan-27\t\t25-Mar-27",
        "Autumn term 2026\nTerm starts\tThu 3 Sep 2026\nHalf term\tMon 26 Oct to Fri 30 Oct 2026\n"
        "Term ends\tFri 18 Dec 2026\nSpring term 2027\nTerm starts\tMon 4 Jan 2027\n"
        "Term ends\tThu 25 Mar 2027",
        "Term\tFirst day\tLast day\nAutumn\t03/09/2026\t18/12/2026\nChristmas holiday\t21/12/2026\t"
        "01/01/2027\nSpring\t04/01/2027\t25/03/2027\nHalf term\t26/10/2026\t30/10/2026",
    ],
)
def test_a_school_year_in_many_layouts(text):
    pasted = read_pasted_year(text, TODAY)
    assert pasted.wrong == ()
    assert pasted.found.terms == WANTED[0]
    told = [(closed.first, closed.last) for closed in pasted.found.closed]
    assert told == [(closed.first, closed.last) for closed in WANTED[1]]
    assert pasted.found.closed[0].why.casefold() == "half term"


def test_dates_without_a_year_are_of_the_year_that_is_set_up():
    text = "Autumn\t3 Sep\t18 Dec\nSummer\t12 Apr\t21 Jul"
    for today, year in ((DAY(2026, 7, 1), 2026), (DAY(2027, 2, 1), 2026), (DAY(2027, 6, 1), 2027)):
        terms = read_pasted_year(text, today).found.terms
        assert [term.first.year for term in terms] == [year, year + 1]


@pytest.mark.parametrize(
    ("text", "row", "word"),
    [
        ("Term\tFrom\tTo\nAutumn\t3 Sep\t31 Nov", 2, "31 Nov"),
        ("Term\tFrom\tTo\nAutumn\tsoon\tlater", 2, "No day"),
        ("Autumn\t18 Dec 2026\t3 Sep 2026", 1, "before it begins"),
        ("Term starts\t3 Sep 2026", 0, "when it ends"),
        ("hello", 0, "no term"),
    ],
)
def test_what_is_wrong_in_a_school_year(text, row, word):
    wrong = read_pasted_year(text, TODAY).wrong
    assert [fault.row for fault in wrong] == [row]
    assert word in str(wrong[0])


def test_days_off_alone_are_added_to_the_year_that_is_there():
    term = Term("Autumn", datetime.date(2026, 9, 3), datetime.date(2027, 1, 29))
    half = Closed(datetime.date(2026, 10, 26), datetime.date(2026, 10, 30), "half term")
    read = read_pasted_year("Inset day\t4 Jan 2027", datetime.date(2026, 11, 28))
    assert not read.wrong
    told = with_year(Answers(terms=(term,), closed=(half,)), (), read.found.closed)
    assert told.terms == (term,)
    assert [off.why for off in told.closed] == ["half term", "Inset day"]
    assert read_pasted_year("nothing at all", datetime.date(2026, 11, 28)).wrong


ANY = st.text(st.sampled_from("AaB 123Mon.,;:\t\n\"'-/–TueWeekSepTermratio.share£é"), max_size=60)


@settings(max_examples=cases(50, 150))
@given(ANY)
def test_whatever_is_pasted_is_read_or_told(text):
    """Nothing that is pasted makes the tool fail."""
    assert isinstance(read_pasted_classes(text).found, tuple)
    assert isinstance(read_pasted_year(text, TODAY).found.terms, tuple)
    assert isinstance(read_pasted_topics(text, Calendar((AUTUMN, SPRING))).found.topics, tuple)
    assert isinstance(read_pasted_seats(text, ("8K",)).found, dict)
