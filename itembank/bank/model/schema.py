"""The models of a bank's files as JSON Schema (draft 2020-12), for editors of TOML.

Run as ``python -m itembank.bank.model.schema`` it writes them to ``docs/``.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from pydantic import BaseModel

from itembank.bank.model.fields import BankFile, TopicFile

DIALECT = "https://json-schema.org/draft/2020-12/schema"
SCHEMAS: dict[str, tuple[type[BaseModel], str]] = {
    "bank.schema.json": (BankFile, "bank.toml: the facts of a bank of items"),
    "bank-topic.schema.json": (TopicFile, "A topic file of a bank of items"),
}
"""The name of each schema's file, with its model and its title."""


def schema(name: str) -> dict[str, Any]:
    """Return one of :data:`SCHEMAS` as data.

    >>> schema("bank.schema.json")["required"]
    ['name', 'title']
    """
    model, title = SCHEMAS[name]
    plain = _without_null(model.model_json_schema())
    return {"$schema": DIALECT, **plain, "title": title}


def _without_null(node: Any) -> Any:
    """Return a schema without null, which TOML does not have: a key is left out instead."""
    if isinstance(node, list):
        return [_without_null(part) for part in node]
    if not isinstance(node, dict):
        return node
    found = {key: _without_null(part) for key, part in node.items()}
    if found.get("default", 0) is None:
        del found["default"]
    if isinstance(found.get("enum"), list):
        found["enum"] = [part for part in found["enum"] if part is not None]
    kinds = found.get("anyOf")
    if isinstance(kinds, list) and {"type": "null"} in kinds:
        kinds = [kind for kind in kinds if kind != {"type": "null"}]
        del found["anyOf"]
        found.update(kinds[0] if len(kinds) == 1 else {"anyOf": kinds})
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
