"""Sums said in words one inside another: *half of the sum of* {3} *and* {5}, {3} *squared plus*….

A sentence is read from left to right into one tree. Where school English leaves open what is
meant first (*half of* {6} *plus* {4}, *the sum of* {3} *and* {4} *squared*), nothing is read.

>>> from itembank.notation.line import line
>>> from itembank.notation.tree import Int
>>> from itembank.wording.sentences.prompt import slot
>>> said = nested(f"Find half of the sum of {slot(0)} and {slot(1)}")
>>> line(said.build(Int(3), Int(5))[0])
'1/2 × (3 + 5)'
>>> nested(f"Find half of {slot(0)} plus {slot(1)}") is None
True
"""

from __future__ import annotations

import re
from collections.abc import Callable

from itembank.data_class import dataclass
from itembank.notation import tree as t
from itembank.text.late_pattern import late
from itembank.wording.sentences.phrases import COUNTS, phrase
from itembank.wording.sentences.prompt import SLOT, index_of
from itembank.wording.tasks.sums.part_sums import bare_amount, part_of
from itembank.wording.tasks.sums.sums import (
    Built,
    as_part,
    difference,
    less,
    over,
    power,
    product,
    reciprocal,
    root,
    total,
)


@dataclass(frozen=True, slots=True)
class Nested:
    """A sum said in words: its pieces of mathematics in order, where it ends, and its tree."""

    slots: tuple[int, ...]
    end: int
    build: Callable[..., Built]
    form: str = ""


@dataclass(frozen=True, slots=True)
class _Piece:
    """A part of a sentence. `kind` says how it is put: atom, before, after, pair or joined."""

    kind: str
    end: int
    slots: tuple[int, ...]
    build: Callable[..., Built]


_OF = {
    "half": (1, 2), "third": (1, 3), "quarter": (1, 4), "fifth": (1, 5), "sixth": (1, 6),
    "seventh": (1, 7), "eighth": (1, 8), "ninth": (1, 9), "tenth": (1, 10), "hundredth": (1, 100),
}  # fmt: skip
_PARTS = {name: n for name, (_, n) in _OF.items()} | {"halve": 2}
_FRACTION = late(
    rf"(?:(?P<n>an?|one|{'|'.join(list(COUNTS)[1:])})[ -])?(?P<part>{'|'.join(_OF)}|halve)s?(?: of)? (?=the |{SLOT})",
    re.I,
)
_TIMES = {"double": 2, "twice": 2, "treble": 3, "triple": 3, "three times": 3, "four times": 4,
          "five times": 5, "ten times": 10}  # fmt: skip
_BEFORE = late(rf"(?P<word>{'|'.join(_TIMES)}) (?=the |{SLOT})", re.I)
_FUNCTION = late(
    r"the (?P<word>(?:positive )?square root|cube root|square|cube|reciprocal) of (?=the |[\ue000-\uf8ff])",
    re.I,
)
_FUNCTIONS: dict[str, Callable[[t.Node], Built]] = {
    "square root": root(2),
    "cube root": root(3),
    "square": power(2),
    "cube": power(3),
    "reciprocal": reciprocal,
}
_AFTER = late(r" (?P<word>squared|cubed)\b", re.I)
_PAIR = late(
    r"the (?P<word>sum|total|difference|product) (?:of|between) (?=the |[\ue000-\uf8ff]|[a-z])",
    re.I,
)
_PAIRS: dict[str, Callable[..., Built]] = {
    "sum": total,
    "total": total,
    "difference": difference,
    "product": product,
}
_JOIN = late(
    r" (?P<word>plus|add|added to|minus|subtract|take away|times|multiplied by|divided by|less than|"
    r"more than) (?=the |[\ue000-\uf8ff]|[a-z])",
    re.I,
)
_JOINS: dict[str, Callable[[t.Node, t.Node], Built]] = {
    **dict.fromkeys(("plus", "add", "added to"), total),
    **dict.fromkeys(("minus", "subtract", "take away"), less),
    **dict.fromkeys(("times", "multiplied by"), product),
    "divided by": over,
    "less than": lambda a, b: less(b, bare_amount(a)),
    "more than": lambda a, b: total(b, bare_amount(a)),
}
_OPENING = late(
    r"(?:(?P<algebra>(?:write|give|find|form)(?: down)? an? (?:algebraic )?expression (?:for|which means|that means|to show)) |"
    r"(?:work out|calculate|evaluate|compute|find|determine|give|state|write down|write|what is|what's|"
    r"tell me|say) )(?:the (?:value|result) of )?",
    re.I,
)
_COMMANDS: tuple[tuple[str, str, Callable[[t.Node, t.Node], Built]], ...] = (
    ("add", r"(?: to|,? and|,? on to) ", lambda a, b: total(b, a)),
    ("(?:subtract|take(?: away)?)", r"(?: away)? from ", lambda a, b: less(b, a)),
    ("multiply", " by ", product),
    ("divide", " by ", over),
)
_ALONE: tuple[tuple[str, Callable[[t.Node], Built]], ...] = (
    ("double", lambda node: _many(2, node)),
    ("(?:treble|triple)", lambda node: _many(3, node)),
    ("halve", lambda node: _share(1, 2, node)),
    ("square", power(2)),
    ("cube", power(3)),
)


