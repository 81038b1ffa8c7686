"""A band's sign on a page of the desk."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from markupsafe import Markup


def sign(band: Mapping[str, Any]) -> Markup:
    """Return the sign of a band as a pack stores it: its shape with its letter inside.

    >>> "<svg" in sign({"shape": "ring", "letter": "S", "colour": "#CC79A7"})
    True
    """
    from itembank.pages.engine.page.sign_svg import sign_svg  # it loads all that draws pages

    return Markup(sign_svg(band["shape"], band["letter"], band["colour"]))
