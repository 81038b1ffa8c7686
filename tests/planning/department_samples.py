"""A department's file for tests: a good one, read from a folder, or the faults of it."""

from pathlib import Path

import pytest

from itembank.files.faults import FileFaults
from itembank.planning.department.department import read_department

KNOWN = ("ratio.share", "ratio.scale", "fractions.divide")
GOOD = """school = "Larkhythe School"

[[classes]]
name = "8K"
year = 8
topics = ["ratio.share"]
"""


def department(tmp_path: Path, text: str):
    (tmp_path / "department.toml").write_text(text, encoding="utf-8")
    return read_department(tmp_path, KNOWN)


def faults(tmp_path: Path, text: str):
    with pytest.raises(FileFaults) as caught:
        department(tmp_path, text)
    return [(fault.line, fault.message) for fault in caught.value.faults]
