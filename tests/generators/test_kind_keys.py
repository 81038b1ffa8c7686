"""Keys of statements, cards and wrong lines, found again from the printed text by other means.

Texts are read by regular expressions and worked out in Python's own fractions, equations by
trying them at two points: neither road takes part.
"""

from __future__ import annotations

import random
import re
from datetime import datetime
from fractions import Fraction
from functools import cache
from math import isqrt

import pytest

from itembank.items.asks import Answered, FaultyWorking, kind_of
from itembank.items.item import Item
from itembank.items.topics.registry import topics
from itembank.notation.line import line
from tests.depth import cases, whole
from tests.other_kinds import asked_about, made_by

SAMPLE = cases(5, 60, 16)
UNIT = re.compile(
    r"(?<![a-z])(?:of|kg|g|km|mm|cm|m|ml|l|min|h|s|p)(?![a-z])"
    r"|(?<=\d )(?:t|mg|cl|ha|days?|weeks?)(?![a-z])"  # 7.2 t; but 5t has a letter
)
KINDS = ("true or false", "odd one out", "spot the mistake", "match pairs")
MIXED = tuple(topic for topic in topics() if any(s.mixed for s in topic.spaces.values()))
UNITS: dict[str, int | Fraction] = {
         "kg": 1000, "g": 1, "m": 1000, "cm": 10, "mm": 1, "km": 1_000_000, "l": 10**6, "ml": 1000,
         "£": 100, "p": 1, "min": 60, "h": 3600, "s": 1, "cl": 10**4,
         "t": 10**6, "mg": Fraction(1, 1000), "ha": 10**10, "day": 86400, "days": 86400,
         "week": 604800, "weeks": 604800}  # fmt: skip


@cache
def others() -> tuple[Item, ...]:
    found = []
    for topic in MIXED:
        for tier, space in topic.spaces.items():
            there = made_by(space)
            rng = random.Random(f"{topic.id}/{tier}")
            found += [topic.item(tier, at) for at in rng.sample(there, min(SAMPLE, len(there)))]
    return tuple(found)


def text(item: Item) -> str:
    """Return what is printed, the mathematics in braces."""
    runs = (run if isinstance(run, str) else f"{{{line(run)}}}" for run in item.prompt)
    return " ".join("".join(runs).split())


TOKEN = re.compile(
    r"[£√∛]|\d+(?:\.\d+)?|weeks?|days?|kg|km|mm|cm|ml|cl|mg|ha|min|of|[a-z]|[-−+×÷/^()%]"
)


def value(said: str, letter: Fraction | None = None, apart: int = 0) -> object:
    """Work a printed text out: a number, or the numbers of a ratio brought to a first of 1."""
    if " : " in said:
        parts = [value(part, letter) for part in said.split(" : ")]
        return tuple(part / parts[0] for part in parts)  # type: ignore[operator]
    tokens = TOKEN.findall(said)
    assert "".join(tokens) == said.replace(" ", ""), said
    worked = Working(tokens, letter, apart)
    found = worked.sum()
    assert not worked.left, said
    return found


