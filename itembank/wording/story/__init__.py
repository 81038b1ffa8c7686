"""Stories held to their models: every number, condition and name that is printed."""
