"""What a pack says in words of where its questions come from."""

from __future__ import annotations

from itembank.files.faults import join_words
from itembank.packs.data.pack import Pack, Provenance
from itembank.packs.data.pack_item import Source
from itembank.text.in_words import plural, short_day


def provenance_words(pack: Pack) -> str:
    """Return the sentences that say what the questions were taken from and what was left out.

    Empty for a pack of an older version, which does not say.
    """
    provenance = pack.drawing
    if provenance is None:
        return ""
    if provenance.questions_from == "generated":
        return "The questions were generated."
    names = join_words([bank.name for bank in provenance.banks])
    banks = f"the bank {names}" if len(provenance.banks) == 1 else f"the banks {names}"
    if provenance.questions_from == "bank":
        said = f"The questions were drawn from {banks}"
    elif provenance.prefer == "bank":
        said = f"The questions were drawn from {banks} first, then generated"
    else:
        said = f"The questions were generated first, then drawn from {banks}"
    if provenance.signed_only:
        said += ", signed ones only"
    return " ".join(filter(None, (f"{said}.", left_out_words(provenance), short_words(pack))))


def short_words(pack: Pack) -> str:
    """Return the sentence about sheets with fewer questions than were asked for, or ""."""
    asked = pack.drawing.follow_up if pack.drawing is not None else None
    short = [sheet for sheet in pack.sheets if asked is not None and len(sheet.items) < asked]
    if not short:
        return ""
    held = join_words([f"{len(sheet.items)} on the {sheet.tier} sheet" for sheet in short])
    return f"Instead of {asked} questions there are {held}: the banks hold no more."


def left_out_words(provenance: Provenance) -> str:
    """Return the sentence that says how many of the banks' questions were left out, and why.

    >>> from itembank.packs.data.pack import LeftOut
    >>> left_out_words(
    ...     Provenance(
    ...         questions_from="bank",
    ...         offered=9,
    ...         left_out=[LeftOut(why="unsigned", count=2), LeftOut(why="retired", count=1)],
    ...     )
    ... )
    'Of 12 questions there on these topics 3 were left out: 2 unsigned and 1 retired.'
    """
    left = sum(reason.count for reason in provenance.left_out)
    total = provenance.offered + left
    questions = plural(total, "question")
    if not total:
        return "There are none there on these topics."
    if not left:
        all_ = "The one question" if total == 1 else f"All {total} questions"
        return f"{all_} there on these topics could be used."
    why = join_words([counted(reason.why, reason.count) for reason in provenance.left_out])
    was = plural(left, "was", "were")
    return f"Of {total} {questions} there on these topics {left} {was} left out: {why}."


def counted(why: str, count: int) -> str:
    """Return a count of questions with what keeps them out of packs.

    >>> counted("needs a person", 2), counted("unsigned", 2)
    ('2 need a person', '2 unsigned')
    """
    if why == "needs a person":
        return f"{count} {plural(count, 'needs', 'need')} a person"
    return f"{count} with a stale sign-off" if why == "sign-off stale" else f"{count} {why}"


def source_words(source: Source | None) -> str:
    """Return what is known of one question: proved, and signed by whom, stale or unsigned.

    >>> source_words(Source(kind="generated", proved="from the printed mathematics"))
    'proved'
    >>> source_words(None)
    ''
    """
    if source is None:
        return ""
    proved = "proved"
    if source.proved == "from a model of the words" and source.kind == "bank":
        proved = "proved from its model"
    signed = join_words(
        [
            f"{signoff.by} on {short_day(signoff.on)} {signoff.on.year}".replace(" ", "\u00a0")
            for signoff in source.signed
        ]
    )
    match source.sign_off:
        case "signed":
            return f"{proved}, signed by {signed}"
        case "stale":
            return f"{proved}, sign-off by {signed} is stale"
        case "unsigned":
            return f"{proved}, unsigned"
    return proved
