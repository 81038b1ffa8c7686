"""One amount against another: ages, depths, money owed, who has more and what they have."""

from __future__ import annotations

import re
from fractions import Fraction

from itembank.text.late_pattern import late
from itembank.wording.meaning.amounts.temperatures import temperature_reading
from itembank.wording.meaning.told.tale import Number, Reading, Tale, late_search, reads
from itembank.wording.sentences.prompt import SLOT

_MORE = r"more|older|taller|longer|heavier|dearer|wider|higher|warmer|hotter|further|bigger|larger|deeper|faster|later"

_LESS = r"less|fewer|younger|shorter|lighter|cheaper|narrower|lower|colder|cooler|smaller|slower|earlier"

_NAME = r"(?P<{0}>(?:(?:a|an|the|his|her|their|its) )?[A-Za-z'-]+(?: [a-z-]+)?)"


def comparison_reading(tale: Tale) -> Reading | None:
    """Return what a story that compares two amounts comes to by its words."""
    return (
        _chain(tale)
        or _depth(tale)
        or _age(tale)
        or _sum_and_gap(tale)
        or temperature_reading(tale)
        or _balance(tale)
        or _balance_back(tale)
    )


_IS_OLD = late(
    rf"\b(?P<who>[A-Z][\w'-]*|[Hh]er \w+|[Hh]is \w+|[Mm]y \w+|[Tt]he \w+) is (?:now )?(?P<age>{SLOT})(?! (?:times|\w+ (?:older|younger)))"
)


def _age(tale: Tale) -> Reading | None:
    if not tale.asks_for(r"\bhow old\b|\bhow many years\b|\bage\b|\bwhen will\b"):
        return None
    ages = [
        (m["who"], tale.by_char[m["age"]])
        for m in _IS_OLD.finditer(tale.told)
        if m["age"] in tale.by_char
    ]
    both = re.search(
        rf"([A-Z][\w'-]*|[Aa]n? \w+) is ({SLOT})(?: years old)? and (?:his |her |their )?([\w'-]+) is ({SLOT})",
        tale.told,
    )
    if both and both[2] in tale.by_char and both[4] in tale.by_char:
        ages = [(both[1], tale.by_char[both[2]]), (both[3], tale.by_char[both[4]])]
    numbers = [_years(n) for n in tale.numbers]
    if (
        len(ages) == 1
        and len(numbers) == 2
        and not late_search(r"\b(?:times|older|younger|as old|twice)\b", tale.text)
    ):
        shift = next(n for n in tale.numbers if n is not ages[0][1])
        now, by = _years(ages[0][1]), _years(shift)
        if re.search(
            rf"\bin {shift.char}|{shift.char} years?(?:'s?)? (?:time|from now|later)|\bafter (?:another )?{shift.char}",
            tale.text,
            re.I,
        ):
            return reads("in so many years is later", now + by)
        if re.search(rf"{shift.char} years? (?:ago|before|earlier)", tale.text, re.I):
            return reads("so many years ago is earlier", now - by)
    if len(ages) == 2 and len(numbers) == 3:
        times = re.search(
            rf"\bin how many years will (?:the |his |her )?([\w'-]+) be ({SLOT}) times as old as",
            tale.text,
            re.I,
        )
        if times and times[2] in tale.by_char:
            names = [who.split()[-1].lower() for who, _ in ages]
            k = tale.by_char[times[2]].value
            if times[1].lower() in names and k != 1:
                place = names.index(times[1].lower())
                older, younger = (_years(ages[i][1]) for i in (place, 1 - place))
                return reads("both of them grow older", (older - k * younger) / (k - 1))
    if len(ages) == 2 and len(numbers) == 2:
        first, two = (_years(n) for _, n in ages)
        if tale.asks_for(r"\bwhen (?:\w+ ){1,3}was born\b"):
            return reads(
                "when somebody is born the other is older by the difference", abs(first - two)
            )
        if tale.asks_for(
            r"\bin how many years\b.*\bas old as\b|\bhow many years (?:older|younger)\b|\bhow much (?:older|younger)\b"
        ):
            return reads("the difference of their ages", abs(first - two))
    return None


def _years(number: Number) -> Fraction:
    """Return years as a plain number; twelve months are one."""
    return number.value / 12 if number.measure == "calendar time" else number.value


_GAP = late(
    rf"(?P<a>(?:[Aa]n? |[Tt]he )?[A-Za-z'-]+)(?: \w+)? (?:is|has|costs?|weighs?|gets|scores?|are|have|earns?|pays?) (?P<gap>{SLOT})(?: [a-z]+)? "
    rf"(?P<way>{_MORE}|{_LESS})(?: [a-z]+)? than (?P<b>(?:(?:an?|the|his|her|it) )?[A-Za-z'-]+)",
    re.I,
)

