"""Tests that found faults which are known and not mended yet, each with what is wrong.

They are run all the same and may fail; one that passes again is to be taken off this list.
"""

KINDS = "questions of other kinds stand in samples that were made for one kind"
MANY = "its bounds were set for forty topics, and there are a hundred more"

KNOWN_FAULTS = {
    "tests/items/test_difficulty.py::test_difficulty_rises_from_tier_to_tier": (
        "number.index-laws: the middles of support and core are nearly equal"
    ),
    "tests/proof/test_steps_and_audit.py::test_every_topic_is_sound_on_a_sample[graphs.parallel": (
        "the middles of core and challenge are nearly equal"
    ),
    "tests/proof/test_steps_and_audit.py::test_items_come_back_identical_and_distinct[graphs.": (
        "a few questions of conversion graphs and of crossing lines come twice"
    ),
    "tests/packs/test_variety.py": MANY,
    "tests/pages/test_notes.py::test_no_page_of_the_notes_is_left_nearly_empty": MANY,
}
