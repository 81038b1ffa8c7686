"""Formulas from MathML, each set once for the whole pack.

ReportLab is imported when the first formula is set, not before.

>>> half = formula("<math><mfrac><mn>1</mn><mn>2</mn></mfrac></math>")
>>> half.ascent > 1, half.descent > 0.3, len(half.glyphs), len(half.rules)
(True, True, 2, 1)
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from functools import lru_cache
from typing import Literal, TypeAlias

from itembank.pages.engine.maths.formula_layout import Formula

_CACHE: dict[tuple[str, float], Formula] = {}
_script: ContextVar[float] = ContextVar("script", default=0.0)


@contextmanager
def scripts_at_least(share: float) -> Iterator[None]:
    """Set powers, and fractions within fractions, no smaller than this share of the text.

    Large print has no small type at all, so its powers are as large as its text.
    """
    before = _script.set(share)
    try:
        yield
    finally:
        _script.reset(before)


def least_script() -> float:
    """Return the share of the text that powers are no smaller than, where one is set.

    Whoever keeps what holds formulas has to keep it by this too.

    >>> with scripts_at_least(1.0):
    ...     least_script()
    1.0
    """
    return _script.get()


_NUMBER_SPACE = ("\u2009", "\u00a0")
"""What parts thousands, and a number from its unit: on a page a word space, in a formula as in
running text (:func:`itembank.pages.engine.text.flow.as_text`)."""

_SCRIPTS = re.compile(
    r"<m(?:sup|sub|subsup|under|over|underover|root|multiscripts|style)\b"
    r"|scriptlevel|mathsize|<mfrac\b(?:(?!</mfrac>).)*<mfrac\b",
    re.DOTALL,
)
"""What may hold type smaller than the text; all else is set alike whatever its least size."""

_OPENING = re.compile(r"^<math\b[^>]*>|</math>$")


def formula(mathml: str) -> Formula:
    """Return the layout of `mathml`, from the cache where it was set before.

    Raises:
        ValueError: the text is not well-formed MathML.
    """
    share = least_script()
    if share and not _SCRIPTS.search(mathml):
        share = 0.0
    found = _CACHE.get((mathml, share))
    if found is None:
        from itembank.pages.engine.maths.setting import set_formula

        found = _CACHE[mathml, share] = set_formula(mathml.replace(*_NUMBER_SPACE), share)
    return found


_ATOM = re.compile(r"<(/?)(\w+)[^>]*?(/?)>")
_OR = re.compile(r"<mtext\b[^>]*>\s*or\s*</mtext>")
_COMMA = re.compile(r"<mo\b[^>]*>\s*,\s*</mo>")
_RELATION = re.compile(r"<mo\b[^>]*>\s*(?:[=≤≥≠]|&lt;|&gt;)\s*</mo>")
_OPERATOR = re.compile(r"<mo\b[^>]*>\s*(?:[=≤≥≠+×÷−]|&lt;|&gt;)\s*</mo>")
_BEFORE = {
    "or": (_OR,),
    "comma": (_OR,),
    "relation": (_OR, _RELATION),
    "operator": (_OR, _OPERATOR),
}
"""What a formula may be cut before, the least harm to its reading first; at all but the first
level it is cut after commas too."""
_BROKEN_AT = frozenset({"mo", "mtext"})
"""The elements that any of these is."""

Level: TypeAlias = Literal["or", "comma", "relation", "operator"]


@lru_cache(maxsize=1024)
def pieces(mathml: str, level: Level = "operator") -> tuple[str, ...]:
    """Return `mathml` cut in its outermost row: between alternatives, else at commas and so on.

    Used only where a formula is wider than the page has room for. A piece keeps the
    operator it starts with, set as an infix, so that its spaces stay the same. A prefix
    minus is never cut off.

    >>> pieces("<math><mi>x</mi><mo>=</mo><mn>2</mn></math>")[1]
    '<math><mo form="infix">=</mo><mn>2</mn></math>'
    >>> pieces("<math><mi>x</mi><mo>=</mo><mn>2</mn></math>", "comma")
    ('<math><mi>x</mi><mo>=</mo><mn>2</mn></math>',)
    """
    body = _OPENING.sub("", mathml.strip())
    while body.startswith("<mrow>") and _closes_at_end(body):
        body = body.removeprefix("<mrow>").removesuffix("</mrow>")
    cuts, depth, previous = [0], 0, ""
    for match in _ATOM.finditer(body):
        closing, tag, empty = match.groups()
        if not closing:
            # At the first depth only: within a fraction or a root nothing can be broken.
            if depth == 0 and tag in _BROKEN_AT:
                before = any(pattern.match(body, match.start()) for pattern in _BEFORE[level])
                prefix = 'form="prefix"' in match.group()
                if before and previous and not prefix:
                    cuts.append(match.start())
                comma = _COMMA.match(body, match.start()) if level != "or" else None
                if comma and comma.end() < len(body):
                    cuts.append(comma.end())
            depth += 0 if empty else 1
        else:
            depth -= 1
        if depth == 0:
            previous = tag
    parts = [body[a:b] for a, b in zip(cuts, [*cuts[1:], len(body)], strict=True)]
    first, *rest = parts
    infix = [re.sub(r"^<mo\b(?![^>]*\bform=)", '<mo form="infix"', part) for part in rest]
    # The space before ‘or’ is that between two pieces.
    infix = [re.sub(r"^(<mtext\b[^>]*>)\s+", r"\1", part) for part in infix]
    return tuple(f"<math>{part}</math>" for part in (first, *infix))


def _closes_at_end(body: str) -> bool:
    """Tell whether the row that opens `body` is closed by its last tag."""
    depth = 0
    for match in _ATOM.finditer(body):
        closing, _, empty = match.groups()
        depth += -1 if closing else (0 if empty else 1)
        if depth == 0:
            return match.end() == len(body)
    return False
