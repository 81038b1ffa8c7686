"""Units are worth what their definitions say, on every face, and docs/units.md lists them."""

import re
from datetime import datetime, timedelta
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.notation import NotationError, ParseError, line, mathml, parse, parse_written, words
from itembank.notation.parse import parse_together
from itembank.notation.symbolic import to_sympy
from itembank.notation.tree import ClockTime, Dec, Int, MixedUnits, Quantity, Ratio, Sum, walk
from itembank.notation.units import (
    BASE,
    CURRENCY,
    NEEDS_SPACE,
    TOGETHER,
    UNITS,
    shown_unit,
)
from itembank.notation.value import NotExact, exact
from itembank.proof.claim.dimensions import dimension, dimension_words

PAGE = (Path(__file__).parents[2] / "docs" / "units.md").read_text(encoding="utf-8")
ROWS = re.findall(r"^\| `([^`]+)` \| ([^|]+) \| ([^|]+) \| (\S+) (\S+) \|$", PAGE, re.M)


def test_the_page_lists_every_unit_and_no_other():
    listed = {
        sign: (name, dimension_, Fraction(worth)) for sign, name, dimension_, worth, _ in ROWS
    }
    assert listed == {sign: (u.singular, u.dimension, u.size) for sign, u in UNITS.items()}
    for _, _, dimension_, worth, base in ROWS:
        assert base == shown_unit(BASE[dimension_], Fraction(worth) == 1)


def test_the_page_lists_every_sign_of_money_and_every_pair_of_units():
    money = re.findall(r"^\| `(.)` \| (\w+) \| (\S+) (\S) \|$", PAGE, re.M)
    assert {sign: (name, Fraction(size)) for sign, name, size, _ in money} == {
        sign: (unit.singular, unit.size) for sign, unit in CURRENCY.items()
    }
    pairs = re.findall(r"^\| `(\w+)` \| ((?:`\w+`(?:, )?)+) \|$", PAGE, re.M)
    assert {big: tuple(re.findall(r"\w+", small)) for big, small in pairs} == TOGETHER


def test_the_mathematics_of_the_page_is_read_or_refused_as_it_says():
    refused = {"5 pounds", "6lb", "sin(x + y)", "log 100"}
    examples = set(re.findall(r"`\{([^}`]+)\}`", PAGE)) - {"60"}
    assert len(examples) > 40
    for text in examples:
        if text in refused:
            with pytest.raises(ParseError):
                parse(text)
        else:
            line(parse(text))


def test_base_units_are_worth_one():
    assert set(BASE) == {unit.dimension for unit in UNITS.values()}
    for of, unit in BASE.items():
        assert UNITS[unit].dimension == of
        assert UNITS[unit].size == 1


# By definition. SI and units used with it: BIPM, The International System of Units, 9th ed.
# (2019), tables 7 and 8. Yard and pound: agreement of 1959. The rest: Weights and Measures Act
# 1985, schedule 1 (from memory).
@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("1 km", "1000 m"),
        ("1 m", "100 cm"),
        ("1 cm", "10 mm"),
        ("1 yd", "0.9144 m"),
        ("1 yd", "3 ft"),
        ("1 ft", "12 in"),
        ("1 in", "2.54 cm"),
        ("1 mile", "1760 yd"),
        ("1 mile", "1609.344 m"),
        ("1 t", "1000 kg"),
        ("1 kg", "1000 g"),
        ("1 g", "1000 mg"),
        ("1 lb", "0.45359237 kg"),
        ("1 lb", "16 oz"),
        ("1 st", "14 lb"),
        ("1 gal", "4.54609 l"),
        ("1 gal", "8 pt"),
        ("1 l", "1000 ml"),
        ("1 l", "100 cl"),
        ("1 l", "1000 cm^3"),
        ("1 ml", "1 cm^3"),
        ("1 m^3", "1000 l"),
        ("1 cm^3", "1000 mm^3"),
        ("1 m^2", "10000 cm^2"),
        ("1 cm^2", "100 mm^2"),
        ("1 ha", "10000 m^2"),
        ("1 km^2", "100 ha"),
        ("1 min", "60 s"),
        ("1 h", "60 min"),
        ("1 day", "24 h"),
        ("1 week", "7 days"),
        ("1 year", "12 months"),
        ("18 km/h", "5 m/s"),
        ("60 mph", "26.8224 m/s"),
        ("1 g/cm^3", "1000 kg/m^3"),
        ("60 mph", "60 miles ÷ 1 h"),
        ("45 km/h", "90 km ÷ 2 h"),
        ("2.7 g/cm^3", "54 g ÷ 20 cm^3"),
        ("2 h 35 min", "155 min"),
        ("1 min 30 s", "90 s"),
        ("1 h 0 min 5 s", "3605 s"),
        ("5 ft 7 in", "67 in"),
        ("10 st 4 lb", "144 lb"),
        ("3 kg 250 g", "3.25 kg"),
        ("2 m 5 cm", "2.05 m"),
        ("2 years 6 months", "30 months"),
        ("£3.20 + 45p", "365p"),
        ("£3.20 + 45p", "£3.65"),
        ("7 °C - 12 °C", "-5 °C"),
        ("2:35 pm", "14:35"),
        ("12:05 am", "00:05"),
        ("12 pm", "12:00"),
        ("14:35 + 50 min", "15:25"),
        ("22:15 + 3 h 50 min", "02:05"),
        ("00:20 - 50 min", "23:30"),
        ("16:10 - 14:35", "1 h 35 min"),
        ("4:20 pm - 2:35 pm", "105 min"),
    ],
)
def test_both_faces_know_what_units_are_worth(one, other):
    first, second = parse(one, times=True), parse(other, times=True)
    assert exact(first) == exact(second)
    assert to_sympy(first) == to_sympy(second)
    assert dimension(first) == dimension(second)


