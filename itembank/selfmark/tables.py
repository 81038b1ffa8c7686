"""What the page knows of marking, taken from the marker itself: patterns, words, units, messages.

The marker stays the one source. ``tables.json`` beside this file is what :func:`tables` returns,
kept so that making a pack builds no parser and compiles no pattern; a test holds the two equal,
and ``python -m itembank.selfmark.tables`` writes it anew after a change to marking or notation.
"""

from __future__ import annotations

import json
import re
import sys
import unicodedata
from collections.abc import Sequence
from dataclasses import fields
from fractions import Fraction
from importlib import import_module
from pathlib import Path
from typing import Any

from itembank.files.together import write_whole
from itembank.notation.tree.face import FACES
from itembank.selfmark.grammar_tables import grammar_tables
from itembank.selfmark.patterns import in_javascript
from itembank.text.characters import _LIKE, has_hidden, named, told
from itembank.text.late_pattern import _Late

FILE = Path(__file__).with_name("tables.json")

_TYPING = "itembank.marking.typing."
_MODULES = {
    "mark": ("itembank.marking.mark",),
    "read": tuple(
        _TYPING + name
        for name in ("read_answer", "question_spelling", "parsed_answer", "sign_typed")
    ),
    "spelling": (_TYPING + "spelling",),
    "openings": (_TYPING + "openings",),
    "part_label": (_TYPING + "part_label",),
    "goes_on": (_TYPING + "goes_on",),
    "choice": (_TYPING + "choice_typed",),
    "kind_typed": (_TYPING + "kind_typed",),
    "labels": (_TYPING + "labels",),
    "nouns": (_TYPING + "nouns",),
    "numerals": (_TYPING + "numerals",),
    "times": (_TYPING + "times_typed",),
    "working": (_TYPING + "working.working_lines",),
    "with_working": ("itembank.marking.with_working",),
    "sorted": (_TYPING + "sorted_numbers",),
    "units_beside": ("itembank.marking.form.units_beside",),
    "kinds": ("itembank.marking.worth.marked_by_kind",),
    "parse": ("itembank.notation.parse",),
    "clock": ("itembank.notation.clock_text",),
    "clock_times": ("itembank.notation.tree.clock_times",),
    "normalise": ("itembank.notation.normalise",),
    "unit_names": ("itembank.notation.unit_names",),
    "unknown": ("itembank.notation.unknown_words",),
    "signs": ("itembank.notation.tree.line_signs",),
}
"""The modules whose patterns the page has, under the name by which its scripts call them."""
_CONSTANTS = {
    "read": ("_SIGN_WORDS", "LONGEST", "REMAINDER", "_STOPS", "RATIOS", "_SHORT_NAMES"),
    "spelling": ("_BETWEEN", "_COMPARED", "_WORDS", "_DOUBLE", "_STOPS", "_PASS_FOR"),
    "choice": ("_CALLED",),
    "kind_typed": ("NO_TRUTH", "NO_PAIRS", "NO_LINE", "_NUMBERS"),
    "nouns": ("_SMALL_WORDS", "_KEPT", "_BOUNDS"),
    "numerals": ("_SMALL", "_LARGE", "_PARTS"),
    "normalise": ("_SAME", "_RAISED", "_RELATIONS", "_QUOTES"),
    "unit_names": ("NAMES", "_CAPITALS_MATTER"),
    "unknown": ("_ONLY_CALLED", "_LITTLE", "_COMMON", "_UNIT_LIKE"),
    "signs": ("MAX_TEXT", "MAX_NESTING", "MAX_DIGITS", "UNIT_SIGNS", "DOT", "LETTERS"),
}
_MESSAGES = {
    "itembank.marking.form.form_told": ("RULES", "WANTED", "TOLD_BY_FORM"),
    "itembank.marking.mark": ("_NOTHING_TO_SOLVE", "_DRAWN"),
    "itembank.marking.answer_alone": ("_PLAIN_NUMBERS", "_PER_CENT", "_NO_VALUE"),
    "itembank.marking.with_working": ("TWO_ANSWERS",),
    "itembank.marking.form.units_beside": ("STANDS_BESIDE",),
    "itembank.marking.telling.hints": ("CHECK",),
    "itembank.marking.typing.times_typed": ("TIME_IN_FULL", "NO_SECONDS", "WHICH_HALF"),
    "itembank.marking.typing.choice_typed": ("SIGN_BESIDE",),
    "itembank.marking.typing.part_label": ("TWO_WAYS",),
    "itembank.marking.typing.goes_on": ("SEVERAL_WAYS",),
    "itembank.marking.telling.nearly": ("WRONG_UNIT",),
    "itembank.notation.tree.clock_times": ("ALONE",),
}


def tables() -> dict[str, Any]:
    """Return all tables, in what JSON can hold."""
    return {
        "patterns": _patterns(),
        "constants": {
            short: {name: plain(_constant(short, name)) for name in names}
            for short, names in _CONSTANTS.items()
        },
        "messages": {
            name.strip("_"): plain(getattr(import_module(module), name))
            for module, names in _MESSAGES.items()
            for name in names
        },
        "nodes": _nodes(),
        "units": _units(),
        "glued": in_javascript(_glued())[0],
        "misread": [in_javascript(_misread(pence))[0] for pence in (False, True)],
        "pence": in_javascript(_pence())[0],
        "words": {
            "fractions": plain(_tree_constant("fractions", "_NAMES")),
            "greek": plain(_tree_constant("unknowns", "_GREEK")),
            "product": plain(_tree_constant("products", "_SAID")),
            "relation": plain(_tree_constant("relations", "_SAID")),
            "endings": _tree_constant("spoken", "_endings")().split("|"),
        },
        "big_small": [
            [*pair, small] for pair, small in _constant("unit_names", "_BIG_SMALL").items()
        ],
        "conditions": {
            name: said for name, (_, said) in _items("itembank.items.asks.give", "CONDITIONS")
        },
        "places_known": import_module("itembank.marking.form.policy").PLACES_KNOWN,
        "characters": _characters(),
        "grammar": grammar_tables(),
    }


