"""The two open checkers of accessible PDF files, asked together about any page of any kind."""

from __future__ import annotations

import re
from collections.abc import Sequence
from pathlib import Path

RUNNING = "PAG-001"
"""`outloud` takes lines near the edge of three pages that differ only in figures for a running
head or foot, and lone numbers there for numbers of pages."""
A_NUMBER_IS_AN_ANSWER = "page numbers are tagged as content"
"""A number that is an answer, a numerator or a denominator stands on a line of its own."""


def assert_accessible(data: bytes, path: Path, heard_as_head: Sequence[str] = ()) -> None:
    """Let `outloud` and `pdfua` read a file, and fail on any error or warning.

    `path` is where the file is put for them. `heard_as_head` are patterns of lines that a reader
    has to hear although they look like running heads; nothing else may warn. Where there are
    any, lone numbers may stand near the edges of pages too.
    """
    from outloud import check
    from pdfua import validate

    path.write_bytes(data)
    heard = check(str(path))
    assert heard.error is None, f"{path.name}: {heard.error}"
    assert heard.errors == 0, f"{path.name}: {heard.findings}"
    for found in heard.findings:
        if found.severity == "warning":
            assert heard_as_head, f"{path.name}: {found}"
            assert found.rule == RUNNING, f"{path.name}: {found}"
            if found.evidence is None:
                assert A_NUMBER_IS_AN_ANSWER in found.message, f"{path.name}: {found}"
                continue
            for line in found.evidence.split("; "):
                assert any(re.match(text, line) for text in heard_as_head), f"{path.name}: {line}"
    assert list(validate(str(path)).findings) == [], path.name