amounts = st.integers(0, 999).map(Int) | st.builds(
    Dec, st.integers(0, 99).map(str), st.text("0123456789", min_size=1, max_size=3)
)
units = st.sampled_from(sorted(UNITS))


@given(amounts, units)
def test_every_unit_reads_back_by_its_sign_and_by_its_name(amount, unit):
    tree = Quantity(amount, unit)
    shown = line(amount)
    names = {UNITS[unit].singular, UNITS[unit].many} if unit != "lb" else {"lb"}
    texts = {line(tree), *(f"{shown} {name}" for name in names)}
    texts |= {f"{shown}{name}" for name in names if len(name) > 3}
    if unit not in NEEDS_SPACE and len(unit.partition("^")[0]) > 1 and "/" not in unit:
        texts.add(shown + unit)
    for text in texts:
        assert parse(text) == tree, text
    assert parse_written(line(tree)) == tree


@given(amounts, units)
def test_the_two_roads_and_the_dimension_agree(amount, unit):
    tree = Quantity(amount, unit)
    value = exact(tree)
    assert value == exact(amount) * UNITS[unit].size
    assert to_sympy(tree) == to_sympy(amount) * to_sympy(parse(f"1 {shown_unit(unit, True)}"))
    assert Fraction(str(to_sympy(tree))) == value
    assert dimension_words(dimension(tree)) == UNITS[unit].dimension


def test_units_written_out_have_a_singular():
    assert [line(parse(text)) for text in ("1 days", "3 mile", "1/2 weeks")] == [
        "1 day",
        "3 miles",
        "1/2 week",
    ]
    assert words(parse("1 mile")) == "1 mile"
    assert words(parse("2 °C")) == "2 degrees Celsius"
    assert "\u00a0days<" in mathml(parse("3 days"))
    assert "\u00a0day<" in mathml(parse("1 day"))


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("5 kgs", "5 kg"),
        ("5 KG", "5 kg"),
        ("5 Km", "5 km"),
        ("3 mtrs", "3 m"),
        ("60 secs", "60 s"),
        ("60secs", "60 s"),
        ("2 hrs", "2 h"),
        ("45mins", "45 min"),
        ("3 ltr", "3 l"),
        ("2 L", "2 l"),
        ("250 mL", "250 ml"),
        ("6 lbs", "6 lb"),
        ("30cm2", "30 cm^2"),
        ("30 sq cm", "30 cm^2"),
        ("30 cm squared", "30 cm^2"),
        ("5 cm3", "5 cm^3"),
        ("50 kph", "50 km/h"),
        ("45km/hr", "45 km/h"),
        ("8 g/cm3", "8 g/cm^3"),
        ("30 MPH", "30 mph"),
        ("20 degrees C", "20 °C"),
        ("20℃", "20 °C"),
        ("40 degrees", "40°"),
        ("40 per cent", "40%"),
        ("80 pence", "80p"),
        ("2h35min", "2 h 35 min"),
        ("2hrs 35mins", "2 h 35 min"),
        ("2h 35m", "2 h 35 min"),
        ("1m 20cm", "1 m 20 cm"),
        ("3kg 250g", "3 kg 250 g"),
        ("5ft 7in", "5 ft 7 in"),
        ("1 week 3 days", "1 week 3 days"),
        ("2.35pm", "2:35 pm"),
        ("6 p.m.", "6 pm"),
        ("x litres", "x l"),
        ("(x + 3) metres", "(x + 3) m"),
        ("2 pi r", "2πr"),
    ],
)
def test_other_ways_of_writing_a_unit(typed, meant):
    assert line(parse(typed)) == meant
    assert parse_written(meant) == parse(typed)


def test_a_fault_is_told_where_it_was_typed():
    with pytest.raises(ParseError) as refused:
        parse("20 litres + 3 kilograms + #")
    assert refused.value.position == 27
    with pytest.raises(ParseError) as refused:
        parse("20 litres of 60 sweets")
    assert refused.value.position == 17


