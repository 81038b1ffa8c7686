"""The forms that words ask for, and how a key differs from them."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from itembank.items.forms.form_rules import form_fault
from itembank.items.forms.number_forms import (
    bare,
    lowest_terms,
    mixed,
    ratio,
    sort_of,
    unsigned,
    whole_parts,
)
from itembank.items.item import Item
from itembank.notation import tree as t
from itembank.notation.line import shown_line
from itembank.wording.tasks.answers.forms_said import FORMS_SAID, LOWEST, POWER_OF, PRIME_POWERS


class _FormsSaid(NamedTuple):
    """What words say of the form of an answer. Read once for all the items of a topic."""

    prime_powers: bool
    lowest: str
    forms: tuple[str, ...]


@lru_cache(maxsize=1024)
def _forms_said(words: str) -> _FormsSaid:
    lowest = LOWEST.search(words)
    return _FormsSaid(
        bool(PRIME_POWERS.search(words)),
        lowest[0] if lowest else "",
        tuple(form for form, pattern in FORMS_SAID if pattern.search(words)),
    )


def fault_by_words(item: Item, words: str) -> str:
    """Return what the words ask of the form of the answer that the key has not."""
    key, said = value_of_key(item.key), _forms_said(words)
    if item.form == "prime-factors" and said.prime_powers:
        return form_fault("prime-powers", key)
    if said.lowest and (fault := _not_lowest(key, "terms" in said.lowest.lower())):
        return fault
    for form in said.forms:
        asked = form != item.form and can_have(form, item.form, key)
        if asked and (fault := form_fault(form, key)):
            return fault
    return _base_fault(item, key)


def value_of_key(key: t.Node) -> t.Node:
    """Return what a key says its letter is worth, or the key where it names none."""
    if isinstance(key, t.Relation) and len(key.rest) == 1:
        return bare(key.rest[0][1])
    return bare(key)


def can_have(form: str, stated: str, key: t.Node) -> bool:
    """Tell whether a form that words speak of is one for the key, and not of another thing."""
    if isinstance(key, t.Relation | t.Listing | t.Either):
        return False
    if form in ("power", "powers"):
        others = ("power", "powers", "prime-powers", "prime-factors", "standard-form", "rounded")
        return stated not in others and not isinstance(key, t.Sum)
    if form == "surd":
        return not t.symbols(key)
    return bool(t.symbols(key))  # numbers are held to a form of their own


def _not_lowest(key: t.Node, terms: bool) -> str:
    inner = unsigned(key)
    if isinstance(inner, t.Ratio):
        return ratio(inner)
    if isinstance(inner, t.Mixed):
        return mixed(inner)
    if isinstance(inner, t.Dec) and terms:
        return sort_of(inner)
    parts = whole_parts(key) if isinstance(inner, t.Frac) else ""
    return lowest_terms(key) if isinstance(parts, tuple) else ""


def _base_fault(item: Item, key: t.Node) -> str:
    """Return a sentence if the key is a power of another number than the words name."""
    inner = unsigned(key)
    if not isinstance(inner, t.Power):
        return ""
    for place, run in enumerate(item.prompt):
        match = POWER_OF.search(run) if isinstance(run, str) else None
        if not match:
            continue
        after = item.prompt[place + 1] if place + 1 < len(item.prompt) else None
        named: t.Node | str | None = after
        # The base stands in the words (a power of 2), or in the mathematics after them.
        if match[1]:
            named = t.Int(int(match[1])) if match[1].isdigit() else t.Sym(match[1])
        if isinstance(named, t.Int | t.Sym) and bare(inner.base) != named:
            return f"it is not a power of {shown_line(named)}"
    return ""
