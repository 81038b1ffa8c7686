"""The map of topics as files."""

from pathlib import Path
from xml.etree import ElementTree

import pypdfium2
import pytest

from itembank.items.topics.registry import listed_topics
from itembank.planning.department import folder as folders
from tests.pages.checkers import assert_accessible

LARKHYTHE = Path(__file__).resolve().parents[2] / "banks" / "larkhythe"


def words_of(path):
    with pypdfium2.PdfDocument(path) as pdf:
        return [" ".join(page.get_textpage().get_text_range().split()) for page in pdf]


def test_both_files_hold_every_topic(said, away):
    status, out, err = said("map")
    assert (status, err) == (0, "")
    assert f"{len(listed_topics())} topics" in out
    picture = ElementTree.parse(away / "output" / "topic-map.svg").getroot()
    label = picture.get("aria-label")
    *lists, poster = words_of(away / "output" / "topic-map.pdf")
    for topic in listed_topics().values():
        assert topic.title in label
        for word in topic.title.split():
            assert word in poster
            assert word in " ".join(lists)


def test_columns_are_terms_of_the_schemes(said, away):
    assert said("map", "--years", "--department", LARKHYTHE).status == 0
    text = words_of(away / "output" / "topic-map.pdf")[-1]
    assert (
        text.index("Year 7, autumn") < text.index("Year 8, spring") < text.index("Year 9, autumn")
    )


def test_the_same_map_has_the_same_bytes(said, away):
    said("map", "--output", "one")
    said("map", "--output", "two")
    for name in ("topic-map.svg", "topic-map.pdf"):
        assert (away / "one" / name).read_bytes() == (away / "two" / name).read_bytes()


@pytest.mark.parametrize("words", [["--years"], ["--department", "nowhere"]])
def test_a_map_by_years_needs_a_department(said, away, words):
    status, _, err = said("map", *words)
    assert status == 2
    assert "department" in err
    assert not (away / "output").exists()


def test_topics_in_a_circle_are_told(said, away, monkeypatch):
    from itembank.work.topics import map_files

    circle = {"a.b": ("c.d",), "c.d": ("a.b",)}
    monkeypatch.setattr(map_files, "find_cycle", lambda rests: folders.find_cycle(circle))
    status, _, err = said("map")
    assert status == 2
    assert "a.b → c.d → a.b" in err


def test_the_pages_can_be_read_by_all(said, away):
    assert said("map").status == 0
    path = away / "output" / "topic-map.pdf"
    assert_accessible(path.read_bytes(), path)
