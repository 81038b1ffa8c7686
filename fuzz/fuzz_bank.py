"""Coverage-guided fuzzing of a bank's topic files: any text is read, or its faults are told.

Items that load are read and proved by the exact road as well.

pip install -e '.[fuzz]'
python fuzz/fuzz_bank.py -max_total_time=600 -max_len=2000
"""

from __future__ import annotations

import sys
from pathlib import Path

import atheris

with atheris.instrument_imports(include=["itembank"]):
    from itembank.bank.model.bank import Entry
    from itembank.bank.question.as_item import as_item
    from itembank.bank.read.topic_text import load_topic_text
    from itembank.errors import CheckFailed
    from itembank.files.faults import FileFaults
    from itembank.items.item import Item
    from itembank.notation.tree import NotationError
    from itembank.proof.exact.exact_road import prove_fast

PATH = Path("ratio.share.toml")
PIECES = [
    'topic = "ratio.share"\n', "[[items]]\n", 'id = "garden-1"\n', 'tier = "core"\n',
    'task = "work-out"\n', 'task = "solve"\n', 'task = "round"\n', 'form = "lowest-terms"\n',
    'prompt = "Work out {3/4 + 1/6}."\n', 'prompt = "Solve {2x + 1 = 7}."\n', 'key = "11/12"\n',
    'key = "x = 3"\n', 'working = [["Add", "1 + 1 = 2"]]\n', "[[items.misconceptions]]\n",
    'wrong = "4/10"\n', 'name = "adds across"\n', 'ask = "Is it more than 3/4?"\n',
    'author = "HT"\n', "created = 2026-09-14\n", "marks = 2\n", 'model = ["a : b = 2 : 3"]\n',
    'find = "b"\n', "[[generated]]\n", "count = 3\n", "seed = 1\n", "[[pinned]]\n",
    'address = "ratio.share/core/7"\n', '"""', "'''", "{", "}", "[", "]", "=", '"', "\n", "#",
    "1e9", "-", ".", "nan", "true", "\\u0000", "\ufeff",
]  # fmt: skip


KEYS = (
    "id", "tier", "task", "prompt", "key", "form", "find", "author", "licence", "source",
    "retired_because", "choose",
)  # fmt: skip
NEEDED = ("id", "tier", "prompt", "key")
VALUES = (
    "garden-1", "core", "solve", "simplify", "nth-term", "Work out {3/4 + 1/6}.", "x = 3",
    "Share {£60} in the ratio {2 : 3}.", "Find the HCF of {12, 18}.", "11/12", "value", "b",
    "{√50}", "Round {3.456} to 2 decimal places.", "1 : 2", "£24, £36", "HT", "greatest", "{", "4p",
)  # fmt: skip


def topic_text(provider: atheris.FuzzedDataProvider) -> str:
    """Return a topic file of well-formed lines whose values may be anything."""
    lines = ['topic = "ratio.share"']
    for _ in range(provider.ConsumeIntInRange(0, 4)):
        lines.append("[[items]]")
        for key in KEYS:
            if provider.ConsumeProbability() < (0.95 if key in NEEDED else 0.3):
                value = (
                    VALUES[provider.ConsumeIntInRange(0, len(VALUES) - 1)]
                    if provider.ConsumeProbability() < 0.7
                    else provider.ConsumeUnicodeNoSurrogates(12)
                )
                quoted = value.replace("\\", "\\\\").replace('"', '\\"')
                lines.append(f'{key} = "{quoted}"')
        if provider.ConsumeBool():
            lines.append('working = [["Add", "' + provider.ConsumeUnicodeNoSurrogates(8) + '"]]')
        if provider.ConsumeBool():
            lines += ["[[items.misconceptions]]", 'wrong = "4/10"', 'ask = "Why?"']
    return "\n".join(lines) + "\n"


def loose_text(provider: atheris.FuzzedDataProvider) -> str:
    """Return a text made of pieces of a topic file and of any characters."""
    parts = []
    while provider.remaining_bytes() and len(parts) < 80:
        if provider.ConsumeProbability() < 0.8:
            parts.append(PIECES[provider.ConsumeIntInRange(0, len(PIECES) - 1)])
        else:
            parts.append(provider.ConsumeUnicode(3))
    return "".join(parts)


def check(data: bytes) -> None:
    """Load a topic file; what it holds is read as items as far as a proof would."""
    provider = atheris.FuzzedDataProvider(data)
    text = topic_text(provider) if provider.ConsumeBool() else loose_text(provider)
    try:
        found = load_topic_text(text, PATH)
    except FileFaults as error:
        if not error.faults or not all(fault.message for fault in error.faults):
            raise RuntimeError("a fault without words") from error
        return
    for placed in found.items:
        entry = Entry(placed.item, "ratio.share", "fuzz", PATH, 1)
        try:
            item = as_item(entry)
        except NotationError:
            continue
        prove_first(item)


def prove_first(item: Item) -> None:
    """Prove a key by the exact road, which may refuse it but never fail."""
    try:
        prove_fast(item)
    except CheckFailed:
        return


if __name__ == "__main__":
    atheris.Setup(sys.argv, check)
    atheris.Fuzz()
