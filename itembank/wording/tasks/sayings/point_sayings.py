"""What is asked of points by their coordinates: *the midpoint of*, *the image of … after …*.

Axes are those of school: x to the right, y up; a turn is anticlockwise or as it says.
"""

from __future__ import annotations

from itembank.notation import tree as t
from itembank.notation.value import exact
from itembank.wording.tasks.sayings.arithmetic import Saying
from itembank.wording.tasks.sums.sums import Built, NotBuilt, as_part, over

Words = dict[str, str]
Point = tuple[t.Node, t.Node]


def _point(node: t.Node) -> Point:
    match node:
        case t.Listing((x, y), True) if not (t.symbols(x) or t.symbols(y)):
            return as_part(x), as_part(y)
    raise NotBuilt("A point is written with two coordinates, as {(2, 3)}.")


def _at(x: t.Node, y: t.Node) -> t.Node:
    return t.Listing((x, y), True)


def _less(a: t.Node, b: t.Node) -> t.Node:
    return t.Sum(a, (("-", _held(b)),))


def _held(node: t.Node) -> t.Node:
    return t.Bracket(node) if isinstance(node, t.Neg | t.Sum) else node


def _more(a: t.Node, b: t.Node) -> t.Node:
    return t.Sum(a, (("+", _held(b)),))


def _turned(node: t.Node) -> t.Node:
    """Return 0 − a: the tree of −a in which every number is printed, but for the 0."""
    return _less(t.Int(0), node)


def _middle(a: t.Node, b: t.Node) -> t.Node:
    return t.Product(t.Bracket(_more(a, b)), (("÷", t.Int(2)),))


def midpoint(first: t.Node, second: t.Node) -> Built:
    """Return the point halfway between two: the means of their coordinates."""
    (a, b), (c, d) = _point(first), _point(second)
    return _at(_middle(a, c), _middle(b, d)), (2,)


def gradient(first: t.Node, second: t.Node) -> Built:
    """Return how far a line goes up for each step to the right; a vertical line has no gradient."""
    (a, b), (c, d) = _point(first), _point(second)
    if exact(a) == exact(c):
        raise NotBuilt("A vertical line has no gradient.")
    return over(_less(d, b), _less(c, a))[0], ()


def _reflected(words: Words, *given: t.Node) -> Built:
    """Return the image in an axis, or in a line x = k, y = k, y = x or y = −x."""
    point, *mirror = given
    a, b = _point(point)
    if not mirror:
        axis = words["axis"]
    elif isinstance(mirror[0], t.Sym) and words["axes"]:
        axis = mirror[0].name
    else:
        return _in_line(a, b, mirror[0]), (0, 2)
    if axis not in ("x", "y"):
        raise NotBuilt("The axes are x and y.")
    return (_at(a, _turned(b)) if axis == "x" else _at(_turned(a), b)), (0,)


def _in_line(a: t.Node, b: t.Node, line: t.Node) -> t.Node:
    match line:
        case t.Relation(t.Sym("y"), (("=", t.Sym("x")),)):
            # A sum, since a key that is what is printed would leave nothing to work out.
            return _at(_more(t.Int(0), b), _more(t.Int(0), a))
        case t.Relation(t.Sym("y"), (("=", t.Neg(t.Sym("x"))),)):
            return _at(_turned(b), _turned(a))
        case t.Relation(t.Sym("x"), (("=", place),)) if not t.symbols(place):
            return _at(_less(_twice(place), a), b)
        case t.Relation(t.Sym("y"), (("=", place),)) if not t.symbols(place):
            return _at(a, _less(_twice(place), b))
    raise NotBuilt("A point is reflected here in an axis, in x = k, y = k, y = x or y = -x.")


def _twice(node: t.Node) -> t.Node:
    return t.Product(t.Int(2), (("×", _held(node)),))


def _rotated(words: Words, *given: t.Node) -> Built:
    """Return the image after a turn about the origin; a half turn needs no direction."""
    point, angle, *centre = given
    a, b = _point(point)
    if centre and any(map(exact, _point(centre[0]))):
        raise NotBuilt("A point is turned here about the origin only.")
    match angle:
        case t.Quantity(t.Int(180), "°"):
            return _at(_turned(a), _turned(b)), (0,)
        case t.Quantity(t.Int(90 | 270 as degrees), "°"):
            way = words["way"]
        case _:
            raise NotBuilt("A turn is of 90°, 180° or 270°.")
    if not way:
        raise NotBuilt("The words do not say which way it turns.")
    if (way == "clockwise") == (degrees == 90):
        return _at(b, _turned(a)), (0,)
    return _at(_turned(b), a), (0,)


