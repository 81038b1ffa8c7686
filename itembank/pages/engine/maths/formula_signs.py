"""How the signs of a formula are set: the room about them, which of them grow, italic letters.

The room is that of the operator dictionary of MathML 3 (W3C, appendix C), but for what the
elements say of themselves.
"""

from __future__ import annotations

from xml.etree.ElementTree import Element

_THINNEST, VERY_THIN, THIN, _MEDIUM, _THICK, _VERY_THICK = (n / 18 for n in (1, 2, 3, 4, 5, 6))
"""Spaces, in ems (MathML 3, 2.1.5.2: the named spaces of mathematics)."""

_SPACES: dict[str, tuple[float, float]] = {
    **dict.fromkeys("=<>≤≥≠≈≡∈∝→⇒⇔:", (_THICK, _THICK)),
    **dict.fromkeys("+−±", (_MEDIUM, _MEDIUM)),
    **dict.fromkeys("×÷", (VERY_THIN, VERY_THIN)),
    "·": (THIN, THIN),
    ",": (0.0, _VERY_THICK),
    ";": (0.0, _THICK),
}
"""Room before and after a sign between two things, in ems."""
_BEFORE_ONE: dict[str, tuple[float, float]] = dict.fromkeys("+−±", (0.0, _THINNEST))
"""The same of a sign that belongs to what follows it."""
_AFTER_ONE: dict[str, tuple[float, float]] = dict.fromkeys(",;", (0.0, 0.0))
"""The same of a sign that ends a row."""
GROWING = frozenset("()[]{}|‖⌊⌋⌈⌉⟨⟩")
OPENING = frozenset("([{⟨⌊⌈")

_ITALIC_LATIN = {"A": 0x1D434, "a": 0x1D44E}
_ITALIC_GREEK = 0x1D6FC
_PLANCK = "ℎ"  # where the italic h would be in its row


def italic(letter: str) -> str:
    """Return a letter's own italic in mathematics (Unicode Standard, 22.2); others as they are.

    >>> [f"U+{ord(italic(letter)):X}" for letter in "xhZ7"]
    ['U+1D465', 'U+210E', 'U+1D44D', 'U+37']
    """
    if letter == "h":
        return _PLANCK
    if "A" <= letter <= "Z" or "a" <= letter <= "z":
        first = "A" if letter <= "Z" else "a"
        return chr(_ITALIC_LATIN[first] + ord(letter) - ord(first))
    if "α" <= letter <= "ω":
        return chr(_ITALIC_GREEK + ord(letter) - ord("α"))
    return letter


def is_kind(element: Element, kind: str) -> bool:
    """Tell whether an element is of a kind, whatever namespace it is in."""
    tag = element.tag
    return tag == kind or tag.endswith("}" + kind)


def text_of(element: Element) -> str:
    """Return the signs of an element, without the white space about them."""
    return (element.text or "").strip()


def form_of(element: Element, at: int, count: int) -> str:
    """Return what a sign is by its place in its row (MathML Core, 3.2.4.2)."""
    if count == 1:
        return "none"
    return "prefix" if at == 0 else "postfix" if at == count - 1 else "infix"


def spaces(element: Element, sign: str, form: str) -> tuple[float, float]:
    """Return the room before and after a sign, in ems: as it says itself, else as is usual."""
    usual = (0.0, 0.0) if form == "none" else _SPACES.get(sign, (0.0, 0.0))
    if form == "prefix":
        usual = _BEFORE_ONE.get(sign, usual)
    elif form == "postfix":
        usual = _AFTER_ONE.get(sign, usual)
    before, after = element.get("lspace"), element.get("rspace")
    return (
        usual[0] if before is None else ems(before),
        usual[1] if after is None else ems(after),
    )


def ems(length: str) -> float:
    """Return a length in ems.

    Raises:
        ValueError: it is not a number of ems.
    """
    if not length.endswith("em"):
        raise ValueError(f"a length in a formula is said in em, not as {length}")
    return float(length[:-2])
