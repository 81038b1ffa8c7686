"""What a file of ours may hold is declared once: reading, refusing and writing follow from it."""

import datetime
import re
from dataclasses import dataclass, field
from pathlib import Path
from typing import Annotated, Literal

import pytest

from itembank.files.faults import FileFaults
from itembank.files.fields.json_schema import schema_of, without_null
from itembank.files.fields.kinds import Check, Line, Whole
from itembank.files.fields.plain import from_json, json_text, plain, stated
from itembank.files.fields.record import Called, NotRead, read, try_read
from itembank.files.toml_table import TomlFile

ITEMBANK = Path(__file__).parents[1] / "itembank"


def even(value):
    if value % 2:
        raise ValueError(f"must be even, not {value}")
    return value


@dataclass(frozen=True, kw_only=True)
class Bed:
    """A bed of the market garden."""

    crop: Annotated[str, Line(20), "What grows in it."]
    rows: Annotated[int, Whole(1, 9), Check(even)] = 2
    sown: datetime.date | None = None


@dataclass(frozen=True, kw_only=True)
class Garden:
    """The market garden."""

    kind: Literal["field", "glasshouse"]
    beds: tuple[Bed, ...] = ()
    by: Annotated[dict[str, str], Called("class")] = field(default_factory=dict)


GOOD = {
    "kind": "field",
    "class": {"HT": "head"},
    "beds": [{"crop": "leeks", "rows": 4, "sown": "2026-09-14"}, {"crop": "kale"}],
}


def test_what_is_read_is_written_back():
    garden = read(Garden, GOOD)
    assert garden.beds[0].sown == datetime.date(2026, 9, 14)
    assert plain(garden, stated=True) == GOOD
    assert from_json(Garden, json_text(garden)) == garden
    assert stated(garden.beds[1]) == {"crop": "kale"}


@pytest.mark.parametrize(
    ("data", "path", "says"),
    [
        ({"kind": "fild"}, ("kind",), "‘kind’ must be field or glasshouse, not ‘fild’."),
        ({}, ("kind",), "‘kind’ is missing here. Add a line kind = …"),
        (
            {"kind": "field", "bed": []},
            ("bed",),
            "There is no key ‘bed’ here. Did you mean ‘beds’?",
        ),
        (
            {"kind": "field", "beds": [1]},
            ("beds", 0),
            "‘beds’ must be tables, each headed [[beds]], not 1.",
        ),
        (
            {"kind": "field", "beds": [{"crop": "leeks", "rows": 12}]},
            ("beds", 0, "rows"),
            "‘rows’ must be from 1 to 9, not 12.",
        ),
        (
            {"kind": "field", "beds": [{"crop": "leeks", "rows": 3}]},
            ("beds", 0, "rows"),
            "‘rows’ must be even, not 3.",
        ),
        (
            {"kind": "field", "beds": [{"crop": "leeks", "rows": True}]},
            ("beds", 0, "rows"),
            "‘rows’ must be a whole number from 1 to 9, not true.",
        ),
        (
            {"kind": "field", "beds": [{"crop": "leeks", "sown": "20260914"}]},
            ("beds", 0, "sown"),
            "‘sown’ must be a day such as 2026-11-30, not '20260914'.",
        ),
        ({"kind": "field", "class": {"HT": 1}}, ("class", "HT"), None),
    ],
)
def test_a_fault_says_where_it_is_and_what_to_do(data, path, says):
    made, (wrong,) = try_read(Garden, data)
    assert isinstance(made, Garden)
    assert wrong.path == path
    assert says is None or wrong.says == says
    with pytest.raises(NotRead, match=re.escape(wrong.says)):
        read(Garden, data)


def test_all_faults_are_told_and_the_rest_is_still_read():
    data = {"kind": "field", "beds": [{"crop": "", "rows": 10}, {"crop": "kale", "sown": 3}]}
    made, wrongs = try_read(Garden, data)
    assert [wrong.path[1:] for wrong in wrongs] == [(0, "crop"), (0, "rows"), (1, "sown")]
    assert made.beds[1].crop == "kale"


def test_a_file_gives_each_fault_its_line(tmp_path):
    path = tmp_path / "garden.toml"
    path.write_text('kind = "field"\n\n[[beds]]\ncrop = "leeks"\nrows = 12\n')
    file = TomlFile(path)
    file.top().read(Garden)
    with pytest.raises(FileFaults, match="line 5: ‘rows’ must be from 1 to 9"):
        file.finish()


def test_the_schema_follows_from_the_declaration():
    schema = without_null(schema_of(Garden, "A garden"))
    assert schema["required"] == ["kind"]
    assert set(schema["properties"]) == {"kind", "beds", "class"}
    bed = schema["$defs"]["Bed"]["properties"]
    assert bed["sown"] == {"type": "string", "format": "date"}
    assert bed["crop"]["description"] == "What grows in it."


def importers(library):
    pattern = re.compile(rf"^\s*(?:from|import) {library}\b", re.MULTILINE)
    files = ITEMBANK.rglob("*.py")
    return {
        path.relative_to(ITEMBANK).as_posix()
        for path in files
        if pattern.search(path.read_text(encoding="utf-8"))
    }


def test_files_are_read_by_one_reader_of_fields_and_written_by_one_writer():
    assert not importers("pydantic")
    assert importers("tomlkit") == {  # what a person wrote, edited where it stands
        "bank/write/blocks.py",
        "bank/proof/signoff.py",
        "bank/merge/merge_files.py",
    }
