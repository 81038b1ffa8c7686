"""What comes out of a parcel is data and classes of the tool, and nothing that could do harm."""

import datetime
import pickle
from fractions import Fraction
from pathlib import Path

import pytest

from itembank.bank.proof.prove import Question, judge_entry, judge_question
from itembank.bank.read.load import read_bank
from itembank.items.topics.registry import topic_ids
from itembank.processes.parcel import Refused, packed, unpacked
from itembank.proof import audit as audit_module
from itembank.proof.judge import Outcome, State
from tests.depth import some, whole

BANKS = Path(__file__).parent.parent.parent / "banks"


def named(module, name, *given):
    """Return a pickle that has something called, by its name, as a harmful one would."""

    parts = [b"\x80\x04\x8c", bytes([len(module)]), module.encode()]
    parts += [b"\x8c", bytes([len(name)]), name.encode(), b"\x93"]
    return b"".join([*parts, pickle.dumps(given, 4)[2:-1], b"R."])


@pytest.mark.parametrize(
    ("module", "name"),
    [
        ("os", "system"),
        ("posix", "system"),
        ("builtins", "eval"),
        ("builtins", "getattr"),
        ("itembank.processes.spawned", "subprocess.Popen"),
        ("itembank.processes.forked", "os"),
        ("itembank.files.disk", "os.remove"),
        ("generators", "__path__"),
        ("itembank.processes.work_place", "Sequence"),
    ],
)
@pytest.mark.parametrize("work", [True, False])
def test_what_is_not_ours_is_refused(module, name, work):
    with pytest.raises(Refused):
        unpacked(named(module, name, "true"), work=work)


def test_functions_of_ours_are_taken_as_work_alone():
    parcel = packed(judge_question)
    assert unpacked(parcel, work=True) is judge_question
    with pytest.raises(Refused):
        unpacked(parcel)


@pytest.mark.parametrize("parcel", [b"", b"x", packed([1, 2])[:-3]])
def test_half_a_parcel_is_refused(parcel):
    with pytest.raises(Refused):
        unpacked(parcel)


def test_data_comes_out_as_it_went_in():
    data = [1, "a", {"b": (Fraction(1, 2), None)}, {3}, datetime.date(2026, 9, 1)]
    assert unpacked(packed(data)) == data
    assert unpacked(packed(Outcome(State.PROVED, "", "1"))) == Outcome(State.PROVED, "", "1")


@whole
def test_every_question_of_the_banks_and_what_an_audit_finds_can_travel():
    for facts in BANKS.rglob("bank.toml"):
        entries = list(read_bank(facts.parent).entries())
        assert entries
        parcel = packed([Question(entry) for entry in entries])
        assert str(facts.parent).encode() not in parcel
        few = unpacked(parcel)[:20]
        assert [one.judged() for one in few] == [judge_entry(entry) for entry in entries[:20]]
    for name in some(topic_ids(), 20):
        for chunk in audit_module._chunks(name, 2, 40):
            found = audit_module.check_chunk(chunk)
            assert unpacked(packed(found)) == found
            assert unpacked(packed(chunk)) == chunk
