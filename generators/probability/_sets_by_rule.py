"""Sets that are told by a rule or by their members: which belong, and how many, with no picture."""

from __future__ import annotations

from generators._scatter import scattered
from generators.probability._sets_in_brief import NOT_SHARED_TWICE
from generators.probability._sets_told import (
    ADDS_MEMBERS,
    BOTH_FOR_UNION,
    DASH_IGNORED,
    UNION_FOR_BOTH,
)
from itembank.items.asks.members import RULES, Members, SetSaid
from itembank.items.item import Draft, Misconception, Step, Tier, prompt
from itembank.items.kinds.brief import Brief
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t

FACTORS_FOR_MULTIPLES = Misconception(
    "probability.sets-factors-for-multiples",
    "takes factors for multiples, or multiples for factors",
    "Which numbers are in the times table? Which ones divide without a remainder?",
)
ONE_IS_PRIME = Misconception(
    "probability.sets-one-is-prime",
    "takes 1 for a prime number",
    "How many factors has a prime number? How many has 1?",
)
OTHER_NOT_TAKEN_OUT = Misconception(
    "probability.sets-other-not-taken-out",
    "lists the whole of one set, and takes nothing out",
    "Which of these are in the other set too? May they stay?",
)
LAST_LEFT_OUT = Misconception(
    "probability.sets-last-left-out",
    "leaves out the last number of the universal set",
    "Does the universal set hold its last number?",
)
MISTAKES_BY_RULE = (FACTORS_FOR_MULTIPLES, ONE_IS_PRIME, OTHER_NOT_TAKEN_OUT, LAST_LEFT_OUT)

Held = frozenset[int]
Rule = tuple[str, int]
_RULES: tuple[Rule, ...] = (
    *(("multiple", n) for n in (2, 3, 4, 5, 6)),
    *(("factor", n) for n in (12, 16, 18, 20, 24)),
    *((name, 0) for name in ("even", "odd", "prime", "square")),
)
_LAST = (12, 15, 16, 20, 24)
_LETTERS = (("A", "B"), ("C", "D"), ("P", "Q"), ("S", "T"))
_ASKED = {
    Tier.SUPPORT: ("{a}", "{a} ∩ {b}"),
    Tier.CORE: ("{a} ∩ {b}", "{a} ∪ {b}", "{a}′"),
    Tier.CHALLENGE: ("{a} ∩ {b}′", "{a}′ ∩ {b}", "({a} ∪ {b})′"),
}


def _members(rule: Rule, last: int) -> Held:
    name, k = rule
    return frozenset(n for n in range(1, last + 1) if _holds(name, k, n))


def _holds(name: str, k: int, n: int) -> bool:
    match name:
        case "multiple":
            return n % k == 0
        case "factor":
            return k % n == 0
        case "prime":
            return n in (2, 3, 5, 7, 11, 13, 17, 19, 23)
        case "square":
            return n in (1, 4, 9, 16)
    return n % 2 == (name == "odd")


def _value(asked: str, a: Held, b: Held, whole: Held) -> Held:
    return {
        "{a}": a,
        "{a} ∩ {b}": a & b,
        "{a} ∪ {b}": a | b,
        "{a}′": whole - a,
        "{a} ∩ {b}′": a - b,
        "{a}′ ∩ {b}": b - a,
        "({a} ∪ {b})′": whole - a - b,
    }[asked]


def _wrongs(asked: str, a: Held, b: Held, whole: Held) -> list[tuple[Misconception, Held]]:
    """Return the mistakes in reading the signs, each with what it lists."""
    return {
        "{a}": [(LAST_LEFT_OUT, a - {max(whole)})],
        "{a} ∩ {b}": [(UNION_FOR_BOTH, a | b), (OTHER_NOT_TAKEN_OUT, a)],
        "{a} ∪ {b}": [(BOTH_FOR_UNION, a & b), (OTHER_NOT_TAKEN_OUT, a)],
        "{a}′": [(DASH_IGNORED, a), (LAST_LEFT_OUT, whole - a - {max(whole)})],
        "{a} ∩ {b}′": [(DASH_IGNORED, a & b), (OTHER_NOT_TAKEN_OUT, a)],
        "{a}′ ∩ {b}": [(DASH_IGNORED, a & b), (OTHER_NOT_TAKEN_OUT, b)],
        "({a} ∪ {b})′": [(DASH_IGNORED, a | b), (BOTH_FOR_UNION, whole - (a & b))],
    }[asked]


