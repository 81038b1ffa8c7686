"""The page as HTML: one file, with its scripts, faces and questions in it, that asks for nothing.

What may run is said by a content-security policy: the page's own script, by its hash, and no
other. Every word of a question goes in escaped. The keys stand in the page veiled, which keeps an
honest pupil from seeing one by accident, and no more.
"""

from __future__ import annotations

import base64
import hashlib
import json
from collections.abc import Mapping, Sequence
from functools import cache
from html import escape
from importlib.resources import files
from typing import Any

from itembank.items.item import Item
from itembank.packs.data.pack import Pack, Sheet
from itembank.packs.data.pack_item import PackItem
from itembank.packs.pack_checks import stored_items
from itembank.selfmark.html_body import page_body
from itembank.selfmark.questions import question_data
from itembank.selfmark.slip import slip_key

NAME = "self-mark.html"
_HERE = files("itembank.selfmark")
_FACES = (
    ("Board Sans", "normal", "BoardSans-Regular"),
    ("Board Sans", "bold", "BoardSans-Bold"),
    ("Board Math", "normal", "BoardMath-Regular"),
)


def self_mark_page(
    pack: Pack, stored: bytes, items: Sequence[Item], signs: Mapping[str, str]
) -> bytes:
    """Return the page of a pack: the same bytes for the same pack.

    Parameters
    ----------
    pack
        The pack, proved.
    stored
        The pack's `pack.json`, from which the key of its result slips is made.
    items
        Its questions, in the order of :func:`~itembank.packs.pack_checks.stored_items`.
    signs
        The sign of each band as SVG, by its letter.
    """
    questions = {id(kept): item for (_, kept), item in zip(stored_items(pack), items, strict=True)}
    check = pack.look.self_mark
    data = _data(pack, slip_key(stored), questions, check)
    script, style = page_script(), page_style()
    policy = (
        f"default-src 'none'; script-src '{_hash(script)}'; style-src '{_hash(style)}'; "
        "font-src data:; base-uri 'none'; form-action 'none'"
    )
    title = f"{pack.lesson.title}: mark your own answers"
    return "\n".join(
        [
            "<!DOCTYPE html>",
            '<html lang="en-GB">',
            "<head>",
            '<meta charset="utf-8">',
            f'<meta http-equiv="Content-Security-Policy" content="{escape(policy)}">',
            '<meta name="viewport" content="width=device-width, initial-scale=1">',
            '<meta name="referrer" content="no-referrer">',
            f"<title>{escape(title)}</title>",
            f"<style>{style}</style>",
            "</head>",
            "<body>",
            *page_body(pack, check, signs),
            f'<script type="text/plain" id="answers">{_veiled(data)}</script>',
            f"<script>{script}</script>",
            "</body>",
            "</html>",
            "",
        ]
    ).encode()


def _hash(text: str) -> str:
    digest = hashlib.sha256(text.encode()).digest()
    return f"sha256-{base64.b64encode(digest).decode()}"


@cache
def page_script() -> str:
    """Return the one script of every page: the tables, the marker, the slip and the page."""
    tables = (_HERE / "tables.json").read_text(encoding="ascii").replace("<", "\\u003c")
    folder = _HERE / "scripts"
    parts = sorted(part.name for part in folder.iterdir() if part.name.endswith(".js"))
    scripts = "".join((folder / part).read_text(encoding="utf-8") for part in parts)
    assert "</" not in scripts, "this would end the script"
    # In a browser too old for what the script needs, the words that say so stay.
    return f"""
(function () {{
"use strict";
try {{
  if (typeof BigInt !== "function") return;
  new RegExp("(?<a>a)\\\\p{{L}}", "u");
}} catch (error) {{ return; }}
document.getElementById("old").hidden = true;
const TABLES = {tables.strip()};
{scripts}
begin();
}})();
"""


@cache
def page_style() -> str:
    """Return the style of every page, its typefaces in it."""
    folder = files("itembank.pages.typefaces")
    faces = []
    for family, weight, name in _FACES:
        data = base64.b64encode((folder / f"{name}.woff2").read_bytes()).decode()
        faces.append(
            f'@font-face {{ font-family: "{family}"; font-weight: {weight}; '
            f"src: url(data:font/woff2;base64,{data}) format('woff2'); }}"
        )
    return "\n".join([*faces, (_HERE / "page" / "page.css").read_text(encoding="utf-8")])


def _data(pack: Pack, key: str, items: dict[int, Item], check: str) -> dict[str, Any]:
    def questions(stored: Sequence[PackItem]) -> list[dict[str, Any]]:
        return [{"marks": kept.marks, **question_data(items[id(kept)])} for kept in stored]

    return {
        "check": check,
        "key": key,
        "versions": [
            {"letter": version.letter, "questions": questions(version.items)}
            for version in pack.versions
        ],
        "sheets": {sheet.tier: questions(_asked(sheet)) for sheet in pack.sheets},
        "bands": [
            {
                "letter": band.letter,
                "lowest": band.lowest,
                "highest": band.highest,
                "tier": band.task.tier,
            }
            for band in pack.bands
        ],
    }


def _veiled(data: dict[str, Any]) -> str:
    """Return data as text that shows nothing at a glance; the page's script lifts the veil."""
    plain = json.dumps(data, ensure_ascii=True, separators=(",", ":")).encode("ascii")
    veil = (_veil() * (len(plain) // len(_veil()) + 1))[: len(plain)]
    # As two whole numbers, which is quicker than byte by byte.
    both = int.from_bytes(plain, "big") ^ int.from_bytes(veil, "big")
    return base64.b64encode(both.to_bytes(len(plain), "big")).decode()


@cache
def _veil() -> bytes:
    """Return the bytes of the veil, which begins anew behind its end."""
    veil, found = 1, bytearray()
    for _ in range(1024):
        veil = (veil * 75 + 74) % 65537
        found.append(veil & 255)
    return bytes(found)


def _asked(sheet: Sheet) -> list[PackItem]:
    """Return the questions of a sheet that a pupil answers, in the order of their boxes."""
    return [*filter(None, [sheet.part_finished]), *sheet.items]
