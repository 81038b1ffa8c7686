"""What only a teacher reads: the script, the marks of methods, maps and tables of reports.

``script`` comes before ``method_marks``.
"""
