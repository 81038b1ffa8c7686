"""Keys on sequences found a third way: terms made one by one from the printed words."""

from __future__ import annotations

import itertools
import re
from collections.abc import Callable

import pytest
from flint import fmpq, fmpq_mat

from itembank.items.item import Item
from itembank.notation import line
from tests.depth import whole
from tests.generators.key_reader import sample
from tests.generators.letter_values import same, worth

FAR = 60


def at(rule: str, n: int) -> fmpq:
    return worth(rule, {"n": fmpq(n)})


def numbers(text: str) -> list[fmpq]:
    """Return the numbers of a text, a minus sign before one counted."""
    found = re.findall(r"(?<![\w)])-?\d+(?:/\d+|\.\d+)?", text)
    return [worth(each, {}) for each in found]


def values(item: Item) -> list[fmpq]:
    return [worth(part, {}) for part in line(item.key).split(", ")]


def find_term(item: Item, text: str) -> list[fmpq]:
    if found := re.search(r"nth term of a sequence is (.*?)\. Work out the (\d+)", text):
        return [at(found[1], int(found[2]))]
    if found := re.fullmatch(r"Write the first four terms .* nth term (.*)\.", text):
        return [at(found[1], n) for n in (1, 2, 3, 4)]
    if found := re.search(r"is (.*?)\. Which term is equal to (\d+)\?", text):
        return [fmpq(n) for n in range(1, FAR) if at(found[1], n) == int(found[2])]
    if found := re.search(r"row n is (.*?)\. .* row (\d+) than in row (\d+)", text):
        return [at(found[1], int(found[2])) - at(found[1], int(found[3]))]
    if found := re.search(r"nth term (.*?) and another has nth term (.*?)\. In", text):
        return [at(found[1], n) for n in range(1, FAR) if at(found[1], n) == at(found[2], n)]
    p, low, q, high = numbers(re.sub(r"(?<=\d)(?:st|nd|rd|th)", "", text))
    first, _ = fmpq_mat([[1, p - 1], [1, q - 1]]).solve(fmpq_mat([[low], [high]])).tolist()
    return [first[0]]


def nth_term(item: Item, text: str) -> list[fmpq]:
    """Try the key at each place: it has to give the terms that are printed, and go on evenly."""
    terms = numbers(text)
    assert [at(line(item.key), n) for n in range(1, 5)] == terms
    step = terms[1] - terms[0]
    assert at(line(item.key), 40) == terms[0] + 39 * step
    for slip in item.slips:
        assert [at(line(slip.wrong), n) for n in range(1, 5)] != terms
    return []


def ruled(text: str) -> Callable[[fmpq], fmpq]:
    """Return the rule from term to term that a text tells."""
    said = re.search(r"(?:term is|sequence is): (.*?)\. ", text)
    assert said
    parts = re.findall(r"(multiply by|add|subtract) (-?\d+)", said[1])

    def rule(value: fmpq) -> fmpq:
        for verb, number in parts:
            n = int(number)
            value = value * n if verb == "multiply by" else value + (n if verb == "add" else -n)
        return value

    return rule


def term_to_term(item: Item, text: str) -> list[fmpq]:
    if "□" in text:
        shown = re.search(r": (.*)\.$", text)
        assert shown
        row = [None if part == "□" else int(part) for part in shown[1].split(", ")]
        (gap,) = [n for n, value in enumerate(row) if value is None]
        steps = {b - a for a, b in itertools.pairwise(row) if a is not None and b is not None}
        (step,) = steps
        return [fmpq((row[gap + 1] or 0) - step)]
    if "same number is added" in text:
        first, _, last = numbers(re.sub(r"(?<=\d)th", "", text))
        return [first + (last - first) / 3]
    if "add a number" in text:
        m, first, second = numbers(text)
        return [second * m + second - first * m]
    rule = ruled(text)
    if "Work out the first term" in text:
        third = numbers(text)[-1]
        return [fmpq(n) for n in range(1, FAR) if rule(rule(fmpq(n))) == third]
    start = re.search(r"first term of a sequence is (\d+)", text)
    assert start
    terms = [fmpq(int(start[1]))]
    for _ in range(8):
        terms.append(rule(terms[-1]))
    if "next three" in text:
        return terms[1:4]
    place = re.search(r"Work out the (\d+)", text)
    assert place
    return [terms[int(place[1]) - 1]]


