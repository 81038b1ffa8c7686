"""What a hand-written question gives: its mathematics, its numbers and units, its task.

``question``, ``maths`` and ``task_given`` come first.
"""
