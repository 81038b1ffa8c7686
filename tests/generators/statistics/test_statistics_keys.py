"""Keys of the strand statistics, worked out a third time: from the text that is printed alone.

What the questions mean is read here by patterns of its own, and worked out by Python's
``statistics`` and fractions. Where there is a figure, it is read from its words, as a pupil would
who cannot see it.
"""

from __future__ import annotations

import random
import re
import statistics
from collections.abc import Callable
from fractions import Fraction

import pytest
import z3

from itembank.figures.figure import words
from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_topic
from itembank.notation import line
from itembank.notation import tree as t
from tests.depth import cases, whole
from tests.generators.asked_plainly import plain

SAMPLE = cases(20, 45, 45)
"""Items of each tier."""


DAY = re.compile(r"\b(?:Mon|Tues|Wednes|Thurs)day\b|\bApril\b")


def printed(item: Item) -> str:
    text = "".join(run if isinstance(run, str) else line(run) for run in item.prompt)
    return text.replace("−", "-")


def numbers(text: str) -> list[Fraction]:
    return [Fraction(found) for found in re.findall(r"(?<![\w.])-?\d+(?:\.\d+)?", text)]


def key_of(item: Item) -> str:
    return line(item.key).replace("−", "-")


def number_of(item: Item) -> Fraction:
    """Return the number that a key gives, with or without its letter."""
    text = key_of(item).partition("=")[2] or key_of(item)
    if isinstance(item.key, t.Frac):
        return Fraction(text)
    (found,) = numbers(text)
    return found


def mean(text: str) -> Fraction:
    found = numbers(text)
    if "of them are" in text or "trips it is late by" in text or "baskets hold" in text:
        count, average, *known = found
        return count * average - sum(known)
    if re.search(r"number that was added|was that swim|on that day", text):
        if "stall" in text:
            found[0], found[1] = found[1], found[0]
        count, average, now = found
        return (count + 1) * now - count * average
    if text.endswith(("all the numbers now?", "her swims now?", "all the days now?")):
        count, average, more = found
        return (count * average + more) / (count + 1)
    if "together" in text:
        a, b, c, d = found
        pairs = ((b, a), (d, c)) if "bus" in text else ((a, b), (c, d))
        return sum(n * m for n, m in pairs) / sum(n for n, _ in pairs)
    assert "the mean" in text
    return statistics.mean(found)


def median(text: str) -> Fraction:
    if "in order" in text.casefold():
        listed, _, rest = text.partition(" median is ")
        (middle,) = numbers(rest)
        row = re.findall(r"-?\d+|\b[a-z]\b(?=[,. ])", listed[listed.index("order") :])
        half = len(row) // 2
        known = [n for n in row[half - 1 : half + 1] if not n.isalpha()]
        assert len(row) % 2 == 0
        assert len(known) == 1
        found = next(
            Fraction(n, 2)
            for n in range(-200, 200)
            if statistics.median([Fraction(m) if not m.isalpha() else Fraction(n, 2) for m in row])
            == middle
            and Fraction(row[half - 2]) <= Fraction(n, 2) <= Fraction(row[half + 1])
        )
        return found
    assert "median" in text
    return Fraction(statistics.median(numbers(text)))


def mode_and_range(text: str) -> Fraction:
    if re.search(r"\b[xnyk]\b", text):
        found = re.search(r"ange(?: of .* and [xnyk])? is (\d+(?:\.\d+)?)", text)
        assert found is not None
        spread = Fraction(found[1])
        row = numbers(text[: found.start(1)])
        largest = "largest" in text
        tried = [Fraction(n, 10) for n in range(-900, 900)]
        fits = [
            n
            for n in tried
            if max([*row, n]) - min([*row, n]) == spread
            and n == (max([*row, n]) if largest else min([*row, n]))
        ]
        assert len(fits) == 1
        return fits[0]
    row = numbers(text)
    if "mode" in text:
        (found_mode,) = statistics.multimode(row)
        return found_mode
    assert "range" in text
    return max(row) - min(row)


