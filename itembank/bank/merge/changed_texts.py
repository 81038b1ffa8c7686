"""The new texts of a bank's files: ids, retirements, and what a merge brings in; all else stays."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path
from typing import Any

from itembank.bank.merge.union import (
    BOTH,
    Key,
    signoffs_of,
)
from itembank.bank.model.bank import BANK_FILE, SIGNOFF_FILE, Bank
from itembank.bank.model.fields import BankItem, PinnedItem
from itembank.bank.model.item_records import NO_LICENCE, Holding, Kept, Made, record_of
from itembank.bank.proof.signoff import signoffs_text
from itembank.bank.read.item_checks import is_generated
from itembank.bank.saving.save import Snapshot, take
from itembank.bank.write.as_toml import field_toml, topic_toml
from itembank.bank.write.blocks import with_block, with_fields, with_item, without_item
from itembank.items.topics.registry import find_topic

Files = dict[Path, Snapshot]


def changed_texts(
    bank: Bank,
    files: Files,
    holding: Holding,
    items: Mapping[str, Kept],
    moved: Mapping[Key, Key] | None = None,
) -> tuple[tuple[Snapshot, str], ...]:
    """Return every file of a bank that a holding changes, as it was read, with its new text.

    `items` are the items of the holding by the ids they get; `moved` says of each whose id is
    another now which it was. Sign-offs are left alone where their file is not among `files`.
    """
    texts = {path: file.text for path, file in files.items()}
    new = _edit_items(bank, texts, items, moved or {})
    _add_items(bank, texts, holding, new)
    _add_made(bank, texts, holding)
    _edit_heads(bank, texts, holding)
    _edit_authors(bank, texts, holding)
    path = bank.folder / SIGNOFF_FILE
    signoffs = signoffs_of(dict(items), holding) if path in texts else []
    if signoffs:
        texts[path] = signoffs_text(signoffs, _signed_anew(texts[path], holding, moved or {}))
    found = ((files.get(path) or take(path), text) for path, text in texts.items())
    return tuple((before, text) for before, text in found if text != before.text)


def _signed_anew(text: str, holding: Holding, moved: Mapping[Key, Key]) -> str:
    """Give the sign-offs of items that left no trace their new ids, where they stand."""
    for (base, _), (new, _) in moved.items():
        if base not in holding.kept:
            text = re.sub(rf'^item = "{re.escape(base)}"$', f'item = "{new}"', text, flags=re.M)
    return text


def _edit_items(
    bank: Bank, texts: dict[Path, str], items: Mapping[str, Kept], moved: Mapping[Key, Key]
) -> dict[str, Kept]:
    """Give the items of the bank their ids and retirements; return the items it lacks."""
    names = {(stored.record.item.id, stored.record.hash): name for name, stored in items.items()}
    new = dict(items)
    passing: list[tuple[Path, str, str]] = []
    for entry in bank.entries():
        item, path = entry.item, entry.path
        record = record_of(entry.topic, item, bank.terms)
        here = (record.item.id, record.hash)
        name = names[moved.get(here, here)]
        if name not in new:  # the same item was there twice, under ids of a conflict
            texts[path] = without_item(texts[path], item.id)
            continue
        fields = _history(new.pop(name))
        if fields == _history_of(item) and name == item.id:
            continue
        # Ids may change places, so each goes by one that no item can have in between.
        between = f"BETWEEN {len(passing)}"
        texts[path] = with_fields(texts[path], item.id, {**fields, "id": between})
        passing.append((path, between, name))
    for path, between, name in passing:
        texts[path] = with_fields(texts[path], between, {"id": name})
    return new


def _history(stored: Kept) -> dict[str, Any]:
    day, why = stored.retired or (None, None)
    return {"retired": day, "retired_because": why or None}


def _history_of(item: BankItem) -> dict[str, Any]:
    return {"retired": item.retired, "retired_because": item.retired_because}


def _add_items(
    bank: Bank, texts: dict[Path, str], holding: Holding, new: Mapping[str, Kept]
) -> None:
    default = bank.terms or NO_LICENCE
    for name, stored in new.items():
        record = stored.record
        licence = None if record.item.licence == default else record.item.licence
        fields = {"id": name, "licence": licence, **_history(stored)}
        path = _topic_path(bank, texts, holding, record.topic)
        texts[path] = with_item(texts[path], record.item.model_copy(update=fields))


def _topic_path(bank: Bank, texts: dict[Path, str], holding: Holding, topic: str) -> Path:
    """Return the file of a topic; one that is not there yet is begun."""
    path = bank.folder / f"{topic}.toml"
    if path not in texts:
        facts = holding.topics[topic]
        title: str | None = min(facts.titles)
        if is_generated(topic) and title == find_topic(topic).title:
            title = None
        texts[path] = topic_toml(topic, title, sorted(facts.prerequisites))
    return path


def _add_made(bank: Bank, texts: dict[Path, str], holding: Holding) -> None:
    there: dict[str, Counter[Made]] = {
        topic.id: Counter([*topic.generated, *topic.pinned]) for topic in bank.topics
    }
    for topic, made in holding.made.items():
        for element in sorted((made - there.get(topic, Counter())).elements(), key=repr):
            path = _topic_path(bank, texts, holding, topic)
            texts[path] = with_block(texts[path], _made_toml(element))


def _made_toml(made: Made) -> str:
    name = "pinned" if isinstance(made, PinnedItem) else "generated"
    fields = made.model_dump(exclude_defaults=True)
    rows = "".join(f"{key} = {field_toml(value)}\n" for key, value in fields.items())
    return f"[[{name}]]\n{rows}"


def _edit_heads(bank: Bank, texts: dict[Path, str], holding: Holding) -> None:
    """Add the prerequisites that the other bank's topics have."""
    for topic in bank.topics:
        missing = holding.topics[topic.id].prerequisites - set(topic.prerequisites)
        if missing:
            needed = [*topic.prerequisites, *sorted(missing)]
            texts[topic.path] = _with_head(texts[topic.path], "prerequisites", needed)


def _with_head(text: str, key: str, value: Sequence[str]) -> str:
    import tomlkit

    lines = text.split("\n")
    end = next((at for at, line in enumerate(lines) if line.lstrip().startswith("[[")), len(lines))
    head: Any = tomlkit.parse("\n".join(lines[:end]) + "\n")
    head[key] = list(value)
    return "\n".join([*tomlkit.dumps(head).rstrip("\n").split("\n"), "", *lines[end:]])


def _edit_authors(bank: Bank, texts: dict[Path, str], holding: Holding) -> None:
    """Add the author codes of the other bank; a code with two roles has both."""
    wanted = {code: _role(bank.authors.get(code), roles) for code, roles in holding.authors.items()}
    changed = {code: role for code, role in wanted.items() if bank.authors.get(code) != role}
    if not changed:
        return
    import tomlkit

    path = bank.folder / BANK_FILE
    document: Any = tomlkit.parse(texts[path])
    if "authors" not in document:
        document["authors"] = tomlkit.table()
    for code, role in changed.items():
        document["authors"][code] = role
    texts[path] = tomlkit.dumps(document)


def _role(ours: str | None, roles: Iterable[str]) -> str:
    if ours is not None and set(ours.split(BOTH)) == set(roles):
        return ours
    return BOTH.join(sorted(roles))
