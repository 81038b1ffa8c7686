"""A question of a pack as the fields of one to be written: somebody begins with its words."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any


def fields_like(item: Mapping[str, Any]) -> dict[str, Any]:
    """Return the words, the key and the model of a question of a pack, as fields of a bank's.

    It is as ``pack.json`` holds it. Its working and its likely wrong answers are left behind:
    they would not follow a number that is changed in the words. A bank holds its words in one
    line, with spaces that can be typed: rows of cards are told from them again where they print.

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
            _typed(run["text"]) if run["kind"] == "text" else f"{{{run['line']}}}" for run in runs
        ),
        "key": item["key"]["line"],
    }
    if item.get("picture"):
        fields["figure"] = item["picture"]["data"]
        # What is asked of a picture does not say the form of its answer as other words do.
        form = item["key"]["form"]
        fields |= {"form": form} if form != _usual_form(fields) else {}
    ask = item["ask"]
    if ask["kind"] == "find" and not set(ask["relations"]) <= printed:
        fields["model"], fields["find"] = list(ask["relations"]), ask["target"][0]
        fields["constants"] = list(ask["constants"])
    elif ask["kind"] == "choose":
        fields |= {"task": "choose", "choose": ask["detail"]}
        fields["options"] = dict(zip(ask["labels"], ask["target"], strict=True))
    return fields


def _usual_form(fields: Mapping[str, Any]) -> str | None:
    """Return the form that the key of such a question has where none is stated."""
    from itembank.bank.model.fields import BankItem
    from itembank.bank.question.as_item import form_of
    from itembank.bank.question.given.maths import read_maths
    from itembank.notation.tree import NotationError

    try:
        item = BankItem(id="question-1", **fields)
        return form_of(item, read_maths(item))
    except (ValueError, NotationError):  # what is wrong is told where the form is looked at
        return None


def _typed(words: str) -> str:
    """Return words as somebody types them: their line breaks and held spaces are plain spaces."""
    return words.replace("\n", " ").replace("\u00a0", " ")
