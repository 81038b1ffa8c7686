"""Answers of every sort to questions of every topic and kind, for both markers."""

from __future__ import annotations

import random
import re
from collections.abc import Iterator
from fractions import Fraction
from functools import cache
from pathlib import Path

from itembank.bank.question.as_item import NeedsPerson, as_item
from itembank.bank.read.load import read_bank
from itembank.items.forms.form_rules import decimal_node, number_node, simplest_node
from itembank.items.item import Item, Tier
from itembank.items.topics.registry import topics
from itembank.notation import tree as t
from itembank.notation.line import shown_line
from itembank.notation.units import UNITS
from itembank.notation.value import exact
from itembank.notation.words import words
from tests.marking.test_typed_answers import _item

ROOT = Path(__file__).parents[2]
BANKS = ("banks/key-stage-3", "banks/key-stage-4", "banks/larkhythe/questions")

_MARKING = Path(__file__).parents[1] / "marking"
CHARS = "0123456789" * 3 + "  +-×÷/*^()=,.;:<>≤≥%£p√□xyn" + "abcmkglhst½²°·'_?&±~–−→\n"
STRANGE = "٣７①²⅔½¼⁄∕≈∞π√∛‽ßéЖ漢\u200b\u2064\u0307ı\t\u00a0\u3000ſK🙂𝟝𝑥"
AROUND = ("a) {}", "(b) {}", "1) {}", "2. {}", "Q3: {}", "A: {}", "{} (both)", "{} in total")
MODIFYING = (
    "{}..", "{} + 1", "√{}", "!= {}", "±{}", "twice {}", "{} twice", "7 = {}", "£{}", "{} cm",
    "{},5", "{}:00",
)  # fmt: skip
JUNK = (
    "", " ", "?", "dunno", "idk", "I don't know", "-", "--", "1/0", "0/0", "9^9^9", "9^(9^9)",
    "((((((1))))))", "(" * 41 + "1" + ")" * 41, "1" * 201, "1 2 3", "3x4", "x", "xx", "1e5",
    "<script>alert(1)</script>", "\\frac{1}{2}", "'; --", "½½", "..5", "5..", "1,2,3,4,5,6,7,8",
    "twelve", "a half", "minus three", "three and a half", "one hundred and five", "2 r 3",
    "5 remainder 1", "14:35", "2:35 pm", "9.45", "£3.5", "£3.50p", "350p", "3 h 20", "50%", "0.5%",
    "1:2", "1 : 2 : 3", "x = 3 or x = -3", "x=±3", "3, -3", "5 m", "5m", "500 cm", "5 kg",
    "5 sweets",
    "yes", "no", "A", "B", "Pack A", "card B because it is more", "less", "=", "bigger",
    "half past 8", "quarter to nine pm", "ten to 12 pm", "8 o'clock in the evening", "noon",
    "17:25:30", "09 : 45", "y = 3, x = 2", "x = 2, y = 3", "seven point three one", "25 st", "3rd",
    "x = {3, -3}", "plus or minus 3", "0.27...", "0.3..", "1. 5", "(a) 5", "a) B", "B is wrong",
    "0.7 is bigger", "Monday", "on tues", "Wed, I think", "it was not Thursday", "April", "Sept",
    "2^3 × 5", "2 × 2 × 2 × 5", "√2", "2√3", "√12", "3.2 × 10^4", "0.3̇", "0.333...", "1/3",
)  # fmt: skip


def every_item(rng: random.Random, each: int = 2) -> Iterator[Item]:
    """Yield items of all topics and tiers, of the shipped banks, and of the typed answers' list."""
    for topic in topics():
        for tier in Tier:
            space = topic.spaces.get(tier)
            if space is not None and len(space):
                for _ in range(each):
                    yield topic.item(tier, rng.randrange(len(space)))
    for bank in BANKS:
        for entry in read_bank(ROOT / bank).entries():
            try:
                yield as_item(entry)
            except NeedsPerson:
                continue
    for line in (_MARKING / "typed_answers.txt").read_text(encoding="utf-8").splitlines():
        if line.startswith("?"):
            yield _item(line)


@cache
def drawn_items() -> tuple[Item, ...]:
    """Return one item of each topic and tier, and all others: read once for all that ask."""
    return tuple(every_item(random.Random(20261128), each=1))


