"""Amounts beside amounts: compared, related, changing by so much each time, paid.

``temperatures`` comes before ``comparisons``, ``so_much_each`` before ``two_that_meet``.
"""
