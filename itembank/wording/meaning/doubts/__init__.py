"""What speaks against a model, whatever kind of story it is.

A file for each doubt. ``overturned`` comes before ``turning_words``.
"""
