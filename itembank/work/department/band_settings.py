"""Bands as a department or a class states them: signs, cut scores and next tasks, as typed.

Fields are named ``band-0-name`` and so on, the lowest band first; ``band-0-task-title`` is of
its next task. Of a band that is left as it is, all that the file says stays.
"""

from __future__ import annotations

import copy
from collections.abc import Mapping
from typing import Any

from itembank.planning.bands.band_signs import DEFAULT_SIGNS, Sign
from itembank.planning.bands.bands import DEFAULT_MARKS, FEWEST, MOST
from itembank.text.whole_number import whole_number
from itembank.work.department.as_files import letters
from itembank.work.department.made import Kept
from itembank.work.department.settings import Data, department_data, table_of, write_data

PALETTE = {sign.colour: sign.colour_name for sign in DEFAULT_SIGNS[MOST]}
"""The colours of signs: each stands out from white, and they stay apart for colour-blind eyes."""
SIGN_FIELDS = ("name", "letter", "shape", "colour", "low")
TASK_WORDS = ("title", "where", "first", "how", "stuck", "finished")
TASK_FIELDS = (*TASK_WORDS, "tier", "mode", "worked_example")


def bands_shown(kept: Kept, class_name: str = "") -> dict[str, str]:
    """Return the fields that show the bands of the department, or those of a class's own.

    Where it states none they are the usual three, and ``own`` is *no*.

    Raises:
        ItembankError: there is no such class.
    """
    table, _ = table_of(department_data(kept), class_name)
    bands = table.get("bands")
    return {"own": "no" if bands is None else "yes", **_fields(bands or {})}


def _fields(bands: Mapping[str, Any]) -> dict[str, str]:
    rows = bands.get("band", [])
    cuts = list(bands.get("cuts", ()))
    count = len(rows) or (len(cuts) + 1 if cuts else 3)
    found = {"out_of": str(bands.get("out_of", DEFAULT_MARKS))}
    usual = usual_signs(count)
    for place in range(count):
        here = f"band-{place}"
        if rows:
            row = rows[place]
            low = row.get("lowest", "") if place else ""
        else:
            row = _sign_row(usual[place])
            low = cuts[place - 1] if cuts and place else ""
        for name in ("name", "letter", "shape"):
            found[f"{here}-{name}"] = str(row.get(name, ""))
        colour = str(row.get("colour", ""))
        found[f"{here}-colour"] = f"{colour.upper()} {row.get('colour_name', '')}".strip()
        found[f"{here}-low"] = str(low)
        task = row.get("next_task", {})
        for name in TASK_FIELDS:
            value = task.get(name, "")
            said = ("yes" if value else "no") if isinstance(value, bool) else str(value)
            found[f"{here}-task-{name}"] = said
    return found


def usual_signs(count: int) -> tuple[Sign, ...]:
    """Return the usual signs of so many bands, or as many as there are."""
    return DEFAULT_SIGNS[min(max(count, FEWEST), MOST)]


def _sign_row(sign: Sign) -> Data:
    return {
        "name": sign.name,
        "letter": sign.letter,
        "shape": sign.shape,
        "colour": sign.colour,
        "colour_name": sign.colour_name,
    }


def change_bands(kept: Kept, typed: Mapping[str, str], class_name: str = "") -> dict[str, str]:
    """Change the bands of a department or a class to those typed; return what is wrong by field.

    Where anything is wrong nothing is written; what is about no field stands under "".

    Raises:
        ItembankError: there is no such class, somebody changed the file meanwhile, or it cannot
            be written.
    """
    data = copy.deepcopy(department_data(kept))
    table, place = table_of(data, class_name)
    faults: dict[str, str] = {}
    numbers: list[int] = []
    was = bands_shown(kept, class_name)
    changed = any(
        said.strip() != was.get(name, "")
        for name, said in typed.items()
        if name.startswith("band-") or name == "out_of"
    )
    # Who types bands over the usual ones wants them, whatever is ticked above.
    if typed.get("own") != "yes" and not (changed and was["own"] == "no"):
        table.pop("bands", None)
    else:
        if changed or was["own"] == "no":
            made, numbers = _table(typed, table.get("bands") or {}, faults)
            table["bands"] = made
    if faults:
        return faults
    for path, message in write_data(kept, data):
        faults.setdefault(_field(path[len(place) :], numbers), message)
    return faults


