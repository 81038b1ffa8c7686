"""Small banks on disk for the tests of packs."""

from __future__ import annotations

import datetime
import json
from pathlib import Path

from itembank.bank.proof.signoff import signoff_of, signoffs_text
from itembank.bank.read.load import read_bank

DAY = datetime.date(2026, 9, 14)
OWN = "garden.beds"
"""A topic that no generator has."""


def item(id: str, prompt: str, key: str, tier: str = "core", **more: object) -> str:
    """Return one [[items]] table."""
    fields = {"id": id, "tier": tier, "prompt": prompt, "key": key, **more}
    days = {name: value for name, value in fields.items() if isinstance(value, datetime.date)}
    lines = [
        f"{name} = {json.dumps(value, ensure_ascii=False)}"
        for name, value in fields.items()
        if name not in days
    ]
    lines += [f"{name} = {value.isoformat()}" for name, value in days.items()]
    return "\n".join(["[[items]]", *lines, ""])


def sums(count: int, tier: str, start: int = 20, **more: object) -> list[str]:
    """Return so many different sums of a tier."""
    return [
        item(
            f"{tier}-{number}",
            f"Work out {{{number} + {2 * number + 1}}}.",
            str(3 * number + 1),
            tier,
            **more,
        )
        for number in range(start, start + count)
    ]


def bank(
    folder: Path, topics: dict[str, list[str]], name: str = "larkhythe", titles: bool = True
) -> Path:
    """Write a bank with these topics and return its folder."""
    folder.mkdir(parents=True)
    facts = (
        f'name = "{name}"\ntitle = "Questions of {name}"\n[authors]\nHT = "head"\nKS = "teacher"\n'
    )
    (folder / "bank.toml").write_text(facts, encoding="utf-8")
    for topic, tables in topics.items():
        head = f'topic = "{topic}"\n'
        if titles:
            head += f'title = "Title of {topic}"\n'
        text = "\n".join([head, *tables])
        (folder / f"{topic}.toml").write_text(text, encoding="utf-8")
    return folder


def sign(folder: Path, *ids: str, by: str = "HT", on: datetime.date = DAY) -> None:
    """Sign items of a bank as they stand."""
    found = read_bank(folder)
    path = folder / "signoffs.toml"
    before = path.read_text(encoding="utf-8") if path.exists() else ""
    from itembank.bank.proof.signoff import read_signoffs

    wanted = [*read_signoffs(folder), *(signoff_of(found.find(id), by, on) for id in ids)]
    path.write_text(signoffs_text(wanted, before), encoding="utf-8")
