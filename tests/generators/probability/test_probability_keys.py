"""Keys of the strand probability, worked out a third time: from the text that is printed alone.

What the questions mean is read here by patterns of its own. Chances are found by counting equally
likely cases, one by one, wherever that can be done. A figure is read from its words, as a pupil
would who cannot see it.
"""

from __future__ import annotations

import random
import re
from collections.abc import Callable
from fractions import Fraction

import pytest
import sympy

from itembank.figures.figure import words
from itembank.items.asks import Members
from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_topic
from itembank.notation import line
from itembank.notation import tree as t
from tests.depth import cases, whole
from tests.generators.asked_plainly import plain

SAMPLE = cases(20, 45, 45)
"""Items of each tier."""


def printed(item: Item) -> str:
    return "".join(run if isinstance(run, str) else line(run) for run in item.prompt)


def numbers(text: str) -> list[Fraction]:
    """Return the numbers of a text, fractions and percentages too."""
    found = []
    for top, bottom, sign in re.findall(r"(\d+(?:\.\d+)?)(?:/(\d+))?(%)?", text):
        value = Fraction(top) / (int(bottom) if bottom else 1)
        found.append(value / 100 if sign else value)
    return found


def key_value(item: Item) -> Fraction:
    shown = line(item.key).partition("=")[2] or line(item.key)
    (value,) = numbers(shown)
    return value


def single(text: str, said: str) -> Fraction:
    found = numbers(text)
    if "the rest" in text or "do not win" in text:
        known, chance = found
        every = [n for n in range(1, 400) if n * chance == known]
        (n,) = every
        return n - known
    if "How many" in text:
        every_, chance = found
        return every_ * chance
    if "more" in text and len(found) == 3:
        bag = ["good"] * int(found[0] + found[2]) + ["other"] * int(found[1])
    else:
        kinds = 2 if " or " in text else 1
        bag = []
        for place, count in enumerate(found):
            bag += ["good" if place < kinds else "other"] * int(count)
    return Fraction(bag.count("good"), len(bag))


def _table(said: str) -> dict[str, Fraction]:
    x = sympy.Symbol("x")
    values = {}
    for name, shown in re.findall(r"(\w+) has ([^;.]+)", said.split(": ")[1]):
        parts = shown.split()
        if parts[-1] == "x":
            values[name] = (int(parts[0]) if len(parts) > 1 else 1) * x
        else:
            values[name] = sympy.Rational("".join(parts).replace("point", "."))
    total = sympy.Add(*values.values()) - 1
    settled = sympy.solve(total, x)[0] if total.has(x) else 0
    found = {name: Fraction(str(value.subs(x, settled))) for name, value in values.items()}
    return {**found, "x": Fraction(str(settled))}


def complement(text: str, said: str) -> Fraction:
    if not said:
        (chance,) = numbers(text)
        return 1 - chance
    values = _table(said)
    if "value of x" in text:
        return values["x"]
    question = text.split(". ")[1]
    named = [name for name in re.findall(r"\w+", question) if name in values]
    value = sum((values[name] for name in named), Fraction(0))
    return 1 - value if " not " in question else value


def expected(text: str, said: str) -> Fraction:
    found = numbers(text)
    if re.search("holds|sections", text):
        good, other, trials = found
        bag = ["good"] * int(good) + ["other"] * int(other)
        # Every single one is expected as often as any other.
        if "more times" in text:
            return trials * (bag.count("good") - bag.count("other")) / len(bag)
        return trials * bag.count("good") / len(bag)
    if re.search("wants|as often as expected", text):
        chance, wanted = found
        (trials,) = (n for n in range(1, 1000) if n * chance == wanted)
        return Fraction(trials)
    if len(found) == 3:
        trials, good, more = found
        return more * good / trials
    chance, trials = found
    return chance * trials