def _slip_of_rule(rule: Rule, last: int) -> tuple[Misconception, Held] | None:
    """Return the mistake with a rule alone, and what it takes the set to be."""
    name, k = rule
    if name == "multiple":
        return FACTORS_FOR_MULTIPLES, _members(("factor", k), last)
    if name == "factor":
        return FACTORS_FOR_MULTIPLES, _members(("multiple", k), last)
    return (ONE_IS_PRIME, _members(rule, last) | {1}) if name == "prime" else None


def _node(held: Held) -> t.Node | None:
    numbers = tuple(map(t.Int, sorted(held)))
    return t.Listing(numbers) if len(numbers) > 1 else numbers[0] if numbers else None


def _told(name: str, rule: Rule) -> tuple[str, SetSaid, dict[str, t.Node]]:
    """Return the sentence that tells a set, the set, and what the sentence shows."""
    kind, k = rule
    of = (t.Int(k),) if RULES[kind][0] else ()
    said = RULES[kind][1].format(f"{{{name}}}")
    return (
        f"{name} is the set of {said}.",
        SetSaid(name, kind, of),
        dict.fromkeys([name], *of) if of else {},
    )


def _draft(
    tier: Tier,
    sentences: list[tuple[str, SetSaid, dict[str, t.Node]]],
    held: tuple[Held, Held],
    asked: str,
    last: int,
    count: bool,
    ruled: list[tuple[Misconception, Held]],
    twin: tuple[object, ...],
) -> Draft:
    """Return the question; `ruled` are mistakes with a rule, each with what is then listed."""
    a, b = held
    whole = frozenset(range(1, last + 1))
    value = _value(asked, a, b, whole)
    names = [named.name for _, named, _ in sentences]
    label = t.Label(asked.format(a=names[0], b=names[-1]))
    low, high = t.Int(1), t.Int(last)
    shown = {key: node for _, _, nodes in sentences for key, node in nodes.items()}
    lines = [
        Step(f"Write down the members of {name}.", _node(named))
        for name, named in zip(names, held, strict=False)
        if named != value
    ]
    key = _node(value)
    assert key is not None
    wrong: list[Wrong] = []
    for mistake, answer in (*_wrongs(asked, a, b, whole), *ruled):
        wrong.append((mistake, len(answer) if count else _node(answer)))
    if count:
        lines.append(Step(_LOOK[asked].format(a=names[0], b=names[-1]), key))
        key = t.Int(len(value))
        lines.append(Step("Count them.", key))
        wrong.append((ADDS_MEMBERS, sum(value)))
        if asked == "{a} ∪ {b}":
            wrong.append((NOT_SHARED_TWICE, len(a) + len(b)))
    else:
        lines.append(Step(_LOOK[asked].format(a=names[0], b=names[-1]), key))
    told = " ".join(sentence for sentence, _, _ in sentences)
    question = "How many members has {s}?" if count else "List the members of {s}."
    return Draft(
        prompt(
            f"The universal set is the whole numbers from {{l}} to {{h}}. {told} {question}",
            l=low,
            h=high,
            s=label,
            **shown,
        ),
        Members(
            low,
            high,
            tuple(named for _, named, _ in sentences),
            label,
            "count" if count else "list",
        ),
        key,
        "integer" if count else "amounts",
        tuple(lines),
        slips(*wrong, key=key),
        twin,
        accept=() if count else ("any-order",),
    )


_LOOK = {
    "{a}": "List the members of {a}.",
    "{a} ∩ {b}": "List those that are in both sets.",
    "{a} ∪ {b}": "List those that are in one set or in both, each once.",
    "{a}′": "List the numbers of the universal set that are not in {a}.",
    "{a} ∩ {b}′": "List those of {a} that are not in {b}.",
    "{a}′ ∩ {b}": "List those of {b} that are not in {a}.",
    "({a} ∪ {b})′": "List the numbers of the universal set that are in neither.",
}