def geometric(item: Item, text: str) -> list[fmpq]:
    if "□" in text or ":" in text:
        shown = re.search(r": ([^?.]*)", text)
        assert shown
        row = [None if part == "□" else worth(part, {}) for part in shown[1].split(", ")]
        ratio = (row[1] or fmpq(0)) / (row[0] or fmpq(1))
        if "What is this number" in text:
            return [ratio]
        place = row.index(None) if None in row else len(row)
        found = (row[0] or fmpq(0)) * ratio**place
        known = zip(row, range(len(row)), strict=True)
        assert all(value in (None, (row[0] or 0) * ratio**n) for value, n in known)
        return [found]
    amounts = numbers(re.sub(r"(?<=\d)(?:st|nd|rd|th)", "", text))
    if "Work out the first term" in text:
        ratio, place, value = amounts
        for _ in range(int(place) - 1):
            value /= ratio
        return [value]
    first, ratio, times = amounts
    steps = int(times) if "after" in text else int(times) - 1
    for _ in range(steps):
        first *= ratio
    return [first]


def dots(n: int) -> fmpq:
    return fmpq(sum(range(1, n + 1)))


def special(item: Item, text: str) -> list[fmpq]:
    places = [int(n) for n in re.findall(r"(\d+)(?:st|nd|rd|th)", text)]
    if found := re.fullmatch(r"Work out the \d+.. (\w+) number\.", text):
        (n,) = places
        return [{"square": fmpq(n * n), "cube": fmpq(n**3), "triangular": dots(n)}[found[1]]]
    if "triangular numbers" in text:
        return [sum(map(dots, places), fmpq(0))]
    if "How much larger" in text:
        return [fmpq(places[0] ** 2 - places[1] ** 2)]
    if "between" in text:
        low, high = numbers(text)
        assert values(item)[0] in [n * n for n in range(FAR) if low < n * n < high]
        return []
    if "Find the" in text:
        shown = re.search(r": (.*)\.$", text)
        assert shown
        row = shown[1].split(", ")
        for n in range(1, 400):
            tried = [n if part == "□" else int(part) for part in row]
            if "□" not in row:
                tried.append(n)
            triples = zip(tried, tried[1:], tried[2:], strict=False)
            if all(a + b == c for a, b, c in triples):
                return [fmpq(n)]
        raise AssertionError(text)
    first = re.search(
        r"(?:two terms of a sequence are (\S+) and (\S+?)\.|first term is (\d+))", text
    )
    assert first
    if first[3]:
        last = numbers(re.sub(r"\d+(?:st|nd|rd|th)", "", text))[-1]
        return [fmpq(n) for n in range(1, FAR) if summed(int(first[3]), n, places[-1]) == last]
    if first[1].isdigit():
        return [fmpq(summed(int(first[1]), int(first[2]), places[-1]))]
    row = [first[1], first[2]]
    while len(row) < places[-1]:
        row.append(f"{row[-2]} + {row[-1]}")
    assert same(row[-1], line(item.key))
    assert not any(same(row[-1], line(slip.wrong)) for slip in item.slips)
    return []


def summed(a: int, b: int, place: int) -> int:
    for _ in range(place - 1):
        a, b = b, a + b
    return a


READERS: dict[str, Callable[[Item, str], list[fmpq]]] = {
    "sequences.find-term": find_term,
    "sequences.geometric": geometric,
    "sequences.nth-term": nth_term,
    "sequences.special": special,
    "sequences.term-to-term": term_to_term,
}


@whole
@pytest.mark.parametrize("name", READERS)
def test_keys_are_found_again_from_what_is_printed(name: str) -> None:
    for item, text in sample(name):
        if found := READERS[name](item, text):
            assert values(item) == found, (item.address, text, line(item.key))
