"""Whatever a file holds, it is read or refused with a plain error: nothing else comes out."""

from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from itembank.errors import ItembankError
from itembank.files.faults import FileFaults
from itembank.planning.bands.groups import ScoreFile, parse_scores
from itembank.planning.department.department import Department, read_department
from itembank.planning.department.pack_request import PackRequest
from itembank.planning.department.plan_file import read_plan
from tests.depth import cases

LARKHYTHE = Path(__file__).parents[2] / "banks" / "larkhythe"
DEPARTMENT = (LARKHYTHE / "department.toml").read_text(encoding="utf-8")
PLAN = (LARKHYTHE / "plan-8K.toml").read_text(encoding="utf-8")
SIGNS = ["", "[", "]", "[[", '"', "'", '"""', "=", ".", "#", "\n", "{}", "[]", "\x00", "é"]
VALUES = ["0", "-1", "1e9", "true", "nan", "2026-11-30", "9" * 5000]
LINES = ["[bands]\n", "[[classes]]\n", "x = 1\n"]
PIECES = st.sampled_from([*SIGNS, *VALUES, *LINES]) | st.text(max_size=5)
fuzz = settings(
    max_examples=cases(60, 600),
    suppress_health_check=[HealthCheck.function_scoped_fixture],
    deadline=None,
)


@st.composite
def damaged(draw, text):
    for _ in range(draw(st.integers(1, 3))):
        start = draw(st.integers(0, len(text)))
        length = draw(st.integers(0, 12))
        text = text[:start] + draw(PIECES) + text[start + length :]
    return text


def check_lines(error: ItembankError, text: str) -> None:
    assert isinstance(error, FileFaults)
    for fault in error.faults:
        assert 0 <= fault.line <= len(text.splitlines()) + 1
        assert fault.message


@fuzz
@given(text=damaged(DEPARTMENT))
def test_damaged_departments(tmp_path, text):
    (tmp_path / "department.toml").write_bytes(text.encode())
    try:
        assert isinstance(read_department(tmp_path), Department)
    except ItembankError as error:
        check_lines(error, text)


@fuzz
@given(text=damaged(PLAN))
def test_damaged_plans(tmp_path, text):
    path = tmp_path / "plan.toml"
    path.write_bytes(text.encode())
    try:
        assert isinstance(read_plan(path), PackRequest)
    except ItembankError as error:
        check_lines(error, text)


@fuzz
@given(text=damaged("seat,score\nA1,5\nA2,8\nB1,\n") | st.text())
def test_any_scores(text):
    try:
        found = parse_scores(text, 8)
    except ItembankError:
        return
    assert isinstance(found, ScoreFile)
    assert all(0 <= entry.score <= 8 for entry in found.entries)


def test_nesting_and_numbers_beyond_all_measure(tmp_path):
    path = tmp_path / "plan.toml"
    for text in ("seed = " + "9" * 5000, "topics = " + "[" * 5000):
        path.write_text(text)
        with pytest.raises(FileFaults, match="cannot be read as TOML"):
            read_plan(path)
