"""What a pack says of marks: one each on the starter, by the working on the sheets."""

from __future__ import annotations

import json

import pytest

from itembank.errors import ItembankError
from itembank.items.asks import kind_of
from itembank.items.topics.registry import find_item
from itembank.packs.build import build_pack
from itembank.packs.data.pack_files import pack_json
from itembank.packs.pack_checks import read_pack
from itembank.planning.department.pack_request import PlannedTopic
from tests.packs.packs import request

TOPICS = ("ratio.combine", "equations.one-step", "equations.both-sides-brackets")


@pytest.fixture(scope="module")
def pack():
    return build_pack(request(topics=tuple(map(PlannedTopic, TOPICS)), follow_up=9, variants=2))


def test_starters_stay_one_mark_each(pack):
    for version in pack.versions:
        assert {item.marks for item in version.items} == {1}
        assert not any(step.marks for item in version.items for step in item.steps)
    assert pack.marks == len(pack.versions[0].items)


def test_sheets_have_the_marks_of_their_questions_line_by_line(pack):
    worth = set()
    for sheet in pack.sheets:
        for item in sheet.items:
            assert item.marks == find_item(item.address).marks
            asked = find_item(item.address).ask
            # Cards have no line of working that earns a mark alone.
            whole = item.marks == 1 or bool(kind_of(asked).frame)
            assert sum(step.marks for step in item.steps) == (0 if whole else item.marks)
            worth.add(item.marks)
    assert {1, 2, 3, 4} <= worth


def stored(pack, tmp_path, change):
    data = json.loads(pack_json(pack))
    change(data)
    path = tmp_path / "pack.json"
    path.write_text(json.dumps(data), encoding="utf-8")
    return path


def long_item(data):
    items = [item for sheet in data["sheets"] for item in sheet["items"]]
    return next(item for item in items if item["marks"] > 2)


def test_a_pack_of_version_2_is_still_read(pack, tmp_path):
    """It gives each question one mark and its lines none."""

    def older(data):
        data["schema_version"] = 2
        for sheet in data["sheets"]:
            for item in (*sheet["items"], sheet["worked"], sheet["part_finished"]):
                if item is not None:
                    item["marks"] = 1
                    for step in item["steps"]:
                        del step["marks"]

    found = read_pack(stored(pack, tmp_path, older))
    assert found.schema_version == 2
    assert {item.marks for sheet in found.sheets for item in sheet.items} == {1}


@pytest.mark.parametrize(
    ("harm", "said"),
    [
        (
            lambda item: item.update(marks=item["marks"] + 1),
            "its steps earn 4 marks",
        ),
        (
            lambda item: item["steps"][-1].update(marks=0),
            "its steps earn 3 marks",
        ),
        (lambda item: item["steps"][-1].update(maths=None), "without mathematics earns marks"),
    ],
)
def test_marks_that_do_not_agree_are_refused(pack, tmp_path, harm, said):
    path = stored(pack, tmp_path, lambda data: harm(long_item(data)))
    with pytest.raises(ItembankError, match=said):
        read_pack(path)
