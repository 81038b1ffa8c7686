"""Reads README.md as its reader does: blocks of commands under headings.

The tests run them in a copy of the checkout, and `installed/tour.py` with an installed tool.
"""

from __future__ import annotations

from pathlib import Path

README = (Path(__file__).parents[1] / "README.md").read_text("utf-8")


def blocks() -> list[tuple[str, tuple[str, ...]]]:
    """Every block of commands, with the heading it stands under."""
    found, heading = [], ""
    inside: list[str] | None = None
    for text in README.splitlines():
        if inside is not None:
            if text == "```":
                found.append((heading, tuple(inside)))
                inside = None
            elif text.strip() and not text.lstrip().startswith("#"):
                inside.append(text)
        elif text.startswith("```"):
            assert text == "```sh", f"README.md has a block that is not commands: {text}"
            inside = []
        elif text.startswith("#"):
            heading = text.strip("# ")
    return found
