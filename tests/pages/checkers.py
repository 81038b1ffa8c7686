"""The two open checkers of accessible PDF files, asked together about any page of any kind."""

from __future__ import annotations

from pathlib import Path


def assert_accessible(data: bytes, path: Path, excused: frozenset[str] = frozenset()) -> None:
    """Let `outloud` and `pdfua` read a file, and fail on any error or warning.

    `path` is where the file is put for them. `excused` names rules of `outloud` that may warn,
    never ones that may err.
    """
    from outloud import check
    from pdfua import validate

    path.write_bytes(data)
    heard = check(str(path))
    assert heard.error is None, f"{path.name}: {heard.error}"
    assert heard.errors == 0, f"{path.name}: {heard.findings}"
    warned = {finding.rule for finding in heard.findings if finding.severity == "warning"}
    assert warned <= excused, f"{path.name}: {heard.findings}"
    assert list(validate(str(path)).findings) == [], path.name
