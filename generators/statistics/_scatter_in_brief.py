"""Short questions about lines of best fit that nobody has to see: values they give."""

from __future__ import annotations

from fractions import Fraction

from itembank.items.item import Draft, Find, Misconception, Tier
from itembank.items.kinds.brief import Brief, told, whole
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

START_LEFT_OUT = Misconception(
    "statistics.fit-start-left-out",
    "multiplies, and leaves out the number that is added",
    "What does the equation do after multiplying?",
)
ADDS_ALL = Misconception(
    "statistics.fit-adds-all",
    "adds the numbers where the equation multiplies",
    "What do a number and a letter side by side mean?",
)
START_KEPT = Misconception(
    "statistics.fit-start-kept",
    "divides before taking away what was added",
    "Which comes last in the equation? Undo that first.",
)
RISE_ONLY = Misconception(
    "statistics.fit-rise-only",
    "finds how far the line rises and forgets where it starts",
    "How high is the line at the first point?",
)
HALF_WAY = Misconception(
    "statistics.fit-half-way",
    "takes the value half way between the two",
    "Is the point half way between the other two?",
)
ONE_ACROSS = Misconception(
    "statistics.fit-one-across",
    "adds the rise for one step across",
    "How many steps across is it to the point?",
)
MISTAKES = (START_LEFT_OUT, ADDS_ALL, START_KEPT, RISE_ONLY, HALF_WAY, ONE_ACROSS)

_X, _Y = t.Sym("x"), t.Sym("y")


def _line(slope: int, start: int) -> t.Relation:
    return t.equals(_Y, t.add(t.juxt(t.Int(slope), _X), t.Int(start)))


def _height(topic: Topic, tier: Tier, slope: int, start: int, x: int) -> Draft:
    """Return the question what a line of best fit gives for a value of x."""
    given, key = t.equals(_X, t.Int(x)), t.equals(_Y, t.Int(slope * x + start))
    product = t.times(t.Int(slope), t.Int(x))
    return told(
        "A line of best fit is {line}. What value of {y} does it give for {given}?",
        Find(_Y, (_line(slope, start), given)),
        key,
        "solution",
        [
            ("Put the value in.", t.equals(_Y, t.add(product, t.Int(start)))),
            ("Work it out.", key),
        ],
        [(START_LEFT_OUT, slope * x), (ADDS_ALL, slope + x + start)],
        ("height", slope, start, x),
        line=_line(slope, start),
        y=_Y,
        given=given,
    )


def _back(topic: Topic, tier: Tier, slope: int, start: int, x: int) -> Draft:
    """Return the question for which x a line of best fit gives a value."""
    y = slope * x + start
    given, key = t.equals(_Y, t.Int(y)), t.equals(_X, t.Int(x))
    return told(
        "A line of best fit is {line}. For what value of {x} does it give {given}?",
        Find(_X, (_line(slope, start), given)),
        key,
        "solution",
        [
            (
                "Put the value in.",
                t.equals(t.Int(y), t.add(t.juxt(t.Int(slope), _X), t.Int(start))),
            ),
            (f"Subtract {start}.", t.equals(t.Int(slope * x), t.juxt(t.Int(slope), _X))),
            (f"Divide by {slope}.", key),
        ],
        [
            (START_LEFT_OUT, slope * x),
            (START_KEPT, whole(Fraction(y, slope))),
            (ADDS_ALL, y - slope - start),
        ],
        ("back", slope, start, x),
        line=_line(slope, start),
        x=_X,
        given=given,
    )


