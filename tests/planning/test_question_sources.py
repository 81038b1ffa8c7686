"""What one place states about where questions come from goes before what another does."""

import pytest

from itembank.planning.department.question_sources import StatedSources

SIGNED = StatedSources(questions_from="bank", signed_only=True)


@pytest.mark.parametrize(
    ("here", "signed"),
    [
        (StatedSources(), True),
        (StatedSources(prefer="bank"), True),
        (StatedSources(questions_from="both"), True),
        (StatedSources(questions_from="both", signed_only=False), False),
        # Generated questions carry no sign-off, so nobody who wants them alone asks for it ...
        (StatedSources(questions_from="generated"), None),
        # ... but where somebody does, it is not forgotten.
        (StatedSources(questions_from="generated", signed_only=True), True),
    ],
)
def test_who_wants_signed_questions_alone(here, signed):
    assert here.over(SIGNED).signed_only == signed


def test_a_false_and_an_empty_list_are_stated_too():
    stated = StatedSources(banks=(), signed_only=False, beyond_year=False)
    found = stated.over(
        StatedSources(banks=("a",), signed_only=True, beyond_year=True, prefer="bank")
    )
    assert (found.banks, found.signed_only, found.beyond_year) == ((), False, False)
    assert found.prefer == "bank"
