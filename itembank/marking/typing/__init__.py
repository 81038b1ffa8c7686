"""What pupils type for an answer, brought to a tree: spellings, units, names, lines of working."""
