"""One bracket in a story: trays, areas, and what is left of an area."""

from __future__ import annotations

from generators._turns import by_turns
from generators.algebra._one_bracket_mistakes import (
    ADDS,
    FIRST_ONLY,
    JOINS,
    PERIMETER,
    SIGN,
    WHOLE_AREA,
)
from generators.algebra._rewritten import rewritten
from generators.algebra._writing import (
    Term,
    asking,
    bracket,
    expression,
    letter,
    multiplied,
    shown,
    term,
    trying,
)
from itembank.items.item import Draft, Misconception, Step, prompt
from itembank.notation import tree as t

_PLOTS = (
    "A rectangular flower bed is {a} metres wide and {p} metres long.",
    "A rectangular hall is {a} metres wide and {p} metres long.",
    "A rectangular car park is {a} metres wide and {p} metres long.",
    "A rectangular swimming pool is {a} metres wide and {p} metres long.",
    "A rectangular field is {a} metres wide and {p} metres long.",
)
_TRAYS = (
    "Each tray holds {p} seedlings. Write an expression without brackets for the number of "
    "seedlings in {a} trays.",
    "Each bus has {p} seats. Write an expression without brackets for the number of seats in {a} "
    "buses.",
    "Each box holds {p} pencils. Write an expression without brackets for the number of pencils in "
    "{a} boxes.",
    "Each shelf holds {p} books. Write an expression without brackets for the number of books on "
    "{a} shelves.",
    "Each row has {p} chairs. Write an expression without brackets for the number of chairs in {a} "
    "rows.",
    "Each lane has {p} swimmers. Write an expression without brackets for the number of swimmers "
    "in {a} lanes.",
    "Each pack holds {p} screws. Write an expression without brackets for the number of screws in "
    "{a} packs.",
)
_HOLES = (
    ("garden", "vegetable patch"),
    ("yard", "bike shed"),
    ("wall", "notice board"),
    ("hall", "stage"),
)


def asking_for_lots(a: int, what: Term) -> Misconception:
    """Return FIRST_ONLY with the question how much so many lots of a term are."""
    name = shown(term(*what))
    return asking(FIRST_ONLY, f"There are {a} lots of the bracket. How many lots of {name}?")


def trays(twin: tuple[object, ...], a: int, _: int, c: int) -> Draft:
    """Return the question how many there are in several trays of ax + b."""
    x = letter(a, c)
    inside: tuple[Term, ...] = ((1, x), (c, ""))
    asked = t.Juxt((t.Int(a), bracket(*inside)))
    key = expression(*multiplied([(a, "")], inside))
    story = by_turns(_TRAYS, a + c)
    return rewritten(
        "expand",
        prompt(story, a=t.Int(a), p=bracket(*inside)),
        asked,
        key,
        (
            Step("Multiply the number in each by how many there are.", asked),
            Step(f"Multiply each term in the bracket by {a}.", t.equals(asked, key)),
        ),
        [
            (asking_for_lots(a, (c, "")), expression((a, x), (c, ""))),
            (ADDS, expression((1, x), (a + c, ""))),
        ],
        twin,
    )


def area_of_plot(twin: tuple[object, ...], a: int, b: int, c: int, _: int) -> Draft:
    """Return the question for the area of a rectangle with a side of two terms."""
    x = letter(a, b, c)
    inside: tuple[Term, ...] = ((b, x), (c, ""))
    asked = t.Juxt((t.Int(a), bracket(*inside)))
    key = expression((a * b, x), (a * c, ""))
    story = by_turns(_PLOTS, a + b + c)
    return rewritten(
        "expand",
        prompt(
            story + " Write an expression, in square metres, for its area without brackets.",
            a=t.Int(a),
            p=bracket(*inside),
        ),
        asked,
        key,
        (
            Step("The area is the width times the length.", asked),
            Step(f"Multiply each term in the bracket by {a}.", t.equals(asked, key)),
        ),
        [
            (asking_for_lots(a, (c, "")), expression((a * b, x), (c, ""))),
            (PERIMETER, expression((b, x), (a + c, ""))),
            (trying(JOINS, x), term(a * b + a * c, x)),
        ],
        twin,
    )


def rest_of_area(twin: tuple[object, ...], a: int, b: int, c: int, d: int) -> Draft:
    """Return the question for what is left of an area with a smaller one in it."""
    x = letter(a, b, c, d)
    whole, hole = ((b, x), (d, "")), ((1, x), (1, ""))
    place, thing = by_turns(_HOLES, a + b + c + d)
    first = t.Juxt((t.Int(a), bracket(*whole)))
    second = t.Juxt((t.Int(c), bracket(*hole))) if c > 1 else bracket(*hole)
    asked = t.sub(first, second)
    open_ = expression((a * b, x), (a * d, ""), (-c, x), (-c, ""))
    key = expression((a * b - c, x), (a * d - c, ""))
    return rewritten(
        "expand",
        prompt(
            f"A rectangular {place} is {{a}} metres wide and {{p}} metres long. A {thing} that is "
            f"{{c}} {'metre' if c == 1 else 'metres'} wide and {{q}} metres long takes up part of "
            "it. Write an expression, in square metres, for the area of the rest without brackets.",
            a=t.Int(a),
            p=bracket(*whole),
            c=t.Int(c),
            q=bracket(*hole),
        ),
        asked,
        key,
        (
            Step("Take the smaller area from the larger one.", asked),
            Step("Expand each bracket.", t.equals(asked, open_)),
            Step("Collect like terms.", t.equals(open_, key)),
        ),
        [
            (
                asking(SIGN, f"You take away {shown(second)}. What happens to its last term?"),
                expression((a * b - c, x), (a * d + c, "")),
            ),
            (WHOLE_AREA, expression((a * b, x), (a * d, ""))),
        ],
        twin,
    )
