"""Tasks in the wordings of teachers, and the reader of a whole prompt."""