def _items(module: str, name: str) -> Any:
    return getattr(import_module(module), name).items()


def _patterns() -> dict[str, list[str]]:
    found: dict[str, list[str]] = {}
    for short, modules in _MODULES.items():
        for module in modules:
            for name, value in vars(import_module(module)).items():
                if isinstance(value, _Late | re.Pattern):
                    found[f"{short}.{name.strip('_').lower()}"] = pattern(value)
    return dict(sorted(found.items()))


def pattern(value: Any) -> list[str]:
    """Return a pattern of the marker as JavaScript has it."""
    if isinstance(value, _Late):
        return in_javascript(value._text, value._flags)
    return in_javascript(value.pattern, value.flags & ~re.U)


def plain(value: Any) -> Any:
    """Return a constant of the marker in what JSON can hold."""
    if isinstance(value, str | int | bool) or value is None:
        return value
    if isinstance(value, Fraction):
        return f"{value.numerator}/{value.denominator}"
    if isinstance(value, _Late | re.Pattern):
        return pattern(value)
    if isinstance(value, dict):
        return {str(key): plain(of) for key, of in value.items()}
    if isinstance(value, frozenset | set):
        return sorted(value)
    return [plain(of) for of in value]


def _nodes() -> dict[str, Any]:
    return {
        kind.__name__: {
            "fields": [field.name for field in fields(kind)],
            "rank": int(faces.rank),
            "operation": faces.operation,
        }
        for kind, faces in FACES.items()
    }


def _units() -> dict[str, Any]:
    units = import_module("itembank.notation.units")
    return {
        "units": {name: plain(unit) for name, unit in units.UNITS.items()},
        "currency": {name: plain(unit) for name, unit in units.CURRENCY.items()},
        "as_words": sorted(units.AS_WORDS),
        "needs_space": sorted(units.NEEDS_SPACE),
        "together": plain(units.TOGETHER),
        "made": [
            [list(kinds), made] for kinds, made in _items("itembank.marking.worth.worth", "_MADE")
        ],
    }


def _constant(short: str, name: str) -> Any:
    """Return a constant of the modules of one name: the first that has it."""
    return next(
        value
        for module in map(import_module, _MODULES[short])
        if (value := getattr(module, name, None)) is not None
    )


def _tree_constant(module: str, name: str) -> Any:
    return getattr(import_module(f"itembank.notation.tree.{module}"), name)


def _glued() -> str:
    return str(_constant("signs", "GLUED_NAMES"))


def _misread(pence: bool) -> str:
    return str(import_module("itembank.notation.tree.products")._misread(pence).pattern)


def _pence() -> str:
    return str(import_module("itembank.notation.tree.grammar").pence_sign())


def _characters() -> dict[str, Any]:
    """Return what JavaScript does not say of characters as Python does."""
    every = [chr(code) for code in range(sys.maxunicode + 1) if not 0xD800 <= code < 0xE000]
    fractions = {}
    for char in every:
        kind, *codes = unicodedata.decomposition(char).split() or [""]
        if kind == "<fraction>":
            fractions[char] = "".join(chr(int(code, 16)) for code in codes)
    return {
        "version": unicodedata.unidata_version,
        "unassigned": _unassigned(every),
        "zeros": [ord(char) for char in every if unicodedata.decimal(char, None) == 0],
        "fractions": fractions,
        "digits": "".join(
            char for char in every if char.isdigit() and unicodedata.category(char) != "Nd"
        ),
        "numeric": "".join(
            char for char in every if char.isnumeric() and unicodedata.category(char)[0] != "N"
        ),
        "casefold": {
            char: char.casefold() for char in every if char.casefold() != char.lower()
        },
        "told": {
            char: told(char)
            for char in every
            if ord(char) < 0xE000
            and (char in _LIKE or (has_hidden(char) and unicodedata.category(char)[0] != "C"))
        } | {char: named(char) for char in "\u2061\u2062\u2063\u2064"},
    }  # fmt: skip


def _unassigned(every: Sequence[str]) -> list[int]:
    """Return the runs of characters that this Unicode does not have, as gap, length, gap, ….

    A browser may know a later one, and take for a letter what the marker takes for nothing.
    """
    found: list[int] = []
    last = start = -1
    for char in [*every, ""]:
        code = ord(char) if char else sys.maxunicode + 1
        if char and unicodedata.category(char) == "Cn":
            start = code if start < 0 else start
        elif start >= 0:
            found += [start - last - 1, code - start]
            last, start = code - 1, -1
    return found


def written() -> str:
    """Return the tables as the text of their file."""
    return json.dumps(tables(), ensure_ascii=True, separators=(",", ":")) + "\n"


if __name__ == "__main__":
    write_whole(FILE, written().encode("ascii"))
