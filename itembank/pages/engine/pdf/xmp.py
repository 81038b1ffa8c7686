"""The XMP packet that says a PDF is PDF/UA-1.

Sources: XMP specification part 1 (ISO 16684-1) for the packet, ISO 14289-1 section 5 for the
``pdfuaid`` schema.
"""

from __future__ import annotations

from html import escape

from itembank.text.characters import without_hidden


def _text(text: str) -> str:
    """Return text as XML holds it; what XML 1.0 has no way to hold (its 2.2) is a space."""
    return escape(without_hidden(text), quote=False)


def packet(title: str, language: str, producer: str) -> bytes:
    """Return the metadata stream of a document, without dates so that it never changes.

    >>> b"<pdfuaid:part>1</pdfuaid:part>" in packet("Starter", "en-GB", "itembank")
    True
    """
    return f"""<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/">
<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about=""
 xmlns:dc="http://purl.org/dc/elements/1.1/"
 xmlns:pdf="http://ns.adobe.com/pdf/1.3/"
 xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/">
<dc:title><rdf:Alt><rdf:li xml:lang="x-default">{_text(title)}</rdf:li></rdf:Alt></dc:title>
<dc:language><rdf:Bag><rdf:li>{_text(language)}</rdf:li></rdf:Bag></dc:language>
<dc:format>application/pdf</dc:format>
<pdf:Producer>{_text(producer)}</pdf:Producer>
<pdfuaid:part>1</pdfuaid:part>
</rdf:Description>
</rdf:RDF>
</x:xmpmeta>
<?xpacket end="w"?>
""".encode()
