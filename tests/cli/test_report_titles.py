"""Titles of topics and names of mistakes: from the generators, from banks, or the id itself."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.cli.words.name_column import cut
from itembank.errors import ItembankError
from itembank.items.topics.registry import topics
from itembank.work.report.titles import Titles

OWN = """
topic = "garden.plots"
title = "Plots of the market garden"

[[items]]
id = "plots-1"

[[items.misconceptions]]
id = "counts-paths"
name = "counts the paths as well"
"""


@pytest.fixture
def bank(tmp_path):
    (tmp_path / "garden.plots.toml").write_text(OWN)
    (tmp_path / "bank.toml").write_text('name = "ours"\n')
    return tmp_path


def test_every_generated_topic_and_mistake_has_its_own_words():
    found = Titles(())
    for topic in topics():
        assert found.of(topic.id) == topic.title
        for misconception in topic.misconceptions:
            assert found.mistake(topic.id, misconception.id) == misconception.name


def test_a_banks_own_topic_has_the_title_of_its_file(bank):
    found = Titles([bank])
    assert found.of("garden.plots") == "Plots of the market garden"
    assert found.mistake("garden.plots", "counts-paths") == "counts the paths as well"
    assert found.mistake("garden.plots", "other") == "other"
    assert found.find("plots of the", ["garden.plots", "ratio.share"]) == "garden.plots"
    assert Titles(()).of("garden.plots") == "garden.plots"


@pytest.mark.parametrize("text", ["topic = ", 'topic = "garden.plots"\ntitle = 4', "\xff"])
def test_a_bank_that_cannot_be_read_leaves_the_id(bank, text):
    (bank / "garden.plots.toml").write_bytes(text.encode("latin-1"))
    assert Titles([bank, bank / "gone"]).of("garden.plots") in ("garden.plots", "4")


def test_the_first_bank_that_has_a_topic_names_it(bank, tmp_path):
    other = tmp_path / "other"
    other.mkdir()
    (other / "plots.toml").write_text(OWN.replace("Plots of", "Beds of"))
    assert Titles([other, bank]).of("garden.plots") == "Beds of the market garden"
    assert Titles([bank, other]).of("garden.plots") == "Plots of the market garden"


def test_a_part_of_several_titles_is_asked_back():
    asked = ["fractions.add-like", "fractions.add-unlike"]
    with pytest.raises(ItembankError, match=r"fractions\.add-like.*fractions\.add-unlike"):
        Titles(()).find("adding and", asked)
    assert Titles(()).find("fractions.add-like", asked) == "fractions.add-like"
    assert Titles(()).find("nothing of it", asked) is None


@given(st.lists(st.text("abcdefgh.", min_size=1, max_size=30), min_size=1), st.integers(2, 40))
def test_a_title_is_cut_at_a_word_and_fits(words, most):
    text = " ".join(words)
    found = cut(text, most)
    assert len(found) <= most
    assert found == text or (found.endswith("…") and text.startswith(found[:-1]))
    if found != text and len(words[0]) < most:
        assert text[len(found) - 1] == " "
