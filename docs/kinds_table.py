"""Writes ``docs/kinds-of-question.md``: every topic with the kinds of question that it has.

``python docs/kinds_table.py`` writes the file anew; a test holds it to the topics.
"""

from __future__ import annotations

from collections import Counter
from pathlib import Path

from itembank.items.item import Tier
from itembank.items.topics.of_kind import kinds_of
from itembank.items.topics.registry import topics
from itembank.items.topics.topic import Topic

PLACE = Path(__file__).with_name("kinds-of-question.md")
COLUMNS: dict[str, tuple[str, ...]] = {
    "missing number": ("missing number",),
    "true or false": ("true or false",),
    "spot the mistake": ("spot the mistake",),
    "who is right": ("who is right",),
    "odd one out": ("odd one out",),
    "match pairs": ("match pairs",),
    "choose, order": ("choose", "compare", "put in order"),
    "give an example": ("give an example",),
    "draw": ("draw on a picture",),
}
"""What each column is headed, and the kinds of question that it counts."""
TIERS = {Tier.SUPPORT: "s", Tier.CORE: "c", Tier.CHALLENGE: "ch"}
HEAD = (
    "# The kinds of question that each topic has\n\n"
    "Beside working something out, which every topic asks: *s* where the support tier has the "
    "kind, *c* the core and *ch* the challenge tier. A few questions of every part of a tier are "
    "looked at, as for `itembank show --kind`. A problem turned round (*the area is 24 cm², "
    "work out the height*) is among a topic's own questions, and no column counts those.\n"
)


def cells(topic: Topic) -> list[str]:
    """Return what the row of a topic says under each heading."""
    there = {tier: kinds_of(topic, (tier,)) for tier in topic.spaces}
    return [
        " ".join(TIERS[tier] for tier, kinds in there.items() if set(kinds) & set(counted))
        for counted in COLUMNS.values()
    ]


def text() -> str:
    """Return the page."""
    rows = {topic.id: cells(topic) for topic in topics()}
    having: Counter[int] = Counter()
    for row in rows.values():
        having[sum(map(bool, row))] += 1
    per_column = [sum(bool(row[n]) for row in rows.values()) for n in range(len(COLUMNS))]
    lines = [HEAD, f"| {len(rows)} topics | how many kinds | {' | '.join(COLUMNS)} |"]
    lines += ["| --- |" + " --- |" * (len(COLUMNS) + 1)]
    lines += [f"| all topics that have it | | {' | '.join(map(str, per_column))} |"]
    for name, row in rows.items():
        lines.append(f"| `{name}` | {sum(map(bool, row))} | {' | '.join(row)} |")
    lines += ["", "| kinds beside *work it out* | topics |", "| --- | --- |"]
    lines += [f"| {number} | {having[number]} |" for number in sorted(having)]
    return "\n".join(lines) + "\n"


if __name__ == "__main__":
    PLACE.write_text(text(), encoding="utf-8")