def typed_answers() -> Iterator[tuple[Item, list[str]]]:
    """Yield the questions of the typed answers' list with the answers that stand there."""
    item, found = None, []
    for line in (_MARKING / "typed_answers.txt").read_text(encoding="utf-8").splitlines():
        if line.startswith("?"):
            if item:
                yield item, found
            item, found = _item(line), []
        elif item and ":" in line and not line.startswith("#"):
            found += [
                answer.strip().replace("\\n", "\n") for answer in line.partition(":")[2].split("|")
            ]
    if item:
        yield item, found


def answers_to(item: Item, rng: random.Random, others: list[str]) -> list[str]:
    """Return answers to one question: right ones, known mistakes, near misses and rubbish."""
    key = shown_line(item.key)
    found = [key, *_spellings(key, rng), *_of_value(item.key, rng), *_parts(item.key, rng)]
    for slip in item.slips:
        text = shown_line(slip.wrong)
        found += [text, rng.choice(_spellings(text, rng))]
    found += _working(item, key)
    found += rng.sample(others, min(3, len(others)))
    found += rng.sample(JUNK, 4)
    found += [mutated(rng.choice(found) or key, rng) for _ in range(len(found) // 2)]
    found.append("".join(rng.choice(CHARS) for _ in range(rng.randrange(1, 12))))
    return list(dict.fromkeys(found))


def mutated(text: str, rng: random.Random) -> str:
    """Return a text with a character or two changed, put in, taken out or moved."""
    chars = list(text)
    for _ in range(rng.choice((1, 1, 1, 2, 3))):
        at = rng.randrange(len(chars) + 1)
        match rng.randrange(5):
            case 0 | 1:
                chars.insert(at, rng.choice(CHARS if rng.random() < 0.9 else STRANGE))
            case 2 if at < len(chars):
                chars[at] = rng.choice(CHARS if rng.random() < 0.9 else STRANGE)
            case 3 if at < len(chars):
                del chars[at]
            case 4 if len(chars) > 1:
                other = rng.randrange(len(chars))
                at = min(at, len(chars) - 1)
                chars[at], chars[other] = chars[other], chars[at]
    return "".join(chars)


def _spellings(text: str, rng: random.Random) -> list[str]:
    changes = (
        lambda s: s.replace(" ", ""),
        lambda s: s.replace(" ", "  "),
        lambda s: f" {s} . ",
        lambda s: f"= {s}",
        lambda s: f"Answer: {s}",
        lambda s: f"the answer is {s}",
        lambda s: f"I think {s}",
        lambda s: s.replace("-", "−"),
        lambda s: s.replace("-", "minus "),
        lambda s: s.replace("×", "*"),
        lambda s: s.replace(" × ", " x "),
        lambda s: s.replace(" × ", " times "),
        lambda s: s.replace("÷", "/"),
        lambda s: s.replace("/", " over "),
        lambda s: s.replace("1/2", "½").replace("1/4", "¼").replace("2/3", "⅔"),
        lambda s: s.replace("^2", "²").replace("^3", "³"),
        lambda s: s.replace("√", "sqrt "),
        lambda s: "".join(chr(ord(c) + 0xFEE0) if "0" <= c <= "9" else c for c in s),
        lambda s: s.upper(),
        lambda s: s.lower(),
        lambda s: s.replace(" : ", ":"),
        lambda s: s.replace(" : ", " to "),
        lambda s: s.replace(", ", " and "),
        lambda s: s.replace(", ", " "),
        lambda s: s.replace(" or ", ", "),
        lambda s: s.replace("£", ""),
        lambda s: s.replace("£", "") + " pounds",
        lambda s: s.replace("%", " per cent"),
        lambda s: s.replace("%", ""),
        lambda s: s.replace("°", " degrees"),
        lambda s: s.replace(" cm", "cm").replace(" m", "m"),
        lambda s: re.sub(r"[A-Za-z] = ", "", s),
        lambda s: re.sub(r"([a-z]) = ([^,]*)", r"\2 = \1", s, count=1),
        lambda s: re.sub(r"([0-9]) ?(kg|g|cm|mm|m|km|ml|l|min|h|s)\b", _named, s),
        lambda s: f"({s})",
        lambda s: f"{s}, {s}",
        lambda s: f"{s} or {s}",
        lambda s: f"{s}, {s}",
        lambda s: re.sub(r"^([^a-z]+?) ?([a-z]+)$", r"\1 or \1\2", s),
        lambda s: f"{s} exactly",
        lambda s: f"-{s}",
        lambda s: f"{s} = 0",
        lambda s: s + rng.choice(" .;,!?"),
        lambda s: f"so {s}",
        lambda s: rng.choice(AROUND).format(s),
        lambda s: rng.choice(MODIFYING).format(s),
        lambda s: f"{s[:-1]}...",
        lambda s: s.replace("%", "pc"),
        lambda s: s.replace(", ", " then "),
        lambda s: f"{s} because it is",
    )
    made = [change(text) for change in changes]
    return [one for one in made if one != text] or [text]


def _named(found: re.Match[str]) -> str:
    return f"{found[1]} {UNITS[found[2]].many}"


def _of_value(key: t.Node, rng: random.Random) -> list[str]:
    try:
        value = exact(key)
    except t.NotationError:
        return []
    if len(str(value)) > 30:
        return []
    unit = ""
    if isinstance(key, t.Quantity):
        value, unit = exact(key.amount), f" {key.unit}"
    n = rng.randrange(2, 9)
    near = [
        -value, value + 1, value - 1, value * 10, value / 10, value * 100, value + Fraction(1, 10),
        value * n,
    ]  # fmt: skip
    if value:
        near.append(1 / value)
    found = [shown_line(write(one)) for one in (value, *near) for write in (number_node,)]
    found += [shown_line(simplest_node(value)), f"{value.numerator * n}/{value.denominator * n}"]
    if value.denominator < 1000:
        found += [shown_line(decimal_node(value)), f"{float(value):.2f}", f"{float(value):.1f}"]
        found += [
            f"{float(value):.4f}",
            f"{float(value):.0f}",
            f"{value.numerator}÷{value.denominator}",
        ]
        found += [f"{float(value * 100):g}%", f"{float(value):.2f}...", f"£{float(value):.2f}"]
        found += [f"{float(value):g} {u}" for u in rng.sample(sorted(UNITS), 3)]
    if value.denominator == 1 and abs(value) < 10**6:
        found += [
            f"{value:,}" if isinstance(value, int) else f"{int(value):,}",
            f"{value}.0",
            f"{value}/1",
        ]
        found += [
            words(key),
            f"{int(value) - n} + {n}",
            f"{value * n} ÷ {n}",
            f"{int(value)} buses",
        ]
    return [text + unit if rng.random() < 0.5 else text for text in found]


def _parts(key: t.Node, rng: random.Random) -> list[str]:
    parts = t.children(key)
    if not parts:
        return []
    try:
        texts = [shown_line(part) for part in parts]
    except t.NotationError:
        return []
    found = [texts[0], texts[-1], ", ".join(reversed(texts)), " or ".join(texts), ", ".join(texts)]
    found += [" : ".join(reversed(texts)), ", ".join(texts[:-1]), ", ".join([*texts, texts[0]])]
    found += [
        " + ".join(texts),
        " < ".join(texts),
        " × ".join(texts),
        "; ".join(texts),
        "/".join(texts),
    ]
    if isinstance(key, t.Relation):
        ops = "=<>≤≥"
        found += [f"{texts[0]} {op} {texts[-1]}" for op in ops]
        found += [f"{texts[-1]} {op} {texts[0]}" for op in ops]
        found += [f"2{texts[0]} = {texts[-1]}", f"-{texts[0]} = {texts[-1]}", *ops]
    if isinstance(key, t.Sum):
        found += [
            f"2({texts[0]} + {texts[-1]})",
            f"({shown_line(key)})/2",
            f"{shown_line(key)} + 1",
        ]
        found += [" - ".join(texts), " + ".join(reversed(texts))]
    if isinstance(key, t.Juxt):
        found += ["".join(reversed(texts)), "".join([*texts, texts[0]]), f"2{shown_line(key)}"]
    return [*found, mutated(rng.choice(found), rng)]


def _working(item: Item, key: str) -> list[str]:
    runs = [shown_line(run) for run in item.prompt if not isinstance(run, str)]
    found = []
    for run in runs[:2]:
        found += [
            f"{run} = {key}",
            f"{key} = {run}",
            f"{run} = {key} = {key}",
            f"{run}\n= {key}",
            run,
        ]
    lines = [shown_line(step.maths) for step in item.steps if step.maths is not None]
    found += ["\n".join(lines), ", ".join(lines), "\n".join([*lines, key]), f"2 + 2 = 5, {key}"]
    found += [f"2 + 3 = 5\n{key}", f"5 → {key}", f"{key}\n{key}", f"7 so {key}", f"{key} = 0.99"]
    return found
