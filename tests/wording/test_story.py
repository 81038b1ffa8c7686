"""A model is held to everything that its story prints and asks."""

import pytest

from itembank.notation import parse
from itembank.wording.sentences.question_sentences import questions
from itembank.wording.story.conditions import condition_fault
from itembank.wording.story.numbers.story import Story
from itembank.wording.story.numbers.story_numbers import story_fault


def runs(text):
    pieces = text.replace("}", "{").split("{")
    return tuple(parse(p) if i % 2 else p for i, p in enumerate(pieces) if p)


def fault(text, *model, **more):
    return story_fault(Story(runs(text), tuple(map(parse, model)), **more))


@pytest.mark.parametrize(
    ("text", "model", "named"),
    [
        ("{3} boxes of {40} and {5} more.", "3 × 40", "does not use 5"),
        ("{3/4} of {60} and {2/3} of that.", "3/4 × 60", "does not use 2/3"),
        ("{£4.50} and {35p}.", "£4.50", "does not use 35p"),
        ("{20%} off {£60}, then {10%} off.", "£60 - 20% of £60", "does not use 10%"),
        ("{3} boxes of {40}, half of it sold.", "3 × 40", "‘half’"),
        ("{3} boxes of {40}, then twice as many.", "3 × 40", "‘twice’"),
        ("{3} boxes of {40} for 5 days.", "3 × 40", "5 stands outside"),
        ("{3} + {40}", "3 + 40", "stands outside"),
        ("£{3} and £{40}", "3 + 40", "stands outside"),
        ("{3} boxes at {40}%.", "3 × 40", "stands outside"),
        ("{60} km in {30} minutes. What is the speed in km/h?", "60 ÷ 30", "minutes and hours"),
        ("{2} pounds and {40} pence.", "2 + 40", "pence"),
    ],
)
def test_what_the_model_leaves_out_is_named(text, model, named):
    assert named in fault(text, model)


@pytest.mark.parametrize(
    ("text", "model", "more"),
    [
        ("{3} boxes of {40}.", ("3 × 40",), {}),
        ("On a map {1 cm} is {5 km}. It is {7 cm}.", ("7 × 5 km",), {}),
        ("A scale of {1 : 50}, {22 cm}.", ("22 cm × 50",), {}),
        ("{3} boxes of {40}, half of it sold.", ("3 × 40 ÷ 2",), {"constants": (2,)}),
        ("{3} boxes of {40}, half of it sold.", ("1/2 × 3 × 40",), {}),
        ("{3} boxes of {40}, {5 min}.", ("3 × 40",), {"not_needed": {"5 min": "a rate"}}),
        ("Two clubs share {£40}, {3 : 5}.", ("a : b = 3 : 5", "a + b = £40"), {}),
        ("{60} km, {30} minutes, in km/h", ("60 ÷ (30 ÷ 60)",), {"constants": (60,)}),
        ("A {240}-litre tank, {16} minutes.", ("240 ÷ 16",), {}),
        ("{2 1/2 kg} and {0.5}", ("5/2 × 0.5",), {}),
    ],
)
def test_a_model_that_uses_everything_is_enough(text, model, more):
    assert fault(text, *model, **more) == ""


@pytest.mark.parametrize(
    ("text", "asking"),
    [
        ("A bus has {40} seats. How many are taken? Show your working.", ["How many are taken"]),
        ("Work out the cost. Give your answer in pounds.", ["Work out the cost"]),
        ("Share {£40} in the ratio {3 : 5}. How much is the larger share?", 1),
        ("How much does each pay? How much more does Bo pay?", 2),
        ("A bus has {40} seats.", []),
        ("When it rains, {4} stay in. Where it is dry, all go.", []),
    ],
)
def test_the_sentences_that_ask(text, asking):
    found = questions(runs(text))
    assert found == asking if isinstance(asking, list) else len(found) == asking


@pytest.mark.parametrize(
    ("text", "constant"),
    [
        ("There are {5} boxes with {6} eggs in each.", 60),
        ("There are {5} brown boxes with {6} eggs in each.", 37),
        ("There are {5} boxes of coffee with {6} bags in each.", 100),
        ("Ann scored {5} points and Ben scored {6}.", 20),
        ("On Monday {5} boys and {6} girls came.", 7),
        ("{5} boys and {6} girls returned.", 360),
        ("{5} plants grow in {6} pots.", 1000),
        ("It may rain on {5} farms, each with {6} yaks.", 31),
        ("He bakes {6} loaves each day in February.", 29),
        ("He bakes {6} loaves each day of a month.", 29),
        ("He bakes {6} loaves each day of the year.", 366),
        # An amount is changed into another unit by itself: so it calls for no factor.
        ("It makes {5} parts per minute, and runs for {3 h}.", 24),
        ("A rope is {5 m} long and cut into {4} equal pieces.", 100),
        ("A sack holds {5 kg} and is shared by {4} people.", 1000),
        ("At {09:00} there are {4} pupils at each of {3} tables.", 60),
    ],
)
def test_a_word_inside_another_calls_for_no_constant(text, constant):
    assert f"The model uses {constant}" in condition_fault(runs(text), (constant,), letters=False)


@pytest.mark.parametrize(
    ("text", "constant"),
    [
        ("A tap drips {5} times a minute.", 60),
        ("A bus leaves at {09:15} and arrives at {09:40}. How long is that?", 60),
        ("He bakes {6} loaves each day in February.", 28),
        ("He bakes {6} loaves each day in August.", 31),
        ("He bakes {6} loaves each day in February of a leap year.", 29),
        ("He bakes {6} loaves each day of a leap year.", 366),
        ("A shop is open from Monday to Sunday, {8 h} a day.", 7),
        ("A price of {£40} falls by {15%}.", 100),
        ("It is {5 m} long. How many cm is that?", 100),
        ("Two angles of a triangle are {50°} and {60°}.", 180),
        ("The {5}th row of a pattern has {9} tiles.", 37),
        ("He buys {3} dozen eggs.", 12),
        ("A film lasts {2 h}, in parts of {40 min}.", 60),
        ("A tram goes at {20 km/h} for {12 min}.", 60),
        ("A sack holds {5 kg} and a cup {250 g}.", 1000),
        ("A ribbon of {3 m} is cut into pieces of {25 cm}.", 100),
    ],
)
def test_a_constant_that_the_words_call_for_is_known(text, constant):
    assert condition_fault(runs(text), (constant,), letters=False) == ""


def test_the_span_of_a_rate_has_its_article():
    says = fault("A job pays {£9} an hour. What does Jo get for a day?", "£9")
    assert "is for an hour, and the words speak of a day" in says
