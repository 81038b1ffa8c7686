"""The questions of a bank as a table, out and in again."""
