"""A small bank to be kept: its questions, and what stands in its files."""

import datetime

from itembank.work.bank.looking import show_questions
from itembank.work.bank.trying import NewQuestion, save_trial, try_new

SUMS, SHARES = "fractions.add-unlike", "ratio.share"

DAY = datetime.date(2026, 11, 25)

SUM = {"tier": "core", "prompt": "Work out {3/4 + 1/6}.", "key": "11/12"}

SHARE = {"tier": "core", "prompt": "Share {£60} in the ratio {2 : 3}.", "key": "£24, £36"}

HALVES = {"tier": "core", "prompt": "Work out {1/2 + 1/3}.", "key": "5/6"}


def add(folder, topic, fields, **more):
    fields = {"created": datetime.date(2026, 9, 14), **fields, **more}
    return save_trial(try_new(folder, NewQuestion(topic, fields)))


def files(folder):
    """Return the files of a bank; what they were before its changes is none of them."""
    there = (path for path in folder.iterdir() if path.name != ".changes")
    return {path.name: path.read_bytes() for path in there}


def item(folder, id):
    (found,) = show_questions(folder, [id])
    return found
