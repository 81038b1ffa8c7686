"""The tags of every page: whole, balanced, and nothing an accessibility checker objects to."""

from __future__ import annotations

import io
import re
import zlib
from itertools import pairwise
from xml.etree import ElementTree

import pikepdf
import pytest

from itembank.pages.engine.page.page import Document, UntaggedMarkError
from itembank.pages.engine.pdf.pdf_objects import compressed
from tests.depth import some, whole
from tests.pages.checkers import assert_accessible


def elements(pdf):
    """Yield every structure element, in reading order."""

    def walk(node):
        if isinstance(node, pikepdf.Dictionary) and node.get("/Type") != "/MCR":
            yield node
            kids = node.get("/K", [])
            for kid in kids if isinstance(kids, pikepdf.Array) else [kids]:
                yield from walk(kid)

    root = pdf.Root.StructTreeRoot
    for kid in root.K:
        yield from walk(kid)


@whole
def test_the_checkers_find_nothing(drawn, tmp_path):
    for (pack, file), data in some(drawn.items(), 12):
        # The headings of questions on one topic; and each of three copies begins alike.
        heads: tuple[str, ...] = ()
        if file == "teacher-notes.pdf":
            heads = (r"\d+ (Adding|Ratio|Sharing|Writing)",)
        elif pack == "versions" and file.endswith("-large.pdf"):
            heads = (r"8K • Monday", r"\w+ sheet Seat code", r"\d+ (Write|Work out)")
        assert_accessible(data, tmp_path / f"{pack}-{file}", heads)


def test_levels_of_headings_are_not_skipped(drawn):
    """ISO 14289-1, 7.4.2: each heading is at most one level below the one before."""
    for key, data in drawn.items():
        names = [str(element.S) for element in elements(pikepdf.open(io.BytesIO(data)))]
        levels = [int(name[2:]) for name in names if re.fullmatch(r"/H[1-6]", name)]
        assert levels[0] == 1, key
        assert all(after <= before + 1 for before, after in pairwise(levels)), key


def test_every_formula_brings_its_mathml(drawn):
    """As an associated file with both of its names (ISO 32000-2, 14.13; ISO 14289-1, 7.11)."""
    for data in drawn.values():
        pdf = pikepdf.open(io.BytesIO(data))
        for element in elements(pdf):
            if element.S != "/Formula":
                continue
            (file,) = element.AF
            assert file.F == file.UF
            assert file.AFRelationship == "/Supplement"
            assert file.EF.F.Subtype == "/application/mathml+xml"
            root = ElementTree.fromstring(file.EF.F.read_bytes())
            assert root.tag == "{http://www.w3.org/1998/Math/MathML}math"
            assert "".join(root.itertext()).strip()


def test_document_says_what_it_is(drawn):
    for data in drawn.values():
        pdf = pikepdf.open(io.BytesIO(data))
        assert pdf.Root.Lang == "en-GB"
        assert pdf.Root.MarkInfo.Marked
        assert pdf.Root.ViewerPreferences.DisplayDocTitle
        assert "8K" in str(pdf.docinfo["/Title"])
        packet = bytes(pdf.Root.Metadata.read_bytes()).decode()
        # ISO 14289-1 section 5: the identification schema and its part number.
        assert "http://www.aiim.org/pdfua/ns/id/" in packet
        assert "<pdfuaid:part>1</pdfuaid:part>" in packet
        for page in pdf.pages:
            assert page.Tabs == "/S"


@whole
def test_marked_content_is_balanced_and_every_number_is_owned(drawn):
    for data in some(drawn.values(), 24):
        pdf = pikepdf.open(io.BytesIO(data))
        parents = {}
        nums = pdf.Root.StructTreeRoot.ParentTree.Nums
        for i in range(0, len(nums), 2):
            parents[int(nums[i])] = nums[i + 1]
        for page in pdf.pages:
            depth, numbers = 0, []
            for operands, operator in pikepdf.parse_content_stream(page):
                name = str(operator)
                if name in ("BDC", "BMC"):
                    depth += 1
                    if name == "BDC":
                        numbers.append(int(operands[1].MCID))
                elif name == "EMC":
                    depth -= 1
                elif name in ("f", "S", "B", "Tj", "Do"):
                    assert depth == 1, "a mark outside marked content"
                assert depth in (0, 1)
            assert depth == 0
            owners = parents[int(page.StructParents)]
            assert numbers == list(range(len(owners)))


