"""Handouts drawn by our own code, looked at with independent libraries."""

import io
from dataclasses import replace

import pytest
from PIL import Image
from pypdf import PdfReader

from binder.carry.handouts import draw
from binder.carry.sources import read_shelf
from binder.carry.texts import HandoutText
from binder.errors import CanMend
from binder.resources import samples

HANDOUTS = {
    leaf.holds.kind: leaf.holds
    for binder in read_shelf(samples()).binders
    for tab in binder.tabs
    for leaf in tab.leaves
    if isinstance(leaf.holds, HandoutText)
}


@pytest.mark.parametrize("kind", HANDOUTS)
def test_drawing_twice_gives_the_same_bytes(kind):
    assert draw(HANDOUTS[kind]) == draw(HANDOUTS[kind])


def test_log_sheet_is_one_a4_page_with_its_words():
    media, data = draw(HANDOUTS["log-sheet"])
    assert media == "application/pdf"
    (page,) = PdfReader(io.BytesIO(data)).pages
    # ISO 216: A4 is 210 x 297 mm; a point is 1/72 inch, an inch 25.4 mm
    assert float(page.mediabox.width) == pytest.approx(210 / 25.4 * 72, abs=0.1)
    assert float(page.mediabox.height) == pytest.approx(297 / 25.4 * 72, abs=0.1)
    text = page.extract_text()
    for word in ("Question", "Impressions", "First thought", "Verdict", "Mark it on the day"):
        assert word in text


@pytest.mark.parametrize("kind", ["septenary-map", "suit-wheel"])
def test_pictures_are_pngs_wide_enough_to_read(kind):
    media, data = draw(HANDOUTS[kind])
    picture = Image.open(io.BytesIO(data))
    assert (media, picture.format) == ("image/png", "PNG")
    assert picture.width >= 800
    assert len(picture.convert("RGB").getcolors(1 << 20)) > 50


def test_words_are_never_markup():
    words = {**HANDOUTS["log-sheet"].words, "title": "#panic() *loud* $x$ ]"}
    _, data = draw(replace(HANDOUTS["log-sheet"], words=words))
    assert "#panic() *loud* $x$ ]" in PdfReader(io.BytesIO(data)).pages[0].extract_text()


def test_unknown_kind_and_missing_words_are_told():
    with pytest.raises(CanMend, match="There is no handout “poster”"):
        draw(replace(HANDOUTS["log-sheet"], kind="poster"))
    with pytest.raises(CanMend, match="needs “note” among its words"):
        draw(HandoutText("suit-wheel", "wheel.png", {"title": "Wheel"}))
