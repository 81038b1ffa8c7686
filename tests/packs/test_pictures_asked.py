"""A topic whose questions rest on pictures shows one, though others are in words."""

from itertools import count

from itembank.items.measures.kind_told import PICTURE
from itembank.packs.build import choose
from itembank.packs.choosing.candidate import Candidate
from itembank.packs.choosing.cost import mixing
from tests.pages.test_one_slide import request_on

CHARTS = ("statistics.bar-charts", "statistics.pie-charts", "graphs.coordinates")


def candidates() -> tuple[Candidate, Candidate, Candidate]:
    """Return two questions with a picture and one without, of one topic with other kinds."""
    read: list[Candidate] = []
    plain: list[Candidate] = []
    for seed in count():
        [starter] = choose(request_on(*CHARTS, "ratio.share", seed=seed)).versions
        for candidate in starter:
            if candidate.item.topic == CHARTS[0]:
                read += [candidate] if candidate.kind == PICTURE else []
                plain += [candidate] if candidate.item.figure is None else []
        if len(read) > 1 and plain:
            return *read[:2], plain[0]
    raise AssertionError


def test_the_first_picture_of_a_topic_costs_nothing_and_the_second_does():
    first, second, plain = candidates()
    assert mixing(first, []) == 0.0
    assert mixing(first, [plain]) == 0.0
    assert mixing(second, [first]) > 0.0
    other = next(
        candidate
        for seed in count()
        for candidate in choose(request_on(*CHARTS, "ratio.share", seed=seed)).versions[0]
        if candidate.item.topic == CHARTS[1] and candidate.kind == PICTURE
    )
    # A picture of another topic is none of this one.
    assert mixing(first, [other]) == 0.0
