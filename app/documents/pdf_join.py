"""Parts of one document, set apart, joined into one: pages, outline, names, and the tags for readers by ear."""

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

from app.documents.pdf_objects import PdfObjects, number_at, read_objects, referring, written

PAGES, OUTLINES, TAGS, DOCUMENT, CATALOG, FIRST_FREE = range(1, 7)
"""Numbers of what all parts have together."""

SHEET_LINK = "sheet:"
"""How a part refers to a page that another part may have: this and the page's number in the whole."""

_PAGE_COUNT = re.compile(rb"(<xmpTPg:NPages>)\d+")
_LINK = re.compile(rb"/Contents\([^)]*\)|/A\s?<<[^>]*?/URI\(" + SHEET_LINK.encode() + rb"(\d+)\)[^>]*>>")
_TAG_NAME = re.compile(rb"\((U\d+x\d+y\d+)\)")
_PARENT = re.compile(rb"/StructParent(s?) (\d+)")
_REFERENCES = re.compile(rb"(\d+) 0 R")
_PARENTS = re.compile(rb"(\d+) (\d+) 0 R")
_NAMES = re.compile(rb"(\((?:[^()\\]|\\.)*\))\s?(\d+) 0 R")


@dataclass(slots=True)
class _Whole:
    """What has been joined so far."""

    bodies: dict[int, bytes] = field(default_factory=dict)
    pages: list[int] = field(default_factory=list)
    tagged: list[int] = field(default_factory=list)
    parents: list[tuple[int, int]] = field(default_factory=list)
    identities: list[tuple[bytes, int]] = field(default_factory=list)
    destinations: list[tuple[bytes, int]] = field(default_factory=list)
    outlined: list[tuple[int, int, int]] = field(default_factory=list)
    catalog: bytes = b""
    tag_roles: bytes = b""
    info: int = 0
    free: int = FIRST_FREE
    free_parent: int = 0


def joined(parts: Iterable[bytes]) -> bytes:
    """One PDF of the parts' pages in their order; the first part gives title, metadata and colour profile.

    Raises ValueError for a part that the typesetter did not write, and for none at all.
    """
    whole = _Whole()
    for place, pdf in enumerate(parts):
        _take(whole, read_objects(pdf), place)
    if not whole.pages:
        raise ValueError("nothing to join")
    _finish(whole)
    return written(whole.bodies, CATALOG, whole.info)


def _take(whole: _Whole, part: PdfObjects, place: int) -> None:
    catalog = part.bodies[part.root]
    pages, tags, outlines = (number_at(catalog, key) for key in (b"/Pages", b"/StructTreeRoot", b"/Outlines"))
    document = number_at(part.bodies[tags], b"/K")
    shared = {pages: PAGES, tags: TAGS, outlines: OUTLINES, document: DOCUMENT, part.root: CATALOG}
    base = whole.free

    def number(old: int) -> int:
        return shared.get(old) or base + old

    left_out = {*shared} if place == 0 else {*shared, *_once(part, catalog)}
    for old, body in part.bodies.items():
        if old not in left_out:
            whole.bodies[number(old)] = _named(referring(body, number), place, whole.free_parent)
    whole.pages += map(number, _references(part.bodies[pages], b"/Kids"))
    whole.tagged += map(number, _references(part.bodies[document], b"/K"))
    _take_tags(whole, _named(referring(part.bodies[tags], number), place, 0))
    _take_outline(whole, referring(part.bodies[outlines], number))
    whole.destinations += _names(referring(catalog, number), b"/Dests")
    if place == 0:
        whole.catalog, whole.info = referring(catalog, number), number(part.info)
        whole.bodies[DOCUMENT] = referring(part.bodies[document], number)
    whole.free = base + max(part.bodies) + 1


def _once(part: PdfObjects, catalog: bytes) -> set[int]:
    """What the first part alone gives to the whole."""
    intents = number_at(catalog, b"/OutputIntents")
    each = set(_references(part.bodies[intents], b"")) if intents else set()
    return {part.info, number_at(catalog, b"/Metadata"), intents, *each}


def _named(body: bytes, place: int, first_parent: int) -> bytes:
    """Tags under names, and pages and links under places in the tree of tags, that no other part has."""
    if body.startswith((b"<</Type/StructElem/S/T", b"<</Type/StructTreeRoot")):
        return _TAG_NAME.sub(rb"(%04d\1)" % place, body)
    if body.startswith((b"<</Type/Page/", b"<</Type/Annot/")):
        return _PARENT.sub(lambda found: b"/StructParent%b %d" % (found[1], int(found[2]) + first_parent), body)
    return body


