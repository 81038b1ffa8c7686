"""Paths in commands that a person may copy from the screen."""

from __future__ import annotations

import shlex
from pathlib import Path


def quoted_path(path: Path | str) -> str:
    """Return a path as it has to be typed: in quotes where a shell would read it otherwise.

    >>> quoted_path("plans/week.toml"), quoted_path("Maths 50%/plans")
    ('plans/week.toml', "'Maths 50%/plans'")
    """
    return shlex.quote(str(path))
