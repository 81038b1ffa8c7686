"""Those who write and check the questions of a bank: codes with roles, never names."""

from __future__ import annotations

import tomllib
from pathlib import Path

from itembank.errors import ItembankError


def add_reviewer(folder: Path, code: str, role: str) -> str:
    """Add a code with its role to a bank's authors, and return the code as it stands there.

    Raises:
        ItembankError: there is one such already, or it cannot be a code, or the bank cannot be
            read or saved.
    """
    from pydantic import ValidationError

    from itembank.bank.model.bank import BANK_FILE
    from itembank.bank.model.fields import BankFile
    from itembank.bank.model.model_faults import sentences
    from itembank.bank.saving.bank_lock import locked
    from itembank.bank.saving.save import save, take
    from itembank.files.toml_edit import with_data

    code, role = code.strip().upper(), role.strip()
    if not code or not role:
        raise ItembankError("Write a code, such as your initials, and a role.", field="code")
    with locked(folder):
        file = take(folder / BANK_FILE)
        try:
            stated = tomllib.loads(file.text)
        except tomllib.TOMLDecodeError as error:
            raise ItembankError(f"{file.path} cannot be read as TOML: {error}.") from None
        authors = stated.get("authors", {})
        if not isinstance(authors, dict):
            raise ItembankError(f"{file.path}: authors are to be a table of codes with roles.")
        if code.lower() in (known.lower() for known in authors):
            raise ItembankError(f"There is a code {code} already.", field="code")
        data = {**stated, "authors": {**authors, code: role}}
        try:
            BankFile.model_validate(data)
        except ValidationError as error:
            said = "\n".join(text for _, text in sentences(error, BankFile))
            raise ItembankError(said, field="code") from None
        save(folder, [(file, with_data(file.text, data))], f"{code} added to those who sign")
    return code