class Working:
    """The usual order of operations, by descent; 1 1/2 is a mixed number, 2x a product."""

    def __init__(self, tokens: list[str], letter: Fraction | None, apart: int = 0) -> None:
        self.left, self.letter, self.apart = tokens[::-1], letter, apart

    def next(self) -> str:
        return self.left[-1] if self.left else ""

    def sum(self) -> Fraction:
        negative = self.next() in ("-", "−")
        if negative:
            self.left.pop()
        total = self.product() * (-1 if negative else 1)
        while self.next() in ("+", "-", "−"):
            sign = 1 if self.left.pop() == "+" else -1
            total += sign * self.product()
        return total

    def product(self) -> Fraction:
        total = self.joined()
        while self.next() in ("×", "÷", "of"):
            over = self.left.pop() == "÷"
            other = self.joined()
            total = total / other if over else total * other
        return total

    def joined(self) -> Fraction:
        total = self.power()
        while self.next() == "/":
            self.left.pop()
            total /= self.power()
        if re.fullmatch(r"\d+", self.next()):  # a mixed number
            whole, top = total, Fraction(self.left.pop())
            assert self.left.pop() == "/"
            total = whole + top / Fraction(self.left.pop())
            if self.next() == "%":
                self.left.pop()
                total /= 100
            return total
        while self.next() in ("(", "√") or (
            re.fullmatch(r"[a-z]+", self.next()) and self.next() != "of"
        ):
            unit = UNITS.get(self.next()) if self.letter is None else None
            if unit:
                self.left.pop()
                if self.next() == "^":  # an area or a volume, in the smallest unit of length
                    self.left.pop()
                    unit = unit ** int(self.left.pop())
            total *= Fraction(unit) if unit else self.power()
        return total

    def power(self) -> Fraction:
        token = self.left.pop()
        if token in ("-", "−"):
            return -self.power()
        if token == "£":
            return 100 * Fraction(self.left.pop())
        if token == "(":
            found = self.sum()
            assert self.left.pop() == ")"
        elif token == "√":
            of = self.power()
            found = Fraction(isqrt(int(of)))
            assert found**2 == of, of
        elif token == "∛":
            of = self.power()
            found = Fraction(next(n for n in range(100) if n**3 == of))
        elif token.isalpha():
            assert self.letter is not None, token
            # Two letters have values of their own; a letter alone has the one that is tried.
            found = self.letter + self.apart * Fraction(ord(token), 13)
        else:
            found = Fraction(token)
        if self.next() == "^":
            self.left.pop()
            found = found ** int(self.power())
        if self.next() == "%":
            self.left.pop()
            found /= 100
        return found


def solution(equation: str) -> Fraction:
    """Return the solution of a linear equation, from its two sides at 0 and at 1."""
    left, right = equation.split(" = ")
    if re.fullmatch(r"[a-z]", left) and left not in right:
        return value(right)  # type: ignore[return-value]

    def gap(at: int) -> Fraction:
        return value(left, Fraction(at)) - value(right, Fraction(at))  # type: ignore[operator]

    low, high = gap(1), gap(2)
    return 1 - low / (high - low)


def points(equation: str) -> tuple[Fraction, ...]:
    """Return the y at three places x of a line, from the gap of its sides at two y."""
    sides = equation.split(" = ")

    def gap(x: int, y: int) -> Fraction:
        left, right = (
            re.sub(r"[xy]", lambda found: f"({x if found[0] == 'x' else y})", side)
            for side in sides
        )
        return value(left) - value(right)  # type: ignore[operator]

    return tuple(gap(x, 0) / (gap(x, 0) - gap(x, 1)) for x in (-3, 5, 8))


def worth(card: str) -> object:
    if re.fullmatch(r"\d\d?:\d\d( [ap]m)?", card):
        return datetime.strptime(card, "%I:%M %p" if "m" in card else "%H:%M")
    # Any number does for π, as long as no other one comes of it by chance.
    card = card.replace("π", "(355/113)")
    if re.fullmatch(r"\d+ h \d+ min", card):
        card = card.replace(" h ", " h + ")
    if "," in card:
        return tuple(Fraction(term) for term in card.split(", "))
    if " = " in card and {"x", "y"} <= {*card}:
        return points(card)
    if " = " in card:
        return solution(card)
    if re.search(r"[a-z]", UNIT.sub("", card)):
        return tuple(value(card, Fraction(at, 7), apart) for apart, at in enumerate((3, 10, 22)))
    return value(card)


def true_or_false(said: str, key: str) -> None:
    shown = re.findall(r"\{(.*?)\}", said)
    if "whatever" in said:
        left, right = shown[-1].split(" = ")
        holds = worth(left) == worth(right)
    elif "When" in said:
        at = value(shown[0].split(" = ")[1])
        left, right = shown[1].split(" = ")
        holds = value(left, at) == value(right, at)  # type: ignore[arg-type]
    else:
        left, sign, right = re.split(r" ([=<>≠]) ", shown[0])
        a, b = value(left), value(right)
        holds = {"=": a == b, "<": a < b, ">": a > b, "≠": a != b}[sign]  # type: ignore[operator]
    assert key == f'"{str(holds).lower()}"'