def nested(sentence: str) -> Nested | None:
    """Return a sentence's sum where one is said inside another, or None."""
    if opening := _OPENING.match(sentence):
        found = _joined(sentence, opening.end())
        # An atom, or one operation of two atoms, is read by the plain wordings.
        if found is not None and (found.kind != "atom"):
            return Nested(found.slots, found.end, found.build)
        return None
    for verb, between, build in _COMMANDS:
        if match := phrase(verb + " ").match(sentence):
            return _two(sentence, match.end(), between, build)
    for verb, of in _ALONE:
        if (match := phrase(verb + " ").match(sentence)) and (
            found := _operand(sentence, match.end())
        ):
            return (
                Nested(found.slots, found.end, _applied(of, found.build))
                if found.kind == "pair"
                else None
            )
    return None


def _two(
    text: str, at: int, between: str, build: Callable[[t.Node, t.Node], Built]
) -> Nested | None:
    first = _operand(text, at)
    if first is None or not (gap := phrase(between).match(text, first.end)):
        return None
    second = _operand(text, gap.end())
    if second is None or (second.kind == "after" and first.kind != "after"):
        return None
    both = _combined("joined", build, first, second)
    return Nested(both.slots, both.end, both.build)


def _joined(text: str, at: int) -> _Piece | None:
    """Return one operand, or two with *plus*, *minus*, *times* … between them."""
    first = _operand(text, at)
    if first is None:
        return None
    match = _JOIN.match(text, first.end)
    if match is None:
        return first
    if first.kind == "pair":
        return None  # the sum of 3 and 4 times 5
    second = _operand(text, match.end())
    if second is None or _JOIN.match(text, second.end):
        return None
    clear = {"atom": ("atom", "before", "pair"), "before": ("before",), "after": ("atom", "after")}
    if second.kind not in clear[first.kind]:
        return None
    return _combined("joined", _JOINS[match["word"].lower()], first, second)


def _operand(text: str, at: int) -> _Piece | None:
    """Return a number, with what is done to it or to a sum said in words, that starts at `at`."""
    if match := _FRACTION.match(text, at):
        word = (match["n"] or "one").lower()
        n = 1 if word in ("a", "an") else COUNTS.get(word, 1)
        den = _PARTS[match["part"].lower()]
        return _before(text, match.end(), lambda node: _share(n, den, node))
    if match := _BEFORE.match(text, at):
        times = _TIMES[match["word"].lower()]
        return _before(text, match.end(), lambda node: _many(times, node))
    if match := _FUNCTION.match(text, at):
        word = match["word"].lower().removeprefix("positive ")
        return _before(text, match.end(), _FUNCTIONS[word])
    if pair := _pair(text, at):
        return pair
    if not (match := phrase("<NP>").match(text, at)):
        return None
    atom = _Piece("atom", match.end(), (index_of(match[1]),), lambda node: (node, ()))
    if of := phrase(" of (?=the |[\ue000-\uf8ff])").match(text, atom.end):
        rest = _operand(text, of.end())
        if rest is None or rest.kind not in ("atom", "pair"):
            return None
        return _combined("before", part_of, atom, rest)
    if after := _AFTER.match(text, atom.end):
        applied = _applied(power(2 if after["word"].lower() == "squared" else 3), atom.build)
        return _Piece("after", after.end(), atom.slots, applied)
    return atom


def _before(text: str, at: int, build: Callable[[t.Node], Built]) -> _Piece | None:
    """Return something done to what follows, which is one number or a sum of two said in words."""
    of = _operand(text, at)
    if of is None or of.kind not in ("atom", "pair"):
        return None  # half of 3 squared
    return _Piece("before", of.end, of.slots, _applied(build, of.build))


def _pair(text: str, at: int) -> _Piece | None:
    match = _PAIR.match(text, at)
    if match is None:
        return None
    first = _operand(text, match.end())
    if first is None or not (gap := phrase(",? and ").match(text, first.end)):
        return None
    second = _operand(text, gap.end())
    if second is None or phrase(",? and ").match(text, second.end):
        return None
    alike = {first.kind, second.kind}
    if len(alike) > 1 and not (first.kind == "atom" and second.kind == "before"):
        return None  # the sum of 3 and 4 squared, the sum of half of 6 and 4
    if alike == {"pair"}:
        return None
    return _combined("pair", _PAIRS[match["word"].lower()], first, second)


def _combined(
    kind: str, build: Callable[[t.Node, t.Node], Built], first: _Piece, second: _Piece
) -> _Piece:
    count = len(first.slots)

    def made(*nodes: t.Node) -> Built:
        a, used = first.build(*nodes[:count])
        b, more = second.build(*nodes[count:])
        tree, own = build(a, b)
        return tree, (*used, *more, *own)

    return _Piece(kind, second.end, (*first.slots, *second.slots), made)


def _applied(build: Callable[[t.Node], Built], inner: Callable[..., Built]) -> Callable[..., Built]:
    def made(*nodes: t.Node) -> Built:
        node, used = inner(*nodes)
        tree, own = build(node)
        return tree, (*used, *own)

    return made


def _share(n: int, den: int, node: t.Node) -> Built:
    return t.Product(t.Frac(t.Int(n), t.Int(den)), (("×", as_part(node)),)), (n, den)


def _many(n: int, node: t.Node) -> Built:
    return t.Product(t.Int(n), (("×", as_part(node)),)), (n,)
