"""docs/department.md is true: its examples are read without a fault, and it names every key."""

import re
from dataclasses import replace
from pathlib import Path

import pytest

from itembank.errors import ItembankError
from itembank.files import toml_table as toml_file
from itembank.items.topics.registry import topic_ids
from itembank.planning.bands.band_signs import SHAPES
from itembank.planning.bands.bands import default_scheme
from itembank.planning.department.folder import read_folder

ROOT = Path(__file__).parents[2]
PAGE = (ROOT / "docs" / "department.md").read_text(encoding="utf-8")
BLOCKS = re.findall(r"```toml\n(.*?)```", PAGE, re.S)
ROWS = dict(re.findall(r"^\| `(\w+)` \|.*\| ([^|]*?) \|$", PAGE, re.M))


def read(folder, department, calendar, scheme):
    (folder / "department.toml").write_text(department)
    (folder / "calendar.toml").write_text(calendar)
    (folder / "schemes").mkdir()
    (folder / "schemes" / "year-8.toml").write_text(scheme)
    return read_folder(folder, topic_ids(), {})


@pytest.mark.parametrize("department", BLOCKS[:2])
def test_its_examples_are_a_whole_department(tmp_path, department):
    found = read(tmp_path, department, *BLOCKS[2:])
    assert found.department.school == "Larkhythe School"
    assert len(found.schemes["year-8"].topics) == 2
    assert found.calendar.terms


def test_it_names_every_key_that_is_read(tmp_path, monkeypatch):
    asked = set()
    close = toml_file.Table.close

    def closing(table):
        asked.update(table._asked)
        close(table)

    monkeypatch.setattr(toml_file.Table, "close", closing)
    for example in ("department.toml", "calendar.toml", "schemes/year-8.toml"):
        source = ROOT / "banks" / "larkhythe" / example
        (tmp_path / example).parent.mkdir(exist_ok=True)
        (tmp_path / example).write_text(source.read_text(encoding="utf-8"))
    text = (tmp_path / "department.toml").read_text(encoding="utf-8")
    text = re.sub(r'^scheme = "year-[79]"\n', "", text, flags=re.M)
    text += "\n[deciding]\nagain_below = 40\n\n[planning]\nweeks_apart = 5\n"
    (tmp_path / "department.toml").write_text(text)
    read_folder(tmp_path, topic_ids(), {})
    assert len(asked) > 50
    assert {key for key in asked if f"`{key}`" not in PAGE and f"[{key}]" not in PAGE} == set()
    # And none that is not: a key of the tables would be refused in the file.
    assert set(ROWS) - asked == set()


# What is left out: each row of the page is tried, by leaving the key out and by stating what
# the page says it is then.

SECTIONS = ("top", "classes", "bands", "deciding", "planning", "calendar", "scheme")
TABLES = re.findall(r"^\| key \| says \| left out \|\n\| --- .*\n((?:\|.*\n)+)", PAGE, re.M)
KEYS = [
    (section, *row)
    for section, table in zip(SECTIONS, TABLES, strict=True)
    for row in re.findall(r"^\| `(\w+)` \| (.*) \| ([^|]*?) \|$", table, re.M)
]
STATED = {
    "top": {"school": '"S"', "banks": '["questions"]'},
    "classes": {
        "name": '"8K"',
        "year": "8",
        "topics": '["ratio.share"]',
        "scheme": '"year-8"',
        "lessons": '["Mon 1"]',
    },
    "bands": {"cuts": "[3, 6]"},
    "deciding": {},
    "planning": {},
    "calendar": {
        "terms": '[{name = "Autumn", first = 2026-09-03, last = 2026-12-18}]',
    },
    "scheme": {"year": "8", "topics": '[{topic = "ratio.share", week = 2}]'},
}
HEADS = {
    "classes": "[[classes]]",
    "bands": "[classes.bands]",
    "deciding": "[deciding]",
    "planning": "[classes.planning]",
}
SAYS_NOTHING = {
    "none": "[]",
    "no year before": '""',
    "the first": '"8K"',
    "as the scheme says": "{}",
    "as the timetable says": "{}",
    ("seats", "not checked"): "[]",
    "`both` with banks": '"both"',
}
"""What words of the page stand for in a file."""
OTHER = {
    "default_class": '"9S"',
    "after": '"year-7"',
    "title": '"Another"',
    "paper": '"cream"',
    "self_mark": '"question by question"',
    "moved": '{ "2026-12-07 1" = "2026-12-08 5" }',
    "large_print": "2",
    "questions_from": '"generated"',
    "prefer": '"generated"',
    "banks": '["questions"]',
    "seats": '["A1"]',
    "taught": '{"ratio.share" = 2026-11-19}',
    "closed": '[{first = 2026-10-26, why = "half term"}]',
}
"""A value that is not what stands for a key that is left out."""


