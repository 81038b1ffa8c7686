"""Tests that found faults which are known and not mended yet, each with what is wrong.

They are run all the same and may fail; one that passes again is to be taken off this list.
"""

MANY = "its bounds were set for forty topics, and there are a hundred more"

KNOWN_FAULTS = {
    "tests/pages/test_notes.py::test_no_page_of_the_notes_is_left_nearly_empty": MANY,
}
