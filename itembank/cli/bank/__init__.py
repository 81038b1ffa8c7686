"""Commands on a department's own questions, a file each.

What they share is in ``writing``, a question as it is typed, and ``showing``, which comes first.
"""
