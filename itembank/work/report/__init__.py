"""Reports on a class, a department, its questions, one lesson: words, tables and pages."""
