"""Prints the lowest versions that `pyproject.toml` allows, as pip pins them.

    python -m installed.lowest              of what the tool itself needs
    python -m installed.lowest pytest       of test tools, by name

The pins are read from `pyproject.toml` each time, so that they cannot say anything else.
"""

from __future__ import annotations

import re
import sys
import tomllib
from collections.abc import Sequence
from pathlib import Path

PROJECT = Path(__file__).parents[1] / "pyproject.toml"
_FLOOR = re.compile(r"(?P<name>[A-Za-z0-9._-]+)(?P<extra>\[[a-z,]+\])?(>=|==)(?P<version>[0-9.]+)")


def lowest(requirement: str) -> str:
    """Return the pin of the lowest version that a requirement allows.

    Raises:
        ValueError: it names no lowest version, or more than that.

    >>> lowest("typer>=0.12"), lowest("psycopg[binary]>=3.1")
    ('typer==0.12', 'psycopg[binary]==3.1')
    """
    found = _FLOOR.fullmatch(requirement)
    if found is None:
        raise ValueError(f"pyproject.toml names no lowest version alone: {requirement}")
    return f"{found['name']}{found['extra'] or ''}=={found['version']}"


def pins(tools: Sequence[str] = ()) -> list[str]:
    """Return the pins of the project's own requirements, or of these tools of its tests.

    Raises:
        KeyError: the tests name no such tool.
    """
    project = tomllib.loads(PROJECT.read_text("utf-8"))["project"]
    if not tools:
        return [lowest(one) for one in project["dependencies"]]
    tests = [lowest(one) for one in project["optional-dependencies"]["test"]]
    by_name = {pin.partition("==")[0].partition("[")[0]: pin for pin in tests}
    return [by_name[tool] for tool in tools]


if __name__ == "__main__":
    print("\n".join(pins(sys.argv[1:])))
