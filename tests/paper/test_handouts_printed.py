"""Handouts printed with their tab: order, page numbers, turned pages, margins and notes, read back
from the finished PDF with another library than the one that makes or draws it.
"""

import io
import re

import pypdfium2
import pytest
import typst
from pypdf import PdfReader

from binder.paper.leaves.gather import gather
from binder.paper.sheets import Sheet
from binder.paper.typeset import typeset
from binder.study.handouts import page_notes
from binder.study.kinds import LeafKind
from binder.study.leaves import files, leaves, tabs
from tests.paper.reading_back import bare, pages_with, texts

MM = 72 / 25.4


def made(*pages):
    """A PDF with pages (words, width in mm, height in mm), corner to corner filled."""
    source = "\n".join(
        f"#page(width: {wide}mm, height: {high}mm, margin: 0mm)[#place(top + left)[{words}] "
        f"#place(bottom + right)[corner]]"
        for words, wide, high in pages
    )
    return typst.compile(source.encode(), format="pdf")


@pytest.fixture
def clippings(shelf):
    """A binder with two handouts and a plain leaf between them."""
    binder = shelf.add("Practice", "spineP")
    tab = tabs.tab(binder, tabs.add_tab(binder, "Clippings", "clippings"))
    kept = {}
    for title, data in (
        ("Ferries", made(("upright", 210, 297), ("lying", 297, 210), ("small", 105, 148))),
        (None, b""),
        ("Winds", made(("lastly", 210, 297))),
    ):
        if title is None:
            leaves.add_leaf(binder, tab, "Between", "A plain leaf.")
            continue
        file = files.keep_bytes(binder, f"{title}.pdf", "application/pdf", data)
        text = files.markdown_for(file, f"{title}.pdf", picture=False)
        kept[title] = leaves.add_leaf(binder, tab, title, text, kind=LeafKind.HANDOUT), file
    return shelf, binder, tab, kept


def printed(clippings, sheet):
    shelf, binder, tab, _ = clippings
    return typeset(gather(shelf, binder, tab), sheet)


def test_handouts_are_printed_in_the_order_of_the_tab(clippings):
    pages = texts(printed(clippings, Sheet()))
    order = [pages_with(pages, words)[-1] for words in
             ("upright", "lying", "small", "A plain leaf.", "lastly")]  # fmt: skip
    assert order == sorted(order)
    assert len(set(order)) == 5


def test_the_contents_name_the_pages_they_stand_on(clippings):
    pages = texts(printed(clippings, Sheet()))
    contents = next(page for page in pages if "Ferries" in page and "Winds" in page)
    for title, words in (("Ferries", "upright"), ("Winds", "lastly")):
        said = int(re.search(rf"{title}\D*?(\d+)", contents)[1])
        page = pages_with(pages, words)[-1]
        assert bare(f"{said}") in pages[page - 1]
        first = pages_with(pages, "upright")[-1]
        assert said - int(re.search(r"Ferries\D*?(\d+)", contents)[1]) == page - first


def ends(pdf, number, words):
    """Left end of the words in the upper left corner of the printed handout, and right end of those
    in its lower right, as shares of the sheet's width.
    """
    with pypdfium2.PdfDocument(pdf) as document:
        page = document[number - 1]
        text, wide = page.get_textpage(), page.get_width()
        first, _ = text.search(words).get_next()
        last, count = text.search("corner").get_next()
        found = text.get_charbox(first)[0] / wide, text.get_charbox(last + count - 1)[2] / wide
        text.close()
        page.close()
    return found


@pytest.mark.parametrize("words", ["upright", "lying", "small"])
@pytest.mark.parametrize("paper", ["a4", "letter", "a5"])
def test_pages_of_any_shape_keep_clear_of_the_holes(clippings, words, paper):
    sheet = Sheet(paper, "2", two_sided=True)
    pdf = printed(clippings, sheet)
    number = pages_with(texts(pdf), words)[-1]
    box = PdfReader(io.BytesIO(pdf)).pages[number - 1].mediabox
    assert box.width < box.height  # the sheet itself is never turned
    gutter = sheet.gutter_mm * MM / float(box.width)
    left, right = (0.0, gutter) if sheet.is_back(number) else (gutter, 0.0)
    start, end = ends(pdf, number, words)
    assert left - 0.001 <= start < end <= 1 - right + 0.001


def test_notes_stand_under_their_page(clippings):
    shelf, binder, tab, kept = clippings
    leaf, file = kept["Ferries"]
    page_notes.write_beside(binder, leaf, file, 2, "Mind the *last* boat.")
    page_notes.write_beside(binder, leaf, file, 3, "Long " * 900)
    pages = texts(typeset(gather(shelf, binder, tab), Sheet()))
    (noted,) = pages_with(pages, "Mind the last boat.")
    assert noted == pages_with(pages, "lying")[-1]
    assert "Besidethispage" in pages[noted - 1]
    assert "Mind" not in pages[pages_with(pages, "upright")[-1] - 1]
    assert len(pages_with(pages, "Long Long Long")) > 1  # a long note goes on on the next page
    assert pages_with(pages, "lastly")


def letters_high(pdf, number, words):
    """How tall the words stand on a page, in points."""
    with pypdfium2.PdfDocument(pdf) as document:
        text = document[number - 1].get_textpage()
        first, _ = text.search(words).get_next()
        _, low, _, high = text.get_charbox(first)
        return high - low


@pytest.mark.parametrize("note", ["Mind the *last* boat.", "A word. " * 90])
def test_a_page_with_a_note_stays_legible(clippings, note):
    sheet = Sheet("a5", "2")
    pdf = printed(clippings, sheet)
    bare_page = letters_high(pdf, pages_with(texts(pdf), "upright")[-1], "upright")
    leaf, file = clippings[3]["Ferries"]
    page_notes.write_beside(clippings[1], leaf, file, 1, note)
    pdf = printed(clippings, sheet)
    noted = letters_high(pdf, pages_with(texts(pdf), "upright")[-1], "upright")
    assert noted >= 0.85 * bare_page
    assert pages_with(texts(pdf), note.split()[-1])


def test_private_notes_can_be_left_out(clippings):
    from binder.study.readings.discretion import LeaveOut

    shelf, binder, tab, kept = clippings
    page_notes.write_beside(binder, *kept["Ferries"], 1, "Private: for nobody.")
    section = gather(shelf, binder, tab, LeaveOut(private=True))
    assert not section.leaves[0].beside