def sample_space(text: str, said: str) -> Fraction:
    lists = re.search(r"a column for each of (.+?), and a row for each of (.+?)\. ", said)
    assert lists is not None
    first, second = ([int(n) for n in row.split(", ")] for row in lists.groups())
    rule = re.search(r"shows their (\w+)", said)
    assert rule is not None
    cells = [
        {"sum": a + b, "difference": abs(a - b), "product": a * b}[rule[1]]
        for a in first
        for b in second
    ]
    question = text.split(". ")[1]
    bound = int(numbers(question)[0]) if numbers(question) else 0
    fits = {
        "more than": lambda value: value > bound,
        "less than": lambda value: value < bound,
        "at least": lambda value: value >= bound,
        "at most": lambda value: value <= bound,
        "a multiple of": lambda value: value in range(0, 1000, bound),
        "even": lambda value: value % 2 == 0,
        "odd": lambda value: value % 2 == 1,
    }
    test = next((test for word, test in fits.items() if word in question), lambda v: v == bound)
    good = [value for value in cells if test(value)]
    return Fraction(len(good), 1 if "How many" in question else len(cells))


def combined(text: str, said: str) -> Fraction:
    """Count equally likely cells of a grid, as many as the denominators say."""
    found = numbers(text)
    p, q = (found[0], found[0]) if len(found) == 1 else found
    cells = [
        (i < p.numerator, j < q.numerator)
        for i in range(p.denominator)
        for j in range(q.denominator)
    ]
    question = text.split(" What is ")[1]
    test = {
        "both": lambda a, b: a and b,
        "two days in a row": lambda a, b: a and b,
        "neither": lambda a, b: not a and not b,
        "exactly one": lambda a, b: a != b,
        "at least one": lambda a, b: a or b,
    }
    (fits,) = (fits for word, fits in test.items() if word in question)
    return Fraction(sum(fits(a, b) for a, b in cells), len(cells))


def tree(text: str, said: str) -> Fraction:
    """Follow every way along the branches that the words of the diagram tell of."""
    sets: dict[str, dict[str, Fraction]] = {}
    for after, told in re.findall(r"(First|After \w+): (.+?)\.(?= |$)", said):
        branches = {}
        for part in told.split("; "):
            name, _, chance = part.partition(" has the probability ")
            if chance:
                branches[name] = _spoken(chance)
            else:
                branches[part.split()[0]] = Fraction(-1)
        for name, chance in branches.items():
            if chance == -1:
                rest = 1 - sum(c for c in branches.values() if c >= 0)
                if "missing" in text:
                    return rest
                branches[name] = rest
        sets[after.removeprefix("After ")] = branches
    ways = {(a, b): chance * sets[a][b] for a, chance in sets["First"].items() for b in sets[a]}
    question = text.split(" What is ")[1]
    named = [name for name in re.findall(r"\w+", question) if name in sets["First"]]
    if "both" in question:
        return ways[named[0], named[0]]
    first, second = named
    if "one" in question.split():
        return ways[first, second] + ways[second, first]
    return ways[first, second]


def _spoken(said: str) -> Fraction:
    """Return a number that is said: 0 point 3 5, 2 sevenths, 3 over 11."""
    if "point" in said:
        return Fraction("".join(said.split()).replace("point", "."))
    if " over " in said:
        top, bottom = said.split(" over ")
        return Fraction(int(top), int(bottom))
    names = [
        "half",
        "third",
        "quarter",
        "fifth",
        "sixth",
        "seventh",
        "eighth",
        "ninth",
        "tenth",
        "eleventh",
        "twelfth",
    ]
    more = ["thirteenth", "fourteenth", "fifteenth", "sixteenth"]
    top, bottom = said.replace("halves", "half").split()
    return Fraction(int(top), [*names, *more].index(bottom.removesuffix("s")) + 2)


def venn(text: str, said: str) -> Fraction:
    """Give everybody a place in the sets, and count."""
    names = re.search(r"two sets, (\w+) and (\w+), that overlap", said)
    assert names is not None
    a, b = names.groups()
    held = dict(re.findall(r"In ([\w ]+): (.+?)\.", said))
    regions = {
        (True, False): held[f"{a} only"],
        (True, True): held["both sets"],
        (False, True): held[f"{b} only"],
        (False, False): held["neither set"],
    }
    counts = {where: int(n) for where, n in regions.items() if n.isdigit()}
    if total := re.search(r"The total is (\d+)", said):
        (hidden,) = regions.keys() - counts.keys()
        counts[hidden] = int(total[1]) - sum(counts.values())
    everybody = [where for where, n in counts.items() for _ in range(n)]
    question = text.split(". ", 1)[1]
    at = 0 if re.search(rf"\b{a}\b", question) else 1
    if "or both" in question:
        fits = [p for p in everybody if p[0] or p[1]]
    elif "both" in question:
        fits = [p for p in everybody if p[0] and p[1]]
    elif "do not" in question:
        fits = [p for p in everybody if not p[at]]
    else:
        fits = [p for p in everybody if p[at]]
    return Fraction(len(fits), len(everybody) if "probability" in question else 1)


