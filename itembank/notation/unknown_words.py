"""Runs of letters that are a word, not a product: *60 sweets*, *sin(x + y)*, *3 apples*.

Side by side, letters are multiplied, as in V = lwh. Nobody who writes *60 sweets* means
60 × s × w × e × e × t × s, so what looks like a word is not read at all. A run of letters is
taken for a product where

* every letter of it is known to stand for a number: it stands alone somewhere in the question;
* or it has no vowel and is short: lwh, PRT, mgh, xyz;
* or its letters come in the order of the alphabet, as in a product in its usual form (abc,
  3axy), and it is no common word;
* or capitals stand in it as in no word: IVt;
* or it is one or two letters, and no name, slip for a unit or little word in its place.

After a number and a space the bar is higher, since a product is written close up: 60 abc.
The rule is this project's own; it is held to lists of formulae and words by its tests.
"""

from __future__ import annotations

import re
from functools import lru_cache
from typing import NamedTuple

from itembank.notation.tree.line_signs import (
    CLOCK_12,
    GLUED_UNIT,
    OF,
    OR,
    ROOT_WORD,
    SPACED_UNIT,
    TRIG_WORD,
)
from itembank.notation.unit_names import NAMES
from itembank.notation.units import CURRENCY, UNITS
from itembank.text.late_pattern import late

_RUN = late("[A-Za-z]+")
_TWO = late("[A-Za-z]{2}")
_LETTER = late("[A-Za-z]")
_NONE = frozenset[str]()
_NOT_LETTERS = late(
    rf'"[^"]*"|{SPACED_UNIT}|{GLUED_UNIT}|{OF}|{OR}|{ROOT_WORD}|{TRIG_WORD}|{CLOCK_12}'
)
_FUNCTIONS = late(
    "(?:arc)?(?:sin|cos|tan)h?|cosec|log|exp|max|min|mod|gcd|hcf|lcm|sqrt|cbrt|floor|ceil|round",
    re.IGNORECASE,
)
# These may be products: a × b × s. Followed by a bracket they are not meant so.
_ONLY_CALLED = frozenset({"abs", "det", "lim", "cot", "sec", "ln", "int", "lg"})
_VOWEL = late("[aeiou]", re.IGNORECASE)
_LITTLE = frozenset(re.findall("..", "amanasatbebydogoheifinisitmemynoofonorpmsotoupusvswe"))
# Words whose letters come in the order of the alphabet, or that have no vowel.
_COMMON = frozenset(
    re.findall(
        "[a-z]+",
        """
    abbey abbot abet abhor ably abort accent accept access accost ace aces act add adds
    adept adios adopt aegis affix aft aglow ago ail aim aims air airs airy all allot allow
    alloy ally almost alms alp alps alt amp amps ann ans ant ants any app apps apt art arts
    arty ask ass bee beef been beep beer beers bees beet befit beg begin begins begot begs
    bell bells belly below belt belts ben bent berry best bet bets bijou bill billow bills
    billy bin bins bio biopsy bit bits blot blow boo boor boost boot boots booty bop boss
    bossy bow box boxy boy btl btls btw buy cell cello cellos cells cent cents chill chills
    chilly chimp chin chino chinos chins chintz chip chips chit choosy chop choppy chops
    chow city clop clot clots cloy coo coop coops coot cop cops copy cost cosy cot cots cow
    coy cry crypt ctd deem deems deep deer deft defy deity dell demo demos den dens dent
    dents deny dew dewy dim dims din dino dins dint dip dips dirt dirty ditty door doors dos
    dot dots dotty dry eel eels egg eggs ego egos ells elm elms empty emu emus envy err
    error errs est fee feel feels fees feet fell fells felt few fill fills filly film films
    filmy fin fins fir firs first fish fist fists fit fits fix fizz floor floors flop floppy
    flops floss flow flows flu flux fly foot for fort fortnight forts forty fox foxy fps fry
    ghost gill gills gilt gin gins gist glop glory gloss glossy glow glows gnu gnus goo gory
    got guy gym gyms hill hills hilly hilt him hims hint hints hip hippy hips his hiss hit
    hits hmm hoop hoops hoot hoots hop hops host hot how hrs hymn ill ills imp imps inn inns
    ins ivy jot jots joy kgs kiln kin kiss kit kmh knot knots knotty know knows kph kth lbs
    lhs loop loops loos loot lop lorry loss lost lot lots low lows ltd ltr lux lynx moo moor
    moors moos mop mops moss mossy most mow mph mrs mths mtr mtrs myth myths noon nor not
    nov now nth oops opt ozs pcm pcs pct pkt pkts ply ppl pry pts pty pygmy pyx qty rhs
    rhythm rpm rst shy sky sly spy std sty sync tbsp thy try tryst tsp txt why wks wry yds
    yrs
    """,
    )
)
_UNIT_LIKE = frozenset(NAMES) | {unit.lower() for unit in UNITS if unit.isalpha()}


class Told(NamedTuple):
    """A word that cannot be read: where it stands in the plain text, and what to do."""

    offset: int
    message: str


def letters_alone(plain: str) -> frozenset[str]:
    """Return the letters that stand alone in a line, so that each is known to be a number.

    >>> sorted(letters_alone("2c × 3a = 6ac + 5 kg"))
    ['a', 'c']
    """
    if not _LETTER.search(plain):
        return _NONE
    return frozenset(run[0] for run in _RUN.finditer(_blanked(plain)) if len(run[0]) == 1)


