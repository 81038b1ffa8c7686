"""Reads by the table that lark made of a grammar, in a few of the steps that lark takes.

A grammar with a level for each strength of binding has most parts do nothing but go up: a number
that stands alone in a sum goes up through eight levels. What a part becomes so depends on the
state below it, its own, and the sign that comes next, and on nothing else; so each such way is
found once, and taken at once from then on. All other steps are lark's, in lark's order, with what
lark would call. What cannot be read is given to lark, which says where and why.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any, NamedTuple

if TYPE_CHECKING:
    from lark import Lark

_NOWHERE = -1


class _Way(NamedTuple):
    """What happens to the topmost part before a sign: how far up it goes, and then what."""

    top: int
    """The state that it comes to."""
    shift: int | None
    """The state after the sign, where the sign is taken in."""
    size: int
    """Of how many parts something is built, where it is not."""
    origin: str
    """The level on which that stands."""
    build: Callable[[list[Any]], Any] | None


class ShortWays:
    """A parser of lark's that is run over its table in fewer steps.

    Raises:
        AttributeError: this lark keeps its table in another way.

    >>> from lark import Lark
    >>> lark = Lark('?start: start "+" one -> add | one' + chr(10) + "?one: /[0-9]/", parser="lalr")
    >>> ShortWays(lark).parse("1+2+3") == lark.parse("1+2+3")
    True
    """

    def __init__(self, lark: Lark) -> None:
        conf: Any = lark.parse_interactive("").parser_state.parse_conf
        self._lark = lark
        self._states: dict[int, dict[str, tuple[Any, Any]]] = conf.states
        self._callbacks, self._end = conf.callbacks, conf.end_state
        self._ways: dict[tuple[int, int, str], _Way] = {}

    def parse(self, text: str) -> Any:
        """Return what lark returns for a text; raise what it raises."""
        from lark.exceptions import UnexpectedInput

        state: Any = self._lark.parse_interactive(text).parser_state
        try:
            for token in state.lexer.lex(state):
                self._feed(state.state_stack, state.value_stack, token.type, token)
            self._feed(state.state_stack, state.value_stack, "$END", None)
        except (KeyError, UnexpectedInput):
            return self._lark.parse(text)
        return state.value_stack[-1]

    def _feed(self, stack: list[int], values: list[Any], sign: str, token: Any) -> None:
        while True:
            key = (stack[-2] if len(stack) > 1 else _NOWHERE, stack[-1], sign)
            way = self._ways.get(key)
            if way is None:
                way = self._ways[key] = self._way(*key)
            top, shift, size, origin, build = way
            stack[-1] = top
            if build is None:
                assert shift is not None
                stack.append(shift)
                values.append(token)
                return
            parts: list[Any] = []
            if size:
                parts = values[-size:]
                del stack[-size:], values[-size:]
            values.append(build(parts))
            stack.append(self._states[stack[-1]][origin][1])
            if token is None and stack[-1] == self._end:
                return

    def _way(self, below: int, top: int, sign: str) -> _Way:
        while True:
            _, what = self._states[top][sign]
            if isinstance(what, int):
                return _Way(top, what, 0, "", None)
            origin = what.origin.name
            if below == _NOWHERE or not _only_passes_on(what):
                return _Way(top, None, len(what.expansion), origin, self._callbacks[what])
            top = self._states[below][origin][1]


def _only_passes_on(rule: Any) -> bool:
    """Tell whether what a rule builds of its one part is that part."""
    if len(rule.expansion) != 1 or rule.alias is not None or not rule.options.expand1:
        return False
    (part,) = rule.expansion
    return not part.is_term and not part.name.startswith("_")
