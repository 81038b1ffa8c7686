"""Every picture in the guide to writing questions is drawn and proved, and every wording of it."""

import re
import tomllib

import pytest

from itembank.figures import kinds
from itembank.figures.figure import KINDS, FigureError
from itembank.figures.figure_data import from_data
from itembank.items.asks.of_figure import not_rounded
from itembank.proof.outcome import State
from tests.bank.test_guide import judged, rows, section

kinds.load_all()
TITLE = "A question with a picture"
ITEMS = tomllib.loads(re.search(r"```toml\n(.*?)```", section(TITLE), re.DOTALL)[1])["items"]
ASKED, REFUSED = [], []
for row in rows(TITLE):
    if len(row) == 3 and not row[0].startswith("---"):
        ASKED.append(row)
    elif len(row) == 2 and row[0].startswith("`{"):
        REFUSED.append((row[0].strip("`"), row[1].strip("… ")))


@pytest.mark.parametrize("fields", ITEMS, ids=[fields["id"] for fields in ITEMS])
def test_a_picture_of_the_guide_is_proved(fields):
    found = judged(fields)
    assert found.state is State.PROVED, found


def asked():
    """Yield each wording with its key and the figure it is asked of: the last one named."""
    left = iter(ITEMS)
    figure = None
    for kind, words, key in ASKED:
        if kind:
            figure = next(left)["figure"]
            assert figure["kind"] == kind
        yield words, key, figure
    assert next(left, None) is None


@pytest.mark.parametrize(("words", "key", "figure"), list(asked()))
def test_a_wording_of_the_guide_is_proved_of_its_picture(words, key, figure):
    found = judged({"prompt": words, "key": key, "figure": figure})
    assert found.state is State.PROVED, found


IN_A_SENTENCE = " Give your answer to 1 decimal place."


def test_every_way_to_ask_is_in_the_guide():
    """Each wording of a kind that the guide shows reads one of its questions before any other."""
    used = set()
    for words, _, figure in asked():
        bare = not_rounded(words.removesuffix(IN_A_SENTENCE).rstrip(".?"))
        wordings = KINDS[figure["kind"]].wordings
        used.add(
            next(
                (figure["kind"], w.pattern)
                for w in wordings
                if re.fullmatch(w.pattern, bare, re.IGNORECASE)
            )
        )
    shown = {fields["figure"]["kind"] for fields in ITEMS}
    assert {(kind, w.pattern) for kind in shown for w in KINDS[kind].wordings} - used == set()


def test_every_kind_that_words_ask_about_is_in_the_guide():
    """What is only drawn on, as sets to shade, is not for banks to ask."""
    shown = {fields["figure"]["kind"] for fields in ITEMS}
    assert shown == {name for name, kind in KINDS.items() if kind.wordings}


@pytest.mark.parametrize(("data", "said"), REFUSED)
def test_what_the_guide_says_is_refused(data, said):
    with pytest.raises(FigureError, match=re.escape(said)):
        from_data(tomllib.loads(f"figure = {data}")["figure"])
