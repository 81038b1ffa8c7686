"""School mathematics as data: one tree, and its faces as MathML, line, words and value."""