def _take_tags(whole: _Whole, tags: bytes) -> None:
    parents = [(int(key), int(number)) for key, number in _PARENTS.findall(_array(tags, b"/Nums"))]
    whole.parents += [(key + whole.free_parent, number) for key, number in parents]
    whole.free_parent += max((key for key, _ in parents), default=-1) + 1
    whole.identities += _names(tags, b"/IDTree")
    roles = re.search(rb"/RoleMap<<[^>]*>>", tags)
    whole.tag_roles = whole.tag_roles or (roles[0] if roles else b"")


def _take_outline(whole: _Whole, outline: bytes) -> None:
    count = re.search(rb"/Count (\d+)", outline)
    if count:
        whole.outlined.append((number_at(outline, b"/First"), number_at(outline, b"/Last"), int(count[1])))


def _finish(whole: _Whole) -> None:
    bodies = whole.bodies
    bodies[PAGES] = b"<</Type/Pages/Count %d/Kids[%b]>>" % (len(whole.pages), _said(whole.pages))
    bodies[DOCUMENT] = re.sub(rb"/K\[[^\]]*\]", b"/K[%b]" % _said(whole.tagged), bodies[DOCUMENT])
    bodies[TAGS] = b"<</Type/StructTreeRoot%b/K[%d 0 R]/ParentTree<</Nums[%b]>>%b>>" % (
        whole.tag_roles,
        DOCUMENT,
        b" ".join(b"%d %d 0 R" % row for row in whole.parents),
        b"/IDTree<</Names[%b]>>" % _paired(whole.identities) if whole.identities else b"",
    )
    _finish_outline(whole)
    destinations = b"<</Names[%b]>>" % _paired(whole.destinations)
    bodies[CATALOG] = re.sub(rb"/Dests<<.*?>>", b"/Dests" + destinations, whole.catalog, flags=re.DOTALL)
    metadata = number_at(bodies[CATALOG], b"/Metadata")
    if metadata:
        bodies[metadata] = _counting(bodies[metadata], len(whole.pages))
    for number, body in bodies.items():
        if b"/URI(" + SHEET_LINK.encode() in body:
            bodies[number] = _linked(body, whole.pages)


def _counting(metadata: bytes, pages: int) -> bytes:
    """The metadata with the number of all pages; it is the one stream of the file that is plain text."""
    head, _, text = metadata.partition(b"\nstream\n")
    text = _PAGE_COUNT.sub(rb"\g<1>%d" % pages, text)
    length = len(text) - len(b"\nendstream")
    return re.sub(rb"/Length \d+", b"/Length %d" % length, head) + b"\nstream\n" + text


def _finish_outline(whole: _Whole) -> None:
    for (_, last, _), (first, _, _) in zip(whole.outlined, whole.outlined[1:], strict=False):
        whole.bodies[last] = whole.bodies[last].replace(b"<<", b"<</Next %d 0 R" % first, 1)
        whole.bodies[first] = whole.bodies[first].replace(b"<<", b"<</Prev %d 0 R" % last, 1)
    first, last = whole.outlined[0][0], whole.outlined[-1][1]
    count = sum(count for _, _, count in whole.outlined)
    whole.bodies[OUTLINES] = b"<</Type/Outlines/First %d 0 R/Last %d 0 R/Count %d>>" % (first, last, count)


def _linked(body: bytes, pages: Sequence[int]) -> bytes:
    """A link to a page of the whole, named by its sheet."""
    sheet = next(int(found[1]) for found in _LINK.finditer(body) if found[1])
    plain = _LINK.sub(b"", body)
    return plain[:-2] + b"/Dest[%d 0 R/Fit]/Contents(Sheet %d)>>" % (pages[sheet - 1], sheet)


def _array(body: bytes, key: bytes) -> bytes:
    """What stands between the brackets that follow the key."""
    start = body.find(b"[", body.find(key))
    return body[start + 1 : body.find(b"]", start)] if key in body else b""


def _references(body: bytes, key: bytes) -> list[int]:
    return [int(number) for number in _REFERENCES.findall(_array(body, key))]


def _names(body: bytes, key: bytes) -> list[tuple[bytes, int]]:
    start = body.find(key)
    return (
        [(name, int(number)) for name, number in _NAMES.findall(_array(body[start:], b"/Names"))] if start > 0 else []
    )


def _said(numbers: Sequence[int]) -> bytes:
    return b" ".join(b"%d 0 R" % number for number in numbers)


def _paired(names: Sequence[tuple[bytes, int]]) -> bytes:
    return b" ".join(b"%b %d 0 R" % row for row in sorted(names))
