"""Result slips, read back into the records: all that is right, or nothing and every fault."""

import pytest

from itembank.errors import ItembankError
from itembank.selfmark.slip import slip_key, slip_text
from itembank.work.lesson.record import Done, record
from tests.work.test_lesson import TUESDAY, said
from tests.work.test_lesson import department as department


@pytest.fixture
def code(department):
    pack = department.folder / "output" / f"8K-{TUESDAY}" / "pack.json"
    key = slip_key(pack.read_bytes())

    def written(seat, outcomes):
        return slip_text(key, seat, "", outcomes.count("r"), len(outcomes), outcomes)

    return written


def test_slips_are_recorded_question_by_question(department, code):
    slips = f"{code('A1', 'rrnr')}, {code('a2', 'nnre')}"
    recorded = record(department, said(department, slips=slips))
    assert recorded.done is Done.RECORDED
    assert recorded.decision.pupils == 2
    assert [group.pupils for group in recorded.decision.groups] == [1, 1, 0]
    assert "left empty" in str(recorded.remarks[0])
    more = record(department, said(department, slips=code("B1", "rrrr"), add=True))
    assert more.done is Done.ADDED
    assert more.decision.pupils == 3


def test_a_file_of_slips_has_one_a_line(department, code, tmp_path):
    path = tmp_path / "slips.txt"
    path.write_text(f"{code('A1', 'rrrr')}\n\n  {code('A2', 'rrnn').lower()}\n")
    recorded = record(department, said(department, slips=str(path)))
    assert recorded.decision.pupils == 2


def test_what_nobody_answered_was_not_asked(department, code):
    recorded = record(
        department, said(department, slips=f"{code('A1', 'rrre')};{code('A2', 'rnre')}")
    )
    assert "question 4" in str(recorded.remarks[0]).lower()


def test_what_the_page_left_to_the_teacher_is_told(department, code):
    recorded = record(department, said(department, slips=code("A1", "rrrt")))
    assert recorded.remarks[0].matter == "left to the teacher"
    assert "A1 question 4" in str(recorded.remarks[0])


def test_every_fault_is_told_and_nothing_is_recorded(department, code):
    good = code("A1", "rrnr")
    changed = code("A2", "rrnn").replace("2/4", "4/4")
    slips = "\n".join([good, changed, code("Z9", "rrrr"), good, "hello", code("A3", "rrrrrrrr")])
    with pytest.raises(ItembankError) as caught:
        record(department, said(department, slips=slips))
    told = str(caught.value)
    for piece in ("A2: the score is 4", "Z9", "slip already", "hello", "8 questions"):
        assert piece in told
    with pytest.raises(ItembankError, match="no code of a slip"):
        record(department, said(department, slips=" , "))
    recorded = record(department, said(department, slips=good))
    assert recorded.decision.pupils == 1


def test_a_slip_of_another_pack_is_refused(department, code):
    slip = code("A1", "rrnr")
    pack = department.folder / "output" / f"8K-{TUESDAY}" / "pack.json"
    pack.write_bytes(pack.read_bytes() + b"\n")
    with pytest.raises(ItembankError, match="another pack"):
        record(department, said(department, slips=slip))


def test_a_fault_names_the_line_that_the_teacher_sees(department, code, tmp_path):
    lines = [
        "",
        code("A1", "rrrr"),
        "",
        "",
        "hello",
        f"{code('A2', 'rrnn')}; Good; {code('Z9', 'rrnn')}",
    ]
    path = tmp_path / "slips.txt"
    path.write_bytes("\r\n".join(lines).encode())
    with pytest.raises(ItembankError) as caught:
        record(department, said(department, slips=str(path)))
    assert [fault.line for fault in caught.value.errors[0].faults] == [5, 6, 6]
    with pytest.raises(ItembankError) as caught:
        record(department, said(department, slips=f"{code('A1', 'rrrr')},,hello"))
    assert [fault.line for fault in caught.value.errors[0].faults] == [0]
