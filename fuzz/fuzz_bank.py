"""Coverage-guided fuzzing of a bank's topic files: any text is read, or its faults are told.

pip install -e '.[fuzz]'
python fuzz/fuzz_bank.py -max_total_time=600 -max_len=2000
"""

from __future__ import annotations

import sys
from pathlib import Path

import atheris

with atheris.instrument_imports(include=["itembank"]):
    from itembank.bank.topictext import load_topic_text
    from itembank.faults import FileFaults

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


def check(data: bytes) -> None:
    """Load a topic file made of pieces and of any characters."""
    provider = atheris.FuzzedDataProvider(data)
    parts = []
    while provider.remaining_bytes() and len(parts) < 80:
        if provider.ConsumeProbability() < 0.8:
            parts.append(PIECES[provider.ConsumeIntInRange(0, len(PIECES) - 1)])
        else:
            parts.append(provider.ConsumeUnicode(3))
    try:
        load_topic_text("".join(parts), PATH)
    except FileFaults as error:
        if not error.faults or not all(fault.message for fault in error.faults):
            raise RuntimeError("a fault without words") from error


if __name__ == "__main__":
    atheris.Setup(sys.argv, check)
    atheris.Fuzz()