def _by_rule(
    topic: Topic, tier: Tier, asked: str, first: Rule, second: Rule, last: int, count: bool
) -> Draft:
    """Return a question about two sets that are told by rules; of one alone the second is idle."""
    letters = _LETTERS[(first[1] + second[1] + last + len(asked)) % len(_LETTERS)]
    rules = (first,) if "{b}" not in asked else (first, second)
    whole = frozenset(range(1, last + 1))
    a, b = _members(first, last), _members(second, last)
    ruled = []
    for place, rule in enumerate(rules):
        if found := _slip_of_rule(rule, last):
            mistake, answer = found
            changed = (b, a)[place]
            pair = (answer, changed) if place == 0 else (changed, answer)
            ruled.append((mistake, _value(asked, *pair, whole)))
    return _draft(
        tier,
        [_told(name, rule) for name, rule in zip(letters, rules, strict=False)],
        (a, b) if len(rules) > 1 else (a, frozenset()),
        asked,
        last,
        count,
        ruled[:1],
        ("by rule", asked, *rules, last, count),
    )


def _keep(tier: Tier, asked: str, first: Rule, second: Rule, last: int, count: bool) -> bool:
    single = "{b}" not in asked
    if asked not in _ASKED[tier] or (single and second != _RULES[0]):
        return False
    if not single and (first[0] == second[0] or {first[0], second[0]} == {"even", "odd"}):
        return False
    if not single and _RULES.index(first) > _RULES.index(second):
        return False
    whole = frozenset(range(1, last + 1))
    a, b = _members(first, last), _members(second, last)
    value = _value(asked, a, b, whole)
    sizes = (2 <= len(value) <= 9 and value != a) or (asked == "{a}" and 3 <= len(a) <= 8)
    if not sizes or (not single and (a <= b or b <= a)):
        return False
    chosen = (first[1] * 7 + second[1] * 5 + last + _RULES.index(first) + 3 * len(asked)) % 4
    if not single and (chosen == 0) != count:
        return False
    wrong = [answer for _, answer in _wrongs(asked, a, b, whole)]
    if single and (slip := _slip_of_rule(first, last)):
        wrong.append(_value(asked, slip[1], b, whole))
    made: list[object] = [len(answer) if count else answer for answer in wrong if answer]
    mine = len(value) if count else value
    return len({*made}) > 1 and mine not in made


def _listed(topic: Topic, tier: Tier, asked: str, seed: int, count: bool) -> Draft:
    """Return a question about two sets whose members are told one by one."""
    letters = _LETTERS[seed % len(_LETTERS)]
    a, b = _held(seed)
    sentences: list[tuple[str, SetSaid, dict[str, t.Node]]] = []
    for name, held in zip(letters, (a, b), strict=True):
        node = _node(held)
        assert isinstance(node, t.Listing)
        sentences.append(
            (
                f"{name} has the members {{{name}}}.",
                SetSaid(name, "listed", node.parts),
                {name: node},
            )
        )
    return _draft(tier, sentences, (a, b), asked, 12, count, [], ("listed", asked, seed, count))


def _held(seed: int) -> tuple[Held, Held]:
    """Return two sets of some of the numbers from 1 to 12, which share two or three."""
    order = [n for _, n in sorted(zip(scattered(seed, 12, 0, 10_000), range(1, 13), strict=True))]
    shared, more, other = 2 + seed % 2, 2 + seed // 2 % 2, 2 + seed // 4 % 3
    both = order[:shared]
    return (
        frozenset(both + order[shared : shared + more]),
        frozenset(both + order[shared + more : shared + more + other]),
    )


def _keep_listed(tier: Tier, asked: str, seed: int, count: bool) -> bool:
    if asked not in _ASKED[tier] or asked in ("{a}", "{a}′") or (seed % 4 == 0) != count:
        return False
    a, b = _held(seed)
    whole = frozenset(range(1, 13))
    value = _value(asked, a, b, whole)
    wrong = [answer for _, answer in _wrongs(asked, a, b, whole)]
    made: list[object] = [len(answer) if count else answer for answer in wrong]
    return (
        len(value) > 1
        and len({*made}) == len(made)
        and (len(value) if count else value) not in made
    )


def _briefs(tier: Tier) -> tuple[Brief, ...]:
    return (
        Brief(
            _by_rule,
            lambda *values: _keep(tier, *values),
            {
                "asked": _ASKED[tier],
                "first": _RULES,
                "second": _RULES,
                "last": _LAST,
                "count": (False, True),
            },
        ),
        Brief(
            _listed,
            lambda *values: _keep_listed(tier, *values),
            {"asked": _ASKED[tier], "seed": range(1, 61), "count": (False, True)},
        ),
    )


BY_RULE = {tier: _briefs(tier) for tier in Tier}
"""The questions of each tier."""
