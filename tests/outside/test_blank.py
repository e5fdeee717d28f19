"""Blank sheets measured in the finished PDF with another library: holes, lines, dots.

Sources: holes as in test_paper.py (ISO 838:1974, and common practice for three and four). Ruled
lines 8 mm apart, 7 mm on A5, and dots in squares of 5 mm are common practice; no standard was at
hand.
"""

from itertools import pairwise

import pypdfium2
import pypdfium2.raw as pdfium
import pytest

from binder.cards.facts import card
from binder.cards.spreads import spread
from binder.errors import CanMend
from binder.paper.blank import KINDS, Blank, blank_pdf
from binder.paper.sheets import Sheet
from tests.outside.test_paper import ACROSS, HEIGHTS, MM, PAPERS, outline, rings

PITCH = {"a4": 8.0, "letter": 8.0, "a5": 7.0}
DOTS = 5.0


def made(kind, copies=1):
    return Blank(kind, spread("horseshoe"), card("cups-03"), "", "2026-12", copies)


def shapes(pdf, page=0):
    """Left, top, width and height in mm, from the top left corner, of every drawn path."""
    with pypdfium2.PdfDocument(pdf) as document:
        sheet = document[page]
        height = sheet.get_size()[1]
        for shape in sheet.get_objects(filter=[pdfium.FPDF_PAGEOBJ_PATH]):
            _, (left, bottom, right, top) = outline(shape)
            yield (
                left / MM, (height - top) / MM, (right - left) / MM, (top - bottom) / MM,
            )  # fmt: skip


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize(("paper", "holes"), sorted(HEIGHTS))
def test_every_sheet_has_the_holes_of_its_pattern_on_both_sides(kind, paper, holes):
    pdf = blank_pdf(made(kind, 2), Sheet(paper, holes, two_sided=True))
    for page in (0, 1):
        found = rings(pdf, page)
        assert [y for _, y, _ in found] == pytest.approx(HEIGHTS[paper, holes], abs=0.05)
        edge = {x if page == 0 else PAPERS[paper][0] - x for x, _, _ in found}
        assert all(x == pytest.approx(12, abs=0.05) for x in edge)
        low, high = ACROSS[holes]
        assert all(low <= wide <= high + 0.005 for _, _, wide in found)


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize(("paper", "holes"), [("a5", "3"), ("a5", "4")])
def test_a_row_of_holes_that_does_not_fit_is_refused(kind, paper, holes):
    with pytest.raises(CanMend, match="do not fit on A5"):
        blank_pdf(made(kind), Sheet(paper, holes))


@pytest.mark.parametrize("paper", PAPERS)
def test_ruled_lines_are_evenly_apart_and_clear_of_the_holes(paper):
    sheet = Sheet(paper, "2")
    long = [
        (top, left, wide)
        for left, top, wide, high in shapes(blank_pdf(made("ruled"), sheet))
        if high < 0.05 and wide > 60
    ]
    tops = sorted(top for top, _, _ in long)
    assert all(b - a == pytest.approx(PITCH[paper], abs=0.01) for a, b in pairwise(tops))
    room = sheet.size.height - sheet.size.top - sheet.size.bottom
    assert len(tops) == int(room / PITCH[paper] + 0.01)
    reach = 12 + ACROSS["2"][1] / 2
    assert all(left > reach and left + wide < PAPERS[paper][0] - 10 for _, left, wide in long)


@pytest.mark.parametrize("paper", PAPERS)
def test_dots_stand_in_squares(paper):
    dots = [
        (left + wide / 2, top + high / 2)
        for left, top, wide, high in shapes(blank_pdf(made("dotted"), Sheet(paper, "none")))
        if 0.4 < wide < 0.6 and abs(wide - high) < 0.02
    ]
    for axis in (0, 1):
        places = sorted({round(dot[axis], 2) for dot in dots})
        gaps = [b - a for a, b in pairwise(places)]
        assert gaps == pytest.approx([DOTS] * len(gaps), abs=0.03)
    assert len(dots) > 500


@pytest.mark.parametrize("kind", ["reading", "card", "month"])
@pytest.mark.parametrize("paper", PAPERS)
def test_nothing_is_written_beyond_the_margins(kind, paper):
    sheet = Sheet(paper, "none")
    for left, top, wide, high in shapes(blank_pdf(made(kind), sheet)):
        assert left > sheet.gutter_mm - 0.2
        assert left + wide < sheet.size.width - sheet.outside_mm + 0.2
        assert sheet.size.top - 3 < top
        assert top + high < sheet.size.height - sheet.size.bottom + 0.3
