"""Bands as a form: up to five names from the lowest on, and the score at which each begins."""

from __future__ import annotations

from dataclasses import replace

from itembank.desk.answering.reading import Fields, Reading, row, rows_typed
from itembank.planning.bands.bands import DEFAULT_MARKS, MOST, default_scheme
from itembank.text.whole_number import whole_number
from itembank.work.department.answered import Answers, BandsAnswer


def bands_fields(answers: Answers) -> dict[str, str]:
    """Return the fields that show the bands as they are answered."""
    bands = answers.bands or BandsAnswer()
    count = len(bands.names) or len(bands.cuts) + 1 if bands.names or bands.cuts else 3
    signs = default_scheme(count if 2 <= count <= MOST else 3).signs
    names = bands.names or tuple(sign.name for sign in signs)
    found = {"own": "no" if answers.bands is None else "yes", "out_of": str(bands.out_of)}
    for place, name in enumerate(names):
        found[f"band-{place}-name"] = name
        if bands.cuts and 1 <= place <= len(bands.cuts):
            found[f"band-{place}-low"] = str(bands.cuts[place - 1])
    return found


def read_bands_form(fields: Fields, answers: Answers) -> Reading:
    """Return answers with the bands that a form says."""
    reading = Reading(answers, at={("bands",): "band-0-name"})
    shown = bands_fields(answers)
    typed_over = any(
        said.strip() != shown.get(name, "")
        for name, said in fields.items()
        if name.startswith("band-") or name == "out_of"
    )
    # Who types bands over the usual ones wants them, whatever is ticked above.
    if fields.get("own") != "yes" and not (typed_over and answers.bands is None):
        reading.answers = replace(answers, bands=None)
        return reading
    names: list[str] = []
    lows: list[tuple[int, int | None]] = []
    for number in range(rows_typed(fields, "band")):
        here = row(fields, "band", number, ("name", "low"))
        if not here["name"] and not here["low"]:
            continue
        low = whole_number(here["low"]) if here["low"] else None
        if here["low"] and low is None:
            reading.faults[f"band-{number}-low"] = "A score is a whole number."
        if not here["name"]:
            reading.faults[f"band-{number}-name"] = "What is this band called?"
        names.append(here["name"])
        lows.append((number, low))
    typed = fields.get("out_of", "").strip()
    out_of = whole_number(typed) if typed else DEFAULT_MARKS
    if out_of is None or not 1 <= out_of <= 200:
        reading.faults["out_of"] = "Marks are a whole number from 1 to 200."
    if lows and lows[0][1] not in (None, 0):
        reading.faults[f"band-{lows[0][0]}-low"] = "The lowest band begins at 0."
    above = lows[1:]
    if any(low is not None for _, low in above):
        for number, low in above:
            if low is None:
                reading.faults.setdefault(
                    f"band-{number}-low",
                    "At which score does it begin? Give it for each band above the first, or "
                    "for none.",
                )
    if reading.sound and out_of is not None:
        cuts = tuple(low for _, low in above if low is not None)
        usual = tuple(sign.name for sign in default_scheme().signs)
        kept = () if tuple(names) == usual and cuts else tuple(names)
        bands: BandsAnswer | None = BandsAnswer(kept, cuts, out_of if cuts else DEFAULT_MARKS)
        if tuple(names) == usual and not cuts:
            bands = None
        reading.answers = replace(answers, bands=bands)
    return reading
