"""A key is proved, or disproved, by both roads together and never by one alone."""

import pytest

from itembank.notation.value import NotExact
from itembank.proof import judge as judge_module
from itembank.proof.claim.finding import Finding
from itembank.proof.judge import judge
from itembank.proof.outcome import State
from tests.proof.asked import asked

ROADS = ("by_first_road", "_by_second_road")


def road(says):
    """Return a road that finds no fault, finds the fault that is said, or gets nowhere."""

    def walked(item):
        if says is None:
            raise NotExact("this is past it")
        return Finding("5/6", says)

    return walked


@pytest.mark.parametrize("first", ["", "it comes to 5/6", None])
@pytest.mark.parametrize("second", ["", "it comes to 5/6", None])
def test_one_road_alone_settles_nothing(monkeypatch, first, second):
    for name, says in zip(ROADS, (first, second), strict=True):
        monkeypatch.setattr(judge_module, name, road(says))
    found = judge(asked("find", "1/2 + 1/3", "5/6", "lowest-terms"))
    if first == second == "":
        assert found.state is State.PROVED
    elif first and second:
        assert found.state is State.DISPROVED
    else:
        assert found.state is State.NEEDS_PERSON
        assert found.says