def _field(path: tuple[str | int, ...], numbers: list[int]) -> str:
    """Return the field in which a fault of the file's is put right; "" for none."""
    match path:
        case ("bands", "band", int(place), "next_task", str(name)) if place < len(numbers):
            return f"band-{numbers[place]}-task-{name}"
        case ("bands", "band", int(place), *rest) if place < len(numbers):
            name = str(rest[0]) if rest else "name"
            shown = {"lowest": "low", "highest": "low", "colour_name": "colour"}.get(name, name)
            return f"band-{numbers[place]}-{shown}"
        case ("bands", "out_of", *_):
            return "out_of"
        case ("bands", *_):
            return "band-0-name"
    return ""


def _table(
    typed: Mapping[str, str], before: Data, faults: dict[str, str]
) -> tuple[Data, list[int]]:
    """Return the table that says what is typed, and the number of each of its bands."""

    def said(number: int, name: str) -> str:
        return " ".join(typed.get(f"band-{number}-{name}", "").split())

    numbers = [
        number
        for number in range(MOST)
        if said(number, "name") or said(number, "low") or said(number, "letter")
    ]
    if not FEWEST <= len(numbers) <= MOST:
        faults["band-0-name"] = f"There are {FEWEST} to {MOST} bands."
        return {}, numbers
    out_of = whole_number(typed.get("out_of", "").strip() or str(DEFAULT_MARKS))
    if out_of is None:
        faults["out_of"] = "Marks are a whole number."
    lows = _lows(numbers, said, faults)
    names = [said(number, "name") for number in numbers]
    own = {said(n, "name"): said(n, "letter").upper() for n in numbers if said(n, "letter")}
    rows: list[Data] = []
    for number, letter in zip(numbers, letters(names, own), strict=True):
        usual = usual_signs(len(numbers))[len(rows)]
        old = before.get("band", [])
        row = copy.deepcopy(old[number]) if number < len(old) else {}
        task = row.pop("next_task", {})
        colour, _, colour_name = said(number, "colour").partition(" ")
        row |= {
            "name": said(number, "name"),
            "letter": said(number, "letter") or letter,
            "shape": said(number, "shape") or usual.shape,
            "colour": colour or usual.colour,
            "colour_name": colour_name or PALETTE.get(colour, usual.colour_name),
        }
        row.pop("lowest", None)
        row.pop("highest", None)
        if lows:
            row["lowest"] = lows[len(rows)]
        task = _task(said, number, task)
        rows.append({**row, "next_task": task} if task else row)
    plain = [_sign_row(sign) for sign in usual_signs(len(numbers))]
    bare = [{key: row[key] for key in row if key not in ("lowest", "next_task")} for row in rows]
    # The usual signs with other scores are written as the short form that people write.
    if (
        lows
        and bare == plain
        and not any("next_task" in row for row in rows)
        and ("band" not in before)
    ):
        return {"out_of": out_of, "cuts": lows[1:]}, numbers
    head = {"out_of": out_of} if lows or "out_of" in before else {}
    return {**head, "band": rows}, numbers


def _lows(numbers: list[int], said: Any, faults: dict[str, str]) -> list[int]:
    """Return the lowest score of each band, or none where the usual rule is to hold."""
    typed = [said(number, "low") for number in numbers]
    if not any(typed[1:]):
        return []
    found = [0]
    for number, text in zip(numbers[1:], typed[1:], strict=True):
        low = whole_number(text) if text else None
        if low is None:
            faults[f"band-{number}-low"] = (
                "A score is a whole number."
                if text
                else "At which score does it begin? Give it for each band above the first, or none."
            )
        found.append(low or 0)
    return found


def _task(said: Any, number: int, before: Data) -> Data:
    task = dict(before)
    for name in TASK_FIELDS:
        text = said(number, f"task-{name}")
        if not text:
            task.pop(name, None)
        elif name == "worked_example":
            task[name] = text == "yes"
        else:
            task[name] = text
    return task
