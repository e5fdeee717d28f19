"""Blank sheets, read back with an independent library."""

import calendar
import io

import pypdf
import pypdfium2
import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.cards.facts import card
from binder.cards.spreads import SPREADS, spread
from binder.errors import CanMend
from binder.paper.blank import KINDS, Blank, blank_pdf, save_blank
from binder.paper.sheets import Sheet
from tests.paper.reading_back import bare, texts
from tests.profiles import fewer

A4 = Sheet("a4", "2")
SHEETS = [Sheet("a4", "4"), Sheet("letter", "3"), Sheet("a5", "2"), Sheet("a4", "none")]


def made(kind, **more):
    usual = {"spread": spread("three-card"), "month": "2026-12"}
    return Blank(kind, **(usual | more))


@pytest.mark.parametrize("sheet", SHEETS, ids=lambda s: f"{s.paper}-{s.holes}")
@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_on_every_paper(kind, sheet):
    pdf = blank_pdf(made(kind), sheet)
    page = pypdf.PdfReader(io.BytesIO(pdf)).pages[0]
    size = [float(side) / 72 * 25.4 for side in page.mediabox[2:]]
    assert size == pytest.approx([sheet.size.width, sheet.size.height], abs=0.1)


@pytest.mark.parametrize("one", SPREADS, ids=lambda s: s.key)
@pytest.mark.parametrize("sheet", SHEETS[:3], ids=lambda s: s.paper)
def test_a_reading_sheet_names_every_place_of_the_spread(one, sheet):
    pages = texts(blank_pdf(made("reading", spread=one), sheet))
    assert bare(one.name) in pages[0]
    said = "".join(pages)
    assert said.count("reversed") == len(one.places)
    for place in one.places:
        assert f"{place.n}{bare(place.label)}reversed" in said
    assert len(pages) <= 2
    assert sheet.paper != "a4" or len(pages) == 1


def test_a_card_sheet_has_the_cards_facts_or_leaves_them_open():
    star = texts(blank_pdf(made("card", card=card("major-17"), title="The Lantern"), A4))
    assert "TheLantern" in star[0]
    assert "Element:Air" in star[0]
    assert "Whereitturnedup" in star[-1]
    assert "Element:" not in texts(blank_pdf(made("card"), A4))[0]


@pytest.mark.parametrize("month", ["2026-02", "2026-08", "2028-02"])
def test_a_month_sheet_has_its_days(month):
    """Days of the week by Python's calendar: the first stands under its weekday."""
    year, number = map(int, month.split("-"))
    pdf = blank_pdf(made("month", month=month), A4)
    first, days = calendar.monthrange(year, number)
    with pypdfium2.PdfDocument(pdf) as document:
        words = document[0].get_textpage()
        place = {}
        for wanted in ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun", "1", str(days)):
            search = words.search(wanted, match_whole_word=True)
            at, _ = search.get_next()
            left, _, right, _ = words.get_charbox(at)
            place[wanted] = (left + right) / 2
    names = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
    across = min(names, key=lambda name: abs(place[name] - place["1"]))
    assert names.index(across) in (first, first - 1)  # numbers stand at the left of their box


def test_copies_are_pages_and_backs_have_their_holes_at_the_right(tmp_path):
    sheet = Sheet("a4", "4", two_sided=True)
    assert save_blank(made("ruled", copies=3), sheet, tmp_path / "ruled.pdf") == 3
    with pypdfium2.PdfDocument(tmp_path / "ruled.pdf") as document:
        for n, page in enumerate(document):
            image = page.render(scale=1).to_pil().convert("L")
            edge = 12 / 210 * image.width
            x = image.width - edge if n % 2 else edge
            strip = image.crop((round(x) - 4, 0, round(x) + 4, image.height))
            other = image.crop(
                (image.width - round(x) - 4, 0, image.width - round(x) + 4, image.height)
            )
            assert strip.getextrema()[0] < 200
            assert other.getextrema()[0] > 250


def test_plain_paper_has_nothing_but_holes():
    pdf = blank_pdf(made("plain"), Sheet("a4", "none"))
    with pypdfium2.PdfDocument(pdf) as document:
        image = document[0].render(scale=1).to_pil().convert("L")
    assert image.getextrema()[0] == 255


@pytest.mark.parametrize(
    ("kind", "more", "said"),
    [
        ("napkin", {}, "none of them"),
        ("reading", {"spread": None}, "for which spread"),
        ("ruled", {"copies": 0}, "Between one sheet"),
        ("month", {"month": "2026-W49"}, "is no month"),
        ("month", {"month": "2026-13"}, "is no month"),
    ],
)
def test_what_cannot_be_made_is_said(kind, more, said):
    with pytest.raises(CanMend, match=said):
        blank_pdf(made(kind, **more), A4)


def test_a_file_that_cannot_be_written_is_said(tmp_path):
    with pytest.raises(CanMend):
        save_blank(made("plain"), A4, tmp_path / "nowhere" / "sheet.pdf")


@fewer(12)
@given(st.text(max_size=60))
def test_a_decks_title_never_becomes_markup(title):
    assert len(texts(blank_pdf(made("card", card=card("cups-11"), title=title), A4))) <= 2
