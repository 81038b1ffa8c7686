"""The choice that a typed answer names, as *B* or *B because it costs less* do Pack B."""

from __future__ import annotations

import re
from collections.abc import Sequence

from itembank.text.late_pattern import late

_DENIES = late(
    r"\b(?:not|isn['’]?t|never|no|neither|nor|except|opposite|(?:anything|all|everything|any) but"
    r"|other than|apart from|besides|instead of|rather than)\b"
)
_WORDS_ALONE = late(r"[a-z]+")
_LETTERS_ONLY = late(r"[^a-z]+")
_SORT_FIRST = late(r"^(?:the )?(?:line|side|length|angle) (?=[a-z]{2,3}$)")
_ENDS = late(r"[A-Z]{2,3}")
_LETTER_FIRST = late(
    r"([A-Z])(?:(?P<why>[ ,]+(?:because|cause|cos|as|since)\b)"
    r"|(?= ?[,.;:(=]| ?-(?!\d)|[ ,]+(?:is|it|with|at|£|\d)(?! ?(?:wrong|incorrect)\b)))"
)

SIGN_BESIDE = "A sign stands beside the choice: give the name of the choice alone."

_DOTTED = late(r"(?:[A-Za-z]\. ?)+[A-Za-z]\.?")
_CLOCK_LABEL = late(r"(\d{1,2}):(\d\d)")
_CLOCK_TYPED = late(
    r"(?:at )?(?:(\d\d?)(\d\d)|(\d{1,2})[:.](\d\d)(?::00)?|(\d{1,2})(?= ?(?:[ap]\.?m|o)|$))"
    r"(?: ?([ap])\.?m\.?)?(?: ?o['’]? ?clock)?"
)
_AND_ANOTHER = late(r" ?(?:,|/|&|\+|\band\b|\bor\b) ?([a-z])(?![a-z'’])")
_IN_FULL = late(
    r"\b(mon|tue|wed|thu|fri|sat|sun)(?:day|sday|nesday|rsday|urday|s|rs)\b"
    r"|\b(jan|feb|mar|apr|jun|jul|aug|sep|oct|nov|dec)"
    r"(?:uary|ruary|ch|il|e|y|ust|t|tember|ober|ember)\b",
    re.IGNORECASE,
)
"""A day or a month, where a chart has no more room than for three letters of it."""


_SIDES = {
    "triangle": "triangular",
    "pentagon": "pentagonal",
    "hexagon": "hexagonal",
    "heptagon": "heptagonal",
    "octagon": "octagonal",
}
_CALLED = {
    "square pyramid": "square-based pyramid",
    "rectangular prism": "cuboid",
    "triangular pyramid": "tetrahedron",
    "triangle based pyramid": "tetrahedron",
    "triangular based pyramid": "tetrahedron",
    "evens": "even chance",
    "fifty fifty": "even chance",
    **{f"{noun} prism": f"{adjective} prism" for noun, adjective in _SIDES.items()},
    **{
        f"{sides} pyramid": f"{adjective} pyramid"
        for noun, adjective in _SIDES.items()
        for sides in (noun, f"{noun} based", f"{adjective} based")
        if noun != "triangle"
    },
}
"""What a choice is called as well, in small letters and without hyphens, and how it is printed."""


