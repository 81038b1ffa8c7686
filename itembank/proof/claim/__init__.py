"""The claim that is proved: what is printed, what its key says, and what was found out about it."""
