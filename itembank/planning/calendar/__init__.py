"""Days: terms, timetables and schemes of work."""
