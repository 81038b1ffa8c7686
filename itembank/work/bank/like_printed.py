"""A question of a pack as the fields of one to be written: somebody begins with its words."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any


def fields_like(item: Mapping[str, Any]) -> dict[str, Any]:
    """Return the words, the key and the model of a question of a pack, as fields of a bank's.

    It is as ``pack.json`` holds it. Its working and its likely wrong answers are left behind:
    they would not follow a number that is changed in the words.

    >>> prompt = [{"kind": "text", "text": "Solve "}, {"kind": "math", "line": "2x = 6"}]
    >>> ask = {"kind": "find", "target": ["x"], "relations": ["2x = 6"]}
    >>> fields_like({"tier": "core", "prompt": prompt, "key": {"line": "x = 3"}, "ask": ask})
    {'tier': 'core', 'prompt': 'Solve {2x = 6}', 'key': 'x = 3'}
    """
    runs = item["prompt"]
    printed = {run["line"] for run in runs if run["kind"] == "math"}
    fields: dict[str, Any] = {
        "tier": item["tier"],
        "prompt": "".join(
            run["text"] if run["kind"] == "text" else f"{{{run['line']}}}" for run in runs
        ),
        "key": item["key"]["line"],
    }
    if item.get("picture"):
        fields["figure"] = item["picture"]["data"]
    ask = item["ask"]
    if ask["kind"] == "find" and not set(ask["relations"]) <= printed:
        fields["model"], fields["find"] = list(ask["relations"]), ask["target"][0]
        fields["constants"] = list(ask["constants"])
    elif ask["kind"] == "choose":
        fields |= {"task": "choose", "choose": ask["detail"]}
        fields["options"] = dict(zip(ask["labels"], ask["target"], strict=True))
    return fields
