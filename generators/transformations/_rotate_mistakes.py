"""Mistakes with rotations (common practice, no source)."""

from __future__ import annotations

from itembank.items.item import Misconception

OTHER_WAY = Misconception(
    "transformations.rotate-other-way",
    "turns the other way",
    "Which way do the hands of a clock go? Turn your paper that way.",
)
REFLECTS = Misconception(
    "transformations.rotate-reflects",
    "reflects instead of turning",
    "Trace the shape and turn the tracing. Do you have to flip it over?",
)
HALF_TURN = Misconception(
    "transformations.rotate-half-turn",
    "turns too far, by half a turn",
    "How many right angles is that turn?",
)
ABOUT_ORIGIN = Misconception(
    "transformations.rotate-about-origin",
    "turns about the origin instead of the centre that is given",
    "Where do you hold the tracing with your pencil?",
)
MIDDLE = Misconception(
    "transformations.rotate-middle",
    "takes the point halfway between a corner and its image",
    "Put your pencil on that point and turn the tracing. Does the shape land on the other?",
)
