"""Lines of working in what was typed: what each comes to, and which may be the answer.

``prompt_printed`` and ``sides_agree`` come first; ``rivals`` stands on ``working_results``.
"""