def named(plain: str, labels: Sequence[str]) -> str:
    """Return the choice that what was typed names; or what was typed, where it names none.

    >>> labels = ("Pack A", "Pack B")
    >>> [named(text, labels) for text in ("b", "pack a", "A because it is 56p", "A or B")]
    ['Pack B', 'Pack A', 'Pack A', 'A or B']
    >>> days, angles = ("Mon", "Tue", "Wed"), ("acute-angled", "right-angled")
    >>> named("Monday", days), named("right angle", angles), named("Tuesday or Wed", days)
    ('Mon', 'right-angled', 'Tue or Wed')
    >>> named("breaststroke", ("breast", "back")), named("Mon Tue", days)
    ('breast', 'Mon Tue')
    >>> named("on Tuesday", ("Mon", "Tue")), named("Tuesday", ("Monday", "Tuesday"))
    ('Tue', 'Tuesday')
    >>> named("Right angled", ("right-angled", "obtuse-angled"))
    'right-angled'
    >>> named("a square pyramid", ("cuboid", "square-based pyramid", "tetrahedron"))
    'square-based pyramid'
    >>> [named(text, ("08:00", "14:00")) for text in ("8:00", "8 am", "0800", "2 pm", "8 pm")]
    ['08:00', '08:00', '08:00', '14:00', '8 pm']
    >>> [named(text, ("08:00", "14:00")) for text in ("8", "800", "14")]
    ['08:00', '08:00', '14:00']
    >>> named("A.S.A.", ("SSS", "SAS", "ASA", "none"))
    'ASA'
    >>> [named(text, ("Pack A", "Pack B")) for text in ("Pack A or B", "pack A, it costs less")]
    ['Pack A or B', 'Pack A']
    >>> named("XR", ("RH", "RX")), named("line from", ("line from a point", "line at a point"))
    ('RX', 'line from a point')
    """
    if clock := _by_the_clock(plain.casefold(), labels):
        return clock
    if _DOTTED.fullmatch(plain):
        plain = plain.replace(".", "").replace(" ", "")
    plain = _hyphened(_as_printed(_as_on_chart(plain, labels), labels), labels)
    folded = plain.casefold()
    last = [label for label in labels if f" {label.casefold()}".endswith(f" {folded}")]
    # The end of a label is enough, B for Pack B, unless two labels end so.
    if len(last) == 1:
        return last[0]
    if folded in map(str.casefold, labels):
        return plain
    if begun := _begun_alike(folded, labels) or _from_the_other_end(folded, labels):
        return begun
    # One choice named in a sentence is the answer; two may be compared, and nobody can tell.
    inside = [label for label in labels if _stands_in(label.casefold(), folded)]
    if len(inside) == 1 and not (_DENIES.search(folded) or _and_another(folded, inside[0], labels)):
        return inside[0]
    return _said_first(plain, labels) or plain


def _by_the_clock(folded: str, labels: Sequence[str]) -> str:
    """Return the time of day that a text tells, as it is printed among choices that are times."""
    times = {}
    for label in labels:
        found = _CLOCK_LABEL.fullmatch(label)
        if found is None:
            return ""
        times[int(found[1]) * 60 + int(found[2])] = label
    typed = _CLOCK_TYPED.fullmatch(folded)
    if typed is None:
        return ""
    hour = int(typed[1] or typed[3] or typed[5])
    if typed[6] and 1 <= hour <= 12:
        hour = hour % 12 + (12 if typed[6] == "p" else 0)
    elif typed[6] and hour >= (13 if typed[6] == "a" else 24):
        return ""
    return times.get(hour * 60 + int(typed[2] or typed[4] or 0), "")


def _as_on_chart(plain: str, labels: Sequence[str]) -> str:
    """Return a text with each day and month as short as the choice that it names."""
    short = {label.casefold(): label for label in labels}
    return _IN_FULL.sub(lambda found: short.get((found[1] or found[2]).casefold(), found[0]), plain)


_DASHES = str.maketrans(dict.fromkeys("-−–‐", " "))


def _as_printed(plain: str, labels: Sequence[str]) -> str:
    """Return a text with a choice by its printed name, where it has a usual other one."""
    printed = [label.casefold() for label in labels]
    bare = f" {' '.join(plain.translate(_DASHES).lower().split())} "
    for called, label in _CALLED.items():
        if label in printed and called not in printed and f" {called} " in bare:
            return bare.replace(f" {called} ", f" {label} ").strip()
    return plain


