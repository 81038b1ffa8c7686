"""Questions about angles in words: what is left of a sum, a letter in it, and equal angles."""

from __future__ import annotations

from collections.abc import Sequence

from generators.geometry._angles import deg, degrees_of, solving
from itembank.items.item import Draft, Find
from itembank.items.kinds.brief import told
from itembank.items.wrong_answers import Wrong
from itembank.notation import tree as t

X = t.Sym("x")


def rest_of(
    text: str,
    why: str,
    all_: int,
    known: Sequence[int],
    wrongs: Sequence[Wrong],
    shares: int = 1,
) -> Draft:
    """Return the question for what is left of a whole, shared by so many equal angles."""
    parts = [deg(size) for size in known]
    full, added = deg(all_), sum(known)
    left = all_ - added
    key = deg(left // shares)
    rest = t.sub(full, *parts)
    steps: list[tuple[str, t.Node]] = []
    if len(parts) > 1:
        steps.append(("Add the angles that you know.", t.equals(t.add(*parts), deg(added))))
    steps.append((why, t.equals(t.sub(full, deg(added)), deg(left))))
    if shares > 1:
        steps.append((f"Divide by {shares}.", t.equals(t.divide(deg(left), t.Int(shares)), key)))
    return told(
        text,
        t.divide(t.Bracket(rest), t.Int(shares)) if shares > 1 else rest,
        key,
        "quantity",
        steps,
        wrongs,
        (text.partition("{")[0], all_, *sorted(known), shares),
        (all_, *((shares,) if shares > 1 else ())),
        **dict(zip("abcd", parts, strict=False)),
    )


def valued(
    text: str,
    why: str,
    parts: Sequence[tuple[int, int]],
    x: int,
    wrongs: Sequence[Wrong],
    all_: int = 180,
) -> Draft:
    """Return the question for the letter in angles ax + b that make up a whole."""
    shown = [degrees_of(a, X, b) if a else deg(b) for a, b in parts]
    return told(
        text,
        Find(X, (t.equals(t.add(*shown), deg(all_)),)),
        t.equals(X, t.Int(x)),
        "solution",
        [(step.say, step.maths) for step in solving(why, X, parts, all_)],
        wrongs,
        (text.partition("{")[0], x, *sorted(parts)),
        (all_,),
        x=X,
        **dict(zip("abcd", shown, strict=False)),
    )


def keep_two(a: int, b: int) -> bool:
    return a < b and a + b < 165 and a + b not in (90, 180 - a) and 2 * a + b != 180
