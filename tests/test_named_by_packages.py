"""What installed packages name is found without the standard library's reader, and our version."""

import sys
import tomllib
import zipfile
from importlib.machinery import PathFinder
from importlib.metadata import MetadataPathFinder, entry_points
from pathlib import Path

import pytest

from itembank import VERSION
from itembank.files.named_by_packages import may_be_named

GROUP = "itembank.topics"
POINTS = f"[console_scripts]\nother = other:run\n\n[{GROUP}]\nmore = other.topics\n"


@pytest.fixture
def place(tmp_path, monkeypatch):
    """Return a folder that packages are installed in, the only one, with no finder but Python's."""
    # Libraries that another test loaded may have put finders of their own there, or taken away
    # what Python's knows of packages.
    finds = staticmethod(MetadataPathFinder.find_distributions)
    monkeypatch.setattr(PathFinder, "find_distributions", finds, raising=False)
    usual = [finder for finder in sys.meta_path if finder is PathFinder or not knows(finder)]
    monkeypatch.setattr(sys, "meta_path", usual)
    monkeypatch.setattr(sys, "path", [str(tmp_path / "nowhere"), str(tmp_path)])
    return tmp_path


def knows(finder: object) -> bool:
    return hasattr(finder, "find_distributions")


def named() -> bool:
    return bool(entry_points(group=GROUP))


@pytest.mark.parametrize("record", ["other-1.0.dist-info", "Other-1.0.DIST-INFO", "o.egg-info"])
def test_what_a_package_names_is_found(place, record):
    (place / record).mkdir()
    (place / record / "METADATA").write_text("Metadata-Version: 2.1\nName: o\nVersion: 1.0\n")
    assert not may_be_named(GROUP)
    assert not named()
    (place / record / "entry_points.txt").write_text(POINTS.replace(GROUP, "itembank.other"))
    assert not may_be_named(GROUP)
    assert not named()
    (place / record / "entry_points.txt").write_text(POINTS)
    assert may_be_named(GROUP)
    assert named()


def test_what_is_named_in_an_archive_is_found(place, monkeypatch):
    archive = place / "other.zip"
    with zipfile.ZipFile(archive, "w") as file:
        file.writestr("other-1.0.dist-info/METADATA", "Name: other\nVersion: 1.0\n")
        file.writestr("other-1.0.dist-info/entry_points.txt", POINTS)
    assert not may_be_named(GROUP)
    monkeypatch.setattr(sys, "path", [str(archive)])
    assert may_be_named(GROUP)
    assert named()


def test_a_finder_that_knows_packages_is_asked(place, monkeypatch):
    class Finder:
        def find_distributions(self, context):
            return iter(())

    monkeypatch.setattr(sys, "meta_path", [*sys.meta_path, Finder()])
    assert may_be_named(GROUP)


def test_where_the_folder_is_the_one_we_are_in(place, monkeypatch):
    (place / "o.dist-info").mkdir()
    (place / "o.dist-info" / "entry_points.txt").write_text(POINTS)
    monkeypatch.setattr(sys, "path", [""])
    monkeypatch.chdir(place)
    assert may_be_named(GROUP)
    assert named()


def test_the_version_is_that_of_the_project():
    project = Path(__file__).parents[1] / "pyproject.toml"
    assert tomllib.loads(project.read_text("utf-8"))["project"]["version"] == VERSION
