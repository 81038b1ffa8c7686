"""A prompt of a bank, read as the question that is proved."""

from itembank.bank.model.bank import Entry
from itembank.bank.model.fields import BankItem
from itembank.bank.question.as_item import as_item


def item(said, answer="1", **more):
    fields = {"id": "a-1", "tier": "core", "prompt": said, "key": answer}
    return BankItem.model_validate(fields | more)


def read(prompt, key="1", **more):
    return as_item(Entry(item(prompt, key, **more), "ratio.share", "larkhythe", "x.toml", 1))
