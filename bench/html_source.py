"""The documents of a pack as HTML for weasyprint.

weasyprint sets no mathematics, so it is given each formula as one line of text: less work
than the other engines do.
"""

from __future__ import annotations

from html import escape

from page_content import Block, Document, Heading, Paragraph, Runs, Table, Words

PAGES = {"slide": "size: 960pt 540pt; margin: 28pt", "a4": "size: A4; margin: 45pt"}
FOOT = '@bottom-left {{ content: "{name}" }} @bottom-right {{ content: "Page " counter(page) }}'


def source(made: Document, fonts: str) -> str:
    """Return the page of one document; `fonts` is the address of the folder of the text face."""
    faces = "".join(
        f"@font-face {{ font-family: Text; font-weight: {weight};"
        f" src: url({fonts}/AtkinsonHyperlegible-{name}.ttf) }}\n"
        for weight, name in (("normal", "Regular"), ("bold", "Bold"))
    )
    foot = FOOT.format(name=made.name) if made.page == "a4" else ""
    return (
        f'<!doctype html><html lang="en-GB"><head><meta charset="utf-8">'
        f"<title>{escape(made.title)}</title><style>{faces}"
        f"@page {{ {PAGES[made.page]}; {foot} }}\n"
        f"body {{ font: {made.size}pt Text; margin: 0 }} table {{ width: 100% }}\n"
        "td { vertical-align: top } p { margin: 0 0 6pt }"
        f"</style></head><body>{''.join(map(_block, made.blocks))}</body></html>"
    )


def _block(block: Block) -> str:
    match block:
        case Heading(level, text):
            return f"<h{level}>{escape(text)}</h{level}>\n"
        case Paragraph(runs, _):
            return f"<p>{_runs(runs)}</p>\n"
        case Table(widths, rows, gap):
            columns = "".join(f'<col style="width: {100 * w / sum(widths):.1f}%">' for w in widths)
            body = "".join(
                f"<tr>{''.join(f'<td>{_runs(cell)}</td>' for cell in row)}</tr>" for row in rows
            )
            return (
                f'<table style="margin-bottom: {gap}pt; border-spacing: 0 {min(gap, 14)}pt">'
                f"<colgroup>{columns}</colgroup><tbody>{body}</tbody></table>\n"
            )
    raise TypeError(block)


def _runs(runs: Runs) -> str:
    out = []
    for run in runs:
        if isinstance(run, Words):
            text = escape(run.text)
            out.append(f"<b>{text}</b>" if run.bold else text)
        else:
            out.append(f'<span class="m">{escape(run.line)}</span>')
    return "".join(out)
