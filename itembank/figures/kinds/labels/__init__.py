"""The labels of figures that are made of lines: where they may stand, and what they may be.

``near_marks`` and ``whole_points`` come first; ``placed_labels`` stands on them, ``tried_places``
and ``tried_sizes`` on that.
"""
