"""Questions and short answers on sheets and slips.

``rows`` comes before ``sheet_pages``.
"""
