"""What to type to get further with lessons and their results, by the matter of an error."""

from __future__ import annotations

from collections.abc import Mapping

from itembank.cli.words.advice_given import Advice

ANEW = "record all of the lesson anew with --replace."

LESSON_ADVICE: Mapping[str, Advice] = {
    "add and replace": Advice("Give one of --add and --replace."),
    "another kind of part": Advice(f"Or {ANEW}"),
    "answer to what was not asked": Advice("Put --asked right, or the sheet."),
    "answers to look at": Advice("‘itembank mark’ shows them."),
    "asked alone": Advice("--asked goes with --bands, --right, --sheet or --slips."),
    "asked as counted": Advice("Say otherwise with --asked."),
    "asked something else": Advice("‘itembank undo {class_name} --date {date}’ takes it back."),
    "copy of results": Advice('‘itembank unite "{path}"’ brings the two together; then delete it.'),
    "counted by hands": Advice("Record it again with --replace."),
    "day to be checked": Advice("Check --date."),
    "export there": Advice("Add --replace to write over it, or name another folder with --to."),
    "had no lesson": Advice(
        "If there was one, ‘itembank undo {class_name} --date {date}’ takes the note back."
    ),
    "left to the teacher": Advice('Where it is right: --correct "A3 q4 right".'),
    "moved already": Advice("‘itembank undo {class_name}’ takes the last one back."),
    "no lesson that day": Advice(
        "Name the day of the lesson with --date, or add --yes if it took place then."
    ),
    "no pack of the other class": Advice("Name the one that {class_name} had with --pack."),
    "no pack that day": Advice(
        "Name it with --pack, or say with --out-of how many marks the starter had."
    ),
    "no results by seat": Advice("‘itembank record --sheet’ does so."),
    "no results yet": Advice("‘itembank record’ makes a start."),
    "no source": Advice('As in -t "ratio.share 4", --pack DIR or --same-as 8L.'),
    "no whole pack": Advice("Make it again with ‘itembank pack’, or name another with --pack."),
    "nobody answered": Advice("If they were, add --asked {questions}."),
    "no results in that time": Advice(
        "Look further back with --since, or record some with ‘itembank record’."
    ),
    "not asked": Advice("Record the sheet again with --replace if it was."),
    "note alone": Advice("--note goes with --unclear."),
    "noted already": Advice("Add --replace to put this in its place."),
    "nothing recorded": Advice("‘itembank record {class_name}’ records how a starter went."),
    "nothing to record": Advice(
        'Say what to record, as in --bands "8 12 9"; --right counts by question, --sheet reads '
        "a CSV."
    ),
    "older than what was taken back": Advice("Add --yes to take that back too."),
    "other bands": Advice("Record it all anew with --replace."),
    "out of other marks": Advice(
        "Where only some of the questions were asked, say which with --asked.", ["record"]
    ),
    "pack of another class": Advice("If {class_name} had it too, add --same-as {other}."),
    "pack unknown": Advice("Name the pack with --pack."),
    "part of a copy of results": Advice("‘itembank unite’ brings both in."),
    "part of another length": Advice(f"Say with --asked what was asked, or {ANEW}"),
    "part of another pack": Advice(f"Name the pack the class had with --pack, or {ANEW}"),
    "pupils alone": Advice("--pupils goes with --right."),
    "pupils as seats": Advice("Say otherwise with --pupils."),
    "questions unknown": Advice(
        "Name the pack with --pack, or say with --out-of how many marks there were."
    ),
    "recorded already": Advice(
        "Add --replace to put these in their place (the earlier ones can be had back with "
        "‘itembank undo’), or --add to join the two: the other half of a class, or somebody who "
        "was away."
    ),
    "seats in both parts": Advice(
        'Or put a seat right with --correct, as in --correct "{seat} 6".'
    ),
    "several depths": Advice("Give one of {fields}."),
    "several lessons": Advice("Say which with --period."),
    "several packs": Advice("Say which with --pack."),
    "several sources": Advice("Give one of {fields}."),
    "seats of the class": Advice(
        "Its seats stand in department.toml; ‘itembank begin FOLDER’ changes them by asking."
    ),
    "something newer": Advice("Say ‘itembank undo’ again to see what it is."),
    "take back first": Advice("‘itembank undo {class_name} --date {date}’ takes them back first."),
    "whose lesson": Advice("As in: itembank report 8K --lesson 2026-11-30."),
    "whom to forget": Advice("As in --seat 8K/A3, --class 8K, or --before 2026-09-01."),
}
"""What to type, by the matter of an error or a remark."""