def _translated(words: Words, *given: t.Node) -> Built:
    """Return the image after so many units to a side and so many up or down."""
    point, *moves = given
    a, b = _point(point)
    if any(not isinstance(move, t.Int | t.Dec) for move in moves):
        raise NotBuilt("A translation is by numbers of units.")
    across, up = moves
    return _at(
        _more(a, across) if words["across"] == "right" else _less(a, across),
        _more(b, up) if words["up"] == "up" else _less(b, up),
    ), ()


def _enlarged(point: t.Node, *rest: t.Node) -> Built:
    """Return the image after an enlargement whose centre is the origin."""
    a, b = _point(point)
    centres = [node for node in rest if isinstance(node, t.Listing)]
    factors = [node for node in rest if not isinstance(node, t.Listing)]
    if any(map(exact, (at for node in centres for at in _point(node)))):
        raise NotBuilt("A point is enlarged here from the origin only.")
    if len(factors) != 1 or not isinstance(factors[0], t.Int | t.Dec | t.Frac | t.Neg):
        raise NotBuilt("An enlargement has one scale factor, which is a number.")
    factor = as_part(factors[0])
    return _at(_scaled(factor, a), _scaled(factor, b)), ()


def _scaled(factor: t.Node, node: t.Node) -> t.Node:
    return t.Product(_held(factor), (("×", _held(node)),))


_BOTH = r"(?:the points? )?<M> (?:and|to) (?:the point )?<M>"
_SEGMENT = (
    r"(?:(?:the )?(?:straight )?(?:line|line segment|segment)(?: (?:from|joining|between))? )?"
)
_IMAGE = (
    r"(?:<FIND> the (?:coordinates of the )?image of|where is the image of) (?:the point )?<M> "
    r"(?:after|under|in)"
)
_MIRROR = r"the (?:(?P<axis>[xy])[- ]axis|<M>(?P<axes>[- ]axis)|line <M>)"
_ABOUT = r"about (?:the )?(?:origin|point <M>|<M>)"
_TURN = r"<M>,?(?: (?P<way>clockwise|anticlockwise),?)?"
_MOVE = (
    r"<M>(?: units?)?(?: to the)? (?P<across>right|left),? (?:and )?<M>(?: units?)? (?P<up>up|down)"
)
_FROM = r"(?:centre (?:the )?(?:origin|<M>)|centre at (?:the )?(?:origin|<M>))"
_BY = r"(?:a )?scale factor(?: of)? <M>"
_ENLARGE = rf"(?:{_FROM},? (?:and |with |by )?{_BY}|{_BY},? (?:and |with |from )?{_FROM})"

POINT_SAYINGS = (
    Saying(rf"<FIND> the (?:coordinates of the )?mid-?\s?point of {_SEGMENT}{_BOTH}", midpoint),
    Saying(
        r"<FIND> the gradient of the (?:straight )?(?:line|line segment|segment) "
        rf"(?:through|joining|from|between|that (?:passes|goes) through) {_BOTH}",
        gradient,
    ),
    Saying(rf"{_IMAGE} (?:a )?reflection in {_MIRROR}", _reflected),
    Saying(rf"reflect (?:the point )?<M> in {_MIRROR}", _reflected),
    Saying(rf"{_IMAGE} (?:a )?rotation of {_TURN} {_ABOUT}", _rotated),
    Saying(rf"rotate (?:the point )?<M> (?:by |through )?{_TURN} {_ABOUT}", _rotated),
    Saying(rf"{_IMAGE} (?:a )?translation of {_MOVE}", _translated),
    Saying(rf"translate (?:the point )?<M> (?:by )?{_MOVE}", _translated),
    Saying(rf"{_IMAGE} (?:an )?enlargement (?:with |of |from )?{_ENLARGE}", _enlarged),
    Saying(rf"enlarge (?:the point )?<M> (?:with |by |from )?{_ENLARGE}", _enlarged),
)
