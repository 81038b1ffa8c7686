"""Results of lessons: the store, item statistics, decisions and reports."""