def said_by(folder, changes):
    """Return all that is read of a folder whose tables say `STATED` with `changes`.

    A key that is None is left out.
    """
    made = {section: dict(rows) for section, rows in STATED.items()}
    for (section, key), value in changes.items():
        made[section].pop(key, None)
        if value is not None:
            made[section][key] = value
    text = {
        section: "\n".join(
            [HEADS.get(section, ""), *(f"{key} = {value}" for key, value in rows.items())]
        )
        for section, rows in made.items()
    }
    department = "\n".join(text[section] for section in ("top", "classes", "planning"))
    if ("bands", "all") not in changes:
        department += "\n" + text["bands"]
    department += f"\n{text['deciding']}\n"
    department += '[[classes]]\nname = "9S"\nyear = 9\ntopics = ["ratio.share"]\n'
    (folder / "questions").mkdir(exist_ok=True)
    (folder / "questions" / "bank.toml").write_text('name = "q"\ntitle = "Q"\n')
    (folder / "schemes").mkdir(exist_ok=True)
    (folder / "department.toml").write_text(department, encoding="utf-8")
    (folder / "calendar.toml").write_text(text["calendar"], encoding="utf-8")
    (folder / "schemes" / "year-8.toml").write_text(text["scheme"], encoding="utf-8")
    (folder / "schemes" / "year-7.toml").write_text(
        'year = 7\ntopics = [{topic = "ratio.scale", week = 3}]', encoding="utf-8"
    )
    found = read_folder(folder, topic_ids(), {})
    group = found.department.find_class("8K")
    return (
        found.department.school,
        found.department.default_class,
        found.department.deciding,
        replace(group, bands=None, stated_sources=None),
        group.stated_sources.settle(),
        [group.bands.bands(marks) for marks in (5, 8, 10)],
        found.calendar,
        found.schemes,
        found.scheme_of(group),
    )


def literal(key, default):
    """Return what the page says of a key that is left out, as a file would say it."""
    if (key, default) in SAYS_NOTHING or default in SAYS_NOTHING:
        return SAYS_NOTHING.get((key, default)) or SAYS_NOTHING[default]
    if re.fullmatch(r"\d+", default):
        return default
    word = re.fullmatch(r"`([\w ]+)`", default)
    assert word, f"the page says ‘{default}’ of {key}, and nothing here can tell whether it is so"
    return word[1] if word[1] in ("true", "false") else f'"{word[1]}"'


def another(key, value):
    if value.isdigit():
        return str(int(value) - 1)
    return OTHER.get(key) or {"true": "false", "false": "true"}[value]


@pytest.mark.parametrize(("section", "key", "says", "default"), KEYS, ids=lambda one: one[:20])
def test_what_is_left_out_is_as_the_page_says(tmp_path, section, key, says, default):
    where = (section, key)
    if default.startswith("needed"):
        two_weeks = {("calendar", "two_week"): "true"} if "two_week" in default else {}
        assert default in ("needed", "needed for a week", "needed with `two_week`")
        with pytest.raises(ItembankError) as caught:
            said_by(tmp_path, {**two_weeks, where: None})
        assert re.search(rf"\b{key.rstrip('s')}", str(caught.value))
    elif default == "the usual rule":
        left_out = said_by(tmp_path, {("bands", "all"): None})
        assert left_out[5] == [default_scheme().bands(marks) for marks in (5, 8, 10)]
    elif (key, default) == ("teacher", "not checked"):
        same = {("classes", "teacher"): '"HT"'}
        assert said_by(tmp_path, {}) != said_by(tmp_path, same)
        assert said_by(tmp_path, {})[3].plan.teacher == ""
    else:
        value = literal(key, default)
        plain = {("top", "banks"): None} if key in ("banks", "seats") else {}
        left_out = said_by(tmp_path, {**plain, where: None})
        assert left_out == said_by(tmp_path, {**plain, where: value})
        if key == "two_week":
            plain = {("calendar", "week_a"): "2026-09-07"}
        assert left_out != said_by(tmp_path, {**plain, where: another(key, value)})


def test_the_page_says_the_cut_scores_of_the_usual_rule():
    assert re.search(r"0–4, 5–6 and 7–8 of 8, or 0–5, 6–8 and 9–10 of 10", PAGE)
    assert "the bands are 0–2, 3–4 and 5" in PAGE
    spans = {
        marks: [(band.lowest, band.highest) for band in default_scheme().bands(marks)]
        for marks in (5, 8, 10)
    }
    assert spans == {
        5: [(0, 2), (3, 4), (5, 5)],
        8: [(0, 4), (5, 6), (7, 8)],
        10: [(0, 5), (6, 8), (9, 10)],
    }


def test_the_page_names_every_shape_of_a_sign():
    (line,) = [line for line in PAGE.splitlines() if line.startswith("A `shape` is one of")]
    named = re.findall(r"`(\w+)`", line.split(";")[0])[1:]
    assert named == list(SHAPES)
