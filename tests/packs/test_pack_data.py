"""The values of a pack: as pydantic's models of them would be, without pydantic."""

import datetime
import json
import pickle

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import ValidationError

from itembank.packs.data.pack import Band, Lesson, Look, Pack, Sheet, TopicLine
from itembank.packs.data.pack_data import Data, said
from itembank.packs.data.pack_item import Ask, Key, Maths, PackItem, TextRun
from itembank.packs.data.pack_models import data_of, model_of
from tests.pages.sheet_samples import real_pack

texts = st.text(st.characters(exclude_categories=["Cs"]))
values = st.recursive(
    st.none() | st.booleans() | st.integers(-(2**60), 2**60) | texts,
    lambda inner: st.lists(inner) | st.dictionaries(texts, inner),
    max_leaves=12,
)


class Held(Data):
    """Whatever a file may hold."""

    name: str
    day: datetime.date
    share: float
    held: dict[str, object]
    more: list[object] = said(default=[])
    also: tuple[str, ...] = ()


held = st.builds(
    lambda **parts: Held(**parts),
    name=texts,
    day=st.dates(),
    share=st.decimals(0, 100, places=2).map(float),
    held=st.dictionaries(texts, values),
    more=st.lists(values),
    also=st.lists(texts).map(tuple),
)


@given(held, st.sampled_from([None, 1, 2]))
def test_it_is_written_as_pydantic_writes_its_model(value, indent):
    model = model_of(Held)(**value.model_dump())
    assert value.model_dump_json(indent=indent) == model.model_dump_json(indent=indent)
    assert value.model_dump() == model.model_dump()
    assert value.model_dump(mode="json") == model.model_dump(mode="json")


@given(held)
def test_what_is_written_is_read_back(value):
    assert Held.model_validate_json(value.model_dump_json()) == value
    assert Held.model_validate(value.model_dump()) == value
    assert pickle.loads(pickle.dumps(value)) == value


def test_a_whole_pack_is_what_its_model_says_it_is():
    pack = real_pack("8K")
    model = model_of(Pack).model_validate_json(pack.model_dump_json(), strict=True)
    assert pack.model_dump_json(indent=1) == model.model_dump_json(indent=1)
    assert data_of(model) == pack
    json.loads(pack.model_dump_json())


def test_nothing_changes_once_it_is_made():
    line = TopicLine(id="ratio.share", title="Sharing in a ratio")
    with pytest.raises(AttributeError, match="‘title’ of TopicLine cannot be changed"):
        line.title = "Other"
    with pytest.raises(AttributeError, match="cannot be removed"):
        del line.title
    assert line.model_copy(update={"title": "Other"}).title == "Other"
    assert line.title == "Sharing in a ratio"
    first, other = Ask(kind="find", target=["1"]), Ask(kind="find", target=["1"])
    first.relations.append("a = 1")
    assert other.relations == [], "a default is nobody's own"


def test_values_are_equal_that_hold_the_same():
    faces = {"mathml": "<mn>1</mn>", "line": "1", "words": "1"}
    assert Maths(**faces) == Maths(**faces) != Maths(**faces | {"line": "2"})
    assert len({Maths(**faces), Maths(**faces)}) == 1
    # What holds the same and is something else is not the same.
    assert Maths(**faces) != Key(**faces, form="", form_words="")
    assert TextRun(text="a") != TextRun(text="b")
    with pytest.raises(TypeError):
        hash(Ask(kind="find", target=["1"]))


@pytest.mark.parametrize(
    ("make", "says"),
    [
        (lambda: TopicLine(id="a"), "TopicLine needs ‘title’"),
        (lambda: TopicLine(id="a", title="b", titel="c"), "TopicLine has no ‘titel’"),
        (lambda: Look(papier="white"), "Look has no ‘papier’"),
        (lambda: Look().model_copy(update={"papier": 1}), "Look has no ‘papier’"),
    ],
)
def test_a_field_that_is_missing_or_strange_is_refused(make, says):
    with pytest.raises(TypeError, match=says):
        make()


@pytest.mark.parametrize(
    ("kind", "fields"),
    [
        (Band, {"letter": "ABC"}),
        (Band, {"lowest": -1}),
        (Sheet, {"items": []}),
        (Lesson, {"date": "someday"}),
        (PackItem, {"tier": "hard"}),
        (PackItem, {"prompt": [{"kind": "sum", "text": "a"}]}),
        (PackItem, {"more": 1}),
        (Look, {"large_print": ["nobody's seat"]}),
    ],
)
def test_what_is_read_is_checked(kind, fields):
    pack = real_pack("8K")
    whole = {
        Band: pack.bands[0],
        Sheet: pack.sheets[0],
        Lesson: pack.lesson,
        PackItem: pack.versions[0].items[0],
        Look: pack.look,
    }[kind].model_dump(mode="json")
    assert kind.model_validate(whole).model_dump(mode="json") == whole
    with pytest.raises(ValidationError) as found:
        kind.model_validate(whole | fields)
    assert found.value.errors()[0]["loc"][0] in fields
