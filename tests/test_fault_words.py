"""The same slip in any file is told in the same words, whichever reader takes the file apart."""

import re

import pytest

from itembank.bank.model.fields import BankItem
from itembank.bank.read.topic_text import load_topic_text
from itembank.errors import ItembankError
from itembank.files.faults import FileFaults
from itembank.files.model_words import model_at
from itembank.packs.data.pack import Look, Pack, PackItem
from itembank.packs.data.pack_models import model_of
from itembank.planning.department.department import read_department

DEPARTMENT = """school = "Larkhythe School"
[[classes]]
name = "8K"
year = 8
topics = ["ratio.share"]
questions = 8
paper = "white"
"""
TOPIC = """topic = "ratio.share"
[[items]]
id = "bus-1"
tier = "core"
prompt = "Work out {3 × 4}."
key = "12"
marks = 2
"""


def department_fault(tmp_path, old, new):
    assert old in DEPARTMENT
    path = tmp_path / "department.toml"
    path.write_text(DEPARTMENT.replace(old, new))
    with pytest.raises(FileFaults) as found:
        read_department(tmp_path)
    return found.value.faults[0]


def topic_fault(tmp_path, old, new):
    assert old in TOPIC
    with pytest.raises(FileFaults) as found:
        load_topic_text(TOPIC.replace(old, new), tmp_path / "ratio.share.toml")
    return found.value.faults[0]


def shape(fault, **names):
    """Return a fault's sentence with what is particular to its file taken out."""
    message = fault.message
    for word, name in names.items():
        message = message.replace(name, word)
    return message


SLIPS = {
    "an unknown key with one like it": (
        ("questions = 8", "qestions = 8", {"KEY": "qestions", "LIKE": "questions"}),
        ("marks = 2", "makrs = 2", {"KEY": "makrs", "LIKE": "marks"}),
        "There is no key ‘KEY’ here. Did you mean ‘LIKE’?",
    ),
    "a missing key": (
        ("year = 8\n", "", {"KEY": "year"}),
        ('key = "12"\n', "", {"KEY": "key"}),
        "‘KEY’ is missing here. Add a line KEY = …",
    ),
    "a word for a number": (
        ("questions = 8", 'questions = "8"', {"KEY": "questions", "GIVEN": "'8'"}),
        ("marks = 2", 'marks = "2"', {"KEY": "marks", "GIVEN": "'2'"}),
        "‘KEY’ must be a whole number from 1 to 20, not GIVEN.",
    ),
    "a number for a word": (
        ('name = "8K"', "name = 8", {"KEY": "name", "GIVEN": "8"}),
        ('prompt = "Work out {3 × 4}."', "prompt = 8", {"KEY": "prompt", "GIVEN": "8"}),
        "‘KEY’ must be text in quotation marks, not GIVEN.",
    ),
    "a number out of range": (
        ("questions = 8", "questions = 21", {"KEY": "questions"}),
        ("marks = 2", "marks = 21", {"KEY": "marks"}),
        "‘KEY’ must be from 1 to 20, not 21.",
    ),
    "a text with nothing in it": (
        ('name = "8K"', 'name = " "', {"KEY": "name"}),
        ('key = "12"', 'key = " "', {"KEY": "key"}),
        "‘KEY’ is empty; write something between the quotation marks.",
    ),
    "a table for a list": (
        ("[[classes]]", "[classes]", {"KEY": "classes"}),
        ("[[items]]", "[items]", {"KEY": "items"}),
        None,
    ),
    "a key given twice": (
        ("year = 8", "year = 8\nyear = 9", {}),
        ("marks = 2", "marks = 2\nmarks = 3", {}),
        None,
    ),
}


@pytest.mark.parametrize("slip", SLIPS)
def test_both_readers_say_the_same_of_the_same_slip(slip, tmp_path):
    first, second, sentence = SLIPS[slip]
    by_table = department_fault(tmp_path, *first[:2])
    by_model = topic_fault(tmp_path, *second[:2])
    assert shape(by_table, **first[2]) == shape(by_model, **second[2])
    assert type(by_table) is type(by_model)
    assert sentence is None or shape(by_table, **first[2]) == sentence


@pytest.mark.parametrize("slip", [name for name in SLIPS if name != "a missing key"])
def test_both_readers_give_the_line(slip, tmp_path):
    first, second, _ = SLIPS[slip]
    for text, fault, change in (
        (DEPARTMENT, department_fault(tmp_path, *first[:2]), first),
        (TOPIC, topic_fault(tmp_path, *second[:2]), second),
    ):
        changed = text[: text.index(change[0])].count("\n") + 1
        assert fault.line - changed in ((1,) if "twice" in slip else (0,))


def test_both_readers_name_the_word_that_was_meant(tmp_path):
    by_table = department_fault(tmp_path, 'paper = "white"', 'paper = "whit"').message
    by_model = topic_fault(tmp_path, 'tier = "core"', 'tier = "cor"').message
    pattern = r"‘\w+’ must be \w+(, \w+)* or \w+, not ‘\w+’\. Did you mean ‘(white|core)’\?"
    assert re.fullmatch(pattern, by_table)
    assert re.fullmatch(pattern, by_model)


def test_a_model_is_found_by_the_place_of_a_key():
    pack = model_of(Pack)
    assert model_at(pack, ("versions", 0, "items", 2, "marks")) is model_of(PackItem)
    assert model_at(pack, ("look", "slips")) is model_of(Look)
    assert model_at(BankItem, ("marks",)) is BankItem
    assert model_at(pack, ("nowhere", "at", "all")) is None
    assert issubclass(FileFaults, ItembankError)
