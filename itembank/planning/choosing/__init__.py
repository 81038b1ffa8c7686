"""The choice of topics: what a class remembers, and the programme that picks."""
