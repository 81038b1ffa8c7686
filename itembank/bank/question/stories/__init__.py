"""Word problems: what they ask, by a model or by a task, and whether the words bear it out.

``unit_of_key`` and ``told_stories`` come first, then ``model_held``; ``asked_of_story`` and
``choosing`` stand on these.
"""
