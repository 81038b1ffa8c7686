"""What the topics on areas and perimeters have in common: lengths, drafts, wrong methods."""

from __future__ import annotations

from collections.abc import Sequence

from generators._amounts import Number, amounts, length, said_question
from generators._turns import by_turns
from itembank.figures.figure import Figure
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Misconception, Step
from itembank.notation import tree as t

__all__ = ["Number", "length", "said_question"]  # with these, for topics on areas

PERIMETER_FOR_AREA = Misconception(
    "geometry.perimeter-for-area",
    "works out the perimeter instead of the area",
    "Does the question ask how far it is round the edge, or how much surface there is?",
)
AREA_FOR_PERIMETER = Misconception(
    "geometry.area-for-perimeter",
    "works out the area instead of the perimeter",
    "Does the question ask how far it is round the edge, or how much surface there is?",
)
TWO_SIDES = Misconception(
    "geometry.two-sides-only",
    "adds one length and one width only",
    "Walk round the edge with your finger: how many sides do you pass?",
)
SHOWN_SIDES = Misconception(
    "geometry.labelled-sides-only",
    "adds only the sides that have a number",
    "Which sides have no number? How can you find how long they are?",
)
NOT_HALVED = Misconception(
    "geometry.triangle-not-halved",
    "multiplies base and height and does not halve",
    "What part of the rectangle round it is the triangle?",
)
HALVED = Misconception(
    "geometry.halved-without-need",
    "halves base times height though the shape is no triangle",
    "Cut it and move one piece. What rectangle do you get?",
)
SLANT_USED = Misconception(
    "geometry.slanted-side-as-height",
    "uses a slanted side instead of the height",
    "Which length is at a right angle to the base?",
)
ADDED = Misconception(
    "geometry.lengths-added",
    "adds the lengths instead of multiplying them",
    "How many squares are in one row? How many rows are there?",
)
ALL_MULTIPLIED = Misconception(
    "geometry.trapezium-all-multiplied",
    "multiplies all three lengths",
    "The two parallel sides are different. What length lies half way between them?",
)
ONE_PARALLEL_SIDE = Misconception(
    "geometry.trapezium-one-side",
    "uses only one of the parallel sides",
    "Is a trapezium as wide at the top as at the bottom?",
)
WHOLE_RECTANGLE = Misconception(
    "geometry.compound-whole-rectangle",
    "gives the area of the whole rectangle round it",
    "Is all of that rectangle part of the shape? What is missing?",
)
ONE_PART = Misconception(
    "geometry.compound-one-part",
    "gives the area of one part only",
    "Into how many rectangles did you split the shape?",
)
OVERLAP = Misconception(
    "geometry.compound-overlap",
    "splits the shape into rectangles that overlap",
    "Shade your two rectangles. Is a piece shaded twice?",
)
NOT_DOUBLED = Misconception(
    "geometry.height-not-doubled",
    "divides the area by the base and does not double",
    "Put your height into the formula. Does it give the area?",
)
HALVED_TWICE = Misconception(
    "geometry.area-halved-again",
    "halves the area instead of doubling it",
    "The area is half of base times height. What is base times height?",
)
DOUBLED = Misconception(
    "geometry.area-doubled-without-need",
    "doubles the area first, as for a triangle",
    "Is base times height the whole area here, or twice the area?",
)
HEIGHT_FOR_SIDE = Misconception(
    "geometry.height-as-side",
    "takes the height for a side",
    "Walk round the edge with your finger. Do you ever go along the height?",
)
NOT_HALVED_SUM = Misconception(
    "geometry.trapezium-not-halved",
    "multiplies the sum of the parallel sides by the height and does not halve",
    "Two such trapeziums make a parallelogram. How long is its base?",
)
OTHER_SIDE_KEPT = Misconception(
    "geometry.trapezium-both-sides",
    "gives both parallel sides together",
    "Which of the two parallel sides is asked for?",
)
PIECE_ADDED = Misconception(
    "geometry.compound-piece-added",
    "adds the piece that is cut out",
    "Is the shape larger or smaller after the piece is cut out?",
)
ONE_EDGE = Misconception(
    "geometry.path-one-edge",
    "makes the outer rectangle wider on one side only",
    "How many ends of the length does the border go past?",
)
ONE_CORNER = Misconception(
    "geometry.corner-once",
    "takes away one corner only",
    "How many corners are cut?",
)
AREA_AS_PERIMETER = Misconception(
    "geometry.area-as-perimeter",
    "treats the area as if it were the perimeter",
    "Do the sides add up to the area, or do two of them multiply to it?",
)
AREA_FOR_HEIGHT = Misconception(
    "geometry.area-for-height",
    "stops at the area",
    "You have found the area. Which length is asked for?",
)
SAME_DIFFERENCE = Misconception(
    "geometry.heights-by-difference",
    "makes the other height larger by as much as its side is smaller",
    "Which two products are equal? Try your height in the second one.",
)
ROUND_RECTANGLE = Misconception(
    "geometry.perimeter-of-rectangle-round-it",
    "gives the perimeter of the whole rectangle round it",
    "Walk round the edge with your finger. Do you go into the gap and out again?",
)
AREA_KEPT = Misconception(
    "geometry.square-of-equal-area",
    "makes the area equal instead of the perimeter",
    "Does the question say that the areas are the same, or the perimeters?",
)
SIDES_MULTIPLIED = Misconception(
    "geometry.perimeter-times-sides",
    "multiplies the perimeter by the number of sides",
    "Can one side be longer than the whole perimeter?",
)
FOUR_SIDES = Misconception(
    "geometry.polygon-four-sides",
    "divides by 4 as for a square",
    "How many sides has this polygon?",
)
SUBTRACTED = Misconception(
    "geometry.length-subtracted",
    "subtracts the length that is given instead of dividing by it",
    "What do you multiply the length by to get the area?",
)
ONE_SIDE_TAKEN = Misconception(
    "geometry.one-side-taken",
    "subtracts the side that is given only once from the perimeter",
    "How many sides of that length does the rectangle have?",
)
NOT_SHARED = Misconception(
    "geometry.perimeter-not-shared",
    "stops before sharing what is left between the equal sides",
    "How many sides does that length make together?",
)
UNIT_NOT_CHANGED = Misconception(
    "geometry.units-mixed",
    "multiplies lengths in different units",
    "Are both lengths in the same unit?",
)


def unit_of(n: int) -> str:
    """Return centimetres or metres, by turns."""
    return by_turns(("cm", "m"), n)


def shape_question(
    figure: Figure,
    words: str,
    key: t.Node,
    steps: Sequence[Step],
    wrong: Sequence[tuple[Misconception, Number | None]],
    twin: tuple[object, ...],
) -> Draft:
    """Return a question about the area or the perimeter of a shape that is drawn."""
    text = (words,)
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "quantity",
        tuple(steps),
        amounts(wrong, key),
        twin,
        figure=figure,
    )


def asked(measure: str, name: str, number: int) -> str:
    """Return one of several ways to ask for the area or the perimeter of a shape."""
    return by_turns(
        (
            f"Work out the {measure} of the {name}.",
            f"Find the {measure} of this {name}.",
            f"Calculate the {measure} of the {name}.",
            f"What is the {measure} of this {name}?",
        ),
        number,
    )


def whole(top: int, bottom: int) -> int | None:
    """Return a quotient that is a whole number, None for any other."""
    return top // bottom if top % bottom == 0 else None
