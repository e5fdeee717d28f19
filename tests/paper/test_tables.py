"""Tables of what sources say on paper: upright while they fit, else turned by a quarter."""

import io

import pypdf
import pypdfium2
import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.paper.data import PrintLeaf, Section, SideBySide
from binder.paper.sheets import Sheet
from binder.paper.tables import columns_fit, handed_table
from binder.paper.typeset import typeset
from tests.paper.reading_back import bare, texts
from tests.profiles import fewer

MM = 72 / 25.4


def table(columns, cell="It says {} of {}.", own=()):
    rows = tuple(
        (aspect, tuple(cell.format(aspect.lower(), n) for n in range(columns)))
        for aspect in ("Upright", "Reversed", "Imagery")
    )
    heads = tuple((f"Author {n}", f"Work {n}") for n in range(columns))
    return SideBySide(heads, rows, own=own)


def printed(made, sheet, *, before=False):
    leaf = PrintLeaf("u1", "plain", "The Star", side_by_side=made)
    others = PrintLeaf("u0", "plain", "The Tower"), PrintLeaf("u2", "plain", "The Moon")
    leaves = (*others[:before], leaf, others[1])
    return typeset(Section("Foundations", "Majors", leaves=leaves), sheet)


def sizes(pdf):
    """Width and height of each page in mm."""
    pages = pypdf.PdfReader(io.BytesIO(pdf)).pages
    return [tuple(round(float(x) / MM) for x in page.mediabox[2:]) for page in pages]


def letters(pdf, page):
    """The letters of a page: left, top, right and bottom in mm from its top left corner."""
    with pypdfium2.PdfDocument(pdf) as document:
        sheet = document[page]
        high, text = sheet.get_height(), sheet.get_textpage()
        boxes = [text.get_charbox(n) for n in range(text.count_chars())]
        return [(x / MM, (high - top) / MM, right / MM, (high - foot) / MM)
                for x, foot, right, top in boxes if right - x > 0.1]  # fmt: skip


@pytest.mark.parametrize(
    ("paper", "upright", "turned"), [("a4", 4, 6), ("letter", 4, 6), ("a5", 3, 5)]
)
def test_how_many_columns_fit(paper, upright, turned):
    sheet = Sheet(paper)
    assert (columns_fit(sheet), columns_fit(sheet, turned=True)) == (upright, turned)


def test_a_table_that_fits_stands_in_its_leaf():
    pdf = printed(table(4, own=(("They agree", "It is a light."),)), Sheet())
    assert set(sizes(pdf)) == {(210, 297)}
    page = texts(pdf)[2]
    assert bare("It says imagery of 3.") in page
    assert bare("They agree It is a light.") in page


@pytest.mark.parametrize("at", [4, 5, 6])
def test_a_wide_one_is_turned_and_clear_of_the_holes(at):
    """One-sided on page 4; two-sided on a front, 5, or with a leaf before it on a back, 6."""
    sheet = Sheet(holes="2", two_sided=at > 4)
    pdf = printed(table(6, own=(("They differ", "On comfort."),)), sheet, before=at == 6)
    assert [n for n, size in enumerate(sizes(pdf), 1) if size == (297, 210)] == [at]
    said = texts(pdf)[at - 1]
    assert bare("The Star, side by side") in said
    assert bare("It says upright of 5.") in said
    assert bare("On comfort.") in said
    # Holes are 12 mm from the edge and 6 mm wide (ISO 838); rings at the foot of a back.
    for left, top, right, foot in letters(pdf, at - 1):
        assert left > 20
        assert right < 297 - 20
        assert foot < 210 - 15.5 if at == 6 else top > 15.5
    assert "TheMoon" in texts(pdf)[at]


def test_more_columns_than_a_turned_sheet_holds_go_on_below():
    made = handed_table(table(14), Sheet())
    assert [len(some["heads"]) for some in made["tables"]] == [6, 6, 2]
    said = "".join(texts(printed(table(14), Sheet())))
    for n in range(14):
        assert bare(f"It says reversed of {n}.") in said


@fewer(10)
@given(st.integers(1, 9), st.sampled_from(["a4", "a5"]), st.integers(1, 260))
def test_no_word_is_lost_however_long_the_cells_are(columns, paper, long):
    cell = "w{} x{} " + "on and on " * long + "end"
    said = "".join(texts(printed(table(columns, cell), Sheet(paper))))
    assert said.count("end") >= columns * 3
