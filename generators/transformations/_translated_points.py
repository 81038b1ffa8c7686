"""Translations of points without a picture: on, back, and as another point was translated."""

from __future__ import annotations

from collections.abc import Mapping

from generators._turns import by_turns
from generators.transformations._points import U, V, found_point, signed
from generators.transformations._shapes import pair
from generators.transformations._translate_mistakes import CHANGED_OVER, OPPOSITE, SHIFT_ALONE
from itembank.items.item import Draft, Step, Tier
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t
from itembank.text.in_words import plural

_ON = (
    "The point {p} is translated {m}. What are the coordinates of its image?",
    "What is the image of {p} after a translation of {m}?",
)
_BACK = (
    "After a translation of {m}, a point is at {p}. Where was it before?",
    "A translation of {m} takes A to {p}. What are the coordinates of A?",
)
_TAKES = (
    "A translation takes {a} to {b}. Where does it take {c}?",
    "{a} goes to {b} in a translation. Where does {c} go?",
)
_TAKES_BACK = "A translation takes {a} to {b}. Which point does it take to {c}?"


def _both_ways(across: int, up: int) -> bool:
    return 0 not in (across, up) and abs(across) != abs(up)


def _moved(x: int, y: int, across: int, up: int) -> bool:
    """Keep points of the first quadrant that stay in it, where each wrong way shows."""
    end = (x + across, y + up)
    if not _both_ways(across, up) or min(end) < 1 or (3 * x + y + across + 2 * up) % 10:
        return False
    ends = {end, (x - across, y - up), (x + up, y + across), (across, up)}
    return len(ends) == 4 and x != y


def _moved_from(x: int, y: int, across: int, up: int) -> bool:
    """Keep images whose point has a minus somewhere, where each wrong way shows."""
    start = (x - across, y - up)
    if not _both_ways(across, up) or (x + 2 * y + 3 * across + up) % 61:
        return False
    ends = {start, (x + across, y + up), (x - up, y - across), (across, up)}
    return len(ends) == 4 and 0 not in (x, y) and min(start) < 0 and x != y


def _taken(back: int, a: int, b: int, across: int, up: int, x: int, y: int) -> bool:
    """Keep translations told by a point and its image, for another point."""
    # Few of very many, and no two near copies of each other.
    mixed = 31 * a + 17 * b + 101 * x + 57 * y + 13 * across + 29 * up + 7 * back
    if mixed % 211 or not _both_ways(across, up):
        return False
    ends = {(x + across, y + up), (x - across, y - up), (x + up, y + across), (across, up)}
    return (
        len(ends) == 4
        and (x, y) not in ((a, b), (a + across, b + up))
        and min(a, b, x, y) < 0
        and 0 not in (a, b, x, y)
    )


def _way(across: int, up: int) -> tuple[str, dict[str, t.Node]]:
    """Return how far a point goes in a question, and the numbers in that."""
    a, u = abs(across), abs(up)
    return (
        f"{{a}} {plural(a, 'unit')} {'right' if across > 0 else 'left'} and "
        f"{{u}} {plural(u, 'unit')} {'up' if up > 0 else 'down'}",
        {"a": t.Int(a), "u": t.Int(u)},
    )


def _gone(value: t.Node, by: int) -> t.Node:
    return t.add(value, t.Int(by)) if by > 0 else t.sub(value, t.Int(-by))


def _line(letter: str, start: int, by: int, way: str) -> Step:
    return Step(
        f"{way}: {'add to' if by > 0 else 'take away from'} the {letter}-coordinate.",
        t.equals(_gone(t.num(start), by), t.num(start + by)),
    )


def _lines(x: int, y: int, across: int, up: int) -> tuple[Step, ...]:
    return (
        _line("x", x, across, "Right" if across > 0 else "Left"),
        _line("y", y, up, "Up" if up > 0 else "Down"),
    )