BY_TEXT: dict[str, Callable[[str], Fraction]] = {
    "statistics.mean": mean,
    "statistics.median": median,
    "statistics.mode-and-range": mode_and_range,
}


def from_table(text: str, said: str) -> Fraction:
    found = re.fullmatch(r"A table gives (.+), and (.+) for each: (.+)\.", said)
    assert found is not None
    row = [
        Fraction(value)
        for pair in found[3].split("; ")
        for value, often in [pair.removeprefix(f"{found[1]} ").split(f", {found[2]} ")]
        for _ in range(int(often))
    ]
    counts = found[2].lower()
    if f"How many {counts} are there altogether?" in text:
        return Fraction(len(row))
    if "total number of" in text:
        return sum(row, Fraction(0))
    if "mode" in text:
        (most,) = statistics.multimode(row)
        return most
    if "median" in text:
        return Fraction(statistics.median(row))
    if "range" in text:
        return max(row) - min(row)
    assert "Find the mean" in text
    return Fraction(statistics.mean(row))


def bars(said: str) -> dict[str, Fraction]:
    """Return the value of each bar of a bar chart, by its name, or its name and its series."""
    found = {}
    steps = re.search(r"with (\d+) equal steps", said)
    apart = re.search(r"in steps of (\d+)", said)
    assert apart is not None
    for name, where in re.findall(r"The bar of (.+?) ends (.+?)\.", said):
        inner = numbers(where)
        if where.startswith("at"):
            found[name] = inner[0]
        elif where.startswith("halfway"):
            found[name] = (inner[0] + inner[1]) / 2
        else:
            assert steps is not None
            found[name] = inner[1] + inner[0] * Fraction(apart[1]) / int(steps[1])
    return found


PARTS = {"": 0, "a quarter": 1, "a half": 2, "half": 2, "three quarters": 3}


def squares(said: str) -> dict[str, Fraction]:
    """Return what each row of a pictogram stands for."""
    head, rest = said.removesuffix(".").split(". ", 1)
    (each,) = numbers(head)
    found = {}
    for row in rest.split("; "):
        name, _, many = row.partition(" has ")
        whole = re.match(r"\d+", many)
        part = next((n for words_, n in PARTS.items() if words_ and words_ in many), 0)
        found[name] = each * (int(whole[0]) if whole else 0) + each * Fraction(part, 4)
    return found


def counted(text: str, values: dict[str, Fraction]) -> Fraction | str:
    """Return what a question about counts asks for, from the counts by their names."""
    question = re.split(r"(?<=\.) ", text)[1]
    named = re.findall(rf"\b({'|'.join(values)})\b", question)
    if "the most" in question:
        return max(values, key=values.__getitem__)
    if "the fewest" in question:
        return min(values, key=values.__getitem__)
    if "What fraction" in question:
        (name,) = named
        return values[name] / sum(values.values())
    if "How many more" in question:
        return values[named[0]] - values[named[1]]
    if "How many fewer" in question:
        return values[named[1]] - values[named[0]]
    if "altogether" in question:
        return sum((values[name] for name in named or values), Fraction(0))
    (name,) = named
    return values[name]


def bar_chart(text: str, said: str) -> Fraction | str:
    values = bars(said)
    if not any(" for " in name for name in values):
        return counted(text, values)
    # Two kinds of bar: keep those of the kind, or of the day, that the question names.
    kinds = sorted({name.split(" for ")[1] for name in values})
    question = text.split(". ")[1]
    asked = [kind for kind in re.findall(r"\w+", question) if kind in kinds]
    if len(asked) == 1:
        return sum((v for name, v in values.items() if name.endswith(asked[0])), Fraction(0))
    day = next(name for name in (n.split(" for ")[0] for n in values) if name in question)
    assert "How many more" in question
    return values[f"{day} for {asked[0]}"] - values[f"{day} for {asked[1]}"]