def odd_one_out(said: str, key: str) -> None:
    values = {name: worth(card) for name, card in re.findall(r"\((\w)\) \{(.*?)\}", said)}
    (odd,) = [name for name, mine in values.items() if [*values.values()].count(mine) == 1]
    assert len({repr(mine) for mine in values.values()}) == 2
    assert key == f'"{odd}"'


def spot(said: str, key: str) -> None:
    lines = [worth(shown) for shown in re.findall(r"\{(.*?)\}", said)]
    wrong = [n for n in range(1, len(lines)) if lines[n] != lines[n - 1]]
    name, right = key.split(", ", 1)
    assert [f'"line {n}"' for n in wrong] == [name]
    assert worth(right) == lines[0]


def match(said: str, key: str) -> None:
    shown = re.findall(r"\((\w)\) \{(.*?)\}", said)
    values: dict[str, object] = {}
    for name, card in shown:
        if "nth term" in said and "," not in card:
            values[name] = tuple(value(card, Fraction(n)) for n in (1, 2, 3, 4))
        else:
            values[name] = worth(card)
    cards = [name for name in values if name in "ABC"]
    pairs = [(c, o) for c in cards for o in values if o not in "ABC" and values[o] == values[c]]
    assert key == ", ".join(f'"{card}–{other}"' for card, other in pairs)
    assert [card for card, _ in pairs] == cards


CHECKS = dict(zip(KINDS, (true_or_false, odd_one_out, spot, match), strict=True))


@whole
@pytest.mark.parametrize("kind", KINDS)
def test_keys_are_found_again_from_the_printed_text(kind: str) -> None:
    count = 0
    for item in others():
        if isinstance(item.ask, Answered | FaultyWorking):
            continue  # of a question in words: test_wrong_workings.py, and below
        if kind_of(item.ask).told == kind and "\u0307" not in text(item):  # no recurring dots
            CHECKS[kind](text(item), line(item.key))
            count += 1
    assert count >= 20


def same(one: str, other: str) -> bool:
    """Tell whether two printed answers are one, the spaces and a name for a value apart."""
    try:
        return value(one) == value(other)
    except (AssertionError, ValueError, ZeroDivisionError, KeyError, IndexError, StopIteration):
        return one == other


@whole
def test_answers_are_judged_by_the_keys_of_the_same_questions_asked_plainly() -> None:
    count = 0
    # One mechanism makes them for all topics.
    looked_at = cases(8, len(MIXED), 20)
    for topic in random.Random(5).sample(MIXED, looked_at):
        for tier, space in topic.spaces.items():
            judged = [
                topic.item(tier, index)
                for index in made_by(
                    space, lambda make: make.__name__ in ("answer_claim", "whose_answer")
                )[::6]
            ]
            for item in judged:
                if " says an answer is " in text(item):
                    continue  # one of many right answers
                asked, frame = re.split(r" (?=\w+ says the answer is )", text(item))
                plain = asked_about(topic, item)
                assert text(plain) == asked
                mine = line(plain.key)
                given = re.findall(r"(\w+) says (?:the answer is )?\{(.*?)\}", frame)
                right = [name for name, answer in given if same(mine, answer)]
                if frame.endswith("Who is right?"):
                    assert [line(item.key)] == [f'"{name}"' for name in right], text(item)
                else:
                    assert line(item.key) == f'"{str(bool(right)).lower()}"', text(item)
                count += 1
    # That there was something to judge: a topic of this sample has six, of a larger one more.
    assert count >= 5 * looked_at


def test_statements_are_true_about_as_often_as_false() -> None:
    keys = [line(item.key) for item in others() if kind_of(item.ask).told == KINDS[0]]
    assert 0.4 <= keys.count('"true"') / len(keys) <= 0.6


def test_each_line_is_the_wrong_one_sometimes_and_each_letter_the_odd_one() -> None:
    found = [item for item in others() if kind_of(item.ask).told in KINDS[1:3]]
    names = {line(item.key).partition(",")[0] for item in found}
    assert {'"line 1"', '"line 2"', '"A"', '"B"', '"C"', '"D"'} <= names