def _hyphened(plain: str, labels: Sequence[str]) -> str:
    """Return a text with choices as they are written that have a hyphen: few people type it."""
    for label in labels:
        bare = plain.translate(_DASHES).lower()
        at = bare.find(label.translate(_DASHES).lower())
        if "-" in label and at >= 0 and len(bare) == len(plain):
            plain = plain[:at] + label + plain[at + len(label) :]
    return plain


def _begun_alike(folded: str, labels: Sequence[str]) -> str:
    """Return the one choice that a text begins, or that begins it: *acute*, *Monday* for Mon."""
    close, count = _LETTERS_ONLY.sub("", folded), len(_WORDS_ALONE.findall(folded))
    if len(close) < 3 or _WORDS_ALONE.sub("", folded).strip(" -"):
        return ""
    found = [
        label
        for label in labels
        if len(own := _LETTERS_ONLY.sub("", label.casefold())) > 2
        and (own.startswith(close) or (count == 1 and close.startswith(own)))
    ]
    return found[0] if len(found) == 1 else ""


def _from_the_other_end(folded: str, labels: Sequence[str]) -> str:
    """Return the line or angle that is named from its other end: XR is RX, and CBA is ABC."""
    turned = _SORT_FIRST.sub("", folded)[::-1].upper()
    named_by_ends = all(_ENDS.fullmatch(label) for label in labels)
    return turned if named_by_ends and turned in labels else ""


def _stands_in(label: str, text: str) -> bool:
    """Tell whether a choice stands in a text, by its last two words at least: *card A*."""
    short = " ".join(label.split()[-2:])
    # Pack A is wrong names the choice that it is not.
    denied = r"(?! (?:is |was )?(?:wrong|incorrect|false)\b)"
    return re.search(rf"\b{re.escape(short)}(?!\w){denied}", text) is not None


def sign_beside(plain: str, labels: Sequence[str]) -> bool:
    """Tell whether a sign of arithmetic stands close beside a choice, so that it names none.

    >>> [sign_beside(text, ("P", "Q")) for text in ("-Q", "√Q", "1/Q", "Q + 1", "Q-2", "2 × Q")]
    [True, True, True, True, True, True]
    >>> [sign_beside(text, ("P", "Q")) for text in ("Q", "- Q", "Q - it is", "->Q", "P-Q", "P + Q")]
    [False, False, False, False, False, False]
    """
    folded = plain.casefold()
    short = {" ".join(label.casefold().split()[-2:]) for label in labels}
    # A alone stands for Pack A.
    ends = map(re.escape, sorted(short | {end.split()[-1] for end in short if end[-2:-1] == " "}))
    return any(
        re.search(
            rf"(?<![a-z])[-−–√/×*÷^~¬]+{end}(?!\w)|[√×*÷^]+ ?{end}(?!\w)"
            rf"|(?<!\w){end} ?[+×*÷^/√] ?\d|(?<!\w){end}[-−–]\d|(?<!\w){end} ?[-−–] ?[\d.]+$",
            folded,
        )
        for end in ends
        if not any(char.isdigit() for char in end)
    )


def _and_another(folded: str, label: str, labels: Sequence[str]) -> bool:
    """Tell whether a second choice is named by its letter alone: *Pack A and B*."""
    short = " ".join(label.casefold().split()[-2:])
    ends = {rival.casefold().split()[-1] for rival in labels if rival != label}
    found = _AND_ANOTHER.match(folded[folded.find(short) + len(short) :])
    return found is not None and found[1] in ends


def _said_first(plain: str, labels: Sequence[str]) -> str:
    """Return the choice whose letter a sentence begins with, as *A because one costs 56p* does.

    But for a reason no other choice's letter may stand in it, and the letter is no article.
    """
    ends = {label.split()[-1]: label for label in labels if len(label.split()[-1]) == 1}
    found = _LETTER_FIRST.match(plain)
    if not found or found[1] not in ends or _DENIES.search(plain.casefold()):
        return ""
    others = set(re.findall(r"(?<![\w'’])[A-Z](?![\w'’])", plain[found.end() :])) & set(ends)
    return ends[found[1]] if found["why"] or not others else ""
