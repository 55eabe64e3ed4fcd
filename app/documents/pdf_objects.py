"""The numbered objects of a PDF as the typesetter writes it (ISO 32000-1, 7.5), and such objects as a small PDF."""

import re
import zlib
from base64 import b64encode
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from hashlib import sha256

PACKED = 200
"""Objects in one packed stream: a reader unpacks all of them to get at one."""

_HEAD = b"%PDF-1.7\n%\x80\x80\x80\x80\n\n"
_STARTS = re.compile(rb"xref\n0 (\d+)\n")
_OBJECT = re.compile(rb"(\d+) 0 obj\n")
_NEST = 6
"""How deep parentheses may stand in a string of the file."""

_STREAM = b"\nstream"


def _string() -> bytes:
    inner = rb"\((?:[^()\\]|\\.)*\)"
    for _ in range(_NEST):
        inner = rb"\((?:[^()\\]|\\.|" + inner + rb")*\)"
    return inner


_REFERENCE = re.compile(_string() + rb"|\b(\d+) 0 R\b", re.DOTALL)


@dataclass(frozen=True, slots=True)
class PdfObjects:
    """Objects by number, as text or stream; the numbers of the catalog and of the information dictionary."""

    bodies: dict[int, bytes]
    root: int
    info: int


def read_objects(pdf: bytes) -> PdfObjects:
    """All objects of a file with a plain table of cross references; raises ValueError for any other."""
    table = pdf.rfind(b"\nxref\n")
    found = _STARTS.match(pdf, table + 1)
    if found is None:
        raise ValueError("PDF without a plain table of cross references")
    rows = (pdf[found.end() + 20 * k : found.end() + 20 * k + 18] for k in range(int(found[1])))
    starts = sorted(int(row[:10]) for row in rows if row[17:18] == b"n")
    ends = [*starts[1:], table]
    bodies = dict(_object(pdf[start:end]) for start, end in zip(starts, ends, strict=True))
    trailer = pdf[pdf.rindex(b"trailer") :]
    return PdfObjects(bodies, number_at(trailer, b"/Root"), number_at(trailer, b"/Info"))


def _object(text: bytes) -> tuple[int, bytes]:
    head = _OBJECT.match(text)
    if head is None:
        raise ValueError(f"no object where one should start: {text[:20]!r}")
    return int(head[1]), text[head.end() : text.rindex(b"\nendobj")]


def number_at(body: bytes, key: bytes) -> int:
    """The object that a key refers to, itself or as the first of an array; 0 where there is none."""
    found = re.search(re.escape(key) + rb"\s*\[?(\d+) 0 R", body)
    return int(found[1]) if found else 0


def referring(body: bytes, number: Callable[[int], int]) -> bytes:
    """The object with other numbers where it refers to objects; strings and streams stay as they are."""
    end = body.index(_STREAM) if is_stream(body) else len(body)

    def said(found: re.Match[bytes]) -> bytes:
        return b"%d 0 R" % number(int(found[1])) if found[1] else found[0]

    return _REFERENCE.sub(said, body[:end]) + body[end:]


def is_stream(body: bytes) -> bool:
    """Whether the object is a stream: those stand alone in a file, all others can be packed."""
    return body.endswith(b"endstream")


def written(bodies: Mapping[int, bytes], root: int, info: int) -> bytes:
    """A file of these objects, those that are no streams packed (ISO 32000-1, 7.5.7); equal objects, equal bytes."""
    out, rows = bytearray(_HEAD), dict[int, bytes]()
    for number, body in bodies.items():
        if is_stream(body):
            rows[number] = _row(1, len(out), 0)
            out += _numbered(number, body)
    plain = [number for number, body in bodies.items() if not is_stream(body)]
    last = max(bodies, default=0)
    for first in range(0, len(plain), PACKED):
        last += 1
        numbers = plain[first : first + PACKED]
        rows |= {number: _row(2, last, k) for k, number in enumerate(numbers)}
        rows[last] = _row(1, len(out), 0)
        out += _numbered(last, _packed([(number, bodies[number]) for number in numbers]))
    start, last = len(out), last + 1
    rows[last] = _row(1, start, 0)
    table = b"".join(rows.get(number, _row(0, 0, 65535)) for number in range(last + 1))
    name = b64encode(sha256(out).digest()[:16])
    words = b"/Type/XRef/Size %d/W[1 4 2]/Root %d 0 R/Info %d 0 R/ID[(%b)(%b)]" % (last + 1, root, info, name, name)
    out += _numbered(last, _deflated(words, table))
    return bytes(out) + b"startxref\n%d\n%%%%EOF" % start


def _row(kind: int, where: int, place: int) -> bytes:
    return kind.to_bytes(1, "big") + where.to_bytes(4, "big") + place.to_bytes(2, "big")


def _numbered(number: int, body: bytes) -> bytes:
    return b"%d 0 obj\n%b\nendobj\n\n" % (number, body)


def _packed(objects: Sequence[tuple[int, bytes]]) -> bytes:
    places, at = list[bytes](), 0
    for number, body in objects:
        places.append(b"%d %d" % (number, at))
        at += len(body) + 1
    head = b" ".join(places) + b"\n"
    words = b"/Type/ObjStm/N %d/First %d" % (len(objects), len(head))
    return _deflated(words, head + b"\n".join(body for _, body in objects))


def _deflated(words: bytes, data: bytes) -> bytes:
    thin = zlib.compress(data, 9)
    return b"<<%b/Filter/FlateDecode/Length %d>>\nstream\n%b\nendstream" % (words, len(thin), thin)