def pie(text: str, said: str) -> Fraction | str:
    angles = dict(re.findall(r"The angle of the sector (\w+) is (\S+) degrees", said))
    known = {name: Fraction(size) for name, size in angles.items() if size != "x"}
    if "value of x" in text:
        return 360 - sum(known.values())
    if "largest" in text or "smallest" in text:
        return (max if "largest" in text else min)(known, key=known.__getitem__)
    whole = re.search(r"stands for (\d+)", said)
    if whole is None:  # a fraction
        return counted(text, known)
    if "degrees stand for one" in text:
        return Fraction(360, int(whole[1]))
    return counted(text, {name: size * int(whole[1]) / 360 for name, size in known.items()})


def line_graph(text: str, said: str) -> Fraction | str:
    values = bars(re.sub(r"The point at (\S+) stands", r"The bar of \1 ends", said))
    question = text.split(". ")[1]
    named = [name for name in re.findall(r"\d\d:\d\d|[A-Z][a-z]+", question) if name in values]
    if re.search("highest|greatest|most", question):
        return max(values, key=values.__getitem__)
    if re.search("lowest|least|fewest", question):
        return min(values, key=values.__getitem__)
    if "By how much" in question:
        first, second = named
        up = values[second] - values[first]
        return up if " rise " in question else -up
    if named:
        (name,) = named
        return values[name]
    (height,) = numbers(question)
    (place,) = (name for name, value in values.items() if value == height)
    return place


def two_way(text: str, said: str) -> Fraction:
    """Solve the table by z3: its rows and columns add up, and only one number will do."""
    columns = re.findall(r"[\w-]+", said.split(" columns for ")[1].split(" and the total")[0])
    columns.append("Total")
    rows: dict[str, list[str]] = {}
    for name, cells in re.findall(r"The row of (\w+) holds: (.+?)\.", said):
        rows["Total" if name == "totals" else name] = cells.split("; ")
    cell = {(r, c): z3.Int(f"{r} {c}") for r in rows for c in columns}
    solver = z3.Solver()
    wanted = None
    for r, line_ in rows.items():
        for c, shown in zip(columns, line_, strict=True):
            if shown.isdigit():
                solver.add(cell[r, c] == int(shown))
            elif shown == "x":
                wanted = cell[r, c]
    for r in rows:
        solver.add(z3.Sum([cell[r, c] for c in columns[:-1]]) == cell[r, "Total"])
    for c in columns:
        solver.add(z3.Sum([cell[r, c] for r in rows if r != "Total"]) == cell["Total", c])
    if "value of x" not in text:
        question = text.split(". ")[1]
        row = next((r for r in rows if re.search(rf"\b{r}\b", question)), "Total")
        column = next((c for c in columns if re.search(rf"\b{c}\b", question)), "Total")
        wanted = cell[row, column]
    assert wanted is not None
    assert solver.check() == z3.sat
    value = solver.model()[wanted].as_long()
    solver.add(wanted != value)
    assert solver.check() == z3.unsat
    return Fraction(value)


