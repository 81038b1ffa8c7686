"""The parts of the conversation as pages: each a step with a form, one for each year's topics."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from itembank.data_class import dataclass
from itembank.desk.answering.bands_form import bands_fields, read_bands_form
from itembank.desk.answering.classes_form import classes_fields, paste_classes, read_classes
from itembank.desk.answering.reading import Fields, Reading, rows_typed
from itembank.desk.answering.topics_form import (
    paste_topics,
    read_topics,
    ready_topics,
    topics_fields,
)
from itembank.desk.answering.year_form import paste_year, read_year, year_fields
from itembank.errors import ItembankError, NotFound
from itembank.planning.bands.bands import MOST as MOST_BANDS
from itembank.today import today
from itembank.work.department.answered import Answers, SchemeAnswer
from itembank.work.department.wrong import Part, Wrong

_CALLED: dict[Part, str] = {
    "school": "The school",
    "year": "The school year",
    "classes": "Classes",
    "topics": "Topics",
    "bands": "Bands",
}
_BEGINS: dict[Part, str] = {
    "school": "school",
    "year": "term-",
    "classes": "class-",
    "topics": "topic-",
    "bands": "own",
}
"""How the fields begin without which a form says nothing of a part."""
SPARE = {"term": 1, "off": 3, "class": 3, "topic": 3, "band": 2}


@dataclass(frozen=True, slots=True)
class Step:
    """One page of the conversation: its address, its part, and the scheme that it is about."""

    address: str
    part: Part
    called: str
    scheme: SchemeAnswer | None = None


def steps_of(answers: Answers) -> list[Step]:
    """Return the steps in their order; topics have one for each scheme, or for each year.

    >>> from itembank.work.department.answered import ClassAnswer
    >>> [step.address for step in steps_of(Answers(classes=(ClassAnswer("8K", 8),)))]
    ['school', 'year', 'classes', 'topics-year-8', 'bands']
    """
    schemes = {scheme.name: scheme for scheme in answers.schemes}
    for year in answers.years:
        of_year = [group for group in answers.classes if group.year == year]
        if any(answers.scheme_for(group) is None and not group.scheme for group in of_year):
            scheme = SchemeAnswer(f"year-{year}", year)
            schemes.setdefault(scheme.name, scheme)
    ordered = sorted(schemes.values(), key=lambda scheme: (scheme.year, scheme.name))
    found = [Step(part, part, _CALLED[part]) for part in ("school", "year", "classes")]
    for scheme in ordered:
        alike = sum(scheme.year == rival.year for rival in ordered) > 1
        called = f"Topics of year {scheme.year}" + (f" ({scheme.name})" if alike else "")
        found.append(Step(f"topics-{scheme.name}", "topics", called, scheme))
    return [*found, Step("bands", "bands", _CALLED["bands"])]


def step_at(answers: Answers, address: str) -> Step:
    """Return the step with an address.

    Raises:
        NotFound: there is none.
    """
    for step in steps_of(answers):
        if step.address == address:
            return step
    raise NotFound("Nothing of that name is asked here.")


def fields_of(step: Step, answers: Answers) -> dict[str, str]:
    """Return the fields that show what is answered in a step."""
    match step.part:
        case "school":
            return {"school": answers.school}
        case "year":
            return year_fields(answers)
        case "classes":
            return classes_fields(answers)
        case "topics":
            assert step.scheme is not None
            return topics_fields(step.scheme)
        case _:
            return bands_fields(answers)


def rows_shown(step: Step, fields: Fields) -> dict[str, int]:
    """Return how many rows of each kind a form shows: those in use, and some to write in."""
    found = {kind: rows_typed(fields, kind) + spare for kind, spare in SPARE.items()}
    return found | {"band": MOST_BANDS}


def read_step(step: Step, fields: Fields, answers: Answers) -> Reading:
    """Return what the form of a step says; what is pasted or wanted ready goes before its rows."""
    do, pasted = fields.get("do", ""), fields.get("pasted", "")
    reading = _read_rows(step, fields, answers)
    if do == "ready" and step.scheme is not None:
        return ready_topics(answers, step.scheme)
    if not pasted.strip():
        if do == "paste":
            reading.faults.setdefault("pasted", "Paste some rows first.")
        return reading
    try:
        more = _pasted(step, pasted, reading.answers, "leave_out" in fields)
    except ItembankError as error:
        more = Reading(reading.answers, general=[str(error)])
    if more.general:
        more.faults["pasted"] = "\n".join(dict.fromkeys(more.general))
        more.general = []
    more.faults = reading.faults | more.faults
    return more


def _read_rows(step: Step, fields: Fields, answers: Answers) -> Reading:
    if not any(name.startswith(_BEGINS[step.part]) for name in fields):
        return Reading(answers)  # a form without its rows takes nothing away
    match step.part:
        case "school":
            name = " ".join(fields.get("school", "").split())
            return Reading(replace(answers, school=name), at={("school",): "school"})
        case "year":
            return read_year(fields, answers, today())
        case "classes":
            return read_classes(fields, answers)
        case "topics":
            assert step.scheme is not None
            return read_topics(fields, answers, step.scheme)
        case _:
            return read_bands_form(fields, answers)


def _pasted(step: Step, text: str, answers: Answers, leave_out: bool) -> Reading:
    match step.part:
        case "year":
            return paste_year(text, answers, today())
        case "classes":
            return paste_classes(text, answers)
        case "topics":
            assert step.scheme is not None
            return paste_topics(text, answers, step.scheme, leave_out)
        case _:
            return Reading(answers)


def faults_of(step: Step, answers: Answers, wrong: Sequence[Wrong]) -> list[Wrong]:
    """Return those faults of answers that are put right in a step."""
    found = [fault for fault in wrong if fault.part == step.part]
    if step.scheme is None:
        return found
    names = [scheme.name for scheme in answers.schemes]
    if step.scheme.name not in names:
        message = f"What is taught in year {step.scheme.year}, and when?"
        return [Wrong("topics", message, ("schemes",))]
    place = names.index(step.scheme.name)
    return [fault for fault in found if fault.field[:2] == ("schemes", place)]
