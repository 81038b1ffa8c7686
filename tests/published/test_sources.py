"""Every work that the code names says how sure we are of it.

A formula or a figure taken from a publication is "from memory" unless it was found again in a
copy of its source ("confirmed") or worked out anew ("recomputed"); what has no source says so.
"""

from __future__ import annotations

import io
import re
import tokenize
from collections.abc import Iterable, Iterator
from functools import cache
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
FILES = sorted(
    path for part in ("itembank", "generators", "bench") for path in (ROOT / part).rglob("*.py")
)
YEAR = r"\b(?:1[5-9]\d\d|20[0-2]\d)\b"
CITED = re.compile(
    # A title or a journal in italics with its year, or a name with one: Nelson, 1984.
    rf"\*[A-Z][^*]{{3,80}}\*[^*]{{0,40}}{YEAR}|[A-Z][a-z]+(?:, | \(){YEAR}"
)
SURE = re.compile(r"from memory|no source|confirmed|recomputed")


def paragraphs(source: str) -> Iterator[str]:
    """Yield the paragraphs of the docstrings, and each run of comments, on one line."""
    run: list[str] = []
    for token in tokenize.generate_tokens(io.StringIO(source).readline):
        if token.type == tokenize.COMMENT:
            run.append(token.string.lstrip("# "))
        elif token.type not in (tokenize.NL, tokenize.NEWLINE):
            if run:
                yield " ".join(run)
                run = []
            if token.type == tokenize.STRING and '"""' in token.string[:5]:
                for part in re.split(r"\n\s*\n", token.string):
                    yield " ".join(part.split())


@cache
def all_paragraphs() -> tuple[tuple[str, str], ...]:
    """Return the paragraphs of every file that names a year, as every work is named with one."""
    texts = ((path.name, path.read_text("utf-8")) for path in FILES)
    return tuple(
        (name, paragraph)
        for name, text in texts
        if re.search(YEAR, text)
        for paragraph in paragraphs(text)
    )


def unsure(found: Iterable[str]) -> list[str]:
    """Return the paragraphs that name a work and do not say how sure we are of it."""
    return [
        paragraph for paragraph in found if CITED.search(paragraph) and not SURE.search(paragraph)
    ]


def test_no_work_is_named_without_a_word_on_how_sure_we_are() -> None:
    found = [(name, text) for name, paragraph in all_paragraphs() for text in unsure([paragraph])]
    assert found == []


def test_enough_works_are_named() -> None:
    assert sum(bool(CITED.search(paragraph)) for _, paragraph in all_paragraphs()) > 15


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ('"""Found so (Wilson, *Journal of Statistics* 22, 1927)."""', True),
        ('"""Found so (Wilson, *Journal of Statistics* 22, 1927; from memory)."""', False),
        ("# Sturm, 1829, says so.\nx = 1\n", True),
        ('"""Used since 2026 in no class."""', False),
    ],
)
def test_a_work_is_known_when_it_is_seen(text: str, told: bool) -> None:
    assert bool(unsure(paragraphs(text))) is told
