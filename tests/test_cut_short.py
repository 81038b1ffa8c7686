"""A title that is too long ends between two words."""

from hypothesis import given
from hypothesis import strategies as st

from itembank.items.topics.registry import listed_topics
from itembank.planning.week.week_plan import MOST_TITLE
from itembank.text.cut_short import cut_short


@given(
    words=st.lists(st.text("abcdé", min_size=1, max_size=9), min_size=1), most=st.integers(10, 60)
)
def test_what_is_left_is_whole_words_of_the_beginning(words, most):
    text = " ".join(words)
    short = cut_short(text, most)
    assert len(short) <= most
    if short == text:
        return
    assert len(text) > most
    assert short.endswith("…")
    left = short[:-1].split(" ")
    assert left == words[: len(left)]


@given(text=st.text("a \n", max_size=20), most=st.integers(2, 9))
def test_space_before_the_words_is_no_word(text, most):
    short = cut_short(text, most)
    assert len(short) <= most
    assert short == text or short.endswith("…")


def test_no_topic_gives_a_lesson_half_a_word():
    cut = {title for topic in listed_topics().values() if len(title := topic.title) > MOST_TITLE}
    assert cut
    for title in cut:
        short = cut_short(title, MOST_TITLE)
        assert title.startswith(short[:-1])
        assert not title[len(short) - 1].isalnum()
        assert short[:-1].split()[-1] not in {"or", "and", "to", "the"}
