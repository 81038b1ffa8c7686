"""Makes banks for the tests: a folder with bank.toml and a file a topic."""

from itembank.bank.read.load import read_bank

FACTS = """name = "{name}"
title = "Questions of {name}"
licence = "CC-BY-4.0"

[authors]
HT = "head of mathematics"
NT = "new teacher"
"""


def item(id, prompt="Work out {3/4 + 1/6}.", key="11/12", **more):
    """Return an item's TOML; `more` is further keys as TOML text."""
    fields = {"id": f'"{id}"', "tier": '"core"', "prompt": f'"{prompt}"', "key": f'"{key}"'}
    fields |= more
    return "[[items]]\n" + "".join(f"{name} = {value}\n" for name, value in fields.items()) + "\n"


def make_bank(folder, files, name="larkhythe", facts=None):
    """Write a bank with topic files {topic: text of its items} and return it as read."""
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "bank.toml").write_text(facts or FACTS.format(name=name), encoding="utf-8")
    for topic, text in files.items():
        (folder / f"{topic}.toml").write_text(f'topic = "{topic}"\n\n{text}', encoding="utf-8")
    return read_bank(folder)
