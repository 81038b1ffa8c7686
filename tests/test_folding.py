"""Two names are one where only capitals or the coding of letters tell them apart."""

import unicodedata

from hypothesis import assume, given
from hypothesis import strategies as st

from itembank.text.folding import folded, same_name

NAMES = st.text(st.characters(exclude_categories=("Cs",)), max_size=12)


@given(name=NAMES)
def test_capitals_and_coding_make_no_difference(name):
    assume("ı" not in name)  # the dotless i, whose capital is also that of i
    for other in (name.upper(), name.lower(), name.casefold(), folded(name)):
        assert same_name(name, other)
    for form in ("NFC", "NFD"):
        assert same_name(name, unicodedata.normalize(form, name))


@given(name=NAMES)
def test_a_key_fits_its_column(name):
    from itembank.records.store.store_tables import lesson

    assert len(folded(name)) <= lesson.c.class_key.type.length


def test_other_letters_are_other_names():
    assert not same_name("8É", "8E")
    assert not same_name("8K", "8L")
