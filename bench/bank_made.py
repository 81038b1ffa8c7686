"""A bank of so many items for measuring: generated ones written out, and kinds only people write.

    python bench/bank_made.py FOLDER COUNT

Every item is one that a teacher could have written, with its right answer; the numbers come
from a seed.
"""

from __future__ import annotations

import random
import sys
from collections.abc import Callable, Iterator
from itertools import cycle
from math import gcd, lcm
from pathlib import Path

from itembank.bank.model.fields import BankItem
from itembank.bank.write.as_toml import item_toml, topic_toml
from itembank.bank.write.edit import create_bank
from itembank.items.item import Find, Inequality, Item, Tier
from itembank.items.topics.registry import topics
from itembank.notation import tree as t
from itembank.notation.line import line

Fields = dict[str, object]


def make_bank(folder: Path, count: int) -> None:
    """Write a bank of `count` items, half of them of generated kinds."""
    create_bank(folder, "made", "Made for measuring", licence="CC-BY-4.0", authors={"HT": "head"})
    files: dict[str, list[BankItem]] = {}
    sources = cycle([_generated(random.Random(1)), _written(random.Random(2))])
    for number in range(count):
        topic, fields = next(next(sources))
        item = BankItem.model_validate({"id": f"made-{number}", "tier": "core", **fields})
        files.setdefault(topic, []).append(item)
    known = {topic.id for topic in topics()}
    for topic, items in files.items():
        head = topic_toml(topic, None if topic in known else topic)
        text = "\n".join([head, *map(item_toml, items)])
        (folder / f"{topic}.toml").write_text(text, encoding="utf-8")


def _generated(rng: random.Random) -> Iterator[tuple[str, Fields]]:
    """Yield generated items as they would be typed; those that need a picture are left out."""
    for topic in cycle(topics()):
        tier = rng.choice(list(topic.spaces))
        item = topic.item(Tier(tier), rng.randrange(len(topic.spaces[tier])))
        fields = _typed(item)
        if fields is not None:
            yield topic.id, fields


def _typed(item: Item) -> Fields | None:
    try:
        prompt = "".join(r if isinstance(r, str) else f"{{{line(r)}}}" for r in item.prompt)
        fields: Fields = {"prompt": prompt, "key": line(item.key), "form": item.form}
        fields["working"] = [
            [step.say, line(step.maths) if step.maths is not None else ""] for step in item.steps
        ]
        fields["constants"] = list(item.constants)
        match item.ask:
            case Find(target, ()):
                return {**fields, "model": [line(target)]}
            case Find(target, relations):
                return {**fields, "model": [*map(line, relations)], "find": line(target)}
            case Inequality():
                return {**fields, "task": "solve"}
    except t.NotationError:
        pass
    return None


def _written(rng: random.Random) -> Iterator[tuple[str, Fields]]:
    """Yield items of the kinds that no generator makes, one kind after another."""
    for make in cycle(KINDS):
        name = make.__name__.strip("_").replace("_", "-")
        yield f"made.{name}", make(rng)


def _linear(rng: random.Random) -> Fields:
    a, b, x = rng.randint(2, 12), rng.randint(1, 20), rng.randint(2, 30)
    return {"prompt": f"Solve {{{a}x + {b} = {a * x + b}}}.", "key": f"x = {x}"}


def _quadratic(rng: random.Random) -> Fields:
    p, q = sorted(rng.sample(range(1, 40), 2))
    return {"prompt": f"Solve {{x^2 - {p + q}x + {p * q} = 0}}.", "key": f"x = {p} or x = {q}"}


def _surd_roots(rng: random.Random) -> Fields:
    a, n = rng.randint(1, 60), rng.choice([2, 3, 5, 6, 7, 10, 11, 13])
    key = f"x = {a} + √{n} or x = {a} - √{n}"
    return {"prompt": f"Solve {{(x - {a})^2 = {n}}}.", "key": key}


def _simultaneous(rng: random.Random) -> Fields:
    a, b, x, y = (rng.randint(2, 9) for _ in range(4))
    first, second = f"{a}x + y = {a * x + y}", f"x + {b}y = {x + b * y}"
    return {"prompt": f"Solve {{{first}}} and {{{second}}}.", "key": f"x = {x}, y = {y}"}