@pytest.mark.parametrize(
    ("text", "advice"),
    [
        ("5 pounds", "write £"),
        ("6lb", "6 lb for pounds, or 6 × l × b"),
        ("5Km", "5 km for kilometres"),
        ("5 Mg", "mg for milligrams"),
        ("2 h 35 cm", "do not go together"),
        ("2.5 h 35 min", "whole number of h"),
        ("35 min 2 h", "do not go together"),
        ("13:30 pm", "no time of day"),
        ("0:01 am", "no time of day"),
        ("25:10 + 5 min", "no time of day"),
        ("9:45 + 20 min", "9:45 am or 9:45 pm"),
        ("09:35 + 5", "length of time"),
        ("2:35 pm + 1:05 pm", "cannot be added"),
        ("2 × 2:35 pm", "stands alone"),
        ("2(14:35 + 5 min)", "stands alone"),
        ("2:35 pm : 3 pm", "stands alone"),
    ],
)
def test_what_may_mean_two_things_or_nothing_is_told(text, advice):
    with pytest.raises(ParseError, match=re.escape(advice) if "(" in advice else advice):
        parse(text)


def test_letters_of_the_question_are_no_units():
    area = parse_together(["2lb + 2bh + 2lh", "6lb"])
    assert not any(isinstance(node, Quantity) for tree in area for node in walk(tree))
    (_, product) = parse_together(["3s × 2t", "6st"])
    assert line(product) == "6st"
    (_, product) = parse_together(["3p × m", "3pm"])
    assert not any(isinstance(node, ClockTime) for node in walk(product))


@pytest.mark.parametrize(
    "text", ["10:15", "14:35", "3:5 = 9:15", "12:18", "1:20", "14 : 35", "23:59"]
)
def test_a_ratio_close_up_stays_a_ratio(text):
    assert any(isinstance(node, Ratio) for node in walk(parse(text)))
    assert not any(isinstance(node, ClockTime) for node in walk(parse(text)))


def test_a_line_that_can_only_hold_times_tells_for_the_others():
    assert parse_together(["14:35", "50 min", "15:25"])[0] == parse("14 : 35")
    assert parse_together(["14:35 + 50 min", "15:25"])[1] == ClockTime(15, 25)
    assert parse_together(["09:45", "14:35"])[1] == ClockTime(14, 35)
    assert parse_together(["45 min", "10:20"])[1] == parse("10 : 20")


def _datetime(time):
    return datetime.strptime(line(time), "%I:%M %p" if time.half else "%H:%M")


times = st.builds(ClockTime, st.integers(0, 23), st.integers(0, 59)) | st.builds(
    ClockTime, st.integers(1, 12), st.integers(0, 59), st.sampled_from(["am", "pm"])
)


@given(times, st.integers(0, 23), st.integers(0, 59), st.sampled_from("+-"))
def test_times_go_round_as_the_calendar_of_python_has_it(time, hours, minutes, sign):
    length = MixedUnits((Quantity(Int(hours), "h"), Quantity(Int(minutes), "min")))
    tree = Sum(time, ((sign, length),))
    delta = timedelta(hours=hours, minutes=minutes)
    there = _datetime(time) + delta if sign == "+" else _datetime(time) - delta
    expected = 3600 * there.hour + 60 * there.minute
    assert exact(tree) == expected
    assert to_sympy(tree) == expected
    assert parse_written(line(tree)) == tree


@given(times, times)
def test_the_difference_of_two_times_is_a_length_of_one_day(first, second):
    tree = Sum(second, (("-", first),))
    seconds = (_datetime(second) - _datetime(first)).total_seconds()
    if seconds < 0:
        with pytest.raises(NotExact, match="different days"):
            exact(tree)
        with pytest.raises(NotationError, match="different days"):
            to_sympy(tree)
        return
    assert exact(tree) == seconds
    assert to_sympy(tree) == int(seconds)
    assert dimension(tree) == {"time": 1}


def test_times_are_said_as_they_are_called_out():
    said = [
        words(parse_written(text)) for text in ["14:35", "09:05", "14:00", "2:35 pm", "9:00 am"]
    ]
    assert said == [
        "the time 14 35",
        "the time 9 oh 5",
        "the time 14 hundred",
        "2 35 pm",
        "9 o’clock am",
    ]
    assert "2:35\u00a0pm" in mathml(parse("2:35 pm"))


def test_a_length_of_time_is_no_time_of_day():
    assert dimension(parse("15:25 + 5 min")) != dimension(parse("15 h 30 min"))
    with pytest.raises(NotExact, match="unlike"):
        dimension(parse_written("14:35 + 3 kg"))
    with pytest.raises(NotExact, match="unlike"):
        dimension(parse("3 years + 2 days"))