_SUM = late(
    r"\b(?:together|altogether|in total|in all|between them|sum of their ages|ages add up to|total|add up to|both)\b",
    re.I,
)

_SKIP = ("a", "an", "the", "his", "her", "it")


def _sum_and_gap(tale: Tale) -> Reading | None:
    """Return one of two amounts from what they make together and by how much they differ."""
    gap = _GAP.search(tale.told)
    if gap is None or len(tale.numbers) != 2 or late_search(r"\bperimeter\b", tale.text):
        return None
    less = tale.get(gap, "gap")
    total = next((n for n in tale.numbers if n is not less), None)
    if less is None or total is None or tale.asked(total) or less.measure in ("percent", "part"):
        return None
    where = tale.sentence_of(total)
    if total.char not in where.replace(gap[0], "") or not _SUM.search(where):
        return None
    sign = 1 if re.fullmatch(_MORE, gap["way"], re.I) else -1
    whole, by = _years(total), _years(less)
    if "calendar time" not in (total.measure, less.measure) and total.measure != less.measure:
        return None
    low, high = (whole - by) / 2, (whole + by) / 2
    first = high if sign > 0 else low
    second = low if sign > 0 else high
    a, b = (_last(gap[name]) for name in ("a", "b"))
    words = {w.lower().removesuffix("'s") for w in re.findall(r"[A-Za-z'-]+", tale.question)}
    if (a in words) == (b in words) or tale.asks_for(
        r"\b(?:more|less|older|younger|in \S+ years|ago|difference)\b"
    ):
        return None
    return reads(
        f"{gap['a']} has the {'larger' if sign > 0 else 'smaller'} of the two",
        first if a in words else second,
    )


def _last(words: str) -> str:
    names = [w for w in words.lower().split() if w not in _SKIP]
    return names[-1].removesuffix("'s") if names else ""


_KNOWN = late(
    rf"\b(?P<who>[A-Z][a-z]+) (?:is|has|weighs|scored|scores|costs|ran|saved) (?P<v>{SLOT})(?! ?(?:\w+ )?(?:{_MORE}|{_LESS}|times)\b)"
)

_STEP_OF = late(
    rf"\b(?P<a>[A-Z][a-z]+) (?:is|has|weighs|scored|scores|costs|ran|saved) (?P<g>{SLOT})(?: [a-z]+)? (?P<way>{_MORE}|{_LESS})(?: [a-z]+)? than (?P<b>[A-Z][a-z]+)"
)


def _chain(tale: Tale) -> Reading | None:
    """Return what one has, from what another has and by how much each differs from the next."""
    known = {m["who"]: n.value for m in _KNOWN.finditer(tale.told) if (n := tale.get(m, "v"))}
    steps = [(m, n) for m in _STEP_OF.finditer(tale.told) if (n := tale.get(m, "g"))]
    if len(known) != 1 or not steps or len(known) + len(steps) != len(tale.numbers):
        return None
    for _ in steps:
        for match, gap in steps:
            sign = 1 if re.fullmatch(_MORE, match["way"], re.I) else -1
            if match["b"] in known:
                known.setdefault(match["a"], known[match["b"]] + sign * gap.value)
            elif match["a"] in known:
                known[match["b"]] = known[match["a"]] - sign * gap.value
    named = [who for who in known if re.search(rf"\b{who}\b", tale.question)]
    if len(named) != 1 or tale.asks_for(r"\b(?:more|than|difference|altogether|total|left|now)\b"):
        return None
    return reads("each is compared with the one that is named after ‘than’", known[named[0]])


_BELOW = late(rf"({SLOT})(?: [a-z]+)? (?:below|under|deep)\b", re.I)

_SINKS = late(
    rf"\b(?P<down>(?:goes|dives|sinks|drops|descends|moves|swims)(?: down)?(?: by)?(?: a further| another)?|falls(?: by)?) (?P<d>{SLOT})|"
    rf"\b(?P<up>(?:rises|comes up|goes up|swims up|climbs|ascends|is raised)(?: by)?(?: a further| another)?) (?P<u>{SLOT})",
    re.I,
)


def _depth(tale: Tale) -> Reading | None:
    """Return how far below something is after it goes further down or comes up."""
    start = _BELOW.search(tale.told)
    first = tale.get(start, 1) if start else None
    if start is None or first is None or not tale.asks_for(r"\bhow (?:far below|deep)\b|\bdepth\b"):
        return None
    value, count = first.value, 1
    for move in _SINKS.finditer(tale.told, start.end()):
        by = tale.get(move, "u") or tale.get(move, "d")
        if by is None or by.measure != first.measure:
            return None
        value += -by.value if move["u"] and move["up"] else by.value
        count += 1
    return (
        reads("to go down is to be further below", value)
        if count == len(tale.numbers) > 1
        else None
    )


