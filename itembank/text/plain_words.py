"""Words of a story that say where, who and what, and change no number: *garden*, *sold*, *red*.

Sentences that no proof reads are held to such words, since any other one may change everything: a
*running* total, *alternate* patterns, a prism with a *hole*. Add a word only if no question could
ask for another number because of it.

>>> "garden" in PLAIN, "running" in PLAIN
(True, False)
"""

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
    "counter beads bead balls ball marbles discs tiles cubes coins dice spinner spinners "
    "plant plants flower flowers bulbs trees tree seeds seedlings fruit fruits vegetables marrows "
    "apples pears plums carrots beans peas leeks potatoes tomatoes eggs hens cakes loaves dishes "
    "dish meals drinks water rain candles clothes caps goggles floats bikes buses bus coach "
    "coaches van vans car cars lorry lorries train trains tram trams boat boats tractor tractors "
    "bicycle bicycles vehicles animal animals pets pet bird birds sport sports hobby hobbies "
    "languages subjects colours colour shapes names favourite stroke strokes prize raffle trip "
    "trips journey journeys timetable route values plan number numbers family families box "
    "boxes tin tins swimming day week month year weekday triangular rectangular swimmer cyclist "
    "walker runner hiker driver"
)
_COLOURS = "red blue green yellow white black orange purple pink brown grey gold silver"
PLAIN = frozenset(f"{_BINDING} {_DONE} {_PLACES} {_THINGS} {_COLOURS}".split())
"""Where things are, who has them, what is done to them."""
