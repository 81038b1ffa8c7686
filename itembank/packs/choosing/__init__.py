"""The questions of a pack: its starter and its follow-up sheets."""
