"""Banks as merging sees them, for its tests: a question, and holdings of every kind."""

import datetime
from collections import Counter

from hypothesis import strategies as st

from itembank.bank.merge.union import signoffs_of
from itembank.bank.model.fields import BankItem, GeneratedSet, PinnedItem
from itembank.bank.model.item_records import Holding, TopicFacts, hold, named
from itembank.bank.model.signed import SignOff

DAY = datetime.date(2026, 11, 25)
BASES = ["garden-1", "garden-2", "depot-1"]
TOPICS = ["ratio.share", "number.add"]


def made_item(base, n, **more):
    fields = {"id": base, "tier": "core", "prompt": f"Work out {{{n} + 1}}.", "key": str(n + 1)}
    return BankItem(**(fields | more))


# Each strategy is made once: making them took longer than what is tested.
RECORDS = st.lists(
    st.tuples(st.sampled_from(BASES), st.integers(1, 4), st.sampled_from(TOPICS), st.booleans()),
    max_size=5,
    unique_by=lambda record: record[:3],
)
DAYS = st.dates(datetime.date(2026, 9, 1), datetime.date(2026, 9, 5))
WHY = st.sampled_from(["dull", "moved"])
SIGNERS = st.sets(st.sampled_from(["HT", "NT"]))
CONTENTS = st.sampled_from(["c1", "c2"])
LICENCES = st.sampled_from([None, "CC-BY-4.0"])
SETS = st.builds(GeneratedSet, tier=st.just("core"), count=st.integers(1, 2), seed=st.just(3))
PINS = st.builds(PinnedItem, address=st.sampled_from(["ratio.share/core/1", "ratio.share/core/2"]))
TITLES = st.frozensets(st.sampled_from(["Share", "Add"]), min_size=1)
FACTS = st.dictionaries(st.sampled_from(TOPICS), st.builds(TopicFacts, TITLES))
MADE = st.dictionaries(
    st.sampled_from(TOPICS), st.lists(SETS | PINS, min_size=1, max_size=3).map(Counter)
)
ROLES = st.frozensets(st.sampled_from(["head", "teacher"]), min_size=1)
AUTHORS = st.dictionaries(st.sampled_from(["HT", "NT"]), ROLES)


@st.composite
def banks(draw):
    """Return a holding as some folder might give it: ids of conflicts, retired items and all."""
    records = draw(RECORDS)
    items, signoffs = [], []
    for place, (base, n, topic, gone) in enumerate(records):
        # Several under one base id stand in a bank under ids of their own.
        first = base not in [record[0] for record in records[:place]]
        id = base if first else f"{base}.{place:04x}"
        fields = {}
        if gone:
            fields = {"retired": draw(DAYS), "retired_because": draw(WHY)}
        items.append((topic, made_item(id, n, **fields)))
        for by in draw(SIGNERS):
            signoffs.append(SignOff(id, by, DAY, draw(CONTENTS)))
    if draw(st.booleans()):
        signoffs.append(SignOff("gone-1", "HT", DAY, "c1"))
    holding = hold(items, draw(LICENCES), signoffs)
    return Holding(holding.kept, draw(FACTS), draw(MADE), draw(AUTHORS), holding.loose)


def contents(holding):
    """Return the records of a holding, by base id and hash."""
    return {(base, key) for base, records in holding.kept.items() for key in records}


def written(holding):
    """Return a holding as it is after it has been written into files and read again."""
    items = [
        (
            stored.record.topic,
            stored.record.item.model_copy(
                update={
                    "id": name,
                    "retired": stored.retired and stored.retired[0],
                    "retired_because": stored.retired and stored.retired[1],
                }
            ),
        )
        for name, stored in named(holding).items()
    ]
    again = hold(items, None, signoffs_of(named(holding), holding))
    return Holding(again.kept, holding.topics, holding.made, holding.authors, again.loose)


def one_item(n, **more):
    return hold([("ratio.share", made_item("garden-1", n, **more))])
