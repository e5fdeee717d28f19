"""Words of PDF pages and where they stand, against what another library put there."""

import io

import pytest
from pypdf import PdfReader, PdfWriter

from binder.errors import CanMend
from binder.page import pdf_words, spotting
from tests.page.markup.written import written

# Left and top of a word placed by the typesetter, in points, on a page of 300 x 400 points.
PLACED = "#place(top + left, dx: {x}pt - 2.5cm, dy: {y}pt - 2.5cm)[{word}]"
PAGE = "#set page(margin: 2.5cm)\n"


def placed(word, x, y):
    return written(PAGE + PLACED.format(x=x, y=y, word=word))


def turned(data, angle):
    writer = PdfWriter(clone_from=PdfReader(io.BytesIO(data)))
    for page in writer.pages:
        page.rotate(angle)
    out = io.BytesIO()
    writer.write(out)
    return out.getvalue()


def where(data, word):
    found = pdf_words.letters(data, "x.pdf", 0)
    return found.boxes[found.text.index(word)]


def test_pages_come_with_their_words():
    data = written("One page.", "", "And *another*.")
    assert pdf_words.page_texts(data, "x.pdf", 0, 9) == ["One page.", "", "And another."]
    assert pdf_words.page_texts(data, "x.pdf", 2, 9) == ["And another."]
    assert pdf_words.page_texts(data, "x.pdf", 3, 9) == []


def test_words_broken_at_the_end_of_a_line_are_put_together():
    text = (
        "#set par(justify: true)\n#set text(hyphenate: true)\n" + "rehabilitation of officers " * 30
    )
    (page,) = pdf_words.page_texts(written(text), "x.pdf", 0, 1)
    assert page.split().count("rehabilitation") == 30


def test_letters_stand_where_they_were_set():
    left, top, right, bottom = where(placed("Heron", 120, 200), "Heron")
    assert left == pytest.approx(120 / 300, abs=0.01)
    assert top < 200 / 400 + 0.03 < bottom + 0.03
    assert right > left
    assert 0.45 < top < 0.53


@pytest.mark.parametrize(
    ("angle", "place"),
    [
        (90, lambda x, y: (1 - y, x)), (180, lambda x, y: (1 - x, 1 - y)),
        (270, lambda x, y: (y, 1 - x)),
    ],
)  # fmt: skip
def test_letters_turn_with_the_page(angle, place):
    data = placed("Heron", 120, 200)
    left, top, right, bottom = where(data, "Heron")
    middle = (left + right) / 2, (top + bottom) / 2
    left, top, right, bottom = where(turned(data, angle), "Heron")
    assert ((left + right) / 2, (top + bottom) / 2) == pytest.approx(place(*middle), abs=0.005)


def test_letters_beyond_the_usual_ones_count_once():
    found = pdf_words.letters(written("a 𝒜 b"), "x.pdf", 0)
    assert len(found.text) == len(found.boxes)
    assert found.text.strip() == "a 𝒜 b"


def test_a_cropped_page_is_measured_by_what_is_seen_of_it():
    writer = PdfWriter(clone_from=PdfReader(io.BytesIO(placed("Heron", 150, 200))))
    writer.pages[0].cropbox.lower_left = (100, 0)
    out = io.BytesIO()
    writer.write(out)
    assert where(out.getvalue(), "Heron")[0] == pytest.approx(50 / 200, abs=0.01)


@pytest.mark.parametrize("data", [b"", b"%PDF-1.7", written("x")[:300]])
def test_what_cannot_be_read_is_said(data):
    with pytest.raises(CanMend, match="is damaged"):
        pdf_words.letters(data, "x.pdf", 0)


def test_spans_on_a_page_are_the_words_themselves():
    found = pdf_words.letters(written("Éclairs and éclairs"), "x.pdf", 0)
    spans = spotting.spans(found.text, ["eclairs"])
    assert [found.text[a:b] for a, b in spans] == ["Éclairs", "éclairs"]