_HAS = late(
    rf"\b(?:owes|has|had|sets? off with|starts? with|begins? with|contains?|holds?|there (?:are|were)|there (?:is|was)|balance is|stands at) (?:only )?({SLOT})",
    re.I,
)

_CHANGE = late(
    rf"\b(?P<plus>gets?|finds?|receives?|(?:is|are|was|were)(?: then| also)? given|pays? in|adds?|wins?|earns?|borrows?|picks? up|buys?|deposits?|is paid|got|found|received|paid in|added|won|earned|borrowed|picked up|bought|deposited|was paid|collects?|collected) (?:another |a further )?(?P<p>{SLOT})|"
    rf"(?P<p2>{SLOT}) (?:more )?(?:\w+ )?(?:gets?|gets? on|get on|join|joins|arrive|come in|are added|is added|are born)\b(?! off)|"
    rf"\b(?P<minus>spent|gave away|gave(?: \w+){{0,2}}|paid back|paid out|paid|sold|ate|used|withdrew|took out|drank|repaid|lost|spends?|gives? away|loses?|pays? back|pays? out|sells?|eats?|uses?|withdraws?|takes? out|drinks?|repays) (?:another |a further )?(?P<m>{SLOT})|"
    rf"(?P<m2>{SLOT}) (?:\w+ )?(?:get off|gets? off|leave|leaves|left|are sold|are eaten|are taken|is taken|are used|is used|break|are broken|die|are lost|go home)\b",
    re.I,
)


def _balance(tale: Tale) -> Reading | None:
    """Return what there is now, after what comes and goes."""
    start = _HAS.search(tale.told)
    first = tale.get(start, 1) if start else None
    if start is None or first is None or tale.of("percent", "part"):
        return None
    if not tale.asks_for(
        r"\b(?:now|left|still|remain\w*|in the end|at the end)\b"
    ) or tale.asks_for(r"\b(?:more|full|each|left over|equal)\b"):
        return None
    if late_search(
        r"\b(?:each|every|per|an? (?:hour|day|week|minute|kilo\w*|litre)|times|twice|half)\b",
        tale.text,
    ):
        return None
    # By the first amount alone: who has £40 and owes nobody anything has no debt that grows.
    before, after = tale.told[: start.start()], tale.told[start.end() :]
    owes = (
        start[0].lower().startswith("owes")
        or late_search(r"\bdebt(?: to \w+)? $", before)
        or late_search(r"^ (?:of|in) debt\b", after)
    )
    if not owes and tale.asks_for(r"\b(?:owes?|debt)\b"):
        return None
    value, count = first.value, 1
    for move in _CHANGE.finditer(tale.told, start.end()):
        by = next((n for name in ("p", "p2", "m", "m2") if (n := tale.get(move, name))), None)
        if by is None or by.measure != first.measure:
            return None
        plus = bool(move["p"] or move["p2"])
        if owes:
            plus = late_search(r"\bborrow(?:s|ed)?\b|\bspen(?:ds?|t)\b", move[0])
        value += by.value if plus else -by.value
        count += 1
    if count != len(tale.numbers) or count == 1:
        return None
    return reads("what comes is added and what goes is taken away", value)


_THEN_THERE = late(
    rf"\b(?:there (?:are|were)|leaving|now|then) (?:now |only |then )?({SLOT})(?: [a-z]+)?(?: (?:are|were))?(?: (?:left|now|on|in)\b|$)|\b({SLOT})(?: [a-z]+)? (?:are|is) (?:now )?left\b|\b(?:has|have|had) ({SLOT})(?: [a-z]+)? (?:left|now)\b",
    re.I,
)


def _balance_back(tale: Tale) -> Reading | None:
    """Return what there was at first, from what came and went and what there is now."""
    if not tale.asks_for(
        r"\b(?:at first|to (?:begin|start) with|at the start|when it arrived|before|originally)\b"
    ) or tale.of("percent", "part"):
        return None
    if late_search(r"\b(?:each|every|per|times|twice|half|as many)\b", tale.text):
        return None
    end = None
    for match in _THEN_THERE.finditer(tale.told):
        end = next((n for i in (1, 2, 3) if (n := tale.get(match, i))), None)
    if end is None:
        return None
    value, count = end.value, 1
    for move in _CHANGE.finditer(tale.told):
        by = next((n for name in ("p", "p2", "m", "m2") if (n := tale.get(move, name))), None)
        if by is end:
            continue
        if by is None or by.measure != end.measure:
            return None
        value += -by.value if move["p"] or move["p2"] else by.value
        count += 1
    if count != len(tale.numbers) or count == 1:
        return None
    return reads("what came and went is put back", value)
