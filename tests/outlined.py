"""Packs without their pages, for tests that open no PDF."""

import hashlib
from contextlib import contextmanager
from functools import partial

import pytest


@contextmanager
def outlined():
    """Write a few bytes for each page of a pack, which differ wherever the pack does."""
    from itembank.pages import draw
    from tests.depth import WHOLE

    def drawers(pack):
        told = hashlib.sha256(pack.model_dump_json().encode()).hexdigest()
        return {name: partial(outline, f"%PDF-1.7\n% {name} of {told}\n") for name in _really(pack)}

    def outline(text, pack):
        return text.encode()

    _really = draw.drawers
    with pytest.MonkeyPatch.context() as patch:
        if not WHOLE:
            patch.setattr(draw, "drawers", drawers)
        yield
