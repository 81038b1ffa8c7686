"""``itembank audit``: prove every item that the topics can make."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

import typer

from itembank.cli.options.complete import complete_topic
from itembank.cli.options.place import ClusterAddress, Jobs, place_for
from itembank.cli.words.bar import Bar
from itembank.errors import CheckFailed, ItembankError
from itembank.text.in_words import counted

if TYPE_CHECKING:
    from collections.abc import Sequence

    from itembank.proof.item_audit import TopicAudit

MOST_FAULTS = 20
"""Faults shown one by one; the others are counted."""


def audit(
    topics: Annotated[
        list[str] | None,
        typer.Argument(
            metavar="TOPIC",
            help="Topics to audit; all of them if left out.",
            autocompletion=complete_topic,
        ),
    ] = None,
    sample: Annotated[
        int | None,
        typer.Option(metavar="N", help="Audit N items at most of each tier; 20,000."),
    ] = None,
    sympy_all: Annotated[
        bool, typer.Option("--sympy-all", help="Send every item through sympy, not one in 40.")
    ] = False,
    jobs: Jobs = None,
    cluster: ClusterAddress = None,
    json: Annotated[bool, typer.Option("--json", help="Print the findings as JSON.")] = False,
    progress: Annotated[
        bool,
        typer.Option("--progress", help="Say how far it is where there is no terminal, too."),
    ] = False,
) -> None:
    """Prove the keys of all the questions that topics can ask, and look for other faults.

    Every key is found again from the printed question; one item in 40 goes through sympy
    too, as every item of a pack does. Ends with status 1 on any fault.

    \b
    Examples:
      itembank audit
      itembank audit ratio.share fractions.divide
      itembank audit --sample 200 --json
      itembank audit --sample 200 --sympy-all
      itembank audit --cluster tcp://10.0.0.5:8786
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.items.topics.registry import find_topic, topic_ids
    from itembank.proof.audit import LIMIT, SYMBOLIC_EVERY
    from itembank.proof.audit import audit as audit_topics

    if sample is not None and sample < 1:
        raise ItembankError(f"--sample must be 1 or more, not {sample}.")
    chosen = list(dict.fromkeys(find_topic(topic).id for topic in topics or topic_ids()))
    bar = Bar(asked=progress, steady=True)
    limit = LIMIT if sample is None else sample
    try:
        with place_for(jobs, cluster, bar) as place:
            found = audit_topics(
                tuple(chosen),
                limit=limit,
                place=place,
                progress=bar,
                symbolic_every=1 if sympy_all else SYMBOLIC_EVERY,
            )
    finally:
        bar.clear()
    typer.echo(as_json(found) if json else as_text(found))
    faulty = sum(not audited.sound for audited in found)
    if faulty:
        raise CheckFailed(f"The audit found faults in {counted(faulty, 'topic')}.")


def as_json(found: Sequence[TopicAudit]) -> str:
    """Return the findings as JSON text, one object a topic."""
    import json
    from dataclasses import asdict

    def plain(value: object) -> object:
        return value if isinstance(value, str | int | float | bool | None) else str(value)

    def keyed(value: object) -> object:
        if isinstance(value, dict):
            return {str(getattr(k, "value", k)): keyed(v) for k, v in value.items()}
        if isinstance(value, list | tuple):
            return [keyed(part) for part in value]
        return plain(value)

    topics = [keyed(asdict(audited)) for audited in found]
    return json.dumps({"topics": topics}, indent=2, ensure_ascii=False)


def as_text(found: Sequence[TopicAudit]) -> str:
    """Return the findings as a table, a line of totals, and the faults one to a line."""
    from itembank.cli.words.wrapped import fits, table
    from itembank.items.item import Tier

    columns = {
        "items": "items",
        "checked": "checked",
        "symbolic": "by sympy",
        "wrong_keys": "wrong keys",
        "blind": "blind",
        "rivals": "rivals",
        "form_faults": "form",
        "step_faults": "steps",
        "repeats": "repeats",
    }
    heads = ["topic", *columns.values(), "difficulty"]

    def counts(audited: TopicAudit) -> list[int]:
        return [getattr(audited, name) for name in columns]

    rows = []
    for audited in found:
        medians = " < ".join(
            f"{audited.difficulty[t]:.2f}" for t in Tier if t in audited.difficulty
        )
        rows.append([audited.topic, *(f"{n:,}" for n in counts(audited)), medians])
    sums = [sum(column) for column in zip(*(counts(audited) for audited in found), strict=True)]
    rows.append(["total", *(f"{n:,}" for n in sums), ""])
    faults = [fault for audited in found for fault in audited.faults]
    shown = table(heads, rows, right=range(1, len(heads) - 1))
    if not fits(shown):
        # The kinds of fault together: each fault found is told below in words.
        few = [heads[0], "items", "checked", "faults", heads[-1]]
        short = [
            [row[0], *row[1:3], f"{sum(int(n.replace(',', '')) for n in row[4:-1]):,}", row[-1]]
            for row in rows
        ]
        shown = table(few, short, right={1, 2, 3})
    lines = [shown, ""]
    if sums[1] < sums[0]:
        lines.append("Where fewer are checked than there are, a random sample was taken.")
    if all(audited.sound for audited in found):
        return "\n".join([*lines, "No faults."])
    lines += faults[:MOST_FAULTS]
    if len(faults) > MOST_FAULTS:
        lines.append(f"… and {len(faults) - MOST_FAULTS} more.")
    return "\n".join(lines)