def _on(topic: Topic, tier: Tier, x: int, y: int, across: int, up: int) -> Draft:
    """Return where a point comes to."""
    words, numbers = _way(across, up)
    key = (x + across, y + up)
    wrong = slips(
        (OPPOSITE, pair(x - across, y - up)),
        (CHANGED_OVER, pair(x + up, y + across)),
        (SHIFT_ALONE, pair(across, up)),
    )
    return found_point(
        by_turns(_ON, x + y + up).replace("{m}", words),
        {"p": pair(x, y), **numbers},
        (t.equals(U, _gone(t.num(x), across)), t.equals(V, _gone(t.num(y), up))),
        key,
        _lines(x, y, across, up),
        wrong,
        ("told", x, y, across, up),
    )


def _back(topic: Topic, tier: Tier, x: int, y: int, across: int, up: int) -> Draft:
    """Return where a point came from."""
    words, numbers = _way(across, up)
    wrong = slips(
        (OPPOSITE, pair(x + across, y + up)),
        (CHANGED_OVER, pair(x - up, y - across)),
        (SHIFT_ALONE, pair(across, up)),
    )
    return found_point(
        by_turns(_BACK, x + y + up).replace("{m}", words),
        {"p": pair(x, y), **numbers},
        (t.equals(_gone(U, across), t.num(x)), t.equals(_gone(V, up), t.num(y))),
        (x - across, y - up),
        (Step("Go back: each way turns round."), *_lines(x, y, -across, -up)),
        wrong,
        ("told back", x, y, across, up),
    )


def _as_another(
    topic: Topic, tier: Tier, back: int, a: int, b: int, across: int, up: int, x: int, y: int
) -> Draft:
    """Return where another point goes to, or came from, in the translation of a first point."""
    c, d = a + across, b + up
    sign = -1 if back else 1
    known, other = ((U, V), (t.num(x), t.num(y))) if back else ((t.num(x), t.num(y)), (U, V))
    moves = ((a, c, known[0], other[0], x), (b, d, known[1], other[1], y))
    relations = tuple(
        t.equals(t.sub(end, _bracketed(start)), t.sub(t.num(last), signed(first)))
        for first, last, start, end, _ in moves
    )
    steps = [
        Step(f"How much {way}?", t.equals(t.sub(t.num(last), signed(first)), t.num(last - first)))
        for way, (first, last, *_) in zip(
            ("is added to the x-coordinate", "to the y-coordinate"), moves, strict=True
        )
    ]
    for n, by in enumerate((across, up)):
        value = moves[n][4]
        done = t.sub(t.num(value), signed(by)) if back else t.add(t.num(value), signed(by))
        says = f"{'Take that away from' if back else 'Add that to'} the {'xy'[n]}-coordinate."
        steps.append(Step(says, t.equals(done, t.num(value + sign * by))))
    return found_point(
        _TAKES_BACK if back else by_turns(_TAKES, a + b + x),
        {"a": pair(a, b), "b": pair(c, d), "c": pair(x, y)},
        relations,
        (x + sign * across, y + sign * up),
        steps,
        slips(
            (OPPOSITE, pair(x - sign * across, y - sign * up)),
            (CHANGED_OVER, pair(x + sign * up, y + sign * across)),
            (SHIFT_ALONE, pair(across, up)),
            key=pair(x + sign * across, y + sign * up),
        ),
        ("told like", back, a, b, across, up, x, y),
    )


def _bracketed(value: t.Node) -> t.Node:
    return t.Bracket(value) if isinstance(value, t.Neg) else value


def with_points(spaces: Mapping[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of translations with points told by their coordinates at their ends."""
    return {
        Tier.SUPPORT: spaces[Tier.SUPPORT].also(
            _on, _moved, x=range(1, 9), y=range(1, 9), across=range(-7, 8), up=range(-7, 8)
        ),
        Tier.CORE: spaces[Tier.CORE].also(
            _back, _moved_from, x=range(-7, 8), y=range(-7, 8), across=range(-8, 9), up=range(-8, 9)
        ),
        Tier.CHALLENGE: spaces[Tier.CHALLENGE].also(
            _as_another,
            _taken,
            back=range(2),
            a=range(-3, 4),
            b=range(-3, 4),
            across=(-5, -3, -2, 2, 3, 4),
            up=(-4, -3, -2, 1, 3, 5),
            x=range(-3, 4),
            y=range(-3, 4),
        ),
    }
