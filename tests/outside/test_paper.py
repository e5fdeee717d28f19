"""Sheets and holes, measured in the finished PDF with other libraries, against published figures.

Sources, as far as they were seen:
- A4 and A5: ISO 216:2007 (from memory; the standard was not at hand). Letter: 8.5 x 11 inches,
  ANSI/ASME Y14.1 size A, common practice (from memory).
- Two holes: ISO 838:1974, read in pages that quote it: 80 +- 0.5 mm apart, centres 12 +- 1 mm from
  the edge, 6 +- 0.5 mm across, placed evenly on the edge, on sheets at least 100 mm high.
- Three holes: common practice in the United States, 4 1/4 inches = 107.95 mm apart (read as 108),
  on sheets at least 240 mm high; across 1/4 to 5/16 inch, 1/4 to 1/2 inch from the edge (memory).
- Four holes: common practice, the two holes of ISO 838 and one more 80 mm above and below.
Heights of the centres follow by arithmetic, the row being centred on the sheet.
"""

import ctypes
import io
from itertools import pairwise

import pypdf
import pypdfium2
import pypdfium2.raw as pdfium
import pytest

from binder.errors import CanMend
from binder.paper.sheets import Sheet
from binder.paper.typeset import typeset
from tests.paper.sample import section

MM = 72 / 25.4
PAPERS = {"a4": (210, 297), "a5": (148, 210), "letter": (215.9, 279.4)}
POINTS = {"a4": (595.2756, 841.8898), "a5": (419.5276, 595.2756), "letter": (612, 792)}
HEIGHTS = {
    ("a4", "2"): (108.5, 188.5),
    ("a4", "4"): (28.5, 108.5, 188.5, 268.5),
    ("a4", "3"): (40.55, 148.5, 256.45),
    ("a5", "2"): (65.0, 145.0),
    ("letter", "3"): (31.75, 139.7, 247.65),
    ("letter", "2"): (99.7, 179.7),
    ("letter", "4"): (19.7, 99.7, 179.7, 259.7),
}
APART = {"2": (80, 0.5), "3": (107.95, 0.5), "4": (80, 0.5)}
ACROSS = {"2": (5.5, 6.5), "3": (6.35, 7.9375), "4": (5.5, 6.5)}
PAGES = 6


def outline(shape):
    """Corners (left, bottom, right, top) of a path's points in points, without its line width."""
    matrix, points = shape.get_matrix(), []
    for n in range(pdfium.FPDFPath_CountSegments(shape.raw)):
        x, y = ctypes.c_float(), ctypes.c_float()
        pdfium.FPDFPathSegment_GetPoint(pdfium.FPDFPath_GetPathSegment(shape.raw, n), x, y)
        points.append(matrix.on_point(x.value, y.value))
    across, up = [x for x, _ in points], [y for _, y in points]
    return len(points), (min(across), min(up), max(across), max(up))


def rings(pdf, page):
    """Centres and widths in mm, from the top left corner, of the round shapes near the edges."""
    found = set()
    with pypdfium2.PdfDocument(pdf) as document:
        sheet = document[page]
        width, height = sheet.get_size()
        for shape in sheet.get_objects(filter=[pdfium.FPDF_PAGEOBJ_PATH]):
            points, (left, bottom, right, top) = outline(shape)
            x, y = (left + right) / 2, height - (bottom + top) / 2
            wide, high = (right - left) / MM, (top - bottom) / MM
            is_round = points > 8 and abs(wide - high) < 0.02
            if is_round and 5 < wide < 9 and min(x, width - x) < 20 * MM:
                found.add((round(x / MM, 2), round(y / MM, 2), round(wide, 2)))
    return sorted(found, key=lambda hole: hole[1])


@pytest.fixture(scope="module", params=sorted(HEIGHTS))
def printed(request):
    """Both sides of sheets of one paper with one row of holes: (paper, holes, PDF)."""
    paper, holes = request.param
    return paper, holes, typeset(section(), Sheet(paper, holes, two_sided=True))


@pytest.mark.parametrize("paper", PAPERS)
def test_pages_have_the_published_size(paper):
    reader = pypdf.PdfReader(io.BytesIO(typeset(section(), Sheet(paper))))
    for page in reader.pages:
        size = (float(page.mediabox.width), float(page.mediabox.height))
        assert size == pytest.approx(POINTS[paper], abs=0.01)


def test_holes_lie_where_the_standard_puts_them(printed):
    paper, holes, pdf = printed
    for page in range(PAGES):
        heights = [y for _, y, _ in rings(pdf, page)]
        assert heights == pytest.approx(HEIGHTS[paper, holes], abs=0.05)


def test_holes_are_as_far_apart_as_punches_make_them(printed):
    _, holes, pdf = printed
    gap, tolerance = APART[holes]
    for page in range(PAGES):
        heights = [y for _, y, _ in rings(pdf, page)]
        assert all(abs(b - a - gap) <= tolerance for a, b in pairwise(heights))


def test_holes_are_as_wide_as_punches_make_them(printed):
    _, holes, pdf = printed
    low, high = ACROSS[holes]
    assert all(low <= wide <= high + 0.005 for _, _, wide in rings(pdf, 0))


def test_holes_are_twelve_millimetres_from_the_edge_at_the_rings(printed):
    paper, _, pdf = printed
    for page in range(PAGES):
        at = {x if page % 2 == 0 else PAPERS[paper][0] - x for x, _, _ in rings(pdf, page)}
        assert all(x == pytest.approx(12, abs=0.05) for x in at)


def test_holes_of_both_sides_meet_when_the_sheet_is_turned(printed):
    paper, _, pdf = printed
    front, back = rings(pdf, 2), rings(pdf, 3)
    turned = [(PAPERS[paper][0] - x, y) for x, y, _ in back]
    for (x, y, _), (x_back, y_back) in zip(front, turned, strict=True):
        assert (x, y) == pytest.approx((x_back, y_back), abs=0.02)


@pytest.mark.parametrize("two_sided", [False, True])
def test_no_letter_stands_in_the_gutter_or_at_the_outside_edge(two_sided):
    with pypdfium2.PdfDocument(typeset(section(), Sheet("a4", "2", two_sided))) as document:
        for number, page in enumerate(list(document)[2 if two_sided else 1 :]):
            back = two_sided and number % 2 == 1
            text = page.get_textpage()
            boxes = [text.get_charbox(n) for n in range(text.count_chars())]
            written = [box for box in boxes if box[2] - box[0] > 0.1]
            left = min(box[0] for box in written) / MM
            right = 210 - max(box[2] for box in written) / MM
            gutter, outside = (right, left) if back else (left, right)
            assert gutter >= 24.5
            assert outside >= 14.5


@pytest.mark.parametrize("holes", ["3", "4"])
def test_long_rows_of_holes_do_not_fit_a5_and_the_sentence_says_what_to_choose(holes):
    word = {"3": "Three", "4": "Four"}[holes]
    with pytest.raises(CanMend, match=rf"{word} holes do not fit on A5.*Choose two holes or none"):
        Sheet("a5", holes)


def test_no_marks_are_printed_without_holes_or_without_guides():
    for sheet in (Sheet("a4"), Sheet("a4", "2", guides=False)):
        assert rings(typeset(section(), sheet), 0) == []
