"""Journeys: a speed, a distance or a time, and the average speed of several parts."""

from __future__ import annotations

from fractions import Fraction

from itembank.notation import tree as t
from itembank.wording.meaning.told.tale import Reading, Tale, late_search, reads

_STOPS = r"\b(?:rest\w*|stops?|stopped|break|back|return\w*|late|delay\w*|less|more|faster|slower|then|further|each way|waits?|half|twice|per cent)\b"


def _journey(tale: Tale) -> Reading | None:
    """Return the speed, the distance or the time of one steady journey from the other two."""
    numbers = tale.numbers
    asked = [n for n in numbers if tale.asked(n)]
    if len(numbers) == 3 and len(asked) == 1 and asked[0].measure == "time":
        speeds = tale.of("speed")
        far = tale.asks_for(r"\bhow far\b|\bdistance\b|\bhow many (?:\w*metres|miles|km|m)\b")
        if len(speeds) == 1 and far and len(tale.of("time")) == 2:
            return reads(
                "distance is speed by the time asked about", speeds[0].value * asked[0].value
            )
    if len(numbers) != 2 or late_search(_STOPS, tale.text):
        return None
    found = {n.measure: n.value for n in numbers}
    if len(found) != 2 or not set(found) <= {"length", "time", "speed"}:
        return None
    if not all(found.values()):
        return None
    if "speed" not in found and tale.asks_for(r"\bspeed\b|\bhow fast\b"):
        return reads("speed is distance for each hour or second", found["length"] / found["time"])
    if "time" not in found and tale.asks_for(
        r"\b(?:how long|how many (?:hours|minutes|seconds)|what time|how much time)\b"
    ):
        return reads("time is distance by speed", found["length"] / found["speed"])
    if "length" not in found and tale.asks_for(
        r"\bhow far\b|\bdistance\b|\bhow many (?:\w*metres|miles|km|m)\b"
    ):
        if any(tale.asked(n) for n in numbers):
            return None
        return reads("distance is speed by time", found["speed"] * found["time"])
    return None


def _average(tale: Tale) -> Reading | None:
    """Return the average speed of a journey of several parts: all its distance by all its time."""
    if not tale.asks_for(r"\baverage speed\b") or len(tale.numbers) < 3:
        return None
    if any(n.measure not in ("length", "time", "speed") for n in tale.numbers):
        return None
    rests = late_search(r"\b(?:rest\w*|stop\w*|break|wait\w*)\b", tale.told)
    moving = tale.asks_for(r"\b(?:moving|swimming|while|without|riding|walking|running|driving)\b")
    if rests:
        idle = [
            n
            for n in tale.numbers
            if late_search(r"\b(?:rest\w*|stop\w*|break|wait\w*)\b", tale.clause_of(n))
        ]
        times = [n for n in tale.of("time") if n not in idle]
        lengths = tale.of("length")
        if len(idle) != 1 or idle[0].measure != "time" or len(lengths) != 1 or tale.of("speed"):
            return None
        within = late_search(r"\b(?:with|includ\w*)\b[^.]*\b(?:stop|rest|break)", tale.told)
        moved = sum((n.value for n in times), Fraction(0)) - (idle[0].value if within else 0)
        whole = moved + idle[0].value
        if not moved:
            return None
        return reads(
            "while it moves, or with its stops, as the words ask",
            lengths[0].value / (moved if moving else whole),
        )
    lengths, times, speeds = tale.of("length"), tale.of("time"), tale.of("speed")
    total = sum((n.value for n in lengths), Fraction(0))
    if (
        not speeds
        and len(lengths) == 1
        and late_search(r"\b(?:back|returns?)\b", tale.told)
        and len(times) == 2
    ):
        spent = sum((n.value for n in times), Fraction(0))
        return reads("there and back is twice the distance", 2 * total / spent)
    if speeds and not times and len(lengths) == len(speeds):
        spent = sum((d.value / v.value for d, v in zip(lengths, speeds, strict=True)), Fraction(0))
        return reads("all the distance by all the time", total / spent)
    if speeds and len(times) == len(speeds) and not lengths:
        gone = sum((t.value * v.value for t, v in zip(times, speeds, strict=True)), Fraction(0))
        return reads(
            "all the distance by all the time", gone / sum((t.value for t in times), Fraction(0))
        )
    if (
        not speeds
        and len(lengths) == len(times) > 1
        and not late_search(r"\bback|return", tale.told)
    ):
        return reads(
            "all the distance by all the time", total / sum((t.value for t in times), Fraction(0))
        )
    return None


def journey_reading(tale: Tale) -> Reading | None:
    """Return what a story of a journey comes to by its words."""
    if late_search(r"\btime\b|\bwhen\b", tale.question) and any(
        isinstance(node, t.ClockTime) for node in tale.said.nodes
    ):
        return None  # a time of day is asked for, and no length of time
    return _journey(tale) or _average(tale)
