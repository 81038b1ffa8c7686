"""Topics pasted from a scheme of work: found by what teachers call them, asked about else."""

import datetime

import pytest

from itembank.errors import ItembankError
from itembank.planning.calendar.calendar import Calendar, Term
from itembank.work.department.looked_at import known_topics
from itembank.work.department.pasted.other_names import OTHER_NAMES
from itembank.work.department.pasted.pasted_topics import read_pasted_topics
from itembank.work.department.pasted.typed_bands import read_typed_bands

DAY = datetime.date
AUTUMN = Term("Autumn", DAY(2026, 9, 3), DAY(2026, 12, 18))
SPRING = Term("Spring", DAY(2027, 1, 4), DAY(2027, 3, 25))
YEAR_8 = Calendar((AUTUMN, SPRING))


def topics(text, **more):
    pasted = read_pasted_topics(text, YEAR_8, **more)
    return [(topic.topic, topic.week, topic.taught) for topic in pasted.found.topics], pasted


@pytest.mark.parametrize(
    ("text", "when"),
    [
        ("Week\tTopic\n1\tTwo-step equations\nWeek 3\tratio.share\n\tScale drawings", (1, 3, 3)),
        ("two step equations\t1\nsharing in a given ratio\t3-4\nScale drawings\t3", (1, 3, 3)),
        ("Two-step equations\nratio.share\nSCALE DRAWINGS", (None, None, None)),
        (
            "Week beginning\tTopic\n7 Sep\tTwo-step equations\nw/b 21/09/2026\tratio.share\n\t"
            "Scale drawings",
            (DAY(2026, 9, 7), DAY(2026, 9, 21), DAY(2026, 9, 21)),
        ),
        ('Topic,Week\nTwo-step equations,1\n"ratio.share\nScale drawings",3', (1, 3, 3)),
    ],
)
def test_topics_in_many_layouts(text, when):
    told, pasted = topics(text)
    assert pasted.wrong == ()
    assert [name for name, *_ in told] == ["equations.two-step", "ratio.share", "ratio.scale"]
    assert tuple(week or taught for _, week, taught in told) == when


def test_figures_without_end_are_no_year_and_no_cut_score():
    many = "9" * 5000
    read = read_pasted_topics(f"Year\tTopic\n{many}\tratio.share\n8\tratio.scale")
    assert list(read.found.by_year) == [None, 8]
    with pytest.raises(ItembankError, match="too many figures"):
        read_typed_bands(many)
    with pytest.raises(ItembankError, match="‘٥’ is not written in figures 0 to 9"):
        read_typed_bands("٥ 7")


def test_topics_of_several_years_go_to_their_years():
    _, pasted = topics("Year\tTopic\n7\tratio.share\n\tratio.scale\n8\tratio.share")
    assert {year: len(rows) for year, rows in pasted.found.by_year.items()} == {7: 2, 8: 1}


def test_a_topic_nobody_asks_about_is_told_and_may_be_left_out():
    text = "1\tVectors\n2\tratio.share\n3\tSharing ratios\n4\tRatio"
    told, pasted = topics(text)
    assert [fault.row for fault in pasted.wrong] == [1, 3, 4]
    told, pasted = topics(text, leave_out=True)
    assert pasted.wrong == ()
    assert told == [("ratio.share", 2, None)]
    assert "Vectors" in pasted.remarks[0]


def test_a_guess_is_said():
    _, pasted = topics("sharing in a given ratio")
    assert "is read as Sharing an amount in a given ratio" in pasted.remarks[0]


@pytest.mark.parametrize("typed", OTHER_NAMES)
def test_what_schemes_of_work_call_topics_is_understood_or_asked_about(typed):
    titles, _ = known_topics()
    meant = OTHER_NAMES[typed]
    pasted = read_pasted_topics(f"Topic\tWeek\n{typed.upper()}\t1")
    if len(meant) == 1:
        assert [topic.topic for topic in pasted.found.topics] == list(meant)
        assert titles[meant[0]] in pasted.remarks[0]  # it was read as something: that is told
    else:
        assert pasted.found.topics == ()
        for topic in meant:
            assert f"({topic})" in pasted.wrong[0].message


@pytest.mark.parametrize(
    ("typed", "topic"),
    [
        ("Multiply fractions", "fractions.multiply"),
        ("Enlargement", "transformations.enlarge"),
        ("Fractional shapes", "fractions.shaded"),
        ("ratoi.share", "ratio.share"),
    ],
)
def test_what_names_no_topic_is_asked_about_by_the_words_it_shares(typed, topic):
    message = read_pasted_topics(f"Topic\n{typed}\nBearings").wrong[0].message
    assert f"Perhaps {known_topics()[0][topic]} ({topic})" in message


def test_only_what_shares_no_word_with_any_topic_is_called_unknown():
    (fault,) = read_pasted_topics("Topic\nVectors\nBearings").wrong
    assert fault.message.startswith("No topic is called ‘Vectors’.")
