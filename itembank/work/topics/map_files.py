"""The map of topics as files: a picture for the screen, and pages to print."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import NamedTuple

from itembank.errors import ItembankError
from itembank.files.together import write_whole
from itembank.items.topics.listing import Listed
from itembank.items.topics.registry import listed_topics
from itembank.planning.department.folder import Folder
from itembank.planning.department.folder_checks import find_cycle
from itembank.planning.topic_map.topic_places import TopicPlaces, depths, topic_places
from itembank.work.week.begin import folder_of

NAME = "topic-map"
NO_SCHEME = "Not in a scheme"


class MapFiles(NamedTuple):
    """The files that were written, and how much is on them."""

    svg: Path
    pdf: Path
    topics: int
    arrows: int


class _Plan(NamedTuple):
    columns: dict[str, int]
    heads: tuple[str, ...]
    when: dict[str, str]


def write_topic_map(output: Path, home: Path | None) -> MapFiles:
    """Draw the map of all topics into a folder, and return its files.

    With a department a column is a term of a year in which its schemes teach, else how deep a
    topic rests on others.

    Raises
    ------
    ItembankError
        If topics rest on one another in a circle, the department's files have faults, or the
        folder cannot be written to.
    """
    topics = listed_topics()
    rests = {name: topic.prerequisites for name, topic in topics.items()}
    if cycle := find_cycle(rests):
        raise ItembankError(f"Topics rest on one another in a circle: {' → '.join(cycle)}.")
    plan = _by_depth(rests) if home is None else _by_term(folder_of(home), tuple(topics))
    layout = topic_places(rests, plan.columns, plan.heads)
    try:
        output.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        reason = error.strerror or str(error)
        raise ItembankError(f"{output} cannot be made: {reason}.") from None
    svg, pdf = output / f"{NAME}.svg", output / f"{NAME}.pdf"
    _write(svg, pdf, layout, topics, plan.when)
    return MapFiles(svg, pdf, len(topics), len(layout.edges))


def _by_depth(rests: Mapping[str, tuple[str, ...]]) -> _Plan:
    return _Plan(depths(rests), (), {})


def _by_term(folder: Folder, names: tuple[str, ...]) -> _Plan:
    """Return a column for each term of each year that has a scheme, in the order of the years."""
    terms = folder.calendar.terms
    schemes = sorted(folder.schemes.values(), key=lambda scheme: (scheme.year, scheme.name))
    years = sorted({scheme.year for scheme in schemes})
    heads = [f"Year {year}, {term.name.lower()}" for year in years for term in terms]
    columns: dict[str, int] = {}
    for scheme in schemes:
        for taught in scheme.topics:
            # Between terms it is the one before.
            term = max(sum(term.first <= taught.date for term in terms) - 1, 0)
            place = years.index(scheme.year) * len(terms) + term
            columns.setdefault(taught.topic, place)
    known = {name: columns.get(name, len(heads)) for name in names}
    if len(heads) in known.values():
        heads.append(NO_SCHEME)
    used = sorted(set(known.values()))
    return _Plan(
        {name: used.index(place) for name, place in known.items()},
        tuple(heads[place] for place in used),
        {name: heads[place] for name, place in known.items()},
    )


def _write(
    svg: Path,
    pdf: Path,
    layout: TopicPlaces,
    topics: Mapping[str, Listed],
    when: Mapping[str, str],
) -> None:
    from itembank.figures.svg import svg_of_drawing
    from itembank.pages.documents.topic_map_pages import StrandRows, TopicMapData, topic_map_pages
    from itembank.planning.topic_map.map_drawing import map_drawing

    titles = {name: topic.title for name, topic in topics.items()}
    drawing = map_drawing(layout, titles)
    strands = []
    for lane in layout.lanes:
        names = [name for name in layout.places if name.partition(".")[0] == lane.strand]
        names.sort(key=lambda name: (layout.places[name].column, layout.places[name].row))
        rows = [
            (titles[name], _rests(name, layout, titles) or "–", when.get(name, ""))
            for name in names
        ]
        strands.append(StrandRows(lane.strand.capitalize(), rows))
    said = "; ".join(
        f"{titles[name]}: {_rests(name, layout, titles) or 'rests on none'}"
        for name in layout.places
    )
    intro = (
        f"{len(topics)} topics, and what each rests on: where it goes wrong, look there first. "
        "The last page is the map, with an arrow to each topic from what it rests on."
    )
    data = TopicMapData("Map of topics", intro, strands, drawing, f"Map of topics. {said}.")
    write_whole(svg, svg_of_drawing(drawing, data.words).encode())
    write_whole(pdf, topic_map_pages(data))


def _rests(name: str, layout: TopicPlaces, titles: Mapping[str, str]) -> str:
    return "; ".join(titles[below] for below, above in layout.edges if above == name)