def _expand(rng: random.Random) -> Fields:
    a, b = rng.randint(1, 40), rng.randint(2, 20)
    prompt = f"Expand {{(x + {a})({b}x + 5)}}."
    return {"task": "expand", "prompt": prompt, "key": f"{b}x^2 + {5 + a * b}x + {5 * a}"}


def _factorise(rng: random.Random) -> Fields:
    a, b = rng.randint(2, 40), rng.randint(2, 40)
    prompt = f"Factorise {{x^2 + {a + b}x + {a * b}}}."
    return {"task": "factorise", "prompt": prompt, "key": f"(x + {a})(x + {b})"}


def _collect(rng: random.Random) -> Fields:
    a, b, c, d = (rng.randint(2, 15) for _ in range(4))
    prompt = f"Simplify {{{a}x + {b}y + {c}x + {d}y}}."
    return {"task": "simplify", "prompt": prompt, "key": f"{a + c}x + {b + d}y"}


def _surds(rng: random.Random) -> Fields:
    a, b, n = rng.randint(2, 20), rng.randint(2, 20), rng.choice([2, 3, 5, 7])
    prompt = f"Simplify {{√{a * a * n} + √{b * b * n}}}."
    return {"task": "simplify", "prompt": prompt, "key": f"{a + b}√{n}"}


def _nth_term(rng: random.Random) -> Fields:
    a, b = rng.randint(2, 20), rng.randint(1, 40)
    terms = ", ".join(str(a * n + b) for n in range(1, 5))
    prompt = f"Find the nth term of {{{terms}}}."
    return {"task": "nth-term", "prompt": prompt, "key": f"{a}n + {b}"}


def _common(rng: random.Random) -> Fields:
    a, b, c = rng.randint(3, 30), rng.randint(3, 30), rng.randint(2, 9)
    hcf = rng.random() < 0.5
    word = "highest common factor" if hcf else "lowest common multiple"
    key = gcd(a * c, b * c) if hcf else lcm(a * c, b * c)
    prompt = f"Find the {word} of {{{a * c}}} and {{{b * c}}}."
    return {"task": "hcf" if hcf else "lcm", "prompt": prompt, "key": str(key)}


def _rounding(rng: random.Random) -> Fields:
    whole, hundredths = rng.randint(1, 900), rng.randint(1, 98)
    if hundredths % 10 == 5:
        hundredths += 1
    tenths = (hundredths + 5) // 10
    key = f"{whole + tenths // 10}.{tenths % 10}"
    prompt = f"Round {{{whole}.{hundredths:02d}}} to 1 decimal place."
    return {"task": "round", "prompt": prompt, "key": key}


def _percentage(rng: random.Random) -> Fields:
    percent, hundreds = rng.randint(2, 98), rng.randint(2, 90)
    prompt = f"Work out {{{percent}% of {100 * hundreds}}}."
    return {"prompt": prompt, "key": str(percent * hundreds)}


def _standard_form(rng: random.Random) -> Fields:
    a, n = rng.randint(11, 99), rng.randint(3, 7)
    a += a % 10 == 0
    prompt = f"Write {{{a * 10**n}}} in standard form."
    key = f"{a // 10}.{a % 10} × 10^{n + 1}"
    return {"task": "convert", "form": "standard-form", "prompt": prompt, "key": key}


def _subject(rng: random.Random) -> Fields:
    a, b = rng.randint(2, 30), rng.randint(1, 40)
    prompt = f"Make {{x}} the subject of {{y = {a}x + {b}}}."
    return {"task": "make-subject", "prompt": prompt, "key": f"x = (y - {b})/{a}"}


KINDS: list[Callable[[random.Random], Fields]] = [
    _linear,
    _quadratic,
    _surd_roots,
    _simultaneous,
    _expand,
    _factorise,
    _collect,
    _surds,
    _nth_term,
    _common,
    _rounding,
    _percentage,
    _standard_form,
    _subject,
]


if __name__ == "__main__":
    make_bank(Path(sys.argv[1]), int(sys.argv[2]))
