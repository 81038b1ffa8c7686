"""The rows of an index, read from a bank's files and brought up to what these hold now.

``topic_rows`` reads a file, ``kept_entry`` is a question of it; ``refresh`` keeps the rows.
"""
