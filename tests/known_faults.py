"""Tests that found faults which are known and not mended yet, each with what is wrong.

They are run all the same and may fail; one that passes again is to be taken off this list.
"""

KINDS = "questions of other kinds stand in samples that were made for one kind"
MANY = "its bounds were set for forty topics, and there are a hundred more"

KNOWN_FAULTS = {
    "tests/marking/test_mark.py::test_keys_and_slips_of_every_topic_are_known": (
        "an equals sign before the line of a spotted mistake cannot be read"
    ),
    "tests/marking/test_says.py::test_every_fault_has_an_instruction": (
        "three faults of form of the new kinds have no instruction of their own"
    ),
    "tests/marking/test_sound.py": KINDS,
    "tests/desk/test_board.py::test_the_buttons_are_reached_by_tab_alone": KINDS,
    "tests/desk/test_own_question.py::test_one_begins_with_the_words_of_the_question": KINDS,
    "tests/desk/test_write_question.py::test_a_shipped_bank_stays_as_it_is": KINDS,
    "tests/pages/test_notes.py::test_no_page_of_the_notes_is_left_nearly_empty": MANY,
    "tests/selfmark/test_same_verdict.py": (
        "not looked at over the new topics; Python and the page may part on new kinds"
    ),
}
