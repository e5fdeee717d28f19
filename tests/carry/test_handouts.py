"""Handouts drawn by our own code, looked at with independent libraries."""

import io
from dataclasses import replace

import pytest
from PIL import Image
from pypdf import PdfReader

from binder.carry.building import build
from binder.carry.handouts import draw
from binder.carry.text_shelf import read_leaf_text, read_shelf
from binder.carry.texts import HandoutText
from binder.errors import CanMend
from binder.resources import samples
from binder.study.handouts import filed_words, on_paper, page_notes
from binder.study.leaves import leaves, tabs

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


def test_a_leaflet_has_its_pages_in_order():
    media, data = draw(HANDOUTS["leaflet"])
    pages = PdfReader(io.BytesIO(data)).pages
    heads = [head for head, *_ in HANDOUTS["leaflet"].words["pages"]]
    assert media == "application/pdf"
    assert len(pages) == 3
    assert all(head in page.extract_text() for head, page in zip(heads, pages, strict=True))


def test_notes_beside_pages_ticks_and_words_are_built(tmp_path):
    shelf = build(samples(), tmp_path / "shelf")
    binder = shelf.binder("Practice")
    entries = leaves.contents(binder, tabs.tab(binder, "Clippings"))
    uid = next(one.uid for one in entries if one.title.startswith("Planing"))
    notes = page_notes.page_notes(binder, uid)
    assert [note.page for note in notes] == [2, 3]
    (figures,) = [one.uid for one in entries if one.title == "Figures for the shed"]
    assert f"(leaf:{figures})" in notes[0].text
    assert on_paper.ticked(binder, uid) == "2026-10-12T18:00:00"
    (words,) = filed_words.words_of(binder, uid).values()
    assert "the lantern is held low" in " ".join(words.pages[1].split())
    shelf.close()


@pytest.mark.parametrize(
    ("front", "sentence"),
    [
        ('printed = "yesterday"', "“printed” must be a date and time"),
        ("[[beside]]\npage = 0\ntext = 'x'", "“page” must be a whole number from 1"),
        ("[[beside]]\npage = 1", "“text” must be given"),
        ("[[beside]]\npage = 1\ntext = 'x'\nside = 2", "“side” is not used here"),
    ],
)
def test_a_slip_in_the_front_of_a_handout_is_told(tmp_path, front, sentence):
    (tmp_path / "b" / "t").mkdir(parents=True)
    text = '+++\ntitle = "A"\nat = 2026-01-01T10:00:00\nhandout = "leaflet"\nfile = "a.pdf"\n'
    (tmp_path / "b" / "t" / "a.md").write_text(f"{text}{front}\n+++\nBody.\n", encoding="utf-8")
    with pytest.raises(CanMend, match=sentence):
        read_leaf_text(tmp_path, "b/t/a")
