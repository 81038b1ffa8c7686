"""Tells of a week that was made: its topics with their reasons, where it is, and what to do."""

from __future__ import annotations

import sys
import time

from itembank.cli.words.what_to_type import told
from itembank.cli.words.wrapped import say
from itembank.people.lock import Holder
from itembank.planning.choosing.reason_words import reason_of_its_lesson
from itembank.text.in_words import weekday
from itembank.text.paths_shown import quoted_path
from itembank.work.week.kinds_asked import kinds_asked
from itembank.work.week.request import Step, WeekMade

SILENT_SECONDS = 2.0
"""After so long one who waits is told for whom."""


class Waiting:
    """Tells once, and not at once, that somebody else is planning a week."""

    def __init__(self) -> None:
        self._begun = time.monotonic()
        self._told = False

    def __call__(self, other: Holder) -> None:
        """Tell of another who holds the department's folder, if it takes long."""
        if not self._told and time.monotonic() - self._begun > SILENT_SECONDS:
            self._told = True
            say(f"Waiting: {other.who} is planning a week in the same department.", err=True)


STEPS = {
    Step.PLAN: "Planning the week …",
    Step.QUESTIONS: "Choosing questions …",
    Step.PACKS: "Making the packs and proving every key …",
}


class Steps:
    """Shows at a terminal, on the error stream, what the making of a week has come to."""

    def __init__(self) -> None:
        self._wide = 0
        self._out = getattr(sys.stderr, "steered", sys.stderr)  # it moves the cursor
        self._shows = sys.stderr.isatty()

    def __call__(self, step: Step) -> None:
        """Show a step in the place of the one before."""
        if self._shows:
            self._out.write(f"\r{STEPS[step]:<{self._wide}}")
            self._out.flush()
            self._wide = len(STEPS[step])

    def clear(self) -> None:
        """Take the line away again."""
        if self._wide:
            self._out.write(f"\r{' ' * self._wide}\r")
            self._out.flush()
        self._wide = 0


def tell_week(made: WeekMade) -> None:
    """Say what each starter brings back and why, what is remarkable, and where all of it is."""
    days: dict[str, str] = {}
    for built in made.built:
        say(f"{built.lesson}: {built.lesson.title}")
        for topic in built.lesson.topics:
            why = topic.why
            if before := days.get(topic.topic):
                # What was known when the week was planned reads oddly on its third day.
                own = reason_of_its_lesson(topic.reason, topic.pinned)
                why = ", ".join(filter(None, (f"as on {before}", own)))
            days[topic.topic] = weekday(built.lesson.date)
            say(f"  {topic.count} on {made.titles[topic.topic]}: {why}")
        if kinds := kinds_asked(built.folder):
            say(f"  Other kinds: {kinds}")
    for line in made.skipped:
        say(f"No lesson on {line}")
    for remark in made.remarks:
        say(f"Note: {told(remark)}")
    for built in made.built:
        say(f"Written to {built.folder}.")
    if not made.built:
        say("No pack had to be made: nothing has changed.")
    say(f"The week on one page: {made.overview}.")
    plan = quoted_path(made.path)
    say(f"Change the plan if you like, then: itembank week --plan {plan} --replace")
