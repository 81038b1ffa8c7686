"""Settings of a department's file: shown as typed, read back the same, wrong ones never written."""

import shutil
import tomllib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.errors import ItembankError
from itembank.files.shipped import shipped_folder
from itembank.files.snapshot import ChangedSince
from itembank.work.department.band_settings import bands_shown, change_bands
from itembank.work.department.earlier_set_ups import MOST, earlier_set_ups, take_back_set_up
from itembank.work.department.made import read_kept
from itembank.work.department.setting_groups import CLASS, DECIDING, PLANNING, PRINT, SOURCES
from itembank.work.department.setting_text import settings_in
from itembank.work.department.settings import change_settings, with_settings

WHOLE = st.integers(0, 60)
TABLES = st.fixed_dictionaries(
    {},
    optional={
        "questions": WHOLE,
        "large_print": st.one_of(st.integers(0, 30), st.just(["A3", "C5"])),
        "paper": st.sampled_from(["white", "cream"]),
        "print_tint": st.booleans(),
        "banks": st.just(["../one", "two"]),
        "beyond_year": st.one_of(st.booleans(), st.just(["ratio.share", "ratio.scale"])),
        "planning": st.fixed_dictionaries({"weak": WHOLE}, optional={"rest_days": WHOLE}),
    },
)
GROUPS = tuple(setting for group in CLASS.values() for setting in group)


@pytest.fixture
def home(tmp_path):
    folder = tmp_path / "larkhythe"
    shutil.copytree(shipped_folder() / "larkhythe", folder)
    return folder


@given(TABLES)
def test_what_is_shown_is_read_back_the_same(table):
    made = {}
    assert with_settings(made, GROUPS, settings_in(table, GROUPS)) == {}
    assert made == table


def test_a_setting_is_put_in_and_taken_out_to_the_letter(home):
    before = (home / "department.toml").read_text()
    assert change_settings(read_kept(home), PLANNING, {"planning.weak": "70"}) == {}
    assert tomllib.loads((home / "department.toml").read_text())["planning"] == {"weak": 70}
    assert change_settings(read_kept(home), PLANNING, {"planning.weak": ""}) == {}
    assert (home / "department.toml").read_text() == before


@pytest.mark.parametrize(
    ("group", "typed", "name"),
    [
        (PRINT, {"questions": "6.5"}, "questions"),
        (PRINT, {"questions": "²"}, "questions"),
        (PRINT, {"large_print": "31"}, "large_print"),
        (PRINT, {"large_print": "-1"}, "large_print"),
        (PRINT, {"self_mark": "never"}, "self_mark"),
        (SOURCES, {"signed_only": "maybe"}, "signed_only"),
        (SOURCES, {"beyond_year": "inequalities"}, "beyond_year"),
        (SOURCES, {"banks": "/nowhere\n/nowhere"}, "banks"),
    ],
)
def test_what_is_wrong_is_told_by_its_name_and_not_written(home, group, typed, name):
    before = (home / "department.toml").read_text()
    assert list(change_settings(read_kept(home), group, typed, "8K")) == [name]
    assert (home / "department.toml").read_text() == before
    assert not earlier_set_ups(home)


def test_a_file_that_changed_since_it_was_read_is_not_written_over(home):
    kept = read_kept(home)
    file = home / "department.toml"
    file.write_text(file.read_text() + "# theirs\n")
    with pytest.raises(ChangedSince):
        change_settings(kept, DECIDING, {"deciding.on_from": "85"})
    assert file.read_text().endswith("# theirs\n")


def test_so_many_changes_can_be_taken_back_one_by_one(home):
    texts = [(home / "department.toml").read_text()]
    for number in range(MOST + 3):
        change_settings(read_kept(home), PRINT, {"title": f"Starter {number}"}, "8K")
        texts.append((home / "department.toml").read_text())
    assert len(earlier_set_ups(home)) == MOST
    for text in texts[-2 : -2 - MOST : -1]:
        take_back_set_up(home)
        assert (home / "department.toml").read_text() == text
    with pytest.raises(ItembankError, match="No change"):
        take_back_set_up(home)


def test_bands_as_shown_are_the_same_bands(home):
    for name in ("", "9S"):
        before = (home / "department.toml").read_text()
        assert change_bands(read_kept(home), bands_shown(read_kept(home), name), name) == {}
        assert (home / "department.toml").read_text() == before


def test_cut_scores_alone_stay_cut_scores(home):
    typed = {**bands_shown(read_kept(home)), "own": "yes", "band-1-low": "4", "band-2-low": "6"}
    assert change_bands(read_kept(home), typed) == {}
    bands = tomllib.loads((home / "department.toml").read_text())["bands"]
    assert bands == {"out_of": 8, "cuts": [4, 6]}
    assert change_bands(read_kept(home), {"own": "no"}) == {}
    assert "bands" not in tomllib.loads((home / "department.toml").read_text())


@pytest.mark.parametrize(
    ("typed", "name"),
    [
        ({"band-1-name": "Rebuild"}, "band-0-name"),
        ({"band-1-low": "7", "band-2-low": "5"}, "band-0-name"),
        ({"band-1-low": "3"}, "band-2-low"),
        ({"band-0-shape": "star"}, "band-0-shape"),
        ({"band-0-name": "A name that is far too long"}, "band-0-name"),
        ({"band-1-task-title": "x" * 60}, "band-1-task-title"),
        ({"out_of": "none"}, "out_of"),
    ],
)
def test_bands_that_make_no_sense(home, typed, name):
    kept = read_kept(home)
    shown = {**bands_shown(kept), "own": "yes", **typed}
    before = (home / "department.toml").read_text()
    assert name in change_bands(kept, shown)
    assert (home / "department.toml").read_text() == before
