"""What is read back is proved again, and every fault of a file is told plainly."""

import json
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from itembank.errors import CheckFailed, ItembankError
from itembank.packs.build import build_pack
from itembank.packs.data.pack_files import load_pack, pack_json, schema_json
from itembank.packs.pack_checks import read_pack
from tests.depth import cases
from tests.packs.packs import request

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def pack():
    return build_pack(request(follow_up=3, variants=1))


@pytest.fixture
def data(pack):
    return json.loads(pack_json(pack))


@pytest.fixture
def read(tmp_path):
    """Return what writes data to a pack.json and reads it."""

    def reader(content):
        path = tmp_path / "pack.json"
        if isinstance(content, bytes):
            path.write_bytes(content)
        else:
            path.write_text(json.dumps(content), encoding="utf-8")
        return read_pack(path)

    return reader


def test_a_pack_comes_back_as_it_was(pack, tmp_path):
    (tmp_path / "pack.json").write_bytes(pack_json(pack))
    assert read_pack(tmp_path / "pack.json") == pack == read_pack(tmp_path)
    assert pack_json(read_pack(tmp_path)) == pack_json(pack)


def test_letters_are_written_as_they_are_and_the_text_ends_its_line(pack):
    text = pack_json(pack).decode()
    assert text.endswith("}\n")
    assert "\\u" not in text
    assert '\n "schema_version": 6,' in text


def test_the_published_schema_is_current():
    """On failure, write it again: `python -m itembank.packs.data.pack_files`."""
    assert (ROOT / "docs" / "pack.schema.json").read_bytes() == schema_json()


def test_a_fault_of_json_is_told_with_its_place(read, pack):
    text = pack_json(pack).decode().replace('"seed": 7,', '"seed": 7;')
    with pytest.raises(ItembankError, match=r"pack\.json, line 4, column 11: this is not JSON"):
        read(text.encode())


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (b"", "line 1, column 1"),
        (b"[]", "not a pack"),
        (b"null", "not a pack"),
        (b"{}", "made_by: ‘made_by’ is missing"),
        (b'{"seed": NaN}', "beyond all measure"),
        (b'{"seed": 1e999}', "beyond all measure"),
        (b'{"seed": ' + b"9" * 5000 + b"}", "beyond all measure"),
        (b"[" * 200_000, "JSON"),
        (b"\xff\xfe{\x00", "UTF-16"),
        (b'{"seed": "\xff"}', "UTF-8"),
        (b'{"schema_version": 7, "made_by": "itembank 9.0"}', r"newer itembank \(itembank 9.0; f"),
    ],
)
def test_what_is_no_pack_is_refused(read, text, said):
    with pytest.raises(ItembankError, match=said) as caught:
        read(text)
    assert caught.value.exit_status == 2


def test_a_pack_of_a_day_when_mathematics_was_said_otherwise_is_read_and_said_as_today(read, pack):
    data = json.loads(pack_json(pack))
    key = data["sheets"][0]["items"][0]["key"]
    said = key["words"]
    key["words"] = "as it was said once"
    run = next(run for run in first_item(data)["prompt"] if run["kind"] == "math")
    run["words"] = "and this too"
    assert read(json.dumps(data).encode()) == pack
    assert said in pack_json(pack).decode()


def test_a_missing_file_is_a_plain_error(tmp_path):
    with pytest.raises(ItembankError, match="There is no such file"):
        read_pack(tmp_path / "pack.json")


def first_item(data):
    return data["versions"][0]["items"][0]


def change(**fields):
    return lambda data: data.update(fields)


