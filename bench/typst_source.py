"""The documents of a pack as typst source: its tagged PDFs, each formula with words."""

from __future__ import annotations

from page_content import Block, Document, Heading, Paragraph, Runs, Table, Words

from itembank.notation import parse_written
from itembank.notation import tree as t
from itembank.notation.line import shown_line

SIGNS = {"×": "times", "÷": "div", "of": '" of "', "≤": "<=", "≥": ">=", "≠": "!="}
TEXT = "Atkinson Hyperlegible"


def source(made: Document) -> str:
    """Return the source of one document."""
    if made.page == "slide":
        page = "#set page(width: 960pt, height: 540pt, margin: 28pt)"
    else:
        foot = f"{_string(made.name)} #h(1fr) Page #context counter(page).display()"
        page = f'#set page(paper: "a4", margin: 45pt, footer: [#{foot}])'
    return "\n".join(
        [
            f"#set document(title: {_string(made.title)}, date: none)",
            page,
            f'#set text(font: "{TEXT}", size: {made.size}pt, lang: "en", region: "GB")',
            *map(_block, made.blocks),
        ]
    )


def _block(block: Block) -> str:
    match block:
        case Heading(level, text):
            return f"{'=' * level} #{_string(text)}\n"
        case Paragraph(runs, after):
            return f"{_runs(runs)}\n#v({after}pt, weak: true)\n"
        case Table(widths, rows, gap):
            columns = ", ".join(f"{width}fr" for width in widths)
            cells = ", ".join(f"[{_runs(cell)}]" for row in rows for cell in row)
            return (
                f"#grid(columns: ({columns},), row-gutter: {min(gap, 14)}pt, {cells})\n"
                f"#v({gap}pt)\n"
            )
    raise TypeError(block)


def _runs(runs: Runs) -> str:
    out = []
    for run in runs:
        if isinstance(run, Words):
            text = f"#{_string(run.text)};"
            out.append(f"#strong[{text}]" if run.bold else text)
        else:
            out.append(f"#math.equation(alt: {_string(run.words)}, ${_formula(run.line)}$);")
    return "".join(out)


def _formula(line: str) -> str:
    """Return a line of our notation; a line of working may go on from the one above: = 3/4."""
    opening = line[0] if line[0] in "=<>≤≥≠" else ""
    rest = line.removeprefix(opening).strip()
    return f"{SIGNS.get(opening, opening)} {maths(parse_written(rest))}"


def _string(text: str) -> str:
    quoted = text.replace("\\", "\\\\").replace('"', '\\"')
    return f'"{quoted}"'


def maths(node: t.Node) -> str:
    """Return a tree as typst mathematics."""
    match node:
        case t.Int(n):
            return str(n)
        case t.Dec(whole, places, recurring):
            return f"{whole}.{places} " + " ".join(f"dot({digit})" for digit in recurring)
        case t.Sym(name):
            return name
        case t.Blank():
            return "square"
        case t.Label(text):
            return _string(text)
        case t.ClockTime():
            return _string(shown_line(node))
        case t.Frac(num, den):
            return f"frac({maths(num)}, {maths(den)})"
        case t.Mixed(whole, num, den):
            return f"{whole} frac({num}, {den})"
        case t.Neg(of):
            return f"-{maths(of)}"
        case t.Percent(of):
            return f'{maths(of)} "%"'
        case t.Money(amount, sign):
            return f'{maths(amount)} "p"' if sign == "p" else f'"{sign}" {maths(amount)}'
        case t.Quantity(amount, unit):
            return f'{maths(amount)} " {unit}"'
        case t.Power(base, exponent):
            return f"{maths(base)}^({maths(exponent)})"
        case t.Root(of, index):
            return f"root({index}, {maths(of)})" if index != 2 else f"sqrt({maths(of)})"
        case t.Bracket(of):
            return f"({maths(of)})"
        case t.Juxt(factors):
            return " ".join(map(maths, factors))
        case t.Sum(first, rest) | t.Product(first, rest) | t.Relation(first, rest):
            tail = "".join(f" {SIGNS.get(op, op)} {maths(part)}" for op, part in rest)
            return maths(first) + tail
        case t.Ratio(parts):
            return " : ".join(map(maths, parts))
        case t.Listing(parts):
            return '"," '.join(map(maths, parts))
    raise TypeError(node)
