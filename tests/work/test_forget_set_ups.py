"""Forgetting a pupil leaves no earlier set-up from which the seat could come back."""

import pytest

from itembank.records.pupils.whom import Whom
from itembank.work.department.earlier_set_ups import FOLDER, earlier_set_ups
from itembank.work.lesson.forget import forget
from itembank.work.lesson.record import record
from tests.work.test_lesson import department as department
from tests.work.test_lesson import said


@pytest.mark.parametrize("whom", [Whom("8K", "A1"), Whom("8K")])
def test_no_earlier_set_up_is_left(department, whom):
    record(department, said(department, bands="1 1 1"))
    folder = department.folder / FOLDER
    folder.mkdir(parents=True)
    for number in (1, 2):
        (folder / f"{number:04}.toml").write_text('large_print = ["A1"]\n')
    assert len(earlier_set_ups(department.folder)) == 2
    forget(department, whom)
    assert earlier_set_ups(department.folder) == []
