"""What a person states, by name: messages say these, and each way to the tool its own words.

At a terminal a matter is an option (``itembank/cli/words/matters.py``). Where a sentence is whole
without naming the matter, its plain words are empty.
"""

from __future__ import annotations

from itembank.errors import Matter

QUESTIONS = Matter("questions", "the number of questions")
FOLLOW_UP = Matter("follow-up", "the number of questions on a sheet")
VARIANTS = Matter("variants", "the number of versions")
TITLE = Matter("title", "a title")
TOPIC = Matter("topic", "a topic")
DAY = Matter("day", "the day")
ELSEWHERE = Matter("elsewhere")
"""After *name another place*."""
REPLACE = Matter("replace", "Have it replaced")
"""Before *to put the new one in its place*."""
DEPARTMENT = Matter("department")
"""After *name a department's folder*."""
BANK = Matter("bank")
"""After *name a bank's folder*."""
BOTH = Matter("both")
"""After *let questions come from both*."""
BEYOND_YEAR = Matter("beyond-year", "say that the year does not matter")
TOPIC_LIST = Matter("topic-list", "The list of topics")
