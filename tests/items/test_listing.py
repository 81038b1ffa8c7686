"""The list of topics that ships is true, and is not believed where it is not."""

import json
import shutil
from pathlib import Path

import pytest

from itembank.items.topics import listing
from itembank.items.topics.registry import listed_topics, topic_ids, topics


@pytest.fixture
def copy(tmp_path, monkeypatch):
    """Return a copy of the folder of topics, which the list is read from."""
    folder = tmp_path / "generators"
    shutil.copytree(listing._folder(), folder, ignore=shutil.ignore_patterns("__pycache__"))
    monkeypatch.setattr(listing, "_folder", lambda: folder)
    return folder


def read_anew():
    return listing.believed.__wrapped__()


def test_the_list_is_of_the_topics_as_they_stand():
    shipped = listing.shipped()
    assert shipped is not None, "run: python -m itembank.items.topics.frozen"
    assert list(shipped.values()) == [
        listing.of_topic(topic)
        for topic in topics()
        if type(topic).__module__.startswith("generators.")
    ]


def test_topics_are_named_alike_by_the_list_and_by_themselves():
    assert topic_ids() == tuple(topic.id for topic in topics())
    assert all(listed_topics()[topic.id].title == topic.title for topic in topics())


def change_a_file(folder: Path):
    path = next(folder.glob("ratio/share.py"))
    path.write_text(path.read_text("utf-8") + "\n# changed\n", "utf-8")


def add_a_file(folder: Path):
    (folder / "ratio" / "new_topic.py").write_text("", "utf-8")


def take_a_file(folder: Path):
    (folder / "ratio" / "share.py").unlink()


def cut_the_list(folder: Path):
    path = folder / listing.NAME
    path.write_text(path.read_text("utf-8")[:-40], "utf-8")


def empty_the_list(folder: Path):
    path = folder / listing.NAME
    path.write_text(json.dumps({"mark": listing.mark(folder)}), "utf-8")


def take_the_list(folder: Path):
    (folder / listing.NAME).unlink()


def test_a_copy_is_believed(copy):
    assert read_anew() == listing.believed()


@pytest.mark.parametrize(
    "harm", [change_a_file, add_a_file, take_a_file, cut_the_list, empty_the_list, take_the_list]
)
def test_a_list_of_other_files_is_not_believed(copy, harm):
    harm(copy)
    assert read_anew() is None
