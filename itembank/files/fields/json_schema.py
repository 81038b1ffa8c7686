"""Declared dataclasses as JSON Schema (draft 2020-12), for editors of our files."""

from __future__ import annotations

import inspect
from typing import Any

from itembank.files.fields.kinds import Definitions
from itembank.files.fields.plain import _plain
from itembank.files.fields.record import shape_of

DIALECT = "https://json-schema.org/draft/2020-12/schema"


def schema_of(model: type[Any], title: str) -> dict[str, Any]:
    """Return the schema of files that hold what a dataclass declares."""
    definitions: Definitions = {}
    defined(model, definitions)
    top = definitions.pop(model.__name__)
    below = {"$defs": dict(sorted(definitions.items()))} if definitions else {}
    return {"$schema": DIALECT, **below, **top, "title": title}


def defined(model: type[Any], definitions: Definitions) -> dict[str, Any]:
    """Put the schema of a dataclass into `definitions`, once, and return a reference to it."""
    name = model.__name__
    if name not in definitions:
        definitions[name] = {}
        definitions[name] |= _table(model, definitions)
    return {"$ref": f"#/$defs/{name}"}


def _table(model: type[Any], definitions: Definitions) -> dict[str, Any]:
    properties = {}
    for field in shape_of(model).fields:
        said = {"description": field.says} if field.says else {}
        default = {} if field.needed or field.default is None else {"default": field.default}
        found = {**field.kind.schema(definitions), **said, **default}
        properties[field.key] = _plain(found, False)
    needed = [field.key for field in shape_of(model).needed]
    return {
        "type": "object",
        "description": inspect.cleandoc(model.__doc__ or ""),
        "properties": properties,
        "additionalProperties": False,
        **({"required": needed} if needed else {}),
    }


def without_null(node: Any) -> Any:
    """Return a schema without null, which TOML does not have: a key is left out instead."""
    if isinstance(node, list):
        return [without_null(part) for part in node]
    if not isinstance(node, dict):
        return node
    found = {key: without_null(part) for key, part in node.items()}
    kinds = found.get("anyOf")
    if isinstance(kinds, list) and {"type": "null"} in kinds:
        kinds = [kind for kind in kinds if kind != {"type": "null"}]
        del found["anyOf"]
        found.update({**kinds[0], **found} if len(kinds) == 1 else {"anyOf": kinds})
    return found
