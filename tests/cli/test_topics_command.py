"""Topics listed by strand, by year and by statement, and found by words."""

import re
from pathlib import Path

import pytest

from itembank.items.topics.programme_of_study import STATEMENTS
from itembank.items.topics.registry import listed_topics

LARKHYTHE = Path(__file__).resolve().parents[2] / "banks" / "larkhythe"


def ids(out):
    known = listed_topics()
    return [word for line in out.splitlines() for word in line.split() if word in known]


def test_every_topic_is_listed_once_and_counted(said, away):
    out = said("topics").out
    assert ids(out) == list(listed_topics())
    count = sum(sum(topic.sizes.values()) for topic in listed_topics().values())
    assert out.splitlines()[-1] == f"{len(listed_topics())} topics, {count:,} different questions."


def test_words_are_looked_for_in_titles_statements_and_misconceptions(said, away):
    assert "ratio.share" in ids(said("topics", "SHARing", "ratio").out)
    assert "ratio.share" in ids(said("topics", "divide", "quantity").out)  # its statement
    one = listed_topics()["fractions.add-unlike"]
    words = next(iter(one.misconceptions.values())).split()[:3]
    assert one.id in ids(said("topics", *words).out)


@pytest.mark.parametrize(
    "words", [["zebra"], ["ratio", "zebra"], ["--strand", "ratio", "denominators"]]
)
def test_words_that_no_topic_has(said, away, words):
    status, out, err = said("topics", *words)
    assert (status, out) == (2, "")
    assert "No topic has the words" in err


def test_a_misspelt_word_is_told(said, away):
    assert "Did you mean equations?" in said("topics", "equatoins").err


def test_every_statement_has_its_topics_or_says_why_not(said, away):
    out = " ".join(said("topics", "--by", "statement").out.split())
    for statement in STATEMENTS:
        assert f"({statement.id})" in out
    assert "left out: it is done by hand" in out
    assert sorted(set(ids(out))) == list(listed_topics())


def test_by_year_of_the_schemes(said):
    out = said("topics", "--by", "year", "--department", str(LARKHYTHE)).out
    assert "Year 8, by the scheme year-8:" in out
    assert re.search(r"^  week 10 +fractions.add-unlike ", out, re.M)
    assert sorted(set(ids(out))) == list(listed_topics())


def test_a_wrong_order_is_told(said, away):
    status, _, err = said("topics", "--by", "colour")
    assert status == 2
    assert "Write strand, year or statement." in err
