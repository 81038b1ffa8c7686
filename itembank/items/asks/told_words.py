"""The words that may stand in a sentence which only says what a figure shows.

No proof reads such a sentence, so that a word in it that nobody looked at may change everything:
*The chart shows the running total of trays*, *Here is a prism with a hole*. It has the figure's own
words, and those of this list, which say where things are, who has them and what is done to them;
where it has another one, a person decides.

>>> strange_word("the trays sold on a stall", "Trays: Monday 12, Tuesday 8.")
''
>>> strange_word("the running total of trays", "Trays: Monday 12, Tuesday 8.")
'running'
"""

from __future__ import annotations

import re

from itembank.figures.kinds.chart_held import COUNTED_PEOPLE, PEOPLE
from itembank.notation.units import UNITS
from itembank.text.in_words import in_full

_BINDING = (
    "a an the some this these and or of in on at for from to with into that which who whose how "
    "what where its his her their our it they is are was were has have had be been being by"
)
_DONE = (
    "make makes made take takes taken sell sells sold buy bought came come comes go goes went "
    "travel travelled visit visited chose choose chosen picked like liked own owns owned keep kept "
    "lend lent borrow borrowed read mend mended repaired grow grew grown plant planted study "
    "studied play played swim swam ride rode ran walk walked watch watched eat ate eaten drank "
    "bake baked cook cooked serve served deliver delivered collect collected count counted caught "
    "need needed cost leave leaves left arrive arrives stop stops drawn shared folded cut used "
    "given asked ordered won late absent returned parked random"
)
_PLACES = (
    "place shop shops stall market garden gardens farm greenhouse shed barn field bed plot "
    "allotment orchard park playground school schools class classroom library hall room office "
    "kitchen canteen cafe restaurant bakery workshop factory garage depot station stop road street "
    "lane town village city club clubs pool gym gala race match tournament league fair fete jetty "
    "harbour river lake beach island zoo museum theatre cinema concert hospital hotel hostel camp "
    "house home lesson bag box bowl jar tin drawer barrel tank tub tray shelf table board wall "
    "floor changing car"
)
_THINGS = (
    "pieces parts things items objects tickets ticket books book parcels letters cards counters "
    "counter beads bead balls ball marbles discs tiles sticks cubes coins dice spinner spinners "
    "plant plants flower flowers bulbs trees tree seeds seedlings fruit fruits vegetables marrows "
    "apples pears plums carrots beans peas leeks potatoes tomatoes eggs hens cakes loaves dishes "
    "dish meals drinks water rain candles clothes caps goggles floats bikes buses bus coach "
    "coaches van vans car cars lorry lorries train trains tram trams boat boats tractor tractors "
    "bicycle bicycles vehicles animal animals pets pet bird birds sport sports hobby "
    "hobbies languages subjects colours colour shapes names favourite stroke strokes prize raffle trip "
    "trips journey journeys timetable route values plan net number numbers family families box boxes "
    "tin tins swimming day week month year weekday triangular rectangular swimmer cyclist walker "
    "runner hiker driver"
)
_COLOURS = "red blue green yellow white black orange purple pink brown grey gold silver"
_PLAIN = frozenset(f"{_BINDING} {_DONE} {_PLACES} {_THINGS} {_COLOURS}".split())
_AT_A_PLACE = re.compile(r"\b(?:in|on|at|from) an? ([a-z’'-]+)$")
"""How a sentence may end in a word that is not listed: *at a lido*. It says where, and no more."""
_NO_PLACE = frozenset(
    re.findall(
        r"\w+",
        "sample sale morning afternoon evening night moment minute second third fifth tenth row "
        "ratio rush hurry way square cube sum total pack packet bundle dozen pair group mirror "
        "drought survey guess test dream loop circle spiral go draw tie slope curve angle tilt",
    )
)


def strange_word(told: str, shown: str) -> str:
    """Return a word of what is told beside a question that is not known to be plain, or ``""``.

    `shown` is what the figure says of itself. Names with a capital may stand anywhere.

    >>> strange_word("the beads sold at a lido", "Beads: red 3."), strange_word("teachers", "Pupils")
    ('', 'teachers')
    """
    own = {form for word in _words(shown) for form in _forms(word)}
    people = own & COUNTED_PEOPLE
    ending = _AT_A_PLACE.search(told)
    place = ending[1] if ending and ending[1] not in _NO_PLACE else ""
    for word in re.findall(r"[A-Za-z][a-z’'-]*", re.sub(r"\{[a-z]\}", " ", told)):
        plain = word.casefold().removesuffix("’s").removesuffix("'s").strip("’'-")
        if word[0].isupper() or plain in own or plain in _PLAIN or word == place:
            continue
        if _is_unit(plain):
            continue  # whether the figure bears that unit is asked elsewhere
        if {plain, f"{plain}s"} & COUNTED_PEOPLE and (not people or plain in PEOPLE):
            continue
        return word
    return ""


def _is_unit(word: str) -> bool:
    return word in _UNITS


_UNITS = {name for unit in UNITS.values() for name in (unit.singular, unit.many)}


def _words(text: str) -> set[str]:
    return {*re.findall(r"[a-z’'-]+", f"{text} {in_full(text)}".casefold())}


def _forms(word: str) -> tuple[str, ...]:
    return word, f"{word}s", f"{word}es", word.removesuffix("s")