def _between(
    topic: Topic, tier: Tier, slope: int, low: int, first: int, width: int, along: int
) -> Draft:
    """Return the question for the height of a line at a place, from two of its points."""
    high, last, at = low + slope * width, first + width, first + along
    key = t.Int(low + slope * along)
    a, b = t.pair(t.Int(first), t.Int(low)), t.pair(t.Int(last), t.Int(high))
    each = t.Int(slope)
    rise, run = t.sub(t.Int(high), t.Int(low)), t.sub(t.Int(last), t.Int(first))
    across = t.sub(t.Int(at), t.Int(first))
    return told(
        "A line of best fit goes through {a} and {b}. What is {y} when {given}?",
        t.add(t.Int(low), t.times(t.Frac(rise, run), t.Bracket(across))),
        key,
        "integer",
        [
            ("Find how far it rises.", t.equals(rise, t.Int(slope * width))),
            (
                f"It is {width} steps across: divide.",
                t.equals(t.divide(t.Int(slope * width), t.Int(width)), each),
            ),
            (
                f"Go {along} steps across from the first point.",
                t.equals(t.add(t.Int(low), t.times(t.Int(along), each)), key),
            ),
        ],
        [
            (RISE_ONLY, slope * along),
            (HALF_WAY, whole(Fraction(low + high, 2))),
            (ONE_ACROSS, low + slope),
        ],
        ("between", slope, low, first, width, along),
        a=a,
        b=b,
        y=_Y,
        given=t.equals(_X, t.Int(at)),
    )


def _place(
    topic: Topic, tier: Tier, slope: int, low: int, first: int, width: int, along: int
) -> Draft:
    """Return the question where a line has a height, from two of its points."""
    high, last, height = low + slope * width, first + width, low + slope * along
    key = t.Int(first + along)
    a, b = t.pair(t.Int(first), t.Int(low)), t.pair(t.Int(last), t.Int(high))
    rise, run = t.sub(t.Int(high), t.Int(low)), t.sub(t.Int(last), t.Int(first))
    more = t.sub(t.Int(height), t.Int(low))
    return told(
        "A line of best fit goes through {a} and {b}. For what {x} is {given}?",
        Find(
            _X,
            (
                t.equals(
                    t.add(
                        t.Int(low), t.times(t.Frac(rise, run), t.Bracket(t.sub(_X, t.Int(first))))
                    ),
                    t.Int(height),
                ),
            ),
        ),
        key,
        "integer",
        [
            ("Find how far it rises.", t.equals(rise, t.Int(slope * width))),
            (
                f"It is {width} steps across: divide.",
                t.equals(t.divide(t.Int(slope * width), t.Int(width)), t.Int(slope)),
            ),
            ("Find how far it is to rise.", t.equals(more, t.Int(slope * along))),
            (
                "Divide: so many steps across.",
                t.equals(t.divide(t.Int(slope * along), t.Int(slope)), t.Int(along)),
            ),
            (
                "Count from the first point.",
                t.equals(t.add(t.Int(first), t.Int(along)), key),
            ),
        ],
        [(RISE_ONLY, along), (HALF_WAY, whole(Fraction(first + last, 2))), (ONE_ACROSS, first + 1)],
        ("place", slope, low, first, width, along),
        a=a,
        b=b,
        x=_X,
        given=t.equals(_Y, t.Int(height)),
    )


def _keep_between(slope: int, low: int, first: int, width: int, along: int) -> bool:
    return (
        1 < along != width
        and 2 * along != width
        and first + 1 != along
        and slope not in (width, along)
        and low + slope != slope * along
    )


def _keep_back(slope: int, start: int, x: int) -> bool:
    return slope != x and start > slope and start % slope == 0


BRIEF = {
    Tier.SUPPORT: (
        Brief(
            _height,
            lambda slope, start, x: (
                x % slope != 0 != start % slope and slope * x != slope + x + start
            ),
            {"slope": range(2, 7), "start": (8, 10, 15, 20, 25, 30, 35), "x": range(4, 15)},
        ),
    ),
    Tier.CORE: (
        Brief(
            _back,
            _keep_back,
            {"slope": range(2, 7), "start": range(6, 37, 3), "x": (4, 5, 7, 9, 12)},
        ),
        Brief(
            _between,
            _keep_between,
            {
                "slope": (2, 3, 4, 6),
                "low": (8, 15, 30),
                "first": (1, 3),
                "width": (4, 5),
                "along": (3, 6, 7),
            },
        ),
    ),
    Tier.CHALLENGE: (
        Brief(
            _place,
            _keep_between,
            {
                "slope": range(2, 7),
                "low": (7, 12, 20),
                "first": (1, 2),
                "width": (4, 5, 10),
                "along": (2, 3, 6, 8),
            },
        ),
    ),
}
"""The short questions of each tier."""
