"""Bills: so many at so much each, what they cost, and the change."""

from __future__ import annotations

import re
from fractions import Fraction

from itembank.text.late_pattern import late
from itembank.wording.kinds.things_counted import noun_stem
from itembank.wording.meaning.told.tale import Number, Reading, Tale, late_search, reads
from itembank.wording.sentences.prompt import SLOT

_AT_EACH = late(
    rf"(?P<n>{SLOT}) (?P<noun>(?:[a-z'-]+ ){{0,3}}?[a-z'-]+) (?:at|for|costing|that cost|which cost|priced at) (?P<price>{SLOT}) (?:each|an? \w+|per \w+)(?! of)",
    re.I,
)
_COST_EACH = late(
    rf"\b(?P<noun>[a-z'-]+s) (?:are|cost|are sold at|are sold for|sell for) (?P<price>{SLOT})(?: (?:each|a \w+|per \w+))?|"
    rf"\b(?:an?|each|one) (?P<one>[a-z'-]+(?: [a-z'-]+)?) costs? (?P<price2>{SLOT})",
    re.I,
)
_NOUNS_FOR = late(
    rf"(?:sells?|sold|and|buys?) (?P<noun>[a-z'-]+s) (?:for|at) (?P<price>{SLOT})", re.I
)
_FOR_ONE = late(rf"(?P<price>{SLOT}) for (?:an?|each|every|one) (?P<noun>[a-z'-]+)", re.I)
_COUNT = late(rf"(?P<n>{SLOT}) (?P<noun>(?:[a-z'-]+ )?[a-z'-]+)", re.I)
_PAID = late(
    rf"\b(?:pays?(?: \w+){{0,2}} with|pays|hands over|gives?(?: \w+){{0,3}}|has|from|change from|with|uses) (?:an? )?({SLOT})",
    re.I,
)
_OFFER = late(rf"(?P<get>{SLOT}) (?:[a-z'-]+ )?for the price of (?P<pay>{SLOT})", re.I)


def shopping_reading(tale: Tale) -> Reading | None:
    """Return what a bill comes to, or the change, by its words."""
    if tale.of("percent", "part") or late_search(
        r"\b(?:half|off|discount|sale|profit|fee|plus|extra day|free|more than|less than|change into|worth|per cent)\b",
        tale.text,
    ):
        return None
    return _offer(tale) or _bill(tale) or _for_all(tale)


def _offer(tale: Tale) -> Reading | None:
    offer = _OFFER.search(tale.told)
    if offer is None:
        return None
    get, pay = tale.get(offer, "get"), tale.get(offer, "pay")
    money = tale.of("money")
    others = [n for n in tale.numbers if n not in (get, pay) and n not in money]
    if (
        get is None
        or pay is None
        or len(money) != 1
        or len(others) != 1
        or not tale.asks_for(r"\bcost\b|\bpay\b|\bhow much\b")
    ):
        return None
    if others[0].value % get.value:
        return None
    return reads("the offer is used", others[0].value / get.value * pay.value * money[0].value)


def _bill(tale: Tale) -> Reading | None:
    used: set[str] = set()
    bought: list[tuple[str, Fraction]] = []
    for match in _AT_EACH.finditer(tale.text):
        count, price = tale.get(match, "n"), tale.get(match, "price")
        if count is None or price is None or price.measure != "money" or not count.counts:
            return None
        used |= {count.char, price.char}
        bought.append((_noun(match["noun"]), count.value * price.value))
    prices: dict[str, Number] = {}
    for match in _FOR_ONE.finditer(tale.text):
        price = tale.get(match, "price")
        if price is not None and price.measure == "money" and price.char not in used:
            prices.setdefault(_noun(match["noun"]), price)
    for match in _NOUNS_FOR.finditer(tale.text):
        price = tale.get(match, "price")
        if price is not None and price.measure == "money" and price.char not in used:
            prices.setdefault(_noun(match["noun"]), price)
    for match in _COST_EACH.finditer(tale.text):
        price = tale.get(match, "price") or tale.get(match, "price2")
        if price is None or price.measure != "money" or price.char in used:
            continue
        if price in prices.values():
            continue
        if match["noun"] and re.search(
            rf"{SLOT} (?:[a-z'-]+ )?$", tale.text[: match.start("noun")]
        ):
            continue  # 3 notebooks cost £2.40 altogether
        noun = _noun(match["noun"] or match["one"])
        if noun in prices:
            return None
        prices[noun] = price
    for match in _COUNT.finditer(tale.text):
        count = tale.get(match, "n")
        if count is None or count.char in used or not count.counts:
            continue
        noun = next(
            (noun_stem(w) for w in reversed(match["noun"].split()) if noun_stem(w) in prices), ""
        )
        if noun:
            used |= {count.char, prices[noun].char}
            bought.append((noun, count.value * prices[noun].value))
    rest = [n for n in tale.numbers if n.char not in used]
    if not bought or len(rest) > 1 or (rest and rest[0].measure != "money"):
        return None
    total = sum((cost for _, cost in bought), Fraction(0))
    both = re.search(r"\b[A-Z]\w+ and [A-Z]\w+ each\b", tale.told)
    if both:
        if not tale.asks_for(r"\b(?:altogether|in total|in all|together)\b"):
            return None
        total *= 2
    elif late_search(r"\beach (?:buy|of (?:the|them)|person|child|pupil|pay)\b", tale.text):
        return None
    if tale.asks_for(r"\bchange\b|\bleft\b|\bstill have\b"):
        paid = _PAID.search(tale.text)
        if (
            not rest
            or paid is None
            or rest[0].char not in [m[1] for m in _PAID.finditer(tale.text)]
        ):
            return None
        return reads("what is paid less what everything costs", rest[0].value - total)
    if tale.asks_for(
        r"\b(?:cost|pay|spend|bill|price|cost of|take|earn|receive|money)\b"
    ) and not tale.asks_for(r"\b(?:one|each|more|less|a single|difference|how many)\b"):
        named = [
            cost for noun, cost in bought if re.search(rf"\b{re.escape(noun)}", tale.question, re.I)
        ]
        if rest and not named:
            return None
        if (
            named
            and len(named) < len(bought)
            and not tale.asks_for(r"\baltogether|in total|in all|total\b")
        ):
            return reads("what those that are named cost", sum(named, Fraction(0)))
        return reads("so many at so much each", total)
    return None


def _noun(words: str) -> str:
    return noun_stem(words.split()[-1])


_ALTOGETHER = late(
    rf"(?P<n>{SLOT}) (?P<noun>[a-z'-]+) (?:for|cost|costs) (?P<price>{SLOT}) (?:altogether|in total|in all)\b",
    re.I,
)


def _for_all(tale: Tale) -> Reading | None:
    """Return the cost of some, where a price is that of several altogether."""
    match = _ALTOGETHER.search(tale.told)
    if match is None or len(tale.numbers) != 3 or not tale.asks_for(r"\bcost\b|\bpay\b|\bprice\b"):
        return None
    count, price = tale.get(match, "n"), tale.get(match, "price")
    paid = next((n for n in tale.numbers if n not in (count, price)), None)
    if count is None or price is None or paid is None or not tale.asked(paid) or not count.value:
        return None
    if noun_stem((paid.after.split() or [""])[0]) != noun_stem(match["noun"]):
        return None
    return reads("the price is that of all of them", price.value / count.value * paid.value)
