"""Writes ``docs/programme-of-study.md``: every statement with the topics that serve it.

``python docs/statement_table.py`` writes the file anew; a test holds it to the topics.
"""

from __future__ import annotations

from pathlib import Path

from itembank.items.topics.programme_of_study import STATEMENTS
from itembank.items.topics.registry import listed_topics

PLACE = Path(__file__).with_name("programme-of-study.md")
HEAD = (
    "# The programme of study, and the topics that serve it\n\n"
    "England's programme of study for key stage 3 (Department for Education, *Mathematics "
    "programmes of study: key stage 3*, DFE-00179-2013), statement by statement, in short words "
    "and under labels of our own, from memory. `itembank topics --by statement` says the same. "
    "What is left out says why.\n"
)


def text() -> str:
    """Return the page."""
    lines = [HEAD]
    domain = ""
    for statement in STATEMENTS:
        if statement.domain != domain:
            domain = statement.domain
            lines += [f"## {domain.capitalize()}", "", "| statement | label | topics |"]
            lines += ["| --- | --- | --- |"]
        serving = [
            f"{topic.title} (`{topic.id}`)"
            for topic in listed_topics().values()
            if statement.id in topic.statements
        ]
        told = "; ".join(serving) or (
            f"left out: it {statement.left_out}" if statement.left_out else "none"
        )
        lines.append(f"| {statement.text} | `{statement.id}` | {told} |")
        following = STATEMENTS[STATEMENTS.index(statement) + 1 :]
        if following and following[0].domain != domain:
            lines.append("")
    return "\n".join(lines) + "\n"


if __name__ == "__main__":
    PLACE.write_text(text(), encoding="utf-8")
