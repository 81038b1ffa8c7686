"""Like terms of shapes and stories: a perimeter, what is to be added, a third side."""

from __future__ import annotations

from generators._turns import by_turns
from generators.algebra._collecting_mistakes import (
    ADDS_ALL,
    FIRST_ONLY,
    HALF_ROUND,
    LONE_LETTER,
    NEGATIVE_LOST,
    SIGNS_KEPT,
    UNLIKE,
)
from generators.algebra._rewritten import rewritten
from generators.algebra._writing import (
    Term,
    asking,
    bracket,
    collected,
    expression,
    less,
    letter,
    shown,
    term,
    trying,
    two_letters,
)
from itembank.items.item import Draft, Step, prompt
from itembank.notation import tree as t

_STORIES = (
    ("A rectangular flower bed is {p} metres long and {q} metres wide.", "metres"),
    ("A rectangular swimming pool is {p} metres long and {q} metres wide.", "metres"),
    ("A rectangular bus park is {p} metres long and {q} metres wide.", "metres"),
    ("A rectangular tray is {p} cm long and {q} cm wide.", "centimetres"),
    ("A rectangular library card is {p} mm long and {q} mm wide.", "millimetres"),
)


def in_groups(terms: tuple[Term, ...]) -> tuple[Term, ...]:
    """Return like terms next to each other; the letters of a product in the order of the first."""
    kinds = dict.fromkeys("".join(sorted(letters)) for _, letters in terms)
    return tuple(
        (value, kind)
        for kind in kinds
        for value, letters in terms
        if "".join(sorted(letters)) == kind
    )


def perimeter(a: int, b: int, c: int, d: int, twin: tuple[object, ...]) -> Draft:
    """Return the question for the perimeter of a shape whose sides are expressions."""
    x = letter(a, b, c, d)
    long, wide = ((a, x), (b, "")), ((c, x), (-d, ""))
    story, unit = by_turns(_STORIES, a + b + c + d)
    total = (*long, *wide, *long, *wide)
    asked = t.add(*map(t.Bracket, (expression(*side) for side in (long, wide, long, wide))))
    key = expression(*collected(total))
    open_ = expression(*total)
    text = story + f" Write an expression, in {unit}, for its perimeter in its simplest form."
    grouped = expression(*in_groups(total))
    return rewritten(
        "simplify",
        prompt(text, p=bracket(*long), q=bracket(*wide)),
        asked,
        key,
        (
            Step("Add all four sides.", open_),
            Step("Write like terms next to each other.", t.equals(open_, grouped)),
            Step("Collect like terms.", t.equals(grouped, key)),
        ),
        [
            (HALF_ROUND, expression(*collected((*long, *wide)))),
            (
                asking(NEGATIVE_LOST, f"Which sign stands in front of {d}?"),
                expression((2 * (a + c), x), (2 * (b + d), "")),
            ),
            (trying(UNLIKE, x), term(2 * (a + b + c - d), x)),
        ],
        twin,
    )


def to_add(a: int, b: int, c: int, d: int, twin: tuple[object, ...]) -> Draft:
    """Return the question which expression makes one expression into another."""
    x, y = two_letters(a, b, c, d)
    given, made = ((a, x), (-b, y)), ((c, x), (d, y))
    asked = less(expression(*made), bracket(*given))
    open_ = expression(*made, (-a, x), (b, y))
    key = expression((c - a, x), (d + b, y))
    return rewritten(
        "simplify",
        prompt(
            "Which expression do you add to {g} to get {m}? Give your answer in its simplest form.",
            g=expression(*given),
            m=expression(*made),
        ),
        asked,
        key,
        (
            Step("Subtract the expression that is given from the total.", asked),
            Step("Subtract each of its terms.", t.equals(asked, open_)),
            Step("Collect like terms.", t.equals(open_, key)),
        ),
        [
            (
                asking(SIGNS_KEPT, f"How far is it from −{b} to {d} on a number line?"),
                expression((c - a, x), (d - b, y)),
            ),
            (ADDS_ALL, expression((a + c, x), (d - b, y))),
            (FIRST_ONLY, expression((c - a, x), (d, y))),
        ],
        twin,
    )


_SIDES = (
    "The perimeter of a triangular flower bed is {p} metres. Two of its sides are {q} metres and "
    "{r} metres long. Write an expression, in metres, for the third side in its simplest form.",
    "Three pieces of rope are {p} metres long altogether. Two of the pieces are {q} metres and {r} "
    "metres long. Write an expression, in metres, for the third piece in its simplest form.",
    "Three classes have {p} pupils altogether. Two of the classes have {q} pupils and {r} pupils. "
    "Write an expression for the number in the third class in its simplest form.",
    "A bus route has three parts. It is {p} km long altogether. Two parts are {q} km and {r} km "
    "long. Write an expression, in kilometres, for the third part in its simplest form.",
)


def third_side(a: int, b: int, c: int, d: int, twin: tuple[object, ...]) -> Draft:
    """Return the question for the third part of a whole of which two are told."""
    x = letter(a, b, c, d)
    whole, near, far = ((a, x), (b, "")), ((c, x), (-d, "")), ((1, x), (d + 2, ""))
    asked = t.sub(bracket(*whole), bracket(*near), bracket(*far))
    first = expression((c + 1, x), (2, ""))
    rest = less(expression(*whole), t.Bracket(first))
    key = expression(*collected(((a - c - 1, x), (b - 2, ""))))
    return rewritten(
        "simplify",
        prompt(
            by_turns(_SIDES, a + b + c + d),
            p=bracket(*whole),
            q=bracket(*near),
            r=bracket(*far),
        ),
        asked,
        key,
        (
            Step(
                "Add the two parts that are given.",
                t.equals(expression(*near, *far), first),
            ),
            Step("Subtract them from the whole.", t.equals(rest, key)),
        ),
        [
            (
                asking(SIGNS_KEPT, f"You take away {shown(first)}. What happens to the 2?"),
                expression((a - c - 1, x), (b + 2, "")),
            ),
            (LONE_LETTER, expression((a - c, x), (b - 2, ""))),
            (ADDS_ALL, expression((a + c + 1, x), (b + 2, ""))),
        ],
        twin,
    )
