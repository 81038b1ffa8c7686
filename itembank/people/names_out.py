"""Keeps names of people out of notes and titles, as far as a program can tell one."""

from __future__ import annotations

import re

from itembank.errors import ItembankError

_LISTED = """
aaliyah aaron abdul abdullah abigail adam adeel ahmed aidan aisha alan albert alex alexander
alfie alice alisha amelia amina amira amy andrea andrew angela anita anna anthony anya archie
arjun arthur ashley ayesha barbara beatrice ben benjamin bethany brandon brian caitlin callum
cameron carol caroline catherine charlie charlotte chloe christopher claire connor daniel darren
david deborah declan dominic dylan eleanor elijah elizabeth ella ellie emily emma eric erin
ethan evan evie fatima fiona finley frederick freya gareth gary george gemma gurpreet hamza
hannah harriet harry harvey hassan heather helen henry hugo ibrahim imran isaac isabel isabella
isabelle isla jack jacob jake james jamie jane janet jasmine jason jayden jennifer jessica
joanna joe john jonathan joseph joshua julia kai karen kate katherine katie kayleigh keira kevin
kian kieran kyle laura lauren leah lewis liam linda louise lucas lucy luke mariam maria maryam
mateusz matilda matthew megan mia michael mohamed mohammad mohammed molly muhammad nadia naomi
natalie natasha nathan niamh nicholas nicola nikhil noah oliver olivia oscar owen patrick paul
peter philip phoebe priya rachel rajesh rebecca reece rhys richard robert rohan rosie ryan sam
samantha samuel sarah scarlett sean sebastian shannon simon sofia sophia sophie stephen steven
susan thomas tom toby tyler usman vikram wayne william yasmin yusuf zach zahra zainab zara zoe
"""
_FIRST_NAMES = frozenset(_LISTED.split())
"""First names common among pupils in England (from memory); none that is a word of lessons too,
such as Grace, Penny, Ray, Miles or April."""
_TITLE = re.compile(r"\b(?:Mr|Mrs|Miss|Ms|Mx)\.? [A-Z]\w+")
_WORD = re.compile(r"[^\W\d_]+")
_MAIL = re.compile(r"\S+@\S+\.\S+")


def name_in(text: str) -> str:
    """Return what in a text looks like a name of a person, or an empty string.

    Not every name can be told: a word that is also one of lessons is taken for that.

    >>> name_in("Sam asked what ‘share’ means"), name_in("after Miss Larch's lesson")
    ('Sam', 'Miss Larch')
    >>> name_in("what ‘mark’ means in question 4")
    ''
    """
    for pattern in (_MAIL, _TITLE):
        if found := pattern.search(text):
            return found[0]
    for word in _WORD.findall(text):
        if word[0].isupper() and word.casefold() in _FIRST_NAMES:
            return str(word)
    return ""


def refuse_names(text: str, what: str = "", field: str = "") -> None:
    """Refuse a note or title in which a name of a person can be told.

    `what` says in words what the text is, `field` which field of a request holds it.

    Raises:
        ItembankError: says which word it is.
    """
    if found := name_in(text):
        before = f"{what}: " if what else ""
        raise ItembankError(
            f"{before}‘{found}’ looks like the name of a person. This tool keeps no names: write "
            "a seat code, or leave it out. (If it is no name, write it with a small letter. Not "
            "every name can be told, so look at what you write.)",
            field=field,
        )
