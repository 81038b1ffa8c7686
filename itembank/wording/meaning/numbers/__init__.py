"""Numbers by themselves: averages of lists, sequences, puzzles."""
