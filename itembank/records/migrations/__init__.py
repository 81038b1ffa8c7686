"""Changes to the tables of the results store, in order."""