def test_every_formula_has_words(drawn):
    pdf = pikepdf.open(io.BytesIO(drawn["plain", "starter.pdf"]))
    found = [str(e.Alt) for e in elements(pdf) if e.S == "/Formula"]
    assert len(found) == 9
    assert "3 quarters plus 1 sixth" in found
    for data in drawn.values():
        for element in elements(pikepdf.open(io.BytesIO(data))):
            if element.S in ("/Formula", "/Figure"):
                assert str(element.Alt).strip()


def test_questions_are_a_numbered_list(drawn):
    pdf = pikepdf.open(io.BytesIO(drawn["plain", "starter.pdf"]))
    kinds = [str(e.S) for e in elements(pdf)]
    assert kinds[:2] == ["/Document", "/H1"]
    assert kinds.count("/LI") == kinds.count("/Lbl") == kinds.count("/LBody") == 8


def test_a_mark_outside_every_tag_is_refused():
    page = Document("Nothing").page((100, 100))
    with pytest.raises(UntaggedMarkError):
        page.rect(0, 0, 10, 10, fill="#000000")
    with pytest.raises(UntaggedMarkError):
        page.text(0, 0, "loose", 12)


@whole
def test_same_pack_same_bytes(samples, drawn):
    from itembank.pages.draw import draw_pack

    for name, pack in some(samples.PACKS.items(), 2):
        for file, data in draw_pack(pack).items():
            assert data == drawn[name, file], f"{name} {file}"
        again = type(pack).model_validate_json(pack.model_dump_json())
        assert draw_pack(again)["answers.pdf"] == drawn[name, "answers.pdf"]


@whole
def test_no_clock_and_no_missing_glyph(drawn):
    for data in some(drawn.values(), 24):
        pdf = pikepdf.open(io.BytesIO(data))
        assert not {"/CreationDate", "/ModDate"} & set(pdf.docinfo.keys())
        for page in pdf.pages:
            wide = 1
            for operands, operator in pikepdf.parse_content_stream(page):
                if str(operator) == "Tf":
                    font = page.Resources.Font[str(operands[0])]
                    wide = 2 if font.Subtype == "/Type0" else 1
                elif str(operator) in ("Tj", "TJ"):
                    shown = operands[0] if str(operator) == "TJ" else [operands[0]]
                    codes = [bytes(part) for part in shown if isinstance(part, pikepdf.String)]
                    # Code 0 is the glyph .notdef, the empty box.
                    for code in codes:
                        letters = {code[i : i + wide] for i in range(0, len(code), wide)}
                        assert b"\x00" * wide not in letters
        assert not re.search(rb"D:\d{8}", data)


def test_every_object_is_where_the_file_says(drawn):
    """A reader mends wrong offsets in silence, so they are looked up here (ISO 32000-1, 7.5.8)."""
    for key, data in drawn.items():
        start = int(data.rsplit(b"startxref\n", 1)[1].split()[0])
        assert re.match(rb"\d+ 0 obj\n<</Type /XRef ", data[start:]), key
        with pikepdf.open(io.BytesIO(data)) as pdf:
            assert pdf.get_warnings() == [], key
            table = data[start:].split(b"stream\n", 1)[1].split(b"\nendstream", 1)[0]
            rows = zlib.decompress(table)
        assert len(rows) >= 7
        assert len(rows) % 7 == 0
        for number in range(len(rows) // 7):
            row = rows[7 * number : 7 * number + 7]
            if row[0] == 1:
                at = int.from_bytes(row[1:5], "big")
                assert data[at:].startswith(b"%d 0 obj\n" % number), (key, number)


@pytest.mark.parametrize("size", [0, 1, 60, 255, 256, 511, 512, 5000, 32767, 32768, 100_000])
def test_what_is_compressed_is_unpacked_by_any_reader(size):
    content = (b"<mn>%d</mn>" % size * (size // 4 + 1))[:size]
    packed = compressed(content)
    assert zlib.decompress(packed) == content
    assert len(packed) <= len(zlib.compress(content, 6)) * 1.02 + 8
    # Its window, a power of 2 from 256 (RFC 1950, 2.2), is no larger than it has to be.
    window = 1 << (packed[0] >> 4) + 8
    assert window <= max(512, 2 * size)
