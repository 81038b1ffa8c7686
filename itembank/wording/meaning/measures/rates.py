"""Amounts in proportion, and work shared by many: worked out from what the words give."""

from __future__ import annotations

import re
from fractions import Fraction

from itembank.wording.kinds.things_counted import noun_stem
from itembank.wording.meaning.measures.journeys import journey_reading
from itembank.wording.meaning.told.tale import Number, Reading, Tale, late_search, reads

_AGENTS = frozenset(
    (
        "people", "painter", "builder", "man", "woman", "worker", "decorator", "gardener", "machine", "pump", "tap", "pipe",
        "hose", "tractor", "digger", "cleaner", "bricklayer", "plumber", "volunteer", "farmer", "harvester", "printer",
        "robot", "mower", "combine", "roofer", "student", "pupil", "carpenter", "mechanic", "picker",
    )
)  # fmt: skip

_WORK = (
    r"\b(?:paint|build|plant|dig|fill|empty|pick|clean|lay|unload|load|plough|tile|mow|wash|harvest|weed|pack|repair|"
    r"decorate|cut|drain|do (?:a|the) job|finish|complete|assemble|print|make|put up|erect|lift|clear|sweep|roof)\w*\b"
)

_TIMES = ("time", "calendar time")


def rate_reading(tale: Tale) -> Reading | None:
    """Return what a story in proportion, or of a journey, comes to by its words."""
    return (
        _batches(tale) or _net(tale) or _proportion(tale) or _double(tale) or journey_reading(tale)
    )


_IN = r"\b(?:topped up|flows? into|runs? into|lets? in|fill\w*|gains?|flows? in|runs? in|pours? in|enters?|come in|arrives?|pump\w* in|added)\b"

_OUT = r"\b(?:lets? out|takes? out|flows? away|loses?|leaks?|drains?|flows? out|runs? out|leaves?|escapes?|pump\w* out|empties)\b"


def _net(tale: Tale) -> Reading | None:
    """Return what is gained where something comes in and goes out at the same time."""
    numbers = tale.numbers
    if len(numbers) != 3 or not late_search(
        r"\b(?:an?|per|each|every) (?:second|minute|hour|day)\b", tale.told
    ):
        return None
    spans = [n for n in numbers if n.measure == "time"]
    rates = [n for n in numbers if n not in spans]
    if len(spans) != 1 or len(rates) != 2 or not tale.asks_for(r"\bhow (?:many|much)\b"):
        return None
    if late_search(r"\b(?:already|holds|has|full|contains)\b", tale.told):
        return None
    first, second = rates
    ways = [
        (late_search(_IN, tale.clause_of(n)), late_search(_OUT, tale.clause_of(n))) for n in rates
    ]
    if sorted(ways) != [(False, True), (True, False)] or first.measure != second.measure:
        return None
    unit = re.search(r"\b(?:an?|per|each|every) (second|minute|hour|day)\b", tale.told, re.I)
    size = {"second": 1, "minute": 60, "hour": 3600, "day": 86400}[unit[1].lower()] if unit else 1
    gained = (first.value - second.value) * (1 if ways[0][0] else -1)
    return reads("what goes out is taken from what comes in", abs(gained) * spans[0].value / size)


def _batches(tale: Tale) -> Reading | None:
    """Return how many times a recipe can be made whole."""
    if not tale.asks_for(r"\bhow many (?:full |whole |complete )?(?:batches|lots|recipes)\b"):
        return None
    measured = [n for n in tale.numbers if n.measure in ("mass", "volume")]
    if len(measured) != 2 or measured[0].measure != measured[1].measure or len(tale.numbers) > 3:
        return None
    return reads(
        "one batch takes all of the amount that is given", measured[1].value / measured[0].value
    )


def _thing(number: Number) -> str:
    """Return what a number measures or counts: a dimension, or a noun, the first plural after it."""
    if number.measure:
        return number.measure
    small = ("more", "extra", "such", "of", "the")
    words = [w for w in re.findall(r"[a-z'-]+", number.after.lower()) if w not in small][:3]
    plain = [
        w for w in words if w in ("people", "men", "women", "children", "is", "are", "in", "to")
    ]
    if plain and words.index(plain[0]) == 0:
        return noun_stem(words[0])
    first = next((w for w in words if w.endswith("s") and not w.endswith("ss")), "")
    return noun_stem(first or words[0]) if words else ""


def _same(tale: Tale, a: Number, b: Number) -> bool:
    """Whether two numbers are of the same things: crates and full crates, not oak and ash trees."""
    first, two = _thing(a), _thing(b)
    if not first or first != two:
        return False
    mine, other = _said_of(a, first), _said_of(b, two)
    return not (mine and other and mine.isdisjoint(other))


def _said_of(number: Number, thing: str) -> set[str]:
    """Return the words between a number and the noun that it counts."""
    words = re.findall(r"[a-z'-]+", number.after.lower())
    place = next((i for i, word in enumerate(words) if noun_stem(word) == thing), 0)
    return set(words[:place]) - {"more", "extra", "such", "of", "the", "identical", "same"}


_UNUSUAL = (
    r"\b(?:plus|fixed|call-out|first|then|left|change|free|offer|half|twice|double|extra day|ratio|percent\w*|scale|map|plan|faster|slower|"
    r"each|late|older|younger|spare|already|fewer|only)\b"
)


