"""The base of the models that make up a pack."""

from __future__ import annotations

from pydantic import BaseModel, ConfigDict


class Data(BaseModel):
    """A model of a pack: unknown fields are faults, and nothing changes once it is made."""

    model_config = ConfigDict(extra="forbid", frozen=True)
