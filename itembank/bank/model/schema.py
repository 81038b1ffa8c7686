"""What the files of a bank may hold as JSON Schema (draft 2020-12), for editors of TOML.

Run as ``python -m itembank.bank.model.schema`` it writes the schemas to ``docs/``.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from itembank.bank.model.fields import BankFile, TopicFile
from itembank.files.fields.json_schema import schema_of, without_null

SCHEMAS: dict[str, tuple[type[Any], str]] = {
    "bank.schema.json": (BankFile, "bank.toml: the facts of a bank of items"),
    "bank-topic.schema.json": (TopicFile, "A topic file of a bank of items"),
}
"""The name of each schema's file, with what it declares and its title."""


def schema(name: str) -> dict[str, Any]:
    """Return one of :data:`SCHEMAS` as data.

    >>> schema("bank.schema.json")["required"]
    ['name', 'title']
    """
    found: dict[str, Any] = without_null(schema_of(*SCHEMAS[name]))
    return found


def schema_text(name: str) -> str:
    """Return one of :data:`SCHEMAS` as the text of its file."""
    return json.dumps(schema(name), indent=2, ensure_ascii=False, sort_keys=True) + "\n"


def write_schemas(folder: Path | str) -> list[Path]:
    """Write every schema into `folder` and return the files."""
    paths = []
    for name in SCHEMAS:
        path = Path(folder) / name
        path.write_text(schema_text(name), encoding="utf-8", newline="\n")
        paths.append(path)
    return paths


if __name__ == "__main__":
    for written in write_schemas(Path(__file__).parents[3] / "docs"):
        print(written)