def scatter(text: str, said: str) -> Fraction | str:
    """Take the points from the words, and the line by trying places along it."""
    head = re.search(
        r"has (.+?) \(.+?\) along it, from 0 to (\d+), and (.+?) \(.+?\) up it, from 0 to (\d+)\. "
        r"A square is (\d+) wide and (\d+) high",
        said,
    )
    assert head
    along, up = head[1].casefold(), head[3].casefold()
    wide, high = int(head[5]), int(head[6])
    listed, _, best = said.partition("A line of best fit")
    pairs = [(Fraction(x), Fraction(y)) for x, y in re.findall(PLACE, listed)]
    points = [(x * wide, y * high) for x, y in pairs]
    if "Is the correlation" in text:
        xs, ys = zip(*points, strict=True)
        return "positive" if statistics.correlation(xs, ys) > 0 else "negative"
    if "more than" in text:
        axis = 0 if f"{along} of more" in text else 1
        over = sum(point[axis] > numbers(text)[0] for point in points)
        return Fraction(over, len(points) if "fraction" in text else 1)
    known = 0 if re.search(rf"with an? {along} of", text) else 1
    if text.split(". ")[1].startswith("What is"):
        (found,) = [p[1 - known] for p in points if p[known] == numbers(text)[0]]
        return found
    (a, b), (c, d) = [(Fraction(x) * wide, Fraction(y) * high) for x, y in re.findall(PLACE, best)]
    track = [(a + (c - a) * n / 96, b + (d - b) * n / 96) for n in range(97)]
    if "best fit to estimate" in text:
        asked = f"estimate the {up if known == 0 else along}, in"
        assert asked in text
        (found,) = [p[1 - known] for p in track if p[known] == numbers(text)[0]]
        return found
    level = dict(track)
    gaps = [(y - level[x], (x, y)) for x, y in points]
    if "outlier" in text:
        x, y = max(gaps, key=lambda gap: abs(gap[0]))[1]
        return "(" + ", ".join(str(float(v)).removesuffix(".0") for v in (x, y)) + ")"
    return Fraction(sum(gap > 0 if "above" in text else gap < 0 for gap, _ in gaps))


PLACE = r"([\d.]+) along and ([\d.]+) up"

BY_WORDS_OF_FIGURE: dict[str, Callable[[str, str], Fraction | str]] = {
    "statistics.averages-from-tables": from_table,
    "statistics.bar-charts": bar_chart,
    "statistics.line-graphs": line_graph,
    "statistics.pie-charts": pie,
    "statistics.scatter-graphs": scatter,
    "statistics.two-way-tables": two_way,
    "statistics.pictograms": lambda text, said: counted(text, squares(said)),
}


def sample(name: str) -> list[Item]:
    topic = find_topic(name)
    found = []
    for tier in Tier:
        own = plain(topic, tier)
        rng = random.Random(f"{name}/{tier}")
        found += [topic.item(tier, n) for n in rng.sample(own, min(SAMPLE, len(own)))]
    # What is missing on a chart is found in test_missing_drawn.
    return [item for item in found if " is missing: " not in printed(item)]


@whole
@pytest.mark.parametrize("name", BY_TEXT)
def test_the_printed_text_alone_gives_the_key(name: str) -> None:
    for item in sample(name):
        text = printed(item)
        assert BY_TEXT[name](text) == number_of(item), (item.address, text, key_of(item))


@whole
@pytest.mark.parametrize("name", BY_WORDS_OF_FIGURE)
def test_the_text_and_the_words_of_the_figure_give_the_key(name: str) -> None:
    for item in sample(name):
        assert item.figure is not None
        # A sentence has a day in full that the chart cuts short.
        text, said = DAY.sub(lambda day: day[0][:3], printed(item)), words(item.figure)
        found = BY_WORDS_OF_FIGURE[name](text, said)
        if isinstance(found, str):
            assert found == key_of(item).strip('"'), (item.address, text, said)
        else:
            assert found == number_of(item), (item.address, text, said, key_of(item))


@whole
@pytest.mark.parametrize("name", ["bar-charts", "line-graphs", "pictograms", "two-way-tables"])
def test_a_sentence_names_days_in_full_where_a_chart_cuts_them_short(name):
    topic = find_topic(f"statistics.{name}")
    short = re.compile(r"\b(?:on|in|from|to|and) (?:Mon|Tue|Wed|Thu|Apr)\b")
    days = 0
    for tier, space in topic.spaces.items():
        for index in range(0, len(space), cases(7, 3, 3)):
            item = topic.item(tier, index)
            text = "".join(run for run in item.prompt if isinstance(run, str))
            assert not short.search(text), item.address
            days += bool(re.search(r"\b(?:Mon|Tues|Wednes|Thurs)day\b", text))
    assert days > 20
