"""Parts of a PDF joined: pages, outline, links, and tags read back by another program, against the parts alone."""

from io import BytesIO

import pypdf
import pytest
import typst
from pdf_text import page_texts

from app.documents.pdf_join import joined
from app.documents.pdf_objects import read_objects, referring, written

HEAD = """
#set document(title: "Whole", date: datetime(year: 2026, month: 3, day: 2))
#set text(lang: "en")
"""

FIRST = """
= Index <index>
See sheet #link("sheet:4")[4] and #link("sheet:1")[1].
#pagebreak()
= Second (of (two)) <second>
#table(columns: 2, table.header[Mark][Length], [A], [1], [B], [2])
"""

LAST = """
= Third <third>
#table(columns: 2, table.header[Name][Count], [C], [3])
#pagebreak()
= Fourth 12 0 R <fourth>
"""


def part(body: str) -> bytes:
    return typst.compile({"main.typ": (HEAD + body).encode()}, format="pdf", pdf_standards=["a-2a", "ua-1"])  # type: ignore


@pytest.fixture(scope="module")
def parts() -> list[bytes]:
    return [part(FIRST), part(LAST), part(LAST.replace("third", "fifth").replace("fourth", "sixth"))]


@pytest.fixture(scope="module")
def whole(parts: list[bytes]) -> bytes:
    return joined(parts)


@pytest.fixture(scope="module")
def reader(whole: bytes) -> pypdf.PdfReader:
    return pypdf.PdfReader(BytesIO(whole), strict=True)


def test_pages_follow_in_the_order_of_the_parts(parts: list[bytes], whole: bytes) -> None:
    assert page_texts(whole) == [text for one in parts for text in page_texts(one)]


def test_the_outline_has_the_headings_of_all_parts_in_order(reader: pypdf.PdfReader) -> None:
    titles = ["Index", "Second (of (two))", "Third", "Fourth 12 0 R", "Third", "Fourth 12 0 R"]
    assert [one.title for one in reader.outline] == titles  # type: ignore[union-attr]
    assert [reader.get_destination_page_number(one) for one in reader.outline] == [0, 1, 2, 3, 4, 5]  # type: ignore[arg-type]


def test_named_places_lead_to_their_own_pages(reader: pypdf.PdfReader) -> None:
    found = {name: reader.get_destination_page_number(place) for name, place in reader.named_destinations.items()}
    assert found == {"index": 0, "second": 1, "third": 2, "fourth": 3, "fifth": 4, "sixth": 5}


def test_links_lead_to_pages_of_other_parts(reader: pypdf.PdfReader) -> None:
    links = [entry.get_object() for entry in reader.pages[0]["/Annots"]]
    pages = [page.indirect_reference for page in reader.pages]
    assert [pages.index(link["/Dest"][0]) for link in links] == [3, 0]
    # ISO 14289-1, 7.18.5: a link says in words where it leads.
    assert [link["/Contents"] for link in links] == ["Sheet 4", "Sheet 1"]
    assert all("/A" not in link for link in links)


def _elements(node: object) -> list[pypdf.generic.DictionaryObject]:
    node = node.get_object()  # type: ignore[attr-defined]
    if isinstance(node, pypdf.generic.ArrayObject):
        return [one for kid in node for one in _elements(kid)]
    if not isinstance(node, pypdf.generic.DictionaryObject) or "/S" not in node:
        return []
    return [node, *(_elements(node["/K"]) if "/K" in node else [])]


def test_every_tag_hangs_in_one_tree_under_its_parent(reader: pypdf.PdfReader, parts: list[bytes]) -> None:
    root = reader.root_object["/StructTreeRoot"]
    elements = _elements(root["/K"])
    roots = [pypdf.PdfReader(BytesIO(one)).root_object["/StructTreeRoot"] for one in parts]
    assert len(elements) == sum(len(_elements(one["/K"])) - 1 for one in roots) + 1
    for element in elements[1:]:
        assert any(kid.get_object() is element for kid in element["/P"]["/K"] if not isinstance(kid, int))


def test_marked_content_is_found_by_its_page(reader: pypdf.PdfReader) -> None:
    # ISO 32000-1, 14.7.4.4: the tree of parents leads from a page's number and a mark on it to the tag that has it.
    numbers = reader.root_object["/StructTreeRoot"]["/ParentTree"]["/Nums"]
    tree = {int(key): value.get_object() for key, value in zip(numbers[::2], numbers[1::2], strict=True)}
    keys = [int(page["/StructParents"]) for page in reader.pages]
    links = [int(entry.get_object()["/StructParent"]) for page in reader.pages for entry in page.get("/Annots", [])]
    assert sorted(tree) == list(tree) == sorted([*keys, *links])
    for page, key in zip(reader.pages, keys, strict=True):
        for mark, element in enumerate(tree[key]):
            assert mark in element["/K"]
            assert element.raw_get("/Pg") == page.indirect_reference


def test_heads_of_tables_keep_names_of_their_own(reader: pypdf.PdfReader) -> None:
    root = reader.root_object["/StructTreeRoot"]
    heads = {bytes(one["/ID"].original_bytes): one for one in _elements(root["/K"]) if one["/S"] == "/TH"}
    names = root["/IDTree"]["/Names"]
    assert len(heads) == 6
    assert [bytes(name.original_bytes) for name in names[::2]] == sorted(heads)
    for cell in (one for one in _elements(root["/K"]) if one["/S"] == "/TD"):
        said = [name for entry in cell["/A"] for name in entry.get("/Headers", [])]
        assert said
        assert all(bytes(name.original_bytes) in heads for name in said)


def test_metadata_counts_all_pages(reader: pypdf.PdfReader) -> None:
    xmp = reader.xmp_metadata
    assert xmp is not None
    assert "<xmpTPg:NPages>6<" in xmp.stream.get_data().decode()


def test_the_same_parts_give_the_same_bytes_and_others_do_not(parts: list[bytes], whole: bytes) -> None:
    assert joined(parts) == whole
    assert joined(parts[:2]) != whole


def test_objects_survive_being_packed(parts: list[bytes]) -> None:
    one = read_objects(parts[0])
    pdf = written(one.bodies, one.root, one.info)
    assert len(pdf) < len(parts[0])
    assert page_texts(pdf) == page_texts(parts[0])


def test_references_in_strings_are_words() -> None:
    words = rb"<</T(see 12 0 R (or 3 0 R)\) 4 0 R)"
    moved = referring(words + b"/P 5 0 R/K[6 0 R 7]>>", lambda number: number + 100)
    assert moved == words + b"/P 105 0 R/K[106 0 R 7]>>"


def test_no_parts_are_refused() -> None:
    with pytest.raises(ValueError, match="nothing to join"):
        joined([])


def test_what_is_no_plain_pdf_is_refused() -> None:
    with pytest.raises(ValueError, match="cross references"):
        read_objects(b"%PDF-1.7\nnot one")