@pytest.mark.parametrize(
    ("harm", "said"),
    [
        (change(colour="red"), r"colour: There is no key ‘colour’ here"),
        (change(seed="7"), r"seed: ‘seed’ must be a whole number, not '7'"),
        (lambda d: first_item(d).update(marks=0), r"versions\[0\].items\[0\].marks: "),
        (lambda d: first_item(d)["key"].pop("line"), r"items\[0\].key.line: ‘line’ is missing"),
        (lambda d: d["lesson"].update(date="2026-02-30"), r"lesson\.date: "),
        (lambda d: d["lesson"].update(class_name="../8K"), r"lesson\.class_name: ‘\.\./8K’"),
        (lambda d: d["lesson"].update(class_name="8K\\x"), r"lesson\.class_name"),
        (lambda d: d["lesson"].update(class_name="8K\n"), r"lesson\.class_name"),
        (lambda d: d["bands"][1].update(lowest=6), r"bands: No band holds the score 5"),
        (lambda d: d["bands"][1].update(lowest=4), r"bands: .* overlap"),
        (lambda d: d["bands"][2].update(highest=9), r"bands: "),
        (lambda d: first_item(d).update(marks=2), r"bands: No band holds the score 9"),
        (lambda d: d["sheets"].append(d["sheets"][0]), r"sheets: ‘support’ stands there twice"),
        (lambda d: d["versions"].append(d["versions"][0]), r"versions: ‘A’ stands there twice"),
        (
            lambda d: d["versions"].append({"letter": "B", "items": d["versions"][0]["items"][:7]}),
            r"versions\[1\]\.items: the versions differ",
        ),
        (lambda d: d["topics"].pop(), r"is not one of the pack's topics"),
        (lambda d: first_item(d).update(address="x/core/1"), r"items\[0\]\.address"),
        (lambda d: first_item(d)["key"].update(form="round"), r"no form called ‘round’"),
        (lambda d: first_item(d)["key"].update(form_words="x"), "form_words"),
        (lambda d: first_item(d)["key"].update(line="1 +"), r"‘1 \+’ cannot be read"),
        (lambda d: first_item(d)["key"].update(mathml="<math/>"), r"the MathML and the line"),
        (lambda d: first_item(d)["ask"].update(target=[]), r"0 targets where it needs 1"),
        (lambda d: first_item(d)["ask"].update(target=["(1"]), r"left open"),
        (lambda d: first_item(d)["ask"].update(kind="order"), r"order"),
    ],
)
def test_a_changed_field_is_named(read, data, harm, said):
    harm(data)
    with pytest.raises(ItembankError, match=said) as caught:
        read(data)
    assert caught.value.exit_status == 2


def test_a_wrong_key_with_faces_that_agree_fails_the_check(read, data):
    items = [item for item in data["versions"][0]["items"] if item["key"]["form"] == "solution"]
    one, other = items[0], next(i for i in items if i["key"]["line"] != items[0]["key"]["line"])
    one["key"] = other["key"]
    with pytest.raises(CheckFailed, match=one["address"]) as caught:
        read(data)
    assert caught.value.exit_status == 1


def leaves(value, path=()):
    """Yield the path of every value that is not an object or array."""
    if isinstance(value, dict | list):
        pairs = value.items() if isinstance(value, dict) else enumerate(value)
        for key, inner in pairs:
            yield from leaves(inner, (*path, key))
    else:
        yield path


@given(draw=st.data())
@settings(
    max_examples=cases(25, 60),
    deadline=None,
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)
def test_any_one_value_changed_is_read_or_refused_plainly(draw, pack, tmp_path):
    data = json.loads(pack_json(pack))
    path = draw.draw(st.sampled_from(list(leaves(data))))
    value = draw.draw(
        st.none() | st.booleans() | st.integers() | st.text(max_size=8) | st.just([]) | st.just({})
    )
    inner = data
    for key in path[:-1]:
        inner = inner[key]
    inner[path[-1]] = value
    file = tmp_path / "pack.json"
    file.write_text(json.dumps(data), encoding="utf-8")
    try:
        loaded = load_pack(file)
    except ItembankError:  # anything else would reach a teacher as a traceback
        return
    assert json.loads(pack_json(loaded)) == data


def test_pages_made_again_are_of_the_same_sort(tmp_path):
    made = build_pack(request(self_mark="question by question"))
    path = tmp_path / "pack.json"
    path.write_bytes(pack_json(made))
    again = read_pack(path)
    assert again.look.self_mark == "question by question"
    # A pack of an earlier format does not say.
    data = json.loads(pack_json(made))
    data["schema_version"] = 5
    del data["look"]["self_mark"]
    path.write_text(json.dumps(data))
    assert read_pack(path).look.self_mark == "when done"
