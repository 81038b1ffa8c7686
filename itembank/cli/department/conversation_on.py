"""The conversation of ``itembank begin``: part after part, back and forth, and on another day."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from itembank.cli.department.answering import GoBack, StopHere, answer, tell_wrong
from itembank.cli.department.ask_topics import ask_topics
from itembank.cli.department.parts import ASK
from itembank.cli.department.settings_asked import change_in_talk
from itembank.cli.words.ask import note, one_of
from itembank.cli.words.what_to_type import told
from itembank.cli.words.wrapped import say
from itembank.errors import ItembankError
from itembank.text.paths_shown import quoted_path
from itembank.work.department.answered import Answers, settled
from itembank.work.department.class_renamed import renaming_said
from itembank.work.department.looked_at import look_at
from itembank.work.department.made import (
    Kept,
    change_department,
    make_department,
    read_kept,
)
from itembank.work.department.outlook import outlook_lines, outlook_on
from itembank.work.department.so_far import keep_so_far
from itembank.work.department.wrong import PARTS, Part

SETTINGS = "settings"


@dataclass
class Talk:
    """A conversation about the department in a folder; `kept` is what is there already."""

    folder: Path
    answers: Answers
    kept: Kept | None = None

    def carry_out(self) -> bool:
        """Ask for all that is open, then for what is to change; return whether it was saved.

        Whatever ends it, what was answered is kept in the folder.
        """
        say("‘back’ goes back a part, ‘stop’ stops for today: nothing you answered is lost.")
        say("What stands in [ ] is taken when you only press Enter.")
        try:
            self._ask_open()
            while not self._settle():
                pass
        except StopHere:
            self._keep()
            return False
        except KeyboardInterrupt:
            self._keep()
            raise
        return True

    def _ask_open(self) -> None:
        """Ask for each part of which something is missing or wrong."""
        open_parts = self._open_parts()
        asked: list[Part] = []
        while True:
            left = [part for part in open_parts if part not in asked]
            if not left:
                return
            if self._ask(left[0]):
                asked.append(left[0])
            elif asked:
                asked.pop()

    def _open_parts(self) -> list[Part]:
        """Return the parts that are not answered; of a new department the bands are one."""
        look = look_at(self.answers, self.folder, self.kept.files if self.kept else None)
        found = [part for part in PARTS if look.of_part(part)]
        new = self.kept is None and self.answers == Answers(school=self.answers.school)
        if new and "bands" not in found:
            found.append("bands")
        if "classes" in found and "topics" not in found:
            found = [part for part in PARTS if part in (*found, "topics")]
        return found

    def _ask(self, part: Part) -> bool:
        """Ask for a part; return False where the person went back instead."""
        say("")
        try:
            if part == "topics":
                titles = self.kept.titles if self.kept else None
                self._answered(ask_topics(self.answers, self._answered, titles))
            else:
                self._answered(ASK[part](self.answers, self._answered))
        except GoBack:
            return False
        return True

    def _answered(self, answers: Answers) -> None:
        """Go on from answers, which are kept: somebody may close the window at any moment."""
        self.answers = answers
        keep_so_far(self.folder, answers)

    def _settle(self) -> bool:
        """Show what the answers mean, and save them or ask again; return whether all is done."""
        say("")
        outlook = outlook_on(self.answers, self.kept.titles if self.kept else None)
        for line in outlook_lines(outlook, short=True):
            note(line)
        look = look_at(self.answers, self.folder, self.kept.files if self.kept else None)
        tell_wrong((*look.missing, *look.wrong))
        for remark in look.remarks:
            note(f"Note: {remark}")
        usual = "yes" if look.ready else look.wrong[0].part if look.wrong else look.missing[0].part
        words = ("yes", *PARTS, SETTINGS, "stop")
        try:
            typed = answer(
                f"Save it? yes, or a part to change: {', '.join(PARTS)}; or ‘{SETTINGS}’ to save "
                "it and change what else it says",
                usual,
                one_of(words),
            )
        except GoBack:
            typed = PARTS[-1]
        if typed not in ("yes", SETTINGS):
            for part in PARTS:
                if part == typed:
                    self._ask(part)
            return False
        if not look.ready:
            note("Something is missing or wrong still.")
            return False
        try:
            save(self.folder, self.answers, self.kept)
        except ItembankError as error:  # what was answered is not to be lost
            say(told(error))
            self._keep()
            raise
        if typed == "yes":
            return True
        self._settings()
        return False

    def _settings(self) -> None:
        """Change settings of the department, now that all that was answered is saved."""
        try:
            change_in_talk(self.folder)
        except GoBack:
            pass
        finally:
            self.kept = read_kept(self.folder)
            self.answers = self.kept.answers

    def _keep(self) -> None:
        if self.kept is not None and settled(self.answers) == settled(self.kept.answers):
            say("\nNothing is open: all is saved.")
            return
        if self.answers == Answers():
            say("\nNothing was answered, so nothing is kept.")
            return
        path = keep_so_far(self.folder, self.answers)
        say(f"\nWhat you answered is kept in {path}.")
        say(f"To go on: itembank begin {quoted_path(self.folder)}")


def save(folder: Path, answers: Answers, kept: Kept | None) -> None:
    """Make a department, or change the one that is there, and say what was written.

    Raises:
        ItembankError: as :func:`make_department` and :func:`change_department`.
    """
    if kept is None:
        make_department(folder, answers)
        say(f"Made the department of {answers.school} in {folder}.")
    else:
        along = renaming_said(folder, answers)
        changed = change_department(kept, answers)
        names = ", ".join(path.relative_to(folder).as_posix() for path in changed)
        say(f"Changed {names}." if changed else "Nothing was changed.")
        if along:
            say(along)
