"""Tasks in the wordings of teachers, and the reader of a whole prompt.

The sub-folders hold what is read; the files here read it. ``heads`` are the wordings, by
``command_said`` one sentence is a command, ``reader`` reads the prompt.
"""