def sets(text: str, said: str) -> Fraction | str:
    """Ask of each member whether it is in the set, by rewriting the symbols as 1 and 0."""
    names = re.search(r"two sets, (\w+) and (\w+), that overlap", said)
    assert names is not None
    a, b = names.groups()
    held = dict(re.findall(r"In ([\w ]+): (.+?)\.", said))
    places = {f"{a} only": "10", "both sets": "11", f"{b} only": "01", "neither set": "00"}
    everybody = {
        int(n): where for name, where in places.items() for n in re.findall(r"\d+", held[name])
    }
    (shown,) = re.findall(r'"(.+)"', text)
    fits = [n for n, where in everybody.items() if _inside(shown, {a: where[0], b: where[1]})]
    if "List the members" in text:
        return ", ".join(map(str, sorted(fits)))
    return Fraction(len(fits), len(everybody) if "P(" in text else 1)


_TRUTHS = (
    *(("1′", "0"), ("0′", "1"), ("(1)", "1"), ("(0)", "0"), ("1 ∩ 1", "1"), ("0 ∩ 0", "0")),
    *(("1 ∩ 0", "0"), ("0 ∩ 1", "0"), ("0 ∪ 0", "0"), ("1 ∪ 1", "1"), ("1 ∪ 0", "1")),
    ("0 ∪ 1", "1"),
)


def _inside(shown: str, letters: dict[str, str]) -> bool:
    for letter, truth in letters.items():
        shown = shown.replace(letter, truth)
    while len(shown) > 1:
        # A dash binds first, as the list has it.
        old, new = next((old, new) for old, new in _TRUTHS if old in shown)
        shown = shown.replace(old, new, 1)
    return shown == "1"


def scale(text: str, said: str) -> Fraction | str:
    steps = int(re.findall(r"in (\d+) equal steps", said)[0])
    arrows = {
        name: Fraction(int(mark), steps)
        for name, mark in re.findall(r"The arrow (\w) points (\d+) steps? after 0", said)
    }
    if wanted := re.search(r"does the arrow (\w) point to", text):
        return arrows[wanted[1]]
    (value,) = numbers(text)
    (name,) = (name for name, place in arrows.items() if place == value)
    return name


KEYS: dict[str, Callable[[str, str], Fraction | str]] = {
    "probability.single": single,
    "probability.not": complement,
    "probability.scale": scale,
    "probability.venn": venn,
    "probability.sets": sets,
    "probability.combined": combined,
    "probability.trees": tree,
    "probability.sample-spaces": sample_space,
    "probability.expected-frequency": expected,
}


def sample(name: str) -> list[Item]:
    topic = find_topic(name)
    found = []
    for tier in Tier:
        own = plain(topic, tier)
        chance = random.Random(f"{name}/{tier}")
        found += [topic.item(tier, n) for n in chance.sample(own, min(SAMPLE, len(own)))]
    # What is to be shaded is held to Python's sets in tests/figures/kinds/test_shaded_sets.py.
    # Sets that are told by rules are held to bits of one number in test_sets_by_rule_keys.py.
    return [item for item in found if item.key_figure is None and not isinstance(item.ask, Members)]


@whole
@pytest.mark.parametrize("name", KEYS)
def test_the_printed_question_gives_the_key_again(name: str) -> None:
    for item in sample(name):
        text, said = printed(item), words(item.figure) if item.figure else ""
        found = KEYS[name](text, said)
        key: Fraction | str
        if isinstance(item.key, t.Listing):
            key = line(item.key)
        else:
            key = item.key.text if isinstance(item.key, t.Label) else key_value(item)
        assert found == key, (item.address, text, said)


@whole
@pytest.mark.parametrize("name", KEYS)
def test_a_key_that_is_a_probability_stands_between_0_and_1(name: str) -> None:
    for item in sample(name):
        if "What is the probability" in printed(item) and not isinstance(item.key, t.Int):
            assert 0 < key_value(item) < 1, item.address
