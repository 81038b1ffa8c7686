"""ReportLab as pages use it, without the library of photographs that it loads for itself.

Importing this module imports ReportLab. That in turn imports Pillow, which takes as long to load
as all that is used of ReportLab here, and which no page needs: there is no photograph on any.
So Pillow is loaded when it is first used.
"""

from __future__ import annotations

import sys
from importlib.util import LazyLoader, find_spec, module_from_spec


def _later(package: str, part: str) -> None:
    """Have a module of a package loaded when it is first used, unless it is there already."""
    name = f"{package}.{part}"
    spec = None if name in sys.modules else find_spec(name)
    if spec is None or spec.loader is None:
        return
    spec.loader = LazyLoader(spec.loader)
    module = sys.modules[name] = module_from_spec(spec)
    spec.loader.exec_module(module)
    setattr(sys.modules[package], part, module)


_later("PIL", "Image")

from reportlab.pdfbase import pdfdoc  # noqa: E402
from reportlab.pdfbase.ttfonts import TTFont, TTFontFile  # noqa: E402

__all__ = ["TTFont", "TTFontFile", "pdfdoc"]
