"""Units, times and words in braces, from the bank's own text to the verdict of both roads.

Answers worked out by hand; conversions by definition (see tests/notation/test_units.py).
"""

import re
from pathlib import Path

import pytest

from itembank.bank.model.fields import BankItem
from itembank.bank.question.as_item import NeedsPerson, read_item
from itembank.bank.question.given.maths import UnreadableMaths
from itembank.notation import ParseError, parse
from itembank.notation import tree as t
from itembank.proof.judge import judge

SHIPPED = Path(__file__).parents[3] / "banks" / "key-stage-3"


def state(prompt, key, *model):
    working = (("Work it out.", ""),)
    item = BankItem(id="a-1", tier="core", prompt=prompt, key=key, model=model, working=working)
    return judge(read_item(item, "b:a-1", "ratio.speed")).state.value


@pytest.mark.parametrize(
    ("prompt", "right", "wrong"),
    [
        (
            "Work out {2 h 35 min + 50 min}.",
            ["3 h 25 min", "205 min"],
            ["3 h 15 min", "2 h 85 min"],
        ),
        ("Work out {14:35 + 50 min}.", ["15:25", "3:25 pm"], ["15:20", "3:25 am", "55500 s"]),
        ("Work out {22:15 + 3 h 50 min}.", ["02:05"], ["02:15", "26 h 5 min"]),
        ("Work out {16:10 - 14:35}.", ["1 h 35 min", "95 min"], ["01:35", "95", "1 h 75 min"]),
        ("Work out {3 kg 250 g - 800 g}.", ["2 kg 450 g", "2.45 kg"], ["2 kg 550 g"]),
        ("Work out {5 × 1 h 20 min}.", ["6 h 40 min"], ["5 h 100 min", "6 h 20 min"]),
        ("Work out {£3.20 + 45p}.", ["£3.65", "365p"], ["£3.60", "£48.20", "3.65 kg"]),
        ("Work out {7 °C - 12 °C}.", ["-5 °C"], ["5 °C", "19 °C"]),
        ("Change {5 ft 7 in} to inches.", ["67 in"], ["57 in", "5.7 ft"]),
        ("Change {10 st 4 lb} to pounds.", ["144 lb"], ["104 lb"]),
        ("Change {3 litres} to cubic centimetres.", ["3000 cm^3"], ["300 cm^3", "3 l"]),
        ("Change {155 min} to hours and minutes.", ["2 h 35 min"], ["155 min", "2 h 25 min"]),
        ("Change {9300 s} to hours and minutes.", ["2 h 35 min"], ["155 min", "9300 s"]),
        ("Change {150 min} to hours and minutes.", ["2 h 30 min"], ["2.5 h"]),
        ("Write {67 in} in feet and inches.", ["5 ft 7 in"], ["67 in", "5 ft 6 in"]),
        ("Change {2 weeks} to days.", ["14 days"], ["10 days"]),
        ("Simplify {3p + 2q + 4p}.", ["7p + 2q"], ["9pq"]),
        ("Simplify {10:15}.", ["2 : 3"], ["3 : 2"]),
    ],
)
def test_right_keys_are_proved_and_wrong_ones_are_not(prompt, right, wrong):
    assert {key: state(prompt, key) for key in right} == dict.fromkeys(right, "proved")
    assert {key: state(prompt, key) for key in wrong} == dict.fromkeys(wrong, "disproved")


def test_equations_with_times_of_day():
    left = "A bus comes at {10:20}. Its journey took {50 min}. When did it leave?"
    assert state(left, "09:30", "t + 50 min = 10:20") == "proved"
    assert state(left, "09:10", "t + 50 min = 10:20") == "disproved"


def test_how_long_and_when_are_told_apart():
    film = "A film starts at {2:35 pm} and ends at {4:20 pm}. "
    for words, key in (("How long is it?", "1 h 45 min"), ("How many minutes is it?", "105 min")):
        assert state(film + words, key, "4:20 pm - 2:35 pm") == "proved"
        assert state(film + words, "1 h 55 min", "4:20 pm - 2:35 pm") == "disproved"
    film = "A film lasts {105 min} and ends at {4:20 pm}. "
    assert state(film + "When does it start?", "2:35 pm", "4:20 pm - 105 min") == "proved"
    film = "A film lasts {105 min} and starts at {4:20 pm}. "
    with pytest.raises(NeedsPerson):
        state(film + "When does it end?", "2:35 pm", "4:20 pm - 105 min")


def test_of_two_things_neither_is_converted():
    with pytest.raises(NeedsPerson, match="More than one thing"):
        state("A rope is {3 m} and {2 m} long. How many centimetres is that?", "500 cm")


def test_what_goes_past_midnight_is_left_to_a_person():
    left = "A bus comes at {00:20}. Its journey took {50 min}. When did it leave?"
    assert state(left, "23:30", "t + 50 min = 00:20") == "needs a person"
    assert state("Work out {00:30 - 23:40}.", "50 min") == "needs a person"


@pytest.mark.parametrize(
    ("prompt", "told"),
    [
        ("Work out {60 sweets} ÷ {5}.", "‘sweets’"),
        ("Share {3 apples} among {2 people}.", "‘apples’"),
        ("Expand {sin(x + y)}.", "‘sin’"),
        ("Work out {log 100}.", "‘log’"),
        ("Work out {5 pounds} + {20p}.", "write £"),
        ("Work out {9:45 + 20 min}.", "9:45 am or 9:45 pm"),
    ],
)
def test_words_in_braces_are_told_where_they_stand(prompt, told):
    with pytest.raises(UnreadableMaths, match=re.escape(told)) as refused:
        state(prompt, "12")
    assert refused.value.faults[0].field == ("prompt",)
    assert "column" in refused.value.faults[0].message


def test_no_word_of_the_shipped_prompts_is_read_as_letters():
    text = "\n".join(path.read_text(encoding="utf-8") for path in sorted(SHIPPED.glob("*.toml")))
    prompts = re.findall(r'^prompt = "(.*)"$', text, re.M)
    prose = re.sub(r"\{[^}]*\}", " ", " ".join(prompts))
    words = set(re.findall(r"\b[A-Za-z]?[a-z]{2,}\b", prose))
    assert len(words) > 300
    for form in ("60 {}", "60{}", "{} = 60"):
        for word in words:
            try:
                tree = parse(form.format(word))
            except ParseError:
                continue
            letters = [part for part in t.walk(tree) if isinstance(part, t.Sym)]
            assert not letters or len(word) <= 2, f"{form.format(word)} is read as letters"