def _proportion(tale: Tale) -> Reading | None:
    """Return *3 pens cost £2.40; what do 5 pens cost?* and *6 people take 10 hours; 4 people?*."""
    numbers = tale.numbers
    if len(numbers) != 3 or late_search(_UNUSUAL, tale.text) or tale.of("percent"):
        return None
    given = [n for n in numbers if not tale.asked(n)]
    asked = [n for n in numbers if tale.asked(n)]
    if len(given) == 3:  # Jo has 600 g of butter. How many cakes can she make?
        given, asked = given[:2], given[2:]
    if len(given) != 2 or len(asked) != 1:
        return None
    (third,) = asked
    like = [n for n in given if _same(tale, n, third)]
    if len(like) != 1:
        return None
    (first,) = like
    (second,) = (n for n in given if n is not first)
    if (
        _same(tale, first, second)
        or not first.value
        or tale.sentence_of(first) != tale.sentence_of(second)
    ):
        return None
    if not _asks(tale, second) and not tale.asks_for(r"\bhow (?:many \w+ would|long)\b.*\blast"):
        return None
    if _is_shared_work(tale, first, second):
        if late_search(r"\bextra\b|\bmore\b", third.after) or tale.asks_for(
            r"\b(?:extra|more|save|less|longer)\b"
        ):
            return _extra_workers(tale, first, second, third)
        if third.measure in _TIMES:
            return None
        return reads("more of them take less time", first.value * second.value / third.value)
    share = second.value / first.value
    if tale.asks_for(r"\bmore\b|\bless\b|\bextra\b"):
        if late_search(r"\b(?:how much|how many) (?:more|extra)\b", tale.question):
            return reads("how much more than was used before", share * (third.value - first.value))
        return None
    if not _is_direct(tale, first, second):
        return None
    return reads(
        "twice as much of the one goes with twice as much of the other", share * third.value
    )


def _asks(tale: Tale, number: Number) -> bool:
    """Whether the question asks for things of the kind of a number."""
    thing = _thing(number)
    if thing == "money":
        return tale.asks_for(r"\b(?:cost|price|pay|much|charge|earn)\w*\b")
    if thing in _TIMES:
        return tale.asks_for(
            r"\b(?:how long|how many (?:seconds|minutes|hours|days|weeks)|take|last)\b"
        )
    if thing == "length":
        return tale.asks_for(
            r"\bhow far\b|\bhow many \w*met|\bhow many (?:miles|cm|km|m)\b|\bhow long\b"
        )
    if thing in ("mass", "volume"):
        return tale.asks_for(
            r"\bhow (?:much|many (?:\w*grams?|\w*lit\w+|ml|kg|g))\b|\bmass\b|\bweigh"
        )
    return tale.asks_for(rf"\bhow many (?:\w+ )?{re.escape(thing)}")


def _is_shared_work(tale: Tale, first: Number, second: Number) -> bool:
    # Food for 12 goats lasts 10 days; but 6 batteries last 15 days, and 12 longer.
    lasts = rf"\b(?:lasts?|feeds?|enough (?:\w+ )?for)(?: for)? {first.char}"
    if second.measure in _TIMES and first.counts and late_search(lasts, tale.told):
        return True
    return (
        second.measure in _TIMES
        and first.counts
        and (
            _thing(first) in _AGENTS
            and (late_search(_WORK, tale.text) or late_search(r"\btakes?\b|\blasts?\b", tale.told))
        )
    )


def _is_direct(tale: Tale, first: Number, second: Number) -> bool:
    """Whether the words say that the one goes with the other; food that lasts does not."""
    if (
        late_search(r"\blasts?\b|\bfeed|\benough\b|\bspeed\b|\bfills?\b.*\bin\b", tale.text)
        and second.measure in _TIMES
    ):
        return False
    if (
        second.measure in _TIMES
        and first.counts
        and not late_search(r"\bin\b|\btakes?\b", tale.told)
    ):
        return False
    if first.counts and second.measure in _TIMES and _thing(first) in _AGENTS:
        return False
    if first.measure in _TIMES and second.counts and _thing(second) in _AGENTS:
        return False
    return not late_search(r"\b(?:than|left|minus|less|further|older)\b", tale.told)


def _extra_workers(tale: Tale, first: Number, second: Number, third: Number) -> Reading | None:
    if not tale.asks_for(r"\bextra\b") or not tale.asks_for(r"\bsave\b"):
        return None
    all_of_them = first.value + third.value
    return reads("the time that is saved", second.value - first.value * second.value / all_of_them)


def _double(tale: Tale) -> Reading | None:
    """Return *5 buses use 480 litres in 3 days; how many litres do 8 buses use in 2 days?*."""
    given = [n for n in tale.numbers if not tale.asked(n)]
    asked = [n for n in tale.numbers if tale.asked(n)]
    if len(given) != 3 or late_search(_UNUSUAL, tale.told) or tale.of("percent"):
        return None
    pairs = {}
    for number in asked:
        like = [n for n in given if _same(tale, n, number)]
        if len(like) != 1:
            return None
        pairs[like[0]] = number.value
    rest = [n for n in given if n not in pairs]
    single = [
        n
        for n in rest
        if n.counts
        and late_search(rf"\b(?:one|a|an|each|every) {re.escape(_thing(n))}\b", tale.question)
    ]
    for number in single:
        pairs[number] = Fraction(1)
        rest.remove(number)
    if len(pairs) != 2 or len(rest) != 1 or not _asks(tale, rest[0]):
        return None
    (result,) = rest
    if result.measure in _TIMES or len({tale.sentence_of(n) for n in given}) != 1:
        return None
    agents, others = list(pairs.items())
    if not (others[0].measure in _TIMES or agents[0].measure in _TIMES):
        return None
    value = result.value
    for number, count in pairs.items():
        value = value / number.value * count
    return reads("for each of them and each of the days", value)
