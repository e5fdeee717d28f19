"""Pages of PDF files as pictures; damaged and locked files each give a sentence."""

import io

import pytest
from pypdf import PdfWriter

from binder.errors import CanMend
from binder.page import pdf

# Paper sizes in points: ISO 216 (A4 is 210 x 297 mm), a point being 1/72 inch of 25.4 mm.
A4 = (595.28, 841.89)


def made(pages=2, password=""):
    writer = PdfWriter()
    for _ in range(pages):
        writer.add_blank_page(*A4)
    if password:
        writer.encrypt(password)
    out = io.BytesIO()
    writer.write(out)
    return out.getvalue()


def test_sizes_of_all_pages():
    sizes = pdf.page_sizes(made(3), "three.pdf")
    assert len(sizes) == 3
    assert sizes[0] == pytest.approx(A4, abs=0.1)


def test_a_page_is_drawn_at_a_width():
    pixels = pdf.draw_page(made(), "two.pdf", 1, 500)
    assert pixels.width == pytest.approx(500, abs=1)
    assert pixels.height / pixels.width == pytest.approx(297 / 210, abs=0.01)
    assert len(pixels.data) >= pixels.stride * pixels.height
    assert pixels.data[:3] == b"\xff\xff\xff"


def test_a_page_is_never_drawn_too_large():
    pixels = pdf.draw_page(made(), "two.pdf", 0, 100_000)
    assert max(pixels.width, pixels.height) <= pdf.LARGEST + 1


@pytest.mark.parametrize(
    ("data", "sentence"),
    [
        (b"", "is damaged"),
        (b"%PDF-1.7 and then nothing", "is damaged"),
        (made(1, password="lantern"), "is locked with a password"),
        (made(0), "has no pages|is damaged"),
    ],
)
def test_what_cannot_be_read_is_said(data, sentence):
    with pytest.raises(CanMend, match=sentence) as error:
        pdf.page_sizes(data, "sheet.pdf")
    assert "“sheet.pdf”" in str(error.value)


def test_a_page_that_is_not_there_is_damage():
    with pytest.raises(CanMend, match="is damaged"):
        pdf.draw_page(made(1), "one.pdf", 7, 300)