def letters_used(plain: str, letters: frozenset[str]) -> frozenset[str]:
    """Return the letters that a line uses for numbers, alone or in products that can be read.

    `letters` are known from other lines. Those of 2lb + 2bh + 2lh tell that 6lb is a product too.

    >>> [sorted(letters_used(text, frozenset())) for text in ("2lb + 2bh + 2lh", "x + 6 sweets")]
    [['b', 'h', 'l'], ['x']]
    """
    if not _LETTER.search(plain):
        return _NONE
    if unknown_word(plain, letters):
        return letters_alone(plain)
    return frozenset(letter for run in _RUN.finditer(_blanked(plain)) for letter in run[0])


def unknown_word(plain: str, letters: frozenset[str] = frozenset()) -> Told | None:
    """Return the first word in a line that is no product of letters, or None.

    `letters` are known to stand for numbers, besides those that stand alone in the line.

    >>> [unknown_word(text) for text in ("V = lwh", "3abc", "v = u + at", "E = mgh", "I = PRT/100")]
    [None, None, None, None, None]
    >>> unknown_word("60 sweets").offset
    3
    """
    # The quick way out for most lines.
    if not _TWO.search(plain):
        return None
    blanked = _blanked(plain)
    runs = list(_RUN.finditer(blanked))
    if not any(len(run[0]) > 1 for run in runs):
        return None
    known = letters | {run[0] for run in runs if len(run[0]) == 1}
    for run in runs:
        word = run[0]
        if len(word) == 1:
            continue
        before, after = blanked[: run.start()], blanked[run.end() :]
        # A run does not vouch for itself: only what else is on the line makes its letters known.
        elsewhere = known | {c for rival in runs if rival is not run for c in rival[0]}
        if message := _fault(word, before, after, known, elsewhere):
            return Told(run.start(), message)
    return None


@lru_cache(maxsize=1 << 12)
def _blanked(plain: str) -> str:
    """Return a line with the units and words that are known in it taken out."""
    # As many characters as before, so that offsets still say where a word stands.
    return _NOT_LETTERS.sub(lambda found: "\0" * len(found[0]), plain)


def _fault(
    word: str, before: str, after: str, known: frozenset[str], elsewhere: frozenset[str]
) -> str:
    called = after.startswith(("(", " ("))
    if found := _function(word, called, after):
        return (
            f"‘{found}’ is the name of a function, which cannot be read: "
            "where letters are multiplied, put × between them."
        )
    if set(word) <= known:
        return ""
    spaced = bool(re.search(r"[0-9\u0307□)] $", before))
    close = bool(re.search(r"[0-9\u0307□]$", before))
    if (spaced or close) and (fault := _unit_fault(word, before, close, elsewhere)):
        return fault
    apart = bool(re.search(r"[\w□)] $", before) or re.match(r" [\w□(]", after))
    if _is_product(word, spaced, apart):
        return ""
    if spaced or close:
        number = re.search(r"[0-9.]*[\u0307□)]? ?$", before)
        shown = number[0].strip() if number else ""
        if shown and shown[-1].isdigit():
            return (
                f"‘{word}’ is not a unit that is known and no product of letters: "
                f"write {{{shown}}} {word}, or put × between letters."
            )
    return (
        f"‘{word}’ is a word and no product of letters: write it outside the mathematics, "
        "or put × between letters."
    )


def _function(word: str, called: bool, after: str) -> str:
    """Return the name of a function that a run of letters begins with, holds or is."""
    low = word.lower()
    argument = called or bool(re.match(r" ?[0-9A-Za-zΑ-ω√π]", after))
    if low in _ONLY_CALLED:
        return word if (argument if low in ("ln", "lg") else called) else ""
    if re.fullmatch("ln[a-z]", word) and not called:
        return "ln"
    found = _FUNCTIONS.search(word)
    # sinx and absinC, but not a word such as cost or minutes.
    return found[0] if found and len(word) - len(found[0]) <= 3 and low not in _COMMON else ""


def _unit_fault(word: str, before: str, close: bool, elsewhere: frozenset[str]) -> str:
    """Return what is wrong where a run after a number is a slip for a unit."""
    low = word.lower()
    if low in ("pound", "pounds"):
        return f"‘{word}’ may be money or mass: write £ before the number, or lb after it."
    # Where all its letters are used elsewhere too, lb is l × b.
    if low not in _UNIT_LIKE or set(word) <= elsewhere:
        return ""
    sign = NAMES.get(low, low)
    if sign == "°":
        return ""
    unit = UNITS.get(sign) or CURRENCY.get(sign)
    if unit is None:
        return ""
    number = re.search(r"[0-9.]*[\u0307□)]? ?$", before)
    shown = number[0].strip() if number else ""
    if close and len(word) == 2:
        spread = " × ".join(word)
        return (
            f"{shown}{word} can be read in two ways: write {shown} {sign} for {unit.many}, "
            f"or {shown} × {spread}."
        )
    return f"‘{word}’ is no sign of a unit: write {sign} for {unit.many}."


def _is_product(word: str, spaced: bool, apart: bool) -> bool:
    low = word.lower()
    # Two letters are a product more often than a word, but for the small words between others.
    if len(word) == 2:
        return not (apart and low in _LITTLE)
    if spaced or low in _COMMON:
        return False
    if word != low and word == word.capitalize() and _VOWEL.search(low):
        return False  # Ann and Ben, not A × n × n
    if len(set(low)) == 1 or (list(low) == sorted(low) and low not in NAMES):
        return True
    if word != low and word != word.upper() and word != word.capitalize():
        return len(word) <= 4
    return len(word) <= 4 and not _VOWEL.search(low) and low not in NAMES
