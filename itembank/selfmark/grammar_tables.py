"""The parser's tables, as data: what lark builds from the grammar is all that is needed to read.

Where p is a letter, or 14:35 a ratio, the same tables serve: the sign for pence is then not
looked for, and that for a time is the narrower one.
"""

from __future__ import annotations

from typing import Any

from itembank.notation.parse import _parser
from itembank.notation.tree.line_signs import CLOCK_0, CLOCK_24
from itembank.selfmark.patterns import in_javascript

SHIFT = 1


def grammar_tables() -> dict[str, Any]:
    """Return the tables: states, rules and signs.

    A state is an object from a sign, or the number of a rule's result, to a number: the state to
    go to, or, as −1 − n, rule n to put together. A rule says what it gives, of how many parts,
    and what is built of them; an empty name passes its one part on, and `~` its parts.
    """
    parser: Any = _parser(True, True)
    table = parser.parser.parser._parse_table
    rules = {rule: place for place, rule in enumerate(parser.rules)}
    number: dict[Any, int] = {}
    waiting = [table.start_states["start"]]
    states: list[dict[str, int]] = []
    while waiting:
        state = waiting.pop(0)
        if state in number:
            continue
        number[state] = len(number)
        waiting += [
            to for name, (action, to) in sorted(table.states[state].items(), key=_name)
            if _shifts(action)
        ]  # fmt: skip
    for state in number:
        states.append(
            {
                name: number[to] if _shifts(action) else -1 - rules[to]
                for name, (action, to) in sorted(table.states[state].items(), key=_name)
            }
        )
    root = parser.parser.lexer.root_lexer
    assert not root.__dict__.get("callback")
    return {
        "states": states,
        "end": number[table.end_states["start"]],
        "rules": [[r.origin.name, len(r.expansion), _built(r)] for r in parser.rules],
        "signs": [
            [sign.name, in_javascript(sign.pattern.to_regexp())[0]]
            for sign in root.terminals
            if sign.name not in root.ignore_types
        ],
        "no_times": in_javascript(_time_sign(parser).replace(CLOCK_24, CLOCK_0))[0],
    }


def _name(pair: tuple[str, Any]) -> str:
    return pair[0]


def _shifts(action: Any) -> bool:
    return str(action) == "Shift"


def _built(rule: Any) -> str:
    if rule.origin.name.startswith("_"):
        return "~"
    if rule.options.expand1 and not rule.alias and len(rule.expansion) == 1:
        return ""
    return str(rule.alias or rule.origin.name)


def _time_sign(parser: Any) -> str:
    signs = parser.parser.lexer.root_lexer.terminals
    return str(next(sign.pattern.value for sign in signs if sign.name == "TIME"))
